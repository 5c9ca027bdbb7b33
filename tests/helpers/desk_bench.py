"""A desk over an empty store, with a clock that stands still until it is moved, and people who are signed in."""

import asyncio
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from urllib.parse import parse_qs, urlsplit

import httpx
import pyotp
from starlette.applications import Starlette

from coachbot.bootstrap import Coachbot
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.desk import accounts, sessions
from coachbot.desk.accounts import Account
from coachbot.desk.app import build_app
from coachbot.settings import Settings

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)
ORIGIN = "http://desk.test"


@dataclass
class Clock:
    """A clock that is moved by hand."""

    now: datetime = NOON

    def __call__(self) -> datetime:
        return self.now

    def passes(self, span: timedelta) -> None:
        """Let time pass."""
        self.now += span


class Browser:
    """Asks the desk for pages without a network, and keeps its cookies. It follows no redirects."""

    def __init__(self, app: Starlette) -> None:
        self._client = httpx.AsyncClient(transport=httpx.ASGITransport(app=app), base_url=ORIGIN)

    @property
    def cookies(self) -> httpx.Cookies:
        """The cookies that it has."""
        return self._client.cookies

    def get(self, path: str, headers: dict[str, str] | None = None) -> httpx.Response:
        """Ask for a page."""
        return asyncio.run(self._client.get(path, headers=headers))

    def post(self, path: str, data: dict[str, str], headers: dict[str, str] | None = None) -> httpx.Response:
        """Send a form."""
        return asyncio.run(self._client.post(path, data=data, headers=headers))

    def send(self, path: str, **data: str) -> httpx.Response:
        """Send a form with the token of the session."""
        return self.post(path, {"csrf": sessions.csrf(self.cookies["desk"]), **data})


@dataclass
class Bench:
    """A coachbot, its desk, and its people."""

    coachbot: Coachbot
    settings: Settings
    clock: Clock
    phones: RehearsalChannel
    people: dict[str, Account] = field(default_factory=dict)
    app: Starlette = field(init=False)

    def __post_init__(self) -> None:
        self.app = build_app(self.coachbot, self.settings)

    def client(self) -> Browser:
        """A browser that nobody has signed in with."""
        return Browser(self.app)

    def add(self, name: str, role: str, **more: object) -> Account:
        """Make an account."""
        account = self.coachbot.store.run(lambda tx: accounts.add(tx, name, self.clock(), role=role, **more))  # type: ignore[arg-type]
        self.people[name] = account
        return account

    def code(self, name: str) -> str:
        """The one-time code of this moment."""
        secret = parse_qs(urlsplit(self.people[name].totp_uri).query)["secret"][0]
        return pyotp.TOTP(secret).at(self.clock.now)

    def sign_in(self, name: str, client: Browser | None = None) -> Browser:
        """A browser with this person signed in."""
        browser = client or self.client()
        form = {"name": name, "password": self.people[name].password, "code": self.code(name)}
        answer = browser.post("/sign-in", data=form)
        assert answer.status_code == 303, answer.text
        return browser


SignedIn = Callable[[str], Browser]

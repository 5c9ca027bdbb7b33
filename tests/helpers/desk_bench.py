"""A desk over an empty store, with a clock that stands still until it is moved, and people who are signed in."""

import asyncio
from collections.abc import Callable, Coroutine
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from typing import Any, TypeVar
from urllib.parse import parse_qs, urlsplit

import httpx
import pyotp
from sqlalchemy import Table
from starlette.applications import Starlette

from coachbot.bootstrap import Coachbot
from coachbot.channels.base import Outgoing
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.coach.case import Case
from coachbot.desk import accounts, sessions
from coachbot.desk.accounts import Account
from coachbot.desk.app import build_app
from coachbot.programme.screening import Neck
from coachbot.programme.zones import instant
from coachbot.service.enrolling import Family as EnrolFamily
from coachbot.service.enrolling import Screened, enrol
from coachbot.settings import Settings
from coachbot.store import Transaction
from coachbot.store.tables import cases, messages, outbox
from helpers.played import Rows, bring_back, rows

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


T = TypeVar("T")


def run(work: Coroutine[Any, Any, T]) -> T:
    """Do something asynchronous in a thread of its own, since a real browser's driver keeps this one's loop busy."""
    with ThreadPoolExecutor(1) as pool:
        return pool.submit(asyncio.run, work).result()


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
        return run(self._client.get(path, headers=headers))

    def post(self, path: str, data: dict[str, str], headers: dict[str, str] | None = None) -> httpx.Response:
        """Send a form."""
        return run(self._client.post(path, data=data, headers=headers))

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


class Family:
    """A family that was enrolled at the desk's bench, with a phone."""

    def __init__(self, bench: Bench, case_id: int, address: str) -> None:
        self.bench = bench
        self.id = case_id
        self.address = address

    @property
    def case(self) -> Case:
        """The case as it is kept."""
        return self.bench.coachbot.store.run(lambda tx: tx.cases.load(self.id))

    def says(self, text: str) -> None:
        """The parent writes, and all that comes of it is sent."""
        run(self._take(text=text))

    def presses(self, data: str) -> None:
        """The parent presses a button."""
        run(self._take(button=f"{self.id}:{data}"))

    def hears(self) -> str:
        """What the phone got last."""
        return self.bench.phones.phones[self.address][-1].text

    def at_bedtime(self) -> None:
        """Let the next bedtime come."""
        case = self.case
        assert case.next_evening is not None
        self.bench.clock.now = instant(case.next_evening, case.bedtime, case.zone)
        run(self.bench.coachbot.settle())

    def practises(self, marks: str = "43544") -> None:
        """Go to the next bedtime and answer the whole night; ``-`` is not down."""
        self.at_bedtime()
        night = self.case.nights[-1]
        if "-" not in marks:
            self.says(" ".join(marks))
        else:
            for position, mark in zip(night.order, marks, strict=True):
                self.presses(f"rate:{night.number}:{position}:{mark.replace('-', 'not_down')}")
        self.presses(f"best:{night.number}:center")
        self.presses(f"note:{night.number}:none")

    async def _take(self, text: str | None = None, button: str | None = None) -> None:
        if button is None:
            await self.bench.phones.write(self.address, text or "")
        else:
            await self.bench.phones.press(self.address, button)
        await self.bench.coachbot.settle()


_begun: dict[tuple[object, ...], tuple[Rows, int, datetime, list[Outgoing]]] = {}


def practising(bench: Bench, name: str = "Zebulonia", language: str = "en", nights: tuple[str, ...] = ()) -> Family:
    """A family that was enrolled, consented and learned its lesson on the evening of the bench's day, then practised.

    The first of a bench is brought back from where it was played before.
    """
    store, key = bench.coachbot.store, (name, language, nights, bench.clock.now)
    if not store.run(_vacant):
        return learns(bench, name, language, nights)
    if key in _begun:
        found, case_id, bench.clock.now, sent = _begun[key]
        store.run(lambda tx: bring_back(tx, found))
        family = Family(bench, case_id, f"phone-{case_id}")
        bench.phones.phones[family.address] += sent
        run(bench.phones.start(bench.coachbot.inbox.receive))
        run(bench.coachbot.settle())
        return family
    family = learns(bench, name, language, nights)
    mine = [(table, [row for row in some if _case(table, row) == family.id]) for table, some in store.run(rows)]
    _begun[key] = (mine, family.id, bench.clock.now, list(bench.phones.phones[family.address]))
    return family


def _vacant(tx: Transaction) -> bool:
    """Whether the ids that a family played before had are still to be given."""
    return not any(table in (cases, messages, outbox) for table, _ in rows(tx))


def _case(table: Table, row: dict[str, Any]) -> object:
    """Which case a row belongs to, if any."""
    return row["id"] if table is cases else row.get("case_id")


def learns(bench: Bench, name: str = "Zebulonia", language: str = "en", nights: tuple[str, ...] = ()) -> Family:
    """The same family, played on this bench."""
    wanted = EnrolFamily(
        child=name,
        bedtime=time(19, 30),
        zone="Europe/Lisbon",
        screening=Screened(
            born=date(2018, 5, 17),
            swallowing_disorder=False,
            too_ill=False,
            candy_allergy=False,
            neck=Neck.SOUND,
            confirmed_by="Imani Osei",
        ),
        language=language,
    )
    now = bench.clock.now
    done = bench.coachbot.store.run(lambda tx: enrol(tx, wanted, emergency_number="112", seed=5, now=now))
    run(bench.phones.start(bench.coachbot.inbox.receive))
    family = Family(bench, done.case.id, f"phone-{done.case.id}")
    family.says(done.codes[0][1])
    family.presses("consent:agree")
    if family.case.lesson_open is None:
        family.at_bedtime()
    for step in range(len(done.case.protocol.positions) + 4):
        family.presses(f"next:{step}")
    family.presses("candy:down")
    for marks in nights:
        family.practises(marks)
    return family

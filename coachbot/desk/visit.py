"""One request to the desk: who makes it, what they may read and write, and how the answer is rendered."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from typing import Any, TypeVar

import jinja2
from markupsafe import Markup
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse

from coachbot.bootstrap import Coachbot
from coachbot.desk import sessions
from coachbot.desk.board import Board
from coachbot.desk.heading import head
from coachbot.desk.once import Once
from coachbot.desk.probe import Probe
from coachbot.desk.wording import NAMES, Wording
from coachbot.programme.zones import local
from coachbot.service.limits import Limit
from coachbot.settings import Settings
from coachbot.store import Accessed, Session, Transaction

T = TypeVar("T")


class FormError(ValueError):
    """What was typed cannot be used; `text` is the desk's text that says why, with what is filled in."""

    def __init__(self, text: str, /, **args: object) -> None:
        super().__init__(text)
        self.text = text
        self.values = args


def _limit(most: int) -> Limit:
    return Limit(most, timedelta(minutes=15))


@dataclass(frozen=True, slots=True)
class Desk:
    """What all requests share. `by_name` and `by_address` bound tries to sign in."""

    coachbot: Coachbot
    settings: Settings
    wording: Wording
    templates: jinja2.Environment
    board: Board = field(default_factory=Board)
    once: Once = field(default_factory=Once)
    probe: Probe = field(default_factory=Probe)
    by_name: Limit = field(default_factory=lambda: _limit(10))
    by_address: Limit = field(default_factory=lambda: _limit(50))

    @property
    def url(self) -> str:
        """The desk's public address."""
        return self.settings.desk_url


@dataclass(slots=True)
class Visit:
    """One request. Where nobody is signed in `who` is None and `token` empty; `zone` is the clinic's."""

    desk: Desk
    request: Request
    now: datetime
    token: str = ""
    who: Session | None = None
    zone: str = "UTC"
    form: FormData = field(default_factory=FormData)

    @property
    def name(self) -> str:
        """The name of who is signed in."""
        assert self.who is not None, "only pages for those who are signed in ask for a name"
        return self.who.name

    @property
    def language(self) -> str:
        """The language to answer in."""
        return self.who.language if self.who else _spoken(self.request.headers.get("accept-language", ""))

    @property
    def case_id(self) -> int:
        """The case that the address names."""
        return int(self.request.path_params["case"])

    def field(self, name: str) -> str:
        """A field of the form, stripped; empty if it is not there."""
        value = self.form.get(name, "")
        return value.strip() if isinstance(value, str) else ""

    def query(self, name: str) -> str:
        """A field of the address."""
        return self.request.query_params.get(name, "")

    async def read(self, work: Callable[[Transaction], T]) -> T:
        """Read from the store."""
        return await self.desk.coachbot.store.read(work)

    async def transact(self, work: Callable[[Transaction], T]) -> T:
        """Write to the store, then let what was written be sent."""
        done = await self.desk.coachbot.store.transact(work)
        self.desk.coachbot.sender.wake()
        return done

    async def note(self, what: str, *cases: int) -> None:
        """Write down in the log of access that these families' records were looked at."""
        by = self.name
        entries = [Accessed(at=self.now, by=by, case_id=case, what=what) for case in cases]
        await self.desk.coachbot.store.transact(lambda tx: tx.access.add(entries))

    def t(self, text: str, /, **args: object) -> str:
        """One of the desk's texts."""
        return self.desk.wording.text(self.language, text, **args)

    def word(self, text: str, **args: Any) -> str:
        """One of the words that every reader shares, such as a position."""
        return self.desk.coachbot.catalogue.word(text, self.language, **args)

    async def page(self, template: str, *, status: int = 200, **context: object) -> HTMLResponse:
        """A whole page, with what stands at the head of each."""
        found = await self.read(lambda tx: head(tx, self.desk.coachbot, self.desk.settings, self.now))
        return self.fragment(template, status=status, head=found, **context)

    def fragment(self, template: str, *, status: int = 200, **context: object) -> HTMLResponse:
        """A piece of a page."""
        html = self.desk.templates.get_template(template).render(
            v=self,
            t=self.t,
            word=self.word,
            who=self.who,
            names=NAMES,
            csrf=Markup('<input type="hidden" name="csrf" value="%s">') % sessions.csrf(self.token),
            **context,
        )
        return HTMLResponse(html, status_code=status)

    async def wrong(self, status: int, said: str) -> HTMLResponse:
        """A page that says what went wrong and what to do; what was typed is given back."""
        typed = [value for name, value in self.form.multi_items() if name not in ("csrf", "password", "code")]
        words = [one for one in typed if isinstance(one, str) and " " in one.strip()]
        return await self.page("wrong.html", status=status, said=said, typed=words)

    def go(self, path: str) -> RedirectResponse:
        """On to another page of the desk."""
        return RedirectResponse(path, status_code=303)

    def moment(self, at: datetime, zone: str = "") -> str:
        """A date and time as the clinic's clock has it, or that of another zone."""
        return self.desk.wording.moment(self.language, local(at, zone or self.zone))

    def day(self, at: date) -> str:
        """A date without its year."""
        return self.desk.wording.day(self.language, at)

    def ago(self, at: datetime) -> str:
        """How long ago, or in how long."""
        minutes = round(abs((self.now - at).total_seconds()) / 60)
        past = "ago" if at <= self.now else "in"
        for unit, size in (("days", 1440), ("hours", 60)):
            if minutes >= 2 * size:
                return self.t(f"{past}-{unit}", count=minutes // size)
        return self.t(f"{past}-minutes", count=minutes)


def _spoken(header: str) -> str:
    wanted = (one.strip()[:2].lower() for one in header.split(","))
    return next((one for one in wanted if one in NAMES), "en")

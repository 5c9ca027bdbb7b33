"""What changed in a case and who did it, found by letting its history happen again."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, time

import structlog

from coachbot.coach import events as happened
from coachbot.coach.case import Case, State
from coachbot.coach.decide import decide
from coachbot.coach.events import Event
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy
from coachbot.programme.sizes import Target
from coachbot.store.documents import kind_of

log = structlog.get_logger(__name__)

Value = State | time | str | Candy | Position | Target | None

WATCHED = ("state", "bedtime", "zone", "candy", "chosen", "target")
"""What is compared before and after each event."""

TOLD = (happened.Told, happened.NightEntered, happened.Acknowledged, happened.Joined)
"""Events that are shown though they change nothing of that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One entry: `by` a clinician's name, or ``parent``, ``child``, ``clock``, ``channel`` with `named` false.

    `kind` is the event's word; `what` is the part that changed, from `old` to `new`, or empty.
    """

    at: datetime
    by: str
    named: bool
    kind: str
    what: str = ""
    old: Value = None
    new: Value = None
    words: str = ""


def entries(history: Iterable[tuple[datetime, Case | Event]]) -> list[Entry]:
    """All entries, oldest first. What an older program decided otherwise ends the comparison, not the list."""
    found: list[Entry] = []
    case: Case | None = None
    for at, event in history:
        if isinstance(event, Case):
            case = event
            continue
        after = _after(case, event, at)
        found += _compared(case, after, event, at)
        case = after
    return found


def _after(case: Case | None, event: Event, at: datetime) -> Case | None:
    if case is None:
        return None
    try:
        return decide(case, event, at).case
    except (ValueError, LookupError, TypeError, ArithmeticError):
        log.warning("history_not_replayed", case=case.id, kind=kind_of(event))
        return None


def _compared(before: Case | None, after: Case | None, event: Event, at: datetime) -> Iterator[Entry]:
    by, named = _who(before, event)
    words = getattr(event, "note", "") or (event.text if isinstance(event, happened.Told) else "")
    kind = kind_of(event)
    shown = 0
    for what in WATCHED if before and after else ():
        old, new = _part(before, what), _part(after, what)
        if old != new:
            shown += 1
            yield Entry(at=at, by=by, named=named, kind=kind, what=what, old=old, new=new, words=words)
    if not shown and (isinstance(event, TOLD) or (named and after is None)):
        yield Entry(at=at, by=by, named=named, kind=kind, words=words)


def _part(case: Case | None, what: str) -> Value:
    if case is None:
        return None
    if what == "candy":
        return case.protocol.candy(case.practised + 1)
    value: Value = getattr(case, what)
    return value


def _who(case: Case | None, event: Event) -> tuple[str, bool]:
    if name := getattr(event, "by", ""):
        return name, True
    contact = getattr(event, "contact", None)
    if isinstance(event, happened.Joined):
        return str(event.role), False
    if isinstance(event, happened.Replied | happened.Pressed) and case and contact:
        return str(case.contact(contact).role), False
    return ("channel" if isinstance(event, happened.SendEnded) else "clock"), False

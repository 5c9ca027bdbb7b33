"""The alerts page: what must be taken on, the words that decided, who has been told, and what comes next."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from hashlib import sha256

from starlette.responses import JSONResponse, Response

from coachbot.coach.alerts import MISSED, STUCK, UNDELIVERED, UNREACHABLE
from coachbot.coach.case import Alert, Case, State
from coachbot.desk.talk import Saying, sayings
from coachbot.desk.visit import Visit
from coachbot.programme.protocol import Step
from coachbot.service.front_desk import SETTING as FRONT_DESK
from coachbot.store import Message, Note, Transaction, Written
from coachbot.store.envelopes import Status
from coachbot.triage import Level

AROUND = timedelta(hours=6)
"""How much of the conversation is shown before an alert's message, and after it."""

MOST_AROUND = 12
"""Messages of it at most."""

OURS = (MISSED, "lesson", UNREACHABLE, UNDELIVERED, STUCK)
"""Categories of alerts that we raise ourselves: no words of a family decided."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One clinician who was told of an alert: how often, when last, and how that message fared."""

    name: str
    times: int
    at: datetime
    status: Status
    delivered: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """An open alert with all that a clinician needs to act; `stranger` where it belongs to no family."""

    case: Case
    alert: Alert
    stranger: bool
    message: Message | None
    around: Sequence[Saying]
    told: Sequence[Told]
    then: Step | None
    notes: Sequence[Note]

    @property
    def held(self) -> bool:
        """Whether practice is on hold."""
        return self.case.state is State.ON_HOLD

    @property
    def ours(self) -> bool:
        """Whether we raised it ourselves."""
        return self.alert.category in OURS


async def alerts(visit: Visit) -> Response:
    """All open alerts and unread messages."""
    shown, unread, stamp = await visit.read(_all)
    await visit.note("alerts", *{one.case.id for one in shown})
    return await visit.page("alerts.html", shown=shown, unread=unread, stamp=stamp, done=visit.query("done"))


async def listed(visit: Visit) -> Response:
    """Only the list, for a page that is open already."""
    shown, unread, stamp = await visit.read(_all)
    await visit.note("alerts", *{one.case.id for one in shown})
    return visit.fragment("alerts_list.html", shown=shown, unread=unread, stamp=stamp)


async def pulse(visit: Visit) -> Response:
    """Whether anything has changed: asked for every few seconds by pages that are open."""
    keys = await visit.read(_keys)
    return JSONResponse({"stamp": _stamp(keys), "alerts": len(keys[0])})


async def read_message(visit: Visit) -> Response:
    """A clinician has read a message that the coach could not."""
    number, by = int(visit.request.path_params["message"]), visit.name
    await visit.transact(lambda tx: tx.messages.mark_read(number, by, visit.now))
    return visit.go("/alerts#unread")


def _keys(tx: Transaction) -> tuple[list[tuple[int, int, int]], dict[int, int]]:
    return tx.board.open_alerts(), tx.board.unread()


def _stamp(keys: object) -> str:
    return sha256(repr(keys).encode()).hexdigest()[:16]


def _all(tx: Transaction) -> tuple[list[Shown], list[tuple[Message, Case | None]], str]:
    keys = _keys(tx)
    cases = {case_id: tx.cases.load(case_id) for case_id in {case_id for case_id, _, _ in keys[0]}}
    names = {one.id: one.name for one in tx.clinicians.all()}
    front = int(tx.clinic.get(FRONT_DESK) or 0)
    talks = {case_id: tx.conversation(case_id) for case_id in cases}
    shown = [
        _shown(tx, cases[case_id], number, talks[case_id], names, stranger=case_id == front)
        for case_id, number, _ in keys[0]
    ]
    unread = [(one, tx.cases.load(one.case_id) if one.case_id else None) for one in tx.messages.unread()]
    return shown, unread, _stamp(keys)


def _shown(
    tx: Transaction,
    case: Case,
    number: int,
    talk: Sequence[Message | Written],
    names: dict[int, str],
    *,
    stranger: bool,
) -> Shown:
    alert = case.alerts[number - 1]
    message = tx.messages.get(alert.message) if alert.message else None
    return Shown(
        case=case,
        alert=alert,
        stranger=stranger,
        message=message,
        around=[] if stranger else _around(case, talk, message.at if message else alert.raised),
        told=list(_told(talk, number, names)),
        then=_then(case, alert),
        notes=[note for note in tx.notes.of_case(case.id) if note.alert in (None, number) and note.kind != "screening"],
    )


def _around(case: Case, talk: Sequence[Message | Written], at: datetime) -> list[Saying]:
    near = [one for one in sayings(case, talk) if abs(one.at - at) <= AROUND]
    before = [one for one in near if one.at <= at][-MOST_AROUND // 2 :]
    return before + [one for one in near if one.at > at][: MOST_AROUND // 2]


def _told(talk: Sequence[Message | Written], number: int, names: dict[int, str]) -> Iterator[Told]:
    about = [one for one in talk if isinstance(one, Written) and one.key.startswith(f"alert:{number}:")]
    for clinician, name in names.items():
        if sent := [one for one in about if one.clinician_id == clinician]:
            last = sent[-1]
            at = last.settled_at or last.created_at
            yield Told(name=name, times=len(sent), at=at, status=last.status, delivered=last.delivered)


def _then(case: Case, alert: Alert) -> Step | None:
    """Whom the next step of its ladder reaches."""
    ladder = case.protocol.ladder if alert.level >= Level.URGENT else case.protocol.calm_ladder
    return ladder[min(alert.steps, len(ladder) - 1)] if alert.next_step else None

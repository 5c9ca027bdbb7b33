"""The buttons: each is an event for the coach, made out of a form. Nothing else at the desk changes a case."""

from collections.abc import Callable

from starlette.responses import Response

from coachbot.coach import events as happened
from coachbot.coach.case import Case
from coachbot.coach.events import Event
from coachbot.desk import fields
from coachbot.desk.visit import FormError, Visit
from coachbot.store import Note, Transaction


async def do(visit: Visit) -> Response:
    """Let one event happen to a case."""
    deed = visit.request.path_params["deed"]
    if deed not in DEEDS:
        raise FormError("choice-needed")

    def work(tx: Transaction) -> None:
        case = tx.cases.load(visit.case_id)
        visit.desk.coachbot.deciding.happen(tx, case, DEEDS[deed](visit, case), visit.now)

    await visit.transact(work)
    return visit.go(_back(visit, deed))


async def note(visit: Visit) -> Response:
    """Write a note for colleagues, or that the family was called."""
    kind = visit.field("kind")
    if kind not in ("note", "call"):
        raise FormError("choice-needed")
    alert = visit.field("alert")
    kept = Note(
        case_id=visit.case_id,
        alert=int(alert) if alert.isdecimal() else None,
        at=visit.now,
        by=visit.name,
        kind=kind,
        words=fields.words(visit, "note"),
    )

    def work(tx: Transaction) -> None:
        tx.cases.load(visit.case_id)
        tx.notes.add(kept)

    await visit.transact(work)
    return visit.go(_back(visit, kind))


def _back(visit: Visit, deed: str) -> str:
    page = "/alerts" if visit.field("back") == "alerts" else f"/children/{visit.case_id}"
    return f"{page}?done={deed}"


def _acknowledged(visit: Visit, _: Case) -> Event:
    return happened.Acknowledged(
        by=visit.name, alert=fields.number(visit, "alert", 1, 999_999), note=visit.field("note")
    )


def _paused(visit: Visit, _: Case) -> Event:
    until = fields.day(visit, "until") if visit.field("until") else None
    if until and until <= visit.now.date():
        raise FormError("date-past", given=str(until))
    return happened.Paused(by=visit.name, until=until)


def _bedtime(visit: Visit, _: Case) -> Event:
    return happened.BedtimeSet(by=visit.name, at=fields.clock(visit, "at"), zone=fields.zone_name(visit, "zone"))


def _call_back(visit: Visit, case: Case) -> Event:
    return happened.Told(by=visit.name, text=visit.desk.wording.text(case.language, "call-back-words"))


def _followed_up(visit: Visit, _: Case) -> Event:
    return happened.FollowedUp(by=visit.name, position=fields.position(visit, "position"), note=visit.field("note"))


DEEDS: dict[str, Callable[[Visit, Case], Event]] = {
    "acknowledge": _acknowledged,
    "lift": lambda visit, _: happened.HoldLifted(by=visit.name, note=fields.words(visit, "note")),
    "hold": lambda visit, _: happened.Held(by=visit.name, note=fields.words(visit, "note")),
    "end": lambda visit, _: happened.Ended(by=visit.name, note=fields.words(visit, "note")),
    "pause": _paused,
    "resume": lambda visit, _: happened.Resumed(by=visit.name),
    "bedtime": _bedtime,
    "candy": lambda visit, _: happened.CandySet(by=visit.name, candy=fields.candy(visit, "kind", "size")),
    "tell": lambda visit, _: happened.Told(by=visit.name, text=fields.words(visit, "words")),
    "call-back": _call_back,
    "follow-up": _followed_up,
}
"""The buttons by name, as forms and addresses have them."""

"""Files to read, print and fill in: report, certificate, rating sheets; and the entry of a filled sheet."""

import asyncio

from starlette.responses import Response

from coachbot.coach.case import Case, Swallow
from coachbot.coach.events import NightEntered
from coachbot.desk import fields
from coachbot.desk.fields import Fault, Faults
from coachbot.desk.visit import FormError, Visit
from coachbot.programme.zones import local
from coachbot.reading.readings import Mark, Word
from coachbot.report.followup import followup
from coachbot.report.sheets import sheets
from coachbot.store import Transaction
from coachbot.voice.certificate import certificate as draw_certificate

MEDIA = {"pdf": "application/pdf", "png": "image/png"}

MARKS: dict[str, Mark] = {**{str(rating): rating for rating in range(1, 6)}, **{str(word): word for word in Word}}
"""What can be entered for a swallow, besides nothing."""


def file(name: str, media: str, data: bytes) -> Response:
    """A file to keep."""
    return Response(data, media_type=media, headers={"content-disposition": f'attachment; filename="{name}"'})


async def report(visit: Visit) -> Response:
    """The follow-up report, to be read with the child and so in the family's language."""
    form = visit.request.path_params["form"]
    if form not in MEDIA:
        raise FormError("choice-needed")
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    data = await asyncio.to_thread(followup, case, language=case.language, form=form)
    return file(f"report-{case.id}.{form}", MEDIA[form], data)


async def certificate(visit: Visit) -> Response:
    """The child's certificate."""
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    data = await asyncio.to_thread(draw_certificate, case.child.name, case.practised, case.language)
    return file(f"certificate-{case.id}.png", MEDIA["png"], data)


async def rating_sheets(visit: Visit) -> Response:
    """Sheets for the nights still to come, for a family without a phone."""
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    data = await asyncio.to_thread(sheets, case, language=case.language)
    return file(f"sheets-{case.id}.pdf", MEDIA["pdf"], data)


async def entry(visit: Visit) -> Response:
    """The form for a filled sheet."""
    return await _page(visit, [])


async def enter(visit: Visit) -> Response:
    """Enter a night from its sheet."""
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    faults = Faults(visit)
    event = _event(visit, faults, case)
    if event is None:
        return await _page(visit, faults.found)

    def work(tx: Transaction) -> None:
        visit.desk.coachbot.deciding.happen(tx, tx.cases.load(visit.case_id), event, visit.now)

    await visit.transact(work)
    return visit.go(f"/children/{case.id}/night?done=night")


def _event(visit: Visit, faults: Faults, case: Case) -> NightEntered | None:
    today = local(visit.now, case.zone).date()
    day = faults.take("day", None, fields.day, "day")
    if day and day > today:
        faults.add("day", "date-future", given=str(day))
    marks = {one: visit.field(f"mark-{one}") for one in case.protocol.positions}
    if unknown := [mark for mark in marks.values() if mark and mark not in MARKS]:
        faults.add("marks", "mark-wrong", given=unknown[0])
    elif not any(marks.values()):
        faults.add("marks", "marks-needed")
    best = faults.take("best", None, fields.position, "best")
    if faults.found or day is None:
        return None
    swallows = tuple(Swallow(position=one, mark=MARKS[mark]) for one, mark in marks.items() if mark)
    return NightEntered(by=visit.name, day=day, swallows=swallows, best=best, note=visit.field("note") or None)


async def _page(visit: Visit, faults: list[Fault]) -> Response:
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    turn = case.finished_orders
    return await visit.page(
        "night.html",
        status=422 if faults else 200,
        case=case,
        order=case.orders[turn] if turn < len(case.orders) and not case.complete else (),
        turn=turn + 1,
        faults={fault.field: fault.said for fault in faults},
        marks=tuple(MARKS),
        today=local(visit.now, case.zone).date(),
        done=visit.query("done"),
    )

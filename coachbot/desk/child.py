"""One child: the nights as a grid, the courses, the estimate, the conversation, what changed, and all buttons."""

import asyncio
from collections.abc import Sequence
from dataclasses import dataclass

from starlette.responses import Response

from coachbot.coach.case import Case, Night, State, Status
from coachbot.coach.finish import first_and_last
from coachbot.desk import changes, target
from coachbot.desk.changes import Entry
from coachbot.desk.plots import bars, course
from coachbot.desk.talk import Saying, sayings
from coachbot.desk.visit import Visit
from coachbot.insight.favourite import Estimate, estimate
from coachbot.insight.record import swallows
from coachbot.programme.positions import Position
from coachbot.programme.zones import local
from coachbot.store import Accessed, Note, Transaction

LAST_FEW = 3
"""Practised nights on which readiness looks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """All that is kept about one child and shown on its page."""

    case: Case
    talk: Sequence[Saying]
    entries: Sequence[Entry]
    notes: Sequence[Note]
    access: Sequence[Accessed]


@dataclass(frozen=True, slots=True, kw_only=True)
class Adherence:
    """Evenings counted: `practised` is finished and partial together; `unsent` is our fault."""

    evenings: int
    finished: int
    partial: int
    missed: int
    unsent: int


async def child(visit: Visit) -> Response:
    """The page."""
    record = await visit.read(lambda tx: read(tx, visit.case_id))
    case = record.case
    found = await asyncio.to_thread(_estimate, case)
    return await visit.page(
        "child.html",
        record=record,
        case=case,
        estimate=found,
        firsts=first_and_last(case),
        adherence=adherence(case),
        ready=ready(case, found.favourite),
        courses={one: _course(visit, case, one) for one in case.protocol.positions},
        shares=bars(
            {visit.word("position", position=one): found.probability[one] for one in case.protocol.positions},
            visit.t("shares-title"),
        ),
        night_notes=list(notes(case)),
        ladder=target.ladder(visit, case),
        ladder_drawing=target.drawing(visit, case),
        written=target.written,
        local=lambda at: local(at, case.zone),
        done=visit.query("done"),
        ended=case.state in (State.WITHDRAWN, State.FOLLOWED_UP),
    )


def read(tx: Transaction, case_id: int) -> Record:
    """The record of a child, out of the store."""
    case = tx.cases.load(case_id)
    return Record(
        case=case,
        talk=sayings(case, tx.conversation(case_id)),
        entries=changes.entries(tx.cases.history(case_id)),
        notes=tx.notes.of_case(case_id),
        access=tx.access.of_case(case_id),
    )


def adherence(case: Case) -> Adherence:
    """How the evenings ended."""
    count = [night.status for night in case.nights].count
    return Adherence(
        evenings=len(case.nights),
        finished=count(Status.FINISHED),
        partial=count(Status.PARTIAL),
        missed=count(Status.MISSED),
        unsent=count(Status.UNSENT),
    )


def ready(case: Case, favourite: Position | None) -> bool | None:
    """Whether it went down with the favourite on each of the last three practised nights; None if there are fewer."""
    nights = [night for night in case.nights if night.status in (Status.FINISHED, Status.PARTIAL)][-LAST_FEW:]
    if favourite is None or len(nights) < LAST_FEW:
        return None
    return all(isinstance(night.mark(favourite), int) for night in nights)


def notes(case: Case) -> Sequence[tuple[Night, Position | None, str]]:
    """What the family noted, with its night, and its position if it was about one."""
    found: list[tuple[Night, Position | None, str]] = []
    for night in case.nights:
        found += [(night, swallow.position, swallow.note) for swallow in night.swallows if swallow.note]
        found += [(night, None, night.note)] if night.note else []
    return found


def _estimate(case: Case) -> Estimate:
    return estimate(case.protocol.positions, swallows(case))


def _course(visit: Visit, case: Case, position: Position) -> object:
    return course(
        case.nights,
        position,
        visit.t("course-title", position=visit.word("position", position=position)),
        visit.t("not-down-short"),
    )

"""What the follow-up report shows of a case, as a value: the seam between the estimates and the drawing."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Literal

from coachbot.coach.case import Case, Night, State, Status
from coachbot.coach.finish import favourite, first_and_last
from coachbot.coach.hold import WATCHED
from coachbot.insight.record import swallows
from coachbot.insight.summary import ChildSummary, child_summary
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy
from coachbot.programme.zones import local
from coachbot.reading.readings import Mark

Readiness = Literal["held", "not-yet", "unclear", "yes"]

LEVEL = 0.02
"""Positions whose probabilities differ by less are level. Common practice, no source."""

PRACTISED = (Status.FINISHED, Status.PARTIAL)


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """One column of the grid. `day` is the local date."""

    number: int
    day: date
    status: Status
    marks: Mapping[Position, Mark]
    best: Position | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """What somebody wrote about a night, or about one position of it."""

    night: int
    position: Position | None
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """A sign of choking or of trouble with breathing that was told of, and whether the clinic has looked at it."""

    category: str
    day: date
    seen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """All that the report shows. `candies` are the candies by the evening from which they were used."""

    name: str
    positions: tuple[Position, ...]
    evenings: tuple[Evening, ...]
    candies: tuple[tuple[int, Candy], ...]
    planned: int
    summary: ChildSummary
    first: Position | None
    last: Position | None
    notes: tuple[Note, ...]
    stops: tuple[Stop, ...]
    held: bool
    chosen: Position | None
    emergency: str

    def count(self, *statuses: Status) -> int:
        """How many evenings stand so."""
        return sum(evening.status in statuses for evening in self.evenings)

    @property
    def practised(self) -> int:
        """How many nights were practised, wholly or in part."""
        return self.count(*PRACTISED)

    @property
    def ahead(self) -> Position | None:
        """The favourite, unless another is level with it."""
        found = self.summary.estimate
        best, second = sorted(found.probability.values(), reverse=True)[:2]
        return found.favourite if best - second >= LEVEL else None

    @property
    def readiness(self) -> Readiness:
        """Whether the next step may be talked about; whatever speaks against it comes first."""
        if self.held:
            return "held"
        if not self.summary.ready:
            return "not-yet"
        return "yes" if self.summary.estimate.clear else "unclear"


def view(case: Case) -> View:
    """The case as its report shows it.

    Signs of choking are named; other alerts are not, since what a child or a parent said in confidence must not come
    out on a page that the whole family reads.
    """
    positions = case.protocol.positions
    named = {night.number: night.best for night in case.nights if night.best}
    first, last = first_and_last(case)
    return View(
        name=case.child.name,
        positions=positions,
        evenings=tuple(map(_evening, case.nights)),
        candies=tuple(_candies(case.nights)),
        planned=case.protocol.nights,
        summary=child_summary(positions, swallows(case), evenings=len(case.nights), named=named),
        first=first,
        last=last,
        notes=tuple(note for night in case.nights for note in _notes(night)),
        stops=tuple(
            Stop(category=alert.category, day=local(alert.raised, case.zone).date(), seen=not alert.open)
            for alert in case.alerts
            if alert.category in WATCHED
        ),
        held=case.state is State.ON_HOLD,
        chosen=case.chosen,
        emergency=case.protocol.emergency_number,
    )


def _evening(night: Night) -> Evening:
    return Evening(
        number=night.number,
        day=night.day,
        status=night.status,
        marks={swallow.position: swallow.mark for swallow in night.swallows},
        best=favourite(night),
    )


def _candies(nights: tuple[Night, ...]) -> list[tuple[int, Candy]]:
    found: list[tuple[int, Candy]] = []
    for night in nights:
        if not found or found[-1][1] != night.candy:
            found.append((night.number, night.candy))
    return found


def _notes(night: Night) -> list[Note]:
    own = [Note(night=night.number, position=one.position, text=one.note) for one in night.swallows if one.note]
    return [*own, *([Note(night=night.number, position=None, text=night.note)] if night.note else [])]

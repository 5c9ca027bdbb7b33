"""What the follow-up report shows of a case, as a value: the seam between the estimates and the drawing."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from coachbot.coach.case import Case, Night, State, Status
from coachbot.coach.finish import favourite, first_and_last
from coachbot.coach.hold import WATCHED
from coachbot.insight.favourite import Estimate, estimate
from coachbot.insight.record import swallows
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy
from coachbot.programme.zones import local
from coachbot.reading.readings import Mark, Word

READY_NIGHTS = 3
"""Readiness looks at this many of the last practised nights."""

PRACTISED = (Status.FINISHED, Status.PARTIAL)


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One swallow on a course: the evening, and its rating or None when the candy did not go down."""

    night: int
    rating: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """Where a position stands on one evening, on the scale of the ratings, and the band that it most likely lies in."""

    night: int
    mean: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """One position over the fortnight. `down` of `tries` swallows went down; what was skipped is no try."""

    position: Position
    points: tuple[Point, ...]
    levels: tuple[Level, ...]
    down: int
    tries: int


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
    """All that the report shows. `ready` says of each of the last practised nights whether the favourite went down.

    `candies` are the candies by the evening from which they were used.
    """

    name: str
    positions: tuple[Position, ...]
    evenings: tuple[Evening, ...]
    candies: tuple[tuple[int, Candy], ...]
    planned: int
    estimate: Estimate
    first: Position | None
    last: Position | None
    courses: tuple[Course, ...]
    ready: tuple[bool, ...]
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
    def is_ready(self) -> bool:
        """Whether the favourite went down on all of the last practised nights, of which there must be enough."""
        return len(self.ready) == READY_NIGHTS and all(self.ready)


def view(case: Case) -> View:
    """The case as its report shows it.

    Signs of choking are named; other alerts are not, since what a child or a parent said in confidence must not come
    out on a page that the whole family reads.
    """
    positions = case.protocol.positions
    guess = estimate(positions, swallows(case))
    first, last = first_and_last(case)
    return View(
        name=case.child.name,
        positions=positions,
        evenings=tuple(map(_evening, case.nights)),
        candies=tuple(_candies(case.nights)),
        planned=case.protocol.nights,
        estimate=guess,
        first=first,
        last=last,
        courses=tuple(_course(case.nights, position) for position in positions),
        ready=_ready(case.nights, guess.favourite),
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


def _course(nights: tuple[Night, ...], position: Position) -> Course:
    marks = [(night.number, mark) for night in nights if (mark := night.mark(position)) not in (None, Word.SKIPPED)]
    points = [Point(night=number, rating=mark if isinstance(mark, int) else None) for number, mark in marks]
    down = sum(point.rating is not None for point in points)
    return Course(position=position, points=tuple(points), levels=(), down=down, tries=len(points))


def _ready(nights: tuple[Night, ...], position: Position | None) -> tuple[bool, ...]:
    practised = [night for night in nights if night.status in PRACTISED]
    if position is None:
        return ()
    return tuple(isinstance(night.mark(position), int) for night in practised[-READY_NIGHTS:])


def _notes(night: Night) -> list[Note]:
    own = [Note(night=night.number, position=one.position, text=one.note) for one in night.swallows if one.note]
    return [*own, *([Note(night=night.number, position=None, text=night.note)] if night.note else [])]

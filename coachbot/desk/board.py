"""The caseload, kept in memory: a line for each child, opened anew only when its case has changed.

The estimates take longest, so they are worked out between requests, and again only after new swallows.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from statistics import fmean
from threading import Lock

from coachbot.coach.case import Case, Night, State, Status
from coachbot.coach.finish import favourite
from coachbot.insight.favourite import Estimate, estimate
from coachbot.insight.record import swallows
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position
from coachbot.service.front_desk import SETTING as FRONT_DESK
from coachbot.store import Transaction

Swallows = tuple[Swallow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """What the caseload shows of one child. `mean` is that of the last practised night, `down` of `tried` went down."""

    case_id: int
    child: str
    state: State
    practised: int
    nights: int
    evenings: tuple[tuple[date, Status], ...]
    missed: int
    missed_in_a_row: int
    missed_limit: int
    mean: float | None
    down: int
    tried: int
    best: Position | None
    paused_until: date | None
    zone: str
    positions: tuple[Position, ...]
    swallows: Swallows


@dataclass(frozen=True, slots=True)
class Row:
    """A line with what is known of it besides: open alerts, their worst level, unread messages, the estimate."""

    line: Line
    alerts: int
    level: int
    unread: int
    estimate: Estimate | None

    @property
    def waits(self) -> bool:
        """Whether it waits for a clinician."""
        held = self.line.state is State.ON_HOLD
        return bool(self.alerts or self.unread or held or self.line.missed_in_a_row >= self.line.missed_limit)

    @property
    def weight(self) -> tuple[int, bool, int, int]:
        """How much it waits: the greater, the sooner."""
        return (self.level, self.line.state is State.ON_HOLD, self.unread, self.line.missed_in_a_row)


@dataclass(slots=True)
class Board:
    """All lines, each with the version of the case that it was made from, and all estimates with their swallows.

    Several readers of the store may ask at once, each in a thread of its own.
    """

    _lines: dict[int, tuple[int, Line]] = field(default_factory=dict)
    _estimates: dict[int, tuple[Swallows, Estimate]] = field(default_factory=dict)
    _lock: Lock = field(default_factory=Lock)

    def rows(self, tx: Transaction) -> list[Row]:
        """Every child's row, as of this transaction."""
        with self._lock:
            self._renew(tx)
            lines = [line for _, line in self._lines.values()]
        unread = tx.board.unread()
        levels: dict[int, list[int]] = {}
        for case_id, _, level in tx.board.open_alerts():
            levels.setdefault(case_id, []).append(level)
        return [self._row(line, levels.get(line.case_id, []), unread) for line in lines]

    def outstanding(self) -> list[Line]:
        """The lines whose estimate is not worked out yet."""
        with self._lock:
            lines = [line for _, line in self._lines.values()]
        return [line for line in lines if line.swallows and self._known(line) is None]

    def work_out(self, line: Line) -> Estimate:
        """Work out one line's estimate and keep it."""
        found = estimate(line.positions, line.swallows)
        self._estimates[line.case_id] = (line.swallows, found)
        return found

    def _renew(self, tx: Transaction) -> None:
        versions = tx.board.versions()
        versions.pop(int(tx.clinic.get(FRONT_DESK) or 0), None)
        for gone in self._lines.keys() - versions.keys():
            del self._lines[gone]
            self._estimates.pop(gone, None)
        stale = [case_id for case_id, version in versions.items() if self._lines.get(case_id, (-1,))[0] != version]
        for version, case in tx.board.cases(stale):
            self._lines[case.id] = (version, line(case))

    def _row(self, line: Line, levels: list[int], unread: Mapping[int, int]) -> Row:
        return Row(line, len(levels), max(levels, default=0), unread.get(line.case_id, 0), self._known(line))

    def _known(self, line: Line) -> Estimate | None:
        of, found = self._estimates.get(line.case_id, ((), None))
        return found if of == line.swallows else None


def line(case: Case) -> Line:
    """The line of one case."""
    nights = list(_practised(case))
    last = nights[-1] if nights else None
    ratings = [one.mark for one in last.swallows if isinstance(one.mark, int)] if last else []
    return Line(
        case_id=case.id,
        child=case.child.name,
        state=case.state,
        practised=case.practised,
        nights=case.protocol.nights,
        evenings=tuple((night.day, night.status) for night in case.nights),
        missed=sum(night.status is Status.MISSED for night in case.nights),
        missed_in_a_row=case.missed_in_a_row,
        missed_limit=case.protocol.missed_limit,
        mean=fmean(ratings) if ratings else None,
        down=len(ratings),
        tried=len(last.swallows) if last else 0,
        best=next(filter(None, map(favourite, reversed(nights))), None),
        paused_until=case.paused_until,
        zone=case.zone,
        positions=case.protocol.positions,
        swallows=swallows(case),
    )


def _practised(case: Case) -> Iterator[Night]:
    return (night for night in case.nights if night.status in (Status.FINISHED, Status.PARTIAL))

"""What may be told of a cohort: its figures without small cells, for the study page and the study files alike.

A count of 1 to 4 children is told as ``<5``, and one of all but 1 to 4 as more than the rest: it would tell as much.
A share of such a count is bounded, and so is its interval. Where a total would give away the one cell left out, the
next smallest is left out too (complementary suppression). The curve of staying steps only where so many families have
stopped since its last step. Whoever lays figures of different days side by side can still learn more than one of them
tells: that is why looking at them is written down.
"""

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate
from types import MappingProxyType

from coachbot.insight.blocks import Difference
from coachbot.insight.cohort import (
    Participant,
    PlaceEffect,
    Share,
    Staying,
    adherence,
    favourites,
    got_down,
    last_down,
    last_tries,
    off_centre,
    place_effects,
    share,
    staying,
    wilson,
)
from coachbot.insight.export import SMALL_CELL, Column, small, suppressed
from coachbot.programme.positions import Position

LEFT_OUT = "…"
"""A count left out so that another cannot be worked out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A share as it may be told.

    `count` and `total` are counts or bounds of them (``<5``, ``>37``), `share` the share or None if it may not be
    told; `low` and `high` bound it, with the interval of the least and of the most that `count` can be. Where nothing
    but the total may be told, `count` is empty and all of these are None.
    """

    count: str
    total: str
    share: float | None
    low: float | None
    high: float | None

    @property
    def percent(self) -> str:
        """The share in whole percent, or a bound of it as ``<12`` or ``>88``; empty if there is none."""
        if self.share is not None:
            return str(round(100 * self.share))
        if not self.count:
            return ""
        few = SMALL_CELL / int(self.total)
        return f"<{math.ceil(100 * few)}" if self.count.startswith("<") else f">{math.floor(100 * (1 - few))}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """The figures of a cohort of `children`.

    Maps are by night (`adherence`), first and last favourite (`favourites`) and position (`down`). `staying` is empty
    where `stopped`, the families who did, are too few to be told.
    """

    children: int
    positions: tuple[Position, ...]
    adherence: Mapping[int, Told]
    stopped: Told
    staying: tuple[Staying, ...]
    favourites: Mapping[tuple[Position, Position], str]
    off_centre: Told
    down: Mapping[Position, Told]
    differs: Difference | None
    places: tuple[PlaceEffect, ...]


COLUMNS = (
    Column(
        name="figure",
        meaning="adherence, staying (Kaplan-Meier), favourites (first to last), off_centre, went_down (last try), "
        "differs (Cochran's Q of went_down), place (rating less the night's mean)",
        unit="name",
        pattern="adherence|staying|favourites|off_centre|went_down|differs|place",
    ),
    Column(
        name="of",
        meaning="night, position, first favourite or place in the order",
        unit="number or position",
        pattern="[1-9][0-9]?|" + "|".join(Position),
    ),
    Column(name="to", meaning="last favourite", unit="position", pattern="|".join(Position)),
    Column(
        name="children",
        meaning="children counted, a bound where few, … where another could be worked out",
        unit="number",
        pattern=f"[<>]?[0-9]{{1,5}}|{LEFT_OUT}",
    ),
    Column(name="total", meaning="children of whom they are counted", unit="number", pattern="<?[0-9]{1,5}"),
    Column(
        name="value", meaning="share, mean or statistic, empty if few", unit="number", pattern=r"-?[0-9]{1,5}\.[0-9]{4}"
    ),
    Column(name="low", meaning="lower end of 95 %", unit="as value", pattern=r"-?[0-9]\.[0-9]{4}"),
    Column(name="high", meaning="upper end of 95 %", unit="as value", pattern=r"-?[0-9]\.[0-9]{4}"),
    Column(
        name="p", meaning="chance of so great a difference if there is none", unit="0 to 1", pattern=r"[01]\.[0-9]{4}"
    ),
)
"""The data dictionary of the figures, in the order of their table."""


def figures(cohort: Sequence[Participant]) -> Figures | None:
    """The figures of a cohort; None if it has fewer than `SMALL_CELL` children, of whom nothing can be told."""
    if len(cohort) < SMALL_CELL:
        return None
    positions = tuple(one for one in Position if any(one in child.positions for child in cohort))
    usual = Counter(frozenset(child.positions) for child in cohort).most_common(1)[0][0]
    return Figures(
        children=len(cohort),
        positions=positions,
        adherence=MappingProxyType({night: told(one) for night, one in adherence(cohort).items()}),
        stopped=told(share(sum(child.dropped_out for child in cohort), len(cohort))),
        staying=told_staying(cohort),
        favourites=MappingProxyType(told_favourites(favourites(cohort))),
        off_centre=told(off_centre(cohort)),
        down=MappingProxyType({position: told(last_down(cohort, position)) for position in positions}),
        differs=told_difference(cohort, [one for one in positions if one in usual]),
        places=tuple(one for one in place_effects(cohort) if one.children >= SMALL_CELL),
    )


def told(found: Share | None) -> Told:
    """A share as it may be told. Of a small total, where few and all but few run into each other, only the total is."""
    if found is None or found.total < SMALL_CELL:
        return Told(count="", total=suppressed(found.total if found else 0), share=None, low=None, high=None)
    rest = found.total - found.count
    if not (small(found.count) or small(rest)):
        part = found.count / found.total
        return Told(count=str(found.count), total=str(found.total), share=part, low=found.low, high=found.high)
    if found.total <= 2 * (SMALL_CELL - 1):
        return Told(count="", total=str(found.total), share=None, low=None, high=None)
    few = small(found.count)
    least, most = (1, SMALL_CELL - 1) if few else (found.total - SMALL_CELL + 1, found.total - 1)
    return Told(
        count=suppressed(found.count) if few else f">{found.total - SMALL_CELL}",
        total=str(found.total),
        share=None,
        low=wilson(least, found.total).low,
        high=wilson(most, found.total).high,
    )


def told_difference(cohort: Sequence[Participant], positions: Sequence[Position]) -> Difference | None:
    """Cochran's Q over enough children; None too if only few of them, on whom it rests, differ between positions."""
    rows = last_tries(cohort, positions)
    differing = sum(0 < sum(row) < len(row) for row in rows)
    return None if len(rows) < SMALL_CELL or small(differing) else got_down(cohort, positions)


def told_staying(cohort: Sequence[Participant]) -> tuple[Staying, ...]:
    """The curve of staying at nights by which `SMALL_CELL` families or more have stopped since the one before.

    Those who are left over at its end are told with the last step, which moves to the last night that any stopped on.
    """
    curve = staying(cohort)
    stopped = Counter(child.evenings for child in cohort if child.dropped_out)
    kept: list[Staying] = []
    seen = 0
    for point, gone in zip(curve, accumulate(stopped[point.night] for point in curve), strict=True):
        if gone - seen >= SMALL_CELL:
            kept.append(point)
            seen = gone
    return (*kept[:-1], curve[-1]) if kept else ()


def told_favourites(counts: Mapping[tuple[Position, Position], int]) -> dict[tuple[Position, Position], str]:
    """First and last favourites as they may be told; those that end at the centre and the others each have a total."""
    found = {moved: suppressed(count) for moved, count in counts.items()}
    for centre in (True, False):
        group = {moved: count for moved, count in counts.items() if (moved[1] is Position.CENTER) is centre}
        large = {moved: count for moved, count in group.items() if not small(count)}
        if large and len(group) - len(large) == 1:
            found[min(large, key=large.__getitem__)] = LEFT_OUT
    return found


def figures_table(found: Figures) -> Iterator[tuple[str, ...]]:
    """The figures as a table, with its header."""
    yield tuple(column.name for column in COLUMNS)
    for night, one in found.adherence.items():
        yield _share_row("adherence", str(night), one)
    for step in found.staying:
        yield _row("staying", of=str(step.night), numbers=(step.share, step.low, step.high))
    for (first, last), count in sorted(found.favourites.items()):
        yield _row("favourites", of=first, to=last, children=count)
    yield _share_row("off_centre", "", found.off_centre)
    for position, one in found.down.items():
        yield _share_row("went_down", position, one)
    if found.differs:
        of = found.differs
        yield _row("differs", children=str(of.rows), numbers=(of.statistic, None, None, of.p))
    for place in found.places:
        numbers = (place.mean, place.low, place.high)
        yield _row("place", of=str(place.place), children=str(place.children), numbers=numbers)


def _share_row(figure: str, of: str, one: Told) -> tuple[str, ...]:
    return _row(figure, of=of, children=one.count, total=one.total, numbers=(one.share, one.low, one.high))


def _row(
    figure: str,
    *,
    of: str = "",
    to: str = "",
    children: str = "",
    total: str = "",
    numbers: Sequence[float | None] = (),
) -> tuple[str, ...]:
    cells = ["" if number is None else f"{number:.4f}" for number in numbers]
    return (figure, of, to, children, total, *cells, *[""] * (4 - len(cells)))

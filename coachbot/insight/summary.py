"""What the clinician needs to see of one child beside the favourite, as data for the desk and the report to draw."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from coachbot.insight.blocks import Difference, Trend, friedman, page
from coachbot.insight.favourite import Estimate, estimate
from coachbot.insight.local_level import smoothed
from coachbot.insight.ratings_filter import likings
from coachbot.insight.swallows import BEST, Swallow
from coachbot.programme.positions import Position

NOT_DOWN = 0.0
"""What a candy that did not go down stands for among ratings of 1 to 5: worse than any."""

BAND = 1.645
"""Standard deviations on each side of a level: nine in ten."""

LAST_NIGHTS = 3
"""On so many practised nights, the last ones, the favourite must have gone down for the child to be ready."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CoursePoint:
    """How well a position was liked on a night, on the scale of 0 (not down) to 5, with a band of nine in ten."""

    night: int
    level: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DownRate:
    """How many candies went down, of those tried."""

    down: int
    tried: int

    @property
    def share(self) -> float | None:
        """The share that went down, None if none was tried."""
        return self.down / self.tried if self.tried else None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChildSummary:
    """One child's fortnight.

    `first_favourite` and `last_favourite` are what the child named, or rated alone highest, on the first and the last
    practised night that has one; `courses` is empty for a position never tried; `lately` counts the favourite on the
    last practised nights; `difference` says whether positions differ at all and `trend` whether ratings rise, over
    the nights that have all positions, None where these are too few.
    """

    estimate: Estimate
    first_favourite: Position | None
    last_favourite: Position | None
    courses: Mapping[Position, tuple[CoursePoint, ...]]
    got_down: Mapping[Position, DownRate]
    lately: DownRate
    practised: int
    evenings: int
    difference: Difference | None
    trend: Trend | None

    @property
    def ready(self) -> bool:
        """Whether the favourite went down on each of the last three practised nights."""
        return self.lately.down == LAST_NIGHTS

    @property
    def adherence(self) -> float | None:
        """The share of evenings that were practised, None before the first."""
        return self.practised / self.evenings if self.evenings else None


def child_summary(
    positions: Sequence[Position],
    swallows: Sequence[Swallow],
    *,
    evenings: int,
    named: Mapping[int, Position] | None = None,
) -> ChildSummary:
    """The summary of one child.

    Args:
        positions: those of its protocol.
        swallows: all so far, in any order.
        evenings: how many evenings there have been, practised or missed.
        named: by night, the position that the child named as the best.

    Raises:
        ValueError: as for `estimate`, or a swallow after the last evening.
    """
    found = estimate(positions, swallows)
    nights = sorted({swallow.night for swallow in swallows})
    if nights and nights[-1] > evenings:
        raise ValueError(
            f"there is a swallow on night {nights[-1]}, but only {evenings} evenings: count missed ones too"
        )
    bests = [best for night in nights if (best := night_favourite(swallows, night, named or {}))]
    difference, trend = _tests(positions, swallows, nights)
    return ChildSummary(
        estimate=found,
        first_favourite=bests[0] if bests else None,
        last_favourite=bests[-1] if bests else None,
        courses=MappingProxyType(_courses(positions, swallows)),
        got_down=MappingProxyType({one: down_rate([s for s in swallows if s.position is one]) for one in positions}),
        lately=down_rate([s for s in swallows if s.position is found.favourite and s.night in nights[-LAST_NIGHTS:]]),
        practised=len(nights),
        evenings=evenings,
        difference=difference,
        trend=trend,
    )


def night_favourite(swallows: Sequence[Swallow], night: int, named: Mapping[int, Position]) -> Position | None:
    """The position that the child named on a night, else the one that it rated alone highest."""
    if night in named:
        return named[night]
    ratings = {s.position: s.rating for s in swallows if s.night == night and s.went_down and s.rating is not None}
    best = [position for position, rating in ratings.items() if rating == max(ratings.values())]
    return best[0] if len(best) == 1 else None


def down_rate(swallows: Sequence[Swallow]) -> DownRate:
    """How many of the swallows went down."""
    return DownRate(down=sum(swallow.went_down for swallow in swallows), tried=len(swallows))


def value(swallow: Swallow) -> float | None:
    """The swallow on the scale of 0 (not down) to 5, None if it has no rating."""
    return swallow.rating if swallow.went_down else NOT_DOWN


def _courses(positions: Sequence[Position], swallows: Sequence[Swallow]) -> dict[Position, tuple[CoursePoint, ...]]:
    found = likings(positions, swallows)
    last = max((swallow.night for swallow in swallows), default=0)
    seen = {(swallow.position, swallow.night): value(swallow) for swallow in swallows}
    return {
        position: _course([seen.get((position, night)) for night in range(1, last + 1)], found.noise, found.drift)
        for position in positions
    }


def _course(seen: Sequence[float | None], noise: float, drift: float) -> tuple[CoursePoint, ...]:
    if all(one is None for one in seen):
        return ()
    return tuple(
        CoursePoint(
            night=night,
            level=_on_scale(level.mean),
            low=_on_scale(level.mean - BAND * math.sqrt(level.variance)),
            high=_on_scale(level.mean + BAND * math.sqrt(level.variance)),
        )
        for night, level in enumerate(smoothed(seen, noise, drift), 1)
    )


def _on_scale(level: float) -> float:
    return min(max(level, NOT_DOWN), float(BEST))


def _tests(
    positions: Sequence[Position], swallows: Sequence[Swallow], nights: Sequence[int]
) -> tuple[Difference | None, Trend | None]:
    seen = {(swallow.night, swallow.position): value(swallow) for swallow in swallows}
    rows = [[seen.get((night, position)) for position in positions] for night in nights]
    whole = [[one for one in row if one is not None] for row in rows if None not in row]
    if len(whole) < 2:  # noqa: PLR2004 - one night cannot agree with itself
        return None, None
    return friedman(whole), page(list(zip(*whole, strict=True)))

"""What the children of a clinic or a study say together: staying, practising, favourites, what goes down, tiredness."""

import math
import warnings
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from statistics import fmean
from types import MappingProxyType

import numpy as np
import scipy

from coachbot.insight.blocks import Difference, cochran
from coachbot.insight.summary import night_favourite, value
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position

CONFIDENCE = 0.95


@dataclass(frozen=True, slots=True, kw_only=True)
class Participant:
    """One child of a cohort, by a study code that tells nothing of it.

    `evenings` is how many are over, missed ones too; on the `unsent` ones our message did not come, so that nobody
    could practise; `named` is the best position by night, as the child named it; `dropped_out` says that the family
    stopped before the end, after the last of those evenings; `age` is in whole years where it may be told.
    """

    code: str
    positions: tuple[Position, ...]
    swallows: tuple[Swallow, ...]
    evenings: int
    named: Mapping[int, Position]
    unsent: frozenset[int] = frozenset()
    dropped_out: bool = False
    age: int | None = None

    @property
    def practised(self) -> frozenset[int]:
        """The nights with a swallow."""
        return frozenset(swallow.night for swallow in self.swallows)

    @property
    def favourites(self) -> tuple[Position, Position] | None:
        """The first and the last favourite, None if there was none."""
        found = [night_favourite(self.swallows, night, self.named) for night in sorted(self.practised)]
        known = [one for one in found if one]
        return (known[0], known[-1]) if known else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """A count of a total, with the interval of `CONFIDENCE` around its share."""

    count: int
    total: int
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Staying:
    """The share of families still in after a night on which some dropped out, with its interval."""

    night: int
    share: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceEffect:
    """How much higher than its night's mean a swallow is rated at a place of the order, over `children` children."""

    place: int
    children: int
    mean: float
    low: float
    high: float


def share(count: int, total: int) -> Share | None:
    """A share with its interval, None of nothing.

    Raises:
        ValueError: a count outside 0 to total.
    """
    if not 0 <= count <= total:
        raise ValueError(f"{count} of {total} is no share")
    return wilson(count, total) if total else None


def wilson(count: int, total: int) -> Share:
    """A share of one or more with Wilson's score interval (Wilson, JASA 1927;22:209)."""
    z = float(scipy.stats.norm.ppf((1 + CONFIDENCE) / 2))
    middle = (count + z**2 / 2) / (total + z**2)
    half = z / (total + z**2) * math.sqrt(count * (total - count) / total + z**2 / 4)
    low, high = middle - half if count else 0.0, middle + half if count < total else 1.0
    return Share(count=count, total=total, low=low, high=high)


def staying(cohort: Sequence[Participant]) -> tuple[Staying, ...]:
    """The Kaplan-Meier curve of staying in, with log-log intervals (Kaplan and Meier, JASA 1958;53:457).

    Who has not dropped out, being done or still at it, is censored after the last evening. Empty if nobody dropped
    out; before the first night given, all are in.
    """
    stopped = [child.evenings for child in cohort if child.dropped_out]
    if not stopped:
        return ()
    still_in = [child.evenings for child in cohort if not child.dropped_out]
    curve = scipy.stats.ecdf(scipy.stats.CensoredData(uncensored=stopped, right=still_in)).sf
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", RuntimeWarning)  # undefined where nobody is left: taken as 0 to 1
        interval = curve.confidence_interval(CONFIDENCE, method="log-log")
    lows = np.nan_to_num(interval.low.probabilities, nan=0.0)
    highs = np.nan_to_num(interval.high.probabilities, nan=1.0)
    points = zip(curve.quantiles, curve.probabilities, lows, highs, strict=True)
    return tuple(
        Staying(night=int(night), share=float(alive), low=float(low), high=float(high))
        for night, alive, low, high in points
        if night in stopped
    )


def adherence(cohort: Sequence[Participant]) -> Mapping[int, Share]:
    """By night, how many practised of the families who had that evening and got our message."""
    practised = [child.practised for child in cohort]
    nights = range(1, max((child.evenings for child in cohort), default=0) + 1)
    shares = {
        night: share(
            sum(night in nights for nights in practised),
            sum(night <= child.evenings and night not in child.unsent for child in cohort),
        )
        for night in nights
    }
    return MappingProxyType({night: one for night, one in shares.items() if one})


def favourites(cohort: Sequence[Participant]) -> Mapping[tuple[Position, Position], int]:
    """How many children went from which first favourite to which last one."""
    return MappingProxyType(Counter(child.favourites for child in cohort if child.favourites))


def off_centre(cohort: Sequence[Participant]) -> Share | None:
    """How many children's last favourite is not the centre, of those who tried the centre and have a favourite."""
    last = [child.favourites[1] for child in cohort if child.favourites and Position.CENTER in child.positions]
    return share(sum(one is not Position.CENTER for one in last), len(last))


def last_down(cohort: Sequence[Participant], position: Position) -> Share | None:
    """How many children's last candy in a position went down, of those who tried it."""
    lasts = [found[position] for child in cohort if position in (found := _lasts(child))]
    return share(sum(lasts), len(lasts))


def last_tries(cohort: Sequence[Participant], positions: Sequence[Position]) -> list[list[bool]]:
    """Whether the last candy tried went down, by position, for each child who has tried all of `positions`."""
    lasts = map(_lasts, cohort)
    return [[last[position] for position in positions] for last in lasts if last.keys() >= set(positions)]


def got_down(cohort: Sequence[Participant], positions: Sequence[Position]) -> Difference | None:
    """Cochran's Q: whether the last candy tried went down more often in some positions than in others.

    Children who have not tried all of `positions` are left out; None if none is left.
    """
    rows = last_tries(cohort, positions)
    return cochran(rows) if rows else None


def _lasts(child: Participant) -> dict[Position, bool]:
    """Whether the last candy that the child tried in each position went down."""
    return {one.position: one.went_down for one in sorted(child.swallows, key=lambda one: one.night)}


def place_effects(cohort: Sequence[Participant]) -> tuple[PlaceEffect, ...]:
    """How much a place of the order adds to a rating: within nights, averaged by child, then over children.

    The interval is Student's, over children, so that a child's nights are not taken for independent. Places that
    fewer than two children reached are left out.
    """
    by_place: dict[int, list[float]] = {}
    for child in cohort:
        for place, effect in _own_effects(child.swallows):
            by_place.setdefault(place, []).append(effect)
    known = {place: effects for place, effects in sorted(by_place.items()) if len(effects) > 1}
    return tuple(_place_effect(place, effects) for place, effects in known.items())


def _own_effects(swallows: Sequence[Swallow]) -> Iterator[tuple[int, float]]:
    """One child's mean difference from the night's mean, by place."""
    nights: dict[int, dict[int, float]] = {}
    for swallow in swallows:
        seen = value(swallow)
        if seen is not None:
            nights.setdefault(swallow.night, {})[swallow.place] = seen
    effects: dict[int, list[float]] = {}
    for night in nights.values():
        mean = fmean(night.values())
        for place, seen in night.items():
            effects.setdefault(place, []).append(seen - mean)
    for place, found in sorted(effects.items()):
        yield place, fmean(found)


def _place_effect(place: int, effects: Sequence[float]) -> PlaceEffect:
    mean, children = float(np.mean(effects)), len(effects)
    half = float(scipy.stats.t.ppf((1 + CONFIDENCE) / 2, children - 1) * np.std(effects, ddof=1) / math.sqrt(children))
    return PlaceEffect(place=place, children=children, mean=mean, low=mean - half, high=mean + half)

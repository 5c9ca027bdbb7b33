"""Which position the child likes best and gets down at the end, how sure that is, and whether that is enough.

The probability of a position is the chance that its liking is the highest among those that go down, drawn from the
likings of the last night (`ratings_filter`) and from how often the candy went down lately. Draws are fixed
(quasi-random, Owen, ACM TOMACS 1998;8:71), so the same swallows always give the same answer.
"""

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

import numpy as np
import scipy

from coachbot.insight.ratings_filter import Array, Likings, likings
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position

CLEAR = 0.84
"""A favourite at least so probable is clear. Of all that are, nine in ten are then right, since probabilities come true
and most lie well above: 0.93 over the worlds of tests/bench with 1,200 children of each, from 0.89 (one week, late
bloomers) to 0.97 (two positions)."""

LIKELY = 0.45
"""The chance of being clear on a further night from which that night is named: by then most have been so."""

MORE_NIGHTS = 14
"""The most further nights that are named."""

DOWN_PRIOR = (1.0, 0.2)
"""Swallows that went down and that did not, as if seen before the first: most candies go down."""

FORGETTING = 0.65
"""What a swallow's going down counts for a night later."""

ENOUGH_NIGHTS = 3
"""Practised nights before which nothing is called clear. Common practice, no source."""

_DRAWS = 64
_NEGLIGIBLE = 1e-2
"""Points of the grid under this share of the best one's weight are left out."""

_OUT = 100.0
"""So many steps of the scale down put a position last."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """The estimate for one child.

    `favourite` is the likeliest position, None where there is nothing to go by; `probability` sums to 1 over the
    positions; `clear` says that the favourite can be relied on; `more_nights` is how many more practised nights
    would likely settle it: 0 when clear, None when up to `MORE_NIGHTS` are not likely to.
    """

    favourite: Position | None
    probability: Mapping[Position, float]
    clear: bool
    more_nights: int | None


def estimate(positions: Sequence[Position], swallows: Sequence[Swallow]) -> Estimate:
    """The favourite of one child among `positions`, from all its `swallows` so far, in any order.

    Raises:
        ValueError: fewer than two positions, a position twice, a swallow in another position, or two swallows of one
            position in one night.
    """
    _check(positions, swallows)
    ordered = sorted(positions, key=list(Position).index)
    found = likings(ordered, swallows)
    chance = _probability(found, _goes_down(ordered, swallows))
    best = int(chance.argmax())
    practised = len({swallow.night for swallow in swallows})
    clear = practised >= ENOUGH_NIGHTS and bool(chance[best] >= CLEAR) and _last_down(ordered[best], swallows)
    return Estimate(
        favourite=ordered[best] if swallows else None,
        probability=MappingProxyType({position: float(chance[ordered.index(position)]) for position in positions}),
        clear=clear,
        more_nights=0 if clear else _more_nights(found, least=max(1, ENOUGH_NIGHTS - practised)),
    )


def _check(positions: Sequence[Position], swallows: Sequence[Swallow]) -> None:
    if len(positions) < 2 or len(set(positions)) < len(positions):  # noqa: PLR2004 - else there is nothing to choose
        raise ValueError(f"these are not two or more different positions: {', '.join(positions)}")
    seen = set()
    for swallow in swallows:
        if swallow.position not in positions:
            raise ValueError(f"night {swallow.night} has a swallow in {swallow.position}: add it to the positions")
        if (swallow.night, swallow.position) in seen:
            raise ValueError(f"night {swallow.night} has two swallows in {swallow.position}: keep the one that counts")
        seen.add((swallow.night, swallow.position))


def _last_down(position: Position, swallows: Sequence[Swallow]) -> bool:
    """Whether the position's last candy went down: else, however it was liked, it is not to be relied on."""
    tried = [swallow for swallow in swallows if swallow.position is position]
    return bool(tried) and max(tried, key=lambda swallow: swallow.night).went_down


def _goes_down(positions: Sequence[Position], swallows: Sequence[Swallow]) -> Array:
    """The chance that each position goes down more often than not at the end: beta posterior, the old fading."""
    counts = np.tile(DOWN_PRIOR, (len(positions), 1))
    last = max((swallow.night for swallow in swallows), default=0)
    for swallow in swallows:
        counts[positions.index(swallow.position), int(not swallow.went_down)] += FORGETTING ** (last - swallow.night)
    chance: Array = 1 - scipy.special.betainc(counts[:, 0], counts[:, 1], 0.5)
    return chance


def _probability(found: Likings, goes_down: Array) -> Array:
    """(k,) chances of being liked best among those that go down."""
    kept = found.weight > found.weight.max() * _NEGLIGIBLE
    size = len(goes_down)
    normal, uniform = _draws(size)
    drawn = found.mean[kept][:, None, :] + normal @ _root(found.covariance[kept]) - _OUT * (uniform > goes_down)
    best = drawn.argmax(axis=2)[:, :, None] == np.arange(size)
    chance: Array = found.weight[kept] @ best.mean(axis=1) / found.weight[kept].sum()
    return chance


@cache
def _draws(size: int) -> tuple[Array, Array]:
    """Normal and uniform draws for `size` positions, turned round so that each position has had each one's."""
    once = scipy.stats.qmc.Sobol(2 * size, rng=20).random(_DRAWS)
    uniform, other = (
        np.concatenate([np.roll(half, turn, axis=1) for turn in range(size)]) for half in np.split(once, 2, axis=1)
    )
    normal: Array = scipy.special.ndtri(np.clip(other, 1e-6, 1 - 1e-6))
    return normal, uniform


def _more_nights(found: Likings, least: int) -> int | None:
    """The fewest nights, but `least`, after which a favourite is likely to be clear; the chance grows with the nights.

    Looks ahead before the data are in (Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961, preposterior
    analysis): each night the likings drift and each is seen once with noise; as much as their uncertainty is going
    to lose by that, their estimate is going to move.
    """
    mean, unsure = _moments(found)
    one, moves = np.eye(len(mean)), np.zeros_like(unsure)
    ahead: list[tuple[Array, Array]] = []
    for _ in range(MORE_NIGHTS):
        before = unsure + found.drift * one
        unsure = before - before @ np.linalg.solve(before + found.noise * one, before)
        moves = moves + before - unsure
        ahead.append((moves, unsure))
    nights = range(least, MORE_NIGHTS + 1)
    first = bisect_left(nights, LIKELY, key=lambda night: _settled(mean, *ahead[night - 1]))
    return nights[first] if first < len(nights) else None


def _settled(mean: Array, moves: Array, unsure: Array) -> float:
    """The chance that a position will be clearly the best: means to come, then likings."""
    normal, _ = _draws(len(mean))
    return float((_surest(mean + normal[:_DRAWS] @ _root(moves), normal[-_DRAWS:] @ _root(unsure)) >= CLEAR).mean())


def _surest(means: Array, errors: Array) -> Array:
    """For each row of `means`, the probability of its likeliest position, likings being off by any row of `errors`."""
    best = (means[:, None, :] + errors).argmax(axis=2)[:, :, None] == np.arange(means.shape[1])
    surest: Array = best.mean(axis=1).max(axis=1)
    return surest


def _moments(found: Likings) -> tuple[Array, Array]:
    """Mean (k,) and covariance (k, k) of the likings over the grid."""
    mean = found.weight @ found.mean
    apart = found.mean - mean
    return mean, np.tensordot(found.weight, found.covariance + apart[:, :, None] * apart[:, None, :], axes=1)


def _root(covariance: Array) -> Array:
    """Symmetric square roots (..., k, k), which treat all positions alike."""
    variances, axes = np.linalg.eigh(covariance)
    root: Array = (axes * np.sqrt(np.maximum(variances, 0))[..., None, :]) @ np.swapaxes(axes, -1, -2)
    return root

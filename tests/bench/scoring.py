"""How estimates of the favourite are scored, and what they are held against."""

from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

from bench.worlds import Child
from coachbot.insight.favourite import Estimate
from coachbot.insight.local_level import filtered
from coachbot.insight.summary import value
from coachbot.programme.positions import Position

Array = NDArray[np.float64]
Rule = Callable[[Child], Position]

FADING = 0.8
"""What a night counts in the exponentially weighted mean, for each night that came later."""

_NOISES = (0.1, 0.25, 0.5, 1.0, 1.6, 2.5)
_RATIOS = (0.0, 0.01, 0.03, 0.1, 0.3, 1.0)
_DRAWS = np.random.default_rng(8).normal(size=(400, len(Position)))


def _weighted(weigh: Callable[[int, Sequence[int]], float]) -> Rule:
    """The position with the highest weighted mean; `weigh` has a night and all practised nights."""

    def best(child: Child) -> Position:
        nights = sorted({swallow.night for swallow in child.swallows})
        sums = {position: [0.0, 0.0] for position in child.positions}
        for swallow in child.swallows:
            weight, seen = weigh(swallow.night, nights), value(swallow)
            if seen is not None:
                sums[swallow.position][0] += weight * seen
                sums[swallow.position][1] += weight
        return max(sums, key=lambda one: sums[one][0] / sums[one][1] if sums[one][1] else -1.0)

    return best


BASELINES: dict[str, Rule] = {
    "overall mean": _weighted(lambda _, __: 1.0),
    "last night": _weighted(lambda night, nights: float(night == nights[-1])),
    "last three": _weighted(lambda night, nights: float(night in nights[-3:])),
    "fading mean": _weighted(lambda night, nights: FADING ** (nights[-1] - night)),
    "named last": lambda child: child.named,
}


def plain_kalman(child: Child) -> tuple[Position, float]:
    """The favourite and its probability by one Gaussian local level a position, variances by maximum likelihood."""
    last = max(swallow.night for swallow in child.swallows)
    seen = {(swallow.position, swallow.night): value(swallow) for swallow in child.swallows}
    rows = [[seen.get((position, night)) for night in range(1, last + 1)] for position in child.positions]
    fits = ([filtered(row, noise, noise * ratio) for row in rows] for noise in _NOISES for ratio in _RATIOS)
    levels = [fit.levels[-1] for fit in max(fits, key=lambda fit: sum(one.log_likelihood for one in fit))]
    means = np.array([level.mean if level else -9.0 for level in levels])
    deviations = np.sqrt([level.variance if level else 1e-3 for level in levels])
    best = (means + deviations * _DRAWS[:, : len(means)]).argmax(axis=1)
    chances = np.bincount(best, minlength=len(means)) / len(best)
    return child.positions[int(chances.argmax())], float(chances.max())


def calibration_error(children: Sequence[Child], estimates: Sequence[Estimate], *, top: bool = False) -> float:
    """Expected calibration error in ten bins (Guo et al., ICML 2017), over all positions or only the likeliest."""
    pairs = [
        (chance, position is child.truth)
        for child, found in zip(children, estimates, strict=True)
        for position, chance in found.probability.items()
        if not top or position is found.favourite
    ]
    said, true = np.array(pairs, dtype=float).T
    bins = np.minimum((said * 10).astype(int), 9)
    sums = [abs(said[bins == one].sum() - true[bins == one].sum()) for one in range(10)]
    return float(sum(sums) / len(said))


def share_at(right: Sequence[bool], chance: Sequence[float], wanted: float) -> float:
    """The largest share, the surest first, of which at least `wanted` are right: the limit is chosen with hindsight."""
    ordered = np.array(right, dtype=float)[np.argsort(-np.array(chance), kind="stable")]
    good = np.flatnonzero(np.cumsum(ordered) / np.arange(1, len(ordered) + 1) >= wanted)
    return float((good[-1] + 1) / len(ordered)) if len(good) else 0.0

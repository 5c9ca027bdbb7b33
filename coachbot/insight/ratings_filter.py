"""How well a child likes each position on the last night, from its ratings: a state-space model of ordered ratings.

Model, in units of one step of the scale, for position i on night t at place s of the order:

    liking[i, t] = liking[i, t-1] + drift + common drift       each evening, practised or missed
    felt = liking[i, t] + mood[t] + tiredness * (s - 1) + carry-over * (rating before - 3) + noise
    rating = felt, rounded into 1 to 5

Why so. Likings move in a fortnight, so older ratings must count less, but by how much differs from child to child: a
local level (Durbin and Koopman, Time Series Analysis by State Space Methods, 2012, chapter 2). A rating is ordered and
has ends: a child who says only 4 and 5 has told something other than an average of 4.5, so a rating is an interval and
5 is open above (grouped ordered probit; McCullagh, JRSS B 1980;42:109). The likings of one child start around a level
of its own and are pulled to it by a spread that is learnt too: partial pooling (Gelman and Hill, Data Analysis Using
Regression and Multilevel/Hierarchical Models, 2007, chapter 12). Mood is shared by a night; tiredness and carry-over
are coefficients that the balanced orders make estimable. Now and then a rating is just anything (`SLIP`), so that one
odd night cannot settle the matter.

A candy that did not go down counts as felt below `DOWN_LIMIT`, softly: it may have had another reason.

Each rating is taken in by moment matching, which is exact for one rating and close for many (assumed-density
filtering; Minka, A family of algorithms for approximate Bayesian inference, 2001). Noise, drift, spread and mood are
not estimated but averaged over a grid, each point weighted by how well it foretold the child's ratings.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np
import scipy
from numpy.typing import NDArray

from coachbot.insight.swallows import Swallow, in_order
from coachbot.programme.positions import Position

Array = NDArray[np.float64]

NOISE = {0.5: 0.15, 0.85: 0.4, 1.3: 0.33, 2.2: 0.12}
DRIFT = {0.03: 0.18, 0.2: 0.4, 0.4: 0.42}
SPREAD = {0.3: 0.2, 0.6: 0.62, 1.1: 0.18}
MOOD = {0.1: 0.5, 0.5: 0.5}
"""Standard deviations on the grid, with their weights before anything is known of a child.

Empirical Bayes (Efron and Morris, JASA 1973;68:117) over the tuned worlds of tests/bench, rounded, with drift a little
up, to be rather too careful where a liking rises steadily.
"""

LEVEL = (3.4, 1.0)
TIREDNESS = (-0.1, 0.15)
CARRY_OVER = (0.0, 0.15)
"""Mean and standard deviation, before anything is known of a child. No source: broad on the scale of 1 to 5."""

COMMON_DRIFT = 0.1
SLIP = 0.03
DOWN_LIMIT = (2.0, 2.0)
"""Below what a swallow must be felt not to go down, and the standard deviation of that limit."""

_FAR = 1e3
_EDGES = (-_FAR, 1.5, 2.5, 3.5, 4.5, _FAR)
_MIDDLE = 3
_NOT_DOWN = -2.0
"""What a candy that did not go down carries over, as a rating less 3."""

_LEAST = 1e-12
_GRID = np.array(list(product(NOISE, DRIFT, SPREAD, MOOD)))
_NOISE, _DRIFT, _SPREAD, _MOOD = _GRID.T**2
_WEIGHT = np.log([math.prod(w) for w in product(*(side.values() for side in (NOISE, DRIFT, SPREAD, MOOD)))])


@dataclass(frozen=True, slots=True)
class Likings:
    """The likings on the last night: a mixture of normal distributions over g points of the grid.

    `weight` (g,) sums to 1; `mean` (g, k) and `covariance` (g, k, k) are of the k positions in the order given;
    `noise` and `drift` are the child's own variances, averaged over the grid.
    """

    weight: Array
    mean: Array
    covariance: Array
    noise: float
    drift: float


class _State:
    """Means and covariances over the grid of: each position's liking, tonight's mood, tiredness, carry-over."""

    def __init__(self, size: int) -> None:
        self.size = size
        self.mean = np.zeros((len(_GRID), size + 3))
        self.mean[:, :size] = LEVEL[0]
        self.mean[:, -2:] = TIREDNESS[0], CARRY_OVER[0]
        self.covariance = np.zeros((len(_GRID), size + 3, size + 3))
        self.covariance[:, :size, :size] = LEVEL[1] ** 2
        self._add_to_each(_SPREAD)
        self.covariance[:, -2, -2] = TIREDNESS[1] ** 2
        self.covariance[:, -1, -1] = CARRY_OVER[1] ** 2
        self.logarithm = _WEIGHT.copy()

    def _add_to_each(self, variance: Array) -> None:
        each = np.arange(self.size)
        self.covariance[:, each, each] += variance[:, None]

    def next_night(self, evenings: int) -> None:
        """Likings move on for each evening since; the mood is a new one."""
        self._add_to_each(evenings * _DRIFT)
        self.covariance[:, : self.size, : self.size] += evenings * COMMON_DRIFT**2
        self.mean[:, self.size] = 0
        self.covariance[:, self.size, :] = 0
        self.covariance[:, :, self.size] = 0
        self.covariance[:, self.size, self.size] = _MOOD

    def learn(self, row: Array, low: float, high: float, extra: float) -> None:
        """What was felt, `row` times the state with noise (`extra` more than usual), was within the limits."""
        # One product of all rows in place of one for each point of the grid: half the time.
        gain = (self.covariance.reshape(-1, len(row)) @ row).reshape(-1, len(row))
        variance = gain @ row + _NOISE + extra
        chance, pull, shrink = interval_moments(self.mean @ row, variance, low, high)
        self.logarithm += np.log(chance)
        self.mean += gain * pull[:, None]
        self.covariance -= (gain * shrink[:, None])[:, :, None] * gain[:, None, :]


def interval_moments(mean: Array, variance: Array, low: float, high: float) -> tuple[Array, Array, Array]:
    """What it tells of a normal variable that it lies between two limits, or else was a slip.

    Returns:
        Its chance; by how much the mean moves and the variance shrinks, per unit of covariance with the variable.
    """
    deviation = np.sqrt(variance)
    ends = (np.array([[low], [high]]) - mean) / deviation
    below = scipy.special.ndtr(ends)
    density = np.exp(-0.5 * ends**2) / math.sqrt(2 * math.pi)
    inside = np.maximum(below[1] - below[0], _LEAST)
    shift = (density[0] - density[1]) / inside
    narrowing = shift**2 + (ends[1] * density[1] - ends[0] * density[0]) / inside
    chance = (1 - SLIP) * inside + SLIP / (len(_EDGES) - 1)
    meant = (1 - SLIP) * inside / chance
    return chance, meant * shift / deviation, meant * (narrowing - (1 - meant) * shift**2) / variance


def likings(positions: Sequence[Position], swallows: Sequence[Swallow]) -> Likings:
    """The likings of `positions` on the last night that has a swallow."""
    state = _State(len(positions))
    places = {position: place for place, position in enumerate(positions)}
    night, carried = 0, 0.0
    for swallow in in_order(swallows):
        if swallow.night != night:
            state.next_night(swallow.night - night if night else 0)
            night, carried = swallow.night, 0.0
        row = np.zeros(len(positions) + 3)
        row[[places[swallow.position], -3]] = 1
        row[-2:] = swallow.place - 1, carried
        if not swallow.went_down:
            state.learn(row, -_FAR, DOWN_LIMIT[0], DOWN_LIMIT[1] ** 2)
            carried = _NOT_DOWN
        elif swallow.rating is not None:
            state.learn(row, _EDGES[swallow.rating - 1], _EDGES[swallow.rating], 0.0)
            carried = swallow.rating - _MIDDLE
    return _mixture(state)


def _mixture(state: _State) -> Likings:
    weight = np.exp(state.logarithm - state.logarithm.max())
    weight /= weight.sum()
    return Likings(
        weight=weight,
        mean=state.mean[:, : state.size],
        covariance=state.covariance[:, : state.size, : state.size],
        noise=float(weight @ _NOISE),
        drift=float(weight @ _DRIFT),
    )

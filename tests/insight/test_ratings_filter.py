"""The filter of ratings agrees with numerical integration and with the Kalman filter where it must."""

from itertools import pairwise, product

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.stats import multivariate_normal, norm

from coachbot.insight import ratings_filter
from coachbot.insight.ratings_filter import SLIP, Array, interval_moments, likings
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position

EDGES = [-1000.0, 1.5, 2.5, 3.5, 4.5, 1000.0]
LEFT, UP = Position.LEFT, Position.UP


def swallow(night: int, position: Position, rating: int | None, place: int = 1) -> Swallow:
    """One swallow; without a rating it did not go down."""
    return Swallow(night=night, place=place, position=position, rating=rating, went_down=rating is not None)


@pytest.mark.parametrize(("low", "high"), [(-1000.0, 1.5), (2.5, 3.5), (4.5, 1000.0)])
@pytest.mark.parametrize(("mean", "variance"), [(3.0, 1.0), (1.0, 0.3), (4.0, 6.0)])
def test_one_rating_is_taken_in_exactly(low: float, high: float, mean: float, variance: float) -> None:
    """Chance, mean and variance of the mixture "inside, or a slip" are those of numerical integration."""
    density = norm(mean, np.sqrt(variance))

    def weight(felt: float) -> float:
        return float(density.pdf(felt) * ((1 - SLIP) * (low < felt < high) + SLIP / 5))

    ends = sorted({mean - 40, *(edge for edge in (low, high) if abs(edge) < 100), mean + 40})
    pieces = list(pairwise(ends))
    moments = [
        sum(quad(lambda felt, power=power: felt**power * weight(felt), *piece, limit=400)[0] for piece in pieces)
        for power in range(3)
    ]
    true_mean = moments[1] / moments[0]
    chance, pull, shrink = (
        float(one[0]) for one in interval_moments(np.array([mean]), np.array([variance]), low, high)
    )

    assert chance == pytest.approx(moments[0], rel=1e-6)
    assert mean + variance * pull == pytest.approx(true_mean, abs=1e-6)
    assert variance - variance**2 * shrink == pytest.approx(moments[2] / moments[0] - true_mean**2, abs=1e-6)


def test_chances_of_all_ratings_sum_to_one() -> None:
    """Whatever the level and the noise."""
    mean, variance = np.array([-3.0, 2.2, 9.0]), np.array([0.2, 1.0, 5.0])
    chances = [interval_moments(mean, variance, low, high)[0] for low, high in pairwise(EDGES)]

    assert sum(chances) == pytest.approx(np.ones(3))


def test_a_far_rating_moves_little_as_it_may_be_a_slip() -> None:
    """An odd 1 among 5s pulls less than a plain Kalman filter would have it."""
    _, pull, _ = interval_moments(np.array([6.0]), np.array([0.3]), -1000.0, 1.5)

    assert abs(float(pull[0]) * 0.3) < 0.2


def brute_force(rows: list[Swallow]) -> Array:
    """The weight of each point of the grid, from the density of all that was felt, integrated over boxes.

    Slips are left out; each swallow is in place 1 and carries nothing over, so that only levels, mood and the
    coefficient of tiredness (times nothing) are there.
    """
    found = []
    for noise, drift, spread, mood in product(
        ratings_filter.NOISE, ratings_filter.DRIFT, ratings_filter.SPREAD, ratings_filter.MOOD
    ):
        covariance = np.zeros((len(rows), len(rows)))
        for i, one in enumerate(rows):
            for j, other in enumerate(rows):
                evenings = min(one.night, other.night) - rows[0].night
                covariance[i, j] = ratings_filter.LEVEL[1] ** 2 + evenings * ratings_filter.COMMON_DRIFT**2
                covariance[i, j] += (one.position is other.position) * (spread**2 + evenings * drift**2)
                covariance[i, j] += (one.night == other.night) * mood**2 + (i == j) * noise**2
        normal = multivariate_normal(np.full(len(rows), ratings_filter.LEVEL[0]), covariance)
        low = [EDGES[(row.rating or 0) - 1] for row in rows]
        high = [EDGES[row.rating or 0] for row in rows]
        found.append(normal.cdf(high, lower_limit=low))
    weight = np.array(found) * np.exp(ratings_filter._WEIGHT)
    shares: Array = weight / weight.sum()
    return shares


def test_weights_of_the_grid_agree_with_brute_force(monkeypatch: pytest.MonkeyPatch) -> None:
    """Three nights of two positions, the probability of the very ratings integrated in one piece."""
    monkeypatch.setattr(ratings_filter, "SLIP", 0.0)
    monkeypatch.setattr(ratings_filter, "CARRY_OVER", (0.0, 0.0))
    rows = [
        swallow(night, position, rating)
        for night, position, rating in [(1, LEFT, 4), (2, UP, 2), (3, LEFT, 5), (5, UP, 3)]
    ]

    assert likings([LEFT, UP], rows).weight == pytest.approx(brute_force(rows), abs=2e-3)


def test_a_missed_night_widens_and_does_not_move() -> None:
    """The same ratings with a week's gap after them: what follows is less sure of the past."""
    near = likings([LEFT, UP], [swallow(1, LEFT, 4), swallow(2, UP, 4)])
    far = likings([LEFT, UP], [swallow(1, LEFT, 4), swallow(9, UP, 4)])

    assert (far.covariance[:, 0, 0] > near.covariance[:, 0, 0]).all()


def test_not_down_is_worse_than_the_lowest_doubt() -> None:
    """A position whose candy does not go down is liked less than one without a word, and less than a middling one."""
    found = likings([LEFT, UP], [swallow(1, LEFT, 3), swallow(1, UP, None, place=2)])
    level = found.weight @ found.mean

    assert level[1] < level[0]


def test_tiredness_is_taken_out() -> None:
    """What is always last and a little lower is not liked less than what is always first by as much."""
    rows = [one for night in range(1, 15) for one in (swallow(night, LEFT, 4), swallow(night, UP, 4, place=5))]
    found = likings([LEFT, UP], rows)
    level = found.weight @ found.mean

    assert level[1] > level[0]

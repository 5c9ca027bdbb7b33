"""Orders are balanced for place and for what comes before, and no two children share a plan."""

import json
import math
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise, permutations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from coachbot.programme.orders import plan, render
from coachbot.programme.positions import Position

FIVE = tuple(Position)
BY_SIZE = {size: FIVE[:size] for size in (2, 3, 4, 5)}
NIGHTS = range(1, 61)

WILLIAMS = {2: (2, 1), 3: (6, 2), 4: (4, 1), 5: (10, 2)}
"""Williams (1949), Australian Journal of Scientific Research A 2:149-168: nights, and how often each count comes."""

PUBLISHED_FOURTEEN = "CLRDU CDURL LDRCU UCDRL RDLUC CUDLR LRUDC DLCRU DCLUR UCRLD DRCUL URCLD RULCD LUDCR"
"""A plan for five positions and 14 nights with all counts 2 or 3, found by search and counted apart from this code."""


def counts(nights: Sequence[Sequence[object]]) -> tuple[list[int], list[int]]:
    """How often each item is in each place, and how often each ordered pair of items are neighbours."""
    items = sorted(set(nights[0]), key=str)
    places = Counter((item, place) for night in nights for place, item in enumerate(night))
    neighbours = Counter(pair for night in nights for pair in pairwise(night))
    return [places[item, place] for item in items for place in range(len(items))], [
        neighbours[pair] for pair in permutations(items, 2)
    ]


def spread(nights: Sequence[Sequence[object]]) -> int:
    """The larger of the two differences between the highest and the lowest count."""
    return max(max(one) - min(one) for one in counts(nights))


def best_spread(size: int, nights: int) -> int:
    """The least possible: what the orders there are allow (`test_no_plan_can_be_balanced_better`)."""
    if size == 3:
        return 2 if nights % 6 in {2, 3, 4} else 1
    return 2 if size == 5 and nights in {4, 5, 6} else 1


def possible(size: int, nights: int) -> bool:
    """Whether any plan at all has all counts within 1, by integer programming over all the orders there are."""
    orders = list(permutations(range(size)))
    columns = np.array([np.concatenate(counts([order])) for order in orders]).T
    low = nights // size
    least = [low] * len(columns) + [nights]
    most = [low + 1] * len(columns) + [nights]
    constraint = LinearConstraint(np.vstack([columns, np.ones(len(orders))]), least, most)
    found = milp(np.zeros(len(orders)), constraints=constraint, integrality=1, bounds=Bounds(0, nights))
    assert found.status in {0, 2}
    return bool(found.status == 0)


def test_the_counting_itself_agrees_with_a_published_plan() -> None:
    """Place counts {3: 20, 2: 5}, neighbour counts {3: 16, 2: 4}."""
    places, neighbours = counts(PUBLISHED_FOURTEEN.split())

    assert Counter(places) == {3: 20, 2: 5}
    assert Counter(neighbours) == {3: 16, 2: 4}


@pytest.mark.parametrize("size", BY_SIZE)
@pytest.mark.parametrize("seed", [0, 1, 2, 12345])
def test_every_plan_is_as_balanced_as_it_can_be(size: int, seed: int) -> None:
    """Two to five positions, 1 to 60 nights: each night holds each position once, counts within the least spread."""
    for nights in NIGHTS:
        orders = plan(BY_SIZE[size], nights, seed)

        assert len(orders) == nights
        assert all(sorted(order) == sorted(BY_SIZE[size]) for order in orders)
        assert spread(orders) <= best_spread(size, nights), (size, nights, seed)


@pytest.mark.parametrize(("size", "nights"), [(3, 2), (3, 3), (3, 4), (3, 8), (3, 9), (3, 10), (5, 4), (5, 5)])
def test_no_plan_can_be_balanced_better(size: int, nights: int) -> None:
    """Where the counts differ by 2, nothing within 1 exists among all orders; with other nights something does."""
    assert not possible(size, nights)
    assert possible(size, 7)


@pytest.mark.parametrize("size", WILLIAMS)
def test_counts_are_equal_where_a_williams_design_fits(size: int) -> None:
    """Each multiple of Williams' number of nights has every place and every neighbour equally often."""
    block, times = WILLIAMS[size]
    for blocks in range(1, 60 // block + 1):
        places, neighbours = counts(plan(BY_SIZE[size], blocks * block, seed=blocks))

        assert set(places) == set(neighbours) == {times * blocks}


@given(st.integers(), st.sampled_from([2, 3, 4, 5]), st.sampled_from(NIGHTS))
def test_every_beginning_is_balanced(seed: int, size: int, nights: int) -> None:
    """Who stops early has counts within 2, and within 1 wherever the plan's own text does not say otherwise."""
    orders = plan(BY_SIZE[size], nights, seed)
    uneven = [n for n in range(1, nights + 1) if spread(orders[:n]) > 1]

    assert all(spread(orders[:n]) <= 2 for n in uneven)
    assert uneven == [n for n in range(1, nights + 1) if uneven_after(size, nights, n)]


def uneven_after(size: int, nights: int, n: int) -> bool:
    """Whether the first `n` of `nights` nights are among those that differ by 2."""
    if size < 5:
        return best_spread(size, n) == 2
    last = nights - nights % 10 - 10 if nights % 10 in {4, 5, 6} and nights > 6 else nights
    special = {4: {4, 5, 6, 10}, 5: {4, 5, 6, 9, 10, 11}, 6: {4, 5, 6, 10, 15}}
    return n - last in special[nights % 10] if n > last else n % 10 in {4, 5, 6}


@pytest.mark.parametrize(
    ("size", "nights", "plans"),
    [(2, 14, 128), (3, 14, 62208), (4, 14, 144**3 * 72), (5, 14, 69120), (5, 1, 120), (3, 6, 72), (2, 3, 4)],
)
def test_no_two_children_share_a_plan(size: int, nights: int, plans: int) -> None:
    """Seeds in a row give different plans until the possibilities run out, from any first seed on."""
    wanted = min(plans, 3000)
    for first in (-7, 10**9):
        drawn = {plan(BY_SIZE[size], nights, seed) for seed in range(first, first + wanted)}

        assert len(drawn) == wanted
    assert plan(BY_SIZE[size], nights, 3) == plan(BY_SIZE[size], nights, 3 + plans)


def test_first_nights_are_spread_over_a_clinic() -> None:
    """Any 120 children in a row have the 120 possible first nights of five positions."""
    assert len({plan(FIVE, 14, seed)[0] for seed in range(500, 620)}) == math.factorial(5)


def test_children_see_different_orders_after_the_first_night_too() -> None:
    """Over the children who share a first night, what comes next differs."""
    alike = [plan(FIVE, 14, seed) for seed in range(0, 1200, 120)]

    assert len({one[0] for one in alike}) == 1
    assert len({one[4:] for one in alike}) > 5


@pytest.mark.parametrize(
    ("positions", "nights", "told"),
    [
        ("center", 14, "two to five"),
        ("left,left", 14, "two to five"),
        ("left,sideways", 14, "choose from center, left, right, up, down"),
        ("left,right", 0, "choose 1 to 60"),
        ("left,right", 61, "choose 1 to 60"),
        ("", 14, "'' is not a position"),
    ],
)
def test_bad_input_is_told_what_to_do(positions: str, nights: int, told: str) -> None:
    """Each refusal says what may be given instead."""
    with pytest.raises(ValueError, match=told):
        render(positions, nights, seed=1)


def test_the_engine_prints_one_list_of_nights() -> None:
    """What `coachbot orders` prints is the plan, as JSON."""
    printed = json.loads(render("center, left,right", 7, seed=4))

    assert printed == [list(order) for order in plan(BY_SIZE[3], 7, seed=4)]

"""Cohort statistics give the published values, and agree with statsmodels."""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from statsmodels.duration.survfunc import SurvfuncRight
from statsmodels.stats.proportion import proportion_confint

from coachbot.insight import cohort as rooms
from coachbot.insight.cohort import Participant, place_effects, share, staying
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position

CENTER, LEFT, UP = Position.CENTER, Position.LEFT, Position.UP
POSITIONS = (CENTER, LEFT, UP)

REMISSION = [6, 6, 6, 7, 10, 13, 16, 22, 23]
STILL = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35]
"""Weeks in remission and weeks watched: Freireich et al., Blood 1963;21:699, the usual example (from memory)."""

NONE: Mapping[int, Position] = MappingProxyType({})


def swallow(night: int, position: Position, *, rating: int | None = 3, place: int = 1, down: bool = True) -> Swallow:
    """One swallow."""
    return Swallow(night=night, place=place, position=position, rating=rating if down else None, went_down=down)


def family(
    *swallows: Swallow, evenings: int = 14, named: Mapping[int, Position] = NONE, dropped_out: bool = False
) -> Participant:
    """One child of three positions."""
    return Participant(
        code="A1", positions=POSITIONS, swallows=swallows, evenings=evenings, named=named, dropped_out=dropped_out
    )


def test_staying_gives_the_published_curve() -> None:
    """.857, .807, .753, .690, .627, .538, .448 after weeks 6, 7, 10, 13, 16, 22, 23; statsmodels has the same."""
    cohort = [family(evenings=week, dropped_out=True) for week in REMISSION] + [family(evenings=week) for week in STILL]
    curve = staying(cohort)
    theirs = SurvfuncRight(REMISSION + STILL, [1] * len(REMISSION) + [0] * len(STILL))

    assert [point.night for point in curve] == [6, 7, 10, 13, 16, 22, 23]
    assert [point.share for point in curve] == pytest.approx(
        [0.857, 0.807, 0.753, 0.690, 0.627, 0.538, 0.448], abs=5e-4
    )
    assert [point.share for point in curve] == pytest.approx(theirs.surv_prob)
    assert all(point.low < point.share < point.high for point in curve)


def test_nobody_dropping_out_is_no_curve() -> None:
    """And all dropping out ends at nothing, without a number that is none."""
    assert staying([family(), family()]) == ()
    end = staying([family(evenings=3, dropped_out=True), family(evenings=5, dropped_out=True)])[-1]
    assert (end.share, end.low, end.high) == (0, 0, 1)


@pytest.mark.parametrize(
    ("count", "total", "low", "high"),
    [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0, 0.1611), (1, 29, 0.0061, 0.1718)],
)
def test_wilson_gives_the_published_intervals(count: int, total: int, low: float, high: float) -> None:
    """Newcombe, Statistics in Medicine 1998;17:857, table I, method 3 (from memory)."""
    found = share(count, total)

    assert found is not None
    assert [found.low, found.high] == pytest.approx([low, high], abs=5e-5)


@given(st.integers(0, 200), st.integers(1, 200))
def test_wilson_agrees_with_statsmodels(count: int, total: int) -> None:
    """On any share, none and all included."""
    found = share(min(count, total), total)

    assert found is not None
    assert [found.low, found.high] == pytest.approx(
        proportion_confint(min(count, total), total, method="wilson"), abs=1e-12
    )


def test_a_share_of_nothing_is_none() -> None:
    """And more than all is refused."""
    assert share(0, 0) is None
    with pytest.raises(ValueError, match="no share"):
        share(3, 2)


def test_adherence_counts_families_who_had_the_evening() -> None:
    """Who dropped out before it is not counted as having missed it, nor whom our message did not reach."""
    unsent = replace(family(swallow(1, LEFT), evenings=5), unsent=frozenset({2, 4, 5}))
    cohort = [
        family(swallow(1, LEFT), swallow(2, LEFT), evenings=4),
        family(swallow(1, LEFT), evenings=1, dropped_out=True),
        unsent,
    ]
    found = rooms.adherence(cohort)

    assert {night: (one.count, one.total) for night, one in found.items()} == {
        1: (3, 3),
        2: (1, 1),
        3: (0, 2),
        4: (0, 1),
    }


def test_favourites_go_from_the_first_to_the_last() -> None:
    """Named ones count before ratings; a tie names nobody."""
    moved = family(
        swallow(1, LEFT, rating=5), swallow(1, UP, rating=2), swallow(4, UP, rating=4), named=MappingProxyType({4: UP})
    )
    level = family(swallow(1, LEFT, rating=3), swallow(1, UP, rating=3))
    stayed = family(swallow(2, CENTER, rating=5), swallow(2, UP, rating=1))

    assert dict(rooms.favourites([moved, level, stayed])) == {(LEFT, UP): 1, (CENTER, CENTER): 1}
    found = rooms.off_centre([moved, level, stayed])
    assert found is not None
    assert (found.count, found.total) == (1, 2)


def test_got_down_takes_each_childs_last_try() -> None:
    """Conover's twelve rows as twelve children's last tries: Q = 2.8, whatever went before."""
    rows = ["111", "111", "010", "110", "000", "111", "111", "110", "001", "010", "111", "111"]
    cohort = [
        family(
            *(swallow(1, position, down=False) for position in POSITIONS),
            *(swallow(2, position, down=one == "1") for position, one in zip(POSITIONS, row, strict=True)),
        )
        for row in rows
    ]
    found = rooms.got_down([*cohort, family(swallow(1, LEFT))], POSITIONS)

    assert found is not None
    assert found.statistic == pytest.approx(2.8)
    assert rooms.got_down([family(swallow(1, LEFT))], POSITIONS) is None
    last = rooms.last_down([*cohort, family(swallow(1, UP))], CENTER)
    assert last is not None
    assert (last.count, last.total) == (sum(row[0] == "1" for row in rows), len(rows))
    assert rooms.last_down([family()], CENTER) is None


def test_tiredness_is_found_in_its_place() -> None:
    """Ratings that fall by half a step a place, whatever the night is like, show as that and no more."""
    draw = np.random.default_rng(4)
    cohort = [
        family(
            *(
                swallow(night, POSITIONS[(place + night) % 3], rating=int(base - place), place=place + 1)
                for night in range(1, 15)
                for base in [draw.integers(3, 6)]
                for place in range(3)
            )
        )
        for _ in range(8)
    ]

    assert [round(one.mean, 6) for one in place_effects(cohort)] == [1, 0, -1]
    assert {one.children for one in place_effects(cohort)} == {8}


def test_place_effect_interval_is_students() -> None:
    """Four children with differences 0, 0, 1, 1 from their nights' mean: 1/2 +- 3.182 * 0.577 / 2."""
    cohort = [
        family(swallow(1, LEFT, rating=3, place=1), swallow(1, UP, rating=3 - 2 * gap, place=2)) for gap in (0, 0, 1, 1)
    ]
    first = place_effects(cohort)[0]

    assert [first.mean, first.low, first.high] == pytest.approx([0.5, 0.5 - 0.9187, 0.5 + 0.9187], abs=1e-3)

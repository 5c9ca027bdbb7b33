"""What is told of a cohort tells of no few children in it, and is true of all of them."""

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachbot.insight import figures as told_of
from coachbot.insight.cohort import Participant, favourites, share, staying
from coachbot.insight.export import SMALL_CELL, identifiers
from coachbot.insight.figures import (
    LEFT_OUT,
    figures,
    figures_table,
    told,
    told_difference,
    told_favourites,
    told_staying,
)
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position

CENTER, LEFT, UP = Position.CENTER, Position.LEFT, Position.UP


def child(number: int, best: Position = CENTER, *, evenings: int = 4, dropped_out: bool = False) -> Participant:
    """A child that rates one position highest every night, in an order that turns from child to child."""
    order = [CENTER, LEFT, UP][number % 3 :] + [CENTER, LEFT, UP][: number % 3]
    swallows = tuple(
        Swallow(night=night, place=place, position=one, rating=5 if one is best else 4 - place, went_down=True)
        for night in range(1, evenings + 1)
        for place, one in enumerate(order, 1)
    )
    return Participant(
        code=f"C{number}",
        positions=(CENTER, LEFT, UP),
        swallows=swallows,
        evenings=evenings,
        named={},
        dropped_out=dropped_out,
    )


@given(st.integers(0, 60).flatmap(lambda total: st.tuples(st.integers(0, total), st.just(total))))
def test_a_share_is_told_of_enough_children_and_bounded_truly_otherwise(counted: tuple[int, int]) -> None:
    """Neither the few nor the rest can be worked out: each such count is told as three others are, or more."""
    count, total = counted
    found = told(share(count, total))
    alike = [one for one in range(total + 1) if told(share(one, total)) == found]

    few = total < SMALL_CELL or any(0 < one < SMALL_CELL for one in (count, total - count))
    assert (found.share is None) == few
    assert len(alike) >= SMALL_CELL - 1 if few and total >= SMALL_CELL else len(alike) == (total + 1 if few else 1)
    if found.low is not None and found.high is not None:
        assert found.low <= count / total <= found.high
    if found.percent.startswith("<"):
        assert 100 * count / total < int(found.percent[1:])
    elif found.percent.startswith(">"):
        assert 100 * count / total > int(found.percent[1:])


@given(st.lists(st.tuples(st.integers(1, 9), st.booleans()), max_size=40))
def test_the_curve_steps_only_where_enough_have_stopped(ends: list[tuple[int, bool]]) -> None:
    """Each step stands on the published curve, has five families or more behind it, and the last one ends it."""
    cohort = [child(number, evenings=night, dropped_out=out) for number, (night, out) in enumerate(ends)]
    steps, curve = told_staying(cohort), staying(cohort)
    stopped = sorted(night for night, out in ends if out)
    behind = Counter(next((step.night for step in steps if night <= step.night), None) for night in stopped)

    assert set(steps) <= set(curve)
    assert bool(steps) == (len(stopped) >= SMALL_CELL)
    assert None not in behind or not steps
    assert not steps or min(behind.values()) >= SMALL_CELL


def test_one_cell_left_out_takes_another_with_it() -> None:
    """Off-centre children are counted elsewhere: alone, the small cell could be worked out."""
    counts = {(CENTER, CENTER): 12, (CENTER, LEFT): 3, (LEFT, LEFT): 9, (UP, LEFT): 7}

    assert told_favourites(counts) == {
        (CENTER, CENTER): "12",
        (CENTER, LEFT): "<5",
        (LEFT, LEFT): "9",
        (UP, LEFT): LEFT_OUT,
    }
    two = {(CENTER, LEFT): 3, (UP, LEFT): 2, (LEFT, LEFT): 9}
    assert told_favourites(two) == {(CENTER, LEFT): "<5", (UP, LEFT): "<5", (LEFT, LEFT): "9"}


def test_a_cohort_of_few_has_no_figures() -> None:
    """Not one of them."""
    assert figures([child(number) for number in range(SMALL_CELL - 1)]) is None
    assert figures([]) is None


def test_the_table_holds_what_the_figures_say_and_passes_the_check() -> None:
    """One row a figure, numbers to four places, nothing that its dictionary does not allow."""
    cohort = [child(number, LEFT if number < 10 else CENTER, evenings=3 if number < 6 else 4) for number in range(20)]
    found = figures(cohort)
    assert found is not None
    rows = list(figures_table(found))
    by_name = {(row[0], row[1]): row for row in rows[1:]}

    assert identifiers(rows, told_of.COLUMNS) == ()
    assert dict(found.favourites) == {moved: str(count) for moved, count in favourites(cohort).items()}
    assert by_name["off_centre", ""][3:6] == ("10", "20", "0.5000")
    assert by_name["adherence", "4"][3:6] == ("14", "14", "1.0000")
    assert by_name["place", "1"][3] == "20"
    assert by_name["differs", ""] == ("differs", "", "", "20", "", "", "", "", "")
    assert by_name["went_down", "up"][3:5] == ("20", "20")
    assert found.stopped.count == "0"


def test_tests_and_places_over_few_children_are_not_told() -> None:
    """Though the cohort is large enough."""
    tried = [child(number) for number in range(SMALL_CELL - 1)]
    idle = [replace(child(number), swallows=()) for number in range(4, 13)]
    found = figures([*tried, *idle])

    assert found is not None
    assert found.differs is None
    stuck = replace(tried[0], swallows=tuple(replace(one, went_down=one.place > 1) for one in tried[0].swallows))
    for few, statistic in ((0, None), (1, None), (SMALL_CELL, 2 * SMALL_CELL)):
        differs = told_difference([*[stuck] * few, *tried * 2], [CENTER, LEFT, UP])
        assert (differs.statistic if differs else None) == pytest.approx(statistic)
        assert (differs is None) == (few == 1)
    assert found.places == ()
    assert found.off_centre.percent == ""
    assert found.adherence[1].count == "<5"
    assert found.adherence[1].high == pytest.approx(told(share(4, 13)).high)

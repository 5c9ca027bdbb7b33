"""The summary of a child tells what was said and done, and no more than can be seen."""

import pytest
import statsmodels.api as sm

from coachbot.insight.ratings_filter import likings
from coachbot.insight.summary import ChildSummary, child_summary
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position

LEFT, RIGHT, UP = Position.LEFT, Position.RIGHT, Position.UP
THREE = (LEFT, RIGHT, UP)


def night(number: int, *ratings: int | None) -> list[Swallow]:
    """A night of the three positions in turn; None did not go down."""
    return [
        Swallow(night=number, place=place, position=position, rating=rating, went_down=rating is not None)
        for place, (position, rating) in enumerate(zip(THREE, ratings, strict=True), 1)
    ]


@pytest.fixture
def summary() -> ChildSummary:
    """Six evenings, one missed: left is best at first, right for good; up does not go down at first."""
    rows = [*night(1, 4, 3, None), *night(2, 4, 4, None), *night(4, 3, 5, 2), *night(5, 3, 5, 2), *night(6, 3, 5, 3)]
    return child_summary(THREE, rows, evenings=6, named={2: RIGHT})


def test_favourites_first_and_last(summary: ChildSummary) -> None:
    """Named, or rated alone highest."""
    assert (summary.first_favourite, summary.last_favourite) == (LEFT, RIGHT)
    assert summary.estimate.favourite is RIGHT


def test_what_went_down(summary: ChildSummary) -> None:
    """Counted by position; the favourite's last three nights make the child ready."""
    assert {one: (rate.down, rate.tried) for one, rate in summary.got_down.items()} == {
        LEFT: (5, 5),
        RIGHT: (5, 5),
        UP: (3, 5),
    }
    assert (summary.lately.down, summary.lately.tried, summary.ready) == (3, 3, True)


def test_adherence_counts_missed_evenings(summary: ChildSummary) -> None:
    """Five of six."""
    assert (summary.practised, summary.evenings) == (5, 6)
    assert summary.adherence == pytest.approx(5 / 6)


def test_differences_and_trend_are_over_whole_nights(summary: ChildSummary) -> None:
    """Not down counts as 0; five nights of three positions."""
    assert summary.difference is not None
    assert summary.trend is not None
    assert (summary.difference.rows, summary.difference.columns) == (5, 3)
    assert (summary.trend.rows, summary.trend.columns, summary.trend.exact) == (3, 5, True)


def test_courses_are_smoothed_levels_on_the_scale(summary: ChildSummary) -> None:
    """One point an evening, missed ones too, within 0 to 5, with the level in its band."""
    for points in summary.courses.values():
        assert [point.night for point in points] == [1, 2, 3, 4, 5, 6]
        assert all(0 <= point.low <= point.level <= point.high <= 5 for point in points)
    assert summary.courses[RIGHT][5].level > summary.courses[RIGHT][0].level
    assert summary.courses[UP][0].level < summary.courses[LEFT][0].level


def test_courses_agree_with_statsmodels() -> None:
    """The smoothed levels at the child's own noise and drift are those of its local level model."""
    rows = [one for number in range(1, 9) for one in night(number, 3 + number % 2, 2, 4 - number % 3)]
    found = likings(THREE, rows)
    model = sm.tsa.UnobservedComponents([3.0 + number % 2 for number in range(1, 9)], "llevel", use_exact_diffuse=True)
    theirs = model.smooth([found.noise, found.drift]).smoothed_state[0]

    levels = [point.level for point in child_summary(THREE, rows, evenings=8).courses[LEFT]]
    assert levels == pytest.approx(theirs)


def test_a_position_that_fails_lately_makes_nobody_ready() -> None:
    """One of the last three nights without the favourite's candy going down is enough."""
    rows = [one for number in range(1, 9) for one in night(number, 5, 2, 2)] + night(9, None, 2, 2)
    found = child_summary(THREE, rows, evenings=9)

    assert found.estimate.favourite is LEFT
    assert not found.ready
    assert not found.estimate.clear


def test_nothing_yet_is_no_number() -> None:
    """Before the first night: no adherence, no course, no test, not ready."""
    found = child_summary(THREE, [], evenings=0)

    assert (found.adherence, found.difference, found.trend, found.last_favourite) == (None, None, None, None)
    assert set(found.courses.values()) == {()}
    assert not found.ready
    assert found.got_down[LEFT].share is None


def test_evenings_must_include_all_nights() -> None:
    """A swallow after the last evening is a mistake in the counting."""
    with pytest.raises(ValueError, match="count missed ones too"):
        child_summary(THREE, night(4, 3, 3, 3), evenings=3)

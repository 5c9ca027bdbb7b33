"""The favourite is right as often as it says, says when it is not clear, and is never one that does not go down."""

import json
from itertools import permutations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench.scoring import BASELINES, calibration_error
from bench.worlds import TUNED, UNTUNED, Child, child
from coachbot.insight.engine import run
from coachbot.insight.favourite import CLEAR, Estimate, estimate
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position

FIVE = tuple(Position)
LEFT, RIGHT, UP = Position.LEFT, Position.RIGHT, Position.UP


def swallow(night: int, position: Position, rating: int | None, place: int = 1) -> Swallow:
    """One swallow; without a rating it did not go down."""
    return Swallow(night=night, place=place, position=position, rating=rating, went_down=rating is not None)


def fortnight(ratings: dict[Position, int | None], nights: int = 14) -> list[Swallow]:
    """The same ratings every night, the order turned round night by night."""
    names = list(ratings)
    return [
        swallow(night, names[(place + night) % len(names)], ratings[names[(place + night) % len(names)]], place + 1)
        for night in range(1, nights + 1)
        for place in range(len(names))
    ]


@pytest.fixture(scope="module")
def scored() -> tuple[list[Child], list[Estimate]]:
    """Children of three worlds, one of them tuned on neither weights nor limits, with their estimates."""
    worlds = (TUNED["standard"], TUNED["restless"], UNTUNED["jumps"])
    children = [child(world, 900_000 + seed) for world in worlds for seed in range(100)]
    return children, [estimate(one.positions, one.swallows) for one in children]


def test_favourite_is_named_more_often_than_by_the_overall_mean(scored: tuple[list[Child], list[Estimate]]) -> None:
    """And level with the best of the simpler rules, as far as 300 children can show it."""
    children, found = scored
    ours = np.mean([one.favourite is each.truth for one, each in zip(found, children, strict=True)])
    simpler = {name: np.mean([rule(each) is each.truth for each in children]) for name, rule in BASELINES.items()}

    assert ours > simpler["overall mean"]
    assert ours > max(simpler.values()) - 0.03


def test_probabilities_come_true(scored: tuple[list[Child], list[Estimate]]) -> None:
    """Calibration error over all positions at most 0.03, as far as 300 children can show it."""
    assert calibration_error(*scored) < 0.03


def test_clear_is_right_nine_times_in_ten(scored: tuple[list[Child], list[Estimate]]) -> None:
    """And is said of a fair share of the children."""
    children, found = scored
    right = [one.favourite is each.truth for one, each in zip(found, children, strict=True) if one.clear]

    assert np.mean(right) >= 0.9
    assert len(right) > 0.15 * len(children)


def test_children_told_more_nights_are_likely_settled_by_then() -> None:
    """Of those told after a week so many more nights, about half or more are clear by then."""
    told, settled = 0, 0
    for seed in range(140):
        whole = child(UNTUNED["three weeks"], 950_000 + seed)
        more = estimate(whole.positions, [one for one in whole.swallows if one.night <= 7]).more_nights
        if more:
            nights = range(8, min(7 + more, 21) + 1)
            told += 1
            settled += any(
                estimate(whole.positions, [one for one in whole.swallows if one.night <= night]).clear
                for night in nights
            )

    assert told > 15
    assert settled / told > 0.45


def test_a_plain_favourite_is_clear() -> None:
    """Five against threes and twos for a fortnight."""
    found = estimate(FIVE, fortnight(dict(zip(FIVE, (3, 2, 5, 2, 3), strict=True))))

    assert (found.favourite, found.clear, found.more_nights) == (RIGHT, True, 0)


def test_all_alike_is_not_clear() -> None:
    """Threes everywhere name nobody for sure, and no number of nights is promised lightly."""
    found = estimate(FIVE, fortnight(dict.fromkeys(FIVE, 3)))

    assert not found.clear
    assert max(found.probability.values()) < 0.4


def test_a_position_that_does_not_go_down_is_not_recommended() -> None:
    """However well it was rated before: the last four nights it stayed up."""
    early = fortnight({LEFT: 5, RIGHT: 3, UP: 3}, nights=10)
    late = [one for night in range(11, 15) for one in (swallow(night, LEFT, None), swallow(night, RIGHT, 3, 2))]
    found = estimate([LEFT, RIGHT, UP], early + late)

    assert found.favourite is not LEFT
    assert found.probability[LEFT] < 0.3


def test_a_liking_that_moves_is_followed() -> None:
    """Up was best for ten nights; left has been for the last four."""
    found = estimate(
        [LEFT, UP],
        [*fortnight({LEFT: 2, UP: 4}, nights=9)]
        + [one for night in range(10, 15) for one in (swallow(night, LEFT, 5), swallow(night, UP, 2, 2))],
    )

    assert found.favourite is LEFT


def test_few_nights_are_never_clear() -> None:
    """Two nights, however plain, are too few, and one more is asked for at least."""
    found = estimate([LEFT, UP], fortnight({LEFT: 5, UP: None}, nights=2))

    assert (found.favourite, found.clear) == (LEFT, False)
    assert found.more_nights is not None
    assert found.more_nights >= 1


def test_nothing_known_is_said() -> None:
    """No swallows: no favourite, all alike."""
    found = estimate(FIVE, [])

    assert (found.favourite, found.clear) == (None, False)
    assert list(found.probability.values()) == pytest.approx([0.2] * 5)


@pytest.mark.parametrize("order", list(permutations([LEFT, RIGHT, UP])))
def test_names_and_their_order_do_not_matter(order: tuple[Position, ...]) -> None:
    """The same swallows, listed in any order of positions and in any order of time, give the same answer."""
    rows = fortnight({LEFT: 3, RIGHT: 4, UP: 2})
    found, other = estimate([LEFT, RIGHT, UP], rows), estimate(order, rows[::-1])

    assert list(other.probability) == list(order)
    assert other.probability == found.probability


@settings(max_examples=25)
@given(
    st.lists(
        st.tuples(st.integers(1, 60), st.sampled_from(FIVE), st.none() | st.integers(1, 5), st.integers(1, 5)),
        max_size=30,
        unique_by=lambda row: row[:2],
    )
)
def test_any_record_gives_probabilities(rows: list[tuple[int, Position, int | None, int]]) -> None:
    """They sum to 1, the favourite is the likeliest, and clear means over the limit."""
    found = estimate(FIVE, [swallow(night, position, rating, place) for night, position, rating, place in rows])

    assert sum(found.probability.values()) == pytest.approx(1)
    assert found.favourite is None or found.probability[found.favourite] == max(found.probability.values())
    assert not found.clear or (found.more_nights == 0 and max(found.probability.values()) >= CLEAR)


SOUND = '{"night":1,"place":1,"position":"left","rating":4,"went_down":true}'


def line(*swallows: str, id_: int = 1, positions: str = '["left","up"]') -> str:
    """One line of the engine's input."""
    return f'{{"id":{id_},"positions":{positions},"swallows":[{",".join(swallows)}]}}'


@pytest.mark.parametrize(
    ("bad", "told"),
    [
        (line(positions='["left"]'), "two or more different positions"),
        (line(positions='["left","sideways"]'), "choose from center, left, right, up, down"),
        (line(positions='"left"'), "must be a list"),
        ('{"id":1,"swallows":[]}', "'positions' is missing"),
        (line("7"), "must be an object"),
        (line(SOUND, SOUND), "two swallows in left"),
        (line(SOUND, positions='["up","down"]'), "add it to the positions"),
        (line(SOUND.replace("4", "6")), "outside 1 to 5"),
        (line(SOUND.replace("true", '"yes"')), "true or false"),
        (line(SOUND.replace("1,", "1.5,", 1)), "whole number"),
        (line(SOUND.replace("1,", "0,", 1)), "from 1"),
    ],
)
def test_bad_lines_are_told_what_to_do_and_the_rest_goes_on(bad: str, told: str) -> None:
    """One answer a line, in order, the good one after the bad one."""
    first, second = map(json.loads, run([bad, line(SOUND, id_=2)]))

    assert first["id"] == 1
    assert told in first["error"]
    assert second["favourite"] == "left"
    assert sum(second["probability"].values()) == pytest.approx(1)

"""What leaves the clinic for a study tells of no child who it is."""

from dataclasses import replace
from types import MappingProxyType

import pytest

from coachbot.insight.cohort import Participant
from coachbot.insight.export import COLUMNS, SMALL_CELL, dictionary, identifiers, suppressed, table
from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position


def child(code: str, age: int | None) -> Participant:
    """A child with a swallow on each of two nights."""
    return Participant(
        code=code,
        positions=tuple(Position),
        swallows=(
            Swallow(night=2, place=1, position=Position.UP, rating=None, went_down=False),
            Swallow(night=1, place=1, position=Position.LEFT, rating=4, went_down=True),
        ),
        evenings=3,
        named=MappingProxyType({1: Position.LEFT}),
        age=age,
    )


def test_one_row_a_swallow_under_the_dictionary() -> None:
    """Nights are numbers, what is not known is empty, and the dictionary explains each column."""
    header, *rows = table([child("B2", 7)])

    assert rows == [
        ("B2", "", "1", "1", "left", "1", "4", "left", "0"),
        ("B2", "", "2", "1", "up", "0", "", "", "0"),
    ]
    assert [row[0] for row in dictionary()][1:] == list(header) == [column.name for column in COLUMNS]


def test_ages_that_few_share_are_not_told() -> None:
    """Five children of seven are told of; the one of twelve is not."""
    cohort = [child(f"A{number}", 7) for number in range(SMALL_CELL)] + [child("B1", 12)]
    ages = {row[0][0]: row[1] for row in list(table(cohort))[1:]}

    assert ages == {"A": "7", "B": ""}


def test_that_few_stopped_is_told_of_nobody() -> None:
    """Nor an age that only they share; enough of both are told of."""

    def traits(stopped: int, stayed: int) -> set[tuple[str, str]]:
        quit_early = [replace(child(f"A{number}", 7), dropped_out=True) for number in range(stopped)]
        cohort = [*quit_early, *(child(f"B{number}", 7) for number in range(stayed))]
        return {(row[1], row[-1]) for row in list(table(cohort))[1:]}

    assert traits(SMALL_CELL - 1, 9) == traits(9, SMALL_CELL - 1) == {("7", "")}
    assert traits(SMALL_CELL, SMALL_CELL) == {("7", "0"), ("7", "1")}
    assert traits(0, SMALL_CELL) == {("7", "0")}
    ages = [replace(child("A1", 7), dropped_out=True), *(child(f"B{number}", 7) for number in range(9))]
    more = [replace(child(f"C{number}", 8), dropped_out=True) for number in range(SMALL_CELL)]
    assert {row[1] for row in table([*ages, *more]) if row[0] == "A1"} == {""}


def test_small_counts_are_not_told() -> None:
    """Nor is a child of a table's only one."""
    assert [suppressed(count) for count in (0, 1, 4, 5, 12)] == ["0", "<5", "<5", "5", "12"]


def test_what_is_exported_passes_its_own_check() -> None:
    """A whole cohort's table has nothing on the list."""
    assert identifiers(list(table([child(f"C{number}", 8) for number in range(7)]))) == ()


@pytest.mark.parametrize(
    ("cell", "item"),
    [
        ("Robin", "A"),
        ("2026-11-25", "C"),
        ("25/11/2026", "C"),
        ("+1 202 555 0143", "D"),
        ("parent@example.org", "F"),
        ("078-05-1120", "G"),
        ("https://example.org/x", "N"),
        ("192.0.2.17", "O"),
        ("2001:db8:0:1::5", "O"),
        ("4826193", "R"),
        ("92", "R"),
    ],
)
def test_safe_harbor_items_are_found(cell: str, item: str) -> None:
    """45 CFR 164.514(b)(2)(i): the letters of the items that can stand in a table of text."""
    rows = [list(row) for row in table([child("B2", None)])]
    rows[2][1] = cell
    (finding,) = identifiers(rows)

    assert (finding.row, finding.column, finding.item) == (2, "age", item)


def test_strange_columns_are_found_whatever_they_hold() -> None:
    """A message number beside the ratings, or a cell beyond the header."""
    header, row = list(table([child("B2", None)]))[:2]

    assert [one.column for one in identifiers([(*header, "message_id"), (*row, "7")])] == ["message_id", "message_id"]
    assert [one.column for one in identifiers([header, (*row, "left")])] == ["(no header)"]
    assert identifiers([]) == ()

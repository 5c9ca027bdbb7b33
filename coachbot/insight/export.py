"""A cohort as a table for a study: one row a swallow, no names, no dates, and a check that none slipped in.

The check is against the list of 45 CFR 164.514(b)(2)(i), "Safe Harbor". Night numbers stand for dates. Free words are
never exported. The code is a re-identification code under 164.514(c): drawn by chance, not derived from the child.
"""

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from coachbot.insight.cohort import Participant
from coachbot.insight.swallows import Swallow, in_order
from coachbot.programme.positions import Position

SMALL_CELL = 5
"""A count or a trait shared by fewer children than this is not told. Common practice in health statistics; studies
may be held to more (11 in the cell suppression policy of the US Centers for Medicare & Medicaid Services)."""

OLDEST = 89
"""Safe Harbor (C): ages over this are not told."""

_ANY_POSITION = "|".join(Position)


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of the table: what it means, and the pattern that each of its values matches; empty is not known."""

    name: str
    meaning: str
    unit: str
    pattern: str


COLUMNS = (
    Column(name="child", meaning="study code, drawn by chance", unit="code", pattern="[A-Z]{1,3}[0-9]{1,5}"),
    Column(name="age", meaning="age, empty if few share it", unit="whole years", pattern="[1-8]?[0-9]"),
    Column(name="night", meaning="evening since the first, missed ones counted", unit="number", pattern="[1-9][0-9]?"),
    Column(name="place", meaning="place in the order of the night", unit="number", pattern="[1-5]"),
    Column(name="position", meaning="position of the head", unit="the child's own side", pattern=_ANY_POSITION),
    Column(name="went_down", meaning="whether it was swallowed", unit="0 no, 1 yes", pattern="[01]"),
    Column(name="rating", meaning="the child's rating, 5 is easiest", unit="1 to 5", pattern="[1-5]"),
    Column(name="named_best", meaning="the best position that the child named", unit="position", pattern=_ANY_POSITION),
    Column(
        name="dropped_out",
        meaning="family stopped early, empty if few",
        unit="0 no, 1 yes",
        pattern="[01]",
    ),
)
"""The data dictionary, in the order of the table."""

_SAFE_HARBOR = (
    ("F", "electronic mail address", r"[^\s@]+@[^\s@]+\.[a-z]+"),
    ("N", "web address", r"(https?:|www\.)"),
    ("O", "internet protocol address", r"\b(\d{1,3}\.){3}\d{1,3}\b|\b([0-9a-f]{1,4}:){3,}"),
    ("C", "date", r"\b\d{4}-\d{1,2}-\d{1,2}\b|\b\d{1,2}[./-]\d{1,2}[./-]\d{2,4}\b"),
    ("G", "social security number", r"\b\d{3}-\d{2}-\d{4}\b"),
    ("D", "telephone number", r"\+?\(?\d[\d\s().-]{7,}\d"),
    ("R", "number of an account, record, message or device", r"\d{6,}"),
    ("A", "name or other words", r"[^\W\d_]{2,}"),
)
"""Letter, item and pattern, the most telling first. What has no pattern (photographs, voice prints) is no text."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """A cell that must not leave the clinic: row from 1 (0 is the header), column, and the item of the list."""

    row: int
    column: str
    item: str
    what: str


def table(cohort: Sequence[Participant]) -> Iterator[tuple[str, ...]]:
    """The header, then one row a swallow: by the children's codes, then by night and place.

    Whether a family stopped is told of nobody if fewer than `SMALL_CELL` stopped, or went on; an age is told if so
    many share it and the same answer to that.
    """
    stopped = Counter(child.dropped_out for child in cohort)
    hidden = bool(stopped[True]) and any(small(count) for count in stopped.values())
    traits = {child.code: (child.age, "" if hidden else str(int(child.dropped_out))) for child in cohort}
    shared = Counter(traits.values())
    yield tuple(column.name for column in COLUMNS)
    for child in sorted(cohort, key=lambda one: one.code):
        age, dropped_out = trait = traits[child.code]
        told = age is not None and age <= OLDEST and shared[trait] >= SMALL_CELL
        for swallow in in_order(child.swallows):
            yield _row(child, swallow, str(age) if told else "", dropped_out)


def dictionary(columns: Sequence[Column] = COLUMNS) -> Iterator[tuple[str, ...]]:
    """The data dictionary as a table, with its header."""
    yield "column", "meaning", "unit", "pattern"
    yield from ((column.name, column.meaning, column.unit, column.pattern) for column in columns)


def small(count: int) -> bool:
    """Whether a count of children is too small to be told. That there are none may be told."""
    return 0 < count < SMALL_CELL


def suppressed(count: int) -> str:
    """A count of children as it may be told."""
    return f"<{SMALL_CELL}" if small(count) else str(count)


def identifiers(rows: Sequence[Sequence[str]], columns: Sequence[Column] = COLUMNS) -> tuple[Finding, ...]:
    """All that stands in a table, header first, and is not what the dictionary allows there.

    A column that is not in the dictionary is found whatever it holds; a cell is allowed only if it is empty or
    matches its column's pattern, and what is not is named by the item of the Safe Harbor list that it looks like.
    """
    patterns = {column.name: re.compile(column.pattern) for column in columns}
    header, *body = rows or [[]]
    strange = [
        Finding(row=0, column=name, item="R", what="column that is not in the data dictionary")
        for name in header
        if name not in patterns
    ]
    cells = (
        (number, name, cell)
        for number, row in enumerate(body, 1)
        for name, cell in zip([*header, *["(no header)"] * (len(row) - len(header))], row, strict=False)
    )
    return (
        *strange,
        *(
            _finding(number, name, cell)
            for number, name, cell in cells
            if cell and not (name in patterns and patterns[name].fullmatch(cell))
        ),
    )


def _finding(row: int, column: str, cell: str) -> Finding:
    for item, what, pattern in _SAFE_HARBOR:
        if re.search(pattern, cell, re.IGNORECASE):
            return Finding(row=row, column=column, item=item, what=what)
    return Finding(row=row, column=column, item="R", what="value that the data dictionary does not allow")


def _row(child: Participant, swallow: Swallow, age: str, dropped_out: str) -> tuple[str, ...]:
    return (
        child.code,
        age,
        str(swallow.night),
        str(swallow.place),
        swallow.position,
        str(int(swallow.went_down)),
        "" if swallow.rating is None else str(swallow.rating),
        child.named.get(swallow.night, ""),
        dropped_out,
    )

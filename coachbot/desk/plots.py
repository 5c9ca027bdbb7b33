"""Drawings as inline SVG, made here so that pages need no script. Styled by classes: the pages allow no inline style.

No colour tells anything that shape does not: a practised night is a square, a partial one half, a missed one a ring.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from coachbot.coach.case import Night, Status
from coachbot.programme.positions import Position
from coachbot.reading.readings import Mark, Word

CELL, GAP = 9, 3
WEEK = 7

WIDE, HIGH = 300, 104
LEFT, RIGHT, TOP, BOTTOM = 24, 8, 8, 20
"""A course's drawing and its margins, in user units."""

SCALE = (1, 3, 5)
"""Ratings that have a line of their own."""

LONGEST, LABEL, PER_MM = 180, 10, 8
"""The most units that a size takes up, the gap to its label, and units a millimetre while there is room."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A share at a night with its interval, all from 0 to 1; without `at` only the interval is known."""

    night: int
    at: float | None
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """Something to swallow, in millimetres, with its label; what has no known width is drawn round."""

    label: str
    length: float
    width: float | None = None


def strip(nights: Sequence[Status | None], title: str) -> Markup:
    """Evenings at a glance, oldest first: a mark a day, a gap after each week."""
    width = len(nights) * (CELL + GAP) + (len(nights) // WEEK) * GAP
    marks = Markup().join(_mark(index, status) for index, status in enumerate(nights))
    return Markup(
        '<svg class="strip" role="img" aria-label="{}" width="{}" height="12" viewBox="0 0 {} 12">{}</svg>'
    ).format(title, width, width, marks)


def _mark(index: int, status: Status | None) -> Markup:
    x = index * (CELL + GAP) + (index // WEEK) * GAP
    if status is Status.FINISHED:
        return Markup('<rect class="full" x="{}" y="1" width="9" height="9"/>').format(x)
    if status is Status.PARTIAL:
        return Markup('<path class="full" d="M{} 10v-9l9 9z"/>').format(x)
    if status is Status.MISSED:
        return Markup('<circle class="ring" cx="{}" cy="5.5" r="3.5"/>').format(x + 4.5)
    if status is None:
        return Markup('<rect class="none" x="{}" y="5" width="3" height="1.5"/>').format(x + 3)
    return Markup('<path class="ring" d="M{} 5.5h9"/>').format(x)


def course(nights: Sequence[Night], position: Position, title: str, down: str) -> Markup:
    """One position's ratings over the nights: points joined where nights follow, crosses below for not down."""
    last = max((night.number for night in nights), default=1)
    marks = [(night.number, mark) for night in nights if (mark := night.mark(position)) is not None]
    points = [(number, mark) for number, mark in marks if not isinstance(mark, Word)]
    parts = [
        *map(_level, SCALE),
        _axis(last),
        Markup('<text class="tick" x="2" y="{}">{}</text>').format(HIGH - 24, down),
    ]
    parts.append(Markup('<polyline class="line" points="{}"/>').format(" ".join(_point(last, *one) for one in points)))
    parts += [_dot(last, number, mark) for number, mark in marks if mark is not Word.SKIPPED]
    return Markup('<svg class="course" role="img" aria-label="{}" viewBox="0 0 {} {}">{}</svg>').format(
        title, WIDE, HIGH, Markup().join(parts)
    )


def _x(last: int, number: float) -> float:
    return LEFT + (WIDE - LEFT - RIGHT) * (number - 0.5) / max(last, 1)


def _y(rating: int) -> float:
    """Ratings 1 to 5; 0 is the line of what did not go down."""
    return TOP + (HIGH - TOP - BOTTOM) * (5 - rating) / 5


def _level(rating: int) -> Markup:
    return _rule(_y(rating), 8, rating)


def _rule(y: float, left: int, label: int) -> Markup:
    return Markup('<path class="rule" d="M{} {:.1f}H{}"/><text class="tick" x="{}" y="{:.1f}">{}</text>').format(
        LEFT, y, WIDE - RIGHT, left, y + 3, label
    )


def _axis(last: int) -> Markup:
    every = 1 if last <= 7 else 2 if last <= 14 else 5  # noqa: PLR2004 - what fits under the drawing
    ticks = (
        Markup('<text class="tick middle" x="{:.1f}" y="{}">{}</text>').format(_x(last, number), HIGH - 5, number)
        for number in range(1, last + 1)
        if number == 1 or number % every == 0
    )
    return Markup().join(ticks)


def _point(last: int, number: int, rating: int) -> str:
    return f"{_x(last, number):.1f},{_y(rating):.1f}"


def _dot(last: int, number: int, mark: Mark) -> Markup:
    x = _x(last, number)
    if isinstance(mark, Word):
        return Markup('<path class="cross" d="M{:.1f} {:.1f}l6 6m0 -6l-6 6"/>').format(x - 3, _y(0) - 3)
    return Markup('<circle class="dot" cx="{:.1f}" cy="{:.1f}" r="3.2"/>').format(x, _y(mark))


def bars(shares: Mapping[str, float], title: str) -> Markup:
    """Shares of one as bars, with their percentages."""
    rows = [_bar(index, name, share) for index, (name, share) in enumerate(shares.items())]
    height = 26 * len(rows)
    return Markup('<svg class="bars" role="img" aria-label="{}" viewBox="0 0 300 {}">{}</svg>').format(
        title, height, Markup().join(rows)
    )


def _bar(index: int, name: str, share: float) -> Markup:
    y = 26 * index
    return Markup(
        '<text class="label" x="0" y="{}">{}</text><rect class="track" x="76" y="{}" width="180" height="14"/>'
        '<rect class="full" x="76" y="{}" width="{:.1f}" height="14"/><text class="label" x="262" y="{}">{} %</text>'
    ).format(y + 17, name, y + 6, y + 6, 180 * share, y + 17, round(100 * share))


def shares_by_night(spots: Sequence[Spot], last: int, title: str) -> Markup:
    """Shares of a hundred by night: a point each, a bar for its interval."""
    drawn = (_spot(last, spot) for spot in spots)
    return _shares(last, title, drawn)


def _spot(last: int, spot: Spot) -> Markup:
    x = _x(last, spot.night)
    bar = Markup('<path class="spread" d="M{:.1f} {:.1f}V{:.1f}"/>').format(
        x, _level_of(spot.low), _level_of(spot.high)
    )
    if spot.at is None:
        return bar
    return bar + Markup('<circle class="dot" cx="{:.1f}" cy="{:.1f}" r="3.2"/>').format(x, _level_of(spot.at))


def falling(steps: Sequence[Spot], last: int, title: str) -> Markup:
    """A curve that starts at all and falls at the end of each step's night, with the band of its interval."""
    points = [Spot(night=0, at=1, low=1, high=1), *steps]
    ends = [*(step.night for step in steps), last]
    line, low, high = (_stairs(last, ends, [getattr(one, name) for one in points]) for name in ("at", "low", "high"))
    band = Markup('<polygon class="band" points="{}"/>').format(" ".join([*low, *reversed(high)]))
    return _shares(last, title, [band, Markup('<polyline class="curve" points="{}"/>').format(" ".join(line))])


def _stairs(last: int, ends: Sequence[int], levels: Sequence[float]) -> list[str]:
    """The corners of a line that keeps each level up to the end of its night."""
    starts = [0, *ends]
    return [
        f"{_x(last, night + 0.5):.1f},{_level_of(level):.1f}"
        for start, end, level in zip(starts, ends, levels, strict=False)
        for night in (start, end)
    ]


def _level_of(share: float) -> float:
    return TOP + (HIGH - TOP - BOTTOM) * (1 - share)


def _shares(last: int, title: str, drawn: Iterable[Markup]) -> Markup:
    rules = (_rule(_level_of(percent / 100), 2, percent) for percent in (0, 50, 100))
    return Markup('<svg class="course" role="img" aria-label="{}" viewBox="0 0 {} {}">{}</svg>').format(
        title, WIDE, HIGH, Markup().join([*rules, _axis(last), *drawn])
    )


def sizes(shapes: Sequence[Shape], title: str) -> Markup:
    """Things to swallow below each other, to one scale."""
    scale = min(PER_MM, LONGEST / max(shape.length for shape in shapes))
    heights = [max(scale * (shape.width or shape.length), 14) + 8 for shape in shapes]
    tops = [sum(heights[:index]) for index in range(len(shapes))]
    rows = [_shape(shape, scale, top, high) for shape, top, high in zip(shapes, tops, heights, strict=True)]
    return Markup('<svg class="bars sizes" role="img" aria-label="{}" viewBox="0 0 300 {:.0f}">{}</svg>').format(
        title, sum(heights), Markup().join(rows)
    )


def _shape(shape: Shape, scale: float, top: float, high: float) -> Markup:
    length, width, middle = scale * shape.length, scale * (shape.width or shape.length), top + high / 2
    return Markup(
        '<rect class="pill" x="1" y="{:.1f}" width="{:.1f}" height="{:.1f}" rx="{:.1f}"/>'
        '<text class="label" x="{:.1f}" y="{:.1f}">{}</text>'
    ).format(middle - width / 2, length, width, width / 2, length + LABEL, middle + 4, shape.label)

"""The order of the positions, night by night, fixed before the first night."""

import random
from collections.abc import Sequence

from coachbot.programme.positions import Position
from coachbot.programme.protocol import MOST_NIGHTS

Order = tuple[Position, ...]

_BLOCKS = {
    2: ("01", "10"),
    3: ("012", "120", "201", "210", "021", "102"),
    4: ("0132", "1203", "2310", "3021"),
    5: ("01432", "12043", "23104", "34210", "40321", "23401", "34012", "40123", "01234", "12340"),
}
_FORTNIGHT = tuple("01243 04321 14230 34210 24130 03421 12340 41230 40321 32140 24031 32104 23410 10342".split())  # noqa: SIM905


def plan(positions: Sequence[Position], nights: int, seed: int) -> tuple[Order, ...]:
    """The orders of all nights of one child.

    Raises:
        ValueError: not two to five different positions, or not 1 to 60 nights.
    """
    if not 2 <= len(set(positions)) == len(positions) <= len(Position):
        raise ValueError("name two to five different positions")
    if not 1 <= nights <= MOST_NIGHTS:
        raise ValueError(f"{nights} nights cannot be planned: choose 1 to {MOST_NIGHTS}")
    draw = random.Random(seed)  # noqa: S311 - variety, not secrecy
    labels = draw.sample(list(positions), len(positions))
    rows: list[str] = []
    while len(rows) < nights:
        rest = nights - len(rows)
        block = _FORTNIGHT if len(positions) == 5 and rest == len(_FORTNIGHT) else _BLOCKS[len(positions)]  # noqa: PLR2004
        rows += draw.sample(block, len(block))
    return tuple(tuple(labels[int(item)] for item in row) for row in rows[:nights])

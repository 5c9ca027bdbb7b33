"""The order of the positions on each night: fixed before the first night, counterbalanced, each child's its own.

Two things must not favour a position: its place in the night (tiredness) and what comes just before it (carry-over).
So over the nights of a plan each position stands in each place, and just after each other position, as often as in
any other place and after any other position, or once more or less (Williams, Australian Journal of Scientific
Research A 1949;2:149-168, has the exact case). What comes last on one night and first on the next is not balanced.

A plan is made of blocks. The nights of a block are cut into segments, and however the nights of a segment are
shuffled, every beginning of the block keeps its balance; that gives variety, and serves those who stop early. Integer
programming over all orders shows what cannot be balanced to within 1: 2, 3 and 4 nights of three positions (and the
same plus any multiple of 6), and 4, 5 and 6 nights of five; there the counts differ by 2. Ten exact nights and four
to six more of five positions cannot be within 1 either, so those plans end in a block of their own, which is within 1
after every night but the 4th to 6th, the 10th (the 9th to 11th in the block of fifteen) and the 15th of sixteen.
"""

import json
import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from coachbot.programme.positions import Position
from coachbot.programme.protocol import MOST_NIGHTS

Order = tuple[Position, ...]
_Block = tuple[tuple[str, ...], ...]
"""Segments of nights; a night is a string of digits that the positions are put in for."""


class _Hand(NamedTuple):
    """So many of the items are dealt, in any order."""

    items: tuple[str, ...]
    dealt: int


def _block(text: str) -> _Block:
    return tuple(tuple(segment.split()) for segment in text.split("|"))


_EXACT = {
    2: _block("01|10"),
    3: _block("012|120 201|021 102 210"),
    4: _block("0132|1203 2310 3021"),
    5: _block("01234|32410 13042|21403 43120 34021 20314|42301 04132 10243"),
}
"""By the number of positions: the shortest block with all counts equal. A block's first night is never shuffled."""

_FIFTEEN = _block("01234|32410 43021|14203 40132 20341 31042|12304|02413 21430 03142 34021|24310 40123 13204")
_SIXTEEN = _block("01234|32410 43021|14203 23104 01342 40321|12043 24130|31402|40312|13024 34210 20143|02341|10432")
_LAST = {14: _SIXTEEN, 15: _FIFTEEN, 16: _SIXTEEN}
"""The block that serves when so many nights of five positions are left."""

_GOLDEN = (1 + math.sqrt(5)) / 2


def plan(positions: Sequence[Position], nights: int, seed: int) -> tuple[Order, ...]:
    """The orders of all the nights of one child.

    The plans there are for a number of nights are numbered, and seeds in a row get different numbers until all have
    been used: 128 for two positions and 14 nights, 69,120 for five. Meanwhile they take all the first nights in turn.

    Args:
        positions: two to five different ones.
        nights: 1 to 60.
        seed: any whole number, one for each child.

    Raises:
        ValueError: other positions or nights than these.
    """
    _check(positions, nights)
    blocks = list(_blocks(tuple(positions), nights))
    plans = math.prod(math.perm(len(hand.items), hand.dealt) for block in blocks for hand in block)
    return tuple(_deal(blocks, _scatter(seed, plans)))


def render(positions: str, nights: int, seed: int) -> str:
    """The plan for positions named with commas between, as one JSON list of nights.

    Raises:
        ValueError: a name that is no position, or as for `plan`.
    """
    return json.dumps(plan([_position(name.strip()) for name in positions.split(",")], nights, seed))


def _position(name: str) -> Position:
    try:
        return Position(name)
    except ValueError:
        raise ValueError(f"{name!r} is not a position: choose from {', '.join(Position)}") from None


def _check(positions: Sequence[Position], nights: int) -> None:
    if len(positions) not in _EXACT or len(set(positions)) < len(positions):
        raise ValueError(f"these are not two to five different positions: {', '.join(positions)}")
    if not 1 <= nights <= MOST_NIGHTS:
        raise ValueError(f"{nights} nights cannot be planned: choose 1 to {MOST_NIGHTS}")


def _blocks(positions: tuple[Position, ...], nights: int) -> Iterator[list[_Hand]]:
    """For each block the positions, to be put in for the digits, then its segments as far as nights are left."""
    while nights > 0:
        exact = _EXACT[len(positions)]
        block = _LAST.get(nights, exact) if len(positions) == len(Position) else exact
        hands = [_Hand(positions, len(positions))]
        for segment in block:
            hands.append(_Hand(segment, min(len(segment), nights)))
            nights -= hands[-1].dealt
        yield hands


def _scatter(seed: int, plans: int) -> int:
    """The number of a seed's plan: neighbours come far apart, and any `plans` seeds in a row all get different ones."""
    stride = round(plans / _GOLDEN)
    while math.gcd(stride, plans) > 1:
        stride += 1
    return seed * stride % plans


def _deal(blocks: list[list[_Hand]], number: int) -> Iterator[Order]:
    """The nights of plan `number`, a number in the mixed radix of what is left to choose from at each choice."""
    for labels, *segments in blocks:
        number, positions = _take(labels, number)
        for segment in segments:
            number, nights = _take(segment, number)
            yield from (tuple(Position(positions[int(digit)]) for digit in night) for night in nights)


def _take(hand: _Hand, number: int) -> tuple[int, list[str]]:
    """What the lowest digits of `number` choose from a hand, and the digits that are left."""
    left, taken = list(hand.items), []
    for _ in range(hand.dealt):
        number, choice = divmod(number, len(left))
        taken.append(left.pop(choice))
    return number, taken

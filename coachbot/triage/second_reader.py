"""A second, independent reader: a linear model over word parts, words and word families, trained on sentences.

It is there for what no rule says in so many words ("his mouth looks like a smurf's"), and to tell whether words that
often stand in harmless replies are a sign here; it can only raise a level above what the firm rules found. The weights
of all categories for one feature lie side by side in one Python integer, so that one addition adds them all: scoring
needs no numerical package and takes some tens of microseconds a sentence (``tests/bench/bench_triage.py``).
``second_reader.npz`` (2.8 MB) is made by ``tests/triage/train_second_reader.py``.
"""

import math
from array import array
from collections.abc import Iterable, Sequence
from functools import cache, lru_cache
from importlib import resources
from typing import IO, NamedTuple

from coachbot.triage import arrays
from coachbot.triage.features import BUCKETS, between, codes, inside, kinship
from coachbot.triage.levels import Level

LONGEST = 32
"""Words that the reader takes at once."""
_LANE = 2
"""Bytes of one weight in a sum: room for 257 weights, more than there are in any group of `LONGEST` words."""
_WIDE = 4
"""Bytes of one weight in the sum over the letter groups of all words."""
_BIAS = 128
_FULL = (1 << 8 * _WIDE) - 1
_CODES = {_LANE: "H", _WIDE: "I"}
_BIASED = bytes((value + _BIAS) % 256 for value in range(256))
"""For the byte of each signed weight, the weight with the bias added."""
_WORST_FIRST = (Level.EMERGENCY, Level.URGENT, Level.CONCERN, Level.MEDICINE)

Sum = tuple[int, int]
"""Packed weights added up, and how many."""


class Opinion(NamedTuple):
    """The worst level that the reader is sure enough of, and the likeliest category at that level."""

    level: Level
    category: str


class SecondReader:
    """The weights, ready to read sentences."""

    def __init__(self, file: IO[bytes]) -> None:
        held = arrays.read(file)
        names = [name.split() for name in bytes(held["categories"]).decode().split("\n")]
        self._categories = [name for name, _ in names]
        self._levels = [Level[level.upper()] for _, level in names]
        self._places = {level: [n for n, at in enumerate(self._levels) if at >= level] for level in Level}
        self._scale = float(held["scale"][0])
        self._start = [float(value) for value in held["start"]]
        sure, (self._surer,), slight = (held["thresholds"][at] for at in (slice(4), slice(4, 5), slice(5, 9)))
        self._sure = tuple(zip(_WORST_FIRST, sure, strict=True))
        self._slight = dict(zip(_WORST_FIRST, slight, strict=True))
        self._rows = _packed(held["weights"], len(names))
        self._inside = lru_cache(maxsize=32768)(self._parts)

    def opinion(self, chances: Sequence[float], known: Level, *, part: bool) -> Opinion:
        """The worst level that the reader is sure enough of, if it is worse than is `known`.

        Of `part` of a reply it must be surer, since what stands around it may change what it means.
        """
        surer = self._surer if part else 0.0
        for level, threshold in self._sure:
            if level > known and self.at_least(level, chances) >= threshold + surer:
                ranked = zip(chances, self._categories, self._levels, strict=True)
                return Opinion(level, max((chance, name) for chance, name, at in ranked if at == level)[1])
        return Opinion(Level.NONE, "")

    def agrees(self, level: Level, chances: Sequence[float]) -> bool:
        """Whether a sign of `level` that the rules only ask about may well be there."""
        return bool(self.at_least(level, chances) >= self._slight[level])

    def at_least(self, level: Level, chances: Sequence[float]) -> float:
        """The probability of `level` or a worse one."""
        return sum(map(chances.__getitem__, self._places[level]))

    def chances(self, words: Sequence[str]) -> list[float]:
        """The probability of each category for one reply, or a stretch of it, in up to `LONGEST` folded words."""
        coded = [codes(word) for word in words]
        groups = [self._whole(words), self._added(between(coded)), self._added(kinship(coded))]
        one, two, three = (self._scale / math.sqrt(count or 1) for _, count in groups)
        bias = _BIAS * sum(factor * count for factor, (_, count) in zip((one, two, three), groups, strict=True))
        lanes = [self._lanes(packed, size) for (packed, _), size in zip(groups, (_WIDE, _LANE, _LANE), strict=True)]
        rows = zip(self._start, *lanes, strict=True)
        scores = [start - bias + one * a + two * b + three * c for start, a, b, c in rows]
        top = max(scores)
        powers = [math.exp(score - top) for score in scores]
        total = sum(powers)
        return [power / total for power in powers]

    def weight(self, word: str, category: str) -> float:
        """How much the letters of one word speak for `category`, on average."""
        packed, count = self._inside(word)
        lane = packed >> (8 * _WIDE * self._categories.index(category)) & _FULL
        return lane / count - _BIAS

    def _parts(self, word: str) -> Sum:
        packed, count = self._added(inside(word))
        return int.from_bytes(array("I", self._lanes(packed, _LANE)).tobytes(), "little"), count

    def _lanes(self, packed: int, size: int) -> Sequence[int]:
        """The sums of the categories, each `size` bytes wide in `packed`."""
        return array(_CODES[size], packed.to_bytes(size * len(self._start), "little"))

    def _whole(self, words: Iterable[str]) -> Sum:
        sums = [self._inside(word) for word in words]
        return sum(packed for packed, _ in sums), sum(count for _, count in sums)

    def _added(self, buckets: Sequence[int]) -> Sum:
        return sum(map(self._rows.__getitem__, buckets)), len(buckets)


def _packed(weights: Sequence[int], lanes: int) -> list[int]:
    """One integer for each bucket, with a lane for each category; weights are biased to be positive."""
    spread = bytearray(BUCKETS * lanes * _LANE)
    spread[::_LANE] = bytes(weights).translate(_BIASED)
    width = lanes * _LANE
    return [int.from_bytes(spread[at : at + width], "little") for at in range(0, len(spread), width)]


@cache
def second_reader() -> SecondReader:
    """The reader that ships with the package."""
    with (resources.files("coachbot.triage") / "second_reader.npz").open("rb") as file:
        return SecondReader(file)

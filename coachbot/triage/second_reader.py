"""A second, independent reader: a linear model over word parts, words and word families, trained on sentences.

It is there for what no rule says in so many words ("his mouth looks like a smurf's"), and can only raise a level. The
weights of all categories for one feature lie side by side in one Python integer, so that one addition adds them all:
scoring needs no numerical package and takes some tens of microseconds a sentence (``tests/bench/bench_triage.py``).
``second_reader.npz`` (1.3 MB) is made by ``tests/triage/train_second_reader.py``.
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

_LANE = 4
_BIAS = 128
_FULL = (1 << 8 * _LANE) - 1
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
        *thresholds, self._firm = held["thresholds"]
        self._thresholds = tuple(zip(_WORST_FIRST, thresholds, strict=True))
        self._rows = _packed(held["weights"], len(names))
        self._inside = lru_cache(maxsize=32768)(self._parts)

    def opinion(self, words: Sequence[str], known: Level) -> Opinion:
        """What the reader makes of one sentence, given in folded words, if it is sure of worse than is `known`.

        It must be surer to contradict the rules than to speak where they are silent.
        """
        chances = self.chances(words)
        for level, threshold in self._thresholds:
            if level > known and self.at_least(level, chances) >= (threshold if known == Level.NONE else self._firm):
                ranked = zip(chances, self._categories, self._levels, strict=True)
                return Opinion(level, max((chance, name) for chance, name, at in ranked if at == level)[1])
        return Opinion(Level.NONE, "")

    def at_least(self, level: Level, chances: Sequence[float]) -> float:
        """The probability of `level` or a worse one."""
        return sum(map(chances.__getitem__, self._places[level]))

    def chances(self, words: Sequence[str]) -> list[float]:
        """The probability of each category."""
        coded = [codes(word) for word in words]
        groups = [self._whole(words), self._added(between(coded)), self._added(kinship(coded))]
        one, two, three = (self._scale / math.sqrt(count or 1) for _, count in groups)
        bias = _BIAS * sum(factor * count for factor, (_, count) in zip((one, two, three), groups, strict=True))
        lanes = (array("I", packed.to_bytes(_LANE * len(self._start), "little")) for packed, _ in groups)
        rows = zip(self._start, *lanes, strict=True)
        scores = [start - bias + one * a + two * b + three * c for start, a, b, c in rows]
        top = max(scores)
        powers = [math.exp(score - top) for score in scores]
        total = sum(powers)
        return [power / total for power in powers]

    def weight(self, word: str, category: str) -> float:
        """How much the letters of one word speak for `category`, on average."""
        packed, count = self._inside(word)
        lane = packed >> (8 * _LANE * self._categories.index(category)) & _FULL
        return lane / count - _BIAS

    def _parts(self, word: str) -> Sum:
        return self._added(inside(word))

    def _whole(self, words: Iterable[str]) -> Sum:
        sums = [self._inside(word) for word in words]
        return sum(packed for packed, _ in sums), sum(count for _, count in sums)

    def _added(self, buckets: Sequence[int]) -> Sum:
        return sum(map(self._rows.__getitem__, buckets)), len(buckets)


def _packed(weights: Sequence[int], lanes: int) -> list[int]:
    """One integer for each bucket, with a lane of four bytes for each category; weights are biased to be positive."""
    spread = bytearray(BUCKETS * lanes * _LANE)
    spread[::_LANE] = bytes(weights).translate(_BIASED)
    width = lanes * _LANE
    return [int.from_bytes(spread[at : at + width], "little") for at in range(0, len(spread), width)]


@cache
def second_reader() -> SecondReader:
    """The reader that ships with the package."""
    with (resources.files("coachbot.triage") / "second_reader.npz").open("rb") as file:
        return SecondReader(file)

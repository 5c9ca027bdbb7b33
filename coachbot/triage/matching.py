"""Finding patterns in the words of a reply, through an index by each pattern's rarest part."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from typing import Generic, NamedTuple, TypeVar

from coachbot.triage.rulebook import Part
from coachbot.triage.words import BREAK, QUESTION

Meaning = TypeVar("Meaning")
Symbols = Sequence[frozenset[str]]
_ENDS = frozenset({BREAK, QUESTION})
_CACHE = 65536


class Hit(NamedTuple, Generic[Meaning]):
    """A pattern found from word `first` to word `last`, both included."""

    first: int
    last: int
    meaning: Meaning


class Matcher(Generic[Meaning]):
    """Many patterns, each with what it means, to be found in one pass over the words."""

    def __init__(self, patterns: Iterable[tuple[tuple[Part, ...], Meaning]]) -> None:
        rows = list(patterns)
        uses = Counter(symbol for row, _ in rows for part in row for symbol in part.symbols)
        self._index: dict[str, list[tuple[tuple[Part, ...], int, Meaning]]] = defaultdict(list)
        for row, meaning in rows:
            anchor = _rarest(row, uses)
            for symbol in row[anchor].symbols:
                self._index[symbol].append((row, anchor, meaning))
        self._starting_at = lru_cache(maxsize=_CACHE)(self._anchored)

    def _anchored(self, symbols: frozenset[str]) -> tuple[tuple[tuple[Part, ...], int, Meaning], ...]:
        """The patterns whose rarest part a word with these symbols fits."""
        return tuple(pattern for symbol in symbols for pattern in self._index.get(symbol, ()))

    def find(self, words: Symbols) -> Iterator[Hit[Meaning]]:
        """Every place where a pattern stands; a pattern is given once for each word that its rarest part fits."""
        for place, symbols in enumerate(words):
            for row, anchor, meaning in self._starting_at(symbols):
                last = _forward(words, row, anchor, place)
                if last is None:
                    continue
                first = _backward(words, row, anchor, place)
                if first is not None:
                    yield Hit(first, last, meaning)


def _rarest(row: tuple[Part, ...], uses: Counter[str]) -> int:
    required = [n for n, part in enumerate(row) if not part.optional]
    return min(required, key=lambda n: sum(uses[symbol] * (20 if symbol == BREAK else 1) for symbol in row[n].symbols))


def _forward(words: Symbols, row: tuple[Part, ...], part: int, place: int) -> int | None:
    """The last word of the pattern's rest after `part`, which stands at `place`."""
    if part + 1 == len(row):
        return place
    after = row[part + 1]
    for there in range(place + 1, min(place + 2 + after.gap, len(words))):
        if _fits(words[there], after):
            last = _forward(words, row, part + 1, there)
            if last is not None:
                return last
        if words[there] & _ENDS:
            break
    return _forward(words, row, part + 1, place) if after.optional else None


def _backward(words: Symbols, row: tuple[Part, ...], part: int, place: int) -> int | None:
    """The first word of the pattern's rest before `part`, which stands at `place`."""
    if part == 0:
        return place
    gap, before = row[part].gap, row[part - 1]
    for there in range(place - 1, max(place - 2 - gap, -1), -1):
        if _fits(words[there], before):
            first = _backward(words, row, part - 1, there)
            if first is not None:
                return first
        if words[there] & _ENDS:
            break
    return _backward(words, row, part - 1, place) if before.optional else None


def _fits(symbols: frozenset[str], part: Part) -> bool:
    if not symbols.isdisjoint(part.symbols):
        return True
    return BREAK in part.symbols and QUESTION in symbols

"""What the second reader sees of a sentence: parts of words, words, word families, and pairs of these, as buckets.

Hashing keeps the reader small and gives a misspelled word the weight of the parts that it shares with known ones.
Families (see `families`) give a word that training never showed the weight of words that mean nearly the same. Each
word is hashed once (CRC-32); a pair is hashed from the numbers of its two words by multiplying (Knuth, The Art of
Computer Programming 3, section 6.4, from memory), which is quicker than hashing it as text.
"""

import itertools
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple
from zlib import crc32

from coachbot.triage.families import family

BUCKETS = 1 << 18
_MASK = BUCKETS - 1
_SHIFT = 24
_SHORTEST, _LONGEST = 2, 5
_STEM = 4
_BYTES = 64
"""Bytes of a word that are looked at: no more than 254 groups of letters."""
_CACHE = 32768
_SALTS = (
    0x9E3779B1, 0x85EBCA6B, 0xC2B2AE35, 0x27D4EB2F, 0x165667B1, 0xD3A2646D, 0xFD7046C5, 0xB55A4F09, 0x8F1BBCDD,
    0xCC9E2D51, 0x1B873593, 0xE6546B65,
)  # fmt: skip
"""An odd factor for each kind of feature, so that the same two words fall elsewhere in each."""
_SECOND = 0x2545F491


class Codes(NamedTuple):
    """A word as numbers: itself, its beginning, its narrow and its wide family."""

    word: int
    stem: int
    narrow: int
    wide: int


@lru_cache(maxsize=_CACHE)
def codes(word: str) -> Codes:
    """The numbers of one word."""
    wide, narrow = family(word)
    return Codes(crc32(word.encode()), crc32(word[:_STEM].encode()), crc32(narrow.encode()), crc32(wide.encode()))


_START, _END = codes("^"), codes("$")


def inside(word: str) -> list[int]:
    """The buckets of the letter groups of one word, its ends marked."""
    marked = f"<{word}>".encode()[:_BYTES]
    size = len(marked)
    return [
        crc32(marked[at : at + length]) & _MASK
        for length in range(_SHORTEST, _LONGEST + 1)
        for at in range(size - length + 1)
    ]


def between(words: Sequence[Codes]) -> list[int]:
    """The buckets of the words, of their pairs, and of the pairs of their beginnings over up to two words."""
    whole = [_START.word, *(word.word for word in words), _END.word]
    stems = [_START.stem, *(word.stem for word in words), _END.stem]
    return [
        *_single(whole[1:-1], _SALTS[0]),
        *_paired(itertools.pairwise(whole), _SALTS[1]),
        *_paired(itertools.pairwise(stems), _SALTS[2]),
        *_paired(zip(stems, stems[2:], strict=False), _SALTS[3]),
        *_paired(zip(stems, stems[3:], strict=False), _SALTS[4]),
    ]


def kinship(words: Sequence[Codes]) -> list[int]:
    """The buckets of the families, of their pairs, and of the pairs of a word with the family of its neighbour."""
    whole = [_START.word, *(word.word for word in words), _END.word]
    narrow = [_START.narrow, *(word.narrow for word in words), _END.narrow]
    wide = [_START.wide, *(word.wide for word in words), _END.wide]
    return [
        *_single(narrow[1:-1], _SALTS[5]),
        *_single(wide[1:-1], _SALTS[6]),
        *_paired(itertools.pairwise(narrow), _SALTS[7]),
        *_paired(itertools.pairwise(wide), _SALTS[8]),
        *_paired(zip(narrow, narrow[2:], strict=False), _SALTS[9]),
        *_paired(zip(whole, narrow[1:], strict=False), _SALTS[10]),
        *_paired(zip(narrow, whole[1:], strict=False), _SALTS[11]),
    ]


def _single(ones: Iterable[int], salt: int) -> list[int]:
    return [one * salt >> _SHIFT & _MASK for one in ones]


def _paired(pairs: Iterable[tuple[int, int]], salt: int) -> list[int]:
    return [(one * salt + other * _SECOND) >> _SHIFT & _MASK for one, other in pairs]

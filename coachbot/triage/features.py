"""What the second reader sees of a sentence: parts of words, words, word families, and pairs of these, as buckets.

Hashing (CRC-32) keeps the reader small and gives a misspelled word the weight of the parts that it shares with known
ones. Families (see `families`) give a word that training never showed the weight of words that mean nearly the same.
"""

import itertools
from collections.abc import Sequence
from functools import lru_cache
from zlib import crc32

BUCKETS = 1 << 16
_SHORTEST, _LONGEST = 2, 5
_STEM = 4

Family = tuple[str, str]
"""The wide and the narrow family of a word."""


@lru_cache(maxsize=65536)
def bucket(feature: str) -> int:
    """The place of a feature among the weights."""
    return crc32(feature.encode()) & (BUCKETS - 1)


@lru_cache(maxsize=65536)
def inside(word: str) -> tuple[int, ...]:
    """The buckets of the letter groups of one word, its ends marked."""
    marked = f"<{word}>"
    lengths = range(_SHORTEST, _LONGEST + 1)
    return tuple(bucket(marked[at : at + length]) for length in lengths for at in range(len(marked) - length + 1))


def between(words: Sequence[str]) -> list[int]:
    """The buckets of the words, of their pairs, and of the pairs of their beginnings over up to two words."""
    marked = ["^", *words, "$"]
    stems = [word[:_STEM] for word in marked]
    found = [bucket(f"1{word}") for word in words]
    found += [bucket(f"2{one} {two}") for one, two in itertools.pairwise(marked)]
    found += [bucket(f"3{one} {two}") for one, two in itertools.pairwise(stems)]
    found += [bucket(f"4{one} {two}") for one, two in zip(stems, stems[2:], strict=False)]
    found += [bucket(f"5{one} {two}") for one, two in zip(stems, stems[3:], strict=False)]
    return found


def kinship(words: Sequence[str], families: Sequence[Family]) -> list[int]:
    """The buckets of the families, of their pairs, and of the pairs of a word with the family of its neighbour."""
    marked = ["^", *words, "$"]
    wide = ["^", *(family[0] for family in families), "$"]
    narrow = ["^", *(family[1] for family in families), "$"]
    found = [bucket(f"6{one}") for one in narrow[1:-1]]
    found += [bucket(f"7{one}") for one in wide[1:-1]]
    found += [bucket(f"8{one} {two}") for one, two in itertools.pairwise(narrow)]
    found += [bucket(f"9{one} {two}") for one, two in itertools.pairwise(wide)]
    found += [bucket(f"a{one} {two}") for one, two in zip(narrow, narrow[2:], strict=False)]
    found += [bucket(f"b{one} {two}") for one, two in zip(marked, narrow[1:], strict=False)]
    found += [bucket(f"c{one} {two}") for one, two in zip(narrow, marked[1:], strict=False)]
    return found

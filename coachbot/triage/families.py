"""Families of words that mean nearly the same, across the three languages.

``families.npz`` holds the commoner words of English, Spanish and French, folded, each with a wide and a narrow family:
clusters of their vectors in a multilingual sentence encoder (``tests/triage/make_families.py`` makes the file).
"""

from functools import cache
from importlib import resources
from typing import IO

from coachbot.triage import arrays

Family = tuple[str, str]
"""The wide and the narrow family of a word."""
UNKNOWN: Family = ("?", "?")


@cache
def families() -> dict[str, Family]:
    """The families of each known word."""
    with (resources.files("coachbot.triage") / "families.npz").open("rb") as file:
        return read(file)


def family(word: str) -> Family:
    """The families of one word; what is no word (a number, a sign) is a family of its own."""
    return families().get(word, UNKNOWN) if word.isalpha() else (word[:2], word[:2])


def read(file: IO[bytes]) -> dict[str, Family]:
    """The families in an open file."""
    held = arrays.read(file)
    words = bytes(held["words"]).decode().split("\n")
    wide, narrow = held["wide"], held["narrow"]
    return {word: (str(one), str(two)) for word, one, two in zip(words, wide, narrow, strict=True)}

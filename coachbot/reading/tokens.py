"""Cut a reply into folded tokens that remember where they stood."""

import re
import unicodedata
from functools import lru_cache
from typing import NamedTuple

APOSTROPHES = "'’‘`´ʼ"
ORDINAL_SIGNS = "ºª"
STARS = "⭐★🌟"
HOLLOW_STARS = "☆✩"

_WORD = r"[^\W\d_]+"
_PATTERN = rf"""
    (?P<keycap>[0-9]\ufe0f?\u20e3)
  | (?P<stars>[{STARS}][\ufe0f{STARS}{HOLLOW_STARS}]*)
  | (?P<ordinal>\d+(?:st|nd|rd|th|nde?|[dt]?[oa]|i?er[aeo]?|r[aeo]|i?[eèé]re|i?[eèé]me|e)(?![^\W_]))
  | (?P<number>\d+(?:[.,:/–-]\d+)*)
  | (?P<word>%s)
  | (?P<hyphen>(?<=[^\W\d_])[-‐‑](?=[^\W\d_]))
  | (?P<newline>[\r\n]+)
  | (?P<pause>\.\.+|…)
  | (?P<symbol>[^\s\ufe0f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff])
"""
_JOINING = re.compile(_PATTERN % rf"{_WORD}(?:[{APOSTROPHES}]{_WORD})*", re.VERBOSE)
_SPLITTING = re.compile(_PATTERN % _WORD, re.VERBOSE)


class Token(NamedTuple):
    """A piece of a reply: `text` folded (lower case, no accents), `shape` a group of the pattern, `start:end` where."""

    text: str
    shape: str
    start: int
    end: int


def fold(word: str) -> str:
    """The word in lower case without accents and apostrophes; full-width and circled forms become plain."""
    decomposed = "".join(c if c in ORDINAL_SIGNS else unicodedata.normalize("NFKD", c) for c in word.casefold())
    return "".join(c for c in decomposed if not unicodedata.combining(c) and c not in APOSTROPHES)


@lru_cache(maxsize=16384)
def _folded(written: str, shape: str) -> tuple[str, str]:
    text = fold(written)
    if shape in ("word", "ordinal"):
        shape = "number" if text.isdecimal() else "word"
    return text, shape


def tokens(text: str, *, split: bool) -> list[Token]:
    """The tokens of `text`, which must be in NFC.

    Args:
        text: what was written.
        split: whether an apostrophe parts two words (French ``n'est``) or belongs to one (English ``didn't``).
    """
    pattern = _SPLITTING if split else _JOINING
    return [
        Token(*_folded(found.group(), found.lastgroup or ""), *found.span())
        for found in pattern.finditer(text)
        if found.lastgroup != "hyphen"
    ]

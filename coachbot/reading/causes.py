"""What went wrong, according to a note: slouching, candy too far in front, too much water, ..."""

import unicodedata
from enum import StrEnum

from coachbot.reading.lexicon import Found, lexicon


class Cause(StrEnum):
    """Why a swallow was hard, as the clinician teaches it (common practice, no source)."""

    SLOUCH = "slouch"
    FRONT = "front"
    WATER = "water"
    BITE = "bite"
    FEAR = "fear"
    TASTE = "taste"
    TIRED = "tired"
    GAG = "gag"


_LONGEST = 2000
"""Characters of a note that are looked at."""
_REACH = 4
"""Words over which a negation carries."""


def causes(text: str, *, lang: str) -> tuple[Cause, ...]:
    """The causes that a note names, each once, in the order of `Cause`.

    A cause right after a negation in the same part of a sentence ("wasn't scared") is not named.

    Args:
        text: a note, in any form.
        lang: ``en``, ``es`` or ``fr``.

    Raises:
        LexiconError: there are no words for `lang`, or its file is mis-formed.
    """
    found = lexicon("causes", lang, ("causes",)).scan(unicodedata.normalize("NFC", text[:_LONGEST]))
    named = {item.name for place, item in enumerate(found) if item.section == "causes" and not _denied(found, place)}
    return tuple(cause for cause in Cause if cause in named)


def _denied(found: list[Found], place: int) -> bool:
    """Whether a negation stands before `place`, near enough and with no break between."""
    for item in reversed(found[max(0, place - _REACH) : place]):
        if item.section in ("breaks", "newline", "pause", "causes"):
            return False
        if item.section == "negations":
            return True
    return False

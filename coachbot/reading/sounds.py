"""What a word sounds like, so that a child who spells by ear is understood: ``santre`` is ``centre``."""

import re
from collections.abc import Sequence
from functools import lru_cache

_Rule = tuple[re.Pattern[str], str]


def _rules(*pairs: tuple[str, str]) -> Sequence[_Rule]:
    return [(re.compile(pattern), sound) for pattern, sound in pairs]


_TWICE = (r"(.)\1+", r"\1")
_RULES = {
    "en": _rules(
        (r"^wr", "r"), (r"^kn", "n"), (r"^wh", "w"), (r"^th", "t"), (r"ph", "f"), (r"e?igh", "i"), (r"ck", "k"),
        (r"c(?=[eiy])", "s"), (r"[cq]", "k"), (r"z", "s"), (r"tw(?=[ou])", "t"), (r"(?<=[^aeiouy])e$", ""), _TWICE,
        (r"(?<=[aeiou])[wh](?![aeiouy])", "u"), (r"eu", "o"), (r"(?:a[iy]|[eiy])[aeiouy]*", "i"),
        (r"[aou][aeouy]*", "o"), (r"([io].*[^io])[io]([rl])$", r"\1\2"),
    ),
    "es": _rules(
        (r"qu(?=[ei])|q", "k"), (r"c(?=[ei])", "s"), (r"ch|sh|g(?=[ei])|j", "x"), (r"c", "k"), (r"z", "s"), (r"v", "b"),
        (r"h", ""), (r"ll", "y"), (r"k[uwo]a", "ka"), (r"ie", "e"), _TWICE,
    ),
    "fr": _rules(
        (r"qu|q", "k"), (r"c(?=[eiy])", "s"), (r"[sc]h", "C"), (r"c", "k"), (r"ph", "f"), (r"h", ""), (r"z", "s"),
        (r"y", "i"), (r"ou?a|oi|wa|ua", "wa"), (r"eau|au", "o"), (r"o?eu", "E"), (r"[ae]i(?!n)|e[rzt]$", "e"),
        (r"[ae][nm](?![aeiou])", "an"), (r"(?:[ae]?i|u)[nm](?![aeiou])", "in"), _TWICE, (r"[esxpd]+$", ""),
    ),
}  # fmt: skip
"""Letters and the sound they are written for, in turn. Own rules, after common spelling; they only have to keep apart
the names of positions and the numbers from one to five. English vowels, which children write most freely, are two:
those said in front of the mouth and those said at the back."""


@lru_cache(maxsize=16_384)
def sound(word: str, lang: str) -> str:
    """The sound of a folded `word` in `lang`: words that can be read out alike have the same."""
    for pattern, said in _RULES[lang]:
        word = pattern.sub(said, word)
    return word

"""A reply as words: folded for comparing, with the way back to what was written.

Folding drops accents, apostrophes and case, undoes digits and look-alike letters written for letters, and shortens
drawn-out letters, so that rules are written once in plain lower case. Each step is linear in the length of the reply.
"""

import re
import unicodedata
from dataclasses import dataclass, field
from functools import lru_cache

BREAK = "."
QUESTION = "?"
MAX_WORD = 40
"""Letters of one word that are looked at; the longest word in any rule is far shorter."""

_TOKEN = re.compile(r"[^\W_]+(?:['*@$][^\W_]+)*|\n|\.{2,}|[.!?,;:()]|[^\w\s.!?,;:()\-\"'*@$/]\ufe0f?")
_PLAIN = re.compile(r"[\n -~]*")
_ELISION = re.compile(r"(?:[ldjmtsnc]|qu|jusqu|lorsqu|puisqu|quelqu)(?=')", re.IGNORECASE)
_SPELLED_OUT = 4
_DRAWN_OUT = re.compile(r"(\w)\1{2,}")
_INVISIBLE = frozenset({"Cc", "Cf", "Cs", "Co", "Cn"})
_APOSTROPHES = str.maketrans(dict.fromkeys("\u2018\u2019\u02bc\u00b4`\u2032\uff07", "'"))
_LOOK_ALIKES = str.maketrans("аеорсухіѕԁɡıøæœßłđ", "aeopcyxisdgioeosld")
_LEET = str.maketrans("013457@$*", "oleastas ")
_COMMA = frozenset(",")
_BREAKS = frozenset(".!?;\n:()")


@dataclass(slots=True)
class Words:
    """The folded words of a reply in order; ``"."`` and ``"?"`` stand for the ends of sentences.

    The first and last are always an end. `spans` gives each word's place in `text`; `commas` holds the places before
    which a comma (or a pause by dots) was written.
    """

    text: str
    folded: list[str] = field(default_factory=lambda: [BREAK])
    spans: list[tuple[int, int]] = field(default_factory=lambda: [(0, 0)])
    commas: set[int] = field(default_factory=set)

    def add(self, word: str, start: int, end: int) -> None:
        self.folded.append(word)
        self.spans.append((start, end))

    def written(self, first: int, last: int) -> str:
        """What stands in the reply from word `first` to word `last`, both included."""
        return self.text[self.spans[first][0] : self.spans[last][1]].strip()


def split(text: str) -> Words:
    """The words of `text`; no reply is refused, an empty one has only its two ends."""
    words = Words(visible(text))
    for match in _TOKEN.finditer(words.text):
        _take(words, match.group(), match.start(), match.end())
    words.add(BREAK, len(words.text), len(words.text))
    _join_spelled_out(words)
    return words


def _take(words: Words, token: str, start: int, end: int) -> None:
    if token in _COMMA or (token[0] == "." and len(token) > 1):
        words.commas.add(len(words.folded))
    elif token in _BREAKS:
        words.add(QUESTION if token == QUESTION else BREAK, start, end)
    elif elided := _ELISION.match(token):
        words.add(elided.group().lower(), start, start + elided.end())
        words.add(fold(token[elided.end() + 1 :]), start + elided.end() + 1, end)
    else:
        words.add(fold(token), start, end)


def visible(text: str) -> str:
    """The text without control and direction characters, in one Unicode form, with one kind of apostrophe."""
    if _PLAIN.fullmatch(text):
        return text
    plain = unicodedata.normalize("NFKC", text).translate(_APOSTROPHES)
    return "".join(map(_visible_character, plain))


@lru_cache(maxsize=4096)
def _visible_character(character: str) -> str:
    if character == "\n" or unicodedata.category(character) not in _INVISIBLE:
        return character
    return " " if character in "\t\r\v\f" else ""


@lru_cache(maxsize=32768)
def fold(token: str) -> str:
    """One token without accents, apostrophes, case and digits in place of letters."""
    word = unicodedata.normalize("NFD", token[:MAX_WORD].casefold())
    word = "".join(c for c in word if not unicodedata.combining(c) and c not in "'\ufe0f").translate(_LOOK_ALIKES)
    if any(map(str.isalpha, word)) and sum(map(str.isalpha, word)) * 2 >= len(word) and not word[0].isdigit():
        word = word.translate(_LEET).replace(" ", "")
    return _DRAWN_OUT.sub(r"\1\1", word) if word else token


def _join_spelled_out(words: Words) -> None:
    """Make one word of four or more lone letters in a row (``c h o k e``)."""
    lone = [len(word) == 1 and word.isalpha() for word in words.folded]
    if sum(lone) < _SPELLED_OUT:
        return
    for last in range(len(lone) - 1, -1, -1):
        if not lone[last]:
            continue
        first = last
        while lone[first - 1]:
            lone[first] = False
            first -= 1
        if last - first + 1 >= _SPELLED_OUT:
            words.folded[first : last + 1] = ["".join(words.folded[first : last + 1])]
            words.spans[first : last + 1] = [(words.spans[first][0], words.spans[last][1])]

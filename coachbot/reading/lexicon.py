"""The words that a room knows, out of a file that a clinician can read and extend."""

import re
import tomllib
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from importlib.resources import files
from typing import NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import OSA

from coachbot.reading.tokens import Token, tokens

LANGUAGES = ("en", "es", "fr")

_GROUP = re.compile(r"\(([^()\[\]]*)\)|\[([^()\[\]]*)\]")
_LONG_ENOUGH_TO_MISSPELL = 5
_LONG_ENOUGH_TO_LEND = 3
_LONG_ENOUGH_FOR_TWO_SLIPS = 8
_TOO_LONG_TO_BE_A_WORD = 24
_SPELLINGS_KEPT = 50_000
_DRAWN_OUT = re.compile(r"(.)\1{2,}")


class LexiconError(ValueError):
    """A file of words is mis-formed; the message says which file, where, and what to write instead."""


class Entry(NamedTuple):
    """What a phrase means: its section in the file (``numbers``) and its name in that section (``4``)."""

    section: str
    name: str


class Found(NamedTuple):
    """An entry met in a reply, and its place there.

    What no phrase covers is met too, with the token's shape as section (``word``, ``number``) and its text as name.
    """

    section: str
    name: str
    start: int
    end: int
    also: tuple[Entry, ...] = ()
    """What else the same words can mean: the lists further down in the file that hold them too."""


class _Node:
    __slots__ = ("entries", "next")

    def __init__(self) -> None:
        self.next: dict[str, _Node] = {}
        self.entries: tuple[Entry, ...] = ()


def expand(pattern: str) -> list[str]:
    """All phrases of a pattern: ``(a|b)`` is either, ``[c]`` may be left out. ``wo(n|nt) go [down]`` gives four."""
    group = _GROUP.search(pattern)
    if group is None:
        return [" ".join(pattern.split())]
    options = (group[1] if group[1] is not None else group[2] + "|").split("|")
    before, after = pattern[: group.start()], pattern[group.end() :]
    return [phrase for option in options for phrase in expand(before + option + after)]


class Lexicon:
    """Phrases of one language, looked up longest first, with slips of the pen forgiven in longer words."""

    def __init__(self, *, split: bool, forgiving: Sequence[str] = ()) -> None:
        self.split = split
        self._forgiving = frozenset(forgiving)
        self._root = _Node()
        self._known: set[str] = set()
        self._soft: set[str] = set()
        self._targets: dict[str, list[str]] = {}
        self._spelled: dict[str, str] = {}

    def tokens(self, text: str) -> list[Token]:
        """The tokens of `text`, as this language cuts them."""
        return tokens(text, split=self.split)

    def add(self, phrase: str, entry: Entry) -> None:
        """Learn one phrase. What it meant already stays its first meaning; words of ``soft`` are always passed over."""
        words = [token.text for token in self.tokens(unicodedata.normalize("NFC", phrase))]
        self._known.update(words)
        if entry.section == "soft":
            self._soft.update(words)
            return
        node = self._node(words)
        if entry not in node.entries:
            node.entries += (entry,)
        if entry.section in self._forgiving:
            for word in words:
                self._aim(word)

    def lend(self, phrase: str, entry: Entry) -> None:
        """Learn a phrase of another language, unless this language uses the same words itself."""
        words = [token.text for token in self.tokens(unicodedata.normalize("NFC", phrase))]
        short = len(words) == 1 and len(words[0]) < _LONG_ENOUGH_TO_LEND
        if short or all(word in self._known for word in words):
            return
        node = self._node(words)
        if not node.entries:
            node.entries = (entry,)
            for word in words:
                self._aim(word)

    def _node(self, words: Sequence[str]) -> _Node:
        node = self._root
        for word in words:
            node = node.next.setdefault(word, _Node())
        return node

    def _aim(self, word: str) -> None:
        if len(word) >= _LONG_ENOUGH_TO_MISSPELL and word.isalpha():
            targets = self._targets.setdefault(word[0], [])
            if word not in targets:
                targets.append(word)

    def spell(self, word: str) -> str:
        """The known word that `word` was meant to be, or `word` itself. The first letter must be right."""
        if word in self._known or len(word) > _TOO_LONG_TO_BE_A_WORD:
            return word
        meant = self._spelled.get(word)
        if meant is None:
            meant = self._guess(word)
            if len(self._spelled) < _SPELLINGS_KEPT:
                self._spelled[word] = meant
        return meant

    def _guess(self, word: str) -> str:
        for drawn in (r"\1\1", r"\1"):
            short = _DRAWN_OUT.sub(drawn, word)
            if short in self._known:
                return short
        if len(word) < _LONG_ENOUGH_TO_MISSPELL - 1:
            return word
        slips = 2 if len(word) >= _LONG_ENOUGH_FOR_TWO_SLIPS else 1
        near = process.extractOne(word, self._targets.get(word[0], ()), scorer=OSA.distance, score_cutoff=slips)
        return str(near[0]) if near else word

    def scan(self, text: str) -> list[Found]:
        """All that `text` (in NFC) says, in its order, longest phrases first."""
        pieces = [token for token in self.tokens(text) if token.text not in self._soft]
        words = [self.spell(piece.text) if piece.shape == "word" else piece.text for piece in pieces]
        found, at = [], 0
        while at < len(pieces):
            entries, size = self._longest(words, at)
            first, last = pieces[at], pieces[at + size - 1]
            section, name = entries[0] if entries else (first.shape, words[at])
            found.append(Found(section, name, first.start, last.end, entries[1:]))
            at += size
        return found

    def _longest(self, words: Sequence[str], at: int) -> tuple[tuple[Entry, ...], int]:
        node, size = self._root, 1
        best: tuple[Entry, ...] = ()
        for index in range(at, len(words)):
            following = node.next.get(words[index])
            if following is None:
                break
            node = following
            if node.entries:
                best, size = node.entries, index - at + 1
        return best, size


@cache
def lexicon(name: str, lang: str, forgiving: tuple[str, ...] = ()) -> Lexicon:
    """The words of ``words/<name>.<lang>.toml``, read once; slips of the pen are forgiven in sections `forgiving`."""
    words = Lexicon(split=lang == "fr", forgiving=forgiving)
    for phrase, entry in phrases(name, lang):
        words.add(phrase, entry)
    return words


def phrases(name: str, lang: str) -> Iterator[tuple[str, Entry]]:
    """Each phrase of ``words/<name>.<lang>.toml`` with what it means, in the order of the file."""
    for section, table in load(name, lang).items():
        for key, patterns in table.items():
            yield from ((phrase, Entry(section, key)) for pattern in patterns for phrase in expand(pattern))


def load(name: str, lang: str) -> Mapping[str, Mapping[str, list[str]]]:
    """The sections of one file of words, checked for form.

    Raises:
        LexiconError: the file is missing, is no TOML, or a section is not made of lists of phrases.
    """
    file = f"{name}.{lang}.toml"
    source = files("coachbot.reading") / "words" / file
    try:
        content = tomllib.loads(source.read_text(encoding="utf-8"))
    except FileNotFoundError as error:
        raise LexiconError(f"{file}: no such file of words; the languages are {', '.join(LANGUAGES)}") from error
    except tomllib.TOMLDecodeError as error:
        raise LexiconError(f"{file}: {error}") from error
    return checked(content, file)


def checked(content: Mapping[str, object], file: str) -> Mapping[str, Mapping[str, list[str]]]:
    """`content` if it is tables of lists of phrases; else an error that names file, section and phrase."""
    return {section: dict(_lists(table, f"{file}, [{section}]")) for section, table in content.items()}


def _lists(table: object, where: str) -> Iterator[tuple[str, list[str]]]:
    if not isinstance(table, dict):
        raise LexiconError(f'{where}: write a table of lists, for example name = ["a phrase"]')
    for name, phrases in table.items():
        if not isinstance(phrases, list) or not all(isinstance(phrase, str) for phrase in phrases):
            raise LexiconError(f'{where}, {name}: write a list of phrases in quotes, for example ["a phrase"]')
        for phrase in phrases:
            _check_phrase(phrase, f"{where}, {name}")
        yield name, phrases


def _check_phrase(phrase: str, where: str) -> None:
    if not all(expand(phrase)) or any(set(words) & set("()[]|") for words in expand(phrase)):
        raise LexiconError(f'{where}: "{phrase}" needs a word, with ( ) and [ ] in pairs and | only inside them')

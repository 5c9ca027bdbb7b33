"""The words that a room knows, out of a file that a clinician can read and extend."""

import re
import tomllib
import unicodedata
from collections import deque
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from functools import cache, lru_cache
from importlib.resources import files
from typing import NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import OSA

from coachbot.reading.tokens import Token, tokens

LANGUAGES = ("en", "es", "fr")

_PIECE = re.compile(r"[()\[\]|]|[^()\[\]|]+")
_CLOSES = {"(": ")", "[": "]"}
_CLOSING = frozenset(_CLOSES.values())
_LONG_ENOUGH_TO_MISSPELL = 5
_LONG_ENOUGH_TO_LEND = 3
_LONG_ENOUGH_FOR_A_MARK = 8
_LONG_ENOUGH_FOR_TWO_SLIPS = 9
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


Words = tuple[str, ...]


def expand(pattern: str, split: Callable[[str], Words]) -> list[Words]:
    """All phrases of a pattern, as words: ``(a|b)`` is either, ``[c]`` may be left out.

    Args:
        pattern: for example ``will not go [back] (down|in)``, which gives four phrases.
        split: cuts plain text into words.

    Raises:
        LexiconError: brackets do not come in pairs, or a phrase has no words.
    """
    pieces = deque(_PIECE.findall(pattern))
    phrases = _alternatives(pieces, split)
    if pieces or not all(phrases):
        raise LexiconError(f'"{pattern}" needs words, and ( ) and [ ] in pairs')
    return phrases


def _alternatives(pieces: deque[str], split: Callable[[str], Words]) -> list[Words]:
    """The phrases up to the bracket that closes this group (or the end)."""
    done: list[Words] = []
    phrases: list[Words] = [()]
    while pieces and pieces[0] not in _CLOSING:
        piece = pieces.popleft()
        if piece == "|":
            done, phrases = done + phrases, [()]
        elif piece in _CLOSES:
            group = _group(pieces, piece, split)
            phrases = [start + end for start in phrases for end in group]
        else:
            phrases = [phrase + split(piece) for phrase in phrases]
    return done + phrases


def _group(pieces: deque[str], opening: str, split: Callable[[str], Words]) -> list[Words]:
    inside = _alternatives(pieces, split)
    if not pieces or pieces.popleft() != _CLOSES[opening]:
        raise LexiconError(f'"{opening}" is not closed')
    return [*inside, ()] if opening == "[" else inside


@lru_cache(maxsize=16_384)
def _words(text: str, *, split: bool) -> Words:
    """Cached, since patterns are made of the same few pieces over and over."""
    return tuple(token.text for token in tokens(unicodedata.normalize("NFC", text), split=split))


class Lexicon:
    """Phrases of one language, looked up longest first, with slips of the pen forgiven in longer words."""

    def __init__(self, *, split: bool, forgiving: Sequence[str] = ()) -> None:
        self.split = split
        self.by_ear: Callable[[str], tuple[Entry, ...]] = lambda _: ()
        """What a word that is not known may mean besides, by its sound."""
        self._forgiving = frozenset(forgiving)
        self._meanings: dict[Words, tuple[Entry, ...]] = {}
        self._longest_from: dict[str, int] = {}
        self._known: set[str] = set()
        self._lent: set[str] = set()
        self._soft: set[str] = set()
        self._targets: dict[str, dict[str, None]] = {}
        self._spelled: dict[str, str] = {}

    def tokens(self, text: str) -> list[Token]:
        """The tokens of `text`, as this language cuts them."""
        return tokens(text, split=self.split)

    def words(self, text: str) -> Words:
        """The folded words of a piece of a pattern."""
        return _words(text, split=self.split)

    def add(self, words: Words, entry: Entry) -> None:
        """Learn one phrase. What it meant already stays its first meaning; words of ``soft`` are always passed over."""
        self._known.update(words)
        if entry.section == "soft":
            self._soft.update(words)
            return
        meant = self._meanings.get(words, ())
        if entry not in meant:
            self._mean(words, (*meant, entry))
        if entry.section in self._forgiving:
            self._aim(words, entry)

    def lend(self, words: Words, entry: Entry) -> None:
        """Learn a phrase of another language, unless this language uses the same words itself."""
        short = len(words) == 1 and len(words[0]) < _LONG_ENOUGH_TO_LEND
        if short or self.knows(words):
            return
        self._lent.update(words)
        if words not in self._meanings:
            self._mean(words, (entry,))
            if entry.section in self._forgiving:
                self._aim(words, entry)

    def knows(self, words: Words) -> bool:
        """Whether this language uses each of `words` itself."""
        return self._known.issuperset(words)

    def entries(self) -> Iterator[tuple[Words, Entry]]:
        """Each phrase with the first thing it means."""
        return ((words, meant[0]) for words, meant in self._meanings.items())

    def _mean(self, words: Words, entries: tuple[Entry, ...]) -> None:
        self._meanings[words] = entries
        if len(words) > self._longest_from.get(words[0], 0):
            self._longest_from[words[0]] = len(words)

    def _aim(self, words: Words, entry: Entry) -> None:
        """Let slips of the pen in `words` be forgiven; what is recorded as it stands must be longer ("slipped")."""
        shortest = _LONG_ENOUGH_FOR_A_MARK if entry.section == "marks" else _LONG_ENOUGH_TO_MISSPELL
        for word in words:
            if len(word) >= shortest and word.isalpha():
                self._targets.setdefault(word[0], {})[word] = None

    def spell(self, word: str) -> str:
        """The known word that `word` was meant to be, or `word` itself. The first letter must be right."""
        if word in self._known or word in self._lent or len(word) > _TOO_LONG_TO_BE_A_WORD:
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
        if len(word) < _LONG_ENOUGH_TO_MISSPELL:
            return word
        slips = 2 if len(word) >= _LONG_ENOUGH_FOR_TWO_SLIPS else 1
        near = process.extractOne(word, self._targets.get(word[0], {}).keys(), scorer=OSA.distance, score_cutoff=slips)
        return str(near[0]) if near else word

    def scan(self, text: str) -> list[Found]:
        """All that `text` (in NFC) says, in its order, longest phrases first."""
        pieces = [token for token in self.tokens(text) if token.text not in self._soft]
        words = [self.spell(piece.text) if piece.shape == "word" else piece.text for piece in pieces]
        found, at = [], 0
        while at < len(pieces):
            entries, size = self._longest(words, at)
            first, last = pieces[at], pieces[at + size - 1]
            meaning = entries[0] if entries else Entry(first.shape, words[at])
            unknown = size == 1 and first.shape == "word" and first.text not in self._known
            also = (*entries[1:], *self.by_ear(first.text)) if unknown else entries[1:]
            found.append(Found(*meaning, first.start, last.end, also))
            at += size
        return found

    def _longest(self, words: Sequence[str], at: int) -> tuple[tuple[Entry, ...], int]:
        """What the longest phrase at `at` means and how many words it has; one word without a meaning if none is."""
        for size in range(min(self._longest_from.get(words[at], 0), len(words) - at), 0, -1):
            if meant := self._meanings.get(tuple(words[at : at + size])):
                return meant, size
        return (), 1


@cache
def lexicon(name: str, lang: str, forgiving: Words = ()) -> Lexicon:
    """The words of ``words/<name>.<lang>.toml``, read once; slips of the pen are forgiven in sections `forgiving`."""
    learnt = Lexicon(split=lang == "fr", forgiving=forgiving)
    for words, entry in phrases(name, lang, learnt.words):
        learnt.add(words, entry)
    return learnt


def phrases(
    name: str, lang: str, split: Callable[[str], Words], sections: Collection[str] = ()
) -> Iterator[tuple[Words, Entry]]:
    """Each phrase of ``words/<name>.<lang>.toml`` (or of some `sections` only) with what it means, in its order.

    Raises:
        LexiconError: the file is missing or mis-formed.
    """
    for section, table in load(name, lang).items():
        for key, pattern in ((key, pattern) for key, patterns in table.items() for pattern in patterns):
            if not sections or section in sections:
                try:
                    yield from ((words, Entry(section, key)) for words in expand(pattern, split))
                except LexiconError as error:
                    raise LexiconError(f"{name}.{lang}.toml, [{section}], {key}: {error}") from error


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
        yield name, phrases

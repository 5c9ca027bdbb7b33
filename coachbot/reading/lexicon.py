"""The words that a room knows, met in a reply."""

import re
import unicodedata
from collections.abc import Iterator, Sequence
from functools import cache, lru_cache
from typing import TYPE_CHECKING, NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import OSA

from coachbot.reading.tokens import Token, tokens
from coachbot.reading.wordfiles import Entry, Words, phrases

if TYPE_CHECKING:
    from coachbot.reading.hearing import Ear

_LONG_ENOUGH_TO_MISSPELL = 5
_LONG_ENOUGH_TO_LEND = 3
_LONG_ENOUGH_FOR_A_MARK = 8
_LONG_ENOUGH_FOR_TWO_SLIPS = 9
_TOO_LONG_TO_BE_A_WORD = 24
_SPELLINGS_KEPT = 50_000
_DRAWN_OUT = re.compile(r"(.)\1{2,}")
_DOUBLED_AT_END = re.compile(r"(?<=..)(.)\1$")


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


@lru_cache(maxsize=16_384)
def _words(text: str, *, split: bool) -> Words:
    """Cached, since patterns are made of the same few pieces over and over."""
    return tuple(token.text for token in tokens(unicodedata.normalize("NFC", text), split=split))


class Lexicon:
    """Phrases of one language, looked up longest first, with slips of the pen forgiven in longer words."""

    def __init__(self, *, split: bool, forgiving: Sequence[str] = ()) -> None:
        self.split = split
        self.ear: Ear | None = None
        """Who tells what a word that is not known may be by its sound."""
        self._forgiving = frozenset(forgiving)
        self._meanings: dict[Words, tuple[Entry, ...]] = {}
        self._longest_from: dict[Words, int] = {}
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
        self._longest_from[words[:2]] = max(len(words), self._longest_from.get(words[:2], 0))

    def _aim(self, words: Words, entry: Entry) -> None:
        """Let slips of the pen in `words` be forgiven; what is recorded as it stands must be longer ("slipped")."""
        shortest = _LONG_ENOUGH_FOR_A_MARK if entry.section == "marks" else _LONG_ENOUGH_TO_MISSPELL
        for word in words:
            if len(word) >= shortest and word.isalpha():
                self._targets.setdefault(word[0], {})[word] = None

    def spell(self, word: str) -> str:
        """The known word that `word` was meant to be, or `word` itself. The first letter must be right."""
        if word in self._known or (word,) in self._meanings or len(word) > _TOO_LONG_TO_BE_A_WORD:
            return word
        meant = self._spelled.get(word)
        if meant is None:
            meant = self._guess(word)
            if len(self._spelled) < _SPELLINGS_KEPT:
                self._spelled[word] = meant
        return meant

    def _guess(self, word: str) -> str:
        for short in (_DRAWN_OUT.sub(r"\1\1", word), _DRAWN_OUT.sub(r"\1", word), _DOUBLED_AT_END.sub(r"\1", word)):
            if short in self._known:
                return short
        heard = self.ear.word(word) if self.ear else None
        if len(word) < _LONG_ENOUGH_TO_MISSPELL or word in self._lent:
            return heard or word
        slips = 2 if len(word) >= _LONG_ENOUGH_FOR_TWO_SLIPS else 1
        if heard:
            slips = min(slips, OSA.distance(word, heard))  # what is spelled so goes before what only sounds so
        near = process.extract(word, self._targets.get(word[0], {}).keys(), scorer=OSA.distance, score_cutoff=slips)
        nearest = [str(known) for known, distance, _ in near if distance == near[0][1]]
        if heard and (not near or near[0][1] == OSA.distance(word, heard)):
            nearest.insert(0, heard)
        return nearest[0] if nearest and len({*map(self._position, nearest)} - {None}) <= 1 else word

    def _position(self, word: str) -> str | None:
        meant = self._meanings.get((word,), ())
        return meant[0].name if meant and meant[0].section == "positions" else None

    def scan(self, text: str) -> list[Found]:
        """All that `text` (in NFC) says, in its order, longest phrases first."""
        pieces = [token for token in self.tokens(text) if token.text not in self._soft]
        words = [self.spell(piece.text) if piece.shape == "word" else piece.text for piece in pieces]
        found, at = [], 0
        while at < len(pieces):
            entries, size = self._longest(words, at)
            first, last = pieces[at], pieces[at + size - 1]
            section, name = entries[0] if entries else (first.shape, words[at])
            heard = self._heard(first) if size == 1 else ()
            also = (*entries[1:], *heard) if heard else entries[1:]
            found.append(Found(section, name, first.start, last.end, also))
            at += size
        return found

    def _heard(self, piece: Token) -> tuple[Entry, ...]:
        if self.ear is None or piece.shape != "word" or piece.text in self._known:
            return ()
        return self.ear.guesses(piece.text)

    def _longest(self, words: Sequence[str], at: int) -> tuple[tuple[Entry, ...], int]:
        """What the longest phrase at `at` means and how many words it has; one word without a meaning if none is."""
        two = tuple(words[at : at + 2])
        for size in range(min(self._longest_from.get(two, 1), len(words) - at), 1, -1):
            if meant := self._meanings.get(tuple(words[at : at + size])):
                return meant, size
        return self._meanings.get(two[:1], ()), 1


def learn(name: str, lang: str, forgiving: Words = ()) -> Lexicon:
    """The words of ``words/<name>.<lang>.toml``, to be added to; slips are forgiven in sections `forgiving`."""
    learnt = Lexicon(split=lang == "fr", forgiving=forgiving)
    for words, entry in phrases(name, lang, learnt.words):
        learnt.add(words, entry)
    return learnt


lexicon = cache(learn)
"""The same words, read once, to which nobody may add."""

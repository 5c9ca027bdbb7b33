"""What a word that is not in the files may be by its sound, or as the consonants of a name."""

from collections.abc import Iterable
from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from coachbot.programme.positions import Position
from coachbot.reading.sounds import sound
from coachbot.reading.wordfiles import Entry, Words

_NUMBERS = ("1", "2", "3", "4", "5")
_HEARD = frozenset(("positions", "numbers", "ones", "sounds"))
_REGULAR = frozenset(("es", "fr"))
"""Languages in which a word can be told from its sound; English vowels are too free for that."""
_SHORTEST = 2
_LONGEST_ABBREVIATION = 6
_VOWELS = frozenset("aeiouy")


class Ear:
    """Hears words of one language: numbers and positions as a guess, other words as what they must be."""

    def __init__(self, phrases: Iterable[tuple[Words, Entry]], lang: str) -> None:
        self._lang = lang
        self._guesses: dict[str, set[str]] = {}
        self._words: dict[str, dict[str, None]] = {}
        self._names: dict[str, str] = {}
        for words, entry in phrases:
            if entry.section in _HEARD:
                self._learn_name(words, entry)
            elif entry != _GUARD:
                for word in words:
                    self._words.setdefault(sound(word, lang), {})[word] = None

    def _learn_name(self, words: Words, entry: Entry) -> None:
        if len(words) > 1 or not words[0].isalpha() or entry.name not in (*Position, *_NUMBERS):
            return
        self._guesses.setdefault(sound(words[0], self._lang), set()).add(entry.name)
        if entry.section == "positions":
            self._names[words[0]] = entry.name

    @lru_cache(maxsize=16_384)  # noqa: B019  # one ear for each language, for good
    def guesses(self, word: str) -> tuple[Entry, ...]:
        """The number or position that `word` may be, where only one sounds so or is shortened so."""
        said = sound(word, self._lang)
        names = (len(said) >= _SHORTEST and self._guesses.get(said)) or self._abbreviated(word)
        return tuple(Entry("sounds", name) for name in names) if len(names) == 1 else ()

    def _abbreviated(self, word: str) -> set[str]:
        """The positions whose name `word` holds the consonants of, in their order: ``ctr``, ``abj``, ``drch``."""
        if not _SHORTEST <= len(word) <= _LONGEST_ABBREVIATION or _VOWELS & {*word[1:]}:
            return set()
        return {name for spelled, name in self._names.items() if word[0] == spelled[0] and _is_within(word, spelled)}

    def word(self, heard: str) -> str | None:
        """The known word that sounds like `heard`, the nearest in spelling; numbers and positions left out."""
        if self._lang not in _REGULAR or len(heard) <= _SHORTEST:
            return None
        same = self._words.get(sound(heard, self._lang))
        return str(process.extractOne(heard, same.keys(), scorer=OSA.distance)[0]) if same else None


_GUARD = Entry("signs", "plain")
"""Words that are in the files only to be left alone."""


def _is_within(letters: str, word: str) -> bool:
    rest = iter(word)
    return all(letter in rest for letter in letters)

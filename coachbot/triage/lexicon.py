"""What each word of a reply may stand for: itself, the word lists it is in, and the words it is a misspelling of."""

from collections import defaultdict
from functools import cache, lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from coachbot.triage.families import families
from coachbot.triage.rulebook import Rulebook, rulebook

_CACHE = 65536
_LONG = 8
_SHORT = 5
_ELIDABLE = 4
_HEARD = 4
_ELIDED = frozenset("ldjmtsnc")


class Lexicon:
    """The words of one language and the symbols that patterns know them by."""

    def __init__(self, book: Rulebook) -> None:
        self._prefixes = set(book.prefixes)
        self._sounds = book.sounds
        self._ordinary = book.ordinary
        self._lists: dict[str, set[str]] = {}
        for name, entries in book.lists.items():
            for entry in entries:
                if " " not in entry:
                    self._add(entry, f"<{name}>")
        self._prefix_lengths = sorted(set(map(len, self._prefixes)))
        listed = [word for word in self._lists if word.isalpha()]
        self._literal = _literal_words(book)
        self._near: dict[str, list[str]] = defaultdict(list)
        for word in sorted({*listed, *self._literal}):
            if len(word) >= _SHORT and word.isalpha():
                self._near[f"{len(word)}{word[0]}"].append(word)
                self._near[f"{len(word)} {word[1]}"].append(word)
        self._by_sound: dict[str, str] = {}
        for word in sorted(listed, key=len, reverse=True):
            self._by_sound[self.sound(word)] = word
        self.exact = lru_cache(maxsize=_CACHE)(self._exact)
        self.symbols = lru_cache(maxsize=_CACHE)(self._symbols)

    def _add(self, entry: str, name: str) -> None:
        if entry.endswith("*"):
            self._prefixes.add(entry[:-1])
        self._lists.setdefault(entry, set()).add(name)

    def knows(self, word: str) -> bool:
        """Whether the word needs no guess at what was meant."""
        return word in self._ordinary or len(self.exact(word)) > 1 or word in self._literal or not word[0].isalpha()

    def _exact(self, word: str) -> frozenset[str]:
        found = {word} | self._lists.get(word, set())
        for prefix in {word[:length] for length in self._prefix_lengths} & self._prefixes:
            found |= {f"{prefix}*"} | self._lists.get(f"{prefix}*", set())
        return frozenset(found)

    def _symbols(self, word: str) -> frozenset[str]:
        """The symbols of `word`, or if it is unknown, of the known word that it sounds like or is a slip for."""
        if self.knows(word) or word in families():
            return self.exact(word)
        meant = self._meant(word)
        return self.exact(word) | self.exact(meant) if meant else self.exact(word)

    def _meant(self, word: str) -> str | None:
        single = "".join(c for c, before in zip(word, " " + word, strict=False) if c != before)
        if single != word and self.knows(single):
            return single
        if word[0] in _ELIDED and len(word) >= _ELIDABLE and self.knows(word[1:]):
            return word[1:]
        if len(word) >= _HEARD and (heard := self._by_sound.get(self.sound(word))):
            return heard
        return self._slip(word)

    def _slip(self, word: str) -> str | None:
        """The known word nearest to `word`: one slip away, or two if both are long, with its first or second letter."""
        if len(word) < _SHORT:
            return None
        allowed = _slips(word)
        lengths = range(len(word) - allowed, len(word) + allowed + 1)
        keys = [key for length in lengths for key in (f"{length}{word[0]}", f"{length} {word[1]}")]
        near = [(_distance(word, other), other) for key in keys for other in self._near.get(key, ())]
        distance, best = min(near, default=(allowed + 1, ""))
        return best if distance <= min(allowed, _slips(best)) else None

    def sound(self, word: str) -> str:
        """A key that words spelled by ear share, by the language's replacements in order."""
        for before, after in self._sounds:
            word = word.replace(before, after)
        return "".join(c for c, before in zip(word, " " + word, strict=False) if c != before)


def _slips(word: str) -> int:
    return 2 if len(word) >= _LONG else 1


def _distance(word: str, other: str) -> int:
    return DamerauLevenshtein.distance(word, other, score_cutoff=2)


def _literal_words(book: Rulebook) -> frozenset[str]:
    patterns = [p for rule in book.rules for p in (*rule.patterns, *rule.also)]
    patterns += [p for context in book.contexts for p in context.patterns]
    symbols = {symbol for pattern in patterns for part in pattern for symbol in part.symbols}
    return frozenset(symbol for symbol in symbols if symbol.isalpha())


@cache
def lexicon(language: str) -> Lexicon:
    """The lexicon of `language`, made once."""
    return Lexicon(rulebook(language))

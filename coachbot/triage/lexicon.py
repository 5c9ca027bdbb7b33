"""What each word of a reply may stand for: itself, the word lists it is in, and the words it is a misspelling of."""

from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from coachbot.triage.families import families
from coachbot.triage.rulebook import Rulebook, rulebook

_CACHE = 65536
_LONG = 8
_SHORT = 5
_ELIDED = frozenset("ldjmtsnc")


class Lexicon:
    """The words of one language and the symbols that patterns know them by."""

    def __init__(self, book: Rulebook) -> None:
        self._prefixes = book.prefixes
        self._sounds = book.sounds
        self._ordinary = book.ordinary
        self._lists: dict[str, set[str]] = {}
        for name, entries in book.lists.items():
            for entry in entries:
                if " " not in entry:
                    self._add(entry, f"<{name}>")
        listed = [word for word in self._lists if word.isalpha()]
        self._literal = _literal_words(book)
        self._near = sorted(word for word in {*listed, *self._literal} if len(word) >= _SHORT and word.isalpha())
        self._by_sound: dict[str, str] = {}
        for word in sorted(listed, key=len, reverse=True):
            self._by_sound[self.sound(word)] = word
        self.exact = lru_cache(maxsize=_CACHE)(self._exact)
        self.symbols = lru_cache(maxsize=_CACHE)(self._symbols)

    def _add(self, entry: str, name: str) -> None:
        if entry.endswith("*"):
            self._prefixes = (*self._prefixes, entry[:-1])
            self._lists.setdefault(entry, set()).add(name)
        else:
            self._lists.setdefault(entry, set()).add(name)

    def knows(self, word: str) -> bool:
        """Whether the word needs no guess at what was meant."""
        return word in self._ordinary or len(self.exact(word)) > 1 or word in self._literal or not word[0].isalpha()

    def _exact(self, word: str) -> frozenset[str]:
        found = {word} | self._lists.get(word, set())
        for prefix in self._prefixes:
            if word.startswith(prefix):
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
        if word[0] in _ELIDED and len(word) > 3 and self.knows(word[1:]):
            return word[1:]
        if len(word) >= 4 and (heard := self._by_sound.get(self.sound(word))):
            return heard
        return self._slip(word)

    def _slip(self, word: str) -> str | None:
        if len(word) < _SHORT:
            return None
        allowed = 2 if len(word) >= _LONG else 1
        best, distance = None, allowed + 1
        for near in self._near:
            if abs(len(near) - len(word)) > allowed or (near[0] != word[0] and near[1] != word[1]):
                continue
            found = DamerauLevenshtein.distance(word, near, score_cutoff=distance - 1)
            if found < distance and found <= (2 if len(near) >= _LONG else 1):
                best, distance = near, found
        return best

    def sound(self, word: str) -> str:
        """A key that words spelled by ear share, by the language's replacements in order."""
        for before, after in self._sounds:
            word = word.replace(before, after)
        return "".join(c for c, before in zip(word, " " + word, strict=False) if c != before)


def _literal_words(book: Rulebook) -> frozenset[str]:
    patterns = [p for rule in book.rules for p in (*rule.patterns, *rule.also)]
    patterns += [p for context in book.contexts for p in context.patterns]
    symbols = {symbol for pattern in patterns for part in pattern for symbol in part.symbols}
    return frozenset(symbol for symbol in symbols if symbol.isalpha())


@lru_cache(maxsize=None)
def lexicon(language: str) -> Lexicon:
    """The lexicon of `language`, made once."""
    return Lexicon(rulebook(language))

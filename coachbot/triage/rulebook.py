"""The rules of one language, read from its TOML file and made ready for matching.

A file in ``rules/`` holds word lists, spellings by sound, replies that are no sign when alone, context phrases and
rules. A rule's ``patterns`` count wherever they stand, unless a context phrase weakens them; those under ``ask`` only
where the second reader agrees. A pattern is a row of parts:

=============  ==========================================================
``word``       that word (lower case, no accents, no apostrophe)
``a|b``        either
``<list>``     any entry of a word list, entries of several words included
``word*``      any word that begins so
``part?``      may be missing
``~`` ``~6``   up to three (or six) words of the same sentence between
``.``          the start or end of a sentence
=============  ==========================================================
"""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from importlib import resources
from itertools import product
from typing import Any

from coachbot.triage.levels import Level
from coachbot.triage.words import fold

LANGUAGES = ("en", "es", "fr")
_GAP = 3


class RulesError(ValueError):
    """A rules file that cannot be used; the message says where and what to mend."""


@dataclass(frozen=True, slots=True)
class Part:
    """One place in a pattern: what may stand there, whether it may be missing, how many words may come before it."""

    symbols: frozenset[str]
    optional: bool
    gap: int


@dataclass(frozen=True, slots=True)
class Rule:
    """What a clinician wrote; `also` are patterns of which one must stand somewhere in the same reply.

    A rule that is not `firm` holds the patterns under ``ask``: they often stand in harmless replies too, so that they
    count only where the second reader does not rule the sign out.
    """

    id: str
    level: Level
    category: str
    always: bool
    firm: bool
    patterns: tuple[tuple[Part, ...], ...]
    also: tuple[tuple[Part, ...], ...]


@dataclass(frozen=True, slots=True)
class Context:
    """Phrases that take the weight from a sign near them; see `context`."""

    kind: str
    side: str
    reach: int
    clausal: bool
    at_most: Level
    patterns: tuple[tuple[Part, ...], ...]

    @property
    def negates(self) -> bool:
        """Whether this is a plain negation before a sign, as `no`."""
        return self.kind == "negation" and self.side == "before" and not self.clausal


@dataclass(frozen=True, slots=True)
class Rulebook:
    """Everything known about one language."""

    language: str
    lists: Mapping[str, tuple[str, ...]]
    ordinary: frozenset[str]
    sounds: tuple[tuple[str, str], ...]
    rules: tuple[Rule, ...]
    contexts: tuple[Context, ...]
    subjects: frozenset[str]
    enders: frozenset[str]
    articles: frozenset[str]
    alone: frozenset[str]
    prefixes: tuple[str, ...] = field(default=())


@cache
def rulebook(language: str) -> Rulebook:
    """The rules of `language`, read once.

    Raises:
        RulesError: the file is missing, is not TOML, or has a rule that cannot be understood.
    """
    if language not in LANGUAGES:
        raise RulesError(f"no triage rules for language {language!r}; there are rules for {', '.join(LANGUAGES)}")
    source = resources.files("coachbot.triage") / "rules" / f"{language}.toml"
    return parse(source.read_text(encoding="utf-8"), language)


def parse(source: str, language: str) -> Rulebook:
    """Make a rulebook of the text of a rules file.

    Raises:
        RulesError: as for `rulebook`.
    """
    try:
        data = tomllib.loads(source)
    except tomllib.TOMLDecodeError as error:
        raise RulesError(f"rules/{language}.toml is not valid TOML: {error}") from error
    return _Reader(language, data).rulebook()


class _Reader:
    """Reads one parsed file, keeping the place for error messages."""

    def __init__(self, language: str, data: dict[str, Any]) -> None:
        self._file = f"rules/{language}.toml"
        self._language = language
        self._data = data
        self._lists = {name: tuple(map(_folded, words)) for name, words in data.get("lists", {}).items()}
        self._prefixes: set[str] = set()

    def rulebook(self) -> Rulebook:
        entries = self._data.get("rule", [])
        rules = tuple(rule for number, entry in enumerate(entries, 1) for rule in self._rules(number, entry))
        contexts = tuple(self._context(entry) for entry in self._data.get("context", []))
        self._check_ids([entry["id"] for entry in entries])
        return Rulebook(
            language=self._language,
            lists=self._lists,
            ordinary=frozenset(self._words("ordinary")),
            sounds=tuple((before, after) for before, after in self._data.get("sounds", [])),
            rules=rules,
            contexts=contexts,
            subjects=frozenset(self._words("subjects")),
            enders=frozenset(self._words("enders")),
            articles=frozenset(self._words("articles")),
            alone=frozenset(map(_folded, self._data.get("alone", []))),
            prefixes=tuple(sorted(self._prefixes)),
        )

    def _words(self, name: str) -> list[str]:
        return _folded(str(self._data.get(name, ""))).split()

    def _fail(self, place: str, what: str) -> RulesError:
        return RulesError(f"{self._file}, {place}: {what}")

    def _check_ids(self, ids: list[str]) -> None:
        for id_ in ids:
            if ids.count(id_) > 1:
                raise self._fail(f"rule {id_!r}", "this id is used twice; give each rule its own")

    def _rules(self, number: int, entry: dict[str, Any]) -> Iterator[Rule]:
        """The firm patterns of one entry and those to ask about, as rules of the same id."""
        place = f"rule {entry.get('id', f'number {number}')!r}"
        for name in ("id", "level", "category"):
            if not entry.get(name):
                raise self._fail(place, f"{name!r} is missing")
        if not entry.get("patterns") and not entry.get("ask"):
            raise self._fail(place, "'patterns' is missing")
        if unknown := set(entry) - {"id", "level", "category", "patterns", "ask", "also", "always"}:
            raise self._fail(place, f"unknown field {min(unknown)!r}")
        if str(entry["level"]).upper() not in Level.__members__ or entry["level"] == "none":
            raise self._fail(place, f"level {entry['level']!r} is none of emergency, urgent, concern, medicine")
        for name in [name for name in ("patterns", "ask") if name in entry]:
            yield Rule(
                id=entry["id"],
                level=Level[str(entry["level"]).upper()],
                category=entry["category"],
                always=bool(entry.get("always", False)),
                firm=name == "patterns",
                patterns=self._patterns(place, entry[name]),
                also=self._patterns(place, entry.get("also", [])),
            )

    def _context(self, entry: dict[str, Any]) -> Context:
        place = f"context {entry.get('kind', '')!r}"
        if entry.get("side") not in ("before", "after", "around", "self"):
            raise self._fail(place, f"side {entry.get('side')!r} is none of before, after, around, self")
        return Context(
            kind=str(entry.get("kind", "")),
            side=entry["side"],
            reach=int(entry.get("reach", 5)),
            clausal=bool(entry.get("clausal", False)),
            at_most=Level[str(entry.get("at_most", "emergency")).upper()],
            patterns=self._patterns(place, entry.get("phrases", [])),
        )

    def _patterns(self, place: str, sources: list[str]) -> tuple[tuple[Part, ...], ...]:
        return tuple(pattern for source in sources for pattern in self._pattern(place, source))

    def _pattern(self, place: str, source: str) -> Iterator[tuple[Part, ...]]:
        """All rows that `source` stands for: a list entry of several words makes a row of its own."""
        choices: list[list[list[Part]]] = []
        gap = 0
        for piece in source.split():
            if piece[0] == "~":
                gap = int(piece[1:] or _GAP) if piece[1:].isdigit() or piece == "~" else -1
                if gap < 0:
                    raise self._fail(place, f"{piece!r} in {source!r}: write ~ or ~ with a number")
                continue
            choices.append(self._choices(place, piece, gap))
            gap = 0
        if gap or not choices:
            raise self._fail(place, f"pattern {source!r} must begin and end with a word")
        for rows in product(*choices):
            parts = tuple(part for row in rows for part in row)
            if all(part.optional for part in parts):
                raise self._fail(place, f"pattern {source!r} has no part that must be there")
            yield parts

    def _choices(self, place: str, piece: str, gap: int) -> list[list[Part]]:
        optional = len(piece) > 1 and piece.endswith("?")
        single: set[str] = set()
        several: list[list[Part]] = []
        for name in piece.removesuffix("?").split("|") if optional else piece.split("|"):
            if not name.startswith("<"):
                single.add(self._symbol(name))
                continue
            if name[1:-1] not in self._lists or not name.endswith(">"):
                raise self._fail(place, f"there is no word list {name}; add it under [lists] or mend the name")
            single.add(name)
            several += [self._row(entry, gap) for entry in self._lists[name[1:-1]] if " " in entry]
        if optional:
            several = []
        return [[Part(frozenset(single), optional, gap)], *several]

    def _row(self, entry: str, gap: int) -> list[Part]:
        words = entry.split()
        return [Part(frozenset({self._symbol(word)}), False, gap if n == 0 else 0) for n, word in enumerate(words)]

    def _symbol(self, word: str) -> str:
        if word.endswith("*") and len(word) > 1:
            self._prefixes.add(_folded(word[:-1]))
            return f"{_folded(word[:-1])}*"
        return _folded(word)


def _folded(phrase: str) -> str:
    """The phrase as `words.fold` makes of it, so that accents in a rules file do no harm."""
    return " ".join(word if word.endswith("*") else fold(word) for word in phrase.split())

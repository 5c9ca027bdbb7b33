"""The files of words, which a clinician can read and extend: their phrases and what these mean."""

import re
import tomllib
from collections import deque
from collections.abc import Callable, Iterator, Mapping
from importlib.resources import files
from typing import NamedTuple

LANGUAGES = ("en", "es", "fr")

_PIECE = re.compile(r"[()\[\]|]|[^()\[\]|]+")
_CLOSES = {"(": ")", "[": "]"}
_CLOSING = frozenset(_CLOSES.values())


class LexiconError(ValueError):
    """A file of words is mis-formed; the message says which file, where, and what to write instead."""


class Entry(NamedTuple):
    """What a phrase means: its section in the file (``numbers``) and its name in that section (``4``)."""

    section: str
    name: str


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


def phrases(name: str, lang: str, split: Callable[[str], Words]) -> Iterator[tuple[Words, Entry]]:
    """Each phrase of ``words/<name>.<lang>.toml`` with what it means, in its order.

    Raises:
        LexiconError: the file is missing or mis-formed.
    """
    for section, table in load(name, lang).items():
        for key, pattern in ((key, pattern) for key, patterns in table.items() for pattern in patterns):
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

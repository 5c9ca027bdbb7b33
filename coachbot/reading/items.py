"""The things a reply is made of: positions, marks, joins, corrections, and words that only a person understands."""

from collections.abc import Callable, Sequence
from enum import IntEnum, auto
from functools import cache, lru_cache
from typing import NamedTuple

from coachbot.programme.positions import Position
from coachbot.reading.hearing import Ear
from coachbot.reading.lexicon import Found, Lexicon, learn
from coachbot.reading.readings import Mark, Word
from coachbot.reading.tokens import STARS
from coachbot.reading.wordfiles import LANGUAGES, Entry, phrases


class Manner(IntEnum):
    """How daringly words are taken: children write ``for`` for 4, people in a hurry ``L`` for left."""

    PLAIN = auto()
    FOREIGN = auto()
    ARTICLES = auto()
    SOUNDS = auto()
    INITIALS = auto()


class Item(NamedTuple):
    """One thing said: `kind` names it; `value` is its positions, its mark or its number; `start:end` its place."""

    kind: str
    value: "_Value"
    start: int
    end: int
    roles: frozenset[str] = frozenset()
    """Kinds that the same words can be where their neighbours ask for it, such as ``count_after``."""


SHARED = frozenset(("positions", "marks", "all", "rest", "except", "best"))
"""Sections and signs that families who mix languages take from the other languages too, besides numbers."""
FORGIVING = ("positions", "numbers", "marks", "places", "best", "signs")
BEST, WORST = 5, 1

_SYMBOLS = {
    **dict.fromkeys(",，、|•·", "comma"),
    **dict.fromkeys(";.!", "stop"),
    **dict.fromkeys("?؟", "ask"),
    **dict.fromkeys("&+/", "and"),
    **dict.fromkeys("%<>$", "bad"),
    "~": "times",
}
"""Punctuation that means something here; the rest is passed over."""


@cache
def words(lang: str) -> Lexicon:
    """The words for reading in `lang`, with the names, numbers and marks of the other languages behind them.

    Two threads may come here at once: each has words of its own until they are complete.
    """
    own = learn("reading", lang, FORGIVING)
    own.ear = Ear(own.entries(), lang)
    for other in (language for language in LANGUAGES if language != lang):
        named: set[Entry] = set()
        for phrase, entry in phrases("reading", other, own.words):
            if entry.section in SHARED or (entry.section == "signs" and entry.name in SHARED):
                own.lend(phrase, entry)
            elif entry.section in ("numbers", "ones") and entry not in named:
                named.add(entry)  # its first spelling; the other ones are slips, and words elsewhere ("sink")
                _lend_number(own, phrase, entry.name)
    return own


def _lend_number(own: Lexicon, phrase: tuple[str, ...], number: str) -> None:
    """Learn a number of another language; one that looks like an own word (``tres``, French very) only as a dare."""
    if own.knows(phrase) or number == "1":
        own.add(phrase, Entry("foreign", number))
    else:
        own.lend(phrase, Entry("numbers", number))


def manners(scanned: Sequence[Found]) -> list[Manner]:
    """The manners that can make a difference to a reply, the plain one first."""
    sections = {found.section for found in scanned} | {entry.section for found in scanned for entry in found.also}
    return [Manner.PLAIN, *(manner for manner, daring in _DARING.items() if sections & daring)]


def items(scanned: Sequence[Found], *, order: Sequence[Position], manner: Manner) -> list[Item]:
    """All that a scanned reply says, in its order. Numbers are still bare digits; `numerals` judges them."""
    night = tuple(order)
    return [
        Item(kind, value, start, end, roles)
        for section, name, start, end, also in scanned
        for kind, value, roles in _meant(
            section, name, also, night if manner > Manner.PLAIN or section in _OF_THE_NIGHT else (), manner
        )
    ]


_OF_THE_NIGHT = frozenset(("positions", "places", "middles", "ones", "initials"))
"""Sections whose words mean something else in another order."""


@lru_cache(maxsize=32_768)
def _meant(
    section: str, name: str, also: tuple[Entry, ...], order: tuple[Position, ...], manner: Manner
) -> "tuple[tuple[str, _Value, frozenset[str]], ...]":
    """Kind, value and roles of each item that an entry makes. Cached, since families use the same words every night."""
    heard = _daring(section, name, also, manner)
    make = _MAKERS.get(heard.section)
    if make is not None:
        made = make(heard, order, manner)
        return tuple((_PLAINLY.get(kind, kind), value, _roles(also, kind, heard.section)) for kind, value in made)
    kind = _PLAINLY.get(heard.name, heard.name) if heard.section == "signs" else heard.section
    return ((_ALONE[heard.name] if kind == "roles" else kind, heard.name, _roles(also, heard.name)),)


def _roles(also: tuple[Entry, ...], *own: str) -> frozenset[str]:
    names = (entry.section if entry.section == "foreign" else entry.name for entry in also if entry.section in _ROLES)
    return frozenset((*names, *own))


_ROLES = frozenset(("roles", "signs", "foreign"))


_PLAINLY = {"plain": "word", "weighty": "word", "rest": "all", "went": "filler", "slip": "fix"}
_ALONE = {
    "count_before": "word",
    "count_after": "word",
    "question": "filler",
    "asks": "filler",
    "nothing": "nothing",
    "closing": "filler",
    "elides": "word",
    "plural_verb": "word",
    "mistaken": "fix",
    "copula": "filler",
    "device": "word",
    "whatever": "word",
    "article": "filler",
    "determiner": "filler",
    "scores": "filler",
    "resembles": "filler",
    "opener": "filler",
    "whole": "filler",
}
"""What words that only play a role are where nothing calls for it."""
_DARING = {
    Manner.FOREIGN: frozenset(("foreign",)),
    Manner.ARTICLES: frozenset(("articles", "ones")),
    Manner.SOUNDS: frozenset(("sounds",)),
    Manner.INITIALS: frozenset(("initials",)),
}


def _daring(section: str, name: str, also: tuple[Entry, ...], manner: Manner) -> Entry:
    """The meaning that words have in a manner: in a daring one perhaps another than the first."""
    daring = _DARING.get(manner, frozenset()) | ({"articles"} if manner is Manner.SOUNDS else set())
    return next((entry for entry in also if entry.section in daring), Entry(section, name))


_Value = tuple[Position, ...] | Mark | str | None
_Made = list[tuple[str, _Value]]
_Maker = Callable[[Entry, Sequence[Position], Manner], _Made]


def _position(found: Entry, order: Sequence[Position], _: Manner) -> _Made:
    positions = tuple(Position(name) for name in found.name.split())
    return [("position", positions)] if set(positions) <= set(order) else [("stranger", found.name)]


def _place(found: Entry, order: Sequence[Position], _: Manner) -> _Made:
    places = [int(place) for place in found.name.split()]
    if any(not -len(order) <= (place - 1 if place > 0 else place) < len(order) for place in places):
        return [("stranger", found.name)]
    return [("position", tuple(order[place - 1 if place > 0 else place] for place in places))]


def _middle(found: Entry, order: Sequence[Position], _: Manner) -> _Made:
    """What is the center or another position, such as the place in the middle of the night: clear if these are one."""
    places = [order[len(order) // 2]] if len(order) % 2 else []
    others = places if found.name == "place" else [Position(found.name)]
    meant = tuple(dict.fromkeys(p for p in (Position.CENTER, *others) if p in order))
    return [("position" if len(meant) == 1 else "middle", meant)]


def _others(found: Entry, _: Sequence[Position], __: Manner) -> _Made:
    return [("rest", int(found.name))]


def _number(found: Entry, _: Sequence[Position], __: Manner) -> _Made:
    return [("number", found.name)]


def _plural(found: Entry, _: Sequence[Position], __: Manner) -> _Made:
    return [("plural", int(found.name))]


def _mark(found: Entry, _: Sequence[Position], __: Manner) -> _Made:
    *scope, name = found.name.split()
    mark = (name, None) if name in ("same", "like", "elided") else ("mark", Word(name))
    return [*((kind, None) for kind in scope), mark]


def _article(found: Entry, _: Sequence[Position], manner: Manner) -> _Made:
    return [("article", found.name)] if manner in (Manner.ARTICLES, Manner.SOUNDS) else [("filler", None)]


def _one(found: Entry, order: Sequence[Position], manner: Manner) -> _Made:
    return [("one", found.name)] if manner is Manner.PLAIN else _number(found, order, manner)


def _foreign(found: Entry, _: Sequence[Position], manner: Manner) -> _Made:
    return [("number", found.name)] if manner is Manner.FOREIGN else [("word", found.name)]


def _sound(found: Entry, order: Sequence[Position], manner: Manner) -> _Made:
    if manner is not Manner.SOUNDS:
        return [("word", found.name)]
    return _position(found, order, manner) if found.name.isalpha() else [("number", found.name)]


def _initial(found: Entry, order: Sequence[Position], manner: Manner) -> _Made:
    if found.name not in order:
        return [("filler", None)]
    return [("position", (Position(found.name),))] if manner is Manner.INITIALS else [("letter", None)]


def _symbol(found: Entry, _: Sequence[Position], __: Manner) -> _Made:
    return [(kind, found.name)] if (kind := _SYMBOLS.get(found.name)) else [("symbol", found.name)]


def _stars(found: Entry, _: Sequence[Position], __: Manner) -> _Made:
    return [("number", str(sum(star in STARS for star in found.name)))]


_MAKERS: dict[str, _Maker] = {
    "positions": _position,
    "places": _place,
    "middles": _middle,
    "others": _others,
    "numbers": _number,
    "number": _number,
    "keycap": lambda found, _, __: [("number", found.name[0])],
    "plurals": _plural,
    "marks": _mark,
    "articles": _article,
    "ones": _one,
    "foreign": _foreign,
    "sounds": _sound,
    "initials": _initial,
    "symbol": _symbol,
    "stars": _stars,
}

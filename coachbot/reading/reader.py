"""Read a reply for ratings, the best position and a note."""

import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Literal

from coachbot.programme.positions import Position
from coachbot.reading.binding import Node, Pair, Unbound, bind, nodes
from coachbot.reading.choosing import Choice, choices, clause, single
from coachbot.reading.items import Item, Manner, items, manners, words
from coachbot.reading.lexicon import Found
from coachbot.reading.numerals import numerals
from coachbot.reading.readings import Mark, Reading
from coachbot.reading.remarks import remark
from coachbot.reading.settling import QUIET, after, before, settle

Asking = Literal["all", "best", "note"] | Position
"""What the coach asked last: all ratings of the night, the best, a note, or the rating of one position."""

_LONGEST = 1500
"""Characters beyond which a reply is read as a note or not at all."""
_UNCLEAR = Reading(unclear=True)


def read(text: str, *, lang: str, order: Sequence[Position], asking: Asking) -> Reading:
    """What `text` says of tonight's swallows.

    Args:
        text: a reply, already triaged.
        lang: ``en``, ``es`` or ``fr``; words of the other two are understood where they cannot mean anything else.
        order: tonight's positions, in the order they were swallowed.
        asking: what the coach asked last.

    Returns:
        What a careful reader would be sure of. Anything less is unclear and records nothing.

    Raises:
        LexiconError: there are no words for `lang`, or its file is mis-formed.
    """
    written = unicodedata.normalize("NFC", text)
    if len(written) <= _LONGEST:
        scanned = words(lang).scan(written)
        for manner in manners(scanned):
            try:
                return _reading(written, _heard(scanned, order, manner), order, asking)
            except Unbound:
                continue
    elif asking == "note":
        return Reading(note=text.strip())
    return _UNCLEAR


def _heard(scanned: Sequence[Found], order: Sequence[Position], manner: Manner) -> list[Item]:
    """What the reply says when it is taken in one manner; a daring manner needs a reply that is nothing but marks."""
    found = numerals(items(scanned, order=order, manner=manner), order)
    lettered = sum(a.kind == "letter" and b.kind == "mark" for a, b in pairwise(found))
    if lettered and 2 * lettered >= sum(item.kind == "mark" for item in found):
        raise Unbound  # "L3 R4": bare marks they are not
    if manner is Manner.PLAIN:
        return settle(found, len(order))
    daring = [item for item in found if item.kind in ("sound", "initial")]
    if manner is not Manner.ARTICLES and (not daring or any(item.kind not in _BARE for item in found)):
        raise Unbound
    if any(item.kind == "word" for item in found):
        raise Unbound
    return settle([_plain(item) for item in found], len(order))


_BARE = frozenset(("sound", "initial", "mark", "position", "comma", "newline", "stop", "and", "symbol", "pause"))


def _plain(item: Item) -> Item:
    if item.kind == "sound":
        return item._replace(kind="mark", value=int(str(item.value)))
    return item._replace(kind="position") if item.kind == "initial" else item


def _reading(text: str, found: Sequence[Item], order: Sequence[Position], asking: Asking) -> Reading:
    kinds = {item.kind for item in found}
    if asking == "note":
        return _note(text, found, order, kinds)
    if asking == "best" and _is_nothing(found):
        return Reading()
    if asking == "best" and not kinds & {"mark", "best", "bad", "negated", "stranger", "mixed"}:
        return Reading(best=_pointed_at(found))
    return _answer(text, found, order, asking)


def _note(text: str, found: Sequence[Item], order: Sequence[Position], kinds: set[str]) -> Reading:
    """A note is kept as it was written, unless the reply says "nothing" or is plainly an answer to something else."""
    wordy = bool(kinds & _WORDY)
    if _is_nothing(found, "closing"):
        return Reading()
    if wordy and not ("fix" in kinds and _has_number(found)):
        return Reading(note=text.strip())
    if kinds & {"mark", "best", "bad"}:
        return _answer(text, found, order, "note")
    if kinds <= {"yes", *_SAYS_NOTHING} and "yes" in kinds:
        raise Unbound  # there is something to say, but not what
    if not any(character.isalnum() or ord(character) > _EMOJI for character in text):
        raise Unbound
    return Reading(note=text.strip())


_WORDY = frozenset(("word", "other", "worst", "quality", "half"))
_NOTHING_MORE = frozenset(
    ("filler", "letter", "because", "symbol", "comma", "stop", "newline", "pause", "fix", "quality", "article", "not")
)
_EMOJI = 0x2000


def _is_nothing(found: Sequence[Item], *also: str) -> bool:
    """Whether the reply says that there is nothing to say, or only words of the roles `also`."""
    roles = {"nothing", *also}
    silent = [item for item in found if item.kind == "nothing" or item.roles & roles]
    return bool(silent) and all(item in silent or item.kind in _NOTHING_MORE for item in found)


def _has_number(found: Iterable[Item]) -> bool:
    return any(item.kind == "mark" and isinstance(item.value, int) for item in found)


def _pointed_at(found: Sequence[Item]) -> Position | None:
    """The best position of a reply that only points at it; None where it says that there is none.

    Raises:
        Unbound: it points at several, or says something else.
    """
    named = [at for at, item in enumerate(found) if item.kind == "position"]
    if not named:
        if _is_nothing(found) or any(item.kind == "nothing" for item in found):
            return None
        raise Unbound
    if {"all", "except"} <= {item.kind for item in found}:
        raise Unbound  # "everything but up" is no best
    fixed = [at for at in named if any(item.kind == "fix" for item in found[named[0] : at])]
    named = fixed or named
    alone = [at for at in named if not any(found[i].kind in ("word", "worst", "other") for i in clause(found, at))]
    pointed = {single(found[at]) for at in (alone or named)}
    if len(pointed) != 1 or any(found[i].kind == "worst" for at in (alone or named) for i in clause(found, at)):
        raise Unbound
    return pointed.pop()


def _answer(text: str, found: Sequence[Item], order: Sequence[Position], asking: Asking) -> Reading:
    """Ratings, best and note of a reply.

    Raises:
        Unbound: anything in it is not clear.
    """
    if any(item.kind in ("bad", "negated", "mixed") or _is_strange(found, at) for at, item in enumerate(found)):
        raise Unbound
    picks = choices(found) or _trailing_choice(found, len(order))
    best = _last_word(picks, found)
    pairs, ratings = _bound(found, picks, order, asking)
    if not ratings and best is None:
        raise Unbound
    note = remark(text, found, _used(pairs, picks), reasons=asking == "all")
    return Reading(ratings=ratings, best=best, note=note)


def _trailing_choice(found: Sequence[Item], places: int) -> list[Choice]:
    """A lone position after a mark for each place of the night ("4 3 5 2 4 left") is the best."""
    said = [at for at, item in enumerate(found) if item.kind not in _SAYS_NOTHING]
    kinds = [found[at].kind for at in said]
    if kinds != ["mark"] * places + ["position"] or not all(type(found[at].value) is int for at in said[:-1]):
        return []
    return [Choice(single(found[said[-1]]), said[-1], said[-1], said[-1])]


_SAYS_NOTHING = QUIET | {"comma", "stop", "newline", "and"}


def _is_strange(found: Sequence[Item], at: int) -> bool:
    """Whether a position that is not in tonight's order is spoken of, not just met in a phrase of other words."""
    if found[at].kind != "stranger":
        return False
    near = [found[i].kind for i in (before(found, at), after(found, at)) if i is not None]
    return "word" not in near or "mark" in near


def _last_word(picks: Sequence[Choice], found: Sequence[Item]) -> Position | None:
    """The best position; of two that differ the later, if a correction stands between."""
    best = {pick.position for pick in picks}
    if len(best) < 2:  # noqa: PLR2004
        return next(iter(best), None)
    if any(item.kind == "fix" for item in found[picks[-2].at : picks[-1].at]):
        return picks[-1].position
    raise Unbound


def _bound(
    found: Sequence[Item], picks: Sequence[Choice], order: Sequence[Position], asking: Asking
) -> tuple[list[Pair], dict[Position, Mark]]:
    """The pairs of the reply and the ratings they make, without what only points at the best or is only spoken of."""
    pointing = frozenset(pick.at for pick in picks)
    prose = frozenset(at for at in range(len(found)) if _is_prose(found, at))
    tales = frozenset(at for at in range(len(found)) if _is_tale(found, at))
    told = pointing | prose | tales
    roles = {role for item in found for role in item.roles}
    for hidden in dict.fromkeys(
        (pointing, frozenset[int](), pointing | prose, told, told | _beside_list(found, order))
    ):
        try:
            if "rest" in roles and any(found[at].kind == "position" for at in hidden - pointing):
                raise Unbound  # "the rest" leaves out the positions that are only spoken of
            pairs = bind(nodes([_hide(item) if at in hidden else item for at, item in enumerate(found)]))
            return pairs, _ratings(pairs, order, asking)
        except Unbound:
            continue
    raise Unbound


def _beside_list(found: Sequence[Item], order: Sequence[Position]) -> frozenset[int]:
    """Positions among words where bare marks tell the whole night: "her left ear hurts 4 3 5 2 4"."""
    marks = [at for at, item in enumerate(found) if item.kind == "mark"]
    if len(marks) != len(order) or any(found[at].kind == "position" for at in range(marks[0], marks[-1])):
        return frozenset()
    return frozenset(at for at in range(marks[0]) if found[at].kind == "position" and _has_words(found, at))


def _has_words(found: Sequence[Item], at: int) -> bool:
    return any(i is not None and found[i].kind in _PROSE for i in (before(found, at), after(found, at)))


def _is_tale(found: Sequence[Item], at: int) -> bool:
    """Whether "missed" or "spat out" is part of a tale ("missed her nap"): words at its side and no position."""
    if found[at].kind != "mark" or isinstance(found[at].value, int):
        return False
    near = {found[i].kind for i in (before(found, at), after(found, at)) if i is not None}
    return "position" not in near and bool(near & _PROSE)


def _hide(item: Item) -> Item:
    return item._replace(kind="denied")


_PROSE = frozenset(("word", "worst", "quality", "other"))


def _is_prose(found: Sequence[Item], at: int) -> bool:
    """Whether a position is only spoken of: words at its side, and no mark of its own after them."""
    if found[at].kind != "position":
        return False
    mark = after(found, at, _PROSE | {"filler"})
    return _has_words(found, at) and (mark is None or found[mark].kind != "mark")


def _ratings(pairs: Sequence[Pair], order: Sequence[Position], asking: Asking) -> dict[Position, Mark]:
    named: dict[Position, tuple[int, Mark]] = {}
    for pair in pairs:
        for position in pair.group.positions if pair.group else ():
            _set(named, position, pair.mark)
    rest = [position for position in order if position not in named]
    for position, mark in _whole_night(pairs, order) or _unnamed(pairs, rest, asking):
        if position in rest:
            _set(named, position, mark)
    return {position: named[position][1] for position in order if position in named}


def _set(named: dict[Position, tuple[int, Mark]], position: Position, mark: Node) -> None:
    """Give a position its mark; a later, corrected one replaces it, any other second mark is a contradiction."""
    epoch, known = named.get(position, (mark.epoch, mark.mark))
    if known != mark.mark and mark.epoch <= epoch:
        raise Unbound
    assert mark.mark is not None
    named[position] = (mark.epoch, mark.mark)


def _whole_night(pairs: Sequence[Pair], order: Sequence[Position]) -> list[tuple[Position, Node]]:
    """Bare marks for each position of the night, of which some were put right by name afterwards."""
    bare = [pair.mark for pair in pairs if not pair.group]
    named = [pair.mark for pair in pairs if pair.group]
    if len(bare) != len(order) or not named or any(mark.epoch <= bare[-1].epoch for mark in named):
        return []
    return list(zip(order, bare, strict=True))


def _unnamed(pairs: Sequence[Pair], rest: Sequence[Position], asking: Asking) -> Iterator[tuple[Position, Node]]:
    """Marks for the positions that were not named: one for all of them, or bare ones in the night's order."""
    for_all = [pair.mark for pair in pairs if pair.group and not pair.group.positions]
    bare = [pair.mark for pair in pairs if not pair.group]
    if for_all and not bare and len({mark.mark for mark in for_all}) == 1:
        yield from ((position, for_all[0]) for position in rest)
    elif bare and isinstance(asking, Position) and not for_all and len({mark.mark for mark in bare}) == 1:
        yield asking, bare[0]
    elif bare and len(bare) == len(rest) and not for_all and (len(pairs) > 1):
        yield from zip(rest, bare, strict=True)
    elif bare or for_all:
        raise Unbound


def _used(pairs: Sequence[Pair], picks: Sequence[Choice]) -> set[int]:
    """The items that pairs and praise are made of, with all that stands between their parts."""
    used: set[int] = set()
    for pair in pairs:
        spans = [node for node in (pair.group, pair.mark) if node]
        used.update(range(min(node.first for node in spans), max(node.last for node in spans) + 1))
    for pick in picks:
        used.update(range(pick.first, pick.last + 1))
    return used

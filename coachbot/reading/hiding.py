"""Positions and marks that are only spoken of, which a reply may mean to be passed over."""

from collections.abc import Iterator, Sequence

from coachbot.programme.positions import Position
from coachbot.reading.items import Item
from coachbot.reading.neighbours import QUIET, after, before, is_kind
from coachbot.reading.readings import Word

_PARTING = frozenset(("comma", "and", "stop", "newline"))
_PROSE = frozenset(("word", "worst", "quality", "other"))


def ways_of_hiding(
    found: Sequence[Item], order: Sequence[Position], pointing: frozenset[int], went: frozenset[int]
) -> Iterator[frozenset[int]]:
    """Items that may only be spoken of: those that point at the best, none, and then more and more."""
    yield pointing
    yield frozenset()
    everywhere = range(len(found))
    more = (
        _echoes(found),
        went,
        (at for at in everywhere if _is_prose(found, at)),
        (at for at in everywhere if _is_tale(found, at)),
        _beside_list(found, order),
    )
    hidden = pointing
    for spoken_of in more:
        hidden = hidden.union(spoken_of)
        yield hidden


def is_put_right(found: Sequence[Item], at: int) -> bool:
    """Whether a correction leads up to a position: "4 3 5, sorry left is ..."."""
    return found[at].kind == "position" and is_kind(found, before(found, at, QUIET | {"comma"}), "fix")


def is_excepted(found: Sequence[Item], at: int) -> bool:
    """Whether a position is left out of all: "all but up", "all 4 but up"."""
    earlier = before(found, at)
    if found[at].kind != "position" or not is_kind(found, earlier, "except"):
        return False
    return any(item.kind == "all" for item in found[:earlier])


def went_down(found: Sequence[Item], at: int) -> bool:
    """Whether a position is only said to have gone down, with no mark: "left went down, the others did not"."""
    if found[at].kind != "position" or is_kind(found, after(found, at), "mark"):
        return False
    first, last = at, at
    while first and found[first - 1].kind == "filler":
        first -= 1
    while last + 1 < len(found) and found[last + 1].kind == "filler":
        last += 1
    return any("went" in item.roles for item in found[first : last + 1])


def _beside_list(found: Sequence[Item], order: Sequence[Position]) -> frozenset[int]:
    """Positions among words where bare marks tell the whole night: "her left ear hurts 4 3 5 2 4"."""
    marks = [at for at, item in enumerate(found) if item.kind == "mark"]
    if len(marks) != len(order) or any(found[at].kind == "position" for at in range(marks[0], marks[-1])):
        return frozenset()
    return frozenset(at for at in range(marks[0]) if found[at].kind == "position" and _has_words(found, at))


def _echoes(found: Sequence[Item]) -> Iterator[int]:
    """Where "skipped" or "not down" only says again what was said of a position: "left was skipped, we missed it"."""
    told, beside = None, False
    for at, item in enumerate(found):
        if item.kind == "mark":
            following = after(found, at) if beside else None
            again = following is None or found[following].kind != "position"
            if isinstance(item.value, Word) and item.value is told and again:
                yield at
            told, beside = item.value, False
        elif item.kind == "all":
            told = None
        elif item.kind == "position":
            beside = True


def _has_words(found: Sequence[Item], at: int) -> bool:
    return any(i is not None and found[i].kind in _PROSE for i in (before(found, at), after(found, at)))


def _is_tale(found: Sequence[Item], at: int) -> bool:
    """Whether "missed" or "spat out" is part of a tale ("missed her nap"): words at its side and no position."""
    if found[at].kind != "mark" or isinstance(found[at].value, int):
        return False
    near = {found[i].kind for i in (before(found, at), after(found, at)) if i is not None}
    return "position" not in near and bool(near & _PROSE)


def _is_prose(found: Sequence[Item], at: int) -> bool:
    """Whether a position is only spoken of: words at its side, and no mark of its own after them."""
    if found[at].kind != "position":
        return False
    mark = after(found, at, _PROSE | {"filler"})
    return _has_words(found, at) and not _may_have_a_mark(found, at) and (mark is None or found[mark].kind != "mark")


def _may_have_a_mark(found: Sequence[Item], at: int) -> bool:
    """Whether an article that may be a "one" ends what is said of a position: "en bas un, au milieu trois"."""
    following = found[at + 1 : at + 3]
    ends = len(following) == 1 or (len(following) > 1 and following[1].kind in {*_PARTING, "position"})
    return ends and "article" in following[0].roles

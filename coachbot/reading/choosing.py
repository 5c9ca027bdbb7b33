"""Which position a reply calls the best."""

from collections.abc import Sequence
from typing import NamedTuple

from coachbot.programme.positions import Position
from coachbot.reading.binding import Unbound
from coachbot.reading.items import Item
from coachbot.reading.neighbours import after, before

_BOUNDARIES = frozenset(("comma", "stop", "newline", "fix", "except", "ask", "because"))


class Choice(NamedTuple):
    """The best position, and the first and last item of the words that say so."""

    position: Position
    first: int
    last: int
    at: int


def choices(found: Sequence[Item]) -> list[Choice]:
    """Each place where `found` calls a position the best.

    Raises:
        Unbound: two positions share the praise, or it is not clear which one it goes to.
    """
    return [choice for at, item in enumerate(found) if item.kind == "best" and (choice := _choice(found, at))]


def clause(found: Sequence[Item], at: int) -> range:
    """The items around `at` up to the next comma, end of sentence or line on both sides."""
    first = next((i + 1 for i in range(at, -1, -1) if found[i].kind in _BOUNDARIES), 0)
    last = next((i for i in range(at, len(found)) if found[i].kind in _BOUNDARIES), len(found))
    return range(first, last)


def _choice(found: Sequence[Item], at: int) -> Choice | None:
    around = clause(found, at)
    named = [i for i in around if found[i].kind == "position"]
    if not named:
        named = _next_door(found, around)
    if len(named) > 1:
        named = _nearest(found, at, named)
    return _chosen(found, named[0], at) if named else None


def _chosen(found: Sequence[Item], place: int, at: int) -> Choice:
    position = single(found[place])
    liked = [i for i in clause(found, at) if found[i].kind == "liked"]
    return Choice(position, min(place, at, *liked), max(place, at, *liked), place)


def single(item: Item) -> Position:
    """The one position of an item.

    Raises:
        Unbound: it names several ("the first two").
    """
    if not isinstance(item.value, tuple) or len(item.value) != 1:
        raise Unbound
    return item.value[0]


def _next_door(found: Sequence[Item], around: range) -> list[int]:
    """A lone position in the part after ("best? left") or before ("left, that was best")."""
    for neighbour in (around.stop + 1, around.start - 2):
        if 0 <= neighbour < len(found):
            part = clause(found, neighbour)
            named = [i for i in part if found[i].kind == "position"]
            if named and not any(found[i].kind in ("mark", "word") for i in part):
                return named
    return []


def _nearest(found: Sequence[Item], at: int, named: Sequence[int]) -> list[int]:
    """Of several positions in one part, the one right beside the praise; it must be one."""
    right, left = after(found, at, _QUIET), before(found, at, _QUIET)
    beside = []
    if right in named and not _has_mark(found, right):
        beside.append(right)
    if left in named:
        beside.append(left)
    elif left is not None and found[left].kind == "mark" and not beside:
        beside = [i for i in (before(found, left, _QUIET),) if i in named]
    if len(beside) != 1 or beside[0] is None or _shared(found, beside[0]):
        raise Unbound
    return [beside[0]]


_QUIET = frozenset(("filler", "yes", "symbol", "pause", "both", "quality", "liked", "soft"))


def _has_mark(found: Sequence[Item], place: int | None) -> bool:
    """Whether what follows a position is its own: a mark, or blame."""
    following = after(found, place, _QUIET) if place is not None else None
    return following is not None and found[following].kind in ("mark", "worst")


def _shared(found: Sequence[Item], place: int) -> bool:
    """Whether the position is joined to another by "and"."""
    joins = (before(found, place, _QUIET), after(found, place, _QUIET))
    others = (before(found, joins[0], _QUIET) if joins[0] is not None else None,
              after(found, joins[1], _QUIET) if joins[1] is not None else None)  # fmt: skip
    return any(
        join is not None and found[join].kind == "and" and other is not None and found[other].kind == "position"
        for join, other in zip(joins, others, strict=True)
    )

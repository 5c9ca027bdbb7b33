"""The ratings that the marks of a reply make, for tonight's positions."""

from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress

from coachbot.programme.positions import Position
from coachbot.reading.binding import Node, Pair, Unbound, bind, grouped, nodes
from coachbot.reading.choosing import Choice
from coachbot.reading.hiding import is_excepted, is_put_right, ways_of_hiding, went_down
from coachbot.reading.items import Item
from coachbot.reading.neighbours import QUIET, after, before, is_kind
from coachbot.reading.readings import Mark


def bound(
    found: Sequence[Item], picks: Sequence[Choice], order: Sequence[Position], asked: Position | None
) -> tuple[list[Pair], dict[Position, Mark]]:
    """The pairs of the reply and the ratings they make, without what only points at the best or is only spoken of.

    `asked` is the position that a lone mark is for, if one was asked for.

    Raises:
        Unbound: the marks do not fit the positions in one way.
    """
    pointing = frozenset(pick.at for pick in picks)
    roles = {role for item in found for role in item.roles}
    went = frozenset(at for at in range(len(found)) if went_down(found, at)) if "went" in roles else frozenset()
    rest = "rest" in roles
    if rest and _leaves_a_name_out(found):
        raise Unbound
    tried: set[frozenset[int]] = set()
    for hidden in ways_of_hiding(found, order, pointing, went):
        if hidden in tried:
            continue
        tried.add(hidden)
        if rest and any(found[at].kind in ("position", "mark") for at in hidden - pointing - went):
            continue  # "the rest" leaves out the positions that are only spoken of
        if any(is_excepted(found, at) or is_put_right(found, at) for at in hidden - pointing):
            continue
        shown = [_hide(item) if at in hidden else item for at, item in enumerate(found)] if hidden else found
        spared = [p for at in hidden & went for p in _positions(found[at])] if rest else []
        for pairs in _bindings(shown):
            with suppress(Unbound):
                torn = any(_spans(pair, hidden) or _is_torn(pair, found) for pair in pairs)
                if not torn and not _are_of_words(pairs, found):
                    return pairs, _ratings(pairs, [p for p in order if p not in spared], asked)
    raise Unbound


def _leaves_a_name_out(found: Sequence[Item]) -> bool:
    """Whether "the rest" is told of with no position named, or one that was not understood: "lfz and up 3, rest 4"."""
    named = [at for at, item in enumerate(found) if item.kind == "position"]
    joints = [at for at, item in enumerate(found) if item.kind == "and"]
    halves = [(before(found, at), after(found, at)) for at in joints if not is_kind(found, after(found, at), "all")]
    return not named or any(
        is_kind(found, one, "word") and is_kind(found, other, "position")
        for half in halves for one, other in (half, half[::-1])
    )  # fmt: skip


def _spans(pair: Pair, hidden: frozenset[int]) -> bool:
    """Whether something hidden stands between a mark and its position: the mark may be that of the hidden one."""
    if pair.group is None:
        return False
    return any(min(pair.group.last, pair.mark.last) < at < max(pair.group.first, pair.mark.first) for at in hidden)


def _is_torn(pair: Pair, found: Sequence[Item]) -> bool:
    """Whether a mark before its position may be that of something else: "4, up so so", "left 3, fron 5, up 4"."""
    if pair.group is None or pair.mark.last > pair.group.first:
        return False
    parted = any(item.kind in _PARTING for item in found[pair.mark.last + 1 : pair.group.first])
    own = is_kind(found, after(found, pair.group.last, QUIET | {"fix"}), "word", "other")
    listed = parted or any(item.kind == "position" for item in found[: pair.mark.first])
    of_another = isinstance(pair.mark.mark, int) and is_kind(found, before(found, pair.mark.first), "word")
    return (parted and own) or (listed and of_another)


def _are_of_words(pairs: Sequence[Pair], found: Sequence[Item]) -> bool:
    """Whether two bare marks may be those of names that were not understood: "left 4 p 3 let 5"."""
    bare = [pair.mark.first for pair in pairs if pair.group is None]
    led = sum(is_kind(found, before(found, at, QUIET - {"letter"}), "word", "letter") for at in bare)
    return led > 1 or bool(led and 1 < len(bare) < len(pairs))


_PARTING = frozenset(("comma", "and", "except", "fix", "stop", "newline"))


def _bindings(found: Sequence[Item]) -> Iterator[list[Pair]]:
    """The pairs that `found` is made of, with and (where that makes no sense) without joining positions."""
    with suppress(Unbound):
        alone = nodes(found)
        together = grouped(alone, found)
        for way in (together, alone) if together != alone else (alone,):
            with suppress(Unbound):
                yield bind(way)


def _positions(item: Item) -> tuple[Position, ...]:
    return item.value if isinstance(item.value, tuple) else ()


def _hide(item: Item) -> Item:
    return item._replace(kind="denied")


def _ratings(pairs: Sequence[Pair], order: Sequence[Position], asked: Position | None) -> dict[Position, Mark]:
    named: dict[Position, tuple[int, _Told]] = {}
    for pair in pairs:
        for position in pair.group.positions if pair.group else ():
            _set(named, position, pair.mark)
    rest = [position for position in order if position not in named]
    for position, mark in _whole_night(pairs, order, rest) or _unnamed(pairs, rest, asked):
        _set(named, position, mark)
    told = {position: named[position][1] for position in order if position in named}
    return {position: _followed(mark, told) for position, mark in told.items()}


_Told = Mark | tuple[Position, ...]
"""A mark, or the one position that has the same mark."""


def _followed(mark: _Told, told: Mapping[Position, _Told]) -> Mark:
    """The mark itself where it was told as that of another position.

    Raises:
        Unbound: the other position has none of its own.
    """
    if isinstance(mark, tuple):
        mark = told.get(mark[0], ()) if len(mark) == 1 else ()
    if isinstance(mark, tuple):
        raise Unbound
    return mark


def _set(named: dict[Position, tuple[int, _Told]], position: Position, mark: Node) -> None:
    """Give a position its mark; a later, corrected one replaces it, any other second mark is a contradiction."""
    epoch, known = named.get(position, (mark.epoch, mark.mark))
    if known != mark.mark and mark.epoch <= epoch:
        raise Unbound
    assert mark.mark is not None
    named[position] = (mark.epoch, mark.mark)


def _whole_night(
    pairs: Sequence[Pair], order: Sequence[Position], rest: Sequence[Position]
) -> list[tuple[Position, Node]]:
    """Bare marks for each position of the night, of which some were put right by name afterwards."""
    bare = [pair.mark for pair in pairs if not pair.group]
    named = [pair.mark for pair in pairs if pair.group]
    if len(bare) != len(order) or not named or any(mark.epoch <= bare[-1].epoch for mark in named):
        return []
    return [(position, mark) for position, mark in zip(order, bare, strict=True) if position in rest]


def _unnamed(
    pairs: Sequence[Pair], rest: Sequence[Position], asked: Position | None
) -> Iterator[tuple[Position, Node]]:
    """Marks for the positions that were not named: one for all of them, or bare ones in the night's order."""
    for_all = [pair.mark for pair in pairs if pair.group and not pair.group.positions]
    if any(pair.group and pair.group.size not in (None, len(rest)) for pair in pairs):
        raise Unbound  # "the other two" are not two
    bare = [pair.mark for pair in pairs if not pair.group]
    if for_all and not bare and len({mark.mark for mark in for_all}) == 1:
        yield from ((position, for_all[0]) for position in rest)
    elif bare and asked and not for_all and len({mark.mark for mark in bare}) == 1:
        yield asked, bare[0]
    elif bare and len(bare) == len(rest) and not for_all and len(pairs) > 1 and not _put_right(pairs):
        yield from zip(rest, bare, strict=True)
    elif bare or for_all:
        raise Unbound


def _put_right(pairs: Sequence[Pair]) -> bool:
    """Whether bare marks come first and named ones after a correction: the bare ones are then the whole night's."""
    bare = [pair.mark.epoch for pair in pairs if not pair.group]
    return any(pair.group and pair.mark.epoch > max(bare) for pair in pairs)


def used(pairs: Sequence[Pair], picks: Sequence[Choice]) -> set[int]:
    """The items that pairs and praise are made of, with all that stands between their parts."""
    items: set[int] = set()
    for pair in pairs:
        spans = [node for node in (pair.group, pair.mark) if node]
        items.update(range(min(node.first for node in spans), max(node.last for node in spans) + 1))
    for pick in picks:
        items.update(range(pick.first, pick.last + 1))
    return items

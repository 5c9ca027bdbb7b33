"""Which mark belongs to which position: a small grammar over the positions and marks of a reply.

Positions and marks come in pairs, in either order ("left 4", "4 for left"), parted by commas, lines or nothing; or as
two lists of one length ("left, right: 4, 3"); or as bare marks in the night's order. Positions joined by "and" share a
mark, unless only each for itself makes sense. What fits no such form, or fits only by tearing words apart, is not
bound: the reply is then not clear.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise, takewhile
from typing import NamedTuple

from coachbot.programme.positions import Position
from coachbot.reading.items import Item
from coachbot.reading.readings import Mark, Word

CLOSE, COMMA, APART = 0, 1, 2
_GAPS = {"comma": COMMA, "and": COMMA, "except": COMMA, "fix": APART, "stop": APART, "newline": APART, "ask": APART}
_WORDS_THAT_PART = 3
_MOST_NODES = 40
"""More positions and marks than this is no reply to us (and bounds the work)."""


class Node(NamedTuple):
    """A group of positions (or ``all``), or a mark; `gap` parts it from the node before; `first:last` are its items.

    The mark may be that of another position ("same as left"). A group may say how many it holds ("the other two").
    """

    kind: str
    positions: tuple[Position, ...]
    mark: Mark | tuple[Position, ...] | None
    gap: int
    epoch: int
    first: int
    last: int
    size: int | None = None


class Pair(NamedTuple):
    """A mark for a group of positions; no group means a bare mark."""

    group: Node | None
    mark: Node


class Unbound(Exception):  # not an error: a verdict on the reply
    """The positions and marks of a reply do not fit together in one way only."""


def nodes(items: Sequence[Item]) -> list[Node]:
    """The positions and marks of `items`, each for itself.

    Raises:
        Unbound: there are too many.
    """
    found: list[Node] = []
    between: list[str] = []
    epoch = 0
    for at, item in enumerate(items):
        if item.kind not in ("position", "all", "mark", "same"):
            between.append(item.kind)
            epoch += item.kind == "fix"
            continue
        found.append(_node(item, at, between, epoch, found))
        between = []
    if len(found) > _MOST_NODES:
        raise Unbound
    return found


def _node(item: Item, at: int, between: Sequence[str], epoch: int, before: Sequence[Node]) -> Node:
    to_mark = bool(before) and before[-1].kind == "group" and item.kind in ("mark", "same")
    gap = _gap(tuple(between), to_mark=to_mark) if before and between else CLOSE
    if before and "word" in between and (before[-1].kind == "group") == (item.kind in ("position", "all")):
        gap = APART  # two marks, or two positions, with words between are no list
    if item.kind in ("position", "all"):
        positions = item.value if isinstance(item.value, tuple) else ()
        count = item.value if isinstance(item.value, int) else None
        return Node("group", positions, None, gap, epoch, at, at, count)
    return Node("mark", (), _mark(item, before), gap, epoch, at, at)


def _mark(item: Item, before: Sequence[Node]) -> Mark | tuple[Position, ...]:
    """The mark of an item; "the same" repeats the last one."""
    mark = item.value if item.kind == "mark" else next((n.mark for n in reversed(before) if n.kind == "mark"), None)
    if not isinstance(mark, int | Word | tuple):
        raise Unbound
    return mark


@lru_cache(maxsize=4096)
def _gap(between: tuple[str, ...], *, to_mark: bool) -> int:
    """How far two nodes stand apart; `to_mark` from a position to a mark, where a few words speak of the position."""
    words = between.count("word") + between.count("other")
    last_part = [*takewhile(lambda kind: kind not in _GAPS, reversed(between))]
    if to_mark and "word" in last_part and len(last_part) < len(between):
        return APART  # "up was odd, and then the thing 5"
    kinds = [kind for kind in between if kind != "fix" or not to_mark]  # "left should be 3" is one thing
    parted = max((_GAPS.get(kind, CLOSE) for kind in kinds), default=CLOSE)
    if words >= _WORDS_THAT_PART:
        return APART
    return max(parted, COMMA) if words and not to_mark else parted


def grouped(found: Sequence[Node], items: Sequence[Item]) -> list[Node]:
    """`found` with positions that are joined ("left and right") as one node."""
    neighbours = any(a.kind == b.kind == "group" for a, b in pairwise(found))
    return list(_grouped(found, items)) if neighbours else list(found)


def _grouped(found: Sequence[Node], items: Sequence[Item]) -> Iterator[Node]:
    run: list[Node] = []
    for node in found:
        if run and node.kind == "group" and node.positions == run[-1].positions:
            run[-1] = node._replace(gap=run[-1].gap)  # "all but left. left was 3"
            continue
        if node.kind == "group" and (not run or _joins(run, node, items)):
            run.append(node)
            continue
        yield from _joined_run(run, items)
        run = [node] if node.kind == "group" else []
        if node.kind != "group":
            yield node
    yield from _joined_run(run, items)


def _joins(run: Sequence[Node], node: Node, items: Sequence[Item]) -> bool:
    """Whether nothing but a comma or an "and" stands between a run of positions and the next; an "and" is the last."""
    last, joint = run[-1], _between(run[-1], node, items)
    told = any(item.roles & {"copula", "foreign"} for item in items[last.last + 1 : node.first])
    if told or not last.positions or not node.positions or not joint <= {"comma", "and"}:
        return False
    if len(run) == 1:
        return joint != {"comma", "and"}  # "the right, and up was a 2"
    return joint != {"comma"} or len(run) == 1 or "and" not in _between(run[-2], last, items)


def _between(left: Node, right: Node, items: Sequence[Item]) -> set[str]:
    return {item.kind for item in items[left.last + 1 : right.first]} - {"filler", "both"}


def _joined_run(run: Sequence[Node], items: Sequence[Item]) -> Iterator[Node]:
    """One node for a run such as "left, right and up"; commas alone join nothing."""
    if len(run) > 1 and any(item.kind == "and" for item in items[run[-2].last + 1 : run[-1].first]):
        positions = tuple(position for node in run for position in node.positions)
        yield run[0]._replace(positions=positions, last=run[-1].last)
    else:
        yield from run


def bind(found: Sequence[Node]) -> list[Pair]:
    """The pairs and bare marks that `found` is made of.

    Raises:
        Unbound: a position is left without a mark, or more than one way fits.
    """
    if all(node.kind == "mark" for node in found):
        return [Pair(None, node) for node in found]
    for way in (_pairs, _lists, _parts, _list_then_pairs):
        pairs = way(found)
        if pairs is not None:
            return pairs
    raise Unbound


def _pairs(found: Sequence[Node]) -> list[Pair] | None:
    """Two by two, a position and a mark each, never closer to a neighbour than to each other."""
    if len(found) % 2 or any(a.kind == b.kind for a, b in zip(found[::2], found[1::2], strict=True)):
        return None
    inside, outside = [node.gap for node in found[1::2]], [node.gap for node in found[2::2]]
    if any(inner > outer for pair in (inside, inside[1:]) for inner, outer in zip(pair, outside, strict=False)):
        return None
    if any(first.kind == "mark" and second.gap == APART and not second.positions for first, second in _twos(found)):
        return None  # "left 4. The rest ..." is another sentence
    if found[0].kind == "group" and any(a.kind == "mark" and b.gap != CLOSE for a, b in _twos(found)):
        return None  # "left 4, 5, up": the mark may be that of a position that was not understood
    return [Pair(*sorted(pair, key=_is_mark)) for pair in _twos(found)]


def _twos(found: Sequence[Node]) -> Iterator[tuple[Node, Node]]:
    return zip(found[::2], found[1::2], strict=True)


def _is_mark(node: Node) -> bool:
    return node.kind == "mark"


def _lists(found: Sequence[Node]) -> list[Pair] | None:
    """All positions, then as many marks, or the other way round."""
    positions = [node._replace(positions=(p,)) for node in found if node.kind == "group" for p in node.positions]
    marks = [node for node in found if node.kind == "mark"]
    turns = sum(a.kind != b.kind for a, b in pairwise(found))
    if (
        turns != 1
        or not all(node.positions for node in found if node.kind == "group")
        or len(positions) != len(marks)
        or len({node.epoch for node in found}) > 1
        or any(a.kind == b.kind and b.gap == APART for a, b in pairwise(found))
    ):
        return None
    return [Pair(position, mark) for position, mark in zip(positions, marks, strict=True)]


def _parts(found: Sequence[Node]) -> list[Pair] | None:
    """What each part says, when the reply is cut at its widest gaps."""
    widest = max((node.gap for node in found[1:]), default=CLOSE)
    if widest == CLOSE:
        return None
    cuts = [0, *(at for at, node in enumerate(found) if at and node.gap == widest), len(found)]
    return [pair for start, end in pairwise(cuts) for pair in bind(found[start:end])]


def _list_then_pairs(found: Sequence[Node]) -> list[Pair] | None:
    """Bare marks and then pairs without a comma between: "4 3 5 2 down skipped"."""
    bare = next(at for at, node in enumerate(found) if node.kind == "group")
    if bare < 2:  # noqa: PLR2004  # one mark before a position may belong to it
        return None
    rest = _pairs([found[bare]._replace(gap=CLOSE), *found[bare + 1 :]])
    return None if rest is None else [Pair(None, node) for node in found[:bare]] + rest

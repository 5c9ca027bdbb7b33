"""Settle what a reply takes back or doubts, so that the rest is what it says: "3 not 4", "maybe 4", "same as left"."""

from collections.abc import Callable, Sequence

from coachbot.programme.positions import Position
from coachbot.reading.corrections import corrected
from coachbot.reading.doubts import (
    almost,
    asked,
    between_two,
    changed,
    denied,
    either,
    halved,
    hedged,
    limited,
    of_another_day,
)
from coachbot.reading.items import Item
from coachbot.reading.neighbours import QUIET, SLIP, after, become, before, is_kind, is_number, without
from coachbot.reading.readings import Word

_LOOSE = QUIET | {"comma", "and", "except", "fix"}
_STARTS = frozenset(("comma", "stop", "newline", "fix"))


def settle(found: Sequence[Item], places: int) -> list[Item]:
    """`found` without what is denied or put right; what stays in doubt becomes an item of kind ``bad``.

    `places` is the number of positions of the night: so many marks in a row are the whole night.
    """
    settled = _begun(list(found))
    kinds = {item.kind for item in settled}
    if "nothing" in kinds:
        for at in range(len(found)):
            if settled[at].kind == "nothing":
                settled = _skip(_no(settled, at), at)
    if "nothing" in kinds or "fix" in kinds:
        settled = corrected(settled, places)
        kinds = {item.kind for item in settled}
    if kinds.isdisjoint(_JUDGES):
        return settled
    for kind in _JUDGES:
        if kind in kinds:
            settled = _judged(settled, kind)
            kinds = {item.kind for item in settled}
    return settled


def _begun(found: list[Item]) -> list[Item]:
    """`found` without a "right," that only opens it: the right is named again, or is not tonight's."""
    if len(found) <= 1 or "opener" not in found[0].roles or found[1].kind != "comma":
        return found
    again = any(item.kind == "position" and item.value == found[0].value for item in found[1:])
    return become(found, 0, "filler") if again or found[0].kind == "stranger" else found


def _judged(found: list[Item], kind: str) -> list[Item]:
    """`found` with each item of a kind settled."""
    judge, at = _JUDGES[kind], 0
    while at < len(found):
        if found[at].kind == kind:
            found = judge(found, at)
        at += 1
    return found


def _doubt_same_mark(found: list[Item], at: int) -> list[Item]:
    """Whether "left 3, oops right 3" puts the position right or adds another, nobody can tell."""
    told = [item for item in found if item.kind in ("position", "mark")]
    if [item.kind for item in told] != ["position", "mark"] * 2:
        return found
    (left, mark), (right, same) = told[:2], told[2:]
    twice = mark.value == same.value and left.value != right.value and mark.end <= found[at].start < right.start
    return become(found, at, "bad") if twice else found


_SINGLE = tuple((position,) for position in Position)


def _same(found: list[Item], at: int) -> list[Item]:
    """What is "the same" may be told right after: "left and right were the same, 4"."""
    return become(found, at, "filler") if is_number(found, after(found, at, QUIET | {"comma"})) else found


def _like(found: list[Item], at: int) -> list[Item]:
    """The words "same as left" are a mark: that of the left."""
    named = after(found, at, {"filler"})
    if named is None or not is_kind(found, named, "position"):
        return become(found, at, "bad")
    return [
        *found[:at],
        found[at]._replace(kind="mark", value=found[named].value, end=found[named].end),
        *found[named + 1 :],
    ]


def _elided(found: list[Item], at: int) -> list[Item]:
    """What none of the others did is what another is told to have done: go down; what else it may be is not clear."""
    went = any("went" in item.roles or item.value is Word.NOT_DOWN for item in found)
    return [*found[:at], found[at]._replace(kind="mark" if went else "bad", value=Word.NOT_DOWN), *found[at + 1 :]]


def _ends(found: Sequence[Item], at: int) -> bool:
    """Whether nothing follows `at` in its part of the sentence."""
    following = after(found, at)
    return following is None or is_kind(found, following, *_STARTS, "and", "except", "because")


def _all(found: list[Item], at: int) -> list[Item]:
    """Mere words do not rate all ("all good"); after positions "all" sums them up ("the first two all 4")."""
    denied = after(found, at, {"filler"})
    if "rest" in found[at].roles and denied is not None and "elides" in found[denied].roles and _ends(found, denied):
        return _elided(found, denied)
    group = before(found, at, {"filler"})
    summed = is_kind(found, group, "position") and group is not None and found[group].value not in (None, *_SINGLE)
    if summed or _tells_that_all_went(found, at):
        return become(found, at, "filler")
    if is_kind(found, after(found, at, QUIET | {"word", "quality"}), "mark"):
        return found
    if is_kind(found, after(found, at), "word") and not is_kind(found, before(found, at), "mark"):
        return become(found, at, "filler")
    if is_kind(found, before(found, at), "word") and not is_kind(found, after(found, at), "mark"):
        return become(found, at, "filler")
    praised = is_kind(found, after(found, at), "quality") and not is_kind(
        found, after(found, at, QUIET | {"quality"}), "mark"
    )
    return become(found, at, "filler") if praised else found


def _tells_that_all_went(found: Sequence[Item], at: int) -> bool:
    """Whether all are only said to have gone down, beside a list of marks: "they all went down! 4 4 5"."""
    end = after(found, at)
    went = any("went" in item.roles for item in found[at + 1 : end])
    if not went or "rest" in found[at].roles or not (end is None or is_kind(found, end, *_STARTS)):
        return False
    told = [item.kind for item in (found[:at] if end is None else found[end:]) if item.kind not in SLIP]
    return told[:1] == ["position"] or told[:2] == ["mark", "mark"]


def _no(found: list[Item], at: int) -> list[Item]:
    """A "no" between two marks or positions puts the first right: "4, no 3", "left, no right", "up 3, no up 2"."""
    earlier, later = before(found, at, _LOOSE), after(found, at, _LOOSE)
    slip = is_number(found, earlier) and (is_number(found, later) or is_kind(found, later, "position"))
    both = is_kind(found, earlier, "position") and is_kind(found, later, "position")
    return become(found, at, "fix") if slip or both else found


def _mixed_up(found: list[Item], at: int) -> list[Item]:
    """A mix-up is put right where marks are told by name, before it or after: "left 2, right 4, I had them swapped"."""
    end = next((i for i in range(at, len(found)) if found[i].kind in _BREAKS - {"and"}), len(found))
    if _is_by_name(found[end:]) and all(item.kind != "mark" for item in found[:end]):
        return without(found, 0, end - 1)
    corrected = any(item.kind in ("fix", "except") for item in found[:at])
    right = found[at].kind == "mixed_up" and _is_by_name(found[:at]) and not corrected and _ends(found, at)
    return become(found, at, "filler" if right else "mixed")


def _is_by_name(found: Sequence[Item]) -> bool:
    """Whether marks are told here, each after its position."""
    told = [item.kind for item in found if item.kind not in SLIP | {"and"}]
    return bool(told) and told == ["position", "mark"] * (len(told) // 2)


def _middle(found: list[Item], at: int) -> list[Item]:
    """What is the center or another position is the center where the other one is named besides."""
    meant = found[at].value
    named = {item.value for item in found if item.kind == "position"}
    if not isinstance(meant, tuple) or meant[1:] not in named:
        return become(found, at, "bad")
    return [*found[:at], found[at]._replace(kind="position", value=meant[:1]), *found[at + 1 :]]


def _skip(found: list[Item], at: int) -> list[Item]:
    """A position is skipped by "no up tonight" among marks of others."""
    named = after(found, at, {"filler"})
    opens = at == 0 or before(found, at) is None or found[at - 1].kind in _BREAKS
    if not opens or named is None or not is_kind(found, named, "position") or not _ends(found, named):
        return found
    if not any(item.kind == "mark" for item in found):
        return found
    skipped = found[named]._replace(kind="mark", value=Word.SKIPPED)
    return [*found[:at], found[named], *found[at + 1 : named], skipped, *found[named + 1 :]]


_BREAKS = frozenset(("comma", "stop", "newline", "and", "except"))


_JUDGES: dict[str, Callable[[list[Item], int], list[Item]]] = {
    "fix": _doubt_same_mark,
    "middle": _middle,
    "mixed": _mixed_up,
    "mixed_up": _mixed_up,
    "elided": _elided,
    "like": _like,
    "all": _all,
    "limit": limited,
    "same": _same,
    "almost": almost,
    "not": denied,
    "hedge": hedged,
    "or": either,
    "times": between_two,
    "to": changed,
    "half": halved,
    "other_day": of_another_day,
    "ask": asked,
}

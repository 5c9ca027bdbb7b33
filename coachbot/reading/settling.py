"""Settle what a reply takes back or doubts, so that the rest is what it says: "3 not 4", "maybe 4", "same as left"."""

from collections.abc import Callable, Sequence

from coachbot.programme.positions import Position
from coachbot.reading.corrections import corrected
from coachbot.reading.items import Item
from coachbot.reading.neighbours import QUIET, SLIP, after, become, before, is_kind, is_number, without
from coachbot.reading.readings import Word

_LOOSE = QUIET | {"comma", "and", "except", "fix"}
_STARTS = frozenset(("comma", "stop", "newline", "fix"))


def settle(found: Sequence[Item], places: int) -> list[Item]:
    """`found` without what is denied or put right; what stays in doubt becomes an item of kind ``bad``.

    `places` is the number of positions of the night: so many marks in a row are the whole night.
    """
    settled = list(found)
    for at in range(len(found)):
        if settled[at].kind == "nothing":
            settled = _skip(_no(settled, at), at)
    settled = corrected(settled, places)
    kinds = {item.kind for item in settled}
    for kind in _JUDGES:
        if kind in kinds:
            settled = _judged(settled, kind)
            kinds = {item.kind for item in settled}
    return settled


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


def _not(found: list[Item], at: int) -> list[Item]:
    target = after(found, at, {"filler"})
    if target is None:
        return found
    kind = found[target].kind
    if is_number(found, target):
        return _not_number(found, at, target)
    if kind == "position":
        if any(item.kind == "all" for item in found):
            return become(found, at, "bad")  # "all 4, not left"
        others = any(item.kind == "position" for i, item in enumerate(found) if i != target)
        return without(found, at, target) if others else become(found, at, "negated")
    if kind in ("mark", "best", "liked", "same", "almost"):
        return become(found, target, "word")
    return become(found, at, "bad") if kind == "all" else found


def _not_number(found: list[Item], at: int, target: int) -> list[Item]:
    """A denied mark goes where another is told ("3 not 4", "not 4, 3", "3 for left, not 4"); alone it says nothing."""
    earlier = before(found, at, _LOOSE)
    if is_kind(found, earlier, "position") and before(found, at) == earlier:
        earlier = before(found, earlier or 0)
    told = is_kind(found, earlier, "mark") or is_number(found, after(found, target, _LOOSE))
    return without(found, at, target) if told else become(found, at, "bad")


def _almost(found: list[Item], at: int) -> list[Item]:
    target = after(found, at)
    if target is None or found[target].kind != "mark":
        return found
    return become(found, target, "bad" if is_number(found, target) else "word")


def _hedge(found: list[Item], at: int) -> list[Item]:
    """A doubted mark is none ("maybe 4", "4 maybe"), a doubted remark is one ("4, maybe she was tired")."""
    doubted = is_kind(found, after(found, at), "mark", "position") or (
        is_kind(found, before(found, at), "mark") and is_kind(found, after(found, at), "stop", "newline", "comma")
    )
    last = after(found, at) is None and is_kind(found, before(found, at), "mark", "position")
    return become(found, at, "bad" if doubted or last else "word")


def _or(found: list[Item], at: int) -> list[Item]:
    """Two things to choose from are none: "3 or 4", "left or right", "number 2 or 3"."""
    earlier = before(found, at)
    place = earlier is not None and "places" in found[earlier].roles
    return become(found, at, "bad") if place and is_number(found, after(found, at)) else _between_two(found, at)


def _to(found: list[Item], at: int) -> list[Item]:
    """The first of two marks goes where a change is asked for ("change left from 2 to 3")."""
    earlier = before(found, at)
    if is_number(found, earlier) and is_number(found, after(found, at)) and earlier is not None:
        asked = [item.kind for item in found[:earlier] if item.kind in ("fix", "position")]
        if asked == ["fix", "position"]:
            return without(found, earlier, at)
    return _between_two(found, at)


def _between_two(found: list[Item], at: int) -> list[Item]:
    """Two things of a kind with only this between are none: "3 to 4", "left x right"."""
    pair = [i for i in (before(found, at), after(found, at)) if i is not None]
    if is_kind(found, pair[0] if pair else None, "position") and is_kind(found, before(found, pair[0]), "mark"):
        return become(found, at, "and" if not is_number(found, before(found, pair[0])) else "bad")
    kinds = {found[i].kind for i in pair}
    opening = next((item for item in found if item.kind != "symbol"), found[at])
    if "question" in opening.roles and any(item.kind == "mark" for item in found[:at]):
        return become(found, at, "bad")
    unsure = len(pair) == 2 and len(kinds) == 1 and kinds <= {"mark", "position", "bad"}  # noqa: PLR2004
    return become(found, at, "bad" if unsure else "filler")


def _half(found: list[Item], at: int) -> list[Item]:
    return become(found, at, "bad" if is_kind(found, before(found, at), "mark", "and") else "word")


def _other_day(found: list[Item], at: int) -> list[Item]:
    """A mark or position of another day is none of tonight's; what was left out then ("forgot yesterday") is a tale."""
    sides = (before(found, at), after(found, at))
    near = [i for i in sides if i is not None and is_kind(found, i, "mark", "position")]
    if [found[i].value for i in near] == [Word.SKIPPED]:
        return become(become(found, near[0], "word"), at, "word")
    return become(found, at, "bad" if near else "word")


_FIRST_WORDS = 4
"""Among these a word such as "which" makes a question, also after "so" or "hi"."""


def _ask(found: list[Item], at: int) -> list[Item]:
    """A question about a mark gives none: "4?", "is 4 good?"."""
    start = before(found, at, {item.kind for item in found} - {"stop", "newline"})
    clause = found[0 if start is None else start + 1 : at]
    opening = next((item for item in clause if item.kind != "symbol"), found[at])
    asks = "question" in opening.roles or any("asks" in item.roles for item in clause[:_FIRST_WORDS])
    asks = asks and any(item.kind in ("mark", "position") for item in clause)
    return become(found, at, "bad") if asks or (at and found[at - 1].kind == "mark") else found


_SINGLE = tuple((position,) for position in Position)


def _limit(found: list[Item], at: int) -> list[Item]:
    """No mark is told by "more than 3"; "better than yesterday" and "better than left" are remarks."""
    compared = after(found, at, {"filler"})
    if is_kind(found, compared, "position") and compared is not None and any(item.kind == "mark" for item in found):
        return become(become(found, compared, "word"), at, "word")
    return become(found, at, "bad" if is_number(found, after(found, at)) else "word")


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
    if is_kind(found, group, "position") and group is not None and found[group].value not in (None, *_SINGLE):
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
    """The middle one is the center where the place in the middle of the night is named besides."""
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
    "limit": _limit,
    "same": _same,
    "almost": _almost,
    "not": _not,
    "hedge": _hedge,
    "or": _or,
    "times": _between_two,
    "to": _to,
    "half": _half,
    "other_day": _other_day,
    "ask": _ask,
}

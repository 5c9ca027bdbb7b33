"""Settle what a reply takes back or doubts, so that the rest is what it says: "3 not 4", "3, sorry, 4", "maybe 4"."""

from collections.abc import Callable, Collection, Iterable, Sequence
from itertools import takewhile

from coachbot.programme.positions import Position
from coachbot.reading.items import Item

QUIET = frozenset(("filler", "yes", "symbol", "pause", "both", "letter"))
_LOOSE = QUIET | {"comma", "and", "except", "fix"}
_STARTS = frozenset(("comma", "stop", "newline", "fix"))


def settle(found: Sequence[Item], places: int) -> list[Item]:
    """`found` without what is denied or put right; what stays in doubt becomes an item of kind ``bad``.

    `places` is the number of positions of the night: so many marks in a row are the whole night.
    """
    settled = list(found)
    for at, item in enumerate(found):
        if item.kind == "nothing":
            settled = _no(settled, at)
    settled = _keep_last_of_slip(_drop_old(settled), places)
    for kind, judge in _JUDGES.items():
        at = 0
        while at < len(settled):
            if settled[at].kind == kind:
                settled = judge(settled, at)
            at += 1
    return settled


def after(found: Sequence[Item], at: int, skip: Collection[str] = QUIET) -> int | None:
    """Where the next item after `at` is that says something."""
    return next((i for i in range(at + 1, len(found)) if found[i].kind not in skip), None)


def before(found: Sequence[Item], at: int, skip: Collection[str] = QUIET) -> int | None:
    """Where the last item before `at` is that says something."""
    return next((i for i in range(at - 1, -1, -1) if found[i].kind not in skip), None)


def _is(found: Sequence[Item], at: int | None, *kinds: str) -> bool:
    return at is not None and found[at].kind in kinds


def _is_number(found: Sequence[Item], at: int | None) -> bool:
    return _is(found, at, "mark") and at is not None and type(found[at].value) is int


def _become(found: Sequence[Item], at: int, kind: str) -> list[Item]:
    return [*found[:at], found[at]._replace(kind=kind), *found[at + 1 :]]


def _without(found: Sequence[Item], first: int, last: int) -> list[Item]:
    """`found` with the items from `first` to `last` said to be nothing."""
    quiet = [item._replace(kind="denied") for item in found[first : last + 1]]
    return [*found[:first], *quiet, *found[last + 1 :]]


def _drop_old(found: list[Item]) -> list[Item]:
    """The first mark after ``old`` goes when a correction brings another: "I put 4 but meant 3"."""
    old = next((at for at, item in enumerate(found) if item.kind == "old"), None)
    if old is None or not any(item.kind == "fix" for item in found):
        return found
    marks = [at for at in range(old, len(found)) if found[at].kind == "mark"]
    return _without(found, marks[0], marks[0]) if len(marks) > 1 else found


def _keep_last_of_slip(found: list[Item], places: int) -> list[Item]:
    """Of two marks, or two whole lists, with only a correction between, the later counts: "left 3 no wait 4"."""
    settled = found
    for at, item in enumerate(found):
        if item.kind != "fix":
            continue
        earlier, later = _row(found, range(at - 1, -1, -1)), _row(found, range(at + 1, len(found)))
        if not earlier or not later or (len(earlier) == places > len(later)):
            continue
        replaced = earlier if len(later) == places else earlier[:1]
        for place in replaced:
            settled = _without(settled, place, place)
        settled = _become(settled, at, "filler")
    return settled


_SLIP = QUIET | {"comma", "stop", "newline", "fix", "except"}


def _row(found: Sequence[Item], places: Iterable[int]) -> list[int]:
    """The marks that stand in a row from the first of `places` on."""
    row = takewhile(lambda at: found[at].kind == "mark" or found[at].kind in _SLIP, places)
    return [at for at in row if found[at].kind == "mark"]


def _not(found: list[Item], at: int) -> list[Item]:
    target = after(found, at, {"filler"})
    if target is None:
        return found
    kind = found[target].kind
    if _is_number(found, target):
        return _not_number(found, at, target)
    if kind == "position":
        others = any(item.kind == "position" for i, item in enumerate(found) if i != target)
        return _without(found, at, target) if others else _become(found, at, "negated")
    if kind in ("mark", "best", "liked", "same", "almost"):
        return _become(found, target, "word")
    return _become(found, at, "bad") if kind == "all" else found


def _not_number(found: list[Item], at: int, target: int) -> list[Item]:
    """A denied mark goes where another is told ("3 not 4", "not 4, 3"); alone it says nothing."""
    told = _is_number(found, before(found, at, _LOOSE)) or _is_number(found, after(found, target, _LOOSE))
    return _without(found, at, target) if told else _become(found, at, "bad")


def _almost(found: list[Item], at: int) -> list[Item]:
    target = after(found, at)
    if target is None or found[target].kind != "mark":
        return found
    return _become(found, target, "bad" if _is_number(found, target) else "word")


def _hedge(found: list[Item], at: int) -> list[Item]:
    """A doubted mark is none ("maybe 4", "4 maybe"), a doubted remark is one ("4, maybe she was tired")."""
    doubted = _is(found, after(found, at), "mark", "position") or (
        _is(found, before(found, at), "mark") and _is(found, after(found, at, QUIET), "stop", "newline")
    )
    last = after(found, at) is None and _is(found, before(found, at), "mark", "position")
    return _become(found, at, "bad" if doubted or last else "word")


def _between_two(found: list[Item], at: int) -> list[Item]:
    """Two things to choose from are none: "3 or 4", "left or right", "3 to 4"."""
    pair = [i for i in (before(found, at), after(found, at)) if i is not None]
    if _is(found, pair[0] if pair else None, "position") and _is(found, before(found, pair[0]), "mark"):
        return _become(found, at, "and" if not _is_number(found, before(found, pair[0])) else "bad")
    kinds = {found[i].kind for i in pair}
    opening = next((item for item in found if item.kind != "symbol"), found[at])
    if "question" in opening.roles and any(item.kind == "mark" for item in found[:at]):
        return _become(found, at, "bad")
    unsure = len(pair) == 2 and len(kinds) == 1 and kinds <= {"mark", "position", "bad"}  # noqa: PLR2004
    return _become(found, at, "bad" if unsure else "filler")


def _half(found: list[Item], at: int) -> list[Item]:
    return _become(found, at, "bad" if _is(found, before(found, at), "mark", "and") else "word")


def _other_day(found: list[Item], at: int) -> list[Item]:
    near = (before(found, at), after(found, at))
    return _become(found, at, "bad" if any(_is(found, i, "mark", "position") for i in near) else "word")


_FIRST_WORDS = 4
"""Among these a word such as "which" makes a question, also after "so" or "hi"."""


def _ask(found: list[Item], at: int) -> list[Item]:
    """A question about a mark gives none: "4?", "is 4 good?"."""
    start = before(found, at, {item.kind for item in found} - {"stop", "newline"})
    clause = found[0 if start is None else start + 1 : at]
    opening = next((item for item in clause if item.kind != "symbol"), found[at])
    asks = "question" in opening.roles or any("asks" in item.roles for item in clause[:_FIRST_WORDS])
    asks = asks and any(item.kind in ("mark", "position") for item in clause)
    return _become(found, at, "bad") if asks or (at and found[at - 1].kind == "mark") else found


_SINGLE = tuple((position,) for position in Position)


def _limit(found: list[Item], at: int) -> list[Item]:
    """No mark is told by "more than 3"; "better than yesterday" is a remark."""
    return _become(found, at, "bad" if _is_number(found, after(found, at)) else "word")


def _same(found: list[Item], at: int) -> list[Item]:
    """What is "the same" may be told right after: "left and right were the same, 4"."""
    return _become(found, at, "filler") if _is_number(found, after(found, at, QUIET | {"comma"})) else found


def _all(found: list[Item], at: int) -> list[Item]:
    """Mere words do not rate all ("all good"); after positions "all" sums them up ("the first two all 4")."""
    group = before(found, at, {"filler"})
    if _is(found, group, "position") and group is not None and found[group].value not in (None, *_SINGLE):
        return _become(found, at, "filler")
    if _is(found, after(found, at, QUIET | {"word", "quality"}), "mark"):
        return found
    if _is(found, after(found, at), "word") and not _is(found, before(found, at), "mark"):
        return _become(found, at, "filler")
    if _is(found, before(found, at), "word") and not _is(found, after(found, at), "mark"):
        return _become(found, at, "filler")
    praised = _is(found, after(found, at), "quality") and not _is(found, after(found, at, QUIET | {"quality"}), "mark")
    return _become(found, at, "filler") if praised else found


def _no(found: list[Item], at: int) -> list[Item]:
    """A "no" between two marks or positions puts the first right: "4, no 3", "left, no right", "up 3, no up 2"."""
    earlier, later = before(found, at, _LOOSE), after(found, at, _LOOSE)
    slip = _is_number(found, earlier) and (_is_number(found, later) or _is(found, later, "position"))
    both = _is(found, earlier, "position") and _is(found, later, "position")
    return _become(found, at, "fix") if slip or both else found


_JUDGES: dict[str, Callable[[list[Item], int], list[Item]]] = {
    "all": _all,
    "limit": _limit,
    "same": _same,
    "almost": _almost,
    "not": _not,
    "hedge": _hedge,
    "or": _between_two,
    "to": _between_two,
    "half": _half,
    "other_day": _other_day,
    "ask": _ask,
}

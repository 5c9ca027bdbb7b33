"""Numbers that are no marks: what counts something else, is less than nothing, or is out of something."""

from collections.abc import Sequence

from coachbot.reading.items import Item
from coachbot.reading.neighbours import after, before, is_kind

PASSED_OVER = frozenset(("filler", "quality", "symbol"))
_WRITTEN_OUT = frozenset(("numbers", "ones", "sounds", "foreign"))
_LINKS = frozenset(("filler", "position"))
_COUNTING = frozenset(("count_before", "count_after"))
_PAIR = 2


def is_negative(found: Sequence[Item], at: int) -> bool:
    """Whether a dash clings to a number that follows another: the last of ``4 3 -1``."""
    if not at or found[at - 1].value != "-" or found[at - 1].end != found[at].start:
        return False
    if at == 1:
        return len(found) == _PAIR
    return found[at - _PAIR].kind == "number" and found[at - _PAIR].end < found[at - 1].start


def is_of_something(found: Sequence[Item], at: int) -> bool:
    """Whether the number is what something not understood is out of ("x/5"), or counts it ("the odder two")."""
    over = at > 1 and found[at - 1].value == "/" and found[at - 1].end == found[at].start
    others = at > 1 and bool(found[at].roles & _WRITTEN_OUT) and "determiner" in found[at - 2].roles
    return (over or others) and is_kind(found, at - 1 - over, "word")


def counts_candies(found: Sequence[Item], at: int) -> bool:
    """Whether the number tells of how many candies another is the mark: "two were 4", "deux 4 et un 3"."""
    if at and found[at - 1].kind in ("number", "all"):
        return False
    following = found[at + 1 : at + 4]
    if following and "plural_verb" in following[0].roles:
        return any(item.kind in ("number", "plural", "one", "article") for item in following[1:])
    digits = bool(following) and following[0].kind == "number" and not following[0].roles & _WRITTEN_OUT
    return digits and bool(found[at].roles & _WRITTEN_OUT)


def carries_a_unit(found: Sequence[Item], at: int) -> bool:
    """Whether the number shares the unit of another: "3 minutes for the first and 5 for the last"."""
    join = next((i for i in range(at - 1, -1, -1) if found[i].kind == "and"), None)
    if join is None or any(item.kind not in _LINKS for item in found[join + 1 : at]):
        return False
    counted = next((i for i in range(join - 1, -1, -1) if found[i].kind not in _LINKS), None)
    return counted is not None and "count_after" in found[counted].roles and _has_a_place(found, at, counted, join)


def _has_a_place(found: Sequence[Item], at: int, counted: int, join: int) -> bool:
    """Whether both the counted thing and the number at `at` go with a position."""
    near = [item.kind for item in found[join + 1 : at + 4]]
    before = [item.kind for item in found[max(0, counted - 3) : join]]
    return "position" in near and "position" in before


def counts(found: Sequence[Item], at: int) -> bool:
    """Whether the number counts something else: "took 3", "3 tries", "she is 4", "3 big gulps"."""
    named = is_kind(found, at - 1, "position") and at + 2 < len(found) and is_kind(found, at + 2, "number")
    listed = at > 0 and (is_kind(found, at - 1, "number") or named)
    return _is_counted_before(found, at) or _is_counted_after(found[at + 1 : at + 3], listed=listed)


def _is_counted_before(found: Sequence[Item], at: int) -> bool:
    near = found[max(0, at - 2) : at]
    if all(_COUNTING.isdisjoint(item.roles) for item in near):
        return False
    following = [item.kind for item in found[at + 1 : at + 3] if item.kind != "comma"]
    if following[:1] == ["number"]:
        return False  # "we had 4 3 5 2 4"
    if near and "count_after" in near[-1].roles and near[-1].end == found[at].start:
        return True  # the minutes of "19h30"
    counts = next((i for i in range(at - 1, max(0, at - 2) - 1, -1) if "count_before" in found[i].roles), None)
    if counts is None or (counts < at - 1 and near[1].kind not in ("filler", "except")):
        return False
    beside = (before(found, counts), after(found, at))
    return not ("scores" in found[counts].roles and any(is_kind(found, place, "position") for place in beside))


def _is_counted_after(after: Sequence[Item], *, listed: bool) -> bool:
    """Whether a unit follows. An unknown word in the plural is one, but not after a list ("4 3 5 hugs"), nor in one."""
    if not after:
        return False
    unit = any("count_after" in item.roles for item in after[1:])
    if after[0].kind == "word" and "count_after" not in after[0].roles:
        return unit or (str(after[0].value).endswith("s") and not listed)
    return "count_after" in after[0].roles or (unit and after[0].kind in PASSED_OVER)


NO_MARKS = (is_negative, is_of_something, counts_candies, carries_a_unit)

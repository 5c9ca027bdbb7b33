"""What a reply denies, doubts, asks or only compares, settled item by item."""

from coachbot.reading.items import Item
from coachbot.reading.neighbours import QUIET, after, become, before, is_kind, is_number, without
from coachbot.reading.readings import Word

_LOOSE = QUIET | {"comma", "and", "except", "fix"}
_FIRST_WORDS = 4
"""Among these a word such as "which" makes a question, also after "so" or "hi"."""


def denied(found: list[Item], at: int) -> list[Item]:
    """What "not" takes back: a mark where another is told, a position, praise; "not all" stays in doubt."""
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


def almost(found: list[Item], at: int) -> list[Item]:
    """A mark that was almost told is in doubt; a thing that almost happened is a word."""
    target = after(found, at)
    if target is None or found[target].kind != "mark":
        return found
    return become(found, target, "bad" if is_number(found, target) else "word")


def hedged(found: list[Item], at: int) -> list[Item]:
    """A doubted mark is none ("maybe 4", "4 maybe"), a doubted remark is one ("4, maybe she was tired")."""
    doubted = is_kind(found, after(found, at), "mark", "position") or (
        is_kind(found, before(found, at), "mark") and is_kind(found, after(found, at), "stop", "newline", "comma")
    )
    last = after(found, at) is None and is_kind(found, before(found, at), "mark", "position")
    return become(found, at, "bad" if doubted or last else "word")


def either(found: list[Item], at: int) -> list[Item]:
    """Two things to choose from are none: "3 or 4", "left or right", "number 2 or 3", "between 3 and 4"."""
    earlier = before(found, at)
    place = earlier is not None and "places" in found[earlier].roles
    first = after(found, at)
    join = after(found, first) if is_number(found, first) and first is not None else None
    between = is_kind(found, join, "and") and join is not None and is_number(found, after(found, join))
    return become(found, at, "bad") if between or (place and is_number(found, first)) else between_two(found, at)


def changed(found: list[Item], at: int) -> list[Item]:
    """The first of two marks goes where a change is asked for ("change left from 2 to 3")."""
    earlier = before(found, at)
    if is_number(found, earlier) and is_number(found, after(found, at)) and earlier is not None:
        asked = [item.kind for item in found[:earlier] if item.kind in ("fix", "position")]
        if asked == ["fix", "position"]:
            return without(found, earlier, at)
    return between_two(found, at)


def between_two(found: list[Item], at: int) -> list[Item]:
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


def halved(found: list[Item], at: int) -> list[Item]:
    """A half after a mark makes the mark one that is in doubt ("3 and a half")."""
    return become(found, at, "bad" if is_kind(found, before(found, at), "mark", "and") else "word")


def of_another_day(found: list[Item], at: int) -> list[Item]:
    """A mark or position of another day is none of tonight's; what was left out then ("forgot yesterday") is a tale."""
    sides = (before(found, at), after(found, at))
    near = [i for i in sides if i is not None and is_kind(found, i, "mark", "position")]
    if [found[i].value for i in near] == [Word.SKIPPED]:
        return become(become(found, near[0], "word"), at, "word")
    return become(found, at, "bad" if near else "word")


def asked(found: list[Item], at: int) -> list[Item]:
    """A question about a mark gives none: "4?", "is 4 good?"."""
    start = before(found, at, {item.kind for item in found} - {"stop", "newline"})
    clause = found[0 if start is None else start + 1 : at]
    opening = next((item for item in clause if item.kind != "symbol"), found[at])
    asks = "question" in opening.roles or any("asks" in item.roles for item in clause[:_FIRST_WORDS])
    asks = asks and any(item.kind in ("mark", "position") for item in clause)
    return become(found, at, "bad") if asks or (at and found[at - 1].kind == "mark") else found


def limited(found: list[Item], at: int) -> list[Item]:
    """No mark is told by "more than 3"; "better than yesterday" and "better than left" are remarks."""
    compared = after(found, at, {"filler"})
    if is_kind(found, compared, "position") and compared is not None and any(item.kind == "mark" for item in found):
        return become(become(found, compared, "word"), at, "word")
    return become(found, at, "bad" if is_number(found, after(found, at)) else "word")

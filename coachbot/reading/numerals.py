"""Judge the numbers of a reply: marks, places, or something else (times, counts, ages)."""

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from coachbot.programme.positions import Position
from coachbot.reading.counting import NO_MARKS, PASSED_OVER, counts
from coachbot.reading.items import BEST, WORST, Item
from coachbot.reading.neighbours import QUIET, after, before, is_kind

_PARTS = re.compile(r"\d+")
_LABEL_ENDS = frozenset(".:-–=º°")
_MARKS = range(WORST, BEST + 1)
_PAIR = 2


def numerals(found: Sequence[Item], order: Sequence[Position]) -> list[Item]:
    """`found` with every number judged.

    It becomes a ``mark`` (1 to 5), a ``position`` (where it numbers a list), ``other`` (it counts something else) or
    ``bad`` (it is no mark, such as 0, 3.5 or 3-4).
    """
    labelled = _enumerated(_labelled(found, order), order)
    judged: list[Item] = []
    for at, item in enumerate(labelled):
        if item.kind in _JUDGED or not _JUDGED.isdisjoint(item.roles):
            judged.extend(_judged(labelled, at, len(order)))
        else:
            judged.append(item)
    return judged


_JUDGED = frozenset(("number", "plural", "both", "article", "one", "resembles", "arrow"))
"""Kinds and roles of what is judged by its neighbours."""


def _labelled(found: Sequence[Item], order: Sequence[Position]) -> list[Item]:
    """Numbers that only number the lines (``1)``, ``2.``) made into places, when they run from 1 to the last place."""
    labels = [at for at, item in enumerate(found) if item.kind == "number" and _is_label(found, at)]
    if len(labels) != len(order) or [found[at].value for at in labels] != [
        str(place) for place in range(1, len(order) + 1)
    ]:
        return list(found)
    if any(later - earlier <= _PAIR for earlier, later in pairwise(labels)):
        return list(found)
    return _with_places(found, dict(zip(labels, order, strict=True)))


def _is_label(found: Sequence[Item], at: int) -> bool:
    if at + 1 >= len(found):
        return False
    sign, starts = found[at + 1], not at or found[at - 1].kind in _LINE_STARTS
    return sign.value in (")", ":") or (starts and str(sign.value) in _LABEL_ENDS)


_LINE_STARTS = frozenset(("newline", "comma", "stop", "symbol"))


def _with_places(found: Sequence[Item], places: dict[int, Position]) -> list[Item]:
    """`found` with labels as places; a label right before a named position says nothing more and goes."""
    kept = []
    for at, item in enumerate(found):
        if at - 1 in places and item.kind == "stop":
            continue
        if at not in places:
            kept.append(item)
        elif not _names_a_position(found, at):
            kept.append(item._replace(kind="position", value=(places[at],)))
    return kept


def _names_a_position(found: Sequence[Item], at: int) -> bool:
    return any(item.kind == "position" for item in found[at + 1 : at + 3])


def _enumerated(found: Sequence[Item], order: Sequence[Position]) -> list[Item]:
    """Pairs such as ``1-4 2-3 3-5`` or ``1=4, 2=3``: place and mark, when the places run from 1 to the last."""
    written = (at for at, item in enumerate(found) if item.kind == "number" and len(str(item.value)) > _PAIR)
    pairs = [at for at in written if len(_digits(found[at])) == _PAIR]
    if len(pairs) != len(order) or [_digits(found[at])[0] for at in pairs] != list(range(1, len(order) + 1)):
        return list(found)
    kept = []
    for at, item in enumerate(found):
        if at in pairs:
            place, mark = _digits(item)
            kept.append(item._replace(kind="position", value=(order[place - 1],), end=item.start + 1))
            kept.append(item._replace(value=str(mark), start=item.end - 1))
        else:
            kept.append(item)
    return kept


def _digits(item: Item) -> list[int]:
    return [int(part[:4]) for part in _PARTS.findall(str(item.value))]


def _judged(found: Sequence[Item], at: int, places: int) -> Iterator[Item]:
    """What the item at `at` is, once its neighbours are known."""
    item = found[at]
    if item.kind == "number":
        yield from _number(found, at, places)
    elif "resembles" in item.roles and _is_between_positions(found, at):
        yield item._replace(kind="like")
    elif item.kind == "plural" and item.value == 1 and at and found[at - 1].kind in ("word", "filler"):
        yield item._replace(kind="word")  # "the green ones"
    elif item.kind == "plural":
        if not any(other.kind == "all" for other in found) and not _has_a_position(found, at):
            yield item._replace(kind="all", value=None, end=item.start)
        yield item._replace(kind="mark")
    elif item.kind == "both" and places == _PAIR and not (at and found[at - 1].kind == "position"):
        yield item._replace(kind="all", value=None)
    elif "arrow" in item.roles and any("arrow" in i.roles and _points_at_mark(found, a) for a, i in enumerate(found)):
        yield item._replace(kind="symbol")
    elif item.kind == "article":
        counts = _counts_as_one(found, at, places)
        yield item._replace(kind="mark", value=1) if counts else item._replace(kind="filler")
    elif item.kind == "one":
        yield _one(found, at)
    else:
        yield item


def _is_between_positions(found: Sequence[Item], at: int) -> bool:
    """Whether a comparison stands between two positions: "droite comme haut"."""
    return is_kind(found, before(found, at), "position") and is_kind(found, after(found, at), "position")


def _has_a_position(found: Sequence[Item], at: int) -> bool:
    """Whether a position stands right beside: "left and up got 4s", "4s for left"."""
    sides = (reversed(found[:at]), found[at + 1 :])
    nearest = [next((item.kind for item in side if item.kind not in PASSED_OVER), "") for side in sides]
    return "position" in nearest


def _points_at_mark(found: Sequence[Item], at: int) -> bool:
    """Whether an arrow to the right leads from a position to its mark: "left → 4"."""
    around = [item.kind for item in (*found[max(0, at - 1) : at], *found[at + 1 : at + 2])]
    return around == ["position", "number"]


def _counts_as_one(found: Sequence[Item], at: int, places: int) -> bool:
    """Whether an article is the number: "gauche un", "un deux trois", "un à gauche, deux à droite"; not in "un 2"."""
    following = found[at + 1].kind if at + 1 < len(found) else ""
    if following == "position":
        told = [item.kind == "position" for item in found if item.kind in ("article", "number", "position")]
        return len(told) > _PAIR and told in ([False, True] * (len(told) // 2), [True, False] * (len(told) // 2))
    if following == "number" and not (at and found[at - 1].kind in ("number", "comma")):
        return len(found) == places > _PAIR and all(item.roles & _SPOKEN for item in found)
    return True


_SPOKEN = frozenset(("articles", "numbers", "ones", "sounds"))
_BEFORE_ONE = frozenset(("position", "best", "liked", "worst", "quality"))


def _one(found: Sequence[Item], at: int) -> Item:
    """``one`` after a position ("the left one") or among other words stands for a candy."""
    candy = (at and found[at - 1].kind in _BEFORE_ONE) or any(item.kind == "word" for item in found)
    return found[at]._replace(kind="filler") if candy else found[at]._replace(kind="mark", value=1)


def _number(found: Sequence[Item], at: int, places: int) -> Iterator[Item]:
    item, parts = found[at], _digits(found[at])
    if parts == [places] and _counts_the_night(found, at):
        yield item._replace(kind="all", value=None)
    elif counts(found, at):
        yield item._replace(kind="other")
    elif any(is_no_mark(found, at) for is_no_mark in NO_MARKS):
        yield item._replace(kind="bad")
    elif at and _is_all(found[at - 1]) and parts == [places] and (places != BEST or _is_written_count(found, at)):
        yield item._replace(kind=_all_of_them(found, at), value=places)
    elif len(parts) > 1:
        yield from _chained(item, parts, places)
    elif parts[0] in _MARKS and len(str(item.value)) == 1:
        yield item._replace(kind="mark", value=parts[0])
    else:
        yield from _run_together(item, places)


def _counts_the_night(found: Sequence[Item], at: int) -> bool:
    """Whether a number of as many as the night has places opens a reply of one mark: "las tres 5"."""
    leading = [item for item in found[:at] if item.kind not in QUIET]
    marked = [item.kind for item in found[at + 1 :] if item.kind not in (*QUIET, "to", "stop")]
    return not leading and at > 0 and "whole" in found[at - 1].roles and marked == ["number"]


def _is_all(item: Item) -> bool:
    return item.kind == "all" and "rest" not in item.roles


def _is_written_count(found: Sequence[Item], at: int) -> bool:
    """Whether "five" is written out and the one mark of all five follows: "all five 4"."""
    numbers = [i for i, item in enumerate(found) if item.kind == "number"]
    return numbers[0] == at and len(numbers) == _PAIR and "numbers" in found[at].roles


def _all_of_them(found: Sequence[Item], at: int) -> str:
    """What "all 3" is on a night of three: a count ("all three 4"), one mark among others, or not clear."""
    others = [i for i, item in enumerate(found) if item.kind == "number" and i != at]
    marked = next((i for i in others if i > at), at)
    if marked > at and all(item.kind == "filler" for item in found[at + 1 : marked]):
        return "filler"
    return "mark" if others else "bad"


def _run_together(item: Item, places: int) -> Iterator[Item]:
    """``43524``, one digit for each place of the night (three at least: ``43`` may be a slip)."""
    digits = [int(digit) for digit in str(item.value) if digit.isdecimal()]
    if len(digits) == places > _PAIR and all(digit in _MARKS for digit in digits):
        yield from (item._replace(kind="mark", value=digit) for digit in digits)
    else:
        yield item._replace(kind="bad")


_MOST_OF_A_SCALE = 10
_SAME_AS_WHOLE = (([BEST], "/"), ([0], "."), ([0], ","))
"""What may follow a mark without changing it: ``4/5``, ``4.0``, ``4,0``."""


def _chained(item: Item, parts: Sequence[int], places: int) -> Iterator[Item]:
    """``4-3-5-2-4`` is a list, ``4/5`` a mark, ``19:30`` a time, ``11/25`` a date; ``3.5`` and ``3-4`` are no mark."""
    signs = {sign for sign in str(item.value) if not sign.isdecimal()}
    marks = [item._replace(kind="mark", value=part) for part in parts if part in _MARKS]
    if len(signs) == 1 and len(marks) == len(parts) == places and (places > _PAIR or signs == {","}):
        yield from marks
    elif parts[0] in _MARKS and (parts[1:], *signs) in _SAME_AS_WHOLE:
        yield item._replace(kind="mark", value=parts[0])
    elif signs == {":"} or (signs == {"/"} and max(parts) > _MOST_OF_A_SCALE):
        yield item._replace(kind="other")
    else:
        yield item._replace(kind="bad")

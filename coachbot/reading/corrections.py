"""Corrections in a reply: of two marks, lists or positions with a correction between, the later one counts."""

from collections.abc import Iterable, Sequence
from itertools import takewhile

from coachbot.reading.items import Item
from coachbot.reading.neighbours import SLIP, after, become, before, is_kind, without


def corrected(found: list[Item], places: int) -> list[Item]:
    """`found` without what a correction replaces.

    `places` is the number of positions of the night: so many marks in a row are the whole night.
    """
    return _keep_last_position(_keep_last_of_slip(_drop_old(found), places))


def _drop_old(found: list[Item]) -> list[Item]:
    """A mark that was put before goes when another is told: "I put 4 but meant 3", "skipped, put 4 by mistake"."""
    marks = [at for at, item in enumerate(found) if item.kind == "mark"]
    if len(marks) < 2 or not any(item.kind == "fix" for item in found):  # noqa: PLR2004
        return found
    old = next((at for at, item in enumerate(found) if item.kind == "old"), len(found))
    mistaken = next((before(found, at) for at, item in enumerate(found) if "mistaken" in item.roles), None)
    typed = next((at for at in marks if at > old), mistaken)
    return without(found, typed, typed) if typed in marks and typed is not None else found


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
            settled = without(settled, place, place)
        settled = become(settled, at, "filler")
    return settled


def _keep_last_position(found: list[Item]) -> list[Item]:
    """Of two positions with only a correction between, the later counts: "best left, no wait, right"."""
    settled = found
    for at, item in enumerate(found):
        earlier, later = (before(found, at, SLIP), after(found, at, SLIP)) if item.kind == "fix" else (None, None)
        if not (is_kind(found, earlier, "position") and is_kind(found, later, "position")):
            continue
        assert earlier is not None
        assert later is not None
        own = is_kind(found, before(found, earlier), "mark", "best")
        if not (own and is_kind(found, after(found, later), "mark")):
            settled = without(settled, earlier, later - 1)
    return settled


def _row(found: Sequence[Item], places: Iterable[int]) -> list[int]:
    """The marks that stand in a row from the first of `places` on."""
    row = takewhile(lambda at: found[at].kind == "mark" or found[at].kind in SLIP, places)
    return [at for at in row if found[at].kind == "mark"]

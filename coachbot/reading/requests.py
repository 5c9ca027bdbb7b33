"""What a person wants of the programme: pause, stop, another bedtime, ...; only when that is the whole reply."""

import datetime as dt
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from coachbot.reading.clock import Clock, clock
from coachbot.reading.lexicon import Found, lexicon


class Wish(StrEnum):
    """What may be wanted. Where one reply holds several, the earlier in this list counts."""

    DELETE = "delete"
    WRONG_NUMBER = "wrong_number"
    STOP = "stop"
    PAUSE = "pause"
    RESUME = "resume"
    START = "start"
    BEDTIME = "bedtime"
    LESSON = "lesson"
    NOT_TONIGHT = "not_tonight"
    HELP = "help"
    READY = "ready"
    NO = "no"
    YES = "yes"


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """A wish; `at` is the local bedtime wanted, `days` the length of a pause, where they were said."""

    wish: Wish
    at: dt.time | None = None
    days: int | None = None


_RANK = {wish: rank for rank, wish in enumerate(Wish)}
_LONGEST = 200
"""Characters beyond which no reply is a mere request."""
_SILENT = frozenset(("symbol", "newline", "pause"))


def request(text: str, *, lang: str) -> Request | None:
    """The wish that the whole of `text` says, or None where it says anything else as well.

    One wish may bring its reason, in any words but numbers and other wishes: "not tonight, he fell asleep".

    Args:
        text: a reply, already triaged.
        lang: ``en``, ``es`` or ``fr``.

    Raises:
        LexiconError: there are no words for `lang`, or its file is mis-formed.
    """
    written = unicodedata.normalize("NFC", text)
    found = _scan(written, lang)
    if _is_excuse(found, next((at for at, sign in enumerate(written) if sign in _PARTS), len(written))):
        return Request(wish=Wish.NOT_TONIGHT)
    entries = [item for item in found if item.section not in _SILENT]
    if not entries:
        return None
    time = clock(entries)
    days, rest = _days(time.rest)
    wishes = {Wish(entry.name) for entry in rest if entry.section == "wishes"}
    if time.at is not None:
        wishes = _timed(wishes, time)
    if not wishes or any(entry.section not in ("wishes", "fillers") for entry in rest):
        return None
    return _request(min(wishes, key=_RANK.__getitem__), time.at, days)


def _is_excuse(found: Sequence[Found], cut: int) -> bool:
    """Whether "not tonight" is all that stands before `cut`, the first comma or stop, and only a reason after it."""
    said = [item for item in found if item.start < cut and item.section not in _SILENT]
    reason = [item for item in found if item.start >= cut]
    wishes = {item.name for item in said if item.section == "wishes"}
    return (
        wishes == {Wish.NOT_TONIGHT}
        and all(item.section in ("wishes", "fillers") for item in said)
        and not any(item.section in ("number", "numbers") for item in reason)
        and not any(_RANK[Wish(item.name)] < _RANK[Wish.NOT_TONIGHT] for item in reason if item.section == "wishes")
    )


_PARTS = frozenset(",.;:!-–—")


def _request(wish: Wish, at: dt.time | None, days: int | None) -> Request | None:
    if (wish is Wish.BEDTIME) != (at is not None) or (days is not None and wish is not Wish.PAUSE):
        return None
    return Request(wish=wish, at=at, days=days)


def _timed(wishes: set[Wish], time: Clock) -> set[Wish]:
    """A time makes a bedtime of a bare reply that cannot be anything else, and of a plain yes or no before it."""
    plain = wishes <= {Wish.YES, Wish.NO, Wish.READY}
    return wishes | {Wish.BEDTIME} if plain and time.explicit else wishes


def _days(entries: Sequence[Found]) -> tuple[int | None, list[Found]]:
    """A length such as ``3 days`` or ``two weeks`` in days, and the entries without it."""
    for index, (number, unit) in enumerate(pairwise(entries)):
        if number.section in ("numbers", "number") and number.name.isdecimal() and unit.section == "lengths":
            return int(number.name) * int(unit.name), [*entries[:index], *entries[index + 2 :]]
    for index, unit in enumerate(entries):
        if unit.section == "lengths":
            return int(unit.name), [*entries[:index], *entries[index + 1 :]]
    return None, list(entries)


def _scan(text: str, lang: str) -> list[Found]:
    """What each word or phrase says; an unknown word stays, so that nothing is missed."""
    if len(text) > _LONGEST:
        return []
    return lexicon("requests", lang, ("wishes",)).scan(text)

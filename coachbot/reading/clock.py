"""A time of day out of the words of a request."""

import datetime as dt
from collections.abc import Sequence
from typing import NamedTuple

from coachbot.reading.lexicon import Found

NOON = 12
_PARTS = frozenset(("numbers", "number", "clock"))


class Clock(NamedTuple):
    """A time that was said (or None), whether it can be nothing but a time, and the entries that are left."""

    at: dt.time | None
    explicit: bool
    rest: Sequence[Found]


def clock(entries: Sequence[Found]) -> Clock:
    """Read ``7:30``, ``half past seven``, ``19 h 30``, ``8 y media``, ``8 pm``.

    An hour from 1 to 11 without more means the evening; the morning must be said. More than one time, or one that no
    clock shows, is none.
    """
    places = [i for i, entry in enumerate(entries) if entry.section in _PARTS]
    if not places or any(e.section == "lengths" for e in entries):
        return Clock(None, explicit=False, rest=entries)
    span = entries[places[0] : places[-1] + 1]
    parts = [entry for entry in span if entry.section in _PARTS]
    at = _time(parts)
    if at is None:
        return Clock(None, explicit=False, rest=entries)
    explicit = any(entry.section == "clock" or ":" in entry.name for entry in parts)
    rest = [entry for entry in entries if entry.section not in _PARTS]
    return Clock(at, explicit, rest)


def _time(parts: Sequence[Found]) -> dt.time | None:
    words = {entry.name for entry in parts if entry.section == "clock"}
    numbers = [int(n) for entry in parts if entry.section != "clock" for n in _digits(entry.name)]
    hour, minute = _hour_and_minute(numbers, words)
    if hour is None or not (0 <= hour < 24 and 0 <= minute < 60):  # noqa: PLR2004  # a clock's own numbers
        return None
    return dt.time(_evening(hour, words), minute)


def _digits(number: str) -> list[str]:
    parts = number.replace(".", ":").split(":")
    return parts if all(part.isdigit() for part in parts) else ["99"]


def _hour_and_minute(numbers: Sequence[int], words: set[str]) -> tuple[int | None, int]:
    if not numbers and "noon" in words:
        return NOON, 0
    if not 1 <= len(numbers) <= 2:  # noqa: PLR2004  # an hour, and perhaps minutes
        return None, 0
    hour, minute = numbers[0], numbers[1] if len(numbers) > 1 else 0
    if "quarter_to" in words:
        return hour - 1, 45
    if {"half", "quarter"} & words:
        return hour, 30 if "half" in words else 15
    return hour, minute


def _evening(hour: int, words: set[str]) -> int:
    if "am" in words:
        return hour % NOON if hour == NOON else hour
    return hour + NOON if 1 <= hour < NOON else hour

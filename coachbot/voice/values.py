"""How each kind of value reads in words: positions, orders, marks, times and dates."""

from collections.abc import Callable
from datetime import date, time
from enum import StrEnum
from functools import lru_cache
from typing import Any

from coachbot.coach.actions import Value
from coachbot.programme.positions import Position

NOON = 12

REMEMBERED = 4096
"""How many orders, times and dates are kept in words: families share them."""


class Words:
    """Values in the words of one language and form. `say` fills in one of voice's own words."""

    def __init__(self, say: Callable[[str, dict[str, object]], str], *, joiner: str) -> None:
        self._say = say
        self._joiner = joiner
        self._remembered = lru_cache(REMEMBERED)(self._in_words)

    def show(self, value: Value) -> str:
        """The value as people read it."""
        if isinstance(value, int):
            return str(value)
        if isinstance(value, str) and not isinstance(value, Position):
            return str(value) or self._say("none", {})
        return self._remembered(value)

    def _in_words(self, value: Position | time | date | tuple[object, ...]) -> str:
        if isinstance(value, Position):
            return self._say("position", {"position-key": str(value)})
        if isinstance(value, tuple):
            return self._joiner.join(map(self._item, range(1, len(value) + 1), value))
        if isinstance(value, time):
            return self._clock(value)
        return self._say("day", {"weekday": value.isoweekday(), "month": value.month, "day": value.day})

    def _item(self, number: int, item: Any) -> str:
        if isinstance(item, tuple):
            position, mark = item
            shown = str(mark) if isinstance(mark, StrEnum) else mark
            word = self._say("mark", {"mark": shown})
            return self._say("mark-item", {"position": self.show(position), "mark": word})
        return self._say("order-item", {"number": str(number), "position": self.show(item)})

    def _clock(self, at: time) -> str:
        return self._say(
            "clock",
            {
                "hour": str(at.hour),
                "hour12": str(at.hour % NOON or NOON),
                "minute": f"{at.minute:02}",
                "half": "am" if at.hour < NOON else "pm",
                "sharp": "past" if at.minute else "sharp",
            },
        )

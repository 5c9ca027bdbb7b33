"""How each kind of value reads in words: positions, orders, marks, times and dates."""

from collections.abc import Callable
from datetime import date, time
from enum import StrEnum
from functools import lru_cache

from coachbot.coach.actions import Value
from coachbot.programme.positions import Position

NOON = 12


class Words:
    """Values in the words of one language and form. `say` fills in one of voice's own words."""

    def __init__(self, say: Callable[[str, dict[str, object]], str], *, joiner: str) -> None:
        self._say = say
        self._joiner = joiner
        self._position = lru_cache(None)(self._position_name)

    def show(self, value: Value) -> object:
        """The value as Fluent should have it."""
        if isinstance(value, Position):
            return self._position(value)
        if isinstance(value, str):
            return str(value) or self._say("none", {})
        if isinstance(value, tuple):
            return self._joiner.join(map(self._item, range(1, len(value) + 1), value))
        if isinstance(value, time):
            return self._clock(value)
        if isinstance(value, date):
            return self._say("day", {"weekday": value.isoweekday(), "month": value.month, "day": value.day})
        return value

    def _position_name(self, position: Position) -> str:
        return self._say("position", {"position-key": str(position)})

    def _item(self, number: int, item: object) -> str:
        if isinstance(item, tuple):
            position, mark = item
            shown = str(mark) if isinstance(mark, StrEnum) else mark
            word = self._say("mark", {"mark": shown})
            return self._say("mark-item", {"position": self._position(position), "mark": word})
        return self._say("order-item", {"number": number, "position": self._position(item)})

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

"""The favourite as an engine that can be called alone: JSON Lines in, estimates out."""

from collections.abc import Iterable, Iterator
from typing import Any

from coachbot import jsonlines
from coachbot.insight.favourite import estimate
from coachbot.insight.swallows import Swallow
from coachbot.jsonlines import Record
from coachbot.programme.positions import Position


def run(lines: Iterable[str]) -> Iterator[str]:
    """``{"id","positions","swallows"}`` a line in, ``{"id","favourite","probability","clear","more_nights"}`` out.

    A swallow is ``{"night","place","position","rating":1..5|null,"went_down":bool}``.
    """
    return jsonlines.run(lines, _answer)


def _answer(record: Record) -> Record:
    positions = [_position(name) for name in _list(record, "positions")]
    found = estimate(positions, [_swallow(swallow) for swallow in _list(record, "swallows")])
    return {
        "favourite": found.favourite,
        "probability": dict(found.probability),
        "clear": found.clear,
        "more_nights": found.more_nights,
    }


def _swallow(record: Any) -> Swallow:
    if not isinstance(record, dict):
        raise TypeError(f"a swallow must be an object with the fields by name, not {record!r}")
    went_down = record["went_down"]
    if not isinstance(went_down, bool):
        raise TypeError(f"'went_down' must be true or false, not {went_down!r}")
    rating = record["rating"]
    return Swallow(
        night=_whole(record["night"], "night"),
        place=_whole(record["place"], "place"),
        position=_position(record["position"]),
        rating=None if rating is None else _whole(rating, "rating"),
        went_down=went_down,
    )


def _list(record: Record, name: str) -> list[Any]:
    value = record[name]
    if not isinstance(value, list):
        raise TypeError(f"the field {name!r} must be a list, not {value!r}")
    return value


def _whole(value: Any, name: str) -> int:
    if not isinstance(value, int) or isinstance(value, bool):
        raise TypeError(f"{name!r} must be a whole number, not {value!r}")
    return value


def _position(name: Any) -> Position:
    try:
        return Position(name)
    except ValueError:
        raise ValueError(f"{name!r} is not a position: choose from {', '.join(Position)}") from None

"""Read a reply for ratings, the best position and a note."""

import re
from collections.abc import Sequence
from typing import Literal

from coachbot.programme.positions import Position
from coachbot.reading.readings import Reading

Asking = Literal["all", "best", "note"] | Position
"""What the coach asked last: all ratings of the night, the best, a note, or the rating of one position."""


def read(text: str, *, lang: str, order: Sequence[Position], asking: Asking) -> Reading:
    """What `text` says. First cut: digits in the order of the night."""
    digits = [int(digit) for digit in re.findall(r"\d", text)]
    if asking == "note":
        return Reading(note=text.strip() or None)
    wanted = list(order) if asking == "all" else [asking]
    if len(digits) != len(wanted) or not all(1 <= digit <= 5 for digit in digits):
        return Reading(unclear=True)
    return Reading(ratings={Position(position): digit for position, digit in zip(wanted, digits, strict=True)})

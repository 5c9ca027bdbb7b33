"""The swallows of one child, as the estimates of this room take them."""

from collections.abc import Sequence
from dataclasses import dataclass

from coachbot.programme.positions import Position

WORST, BEST = 1, 5
"""The ends of the scale of ratings."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Swallow:
    """One candy in one position.

    `night` counts evenings from 1, missed ones too; `place` is its place in the night's order, from 1; `rating` is
    1 to 5 (5 = easiest, best liked) or None if none was given; `went_down` is whether it was swallowed.
    """

    night: int
    place: int
    position: Position
    rating: int | None
    went_down: bool

    def __post_init__(self) -> None:
        if self.night < 1 or self.place < 1:
            raise ValueError(f"night {self.night}, place {self.place}: count nights and places from 1")
        if self.rating is not None and not WORST <= self.rating <= BEST:
            raise ValueError(f"a rating of {self.rating} is outside {WORST} to {BEST}: give {WORST} to {BEST} or null")


def in_order(swallows: Sequence[Swallow]) -> list[Swallow]:
    """The swallows as they were made: by night, then by place."""
    return sorted(swallows, key=lambda swallow: (swallow.night, swallow.place))

"""The swallows of one child, as the estimates of this room take them."""

from dataclasses import dataclass

from coachbot.programme.positions import Position


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
            raise ValueError(f"night {self.night}, place {self.place}: nights and places are counted from 1")
        if self.rating is not None and not 1 <= self.rating <= 5:  # noqa: PLR2004 - the scale
            raise ValueError(f"a rating of {self.rating} is outside 1 to 5")

"""What reading can say of a reply: ratings, the best, a note, or that it is not clear."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from coachbot.programme.positions import Position


class Word(StrEnum):
    """What a swallow can get instead of a number."""

    NOT_DOWN = "not_down"
    SKIPPED = "skipped"


Mark = int | Word
"""A rating 1 to 5, or that the candy did not go down, or that the position was skipped."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """What one reply says. An unclear reading holds nothing else: it records nothing."""

    ratings: Mapping[Position, Mark] = field(default_factory=lambda: MappingProxyType({}))
    best: Position | None = None
    note: str | None = None
    unclear: bool = False

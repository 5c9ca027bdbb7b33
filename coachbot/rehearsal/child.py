"""An invented child: what each position feels like, night by night."""

import random
from collections.abc import Mapping
from dataclasses import dataclass, field

from coachbot.coach.case import Night
from coachbot.programme.positions import Position
from coachbot.reading import Word

NOISE = 0.6
"""How far from its liking a swallow may feel, in ratings (standard deviation)."""

LEARNING, GROWING = 0.05, 0.15
"""By how much of a rating every position, and the one that grows on the child, gets easier each night."""


@dataclass
class InventedChild:
    """Feels the same in every play. `likes` are the ratings of the first night; one position `grows` on the child."""

    likes: Mapping[Position, float]
    grows: Position
    chance: random.Random = field(default_factory=lambda: random.Random(14))  # noqa: S311 - the same every time

    def mark(self, position: Position, night: int) -> str:
        """A rating 1 to 5 on that night, or ``not_down``, as a button's data has it."""
        easier = GROWING if position is self.grows else LEARNING
        felt = round(self.likes[position] + easier * night + self.chance.gauss(0, NOISE))
        return Word.NOT_DOWN if felt < 1 else str(min(felt, 5))


def best(night: Night) -> Position | None:
    """The position that a child would name: the best mark, the earlier of two; None if nothing went down."""
    down = [(swallow.mark, swallow.position) for swallow in night.swallows if isinstance(swallow.mark, int)]
    return max(down, key=lambda one: one[0])[1] if down else None

"""What triage can say of a reply: how bad, of what kind, by which words."""

from dataclasses import dataclass
from enum import IntEnum


class Level(IntEnum):
    """How troubling a reply is; a greater value is worse, so that the worst thing in a reply is `max`."""

    NONE = 0
    MEDICINE = 1
    CONCERN = 2
    URGENT = 3
    EMERGENCY = 4

    @property
    def word(self) -> str:
        """The name that people and files see, for example ``urgent``."""
        return self.name.lower()


@dataclass(frozen=True, slots=True, kw_only=True)
class Assessment:
    """The verdict on one reply.

    `category` is a stable word from the rules (``choking``, ``forced``, ...), empty at level NONE; `evidence` holds the
    words of the reply that decided, as they were written; `rule` is the id of the rule that decided, or ``model:`` and
    the level where the second reader did.
    """

    level: Level
    category: str = ""
    evidence: tuple[str, ...] = ()
    rule: str = ""

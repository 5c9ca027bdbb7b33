"""What a clinic sets for all its families, and the limits that no setting may cross."""

from dataclasses import dataclass, field
from datetime import time, timedelta
from enum import StrEnum

from coachbot.programme.positions import Position

MOST_NIGHTS = 60
"""The longest calendar that a protocol may allow, in evenings."""

MINIMUM_AGE = 4
"""Whole years. Under it hard candy is not given: AAP, Prevention of Choking Among Children, Pediatrics 2010;125:601."""


class CandyKind(StrEnum):
    """Which words describe the candy; the brand is never told."""

    MINT = "mint"
    HARD = "hard"


class Who(StrEnum):
    """Whom one step of the ladder of alerts reaches."""

    ON_CALL = "on_call"
    BACKUP = "backup"
    ALL = "all"


@dataclass(frozen=True, slots=True, kw_only=True)
class Candy:
    """A practice candy: its kind and its largest dimension in millimetres."""

    kind: CandyKind
    size_mm: int

    def __post_init__(self) -> None:
        if not 2 <= self.size_mm <= 22:  # noqa: PLR2004 - 22 mm is the FDA 2015 limit for the largest dimension of a tablet
            raise ValueError(f"a candy of {self.size_mm} mm is outside 2 to 22 mm: measure its longest side again")


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of a ladder of alerts: this long after the alert was raised, tell these people."""

    after: timedelta
    who: Who


def _ladder(*steps: tuple[int, Who]) -> tuple[Step, ...]:
    return tuple(Step(after=timedelta(minutes=minutes), who=who) for minutes, who in steps)


@dataclass(frozen=True, slots=True, kw_only=True)
class Protocol:
    """A clinic's protocol.

    `nights` practised nights are the aim and `max_nights` evenings the limit; `candies` holds one candy a night, the
    last serving for all nights after it. A prompt goes out at bedtime within `earliest` to `latest` (local wall
    clock) and not more than `late_limit` late; `reminder_after` and `close_after` count from the prompt.
    `missed_limit` missed nights in a row raise an alert. `ladder` serves emergency and urgent alerts, `calm_ladder`
    the others; after its last step a ladder goes on with that step every `repeat_every`. For `watch_days` days after
    a choke the family is asked how the child is.
    """

    nights: int = 14
    max_nights: int = 21
    positions: tuple[Position, ...] = tuple(Position)
    candies: tuple[Candy, ...] = (Candy(kind=CandyKind.MINT, size_mm=8),)
    earliest: time = time(16, 0)
    latest: time = time(21, 30)
    late_limit: timedelta = timedelta(minutes=90)
    reminder_after: timedelta = timedelta(minutes=45)
    close_after: timedelta = timedelta(hours=3)
    missed_limit: int = 3
    ladder: tuple[Step, ...] = field(
        default=_ladder((0, Who.ON_CALL), (5, Who.ON_CALL), (15, Who.BACKUP), (30, Who.ALL))
    )
    calm_ladder: tuple[Step, ...] = field(
        default=_ladder((0, Who.ON_CALL), (24 * 60, Who.ON_CALL), (48 * 60, Who.BACKUP))
    )
    repeat_every: timedelta = timedelta(hours=1)
    calm_repeat_every: timedelta = timedelta(hours=24)
    watch_days: int = 3
    emergency_number: str = "112"

    def __post_init__(self) -> None:
        for fault in self._faults():
            raise ValueError(fault)

    def candy(self, turn: int) -> Candy:
        """The candy of practised night `turn`, counted from 1."""
        return self.candies[min(turn, len(self.candies)) - 1]

    def _faults(self) -> list[str]:
        checks = {
            "nights must be 1 or more and max_nights at least nights": 1 <= self.nights <= self.max_nights,
            f"max_nights must be at most {MOST_NIGHTS}": self.max_nights <= MOST_NIGHTS,
            "positions must be two to five different ones": 2 <= len(set(self.positions)) == len(self.positions),  # noqa: PLR2004
            "name at least one candy": bool(self.candies),
            "earliest must be before latest": self.earliest < self.latest,
            "reminder_after must be shorter than close_after": timedelta(0) < self.reminder_after < self.close_after,
            "close_after must be at most 8 hours": self.close_after <= timedelta(hours=8),
            "missed_limit must be 1 or more": self.missed_limit >= 1,
            "each ladder needs at least one step, in order of time": all(map(_climbs, (self.ladder, self.calm_ladder))),
            "name the local emergency number": bool(self.emergency_number.strip()),
        }
        return [fault for fault, holds in checks.items() if not holds]


def _climbs(ladder: tuple[Step, ...]) -> bool:
    return bool(ladder) and list(ladder) == sorted(ladder, key=lambda step: step.after)

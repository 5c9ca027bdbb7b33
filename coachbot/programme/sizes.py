"""How big the real tablet or capsule is beside the practice candy. For the clinician only: no family is told of it.

Limits: FDA guidance "Size, Shape, and Other Physical Attributes of Generic Tablets and Capsules" (June 2015, revised
October 2022). They are limits for generic products, not sizes that are safe for a child.
"""

import math
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

LARGEST_MM = 22.0
"""FDA 2015: the largest dimension of a tablet or capsule should not exceed this."""

NO_LARGER_FROM_MM = 17.0
"""FDA 2015: a generic of a product of this size or more should be no larger; under it, up to 20 % larger a side."""

LARGEST_CAPSULE = "00"
"""FDA 2015: capsules should not be larger than this size."""


class Caution(StrEnum):
    """Which of the guidance's limits a tablet or capsule is over."""

    OVER_LARGEST = "over_largest"
    NO_LARGER = "no_larger"
    OVER_LARGEST_CAPSULE = "over_largest_capsule"


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """Length (the longest side) and width in millimetres."""

    length_mm: float
    width_mm: float

    def __post_init__(self) -> None:
        if not 0 < self.width_mm <= self.length_mm or not math.isfinite(self.length_mm):
            raise ValueError(
                f"{self.length_mm} by {self.width_mm} mm: give the longest side as the length, and a width over 0"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Capsule:
    """A two-piece hard capsule, closed."""

    name: str
    volume_ml: float
    size: Size


CAPSULES = {
    name: Capsule(name=name, volume_ml=volume, size=Size(length_mm=length, width_mm=width))
    for name, volume, length, width in (
        ("5", 0.10, 11.4, 4.91),
        ("4", 0.21, 14.4, 5.33),
        ("3", 0.30, 15.8, 5.85),
        ("2", 0.37, 17.8, 6.37),
        ("1", 0.50, 19.3, 6.93),
        ("0", 0.68, 21.4, 7.66),
        ("0el", 0.78, 23.2, 7.66),
        ("00", 0.95, 23.5, 8.55),
        ("00el", 1.02, 25.5, 8.55),
        ("000", 1.37, 25.9, 9.96),
    )
}
"""Volume, locked length and outer diameter, smallest first. Study notes that quote a manufacturer: makers differ by
tenths of a millimetre, and for size 5 by 0.03 ml."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """The real tablet or capsule that a clinician has in view for a child, and the sizes set on the way to it.

    `capsule` names the two-piece capsule whose published size it has; None for what was measured. `steps` rise in
    length up to the target's. Width may fall: most capsules are longer than a round candy, and narrower.
    """

    size: Size
    capsule: str | None = None
    steps: tuple[Size, ...] = ()

    def __post_init__(self) -> None:
        for smaller, larger in pairwise((*self.steps, self.size)):
            if smaller.length_mm > larger.length_mm:
                raise ValueError(
                    f"from {smaller.length_mm} mm to {larger.length_mm} mm it gets shorter: put the sizes in rising "
                    f"order of length, none longer than the target"
                )

    def growth(self, candy_mm: float) -> tuple[float, ...]:
        """By which factor the length grows from the candy (its longest side) over each step, the last to the target."""
        lengths = (candy_mm, *(step.length_mm for step in self.steps), self.size.length_mm)
        return tuple(larger / smaller for smaller, larger in pairwise(lengths))

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """The limits of the guidance that it is over."""
        return capsule_cautions(self.capsule) if self.capsule else tablet_cautions(self.size)


def tablet_cautions(size: Size) -> tuple[Caution, ...]:
    """The limits that a tablet of this size is over, or must not grow from."""
    found = {
        Caution.OVER_LARGEST: size.length_mm > LARGEST_MM,
        Caution.NO_LARGER: size.length_mm >= NO_LARGER_FROM_MM,
    }
    return tuple(caution for caution, holds in found.items() if holds)


def capsule_cautions(name: str) -> tuple[Caution, ...]:
    """The limits that a capsule is over. Size 00 is allowed by name although it is longer than `LARGEST_MM`.

    Raises:
        ValueError: no such capsule.
    """
    if name not in CAPSULES:
        raise ValueError(f"there is no capsule of size {name!r}: choose from {', '.join(CAPSULES)}")
    sizes = list(CAPSULES)
    over = (Caution.OVER_LARGEST_CAPSULE,) if sizes.index(name) > sizes.index(LARGEST_CAPSULE) else ()
    return (*tablet_cautions(CAPSULES[name].size), *over)

"""Synthetic children, from several worlds, who know which position they like best at the end."""

from dataclasses import dataclass, field, replace

import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray

from coachbot.insight.swallows import Swallow
from coachbot.programme.orders import plan
from coachbot.programme.positions import Position

Array = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True)
class World:
    """How the children of a world are. Likings are in units of their own; `scale` turns them into steps of the scale.

    `spread` of the first likings, `center` liked that much more; `drift` a night, back towards the first liking by
    the share `pull`, or a jump of `leap` with chance `jump`; with chance `bloom` an off-centre position that starts
    low and rises from a third of the way on. What is felt has `mood` a night (lasting by the share `lasting`),
    `learning` a night, `tiredness` a place, `carry` of the swallow before, `noise` (`heavy` tails or not). The rating
    is `level` + `scale` times that, rounded; `slips` are any rating at all; a `coarse` rater says only 1, 3 and 5.
    Nights are `missing`, swallows `skipped`. A swallow does not go down with log odds `stuck` - `reluctance` * liking,
    and with chance `hard` a position is one that hardly goes down at all.
    """

    positions: int = 5
    nights: int = 14
    spread: float = 0.7
    center: float = 0.3
    drift: float = 0.22
    pull: float = 0.0
    jump: float = 0.0
    leap: float = 1.5
    bloom: float = 0.0
    mood: float = 0.3
    lasting: float = 0.0
    learning: float = 0.03
    tiredness: float = 0.12
    carry: float = 0.1
    noise: float = 1.15
    heavy: bool = False
    level: tuple[float, float] = (3.3, 0.5)
    scale: tuple[float, float] = (0.7, 1.3)
    slips: float = 0.0
    coarse: bool = False
    missing: float = 0.07
    skipped: float = 0.02
    stuck: float = -3.5
    reluctance: float = 0.8
    hard: float = 0.0


STANDARD = World()
TUNED = {
    "standard": STANDARD,
    "steady": replace(STANDARD, drift=0.03, spread=0.5, noise=1.2),
    "restless": replace(STANDARD, drift=0.4, noise=0.9),
    "patchy": replace(STANDARD, missing=0.5),
    "noisy": replace(STANDARD, noise=1.9),
    "ceiling": replace(STANDARD, level=(4.7, 0.2), scale=(0.5, 0.8)),
    "late bloomers": replace(STANDARD, bloom=0.6),
}
"""The worlds that weights were chosen in."""

UNTUNED = {
    "jumps": replace(STANDARD, drift=0.03, jump=0.05),
    "floor": replace(STANDARD, level=(1.8, 0.3), scale=(0.6, 1.0)),
    "coarse": replace(STANDARD, coarse=True),
    "tired": replace(STANDARD, tiredness=0.4, carry=0.4),
    "one week": replace(STANDARD, nights=7),
    "three weeks": replace(STANDARD, nights=21),
    "three positions": replace(STANDARD, positions=3),
    "two positions": replace(STANDARD, positions=2),
    "heavy tails": replace(STANDARD, heavy=True, noise=0.6),
    "not down": replace(STANDARD, stuck=-1.5, reluctance=1.2),
    "hard positions": replace(STANDARD, hard=0.3),
    "moody": replace(STANDARD, mood=1.0, lasting=0.7),
    "slips": replace(STANDARD, slips=0.1),
    "wide scale": replace(STANDARD, scale=(1.5, 2.5), noise=0.6),
    "pulled back": replace(STANDARD, drift=0.35, pull=0.2),
    "sharp": replace(STANDARD, noise=0.4, spread=0.5),
}
"""Worlds that no weights were chosen in; the limit of `clear` is one for all."""


@dataclass(frozen=True, kw_only=True)
class Child:
    """A child: what it said, what it likes best at the end and gets down, and the last best that it named."""

    positions: tuple[Position, ...]
    swallows: list[Swallow]
    truth: Position
    named: Position


@dataclass
class _Mind:
    """A child's likings as they move."""

    world: World
    draw: Generator
    liking: Array = field(init=False)

    def __post_init__(self) -> None:
        world, draw = self.world, self.draw
        self.liking = draw.normal(0, world.spread, world.positions)
        self.liking[0] += world.center
        self.rise = np.zeros(world.positions)
        if draw.random() < world.bloom:
            bloomer = draw.integers(1, world.positions)
            self.liking[bloomer] -= 0.8
            self.rise[bloomer] = draw.uniform(0.12, 0.3)
        self.home = self.liking.copy()
        self.scale = draw.uniform(*world.scale)
        self.level = draw.normal(*world.level)
        self.hard = draw.random(world.positions) < world.hard
        self.mood = 0.0

    def next_night(self, night: int) -> None:
        world, draw = self.world, self.draw
        if night > 1:
            leaps = np.where(draw.random(world.positions) < world.jump, draw.normal(0, world.leap, world.positions), 0)
            rising = self.rise if night > world.nights / 3 else 0
            back = world.pull * (self.home - self.liking)
            self.liking = self.liking + draw.normal(0, world.drift, world.positions) + back + leaps + rising
        fresh = draw.normal(0, world.mood * np.sqrt(1 - world.lasting**2))
        self.mood = world.lasting * self.mood + fresh

    def not_down(self) -> Array:
        """(k,) chance of not going down."""
        chance: Array = np.where(
            self.hard, 0.75, 1 / (1 + np.exp(self.world.reluctance * self.liking - self.world.stuck))
        )
        return chance

    def error(self) -> float:
        spread = self.draw.standard_t(3) if self.world.heavy else self.draw.normal()
        return float(self.world.noise * spread)

    def rating(self, felt: float) -> int:
        if self.draw.random() < self.world.slips:
            return int(self.draw.integers(1, 6))
        rating = int(np.clip(round(self.level + self.scale * felt), 1, 5))
        return {2: 1, 4: 5}.get(rating, rating) if self.world.coarse else rating

    def truth(self) -> int:
        """The position liked best among those that go down more often than not, or among all if none does."""
        down = self.not_down() < 0.5
        return int(np.argmax(np.where(down | ~down.any(), self.liking, -np.inf)))


def child(world: World, seed: int) -> Child:
    """One child of a world, always the same for a seed."""
    draw = np.random.default_rng(seed)
    positions = tuple(Position)[: world.positions]
    orders = iter(plan(positions, world.nights, seed))
    mind = _Mind(world, draw)
    swallows: list[Swallow] = []
    named = positions[0]
    for night in range(1, world.nights + 1):
        mind.next_night(night)
        if draw.random() >= world.missing:
            tonight = list(_evening(mind, night, next(orders)))
            swallows += [swallow for swallow, _ in tonight]
            named = max(tonight, key=lambda one: one[1])[0].position if tonight else named
    return Child(positions=positions, swallows=swallows, truth=positions[mind.truth()], named=named)


def _evening(mind: _Mind, night: int, order: tuple[Position, ...]) -> list[tuple[Swallow, float]]:
    """The swallows of a night, with how each felt."""
    world, told, before = mind.world, [], 0.0
    for place, position in enumerate(order, 1):
        index = list(Position).index(position)
        error = mind.error()
        felt = mind.liking[index] + mind.mood + world.learning * night - world.tiredness * (place - 1)
        felt = float(felt + world.carry * before + error)
        before = float(np.clip(mind.liking[index] + error, -2, 2))
        if mind.draw.random() < world.skipped:
            continue
        down = bool(mind.draw.random() >= mind.not_down()[index])
        rating = mind.rating(felt) if down else None
        swallow = Swallow(night=night, place=place, position=position, rating=rating, went_down=down)
        told.append((swallow, felt if down else -np.inf))
    return told

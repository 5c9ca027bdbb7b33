"""How long a plan takes, beside shuffling each night blindly: python tests/bench/bench_orders.py."""

import random
import time
from collections.abc import Callable

from coachbot.programme.orders import plan
from coachbot.programme.positions import Position

ROUNDS = 300


def shuffled(nights: int, seed: int) -> list[list[Position]]:
    """The baseline: nothing is balanced."""
    draw = random.Random(seed)
    return [draw.sample(list(Position), len(Position)) for _ in range(nights)]


def milliseconds(make: Callable[[int], object]) -> float:
    """The mean time of one call."""
    start = time.perf_counter()
    for seed in range(ROUNDS):
        make(seed)
    return (time.perf_counter() - start) / ROUNDS * 1000


def main() -> None:
    """Print a line for each number of nights."""
    for nights in (14, 21, 60):
        ours = milliseconds(lambda seed, nights=nights: plan(tuple(Position), nights, seed))  # type: ignore[misc]
        blind = milliseconds(lambda seed, nights=nights: shuffled(nights, seed))  # type: ignore[misc]
        print(f"{nights} nights: {ours:.3f} ms a plan, {ours / blind:.1f} times a blind shuffle ({blind:.3f} ms)")


if __name__ == "__main__":
    main()

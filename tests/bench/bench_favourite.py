"""The favourite in every world, against simpler rules: python tests/bench/bench_favourite.py [children] [--weights].

The first worlds are those that weights were chosen in. "clear" is the share of children whose favourite is called
clear, and "right" how many of these rightly, with its standard error: over 700 children that is two or three in a
hundred, so a world a few below the others may be so by chance; judge one world on 1,000 children or more. "@90%" is the
share that could have been called, with the limit chosen in hindsight, at nine in ten right. The ratio is our time to
that of plain Kalman.

With ``--weights``: the weights of the grid that the tuned worlds ask for (EM over each child's marginal likelihoods).
"""

import sys
import time
from collections.abc import Iterable
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

sys.path.insert(0, str(Path(__file__).parents[1]))

from bench.scoring import BASELINES, calibration_error, plain_kalman, share_at
from bench.worlds import TUNED, UNTUNED, World, child
from coachbot.insight import ratings_filter
from coachbot.insight.favourite import estimate

FIRST_SEED = 60_000_000
FURTHER = 1_000_000
"""Worlds share no seed, so that luck in one is not luck in all."""

RIGHT = 0.9


def report(name: str, world: World, first: int, count: int) -> str:
    """One line: who names the true favourite how often, calibration, and shares called clear."""
    children = [one for one in (child(world, first + seed) for seed in range(count)) if one.swallows]
    start = time.process_time()
    found = [estimate(one.positions, one.swallows) for one in children]
    spent = (time.process_time() - start) / len(children)
    right = np.array([one.favourite is each.truth for one, each in zip(found, children, strict=True)])
    clear = np.array([one.clear for one in found])
    rules = [np.mean([rule(each) is each.truth for each in children]) for rule in BASELINES.values()]
    start = time.process_time()
    plain = [plain_kalman(each) for each in children]
    ratio = spent / ((time.process_time() - start) / len(children))
    plain_right = [position is each.truth for (position, _), each in zip(plain, children, strict=True)]
    cells = [
        f"{name:<16}{right.mean():7.3f}",
        *(f"{rule:14.3f}" for rule in rules),
        f"{np.mean(plain_right):14.3f}",
        f"{calibration_error(children, found):8.3f}{calibration_error(children, found, top=True):8.3f}",
        f"{clear.mean():8.2f}" + (_rate(right[clear]) if clear.any() else f"{'none':>14}"),
        f"{share_at(right.tolist(), [max(one.probability.values()) for one in found], RIGHT):9.2f}",
        f"{share_at(plain_right, [chance for _, chance in plain], RIGHT):11.2f}",
        f"{spent * 1000:8.1f}{ratio:7.2f}",
    ]
    return "".join(cells)


def _rate(right: NDArray[np.bool_]) -> str:
    """The share that is right, with its standard error."""
    return f"{right.mean():8.3f}{right.std() / np.sqrt(len(right)):6.3f}"


def weights(worlds: Iterable[World], count: int) -> str:
    """The weights of each side of the grid, by EM, as much for one world as for another."""
    grid = [ratings_filter.NOISE, ratings_filter.DRIFT, ratings_filter.SPREAD, ratings_filter.MOOD]
    start = np.log(
        [
            np.prod(point)
            for point in np.array(np.meshgrid(*(list(s.values()) for s in grid), indexing="ij"))
            .reshape(len(grid), -1)
            .T
        ]
    )
    likelihood = []
    for world in worlds:
        for one in (child(world, FIRST_SEED + seed) for seed in range(count)):
            known = ratings_filter.likings(one.positions, one.swallows).weight
            likelihood.append(np.log(known + 1e-300) - start)
    weight = np.exp(start)
    for _ in range(100):
        posterior = np.exp(np.array(likelihood) - np.max(likelihood, axis=1, keepdims=True)) * weight
        weight = (posterior / posterior.sum(axis=1, keepdims=True)).mean(axis=0)
    table = weight.reshape([len(side) for side in grid])
    sides = (table.sum(axis=tuple({0, 1, 2, 3} - {axis})) for axis in range(len(grid)))
    return "\n".join(
        str(dict(zip(side, each.round(2).tolist(), strict=True))) for side, each in zip(grid, sides, strict=True)
    )


def main(arguments: list[str]) -> None:
    """Print the table, or the weights."""
    count = next((int(one) for one in arguments if one.isdigit()), 400)
    if "--weights" in arguments:
        print(weights(TUNED.values(), count))
        return
    print(
        f"{'world':<16}{'ours':>7}"
        + "".join(f"{name:>14}" for name in (*BASELINES, "plain Kalman"))
        + f"{'ECE':>8}{'of top':>8}{'clear':>8}{'right  s.e. ours@90% Kalman@90%':>34}{'ms':>8}{'ratio':>7}"
    )
    for number, (name, world) in enumerate([*TUNED.items(), *UNTUNED.items()]):
        print(report(name, world, FIRST_SEED + number * FURTHER, count), flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])

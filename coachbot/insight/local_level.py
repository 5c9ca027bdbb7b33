"""The local level: a random walk seen with noise, filtered and smoothed with an exact diffuse start.

Durbin and Koopman, Time Series Analysis by State Space Methods (2nd edition, 2012), chapter 2.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Level:
    """The level at one time: its mean and its variance."""

    mean: float
    variance: float


@dataclass(frozen=True, slots=True)
class Filtered:
    """The levels given what was seen up to each time (None before anything was), and the diffuse log-likelihood."""

    levels: tuple[Level | None, ...]
    log_likelihood: float


def filtered(seen: Sequence[float | None], noise: float, drift: float) -> Filtered:
    """The Kalman filter for values at equal times, None where one is missing; `noise` and `drift` are variances."""
    levels: list[Level | None] = []
    level: Level | None = None
    log_likelihood = 0.0
    for value in seen:
        if level is not None:
            level = Level(level.mean, level.variance + drift)
        if value is not None:
            log_likelihood -= 0.5 * math.log(2 * math.pi)
            if level is None:
                level = Level(value, noise)
            else:
                variance, error = level.variance + noise, value - level.mean
                gain = level.variance / variance
                log_likelihood -= 0.5 * (math.log(variance) + error**2 / variance)
                level = Level(level.mean + gain * error, level.variance * (1 - gain))
        levels.append(level)
    return Filtered(tuple(levels), log_likelihood)


def smoothed(seen: Sequence[float | None], noise: float, drift: float) -> tuple[Level, ...]:
    """The levels given all that was seen, before and after each time.

    Of a random walk seen with noise, past and future are independent given the level now: the filter run forwards to
    a time and the filter run backwards to just after it are two measurements of the level then, and are weighed.

    Raises:
        ValueError: nothing was seen.
    """
    if all(value is None for value in seen):
        raise ValueError("no value was seen: there is no level to smooth")
    forwards = filtered(seen, noise, drift).levels
    backwards = filtered(seen[::-1], noise, drift).levels[::-1]
    after = [*(level and Level(level.mean, level.variance + drift) for level in backwards[1:]), None]
    return tuple(_weighed(one, other) for one, other in zip(forwards, after, strict=True))


def _weighed(one: Level | None, other: Level | None) -> Level:
    """Two independent measurements of a level in one."""
    if one is None or other is None:
        known = one or other
        assert known is not None
        return known
    variance = 1 / (1 / one.variance + 1 / other.variance)
    return Level(variance * (one.mean / one.variance + other.mean / other.variance), variance)

"""Tests over blocks: do positions differ, do ratings rise, do some positions go down more often than others.

One child's nights follow one another and are not independent, so its p-values describe, they do not prove.
"""

import warnings
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import scipy

_MOST_EXACT = 8
"""Page's exact distribution is used up to so many ordered columns; its cost grows with their permutations."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """A test that columns differ. `statistic` and `p` are None where no difference can be seen: all rows are level."""

    rows: int
    columns: int
    statistic: float | None
    p: float | None

    @property
    def degrees(self) -> int:
        """Degrees of freedom."""
        return self.columns - 1

    @property
    def agreement(self) -> float | None:
        """Kendall's W of a Friedman test, 0 (no agreement between rows) to 1."""
        return None if self.statistic is None else self.statistic / (self.rows * self.degrees)


@dataclass(frozen=True, slots=True, kw_only=True)
class Trend:
    """Page's L against a chance order, one-sided: `p` is small where values rise along the columns."""

    rows: int
    columns: int
    statistic: float
    p: float
    exact: bool


def friedman(rows: Sequence[Sequence[float]]) -> Difference:
    """Friedman's test with its correction for ties (Hollander and Wolfe, Nonparametric Statistical Methods, 1999, 7.1).

    Args:
        rows: blocks (nights) of the same two or more columns (positions), nothing missing.

    Raises:
        ValueError: no rows, or rows that are not of one length of at least two.
    """
    values = _table(rows)
    blocks, columns = values.shape
    ranks = np.apply_along_axis(scipy.stats.rankdata, 1, values)
    between = float(((ranks.mean(axis=0) - (columns + 1) / 2) ** 2).sum()) * blocks**2
    within = float((ranks**2).sum()) - blocks * columns * (columns + 1) ** 2 / 4
    if not within:
        return Difference(rows=blocks, columns=columns, statistic=None, p=None)
    statistic = (columns - 1) * between / within
    return _by_chi_squared(blocks, columns, statistic)


def cochran(rows: Sequence[Sequence[bool]]) -> Difference:
    """Cochran's Q for yes and no (Conover, Practical Nonparametric Statistics, 1999, section 4.6).

    Raises:
        ValueError: as for `friedman`.
    """
    values = _table(rows)
    blocks, columns = values.shape
    by_row, by_column = values.sum(axis=1), values.sum(axis=0)
    mixed = float((by_row * (columns - by_row)).sum())
    if not mixed:
        return Difference(rows=blocks, columns=columns, statistic=None, p=None)
    spread = float(((by_column - by_column.mean()) ** 2).sum())
    return _by_chi_squared(blocks, columns, columns * (columns - 1) * spread / mixed)


def page(rows: Sequence[Sequence[float]]) -> Trend | None:
    """Page's L for values that rise along the columns (Page, JASA 1963;58:216-230), or None if there is too little.

    Args:
        rows: blocks (positions) of the same columns in order (nights), nothing missing.

    Returns:
        None for fewer than two rows or three columns.

    Raises:
        ValueError: as for `friedman`.
    """
    values = _table(rows)
    blocks, columns = values.shape
    if blocks < 2 or columns < 3:  # noqa: PLR2004 - as stated
        return None
    exact = columns <= _MOST_EXACT
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", RuntimeWarning)
        found = scipy.stats.page_trend_test(values, method="exact" if exact else "asymptotic")
    return Trend(rows=blocks, columns=columns, statistic=float(found.statistic), p=float(found.pvalue), exact=exact)


def _table(rows: Sequence[Sequence[float]]) -> "np.ndarray[tuple[int, int], np.dtype[np.float64]]":
    lengths = {len(row) for row in rows}
    if len(lengths) != 1 or min(lengths) < 2:  # noqa: PLR2004 - one column has nothing to differ from
        raise ValueError("give one or more rows of one length, two columns or more")
    return np.array([list(row) for row in rows], dtype=np.float64)


def _by_chi_squared(rows: int, columns: int, statistic: float) -> Difference:
    return Difference(
        rows=rows, columns=columns, statistic=statistic, p=float(scipy.stats.chi2.sf(statistic, columns - 1))
    )

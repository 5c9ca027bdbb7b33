"""Friedman, Kendall, Page and Cochran give the published values of worked examples."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import friedmanchisquare
from statsmodels.stats.contingency_tables import cochrans_q

from coachbot.insight.blocks import cochran, friedman, page


def digits(text: str) -> list[list[int]]:
    """Rows of one-digit numbers."""
    return [[int(one) for one in row] for row in text.split()]


def numbers(text: str) -> list[list[float]]:
    """Rows of numbers with bars between."""
    return [[float(one) for one in row.split()] for row in text.split("|")]


BASES = numbers(
    "5.40 5.50 5.55 | 5.85 5.70 5.75 | 5.20 5.60 5.50 | 5.55 5.50 5.40 | 5.90 5.85 5.70 | 5.45 5.55 5.60 |"
    "5.40 5.40 5.35 | 5.45 5.50 5.35 | 5.25 5.15 5.00 | 5.85 5.80 5.70 | 5.25 5.20 5.10 | 5.65 5.55 5.45 |"
    "5.60 5.35 5.45 | 5.05 5.00 4.95 | 5.50 5.50 5.40 | 5.45 5.55 5.50 | 5.55 5.55 5.35 | 5.45 5.50 5.55 |"
    "5.50 5.45 5.25 | 5.65 5.60 5.40 | 5.70 5.65 5.55 | 6.30 6.30 6.25"
)
"""Rounding first base, 22 runners: Hollander and Wolfe (1973) p. 140, (1999) table 7.1."""

RATINGS = np.array(digits("435353254443 221231232113 243343344121 354344333444")).T.tolist()
"""Twelve raters on a scale of 1 to 5: "Bioestadistica para las ciencias de la salud", in scipy's own tests."""

ZAR = np.array(
    numbers("7.0 9.9 8.5 5.1 10.3 | 5.3 5.7 4.7 3.5 7.7 | 4.9 7.6 5.5 2.8 8.4 | 8.8 8.9 8.1 3.3 9.1"),
).T.tolist()
"""Zar, Biostatistical Analysis, example 12.6."""

GRASS = numbers(
    "4 3 2 1 | 4 2 3 1 | 3 1.5 1.5 4 | 3 1 2 4 | 4 2 1 3 | 2 2 2 4 | 1 3 2 4 | 2 4 1 3 | 3.5 1 2 3.5 | 4 1 3 2 |"
    "4 2 3 1 | 3.5 1 2 3.5"
)
"""Ranking grasses: Conover, Practical Nonparametric Statistics (table from memory, total published as 8.097)."""


@pytest.mark.parametrize(
    ("rows", "statistic", "p", "agreement"),
    [
        (BASES, 11.142857, 0.0038050408, 0.2532468),
        (RATINGS, 18.942857, 0.000280938, 0.526190),
        (ZAR, 10.68, 0.0135882730, 0.712),
        (GRASS, 8.097345, 0.0440421, None),
    ],
    ids=["Hollander and Wolfe", "Bioestadistica", "Zar", "Conover"],
)
def test_friedman_with_ties_gives_the_published_values(
    rows: list[list[float]], statistic: float, p: float, agreement: float | None
) -> None:
    """Corrected for ties: without the correction the first would be 10.636."""
    found = friedman(rows)

    assert found.statistic == pytest.approx(statistic, abs=1e-5)
    assert found.p == pytest.approx(p, rel=1e-4)
    assert agreement is None or found.agreement == pytest.approx(agreement, abs=1e-5)


def test_all_ratings_level_is_no_difference_seen() -> None:
    """Neither a number that is none nor p = 1."""
    found = friedman([[3, 3, 3]] * 14)

    assert (found.statistic, found.p, found.agreement) == (None, None, None)


def test_perfect_agreement_over_a_fortnight() -> None:
    """Fourteen nights in one order: chi-squared n(k-1) = 56 and W = 1."""
    found = friedman([[1, 2, 3, 4, 5]] * 14)

    assert found.statistic == pytest.approx(56)
    assert found.agreement == pytest.approx(1)
    assert found.p == pytest.approx(2.005e-11, rel=1e-3)


@given(st.lists(st.lists(st.integers(1, 5), min_size=4, max_size=4), min_size=3, max_size=14))
def test_friedman_agrees_with_scipy(rows: list[list[int]]) -> None:
    """On any ratings that are not all level."""
    found = friedman(rows)
    if found.statistic is not None:
        theirs = friedmanchisquare(*np.array(rows).T)
        assert found.statistic == pytest.approx(theirs.statistic)
        assert found.p == pytest.approx(theirs.pvalue)


COCHRAN = {
    "Conover p. 253": (digits("111 111 010 110 000 111 111 110 001 010 111 111"), 2.8, 0.2465970),
    "statsmodels' tests": (
        digits("0001 0001 0001 1111 1001 0101 1001 0001 0100 0000 1001 0011"),
        13.285714,
        0.00405776,
    ),
    "SAS, weighted patterns": (
        [
            row
            for pattern, times in zip(digits("000 100 001 101 010 110 011 111"), (6, 2, 16, 4, 2, 6, 4, 6), strict=True)
            for row in [pattern] * times
        ],
        8.470588,
        0.0144756,
    ),
}


@pytest.mark.parametrize("name", COCHRAN)
def test_cochran_gives_the_published_values(name: str) -> None:
    """Worked examples, and statsmodels on the same rows."""
    rows, statistic, p = COCHRAN[name]
    found = cochran([[bool(one) for one in row] for row in rows])

    assert found.statistic == pytest.approx(statistic, abs=1e-5)
    assert found.p == pytest.approx(p, rel=1e-4)
    assert found.statistic == pytest.approx(cochrans_q(np.array(rows)).statistic)


def test_level_rows_do_not_change_cochran() -> None:
    """Those for whom all went down, or nothing did, say nothing of the positions."""
    rows = [[bool(one) for one in row] for row in COCHRAN["Conover p. 253"][0]]

    assert cochran([*rows, [True] * 3, [False] * 3]).statistic == pytest.approx(2.8)
    assert cochran([[True] * 3] * 5).statistic is None


@pytest.mark.parametrize(
    ("rows", "statistic", "p"),
    [
        (digits("343 224 335 132 232 245 124 344 245 134"), 133.5, 0.0018191161948),
        (
            numbers("7.46 7.17 7.76 8.14 7.63 | 7.68 7.57 7.73 8.15 8.00 | 7.21 7.80 7.74 7.87 7.93"),
            158,
            0.0024925,
        ),
        (digits("654321 654321 134526"), 197, 0.96194),
    ],
    ids=["scipy's tutorial ratings", "Hollander and Wolfe, cotton", "against the order"],
)
def test_page_gives_the_published_values(rows: list[list[float]], statistic: float, p: float) -> None:
    """Exact p-values for few columns."""
    found = page(rows)

    assert found is not None
    assert found.exact
    assert found.statistic == statistic
    assert found.p == pytest.approx(p, rel=1e-4)


def test_page_over_a_fortnight_is_not_exact_and_says_so() -> None:
    """Fourteen ordered nights: the normal approximation, small p for ratings that rise."""
    rising = page([[1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, 5, 5, 5]] * 3)

    assert rising is not None
    assert not rising.exact
    assert rising.p < 1e-6


def test_page_needs_something_to_see_a_trend_in() -> None:
    """Two nights, or one position, show none."""
    assert page([[1, 2], [1, 2]]) is None
    assert page([[1, 2, 3]]) is None


@pytest.mark.parametrize("rows", [[], [[1]], [[1, 2], [1, 2, 3]]])
def test_ragged_tables_are_refused(rows: list[list[float]]) -> None:
    """With what to give instead."""
    with pytest.raises(ValueError, match="rows of one length"):
        friedman(rows)

"""The local level agrees with the book, with statsmodels, and with the multivariate normal written out."""

import math

import numpy as np
import pytest
import statsmodels.api as sm
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import multivariate_normal

from coachbot.insight.local_level import filtered, smoothed

NILE = [float(flow) for flow in sm.datasets.nile.load_pandas().data["volume"]]
NOISE, DRIFT = 15099.0, 1469.1
"""Annual flow at Aswan and its published variances: Durbin and Koopman (2012), chapter 2."""

GAPPY = [None if year in {*range(20, 40), *range(60, 80)} else flow for year, flow in enumerate(NILE)]


def reference(seen: list[float | None], noise: float, drift: float) -> sm.tsa.UnobservedComponents:
    """The same model in statsmodels, with its exact diffuse start."""
    values = np.array([np.nan if value is None else value for value in seen])
    model = sm.tsa.UnobservedComponents(values, "llevel", use_exact_diffuse=True)
    return model.smooth([noise, drift])


def test_nile_is_filtered_as_published() -> None:
    """First levels, variances and last ones of Durbin and Koopman's example, and its log-likelihood."""
    found = filtered(NILE, NOISE, DRIFT)
    means = [level.mean for level in found.levels if level]
    variances = [level.variance for level in found.levels if level]

    assert means[:5] == pytest.approx([1120, 1140.927840, 1072.798530, 1117.308955, 1129.972136])
    assert variances[:5] == pytest.approx([15099, 7899.736379, 5781.469939, 4898.365195, 4478.723260])
    assert (means[-1], variances[-1]) == pytest.approx((798.370293, 4032.157942))
    assert found.log_likelihood == pytest.approx(-633.464564)


def test_nile_is_smoothed_as_published() -> None:
    """Smoothed levels of the first years, and the variance at both ends and in the middle."""
    found = smoothed(NILE, NOISE, DRIFT)

    assert [level.mean for level in found[:3]] == pytest.approx([1111.668319, 1110.857665, 1105.265567])
    assert [found[t].variance for t in (0, 50, 99)] == pytest.approx([4032.157942, 2326.756870, 4032.157942])


@pytest.mark.parametrize("seen", [NILE, GAPPY, [None, None, *NILE[:9], None]], ids=["whole", "gappy", "late"])
def test_statsmodels_agrees(seen: list[float | None]) -> None:
    """Filtered and smoothed levels, variances and likelihood, with years missing inside and at both ends."""
    theirs = reference(seen, NOISE, DRIFT)
    ours, smooth = filtered(seen, NOISE, DRIFT), smoothed(seen, NOISE, DRIFT)
    known = [t for t, level in enumerate(ours.levels) if level]

    assert ours.log_likelihood == pytest.approx(theirs.llf)
    assert [ours.levels[t].mean for t in known] == pytest.approx(theirs.filtered_state[0][known])  # type: ignore[union-attr]
    assert [ours.levels[t].variance for t in known] == pytest.approx(theirs.filtered_state_cov[0, 0][known])  # type: ignore[union-attr]
    assert [level.mean for level in smooth] == pytest.approx(theirs.smoothed_state[0])
    assert [level.variance for level in smooth] == pytest.approx(theirs.smoothed_state_cov[0, 0])


def test_missing_years_freeze_the_level_and_widen_it() -> None:
    """The variance rises by the drift each missing year, as in the book's section on missing values."""
    levels = filtered(GAPPY, NOISE, DRIFT).levels
    gap = [level for level in levels[19:40] if level]

    assert {round(level.mean, 6) for level in gap} == {1026.141555}
    assert np.diff([level.variance for level in gap]) == pytest.approx(DRIFT)


def test_hand_size_example() -> None:
    """Noise 1, drift 1/2, values 3, 4, 2, 5: small enough to follow by hand."""
    levels = filtered([3, 4, 2, 5], 1.0, 0.5).levels

    assert [level.mean for level in levels if level] == pytest.approx([3, 3.6, 2.761905, 3.894118], abs=1e-6)
    assert [level.variance for level in levels if level] == pytest.approx([1, 0.6, 0.523810, 0.505882], abs=1e-6)


@given(st.lists(st.floats(1, 5), min_size=2, max_size=6), st.floats(0.1, 3), st.floats(0.01, 2))
def test_likelihood_equals_the_normal_density_written_out(seen: list[float], noise: float, drift: float) -> None:
    """Given the first value, the rest are jointly normal: their density in one piece is the filter's product."""
    times = np.arange(1, len(seen))
    covariance = drift * np.minimum.outer(times, times) + noise * (np.eye(len(times)) + 1)
    whole = multivariate_normal(np.full(len(times), seen[0]), covariance).logpdf(seen[1:])

    assert filtered(seen, noise, drift).log_likelihood == pytest.approx(whole - 0.5 * math.log(2 * math.pi))


def test_nothing_seen_is_said() -> None:
    """There is no level where there is no value."""
    with pytest.raises(ValueError, match="no value"):
        smoothed([None, None], 1.0, 1.0)

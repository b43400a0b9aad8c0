"""Student's distribution for any degrees of freedom, and power, against SciPy; what is printed of
them is held by the proofs.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from midspan.core.betas import (
    detectable_shift,
    factor_of_t,
    incomplete_beta,
    power_of_t,
    tail_of_t,
)
from midspan.core.proofs_statistics import T_TABLE
from midspan.core.spread_interval import spread_interval


@pytest.mark.parametrize(("dof", "printed"), T_TABLE)
def test_the_t_table_from_the_other_side_of_a_whole_number(dof: int, printed: str) -> None:
    # There the factor is worked out in the other way; the table itself is held by its proof.
    assert factor_of_t(dof + 1e-7) == pytest.approx(float(printed), abs=6e-4)


@given(st.floats(1, 400), st.floats(0.5, 0.999))
def test_the_factor_is_scipys(dof: float, coverage: float) -> None:
    expected = float(stats.t.ppf((1 + coverage) / 2, dof))
    assert factor_of_t(dof, coverage) == pytest.approx(expected, rel=1e-8)


@given(st.floats(0.5, 300), st.floats(0.5, 300), st.floats(0, 1))
def test_incomplete_beta_is_scipys(a: float, b: float, x: float) -> None:
    assert incomplete_beta(a, b, x) == pytest.approx(float(stats.beta.cdf(x, a, b)), abs=1e-11)


@given(st.floats(-50, 50), st.floats(1, 200))
def test_the_tail_is_scipys(t: float, dof: float) -> None:
    assert tail_of_t(t, dof) == pytest.approx(2 * float(stats.t.sf(abs(t), dof)), rel=1e-8)


def two_sided(shift: float, dof: float, alpha: float) -> float:
    """SciPy's, by quadrature over the scatter: its own non-central t gives up here and there."""
    t = stats.t.ppf(1 - alpha / 2, dof)
    return float(stats.nct.sf(t, dof, shift) + stats.nct.cdf(-t, dof, shift))


@given(st.floats(0.01, 12), st.floats(1, 60), st.sampled_from((0.05, 0.01, 0.2)))
def test_power_is_scipys(shift: float, dof: float, alpha: float) -> None:
    expected = two_sided(shift, dof, alpha)
    if not math.isnan(expected):
        assert power_of_t(shift, dof, alpha) == pytest.approx(expected, abs=1e-7)


def test_without_an_effect_power_is_the_false_alarm() -> None:
    assert power_of_t(0.0, 3) == 0.05
    assert power_of_t(1e-6, 3) == pytest.approx(0.05, abs=1e-9)


@pytest.mark.parametrize("n", [2, 3, 4, 5, 6, 8, 10, 15, 20])
@pytest.mark.parametrize("power", [0.8, 0.9])
def test_what_is_detectable_has_the_power_by_scipy(n: int, power: float) -> None:
    shift = detectable_shift(2 * n - 2, power)
    assert two_sided(shift, 2 * n - 2, 0.05) == pytest.approx(power, abs=1e-7)


# Two settings, n pulls each, no drift: smallest difference in scatters, worked out beforehand with
# SciPy's quadrature; an independent table, not this program's.
MDE = {2: 5.654, 3: 3.071, 4: 2.381, 5: 2.024, 6: 1.796, 8: 1.507, 10: 1.325, 15: 1.060, 20: 0.909}


@pytest.mark.parametrize("n", MDE)
def test_the_table_of_detectable_differences(n: int) -> None:
    assert detectable_shift(2 * n - 2) * math.sqrt(2 / n) == pytest.approx(MDE[n], abs=6e-4)


def test_the_interval_of_a_scatter_widens_as_it_must() -> None:
    """With 3 degrees of freedom: 0.566 to 3.73 times, by the chi-square table 9.348 and 0.216."""
    low, high = spread_interval(1.0, 3)
    assert low == pytest.approx(math.sqrt(3 / 9.348), abs=1e-4)
    assert high == pytest.approx(math.sqrt(3 / 0.216), abs=5e-3)

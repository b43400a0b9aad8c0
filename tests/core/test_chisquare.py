"""Tails, shares and small matrices against scipy and numpy."""

import math

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from scipy import stats

from core.drives import floats
from midspan.core.algebra import inverse, times
from midspan.core.chisquare import tail, within_normal

# From nowhere near surprising to one in 1e300.
UPPER = [1 - 1e-12, 0.999, 0.9, 0.5, 0.1, 0.05, 0.01, 1e-3, 1e-6, 1e-12, 1e-30, 1e-100, 1e-290]


@pytest.mark.parametrize("dof", range(1, 61))
def test_the_tail_over_its_whole_range(dof: int) -> None:
    for probability in UPPER:
        x = float(stats.chi2.isf(probability, dof))
        known = float(stats.chi2.sf(x, dof))
        assert tail(x, dof) == pytest.approx(known, rel=1e-10), (dof, probability)
    assert tail(0.0, dof) == pytest.approx(1, rel=1e-14)
    assert 0 <= tail(1e6, dof) < 1e-300


@given(dof=st.integers(1, 60), x=floats(0, 2000))
def test_the_tail_anywhere(dof: int, x: float) -> None:
    assert tail(x, dof) == pytest.approx(float(stats.chi2.sf(x, dof)), rel=1e-9, abs=1e-300)


@pytest.mark.parametrize("dof", [61, 100, 333, 500, 801, 1000, 1200, 1331, 1450])
def test_the_tail_of_as_many_readings_as_a_fit_admits(dof: int) -> None:
    """500 trials, 500 bench lengths and 500 gear readings are admitted, so this many are met."""
    for probability in (0.999, 0.5, 0.05, 0.01, 1e-6):
        x = float(stats.chi2.isf(probability, dof))
        assert tail(x, dof) == pytest.approx(probability, rel=1e-8), (dof, probability)


@given(dof=st.integers(1, 60), pair=st.tuples(floats(0, 300), floats(0, 300)))
@example(dof=1, pair=(5e-324, 5e-324))
@example(dof=3, pair=(1e-323, 1e-300))
@example(dof=60, pair=(2.3e-308, 1e-300))
def test_a_larger_sum_is_never_less_surprising(dof: int, pair: tuple[float, float]) -> None:
    low, high = sorted(pair)
    assert tail(high, dof) <= tail(low, dof) * (1 + 1e-13)
    assert 0 <= tail(high, dof) <= 1 + 1e-13


@given(value=floats(-5, 5), u=floats(1e-4, 10), low=floats(-5, 5), width=floats(0, 10))
def test_a_share_of_the_normal(value: float, u: float, low: float, width: float) -> None:
    known = stats.norm.cdf(low + width, value, u) - stats.norm.cdf(low, value, u)
    found = within_normal(low, low + width, value, u)
    assert found == pytest.approx(float(known), abs=1e-14)
    assert 0 <= found <= 1


@st.composite
def positive_definite(draw: st.DrawFn) -> list[list[float]]:
    size = draw(st.integers(0, 9))
    seed = draw(st.integers(0, 2**32 - 1))
    rng = np.random.default_rng(seed)
    root = rng.normal(size=(size, size))
    scale = 10.0 ** rng.uniform(-3, 3, size)
    made = scale[:, None] * (root @ root.T + 0.1 * np.eye(size)) * scale[None, :]
    return [[float(x) for x in row] for row in made]


@settings(max_examples=200)
@given(matrix=positive_definite(), seed=st.integers(0, 2**32 - 1))
def test_the_inverse_against_numpy(matrix: list[list[float]], seed: int) -> None:
    kept = [list(row) for row in matrix]
    found = inverse(matrix)
    assert matrix == kept
    size = len(matrix)
    assert len(found) == size
    if size == 0:
        return
    known = np.linalg.inv(np.array(matrix))
    # As correlations, so that small and large scales are asked alike.
    unit = 1 / np.sqrt(np.diag(known))
    close = unit[:, None] * (np.array(found) - known) * unit[None, :]
    assert np.abs(close).max() < 1e-9
    assert np.allclose(np.array(found), np.array(found).T, rtol=1e-12)
    vector = np.random.default_rng(seed).normal(size=size)
    assert np.allclose(times(matrix, vector.tolist()), np.array(matrix) @ vector, rtol=1e-10)


@pytest.mark.parametrize(
    "matrix", [[[0.0]], [[-1.0]], [[1.0, 1.0], [1.0, 1.0]], [[1.0, 2.0], [2.0, 1.0]], [[math.nan]]]
)
def test_what_has_no_such_inverse_is_refused(matrix: list[list[float]]) -> None:
    with pytest.raises(ValueError, match="positive definite"):
        inverse(matrix)

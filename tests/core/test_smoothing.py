"""The periodic smoothing spline against scipy, a dense solution, and lobes known exactly."""

import numpy as np
import pytest
from scipy.interpolate import CubicSpline, make_smoothing_spline

from core.lobes import polynomial
from midspan.core.smoothing import Smoother
from midspan.core.spline import integral

PERIOD = 720.0


def scattered(seed: int, count: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Uneven knots, values and weights."""
    rng = np.random.default_rng(seed)
    x = np.sort(rng.uniform(0, PERIOD, count))
    return x, np.sin(x / 57) + rng.normal(0, 0.1, count), rng.uniform(0.5, 3, count)


@pytest.mark.parametrize("count", [8, 23, 90])
def test_without_smoothing_it_is_scipys_periodic_spline(count: int) -> None:
    x, y, w = scattered(count, count)
    ours = Smoother(list(x), list(y), list(w), PERIOD).smooth(0.0).spline
    theirs = CubicSpline(np.append(x, x[0] + PERIOD), np.append(y, y[0]), bc_type="periodic")
    for at in np.linspace(-800, 1500, 301):
        inside = (at - x[0]) % PERIOD + x[0]
        assert ours.at(at) == pytest.approx(theirs(inside), abs=1e-9)
        assert ours.slope(at) == pytest.approx(theirs(inside, 1), abs=1e-9)
        assert ours.bend(at) == pytest.approx(theirs(inside, 2), abs=1e-9)
    start, end = float(x[1]) + 0.3, float(x[-2]) - 0.1
    assert integral(ours, start, end) == pytest.approx(theirs.integrate(start, end), abs=1e-8)


@pytest.mark.parametrize("strength", [1e-3, 10.0, 1e4, 1e7])
def test_smoothing_is_reinschs_by_dense_algebra(strength: float) -> None:
    x, y, w = scattered(4, 31)
    n = len(x)
    gaps = np.append(np.diff(x), x[0] + PERIOD - x[-1])
    q, r = np.zeros((n, n)), np.zeros((n, n))
    for i in range(n):
        q[i, i - 1] += 1 / gaps[i - 1]
        q[i, i] -= 1 / gaps[i - 1] + 1 / gaps[i]
        q[i, (i + 1) % n] += 1 / gaps[i]
        r[i, i] += (gaps[i - 1] + gaps[i]) / 3
        r[i, (i + 1) % n] += gaps[i] / 6
        r[(i + 1) % n, i] += gaps[i] / 6
    hat = np.linalg.solve(np.diag(w) + strength * q @ np.linalg.solve(r, q.T), np.diag(w))
    found = Smoother(list(x), list(y), list(w), PERIOD).smooth(strength)
    assert np.allclose(found.spline.values, hat @ y, atol=1e-8)
    assert np.allclose(found.leverages, np.diag(hat), atol=1e-8)
    assert found.misfit == pytest.approx(float(np.sum(w * (y - hat @ y) ** 2)), rel=1e-6)


def test_where_both_ends_are_flat_scipys_own_smoother_says_the_same() -> None:
    """make_smoothing_spline is not periodic; on a lobe with flat ends that makes no difference."""
    x = np.arange(-240.0, 241.0, 4.0)
    y = polynomial(8.0, 120.0)(x) + np.random.default_rng(1).normal(0, 0.01, len(x))
    lam = 50.0
    ours = Smoother(list(x), list(y), [1.0] * len(x), PERIOD).smooth(lam).spline
    theirs = make_smoothing_spline(x, y, lam=lam)
    for at in np.linspace(-150, 150, 61):
        assert ours.at(at) == pytest.approx(float(theirs(at)), abs=2e-6)


@pytest.mark.parametrize("known", [True, False])
def test_noise_is_taken_off_and_the_lobe_stays(known: bool) -> None:
    lift = polynomial(8.0, 120.0)
    x = np.arange(-358.0, 359.0, 2.0)
    raw, smooth = [], []
    for seed in range(10):
        y = lift(x) + np.random.default_rng(seed).normal(0, 0.02, len(x))
        found = Smoother(list(x), list(y), [1 / 0.02**2] * len(x), PERIOD).best(known)
        smooth.append(np.sqrt(np.mean((np.array(found.spline.values) - lift(x)) ** 2)))
        raw.append(0.02)
    # A lobe of this size wants some forty terms of 359, so about a third of the scatter stays.
    assert np.mean(smooth) < 0.45 * np.mean(raw)

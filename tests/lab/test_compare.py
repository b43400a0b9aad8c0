"""Curves with bands, and refitted settings: against statsmodels, and how often intervals hold."""

from typing import Any

import numpy as np
import pytest
import statsmodels.api as sm

from midspan.core import run
from midspan.lab.bands import banded
from midspan.lab.compare import compare
from midspan.lab.mixed import contrast, fit_mixed

SPEEDS = [2000.0 + 250 * i for i in range(17)]


def session(order: str, seed: int = 1, gain: float = 0.02, drift: float = 0.002) -> dict[str, Any]:
    rng = np.random.default_rng(seed)
    runs = []
    for i, key in enumerate(order):
        size = (1 + gain * (key == "B")) * (1 + drift * i) * (1 + 0.003 * rng.standard_normal())
        torque = [size * (500 - ((n - 4000) / 150) ** 2) for n in SPEEDS]
        curve = {"speed_rpm": SPEEDS, "torque_nm": [x + rng.standard_normal() for x in torque]}
        runs.append({"setting": key, "place": i + 1, "figures_are": "j607", "curve": curve})
    return {"standard": "j607", "quantity": "peak-power", "reference": "A", "runs": runs}


def columns(blocks: str, each: int, drift: bool) -> tuple[Any, Any]:
    keys = np.repeat(list(blocks), each)
    found = [keys == "A", keys == "B"] + [np.arange(len(keys)) - (len(keys) - 1) / 2] * drift
    return np.array(found, float).T, np.repeat(np.arange(len(blocks)), each)


@pytest.mark.parametrize("drift", [False, True])
@pytest.mark.parametrize("seed", [2, 6, 9])
def test_the_mixed_model_is_that_of_statsmodels(seed: int, drift: bool) -> None:
    rng = np.random.default_rng(seed)
    fixed, groups = columns("ABABAB", 4, drift)
    figures = 300 + 2.0 * rng.standard_normal(6)[groups] + rng.standard_normal(24)
    found = fit_mixed(figures, fixed, groups)
    said = sm.MixedLM(figures, fixed, groups).fit(reml=True)
    # Its search for the variances stops earlier.
    assert found.effects == pytest.approx(said.fe_params, rel=1e-5, abs=1e-4)
    assert found.of_run == pytest.approx(said.scale, rel=1e-3)
    assert found.of_fitting == pytest.approx(float(said.cov_re[0, 0]), rel=1e-3)
    # Its own standard errors also carry the variances' uncertainty; ours are those of GLS.
    whole = said.cov_re[0, 0] * (groups[:, None] == groups) + said.scale * np.eye(24)
    by_gls = np.linalg.inv(fixed.T @ np.linalg.solve(whole, fixed))
    assert found.covariance == pytest.approx(by_gls, rel=2e-3, abs=1e-6)


def test_balanced_refitting_is_the_t_test_of_its_means() -> None:
    """Three fittings each, as many runs in each: the exact answer is that of their means."""
    rng = np.random.default_rng(4)
    fixed, groups = columns("ABABAB", 4, False)
    figures = 300 + 3.0 * rng.standard_normal(6)[groups] + rng.standard_normal(24)
    means = figures.reshape(6, 4).mean(axis=1)
    a, b = means[::2], means[1::2]
    value, error, dof = contrast(fit_mixed(figures, fixed, groups), np.array([-1.0, 1.0]), 4)
    assert value == pytest.approx(b.mean() - a.mean())
    assert error == pytest.approx(np.sqrt((a.var(ddof=1) + b.var(ddof=1)) / 2 * 2 / 3), rel=1e-4)
    assert dof == pytest.approx(4.0, rel=1e-3)


def test_its_intervals_cover_what_they_say() -> None:
    """2,000 sessions, eight fittings of three runs: 95 %, give or take 0.49 % (binomial)."""
    rng = np.random.default_rng(11)
    fixed, groups = columns("ABABABAB", 3, True)
    from scipy.stats import t as student

    held = 0
    weights = np.array([-1.0, 1.0, 0.0])
    for _ in range(2000):
        figures = 300 + rng.standard_normal(8)[groups] + rng.standard_normal(24)
        value, error, dof = contrast(fit_mixed(figures, fixed, groups), weights, 5)
        held += abs(value) <= student.ppf(0.975, dof) * error
    assert 0.93 <= held / 2000 <= 0.97


def test_bands_at_a_speed_are_the_phones_intervals() -> None:
    """A band that shrinks to one speed is the core's own comparison of torque there."""
    asked = session("AABBBBAA")
    found = compare(asked)["curves"]
    middle = 4000.0
    at = found["speed_rpm"].index(middle)
    single = {**asked, "quantity": "peak-torque"}
    single["runs"] = [
        {"setting": r["setting"], "place": r["place"], "figures_are": "j607",
         "peaks": {"torque_nm": float(np.interp(middle, *r["curve"].values()))}}
        for r in asked["runs"]
    ]  # fmt: skip
    told = run("compare", single)["differences"][0]["difference"]
    band = found["differences"][0]["torque_nm"]
    assert band["mean"][at] == pytest.approx(told["value"], rel=1e-6)
    assert band["lower_95"][at] == pytest.approx(told["lower_95"], rel=1e-6)
    assert band["upper_95"][at] == pytest.approx(told["upper_95"], rel=1e-6)
    assert band["lower_all_95"][at] < band["lower_95"][at]
    assert found["pointwise_factor"] < found["all_speeds_factor"]


def test_the_wider_band_holds_all_speeds_at_once() -> None:
    """400 sessions of smooth noise: 95 %, give or take 1.1 % (binomial); three of those below."""
    rng = np.random.default_rng(3)
    x = np.linspace(0, 1, 25)
    root = np.linalg.cholesky(np.exp(-(((x[:, None] - x) / 0.3) ** 2)) + 1e-9 * np.eye(25))
    fixed, _ = columns("ABBA", 2, True)
    held = near = 0
    for _ in range(400):
        lines = rng.standard_normal((8, 25)) @ root.T
        band = banded(lines, fixed, ["A", "B"], "A")["differences"][0]["torque_nm"]
        low, high = np.array(band["lower_all_95"]), np.array(band["upper_all_95"])
        held += bool(((low <= 0) & (high >= 0)).all())
        near += bool(((np.array(band["lower_95"]) <= 0) & (np.array(band["upper_95"]) >= 0)).all())
    assert held >= 400 * (0.95 - 3 * 0.011)
    assert near < held


def test_what_cannot_be_told_is_said() -> None:
    plain = session("ABBA")
    for one in plain["runs"]:
        one["peaks"] = {"power_kw": 300.0 + one["place"]}
        del one["curve"]
    found = compare(plain)
    assert found["curves"] is None
    assert found["curves_text"].startswith("No curves")
    found = compare(session("AABB"))
    assert found["refitting"] is None
    assert "fitted twice" in found["refitting_text"]
    found = compare(session("AABBAABB"))
    assert found["refitting"]["fittings"] == 4
    assert found["compare"] == run("compare", session("AABBAABB"))

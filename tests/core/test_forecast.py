"""The wear forecast: what it rests on, its relations, its approximation, and what it says."""

import math
from statistics import NormalDist

import numpy as np
import pytest

from core.drives import WORKED, Payload
from core.reference import rows
from core.wear_histories import LOOP, Chain, Quadrature, model
from midspan.core import run
from midspan.core.calc_forecast import POOR
from midspan.core.errors import Refused
from midspan.core.next_reading import worth_of_reading
from midspan.core.normal_points import kept_points, normal_quantile
from midspan.core.oil_categories import OILS
from midspan.core.quantiles import LEVELS, quantile, spread_of
from midspan.core.student import NORMAL_95
from midspan.core.wear import Wear, elongation_by, hours_until, slopes
from midspan.core.wear_fit import Seen, laplace_draws, most_likely
from midspan.core.wear_prior import wide

# How far a quantile of the approximation is off, as a probability: typically, and at worst.
TYPICAL, WORST = 0.05, 0.2
RATES = {row["id"]: row for row in rows("chain-wear-rates")}


def moved(at_km: float, movement: float, u: float = 0.2) -> Payload:
    return {"quantity": "movement_mm", "movement_mm": movement, "standard_uncertainty_mm": u,
            "distance_since_start_km": at_km}  # fmt: skip


def asked(*readings: Payload, **more: object) -> Payload:
    return {"drive": WORKED, "oil_kind": "synthetic", "readings": list(readings), **more}


def prior_elongations(oil: str, running_h: float) -> dict[str, float | None]:
    prior = wide(oil)
    logs = np.random.default_rng(7).normal(prior.means, prior.spreads, (20_000, 3))
    return spread_of([elongation_by(Wear(*np.exp(x)), running_h) for x in logs])


# Published figures, and how the priors stand to them.


@pytest.mark.parametrize("id", ["first-wear", "life-2-percent", "life-1.5-percent"])
def test_the_priors_hold_the_published_figures(id: str) -> None:
    row = RATES[id]
    expected = prior_elongations(row["oil"], float(row["at_running_h"]))
    assert expected["low_95"] < float(row["elongation_percent"]) < expected["high_95"]


def test_first_wear_is_rarely_beyond_the_published_ceiling() -> None:
    first = wide("mineral").rows[0]
    ceiling = float(RATES["first-wear"]["elongation_percent"])
    beyond = 1 - NormalDist(math.log(first.median), first.log_sd).cdf(math.log(ceiling))
    assert 0.01 < beyond < 0.1


def test_first_wear_ceases_as_published_on_mineral_oil() -> None:
    """98 % done within the published 20 h is in the 95 % range of the time constant."""
    tau = wide("mineral").rows[1]
    needed = float(RATES["first-wear"]["at_running_h"]) / math.log(50)
    assert abs(math.log(needed / tau.median)) < NORMAL_95 * tau.log_sd
    assert needed == pytest.approx(tau.median, rel=0.05)


def test_the_wear_test_limit_is_within_reach() -> None:
    """The limit is from memory; the 216 h are published."""
    assert RATES["wear-test-limit"]["at_running_h"] == RATES["wear-test-length"]["at_running_h"]
    expected = prior_elongations("synthetic", float(RATES["wear-test-length"]["at_running_h"]))
    assert expected["low_95"] < float(RATES["wear-test-limit"]["elongation_percent"])
    assert float(RATES["wear-test-limit"]["elongation_percent"]) < expected["high_95"]


def test_the_trades_ten_thousand_miles_are_held_for_todays_oils() -> None:
    tau = wide("synthetic").rows[1]
    assert tau.origin == "common practice, no source"
    assert 10_000 * 1.609344 / 50 / math.log(50) == pytest.approx(tau.median, rel=0.05)


@pytest.mark.parametrize("oil", [*OILS, None])
def test_no_prior_is_called_published(oil: str | None) -> None:
    for row in wide(oil).rows:
        assert row.origin != "published"
        assert bool(row.source) == (row.origin == "derived from published figures")
        assert row.text


# Relations.


def test_time_until_turns_elongation_round() -> None:
    rng = np.random.default_rng(1)
    for _ in range(2000):
        wear = Wear(*np.exp(rng.normal([-3, 3, -9], [1, 2, 1.5])))
        t = float(10 ** rng.uniform(-3, 4))
        assert hours_until(wear, elongation_by(wear, t), 1e5) == pytest.approx(t, rel=1e-6)
    assert hours_until(wear, 0.0, 10) == 0.0
    assert hours_until(wear, elongation_by(wear, 100) * 1.001, 100) is None


def test_slopes_are_those_of_differences() -> None:
    logs = [math.log(0.04), math.log(30.0), math.log(1e-4)]
    for t in (0.0, 1.0, 30.0, 500.0):
        for i in range(3):
            up, down = list(logs), list(logs)
            up[i] += 1e-5
            down[i] -= 1e-5
            ends = [elongation_by(Wear(*[math.exp(x) for x in ends]), t) for ends in (up, down)]
            found = slopes(Wear(*[math.exp(x) for x in logs]), t)[i]
            assert found == pytest.approx((ends[0] - ends[1]) / 2e-5, rel=1e-6, abs=1e-12)


def test_bends_are_those_of_differences() -> None:
    rng = np.random.default_rng(4)
    prior = wide("mineral")
    chain = Chain(rng, prior.means, prior.spreads)
    found = model(prior, [chain.read(rng, t, 0.1) for t in (0.0, 3.0, 20.0, 300.0)])
    logs = [mean + 0.3 for mean in prior.means]
    gradient, full, _ = found.bend(logs)
    for i in range(3):
        up, down = list(logs), list(logs)
        up[i] += 1e-4
        down[i] -= 1e-4
        assert gradient[i] == pytest.approx((found.cost(up) - found.cost(down)) / 2e-4, rel=1e-5)
        steep = (np.array(found.bend(up)[0]) - found.bend(down)[0]) / 2e-4
        assert full[i] == pytest.approx(steep, rel=1e-4, abs=1e-6)


def test_normal_points_are_normal() -> None:
    for p in (1e-6, 0.001, 0.2, 0.5, 0.9, 1 - 1e-6):
        assert normal_quantile(p) == pytest.approx(NormalDist().inv_cdf(p), rel=1e-9, abs=1e-12)
    points = np.array(kept_points(512))
    assert np.abs(points.mean(axis=0)).max() < 0.02
    assert np.abs(np.cov(points.T) - np.eye(4)).max() < 0.02


def test_quantiles_are_numpys_and_know_a_horizon() -> None:
    draws = list(np.random.default_rng(2).normal(size=101))
    for level in (0.025, 0.1, 0.333, 0.5, 0.975):
        assert quantile(sorted(draws), level) == pytest.approx(np.quantile(draws, level))
    found = spread_of([1.0] * 80 + [None] * 20)
    assert found["median"] == found["low_95"] == 1.0
    assert found["high_80"] is None


# The approximation, against plain quadrature.


def test_laplace_is_near_the_posterior() -> None:
    """One history in some has a second peak, which 512 points see only roughly."""
    rng = np.random.default_rng(80)
    prior = wide("mineral")
    off = []
    for _ in range(6):
        chain = Chain(rng, prior.means, prior.spreads)
        seen = [chain.read(rng, t, 0.03, of_length=t == 0) for t in (0.0, 20.0, 200.0)]
        found = model(prior, seen)
        logs, covariance = most_likely(found)
        draws, share = laplace_draws(found, logs, covariance, kept_points(512))
        truth = Quadrature(prior, seen, 61)
        step = np.array(covariance) @ found.bend(logs)[0]
        assert np.abs(step).max() < 1e-6, "not the most likely wear"
        assert share > POOR
        for t in (30.0, 1000.0):
            ends = spread_of([d.fitted + LOOP / 100 * elongation_by(d.wear, t) for d in draws])
            off += [truth.below(t, ends[name]) - level for name, level in LEVELS]
    assert math.sqrt(np.mean(np.square(off))) < TYPICAL
    assert max(map(abs, off)) < WORST


def test_without_readings_the_prior_comes_back() -> None:
    prior = wide("conventional")
    found = model(prior, [])
    logs, covariance = most_likely(found)
    assert logs == pytest.approx(prior.means)
    assert [covariance[i][i] for i in range(3)] == pytest.approx([s**2 for s in prior.spreads])
    draws, share = laplace_draws(found, logs, covariance, kept_points(64))
    assert share == pytest.approx(1.0)
    assert len(set(draws)) == 64


def test_what_a_next_reading_is_worth_by_brute_force() -> None:
    """Draw a truth and a reading of it, learn from it, and see what variance is left."""
    rng = np.random.default_rng(5)
    prior = wide("mineral")
    chain = Chain(rng, prior.means, prior.spreads)
    seen = [chain.read(rng, t, 0.01) for t in (0.0, 2.0, 20.0, 100.0)]
    found = model(prior, seen)
    logs, covariance = most_likely(found)
    truth = Quadrature(prior, seen)
    then = truth.mean + truth.grown(1000.0)
    for at in (120.0, 300.0, 700.0):
        u = 0.05
        there = truth.mean + truth.grown(at)
        picked = rng.choice(len(truth.mass), 150, p=truth.mass)
        left = []
        for i in picked:
            read = there[i] + rng.normal(0, math.hypot(u, truth.spread))
            mass = truth.mass * np.exp(-0.5 * ((read - there) ** 2) / (u**2 + truth.spread**2))
            mass /= mass.sum()
            left.append(mass @ then**2 - (mass @ then) ** 2)
        whole = truth.mass @ then**2 - (truth.mass @ then) ** 2
        brute = 1 - np.mean(left) / whole
        worth = worth_of_reading(found, logs, covariance, 1000.0, at, u)
        assert worth == pytest.approx(brute, abs=0.12), at


# What it says.


def test_with_no_readings_it_says_how_little_is_known() -> None:
    found = run("forecast", asked())
    assert found["readings_used"] == 0
    assert "Nothing was measured" in found["said"][0]
    limit = found["events"][2]["at_running_h"]
    assert limit["high_95"] > 20 * limit["median"]
    assert found["next_reading"]["at_running_h"] == 0


def test_readings_narrow_it() -> None:
    widths = []
    for readings in ([moved(0, 4.0)], [moved(0, 4.0), moved(2000, 5.5), moved(20000, 7.0)]):
        at = run("forecast", asked(*readings))["events"][2]["at_running_h"]
        widths.append(math.log((at["high_80"] or 6000) / at["low_80"]))
    assert widths[1] < 0.7 * widths[0]


def test_intervals_are_nested_and_events_in_order() -> None:
    found = run("forecast", asked(moved(0, 4.0), moved(2000, 5.0)))
    for event in found["events"]:
        at = [
            event["at_running_h"][k] for k in ("low_95", "low_80", "median", "high_80", "high_95")
        ]
        ahead = [math.inf if x is None else x for x in at]
        assert ahead == sorted(ahead)
        assert 0 <= event["probability_by_now"] + event["probability_beyond"] <= 1
    medians = [event["at_running_h"]["median"] for event in found["events"]]
    assert medians == sorted(medians)
    fan = [row["movement_mm"]["median"] for row in found["fan"]]
    assert fan == sorted(fan)


def test_hours_and_distance_are_the_same_reading() -> None:
    one = run("forecast", asked(moved(2000, 5.0), average_speed_km_per_h=40.0))
    other = dict(moved(0, 5.0), running_since_start_h=50.0)
    del other["distance_since_start_km"]
    two = run("forecast", asked(other, average_speed_km_per_h=40.0))
    assert one["events"] == two["events"]


def test_beyond_the_horizon_is_a_probability() -> None:
    found = run("forecast", asked(moved(0, 4.0), horizon_h=100.0))["events"][2]
    assert found["at_running_h"]["median"] is None
    assert found["probability_beyond"] > 0.5
    assert "not within the horizon" in found["text"]


def test_a_reading_too_small_to_feel_is_left_out_and_said() -> None:
    found = run("forecast", asked(moved(0, 0.3), moved(3000, 5.0)))
    assert [point["used"] for point in found["points"]] == [False, True]
    assert "not-felt" in [w["code"] for w in found["warnings"]]


def test_readings_that_no_wear_explains_are_questioned() -> None:
    found = run("forecast", asked(moved(0, 9.0), moved(1000, 4.0), moved(2000, 9.0)))
    assert "readings-against-wear" in [w["code"] for w in found["warnings"]]


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"readings": [{"quantity": "movement_mm", "movement_mm": 5.0,
                        "standard_uncertainty_mm": 0.2}]},
         "readings[0].distance_since_start_km", "missing"),
        ({"readings": [moved(-1, 5.0)]}, "readings[0].distance_since_start_km", "out-of-range"),
        ({"readings": [moved(0, 500.0)]}, "readings[0].movement_mm", "out-of-range"),
        ({"readings": [{"quantity": "chain_length_mm", "chain_length_mm": 10.0,
                        "standard_uncertainty_mm": 0.2, "running_since_start_h": 0}]},
         "readings[0].chain_length_mm", "out-of-range"),
        ({"readings": None}, "readings", "missing"),
        ({"oil_kind": "olive"}, "oil_kind", "not-a-choice"),
        ({"own_limit": {"quantity": "movement_mm", "lower": 1.0, "source": "x"}},
         "own_limit.upper", "missing"),
        ({"horizon_h": 1}, "horizon_h", "out-of-range"),
        ({"prior": {"engines": 1}}, "prior.engines", "out-of-range"),
        ({"prior": {"engines": 3}}, "prior.made_at", "missing"),
    ],
)  # fmt: skip
def test_bad_input_is_named(change: Payload, field: str, code: str) -> None:
    with pytest.raises(Refused) as refused:
        run("forecast", {**asked(moved(0, 5.0)), **change})
    assert (field, code) in {(p["field"], p["code"]) for p in refused.value.problems}


def test_a_prior_of_the_shop_says_its_engines() -> None:
    prior = {"first_wear_percent": 0.05, "first_wear_log_sd": 0.2, "time_constant_h": 30.0,
             "time_constant_log_sd": 0.3, "steady_wear_percent_per_h": 5e-5,
             "steady_wear_log_sd": 0.3, "engines": 7,
             "made_at": "2026-02-03T10:00:00Z"}  # fmt: skip
    wide_one = run("forecast", asked(moved(0, 4.0)))["events"][2]["at_running_h"]
    found = run("forecast", asked(moved(0, 4.0), prior=prior))
    narrow = found["events"][2]["at_running_h"]
    assert narrow["high_80"] / narrow["low_80"] < 0.5 * wide_one["high_80"] / wide_one["low_80"]
    assert found["prior"]["engines_behind"] == 7
    assert "7 engines of this shop" in " ".join(found["said"])
    assert {row["prior"]["origin"] for row in found["wear"]} == {"this shop's own records"}


def test_seen_readings_of_length_share_the_centre_error() -> None:
    """However many readings of length, the error of the centre distance stays."""
    many = [Seen(0.0, 0.5, 0.005, True) for _ in range(30)]
    assert model(wide(None), many).fitted_spread == pytest.approx(0.05, rel=0.01)

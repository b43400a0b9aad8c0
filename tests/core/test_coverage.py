"""Does a 95 % interval hold the truth 95 times in 100? Simulated, with a fixed seed.

2,000 trials: the share of hits has a standard deviation of 0.5 %, so 93 to 97 % is four of them.
Where the scatter of the readings leads, coverage must come out there. Where a rectangular error of
an instrument leads, its interval is wider than it need be (GUM, G.5.3), and only the lower bound
can be asked.
"""

import math
from collections.abc import Callable

import numpy as np
import pytest

from core.drives import WORKED, Payload
from midspan.core import run
from midspan.core.drive import Drive, geometry

TRIALS = 2000
LEAST, MOST = 0.93, 0.97


def coverage(trial: Callable[[np.random.Generator], tuple[dict, float]]) -> float:
    """Share of trials whose interval holds the truth."""
    rng = np.random.default_rng(20)
    hits = 0
    for _ in range(TRIALS):
        interval, truth = trial(rng)
        hits += interval["low"] <= truth <= interval["high"]
    return hits / TRIALS


@pytest.mark.parametrize("count", [2, 3, 5, 10])
def test_repeat_readings(count: int) -> None:
    def trial(rng: np.random.Generator) -> tuple[dict, float]:
        truth = rng.uniform(5, 12)
        readings = rng.normal(truth, 0.2, count).clip(0).tolist()
        payload = {"drive": WORKED, "method": "total", "readings_mm": readings}
        exact = {"resolution_mm": 0, "instrument_error_mm": 0}
        return run("slack", {**payload, **exact})["measured"], truth

    assert LEAST <= coverage(trial) <= MOST


def test_a_lone_reading_with_known_scatter() -> None:
    def trial(rng: np.random.Generator) -> tuple[dict, float]:
        truth = rng.uniform(5, 12)
        payload = {
            "drive": WORKED,
            "method": "total",
            "readings_mm": [rng.normal(truth, 0.3)],
            "repeatability_mm": 0.3,
            "resolution_mm": 0,
            "instrument_error_mm": 0,
        }
        return run("slack", payload)["measured"], truth

    assert LEAST <= coverage(trial) <= MOST


@pytest.mark.parametrize("quantity", ["excess_mm", "elongation_percent", "crank_rock_deg"])
def test_what_a_movement_means(quantity: str) -> None:
    """Square law, strongly bent at small movements, with the centre distance uncertain as well."""
    half = 0.02

    def trial(rng: np.random.Generator) -> tuple[dict, float]:
        centre = 114.10 + rng.uniform(-half, half)
        shape = geometry(Drive(9.525, 22, 44, centre, 58))
        movement = rng.uniform(1.0, 14.0)
        excess = math.sqrt(shape.strand**2 + movement**2) - shape.strand
        truth = {
            "excess_mm": excess,
            "elongation_percent": 100 * ((excess + shape.taut_length) / (58 * 9.525) - 1),
            "crank_rock_deg": math.degrees(excess / shape.crank_radius),
        }[quantity]
        payload = {
            "drive": {**WORKED, "centre_distance_error_mm": half},
            "method": "total",
            "readings_mm": rng.normal(movement, 0.5, 4).clip(0).tolist(),
            "resolution_mm": 0,
            "instrument_error_mm": 0,
        }
        return run("slack", payload)["state"][quantity], truth

    assert LEAST <= coverage(trial) <= MOST


@pytest.mark.parametrize("quantity", ["movement_mm", "sag_mm", "crank_rock_deg", "excess_mm"])
def test_what_a_worn_length_means(quantity: str) -> None:
    """Square root, steep near a taut chain, from a caliper reading and a centre distance."""
    half = 0.02

    def trial(rng: np.random.Generator) -> tuple[dict, float]:
        centre = 114.10 + rng.uniform(-half, half)
        shape = geometry(Drive(9.525, 22, 44, centre, 58))
        worn = rng.uniform(0.0, 0.004)
        excess = 58 * 9.525 * (1 + worn) - shape.taut_length
        length = 10 * 9.525 * (1 + worn)
        truth = {
            "excess_mm": excess,
            "movement_mm": math.sqrt((shape.strand + excess) ** 2 - shape.strand**2),
            "sag_mm": math.sqrt(3 * shape.strand * excess / 8),
            "crank_rock_deg": math.degrees(excess / shape.crank_radius),
        }[quantity]
        payload: Payload = {
            "drive": {**WORKED, "centre_distance_error_mm": half},
            "method": "pin-to-pin",
            "pitches": 10,
            "readings_mm": rng.normal(length, 0.03, 4).tolist(),
            "resolution_mm": 0,
            "instrument_error_mm": 0,
        }
        return run("elongation", payload)["state"][quantity], truth

    assert LEAST <= coverage(trial) <= MOST


def test_a_coarse_rule_is_covered_too() -> None:
    """A rule read to the half millimetre, off by up to 0.1 mm: never less than the promise."""

    def trial(rng: np.random.Generator) -> tuple[dict, float]:
        truth = rng.uniform(5, 12)
        seen = rng.normal(truth + rng.uniform(-0.1, 0.1), 0.3, 5)
        readings = (np.round(seen * 2) / 2).tolist()
        payload = {"drive": WORKED, "method": "total", "readings_mm": readings}
        given = {"resolution_mm": 0.5, "instrument_error_mm": 0.1}
        return run("slack", {**payload, **given})["measured"], truth

    assert coverage(trial) >= LEAST


def test_a_wrong_verdict_is_as_rare_as_promised() -> None:
    """ "within" and "beyond" are each wrong at most once in forty: a chain just past its limit is
    passed in no more than 2.5 % of trials (four standard deviations more are allowed here).
    """
    rng = np.random.default_rng(7)
    limit = {"quantity": "elongation_percent", "upper": 0.5, "source": "manual"}
    passed = failed = 0
    for _ in range(TRIALS):
        payload = {
            "method": "pin-to-pin",
            "pitch_mm": 9.525,
            "pitches": 10,
            "readings_mm": rng.normal(95.25 * 1.005, 0.05, 3).tolist(),
            "resolution_mm": 0,
            "instrument_error_mm": 0,
            "own_limit": limit,
        }
        outcome = run("elongation", payload)["verdict"]["outcome"]
        passed += outcome == "within"
        failed += outcome == "beyond"
    for share in (passed / TRIALS, failed / TRIALS):
        assert share <= 0.025 + 4 * math.sqrt(0.025 * 0.975 / TRIALS)

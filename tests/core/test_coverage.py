"""Does a 95 % interval hold the truth 95 times in 100? Simulated, with a fixed seed.

2,000 trials: the share of hits has a standard deviation of 0.5 %, so 93 to 97 % is four of them.
Where the scatter of the readings leads, coverage must come out there. Where a rectangular error of
an instrument leads, its interval is wider than it need be (GUM, G.5.3), and only the lower bound
can be asked.
"""

import math
from collections import Counter
from collections.abc import Callable

import numpy as np
import pytest

from core.drives import WORKED, Payload
from midspan.core import run
from midspan.core.drive import Drive, Geometry, geometry

TRIALS = 2000
LEAST, MOST = 0.93, 0.97
EXACT = {"resolution_mm": 0, "instrument_error_mm": 0}


Trial = Callable[[np.random.Generator], dict[str, tuple[dict, float]]]


def coverage(trial: Trial) -> dict[str, float]:
    """For each quantity of a trial, the share of trials whose interval holds the truth."""
    rng = np.random.default_rng(20)
    hits: Counter[str] = Counter()
    for _ in range(TRIALS):
        for quantity, (interval, truth) in trial(rng).items():
            hits[quantity] += interval["low"] <= truth <= interval["high"]
    return {quantity: count / TRIALS for quantity, count in hits.items()}


@pytest.mark.parametrize("count", [2, 3, 10])
def test_repeat_readings(count: int) -> None:
    def trial(rng: np.random.Generator) -> dict[str, tuple[dict, float]]:
        truth = rng.uniform(5, 12)
        readings = rng.normal(truth, 0.2, count).clip(0).tolist()
        payload = {"drive": WORKED, "method": "total", "readings_mm": readings, **EXACT}
        return {"movement": (run("slack", payload)["measured"], truth)}

    assert LEAST <= coverage(trial)["movement"] <= MOST


def test_a_lone_reading_with_known_scatter() -> None:
    def trial(rng: np.random.Generator) -> dict[str, tuple[dict, float]]:
        truth = rng.uniform(5, 12)
        payload = {
            "drive": WORKED,
            "method": "total",
            "readings_mm": [rng.normal(truth, 0.3)],
            "repeatability_mm": 0.3,
            **EXACT,
        }
        return {"movement": (run("slack", payload)["measured"], truth)}

    assert LEAST <= coverage(trial)["movement"] <= MOST


CENTRE_ERROR = 0.02
UNSURE = {**WORKED, "centre_distance_error_mm": CENTRE_ERROR}


def true_state(shape: Geometry, excess: float) -> dict[str, float]:
    """What a chain of this excess length really does, by formulas of this file."""
    strand = shape.strand
    return {
        "excess_mm": excess,
        "elongation_percent": 100 * ((excess + shape.taut_length) / (58 * 9.525) - 1),
        "movement_mm": math.sqrt((strand + excess) ** 2 - strand**2),
        "sag_mm": math.sqrt(3 * strand * excess / 8),
        "crank_rock_deg": math.degrees(excess / shape.crank_radius),
    }


def held(found: dict, truth: dict[str, float]) -> dict[str, tuple[dict, float]]:
    return {quantity: (found["state"][quantity], value) for quantity, value in truth.items()}


def true_shape(rng: np.random.Generator) -> Geometry:
    centre = 114.10 + rng.uniform(-CENTRE_ERROR, CENTRE_ERROR)
    return geometry(Drive(9.525, 22, 44, centre, 58))


def test_what_a_movement_means() -> None:
    """Square law, strongly bent at small movements, with the centre distance uncertain as well."""

    def trial(rng: np.random.Generator) -> dict[str, tuple[dict, float]]:
        shape = true_shape(rng)
        movement = rng.uniform(1.0, 14.0)
        readings = rng.normal(movement, 0.5, 4).clip(0).tolist()
        payload = {"drive": UNSURE, "method": "total", "readings_mm": readings, **EXACT}
        excess = math.sqrt(shape.strand**2 + movement**2) - shape.strand
        return held(run("slack", payload), true_state(shape, excess))

    shares = coverage(trial)
    assert len(shares) == 5
    assert all(LEAST <= share <= MOST for share in shares.values()), shares


def test_what_a_worn_length_means() -> None:
    """Square root, steep near a taut chain, from a caliper reading and a centre distance."""

    def trial(rng: np.random.Generator) -> dict[str, tuple[dict, float]]:
        shape = true_shape(rng)
        worn = rng.uniform(0.0, 0.004)
        payload: Payload = {
            "drive": UNSURE,
            "method": "pin-to-pin",
            "pitches": 10,
            "readings_mm": rng.normal(10 * 9.525 * (1 + worn), 0.03, 4).tolist(),
            **EXACT,
        }
        excess = 58 * 9.525 * (1 + worn) - shape.taut_length
        return held(run("elongation", payload), true_state(shape, excess))

    shares = coverage(trial)
    assert len(shares) == 5
    assert all(LEAST <= share <= MOST for share in shares.values()), shares


def test_a_coarse_rule_is_covered_too() -> None:
    """A rule read to the half millimetre, off by up to 0.1 mm: never less than the promise."""

    def trial(rng: np.random.Generator) -> dict[str, tuple[dict, float]]:
        truth = rng.uniform(5, 12)
        seen = rng.normal(truth + rng.uniform(-0.1, 0.1), 0.3, 5)
        readings = (np.round(seen * 2) / 2).tolist()
        payload = {"drive": WORKED, "method": "total", "readings_mm": readings}
        given = {"resolution_mm": 0.5, "instrument_error_mm": 0.1}
        return {"movement": (run("slack", {**payload, **given})["measured"], truth)}

    assert coverage(trial)["movement"] >= LEAST


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
            **EXACT,
            "own_limit": limit,
        }
        outcome = run("elongation", payload)["verdict"]["outcome"]
        passed += outcome == "within"
        failed += outcome == "beyond"
    for share in (passed / TRIALS, failed / TRIALS):
        assert share <= 0.025 + 4 * math.sqrt(0.025 * 0.975 / TRIALS)

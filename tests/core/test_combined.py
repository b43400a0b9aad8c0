"""Several readings of one chain in one estimate: its truth, its agreement, the odd one out."""

import math
from typing import Any

import numpy as np
import pytest
from scipy import stats
from scipy.optimize import least_squares

from core.drives import WORKED, Payload
from core.shelves import excess, line, movement
from midspan.core import run
from midspan.core.combine import Part, combine_parts, odd_one_out

TRIALS = 2000
LEAST, MOST = 0.93, 0.97
WHOLE = WORKED["links"] * WORKED["pitch_mm"]
R1 = WORKED["pitch_mm"] / 2 / math.sin(math.pi / WORKED["crank_teeth"])
ERROR = 0.02
DRIVE: Payload = {**WORKED, "centre_distance_error_mm": ERROR}
U = {
    "elongation_percent": 0.005,
    "movement_mm": 0.3,
    "crank_rock_deg": 0.05,
    "chain_length_mm": 0.03,
}
ALL = tuple(U)


def unit(quantity: str) -> str:
    return quantity.rsplit("_", 1)[1]


def measurement(quantity: str, value: float, u: float | None = None) -> dict[str, Any]:
    u = U[quantity] if u is None else u
    return {"quantity": quantity, quantity: value, f"standard_uncertainty_{unit(quantity)}": u}


def combined(*measurements: dict[str, Any], drive: Payload = DRIVE) -> dict[str, Any]:
    return run("combined", {"drive": drive, "measurements": list(measurements)})


def truth(slack: float, centre: float) -> dict[str, float]:
    """Every reading of a chain with this excess, on a drive whose shafts truly stand this far."""
    strand, taut = line(centre)
    return {
        "excess_mm": slack,
        "elongation_percent": 100 * ((taut + slack) / WHOLE - 1),
        "movement_mm": movement(strand, slack),
        "crank_rock_deg": math.degrees(max(0.0, slack) / R1),
        "chain_length_mm": taut + slack,
    }


def drawn(rng: np.random.Generator, known: dict[str, float], quantities: Any) -> dict[str, float]:
    """Readings of each, with its own scatter; what only slack shows is never below nothing."""
    read = {q: known[q] + rng.normal(0, U[q]) for q in quantities}
    return {q: x if q in ("elongation_percent", "chain_length_mm") else max(0.0, x)
            for q, x in read.items()}  # fmt: skip


KINDS = [
    ("movement_mm", "crank_rock_deg"),
    ("elongation_percent", "movement_mm"),
    ("elongation_percent", "chain_length_mm"),
    ALL,
]


@pytest.mark.parametrize("quantities", KINDS, ids=lambda q: "+".join(x.split("_")[0] for x in q))
def test_the_truth_is_covered_and_agreement_is_not_called_disagreement(
    quantities: tuple[str, ...],
) -> None:
    rng = np.random.default_rng(8)
    hits = dict.fromkeys(("excess_mm", "movement_mm", "crank_rock_deg", "elongation_percent"), 0)
    chances = []
    for _ in range(TRIALS):
        known = truth(rng.uniform(0.15, 0.8), 114.10 + rng.uniform(-ERROR, ERROR))
        read = drawn(rng, known, quantities)
        found = combined(*(measurement(q, x) for q, x in read.items()))
        for name in hits:
            at = found["state"][name]
            hits[name] += at["low"] <= known[name] <= at["high"]
        chances.append(found["consistency"]["probability"])
        assert (found["odd_one_out"] is not None) <= (not found["consistency"]["consistent"])
    for name, count in hits.items():
        assert LEAST <= count / TRIALS <= MOST, name
    # The chances of agreement are spread evenly, so one in twenty is called surprising.
    alarms = float(np.mean(np.array(chances) < 0.05))
    assert abs(alarms - 0.05) <= 4 * (0.05 * 0.95 / TRIALS) ** 0.5
    assert stats.kstest(chances, "uniform").statistic < 0.05


@pytest.mark.parametrize("quantity", ALL)
def test_one_reading_combined_is_that_reading(quantity: str) -> None:
    """Nothing is gained or lost: its own value and uncertainty come back, on the drive as entered.

    What an elongation says of itself does not hang on the centre distance; only what it says of
    slack does.
    """
    value = truth(0.5, 114.10)[quantity]
    found = combined(measurement(quantity, value))
    assert found["consistency"]["degrees_of_freedom"] == 0
    assert found["consistency"]["consistent"] is True
    assert found["odd_one_out"] is None
    if quantity == "chain_length_mm":
        quantity, value = "elongation_percent", 100 * (value / WHOLE - 1)
        u = 100 * U["chain_length_mm"] / WHOLE
    else:
        u = U[quantity]
    at = found["state"][quantity]
    assert at["value"] == pytest.approx(value, rel=1e-6)
    assert at["standard_uncertainty"] == pytest.approx(u, rel=0.01)


def test_an_elongation_says_of_slack_what_its_own_bench_says() -> None:
    """A caliper reading, judged by its bench and put in here with the same uncertainty."""
    payload = {"method": "pin-to-pin", "pitches": 58, "drive": DRIVE, "resolution_mm": 0,
               "instrument_error_mm": 0, "repeatability_mm": 0.03,
               "readings_mm": [WHOLE * 1.0008]}  # fmt: skip
    bench = run("elongation", payload)
    measured = bench["measured"]
    found = combined(
        measurement("elongation_percent", measured["value"], measured["standard_uncertainty"])
    )
    for name, at in bench["state"].items():
        for end in ("value", "low", "high"):
            assert found["state"][name][end] == pytest.approx(at[end], rel=2e-3, abs=2e-4), name


@pytest.mark.parametrize("seed", range(5))
def test_the_estimate_by_scipy(seed: int) -> None:
    """Excess and the drive's own error together, by a general least-squares solver on the readings
    themselves, nothing made straight beforehand.
    """
    rng = np.random.default_rng(seed)
    read = drawn(rng, truth(0.5, 114.10 + rng.uniform(-ERROR, ERROR)), ALL)
    u_centre = ERROR / math.sqrt(3)

    def misses(at: np.ndarray) -> np.ndarray:
        foretold = truth(at[0], 114.10 + at[1] * u_centre)
        return np.array([(read[q] - foretold[q]) / U[q] for q in ALL] + [at[1]])

    best = least_squares(misses, [0.4, 0.0], xtol=1e-14, ftol=1e-14, gtol=1e-14)
    u = math.sqrt(np.linalg.inv(best.jac.T @ best.jac)[0, 0])
    found = combined(*(measurement(q, x) for q, x in read.items()))
    at = found["state"]["excess_mm"]
    assert at["value"] == pytest.approx(best.x[0], abs=0.1 * u)
    assert at["standard_uncertainty"] == pytest.approx(u, rel=0.03)
    assert found["consistency"]["chi_square"] == pytest.approx(2 * best.cost, rel=0.1, abs=0.1)
    assert found["consistency"]["degrees_of_freedom"] == 3


def test_equal_readings_make_the_plain_mean() -> None:
    # By hand: four rocks of 1.0, 1.1, 1.2, 1.3 deg, each known to 0.1: mean 1.15, u 0.05,
    # chi-square (0.15^2 + 0.05^2) * 2 / 0.1^2 = 5.0 on three degrees of freedom.
    found = combined(*(measurement("crank_rock_deg", x, 0.1) for x in (1.0, 1.1, 1.2, 1.3)))
    at = found["state"]["crank_rock_deg"]
    assert at["value"] == pytest.approx(1.15, rel=1e-9)
    assert at["standard_uncertainty"] == pytest.approx(0.05, rel=0.001)
    assert found["consistency"]["chi_square"] == pytest.approx(5.0, rel=1e-9)
    assert found["consistency"]["probability"] == pytest.approx(stats.chi2.sf(5.0, 3), rel=1e-9)


def spoil(quantity: str, factor: float, added: float, seed: int) -> dict[str, Any]:
    """All four read, one of them wrongly.

    What is doubled on paper has its scatter doubled with it; what is read as half has its own.
    """
    rng = np.random.default_rng(seed)
    known = truth(0.5, 114.10 + rng.uniform(-ERROR, ERROR))
    read = drawn(rng, known, ALL)
    u = U[quantity] * max(1.0, factor)
    read[quantity] = known[quantity] * factor + added + rng.normal(0, u)
    return combined(*(measurement(q, x, u if q == quantity else None) for q, x in read.items()))


SLIPS = [
    # which reading, times what, plus what, the cause that must be named first, one that must not be
    ("movement_mm", 0.5, 0.0, "one-way", "counted-twice"),
    ("movement_mm", 2.0, 0.0, "counted-twice", "one-way"),
    ("crank_rock_deg", 0.5, 0.0, "cam-degrees", "doubled"),
    ("crank_rock_deg", 2.0, 0.0, "doubled", "cam-degrees"),
    ("elongation_percent", 1.0, 0.08, "under-load", "stiff"),
    ("elongation_percent", 1.0, -0.08, "stiff", "under-load"),
    ("chain_length_mm", 1.0, 0.5, "under-load", "slack"),
    ("chain_length_mm", 1.0, -0.5, "slack", "under-load"),
]


@pytest.mark.parametrize(("quantity", "factor", "added", "cause", "never"), SLIPS)
def test_the_odd_one_is_found_with_its_cause(
    quantity: str, factor: float, added: float, cause: str, never: str
) -> None:
    """Each slip is worth many standard deviations, so it is nearly always found."""
    right = named = 0
    for seed in range(100):
        found = spoil(quantity, factor, added, seed)
        odd = found["odd_one_out"]
        if odd is None or odd["quantity"] != quantity:
            continue
        right += 1
        assert odd["index"] == ALL.index(quantity)
        assert found["consistency"]["consistent"] is False
        assert odd["expected_excess_mm"] == pytest.approx(0.5, abs=0.2)
        codes = [c["code"] for c in odd["causes"]]
        assert never not in codes
        named += codes[0] == cause
        assert all(c["text"] for c in odd["causes"])
        assert odd["origin"] != "published"
    assert right >= 95
    assert named >= 0.75 * right, "a true slip, put right, must agree: but for one in five"


def test_a_gear_that_is_worn_is_not_blamed_on_the_hand() -> None:
    """A third more movement than all else says is no slip of counting."""
    for seed in range(20):
        odd = spoil("movement_mm", 1.35, 0.0, seed)["odd_one_out"]
        if odd is not None and odd["quantity"] == "movement_mm":
            assert [c["code"] for c in odd["causes"]] == ["gear-worn"]


@pytest.mark.parametrize("one", ALL)
@pytest.mark.parametrize("other", ALL)
def test_of_two_that_differ_neither_is_named(one: str, other: str) -> None:
    known = truth(0.5, 114.10)
    wrong = truth(1.6, 114.10)
    found = combined(measurement(one, known[one]), measurement(other, wrong[other]))
    assert found["consistency"]["consistent"] is False
    assert found["odd_one_out"] is None
    parts = [Part(0.5, 0.03, False), Part(1.6, 0.03, True)]
    assert odd_one_out(parts, 0.05) is None


def test_what_shares_an_error_is_not_counted_twice() -> None:
    """Two lengths read against a centre distance known to 0.1: both are off together by its error,
    so two are hardly better than one. Against numpy's generalised least squares.
    """
    parts = [Part(0.40, 0.01, True), Part(0.43, 0.02, True), Part(0.60, 0.05, False)]
    centre = 0.1
    shared = np.array([[1.0, 1, 0], [1, 1, 0], [0, 0, 0]]) * centre**2
    covariance = np.diag([p.uncertainty**2 for p in parts]) + shared
    weights = np.linalg.inv(covariance)
    ones, values = np.ones(3), np.array([p.excess for p in parts])
    u = 1 / math.sqrt(ones @ weights @ ones)
    mean = ones @ weights @ values * u**2
    left = values - mean
    found = combine_parts(parts, centre)
    assert found.excess == pytest.approx(mean, rel=1e-9)
    assert found.uncertainty == pytest.approx(u, rel=1e-9)
    assert found.chi_square == pytest.approx(left @ weights @ left, rel=1e-9)
    assert found.dof == 2


@pytest.mark.parametrize("quantity", ["movement_mm", "crank_rock_deg"])
def test_no_movement_is_no_knowledge_of_zero(quantity: str) -> None:
    """A chain 0.2 mm too short neither moves nor rocks. Nothing felt says that it is tight or just
    taut, not that its excess is nothing to a few ten-thousandths of a millimetre.
    """
    tight = truth(-0.2, 114.10)
    found = combined(
        measurement(quantity, 0.0), measurement("elongation_percent", tight["elongation_percent"])
    )
    at = found["state"]["excess_mm"]
    assert at["low"] <= -0.2 <= at["high"]
    assert found["consistency"]["consistent"] is True


@pytest.mark.parametrize(
    "quantities", [("crank_rock_deg",), ("movement_mm",), ("movement_mm", "crank_rock_deg")],
    ids=lambda q: "+".join(x.split("_")[0] for x in q),
)  # fmt: skip
def test_nearly_taut_is_covered_too(quantities: tuple[str, ...]) -> None:
    """As little slack as the readings can just tell: never less than the promise."""
    rng = np.random.default_rng(9)
    hits = 0
    for _ in range(TRIALS):
        known = truth(rng.uniform(0.0, 0.1), 114.10)
        read = drawn(rng, known, quantities)
        at = combined(*(measurement(q, x) for q, x in read.items()))["state"]["excess_mm"]
        hits += at["low"] <= known["excess_mm"] <= at["high"]
    assert hits / TRIALS >= LEAST


def test_degrees_of_the_other_gear_follow_the_teeth() -> None:
    """Of 20 and 50 teeth, a degree of the driven gear is two and a half of the crank."""
    drive = {"pitch_mm": 9.525, "crank_teeth": 20, "cam_teeth": 50, "drive_kind": "general",
             "centre_distance_mm": 150.0, "centre_distance_error_mm": 0.02,
             "links": 0}  # fmt: skip
    strand, taut = line(150.0, drive)
    drive["links"] = math.ceil(taut / 9.525)
    slack = drive["links"] * 9.525 - taut
    rock = math.degrees(slack / (9.525 / 2 / math.sin(math.pi / 20)))
    found = combined(
        measurement("movement_mm", movement(strand, slack), 0.3),
        measurement("elongation_percent", 0.0, 0.005),
        measurement("crank_rock_deg", rock / 2.5, 0.05),
        drive=drive,
    )
    odd = found["odd_one_out"]
    assert odd["quantity"] == "crank_rock_deg"
    assert odd["causes"][0]["code"] == "cam-degrees"


def test_the_parts_show_what_each_reading_says_alone() -> None:
    known = truth(0.5, 114.10)
    found = combined(*(measurement(q, known[q]) for q in ALL))
    strand = line(114.10)[0]
    slopes = {
        "elongation_percent": WHOLE / 100,
        "movement_mm": known["movement_mm"] / math.hypot(strand, known["movement_mm"]),
        "crank_rock_deg": math.radians(R1),
        "chain_length_mm": 1.0,
    }
    for part, quantity in zip(found["parts"], ALL, strict=True):
        assert part["quantity"] == quantity
        assert part["value"] == known[quantity]
        assert part["excess_mm"] == pytest.approx(0.5, abs=1e-9)
        assert part["standard_uncertainty_mm"] == pytest.approx(
            slopes[quantity] * U[quantity], rel=0.01
        )
    assert excess(strand, known["movement_mm"]) == pytest.approx(0.5, abs=1e-9)

"""The interval of a hot slack: simulated with known truth, and by a general library's derivatives.

2,000 trials: the share of hits has a standard deviation of 0.5 %, so 93 to 97 % is four of them.
"""

import math
from typing import Any

import numpy as np
import pytest
from uncertainties import UFloat, ufloat, umath

from core.drives import WORKED
from core.shelves import MadeUp, line, movement
from midspan.core import run

TRIALS = 2000
LEAST, MOST = 0.93, 0.97
PARTS = ("block", "gear", "chain")
SURE = {"expansion_error_ppm": 0, "temperature_error_k": 0, "cold_temperature_error_k": 0}
WARM = {"block_material": "aluminium-356", "block_temperature_c": 85, "gear_temperature_c": 100,
        "chain_temperature_c": 105, "cold_temperature_c": 18}  # fmt: skip
ALPHA = {"block": 21.5, "gear": 12.3, "chain": 12.3}
HALF = {"block": 1.0, "gear": 1.0, "chain": 1.0}


def asked(**more: Any) -> dict[str, Any]:
    return {"drive": {**WORKED, "centre_distance_error_mm": 0.05}, **WARM, **more}


class Warmed:
    """A drive whose materials and temperatures are off by what their half-widths allow."""

    def __init__(self, rng: np.random.Generator, kelvin: float, cold_kelvin: float) -> None:
        block, oil = rng.uniform(-kelvin, kelvin, 2)
        cold = WARM["cold_temperature_c"] + rng.uniform(-cold_kelvin, cold_kelvin)
        warmer = {"block": block, "gear": oil, "chain": oil}
        self.strain = {
            part: (ALPHA[part] + rng.uniform(-HALF[part], HALF[part])) * 1e-6
            * (float(WARM[f"{part}_temperature_c"]) + warmer[part] - cold)
            for part in PARTS
        }  # fmt: skip

    def hot(self, centre: float, excess: float) -> tuple[float, float]:
        """True hot excess and movement of a chain with this cold excess, written anew."""
        length = (line(centre)[1] + excess) * (1 + self.strain["chain"])
        # The gears as a drive of a longer pitch: all but the block grown alike, then the block.
        scale = 1 + self.strain["gear"]
        strand, taut = line(centre * (1 + self.strain["block"]) / scale)
        left = length - taut * scale
        return left, movement(strand * scale, left)


@pytest.mark.parametrize("felt", [6.0, 9.0, 14.0])
@pytest.mark.parametrize("kelvin", [10.0, 2.0])
def test_the_hot_slack_is_covered(felt: float, kelvin: float) -> None:
    rng = np.random.default_rng([int(felt), int(kelvin)])
    hits = {"excess_mm": 0, "movement_mm": 0}
    for _ in range(TRIALS):
        centre = 114.10 + rng.uniform(-0.05, 0.05)
        warmed = Warmed(rng, kelvin, 3.0)
        strand = line(centre)[0]
        truth = warmed.hot(centre, math.hypot(strand, felt) - strand)
        read = max(0.0, felt + rng.normal(0, 0.3))
        found = run("heat", asked(movement_mm=read, temperature_error_k=kelvin))["hot_interval"]
        for name, value in zip(hits, truth, strict=True):
            hits[name] += found[name]["low"] <= value <= found[name]["high"]
    shares = {name: count / TRIALS for name, count in hits.items()}
    assert all(LEAST <= share <= MOST for share in shares.values()), shares


def test_the_fit_tables_hot_column_is_covered_with_materials_and_heat_unsure() -> None:
    rng = np.random.default_rng(8)
    hits = 0
    for _ in range(TRIALS):
        shelf = MadeUp(rng, 4, 3, 12)
        found = run("fit", {**shelf.payload, "heat": WARM})
        determined = [row for row in found["combinations"] if row["determined"]]
        row = determined[rng.integers(len(determined))]
        warmed = Warmed(rng, 10.0, 3.0)
        truth = warmed.hot(shelf.centre, shelf.excess(*shelf.place(row)))[1]
        at = row["hot_movement_mm"]
        # What the warmth makes of the wear itself, a thousandth, is left out on purpose.
        hits += at["low"] - 2e-3 <= truth <= at["high"] + 2e-3
    assert LEAST <= hits / TRIALS <= MOST


def by_library(felt: float, u: float) -> UFloat:
    """Hot excess with first-order uncertainty, by the derivatives of a general library."""
    flat = math.sqrt(3)
    centre = ufloat(114.10, 0.05 / flat)
    block, oil, cold = ufloat(0, 10 / flat), ufloat(0, 10 / flat), ufloat(18, 3 / flat)
    warmer = {"block": block, "gear": oil, "chain": oil}
    strain = {
        part: ufloat(ALPHA[part], HALF[part] / flat) * 1e-6
        * (WARM[f"{part}_temperature_c"] + warmer[part] - cold)
        for part in PARTS
    }  # fmt: skip
    r1, r2 = (9.525 / 2 / math.sin(math.pi / z) for z in (22, 44))

    def taut(at: UFloat, pitch: UFloat | float) -> UFloat:
        b = umath.asin((r2 - r1) * (pitch / 9.525) / at)
        turns = 22 * (math.pi - 2 * b) + 44 * (math.pi + 2 * b)
        return 2 * at * umath.cos(b) + turns * pitch / (2 * math.pi)

    # The cold excess as it was read, at the true centre distance whatever that is.
    strand = math.sqrt(114.10**2 - (r2 - r1) ** 2)
    excess = ufloat(math.hypot(strand, felt) - strand,
                    math.sqrt((felt * u) ** 2 + u**4 / 2) / math.hypot(strand, felt))  # fmt: skip
    length = (taut(centre, 9.525) + excess) * (1 + strain["chain"])
    return length - taut(centre * (1 + strain["block"]), 9.525 * (1 + strain["gear"]))


@pytest.mark.parametrize(("felt", "u"), [(5.5, 0.3), (9.0, 0.1), (20.0, 0.3)])
def test_the_standard_uncertainty_by_a_general_library(felt: float, u: float) -> None:
    known = by_library(felt, u)
    found = run("heat", asked(movement_mm=felt, standard_uncertainty_mm=u))
    at = found["hot_interval"]["excess_mm"]
    assert at["value"] == pytest.approx(known.nominal_value, abs=1e-9)
    assert at["standard_uncertainty"] == pytest.approx(known.std_dev, rel=2e-3)
    lines = [row["standard_uncertainty"] for row in found["budget"]]
    assert math.hypot(*lines) == pytest.approx(at["standard_uncertainty"], rel=1e-9)
    assert found["hot"]["excess_mm"] == pytest.approx(at["value"], abs=1e-12)
    assert found["hot"]["movement_mm"] == found["hot_interval"]["movement_mm"]["value"]


def test_only_what_is_unsure_widens_the_interval() -> None:
    exact = {"drive": {**WORKED, "centre_distance_error_mm": 0}, **WARM, **SURE}
    at = run("heat", {**exact, "movement_mm": 8.0, "standard_uncertainty_mm": 1e-4})
    moved = at["hot_interval"]["movement_mm"]
    assert moved["high"] - moved["low"] < 1e-3
    for field, value in (
        ("expansion_error_ppm", 1),
        ("temperature_error_k", 5),
        ("cold_temperature_error_k", 5),
        ("standard_uncertainty_mm", 0.2),
    ):
        more = {**exact, "movement_mm": 8.0, "standard_uncertainty_mm": 1e-4, field: value}
        wider = run("heat", more)["hot_interval"]["movement_mm"]
        assert wider["high"] - wider["low"] > 10 * (moved["high"] - moved["low"]), field


def test_every_half_width_says_where_it_is_from() -> None:
    found = run("heat", asked(movement_mm=6.0))
    fields = {a["field"]: a["origin"] for a in found["assumptions"]}
    for name in ("standard_uncertainty_mm", "temperature_error_k", "cold_temperature_error_k"):
        assert fields[name] == "from memory, unverified"
    used = {m["part"]: m for m in found["materials"]}
    # Its coefficient is in print, how far another steel may lie from it is not.
    assert used["chain"]["error_origin"] == "from memory, unverified"
    assert used["block"]["error_origin"] == "from memory, unverified"
    origins = {row["name"]: row["origin"] for row in found["budget"]}
    assert origins["centre distance"] == "given by the user"
    assert origins["expansion of the chain"] == "from memory, unverified"
    given = run("heat", asked(movement_mm=6.0, expansion_error_ppm=0.4))
    assert {m["expansion_error_ppm"] for m in given["materials"]} == {0.4}
    assert {m["error_origin"] for m in given["materials"]} == {"given by the user"}


def test_the_verdict_is_guarded() -> None:
    """Within only if the whole interval is; the zone only if both its ends are in it."""
    sharp = {**SURE, "standard_uncertainty_mm": 0.02}
    outcomes = set()
    for felt in np.linspace(1, 16, 61).tolist():
        found = run("heat", asked(movement_mm=felt, **sharp))
        at, verdict = found["hot_interval"]["movement_mm"], found["hot_verdict"]
        low, high = (found["cold_target"][f"hot_{end}_mm"] for end in ("lower", "upper"))
        inside = low <= at["low"] and at["high"] <= high
        outside = at["high"] < low or at["low"] > high
        assert (verdict["window"] == "within") == inside
        assert (verdict["window"] in ("below", "beyond")) == outside
        assert (verdict["between"] is None) == (verdict["outcome"] != "too-close")
        if verdict["outcome"] != "too-close":
            assert verdict["outcome"] == found["hot"]["zone"]
        excess = found["hot_interval"]["excess_mm"]
        sides = {"some": excess["low"] >= 0, "none": excess["high"] < 0}
        assert sides.get(verdict["slack"], excess["low"] < 0 <= excess["high"])
        warned = "hot-too-close" in {w["code"] for w in found["warnings"]}
        assert warned == (verdict["outcome"] == "too-close")
        outcomes.add(verdict["outcome"])
    assert outcomes == {"too-tight", "tight", "wanted", "loose", "too-loose", "too-close"}

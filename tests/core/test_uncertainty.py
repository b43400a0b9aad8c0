"""The uncertainty budget against GUM examples and two general-purpose libraries."""

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats
from uncertainties import ufloat, umath

from core.drives import WORKED, Payload, cam_drives, floats
from core.reference import rows
from midspan.core import run
from midspan.core.student import coverage_factor
from midspan.core.uncertainty import Component, combine, mean, propagate, rectangular
from midspan.core.uncertainty import sample_deviation as deviation


@pytest.mark.parametrize("row", rows("handbook-t-table"), ids=lambda r: r["degrees_of_freedom"])
def test_student_t_of_a_handbook(row: dict[str, str]) -> None:
    found = coverage_factor(int(row["degrees_of_freedom"]))
    assert found == pytest.approx(float(row["t_95"]), abs=0.00051)


@pytest.mark.parametrize("coverage", [0.5, 0.68, 0.95, 0.99])
def test_student_t_against_scipy(coverage: float) -> None:
    for dof in range(1, 201):
        known = stats.t.ppf((1 + coverage) / 2, dof)
        assert coverage_factor(dof, coverage) == pytest.approx(known, rel=1e-9), dof
    normal = stats.norm.ppf((1 + coverage) / 2)
    assert coverage_factor(None, coverage) == pytest.approx(normal, rel=1e-12)


def test_beyond_a_thousand_the_normal_factor_is_near_enough() -> None:
    # The validity stated: under 0.13 % from there on.
    assert coverage_factor(1000) == pytest.approx(stats.t.ppf(0.975, 1000), rel=1e-9)
    assert coverage_factor(1001) == pytest.approx(stats.t.ppf(0.975, 1001), rel=0.0013)


def test_gum_h1_end_gauge() -> None:
    # JCGM 100:2008, H.1: u 32 nm, effective degrees of freedom 16, t99 2.92, U99 93 nm.
    lines = [
        Component(
            row["component"],
            "B",
            float(row["uncertainty_nm"]),
            float(row["degrees_of_freedom"]),
            "",
        )
        for row in rows("gum-h1-end-gauge")
    ]
    found = combine(50000838.0, lines)
    assert round(found.uncertainty) == 32
    assert found.dof == 16
    assert round(coverage_factor(16, 0.99), 2) == 2.92
    assert round(coverage_factor(16, 0.99) * found.uncertainty) == 93
    assert found.expanded == pytest.approx(stats.t.ppf(0.975, 16) * found.uncertainty)


def test_gum_g_4_1_equal_parts() -> None:
    # GUM G.4.1, from memory, checked by hand: relative uncertainties 0.25, 0.57 and 0.82 % of 10, 5
    # and 15 readings give u 1.03 %, and 19.0 effective degrees of freedom from that rounded figure:
    # 1.03^4 / (0.25^4 / 9 + 0.57^4 / 4 + 0.82^4 / 14) = 19.04. Unrounded it is 18.999, which is cut
    # down, as G.4.1 has it.
    lines = [Component("", "A", u, n - 1, "") for u, n in [(0.25, 10), (0.57, 5), (0.82, 15)]]
    found = combine(0.0, lines)
    assert found.uncertainty == pytest.approx(1.03, abs=0.005)
    assert found.dof == 18
    assert found.uncertainty**4 / (0.25**4 / 9 + 0.57**4 / 4 + 0.82**4 / 14) == pytest.approx(
        18.999, abs=5e-4
    )


def test_a_budget_worked_by_hand() -> None:
    # Readings 10.1, 10.3, 10.2: s 0.1, u 0.1/sqrt(3); resolution 0.1: 0.05/sqrt(3).
    values = [10.1, 10.3, 10.2]
    assert mean(values) == pytest.approx(10.2)
    assert deviation(values) == pytest.approx(0.1)
    assert rectangular(0.05) == pytest.approx(0.1 / math.sqrt(12))
    lines = [
        Component("", "A", deviation(values) / math.sqrt(3), 2, ""),
        Component("", "B", rectangular(0.05), None, ""),
    ]
    found = combine(10.2, lines)
    # u^2 = 1/300 + 1/1200 = 1/240; nu = 2 (1/240)^2 / (1/300)^2 = 3.125, cut to 3.
    assert found.uncertainty == pytest.approx(math.sqrt(1 / 240))
    assert found.dof == 3
    assert found.factor == pytest.approx(3.182, abs=0.0005)


@given(
    parts=st.lists(
        st.tuples(floats(1e-6, 1e3), st.one_of(st.none(), st.integers(1, 500))),
        min_size=1,
        max_size=8,
    )
)
def test_combination_against_uncertainties_and_welch_satterthwaite(
    parts: list[tuple[float, int | None]],
) -> None:
    found = combine(1.0, [Component("", "B", u, dof, "") for u, dof in parts])
    whole = sum(ufloat(0, u) for u, _ in parts)
    assert found.uncertainty == pytest.approx(whole.std_dev, rel=1e-12)
    spread = sum(u**4 / dof for u, dof in parts if dof is not None)
    if spread == 0:
        assert found.dof is None
        return
    exact = whole.std_dev**4 / spread
    if exact > 1001:
        assert found.dof is None
    elif exact < 999:
        assert found.dof in {math.floor(exact * (1 - 1e-9)), math.floor(exact * (1 + 1e-9))}
        assert found.factor == pytest.approx(stats.t.ppf(0.975, found.dof), rel=1e-9)
    assert found.expanded == found.factor * found.uncertainty


def test_no_uncertainty_at_all() -> None:
    found = combine(3.0, [Component("", "B", 0.0, None, "")])
    assert (found.uncertainty, found.expanded, found.dof) == (0, 0, None)
    same = propagate(lambda x: x[0] ** 2, [(3.0, 0.0, 0.0)])
    assert (same.low, same.value, same.high, same.uncertainty) == (9, 9, 9, 0)


@given(
    a=floats(-5, 5),
    b=floats(-5, 5),
    u=st.tuples(floats(0.001, 1), floats(0.001, 1)),
)
def test_a_straight_function_is_carried_as_the_gum_says(
    a: float, b: float, u: tuple[float, float]
) -> None:
    known = a * ufloat(2, u[0]) + b * ufloat(3, u[1])
    found = propagate(lambda x: a * x[0] + b * x[1], [(2, u[0], 2 * u[0]), (3, u[1], 2 * u[1])])
    assert found.uncertainty == pytest.approx(known.std_dev, rel=1e-9, abs=1e-12)
    assert found.high - found.value == pytest.approx(2 * known.std_dev, rel=1e-9, abs=1e-12)
    assert found.value - found.low == pytest.approx(2 * known.std_dev, rel=1e-9, abs=1e-12)


def by_uncertainties(drive: Payload, centre_u: float) -> tuple[Any, Any, Any]:
    """Taut length, strand and crank radius of a drive, its centre distance uncertain."""
    p, z1, z2 = drive["pitch_mm"], drive["crank_teeth"], drive["cam_teeth"]
    r1, r2 = (p / 2 / math.sin(math.pi / z) for z in (z1, z2))
    centre = ufloat(drive["centre_distance_mm"], centre_u)
    b = umath.asin((r2 - r1) / centre)
    strand = centre * umath.cos(b)
    taut = 2 * strand + p * z1 * (0.5 - b / math.pi) + p * z2 * (0.5 + b / math.pi)
    return taut, strand, r1


@settings(max_examples=60)
@given(
    drive=cam_drives(), movement=floats(3, 20), scatter=floats(0.02, 0.1), half=floats(0.01, 0.1)
)
def test_the_state_from_a_movement_against_uncertainties(
    drive: Payload, movement: float, scatter: float, half: float
) -> None:
    readings = [movement - scatter, movement, movement + scatter]
    payload = {
        "drive": {**drive, "centre_distance_error_mm": half},
        "method": "total",
        "readings_mm": readings,
        "resolution_mm": 0.02,
        "instrument_error_mm": 0.03,
    }
    found = run("slack", payload)
    u = math.sqrt(scatter**2 / 3 + 0.01**2 / 3 + 0.03**2 / 3)
    assert found["measured"]["standard_uncertainty"] == pytest.approx(u, rel=1e-9)
    taut, strand, r1 = by_uncertainties(drive, half / math.sqrt(3))
    m = ufloat(found["measured"]["value"], u)
    excess = umath.sqrt(strand**2 + m**2) - strand
    nominal = drive["links"] * drive["pitch_mm"]
    known = {
        "excess_mm": excess,
        "elongation_percent": 100 * ((excess + taut) / nominal - 1),
        "movement_mm": m,
        "crank_rock_deg": excess / r1 * 180 / math.pi,
    }
    for name, at in known.items():
        assert found["state"][name]["value"] == pytest.approx(at.nominal_value, rel=1e-9, abs=1e-9)
        # First order both, but one by differences: a hair apart where the curve bends.
        assert found["state"][name]["standard_uncertainty"] == pytest.approx(at.std_dev, rel=2e-3)


@settings(max_examples=60)
@given(drive=cam_drives(), share=floats(0.2, 1), half=floats(0.001, 0.02), roller=floats(0.5, 0.65))
def test_the_state_from_an_inside_reading_against_uncertainties(
    drive: Payload, share: float, half: float, roller: float
) -> None:
    p, pitches = drive["pitch_mm"], 12
    length = p * pitches * (1 + 0.01 * share)
    d1 = roller * p
    payload = {
        "drive": {**drive, "centre_distance_error_mm": half, "roller_diameter_mm": d1},
        "method": "inside",
        "pitches": pitches,
        "readings_mm": [length - d1 + x for x in (-0.01, 0, 0.01)],
        "resolution_mm": 0.02,
        "instrument_error_mm": 0.03,
    }
    found = run("elongation", payload)
    # The roller's plus or minus is the one the result says it assumed.
    assumed = {a["field"]: a["value"] for a in found["assumptions"]}
    parts = [0.01 / math.sqrt(3), 0.01 / math.sqrt(3), 0.03 / math.sqrt(3)]
    parts.append(assumed["roller_diameter_mm"] / math.sqrt(3))
    u_mm = math.sqrt(sum(x * x for x in parts))
    percent = 100 * ufloat(length, u_mm) / (p * pitches) - 100
    measured = found["measured"]
    assert measured["value"] == pytest.approx(percent.nominal_value, rel=1e-9)
    assert measured["standard_uncertainty"] == pytest.approx(percent.std_dev, rel=1e-9)
    taut, strand, _ = by_uncertainties(drive, half / math.sqrt(3))
    excess = drive["links"] * p * (1 + percent / 100) - taut
    at = found["state"]["excess_mm"]
    assert at["value"] == pytest.approx(excess.nominal_value, rel=1e-9, abs=1e-9)
    assert at["standard_uncertainty"] == pytest.approx(excess.std_dev, rel=1e-3)
    r2 = p / 2 / math.sin(math.pi / drive["cam_teeth"])
    retard = percent / 100 * strand / r2 * 180 / math.pi
    at = found["state"]["cam_retard_deg"]
    assert at["value"] == pytest.approx(retard.nominal_value, rel=1e-9)
    assert at["standard_uncertainty"] == pytest.approx(retard.std_dev, rel=2e-2)


def test_two_jaws_of_one_caliper() -> None:
    """The same caliper reads inside and outside: its error may be shared, the rounding is not.
    The uncertainty must lie between all independent and all shared.
    """
    payload = {
        "method": "inside-and-outside",
        "pitches": 10,
        "pitch_mm": 9.525,
        "inside_readings_mm": [89.84, 89.85, 89.86],
        "outside_readings_mm": [102.53, 102.55, 102.57],
        "resolution_mm": 0.02,
        "instrument_error_mm": 0.03,
    }
    found = run("elongation", payload)["measured"]
    repeats = (0.01**2 / 3 + 0.02**2 / 3) / 4
    shared = (0.01**2 + 0.03**2) / 3
    scale = 100 / 95.25
    u = found["standard_uncertainty"]
    assert scale * math.sqrt(repeats + shared / 2) <= u * (1 + 1e-9)
    assert u <= scale * math.sqrt(repeats + shared) * (1 + 1e-9)


@given(
    first=st.lists(floats(5, 6), min_size=2, max_size=25),
    resolution=floats(0, 0.5),
    error=floats(0, 0.5),
)
def test_the_budget_adds_up_and_more_readings_leave_type_b_alone(
    first: list[float], resolution: float, error: float
) -> None:
    def budget(readings: list[float]) -> dict[str, Any]:
        payload = {
            "drive": WORKED,
            "method": "total",
            "readings_mm": readings,
            "resolution_mm": resolution,
            "instrument_error_mm": error,
        }
        return run("slack", payload)["measured"]

    few, many = budget(first), budget(first * 2)
    for measured in (few, many):
        total = sum(line["standard_uncertainty"] ** 2 for line in measured["budget"])
        assert measured["standard_uncertainty"] == pytest.approx(math.sqrt(total))
        assert measured["high"] - measured["value"] == pytest.approx(
            measured["expanded_uncertainty"]
        )
    assert (few["count"], many["count"]) == (len(first), 2 * len(first))
    kinds = [
        [
            (line["name"], line["standard_uncertainty"])
            for line in m["budget"]
            if line["kind"] == "B"
        ]
        for m in (few, many)
    ]
    assert kinds[0] == kinds[1], "repeating says nothing new of the instrument"
    scatter = [
        [x["standard_uncertainty"] for x in m["budget"] if x["kind"] == "A"] for m in (few, many)
    ]
    assert scatter[1][0] <= scatter[0][0] * (1 + 1e-9)


def test_a_lone_reading_rests_on_the_scatter_that_is_said() -> None:
    payload = {"drive": WORKED, "method": "total", "readings_mm": [6.0], "repeatability_mm": 0.4}
    found = run("slack", {**payload, "resolution_mm": 0, "instrument_error_mm": 0})
    assert found["measured"]["standard_uncertainty"] == pytest.approx(0.4)
    assert {w["code"] for w in found["warnings"]} >= {"single-reading"}
    silent = run("slack", {"drive": WORKED, "method": "total", "readings_mm": [6.0]})
    told = {a["field"] for a in silent["assumptions"]}
    assert told == {
        "resolution_mm",
        "instrument_error_mm",
        "repeatability_mm",
        "centre_distance_error_mm",
    }


DEFAULTS = run("describe", {})["defaults"]


@pytest.mark.parametrize(
    ("calc", "payload", "kind", "unit"),
    [
        ("slack", {"method": "total", "readings_mm": [6.0]}, "rule", "mm"),
        (
            "elongation",
            {"method": "pin-to-pin", "pitches": 10, "readings_mm": [95.5]},
            "caliper",
            "mm",
        ),
        ("crank-rock", {"method": "crank-degrees", "readings_deg": [2.0]}, "wheel", "deg"),
    ],
)
def test_what_is_assumed_is_what_is_said(calc: str, payload: Payload, kind: str, unit: str) -> None:
    """Giving the assumed figures oneself changes nothing but who said them."""
    silent = run(calc, {"drive": WORKED, **payload})
    assumed = {a["field"]: a["value"] for a in silent["assumptions"]}
    assert assumed.pop("centre_distance_error_mm") == 0.05
    assert assumed == {f"{name}_{unit}": value for name, value in DEFAULTS[kind].items()}
    given = run(calc, {"drive": {**WORKED, "centre_distance_error_mm": 0.05}, **payload, **assumed})
    assert given["assumptions"] == []
    assert given["state"] == silent["state"]
    for line in silent["measured"]["budget"]:
        assert line["origin"] == "from memory, unverified"
    for line in given["measured"]["budget"]:
        assert line["origin"] == "given by the user"

"""Anywhere in the admitted ranges of the shelf's calculations: an answer or a named problem."""

import json
import math
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from core.drives import WORKED, Payload, floats
from core.test_dispatch import check_answer
from midspan.core import dispatch
from midspan.core.glossary import TERMS


def admitted(name: str) -> st.SearchStrategy[float]:
    """Any number that a field takes, its ends often."""
    term = TERMS[name]
    if term.whole:
        return st.integers(term.low, term.high)
    ends = st.sampled_from((float(term.low), float(term.high)))
    # Small numbers of every size, which a flat search over a wide range hardly meets.
    small = floats(-12, 0).map(lambda x: min(max(10.0**x, term.low), term.high))
    return ends | small | floats(term.low, term.high)


def fields(*names: str) -> dict[str, st.SearchStrategy[float]]:
    return {name: admitted(name) for name in names}


DRIVES = st.just(WORKED) | st.fixed_dictionaries(
    {**fields("pitch_mm", "crank_teeth", "cam_teeth", "centre_distance_mm", "links",
              "centre_distance_error_mm"), "drive_kind": st.just("general")}
)  # fmt: skip
WINDOW = fields("window_lower_mm", "window_upper_mm")
OWN_FIGURES = {
    **fields(
        "block_expansion_ppm", "gear_expansion_ppm", "chain_expansion_ppm", "cold_temperature_c",
        "block_temperature_c", "gear_temperature_c", "chain_temperature_c",
    ),
    "expansion_source": st.just("sheet"),
}  # fmt: skip
U = {"elongation_percent": "percent", "movement_mm": "mm", "crank_rock_deg": "deg",
     "chain_length_mm": "mm"}  # fmt: skip
MEASUREMENTS = st.one_of(
    *(
        st.fixed_dictionaries(
            {"quantity": st.just(name), **fields(name, f"standard_uncertainty_{unit}")}
        )
        for name, unit in U.items()
    )
)
CHAINS, GEARS = ["a", "b", "c"], ["p", "q"]
CHAIN, GEAR = (st.sampled_from(ids) for ids in (CHAINS, GEARS))
TRIAL = st.fixed_dictionaries(
    {"chain": CHAIN, "gear_set": GEAR, **fields("movement_mm", "standard_uncertainty_mm")},
    optional=fields("centre_distance_mm"),
)
BENCH = st.fixed_dictionaries(
    {"chain": CHAIN, **fields("elongation_percent", "standard_uncertainty_percent")}
)
WORN = st.fixed_dictionaries(
    {"gear_set": GEAR, **fields("added_excess_mm", "standard_uncertainty_mm")}
)
ASKED = {
    "heat": st.fixed_dictionaries(
        {"drive": DRIVES, **OWN_FIGURES},
        optional={**WINDOW, **fields("movement_mm", "stiffness_n_per_mm"),
                  "curve_points": st.integers(0, 3)},
    ),
    "bored": st.fixed_dictionaries(
        {"drive": DRIVES, **fields("new_centre_distance_mm")},
        optional={**WINDOW, **fields("movement_mm")},
    ),
    "gear": st.fixed_dictionaries(
        {"method": st.just("over-pins"), **fields("teeth", "pitch_mm", "pin_diameter_mm"),
         "readings_mm": st.lists(admitted("readings_mm"), min_size=1, max_size=4)},
        optional=fields("resolution_mm", "instrument_error_mm", "repeatability_mm"),
    ),
    "combined": st.fixed_dictionaries(
        {"drive": DRIVES, "measurements": st.lists(MEASUREMENTS, min_size=1, max_size=5)}
    ),
    "fit": st.fixed_dictionaries(
        {"drive": DRIVES, "chains": st.just(CHAINS), "gear_sets": st.just(GEARS),
         "trials": st.lists(TRIAL, max_size=8)},
        optional={**WINDOW, "bench": st.lists(BENCH, max_size=3),
                  "gears": st.lists(WORN, max_size=3), "heat": st.fixed_dictionaries(OWN_FIGURES)},
    ),
}  # fmt: skip


def walk(value: Any) -> list[float]:
    """Every number in an answer."""
    if isinstance(value, dict):
        return [x for inner in value.values() for x in walk(inner)]
    if isinstance(value, list):
        return [x for inner in value for x in walk(inner)]
    return [value] if isinstance(value, float) else []


@settings(max_examples=700)
@given(asked=st.one_of(*(st.tuples(st.just(name), one) for name, one in ASKED.items())))
def test_every_admitted_number_has_an_answer(asked: tuple[str, Payload]) -> None:
    name, payload = asked
    answer = check_answer(dispatch(name, json.dumps(payload)))
    if answer["ok"]:
        assert all(math.isfinite(x) for x in walk(answer["result"]))
        for row in answer["result"].get("combinations", []):
            if row["determined"]:
                assert row["standard_uncertainty_mm"] > 0
                assert 0 <= row["cold_probability"] <= 1
                moved = row["cold_movement_mm"]
                assert 0 <= moved["low"] <= moved["value"] <= moved["high"]
    else:
        for problem in answer["problems"]:
            assert problem["field"], problem

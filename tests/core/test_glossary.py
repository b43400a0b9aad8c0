"""One name, one meaning, one unit: every number in and out of the core is in the glossary."""

import math
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from core.good_inputs import GOOD
from midspan.core import glossary, run

TERMS: dict[str, dict[str, Any]] = run("glossary", {})["terms"]
# The longest that fits counts: a stiffness in N per mm is no length.
ENDINGS = {
    "_mm_per_deg2": "mm/deg2", "_per_deg2": "1/deg2",
    "_mm_deg": "mm deg", "_per_deg_mm": "mm", "_mm_per_deg": "mm/deg",
    "_kg_m2": "kg m2", "_mm_per_s": "mm/s", "_mj": "mJ", "_hz": "Hz",
    "_percent_per_h": "%/h", "_kpa": "kPa", "_n_per_mm": "N/mm", "_mm": "mm",
    "_km": "km", "_deg": "deg",
    "_percent": "%", "_pitches": "", "_c": "degC", "_ppm": "1e-6/K", "_n": "N",
    "_k": "K", "_um_per_kn": "um/kN",
    "_min": "min", "_weeks": "weeks", "_km_per_h": "km/h", "_h": "h",
    "_kw": "kW", "_nm": "N m", "_rpm": "rpm", "_m": "m",
    "_mg_per_kg": "mg/kg", "_mm2_per_s": "mm2/s", "_mpa_s": "mPa.s",
}  # fmt: skip
# The drawing's coordinates, in mm as its description says: a point has x and y on any drawing.
DRAWING = {"x", "y", "r", "taut_strand", "slack_strand", "slack_normal"}
# Echoes: the value received, or a figure whose field stands beside it.
ECHOES = {"got"}


def numbers(answer: Any, name: str = "") -> Iterator[str]:
    """Names of every number in an answer, lists under the name of the list."""
    if isinstance(answer, dict):
        for key, value in answer.items():
            yield from numbers(value, key)
    elif isinstance(answer, list):
        for value in answer:
            yield from numbers(value, name)
    elif isinstance(answer, (int, float)) and not isinstance(answer, bool):
        yield name


def names(answer: Any) -> Iterator[str]:
    """Every key that carries a unit as its ending."""
    if isinstance(answer, dict):
        for key, value in answer.items():
            if key.endswith(tuple(ENDINGS)):
                yield key
            yield from names(value)
    elif isinstance(answer, list):
        for value in answer:
            yield from names(value)


@pytest.mark.parametrize("case", GOOD)
def test_every_number_in_and_out_is_in_the_glossary(case: str) -> None:
    name, payload = GOOD[case]
    result = run(name, payload)
    found = {*numbers(payload), *numbers(result)} - DRAWING - ECHOES
    assert found <= set(TERMS)


@pytest.mark.parametrize("case", GOOD)
def test_every_name_with_a_unit_is_in_the_glossary(case: str) -> None:
    name, payload = GOOD[case]
    assert {*names(payload), *names(run(name, payload))} <= set(TERMS)


def test_the_numbers_of_limits_are_in_the_glossary() -> None:
    assert set(numbers(run("limits", {}))) <= set(TERMS)
    quantities = {limit["quantity"] for limit in run("limits", {})["limits"]}
    assert quantities <= set(TERMS)


@pytest.mark.parametrize("name", TERMS)
def test_a_term_is_whole(name: str) -> None:
    term = TERMS[name]
    assert set(term) == {"symbol", "unit", "label", "meaning", "low", "high", "whole"}
    assert term["label"]
    assert term["label"][0].isupper()
    assert term["meaning"].endswith(".")
    ending = next((e for e in ENDINGS if name.endswith(e)), None)
    if ending is not None:
        assert term["unit"] == ENDINGS[ending]
    else:
        assert term["unit"] in ("", "% of centre distance"), "its name must carry the unit"
    if term["low"] is not None:
        assert term["low"] < term["high"] < math.inf


def test_each_name_has_one_meaning() -> None:
    """A subject's terms must not quietly replace another's."""
    files = Path(glossary.__file__).parent.glob("glossary_*.py")
    assert {part.__name__.split(".")[-1] for part in glossary.SUBJECTS} == {f.stem for f in files}
    names = [term.name for subject in glossary.SUBJECTS for term in subject.TERMS]
    assert len(names) == len(set(names)) == len(TERMS)


def test_labels_tell_apart_what_may_stand_together() -> None:
    """Two fields of one form under one label cannot be told apart."""
    for _, payload in GOOD.values():
        for form in (payload, payload.get("drive", {})):
            labels = [TERMS[name]["label"] for name in form if name in TERMS]
            assert len(labels) == len(set(labels)), labels
    out = run(*GOOD["drive"])
    labels = [TERMS[name]["label"] for name in out if name in TERMS]
    assert len(labels) == len(set(labels))


def test_an_assumption_and_a_warning_name_a_field_and_an_origin() -> None:
    payload = {"drive": dict(GOOD["drive"][1]["drive"]), "method": "total", "readings_mm": [6.0]}
    del payload["drive"]["centre_distance_error_mm"]
    found = run("slack", payload)
    assert len(found["assumptions"]) == 4
    for told in found["assumptions"]:
        assert told["field"] in TERMS
        assert told["unit"] == TERMS[told["field"]]["unit"]
        assert told["origin"] == "from memory, unverified"
        assert told["text"]
    for told in found["warnings"]:
        assert told["field"].split(".")[-1] in TERMS


# What each has the user do: reach into the engine, turn the gears apart, touch hot metal.
CAUTIONS = {
    "elongation": {"turn-by-hand"},
    "slack": {"turn-by-hand", "valve-contact"},
    "crank-rock": {"turn-by-hand", "valve-contact"},
    "heat": {"hot"},
    "bored": {"turn-by-hand"},
    "gear": {"turn-by-hand"},
    "combined": {"turn-by-hand", "valve-contact"},
    "fit": {"turn-by-hand", "valve-contact"},
    "plan": {"hot", "turn-by-hand", "valve-contact"},
    "plan-adapted": {"hot", "turn-by-hand", "valve-contact"},
    "plan-calendar": {"hot"},
    "forecast": {"turn-by-hand", "valve-contact"},
    "tdc": {"no-start", "turn-by-hand", "valve-contact"},
    "cam": {"no-start", "turn-by-hand", "running-direction", "valve-contact", "checking-springs"},
    "adjust": {"no-start", "turn-by-hand", "valve-contact", "clearance-after"},
    "lift": {"turn-by-hand", "valve-contact"},
    "rockers": {"turn-by-hand", "valve-contact"},
    "matrix": {"turn-by-hand", "valve-contact", "hot"},
    "clearance": {"turn-by-hand", "valve-contact", "checking-springs"},
    "compression": {"turn-by-hand"},
    "compare": {"carbon-monoxide", "rotating", "hot-oil", "eyes-ears"},
    "pulls-needed": {"carbon-monoxide", "rotating", "hot-oil", "eyes-ears"},
    "correction": {"carbon-monoxide", "rotating", "hot-oil", "eyes-ears"},
    "spark": {"running-engine", "exhaust-gas", "hot-parts"},
    "gain": {"turn-by-hand", "hot"},
}


@pytest.mark.parametrize("case", [c for c in GOOD if c != "drive"])
def test_every_result_says_the_cautions(case: str) -> None:
    name, payload = GOOD[case]
    found = run(name, payload)
    said = found["cautions"]
    codes = [c["code"] for c in said]
    assert set(codes) >= CAUTIONS[name]
    assert codes[-1] == "manual-first"
    assert all(len(c["text"]) > 20 for c in said)
    for row in found.get("measured", {}).get("budget", []):
        assert row["origin"]

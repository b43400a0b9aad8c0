"""Heat, bored blocks, gears, combined readings and the fit of a shelf: every form of an answer."""

import json
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from midspan.core import calc_fit, run
from midspan.web.examples import DRIVE, INPUTS
from web.document import Document

KEEPS_NOTHING = True
ALUMINIUM = {"block_material": "aluminium-356"}
IRON = {"block_material": "grey-iron"}
# Every temperature and material that the aim of a cold chain rests on.
KNOWN = IRON | {
    "gear_material": "steel-4140", "chain_material": "steel-4140", "cold_temperature_c": 18,
    "block_temperature_c": 85, "gear_temperature_c": 95, "chain_temperature_c": 95,
}  # fmt: skip
OWN = {"block_expansion_ppm": 11.0, "expansion_source": "data sheet"}
COLD = {"cold_temperature_c": -20, "block_temperature_c": -30, "chain_temperature_c": -10.5}
TIGHT = DRIVE | {"centre_distance_mm": 114.2}
READINGS = [139.84, 139.82, 139.84]
LOOSE_TEETH = {"teeth": 36, "pitch_mm": 8, "method": "over-chain", "roller_diameter_mm": 5.6}
MANUAL = {"quantity": "reading_mm", "lower": 139.9, "source": "manual, page 5"}


def of(quantity: str, value: float, u: float) -> dict[str, Any]:
    """A measurement as the calculation takes it."""
    unit = {"elongation_percent": "percent", "crank_rock_deg": "deg"}.get(quantity, "mm")
    return {"quantity": quantity, quantity: value, f"standard_uncertainty_{unit}": u}


def trial(chain: str, gear_set: str, movement: float, **more: float) -> dict[str, Any]:
    """A trial fit as the calculation takes it."""
    fitted = {"chain": chain, "gear_set": gear_set, "movement_mm": movement}
    return fitted | {"standard_uncertainty_mm": 0.2} | more


SHELF = {"drive": DRIVE, "chains": ["a", "b", "c"], "gear_sets": ["x", "y"]}
LENGTH = {"chain": "a", "elongation_percent": 0.01, "standard_uncertainty_percent": 0.01}

# calculation, what is special, input, and what must be true of the answer.
CASES: dict[str, tuple[str, dict[str, Any], Callable[[Any], bool]]] = {
    "nominal chain": ("heat", IRON, lambda r: r["cold"]["excess_mm"] > 0),
    "curves": ("heat", IRON | {"curve_points": 2}, lambda r: len(r["curves"]) == 3),
    "no curves": ("heat", IRON, lambda r: r["curves"] == []),
    "loose when hot": ("heat", IRON, lambda r: r["interference"] is None),
    "tight when hot": (
        "heat", ALUMINIUM | {"movement_mm": 2}, lambda r: r["interference"]["tension_low_n"] > 0
    ),
    "stiffness given": (
        "heat", ALUMINIUM | {"movement_mm": 2, "stiffness_n_per_mm": 3000},
        lambda r: r["interference"]["tension_low_n"] == r["interference"]["tension_high_n"],
    ),
    "own coefficient": ("heat", OWN, lambda r: r["materials"][0]["id"] == "own"),
    "frost": ("heat", IRON | COLD, lambda r: len(r["assumptions"]) < 9),
    "no cold target": (
        "heat", IRON | {"block_temperature_c": 40, "chain_temperature_c": 200},
        lambda r: r["cold_target"]["cold_lower_mm"] is None,
    ),
    "window": (
        "heat", IRON | {"window_lower_mm": 3, "window_upper_mm": 4},
        lambda r: r["cold_target"]["origin"] == "from memory, unverified",
    ),
    "window, all else known": (
        "heat", KNOWN | {"window_lower_mm": 3, "window_upper_mm": 4},
        lambda r: r["cold_target"]["origin"] == "given by the user",
    ),
    "nearer": (
        "bored", {"new_centre_distance_mm": 114.0}, lambda r: r["excess_change_mm"] > 0
    ),
    "further": (
        "bored", {"new_centre_distance_mm": 114.3, "movement_mm": 5},
        lambda r: r["after"]["excess_mm"] < 0,
    ),
    "too-short chain": (
        "bored", {"drive": TIGHT, "new_centre_distance_mm": 114.1}, lambda r: r["warnings"] != []
    ),
    "gear by itself": (
        "gear", LOOSE_TEETH | {"drive": None, "readings_mm": [97.0]},
        lambda r: r["added_excess_mm"] is None,
    ),
    "gear of a drive": (
        "gear", INPUTS["gear"], lambda r: r["added_excess_mm"]["value"] > 0
    ),
    "gear, no limit": (
        "gear", INPUTS["gear"], lambda r: r["verdict"]["outcome"] == "no-limit"
    ),
    "gear, own limit": (
        "gear", INPUTS["gear"] | {"own_limit": MANUAL},
        lambda r: r["verdict"]["outcome"] == "below" and r["verdict"]["limit"]["lower"] == 139.9,
    ),
    "gear, manuals that differ": (
        "gear", LOOSE_TEETH | {"drive": None, "readings_mm": [97.0, 97.0, 97.0]},
        lambda r: r["verdict"]["outcome"] == "limits-disagree",
    ),
    "gear, instrument given": (
        "gear", INPUTS["gear"] | {"resolution_mm": 0.01, "instrument_error_mm": 0.01},
        lambda r: r["assumptions"] == [],
    ),
    "one measurement": (
        "combined", {"measurements": [of("movement_mm", 6, 0.2)]},
        lambda r: r["consistency"]["probability"] is None and r["odd_one_out"] is None,
    ),
    "two that differ": (
        "combined",
        {"measurements": [of("movement_mm", 13, 0.1), of("chain_length_mm", 552.5, 0.01)]},
        lambda r: not r["consistency"]["consistent"] and r["odd_one_out"] is None,
    ),
    "two that agree": (
        "combined",
        {"measurements": [of("movement_mm", 6, 0.2), of("crank_rock_deg", 0.3, 0.1)]},
        lambda r: r["consistency"]["consistent"],
    ),
    "an odd one": (
        "combined", INPUTS["combined"], lambda r: r["odd_one_out"]["quantity"] == "movement_mm"
    ),
    "nothing tried": (
        "fit", SHELF | {"trials": []},
        lambda r: not any(row["determined"] for row in r["combinations"]),
    ),
    "cold only": (
        "fit", SHELF | {"trials": [trial("a", "x", 5)], "bench": [LENGTH]},
        lambda r: r["combinations"][0]["hot_movement_mm"] is None and r["materials"] == [],
    ),
    "hot": (
        "fit", SHELF | {"trials": [trial("a", "x", 5)], "heat": ALUMINIUM},
        lambda r: r["combinations"][0]["hot_probability"] is not None,
    ),
    "never tried together": (
        "fit", SHELF | {"trials": [trial("a", "x", 5), trial("b", "y", 6)]},
        lambda r: [row["determined"] for row in r["combinations"]] == [True] * 2 + [False] * 4
        and len(r["groups"]) == 2 and r["next_trial"]["share"] is None,
    ),
    "all determined": (
        "fit", SHELF | {"chains": ["a"], "trials": [trial("a", "x", 5), trial("a", "y", 6)]},
        lambda r: r["next_trial"]["share"] > 0,
    ),
    "a tight trial": (
        "fit", SHELF | {"trials": [trial("a", "x", 0), trial("b", "x", 6)]},
        lambda r: r["unused_trials"] == [0],
    ),
    "another block": (
        "fit", SHELF | {"trials": [trial("a", "x", 7, centre_distance_mm=114.0)]},
        lambda r: r["combinations"][0]["determined"],
    ),
    "trials that contradict": (
        "fit", SHELF | {"trials": [trial("a", "x", 5), trial("a", "x", 15)]},
        lambda r: not r["consistency"]["consistent"],
    ),
}  # fmt: skip


def whole(calc: str, special: dict[str, Any]) -> dict[str, Any]:
    """Give the whole input of a case: null stands for left out."""
    return {"drive": DRIVE} | special if calc != "gear" else special


@pytest.mark.parametrize("name", CASES)
def test_every_form_of_an_answer_is_the_documents(client, document: Document, name: str) -> None:
    calc, special, holds = CASES[name]
    payload = whole(calc, special)
    path = f"/api/v1/calc/{calc}"
    assert document.faults(payload, document.input_schema(path)) == []
    answer = client.post(path, json=payload)
    value = document.expect(answer, "post", path)
    assert (answer.status_code, value) == (200, run(calc, payload))
    assert holds(value)
    assert value["cautions"][-1]["code"] == "manual-first"


def test_all_of_them_in_one_batch(client, document: Document) -> None:
    items = [{"calc": calc, "input": whole(calc, special)} for calc, special, _ in CASES.values()]
    content = document.whole["paths"]["/api/v1/calc/batch"]["post"]["requestBody"]["content"]
    assert document.faults({"items": items}, content["application/json"]["schema"]) == []
    answer = client.post("/api/v1/calc/batch", json={"items": items})
    results = document.expect(answer, "post", "/api/v1/calc/batch")["results"]
    assert [row["result"] for row in results] == [run(i["calc"], i["input"]) for i in items]


def test_a_batch_item_that_is_no_such_input_is_not_in_the_document(document: Document) -> None:
    content = document.whole["paths"]["/api/v1/calc/batch"]["post"]["requestBody"]["content"]
    mixed = {"items": [{"calc": "heat", "input": INPUTS["slack"]}]}
    assert document.faults(mixed, content["application/json"]["schema"]) != []


REFUSED: dict[str, tuple[str, dict[str, Any], str, str]] = {
    "no material": ("heat", {}, "block_material", "missing"),
    "unknown material": ("heat", {"block_material": "wood"}, "block_material", "not-a-choice"),
    "no source": ("heat", {"block_expansion_ppm": 11}, "expansion_source", "missing"),
    "swapped window": (
        "heat", IRON | {"window_lower_mm": 5, "window_upper_mm": 4}, "window_upper_mm", "conflict",
    ),
    "beyond the strand": ("heat", IRON | {"movement_mm": 120}, "movement_mm", "out-of-range"),
    "misspelt": ("heat", IRON | {"movment_mm": 5}, "movment_mm", "unknown-field"),
    "gears touch": (
        "bored", {"new_centre_distance_mm": 90}, "new_centre_distance_mm", "gears-collide",
    ),
    "beyond the old strand": (
        "bored", {"new_centre_distance_mm": 114, "movement_mm": 120}, "movement_mm", "out-of-range",
    ),
    "no such method": ("gear", {"method": "by eye"}, "method", "not-a-choice"),
    "which gear": (
        "gear", {k: v for k, v in INPUTS["gear"].items() if k != "gear"}, "gear", "missing",
    ),
    "teeth twice": ("gear", INPUTS["gear"] | {"teeth": 44}, "teeth", "conflict"),
    "roller over pins": (
        "gear", INPUTS["gear"] | {"roller_diameter_mm": 6}, "roller_diameter_mm", "unknown-field",
    ),
    "limit of another quantity": (
        "gear", INPUTS["gear"] | {"own_limit": MANUAL | {"quantity": "movement_mm"}},
        "own_limit.quantity", "not-a-choice",
    ),
    "nothing measured": ("combined", {"measurements": []}, "measurements", "empty-list"),
    "too much measured": (
        "combined", {"measurements": [of("movement_mm", 6, 1)] * 11}, "measurements", "too-many",
    ),
    "no uncertainty": (
        "combined", {"measurements": [{"quantity": "movement_mm", "movement_mm": 6}]},
        "measurements[0].standard_uncertainty_mm", "missing",
    ),
    "another's uncertainty": (
        "combined",
        {"measurements": [of("movement_mm", 6, 1) | {"standard_uncertainty_deg": 1}]},
        "measurements[0].standard_uncertainty_deg", "unknown-field",
    ),
    "certain": (
        "combined", {"measurements": [of("movement_mm", 6, 0)]},
        "measurements[0].standard_uncertainty_mm", "out-of-range",
    ),
    "no shelf": ("fit", {"gear_sets": ["x"], "trials": []}, "chains", "missing"),
    "empty shelf": ("fit", SHELF | {"chains": [], "trials": []}, "chains", "not-a-list"),
    "named twice": ("fit", SHELF | {"chains": ["a", "a"], "trials": []}, "chains", "not-a-list"),
    "no trials": ("fit", SHELF, "trials", "missing"),
    "not on the shelf": (
        "fit", SHELF | {"trials": [trial("z", "x", 5)]}, "trials[0].chain", "not-a-choice",
    ),
    "gears of a trial touch": (
        "fit", SHELF | {"trials": [trial("a", "x", 5, centre_distance_mm=90)]},
        "trials[0].centre_distance_mm", "gears-collide",
    ),
    "too many trials": (
        "fit", SHELF | {"trials": [trial("a", "x", 5)] * 501}, "trials", "too-many",
    ),
    "heat without a material": (
        "fit", SHELF | {"trials": [], "heat": {}}, "heat.block_material", "missing",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", REFUSED)
def test_what_is_refused_is_named(client, document: Document, name: str) -> None:
    calc, special, field, code = REFUSED[name]
    answer = client.post(f"/api/v1/calc/{calc}", json=whole(calc, special))
    problem = document.expect(answer, "post", f"/api/v1/calc/{calc}")
    assert answer.status_code == 422
    (found,) = [e for e in problem["errors"] if e["field"] == field]
    assert found["code"] == code
    assert found["need"] in found["detail"]
    assert found["next_step"]


def largest() -> Iterator[tuple[str, Any]]:
    """The largest shelf that can be asked for, each part under an id of its own."""
    chains = [f"01923f5e-8c00-7000-8000-{i:012x}" for i in range(calc_fit.MOST_CHAINS)]
    gears = [f"01923f5e-8c00-7000-9000-{i:012x}" for i in range(calc_fit.MOST_GEARS)]
    yield "chains", chains
    yield "gear_sets", gears
    pairs = [(chain, gear_set) for gear_set in gears for chain in chains][: calc_fit.MOST_TRIALS]
    yield (
        "trials",
        [trial(c, g, 5 + i / 333, centre_distance_mm=114.1) for i, (c, g) in enumerate(pairs)],
    )
    yield (
        "bench",
        [LENGTH | {"chain": chains[i % len(chains)]} for i in range(calc_fit.MOST_TRIALS)],
    )
    yield "heat", ALUMINIUM


def test_the_fit_of_the_largest_shelf_can_be_kept(client, document: Document) -> None:
    payload = {"drive": DRIVE} | dict(largest())
    result = document.expect(
        client.post("/api/v1/calc/fit", json=payload), "post", "/api/v1/calc/fit"
    )
    reading = {
        "calc": "fit", "taken_at": "2026-01-31T12:00:00Z", "input": payload, "result": result,
        "core_version": result["core_version"], "limit": None,
    }  # fmt: skip
    address = "/api/v1/readings/01923f5e-8c00-7000-8000-000000000001"
    answer = client.put(address, json=reading)
    assert answer.status_code == 201, json.dumps(answer.get_json())[:500]
    assert client.get(address).get_json()["result"] == result
    said = client.get(address + "/explanation").get_json()
    assert said["recomputed"] == result
    assert said["same_verdict"] is None

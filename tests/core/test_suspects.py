"""Readings of a shelf that disagree: every single culprit, against fitting anew without each."""

import copy
from typing import Any

import numpy as np
import pytest

from core.drives import WORKED, Payload
from core.shelves import MadeUp
from midspan.core import run

SURPRISING = 0.01


def without(payload: Payload, field: str) -> Payload:
    """The same question with one reading taken out."""
    left = copy.deepcopy(payload)
    name, place = field.rstrip("]").split("[")
    del left[name][int(place)]
    return left


def fields(payload: Payload) -> list[str]:
    return [f"{name}[{k}]" for name in ("trials", "bench", "gears")
            for k in range(len(payload.get(name, [])))]  # fmt: skip


def spoiled(seed: int, trials: int = 16) -> tuple[MadeUp, int]:
    """A shelf with one movement read one way instead of in and out, and its place."""
    rng = np.random.default_rng(seed)
    shelf = MadeUp(rng, 5, 4, trials, bench=3, measured_gears=2, scatter=0.15)
    moves = [one["movement_mm"] for one in shelf.payload["trials"]]
    place = int(np.argmax(moves))
    shelf.payload["trials"][place]["movement_mm"] /= 2
    return shelf, place


# Of the first ten, those whose halved movement shows at all.
@pytest.mark.parametrize("seed", [0, 1, 2, 4, 5, 6, 7])
def test_the_culprits_are_those_that_fitting_anew_without_them_finds(seed: int) -> None:
    """The spread of a movement is worked out again for each fit, so a probability near the bound
    may fall either way; well off it the two ways must say the same.
    """
    shelf, _ = spoiled(seed)
    found = run("fit", shelf.payload)
    assert not found["consistency"]["consistent"]
    told = {one["field"]: one["probability"] for one in found["suspects"]}
    assert list(told.values()) == sorted(told.values(), reverse=True)
    for field in fields(shelf.payload):
        again = run("fit", without(shelf.payload, field))["consistency"]
        dof = found["consistency"]["degrees_of_freedom"]
        checked = again["degrees_of_freedom"] == dof - 1
        if checked and again["probability"] > 5 * SURPRISING:
            assert field in told, (field, again["probability"])
        if not checked or again["probability"] < SURPRISING / 5:
            assert field not in told, (field, again["probability"])


def test_a_movement_read_one_way_is_named_with_its_cause() -> None:
    named = caused = judged = 0
    for seed in range(40):
        shelf, place = spoiled(seed)
        found = run("fit", shelf.payload)
        if found["consistency"]["consistent"]:
            continue
        judged += 1
        by_field = {one["field"]: one for one in found["suspects"]}
        culprit = by_field.get(f"trials[{place}]")
        named += culprit is not None
        caused += culprit is not None and culprit["cause"]["code"] == "one-way"
    assert judged > 25
    assert named > 0.9 * judged
    assert caused > 0.7 * judged


def bench_under_load(seed: int) -> dict[str, Any]:
    rng = np.random.default_rng(seed)
    shelf = MadeUp(rng, 4, 3, 18, bench=3, measured_gears=2, scatter=0.1)
    shelf.payload["bench"][1]["elongation_percent"] += 0.15
    return run("fit", shelf.payload)


def test_a_bench_length_taken_under_load_is_named_with_its_cause() -> None:
    found = bench_under_load(1)
    assert not found["consistency"]["consistent"]
    by_field = {one["field"]: one for one in found["suspects"]}
    assert by_field["bench[1]"]["cause"]["code"] == "under-load"


def test_readings_that_agree_have_no_suspects() -> None:
    shelf = MadeUp(np.random.default_rng(3), 5, 4, 14)
    found = run("fit", shelf.payload)
    assert found["consistency"]["consistent"]
    assert found["suspects"] == []


def test_two_that_differ_and_nothing_else_are_both_left_unnamed() -> None:
    """With one reading to spare, leaving out either leaves nothing to judge by."""
    trial = {"chain": "a", "gear_set": "p", "standard_uncertainty_mm": 0.1}
    found = run("fit", {"drive": WORKED, "chains": ["a"], "gear_sets": ["p"], "trials": [
        {**trial, "movement_mm": 5.0}, {**trial, "movement_mm": 9.0}]})  # fmt: skip
    assert not found["consistency"]["consistent"]
    assert found["suspects"] == []


def test_places_count_the_readings_that_told_nothing() -> None:
    """A movement of nothing is left out of the fit, yet keeps its place in the question."""
    shelf, place = spoiled(2)
    before = {one["field"] for one in run("fit", shelf.payload)["suspects"]}
    assert f"trials[{place}]" in before
    first = {**shelf.payload["trials"][0], "movement_mm": 0.0}
    shelf.payload["trials"].insert(0, first)
    after = {one["field"] for one in run("fit", shelf.payload)["suspects"]}
    assert f"trials[{place + 1}]" in after

"""The fit of a whole shelf against numpy's least squares, and what it does not know."""

import itertools
import math
from collections.abc import Iterator
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from scipy import stats

from core.drives import WORKED, Payload
from core.shelves import (
    MadeUp,
    contrast,
    designs,
    estimable,
    excess,
    line,
    movement,
    null_space,
    seen,
    solved,
)
from midspan.core import run
from midspan.core.observation import Observation
from midspan.core.shelf import Shelf

WINDOW = (4.7625, 6.35)


def pairs(chains: int, gears: int) -> Iterator[tuple[int, int]]:
    return itertools.product(range(chains), range(gears))


@settings(max_examples=200)
@given(design=designs())
def test_determined_is_what_the_null_space_says(design: Any) -> None:
    chains, gears, blocks, rows = design
    shelf = Shelf(chains, gears, blocks, [Observation(*row) for row in rows])
    unnoticed = null_space(seen(chains, gears, blocks, rows).matrix)
    known = {
        pair: estimable(unnoticed, contrast(chains, gears, blocks, *pair))
        for pair in pairs(chains, gears)
    }
    assert {pair: shelf.groups.determined(*pair) for pair in pairs(chains, gears)} == known
    assert set(shelf.predictions(0)) == {pair for pair, found in known.items() if found}


@settings(max_examples=150)
@given(design=designs())
def test_predictions_and_covariances_are_numpys(design: Any) -> None:
    chains, gears, blocks, rows = design
    shelf = Shelf(chains, gears, blocks, [Observation(*row) for row in rows])
    data = seen(chains, gears, blocks, rows)
    unknowns, covariance, chi_square = solved(data)
    # A second way, which knows nothing of pseudo-inverses.
    weighted = data.matrix / data.uncertainties[:, None]
    other = np.linalg.lstsq(weighted, data.values / data.uncertainties, rcond=1e-11)[0]
    rank = data.matrix.shape[1] - null_space(data.matrix).shape[1]
    for block in range(blocks):
        found = shelf.predictions(block)
        for pair, (value, spread) in found.items():
            row = contrast(chains, gears, blocks, *pair)
            row[chains + gears :] = np.eye(blocks)[block]
            assert value == pytest.approx(row @ unknowns, abs=1e-9)
            assert value == pytest.approx(row @ other, abs=1e-9)
            assert spread == pytest.approx(math.sqrt(row @ covariance @ row), rel=1e-8)
    for pair in shelf.predictions(0):
        by_chain, by_gears = shelf.crossed(*pair, 0)
        row = contrast(chains, gears, blocks, *pair)
        for other_pair in shelf.predictions(0):
            known = row @ covariance @ contrast(chains, gears, blocks, *other_pair)
            found = by_chain[other_pair[0]] + by_gears[other_pair[1]]
            assert found == pytest.approx(known, abs=1e-9)
    found_chi_square, dof = shelf.chi_square()
    assert found_chi_square == pytest.approx(chi_square, rel=1e-8, abs=1e-8)
    assert dof == len(rows) - rank


def reference(payload: Payload) -> dict[tuple[str, str], tuple[float, float]]:
    """Excess and its uncertainty of every determined combination: the likeliest, by Gauss and
    Newton's steps on the movements themselves, from the drive's geometry written anew and numpy.
    """
    chains, gears = payload["chains"], payload["gear_sets"]
    drive = payload["drive"]
    centres = [drive["centre_distance_mm"]]
    whole = drive["links"] * drive["pitch_mm"]
    alone: list[tuple[Any, ...]] = []
    for bench in payload.get("bench", []):
        scale = whole / 100
        u = bench["standard_uncertainty_percent"] * scale
        alone.append((chains.index(bench["chain"]), None, None,
                      bench["elongation_percent"] * scale, u))  # fmt: skip
    for gear in payload.get("gears", []):
        u = gear["standard_uncertainty_mm"]
        alone.append((None, gears.index(gear["gear_set"]), None, gear["added_excess_mm"], u))
    trials = []
    for trial in payload["trials"]:
        at = trial.get("centre_distance_mm", centres[0])
        if at not in centres:
            centres.append(at)
        place = (chains.index(trial["chain"]), gears.index(trial["gear_set"]), centres.index(at))
        trials.append((place, trial["movement_mm"], trial["standard_uncertainty_mm"], line(at)))
    for k, at in enumerate(centres):
        h = 1e-3
        slope = (line(at + h, drive)[1] - line(at - h, drive)[1]) / (2 * h)
        u = slope * drive["centre_distance_error_mm"] / math.sqrt(3)
        alone.append((None, None, k, 0.0, u))
    sizes = (len(chains), len(gears), len(centres))
    guesses = [m for _, m, _, _ in trials]
    for _ in range(6):
        rows = list(alone)
        for ((i, j, k), m, u, (strand, taut)), about in zip(trials, guesses, strict=True):
            slope = about / math.hypot(strand, about)
            value = excess(strand, about) + slope * (m - about) - (whole - taut)
            rows.append((i, j, k, value, slope * u))
        data = seen(*sizes, rows)
        unknowns, covariance, _ = solved(data)
        guesses = [
            movement(
                strand, whole - taut + unknowns[[i, len(chains) + j, sum(sizes[:2]) + k]].sum()
            )
            for (i, j, k), _, _, (strand, taut) in trials
        ]
    nominal = whole - line(centres[0], drive)[1]
    found = {}
    unnoticed = null_space(data.matrix)
    for i, j in pairs(len(chains), len(gears)):
        row = contrast(*sizes, i, j)
        if estimable(unnoticed, row):
            spread = math.sqrt(row @ covariance @ row)
            found[(chains[i], gears[j])] = (nominal + row @ unknowns, spread)
    return found


@pytest.mark.parametrize("seed", range(12))
def test_the_fit_from_movements_to_probabilities(seed: int) -> None:
    """Movements between 4 and 11 mm, known to 0.2 mm: there the square law is straight enough for
    two ways of taking its bend into account to agree to a tenth of the uncertainty.
    """
    rng = np.random.default_rng(seed)
    shelf = MadeUp(rng, 6, 4, 13, scatter=0.2, bench=seed % 4, measured_gears=seed % 3)
    if seed % 2:
        for trial in shelf.payload["trials"][::3]:
            trial["centre_distance_mm"] = 114.06
    found = run("fit", shelf.payload)
    known = reference(shelf.payload)
    rows = {(row["chain"], row["gear_set"]): row for row in found["combinations"]}
    assert len(rows) == len(found["combinations"]) == 24
    assert {pair for pair, row in rows.items() if row["determined"]} == set(known)
    strand = line(WORKED["centre_distance_mm"])[0]
    for pair, (value, u) in known.items():
        row = rows[pair]
        assert row["excess_mm"] == pytest.approx(value, abs=0.1 * u)
        assert row["standard_uncertainty_mm"] == pytest.approx(u, rel=0.02)
        moved = row["cold_movement_mm"]
        # Of its own estimate, so that small differences of the fit are not counted twice.
        value, u = row["excess_mm"], row["standard_uncertainty_mm"]
        for end, k in (("value", 0), ("low", -1), ("high", 1)):
            at = value + k * stats.norm.ppf(0.975) * u
            assert moved[end] == pytest.approx(movement(strand, at), abs=1e-5)
        ends = [(excess(strand, m) - value) / u for m in WINDOW]
        chance = stats.norm.cdf(ends[1]) - stats.norm.cdf(ends[0])
        assert row["cold_probability"] == pytest.approx(chance, abs=1e-9)
    for pair in set(rows) - set(known):
        told = {name: x for name, x in rows[pair].items() if x is not None}
        assert told == {"chain": pair[0], "gear_set": pair[1], "determined": False}


def test_hot_predictions_are_those_of_the_heat_calculation() -> None:
    """A combination's cold movement, put into the heat calculation, comes out as its hot one."""
    shelf = MadeUp(np.random.default_rng(4), 5, 3, 10)
    # Materials and temperatures exact: what they leave open comes on top of the cold interval.
    warm = {"block_material": "aluminium-356", "block_temperature_c": 60, "temperature_error_k": 0,
            "expansion_error_ppm": 0, "cold_temperature_error_k": 0}  # fmt: skip
    found = run("fit", {**shelf.payload, "heat": warm})
    for row in found["combinations"]:
        if not row["determined"]:
            continue
        for end in ("value", "low", "high"):
            cold = row["cold_movement_mm"][end]
            if cold <= 0:
                continue
            hot = run("heat", {"drive": shelf.drive, "movement_mm": cold, **warm})["hot"]
            # The wear itself is warmed too: a thousandth of it at most.
            assert row["hot_movement_mm"][end] == pytest.approx(hot["movement_mm"], abs=0.02)
    chances = [row["hot_probability"] for row in found["combinations"] if row["determined"]]
    assert chances == sorted(chances, reverse=True)


def test_undetermined_comes_last_and_best_first() -> None:
    shelf = MadeUp(np.random.default_rng(3), 8, 5, 8, bench=0, measured_gears=0)
    rows = run("fit", shelf.payload)["combinations"]
    told = [row["determined"] for row in rows]
    assert told == sorted(told, reverse=True)
    assert 0 < sum(told) < len(told)
    chances = [row["cold_probability"] for row in rows if row["determined"]]
    assert chances == sorted(chances, reverse=True)


def test_far_from_the_window_the_nearer_still_comes_first() -> None:
    """All too loose, each known to a hundredth: the chance is nothing for all of them, and yet one
    is far nearer than another. The order in which they were typed must not decide.
    """
    movements = [12.0, 9.0, 15.0, 7.6, 10.5]
    trials = [
        {"chain": f"c{i}", "gear_set": "g", "movement_mm": m, "standard_uncertainty_mm": 0.1}
        for i, m in enumerate(movements)
    ]
    payload = {"drive": WORKED, "chains": [f"c{i}" for i in range(5)], "gear_sets": ["g"],
               "trials": trials}  # fmt: skip
    rows = run("fit", payload)["combinations"]
    found = [row["cold_movement_mm"]["value"] for row in rows]
    assert found == sorted(found), [row["cold_probability"] for row in rows]


def trial(chain: str, gear_set: str, moved: float = 6.0, u: float = 0.3) -> dict[str, Any]:
    return {"chain": chain, "gear_set": gear_set, "movement_mm": moved,
            "standard_uncertainty_mm": u}  # fmt: skip


# Two sets of trials that share nothing.
APART: Payload = {
    "drive": WORKED,
    "chains": ["a", "b", "c", "d", "e"],
    "gear_sets": ["p", "q", "r"],
    "trials": [trial("a", "p"), trial("b", "p", 7.0), trial("c", "q", 5.0), trial("d", "q", 8.0)],
}


def groups(found: dict[str, Any]) -> set[tuple[frozenset[str], frozenset[str], bool]]:
    return {
        (frozenset(g["chains"]), frozenset(g["gear_sets"]), g["anchored"]) for g in found["groups"]
    }


def test_what_was_never_tried_together_is_said() -> None:
    found = run("fit", APART)
    assert groups(found) == {
        (frozenset("ab"), frozenset("p"), False),
        (frozenset("cd"), frozenset("q"), False),
    }
    known = {(r["chain"], r["gear_set"]) for r in found["combinations"] if r["determined"]}
    assert known == {("a", "p"), ("b", "p"), ("c", "q"), ("d", "q")}
    told = found["next_trial"]
    assert (told["chain"], told["gear_set"]) not in known
    assert "tie" in told["why"]


def test_a_bench_length_in_each_group_ties_them() -> None:
    def measured(*chains: str) -> Payload:
        rows = [{"chain": chain, "elongation_percent": 0.02,
                 "standard_uncertainty_percent": 0.01} for chain in chains]  # fmt: skip
        return {**APART, "bench": rows}

    one = run("fit", measured("a"))
    assert {(r["chain"], r["gear_set"]) for r in one["combinations"] if r["determined"]} == {
        ("a", "p"), ("b", "p"), ("c", "q"), ("d", "q")
    }  # fmt: skip
    both = run("fit", measured("a", "c"))
    known = {(r["chain"], r["gear_set"]) for r in both["combinations"] if r["determined"]}
    assert known == set(itertools.product("abcd", "pq"))
    assert {g[2] for g in groups(both)} == {True}
    lone = run("fit", measured("a", "c", "e"))
    known = {(r["chain"], r["gear_set"]) for r in lone["combinations"] if r["determined"]}
    assert known == set(itertools.product("abcde", "pq")), "r was never measured in any way"


def test_doing_as_told_ties_everything_one_trial_at_a_time() -> None:
    """Each recommended trial must determine more than before, until nothing is left open."""
    payload = {**APART, "trials": list(APART["trials"])}
    known = -1
    for _ in range(10):
        found = run("fit", payload)
        now = sum(row["determined"] for row in found["combinations"])
        assert now > known
        known = now
        if now == 15:
            break
        told = found["next_trial"]
        payload["trials"].append(trial(told["chain"], told["gear_set"]))
    assert known == 15
    # Eight parts hang together by seven trials, and four were there.
    assert len(payload["trials"]) == 7


def test_two_groups_are_tied_before_something_new_is_started() -> None:
    """A trial that joins two groups settles more combinations than one of an untouched part: with
    one trial to make, the one that tells most should be told.
    """
    found = run("fit", APART)
    told = found["next_trial"]
    best = 0
    gains = {}
    for pair in itertools.product(APART["chains"], APART["gear_sets"]):
        more = {**APART, "trials": [*APART["trials"], trial(*pair)]}
        gains[pair] = sum(row["determined"] for row in run("fit", more)["combinations"])
        best = max(best, gains[pair])
    assert gains[(told["chain"], told["gear_set"])] == best


def test_movement_of_nothing_is_left_out_and_said() -> None:
    """No movement says that the chain was tight, not how tight."""
    with_none = {**APART, "trials": [*APART["trials"], trial("a", "q", 0.0)]}
    found = run("fit", with_none)
    assert found["unused_trials"] == [4]
    without = run("fit", APART)
    assert found["combinations"] == without["combinations"]
    assert without["unused_trials"] == []


@pytest.mark.parametrize("seed", range(8))
def test_the_recommended_trial_is_the_best_single_one(seed: int) -> None:
    """By brute force: add each trial in turn, at the movement foretold for it and with the stated
    uncertainty of the next reading, fit anew, and see what is left of the best few's variance.
    """
    rng = np.random.default_rng(100 + seed)
    shelf = MadeUp(rng, 5, 4, 12, bench=2 + seed % 3, measured_gears=seed % 3)
    for i in range(5):  # so that all are determined
        shelf.try_on(i, i % 4, 0.3)
    found = run("fit", shelf.payload)
    assert all(row["determined"] for row in found["combinations"])
    few = [(row["chain"], row["gear_set"]) for row in found["combinations"][:10]]
    rows = {(row["chain"], row["gear_set"]): row for row in found["combinations"]}

    def left(payload: Payload) -> float:
        spread = {
            (row["chain"], row["gear_set"]): row["standard_uncertainty_mm"]
            for row in run("fit", payload)["combinations"]
        }
        return float(sum(spread[pair] ** 2 for pair in few))

    before = left(shelf.payload)
    drops = {}
    for pair, row in rows.items():
        next_one = trial(*pair, row["cold_movement_mm"]["value"])
        more = {**shelf.payload, "trials": [*shelf.payload["trials"], next_one]}
        drops[pair] = 1 - left(more) / before
    told = found["next_trial"]
    pair = (told["chain"], told["gear_set"])
    assert drops[pair] >= 0.999 * max(drops.values())
    assert told["share"] == pytest.approx(drops[pair], rel=0.01)
    assert 0 < told["share"] < 1


def test_the_scatter_assumed_of_the_next_trial_is_said() -> None:
    joined = {"drive": WORKED, "chains": ["a"], "gear_sets": ["p"], "trials": [trial("a", "p")]}
    assumed = {a["field"]: a for a in run("fit", joined)["assumptions"]}
    assert assumed["standard_uncertainty_mm"]["origin"] == "from memory, unverified"
    # Where groups are only to be tied together, nothing was assumed of the trial's scatter.
    assert "standard_uncertainty_mm" not in {a["field"] for a in run("fit", APART)["assumptions"]}


def test_readings_of_one_combination_only() -> None:
    payload = {"drive": WORKED, "chains": ["a"], "gear_sets": ["p"], "trials": [trial("a", "p")]}
    found = run("fit", payload)
    (row,) = found["combinations"]
    strand = line(114.10)[0]
    # The mean of a square is over the square of the mean: a hundredth of a millimetre here.
    assert row["cold_movement_mm"]["value"] == pytest.approx(6.0, abs=0.01)
    assert row["standard_uncertainty_mm"] == pytest.approx(0.3 * 6 / strand, rel=0.01)
    assert found["consistency"]["degrees_of_freedom"] == 0
    assert found["consistency"]["probability"] is None


def test_nothing_read_at_all() -> None:
    payload = {"drive": WORKED, "chains": ["a", "b"], "gear_sets": ["p"], "trials": []}
    found = run("fit", payload)
    assert [row["determined"] for row in found["combinations"]] == [False, False]
    assert found["next_trial"] is not None
    assert found["groups"] == []


def test_the_largest_shelf_admitted_has_an_answer() -> None:
    rng = np.random.default_rng(9)
    shelf = MadeUp(rng, 60, 30, 500, bench=30, measured_gears=10, scatter=0.15)
    found = run("fit", shelf.payload)
    assert len(found["combinations"]) == 1800
    known = reference(shelf.payload)
    for row in found["combinations"][:100]:
        value, u = known[(row["chain"], row["gear_set"])]
        assert row["excess_mm"] == pytest.approx(value, abs=0.1 * u)
        assert row["standard_uncertainty_mm"] == pytest.approx(u, rel=0.02)

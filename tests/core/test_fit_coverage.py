"""Does the 95 % interval of a foretold combination hold the truth 95 times in 100?

Simulated shelves with known truth: the offsets, the block's true centre distance and every reading
are drawn anew each time, movements felt with their scatter in mm and put through the square law.
One combination of each shelf is looked at, chosen by chance, so that 2,000 shelves are 2,000
independent trials: their share has a standard deviation of 0.5 %, and 93 to 97 % is four of them.
"""

from collections import namedtuple
from typing import Any

import numpy as np
import pytest

from core.shelves import MadeUp, line, movement
from midspan.core import run

TRIALS = 2000
LEAST, MOST = 0.93, 0.97

Counted = namedtuple("Counted", ("cold", "hot", "alarms", "surprised", "chances", "hits"))

WARM = {"block_material": "aluminium-356", "block_temperature_c": 60, "gear_temperature_c": 60,
        "chain_temperature_c": 60,
        # Exact here, so that the shelf's own part is what is tested; test_hot.py has the rest.
        "expansion_error_ppm": 0, "temperature_error_k": 0,
        "cold_temperature_error_k": 0}  # fmt: skip


def hot_truth(shelf: MadeUp, chain: int, gear_set: int) -> float:
    """True movement hot: block by 21.5, all steel by 12.3 millionths for each of 40 K."""
    block, steel = 21.5e-6 * 40, 12.3e-6 * 40
    # Warming all alike scales the drive; what is left is a longer centre distance.
    strand, taut = line(shelf.centre * (1 + block) / (1 + steel))
    excess = (shelf.whole + shelf.lengths[chain] + shelf.wears[gear_set] - taut) * (1 + steel)
    return movement(strand * (1 + steel), excess)


def counted(seed: int, **design: Any) -> Counted:
    rng = np.random.default_rng(seed)
    cold = hot = alarms = surprised = judged = 0
    chances, hits = [], []
    for _ in range(TRIALS):
        shelf = MadeUp(rng, 5, 4, 14, **design)
        found = run("fit", {**shelf.payload, "heat": WARM})
        determined = [row for row in found["combinations"] if row["determined"]]
        row = determined[rng.integers(len(determined))]
        pair = shelf.place(row)
        at = row["cold_movement_mm"]
        cold += at["low"] <= shelf.movement(*pair) <= at["high"]
        at = row["hot_movement_mm"]
        # What the warmth makes of the wear itself, a thousandth, is left out on purpose.
        hot += at["low"] - 1e-3 <= hot_truth(shelf, *pair) <= at["high"] + 1e-3
        chances.append(row["cold_probability"])
        hits.append(4.7625 <= shelf.movement(*pair) <= 6.35)
        probability = found["consistency"]["probability"]
        if probability is not None:
            judged += 1
            alarms += not found["consistency"]["consistent"]
            surprised += probability < 0.05
    return Counted(cold / TRIALS, hot / TRIALS, alarms / judged, surprised / judged,
                   np.array(chances), np.array(hits))  # fmt: skip


@pytest.fixture(scope="module")
def usual() -> Counted:
    """Movements from about 4 to 11 mm."""
    return counted(1)


@pytest.fixture(scope="module")
def tight() -> Counted:
    """A block whose shafts stand farther apart: half the combinations are tight, or nearly."""
    return counted(2, nominal_centre=114.20, longest=0.1, worn=0.05)


def test_cold_movement_is_covered(usual: Counted) -> None:
    assert LEAST <= usual.cold <= MOST


def test_hot_movement_is_covered(usual: Counted) -> None:
    assert LEAST <= usual.hot <= MOST


def test_a_tight_shelf_is_covered_as_well(tight: Counted) -> None:
    assert LEAST <= tight.cold <= MOST


def test_readings_that_agree_are_not_called_inconsistent(usual: Counted) -> None:
    """One in a hundred by chance. The centre distance is off by a flat range, not a normal one, so
    a little fewer; four standard deviations more are allowed.
    """
    assert usual.alarms <= 0.01 + 4 * (0.01 * 0.99 / TRIALS) ** 0.5
    assert usual.surprised <= 0.05 + 4 * (0.05 * 0.95 / TRIALS) ** 0.5
    assert usual.surprised > 0.02, "and yet the test can speak"


def test_on_a_tight_shelf_a_false_alarm_stays_rare(tight: Counted) -> None:
    """Movements hardly felt are kept only where they came out large, and their squares are skewed:
    no normal theory gives one in a hundred there. It must stay a few in a hundred.
    """
    assert tight.alarms <= 0.04
    assert tight.surprised <= 0.10


def test_a_chance_of_landing_is_what_it_says(usual: Counted) -> None:
    """Of the combinations given about this chance, about this share truly lie in the window."""
    for low, high in ((0.0, 0.05), (0.05, 0.5), (0.5, 0.95), (0.95, 1.001)):
        some = (usual.chances >= low) & (usual.chances < high)
        count = int(some.sum())
        assert count > 25, "too few to tell"
        expected = float(usual.chances[some].mean())
        share = float(usual.hits[some].mean())
        allowed = 4 * (max(expected * (1 - expected), 0.02) / count) ** 0.5
        assert abs(share - expected) <= allowed, (low, share, expected)


@pytest.mark.parametrize(
    ("felt", "times"),
    # The same pair tried again and again: any leaning of the estimate would show.
    [(6.0, 1), (6.0, 5), (6.0, 20), (2.0, 5)],
)
def test_one_pair_tried_again_and_again(felt: float, times: int) -> None:
    rng = np.random.default_rng(3)
    strand = line(114.10)[0]
    excess = (strand**2 + felt**2) ** 0.5 - strand
    hits, misses = 0, []
    for _ in range(TRIALS):
        shelf = MadeUp(rng, 1, 1, 0, longest=0, worn=0, error=1e-6, bench=0, measured_gears=0)
        shelf.lengths[0] = excess - shelf.excess(0, 0)
        for _ in range(times):
            shelf.try_on(0, 0, 0.3)
        at = run("fit", shelf.payload)["combinations"][0]["cold_movement_mm"]
        hits += at["low"] <= felt <= at["high"]
        misses.append(at["value"] - felt)
    assert LEAST <= hits / TRIALS <= MOST
    # On the mean it is right to a fifth of the scatter of the estimate.
    assert abs(np.mean(misses)) < 0.2 * np.std(misses)


def test_a_wrong_trial_is_noticed() -> None:
    """One movement read one way instead of in and out, among twenty trials: half its size."""
    rng = np.random.default_rng(5)
    noticed = 0
    for _ in range(200):
        shelf = MadeUp(rng, 5, 4, 20)
        shelf.payload["trials"][0]["movement_mm"] /= 2
        noticed += not run("fit", shelf.payload)["consistency"]["consistent"]
    assert noticed > 150

"""Shelves of chains and gear sets: made up with known truth, and solved by numpy alone."""

import math
from collections import namedtuple
from typing import Any

import numpy as np
from hypothesis import strategies as st

from core.drives import WORKED, Payload, floats

# Design matrix (a column for each chain, gear set and block), values and standard uncertainties.
Seen = namedtuple("Seen", ("matrix", "values", "uncertainties"))


def seen(chains: int, gears: int, blocks: int, observations: list[Any]) -> Seen:
    """Readings as plain least squares has them: (chain, gear set, block, value, uncertainty)."""
    matrix = np.zeros((len(observations), chains + gears + blocks))
    for row, (chain, gear_set, block, _, _) in zip(matrix, observations, strict=True):
        for place, start in ((chain, 0), (gear_set, chains), (block, chains + gears)):
            if place is not None:
                row[start + place] = 1
    return Seen(
        matrix, np.array([o[3] for o in observations]), np.array([o[4] for o in observations])
    )


def contrast(chains: int, gears: int, blocks: int, chain: int, gear_set: int) -> np.ndarray:
    """What a trial in block 0 reads, as a combination of the unknowns."""
    row = np.zeros(chains + gears + blocks)
    row[[chain, chains + gear_set, chains + gears]] = 1
    return row


def null_space(matrix: np.ndarray) -> np.ndarray:
    """Changes of the unknowns that no reading would notice, by singular values."""
    _, sizes, right = np.linalg.svd(matrix)
    rank = int((sizes > 1e-9 * sizes.max()).sum())
    return right[rank:].T


def estimable(unnoticed: np.ndarray, row: np.ndarray) -> bool:
    """Whether the readings determine this combination: nothing in their null space moves it."""
    return bool(np.abs(row @ unnoticed).max(initial=0.0) < 1e-9)


def solved(data: Seen) -> tuple[np.ndarray, np.ndarray, float]:
    """Unknowns (the shortest of those that fit), covariance and chi-square, by pseudo-inverse."""
    weighted = data.matrix / data.uncertainties[:, None]
    right = data.values / data.uncertainties
    inverse = np.linalg.pinv(weighted, rcond=1e-11)
    unknowns = inverse @ right
    left = right - weighted @ unknowns
    return unknowns, inverse @ inverse.T, float(left @ left)


@st.composite
def designs(draw: st.DrawFn) -> tuple[int, int, int, list[tuple[Any, ...]]]:
    """Any mixture of trials, bench lengths and gear readings; every block measured once."""
    chains, gears, blocks = (draw(st.integers(1, most)) for most in (6, 5, 3))
    value = floats(-1, 1)
    uncertainty = floats(0.01, 1)
    chain, gear_set = st.integers(0, chains - 1), st.integers(0, gears - 1)
    block = st.integers(0, blocks - 1)
    none = st.none()
    rows: list[tuple[Any, ...]] = []
    for kind, most in (
        (st.tuples(chain, gear_set, block, value, uncertainty), 10),
        (st.tuples(chain, none, none, value, uncertainty), 3),
        (st.tuples(none, gear_set, none, value, uncertainty), 3),
    ):
        rows += draw(st.lists(kind, max_size=most))
    rows += [(None, None, k, 0.0, draw(uncertainty)) for k in range(blocks)]
    return chains, gears, blocks, draw(st.permutations(rows))


def line(centre: float, drive: Payload = WORKED) -> tuple[float, float]:
    """Free strand and taut length of a drive at some centre distance, written anew."""
    r1, r2 = (
        drive["pitch_mm"] / 2 / math.sin(math.pi / drive[f"{gear}_teeth"])
        for gear in ("crank", "cam")
    )
    strand = math.sqrt(centre**2 - (r2 - r1) ** 2)
    lean = math.atan2(r2 - r1, strand)
    links = drive["crank_teeth"] * (0.5 - lean / math.pi)
    links += drive["cam_teeth"] * (0.5 + lean / math.pi)
    return strand, 2 * strand + links * drive["pitch_mm"]


def movement(strand: float, excess: float) -> float:
    """Movement of a strand with this excess, in and out."""
    return math.sqrt((strand + excess) ** 2 - strand**2) if excess > 0 else 0.0


def excess(strand: float, moved: float) -> float:
    """Excess of a strand that moves this far, in and out."""
    return math.hypot(strand, moved) - strand


class MadeUp:
    """A shelf with known truth, all readings drawn from it with their stated uncertainty.

    Chains are longer than nominal by 0 to `longest` mm, gear sets have worn to 0 to `worn` mm more
    slack; the block's centre distance is off by up to its stated error. The unit is excess length.
    """

    def __init__(
        self,
        rng: np.random.Generator,
        chains: int,
        gears: int,
        trials: int,
        *,
        longest: float = 0.25,
        worn: float = 0.15,
        scatter: float = 0.3,
        error: float = 0.02,
        nominal_centre: float = WORKED["centre_distance_mm"],
        bench: int = 2,
        measured_gears: int = 1,
    ) -> None:
        self.rng = rng
        self.drive = {
            **WORKED,
            "centre_distance_mm": nominal_centre,
            "centre_distance_error_mm": error,
        }
        self.lengths = rng.uniform(0, longest, chains)
        self.wears = rng.uniform(0, worn, gears)
        self.centre = nominal_centre + rng.uniform(-error, error)
        self.whole = WORKED["links"] * WORKED["pitch_mm"]
        self.payload: Payload = {
            "drive": self.drive,
            "chains": [f"c{i}" for i in range(chains)],
            "gear_sets": [f"g{j}" for j in range(gears)],
            "trials": [],
            "bench": [self.bench(int(i)) for i in rng.choice(chains, bench, replace=False)],
            "gears": [self.gear(int(j)) for j in rng.choice(gears, measured_gears, replace=False)],
        }
        for _ in range(trials):
            self.try_on(int(rng.integers(chains)), int(rng.integers(gears)), scatter)

    def excess(self, chain: int, gear_set: int) -> float:
        """True excess of a combination in this block."""
        return float(self.whole + self.lengths[chain] + self.wears[gear_set] - line(self.centre)[1])

    def movement(self, chain: int, gear_set: int) -> float:
        """True movement of a combination in this block."""
        return movement(line(self.centre)[0], self.excess(chain, gear_set))

    def try_on(self, chain: int, gear_set: int, scatter: float) -> None:
        """One trial fit: the movement as felt, its scatter as stated, never below nothing."""
        felt = max(0.0, self.movement(chain, gear_set) + self.rng.normal(0, scatter))
        self.payload["trials"].append({
            "chain": f"c{chain}",
            "gear_set": f"g{gear_set}",
            "movement_mm": felt,
            "standard_uncertainty_mm": scatter,
        })  # fmt: skip

    def bench(self, chain: int) -> dict[str, Any]:
        """One bench length, as elongation."""
        u = 0.01
        percent = 100 * self.lengths[chain] / self.whole + self.rng.normal(0, u)
        return {
            "chain": f"c{chain}",
            "elongation_percent": percent,
            "standard_uncertainty_percent": u,
        }

    def gear(self, gear_set: int) -> dict[str, Any]:
        """One measurement of a gear set by itself."""
        u = 0.03
        added = self.wears[gear_set] + self.rng.normal(0, u)
        return {
            "gear_set": f"g{gear_set}",
            "added_excess_mm": added,
            "standard_uncertainty_mm": u,
        }

    def place(self, row: dict[str, Any]) -> tuple[int, int]:
        """Which chain and gear set a row of the answer is about."""
        return int(row["chain"][1:]), int(row["gear_set"][1:])

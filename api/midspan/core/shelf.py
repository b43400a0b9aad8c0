"""Which chain on which gears: least squares over trial fits, bench lengths and gear readings.

Every chain has a length offset a, every gear set a size offset b, every block a centre offset c,
all in mm of excess length. A trial fit of chain i on gear set j in block k reads a + b + c; a
bench length reads a; a gear reading reads b; the measured centre distance reads c as zero.
"""

import math
from collections import namedtuple

from .algebra import inverse, times
from .groups import Groups

# No reading tells excess length better than this: as gears turn, the polygon of the chain alone
# swings the taut length by more (derived, 0.005 to 0.02 mm). And one that tells it no better
# than the second figure tells nothing; going on to larger ones would only cost digits.
LEAST_MM, MOST_MM = 0.001, 100.0


class Observation(namedtuple("Observation", ("chain", "gears", "block", "value", "uncertainty"))):
    """One reading: indices of what it rests on (None where it does not), its value beyond
    nominal and its standard uncertainty, both in mm of excess length.
    """

    __slots__ = ()


class Shelf:
    """Offsets of chains, gear sets and blocks, estimated together with their full covariance.

    Parameters
    ----------
    chains, gears, blocks : how many of each
    observations : readings; each block needs one of its own, what its centre distance is worth

    Raises
    ------
    none

    Validity
    --------
    Independent readings with known standard uncertainties. Sums that the readings do not
    determine are never given: `determined` tells which are.

    Reference
    ---------
    Weighted least squares, normal equations with the chains eliminated first (each chain meets
    gears and blocks only, so its own block of the matrix is a single number).
    """

    def __init__(
        self, chains: int, gears: int, blocks: int, observations: list[Observation]
    ) -> None:
        """Set up and solve the normal equations."""
        self.observations = [_bounded(seen) for seen in observations]
        self.gears = gears
        self.known: dict[int, dict[tuple[int, int], tuple[float, float]]] = {}
        self.groups = Groups(chains, gears, observations)
        # Of a group that floats, one gear set's offset is taken as zero: sums do not feel it.
        held = self.groups.held_gears()
        self.kept = [j for j in range(gears) if j not in held]
        self.place = {j: i for i, j in enumerate(self.kept)}
        size = len(self.kept) + blocks
        self.own = [0.0] * chains
        self.right = [0.0] * chains
        self.met = [[0.0] * size for _ in range(chains)]
        matrix = [[0.0] * size for _ in range(size)]
        vector = [0.0] * size
        for seen in self.observations:
            weight = 1 / seen.uncertainty**2
            columns = self._columns(seen.gears, seen.block)
            for i in columns:
                vector[i] += weight * seen.value
                for k in columns:
                    matrix[i][k] += weight
            if seen.chain is not None:
                self.own[seen.chain] += weight
                self.right[seen.chain] += weight * seen.value
                for i in columns:
                    self.met[seen.chain][i] += weight
        for c in range(chains):
            if self.own[c] > 0:
                self._eliminate(c, matrix, vector)
        self.covariance = inverse(matrix)
        self.offsets = times(self.covariance, vector)
        # For every chain: how its offset leans on gears and blocks, and what that makes of the
        # covariance. Worked out once, each of the many combinations is then a few sums.
        self.lean = [[x / o for x in m] if o else m for m, o in zip(self.met, self.own)]
        self.leaning = [times(self.covariance, lean) for lean in self.lean]

    def _columns(self, gears: int | None, block: int | None) -> list[int]:
        columns = []
        if gears is not None and gears in self.place:
            columns.append(self.place[gears])
        if block is not None:
            columns.append(len(self.kept) + block)
        return columns

    def _eliminate(self, c: int, matrix: list[list[float]], vector: list[float]) -> None:
        met, own = self.met[c], self.own[c]
        for i in range(len(met)):
            if met[i]:
                vector[i] -= met[i] * self.right[c] / own
                for k in range(len(met)):
                    matrix[i][k] -= met[i] * met[k] / own

    def predictions(self, block: int) -> dict[tuple[int, int], tuple[float, float]]:
        """Estimate what a trial of every determined combination in this block would read.

        Parameters
        ----------
        block : index

        Returns
        -------
        by (chain, gear set): value beyond nominal and its standard uncertainty [mm of excess
        length]
        """
        if block in self.known:
            return self.known[block]
        columns = [self._columns(j, block) for j in range(self.gears)]
        values = [sum([self.offsets[i] for i in c]) for c in columns]
        spreads = [sum([self.covariance[i][k] for i in c for k in c]) for c in columns]
        found = {}
        for chain in range(len(self.own)):
            if self.own[chain] == 0:
                continue
            lean, leaning = self.lean[chain], self.leaning[chain]
            value = self.right[chain] / self.own[chain] - _dot(lean, self.offsets)
            variance = 1 / self.own[chain] + _dot(lean, leaning)
            for j in range(self.gears):
                if self.groups.determined(chain, j):
                    crossed = sum([leaning[i] for i in columns[j]])
                    spread = math.sqrt(max(variance + spreads[j] - 2 * crossed, LEAST_MM**2))
                    found[(chain, j)] = (value + values[j], spread)
        self.known[block] = found
        return found

    def value(self, chain: int, gears: int, block: int) -> float:
        """Give the value of one prediction alone [mm of excess length]."""
        value = self.right[chain] / self.own[chain] - _dot(self.lean[chain], self.offsets)
        return value + sum([self.offsets[i] for i in self._columns(gears, block)])

    def covariances(self, chain: int, gears: int, block: int) -> list[list[float]]:
        """Covariance of one combination with all, by chain and gear set [mm^2].

        Only of combinations that are determined does it mean anything.
        """
        columns = [self._columns(j, block) for j in range(self.gears)]
        mine, leaning = columns[gears], self.leaning[chain]
        # Of this combination with every gear set and block.
        crossed = [sum([row[i] for i in mine]) - x for row, x in zip(self.covariance, leaning)]
        with_gears = [sum([crossed[i] for i in c]) for c in columns]
        rows = []
        for other in range(len(self.own)):
            base = -_dot(self.lean[other], crossed)
            if other == chain:
                base += 1 / self.own[chain]
            rows.append([base + x for x in with_gears])
        return rows

    def chi_square(self) -> tuple[float, int]:
        """Weighted sum of squared residuals, and its degrees of freedom."""
        total = 0.0
        for seen in self.observations:
            fitted = 0.0
            columns = self._columns(seen.gears, seen.block)
            fitted += sum([self.offsets[i] for i in columns])
            if seen.chain is not None:
                fitted += self.right[seen.chain] / self.own[seen.chain]
                fitted -= _dot(self.lean[seen.chain], self.offsets)
            total += ((seen.value - fitted) / seen.uncertainty) ** 2
        unknowns = len(self.offsets) + len([w for w in self.own if w > 0])
        return total, len(self.observations) - unknowns


def _bounded(seen: Observation) -> Observation:
    bounded = min(max(seen.uncertainty, LEAST_MM), MOST_MM)
    return Observation(seen.chain, seen.gears, seen.block, seen.value, bounded)


def _dot(one: list[float], other: list[float]) -> float:
    return sum([x * y for x, y in zip(one, other)])

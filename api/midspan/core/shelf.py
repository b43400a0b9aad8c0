"""Which chain on which gears: least squares over trial fits, bench lengths and gear readings.

Every chain has a length offset a, every gear set a size offset b, every block a centre offset c,
all in mm of excess length. A trial fit of chain i on gear set j in block k reads a + b + c; a
bench length reads a; a gear reading reads b; the measured centre distance reads c as zero.
"""

import math

from .algebra import inverse, times
from .groups import Groups
from .observation import Observation

# No reading tells excess length better than this: as gears turn, the polygon of the chain alone
# swings the taut length by more (derived, 0.005 to 0.02 mm). And one that tells it no better
# than the second figure tells nothing; going on to larger ones would only cost digits.
LEAST_MM, MOST_MM = 0.001, 100.0


class Shelf:
    """Offsets of chains, gear sets and blocks, estimated together with their full covariance.

    Parameters
    ----------
    chains, gears, blocks : how many of each
    observations : readings; each block needs one of its own, what its centre distance is worth
    groups : what the readings tie together, where that was worked out already

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
    gears and blocks only, so its own block of the matrix is a single number, and few others).
    """

    def __init__(
        self,
        chains: int,
        gears: int,
        blocks: int,
        observations: list[Observation],
        groups: Groups | None = None,
    ) -> None:
        """Set up and solve the normal equations."""
        self.observations = [_bounded(seen) for seen in observations]
        self.gears = gears
        self.known: dict[int, dict[tuple[int, int], tuple[float, float]]] = {}
        self.groups = Groups(chains, gears, observations) if groups is None else groups
        # Of a group that floats, one gear set's offset is taken as zero: sums do not feel it.
        held = self.groups.held_gears()
        kept = [j for j in range(gears) if j not in held]
        self.place = {kept[i]: i for i in range(len(kept))}
        self.first_block = len(kept)
        size = len(kept) + blocks
        self.own = [0.0] * chains
        right = [0.0] * chains
        met = [[0.0] * size for _ in range(chains)]
        matrix = [[0.0] * size for _ in range(size)]
        vector = [0.0] * size
        for chain, gear_set, block, value, uncertainty in self.observations:
            weight = 1 / uncertainty**2
            columns = self._columns(gear_set, block)
            for i in columns:
                vector[i] += weight * value
                row = matrix[i]
                for k in columns:
                    row[k] += weight
            if chain is not None:
                self.own[chain] += weight
                right[chain] += weight * value
                for i in columns:
                    met[chain][i] += weight
        # For every chain: on which gears and blocks its offset leans, and by how much.
        self.lean: list[list[tuple[int, float]]] = []
        for c in range(chains):
            own, row = self.own[c], met[c]
            if not own:
                self.lean.append([])
                continue
            columns = [i for i in range(size) if row[i]]
            for i in columns:
                vector[i] -= row[i] * right[c] / own
                for k in columns:
                    matrix[i][k] -= row[i] * row[k] / own
            self.lean.append([(i, row[i] / own) for i in columns])
        self.covariance = inverse(matrix)
        self.offsets = times(self.covariance, vector)
        self.lengths = [
            right[c] / self.own[c] - sum([self.offsets[i] * x for i, x in self.lean[c]])
            if self.own[c]
            else 0.0
            for c in range(chains)
        ]

    def _columns(self, gears: int | None, block: int | None) -> list[int]:
        columns = []
        if gears is not None and gears in self.place:
            columns.append(self.place[gears])
        if block is not None:
            columns.append(self.first_block + block)
        return columns

    def _leaning(self, chain: int) -> list[float]:
        """Give the covariance of what a chain leans on with every gear set and block."""
        found = [0.0] * len(self.offsets)
        for i, share in self.lean[chain]:
            found = [x + share * y for x, y in zip(found, self.covariance[i])]
        return found

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
        least = LEAST_MM**2
        found = {}
        for chain in range(len(self.own)):
            if self.own[chain] == 0:
                continue
            value, leaning = self.lengths[chain], self._leaning(chain)
            variance = 1 / self.own[chain] + sum([x * leaning[i] for i, x in self.lean[chain]])
            for j in range(self.gears):
                if self.groups.determined(chain, j):
                    crossed = sum([leaning[i] for i in columns[j]])
                    spread = math.sqrt(max(variance + spreads[j] - 2 * crossed, least))
                    found[(chain, j)] = (value + values[j], spread)
        self.known[block] = found
        return found

    def value(self, chain: int, gears: int, block: int) -> float:
        """Give the value of one prediction alone [mm of excess length]."""
        return self.lengths[chain] + sum([self.offsets[i] for i in self._columns(gears, block)])

    def crossed(self, chain: int, gears: int, block: int) -> tuple[list[float], list[float]]:
        """Covariance of one combination with all: a share by chain, a share by gear set [mm^2].

        The two added are the covariance. Only of combinations that are determined does it mean
        anything.
        """
        crossed = [-x for x in self._leaning(chain)]
        for i in self._columns(gears, block):
            crossed = [x + y for x, y in zip(crossed, self.covariance[i])]
        by_chain = [-sum([crossed[i] * x for i, x in lean]) for lean in self.lean]
        by_chain[chain] += 1 / self.own[chain]
        columns = [self._columns(j, block) for j in range(self.gears)]
        return by_chain, [sum([crossed[i] for i in c]) for c in columns]

    def fitted_variance(self, seen: Observation) -> float:
        """Variance of what the estimate makes of one observation [mm^2]."""
        columns = self._columns(seen.gears, seen.block)
        total = sum([self.covariance[i][k] for i in columns for k in columns])
        if seen.chain is not None:
            leaning = self._leaning(seen.chain)
            total += 1 / self.own[seen.chain]
            total += sum([x * leaning[i] for i, x in self.lean[seen.chain]])
            total -= 2 * sum([leaning[i] for i in columns])
        return total

    def residuals(self) -> list[float]:
        """What each observation reads beyond the estimate, in its standard uncertainties [1]."""
        offsets, first = self.offsets, self.first_block
        found = []
        for chain, gears, block, value, uncertainty in self.observations:
            fitted = 0.0
            if gears in self.place:
                fitted += offsets[self.place[gears]]
            if block is not None:
                fitted += offsets[first + block]
            if chain is not None:
                fitted += self.lengths[chain]
            found.append((value - fitted) / uncertainty)
        return found

    def chi_square(self) -> tuple[float, int]:
        """Weighted sum of squared residuals, and its degrees of freedom."""
        unknowns = len(self.offsets) + len([w for w in self.own if w > 0])
        return sum([x * x for x in self.residuals()]), len(self.observations) - unknowns


def _bounded(seen: Observation) -> Observation:
    if LEAST_MM <= seen.uncertainty <= MOST_MM:
        return seen
    bounded = min(max(seen.uncertainty, LEAST_MM), MOST_MM)
    return Observation(seen.chain, seen.gears, seen.block, seen.value, bounded)

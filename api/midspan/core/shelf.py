"""Which chain on which gears: least squares over trial fits, bench lengths and gear readings.

Every chain has a length offset a, every gear set a size offset b, every block a centre offset c,
all in mm of excess length. A trial fit of chain i on gear set j in block k reads a + b + c; a
bench length reads a; a gear reading reads b; the measured centre distance reads c as zero.
"""

import math
from collections import namedtuple

from .algebra import inverse, times
from .groups import Groups


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
        self.observations = observations
        self.gears = gears
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
        for seen in observations:
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

    def determined(self, chain: int, gears: int) -> bool:
        """Tell whether the readings determine this chain on this gear set."""
        return self.groups.determined(chain, gears)

    def _direction(self, chain: int, gears: int, block: int) -> list[float]:
        """How the sum depends on gears and blocks once the chain is eliminated."""
        own = self.own[chain]
        direction = [-x / own for x in self.met[chain]]
        for i in self._columns(gears, block):
            direction[i] += 1
        return direction

    def predict(self, chain: int, gears: int, block: int) -> tuple[float, float]:
        """Estimate what a trial of this chain on this gear set in this block would read.

        Parameters
        ----------
        chain, gears, block : indices; the combination must be determined

        Returns
        -------
        value beyond nominal and its standard uncertainty [mm of excess length]
        """
        direction = self._direction(chain, gears, block)
        value = self.right[chain] / self.own[chain]
        value += sum([d * x for d, x in zip(direction, self.offsets)])
        spread = times(self.covariance, direction)
        variance = 1 / self.own[chain] + sum([d * x for d, x in zip(direction, spread)])
        return value, math.sqrt(variance)

    def covariances(
        self, target: tuple[int, int], others: list[tuple[int, int]], block: int
    ) -> list[float]:
        """Covariance of one combination with others [mm^2]; all must be determined."""
        spread = times(self.covariance, self._direction(target[0], target[1], block))
        found = []
        for chain, gears in others:
            direction = self._direction(chain, gears, block)
            own = 1 / self.own[chain] if chain == target[0] else 0.0
            found.append(own + sum([d * x for d, x in zip(direction, spread)]))
        return found

    def chi_square(self) -> tuple[float, int]:
        """Weighted sum of squared residuals, and its degrees of freedom."""
        total = 0.0
        for seen in self.observations:
            fitted = 0.0
            columns = self._columns(seen.gears, seen.block)
            fitted += sum([self.offsets[i] for i in columns])
            if seen.chain is not None:
                met = self.met[seen.chain]
                rest = sum([m * x for m, x in zip(met, self.offsets)])
                fitted += (self.right[seen.chain] - rest) / self.own[seen.chain]
            total += ((seen.value - fitted) / seen.uncertainty) ** 2
        unknowns = len(self.offsets) + len([w for w in self.own if w > 0])
        return total, len(self.observations) - unknowns

"""A periodic cubic smoothing spline: a lift curve out of readings that each are a little off.

Of all curves it is the one with the least sum of squared residuals plus lambda times the integral
of its squared second derivative. It runs in time proportional to the readings: the system for the
second derivatives is a band, closed on itself by its last two unknowns.
"""

import math
from collections import namedtuple

from .spline import Spline

# Strengths of smoothing that are tried: every other power of ten of the natural one from the
# weakest on, then nearer and nearer to the best, down to half powers.
WEAKEST, TENS, HALF = 1e-4, 12, 10**0.5
# What a term of the curve costs in cross-validation.
DEARER = 1.4


class Smooth(namedtuple("Smooth", ("spline", "leverages", "misfit", "strength"))):
    """A smoothed curve: the Spline, for each reading the share that it has in its own smoothed
    value (0 to 1), the weighted sum of squared residuals, and lambda.
    """

    __slots__ = ()


class Smoother:
    """Readings ready to be smoothed, by any strength.

    Parameters
    ----------
    knots : angles of the readings, rising, all within one period, five or more
    values : the readings
    weights : one over the square of each reading's standard uncertainty
    period : length of a cycle, in the unit of the knots
    """

    def __init__(
        self, knots: list[float], values: list[float], weights: list[float], period: float
    ) -> None:
        """Work out what does not depend on the strength."""
        n = len(knots)
        self.knots, self.values, self.weights, self.period = knots, values, weights, period
        gaps = [knots[i + 1] - knots[i] for i in range(n - 1)]
        gaps.append(knots[0] + period - knots[-1])
        self.inverse = [1 / gap for gap in gaps]
        spread = [1 / w for w in weights]
        self.slopes = [(values[(i + 1) % n] - values[i]) * self.inverse[i] for i in range(n)]
        # R, and the bands of Q^T W^-1 Q, each from i to i, i + 1 and i + 2, round the cycle.
        self.r0 = [(gaps[i - 1] + gaps[i]) / 3 for i in range(n)]
        self.r1 = [gap / 6 for gap in gaps]
        inv = self.inverse
        mid = [-(inv[i - 1] + inv[i]) for i in range(n)]
        self.mid = mid
        self.m0, self.m1, self.m2 = [], [], []
        for i in range(n):
            j = (i + 1) % n
            own = inv[i - 1] ** 2 * spread[i - 1] + mid[i] ** 2 * spread[i]
            self.m0.append(own + inv[i] ** 2 * spread[j])
            self.m1.append(inv[i] * (mid[i] * spread[i] + mid[j] * spread[j]))
            self.m2.append(inv[i] * spread[j] * inv[j])
        self.natural = _total(self.r0) / _total(self.m0)

    def smooth(self, strength: float) -> Smooth:
        """Smooth with one strength.

        (R + lambda Q^T W^-1 Q) g = Q^T y;  f = y - lambda W^-1 Q g

        Parameters
        ----------
        strength : lambda; 0 gives the spline through the readings
        """
        n = len(self.knots)
        band = _Band(
            [r + strength * m for r, m in zip(self.r0, self.m0)],
            [r + strength * m for r, m in zip(self.r1, self.m1)],
            [strength * m for m in self.m2],
        )
        right = [self.slopes[i] - self.slopes[i - 1] for i in range(n)]
        bends = band.solve(right)
        z0, z1, z2 = band.inverse_bands()
        inv, mid = self.inverse, self.mid
        fitted, leverages, misfit = [], [], 0.0
        for i in range(n):
            j = (i + 1) % n
            a, b, c = inv[i - 1], mid[i], inv[i]
            pull = strength / self.weights[i]
            off = pull * (a * bends[i - 1] + b * bends[i] + c * bends[j])
            fitted.append(self.values[i] - off)
            misfit += self.weights[i] * off * off
            lost = a * a * z0[i - 1] + b * b * z0[i] + c * c * z0[j]
            lost += 2 * (a * b * z1[i - 1] + b * c * z1[i] + a * c * z2[i - 1])
            leverages.append(1 - pull * lost)
        spline = Spline(self.knots, fitted, bends, self.period)
        return Smooth(spline, leverages, misfit, strength)

    def best(self, known: bool) -> Smooth:
        """Smooth by the strength that foretells best.

        known: least U = S + 2 t, the unbiased risk where the uncertainties are stated;
        else least V = n S / (n - 1.4 t)^2, generalised cross-validation (GCV) with dearer terms,
        since plain GCV now and then follows every reading. S is the weighted sum of squared
        residuals, t the trace of the hat matrix.

        Parameters
        ----------
        known : whether the weights are one over the true variances, not only in proportion

        Reference
        ---------
        Craven and Wahba, Smoothing noisy data with spline functions, Numer. Math. 31 (1979);
        Kim and Gu, Smoothing spline Gaussian regression, J. R. Stat. Soc. B 66 (2004), for 1.4;
        Reinsch, Smoothing by spline functions, Numer. Math. 10 (1967), closed on itself.
        """
        tried: dict[int, Smooth] = {}

        def score(halves: int) -> float:
            if halves not in tried:
                factor = WEAKEST
                for _ in range(halves // 2):
                    factor *= 10
                if halves % 2:
                    factor *= HALF
                tried[halves] = self.smooth(factor * self.natural)
            found = tried[halves]
            trace = _total(found.leverages)
            if known:
                return float(found.misfit + 2 * trace)
            left = len(self.knots) - DEARER * trace
            if left <= 0:
                return math.inf
            return float(len(self.knots) * found.misfit / (left * left))

        best = min(range(0, 2 * TENS, 4), key=score)
        for step in (2, 1):
            near = [at for at in (best - step, best, best + step) if 0 <= at < 2 * TENS]
            best = min(near, key=score)
        return tried[best]


class _Band:
    """A symmetric matrix of five diagonals, closed on itself, as L D L^T with its last two rows
    and columns apart.
    """

    def __init__(self, d0: list[float], d1: list[float], d2: list[float]) -> None:
        n = len(d0)
        m = n - 2
        self.m = m
        self.pivots, self.l1, self.l2 = [], [], []
        p1 = p2 = a1 = b1 = b2 = 0.0  # pivots and multipliers of the two rows before
        for i in range(m):
            pivot = d0[i] - p1 * a1 * a1 - p2 * b2 * b2
            one = (d1[i] - p1 * a1 * b1) / pivot if i + 1 < m else 0.0
            two = d2[i] / pivot if i + 2 < m else 0.0
            self.pivots.append(pivot)
            self.l1.append(one)
            self.l2.append(two)
            p2, p1, a1, b2, b1 = p1, pivot, one, b1, two
        self.border = [[0.0] * m, [0.0] * m]
        one_before, last = self.border
        one_before[0] += d2[n - 2]
        one_before[m - 2] += d2[n - 4]
        one_before[m - 1] += d1[n - 3]
        last[0] += d1[n - 1]
        last[1] += d2[n - 1]
        last[m - 1] += d2[n - 3]
        self.edge = [self._core(column) for column in self.border]
        s00 = d0[n - 2] - _dot(one_before, self.edge[0])
        s01 = d1[n - 2] - _dot(one_before, self.edge[1])
        s11 = d0[n - 1] - _dot(last, self.edge[1])
        size = s00 * s11 - s01 * s01
        self.corner = (s11 / size, -s01 / size, s00 / size)

    def _core(self, right: list[float]) -> list[float]:
        """Solve without the last two rows."""
        m, l1, l2, pivots = self.m, self.l1, self.l2, self.pivots
        found = []
        one = two = 0.0
        for i in range(m):
            x = right[i]
            if i:
                x -= l1[i - 1] * one
            if i > 1:
                x -= l2[i - 2] * two
            found.append(x)
            one, two = x, one
        one = two = 0.0
        for i in range(m - 1, -1, -1):
            x = found[i] / pivots[i] - l1[i] * one - l2[i] * two
            found[i] = x
            one, two = x, one
        return found

    def solve(self, right: list[float]) -> list[float]:
        """Solve the whole."""
        m, (e0, e1) = self.m, self.edge
        core = self._core(right[:m])
        u = right[m] - _dot(self.border[0], core)
        v = right[m + 1] - _dot(self.border[1], core)
        c00, c01, c11 = self.corner
        x, y = c00 * u + c01 * v, c01 * u + c11 * v
        return [core[i] - e0[i] * x - e1[i] * y for i in range(m)] + [x, y]

    def inverse_bands(self) -> tuple[list[float], list[float], list[float]]:
        """Elements i,i and i,i+1 and i,i+2 of the inverse, round the cycle, and no others.

        Reference: Hutchinson and de Hoog, Smoothing noisy data with spline functions, Numer. Math.
        47 (1985), for the band; the closing rows by their Schur complement.
        """
        m, l1, l2, pivots = self.m, self.l1, self.l2, self.pivots
        z0, z1, z2 = [0.0] * (m + 2), [0.0] * (m + 2), [0.0] * (m + 2)
        n0 = n1 = nn0 = 0.0  # z0 and z1 of the row after, z0 of the one after that
        for i in range(m - 1, -1, -1):
            one = -(l1[i] * n0 + l2[i] * n1)
            two = -(l1[i] * n1 + l2[i] * nn0)
            own = 1 / pivots[i] - l1[i] * one - l2[i] * two
            z0[i], z1[i], z2[i] = own, one, two
            nn0, n0, n1 = n0, own, one
        c00, c01, c11 = self.corner
        (e0, e1) = self.edge
        w0 = [c00 * x + c01 * y for x, y in zip(e0, e1)]
        w1 = [c01 * x + c11 * y for x, y in zip(e0, e1)]
        for i in range(m):
            z0[i] += e0[i] * w0[i] + e1[i] * w1[i]
            if i + 1 < m:
                z1[i] += e0[i] * w0[i + 1] + e1[i] * w1[i + 1]
            if i + 2 < m:
                z2[i] += e0[i] * w0[i + 2] + e1[i] * w1[i + 2]
        z0[m], z0[m + 1], z1[m] = c00, c11, c01
        z1[m - 1], z2[m - 2], z2[m - 1] = -w0[m - 1], -w0[m - 2], -w1[m - 1]
        z1[m + 1], z2[m], z2[m + 1] = -w1[0], -w0[0], -w1[1]
        return z0, z1, z2


def _dot(one: list[float], other: list[float]) -> float:
    """Sum of products, term by term: the interpreters' own sums differ in the last place."""
    total = 0.0
    for a, b in zip(one, other):
        if a:
            total += a * b
    return total


def _total(values: list[float]) -> float:
    total = 0.0
    for value in values:
        total += value
    return total

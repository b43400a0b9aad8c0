"""A periodic cubic spline by its values and second derivatives at the knots."""

import math
from collections import namedtuple

TYPE_CHECKING = False  # MicroPython has no typing module; type checkers take this as true
if TYPE_CHECKING:
    from collections.abc import Callable

HALVINGS = 60
# Two places nearer than this are one, in degrees or whatever the knots are in.
SMALL = 1e-12


class Spline(namedtuple("Spline", ("knots", "values", "bends", "period"))):
    """Knots, rising and within one period; the value and the second derivative at each."""

    __slots__ = ()

    def piece(self, x: float) -> tuple[int, int, float, float]:
        """Give the knots around x, the share of the way between them, and their distance."""
        knots, period = self.knots, self.period
        x = knots[0] + (x - knots[0]) % period
        low, high = 0, len(knots)
        while high - low > 1:
            middle = (low + high) // 2
            if knots[middle] <= x:
                low = middle
            else:
                high = middle
        after = high % len(knots)
        gap = (knots[after] if after else knots[0] + period) - knots[low]
        return low, after, (x - knots[low]) / gap, gap

    def at(self, x: float) -> float:
        """Value at x."""
        i, j, t, gap = self.piece(x)
        s = 1 - t
        bend = (s**3 - s) * self.bends[i] + (t**3 - t) * self.bends[j]
        return float(s * self.values[i] + t * self.values[j] + bend * gap * gap / 6)

    def slope(self, x: float) -> float:
        """First derivative at x."""
        i, j, t, gap = self.piece(x)
        s = 1 - t
        bend = (1 - 3 * s * s) * self.bends[i] + (3 * t * t - 1) * self.bends[j]
        return float((self.values[j] - self.values[i]) / gap + bend * gap / 6)

    def bend(self, x: float) -> float:
        """Second derivative at x."""
        i, j, t, _ = self.piece(x)
        return float((1 - t) * self.bends[i] + t * self.bends[j])


def integral(spline: Spline, start: float, end: float) -> float:
    """Area under a spline between two places, exact: Simpson's rule on every piece of a cubic.

    Parameters
    ----------
    spline : the curve
    start, end : ends of the area, start first [unit of the knots]

    Returns
    -------
    area [units of value times units of knots]

    Raises
    ------
    none

    Validity
    --------
    From start to end no more than one period.

    Reference
    ---------
    Simpson's rule is exact for cubics.
    """
    period = spline.period
    base = spline.knots[0] + math.floor((start - spline.knots[0]) / period) * period
    cuts = [start]
    for turn in (base, base + period):
        cuts += [k - spline.knots[0] + turn for k in spline.knots]
    inner = [x for x in cuts if start < x < end]
    places = [start] + inner + [end]
    total = 0.0
    for i in range(len(places) - 1):
        a, b = places[i], places[i + 1]
        total += (b - a) * (spline.at(a) + 4 * spline.at((a + b) / 2) + spline.at(b)) / 6
    return total


def zero_between(function: "Callable[[float], float]", low: float, high: float) -> float:
    """Place where a function changes its sign, by bisection.

    Parameters
    ----------
    function : of one number
    low, high : places at which it has different signs [any unit]

    Returns
    -------
    the place [the same unit]

    Raises
    ------
    none

    Validity
    --------
    One change of sign between the two; of several, one is found.

    Reference
    ---------
    none
    """
    rising = function(high) > 0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if abs(high - low) < SMALL or middle in (low, high):
            break
        if (function(middle) > 0) == rising:
            high = middle
        else:
            low = middle
    return (low + high) / 2

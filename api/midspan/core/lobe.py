"""A cam lobe as its smoothed lift curve: events, duration, centre, area, each with what it is
known to. Angles are crank degrees from the table's zero, lifts mm, as they were read.
"""

import math
from collections import namedtuple

from .lift_table import CYCLE_DEG, Table
from .smoothing import Smooth, Smoother
from .spline import Spline, integral, zero_between
from .uncertainty import interval, rectangular

# A table whose ends show less than this share of its greatest lift stands on the base circle there;
# from memory, unverified.
BASE_SHARE = 0.02
# Walk from the nose in steps of this [crank deg] to find where a height is crossed.
STEP_DEG = 1.0
# A reading so many times its doubt off a curve smoothed by so much of the natural strength has no
# weight; so many at most.
FAR_OFF, HARDLY, MOST_OFF = 6.0, 0.1, 8


class Events(namedtuple("Events", ("height", "opens", "closes", "duration", "centre", "area"))):
    """What happens at a height of lift: opening and closing angle, duration and centre between
    them as Intervals [crank deg], and the area under the curve between them [mm deg].
    """

    __slots__ = ()


class Lobe:
    """A lobe out of a table.

    Parameters
    ----------
    smooth : the smoothed readings
    weights : of the readings [1/mm^2]
    noise : standard deviation of the readings over the stated one [1]
    covered : first and last angle of the table [crank deg]
    systematic : standard uncertainty common to all readings, of lift [mm] and angle [crank deg]
    base : whether the table stands on the base circle at both ends
    left_out : places of the readings that have no weight
    table : the readings themselves
    """

    def __init__(
        self,
        smooth: Smooth,
        weights: list[float],
        noise: float,
        covered: tuple[float, float],
        systematic: tuple[float, float],
        base: bool,
        left_out: set[int],
        table: Table,
    ) -> None:
        """Find the nose."""
        self.spline: Spline = smooth.spline
        self.smooth, self.weights, self.noise = smooth, weights, noise
        self.first, self.last = covered
        self.dial, self.wheel = systematic
        self.base, self.left_out, self.table = base, left_out, table
        self.top_at = _nose(self.spline, self.first, self.last)
        self.top = self.spline.at(self.top_at)

    def spread(self, angle: float) -> float:
        """Give the standard uncertainty of the smoothed lift at an angle, from the scatter [mm]."""
        i, j, t, _ = self.spline.piece(angle)
        ends = []
        for k in (i, j):
            share = max(self.smooth.leverages[k], 0.0)
            ends.append(math.sqrt(share / self.weights[k]))
        return self.noise * ((1 - t) * ends[0] + t * ends[1])

    def crossing(self, height: float, opening: bool) -> float | None:
        """Angle at which the lift passes a height on its way from the nose, or None if never."""
        edge = self.first if opening else self.last
        step = -STEP_DEG if opening else STEP_DEG
        if self.top <= height:
            return None

        def beyond(angle: float) -> float:
            return self.spline.at(angle) - height

        near = self.top_at
        while near != edge:
            far = near + step
            if (far - edge) * step > 0:
                far = edge
            if beyond(far) <= 0:
                return zero_between(beyond, near, far)
            near = far
        return None

    def events(self, height: float) -> Events | None:
        """Give opening, closing and what lies between; None if the table does not reach there."""
        opens, closes = self.crossing(height, True), self.crossing(height, False)
        if opens is None or closes is None:
            return None
        up = max(abs(self.spline.slope(opens)), 1e-6)
        down = max(abs(self.spline.slope(closes)), 1e-6)
        wander = [self.spread(opens) / up, self.spread(closes) / down]
        wander = [math.sqrt(w**2 + self.wheel**2) for w in wander]
        both = math.sqrt(wander[0] ** 2 + wander[1] ** 2)
        # A dial that reads high all over opens early and closes late.
        longer = self.dial * (1 / up + 1 / down)
        later = self.dial * (1 / down - 1 / up) / 2
        area = integral(self.spline, opens, closes)
        return Events(
            height,
            interval(opens, math.sqrt(wander[0] ** 2 + (self.dial / up) ** 2)),
            interval(closes, math.sqrt(wander[1] ** 2 + (self.dial / down) ** 2)),
            interval(closes - opens, math.sqrt(both**2 + longer**2)),
            interval((opens + closes) / 2, math.sqrt((both / 2) ** 2 + later**2)),
            area,
        )


def lobe_from(table: Table, known: bool = True) -> Lobe:
    """Smooth a table into a lobe.

    Parameters
    ----------
    table : the readings
    known : whether to smooth by the scatter stated or assumed of dial and wheel, or, if not, by
        cross-validation

    Returns
    -------
    Lobe, its nose between -180 and 180 crank deg

    Raises
    ------
    none

    Validity
    --------
    One lobe in a cycle of 720 crank degrees. Where a table ends on the base circle at both sides,
    the rest of the cycle is taken as base circle.

    Reference
    ---------
    See `smoothing`.
    """
    knots, lifts = list(table.angles), list(table.lifts)
    count = len(knots)
    weights = reading_weights(knots, lifts, table.noise)
    base = max(lifts[0], lifts[-1]) <= BASE_SHARE * max(lifts)
    gap = knots[0] + CYCLE_DEG - knots[-1]
    usual = (knots[-1] - knots[0]) / (count - 1)
    if base and gap > 3 * usual:
        fill = max(3, min(12, int(gap / usual)))
        for i in range(1, fill):
            knots.append(table.angles[-1] + gap * i / fill)
            lifts.append(0.0)
            weights.append(1 / table.noise[0] ** 2)
    turn = 360.0 * math.floor((_highest(table.angles, table.lifts) + 180) / 360)
    knots = [x - turn for x in knots]
    weights, left_out = steadied(knots, lifts, weights)
    smooth = Smoother(knots, lifts, weights, CYCLE_DEG).best(known)
    misfit, free = 0.0, float(count - len(left_out))
    for i in range(count):
        if i in left_out:
            continue
        misfit += weights[i] * (lifts[i] - smooth.spline.values[i]) ** 2
        free -= smooth.leverages[i]
    noise = math.sqrt(misfit / free) if free > 1 else 1.0
    # What was stated is never taken to be better than stated, but worse if the readings say so.
    noise = max(noise, 1.0) if known else noise
    turns = 2.0 if table.angle_of == "cam" else 1.0
    systematic = (rectangular(table.dial.error), turns * rectangular(table.degree_wheel.error))
    covered = (table.angles[0] - turn, table.angles[-1] - turn)
    return Lobe(smooth, weights, noise, covered, systematic, base, left_out, table)


def reading_weights(
    knots: list[float], lifts: list[float], noise: tuple[float, float]
) -> list[float]:
    """Weight of each reading: on a flank the wheel's scatter counts as scatter of the lift.

    w = 1 / (u_dial^2 + (v u_wheel)^2), v the slope between the neighbours

    Parameters
    ----------
    knots : angles [crank deg]
    lifts : lifts [mm]
    noise : standard uncertainty of one reading of dial [mm] and wheel [crank deg]

    Returns
    -------
    weights [1/mm^2]

    Raises
    ------
    none

    Validity
    --------
    Angles rising.

    Reference
    ---------
    JCGM 100:2008 (GUM), 5.1.2.
    """
    last = len(knots) - 1
    weights = []
    for i in range(last + 1):
        a, b = max(i - 1, 0), min(i + 1, last)
        slope = (lifts[b] - lifts[a]) / (knots[b] - knots[a])
        weights.append(1 / (noise[0] ** 2 + (slope * noise[1]) ** 2))
    return weights


def steadied(
    knots: list[float], lifts: list[float], weights: list[float]
) -> tuple[list[float], set[int]]:
    """Take the weight off readings that the curve through the others is far from.

    One by one the reading farthest off a hardly smoothed curve, by its residual over its own
    standard deviation, loses its weight, as long as that is far beyond what is usual in the table.

    Parameters
    ----------
    knots : angles [crank deg]
    lifts : lifts [mm]
    weights : of the readings [1/mm^2]

    Returns
    -------
    weights [1/mm^2], and the places of those that lost theirs

    Raises
    ------
    none

    Validity
    --------
    A few among many; beyond MOST_OFF no more are taken off.

    Reference
    ---------
    As `own_residuals` and `usual_size`. Thresholds from memory, unverified, chosen by trial on
    sound and spoiled tables.
    """
    kept = list(weights)
    out: set[int] = set()
    for _ in range(MOST_OFF):
        smoother = Smoother(knots, lifts, kept, CYCLE_DEG)
        found = smoother.smooth(HARDLY * smoother.natural)
        sizes = [abs(x) for x in own_residuals(found, lifts, weights, out)]
        usual = usual_size(sizes)
        worst = max([i for i in range(len(sizes)) if i not in out], key=lambda i: sizes[i])
        if sizes[worst] <= FAR_OFF * usual:
            break
        out.add(worst)
        kept[worst] = weights[worst] * 1e-6
    return kept, out


def own_residuals(
    smooth: Smooth, lifts: list[float], weights: list[float], out: set[int]
) -> list[float]:
    """Give how far readings are off the smooth curve, each over its own standard deviation.

    r_i sqrt(w_i / (1 - h_i))

    Parameters
    ----------
    smooth : the curve, with the leverage h of each reading [1]
    lifts : the readings, or the first of them [mm]
    weights : w of each, as if all had weight [1/mm^2]
    out : places of the readings that had none: the curve does not lean on them

    Returns
    -------
    residuals, positive above the curve [1]

    Raises
    ------
    none

    Validity
    --------
    A leverage beyond 0.999 counts as that.

    Reference
    ---------
    The variance of a residual is (1 - leverage) of that of its reading: least squares.
    """
    found = []
    for i in range(len(lifts)):
        rest = 1.0 if i in out else max(1 - smooth.leverages[i], 1e-3)
        found.append((lifts[i] - smooth.spline.values[i]) * math.sqrt(weights[i] / rest))
    return found


def usual_size(sizes: list[float]) -> float:
    """Standard deviation that most of a table's residuals have, never less than was stated.

    1.4826 median |r|, 1 or more

    Parameters
    ----------
    sizes : of residuals, each over its own standard deviation [1]

    Returns
    -------
    standard deviation [1]

    Raises
    ------
    none

    Validity
    --------
    Fewer than half of the readings out of line.

    Reference
    ---------
    The median absolute deviation of a normal distribution is its standard deviation over 1.4826.
    """
    return max(1.4826 * sorted(sizes)[len(sizes) // 2], 1.0)


def _highest(angles: list[float], lifts: list[float]) -> float:
    return angles[lifts.index(max(lifts))]


def _nose(spline: Spline, first: float, last: float) -> float:
    """Angle of the greatest lift: where the slope turns, beside the highest knot."""
    inside = [i for i in range(len(spline.knots)) if first <= spline.knots[i] <= last]
    top = max(inside, key=lambda i: spline.values[i])
    n = len(spline.knots)
    for a, b in ((top - 1, top), (top, (top + 1) % n)):
        low, high = spline.knots[a], spline.knots[b]
        if low < high and spline.slope(low) > 0 > spline.slope(high):
            return zero_between(spline.slope, low, high)
    return float(spline.knots[top])

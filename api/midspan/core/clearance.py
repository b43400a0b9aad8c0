"""The gap between a valve and the piston over the crank angle, and where it is least.

Angles are crank degrees after true TDC of the overlap; gaps are along the valve's axis, in mm.
"""

import math
from collections import namedtuple

from .crank_slider import Slider, drop, drop_rate
from .spline import zero_between

# The least gap is looked for within so many degrees of TDC, in steps of so many.
REACH_DEG, STEP_DEG = 72.0, 2.0


class Gap(namedtuple("Gap", ("slider", "train", "at_top", "factor"))):
    """Crank mechanism and valve train, the travel a seated valve has to the piston at TDC [mm],
    and how much of the piston's drop counts along the valve's axis (cosine of its angle).
    """

    __slots__ = ()

    def seated(self, angle: float) -> float:
        """Travel of the valve from its seat to the piston at a crank angle [mm]."""
        return float(self.at_top + self.factor * drop(self.slider, math.radians(angle)))

    def at(self, angle: float) -> float:
        """Gap between the moving valve and the piston [mm]."""
        return float(self.seated(angle) - self.train.lift(angle))

    def piston_rate(self, angle: float) -> float:
        """How fast the piston leaves along the valve's axis [mm/deg]."""
        return float(self.factor * drop_rate(self.slider, math.radians(angle)) * math.pi / 180)


def top_from_drop(slider: Slider, factor: float, angle: float, travel: float) -> float:
    """Travel of a seated valve at TDC from what was read at another angle.

    TC(0) = TC(A) - k s(A)

    Parameters
    ----------
    slider : the mechanism
    factor : k, share of the piston's drop along the valve's axis [1]
    angle : A, crank angle of the reading after TDC [deg]
    travel : valve pushed from its seat until it touches the piston [mm]

    Returns
    -------
    travel at TDC [mm]

    Raises
    ------
    none

    Validity
    --------
    The valve meets a face square to its axis, or the axis is along the bore.

    Reference
    ---------
    VC = TC - LL RR, moparts.org/Tech/Archive/bb/13.html, with the piston's position beside it.
    """
    return travel - factor * drop(slider, math.radians(angle))


def smallest(gap: Gap) -> tuple[float, float]:
    """Crank angle of the smallest gap, and that gap.

    Parameters
    ----------
    gap : the mechanism

    Returns
    -------
    angle after TDC [deg] and gap [mm]; negative where valve and piston would run into each other

    Raises
    ------
    none

    Validity
    --------
    Looked for within 72 degrees of TDC, where the piston is near.

    Reference
    ---------
    The least of a grid, then where valve and piston are equally fast; checked against brute force.
    """
    steps = int(2 * REACH_DEG / STEP_DEG) + 1
    angles = [-REACH_DEG + i * STEP_DEG for i in range(steps)]
    best = min(angles, key=gap.at)
    low, high = best - STEP_DEG, best + STEP_DEG

    def opening(angle: float) -> float:
        return float(gap.piston_rate(angle) - gap.train.rate(angle))

    angle = best
    if opening(low) < 0 < opening(high):
        # Where valve and piston go equally fast.
        angle = zero_between(opening, low, high)
    return angle, gap.at(angle)


def top_from_clay(gap: Gap, thickness: float) -> float:
    """Travel of a seated valve at TDC from clay: what was left of it is the smallest gap.

    Parameters
    ----------
    gap : the mechanism as it was when the clay was pressed, its at_top of no matter
    thickness : the clay where it is thinnest [mm]

    Returns
    -------
    travel at TDC [mm]

    Raises
    ------
    none

    Validity
    --------
    The clay pressed by the same lobe, rocker, lash and setting that are stated.

    Reference
    ---------
    none
    """
    return float(gap.at_top + thickness - smallest(gap)[1])

"""Slack seen at the middle of a strand: moved by hand, or hanging under its own weight."""

import math

# Standard uncertainty of a movement read by hand, where none is given; from memory, unverified.
READING_MM = 0.3


def excess_from_movement(strand: float, movement: float) -> float:
    """Excess length from the total mid-span movement of a chain pushed by hand.

    e = sqrt(s^2 + m^2) - s

    The strand is pushed fully in, then fully out; each way it is two straight segments, m/2
    from the straight line. Written as m^2 / (sqrt(s^2 + m^2) + s), which keeps its digits for
    a small movement.

    Parameters
    ----------
    strand : free strand s [mm]
    movement : total movement m, in and out [mm]; below zero counts as zero

    Returns
    -------
    excess length [mm]

    Raises
    ------
    none

    Validity
    --------
    The other strand taut, the push at mid-span, no stretch under the push. Outward the chain
    leaves the gears sooner, inward later: in and out together that cancels (within 0.4 % for
    25 mm on a 22/44 drive of 9.525 mm pitch), a reading one way can be off by some 3.5 %.

    Reference
    ---------
    Plane geometry (Pythagoras); derived, no published table of it found.
    """
    m = movement if movement > 0 else 0.0
    return m * m / (math.sqrt(strand * strand + m * m) + strand)


def movement_from_excess(strand: float, excess: float) -> float:
    """Total mid-span movement from the excess length: the inverse of `excess_from_movement`.

    m = sqrt((s + e)^2 - s^2) = sqrt(e (2 s + e))

    Parameters
    ----------
    strand : free strand s [mm]
    excess : excess length e [mm]; below zero there is no slack to move

    Returns
    -------
    total movement, in and out [mm]

    Raises
    ------
    none

    Validity
    --------
    As `excess_from_movement`.

    Reference
    ---------
    As `excess_from_movement`.
    """
    return math.sqrt(excess * (2 * strand + excess)) if excess > 0 else 0.0


def excess_from_sag(strand: float, sag: float) -> float:
    """Excess length from the sag of a level strand that hangs freely.

    e = 8 f^2 / (3 s)

    Parameters
    ----------
    strand : free strand s [mm]
    sag : sag f at mid-span [mm]; below zero counts as zero

    Returns
    -------
    excess length [mm]

    Raises
    ------
    none

    Validity
    --------
    A shallow parabola, sag up to about a tenth of the strand; strand level; the other one taut.

    Reference
    ---------
    Standard parabola for a shallow hanging line, in every statics text; from memory.
    """
    f = sag if sag > 0 else 0.0
    return 8 * f * f / (3 * strand)


def sag_from_excess(strand: float, excess: float) -> float:
    """Sag of a level strand from the excess length: the inverse of `excess_from_sag`.

    f = sqrt(3 s e / 8)

    Parameters
    ----------
    strand : free strand s [mm]
    excess : excess length e [mm]; below zero nothing hangs

    Returns
    -------
    sag at mid-span [mm]

    Raises
    ------
    none

    Validity
    --------
    As `excess_from_sag`.

    Reference
    ---------
    As `excess_from_sag`.
    """
    return math.sqrt(3 * strand * excess / 8) if excess > 0 else 0.0

"""Slack and wear seen as angles: how far the crank rocks, how late the cam runs."""

import math


def rock_from_excess(crank_radius: float, excess: float) -> float:
    """Crank-rock lash: crank angle from one strand taut to the other taut, cam held.

    theta = e / r1

    Parameters
    ----------
    crank_radius : pitch radius of the crank gear [mm]
    excess : excess length [mm]; below zero nothing rocks

    Returns
    -------
    crank angle [rad]

    Raises
    ------
    none

    Validity
    --------
    Cam held still by its springs. Keyway and dowel play add to what is read.

    Reference
    ---------
    Arc over radius; the chain shifts by e between the two ends. Derived.
    """
    return excess / crank_radius if excess > 0 else 0.0


def excess_from_rock(crank_radius: float, angle: float) -> float:
    """Excess length from crank-rock lash: the inverse of `rock_from_excess`.

    e = theta r1

    Parameters
    ----------
    crank_radius : pitch radius of the crank gear [mm]
    angle : crank angle [rad]; below zero counts as zero

    Returns
    -------
    excess length [mm]

    Raises
    ------
    none

    Validity
    --------
    As `rock_from_excess`: an upper bound where keys and dowels have play.

    Reference
    ---------
    As `rock_from_excess`.
    """
    return angle * crank_radius if angle > 0 else 0.0


def angle_of_arc(arc: float, diameter: float) -> float:
    """Angle of an arc measured along a rim.

    theta = 2 a / D

    Parameters
    ----------
    arc : length along the rim [mm]
    diameter : diameter of the rim [mm]

    Returns
    -------
    angle [rad]

    Raises
    ------
    none

    Validity
    --------
    Measured along the rim, not across the chord.

    Reference
    ---------
    Definition of the radian; published instance: 8 in rim, 10 deg is 0.7 in
    (crankshaftcoalition.com, Estimating timing chain wear).
    """
    return 2 * arc / diameter


def cam_retard(strand: float, cam_radius: float, elongation: float) -> float:
    """Cam retard when the driving strand is taut and has lengthened by wear.

    phi = epsilon s / r2

    Parameters
    ----------
    strand : free strand s [mm]
    cam_radius : pitch radius of the cam gear [mm]
    elongation : wear elongation as a fraction [1]

    Returns
    -------
    cam angle [rad]; twice that at the crank

    Raises
    ------
    none

    Validity
    --------
    Wear even along the chain; gear wear, key and dowel play not included.

    Reference
    ---------
    Arc over radius; derived. No published figure for degrees per percent was found.
    """
    return elongation * strand / cam_radius


def degrees(angle: float) -> float:
    """Radians to degrees, at the edge only [deg]."""
    return angle * 180 / math.pi


def radians(angle: float) -> float:
    """Degrees to radians, at the edge only [rad]."""
    return angle * math.pi / 180

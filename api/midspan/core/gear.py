"""Worn gears: from a reading over pins or over the chain to the loss of pitch radius."""

import math


def over_pins(pitch_diameter: float, teeth: int, pin: float) -> float:
    """Measurement over two pins of a gear.

    even z: M = d + d_R;  odd z: M = d cos(pi / (2 z)) + d_R

    Parameters
    ----------
    pitch_diameter : d [mm]
    teeth : z
    pin : pin diameter d_R, equal to the roller diameter d1 [mm]

    Returns
    -------
    measurement over pins [mm]

    Raises
    ------
    none

    Validity
    --------
    Pins seated in opposite tooth gaps; for odd teeth in the two most nearly opposite.

    Reference
    ---------
    From memory of ISO 606 and ASME B29.1, unverified: no published figures were found.
    """
    return pitch_diameter * _across(teeth) + pin


def pitch_diameter_over_pins(measurement: float, teeth: int, pin: float) -> float:
    """Pitch diameter from a measurement over pins: the inverse of `over_pins`.

    Parameters
    ----------
    measurement : M [mm]
    teeth : z
    pin : pin diameter d_R [mm]

    Returns
    -------
    effective pitch diameter [mm]

    Raises
    ------
    none

    Validity
    --------
    As `over_pins`.

    Reference
    ---------
    As `over_pins`, from memory, unverified.
    """
    return (measurement - pin) / _across(teeth)


def _across(teeth: int) -> float:
    """Distance between the most nearly opposite tooth gaps, over the pitch diameter."""
    return math.cos(math.pi / (2 * teeth)) if teeth % 2 else 1.0


def excess_from_radius_loss(wrap: float, loss: float) -> float:
    """Slack that a worn gear adds: its chain sits deeper and wraps a shorter arc.

    de = wrap loss

    Parameters
    ----------
    wrap : angle of wrap on that gear [rad]
    loss : loss of pitch radius [mm]

    Returns
    -------
    change of excess length [mm]

    Raises
    ------
    none

    Validity
    --------
    First order: the taut length changes with a pitch radius by its wrap angle; the strands' own
    change is of second order. Wear even round the gear.

    Reference
    ---------
    Derivative of the length of a belt on two circles; derived.
    """
    return wrap * loss

"""What a tight chain rubs away: the pins at four places, and the bearings it pulls on."""

import math


def pin_power(
    friction: float, pull: float, pin_diameter: float, turns: float, ratio: float
) -> float:
    """Power that the joints of a tight chain rub away as they bend on and off both gears.

    P = mu F (d / 2) 4 pi n (1 + z1 / z2)

    Every joint bends by 2 pi / z on each gear and straightens again: four places, z1 n joints a
    second at each.

    Parameters
    ----------
    friction : coefficient mu of pin in bush [1]
    pull : F in each of the two strands [N]
    pin_diameter : d [mm]
    turns : crank revolutions a second, n [1/s]
    ratio : teeth of the crank gear over teeth of the cam gear, z1 / z2 [1]

    Returns
    -------
    power [W]

    Raises
    ------
    none

    Validity
    --------
    Dry friction; both strands equally tight. What the working pull adds is there with any slack.

    Reference
    ---------
    Articulation work mu F (d / 2) alpha, from memory, unverified; against a published efficiency of
    about 99 % of single roller chain drives: Mechanics and Industry 23 (2022) 27.
    """
    arm = pin_diameter / 2000
    return friction * pull * arm * 4 * math.pi * turns * (1 + ratio)


def bearing_power(
    friction: float, load: float, crank_journal: float, cam_journal: float, turns: float,
    ratio: float,
) -> float:  # fmt: skip
    """Power that the pull of a tight chain costs in the two bearings beside it.

    P = mu F pi n (D1 + D2 z1 / z2)

    Parameters
    ----------
    friction : coefficient mu of an oiled journal [1]
    load : F on each shaft [N]
    crank_journal, cam_journal : diameters D1 and D2 [mm]
    turns : crank revolutions a second, n [1/s]
    ratio : z1 / z2 [1]

    Returns
    -------
    power [W]

    Raises
    ------
    none

    Validity
    --------
    Load carried by the nearest bearings alone.

    Reference
    ---------
    Definition of the coefficient of friction.
    """
    return friction * load * math.pi * turns * (crank_journal + cam_journal * ratio) / 1000

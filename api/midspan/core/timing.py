"""Valve events as crank angles, and what the trade makes of them.

Every angle is in crank degrees after the top dead centre at which the valves overlap, unless its
name says otherwise: before it is negative, the exhaust lobe lies there.
"""

import math

# So far below maximum lift the two points of equal lift near a nose are read where nothing is said:
# 0.020 in, published for a motorcycle cam (Cam Degree 101,
# starracing.com/MotorcycleCamDegree101.php).
NOSE_DROP_MM = 0.508


def unwrap(angle: float, least: float) -> float:
    """Put an angle into the one turn that starts at `least`.

    Parameters
    ----------
    angle : [deg]
    least : start of the turn [deg]

    Returns
    -------
    the same direction of the crank, from least on and below least + 360 [deg]

    Raises
    ------
    none

    Validity
    --------
    Finite angles.

    Reference
    ---------
    none
    """
    return angle - 360 * math.floor((angle - least) / 360)


def after_tdc(reference: str, reading: float, bottom: float) -> float:
    """Crank angle of a reading given from one of the dead centres.

    Parameters
    ----------
    reference : "btdc", "atdc", "bbdc" or "abdc": before or after, top or bottom
    reading : degrees from there; negative is the other side [deg]
    bottom : the bottom dead centre meant: 180 after an intake, -180 before an exhaust [deg]

    Returns
    -------
    crank angle after top dead centre [deg]

    Raises
    ------
    none

    Validity
    --------
    An opening after TDC counts as a negative one before it.

    Reference
    ---------
    The trade's way of naming events; forabodiesonly.com, degreeing a slant camshaft.
    """
    centre = bottom if reference in ("bbdc", "abdc") else 0.0
    return centre - reading if reference in ("btdc", "bbdc") else centre + reading


def duration(opening: float, closing: float) -> float:
    """Crank angle through which a valve is off its seat, or above the checking height.

    D = c - o; for an intake IO + 180 + IC, for an exhaust EO + 180 + EC

    Parameters
    ----------
    opening, closing : events of one lobe [deg after TDC]

    Returns
    -------
    duration [deg]

    Raises
    ------
    none

    Validity
    --------
    Both at the same checking height.

    Reference
    ---------
    forabodiesonly.com/mopar/posts/1970493881, degreeing a slant camshaft.
    """
    return closing - opening


def middle(opening: float, closing: float) -> float:
    """Halfway between two crank angles of equal lift: the centreline of a lobe.

    ICL = (a + b) / 2; from events D/2 - IO, which is the same

    Parameters
    ----------
    opening, closing : crank angles of equal lift on either side of the nose [deg after TDC]

    Returns
    -------
    centreline [deg after TDC]; of an exhaust negative, its size is what the trade calls ECL

    Raises
    ------
    none

    Validity
    --------
    On an asymmetric lobe it depends on the lift chosen.

    Reference
    ---------
    dummett.net, Cam timing; forabodiesonly.com, degreeing a slant camshaft.
    """
    return (opening + closing) / 2


def opening_of(centre: float, lasting: float) -> float:
    """Opening from centreline and duration: the inverse of `middle` and `duration`.

    o = ICL - D/2

    Parameters
    ----------
    centre : centreline [deg after TDC]
    lasting : duration D [deg]

    Returns
    -------
    opening [deg after TDC]

    Raises
    ------
    none

    Validity
    --------
    The centreline halfway between opening and closing.

    Reference
    ---------
    forabodiesonly.com, degreeing a slant camshaft (72, then 114 - 72 = 42).
    """
    return centre - lasting / 2


def closing_of(centre: float, lasting: float) -> float:
    """Closing from centreline and duration: the inverse of `middle` and `duration`.

    c = ICL + D/2

    Parameters
    ----------
    centre : centreline [deg after TDC]
    lasting : duration D [deg]

    Returns
    -------
    closing [deg after TDC]

    Raises
    ------
    none

    Validity
    --------
    As `opening_of`.

    Reference
    ---------
    As `opening_of`.
    """
    return centre + lasting / 2


def lobe_separation(intake: float, exhaust: float) -> float:
    """Angle on the cam between the two lobes' centrelines.

    LSA = (ICL + ECL) / 2

    Parameters
    ----------
    intake : ICL [deg after TDC]
    exhaust : ECL [deg before TDC]

    Returns
    -------
    lobe separation [cam deg]

    Raises
    ------
    none

    Validity
    --------
    Both centrelines found in the same way.

    Reference
    ---------
    forabodiesonly.com, degreeing a slant camshaft.
    """
    return (intake + exhaust) / 2


def advance(intake: float, exhaust: float) -> float:
    """How far a cam stands ahead of straight up; advanced is positive.

    LSA - ICL = (ECL - ICL) / 2

    Parameters
    ----------
    intake : ICL [deg after TDC]
    exhaust : ECL [deg before TDC]

    Returns
    -------
    advance [crank deg]

    Raises
    ------
    none

    Validity
    --------
    As `lobe_separation`.

    Reference
    ---------
    From memory, unverified; agrees with the published example of 5 degrees either way
    (ausmini.com, Valve timing diagrams).
    """
    return (exhaust - intake) / 2


def overlap(intake_opening: float, exhaust_closing: float) -> float:
    """Crank angle through which both valves are open; negative if neither is.

    OL = IO + EC

    Parameters
    ----------
    intake_opening, exhaust_closing : [deg after TDC]

    Returns
    -------
    overlap [deg]

    Raises
    ------
    none

    Validity
    --------
    Both at the same checking height.

    Reference
    ---------
    forabodiesonly.com, degreeing a slant camshaft; starquestclub.com, Cam relationships.
    """
    return exhaust_closing - intake_opening

"""Where the piston is at a crank angle: crank, rod and, if the pin is set off, its offset.

Angles are counted from true top dead centre, where the piston stands highest; after it they are
positive. Lengths are in mm, angles in rad.
"""

import math
from collections import namedtuple


class Slider(namedtuple("Slider", ("throw", "rod", "offset"))):
    """A crank mechanism: crank throw (half the stroke as it is quoted), rod length between
    centres, and the pin's offset from the line through the crank axis, positive towards the major
    thrust side [mm].
    """

    __slots__ = ()

    def top(self) -> float:
        """Crank angle from the pin offset's line to true top dead centre [rad]."""
        return -math.asin(self.offset / (self.throw + self.rod))

    def height(self, angle: float) -> float:
        """Height of the piston pin above the crank axis at an angle after true TDC [mm]."""
        at = angle + self.top()
        side = self.throw * math.sin(at) + self.offset
        return float(self.throw * math.cos(at) + math.sqrt(self.rod**2 - side**2))


def drop(slider: Slider, angle: float) -> float:
    """How far the piston stands below its highest point.

    s = H(0) - H(A);  H = r cos a + sqrt(L^2 - (r sin a + e)^2), a = A - asin(e / (r + L))

    Parameters
    ----------
    slider : the mechanism
    angle : A, crank angle after true top dead centre [rad]

    Returns
    -------
    drop of the piston [mm]

    Raises
    ------
    none

    Validity
    --------
    Rod longer than throw and offset together; no play, nothing stretched. With e = 0 it is
    s = r (1 - cos A) + L - sqrt(L^2 - r^2 sin^2 A).

    Reference
    ---------
    rcuniverse.com/forum/7112617-post20.html and physicsforums.com, crank mechanism design (869828),
    for the pin without offset; the offset follows from the same triangle.
    """
    return slider.height(0.0) - slider.height(angle)


def drop_rate(slider: Slider, angle: float) -> float:
    """How fast the piston falls with the crank: the derivative of `drop`.

    ds/dA = r sin a + (r sin a + e) r cos a / sqrt(L^2 - (r sin a + e)^2)

    Parameters
    ----------
    slider : the mechanism
    angle : crank angle after true top dead centre [rad]

    Returns
    -------
    piston travel per crank angle [mm/rad]

    Raises
    ------
    none

    Validity
    --------
    As `drop`.

    Reference
    ---------
    Derivative of `drop`; checked against differences of it.
    """
    at = angle + slider.top()
    side = slider.throw * math.sin(at) + slider.offset
    lean = side / math.sqrt(slider.rod**2 - side**2)
    return float(slider.throw * (math.sin(at) + lean * math.cos(at)))


def bottom(slider: Slider) -> float:
    """Crank angle of true bottom dead centre after true top dead centre.

    B = pi + asin(e / (L + r)) - asin(e / (L - r))

    Parameters
    ----------
    slider : the mechanism

    Returns
    -------
    angle [rad], exactly pi without offset

    Raises
    ------
    none

    Validity
    --------
    As `drop`.

    Reference
    ---------
    Crank and rod stretched, and folded, in one line.
    """
    return math.pi - math.asin(slider.offset / (slider.rod - slider.throw)) - slider.top()


def compression_from(slider: Slider, closing: float, static_ratio: float) -> float:
    """Compression ratio counted from the angle at which the intake valve closes.

    DCR = (s(A) + c) / c;  c = stroke / (SCR - 1)

    Parameters
    ----------
    slider : the mechanism
    closing : A, crank angle of closing after top dead centre [rad]
    static_ratio : SCR, swept and clearance volume over clearance volume [1]

    Returns
    -------
    dynamic compression ratio [1]

    Raises
    ------
    none

    Validity
    --------
    The seat closing point; the charge is taken as shut in at that angle, at rest.

    Reference
    ---------
    Derived: the static ratio's own definition with the stroke that is left. The static one:
    fordsixperformanceforum.github.io/CompressionR.html.
    """
    stroke = drop(slider, bottom(slider))
    clearance = stroke / (static_ratio - 1)
    return (drop(slider, closing) + clearance) / clearance

"""The degree wheel: which way its numbers run, and what a reading of it is worth."""

import math
from collections import namedtuple

from .fields import Form
from .figures import fixed
from .instrument import (
    Instrument,
    assumption,
    instrument_components,
    take_instrument,
)
from .limits import GIVEN, MEMORY
from .phase import angle_of_arc, degrees
from .uncertainty import Component, rectangular
from .warnings import warning

# From 0 to 180 either way; round to 360 and rising as the engine turns; round and falling.
SCALES = ("both-ways", "0-360-up", "0-360-down")
# What is assumed where nothing is given: from memory, unverified.
DIAMETER_MM = 280.0
PARALLAX_MM = 0.4
# Readings of one place further apart than this hint at a slip; from memory, unverified.
SPREAD_DEG = 2.0
# True TDC is known to this, either way, where it was not found; from memory, unverified.
TDC_DEG = 1.0


def tdc_not_found() -> dict[str, object]:
    """Say at a result that true TDC was not found for it, and what is allowed for that.

    Parameters
    ----------
    none

    Returns
    -------
    one warning, in the form of the result

    Raises
    ------
    none

    Validity
    --------
    Where no plus or minus of true TDC was given.

    Reference
    ---------
    From memory, unverified.
    """
    text = "True TDC was not found for this: {} degree either way is allowed for it. Find it first."
    text = text.format(fixed(TDC_DEG, 0))
    return warning("tdc-not-found", "tdc_plus_minus_deg", TDC_DEG, text, MEMORY)


class Wheel(namedtuple("Wheel", ("scale", "instrument", "parallax", "origin", "assumptions"))):
    """A wheel and its pointer: scale (None if refused), Instrument, half-width of the parallax
    [deg] and where that comes from, what was assumed.
    """

    __slots__ = ()

    def turned(self, reading: float) -> float:
        """Degrees that the crank has turned, in its running direction, since the wheel's zero."""
        return -reading if self.scale == "0-360-down" else reading

    def reads(self, angle: float) -> float:
        """What the wheel shows that far after its zero; after it is positive on both-ways."""
        if self.scale == "both-ways":
            return angle
        shown = -angle if self.scale == "0-360-down" else angle
        return shown - 360 * math.floor(shown / 360)


def take_wheel(form: Form, single: bool) -> Wheel:
    """Read how the wheel's numbers run and how well it can be read, or assume and say so.

    Parameters
    ----------
    form : the input being read
    single : whether any of the readings stands alone
    """
    scale = form.take_choice("wheel", SCALES)
    instrument: Instrument = take_instrument(form, "wheel", "deg", single)
    given = {
        "wheel_diameter_mm": form.take_number("wheel_diameter_mm", required=False),
        "parallax_mm": form.take_number("parallax_mm", required=False),
    }
    assumed = list(instrument.assumptions)
    values = []
    for field, default, what in (
        ("wheel_diameter_mm", DIAMETER_MM, "Diameter at the wheel's marks"),
        ("parallax_mm", PARALLAX_MM, "How far the eye may be off at the pointer"),
    ):
        value = given[field]
        if value is None:
            value = default
            assumed.append(assumption(field, value, MEMORY, what + ", assumed: none was given."))
        values.append(value)
    origin = MEMORY if None in (given["wheel_diameter_mm"], given["parallax_mm"]) else GIVEN
    parallax = degrees(angle_of_arc(values[1], values[0]))
    return Wheel(scale, instrument, parallax, origin, assumed)


def wheel_lines(wheel: Wheel, weight: float) -> list[Component]:
    """Give the budget lines of the wheel; weight is the length of the sensitivities together.

    Every reading is at another mark and with another look, so several readings of weights w_i
    count as one of weight sqrt(sum w_i^2).
    """
    return instrument_components(wheel.instrument, weight) + [
        Component("pointer parallax", "B", weight * rectangular(wheel.parallax), None, wheel.origin)
    ]

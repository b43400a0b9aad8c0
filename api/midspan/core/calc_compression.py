"""Dynamic compression: the ratio from the point where the intake valve closes."""

import math

from . import limits
from .air import SEA_LEVEL_KPA
from .crank_input import take_slider
from .crank_slider import Slider, bottom, compression_from, drop
from .fields import Form
from .figures import fixed
from .instrument import assumption, interval_dict
from .student import NORMAL_95
from .uncertainty import propagate
from .version import VERSION
from .warnings import cautions, warning

# Exponent of the compression: published range 1.2 to 1.3, with 1.3 in its example.
EXPONENT, EXPONENTS = 1.3, (1.2, 1.3)
EXPONENT_SOURCE = "Encyclopaedia extract, compression ratio, altsci.com/3/p/Compression%20ratio/37"
# The closing point is known to this if nothing is said of it: from memory, unverified.
CLOSING_DEG = 2.0
# A seat that closes earlier than this is likelier a height of lift that does; and none closes so
# late. From memory, unverified.
EARLY_DEG, NEVER_DEG = 45.0, 150.0
SETTINGS_DEG = (-8.0, -6.0, -4.0, -2.0, 0.0, 2.0, 4.0, 6.0, 8.0)


def pressure(ratio: float, exponent: float, inlet: float) -> float:
    """Pressure after compression without burning.

    p2 = p1 r^n

    Parameters
    ----------
    ratio : r, compression ratio from the closing of the valve [1]
    exponent : n, polytropic exponent [1]
    inlet : p1, absolute pressure in the cylinder when the valve closes [kPa]

    Returns
    -------
    absolute pressure [kPa]

    Raises
    ------
    none

    Validity
    --------
    No leak; the exponent stands for the heat that goes to the walls, and a starter that turns
    slowly gives less.

    Reference
    ---------
    altsci.com/3/p/Compression%20ratio/37: 7.5^1.3 = 13.7, times 14.7 psi is 201.8 psi.
    """
    return float(inlet * ratio**exponent)


def calculate(payload: object) -> dict[str, object]:
    """Work out dynamic compression from the intake's closing point.

    Parameters
    ----------
    payload : stroke_mm, rod_length_mm, pin_offset_mm, static_ratio, intake_closing_abdc_deg (of the
        seat), closing_plus_minus_deg, exponent, inlet_pressure_kpa, settings_deg

    Returns
    -------
    dict: dynamic_ratio, effective_stroke_mm, pressure_kpa, gauge_kpa, settings, assumptions,
    warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Turning slowly; at speed the charge goes on flowing in after bottom dead centre.

    Reference
    ---------
    See `crank_slider.compression_from` and `pressure`.
    """
    form = Form(payload)
    slider = take_slider(form)
    static = form.take_number("static_ratio")
    closing = form.take_number("intake_closing_abdc_deg")
    error = form.take_number("closing_plus_minus_deg", required=False)
    exponent = form.take_number("exponent", required=False)
    inlet = form.take_number("inlet_pressure_kpa", required=False)
    settings = list(SETTINGS_DEG)
    if form.has("settings_deg"):
        settings = form.take_numbers("settings_deg", 25) or []
    form.close()
    if closing is not None and not 0 <= closing < NEVER_DEG:
        need = "from 0 to 150 degrees after bottom dead centre"
        step = "Enter the seat closing point, counted from bottom dead centre."
        form.refuse("out-of-range", "intake_closing_abdc_deg", closing, need, step)
    form.finish()
    assert slider is not None and static is not None  # noqa: S101, PT018  (finish raised otherwise)
    assert closing is not None  # noqa: S101
    assumed = _assumed(error, exponent, inlet)
    half = CLOSING_DEG if error is None else error
    power = EXPONENT if exponent is None else exponent
    air = SEA_LEVEL_KPA if inlet is None else inlet

    def ratio(angle: float) -> float:
        return compression_from(slider, _after_top(angle), static)

    seen = propagate(lambda x: ratio(x[0]), [(closing, half / NORMAL_95, half)])
    rows = [_row(slider, static, closing, setting, power, air) for setting in sorted(set(settings))]
    return {
        "calc": "compression",
        "core_version": VERSION,
        "static_ratio": static,
        "dynamic_ratio": interval_dict(seen),
        "effective_stroke_mm": drop(slider, _after_top(closing)),
        "swept_stroke_mm": drop(slider, bottom(slider)),
        "pressure_kpa": pressure(seen.value, power, air),
        "gauge_kpa": pressure(seen.value, power, air) - air,
        "pressures": [
            {"exponent": n, "pressure_kpa": pressure(seen.value, n, air),
             "gauge_kpa": pressure(seen.value, n, air) - air}
            for n in EXPONENTS
        ],
        "settings": rows,
        "assumptions": assumed,
        "warnings": _doubts(closing),
        "cautions": cautions("turn-by-hand"),
    }  # fmt: skip


def _after_top(abdc: float) -> float:
    """Crank angle after TDC: bottom dead centre is counted at 180, as on the wheel [rad]."""
    return (180 + abdc) * math.pi / 180


def _row(
    slider: Slider, static: float, closing: float, setting: float, power: float, air: float
) -> dict[str, object]:
    """Give the ratio with the cam moved; an earlier cam closes earlier."""
    at = max(0.0, closing - setting)
    found = compression_from(slider, _after_top(at), static)
    return {
        "setting_deg": setting,
        "intake_closing_abdc_deg": at,
        "ratio": found,
        "pressure_kpa": pressure(found, power, air),
    }


def _assumed(
    error: float | None, exponent: float | None, inlet: float | None
) -> list[dict[str, object]]:
    found = []
    if error is None:
        text = "How well the closing point is known, assumed: nothing was given."
        found.append(assumption("closing_plus_minus_deg", CLOSING_DEG, limits.MEMORY, text))
    if exponent is None:
        text = "Exponent of the compression, the published range being 1.2 to 1.3: "
        text += EXPONENT_SOURCE + "."
        found.append(assumption("exponent", EXPONENT, limits.PUBLISHED, text))
    if inlet is None:
        text = "Pressure at closing, taken as the standard atmosphere of ISO 2533."
        found.append(assumption("inlet_pressure_kpa", SEA_LEVEL_KPA, limits.PUBLISHED, text))
    return found


def _doubts(closing: float) -> list[dict[str, object]]:
    if closing >= EARLY_DEG:
        return []
    text = "{} degrees is early for a seat closing point: one read at 0.050 in or 1 mm comes much "
    text += "before the seat, and would make the ratio look too high."
    text = text.format(fixed(closing, 1))
    return [warning("early-closing", "intake_closing_abdc_deg", closing, text, limits.MEMORY)]

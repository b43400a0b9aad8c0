"""Find true top dead centre from readings at equal piston height on either side of it."""

from collections import namedtuple

from .crank_slider import Slider, drop, drop_rate
from .fields import Form
from .figures import fixed
from .instrument import assumption, measured
from .limits import GIVEN, MEMORY, PUBLISHED
from .phase import radians
from .setting import setting_result, shown_setting
from .timing import unwrap
from .uncertainty import Component, Estimate, mean, rectangular, repeat_component
from .warnings import cautions, count_warnings, warning
from .wheel import SPREAD_DEG, Wheel, take_wheel, wheel_lines

# A stop that the piston touches, or a dial indicator that shows equal drop.
METHODS = ("positive-stop", "equal-drop")
# Beyond this the piston is nearer to the bottom: the readings, or the way round, are mixed up.
MOST_HALF_DEG = 90.0
# Closer than this to TDC the piston hardly moves; from memory, unverified.
SHALLOW_DEG = 8.0
# A drop further from that of the wheel's readings than this and a tenth of itself means a slip in
# one of the two; from memory, unverified.
DROP_OFF_MM, DROP_OFF_SHARE = 0.1, 0.1
# How well TDC should be known before a cam is set by it: common practice, no source.
WANTED_DEG = 0.5
# What is assumed where nothing is given: from memory, unverified. One engine's crank, which only
# serves to weigh the depth error, and a thou of give.
STROKE_MM, ROD_MM, DEPTH_ERROR_MM = 88.4, 144.8, 0.025
_ABOUT = "Measuring TDC, stlaroc.com/features/meastdc.html"


class Pair(namedtuple("Pair", ("before", "after", "middle", "half"))):
    """Both sets of readings as the crank turned since the wheel's zero, TDC halfway between them
    and half the angle between them [deg].
    """

    __slots__ = ()


def calculate(payload: object) -> dict[str, object]:
    """Find true TDC and how far the wheel is off.

    Parameters
    ----------
    payload : method, wheel, before_readings_deg, after_readings_deg, and optionally the
        instrument's figures, wheel_diameter_mm, parallax_mm, depth_error_mm, stroke_mm,
        rod_length_mm, drop_mm

    Returns
    -------
    dict: measured (what the wheel shows at true TDC), correction_deg, half_angle_deg, drop_mm,
    depth_rate_mm_per_deg, verdict, assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    The same piston height on both sides; no pin offset. A stop's depth cancels, its flex does not.

    Reference
    ---------
    Midpoint of the two stop readings: blog.decatech.com, degree wheel. Weight of a depth error:
    `crank_slider.drop_rate`.
    """
    form = Form(payload)
    method = form.take_choice("method", METHODS)
    before = form.take_numbers("before_readings_deg")
    after = form.take_numbers("after_readings_deg")
    single = 1 in (len(before or ()), len(after or ()))
    wheel = take_wheel(form, single)
    given, assumed = _take_depth(form)
    fallen = form.take_number("drop_mm", required=False)
    form.close()
    pair = None
    if before is not None and after is not None and wheel.scale is not None:
        pair = _pair(form, wheel, before, after)
    form.finish()
    # finish raised if any of these was refused
    assert pair is not None  # noqa: S101
    assert before is not None and after is not None  # noqa: S101, PT018
    slider = Slider(given["stroke_mm"] / 2, given["rod_length_mm"], 0.0)
    rate = drop_rate(slider, radians(pair.half)) * radians(1)
    depth_origin = GIVEN if not assumed else MEMORY
    lines = _budget(pair, wheel, given["depth_error_mm"] / rate, depth_origin)
    at, shown = measured("tdc_reading_deg", wheel.reads(pair.middle), lines, _count(pair))
    off = unwrap(-pair.middle, -180.0)
    depth = drop(slider, radians(pair.half))
    warned = _warnings(pair, slider, fallen, assumed)
    return setting_result(
        "tdc",
        {
            "measured": shown,
            "wheel": wheel.scale,
            "correction_deg": off,
            "half_angle_deg": pair.half,
            "drop_mm": depth,
            "depth_rate_mm_per_deg": rate,
        },
        _verdict(method or "", wheel.scale, at, off, pair),
        wheel.assumptions + assumed,
        warned,
        cautions("no-start", "turn-by-hand", "light-touch", "valve-contact"),
    )


def _take_depth(form: Form) -> tuple[dict[str, float], list[dict[str, object]]]:
    """Read what weighs the depth error, or assume it and say so."""
    values, assumed = {}, []
    for field, default, text in (
        ("depth_error_mm", DEPTH_ERROR_MM, "Give of the stop or the dial, assumed."),
        ("stroke_mm", STROKE_MM, "Stroke, assumed: it only weighs the depth error."),
        ("rod_length_mm", ROD_MM, "Rod length, assumed: it only weighs the depth error."),
    ):
        value = form.take_number(field, required=False)
        if value is None:
            assumed.append(assumption(field, default, MEMORY, text))
            value = default
        values[field] = value
    if values["rod_length_mm"] <= values["stroke_mm"] / 2:
        need = "more than half the stroke, " + fixed(values["stroke_mm"] / 2, 1) + " mm"
        form.refuse("conflict", "rod_length_mm", values["rod_length_mm"], need, "Check the unit.")
    return values, assumed


def _pair(form: Form, wheel: Wheel, before: list[float], after: list[float]) -> Pair | None:
    """Put the readings in the order in which the crank passes them, or refuse them."""
    if wheel.scale == "both-ways":
        for field, values in (("before_readings_deg", before), ("after_readings_deg", after)):
            for i, value in enumerate(values):
                if value > 180:
                    need = "at most 180 on a wheel counted both ways from its zero"
                    step = "If yours runs round to 360, say so: choose how its numbers run."
                    form.refuse("out-of-range", field + "[" + str(i) + "]", value, need, step)
        if form.problems:
            return None
        first, second = [-x for x in before], list(after)
    else:
        # Round the first reading, so that 359.5 and 0.5 are a degree apart.
        first = _together([wheel.turned(x) for x in before])
        second = _together([wheel.turned(x) for x in after])
    start = mean(first)
    end = mean(second)
    if wheel.scale != "both-ways":
        turn = unwrap(end, start) - end
        second = [x + turn for x in second]
        end += turn
    half = (end - start) / 2
    if not 0 < half <= MOST_HALF_DEG:
        need = "readings up to 180 degrees of crank apart, with TDC between them"
        step = "Swap before and after, or choose the other way for the wheel's numbers to run."
        form.refuse("wrong-way-round", "after_readings_deg", after[0], need, step)
        return None
    return Pair(first, second, (start + end) / 2, half)


def _together(values: list[float]) -> list[float]:
    """Put readings of one place within half a turn of the first."""
    return [unwrap(x, values[0] - 180) for x in values]


def _count(pair: Pair) -> int:
    return min(len(pair.before), len(pair.after))


def _budget(pair: Pair, wheel: Wheel, depth: float, depth_origin: str) -> list[Component]:
    """Give the budget of the midpoint; depth is the depth error as a crank angle."""
    scatter, origin = wheel.instrument.repeatability, wheel.instrument.origins["repeatability"]
    # Two readings, half of each: together they weigh sqrt(1/2) of one.
    both = 0.5**0.5
    lines = [
        repeat_component(pair.before, scatter, origin, "repeat before TDC", 0.5),
        repeat_component(pair.after, scatter, origin, "repeat after TDC", 0.5),
    ]
    stop = Component("stop or dial", "B", both * rectangular(depth), None, depth_origin)
    return lines + wheel_lines(wheel, both) + [stop]


def _warnings(
    pair: Pair, slider: Slider, fallen: float | None, assumed: list[dict[str, object]]
) -> list[dict[str, object]]:
    """Say what looks like a slip, and what makes the figure weak."""
    found = []
    for field, values in (("before_readings_deg", pair.before), ("after_readings_deg", pair.after)):
        spread = max(values) - min(values)
        if spread > SPREAD_DEG:
            text = "Readings of one place differ by " + fixed(spread, 1) + " degrees: has the "
            text += "pointer or the wheel slipped?"
            found.append(warning("wheel-slipped", field, spread, text, MEMORY))
    if len(pair.before) != len(pair.after):
        text = "The two sides were not read equally often: take them in pairs, one after the other."
        missing = float(len(pair.before) - len(pair.after))
        found.append(warning("not-in-pairs", "after_readings_deg", missing, text))
    found += count_warnings("before_readings_deg", _count(pair))
    if pair.half < SHALLOW_DEG:
        text = "So near to TDC the piston hardly moves: 5 degrees are about 0.23 mm (0.009 in). "
        text += "Set the stop deeper."
        got = pair.half
        found.append(warning("shallow", "after_readings_deg", got, text, PUBLISHED, _ABOUT))
    if fallen is not None:
        there = drop(slider, radians(pair.half))
        if abs(there - fallen) > DROP_OFF_SHARE * fallen + DROP_OFF_MM:
            text = "These readings mean a drop of " + fixed(there, 2) + " mm, not "
            text += fixed(fallen, 2) + ": check which way the wheel was read"
            text += ", and the stroke." if not assumed else ", and enter the engine's own stroke."
            found.append(warning("drop-against-wheel", "drop_mm", fallen, text))
    return found


_OUT = " Then take stop or dial out, before the crank is turned on."


def _verdict(method: str, scale: str, at: Estimate, off: float, pair: Pair) -> dict[str, object]:
    """Say whether the wheel reads true, how far it is off, or that nobody can tell yet."""
    why = "True TDC is known to plus or minus {} crank degrees.".format(fixed(at.expanded, 2))
    if at.expanded > WANTED_DEG:
        step = "Read each side again, three times in all."
        if pair.half < SHALLOW_DEG:
            step = "Set the stop deeper, so that the piston moves more by the degree."
        more = " Set a cam by TDC once it is known to {} deg: common practice, no source."
        step += more.format(fixed(WANTED_DEG, 1))
        return shown_setting("unsure", "Not sure enough to set a cam by", why, step)
    if abs(off) <= at.expanded:
        step = "Leave wheel and pointer as they are, and take the stop out."
        return shown_setting("true", "The wheel reads true", why, step)
    where = "after" if off > 0 else "before"
    why += " The wheel's zero is {} degrees {} it.".format(fixed(abs(off), 2), where)
    if scale != "both-ways":
        step = (
            "Leave the wheel as it is: the figure is carried on. Or set the pointer to read zero "
        )
        step += "there."
        step += _OUT
        return shown_setting("correct", "TDC reads {}".format(fixed(at.value, 2)), why, step)
    touch = "each stop" if method == "positive-stop" else "equal drop"
    step = "Move the pointer until {} reads {} from zero, or leave it: the figure is carried on."
    step = step.format(touch, fixed(pair.half, 2)) + _OUT
    headline = "Zero is {} {} TDC".format(fixed(abs(off), 2), where)
    return shown_setting("correct", headline, why, step)

"""Piston to valve clearance: how little there is, where, and how cam and rocker move it."""

import math

from . import limits, limits_valve
from .bench import Findings, judged_rows, shown_verdict
from .calc_rockers import take_rockers
from .clearance import Gap, smallest, top_from_clay, top_from_drop
from .clearance_verdict import outcome_of, verdict_of
from .crank_input import take_slider
from .crank_slider import Slider
from .fields import Form
from .figures import fixed, short
from .instrument import (
    Instrument,
    assumption,
    instrument_components,
    interval_dict,
    measured,
    take_instrument,
)
from .lift_doubts import table_faults
from .lift_table import VALVES
from .student import NORMAL_95
from .uncertainty import (
    Component,
    Interval,
    combine,
    interval,
    interval_of,
    mean,
    rectangular,
    repeat_component,
)
from .valve_train import Train, take_train
from .verdict import Subject, judgements, take_own_limit
from .version import VERSION
from .warnings import cautions, warning
from .wheel import TDC_DEG, tdc_not_found

METHODS = ("drop", "clay")
MOST_DROPS, MOST_SETTINGS = 60, 25
# Cam moves shown if none is asked for; 5 degrees is the published check.
SETTINGS_DEG = (-8.0, -6.0, -5.0, -4.0, -2.0, 0.0, 2.0, 4.0, 5.0, 6.0, 8.0)
# A nominal 1.5 rocker is really 1.48 to 1.51, so about one in a hundred:
# onallcylinders.com/2021/03/10, staggered rocker arms.
RATIO_SHARE = 0.01
# Half the width of the curve, about TDC.
WINDOW_DEG = 60.0
# Drops that are further apart, taken back to TDC, do not go together; from memory, unverified.
DROPS_APART_MM = 0.25


def calculate(payload: object) -> dict[str, object]:
    """Judge the clearance between a valve and the piston.

    Parameters
    ----------
    payload : valve, lobe, rockers (the present one first), stroke_mm, rod_length_mm, pin_offset_mm,
        valve_axis_deg, method ("drop": drops, list of drop_angle_deg and travel_mm of the seated
        valve; "clay": readings_mm of its thickness), settings_deg (cam moves to look at),
        tdc_plus_minus_deg, the dial's figures, deck_clearance_mm, aluminium_rods,
        radial_clearance_mm, own_limit, curve_points

    Returns
    -------
    dict: measured (the least clearance as it is set now), least_at_deg, verdict, judgements,
    settings (clearance of every rocker at every cam setting), curve, assumptions, warnings,
    cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    At rest and cold: at speed rods stretch, rockers bend and valves float, which is what the
    published minima are for.

    Reference
    ---------
    VC = TC - LL RR: moparts.org/Tech/Archive/bb/13.html. See `clearance` and `limits_valve`.
    """
    form = Form(payload)
    valve = str(form.take_choice("valve", VALVES) or VALVES[0])
    train = take_train(form, "lobe", valve)
    rockers = take_rockers(form)
    slider = take_slider(form)
    axis = form.take_number("valve_axis_deg", required=False) or 0.0
    factor = math.cos(axis * math.pi / 180)
    method = form.take_choice("method", METHODS)
    drops = _take_drops(form) if method == "drop" else []
    clay = form.take_numbers("readings_mm") if method == "clay" else None
    settings = _take_settings(form)
    tdc = form.take_number("tdc_plus_minus_deg", required=False)
    count = len(clay or drops)
    dial = take_instrument(form, "dial", "mm", count < 2)
    deck = form.take_number("deck_clearance_mm", required=False)
    aluminium = form.take_flag("aluminium_rods", False)
    radial = form.take_number("radial_clearance_mm", required=False)
    own = take_own_limit(form, ("valve_clearance_mm",), least_only=True)
    points = int(form.take_number("curve_points", required=False) or 0)
    form.close()
    if train is not None and not train.lobe.base:
        need = "a table that ends on the base circle on both sides"
        step = "Without the ramps the lift beside TDC is not known. Read the table further."
        form.refuse("conflict", "lobe", "a table that ends on a flank", need, step)
    form.finish()
    assert train is not None and slider is not None  # noqa: S101, PT018  (finish raised otherwise)
    present = train.with_rocker(rockers[0][1], rockers[0][2])
    bare = Gap(slider, present, 0.0, factor)
    values = clay if clay is not None else _tops(slider, factor, drops)
    tops = [top_from_clay(bare, x) for x in values] if clay is not None else values
    gap = Gap(slider, present, mean(tops), factor)
    origin = limits.GIVEN if tdc is not None else limits.MEMORY
    doubt = _Doubt(tops, dial, TDC_DEG if tdc is None else tdc, origin)
    at, value = smallest(gap)
    estimate, seen = measured("valve_clearance_mm", value, doubt.lines(gap, at), count)
    found = ([] if own is None else [own]) + limits_valve.applying(valve, deck, aluminium)
    by = {"valve_clearance_mm": Subject(interval_of(estimate), 1.0, "mm")}
    if radial is not None:
        by["radial_clearance_mm"] = Subject(_radial(radial, dial), 1.0, "mm")
    rows = judgements(found, by, None)
    faults = table_faults("lobe", train.lobe)
    # A reading out of line is hardly in the curve; the other faults bend it.
    faulty = any([one["code"] != "out-of-line" for one in faults])
    verdict = verdict_of(by["valve_clearance_mm"].at, at, rows, faulty)
    table = _table(bare, gap, doubt, rockers, settings, found, faulty)
    assumed = dial.assumptions + _assumed(tdc)
    return {
        "calc": "clearance",
        "core_version": VERSION,
        "valve": valve,
        "method": method,
        "measured": seen,
        "least_at_deg": at,
        "seated_at_top_mm": gap.at_top,
        "loss_per_deg_mm": abs(gap.piston_rate(at)),
        "verdict": shown_verdict(verdict, None),
        "judgements": judged_rows(Findings(by, rows, None)),
        "settings": table,
        "curve": _curve(gap, points),
        "assumptions": assumed,
        "warnings": (
            faults
            + _own_doubts(own, found)
            + _doubts(valve, at, method, tops, table)
            + ([tdc_not_found()] if tdc is None else [])
        ),
        "cautions": cautions("turn-by-hand", "valve-contact", "checking-springs"),
    }


class _Doubt:
    """What makes a clearance uncertain."""

    def __init__(self, tops: list[float], dial: Instrument, tdc: float, origin: str) -> None:
        self.tops, self.dial, self.origin = tops, dial, origin
        self.tdc = tdc / NORMAL_95

    def lines(self, gap: Gap, at: float) -> list[Component]:
        """Give the budget of the gap at a crank angle."""
        origins, train = self.dial.origins, gap.train
        found = [
            repeat_component(
                self.tops, self.dial.repeatability, origins["repeatability"], "repeat readings"
            )
        ]
        found += instrument_components(self.dial, 1.0)
        turn = math.sqrt(self.tdc**2 + train.lobe.wheel**2)
        found.append(
            Component("TDC and wheel", "B", abs(gap.piston_rate(at)) * turn, None, self.origin)
        )
        lift = train.lift_uncertainty(at)
        found.append(Component("lift curve", "B", lift, None, "the lift table"))
        # Lift that was read at the valve with this very rocker has its true ratio in it.
        if abs(train.ratio * train.factor - 1) > 1e-9:
            share = rectangular(RATIO_SHARE) * (train.lift(at) + train.lash)
            found.append(Component("rocker ratio", "B", share, None, limits.PUBLISHED))
        return found


def _own_doubts(own: limits.Limit | None, found: list[limits.Limit]) -> list[dict[str, object]]:
    """Say so if the user's own limit asks for less than anything in print."""
    printed = [x.lower for x in found if x.origin == limits.PUBLISHED and x.governs and x.lower]
    if own is None or own.lower is None or not printed or own.lower >= min(printed):
        return []
    text = "Your own limit, {} mm, is less than every minimum in print here, the smallest {} mm; "
    text += "the verdict goes by yours. Look at it again, and for what lash it is meant."
    text = text.format(short(own.lower, 4), short(min(printed), 4))
    return [warning("own-below-print", "own_limit.lower", own.lower, text)]


def _radial(value: float, dial: Instrument) -> Interval:
    lines = instrument_components(dial, 1.0)
    return interval(value, combine(value, lines).uncertainty)


def _take_drops(form: Form) -> list[tuple[float, float]]:
    """Read how far the seated valve travels to the piston, at crank angles."""
    found = []
    parts = form.take_forms("drops", MOST_DROPS)
    if form.has("drops") and isinstance(form.payload["drops"], list) and not parts:
        need = "a list of 1 to " + str(MOST_DROPS) + " readings"
        form.refuse("empty-list", "drops", "an empty list", need, "Read at several angles.")
    for part in parts:
        angle = part.take_number("drop_angle_deg")
        travel = part.take_number("travel_mm")
        part.close()
        if angle is not None and travel is not None:
            found.append((angle, travel))
    return found


def _take_settings(form: Form) -> list[float]:
    settings = list(SETTINGS_DEG)
    if form.has("settings_deg"):
        settings = form.take_numbers("settings_deg", MOST_SETTINGS) or []
    return sorted(set(settings + [0.0]))


def _tops(slider: Slider, factor: float, drops: list[tuple[float, float]]) -> list[float]:
    return [top_from_drop(slider, factor, angle, travel) for angle, travel in drops]


def _table(
    bare: Gap,
    gap: Gap,
    doubt: _Doubt,
    rockers: list[tuple[str, float, float]],
    settings: list[float],
    found: list[limits.Limit],
    faulty: bool,
) -> list[dict[str, object]]:
    """Give the least clearance of every rocker at every cam setting."""
    rows = []
    for label, ratio, lash in rockers:
        for setting in settings:
            train: Train = bare.train.with_rocker(ratio, lash).moved(setting)
            here = Gap(bare.slider, train, gap.at_top, bare.factor)
            at, value = smallest(here)
            seen = interval_of(combine(value, doubt.lines(here, at)))
            by = {"valve_clearance_mm": Subject(seen, 1.0, "mm")}
            rows.append(
                {
                    "label": label,
                    "setting_deg": setting,
                    "least_at_deg": at,
                    "clearance_mm": interval_dict(seen),
                    "outcome": outcome_of(seen, judgements(found, by, None), faulty),
                }
            )
    return rows


def _curve(gap: Gap, points: int) -> list[dict[str, object]]:
    rows: list[dict[str, object]] = []
    for i in range(points):
        at = -WINDOW_DEG + 2 * WINDOW_DEG * (i / (points - 1) if points > 1 else 0.5)
        rows.append(
            {
                "angle_deg": at,
                "clearance_mm": gap.at(at),
                "travel_mm": gap.seated(at),
                "lift_mm": gap.train.lift(at),
            }
        )
    return rows


def _assumed(tdc: float | None) -> list[dict[str, object]]:
    if tdc is not None:
        return []
    text = "How well true TDC is known, assumed: nothing was given."
    return [assumption("tdc_plus_minus_deg", TDC_DEG, limits.MEMORY, text)]


def _doubts(
    valve: str,
    at: float,
    method: str | None,
    tops: list[float],
    table: list[dict[str, object]],
) -> list[dict[str, object]]:
    """Say what is unusual, and which settings must not be turned."""
    found = []
    touching = [row for row in table if row["outcome"] == "would-touch"]
    if touching:
        names = ["{} at {}".format(r["label"], fixed(float(str(r["setting_deg"])), 1))
                 for r in touching[:6]]  # fmt: skip
        text = "Would touch, so do not turn the engine with them: " + ", ".join(names)
        text += "." if len(touching) <= 6 else " and {} more.".format(len(touching) - 6)
        found.append(warning("would-touch", "settings_deg", len(touching), text))
    if (at < 0) == (valve == "intake"):
        text = "The gap is least {} degrees {} TDC; usual is about 10 after for the intake, 10 "
        text += "before for the exhaust. Check which lobe it is, and where its zero lies."
        text = text.format(fixed(abs(at), 1), "before" if at < 0 else "after")
        found.append(warning("unusual-place", "lobe", at, text, limits.MEMORY))
    if method == "drop" and len(tops) > 2 and max(tops) - min(tops) > DROPS_APART_MM:
        text = "The readings of the drop, taken back to TDC, lie {} mm apart. Check the angles, "
        text += "stroke and rod, and the valve's angle to the bore."
        spread = max(tops) - min(tops)
        found.append(
            warning("drops-disagree", "drops", spread, text.format(fixed(spread, 2)), limits.MEMORY)
        )
    if method == "clay":
        text = "Clay tells one place at one setting; a dial at several angles tells more."
        found.append(warning("clay", "method", len(tops), text))
    return found

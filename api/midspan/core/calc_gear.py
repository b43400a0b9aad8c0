"""Judge the wear of a gear from a reading over pins, or over the chain wrapped round it."""

import math

from .bench import (
    Evidence,
    Findings,
    evidence,
    hold,
    judged_rows,
    shown_verdict,
)
from .build import Build, take_build
from .drive import pitch_radius
from .fields import Form
from .figures import fixed, short
from .gear import excess_from_radius_loss, over_pins, pitch_diameter_over_pins
from .instrument import interval_dict, take_instrument
from .limits import GEAR, MEMORY, OWN
from .uncertainty import Interval
from .verdict import Subject, Verdict, settle, take_own_limit
from .version import VERSION
from .warnings import cautions, count_warnings, warning

METHODS = ("over-pins", "over-chain")
GEARS = ("crank", "cam")
# No gear wears by more of its pitch diameter and still holds a chain: a slip is likelier. From
# memory, unverified.
BELIEVABLE = 0.05

WORDS = {
    "within": ("Within the limit", "Fit to use as far as this reading goes."),
    "below": ("Worn below the limit", "Do not refit it. Judge the chain that ran on it as well."),
    "beyond": ("Beyond your upper limit", "Check the pins, the teeth counted and the limit."),
    "too-close": ("Too close to call", ""),
}


def calculate(payload: object) -> dict[str, object]:
    """Judge a gear by its effective pitch diameter.

    Parameters
    ----------
    payload : method "over-pins" (pin_diameter_mm) or "over-chain" (roller_diameter_mm of a new
        chain wrapped round), teeth and pitch_mm, or a drive and which gear of it ("crank" or
        "cam"), readings_mm, and optionally the instrument's figures and own_limit

    Returns
    -------
    dict: measured, nominal_pitch_diameter_mm, radius_loss_mm, added_excess_mm (with a drive),
    verdict, judgements, assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Wear even round the gear. The formulas over pins are from memory, unverified.

    Reference
    ---------
    See `gear`.
    """
    form = Form(payload)
    build = take_build(form, required=False)
    method = form.take_choice("method", METHODS)
    which = form.take_choice("gear", GEARS) if form.has("gear") or build is not None else None
    teeth, pitch = _take_gear(form, build, which)
    name = "pin_diameter_mm" if method == "over-pins" else "roller_diameter_mm"
    pin = form.take_number(name) if method is not None else None
    values = form.take_numbers("readings_mm")
    instrument = take_instrument(form, "caliper", "mm", values is not None and len(values) == 1)
    own = take_own_limit(form, ("reading_mm",))
    if method is not None:
        form.close()
    form.finish()
    # finish raised if any of these was refused
    assert teeth is not None  # noqa: S101
    assert pitch is not None  # noqa: S101
    assert pin is not None  # noqa: S101
    assert values is not None  # noqa: S101
    nominal = 2 * pitch_radius(pitch, teeth)
    expected = over_pins(nominal, teeth, pin)
    for i, got in enumerate(values):
        if abs(got - expected) > BELIEVABLE * nominal:
            need = "about {} mm for {} teeth of {} mm pitch".format(
                fixed(expected, 2), teeth, short(pitch, 6)
            )
            step = "Check the unit and the teeth: may it be the other gear?"
            form.refuse("out-of-range", "readings_mm[" + str(i) + "]", got, need, step)
    form.finish()
    zero = pitch_diameter_over_pins(0.0, teeth, pin)
    scale = pitch_diameter_over_pins(1.0, teeth, pin) - zero
    seen = evidence("pitch_diameter_mm", [("readings_mm", values)], instrument, scale, zero)
    value, half = seen.estimate.value, seen.estimate.expanded
    loss = Interval(
        (nominal - value) / 2,
        (nominal - value - half) / 2,
        (nominal - value + half) / 2,
        seen.estimate.uncertainty / 2,
    )
    by = {"reading_mm": Subject(seen.raw, 1.0, "mm")}
    if method == "over-chain":
        by["over_chain_mm"] = Subject(seen.raw, 1.0, "mm")
    facts: dict[str, object] = {"pitch_mm": pitch, "teeth": teeth}
    held = hold(by, facts, own, GEAR, None)
    warned = count_warnings("readings_mm", seen.count)
    text = "The formula over pins is from memory of ISO 606; hold it against your own standard."
    warned.append(warning("formula-from-memory", name, pin, text, MEMORY))
    return {
        "calc": "gear",
        "core_version": VERSION,
        "measured": seen.shown,
        "nominal_pitch_diameter_mm": nominal,
        "radius_loss_mm": interval_dict(loss),
        "added_excess_mm": None if build is None else interval_dict(_added(build, which, loss)),
        "verdict": shown_verdict(_verdict(seen, held), None),
        "judgements": judged_rows(held),
        "assumptions": instrument.assumptions,
        "warnings": warned,
        "cautions": cautions("turn-by-hand"),
    }


def _take_gear(
    form: Form, build: Build | None, which: str | None
) -> tuple[int | None, float | None]:
    """Read teeth and pitch, or take them from the drive."""
    if build is None:
        needed = not form.has("drive")
        teeth = form.take_number("teeth", required=needed)
        return None if teeth is None else int(teeth), form.take_number("pitch_mm", required=needed)
    for name in ("teeth", "pitch_mm"):
        if form.has(name):
            got = form.payload[name]
            form.refuse("conflict", name, got, "nothing: the drive gives it", "Leave it out.")
    teeth = build.drive.crank_teeth if which == "crank" else build.drive.cam_teeth
    return int(teeth), float(build.drive.pitch)


def _added(build: Build, which: str | None, loss: Interval) -> Interval:
    """Give the slack that this gear's wear adds to the drive."""
    wrap = math.pi + (-2 if which == "crank" else 2) * build.geometry.angle
    ends = [excess_from_radius_loss(wrap, x) for x in loss]
    return Interval(ends[0], ends[1], ends[2], ends[3])


def _verdict(seen: Evidence, held: Findings) -> Verdict:
    """Judge by the user's own limit, else by manuals of engines with the same gear."""
    at = seen.raw
    why = "Read {} mm, 95 % interval {} to {} mm.".format(
        fixed(at.value, 2), fixed(at.low, 2), fixed(at.high, 2)
    )
    own = [row for row in held.rows if row.limit.origin == OWN]
    if not (own or held.rows):
        step = "Enter the limit from the maker's manual, or measure a new gear beside it."
        return Verdict("no-limit", "No limit applies here", why, step, None, None)
    rows = own or held.rows
    outcomes = [row.outcome for row in rows]
    if "below" in outcomes and "within" in outcomes:
        step = "Manuals of different engines: enter the limit from the manual of this one."
        return Verdict("limits-disagree", "Published limits disagree", why, step, None, None)
    outcome = next(x for x in ("below", "beyond", "too-close", "within") if x in outcomes)
    row = rows[outcomes.index(outcome)]
    headline, step = WORDS[outcome]
    if outcome == "too-close":
        finer = "Use a finer instrument, or measure a new gear beside it."
        edge = row.nearest_end(at.value)
        step = settle(seen.estimate, seen.components, seen.count, at, edge, finer)
    return Verdict(outcome, headline, why, step, row.limit, None)

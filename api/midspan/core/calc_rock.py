"""Judge the crank-rock lash: how far one shaft turns before the other must follow."""

from .bench import Evidence, Findings, evidence, findings, result
from .build import Build, take_build
from .drive import Geometry
from .fields import Form
from .figures import fixed, short
from .guard import zone
from .instrument import take_instrument
from .limits import MOVEMENT, OWN, ROCK
from .phase import angle_of_arc, degrees, excess_from_rock, radians, rock_from_excess
from .state import state
from .uncertainty import Interval
from .verdict import Subject, Verdict, fit_rules, ruling, settle, take_own_limit
from .warnings import (
    cautions,
    count_warnings,
    drive_warnings,
    own_against_window,
    state_warnings,
)

# How it was read: crank degrees; degrees of a rotor turning with the cam; arc along the rim of
# the crank damper; chain movement at the cam gear with the crank held.
METHODS = ("crank-degrees", "rotor-degrees", "damper-arc", "sprocket-movement")
MOST_DEGREES = 90.0
SHOWN = ROCK + MOVEMENT

WORDS = {
    "too-close": ("Too close to call", ""),
    "below": ("Below your lower limit", "Check the limit and the reading."),
    "beyond": ("Beyond your limit", "Do not refit it. Look at gears, keys and dowel too."),
    "within": ("Within every limit", "Note it, and measure the mid-span movement as well."),
}


def calculate(payload: object) -> dict[str, object]:
    """Judge a fitted chain by its crank-rock lash.

    Parameters
    ----------
    payload : drive, method, readings_deg or readings_mm, damper_diameter_mm for an arc, and
        optionally the instrument's figures and own_limit

    Returns
    -------
    dict: measured, state, verdict, judgements, assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Cam held by its springs (or crank held). Keys, dowels and a drive to the distributor add
    their own play, so the lash is an upper bound on what the chain gives.

    Reference
    ---------
    See `phase`. Published limits conflict; all are shown.
    """
    form = Form(payload)
    build = take_build(form)
    method = form.take_choice("method", METHODS)
    unit = "mm" if method in ("damper-arc", "sprocket-movement") else "deg"
    field = "readings_" + unit
    values = form.take_numbers(field) if method is not None else None
    damper = form.take_number("damper_diameter_mm", required=method == "damper-arc")
    kind = "rule" if unit == "mm" else "wheel"
    instrument = take_instrument(form, kind, unit, values is not None and len(values) == 1)
    allowed = ("crank_rock_deg", "movement_mm", "elongation_percent")
    own = take_own_limit(form, allowed + (("reading_mm",) if unit == "mm" else ()))
    if method is not None:
        form.close()
    scale = _to_crank_degrees(method, build, damper)
    if values is not None and scale is not None:
        for i, value in enumerate(values):
            if value * scale > MOST_DEGREES:
                need = "at most {} {}, 90 crank degrees".format(
                    short(MOST_DEGREES / scale, 4), unit
                )
                step = "Check the unit and how it was read."
                form.refuse("out-of-range", field + "[" + str(i) + "]", value, need, step)
    form.finish()
    # finish raised if any of these was refused
    assert build is not None  # noqa: S101
    assert values is not None  # noqa: S101
    assert scale is not None  # noqa: S101
    seen = evidence("crank_rock_deg", [(field, values)], instrument, scale)

    def to_excess(x: float, shape: Geometry) -> float:
        return excess_from_rock(shape.crank_radius, radians(x))

    whole = state(build, "crank_rock_deg", seen.estimate, to_excess)
    direct = {"reading_mm": Subject(seen.raw, 1.0, "mm")} if unit == "mm" else {}
    held = findings(build, build.drive.pitch, whole, own, direct, SHOWN)
    warned = (
        count_warnings(field, seen.count) + drive_warnings(build) + state_warnings(build, whole)
    )
    said = cautions("turn-by-hand", "valve-contact")
    judged = _verdict(seen, held, _moves(whole["movement_mm"], build))
    if build.kind == "cam" and own is None:  # the maker's own word on this engine stands
        judged = fit_rules(judged, whole["movement_mm"])
    warned += own_against_window(build, own, whole["movement_mm"])
    return result("crank-rock", seen, build, whole, held, judged, warned, said)


def _to_crank_degrees(
    method: str | None, build: Build | None, damper: float | None
) -> float | None:
    """Crank degrees per unit of the reading, or None where something needed was refused."""
    if method == "crank-degrees":
        return 1.0
    if method == "rotor-degrees" and build is not None:
        return float(build.drive.cam_teeth / build.drive.crank_teeth)  # it turns with the cam
    if method == "damper-arc" and damper is not None:
        return degrees(angle_of_arc(1.0, damper))
    if method == "sprocket-movement" and build is not None:
        return degrees(rock_from_excess(build.geometry.crank_radius, 1.0))
    return None


def _moves(at: Interval, build: Build) -> str:
    """Say what the same slack moves at mid-span, and by the trade's window on a cam drive."""
    said = " The same slack moves {} to {} mm at mid-span".format(
        fixed(at.low, 1), fixed(at.high, 1)
    )
    if build.kind != "cam":
        return said + "."
    ends = [zone(x).replace("-", " ") for x in (at.low, at.high)]
    named = ends[0] if ends[0] == ends[1] else "from {} to {}".format(ends[0], ends[1])
    return said + ": " + named + "."


def _verdict(seen: Evidence, held: Findings, also: str) -> Verdict:
    """Judge by the user's own limit, else say how the published ones agree."""
    rows = ruling(held.rows, ("crank_rock_deg", "sprocket_movement_mm"))
    lash = seen.estimate
    why = "{} crank degrees, plus or minus {}.".format(
        fixed(lash.value, 1), fixed(lash.expanded, 1)
    )
    if not rows:
        step = "Enter the limit from the maker's manual."
        return Verdict("no-limit", "No limit applies here", why + also, step, None, None)
    outcomes = [row.outcome for row in rows]
    if "beyond" in outcomes and "within" in outcomes:
        good, bad = outcomes.count("within"), outcomes.count("beyond")
        why += " Within {} of the {} limits, beyond {}.".format(good, len(rows), bad)
        step = "Look in the maker's manual and enter its limit; then measure the movement."
        headline = "Published limits disagree"
        return Verdict("limits-disagree", headline, why + also, step, None, None)
    # Here nothing is both beyond one limit and within another.
    outcome = next(word for word in ("beyond", "below", "too-close", "within") if word in outcomes)
    row = rows[outcomes.index(outcome)]
    headline, step = WORDS[outcome]
    if outcome == "beyond" and len(rows) > 1:
        headline = "Beyond {} of {} limits".format(outcomes.count("beyond"), len(rows))
    if row.limit.origin == OWN:
        headline = headline.replace("every limit", "your limit")
    if outcome == "too-close":
        at = held.by[row.limit.quantity].at
        finer = "Measure the mid-span movement instead: it is far more sensitive."
        step = settle(lash, seen.components, seen.count, at, row.nearest_end(at.value), finer)
        if row.in_printed_range(at.value):
            step = "The source prints a range and this lies in it: go by the maker's manual."
    return Verdict(outcome, headline, why + also, step, row.limit, None)

"""Choose how to set the cam adjusters, and say what the re-check must read."""

from .adjust_words import direction, shown_option, verdict_on, way_of
from .adjuster import Adjuster, take_adjuster, tooth_step
from .cam_card import EVENT_FIELDS, TOLERANCE_DEG, event_figure
from .fields import Form
from .figures import fixed
from .instrument import assumption
from .limits import MEMORY, PUBLISHED
from .setting import setting_result
from .setting_search import MOST_SETTINGS, count_settings, settings_for, ties
from .timing import advance, closing_of, lobe_separation, opening_of
from .valve_events import LOBES
from .warnings import cautions, warning

CAMS = ("one", "two")
# Of the crankshaft, seen facing the gears; and whether the cam turns the same way.
ROTATIONS = ("clockwise", "anticlockwise")
CAM_TURNS = ("same", "opposite")
MOST_ADJUSTERS = 4
SHOWN_OPTIONS = 5
# How sure a centreline is where nobody says: from memory, unverified.
PLUS_MINUS_DEG = 0.5
_TOOTH = "Cam timing, dummett.net"


def calculate(payload: object) -> dict[str, object]:
    """Find the setting of the adjusters that brings the cam nearest to the centreline wanted.

    Parameters
    ----------
    payload : lobe, its centreline and target_deg, rotation, adjusters, and optionally the other
        lobe's centreline, durations, plus_minus_deg, tdc_plus_minus_deg, tolerance_deg, cams,
        cam_turns, crank_teeth

    Returns
    -------
    dict: wanted and got moves in crank and cam degrees, options, recheck, direction, verdict,
    assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Advance is positive: the cam turned ahead in its own running direction, against the crank.

    Reference
    ---------
    A pure advance x: IO +x, IC -x, EO +x, EC -x, ICL -x, ECL +x; durations, separation and
    overlap stay (ausmini.com, Valve timing diagrams, an example advanced and retarded by 5).
    """
    form = Form(payload)
    assumed: list[dict[str, object]] = []
    lobe = form.take_choice("lobe", LOBES)
    cams = form.take_choice("cams", CAMS, CAMS[0])
    centres = {at: form.take_number(at + "_centreline_deg", required=at == lobe) for at in LOBES}
    lasting = {at: form.take_number(at + "_duration_deg", required=False) for at in LOBES}
    target = form.take_number("target_deg")
    doubt = _take(form, "plus_minus_deg", PLUS_MINUS_DEG, assumed)
    tdc = form.take_number("tdc_plus_minus_deg", required=False)
    tolerance = _take(form, "tolerance_deg", TOLERANCE_DEG, assumed)
    rotation = form.take_choice("rotation", ROTATIONS)
    turns = form.take_choice("cam_turns", CAM_TURNS, CAM_TURNS[0])
    teeth = form.take_number("crank_teeth", required=False)
    adjusters = _take_adjusters(form, None if teeth is None else int(teeth))
    form.close()
    form.finish()
    centre = centres[lobe or ""]
    # finish raised if any of these was refused
    assert centre is not None and target is not None  # noqa: S101, PT018
    wanted = centre - target if lobe == "intake" else target - centre
    found = settings_for(adjusters, wanted)
    best, equal = found[0], ties(found)
    again = recheck_doubt(doubt, tdc or 0.0)
    moved_lobes = LOBES if cams == "one" else (lobe,)
    way = way_of(rotation, turns)
    return setting_result(
        "adjust",
        {
            "lobe": lobe,
            "wanted_crank_deg": wanted,
            "wanted_cam_deg": wanted / 2,
            "options": [shown_option(one, adjusters) for one in found[:SHOWN_OPTIONS]],
            "tied": len(equal),
            "direction": direction(best.move, way),
            "cam_way": way,
            "recheck": _recheck(centres, lasting, moved_lobes, best.move),
            "recheck_plus_minus_deg": again,
            "tolerance_deg": tolerance,
            "tooth_crank_deg": None if teeth is None else tooth_step(int(teeth)),
        },
        verdict_on(best, equal, adjusters, wanted, tolerance, doubt, lobe or ""),
        assumed,
        _warnings(wanted, None if teeth is None else int(teeth)),
        cautions("no-start", "turn-by-hand", "valve-contact", "clearance-after"),
    )


def recheck_doubt(doubt: float, tdc: float) -> float:
    """How far a second reading of a centreline may differ from the first by the readings alone.

    U = sqrt(2 (U1^2 - U_TDC^2)): the wheel stays as it is, so TDC's error is in both and cancels

    Parameters
    ----------
    doubt : U1, 95 %, of one reading [deg]
    tdc : the part of it that comes from TDC, 95 % [deg]; counted as no more than the whole

    Returns
    -------
    half of the 95 % interval of the difference [deg]

    Raises
    ------
    none

    Validity
    --------
    Read again in the same way, wheel and pointer untouched.

    Reference
    ---------
    JCGM 100:2008 (GUM), 5.2.2: a common error cancels in a difference.
    """
    own = doubt**2 - min(tdc, doubt) ** 2
    return float((2 * own) ** 0.5)


def _take(form: Form, field: str, default: float, assumed: list[dict[str, object]]) -> float:
    value = form.take_number(field, required=False)
    if value is not None:
        return value
    text = {
        "plus_minus_deg": "Plus or minus on the centreline measured, assumed: none was given.",
        "tolerance_deg": "How near is near enough, assumed: none was given.",
    }[field]
    assumed.append(assumption(field, default, MEMORY, text))
    return default


def _take_adjusters(form: Form, teeth: int | None) -> list[Adjuster]:
    parts = form.take_forms("adjusters", MOST_ADJUSTERS)
    before = len(form.problems)
    if form.has("adjusters") and not parts:
        need = "at least one thing to set the cam by"
        form.refuse("empty-list", "adjusters", form.payload["adjusters"], need, "Add one.")
    counted = form.has("crank_teeth")
    taken = [take_adjuster(part, teeth, counted) for part in parts]
    found = [one for one in taken if one is not None]
    if len(form.problems) == before:
        if len([1 for one in found if one.steps is None]) > 1:
            need = "at most one vernier without steps: two could share a move in any way"
            form.refuse("conflict", "adjusters", "two verniers", need, "Leave one out.")
        if count_settings(found) > MOST_SETTINGS:
            need = "at most " + str(MOST_SETTINGS) + " settings together"
            got = str(count_settings(found)) + " settings"
            form.refuse("too-many", "adjusters", got, need, "Leave steps out.")
    return found


def _recheck(
    centres: dict[str, float | None],
    lasting: dict[str, float | None],
    moved: tuple[str | None, ...],
    move: float,
) -> dict[str, float | None]:
    """Work out what the events and centrelines must read after the move."""
    found: dict[str, float | None] = {name: None for name, _, _ in EVENT_FIELDS}
    for lobe in LOBES:
        sign = 1.0 if lobe == "intake" else -1.0
        centre = centres[lobe]
        if centre is not None and lobe in moved:
            centre -= sign * move
        found[lobe + "_centreline_deg"] = centre
        whole = lasting[lobe]
        if centre is None or whole is None:
            continue
        ends = (opening_of(sign * centre, whole), closing_of(sign * centre, whole))
        names = [name for name, _, at in EVENT_FIELDS if at == lobe]
        for name, angle in zip(names, ends):
            found[name] = event_figure(name, angle)
    icl, ecl = found["intake_centreline_deg"], found["exhaust_centreline_deg"]
    found["lobe_separation_cam_deg"] = found["advance_deg"] = None
    if icl is not None and ecl is not None:
        found["lobe_separation_cam_deg"] = lobe_separation(icl, ecl)
        found["advance_deg"] = advance(icl, ecl)
    return found


def _warnings(wanted: float, teeth: int | None) -> list[dict[str, object]]:
    found = []
    if teeth is not None and abs(wanted) > tooth_step(teeth) / 2:
        text = "That is more than half a tooth, {} crank degrees: the chain may be a tooth out. "
        text += "Look at the marks before anything else."
        text = text.format(fixed(tooth_step(teeth), 1))
        found.append(warning("tooth-out", "target_deg", wanted, text, PUBLISHED, _TOOTH))
    return found

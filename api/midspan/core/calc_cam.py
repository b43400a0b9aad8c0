"""Find where a cam stands: centrelines, durations, separation, overlap, against its data sheet."""

from . import limits
from .cam_card import EVENT_FIELDS, take_card, take_height
from .cam_checks import check_events, separation_warnings, sheet_warnings, slip_warnings
from .cam_compare import compare, late_by, shown_comparison, verdict_of
from .chain_share import chain_share
from .dial import dial_angles
from .fields import Form
from .instrument import assumption, measured
from .lobe_timing import LobeTiming, figures, lobe_timing
from .setting import interval_or_none, setting_result
from .student import NORMAL_95
from .valve_events import LOBES, Doubt, Quantity, estimate, has_single, take_events
from .warnings import cautions, count_warnings
from .wheel import TDC_DEG, take_wheel, tdc_not_found

CENTRELINES = ("near-nose", "mid-duration")
# Whether both lobes are on one camshaft.
CAMS = ("one", "two")
DIAL_MM = 0.01  # error of the dial where none is given: from memory, unverified
FIGURES = (
    tuple([row[0] for row in EVENT_FIELDS])
    + ("intake_duration_deg", "exhaust_duration_deg")
    + ("intake_centreline_deg", "exhaust_centreline_deg")
    + ("lobe_separation_cam_deg", "advance_deg", "overlap_deg")
)


def calculate(payload: object) -> dict[str, object]:
    """Find a cam's timing from equal-lift readings or events, and hold it against its data sheet.

    Parameters
    ----------
    payload : wheel, events (each event, reference, angles_deg), tdc_reading_deg,
        tdc_plus_minus_deg, checking_height_mm and checking_at with opening or closing events,
        and optionally nose_drop_mm, dial_error_mm, centreline_by, card, chain, cams and the
        wheel's figures

    Returns
    -------
    dict: measured (the centreline that the verdict rests on), figures, lobes, comparisons, chain,
    verdict, assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    The crank turned in its running direction only, up to each reading. TDC's error is common to
    every event: durations, separation and overlap are free of it.

    Reference
    ---------
    `timing`; JCGM 100:2008 (GUM), 5.1.2, F.1.2.3.
    """
    form = Form(payload)
    assumed: list[dict[str, object]] = []
    warned: list[dict[str, object]] = []
    tdc = _take(form, "tdc_reading_deg", 0.0, "The wheel's zero, taken to be at true TDC.", assumed)
    known = form.has("tdc_plus_minus_deg")
    doubt = _take(form, "tdc_plus_minus_deg", TDC_DEG, "Plus or minus on true TDC.", assumed)
    wheel = take_wheel(form, has_single(form))
    before = len(form.problems)
    events = take_events(form, wheel, tdc)
    at_height = [name for name in events if name.endswith(("-opens", "-closes"))]
    height = take_height(form, len(at_height) > 0)
    drop = form.take_number("nose_drop_mm", required=False)
    dial = _take(form, "dial_error_mm", DIAL_MM, "Error of the dial indicator.", assumed)
    wanted = form.take_choice("centreline_by", CENTRELINES) if form.has("centreline_by") else None
    card = take_card(form, height, assumed, warned)
    cams = form.take_choice("cams", CAMS, CAMS[0])
    share = chain_share(form)
    form.close()
    if len(form.problems) == before:
        check_events(form, events, card)
    form.finish()
    dial_by = dial_angles(events, height.lift if height is not None else None, drop, dial, assumed)
    doubts = Doubt(
        wheel, doubt / NORMAL_95, limits.GIVEN if known else limits.MEMORY, dial_by, limits.MEMORY
    )
    timings = {lobe: lobe_timing(lobe, events, wanted, card) for lobe in LOBES}
    found = [timings[lobe] for lobe in LOBES]
    quantities = figures(events, timings)
    rows = compare(card, quantities, doubts)
    main = _main(quantities)
    at, lines = estimate(main, doubts)
    count = min([len(event.angles) for event, _ in main.weights])
    _, shown = measured(main.name, main.value, lines, count)
    late = late_by(rows, main.name)
    warned += [] if known else [tdc_not_found()]
    warned += slip_warnings(events, card) + sheet_warnings(timings, card)
    warned += separation_warnings(timings, rows, cams)
    warned += count_warnings("angles_deg", count)
    explained = None if share is None else share.shown(late)
    return setting_result(
        "cam",
        {
            "measured": shown,
            "checking_height_mm": None if height is None else height.lift,
            "checking_at": None if height is None else height.at,
            "figures": {name: _interval(_named(quantities, name), doubts) for name in FIGURES},
            "lobes": [_shown_lobe(t, doubts) for t in found if t is not None],
            "card": None if card is None else card.shown(),
            "comparisons": [shown_comparison(row) for row in rows],
            "chain": explained,
        },
        verdict_of(card, rows, main, at, lines, count),
        wheel.assumptions + assumed,
        warned,
        cautions(
            "no-start", "turn-by-hand", "running-direction", "valve-contact", "checking-springs"
        ),
    )


def _take(
    form: Form, field: str, default: float, text: str, assumed: list[dict[str, object]]
) -> float:
    """Read a number, or assume one and say so."""
    value = form.take_number(field, required=False)
    if value is None:
        text += " Assumed: none was given."
        assumed.append(assumption(field, default, limits.MEMORY, text))
        return default
    return value


def _named(quantities: list[Quantity], name: str) -> Quantity | None:
    found = [one for one in quantities if one.name == name]
    return found[0] if found else None


def _main(quantities: list[Quantity]) -> Quantity:
    """Choose the figure of the verdict: intake before exhaust, a centreline before an event."""
    for lobe in LOBES:
        found = _named(quantities, lobe + "_centreline_deg")
        if found is not None:
            return found
    return quantities[0]


def _interval(quantity: Quantity | None, doubt: Doubt) -> dict[str, object] | None:
    return None if quantity is None else interval_or_none(estimate(quantity, doubt)[0])


def _shown_lobe(timing: LobeTiming, doubt: Doubt) -> dict[str, object]:
    return {
        "lobe": timing.lobe,
        "centreline_by": timing.by,
        "nose_centreline_deg": _interval(timing.nose, doubt),
        "middle_centreline_deg": _interval(timing.middle, doubt),
        "asymmetry_deg": _interval(timing.asymmetry, doubt),
    }

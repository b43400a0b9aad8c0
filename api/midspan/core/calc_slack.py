"""Judge the slack of a chain on its drive from the movement or sag of a strand."""

from .bench import Evidence, Findings, evidence, findings, result
from .build import Build, take_build
from .drive import Geometry
from .fields import Form
from .figures import fixed, short
from .guard import ZONES, zone
from .instrument import take_instrument
from .limits import (
    MOVEMENT,
    ROCK,
    TOO_LOOSE_MM,
    TOO_TIGHT_MM,
    WANTED_FROM_MM,
    WANTED_TO_MM,
)
from .movement import excess_from_movement, excess_from_sag
from .state import state
from .uncertainty import Interval
from .verdict import Subject, Verdict, ruling, settle, take_own_limit
from .warnings import (
    cautions,
    count_warnings,
    drive_warnings,
    own_against_window,
    state_warnings,
)

SHOWN = MOVEMENT + ROCK
METHODS = ("total", "one-way", "sag")

HEADLINES = {
    "too-tight": "Too tight",
    "tight": "Tighter than wanted",
    "wanted": "Wanted slack",
    "loose": "Looser than wanted",
    "too-loose": "Too loose",
}
STEPS = {
    "too-tight": "Do not run it so. Turn the crank a little and measure again; "
    "then try another chain or gear set.",
    "tight": "Measure at more crank positions; the tightest one counts. "
    "A chain that starts tight beds in slowly.",
    "wanted": "Right for a fresh chain. Note it, and measure again after running in.",
    "loose": "Usable, with more scatter in timing as it wears. Measure again soon.",
    "too-loose": "Do not refit it as it is: cam and spark timing scatter. "
    "Try another chain or gear set.",
}


def calculate(payload: object) -> dict[str, object]:
    """Judge the slack of a fitted chain.

    Parameters
    ----------
    payload : drive, method ("total" movement in and out by hand, "one-way" from straight, or
        "sag" under its own weight), readings_mm, and optionally the instrument's figures and
        own_limit

    Returns
    -------
    dict: measured, state, verdict, judgements, assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    The other strand pulled taut; readings at one crank position speak for that position.

    Reference
    ---------
    See `movement`; the slack window is common practice, no source.
    """
    form = Form(payload)
    build = take_build(form)
    method = form.take_choice("method", METHODS)
    values = form.take_numbers("readings_mm")
    instrument = take_instrument(form, "rule", "mm", values is not None and len(values) == 1)
    own = take_own_limit(
        form, ("movement_mm", "reading_mm", "elongation_percent", "crank_rock_deg")
    )
    form.close()
    if build is not None and values is not None and method is not None:
        _check_strand(form, build, method, values)
    form.finish()
    # finish raised if any of these was refused
    assert build is not None  # noqa: S101
    assert values is not None  # noqa: S101
    sag = method == "sag"
    quantity = "sag_mm" if sag else "movement_mm"
    seen = evidence(
        quantity,
        [("readings_mm", values)],
        instrument,
        2.0 if method == "one-way" else 1.0,
    )

    def to_excess(x: float, shape: Geometry) -> float:
        return excess_from_sag(shape.strand, x) if sag else excess_from_movement(shape.strand, x)

    whole = state(build, quantity, seen.estimate, to_excess)
    direct = {"reading_mm": Subject(seen.raw, 1.0, "mm")}
    held = findings(build, build.drive.pitch, whole, own, direct, SHOWN)
    warned = count_warnings("readings_mm", seen.count) + drive_warnings(build)
    warned += state_warnings(build, whole)
    judged = _verdict(seen, held, whole["movement_mm"])
    warned += own_against_window(build, own, whole["movement_mm"])
    said = cautions("turn-by-hand", "valve-contact")
    return result("slack", seen, build, whole, held, judged, warned, said)


def _check_strand(form: Form, build: Build, method: str, values: list[float]) -> None:
    """Refuse a movement that the strand cannot make."""
    most = build.geometry.strand / (2.0 if method == "one-way" else 1.0)
    for i, value in enumerate(values):
        if value > most:
            need = "at most {} mm on a free strand of {} mm".format(
                fixed(most, 1), fixed(build.geometry.strand, 1)
            )
            step = "Check the unit, and that it was read at right angles to the strand."
            form.refuse("out-of-range", "readings_mm[" + str(i) + "]", value, need, step)


def _verdict(seen: Evidence, held: Findings, moves: Interval) -> Verdict:
    """Judge by the user's own limit, else by the trade's window or the rule of general drives."""
    quantities = ("movement_mm", "movement_percent_of_centres")
    row = ruling(held.rows, quantities)[0]
    limit = row.limit
    finer = "Use a dial indicator at mid-span, and turn the crank to other positions."
    if limit.id != "slack-window":
        at = held.by[limit.quantity].at
        outcome, unit = row.outcome, row.unit
        ends = (short(at.low, 3), short(at.high, 3))
        stated = [short(x, 4) for x in (row.lower, row.upper) if x is not None]
        why = "{} {} with 95 % interval {} to {} {}, against {} {}: {}.".format(
            short(at.value, 3), unit, ends[0], ends[1], unit, " to ".join(stated), unit, limit.label
        )
        headline = {
            "within": "Within the limit",
            "below": "Tighter than the limit",
            "beyond": "Looser than the limit",
            "too-close": "Too close to call",
        }[outcome]
        step = {
            "within": "Note it, and measure again after running in.",
            "below": STEPS["tight"],
            "beyond": STEPS["too-loose"],
            "too-close": settle(
                seen.estimate, seen.components, seen.count, at, row.nearest_end(at.value), finer
            ),
        }[outcome]
        return Verdict(outcome, headline, why, step, limit, None)
    low, high = zone(moves.low), zone(moves.high)
    why = "It moves {} mm, 95 % interval {} to {} mm; wanted is 4.8 to 6.4 mm.".format(
        fixed(moves.value, 1), fixed(moves.low, 1), fixed(moves.high, 1)
    )
    named = {row.limit.id: row.limit for row in held.rows}
    if low == high:
        # Far out it is no longer the wanted slack that says so, but the end that was passed.
        rests = named.get("slack-" + low, limit)
        return Verdict(low, HEADLINES[low], why, STEPS[low], rests, None)
    edges = (TOO_TIGHT_MM, WANTED_FROM_MM, WANTED_TO_MM, TOO_LOOSE_MM)
    crossed = [x for x in edges if moves.low <= x <= moves.high]
    nearest = min(crossed, key=lambda x: abs(x - moves.value))
    step = settle(seen.estimate, seen.components, seen.count, moves, nearest, finer)
    first, last = ZONES.index(low), ZONES.index(high)
    words = [HEADLINES[z].lower() for z in ZONES[first : last + 1]]
    headline = "Too close to call: " + " or ".join([words[0], words[-1]])
    far = {TOO_TIGHT_MM: "slack-too-tight", TOO_LOOSE_MM: "slack-too-loose"}
    rests = named.get(far.get(nearest, ""), limit)
    return Verdict("too-close", headline, why, step, rests, [low, high])

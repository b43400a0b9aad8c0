"""Judge the wear of a chain from its length over some pitches."""

from collections import namedtuple

from .bench import Evidence, Findings, evidence, findings, result
from .build import Build, take_build
from .elongation import length_of_elongation
from .fields import Form
from .figures import fixed, short
from .instrument import assumption, take_instrument
from .limits import ELONGATION, MEMORY, MOVEMENT
from .state import excess_of_elongation, state
from .uncertainty import Component, Interval, interval_of, rectangular
from .verdict import Subject, Verdict, fit_rules, ruling, settle, take_own_limit
from .warnings import cautions, count_warnings, drive_warnings, length_warnings, state_warnings

METHODS = ("pin-to-pin", "inside-and-outside", "inside")
# A reading further than this from nominal is a slip: wrong jaws, wrong count, wrong pitch. From
# memory, unverified.
BELIEVABLE = 0.1
# Half-width on a roller diameter looked up or measured; from memory, unverified.
ROLLER_ERROR_MM = 0.05


class Chain(namedtuple("Chain", ("pitch", "pitches", "roller", "method"))):
    """The stretch measured: pitch [mm], pitches, roller diameter [mm] or None, method."""

    __slots__ = ()


def calculate(payload: object) -> dict[str, object]:
    """Judge a chain by its wear elongation.

    Parameters
    ----------
    payload : method, pitches, the method's readings, pitch_mm and roller_diameter_mm or a drive
        that gives them, and optionally the instrument's figures and own_limit

    Returns
    -------
    dict: measured, state (with a drive), verdict, judgements, assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Chain cleaned, unlubricated, under light tension; the stretch measured speaks for all of it.

    Reference
    ---------
    See `elongation`; ISO 606 Annex A for measuring load and length.
    """
    form = Form(payload)
    build = take_build(form, required=False)
    method = form.take_choice("method", METHODS)
    chain = _take_chain(form, build, method)
    sets = _take_sets(form, method)
    single = any([len(values) == 1 for _, values in sets])
    instrument = take_instrument(form, "caliper", "mm", single)
    own = take_own_limit(form, _own_quantities(method, form.has("drive")))
    form.close()
    form.finish()
    _check_believable(form, chain, sets)
    form.finish()
    nominal = chain.pitch * chain.pitches
    shift, others, assumed = 0.0, [], []
    if method == "inside":
        shift = chain.roller
        u = 100 / nominal * rectangular(ROLLER_ERROR_MM)
        others = [Component("roller diameter", "B", u, None, MEMORY)]
        text = "Plus or minus on the roller diameter, which adds to an inside reading: assumed."
        assumed = [assumption("roller_diameter_mm", ROLLER_ERROR_MM, MEMORY, text)]
    offset = 100 * (shift - nominal) / nominal
    seen = evidence("elongation_percent", sets, instrument, 100 / nominal, offset, others)
    whole = None
    if build is not None:
        whole = state(
            build,
            "elongation_percent",
            seen.estimate,
            lambda x, at: excess_of_elongation(build, x, at),
        )
    at = interval_of(seen.estimate)
    direct = {
        "elongation_percent": Subject(at, 1.0, "%"),
        "reading_mm": Subject(seen.raw, 1.0, "mm"),
    }
    held = findings(build, chain.pitch, whole, own, direct, ELONGATION + MOVEMENT)
    warned = count_warnings(sets[0][0], seen.count) + length_warnings(at.low, at.high)
    if build is not None and whole is not None:
        warned += drive_warnings(build) + state_warnings(build, whole)
    judged = _verdict(seen, held, whole, build)
    said = cautions("turn-by-hand")
    return result("elongation", seen, build, whole, held, judged, warned, said, assumed)


def _own_quantities(method: str | None, with_drive: bool) -> tuple[str, ...]:
    """Quantities the user's own limit may be in; two jaw readings are not one reading."""
    names: tuple[str, ...] = ("elongation_percent",)
    if method != "inside-and-outside":
        names += ("reading_mm",)
    return names + (("movement_mm", "crank_rock_deg") if with_drive else ())


def _take_chain(form: Form, build: Build | None, method: str | None) -> Chain:
    """Read the stretch measured; pitch and roller may come from the drive, but must agree."""
    pitches = form.take_number("pitches")
    given = form.has("drive")
    pitch = form.take_number("pitch_mm", required=not given)
    roller_needed = method == "inside" and not (build is not None and build.roller)
    if given and build is None:
        roller_needed = False  # the drive's own problems come first
    roller = form.take_number("roller_diameter_mm", required=roller_needed)
    if build is not None:
        if pitch is not None and abs(pitch - build.drive.pitch) > 1e-6:
            need = "the drive's pitch, " + short(build.drive.pitch, 6) + " mm"
            form.refuse("conflict", "pitch_mm", pitch, need, "Correct one, or leave this out.")
        pitch = build.drive.pitch
        if roller is None:
            roller = build.roller
    if roller is not None and pitch is not None and roller >= pitch:
        need = "less than the pitch, " + short(pitch, 6) + " mm"
        form.refuse("conflict", "roller_diameter_mm", roller, need, "Check which is which.")
    return Chain(pitch, pitches, roller, method)


def _take_sets(form: Form, method: str | None) -> list[tuple[str, list[float]]]:
    """Read the readings that the method asks for."""
    if method is None:
        for name in ("readings_mm", "inside_readings_mm", "outside_readings_mm"):
            form.has(name)
        return []
    names: tuple[str, ...] = ("readings_mm",)
    if method == "inside-and-outside":
        names = ("inside_readings_mm", "outside_readings_mm")
    taken = [(name, form.take_numbers(name)) for name in names]
    return [(name, values) for name, values in taken if values is not None]


def _check_believable(form: Form, chain: Chain, sets: list[tuple[str, list[float]]]) -> None:
    """Refuse a reading that no chain of this pitch can give, and say what it may be instead."""
    nominal = length_of_elongation(chain.pitch, chain.pitches, 0.0)
    roller = chain.roller or 0.0
    for field, values in sets:
        shift = 0.0
        if field == "inside_readings_mm" or chain.method == "inside":
            shift = -roller
        if field == "outside_readings_mm":
            shift = roller
        for i, value in enumerate(values):
            middle = nominal + shift
            # Without the roller's size an inside or outside reading lies within a pitch of middle.
            slack = BELIEVABLE * nominal
            if len(sets) == 2 and not roller:
                slack += chain.pitch
            if abs(value - middle) <= slack:
                continue
            need = "about {} mm for {} pitches of {} mm".format(
                fixed(middle, 2), int(chain.pitches), short(chain.pitch, 6)
            )
            step = "Count the pitches again, and check the unit and which way the jaws faced."
            form.refuse("out-of-range", field + "[" + str(i) + "]", value, need, step)


def _verdict(
    seen: Evidence, held: Findings, whole: dict[str, Interval] | None, build: Build | None
) -> Verdict:
    """Judge by the user's own limit, else by the strictest wear limit that applies."""
    rows = ruling(held.rows, ("elongation_percent",))
    row = min(rows, key=lambda r: float("inf") if r.upper is None else float(r.upper))
    at, unit, outcome = held.by[row.limit.quantity].at, row.unit, row.outcome
    edge = row.nearest_end(at.value)
    ends = (short(at.low, 3), short(at.high, 3))
    why = "{} {} with 95 % interval {} to {} {}, against {} {}.".format(
        short(at.value, 3), unit, ends[0], ends[1], unit, short(edge, 4), unit
    )
    headline = {
        "within": "Wear within the limit",
        "below": "Below your lower limit",
        "beyond": "Worn beyond the limit",
        "too-close": "Too close to call",
    }[outcome]
    step = {
        "within": "Fit to use as far as wear goes. Now check the slack on the engine.",
        "below": "Check the limit and the reading: a chain does not get shorter.",
        "beyond": "Do not refit it. Look at the gear teeth as well.",
        "too-close": settle(
            seen.estimate, seen.components, seen.count, at, edge,
            "Measure over more pitches, or with a finer instrument.",
        ),
    }[outcome]  # fmt: skip
    if whole is None or build is None or build.kind != "cam" or outcome == "beyond":
        return Verdict(outcome, headline, why, step, row.limit, None)
    moves = whole["movement_mm"]
    why += " On this drive it would move {} to {} mm at mid-span.".format(
        fixed(moves.low, 1), fixed(moves.high, 1)
    )
    return fit_rules(Verdict(outcome, headline, why, step, row.limit, None), moves)

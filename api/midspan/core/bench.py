"""What the benches for chain and gears share: from the evidence to the whole result."""

from collections import namedtuple

from . import limits
from .build import Build, facts_of
from .instrument import Instrument, instrument_components, interval_dict, measured
from .limits import Limit
from .uncertainty import Component, Interval, combine, mean, repeat_component
from .verdict import Subject, Verdict, judgements, subjects
from .version import VERSION


class Evidence(
    namedtuple("Evidence", ("estimate", "components", "count", "shown", "raw", "instrument"))
):
    """The measured quantity: Estimate, its budget, readings of each kind, its form in the
    result, the Interval of the reading as the instrument showed it, and the Instrument.
    """

    __slots__ = ()


def evidence(
    quantity: str,
    sets: list[tuple[str, list[float]]],
    instrument: Instrument,
    scale: float,
    offset: float = 0.0,
    others: list[Component] | None = None,
) -> Evidence:
    """Turn sets of repeated readings into the measured quantity: their mean, scaled and shifted.

    Parameters
    ----------
    quantity : name of the measured quantity
    sets : (field, readings) of each kind; the quantity rests on the mean of their means
    instrument : what the instrument adds, the same for every reading
    scale, offset : quantity = scale * mean + offset
    others : further budget lines, in the unit of the quantity
    """
    raw = mean([mean(values) for _, values in sets])
    repeats = []
    for field, values in sets:
        name = "repeat readings" if len(sets) == 1 else "repeat " + field.replace("_", " ")[:-3]
        origin = instrument.origins["repeatability"]
        deviation = instrument.repeatability
        repeats.append(repeat_component(values, deviation, origin, name, scale / len(sets)))
    reading = repeats + instrument_components(instrument, scale)
    components = reading + (others or [])
    count = min([len(values) for _, values in sets])
    estimate, shown = measured(quantity, scale * raw + offset, components, count)
    # The reading as read, before anything else that is uncertain was brought in.
    read = combine(scale * raw, reading)
    half = read.expanded / scale
    shown_as = Interval(raw, raw - half, raw + half, read.uncertainty / scale)
    return Evidence(estimate, components, count, shown, shown_as, instrument)


class Findings(namedtuple("Findings", ("by", "rows", "teeth"))):
    """Subject by quantity, the judgements on every limit that applies, and the cam gear's teeth
    (None without a drive), which some limits depend on.
    """

    __slots__ = ()


def findings(
    build: Build | None,
    pitch: float,
    whole: dict[str, Interval] | None,
    own: Limit | None,
    direct: dict[str, Subject],
    table: tuple[Limit, ...],
) -> Findings:
    """Hold the state, and what was measured directly, against every limit that applies.

    Parameters
    ----------
    build, whole : the drive and its state; None without a drive
    pitch : chain pitch [mm]
    own : the user's own limit, if given; it comes first
    direct : Subjects that were measured, not converted
    table : the limits worth showing beside this measurement
    """
    by = subjects(whole, build)
    by.update(direct)
    teeth = build.drive.cam_teeth if build is not None else None
    return hold(by, facts_of(build, pitch), own, table, teeth)


def hold(
    by: dict[str, Subject],
    facts: dict[str, object],
    own: Limit | None,
    table: tuple[Limit, ...],
    teeth: int | None,
) -> Findings:
    """Hold what is known against those limits of a table whose conditions the facts meet."""
    found = [limit for limit in table if limits.applies(limit, facts)]
    if own is not None:
        found = [own] + found
    return Findings(by, judgements(found, by, teeth), teeth)


def judged_rows(held: Findings) -> list[dict[str, object]]:
    """Give every judgement in the form of the result."""
    found = []
    for row in held.rows:
        at = held.by[row.limit.quantity].at
        judged = {
            "limit": limits.as_dict(row.limit, held.teeth),
            "outcome": row.outcome,
            "value": at.value,
            "low": at.low,
            "high": at.high,
            "limit_value": row.nearest_end(at.value),
            "unit": row.unit,
        }
        found.append(judged)
    return found


def shown_verdict(verdict: Verdict, teeth: int | None) -> dict[str, object]:
    """Give a verdict in the form of the result."""
    return {
        "outcome": verdict.outcome,
        "between": verdict.between,
        "headline": verdict.headline,
        "why": verdict.why,
        "next_step": verdict.next_step,
        "limit": None if verdict.limit is None else limits.as_dict(verdict.limit, teeth),
    }


def result(
    calc: str,
    seen: Evidence,
    build: Build | None,
    whole: dict[str, Interval] | None,
    held: Findings,
    verdict: Verdict,
    warnings: list[dict[str, object]],
    cautions: list[dict[str, object]],
    assumed: list[dict[str, object]] | None = None,
) -> dict[str, object]:
    """Put the result of a bench together."""
    shown_state = None
    if whole is not None:
        shown_state = {name: interval_dict(at) for name, at in whole.items()}
    assumptions = seen.instrument.assumptions + (assumed or [])
    if build is not None:
        assumptions = assumptions + build.assumptions
    return {
        "calc": calc,
        "core_version": VERSION,
        "measured": seen.shown,
        "state": shown_state,
        "verdict": shown_verdict(verdict, held.teeth),
        "judgements": judged_rows(held),
        "assumptions": assumptions,
        "warnings": warnings,
        "cautions": cautions,
    }

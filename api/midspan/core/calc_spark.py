"""Spark scatter by timing light: how wide, whether the work changed it, and what it can cost."""

from collections import namedtuple

from .fields import Form
from .figures import fixed, short
from .instrument import assumption
from .limits import GIVEN, MEMORY, PRACTICE
from .spark import (
    LOSS_PER_DEG2,
    PULL_PERCENT,
    PULLS,
    Spread,
    detectable,
    deviation_interval,
    freed,
    mean_loss,
    ratio_interval,
)
from .uncertainty import mean, sample_deviation
from .version import VERSION
from .warnings import cautions, count_warnings, warning

PLACES = ("idle", "wide-open")
TIMES = ("before", "after")
# In the order shown: the phone's interpreter keeps no order of names.
LISTS = (
    ("idle", "before", "idle_before_deg"),
    ("idle", "after", "idle_after_deg"),
    ("wide-open", "before", "wide_open_before_deg"),
    ("wide-open", "after", "wide_open_after_deg"),
)
# How finely a moving mark is read by eye; from memory, unverified.
RESOLUTION_DEG = 1.0
# All readings within this, the trade says, goes with the right slack; common practice, no source.
RIGHT_RANGE_DEG = 0.5
LAW = "Torque lost by the square of a degree off the best point. That such regressions exist is "
LAW += "published; this range is from memory, unverified."
WORDS = {"idle": "At idle", "wide-open": "Wide open"}

Group = namedtuple("Group", ("at", "when", "field", "values", "seen", "own"))


def calculate(payload: object) -> dict[str, object]:
    """Judge how far the spark wanders, before and after the work.

    Parameters
    ----------
    payload : idle_before_deg, idle_after_deg, wide_open_before_deg, wide_open_after_deg: readings
        in crank degrees before TDC, two or more in a list, one list or more; and optionally
        resolution_deg, away_from_best_deg, loss_per_deg2, peak_power_kw

    Returns
    -------
    dict: spreads, changes, loss_per_deg2, detectable_percent, right_range_deg, said

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    One light, one reader, one steady speed within each list.

    Reference
    ---------
    See `spark`.
    """
    form = Form(payload)
    taken = {}
    for _, _, field in LISTS:
        taken[field] = form.take_numbers(field) if form.has(field) else None
    resolution = form.take_number("resolution_deg", required=False)
    away = form.take_number("away_from_best_deg", required=False) or 0.0
    own = form.take_number("loss_per_deg2", required=False)
    power = form.take_number("peak_power_kw", required=False)
    form.close()
    for _, _, field in LISTS:
        values = taken[field]
        if values is not None and len(values) == 1:
            need = "two readings or more: one says nothing of how far the spark wanders"
            form.refuse("too-few", field, "1 reading", need, "Read it again, better five times.")
    if not any([form.has(field) for _, _, field in LISTS]):
        need = "at least one list of readings"
        step = "Read the timing at idle, or wide open on a dyno."
        form.refuse("missing", "idle_before_deg", None, need, step)
    form.finish()
    assumed = []
    if resolution is None:
        resolution = RESOLUTION_DEG
        text = "How finely the mark was read, assumed: nothing was given."
        assumed.append(assumption("resolution_deg", resolution, MEMORY, text))
    ends = LOSS_PER_DEG2 if own is None else (own, own)
    groups = []
    for at, when, field in LISTS:
        values = taken[field]
        if values is not None:
            seen = deviation_interval(sample_deviation(values), len(values))
            groups.append(
                Group(at, when, field, values, seen, freed(seen, resolution, len(values)))
            )
    spreads = [_spread(one, resolution, away, ends, power) for one in groups]
    least = detectable(PULL_PERCENT, PULLS)
    return {
        "calc": "spark",
        "core_version": VERSION,
        "resolution_deg": resolution,
        "away_from_best_deg": away,
        "spreads": spreads,
        "changes": _changes(groups, ends, power),
        "loss_per_deg2": {
            "low": ends[0], "high": ends[1], "origin": MEMORY if own is None else GIVEN,
            "text": LAW if own is None else "Your own figure.",
        },
        "right_range_deg": RIGHT_RANGE_DEG,
        "right_range_origin": PRACTICE,
        "detectable_percent": least,
        "said": _said(groups, resolution, ends, least),
        "assumptions": assumed,
        "warnings": _warned(groups, resolution),
        "cautions": cautions("running-engine", "exhaust-gas", "hot-parts"),
    }  # fmt: skip


def _shown(spread: Spread) -> dict[str, object]:
    return {"value": spread.value, "low": spread.low, "high": spread.high}


def _spread(
    one: Group, resolution: float, away: float, ends: tuple[float, float], power: float | None
) -> dict[str, object]:
    variance = one.seen.value**2
    share = None if variance == 0 else min(1.0, resolution**2 / 12 / variance)
    low = 100 * mean_loss(0.0, one.own.low, ends[0])
    high = 100 * mean_loss(0.0, one.own.high, ends[1])
    return {
        "at": one.at,
        "when": one.when,
        "count": len(one.values),
        "mean_deg": mean(one.values),
        "deviation_deg": _shown(one.seen),
        "range_deg": max(one.values) - min(one.values),
        "resolution_share": share,
        "own_deviation_deg": _shown(one.own),
        "scatter_loss_percent": {"low": low, "high": high},
        "setting_loss_percent": {
            "low": 100 * mean_loss(away, 0.0, ends[0]), "high": 100 * mean_loss(away, 0.0, ends[1]),
        },
        "scatter_loss_kw": None if power is None else {
            "low": low / 100 * power, "high": high / 100 * power,
        },
    }  # fmt: skip


def _changes(
    groups: list[Group], ends: tuple[float, float], power: float | None
) -> list[dict[str, object]]:
    """Compare after with before, where both were read."""
    by = {(one.at, one.when): one for one in groups}
    found: list[dict[str, object]] = []
    for at in PLACES:
        before, after = by.get((at, "before")), by.get((at, "after"))
        if before is None or after is None:
            continue
        ratio, outcome = None, "not-shown"
        if before.seen.value > 0:
            at_ratio = ratio_interval(
                after.seen.value, len(after.values), before.seen.value, len(before.values)
            )
            ratio = _shown(at_ratio)
            # Readings that are all alike after the work only show that the steps hide the rest.
            if at_ratio.high < 1 and after.seen.value > 0:
                outcome = "narrower"
            elif at_ratio.low > 1:
                outcome = "wider"
        # Least and most that the spread may have fallen by, each with the gentler and steeper law.
        least = before.own.low**2 - after.own.high**2
        most = before.own.high**2 - after.own.low**2
        low = 100 * min(ends[0] * least, ends[1] * least)
        high = 100 * max(ends[0] * most, ends[1] * most)
        found.append({
            "at": at,
            "ratio_of_deviations": ratio,
            "outcome": outcome,
            "mean_change_deg": mean(after.values) - mean(before.values),
            "scatter_gain_percent": {"low": low, "high": high},
            "scatter_gain_kw": None if power is None else {
                "low": low / 100 * power, "high": high / 100 * power,
            },
        })  # fmt: skip
    return found


def _said(
    groups: list[Group], resolution: float, ends: tuple[float, float], least: float
) -> list[str]:
    found = []
    for one in groups:
        width = max(one.values) - min(one.values)
        text = WORDS[one.at] + ", " + one.when + ": all within " + short(width, 2) + " deg; "
        if width <= RIGHT_RANGE_DEG and resolution <= RIGHT_RANGE_DEG:
            text += "the trade finds that with the right slack (common practice, no source)."
        elif width <= resolution:
            text += "one step of the reading. It cannot be told from half a degree, nor from none."
        else:
            text += "about half a degree goes with the right slack (common practice, no source)."
        found.append(text)
    # The example is worked out by the same law as the answer, from the range that was used.
    example = [100 * mean_loss(0.0, 2.0, k) for k in ends]
    span = fixed(example[0], 2)
    if ends[0] != ends[1]:
        span += " to " + fixed(example[1], 2)
    text = (
        "A spark that wanders by 2 deg (standard deviation) costs some " + span + " % of torque: "
    )
    text += "below the " if example[-1] < least else "not below the "
    text += fixed(least, 1) + " % that " + str(PULLS) + " pulls a side can show."
    if example[-1] < least:
        text += " Scatter is a sign of slack, and by this law hardly a loss by itself."
    found.append(text)
    return found


def _warned(groups: list[Group], resolution: float) -> list[dict[str, object]]:
    found = []
    for one in groups:
        found += [w for w in count_warnings(one.field, len(one.values)) if len(one.values) == 2]
        if one.seen.value**2 <= resolution**2 / 12:
            text = WORDS[one.at] + ", " + one.when + ": reading in steps of " + short(resolution, 3)
            text += " deg explains all of this spread. Read finer, or take more readings."
            found.append(warning("all-resolution", one.field, one.seen.value, text))
    return found

"""A lift table made a curve: durations, centre, area, and what is wrong with the readings."""

from . import lift_checks, limits
from .fields import Form
from .figures import fixed
from .instrument import interval_dict
from .lift_table import LIFTS_OF, VALVES, Table, take_table
from .lobe import Events, Lobe, lobe_from
from .timing import NOSE_DROP_MM
from .uncertainty import Interval, interval
from .version import VERSION
from .warnings import cautions, warning

MOST_HEIGHTS = 12
# Readings that scatter so many times as much as stated, or so many crank degrees apart, are worth a
# word; from memory, unverified.
MORE_SCATTER, FAR_APART_DEG = 2.0, 12.0
SMOOTHINGS = ("scatter", "cross-validation")
SMOOTHED_BY = ("stated", "assumed", "cross-validation")
# Heights shown if none is asked for: the checking heights of the trade, 0.006, 0.050 in and 1 mm;
# common practice, no source.
HEIGHTS_MM = (0.1524, 1.0, 1.27)


def take_heights(form: Form, name: str, usual: tuple[float, ...]) -> list[float]:
    """Read heights of lift, or take the usual ones."""
    if not form.has(name):
        return list(usual)
    return form.take_numbers(name, MOST_HEIGHTS) or []


def calculate(payload: object) -> dict[str, object]:
    """Make a curve of a lift table, and read it.

    Parameters
    ----------
    payload : valve ("intake" or "exhaust"), lobe (the table, see `lift_table`), heights_mm,
        smoothing (by the "scatter" of dial and wheel, stated or assumed, which is usual, or by
        "cross-validation"), curve_points

    Returns
    -------
    dict: rows_used, columns, bad_rows, smoothing, maximum_lift_mm, maximum_at_deg,
    nose_centreline_deg, asymmetry_deg, durations, findings, curve, readings, assumptions,
    warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    One lobe, dwelling on its base circle; lift as it was read, at the lobe or at the valve.

    Reference
    ---------
    See `smoothing` and `lobe`.
    """
    form = Form(payload)
    valve = form.take_choice("valve", VALVES)
    table = take_table(form, "lobe")
    heights = take_heights(form, "heights_mm", HEIGHTS_MM)
    by_scatter = form.take_choice("smoothing", SMOOTHINGS, SMOOTHINGS[0]) == SMOOTHINGS[0]
    points = int(form.take_number("curve_points", required=False) or 0)
    form.close()
    form.finish()
    assert table is not None  # noqa: S101  (finish raised if it was refused)
    lobe = lobe_from(table, by_scatter)
    found, shown = lift_checks.findings(table, lobe)
    nose = lobe.events(lobe.top - NOSE_DROP_MM) if lobe.top > NOSE_DROP_MM else None
    events = [(height, lobe.events(height)) for height in heights]
    middle = _widest(events)
    return {
        "calc": "lift",
        "core_version": VERSION,
        "valve": valve,
        "lift_of": table.lift_of,
        "rows_used": len(table.lines),
        "columns": table.columns,
        "bad_rows": table.bad,
        "smoothing": _smoothing(table, lobe, by_scatter),
        "maximum_lift_mm": interval_dict(_maximum(lobe)),
        "maximum_at_deg": lobe.top_at,
        "nose_centreline_deg": None if nose is None else interval_dict(nose.centre),
        "asymmetry_deg": _asymmetry(nose, middle),
        "durations": [_duration(height, one) for height, one in events],
        "findings": found,
        "least_slip_deg": shown,
        "curve": curve(lobe, points),
        "readings": _readings(table, lobe) if points else [],
        "assumptions": table.dial.assumptions + table.degree_wheel.assumptions,
        "warnings": _doubts(str(valve), table, lobe, nose),
        "cautions": cautions("turn-by-hand", "valve-contact"),
    }


def _widest(events: list[tuple[float, Events | None]]) -> Events | None:
    known = [one for _, one in events if one is not None]
    return min(known, key=lambda one: float(one.height)) if known else None


def _maximum(lobe: Lobe) -> Interval:
    spread = (lobe.spread(lobe.top_at) ** 2 + lobe.dial**2) ** 0.5
    return interval(lobe.top, spread)


def _smoothing(table: Table, lobe: Lobe, by_scatter: bool) -> dict[str, object]:
    """Say how the curve was chosen, and how well it goes through the readings."""
    total, shares = 0.0, 0.0
    count = len(table.lines) - len([i for i in lobe.left_out if i < len(table.lines)])
    for i in range(len(table.lines)):
        if i in lobe.left_out:
            continue
        total += (table.lifts[i] - lobe.spline.values[i]) ** 2
        shares += lobe.smooth.leverages[i]
    free = max(count - shares, 1.0)
    known = table.dial.origins["repeatability"] != limits.MEMORY
    return {
        "by": SMOOTHED_BY[(0 if known else 1) if by_scatter else 2],
        "scatter_mm": (total / free) ** 0.5,
        "shares_sum": shares,
        "base_filled": len(lobe.spline.knots) > len(table.lines),
    }


def _asymmetry(nose: Events | None, middle: Events | None) -> dict[str, object] | None:
    """Give how far the middle at the lowest height lies behind the centre near the nose."""
    if nose is None or middle is None:
        return None
    off = middle.centre.value - nose.centre.value
    # The wheel's own error is in both alike and drops out; taking it twice errs to the safe side.
    spread = (middle.centre.uncertainty**2 + nose.centre.uncertainty**2) ** 0.5
    return interval_dict(interval(off, spread))


def _duration(height: float, found: Events | None) -> dict[str, object]:
    row: dict[str, object] = {"height_mm": height}
    for name in ("opens_deg", "closes_deg", "duration_deg", "centre_deg", "area_mm_deg"):
        row[name] = None
    if found is not None:
        row.update(event_dict(found))
    return row


def event_dict(found: Events, later: float = 0.0) -> dict[str, object]:
    """Give events in the form of the result, so many crank degrees later."""
    moved: dict[str, object] = {}
    for name, at in (("opens", found.opens), ("closes", found.closes), ("centre", found.centre)):
        moved[name + "_deg"] = interval_dict(interval(at.value + later, at.uncertainty))
    moved["duration_deg"] = interval_dict(found.duration)
    moved["area_mm_deg"] = found.area
    moved["height_mm"] = found.height
    return moved


def curve(lobe: Lobe, points: int) -> list[dict[str, object]]:
    """Give lift, velocity and acceleration at even steps over the table."""
    rows: list[dict[str, object]] = []
    for i in range(points):
        share = i / (points - 1) if points > 1 else 0.0
        at = lobe.first + share * (lobe.last - lobe.first)
        rows.append(
            {
                "angle_deg": at,
                "lift_mm": lobe.spline.at(at),
                "velocity_mm_per_deg": lobe.spline.slope(at),
                "acceleration_mm_per_deg2": lobe.spline.bend(at),
            }
        )
    return rows


def _readings(table: Table, lobe: Lobe) -> list[dict[str, object]]:
    turn = table.angles[0] - lobe.first
    return [
        {
            "line": table.lines[i],
            "angle_deg": table.angles[i] - turn,
            "lift_mm": table.lifts[i],
            "residual_mm": table.lifts[i] - lobe.spline.values[i],
        }
        for i in range(len(table.lines))
    ]


def _doubts(valve: str, table: Table, lobe: Lobe, nose: Events | None) -> list[dict[str, object]]:
    """Say what is unusual."""
    found = []
    if table.bad:
        text = "{} of the rows could not be used; they are listed, the others are taken."
        found.append(warning("rows-left-out", "lobe", len(table.bad), text.format(len(table.bad))))
    if nose is not None and table.zero == "tdc":
        at = nose.centre.value
        if (at < 0) == (valve == "intake"):
            text = "The nose is at {} degrees after TDC, which is no {} lobe's place. "
            text += "Check that zero is true TDC, and which lobe it is."
            text = text.format(fixed(at, 1), valve)
            found.append(warning("nose-on-the-other-side", "lobe", at, text))
    if lobe.noise > MORE_SCATTER and table.dial.origins["repeatability"] != limits.MEMORY:
        text = "The readings scatter {} times as much as was stated.".format(fixed(lobe.noise, 1))
        found.append(warning("more-scatter-than-stated", "repeatability_mm", lobe.noise, text))
    step = (table.angles[-1] - table.angles[0]) / (len(table.angles) - 1)
    if step > FAR_APART_DEG:
        text = "On average {} crank degrees between readings: every 5 or less tells more."
        found.append(warning("few-readings", "lobe", step, text.format(fixed(step, 0))))
    if table.lift_of == LIFTS_OF[1] and table.lash > 0:
        text = "Read at the valve with lash: what the lobe does within the lash is not known."
        found.append(warning("lash-hides-ramp", "table_lash_mm", table.lash, text))
    return found

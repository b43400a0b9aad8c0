"""What can be wrong with a lift table: a dial that stuck, a wheel that slipped, a reading out of
line, a table that does not close. Each is named with its rows and what to do about it.
"""

import math

from .algebra import inverse
from .figures import fixed, short
from .lift_table import CYCLE_DEG, Table
from .lobe import Lobe, own_residuals, reading_weights, usual_size

# A reading this many times its own doubt off the smooth curve is out of line. From memory,
# unverified; of readings that are sound about one in 100000 is so far off.
OUT_OF_LINE = 4.5
# A dial sticks if it stands still while the lift around it moves by more than so many times its
# doubt; a wheel has slipped if the slip is so many times its own doubt and at least so many crank
# degrees. From memory, unverified: chosen so that sound tables do not alarm (see the checks).
STUCK, SLIPPED, SLIP_DEG = 6.0, 6.0, 0.7
# Readings on either side that tell how fast the lift moves.
BESIDE = 4
# A slip is looked for within so many crank degrees on either side, so many readings at least and
# at most, by a curve of so many terms.
SIDE_DEG, LEAST_SIDE, MOST_SIDE, TERMS = 30.0, 6, 14, 5
# A flank is where the slope is more than this share of the steepest; from memory, unverified.
FLANK = 0.25
# No engine's lobe lifts less [mm]; a table in inches taken for mm always would. From memory,
# unverified.
LEAST_LIFT = 2.0
STEPS = {
    "sticking-dial": "Free the dial and its stem, tap it lightly, and read these rows again.",
    "slipped-wheel": "The rows before and those after do not belong together. Fix the wheel, find "
    "true TDC again, and read the whole table anew.",
    "out-of-line": "Read it again; if it was mistyped, correct it in the table.",
    "not-closing": "Bring the lifter back to the base circle: if the dial does not show its zero "
    "again, it moved. Read the table anew.",
    "base-off": "Set the dial to zero on the base circle, or take its reading there off all rows.",
    "open-table": "Read on until the lifter is on the base circle on both sides.",
    "small-lift": "Is the table in inches? Choose its unit, before anything rests on it.",
}


def findings(table: Table, lobe: Lobe) -> tuple[list[dict[str, object]], float | None]:
    """Look for all of them.

    Parameters
    ----------
    table : the readings
    lobe : what they were smoothed to

    Returns
    -------
    list of dict with code, lines, value, text, next_step; and the least slip that would show
    [crank deg], None where none can

    Raises
    ------
    none

    Validity
    --------
    One lobe. A slip while the lifter is on the base circle or right on the nose shows nothing.

    Reference
    ---------
    The thresholds are from memory, unverified.
    """
    found = sticking(table)
    if lobe.top < LEAST_LIFT:
        text = "The highest lift of the lobe is only {} mm.".format(short(lobe.top, 3))
        found.append(_finding("small-lift", [], lobe.top, text))
    stuck = {line for one in found for line in _lines(one)}
    slip, shown = slipped(table)
    if slip is not None and not stuck & set(_lines(slip)):
        found.append(slip)
    else:
        slip = None
    if slip is None:
        found += out_of_line(table, lobe, stuck)
    return found + closing(table, lobe), shown


def sticking(table: Table) -> list[dict[str, object]]:
    """Runs of the same reading where the lift around them moves on.

    Parameters
    ----------
    table : the readings

    Returns
    -------
    findings, value the movement missed [mm]

    Raises
    ------
    none

    Validity
    --------
    On a flank; at the nose and on the base circle the lift does stand still.

    Reference
    ---------
    Thresholds from memory, unverified.
    """
    angles, lifts = table.angles, table.lifts
    found = []
    i, last = 0, len(lifts) - 1
    while i < last:
        j = i
        while j < last and abs(lifts[j + 1] - lifts[i]) < 1e-9:
            j += 1
        if j > i and i > 0 and j < last:
            a, b = max(i - BESIDE, 0), min(j + BESIDE, last)
            before = (lifts[i] - lifts[a]) / (angles[i] - angles[a])
            after = (lifts[b] - lifts[j]) / (angles[b] - angles[j])
            slope = min(abs(before), abs(after)) if before * after > 0 else 0.0
            missed = slope * (angles[j] - angles[i])
            doubt = math.sqrt(table.noise[0] ** 2 + (slope * table.noise[1]) ** 2)
            if missed > STUCK * math.sqrt(2) * doubt:
                text = "The dial shows the same from row {} to {}, while the lift around moves "
                text = text.format(table.lines[i], table.lines[j]) + fixed(missed, 2) + " mm."
                found.append(_finding("sticking-dial", table.lines[i : j + 1], missed, text))
        i = max(j, i + 1)
    return found


def slipped(table: Table) -> tuple[dict[str, object] | None, float | None]:
    """Find the row after which the angles are all off by the same.

    Around every row of a flank a curve of a few terms is laid through the readings, with one term
    more: the slope, for the readings behind the row. Its factor is the slip.

    Parameters
    ----------
    table : the readings

    Returns
    -------
    the surest finding, value the slip [crank deg], positive if the wheel went ahead, or None; and
    the least slip [crank deg] that would be found on half of the flanks, None if there are none

    Raises
    ------
    none

    Validity
    --------
    A slip on a flank, with six readings on either side.

    Reference
    ---------
    Least squares with a step in the argument; thresholds from memory, unverified.
    """
    angles, lifts = table.angles, table.lifts
    count = len(angles)
    side = int(SIDE_DEG * (count - 1) / (angles[-1] - angles[0]))
    side = max(LEAST_SIDE, min(side, MOST_SIDE))
    least = FLANK * max([abs(_slope(table, i, 0, count - 1)) for i in range(count)])
    weights = reading_weights(angles, lifts, table.noise)
    # Far windows overlap most, so of dense tables every other row will do at first.
    stride = 2 if side > LEAST_SIDE + 2 else 1
    fits: dict[int, tuple[float, float]] = {}
    for k in range(side, count - side + 1, stride):
        if min(abs(_slope(table, i, 0, count - 1)) for i in (k - 1, k)) >= least:
            fit = _step_fit(table, weights, k, side)
            if fit is not None:
                fits[k] = fit
    near = [k for k in fits if _sure(fits[k]) > SLIPPED / 2]
    for k in near if stride > 1 else []:
        for beside in (k - 1, k + 1):
            fit = None
            if side <= beside <= count - side:
                fit = _step_fit(table, weights, beside, side)
            if fit is not None:
                fits[beside] = fit
    told = sorted([fit[1] for fit in fits.values()])
    least_shown = max(SLIP_DEG, SLIPPED * told[len(told) // 2]) if told else None
    sure = []
    for k in sorted(fits):
        if _sure(fits[k]) > SLIPPED and abs(fits[k][0]) >= SLIP_DEG:
            # A single reading out of line looks the same, but not without it.
            without = _step_fit(table, weights, k, side, (k - 1, k))
            if _sure(without) > SLIPPED / 2:
                sure.append(k)
    if not sure:
        return None, least_shown
    k = max(sure, key=lambda k: _sure(fits[k]))
    slip = fits[k][0]
    text = "From row {} on the angles do not go on from those before: the wheel or its pointer "
    text += "moved by about {} crank degrees."
    text = text.format(table.lines[k], fixed(abs(slip), 1))
    lines = [table.lines[k - 1], table.lines[k]]
    return _finding("slipped-wheel", lines, slip, text), least_shown


def _sure(fit: tuple[float, float] | None) -> float:
    return abs(fit[0]) / fit[1] if fit is not None else 0.0


def _slope(table: Table, i: int, low: int, high: int) -> float:
    """Slope between the neighbours of a reading, from no further than low and high."""
    a, b = max(i - 1, low), min(i + 1, high)
    return float((table.lifts[b] - table.lifts[a]) / (table.angles[b] - table.angles[a]))


def _step_fit(
    table: Table, weights: list[float], k: int, side: int, without: tuple[int, ...] = ()
) -> tuple[float, float] | None:
    """Give the slip just before reading k and its standard uncertainty [crank deg]."""
    start, end = k - side, k + side
    middle = (table.angles[k - 1] + table.angles[k]) / 2
    width = (table.angles[end - 1] - table.angles[start]) / 2
    if table.angles[k] - table.angles[k - 1] > width / 2:
        return None
    size = TERMS + 1
    rows = []
    places = [i for i in range(start, end) if i not in without]
    for i in places:
        t = (table.angles[i] - middle) / width
        # The slope from readings on the same side only.
        step = _slope(table, i, k, end - 1) if i >= k else 0.0
        rows.append([1.0, t, t * t, t**3, t**4, -step * width])
    largest = max([abs(row[TERMS]) for row in rows])
    if largest == 0:
        return None
    normal = [[0.0] * size for _ in range(size)]
    right = [0.0] * size
    for row, i in zip(rows, places):
        row[TERMS] /= largest  # like the others in size; given back below
        weight, lift = weights[i], table.lifts[i]
        for a in range(size):
            share = weight * row[a]
            right[a] += share * lift
            line = normal[a]
            for b in range(a + 1):
                line[b] += share * row[b]
    for a in range(size):
        for b in range(a):
            normal[b][a] = normal[a][b]
    try:
        spread = inverse(normal)
    except ValueError:  # the angles do not tell the terms apart
        return None
    terms = [0.0] * size
    for a in range(size):
        for b in range(size):
            terms[a] += spread[a][b] * right[b]
    misfit = 0.0
    for row, i in zip(rows, places):
        off = table.lifts[i]
        for a in range(size):
            off -= terms[a] * row[a]
        misfit += weights[i] * off * off
    # Where the few terms do not fit the curve, the slip is the less sure for it.
    excess = max(1.0, misfit / max(len(places) - size, 1))
    scale = width / largest
    return terms[TERMS] * scale, math.sqrt(spread[TERMS][TERMS] * excess) * scale


def out_of_line(table: Table, lobe: Lobe, known: set[int]) -> list[dict[str, object]]:
    """Readings far off the smooth curve, neighbours counted as one.

    Parameters
    ----------
    table : the readings
    lobe : what they were smoothed to
    known : lines that are named already

    Returns
    -------
    findings, value the largest residual [mm]

    Raises
    ------
    none

    Validity
    --------
    A few among many.

    Reference
    ---------
    As `lobe.own_residuals` and `lobe.usual_size`. Threshold from memory, unverified.
    """
    count = len(table.lines)
    weights = reading_weights(table.angles, table.lifts, table.noise)
    scaled = own_residuals(lobe.smooth, table.lifts, weights, lobe.left_out)
    usual = usual_size([abs(x) for x in scaled])
    runs: list[list[int]] = []
    for i in range(count):
        if abs(scaled[i]) > OUT_OF_LINE * usual and table.lines[i] not in known:
            if runs and runs[-1][-1] == i - 1:
                runs[-1].append(i)
            else:
                runs.append([i])
    found = []
    for run in runs:
        worst = max(run, key=lambda i: abs(scaled[i]))
        off = table.lifts[worst] - lobe.spline.values[worst]
        rows = "Row {}".format(table.lines[run[0]])
        if len(run) > 1:
            rows = "Rows {} to {}".format(table.lines[run[0]], table.lines[run[-1]])
        side = "above" if off > 0 else "below"
        text = "{}: {} mm {} the smooth curve through the others."
        text = text.format(rows, short(abs(off), 2), side)
        if worst in lobe.left_out:
            text += " Left out of the curve."
        found.append(_finding("out-of-line", [table.lines[i] for i in run], off, text))
    return found


def closing(table: Table, lobe: Lobe) -> list[dict[str, object]]:
    """Whether the lift comes back to where it began.

    Parameters
    ----------
    table : the readings
    lobe : what they were smoothed to

    Returns
    -------
    findings, value the difference [mm] or, for rows read a cycle later, the slip [crank deg]

    Raises
    ------
    none

    Validity
    --------
    The cam's base circle is round: runout of the journal shows as the same.

    Reference
    ---------
    none
    """
    angles, lifts, lines = table.angles, table.lifts, table.lines
    found = []
    doubt = 4 * math.sqrt(2) * table.noise[0]
    if not lobe.base:
        text = "The table ends at {} and {} mm of lift, not on the base circle on both sides."
        text = text.format(short(lifts[0], 3), short(lifts[-1], 3))
        found.append(_finding("open-table", [lines[0], lines[-1]], max(lifts[0], lifts[-1]), text))
    elif abs(lifts[-1] - lifts[0]) > doubt:
        text = "It begins at {} mm and ends at {} mm, both on the base circle."
        text = text.format(short(lifts[0], 3), short(lifts[-1], 3))
        found.append(_finding("not-closing", [lines[0], lines[-1]], lifts[-1] - lifts[0], text))
    elif abs(lifts[0]) > doubt:
        text = "The dial shows {} mm on the base circle.".format(short(lifts[0], 3))
        found.append(_finding("base-off", [lines[0]], lifts[0], text))
    turn = table.angles[0] - lobe.first
    for angle, lift, line in table.closing:
        at = angle - turn
        slope = lobe.spline.slope(at)
        off = lift - lobe.spline.at(at)
        own = math.sqrt(table.noise[0] ** 2 + (slope * table.noise[1]) ** 2)
        if abs(off) > OUT_OF_LINE * own * max(lobe.noise, 1.0):
            text = "Row {}, a cycle later, shows {} mm other than the first time round."
            text = text.format(line, short(off, 3))
            found.append(_finding("not-closing", [line], off, text))
            break
    if angles[-1] - angles[0] < CYCLE_DEG / 9:
        text = "The table covers {} crank degrees only.".format(fixed(angles[-1] - angles[0], 0))
        found.append(_finding("open-table", [lines[0], lines[-1]], 0.0, text))
    return found


def _finding(code: str, lines: list[int], value: float, text: str) -> dict[str, object]:
    return {
        "code": code, "lines": lines, "value": value, "text": text, "next_step": STEPS[code],
    }  # fmt: skip


def _lines(finding: dict[str, object]) -> list[int]:
    lines = finding["lines"]
    return lines if isinstance(lines, list) else []

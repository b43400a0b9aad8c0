"""A table of lift against angle, as it was read: pasted text or lists, to crank degrees and mm."""

from collections import namedtuple

from . import pasted
from .fields import Form
from .figures import short
from .instrument import Instrument, take_instrument
from .limits import MM_PER_INCH
from .uncertainty import rectangular

ANGLES_OF = ("crank", "cam")
WHEELS = ("to-360", "to-180", "continuous")
LIFTS_OF = ("lobe", "valve")
LIFT_UNITS = ("mm", "in")
ZEROS = ("tdc", "elsewhere")
VALVES = ("intake", "exhaust")
MOST_ROWS, LEAST_ROWS = 1500, 12
CYCLE_DEG = 720.0
# What each wheel can show.
_SHOWN = {"to-360": (0.0, 360.0), "to-180": (-180.0, 180.0), "continuous": (-1440.0, 1440.0)}


class Table(
    namedtuple(
        "Table",
        (
            "angles", "lifts", "lines", "closing", "bad", "columns", "angle_of", "wheel",
            "lift_of", "ratio", "lash", "zero", "installed", "noise", "dial", "degree_wheel",
        ),
    )
):  # fmt: skip
    """A table ready to be smoothed: crank angles [deg], rising, within one cycle; lifts [mm], their
    lines; what was read again a cycle later; the rows left out; which columns were taken; what
    was stated with it; noise, the standard uncertainty of one reading of dial and wheel [mm, deg].
    """

    __slots__ = ()

    def lobe_scale(self) -> tuple[float, float]:
        """Factor and offset from the lift as read to lift at the lobe."""
        return (1 / self.ratio, self.lash / self.ratio) if self.lift_of == "valve" else (1.0, 0.0)


def take_table(form: Form, name: str, required: bool = True) -> Table | None:
    """Read a lift table, or note what is wrong with it.

    Parameters
    ----------
    form : the input being read
    name : field that holds the table
    required : whether it must be given
    """
    if not form.has(name):
        if required:
            need = "a lift table: text, or table_angles_deg and table_lifts_mm"
            form.refuse("missing", name, None, need, "Paste it, or key it in row by row.")
        return None
    part = form.take_form(name)
    assert part is not None  # noqa: S101  (it was given)
    before = len(part.problems)
    angle_of = part.take_choice("angle_of", ANGLES_OF)
    wheel = part.take_choice("wheel", WHEELS, "continuous")
    lift_of = part.take_choice("lift_of", LIFTS_OF)
    ratio = part.take_number("table_ratio", required=lift_of == "valve")
    lash = part.take_number("table_lash_mm", required=False)
    zero = part.take_choice("zero", ZEROS, "tdc")
    installed = part.take_number("installed_centreline_deg", required=False)
    rows, bad, columns = _take_rows(part)
    dial = take_instrument(part, "dial", "mm", True)
    degree_wheel = take_instrument(part, "wheel", "deg", True)
    part.close()
    if len(part.problems) > before or angle_of is None or wheel is None:
        return None
    turns = 2.0 if angle_of == "cam" else 1.0
    kept, closing = _in_order(rows, wheel, bad, CYCLE_DEG / turns)
    if len(kept) < LEAST_ROWS:
        got = str(len(kept)) + " rows that can be used"
        need = str(LEAST_ROWS) + " rows or more, angle rising"
        step = "Read the lift every few degrees, right over the lobe."
        if bad:
            step = "Row {}: {}.".format(bad[0]["line"], bad[0]["why"])
        form.refuse("too-few", name, got, need, step)
        return None
    return Table(
        [turns * row.angle for row in kept],
        [row.lift for row in kept],
        [row.line for row in kept],
        [(turns * row.angle, row.lift, row.line) for row in closing],
        bad,
        columns,
        angle_of,
        wheel,
        lift_of,
        1.0 if ratio is None else ratio,
        0.0 if lash is None else lash,
        zero,
        installed,
        (_noise(dial), turns * _noise(degree_wheel)),
        dial,
        degree_wheel,
    )


def _noise(instrument: Instrument) -> float:
    """Give what scatters from reading to reading, as a standard uncertainty."""
    shown = rectangular(instrument.resolution / 2)
    # Never nothing: readings without any doubt would have no smooth curve but themselves.
    return max(float((shown**2 + instrument.repeatability**2) ** 0.5), 1e-6)


def _take_rows(
    part: Form,
) -> tuple[list[pasted.Reading], list[dict[str, object]], dict[str, object] | None]:
    """Give the rows of the text, or of the two lists, in mm."""
    if part.has("text"):
        for other in ("table_angles_deg", "table_lifts_mm"):
            if part.has(other):
                step = "Send the text or the lists, not both."
                part.refuse("conflict", other, "both", "no lists beside a text", step)
        unit = part.take_choice("lift_unit", LIFT_UNITS)
        angle = part.take_number("angle_column", required=False)
        lift = part.take_number("lift_column", required=False)
        text = part.take_text("text", pasted.MOST_CHARACTERS)
        if text is None or unit is None:
            return [], [], None
        # As it came, so that the line numbers are those the user sees.
        text = str(part.payload["text"])
        columns = (None if angle is None else int(angle), None if lift is None else int(lift))
        found = pasted.parse(text, *columns)
        scale = MM_PER_INCH if unit == "in" else 1.0
        rows = [pasted.Reading(r.line, r.angle, scale * r.lift) for r in found.rows]
        if len(rows) > MOST_ROWS:
            got = str(len(rows)) + " rows"
            part.refuse("too-many", "text", got, "up to " + str(MOST_ROWS), "Leave rows out.")
        said = {
            "angle_column": found.angle,
            "lift_column": found.lift,
            "heading": [cell[:40] for cell in found.header[:12]],
            "separator": {"\t": "tab", ";": "semicolon", ",": "comma"}.get(
                found.separator, "blank"
            ),
            "decimal_sign": "comma" if found.comma else "point",
        }
        return rows, found.bad, said
    angles = part.take_numbers("table_angles_deg", MOST_ROWS)
    lifts = part.take_numbers("table_lifts_mm", MOST_ROWS)
    if angles is None or lifts is None:
        return [], [], None
    if len(angles) != len(lifts):
        need = "as many values as table_angles_deg, " + str(len(angles))
        part.refuse("conflict", "table_lifts_mm", str(len(lifts)) + " values", need, "Send pairs.")
    rows = [pasted.Reading(i + 1, a, x) for i, (a, x) in enumerate(zip(angles, lifts))]
    return rows, [], None


def _in_order(
    rows: list[pasted.Reading], wheel: str, bad: list[dict[str, object]], cycle: float
) -> tuple[list[pasted.Reading], list[pasted.Reading]]:
    """Unwind the wheel, put the rows in rising order, and set aside those that do not rise."""
    low, high = _SHOWN[wheel]
    shown = []
    for row in rows:
        if low <= row.angle <= high and abs(row.lift) <= 100:
            shown.append(row)
        else:
            why = "the angle is not on a wheel {} to {}".format(int(low), int(high))
            why = why if abs(row.lift) <= 100 else "a lift beyond 100 mm"
            bad.append(_bad(row, why))
    unwound: list[pasted.Reading] = []
    for row in shown:
        angle = row.angle
        if wheel != "continuous" and unwound:
            step = (angle - unwound[-1].angle + 180) % 360 - 180
            angle = unwound[-1].angle + step
        unwound.append(pasted.Reading(row.line, angle, row.lift))
    ups = len([1 for a, b in zip(unwound, unwound[1:]) if b.angle > a.angle])
    downs = len([1 for a, b in zip(unwound, unwound[1:]) if b.angle < a.angle])
    if downs > ups:
        unwound.reverse()
    chosen = _rising([row.angle for row in unwound])
    kept: list[pasted.Reading] = []
    closing: list[pasted.Reading] = []
    for i, row in enumerate(unwound):
        if i not in chosen:
            why = "the angle goes back or repeats"
            if wheel != "continuous":
                why += " (on a wheel, steps are to be under 180 degrees)"
            bad.append(_bad(row, why))
        elif kept and row.angle >= kept[0].angle + cycle:
            closing.append(row)
        else:
            kept.append(row)
    bad.sort(key=_line_of)
    return kept, closing


def _bad(row: pasted.Reading, why: str) -> dict[str, object]:
    said = short(row.angle, 7) + " " + short(row.lift, 7)
    return {"line": row.line, "text": said, "why": why}


def _line_of(one: dict[str, object]) -> int:
    return int(str(one["line"]))


def _rising(values: list[float]) -> set[int]:
    """Places of the longest run of values that rise, others left out."""
    ends: list[int] = []  # place of the least end of a run of each length
    before: list[int] = []
    for i, value in enumerate(values):
        low, high = 0, len(ends)
        while low < high:
            middle = (low + high) // 2
            if values[ends[middle]] < value:
                low = middle + 1
            else:
                high = middle
        before.append(ends[low - 1] if low else -1)
        if low == len(ends):
            ends.append(i)
        else:
            ends[low] = i
    chosen = set()
    at = ends[-1] if ends else -1
    while at >= 0:
        chosen.add(at)
        at = before[at]
    return chosen

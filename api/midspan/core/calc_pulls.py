"""How many pulls a gain takes to be shown, and in which order."""

import math

from .betas import detectable_shift
from .calc_correction import dyno_cautions
from .design_words import order_text
from .fields import Form
from .figures import short
from .instrument import assumption
from .limits import GIVEN, MEMORY
from .spread_interval import spread_interval
from .version import VERSION
from .warnings import warning

# Scatter of a pull by the kind of dyno, where a shop has none of its own [%]; from memory,
# unverified.
USUAL = {
    "engine-dyno-good": (0.3, 0.5, "engine dyno in a good cell"),
    "engine-dyno": (0.5, 1.0, "engine dyno, ordinary"),
    "chassis-dyno": (1.0, 2.0, "chassis dyno"),
}
DESIGNS = {
    "there-and-back": "A, then B twice as often, then A again: two changes.",
    "alternating": "A B B A over and over: more changes, but a curved drift does less harm.",
    "thirds": "A, B, A in equal parts: two changes.",
    "one-change": "A, then B: one change. The drift is worked out from within, which costs much.",
}
# In this order; the phone's interpreter keeps none in a table.
ORDER = ("there-and-back", "alternating", "thirds", "one-change")
MOST_PULLS = 60


def calculate(payload: object) -> dict[str, object]:
    """Plan a dyno session: pulls, order, and the smallest gain that each number of them finds.

    Parameters
    ----------
    payload : wanted_gain_percent; scatter_percent with scatter_degrees_of_freedom, or dyno; design,
        power_percent

    Returns
    -------
    dict: scatter, designs (pulls needed of each), order, table

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Two settings; drift straight over the runs and taken out; normal scatter alike in both.

    Reference
    ---------
    Standard errors by least squares, checked against NIST/SEMATECH e-Handbook 2.3.3.1.2; see
    `betas.power_of_t`.
    """
    form = Form(payload)
    wanted = form.take_number("wanted_gain_percent")
    own = form.take_number("scatter_percent", required=False)
    dof = form.take_number("scatter_degrees_of_freedom", required=own is not None)
    kind = form.take_choice("dyno", tuple(sorted(USUAL))) if form.has("dyno") else None
    chosen = form.take_choice("design", ORDER, "there-and-back")
    power = form.take_number("power_percent", required=False)
    form.close()
    if own is not None and kind is not None:
        need = "either the shop's own scatter or a kind of dyno"
        form.refuse("conflict", "dyno", kind, need, "Leave one of them out: the own one is better.")
    if dof is not None and own is None and not form.problems:
        need = "the scatter that these degrees of freedom belong to"
        form.refuse("missing", "scatter_percent", None, need, "Take it from a session.")
    if own is None and kind is None and not form.problems:
        need = "the shop's own scatter, or one of " + ", ".join(sorted(USUAL))
        form.refuse("missing", "dyno", None, need, "Say what the engine is run on.")
    form.finish()
    assert wanted is not None  # noqa: S101  (finish raised)
    share = 0.8 if power is None else power / 100
    if own is not None and dof is not None:
        low, high = spread_interval(own, int(dof), 0.8)
        middle, assumed = own, []
        text = "The shop's own, " + str(int(dof)) + " degrees of freedom; the range is its 80 % "
        text += "interval."
        origin = GIVEN
    else:
        low, high, name = USUAL[str(kind)]
        middle = high
        text = "Usual of an " if name[0] in "aeiou" else "Usual of a "
        text += name + ", from memory, unverified: no published figure was found. Planned for the "
        text += "larger end. Use your own as soon as you have one."
        assumed = [assumption("scatter_percent", high, MEMORY, text)]
        origin = MEMORY
    rows = [_design(name, wanted, share, middle, low, high) for name in ORDER]
    row = next(r for r in rows if r["design"] == chosen)
    return {
        "calc": "pulls-needed",
        "core_version": VERSION,
        "wanted_gain_percent": wanted,
        "power_percent": 100 * share,
        "scatter": {"scatter_percent": middle, "low": low, "high": high, "origin": origin,
                    "text": text},
        "design": chosen,
        "designs": rows,
        "headline": _headline(row, wanted),
        "why": _why(row, wanted, share, low, high),
        "order": row["order"],
        "table": _table(str(chosen), share, middle),
        "assumptions": assumed,
        "warnings": _warned(str(chosen), wanted),
        "cautions": dyno_cautions(),
    }  # fmt: skip


def size_of(design: str, step: int) -> tuple[int, float, int]:
    """Pulls, standard error over scatter, and degrees of freedom of a design with drift taken out.

    Parameters
    ----------
    design : one of DESIGNS
    step : its size, 1 or more
    """
    m = step
    if design in ("there-and-back", "alternating"):
        return 4 * m, math.sqrt(1 / m), 4 * m - 3
    if design == "thirds":
        return 3 * m, math.sqrt(1.5 / m), 3 * m - 3
    # Mean places m apart, m (m^2 - 1) / 12 squares in each half.
    if m < 2:
        return 2 * m, math.inf, 0
    squares = m * (m * m - 1) / 6
    return 2 * m, math.sqrt(2 / m + m * m / squares), 2 * m - 3


def blocks_of(design: str, step: int) -> list[tuple[str, int]]:
    """Give the order of a design as blocks of a setting."""
    m = step
    if design == "there-and-back":
        return [("A", m), ("B", 2 * m), ("A", m)]
    if design == "thirds":
        return [("A", m), ("B", m), ("A", m)]
    if design == "one-change":
        return [("A", m), ("B", m)]
    found = [("A", 1)]
    for i in range(m):
        found.append(("B", 2))
        found.append(("A", 2 if i < m - 1 else 1))
    return found


def _needed(design: str, wanted: float, share: float, scatter: float) -> int | None:
    """Give the size of a design that finds the gain, None beyond MOST_PULLS."""
    step = 1
    while size_of(design, step)[0] <= MOST_PULLS:
        _, factor, dof = size_of(design, step)
        # 2.8 standard errors are the least that any test of power 0.8 takes; 1.9 that of 0.5.
        if dof > 0 and wanted > 1.9 * factor * scatter:
            if detectable_shift(dof, share) * factor * scatter <= wanted:
                return step
        step += 1
    return None


def _design(
    name: str, wanted: float, share: float, middle: float, low: float, high: float
) -> dict[str, object]:
    step = _needed(name, wanted, share, middle)
    at_low, at_high = [_needed(name, wanted, share, s) for s in (low, high)]
    blocks = None if step is None else blocks_of(name, step)
    return {
        "design": name,
        "text": DESIGNS[name],
        "pulls": None if step is None else size_of(name, step)[0],
        "pulls_at_low": None if at_low is None else size_of(name, at_low)[0],
        "pulls_at_high": None if at_high is None else size_of(name, at_high)[0],
        "changes": None if blocks is None else len(blocks) - 1,
        "order": None if blocks is None else order_text(blocks),
    }


def _table(design: str, share: float, scatter: float) -> list[dict[str, object]]:
    """Give the smallest gain that is found against the number of pulls."""
    rows = []
    step = 1
    while size_of(design, step)[0] <= MOST_PULLS // 2:
        pulls, factor, dof = size_of(design, step)
        if dof > 0:
            able = detectable_shift(dof, share) * factor * scatter
            rows.append({
                "pulls": pulls, "order": order_text(blocks_of(design, step)),
                "changes": len(blocks_of(design, step)) - 1, "error_factor": factor,
                "degrees_of_freedom": dof, "detectable_percent": able,
            })  # fmt: skip
        step += 1
    return rows


def _headline(row: dict[str, object], wanted: float) -> str:
    if row["pulls"] is None:
        return "More than " + str(MOST_PULLS) + " pulls for " + short(wanted, 3) + " %"
    return str(row["pulls"]) + " pulls for a gain of " + short(wanted, 3) + " %"


def _why(row: dict[str, object], wanted: float, share: float, low: float, high: float) -> str:
    """Say what the number rests on, and how far the scatter moves it."""
    text = "A true gain of " + short(wanted, 3) + " % is then shown " + short(100 * share, 3)
    text += " times in a hundred; one that is not there at most 5 times."
    ends = [
        "more than " + str(MOST_PULLS) if row[name] is None else str(row[name])
        for name in ("pulls_at_low", "pulls_at_high")
    ]
    text += " If a pull scatters by " + short(low, 2) + " %: " + ends[0] + " pulls; by "
    return text + short(high, 2) + " %: " + ends[1] + "."


def _warned(design: str, wanted: float) -> list[dict[str, object]]:
    text = "Run the engine until pulls stop rising before the first one counts, and keep every run."
    found = [warning("warm-up", "wanted_gain_percent", wanted, text)]
    if design == "one-change":
        text = "Without going back, whatever else changed with the setting counts as its gain."
        found.append(warning("no-return", "wanted_gain_percent", wanted, text))
    if design in ("one-change", "thirds", "there-and-back"):
        text = "B is fitted once, so what refitting alone does stays in its gain."
        found.append(warning("fitted-once", "wanted_gain_percent", wanted, text))
    return found

"""Evidence for the expected gain, out of the dyno sessions kept: a row for each pair of settings.

A session serves where two of its settings carry different movements of the chain, measured at
them, and its runs tell how far the comparison is sure.
"""

from . import calc_compare
from .errors import Refused
from .fields import Form
from .movement import READING_MM
from .student import NORMAL_95
from .version import VERSION

TYPE_CHECKING = False  # MicroPython has no typing module; type checkers take this as true
if TYPE_CHECKING:
    from typing import Any

    Json = dict[str, Any]

# As many comparisons as an expected gain takes; the newest sessions come first.
MOST_ROWS, MOST_SESSIONS = 40, 400
LONGEST = 100
# No strand moves farther; nothing beyond is a movement: from memory, unverified.
MOST_MM = 100.0
# Why a session gives none, in a word.
PASSED = ("no-two-movements", "no-standard", "cannot-compare", "too-few-runs", "no-room")
OF_RUN = ("setting", "place", "conditions", "figures_are", "peaks", "curve")


def calculate(payload: object) -> "Json":
    """Compare every session that can serve, and give the rows.

    Parameters
    ----------
    payload : sessions, newest first: each with engine (its name), label, standard, settings (key,
        movement_mm, movement_u_mm) and runs as "compare" takes them

    Returns
    -------
    dict: rows as "gain" takes its evidence, each with the session it is from; and passed, with why

    Raises
    ------
    Refused : no list of sessions

    Validity
    --------
    Differences against one reference share its scatter; the rows are taken as independent. Few
    runs widen a row: its standard uncertainty is its 95 % half-width over that of a normal. See
    `_same_slack` for settings whose slack is not known to differ.

    Reference
    ---------
    See `calc_compare`.
    """
    form = Form(payload)
    parts = form.take_forms("sessions", MOST_SESSIONS)
    form.close()
    form.finish()
    rows: list[Json] = []
    passed: list[Json] = []
    for part in parts:
        found, why = _of_session(part.payload)
        room = MOST_ROWS - len(rows)
        rows = rows + found[:room]
        if why or len(found) > room:
            told = why or "no-room"
            passed.append({"session": _text(part.payload.get("label")), "why": told})
    return {"calc": "gain-evidence", "core_version": VERSION, "rows": rows, "passed": passed}


def _of_session(session: "Json") -> "tuple[list[Json], str]":
    """Give the rows of one session, or in a word why there are none."""
    moved, order = {}, []
    settings = session.get("settings")
    for one in settings if isinstance(settings, list) else []:
        key = one.get("key") if isinstance(one, dict) else None
        movement = _length(one.get("movement_mm")) if key is not None else None
        if isinstance(key, str) and movement is not None:
            half = _length(one.get("movement_u_mm"))
            moved[key] = (movement, NORMAL_95 * READING_MM if half is None else half)
            order.append(key)
    given = session.get("runs")
    runs = [r for r in given if isinstance(r, dict)] if isinstance(given, list) else []
    runs = [r for r in runs if isinstance(r.get("setting"), str)]
    # Records hold more than a comparison takes.
    runs = [{name: r.get(name) for name in OF_RUN} for r in runs if r.get("setting") in moved]
    # By the list, not by the table: the phone's interpreter keeps no order in that.
    keys = [key for key in order if any([r["setting"] == key for r in runs])]
    # The same slack at both: what changed was something else, which is no evidence of slack.
    if all([_same_slack(moved[keys[0]], moved[key]) for key in keys]):
        return [], "no-two-movements"
    if not session.get("standard"):
        return [], "no-standard"
    asked = {"standard": session["standard"], "quantity": "peak-power", "reference": keys[0],
             "drift": "auto", "runs": runs}  # fmt: skip
    try:
        compared: Json = calc_compare.calculate(asked)
    except Refused:
        return [], "cannot-compare"
    rows = []
    for difference in compared["differences"]:
        gain = difference["gain_percent"]
        low, high = gain["lower_95"], gain["upper_95"]
        before, after = moved[difference["from_setting"]], moved[difference["to_setting"]]
        if _same_slack(before, after):
            continue
        if difference["outcome"] == "not-evidence" or low is None or high is None or high <= low:
            continue
        rows.append({
            "engine": _text(session.get("engine")) or _text(session.get("label")) or "-",
            "from_movement_mm": before[0],
            "to_movement_mm": after[0],
            "gain_percent": gain["value"],
            "standard_uncertainty_percent": (high - low) / 2 / NORMAL_95,
            "session": _text(session.get("label")),
        })  # fmt: skip
    return rows, "" if rows else "too-few-runs"


def _same_slack(one: "tuple[float, float]", other: "tuple[float, float]") -> bool:
    """Tell whether two movements differ by no more than their plus-or-minus, taken together.

    Each is a movement with its 95 % half-width [mm]; one that was not noted is that of a movement
    read cold, from memory, unverified. The E_n number of ISO/IEC 17043, at most 1 (clause B.3.1.3
    from memory, unverified); the errors are taken as independent (JCGM 100:2008, 5.1.2).
    """
    gap, u, v = one[0] - other[0], one[1], other[1]
    return gap * gap <= u * u + v * v


def _length(value: object) -> "float | None":
    """Give a length that a strand can move, or None."""
    if not isinstance(value, (int, float)) or isinstance(value, bool):
        return None
    return value if 0 <= value <= MOST_MM else None


def _text(value: object) -> str:
    return value.strip()[:LONGEST] if isinstance(value, str) else ""

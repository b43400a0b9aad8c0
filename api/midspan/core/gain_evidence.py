"""Evidence for the expected gain, out of the dyno sessions kept: a row for each pair of settings.

A session serves where two of its settings carry different movements of the chain, measured at
them, and its runs tell how far the comparison is sure.
"""

from . import calc_compare
from .errors import Refused
from .fields import Form
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
        movement_mm) and runs as "compare" takes them

    Returns
    -------
    dict: rows as "gain" takes its evidence, each with the session it is from; and passed, with why

    Raises
    ------
    Refused : no list of sessions

    Validity
    --------
    Differences against one reference share its scatter; the rows are taken as independent. Few
    runs widen a row: its standard uncertainty is its 95 % half-width over that of a normal.

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
        movement = one.get("movement_mm") if isinstance(one, dict) else None
        if not isinstance(movement, (int, float)) or isinstance(movement, bool):
            continue
        if isinstance(key, str) and 0 <= movement <= MOST_MM:
            moved[key] = movement
            order.append(key)
    given = session.get("runs")
    runs = [r for r in given if isinstance(r, dict)] if isinstance(given, list) else []
    runs = [r for r in runs if isinstance(r.get("setting"), str)]
    # Records hold more than a comparison takes.
    runs = [{name: r.get(name) for name in OF_RUN} for r in runs if r.get("setting") in moved]
    # By the list, not by the table: the phone's interpreter keeps no order in that.
    keys = [key for key in order if any([r["setting"] == key for r in runs])]
    if len(keys) < 2 or len({moved[key] for key in keys}) < 2:
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
        # The same slack at both: what changed was something else, which is no evidence of slack.
        if moved[difference["from_setting"]] == moved[difference["to_setting"]]:
            continue
        if difference["outcome"] == "not-evidence" or low is None or high is None or high <= low:
            continue
        rows.append({
            "engine": _text(session.get("engine")) or _text(session.get("label")) or "-",
            "from_movement_mm": moved[difference["from_setting"]],
            "to_movement_mm": moved[difference["to_setting"]],
            "gain_percent": gain["value"],
            "standard_uncertainty_percent": (high - low) / 2 / NORMAL_95,
            "session": _text(session.get("label")),
        })  # fmt: skip
    return rows, "" if rows else "too-few-runs"


def _text(value: object) -> str:
    return value.strip()[:LONGEST] if isinstance(value, str) else ""

"""A dyno's table brought in, step by step: guess its layout, read its lines, tell its pulls."""

from .dyno_layout import SEPARATORS, guess, roles_of
from .dyno_pulls import CELL_RPM, FALL_RPM, MOST_PULLS, is_state, new_state, told
from .dyno_records import MOST_POINTS
from .dyno_rows import read_lines
from .fields import Form
from .figures import fixed
from .version import VERSION

TYPE_CHECKING = False  # MicroPython has no typing module; type checkers take this as true
if TYPE_CHECKING:
    from .dyno_pulls import Json

STEPS = ("guess", "read")
# Power and torque of a file that are further apart do not go together; from memory, unverified.
POWER_OFF = 0.02
# A chunk of lines, as the phone hands them over one after another.
MOST_CHARACTERS = 400000


def calculate(payload: object) -> dict[str, object]:
    """Guess the layout of a dyno's table, or read a part of it.

    Parameters
    ----------
    payload : step "guess" with text, the beginning of the file; or step "read" with text (whole
        lines), layout (as guessed, or changed), state (as given with the part before; none at
        first) and last (whether nothing follows)

    Returns
    -------
    dict: layout; or state, and with the last part done, as `tell` gives it

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Text in columns, a row a line. A cell within quotes keeps to its line.

    Reference
    ---------
    RFC 4180 for quoted cells.
    """
    form = Form(payload)
    step = form.take_choice("step", STEPS)
    text = form.payload.get("text")
    form.seen.add("text")
    if not isinstance(text, str) or len(text) > MOST_CHARACTERS:
        need = "whole lines of text, at most " + str(MOST_CHARACTERS) + " characters"
        form.refuse("not-text", "text", text, need, "Hand the file over in smaller parts.")
    layout = form.payload.get("layout") if step == "read" else None
    state = form.payload.get("state") if form.has("state") else None
    last = form.take_flag("last", True)
    form.seen.add("layout")
    form.close()
    if step == "read":
        check_layout(form, layout)
    if state is not None and not is_state(state):
        need = "the state that was given with the part before, as it was"
        form.refuse("not-a-state", "state", state, need, "Begin the file again.")
    form.finish()
    assert isinstance(text, str)  # noqa: S101  (finish raised otherwise)
    if step == "guess":
        return {"calc": "dyno-table", "core_version": VERSION, "layout": guess(text)}
    assert isinstance(layout, dict)  # noqa: S101  (finish raised otherwise)
    state = state if isinstance(state, dict) else new_state(1)
    read_lines(state, text, layout)
    done = tell(state, layout) if last else None
    return {"calc": "dyno-table", "core_version": VERSION, "state": state, "done": done}


def check_layout(form: Form, layout: object) -> None:
    """Note what is missing in a layout before anything can be read by it."""
    if not isinstance(layout, dict):
        step = "Have it guessed first."
        form.refuse("missing", "layout", layout, "a layout, as guessed or changed", step)
        return
    separator = layout.get("separator")
    if not isinstance(separator, str) or separator not in SEPARATORS:
        need = "one of " + ", ".join(sorted(SEPARATORS))
        form.refuse("not-a-choice", "layout.separator", separator, need, "Choose.")
    lines = layout.get("header_lines")
    if not isinstance(lines, int) or isinstance(lines, bool) or lines < 0:
        form.refuse("not-whole", "layout.header_lines", lines, "lines before the figures", "Count.")
    heading = layout.get("heading")
    if not isinstance(heading, list) or not isinstance(layout.get("decimal_comma"), bool):
        need = "heading (a list) and decimal_comma (true or false)"
        form.refuse("missing", "layout", "a layout without them", need, "Have it guessed first.")
    roles = roles_of(layout)
    if "speed" not in roles or not ("torque" in roles or "power" in roles):
        need = "a column of engine speed, and one of torque or power"
        step = "Say which columns they are."
        form.refuse("missing", "layout.columns", "columns without them", need, step)
    places = [place for place, _, _ in roles.values()]
    if len(set(places)) < len(places):
        need = "one use for each column"
        form.refuse("given-twice", "layout.columns", "a column twice", need, "Choose another.")


def tell(state: "Json", layout: "Json") -> dict[str, object]:
    """Give the pulls, and an account of every row."""
    pulls = told(state)
    used = sum([int(str(pull["rows_used"])) for pull in pulls])
    text = "Each curve is made of plain means over steps of engine speed of "
    text += str(CELL_RPM) + " rpm or a multiple, at most " + str(MOST_POINTS) + " points. A speed "
    text += "that falls back by " + fixed(FALL_RPM, 0) + " rpm ends a pull; rows of the way down "
    text += "are counted and left out."
    return {
        "pulls": pulls[:MOST_PULLS],
        "more_pulls": max(0, len(pulls) - MOST_PULLS),
        "rows": state["rows"] + state["bad_count"],
        "rows_used": used,
        "rows_down": state["coasting"],
        "bad_count": state["bad_count"],
        "bad_rows": state["bad"],
        "how": text,
        "warnings": _doubts(pulls, layout),
    }


def _doubts(pulls: list[dict[str, object]], layout: "Json") -> list[dict[str, str]]:
    """Say where torque and power of the file do not go together, and other doubts."""
    found = []
    for pull in pulls:
        ratio = pull["power_ratio"]
        if isinstance(ratio, float) and abs(ratio - 1) > POWER_OFF:
            text = "Power in the file is " + fixed(ratio, 3) + " times torque times speed: check "
            text += "the units, and whether only one of the two is corrected. Torque is used."
            found.append({"code": "power-against-torque", "text": text})
            break
    if layout.get("looks_corrected"):
        text = "The headings look like corrected figures: say by which standard."
        found.append({"code": "looks-corrected", "text": text})
    if not [pull for pull in pulls if not pull["short"]]:
        text = "No pull was found: check which column is the engine speed, and its unit."
        found.append({"code": "no-pull", "text": text})
    return found

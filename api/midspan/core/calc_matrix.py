"""A matrix of rockers and cam settings to test, in the order of least work."""

from . import limits
from .fields import Form
from .instrument import assumption
from .trial_order import EXACT, Costs, best_order, change, least, total
from .version import VERSION
from .warnings import cautions, warning

MOST_ROCKERS, MOST_SETTINGS = 6, 9
# Minutes for a change where none is given: from memory, unverified, a pushrod engine on a stand.
SWAP_MIN, MOVE_MIN = 90.0, 45.0


def calculate(payload: object) -> dict[str, object]:
    """Put the tests of a matrix in the order of least work.

    Parameters
    ----------
    payload : rockers (their names, the present one first), settings_deg (cam moves, the present
        one first), leave_out (list of rocker and left_out_deg), swap_min and move_min (work of a
        change), repeat_baseline (whether the first test comes again at the end)

    Returns
    -------
    dict: order (place, rocker, setting_deg, change_min, what changes), total_min, swaps, moves,
    proven (whether no order needs less), assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Work adds up, and does not depend on which rocker or setting follows which.

    Reference
    ---------
    See `trial_order`. A baseline repeated at the end, against drift: NIST/SEMATECH 2.3.3.1.2,
    itl.nist.gov.
    """
    form = Form(payload)
    rockers = _take_rockers(form)
    settings = form.take_numbers("settings_deg", MOST_SETTINGS)
    if settings is not None and len(set(settings)) < len(settings):
        need = "each setting once, the present one first"
        form.refuse("conflict", "settings_deg", "a setting twice", need, "Leave one out.")
    out = _take_left_out(form, rockers, settings or [])
    assumed: list[dict[str, object]] = []
    swap = _take_cost(form, "swap_min", SWAP_MIN, assumed)
    move = _take_cost(form, "move_min", MOVE_MIN, assumed)
    back = form.take_flag("repeat_baseline", True)
    form.close()
    form.finish()
    assert settings is not None  # noqa: S101  (finish raised if it was refused)
    cells = [(r, s) for r in range(len(rockers)) for s in range(len(settings))]
    cells = [cell for cell in cells if cell not in out]
    costs = Costs(swap, move)
    order, proven = best_order(costs, cells, back)
    rows: list[dict[str, object]] = []
    for i, (r, s) in enumerate(order):
        before = order[i - 1] if i else (r, s)
        rows.append(
            {
                "place": i + 1,
                "rocker": rockers[r],
                "setting_deg": settings[s],
                "change_min": change(costs, before, (r, s)),
                "swap": before[0] != r,
                "move": before[1] != s,
                "baseline": (r, s) == (0, 0),
            }
        )
    return {
        "calc": "matrix",
        "core_version": VERSION,
        "order": rows,
        "total_min": total(costs, order),
        "least_min": least(costs, cells, back),
        "swaps": len([1 for row in rows if row["swap"]]),
        "moves": len([1 for row in rows if row["move"]]),
        "proven": proven,
        "assumptions": assumed,
        "warnings": _doubts(back, len(cells), proven),
        "cautions": cautions("turn-by-hand", "valve-contact", "hot"),
    }


def _take_rockers(form: Form) -> list[str]:
    need = "a list of 1 to " + str(MOST_ROCKERS) + " names, each once"
    value = form.payload["rockers"] if form.has("rockers") else None
    good = isinstance(value, list) and 0 < len(value) <= MOST_ROCKERS
    if good and isinstance(value, list):
        good = all([isinstance(one, str) and 0 < len(one) <= 60 for one in value])
        if good and len(set(value)) == len(value):
            return [str(one) for one in value]
    code = "missing" if value is None else "not-a-list"
    form.refuse(code, "rockers", value, need, "Name the present one first.")
    return []


def _take_left_out(form: Form, rockers: list[str], settings: list[float]) -> set[tuple[int, int]]:
    found = set()
    for part in form.take_forms("leave_out", MOST_ROCKERS * MOST_SETTINGS, required=False):
        rocker = part.take_choice("rocker", tuple(rockers) or ("",))
        setting = part.take_number("left_out_deg")
        part.close()
        if setting is not None and settings and setting not in settings:
            need = "one of settings_deg"
            part.refuse("not-a-choice", "left_out_deg", setting, need, "Choose one of these.")
        elif rocker in rockers and setting is not None and settings:
            cell = (rockers.index(str(rocker)), settings.index(setting))
            if cell == (0, 0):
                need = "a test other than the baseline"
                step = "The first rocker at the first setting is what the others are held against."
                part.refuse("conflict", "left_out_deg", setting, need, step)
            found.add(cell)
    return found


def _take_cost(form: Form, name: str, usual: float, assumed: list[dict[str, object]]) -> float:
    given = form.take_number(name, required=False)
    if given is not None:
        return given
    text = "Work of a change, assumed: none was given."
    assumed.append(assumption(name, usual, limits.MEMORY, text))
    return usual


def _doubts(back: bool, tests: int, proven: bool) -> list[dict[str, object]]:
    found = []
    if not back:
        text = "Without the baseline again at the end, drift of engine or dyno is not told from "
        text += "the effect of the changes."
        found.append(warning("no-repeat", "repeat_baseline", 0, text))
    if tests == 1:
        text = "There is nothing to compare the baseline with."
        found.append(warning("one-test", "rockers", 1, text))
    if not proven:
        text = "Beyond {} tests not every order is weighed: this one may need a little more work "
        text += "than the best."
        found.append(warning("not-proven", "rockers", tests, text.format(EXACT)))
    return found

"""The rows of a dyno table read one by one: what is in each, or why it cannot be used."""

from .dyno_layout import cells_of, figure, lines_of, roles_of
from .dyno_pulls import add_bad, add_row
from .dyno_units import RANGES, torque_of

TYPE_CHECKING = False  # MicroPython has no typing module; type checkers take this as true
if TYPE_CHECKING:
    from .dyno_pulls import Json

ASIDE = ("air", "pressure", "humidity", "oil", "water")


def read_lines(state: "Json", text: str, layout: "Json") -> None:
    """Read whole lines and add them to the state.

    Parameters
    ----------
    state : as `dyno_pulls.new_state` gives it; its line is that of the first of these
    text : whole lines
    layout : as `dyno_layout.guess` gives it, or as changed by the user
    """
    # In the order of the columns: not every interpreter keeps that of a dict.
    roles = sorted([(at, role, by, more) for role, (at, by, more) in roles_of(layout).items()])
    separator, comma = layout["separator"], layout["decimal_comma"]
    heading = layout["heading"]
    lines = lines_of(text)
    if lines and not lines[-1]:
        lines.pop()  # what follows the last line's end
    for line in lines:
        number = state["line"]
        state["line"] += 1
        if number <= layout["header_lines"]:
            continue
        if not line.strip(" \t\x00"):
            state["open"] = False  # a blank line ends a pull
            continue
        cells = cells_of(line, separator)
        if heading and [cell[:60] for cell in cells] == heading:
            state["open"] = False  # so does the heading again
            continue
        why, run, figures = read_cells(cells, roles, comma)
        if why:
            add_bad(state, number, line, why)
        else:
            add_row(state, number, run, figures)


def read_cells(
    cells: list[str], roles: list[tuple[int, str, float, float]], comma: bool
) -> tuple[str, str, dict[str, float]]:
    """Read the cells of a row.

    Returns
    -------
    why it cannot be used ("" if it can), what the run column says, and the figures in our units
    """
    figures: dict[str, float] = {}
    run = ""
    for place, role, factor, offset in roles:
        cell = cells[place] if place < len(cells) else ""
        if role == "run":
            run = cell[:40]
            continue
        value = figure(cell, comma)
        if value is None:
            if role in ASIDE and not cell:
                continue  # air that is not told in every row
            what = "no number for " + role if cell else role + " is missing"
            return what, "", {}
        value = value * factor + offset
        low, high = RANGES[role]
        if not low <= value <= high:
            return role + " is out of range", "", {}
        figures[role] = value
    if "torque" not in figures:
        if figures["speed"] <= 0:
            return "no speed, so power tells no torque", "", {}
        figures["torque"] = torque_of(figures["power"], figures["speed"])
    return "", run, figures

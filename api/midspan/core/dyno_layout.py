"""How a dyno's table is laid out: guessed from its beginning, shown, and changed at will."""

from .dyno_units import CORRECTED_WORDS, ROLES, UNITS, role_of, unit_of

SEPARATORS = {"tab": "\t", "semicolon": ";", "comma": ",", "bar": "|", "blank": " "}
MOST_COLUMNS, LOOKED_AT, SHOWN = 200, 80, 5
QUOTE = '"'


def lines_of(text: str) -> list[str]:
    """Cut text into lines, whatever ends them; a mark at the very beginning is left off."""
    if text[:1] == "\ufeff":
        text = text[1:]
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")


def cells_of(line: str, separator: str) -> list[str]:
    """Cut a line into cells; a quoted cell may hold the separator."""
    if separator == "blank":
        return [cell for cell in line.replace("\t", " ").split(" ") if cell]
    sign = SEPARATORS[separator]
    if QUOTE not in line:
        return [cell.strip(" ") for cell in line.split(sign)]
    cells, cell, quoted = [], "", False
    for one in line:
        if one == QUOTE:
            quoted = not quoted
        elif one == sign and not quoted:
            cells.append(cell.strip(" "))
            cell = ""
        else:
            cell += one
    return cells + [cell.strip(" ")]


def figure(cell: str, comma: bool) -> float | None:
    """Read a cell as a number, or give None."""
    if comma:
        if "." in cell:
            return None
        cell = cell.replace(",", ".")
    # Words that some readers take for numbers begin or end with a letter.
    if not cell or cell[-1] not in "0123456789." or "_" in cell or len(cell) > 40:
        return None
    if cell[0] not in "0123456789.+-":
        return None
    try:
        value = float(cell)
    except ValueError:
        return None
    return value if -1e9 < value < 1e9 else None


def guess(text: str) -> dict[str, object]:
    """Guess the layout of a table.

    Parameters
    ----------
    text : its beginning, whole lines

    Returns
    -------
    dict: separator, decimal_comma, header_lines, heading, columns (each column, name, role, unit,
    by, samples), looks_corrected
    """
    every = lines_of(text)
    lines = [line for line in every if line.strip(" \t")][:LOOKED_AT]
    separator = _separator(lines)
    comma = separator != "comma" and _comma(lines)
    first, names, units = _heading(every, separator, comma)
    body = [cells_of(line, separator) for line in every[first:] if line.strip(" \t")][:LOOKED_AT]
    width = min(max([len(row) for row in body] + [len(names)] + [0]), MOST_COLUMNS)
    taken: list[str] = []
    columns = []
    for place in range(width):
        name = names[place] if place < len(names) else ""
        unit_word = units[place] if place < len(units) else ""
        cells = [row[place] for row in body if place < len(row)]
        read = [figure(cell, comma) for cell in cells]
        values = [value for value in read if value is not None]
        heading = (name + " " + unit_word).strip(" ")
        role = role_of(name) or role_of(unit_word) if heading else None
        if role in taken or (not values and role != "run"):
            role = None
        unit, by = unit_of(role, heading, values) if role else ("", "")
        if role:
            taken.append(role)
        columns.append({"column": place + 1, "name": heading[:60], "role": role, "unit": unit,
                        "by": by, "samples": [cell[:20] for cell in cells[:SHOWN]]})  # fmt: skip
    if not names:
        _by_size(columns, body, comma)
    said = " ".join([str(c["name"]).lower() for c in columns if c["role"] in ("torque", "power")])
    return {
        "separator": separator,
        "decimal_comma": comma,
        "header_lines": first,
        "heading": [name[:60] for name in names],
        "columns": columns,
        "looks_corrected": any([word in said for word in CORRECTED_WORDS]),
    }


def roles_of(layout: dict[str, object]) -> dict[str, tuple[int, float, float]]:
    """Give place, factor and offset of each column that is used, by what it is."""
    found = {}
    columns = layout.get("columns")
    for column in columns if isinstance(columns, list) else []:
        if not isinstance(column, dict):
            continue
        role, unit, place = column.get("role"), column.get("unit"), column.get("column")
        if not isinstance(unit, str) or not isinstance(place, int) or isinstance(place, bool):
            continue
        if not isinstance(role, str) or role not in ROLES:
            continue
        if unit in UNITS[role] and 1 <= place <= MOST_COLUMNS:
            factor, offset = UNITS[role][unit]
            found[role] = (place - 1, factor, offset)
    return found


def _separator(lines: list[str]) -> str:
    """Choose the sign that cuts most lines into the same number of cells, two or more."""
    best, most = "blank", 0
    for name in ("tab", "semicolon", "bar", "comma"):
        counts = [len(cells_of(line, name)) for line in lines]
        wide = [count for count in counts if count > 1]
        if wide:
            same = max([wide.count(count) for count in wide])
            if same > most:
                best, most = name, same
        if most * 2 > len(lines):
            break  # a comma may be within the numbers: the others go first
    return best if most * 2 >= len(lines) and most else "blank"


def _comma(lines: list[str]) -> bool:
    """Tell whether digits stand on both sides of a comma more often than of a point."""
    found = {",": 0, ".": 0}
    for line in lines:
        for i in range(1, len(line) - 1):
            if line[i] in found and line[i - 1].isdigit() and line[i + 1].isdigit():
                found[line[i]] += 1
    return found[","] > found["."]


def _heading(every: list[str], separator: str, comma: bool) -> tuple[int, list[str], list[str]]:
    """Find the line where the figures begin, and the names and units above them."""
    above: list[list[str]] = []
    for i in range(len(every)):
        cells = cells_of(every[i], separator)
        full = [cell for cell in cells if cell]
        numbers = [cell for cell in full if figure(cell, comma) is not None]
        if len(numbers) > 1 and len(numbers) * 2 >= len(full):
            wide = [row for row in above if len(row) * 2 > len(cells) and len(row) > 1]
            if not wide:
                return i, [], []
            if len(wide) > 1 and _are_units(wide[-1]):
                return i, wide[-2], wide[-1]
            return i, wide[-1], []
        if full:
            above.append(cells)
    return len(every), above[-1] if above else [], []


def _are_units(cells: list[str]) -> bool:
    """Tell whether a row holds units: short words, none of them the name of a column."""
    full = [cell for cell in cells if cell]
    short = [cell for cell in full if len(cell.strip("[]()")) <= 6]
    return bool(full) and len(short) == len(full)


def _by_size(columns: list[dict[str, object]], body: list[list[str]], comma: bool) -> None:
    """Without a heading, take the column that rises like an engine's speed for it."""
    for column in columns:
        place = int(str(column["column"])) - 1
        read = [figure(row[place], comma) for row in body if place < len(row)]
        values = [value for value in read if value is not None]
        if len(values) < 5 or min(values) < 300 or max(values) > 25000:
            continue
        rises = len([1 for a, b in zip(values, values[1:]) if b > a])
        if rises * 10 >= 7 * (len(values) - 1) and max(values) - min(values) >= 100:
            column["role"], column["unit"], column["by"] = "speed", "rpm", "size"
            return

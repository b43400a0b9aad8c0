"""A table out of pasted or imported text: which sign parts the columns, and what each row says.

Takes CSV as in RFC 4180, and what people paste: tabs, semicolons, blanks, a decimal comma, units
behind the numbers, a header row. Rows that cannot be read are told one by one; the others stay.
"""

from collections import namedtuple

MOST_CHARACTERS = 60000
# A cell longer than this is no number.
LONGEST_NUMBER = 40
QUOTE = '"'
DIGITS = "0123456789"
# What may stand behind a number, besides signs that are no letters of ours.
UNITS = ("", "mm", "in", "inch", "deg", '"')
ANGLE_WORDS = ("angle", "deg", "crank", "cam", "wheel", "grad", "winkel", "kurbel")
LIFT_WORDS = ("lift", "dial", "hub", "rise", "valve", "lobe", "tappet", "mm", "inch", "ventil")


class Row(namedtuple("Row", ("line", "cells"))):
    """A row of the text: the line it starts on, from 1, and its cells."""

    __slots__ = ()


class Reading(namedtuple("Reading", ("line", "angle", "lift"))):
    """A row that could be read: its line, and the two numbers as they stand there."""

    __slots__ = ()


class Pasted(
    namedtuple("Pasted", ("rows", "bad", "separator", "comma", "angle", "lift", "header"))
):
    """A table read: Readings; what could not be read, each a dict of line, text and why; the
    sign between columns, whether the decimal sign is a comma, which columns were taken (from 1),
    and the header's cells.
    """

    __slots__ = ()


def parse(text: str, angle: int | None = None, lift: int | None = None) -> Pasted:
    """Read a table of angle and lift.

    Parameters
    ----------
    text : the table
    angle, lift : their columns, from 1; guessed where not given

    Returns
    -------
    Pasted, its numbers in the units of the text [by field name]

    Raises
    ------
    none

    Validity
    --------
    One decimal sign in the whole text; no sign between thousands.

    Reference
    ---------
    RFC 4180 for quoted cells.
    """
    # Blanks are taken off one by one: what counts as one differs between interpreters.
    for sign, plain in (("\r\n", "\n"), ("\r", "\n"), ("\u2212", "-"), ("\u00a0", " ")):
        text = text.replace(sign, plain)
    lines = [line for line in text.split("\n") if line.strip(" \t")]
    separator, comma = _signs(lines)
    rows = _quoted_rows(text, separator) if separator != " " else _blank_rows(text)
    if separator == ",":
        comma = _comma([cell for row in rows for cell in row.cells])
    header = rows[0].cells if rows and not any([_has_number(c) for c in rows[0].cells]) else []
    body = rows[1:] if header else rows
    tables = [[number(cell, comma) for cell in row.cells] for row in body]
    first, second = _columns(header, tables, angle, lift)
    good, bad = [], []
    for row, numbers in zip(body, tables):
        why = _fault(row.cells, numbers, first, second)
        if why:
            said = " ".join(row.cells)
            bad.append({"line": row.line, "text": said[:80], "why": why})
        else:
            good.append(Reading(row.line, numbers[first], numbers[second]))
    return Pasted(good, bad, separator, comma, first + 1, second + 1, header)


def number(cell: str, comma: bool) -> float | None:
    """Read one cell as a number, a unit behind it left off.

    Parameters
    ----------
    cell : its text
    comma : whether the decimal sign is a comma

    Returns
    -------
    the number [as the text has it], or None

    Raises
    ------
    none

    Validity
    --------
    No sign between thousands, no fraction; size below 1e9.

    Reference
    ---------
    none
    """
    cell = cell.strip(" ")
    if not 0 < len(cell) <= LONGEST_NUMBER:
        return None
    end = 0
    for sign in cell:
        if sign not in DIGITS and sign not in "+-.,":
            break
        end += 1
    digits, unit = cell[:end], cell[end:].strip(" ")
    power = ""
    if unit[:1] in ("e", "E"):  # as spreadsheets write small numbers
        power, unit = unit[1:], ""
        if not (power[1:] if power[:1] in ("+", "-") else power).isdigit() or len(power) > 3:
            return None
    plain = [sign for sign in unit if sign < "\x80"]
    if unit.lower() not in UNITS and plain:
        return None
    if comma and "." in digits:
        return None
    if comma:
        digits = digits.replace(",", ".")
    bare = digits[1:] if digits[:1] in ("+", "-") else digits
    known = [sign for sign in bare if sign in DIGITS]
    if not known or len(bare) - len(known) > 1 or len(bare) != len(known) + bare.count("."):
        return None
    value = float(digits + "e" + power) if power else float(digits)
    return value if -1e9 < value < 1e9 else None


def _has_number(cell: str) -> bool:
    return number(cell, False) is not None or number(cell, True) is not None


def _signs(lines: list[str]) -> tuple[str, bool]:
    """Guess what parts the columns, and whether the decimal sign is a comma."""
    most = (len(lines) + 1) // 2
    for sign in ("\t", ";"):
        if len([1 for line in lines if sign in line]) >= most and lines:
            return sign, _comma(lines)
    if len([1 for line in lines if "," in line]) >= most and lines:
        # A comma within a number beside a blank between two of them is a decimal comma.
        apart = [_words(line) for line in lines]
        plain = [p for p in apart if len(p) > 1 and all([number(c, True) is not None for c in p])]
        if len(plain) < most or any(["." in line for line in lines]):
            return ",", False
    return " ", _comma(lines)


def _comma(texts: list[str]) -> bool:
    """Tell whether digits stand behind a comma more often than behind a point."""
    found = {",": 0, ".": 0}
    for text in texts:
        before = ""
        for sign in text:
            if before in (",", ".") and sign in DIGITS:
                found[before] += 1
            before = sign
    return found[","] > found["."]


def _words(line: str) -> list[str]:
    return [word for word in line.replace("\t", " ").split(" ") if word]


def _blank_rows(text: str) -> list[Row]:
    lines = text.split("\n")
    return [Row(i + 1, _words(lines[i])) for i in range(len(lines)) if _words(lines[i])]


def _quoted_rows(text: str, separator: str) -> list[Row]:
    """Cut the text into cells; a quoted cell may hold the separator, line ends and, doubled,
    the quotation mark.
    """
    rows, cells, cell = [], [], ""
    line = start = 1
    quoted = ended = False  # within a quoted cell; just behind a mark that may end it
    for sign in text + "\n":
        if quoted and not ended:
            if sign == QUOTE:
                ended = True
            else:
                cell += sign
                line += sign == "\n"
            continue
        if ended and sign == QUOTE:
            cell, ended = cell + QUOTE, False
            continue
        if ended:
            quoted = ended = False
        if sign == QUOTE and not cell.strip(" "):
            quoted, cell = True, ""
        elif sign == separator or sign == "\n":
            cells.append(cell.strip(" "))
            cell = ""
        else:
            cell += sign
        if sign == "\n":
            if any(cells):
                rows.append(Row(start, cells))
            line += 1
            cells, start = [], line
    if quoted and (cell or cells):  # a mark that never ends: the rest of the text is one cell
        rows.append(Row(start, cells + [cell]))
    return rows


def _columns(
    header: list[str], tables: list[list[float | None]], angle: int | None, lift: int | None
) -> tuple[int, int]:
    """Choose the columns: those asked for, those whose heading says so, else the first two."""
    named: list[int | None] = [None, None]
    for place in range(len(header)):
        said = header[place].lower()
        for which, known in ((1, LIFT_WORDS), (0, ANGLE_WORDS)):
            if named[which] is None and any([word in said for word in known]):
                if which == 1 and any([word in said for word in ANGLE_WORDS[:2]]):
                    continue  # "lobe angle", "valve deg"
                named[which] = place
                break
    width = max([len(row) for row in tables] + [len(header), 2])
    half = len(tables) / 2
    full = [
        place
        for place in range(width)
        if len([1 for row in tables if place < len(row) and row[place] is not None]) > half
    ]
    first = angle - 1 if angle else named[0]
    second = lift - 1 if lift else named[1]
    if first is None:
        free = [place for place in full if place != second]
        if len(free) + (second is not None) > 2:
            free = [place for place in free if not _counts(tables, place)]
        rising = [place for place in free if _steady(tables, place)]
        first = (rising or free or [0 if second != 0 else 1])[0]
    if second is None:
        free = [place for place in full if place != first]
        if len(free) > 1:
            free = [place for place in free if not _counts(tables, place)]
        second = (free or [1 if first != 1 else 0])[0]
    return first, second


def _steady(tables: list[list[float | None]], place: int) -> bool:
    """Tell whether a column only rises or only falls but for one turn of a wheel: an angle."""
    values = [row[place] for row in tables if place < len(row) and row[place] is not None]
    steps = [b - a for a, b in zip(values, values[1:]) if a is not None and b is not None]
    up = len([1 for step in steps if step > 0])
    down = len([1 for step in steps if step < 0])
    return len(steps) > 2 and (up + down) == len(steps) and min(up, down) <= len(steps) // 20 + 2


def _counts(tables: list[list[float | None]], place: int) -> bool:
    """Tell whether a column only numbers the rows."""
    values = [row[place] for row in tables if place < len(row)]
    return values == [i + 1 for i in range(len(values))]


def _fault(cells: list[str], numbers: list[float | None], first: int, second: int) -> str:
    """Say why a row cannot be read; nothing if it can."""
    if max(first, second) >= len(cells):
        return "only {} of the {} columns".format(len(cells), max(first, second) + 1)
    if first == second:
        return "angle and lift are to be two columns"
    for place, what in ((first, "angle"), (second, "lift")):
        if numbers[place] is None:
            return "no number for the " + what if cells[place] else "the " + what + " is missing"
    return ""

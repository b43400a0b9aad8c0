"""What the docstrings of the core say of its relations: read from the source, by service and build.

The phone carries the core without its docstrings; its build asks this of the whole files, in the
phone's own interpreter.
"""

import json

_QUOTES = '"""'
_SECTIONS = ("Parameters", "Returns", "Raises", "Validity", "Reference")


def relations(module: str, source: str) -> list[dict[str, str]]:
    """Read every relation of a module from its source text.

    Parameters
    ----------
    module : its name
    source : its whole text

    Returns
    -------
    list of dicts: relation (module and function), gives, formula, takes, result, validity, source;
    those functions that have every section of a relation's docstring, but none that reads a form

    Raises
    ------
    none

    Validity
    --------
    Functions at the left edge whose docstring begins on its first line, as ours do.

    Reference
    ---------
    none
    """
    found = []
    lines = source.split("\n")
    at = 0
    while at < len(lines):
        line = lines[at]
        at += 1
        if not line.startswith("def ") or line.startswith("def _"):
            continue
        name = line[4 : line.index("(")]
        while not lines[at - 1].split("  #")[0].endswith(":"):
            at += 1
        begun = lines[at].strip()
        if not begun.startswith(_QUOTES):
            continue
        text = [begun[3:]]
        while not text[-1].endswith(_QUOTES) and at + 1 < len(lines):
            at += 1
            text.append(lines[at][4:])
        text[-1] = text[-1][:-3]
        told = _told(text)
        if told is not None and name != "calculate" and not name.startswith("take_"):
            told["relation"] = module + "." + name
            found.append(told)
    return found


def _told(lines: list[str]) -> dict[str, str] | None:
    """Give what a docstring says by its parts; None where it is not that of a relation."""
    parts: dict[str, list[str]] = {"": []}
    part = ""
    for i, line in enumerate(lines):
        ruled = i + 1 < len(lines) and lines[i + 1].startswith("---")
        if ruled and line in _SECTIONS:
            part = line
            parts[part] = []
        elif not (line.startswith("---") and lines[i - 1] == part):
            parts[part].append(line)
    for section in _SECTIONS:
        if section not in parts:
            return None
    said = _paragraphs(parts[""])
    return {
        "gives": said[0],
        "formula": "\n".join(said[1:]),
        "takes": "\n".join(_items(parts["Parameters"])),
        "result": " ".join(_paragraphs(parts["Returns"])),
        "validity": " ".join(_paragraphs(parts["Validity"])),
        "source": " ".join(_paragraphs(parts["Reference"])),
    }


def _paragraphs(lines: list[str]) -> list[str]:
    """Join what belongs together, cut where a line is empty."""
    found = [""]
    for line in lines:
        if line.strip():
            found[-1] = (found[-1] + " " + line.strip()).strip()
        elif found[-1]:
            found.append("")
    return [text for text in found if text] or [""]


def _items(lines: list[str]) -> list[str]:
    """Join what goes on to the item it belongs to: one has a name and a colon."""
    found: list[str] = []
    for line in lines:
        if " : " in line or not found:
            found.append(line.strip())
        elif line.strip():
            found[-1] += " " + line.strip()
    return found


def told(files_json: str) -> str:
    """Read the relations of many modules, from JSON text to JSON text.

    Parameters
    ----------
    files_json : JSON object of module name to source text

    Returns
    -------
    JSON list, as `relations` gives it, in the order of the modules' names

    Raises
    ------
    ValueError : no JSON

    Validity
    --------
    As `relations`.

    Reference
    ---------
    none
    """
    files = json.loads(files_json)
    found = []
    for module in sorted(files):
        found.extend(relations(module, files[module]))
    # Row by row: MicroPython's writer slows with the square of its length.
    return "[" + ", ".join([json.dumps(row) for row in found]) + "]"

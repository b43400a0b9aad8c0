"""A big dyno table read as it comes in: whole chunks by numpy, chunks with trouble row by row.

Both ways add to the same state by the same rules as `core.dyno_pulls`, so the answer is the same.
"""

import io
from collections.abc import Iterator
from typing import IO, Any

import numpy as np

from midspan.core.dyno_layout import SEPARATORS, guess, roles_of
from midspan.core.dyno_pulls import CELL_RPM, FALL_RPM, new_pull, new_state
from midspan.core.dyno_rows import read_lines
from midspan.core.dyno_table import check_layout, tell
from midspan.core.dyno_units import AIR_FIELDS, RANGES, power_of, torque_of
from midspan.core.fields import Form
from midspan.core.version import VERSION

CHUNK_BYTES = 1 << 19
# A line longer than this is no row of a table.
LONGEST_LINE = 1 << 20
Layout = dict[str, Any]


def read(source: IO[bytes], layout: Layout | None = None) -> Iterator[dict[str, Any]]:
    """Read a table, and tell how far it has come after each chunk.

    Parameters
    ----------
    source : the file; its text is UTF-8, or Latin-1 where it is not
    layout : as guessed before and changed by the user; guessed from the beginning if not given

    Yields
    ------
    {"bytes", "rows"} after each chunk, then one with "layout" and "done", as `core.dyno_table`;
    done is None where no columns of speed and torque or power could be made out
    """
    state: dict[str, Any] = new_state(1)
    read_bytes = 0
    for chunk in _whole_lines(source):
        text = _text(chunk)
        if layout is None:
            layout = guess(text[:200_000])
        if not readable(layout):
            break
        if not _quickly(state, text, layout):
            read_lines(state, text, layout)
        read_bytes += len(chunk)
        yield {"bytes": read_bytes, "rows": state["rows"]}
    layout = guess("") if layout is None else layout
    done = tell(state, layout) if readable(layout) else None
    yield {"layout": layout, "done": done, "core_version": VERSION}


def readable(layout: Layout) -> bool:
    """Tell whether anything can be read by a layout."""
    form = Form({})
    check_layout(form, layout)
    return not form.problems


def _whole_lines(source: IO[bytes]) -> Iterator[bytes]:
    rest = b""
    while block := source.read(CHUNK_BYTES):
        block = rest + block
        cut = block.rfind(b"\n") + 1
        if cut == 0 and len(block) > LONGEST_LINE:
            cut = len(block)
        rest = block[cut:]
        if cut:
            yield block[:cut]
    if rest:
        yield rest


def _text(chunk: bytes) -> str:
    try:
        return chunk.decode()
    except UnicodeDecodeError:
        return chunk.decode("latin-1")


def _quickly(state: dict[str, Any], text: str, layout: Layout) -> bool:
    """Add a chunk at once; False, with nothing added, if there is anything unusual in it."""
    roles = roles_of(layout)
    sign = SEPARATORS[layout["separator"]]
    if state["line"] <= layout["header_lines"] or "run" in roles or '"' in text or "_" in text:
        return False
    if "\r" in text:
        text = text.replace("\r\n", "\n")
    if "\r" in text or "\n\n" in text or text.startswith("\n"):
        return False
    if layout["decimal_comma"]:
        if "." in text or sign == ",":
            return False
        text = text.replace(",", ".")
    names = list(roles)
    places = [roles[name][0] for name in names]
    try:
        read = np.loadtxt(
            io.StringIO(text), delimiter=None if sign == " " else sign, usecols=places,
            comments=None, ndmin=2,
        )  # fmt: skip
    except (ValueError, IndexError):
        return False
    lines = text.count("\n") + (not text.endswith("\n"))
    if len(read) != lines or not np.isfinite(read).all() or (np.abs(read) >= 1e9).any():
        return False
    figures: dict[str, Any] = {}
    for at, name in enumerate(names):
        _, factor, offset = roles[name]
        values = read[:, at] * factor + offset
        low, high = RANGES[name]
        if not (values.min() >= low and values.max() <= high):
            return False
        figures[name] = values
    if "torque" not in figures:
        if figures["speed"].min() <= 0:
            return False
        figures["torque"] = torque_of(figures["power"], figures["speed"])
    _add(state, figures, lines)
    return True


def _add(state: dict[str, Any], figures: dict[str, Any], lines: int) -> None:
    """Do what `core.dyno_pulls.add_row` does for each row, for stretches of rows at once."""
    first = state["line"]
    state["line"] += lines
    state["rows"] += lines
    speed = figures["speed"]
    at = 0
    while at < lines:
        pull: dict[str, Any] | None = None
        if state["pulls"] and state["open"]:
            pull = state["pulls"][-1]
        if pull is not None and pull["run"]:
            pull = None
        if pull is not None and state["falling"]:
            at, pull = _down(state, pull, speed, at)
            if at >= lines:
                return
        if pull is None:
            pull = dict[str, Any](new_pull(first + at, ""))
            pull["low"] = pull["high"] = float(speed[at])
            state["pulls"].append(pull)
            state["open"], state["falling"] = True, False
        part = speed[at:]
        highest = np.maximum(np.maximum.accumulate(part), pull["high"])
        falls = part < highest - FALL_RPM
        count = int(falls.argmax()) if falls.any() else len(part)
        if count:
            _into(pull, first, at, at + count, figures)
            at += count
        if at < lines:
            if speed[at] < (pull["low"] + pull["high"]) / 2:
                state["open"] = False  # from one row to the next: another pull
            else:
                state["falling"], state["low"] = True, float(speed[at])
                state["coasting"] += 1
                at += 1


def _down(
    state: dict[str, Any], pull: dict[str, Any], speed: Any, at: int  # noqa: ANN401
) -> tuple[int, dict[str, Any] | None]:  # fmt: skip
    """Count rows of the way down; give where it ends, and the pull that goes on there, if any."""
    part = speed[at:]
    lowest = np.minimum(np.minimum.accumulate(part), state["low"])
    middle = (pull["low"] + pull["high"]) / 2
    again = part >= pull["high"]
    other = (part > lowest + FALL_RPM) & (lowest < middle)
    ends = again | other
    count = int(ends.argmax()) if ends.any() else len(part)
    state["coasting"] += count
    if count == len(part):
        state["low"] = float(lowest[-1])
        return at + count, pull
    if again[count]:
        state["low"] = float(lowest[count])
        state["falling"] = False
        return at + count, pull
    return at + count, None


def _into(pull: dict[str, Any], first: int, start: int, end: int, figures: dict[str, Any]) -> None:
    speed, torque = figures["speed"][start:end], figures["torque"][start:end]
    pull["last_line"] = first + end - 1
    pull["rows"] += end - start
    pull["low"] = min(pull["low"], float(speed.min()))
    pull["high"] = max(pull["high"], float(speed.max()))
    keys = (speed // CELL_RPM).astype(np.int64)
    low = int(keys.min())
    counts = np.bincount(keys - low)
    speeds = np.bincount(keys - low, speed)
    torques = np.bincount(keys - low, torque)
    cells = pull["cells"]
    for i in np.flatnonzero(counts):
        cell = cells.setdefault(str(low + int(i)), [0, 0.0, 0.0])
        cell[0] += int(counts[i])
        cell[1] += float(speeds[i])
        cell[2] += float(torques[i])
    for role in AIR_FIELDS:
        if role in figures:
            sums = pull["air"].setdefault(role, [0, 0.0])
            sums[0] += end - start
            sums[1] += float(figures[role][start:end].sum())
    if "power" in figures:
        sums = pull["power"]
        sums[0] += end - start
        sums[1] += float(figures["power"][start:end].sum())
        worked: Any = power_of(torque, speed)
        sums[2] += float(worked.sum())

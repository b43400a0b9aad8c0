"""A chunk of a dyno table added at once by numpy, by the rules of `core.dyno_pulls`."""

import io
from typing import Any

import numpy as np

from midspan.core.dyno_layout import SEPARATORS, roles_of
from midspan.core.dyno_pulls import CELL_RPM, FALL_RPM, new_pull
from midspan.core.dyno_units import AIR_FIELDS, RANGES, power_of, torque_of


def add_chunk(state: dict[str, Any], text: str, layout: dict[str, Any]) -> bool:
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

"""Rows of a dyno table put into pulls, and each pull reduced to a curve of its means.

Every row adds to a cell of 10 rpm: how many, sum of speed, sum of torque. The cells are joined into
at most 400 points, so a point is the plain mean of its rows and none counts twice or is lost.
"""

from .dyno_records import MOST_POINTS
from .dyno_units import AIR_FIELDS, power_of

TYPE_CHECKING = False  # MicroPython has no typing module; type checkers take this as true
if TYPE_CHECKING:
    from typing import Any

    Json = dict[str, Any]

CELL_RPM = 10
# A speed that falls back by so much ends a pull; from memory, unverified: more than a dyno's own
# noise.
FALL_RPM = 200.0
# Fewer rows, or a smaller span, make no pull; from memory, unverified.
LEAST_ROWS, LEAST_RPM = 5, 300.0
MOST_LISTED = 1000
MOST_PULLS = 200


def new_state(line: int) -> dict[str, object]:
    """Give the state before the first row: plain JSON, so that it can be handed on."""
    return {"line": line, "pulls": [], "bad": [], "bad_count": 0, "rows": 0, "coasting": 0,
            "open": False, "falling": False, "low": 0.0}  # fmt: skip


def new_pull(line: int, run: str) -> dict[str, object]:
    """Give a pull without rows."""
    return {"first_line": line, "last_line": line, "rows": 0, "low": 0.0, "high": 0.0, "cells": {},
            "air": {}, "power": [0, 0.0, 0.0], "run": run}  # fmt: skip


def is_state(state: object) -> bool:
    """Tell whether this is a state that can be gone on from."""
    if not _alike(state, new_state(1)):
        return False
    assert isinstance(state, dict)  # noqa: S101  (it is like one)
    for pull in state["pulls"]:
        if not _alike(pull, new_pull(1, "")) or not _sums(pull["power"], 3) or not pull["cells"]:
            return False
        for key, sums in pull["cells"].items():
            if not 0 < len(key) < 6 or [c for c in key if c not in "0123456789"]:
                return False
            if not _sums(sums, 3) or sums[0] < 1:
                return False
        for role, sums in pull["air"].items():
            if role not in AIR_FIELDS or not _sums(sums, 2) or sums[0] < 1:
                return False
    return True


def _alike(one: object, model: "Json") -> bool:
    """Tell whether an object has the names of another, and values of their kinds."""
    if not isinstance(one, dict) or set(one) != set(model):
        return False
    for name, value in model.items():
        is_number = isinstance(one[name], (int, float)) and not isinstance(one[name], bool)
        if isinstance(value, float):
            if not is_number or not -1e12 < one[name] < 1e12:
                return False
        elif isinstance(value, int) and not isinstance(value, bool):
            if not is_number or one[name] != one[name] or not -1 < one[name] < 2**53:
                return False
            if not isinstance(one[name], int):
                return False
        elif not isinstance(one[name], type(value)):
            return False
    return True


def _sums(value: object, count: int) -> bool:
    """Tell whether this is a list of so many numbers."""
    if not isinstance(value, list) or len(value) != count:
        return False
    for one in value:
        if isinstance(one, bool) or not isinstance(one, (int, float)) or not -1e18 < one < 1e18:
            return False
    return True


def add_bad(state: "Json", line: int, text: str, why: str) -> None:
    """List a row that cannot be used; of very many, the first and how many there are."""
    state["bad_count"] += 1
    if len(state["bad"]) < MOST_LISTED:
        state["bad"].append({"line": line, "text": text[:80], "why": why})


def add_row(state: "Json", line: int, run: str, figures: "Json") -> None:
    """Add a row that could be read.

    Parameters
    ----------
    state : as `new_state` gives it
    line : its line
    run : what the run column says, or ""
    figures : speed [rpm], torque [N m], and what else was read, in our units
    """
    state["rows"] += 1
    speed = figures["speed"]
    pulls = state["pulls"]
    pull = pulls[-1] if pulls and state["open"] else None
    if pull is not None and pull["run"] != run:
        pull = None
    if pull is not None and state["falling"]:
        middle = (pull["low"] + pull["high"]) / 2
        if speed < state["low"]:
            state["low"] = speed
        if speed >= pull["high"]:
            state["falling"] = False
        elif speed > state["low"] + FALL_RPM and state["low"] < middle:
            pull = None
        else:
            state["coasting"] += 1
            return
    elif pull is not None and speed < pull["high"] - FALL_RPM:
        if speed < (pull["low"] + pull["high"]) / 2:
            pull = None  # from one row to the next: another pull, not a way down
        else:
            state["falling"], state["low"] = True, speed
            state["coasting"] += 1
            return
    if pull is None:
        pull = new_pull(line, run)
        pull["low"] = pull["high"] = speed
        pulls.append(pull)
        state["open"], state["falling"] = True, False
    _into(pull, line, speed, figures)


def _into(pull: "Json", line: int, speed: float, figures: "Json") -> None:
    torque = figures["torque"]
    pull["last_line"] = line
    pull["rows"] += 1
    pull["low"], pull["high"] = min(pull["low"], speed), max(pull["high"], speed)
    key = str(int(speed // CELL_RPM))
    cell = pull["cells"].get(key)
    if cell is None:
        pull["cells"][key] = [1, speed, torque]
    else:
        cell[0] += 1
        cell[1] += speed
        cell[2] += torque
    for role in AIR_FIELDS:
        if role in figures:
            sums = pull["air"].setdefault(role, [0, 0.0])
            sums[0] += 1
            sums[1] += figures[role]
    if "power" in figures:
        sums = pull["power"]
        sums[0] += 1
        sums[1] += figures["power"]
        sums[2] += power_of(torque, speed)


def told(state: "Json") -> list[dict[str, object]]:
    """Give every pull: its curve, peaks, air, and whether it is too short to be one."""
    return [_told(pull) for pull in state["pulls"]]


def _told(pull: "Json") -> dict[str, object]:
    speeds, torques, counts, width = reduced(pull["cells"])
    powers = [power_of(t, n) for t, n in zip(torques, speeds)]
    top, best = powers.index(max(powers)), torques.index(max(torques))
    air = {AIR_FIELDS[role]: sums[1] / sums[0] for role, sums in pull["air"].items()}
    count, shown, worked = pull["power"]
    return {
        "run": pull["run"],
        "first_line": pull["first_line"],
        "last_line": pull["last_line"],
        "rows_used": pull["rows"],
        "short": pull["rows"] < LEAST_ROWS or pull["high"] - pull["low"] < LEAST_RPM,
        "curve": {"speed_rpm": speeds, "torque_nm": torques},
        "rows_in_point": counts,
        "point_rpm": width,
        "peaks": {"power_kw": powers[top], "power_speed_rpm": speeds[top],
                  "torque_nm": torques[best], "torque_speed_rpm": speeds[best]},
        "air": air,
        "power_ratio": shown / worked if count and worked else None,
    }  # fmt: skip


def reduced(cells: "Json") -> tuple[list[float], list[float], list[int], int]:
    """Join cells of 10 rpm into at most 400 points.

    Parameters
    ----------
    cells : by number of the cell: rows, sum of speed, sum of torque

    Returns
    -------
    mean speeds, mean torques, rows of each point, and the width of a point [rpm]
    """
    keys = sorted([int(key) for key in cells])
    times = 1
    while len({key // times for key in keys}) > MOST_POINTS:
        times += 1
    points: dict[int, list[float]] = {}
    for key in keys:
        found = points.setdefault(key // times, [0, 0.0, 0.0])
        for i in range(3):
            found[i] += cells[str(key)][i]
    joined = [points[key] for key in sorted(points)]
    return (
        [p[1] / p[0] for p in joined],
        [p[2] / p[0] for p in joined],
        [int(p[0]) for p in joined],
        times * CELL_RPM,
    )

"""The torsional study's answer: a map of slack against speed. A model, not a measurement."""

import math
from typing import TYPE_CHECKING, Any

from midspan.core.running_cautions import as_dict as caution
from midspan.core.version import VERSION
from midspan.core.warnings import drive_warnings

from .torsion import LOOK_TURNS, SETTLE_TURNS, simulate
from .torsion_asked import take_torsion

if TYPE_CHECKING:
    from .torsion import Array

STUDY = (
    "A study, not a measurement: a model with one swing of the crank, one of the valve train, and "
    "strands that pull only while taut. With much slack its motion need not repeat. Compare its "
    "cells with each other; believe no single figure, and change nothing on an engine because of "
    "it alone."
)
CAUTIONS = ("rotating", "manual-first")


def study(payload: object) -> dict[str, Any]:
    """Work out the map.

    Parameters
    ----------
    payload : drive, and optionally the figures of `torsion_asked.ASSUMED` and `MAP`

    Returns
    -------
    dict: axes, one list of rows (by movement) of columns (by speed) for each quantity, assumptions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it
    """
    asked = take_torsion(payload)
    seen = simulate(
        asked.plant, asked.waves, asked.excess, [n * math.pi / 30 for n in asked.speeds],
        asked.steps,
    )  # fmt: skip
    crank_deg = math.degrees(1 / asked.plant.crank_radius)
    energy = asked.plant.mass * seen.closing**2 / 2
    return {
        "calc": "torsion",
        "core_version": VERSION,
        "said": STUDY,
        "movements_mm": asked.movements,
        "speeds_rpm": asked.speeds,
        "mean_phase_deg": _rows(seen.mean * crank_deg),
        "phase_range_deg": _rows((seen.high - seen.low) * crank_deg),
        "phase_scatter_deg": _rows(seen.deviation * crank_deg),
        "drive_peak_n": _rows(seen.drive_peak),
        "slack_peak_n": _rows(seen.slack_peak),
        "strikes_per_turn": _rows(seen.strikes),
        "closing_mm_per_s": _rows(seen.closing * 1000),
        "strike_energy_mj": _rows(energy * 1000),
        "natural_frequency_hz": asked.plant.natural / (2 * math.pi),
        "steps_per_turn": asked.steps,
        "turns_settled": SETTLE_TURNS,
        "turns_seen": LOOK_TURNS,
        "assumptions": asked.build.assumptions + asked.assumptions,
        "warnings": drive_warnings(asked.build),
        "cautions": [caution(code) for code in CAUTIONS],
    }


def _rows(map_: "Array") -> list[list[float]]:
    return [[float(x) for x in row] for row in map_]

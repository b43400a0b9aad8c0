"""Examples of what only the service works out. Results have the form; no library is loaded."""

from typing import Any

from midspan.core.running_cautions import as_dict as caution
from midspan.core.version import VERSION
from midspan.lab.torsion import LOOK_TURNS, SETTLE_TURNS
from midspan.lab.torsion_told import CAUTIONS, STUDY

from .calc_examples import DRIVE

TORSION_INPUT: dict[str, Any] = {
    "drive": DRIVE, "movements": 2, "speeds": 2, "lowest_speed_rpm": 2000.0,
}  # fmt: skip
_MAP = [[0.4, 0.6], [3.1, 3.9]]
TORSION_RESULT: dict[str, Any] = {
    "calc": "torsion",
    "core_version": VERSION,
    "said": STUDY,
    "movements_mm": [0.0, 13.0],
    "speeds_rpm": [2000.0, 6500.0],
    **dict.fromkeys(
        ("mean_phase_deg", "phase_range_deg", "phase_scatter_deg", "drive_peak_n", "slack_peak_n",
         "strikes_per_turn", "closing_mm_per_s", "strike_energy_mj"),
        _MAP,
    ),
    "natural_frequency_hz": 435.0,
    "steps_per_turn": 885,
    "turns_settled": SETTLE_TURNS,
    "turns_seen": LOOK_TURNS,
    "assumptions": [],
    "warnings": [],
    "cautions": [caution(code) for code in CAUTIONS],
}  # fmt: skip

GAIN_EVIDENCE: dict[str, Any] = {
    "calc": "gain-evidence",
    "core_version": VERSION,
    "rows": [
        {"engine": "Shop engine", "from_movement_mm": 2.4, "to_movement_mm": 5.5,
         "gain_percent": 1.1, "standard_uncertainty_percent": 0.4, "session": "Tight and right"},
    ],
    "passed": [{"session": "Two carburettors", "why": "no-two-movements"}],
}  # fmt: skip

"""Example requests about lift, rockers and clearance. The table is made up: a lobe of 8 mm."""

import math
from typing import Any


def _lift(angle: int) -> float:
    """Lift of the made-up lobe, its nose at 108 degrees after TDC."""
    return 8 * max(0.0, math.cos((angle - 108) / 130 * math.pi / 2)) ** 2


TABLE = "angle;lift\n" + "\n".join(f"{a % 360};{_lift(a):.2f}" for a in range(-42, 265, 6))
LOBE: dict[str, Any] = {
    "text": TABLE,
    "lift_unit": "mm",
    "angle_of": "crank",
    "wheel": "to-360",
    "lift_of": "lobe",
}
ROCKERS = [
    {"label": "1.5", "rocker_ratio": 1.5, "lash_mm": 0.5},
    {"label": "1.6", "rocker_ratio": 1.6, "lash_mm": 0.5},
]
CRANK = {"stroke_mm": 88.4, "rod_length_mm": 144.8}
INPUTS: dict[str, dict[str, Any]] = {
    "lift": {"valve": "intake", "lobe": LOBE, "heights_mm": [1.27], "curve_points": 3},
    "rockers": {
        "intake": LOBE,
        "exhaust": LOBE | {"installed_centreline_deg": 112},
        "rockers": ROCKERS,
        "keep": "intake-closing",
        "event_height_mm": 1.27,
        "curve_points": 3,
    },
    "matrix": {"rockers": ["1.5", "1.6"], "settings_deg": [0, -4, 4]},
    "clearance": {
        "valve": "intake",
        "lobe": LOBE,
        "rockers": ROCKERS,
        **CRANK,
        "method": "drop",
        "drops": [
            {"drop_angle_deg": 0, "travel_mm": 3.6},
            {"drop_angle_deg": 10, "travel_mm": 4.45},
            {"drop_angle_deg": 20, "travel_mm": 7.05},
        ],
        "settings_deg": [-4, 4],
    },
    "compression": {**CRANK, "static_ratio": 10, "intake_closing_abdc_deg": 62},
}

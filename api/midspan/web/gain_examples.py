"""Example requests about spark scatter and the expected gain; every figure is made up."""

from typing import Any

EVIDENCE = [
    {
        "engine": "Shop engine",
        "from_movement_mm": 2.4,
        "to_movement_mm": 5.5,
        "gain_percent": 1.1,
        "standard_uncertainty_percent": 0.4,
    },
]


def inputs(drive: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Give the requests, for a drive."""
    return {
        "spark": {
            "idle_before_deg": [10, 12, 9, 11, 10],
            "idle_after_deg": [10.5, 10, 10.5, 10.5, 10],
            "resolution_deg": 0.5,
            "peak_power_kw": 300,
        },
        "gain": {
            "drive": drive,
            "movement_mm": 2,
            "peak_power_kw": 300,
            "peak_speed_rpm": 6000,
            "heat": {"block_material": "grey-iron"},
            "evidence": EVIDENCE,
            "curve_points": 3,
        },
    }

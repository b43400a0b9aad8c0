"""Good inputs about lift, rockers and clearance, for `good_inputs`."""

import math

from core.drives import Payload

IN_MM = {"resolution_mm": 0.02, "instrument_error_mm": 0.03, "repeatability_mm": 0.05}
IN_DEG = {"resolution_deg": 0.5, "instrument_error_deg": 0.25, "repeatability_deg": 0.3}
OWN = {"quantity": "valve_clearance_mm", "lower": 1.5, "source": "manual, p. 12"}


def rows(step: int) -> list[float]:
    """Crank angles of a lift table."""
    return [float(x) for x in range(-48, 265, step)]


def lobe_lift(angle: float) -> float:
    """A smooth lobe of 8 mm about 108 degrees."""
    return round(8 * max(0.0, math.cos((angle - 108) / 130 * math.pi / 2)) ** 2, 2)


PASTED = {
    "text": "angle;lift\n" + "\n".join(f"{x % 360:g};{lobe_lift(x)}" for x in rows(6)),
    "lift_unit": "mm", "angle_of": "crank", "wheel": "to-360", "lift_of": "lobe",
}  # fmt: skip

GOOD: dict[str, tuple[str, Payload]] = {
    "lift": (
        "lift",
        {"valve": "intake", "heights_mm": [1.0, 2.0], "smoothing": "cross-validation",
         "curve_points": 3,
         "lobe": {"table_angles_deg": [x / 2 for x in rows(24)],
                  "table_lifts_mm": [1.5 * lobe_lift(x) for x in rows(24)], "angle_of": "cam",
                  "wheel": "continuous", "lift_of": "valve", "table_ratio": 1.5,
                  "table_lash_mm": 0.1, "zero": "tdc", "installed_centreline_deg": 108.0, **IN_MM,
                  **IN_DEG}},
    ),
    "pasted": (
        "lift",
        {"valve": "intake", "lobe": {**PASTED, "angle_column": 1, "lift_column": 2}},
    ),
    "rockers": (
        "rockers",
        {"intake": PASTED, "exhaust": {**PASTED, "installed_centreline_deg": 112.0},
         "rockers": [{"label": "now", "rocker_ratio": 1.5, "lash_mm": 0.5},
                     {"label": "new", "rocker_ratio": 1.6, "lash_mm": 0.5}],
         "heights_mm": [1.0, 5.0], "keep": "intake-closing", "event_height_mm": 1.3, "cams": "one",
         "curve_points": 3},
    ),
    "matrix": (
        "matrix",
        {"rockers": ["now", "new"], "settings_deg": [0.0, 4.0], "swap_min": 90.0, "move_min": 45.0,
         "leave_out": [{"rocker": "new", "left_out_deg": 4.0}], "repeat_baseline": True},
    ),
    "drops": (
        "clearance",
        {"valve": "intake", "lobe": PASTED, "rockers": [{"label": "now", "rocker_ratio": 1.5}],
         "stroke_mm": 88.0, "rod_length_mm": 145.0, "pin_offset_mm": 1.0, "valve_axis_deg": 20.0,
         "method": "drop", "tdc_plus_minus_deg": 0.5, "settings_deg": [-4.0, 4.0],
         "drops": [{"drop_angle_deg": -10.0, "travel_mm": 6.0},
                   {"drop_angle_deg": 10.0, "travel_mm": 6.0}],
         "deck_clearance_mm": 1.0, "aluminium_rods": True, "radial_clearance_mm": 1.5,
         "own_limit": OWN,
         "curve_points": 3, **IN_MM},
    ),
    "clay": (
        "clearance",
        {"valve": "exhaust", "lobe": {**PASTED, "installed_centreline_deg": 112.0},
         "rockers": [{"label": "now", "rocker_ratio": 1.5}], "stroke_mm": 88.0,
         "rod_length_mm": 145.0, "method": "clay", "readings_mm": [3.1, 3.2]},
    ),
    "compression": (
        "compression",
        {"stroke_mm": 88.0, "rod_length_mm": 145.0, "static_ratio": 10.0, "exponent": 1.3,
         "intake_closing_abdc_deg": 62.0, "closing_plus_minus_deg": 2.0,
         "inlet_pressure_kpa": 100.0, "settings_deg": [0.0, 4.0], "pin_offset_mm": 0.5},
    ),
}  # fmt: skip

"""Example requests of the calculations, all of one made-up drive."""

from typing import Any

from . import compare_examples, dyno_examples, gain_examples, lift_examples

DRIVE = {
    "pitch_mm": 9.525,
    "crank_teeth": 22,
    "cam_teeth": 44,
    "centre_distance_mm": 114.1,
    "links": 58,
    "roller_diameter_mm": 6.35,
}
PLAN = {
    "oil": {"kind": "running-in", "grade": "10W-40", "phosphorus_mg_per_kg": 1400.0},
    "follower": "flat",
    "rings": "new",
    "movement_mm": 5.5,
    "expanded_uncertainty_mm": 0.4,
    "distance_per_week_km": 200.0,
}
LOG = [
    {
        "kind": "cut-short",
        "step": "cam-run-in",
        "at": "2026-01-31T12:00:00Z",
        "run_min": 12.0,
        "reason": "leak",
        "text": "Weep at the pump gasket.",
    },
]
INPUTS: dict[str, dict[str, Any]] = {
    "drive": {"drive": DRIVE, "curve_points": 3},
    "elongation": {
        "method": "inside-and-outside",
        "pitches": 10,
        "inside_readings_mm": [89.02, 89.0, 89.02],
        "outside_readings_mm": [101.72, 101.7, 101.72],
        "drive": DRIVE,
    },
    "slack": {"drive": DRIVE, "method": "total", "readings_mm": [5.4, 5.6, 5.5]},
    "crank-rock": {"drive": DRIVE, "method": "crank-degrees", "readings_deg": [1.5, 2.0, 1.5]},
    "heat": {
        "drive": DRIVE,
        "movement_mm": 4.8,
        "block_material": "aluminium-356",
        "curve_points": 3,
    },
    "bored": {"drive": DRIVE, "movement_mm": 5.5, "new_centre_distance_mm": 114.0},
    "gear": {
        "drive": DRIVE,
        "gear": "cam",
        "method": "over-pins",
        "pin_diameter_mm": 6.35,
        "readings_mm": [139.84, 139.82, 139.84],
    },
    "combined": {
        "drive": DRIVE,
        "measurements": [
            {
                "quantity": "elongation_percent",
                "elongation_percent": 0.12,
                "standard_uncertainty_percent": 0.02,
            },
            {
                "quantity": "movement_mm",
                "movement_mm": 6.6,
                "standard_uncertainty_mm": 0.2,
            },
            {
                "quantity": "crank_rock_deg",
                "crank_rock_deg": 1.35,
                "standard_uncertainty_deg": 0.1,
            },
        ],
    },
    "fit": {
        "drive": DRIVE,
        "chains": ["chain A", "chain B"],
        "gear_sets": ["set 1", "set 2"],
        "trials": [
            {
                "chain": "chain A",
                "gear_set": "set 1",
                "movement_mm": 5.5,
                "standard_uncertainty_mm": 0.2,
            },
        ],
        "bench": [
            {
                "chain": "chain A",
                "elongation_percent": 0.006,
                "standard_uncertainty_percent": 0.01,
            },
            {
                "chain": "chain B",
                "elongation_percent": 0.03,
                "standard_uncertainty_percent": 0.01,
            },
        ],
        "gears": [
            {
                "gear_set": "set 2",
                "added_excess_mm": 0.1,
                "standard_uncertainty_mm": 0.05,
            },
        ],
        "heat": {"block_material": "grey-iron"},
    },
    "plan": PLAN,
    "plan-adapted": {"plan": PLAN, "log": LOG},
    "plan-calendar": {
        "plan": PLAN,
        "log": LOG,
        "started_on": "2026-01-31",
        "made_at": "2026-01-31T12:00:00Z",
        "title": "Shop engine",
        "id": "01923f5e-8c00-7000-8000-000000000008",
    },
    "tdc": {
        "method": "positive-stop",
        "wheel": "both-ways",
        "before_readings_deg": [36.75, 36.5, 36.75],
        "after_readings_deg": [35.25, 35.5, 35.25],
        "wheel_diameter_mm": 280.0,
    },
    "cam": {
        "wheel": "both-ways",
        "tdc_reading_deg": -0.75,
        "tdc_plus_minus_deg": 0.3,
        "checking_height_mm": 1.27,
        "checking_at": "tappet",
        "events": [
            {"event": "intake-opens", "reference": "btdc", "angles_deg": [20.5, 21.0, 20.5]},
            {"event": "intake-closes", "reference": "abdc", "angles_deg": [59.5, 59.0, 59.5]},
        ],
        "card": {
            "source": "data sheet of the cam",
            "checking_height_mm": 1.27,
            "checking_at": "tappet",
            "intake_opening_btdc_deg": 25.0,
            "intake_closing_abdc_deg": 55.0,
        },
        "chain": {
            "drive": DRIVE,
            "elongation_percent": 0.2,
            "standard_uncertainty_percent": 0.02,
        },
    },
    "adjust": {
        "lobe": "intake",
        "intake_centreline_deg": 110.0,
        "intake_duration_deg": 260.0,
        "target_deg": 105.0,
        "plus_minus_deg": 0.5,
        "tdc_plus_minus_deg": 0.3,
        "rotation": "clockwise",
        "adjusters": [
            {"kind": "bushings", "unit": "crank-deg", "steps": [0, 2, 4, 6, 8], "ways": "both"}
        ],
    },
    "forecast": {
        "drive": DRIVE,
        "oil_kind": "synthetic",
        "readings": [
            {
                "quantity": "movement_mm",
                "movement_mm": 4.0,
                "standard_uncertainty_mm": 0.2,
                "distance_since_start_km": 0.0,
            },
            {
                "quantity": "movement_mm",
                "movement_mm": 5.2,
                "standard_uncertainty_mm": 0.2,
                "distance_since_start_km": 1500.0,
            },
        ],
    },
    **lift_examples.INPUTS,
    **dyno_examples.INPUTS,
    **compare_examples.INPUTS,
    **gain_examples.inputs(DRIVE),
}

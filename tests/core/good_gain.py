"""Good inputs about spark scatter and the expected gain, for `good_inputs`."""

from core.drives import WORKED, Payload

EVIDENCE = [
    {"engine": "A", "from_movement_mm": 2.4, "to_movement_mm": 5.5, "gain_percent": 1.1,
     "standard_uncertainty_percent": 0.4},
    {"engine": "B", "from_movement_mm": 12.0, "to_movement_mm": 6.0, "gain_percent": -0.1,
     "standard_uncertainty_percent": 0.5},
]  # fmt: skip
GOOD: dict[str, tuple[str, Payload]] = {
    "spark": (
        "spark",
        {"idle_before_deg": [10.0, 12.0], "idle_after_deg": [10.0, 10.5],
         "wide_open_before_deg": [33.0, 35.0, 34.0], "wide_open_after_deg": [34.0, 34.5],
         "resolution_deg": 0.5, "away_from_best_deg": -2.0, "loss_per_deg2": 0.0003,
         "peak_power_kw": 300.0},
    ),
    "gain": (
        "gain",
        {"drive": WORKED, "movement_mm": 2.0, "standard_uncertainty_mm": 0.2,
         "window_lower_mm": 4.5, "window_upper_mm": 6.0, "peak_power_kw": 300.0,
         "peak_speed_rpm": 6000.0, "heat": {"block_material": "aluminium-356"},
         "pin_friction": 0.1, "bearing_friction": 0.005, "chain_pin_mm": 3.28,
         "crank_journal_mm": 60.0, "cam_journal_mm": 48.0, "stiffness_n_per_mm": 4000.0,
         "friction_source": "manual, p. 12", "evidence": EVIDENCE, "engine": "A",
         "curve_points": 3},
    ),
}  # fmt: skip

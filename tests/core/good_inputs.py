"""One good input of every kind, every field of it filled: what the checks spoil and look up."""

from core import good_compare, good_dyno, good_gain, good_lift
from core.drives import WORKED, Payload

PLAN = {
    "oil": {"kind": "synthetic", "grade": "5W-30", "category": "SP",
            "phosphorus_mg_per_kg": 780.0, "zinc_mg_per_kg": 850.0},
    "follower": "flat", "rings": "new", "spring_open_load_n": 1400.0, "movement_mm": 4.0,
    "expanded_uncertainty_mm": 0.3, "window_lower_mm": 4.5, "window_upper_mm": 6.5,
    "distance_per_week_km": 250.0, "running_per_week_h": 6.0, "average_speed_km_per_h": 45.0,
    "drain_interval_km": 6000.0,
}  # fmt: skip
LOG = [
    {"kind": "cut-short", "step": "cam-run-in", "at": "2026-02-03T10:00:00Z", "run_min": 12.0,
     "reason": "noise", "text": "a tick"},
    {"kind": "value", "step": "cam-run-in", "at": "2026-02-03T10:05:00Z", "label": "Oil pressure",
     "value_read": 4.1, "unit": "bar"},
    {"kind": "oil-changed", "at": "2026-02-04T10:00:00Z", "oil": {"kind": "mineral"},
     "distance_since_start_km": 20.0},
]  # fmt: skip
DRIVE = {
    **WORKED,
    "roller_diameter_mm": 6.35,
    "centre_distance_error_mm": 0.05,
    "drive_kind": "cam",
    "centres": "fixed",
}
IN_MM = {"resolution_mm": 0.02, "instrument_error_mm": 0.03, "repeatability_mm": 0.05}
IN_DEG = {"resolution_deg": 0.5, "instrument_error_deg": 0.25, "repeatability_deg": 0.3}
OWN = {"quantity": "elongation_percent", "lower": 0.0, "upper": 0.5, "source": "manual, p. 12"}

# Every field of the inputs, in inputs that are good as they stand.
GOOD: dict[str, tuple[str, Payload]] = {
    "drive": ("drive", {"drive": DRIVE, "curve_points": 5}),
    "pins": (
        "elongation",
        {"method": "pin-to-pin", "pitches": 10, "readings_mm": [95.3, 95.4], "pitch_mm": 9.525,
         "roller_diameter_mm": 6.35, "own_limit": OWN, **IN_MM},
    ),
    "jaws": (
        "elongation",
        {"method": "inside-and-outside", "pitches": 10, "inside_readings_mm": [89.0],
         "outside_readings_mm": [101.7], "drive": DRIVE, "own_limit": OWN, **IN_MM},
    ),
    "slack": (
        "slack",
        {"method": "total", "readings_mm": [5.5, 5.6], "drive": DRIVE, "own_limit": OWN, **IN_MM},
    ),
    "degrees": (
        "crank-rock",
        {"method": "crank-degrees", "readings_deg": [2.0], "drive": DRIVE, "own_limit": OWN,
         **IN_DEG},
    ),
    "arc": (
        "crank-rock",
        {"method": "damper-arc", "readings_mm": [2.0], "damper_diameter_mm": 165.0, "drive": DRIVE,
         "own_limit": OWN, **IN_MM},
    ),
    "heat": (
        "heat",
        {"drive": DRIVE, "movement_mm": 5.5, "block_expansion_ppm": 21.5,
         "gear_expansion_ppm": 11.7, "chain_expansion_ppm": 12.3,
         "expansion_source": "data sheet, p. 3", "cold_temperature_c": 20.0,
         "block_temperature_c": 90.0, "gear_temperature_c": 95.0, "chain_temperature_c": 100.0,
         "expansion_error_ppm": 0.5, "temperature_error_k": 5.0, "cold_temperature_error_k": 2.0,
         "standard_uncertainty_mm": 0.2, "window_lower_mm": 5.0, "window_upper_mm": 7.0,
         "stiffness_n_per_mm": 4000.0, "compliance_um_per_kn": 5.0, "stiffness_source": "test rig",
         "curve_points": 3},
    ),
    "bored": (
        "bored",
        {"drive": DRIVE, "new_centre_distance_mm": 114.0, "movement_mm": 5.5,
         "window_lower_mm": 5.0, "window_upper_mm": 7.0},
    ),
    "over pins": (
        "gear",
        {"method": "over-pins", "pin_diameter_mm": 6.35, "teeth": 21, "pitch_mm": 9.525,
         "readings_mm": [70.0, 70.02],
         "own_limit": {**OWN, "quantity": "reading_mm", "lower": 69.5, "upper": 70.2}, **IN_MM},
    ),
    "over chain": (
        "gear",
        {"method": "over-chain", "roller_diameter_mm": 6.35, "drive": DRIVE, "gear": "cam",
         "readings_mm": [139.7, 139.72, 139.71]},
    ),
    "combined": (
        "combined",
        {"drive": DRIVE, "measurements": [
            {"quantity": "elongation_percent", "elongation_percent": 0.05,
             "standard_uncertainty_percent": 0.01},
            {"quantity": "movement_mm", "movement_mm": 8.0, "standard_uncertainty_mm": 0.3},
            {"quantity": "crank_rock_deg", "crank_rock_deg": 0.5, "standard_uncertainty_deg": 0.1},
            {"quantity": "chain_length_mm", "chain_length_mm": 552.7,
             "standard_uncertainty_mm": 0.05}]},
    ),
    "fit": (
        "fit",
        {"drive": DRIVE, "chains": ["a", "b"], "gear_sets": ["p", "q"],
         "trials": [
             {"chain": "a", "gear_set": "p", "movement_mm": 6.0, "standard_uncertainty_mm": 0.3},
             {"chain": "b", "gear_set": "p", "movement_mm": 7.0, "standard_uncertainty_mm": 0.3,
              "centre_distance_mm": 114.05}],
         "bench": [{"chain": "a", "elongation_percent": 0.02,
                    "standard_uncertainty_percent": 0.01}],
         "gears": [{"gear_set": "q", "added_excess_mm": 0.1, "standard_uncertainty_mm": 0.03}],
         "window_lower_mm": 5.0, "window_upper_mm": 7.0,
         "heat": {"block_material": "grey-iron", "cold_temperature_c": 18.0,
                  "chain_temperature_c": 100.0}},
    ),
    "plan": ("plan", PLAN),
    "plan-adapted": ("plan-adapted", {"plan": PLAN, "log": LOG}),
    "plan-calendar": (
        "plan-calendar",
        {"plan": PLAN, "log": LOG, "started_on": "2026-02-03", "title": "Engine", "id": "p-1",
         "made_at": "2026-02-03T10:00:00Z"},
    ),
    "forecast": (
        "forecast",
        {"drive": DRIVE, "oil_kind": "synthetic", "average_speed_km_per_h": 45.0,
         "window_lower_mm": 4.5, "window_upper_mm": 6.5, "horizon_h": 5000.0,
         "own_limit": {**OWN, "quantity": "movement_mm", "lower": None, "upper": 12.0},
         "readings": [
             {"quantity": "elongation_percent", "elongation_percent": 0.01,
              "standard_uncertainty_percent": 0.02, "running_since_start_h": 0.0},
             {"quantity": "movement_mm", "movement_mm": 6.0, "standard_uncertainty_mm": 0.2,
              "distance_since_start_km": 800.0},
             {"quantity": "crank_rock_deg", "crank_rock_deg": 0.4,
              "standard_uncertainty_deg": 0.1, "distance_since_start_km": 2500.0},
             {"quantity": "chain_length_mm", "chain_length_mm": 552.7,
              "standard_uncertainty_mm": 0.05, "running_since_start_h": 120.0}],
         "prior": {"first_wear_percent": 0.05, "first_wear_log_sd": 0.4, "time_constant_h": 30.0,
                   "time_constant_log_sd": 0.7, "steady_wear_percent_per_h": 1e-4,
                   "steady_wear_log_sd": 0.5, "engines": 4,
                   "made_at": "2026-02-03T10:00:00Z"}},
    ),
    "stop": (
        "tdc",
        {"method": "positive-stop", "wheel": "both-ways", "before_readings_deg": [36.5, 36.0],
         "after_readings_deg": [35.5, 35.0], "wheel_diameter_mm": 280.0, "parallax_mm": 0.5,
         "depth_error_mm": 0.02, "stroke_mm": 86.0, "rod_length_mm": 140.0, "drop_mm": 10.4,
         **IN_DEG},
    ),
    "cam": (
        "cam",
        {"wheel": "both-ways", "tdc_reading_deg": 0.5, "tdc_plus_minus_deg": 0.3,
         "checking_height_mm": 1.27, "checking_at": "tappet", "nose_drop_mm": 0.5,
         "dial_error_mm": 0.02, "centreline_by": "mid-duration", "cams": "one",
         "events": [
             {"event": "intake-opens", "reference": "btdc", "angles_deg": [20.0, 20.5]},
             {"event": "intake-closes", "reference": "abdc", "angles_deg": [60.0, 60.0]},
             {"event": "intake-rising", "reference": "atdc", "angles_deg": [80.0, 80.0]},
             {"event": "intake-falling", "reference": "atdc", "angles_deg": [139.0, 139.5]},
             {"event": "exhaust-opens", "reference": "bbdc", "angles_deg": [60.0, 60.0]},
             {"event": "exhaust-closes", "reference": "atdc", "angles_deg": [20.0, 19.5]}],
         "card": {"source": "data sheet", "checking_height_mm": 1.27, "checking_at": "tappet",
                  "intake_opening_btdc_deg": 21.0, "intake_closing_abdc_deg": 59.0,
                  "exhaust_opening_bbdc_deg": 61.0, "exhaust_closing_atdc_deg": 19.0,
                  "intake_duration_deg": 260.0, "exhaust_duration_deg": 260.0,
                  "intake_centreline_deg": 109.0, "exhaust_centreline_deg": 111.0,
                  "lobe_separation_cam_deg": 110.0, "advance_deg": 1.0, "tolerance_deg": 1.0},
         "chain": {"drive": DRIVE, "elongation_percent": 0.2,
                   "standard_uncertainty_percent": 0.02},
         **IN_DEG},
    ),
    "adjust": (
        "adjust",
        {"lobe": "intake", "cams": "one", "intake_centreline_deg": 112.0,
         "exhaust_centreline_deg": 108.0, "intake_duration_deg": 260.0,
         "exhaust_duration_deg": 250.0, "target_deg": 107.0, "plus_minus_deg": 0.6,
         "tdc_plus_minus_deg": 0.3, "tolerance_deg": 1.0, "rotation": "clockwise",
         "cam_turns": "same", "crank_teeth": 22,
         "adjusters": [
             {"kind": "bushings", "unit": "mm-at-cam", "radius_mm": 19.05, "fitted": 0.0,
              "steps": [0.0, 0.127, 0.254], "ways": "both"},
             {"kind": "vernier", "unit": "cam-deg", "reach": 4.0, "mark": 1.0, "fitted": 0.5},
             {"kind": "teeth"}]},
    ),
    **good_lift.GOOD,
    **good_dyno.GOOD,
    **good_compare.GOOD,
    **good_gain.GOOD,
}  # fmt: skip

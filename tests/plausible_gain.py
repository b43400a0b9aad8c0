"""Plausible spark readings and gains to be expected, as `plausible` makes."""

import random
from typing import Any

Payload = dict[str, Any]

METHODS = {"spark": ("one list", "before and after"), "gain": ("rule", "evidence")}
LISTS = ("idle_before_deg", "idle_after_deg", "wide_open_before_deg", "wide_open_after_deg")


def spark(rng: random.Random, method: str) -> Payload:
    """Timing read with a light, coarse or fine, at idle or wide open."""
    names = LISTS if method == "before and after" else (rng.choice(LISTS),)
    step = rng.choice((0.1, 0.5, 1.0, 2.0))
    made: Payload = {}
    for name in names:
        spread = rng.choice((0.0, 0.3, 1.0, 2.5))
        count = rng.randint(2, 9)
        made[name] = [round(rng.gauss(12, spread) / step) * step for _ in range(count)]
    if rng.random() < 0.7:
        made["resolution_deg"] = step
    if rng.random() < 0.3:
        made |= {"away_from_best_deg": rng.uniform(-6, 6), "loss_per_deg2": 2.6e-4}
    if rng.random() < 0.5:
        made["peak_power_kw"] = rng.uniform(40, 700)
    return made


def gain(rng: random.Random, method: str, around: Payload) -> Payload:
    """Slack now, power, and with comparisons or without."""
    made: Payload = {
        "drive": around,
        "movement_mm": rng.choice((0.0, rng.uniform(0, 5), rng.uniform(5, 16))),
        "peak_power_kw": rng.uniform(40, 700),
        "peak_speed_rpm": rng.uniform(3000, 9000),
    }
    if method == "evidence":
        made["evidence"] = [
            {
                "engine": rng.choice(("A", "B", "Größe ½")),
                "from_movement_mm": rng.uniform(0, 14),
                "to_movement_mm": rng.uniform(3, 8),
                "gain_percent": rng.gauss(1, 1),
                "standard_uncertainty_percent": rng.uniform(0.2, 1),
            }
            for _ in range(rng.randint(1, 5))
        ]
        if rng.random() < 0.5:
            made["engine"] = "A"
    if rng.random() < 0.5:
        made["heat"] = {"block_material": rng.choice(("grey-iron", "aluminium-356"))}
    if rng.random() < 0.3:
        made |= {"pin_friction": 0.1, "stiffness_n_per_mm": 3000.0, "friction_source": "S. 12"}
    if rng.random() < 0.3:
        made |= {"window_lower_mm": 4.0, "window_upper_mm": rng.uniform(5, 8), "curve_points": 5}
    return made

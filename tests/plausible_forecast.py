"""Plausible wear histories, made at random from a seed."""

import math
import random
from typing import Any

OILS = ("mineral", "running-in", "conventional", "synthetic")


def reading(rng: random.Random, around: dict[str, Any], running_h: float) -> dict[str, Any]:
    """One reading of a chain that has run so long, of any kind."""
    worn = 0.05 * (1 - math.exp(-running_h / 30)) + 1e-4 * running_h
    movement = math.sqrt(12 + 10 * worn * around["links"] * around["pitch_mm"] / 100)
    slack = movement**2 / (1.9 * around["centre_distance_mm"])
    radius = around["pitch_mm"] * around["crank_teeth"] / (2 * math.pi)
    made: dict[str, Any] = rng.choice(
        (
            {"quantity": "movement_mm", "movement_mm": movement + rng.gauss(0, 0.2),
             "standard_uncertainty_mm": rng.choice((0.2, 0.5))},
            {"quantity": "crank_rock_deg", "crank_rock_deg": math.degrees(slack / radius),
             "standard_uncertainty_deg": 0.1},
            {"quantity": "elongation_percent", "elongation_percent": 0.05 + worn,
             "standard_uncertainty_percent": 0.02},
            {"quantity": "chain_length_mm", "standard_uncertainty_mm": 0.1,
             "chain_length_mm": around["links"] * around["pitch_mm"] * (1.0005 + worn / 100)},
        )
    )  # fmt: skip
    if rng.random() < 0.5:
        return made | {"running_since_start_h": running_h}
    return made | {"distance_since_start_km": 50 * running_h}


def forecast(rng: random.Random, method: str, around: dict[str, Any]) -> dict[str, Any]:
    """A chain read now and then, or not at all yet."""
    made: dict[str, Any] = {"drive": around, "readings": []}
    if method == "measured":
        times = sorted(rng.choice((0, 10 ** rng.uniform(0, 3.3))) for _ in range(rng.randint(1, 6)))
        made["readings"] = [reading(rng, around, t) for t in times]
    if rng.random() < 0.8:
        made["oil_kind"] = rng.choice(OILS)
    if rng.random() < 0.3:
        made["average_speed_km_per_h"] = rng.uniform(20, 90)
    if rng.random() < 0.3:
        made["horizon_h"] = rng.uniform(500, 10000)
    if rng.random() < 0.3:
        made |= {"window_lower_mm": 4.0, "window_upper_mm": rng.uniform(5, 8)}
    if rng.random() < 0.4:
        quantity = rng.choice(("movement_mm", "elongation_percent", "crank_rock_deg"))
        upper = {"movement_mm": 14.0, "elongation_percent": 0.5, "crank_rock_deg": 5.0}[quantity]
        made["own_limit"] = {"quantity": quantity, "upper": upper, "source": "Handbuch, S. 12"}
    if rng.random() < 0.3:
        made["prior"] = {
            "first_wear_percent": 0.05, "first_wear_log_sd": rng.uniform(0.1, 0.5),
            "time_constant_h": 30.0, "time_constant_log_sd": 0.6,
            "steady_wear_percent_per_h": 8e-5, "steady_wear_log_sd": 0.4,
            "engines": rng.randint(2, 9), "made_at": "2026-02-03T10:00:00Z",
        }  # fmt: skip
    return made

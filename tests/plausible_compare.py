"""Plausible sessions of dyno runs, as `plausible` makes."""

import random
from typing import Any

from midspan.core.calc_pulls import DESIGNS, USUAL
from midspan.core.correction import FIGURES_ARE

Payload = dict[str, Any]

METHODS = {
    "compare": ("peaks", "curves"),
    "pulls-needed": ("own", "usual"),
    "gain-evidence": ("peaks",),
}
ORDERS = ("AB", "ABA", "ABBA", "AABB", "AABBAA", "ABABAB", "ABCABC", "AAABBBAAA", "ABBABAAB")


def run(rng: random.Random, method: str, setting: str, place: int, basis: str) -> Payload:
    """One run of a setting."""
    gain = (1 + 0.01 * (ord(setting) - 65)) * (1 + 0.001 * place) * (1 + rng.gauss(0, 0.005))
    made: Payload = {"setting": setting, "place": place, "figures_are": basis}
    if rng.random() < 0.8:
        made["conditions"] = {
            "air_temperature_c": rng.uniform(10, 35), "station_pressure_kpa": rng.uniform(92, 102),
            "relative_humidity_percent": rng.uniform(20, 90),
        }  # fmt: skip
        if rng.random() < 0.5:
            made["conditions"]["oil_temperature_c"] = rng.uniform(70, 110)
    if method == "peaks":
        made["peaks"] = {"power_kw": 300 * gain, "torque_nm": 500 * gain}
    else:
        speeds = [2000.0 + 500 * i for i in range(9)]
        torques = [gain * (500 - ((n - 4000) / 150) ** 2) for n in speeds]
        made["curve"] = {"speed_rpm": speeds, "torque_nm": torques}
    if rng.random() < 0.1:
        made["left_out"] = "Fehlzündung, 4. Zylinder"
    return made


def compare(rng: random.Random, method: str) -> Payload:
    """A session in one of the usual orders, now and then with standards mixed."""
    order = rng.choice(ORDERS)
    basis = rng.choice(FIGURES_ARE)
    made: Payload = {
        "standard": rng.choice((basis, rng.choice(FIGURES_ARE))), "reference": order[0],
        "quantity": rng.choice(("peak-power", "peak-torque")),
        "runs": [run(rng, method, key, i + 1, basis) for i, key in enumerate(order)],
    }  # fmt: skip
    if method == "curves" and rng.random() < 0.5:
        made["quantity"] = rng.choice(("band-power", "band-torque"))
        made |= {"band_lower_rpm": 2500.0, "band_upper_rpm": rng.uniform(4000, 6100)}
    if rng.random() < 0.6:
        made["drift"] = rng.choice(("auto", "none", "linear"))
    rng.shuffle(made["runs"])
    return made


def pulls(rng: random.Random, method: str) -> Payload:
    """A gain to be shown."""
    made: Payload = {"wanted_gain_percent": rng.choice((0.5, 1.0, rng.uniform(0.2, 6)))}
    if method == "own":
        made |= {"scatter_percent": rng.uniform(0.2, 2), "scatter_degrees_of_freedom": 7}
    else:
        made["dyno"] = rng.choice(sorted(USUAL))
    if rng.random() < 0.7:
        made["design"] = rng.choice(sorted(DESIGNS))
    if rng.random() < 0.3:
        made["power_percent"] = rng.uniform(55, 98)
    return made


def gain_evidence(rng: random.Random, method: str) -> Payload:
    """Sessions whose settings carry movements, now and then without."""
    made = []
    for number in range(rng.randint(1, 2)):
        asked = compare(rng, method)
        keys = sorted({one["setting"] for one in asked["runs"]}, reverse=rng.random() < 0.5)
        settings = [{"key": key, "label": key, "movement_mm": rng.uniform(0.5, 14)} for key in keys]
        if rng.random() < 0.2:
            settings[0]["movement_mm"] = None
        if rng.random() < 0.3:
            settings[-1]["movement_u_mm"] = rng.uniform(0, 8)
        made.append({
            "engine": rng.choice(("Motor ½", "Shop engine", None)), "label": f"day {number}",
            "standard": asked["standard"], "settings": settings, "runs": asked["runs"],
        })  # fmt: skip
    return {"sessions": made}


MAKERS = {"compare": compare, "pulls-needed": pulls, "gain-evidence": gain_evidence}

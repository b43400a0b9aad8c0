"""Plausible dyno runs, as `plausible` makes."""

import random
from typing import Any

from dyno_files import noisy, spoiled, written
from midspan.core.correction import FIGURES_ARE
from midspan.core.dyno_layout import guess

Payload = dict[str, Any]

METHODS = {"correction": ("station", "sea-level"), "dyno-table": ("guess", "read")}


def air(rng: random.Random, method: str) -> Payload:
    """The air of a run, now and then with the pressures mixed up."""
    made: Payload = {
        "air_temperature_c": rng.uniform(-5, 45),
        "relative_humidity_percent": rng.choice((0, 100, rng.uniform(10, 95))),
        "pressure_kind": method,
        "altitude_m": rng.choice((0.0, rng.uniform(-50, 2500))),
    }
    loss = 1 - made["altitude_m"] / 9000 if method == "station" or rng.random() < 0.1 else 1
    made["barometer_kpa"] = rng.choice((101.325, rng.uniform(98, 104))) * loss
    if method == "station" and rng.random() < 0.3:
        del made["altitude_m"]
    if rng.random() < 0.5:
        made |= {"oil_temperature_c": rng.uniform(20, 130), "water_temperature_c": 82.5}
    return made


def correction(rng: random.Random, method: str) -> Payload:
    """The air of a run, with what the dyno showed or without."""
    made: Payload = {"conditions": air(rng, method)}
    if rng.random() < 0.8:
        made |= {"power_kw": rng.uniform(20, 900), "torque_nm": rng.uniform(50, 1500)}
        made["figures_are"] = rng.choice(FIGURES_ARE)
    if rng.random() < 0.3:
        made["conditions_are"] = rng.choice(("this-run", "another-run"))
    return made


def dyno_table(rng: random.Random, method: str) -> Payload:
    """A table of a dyno, or a part of one, with now and then a row that nobody can read."""
    pulls = [noisy(rng.randint(0, 999), rng.randint(20, 60)) for _ in range(rng.randint(1, 2))]
    sign = rng.choice((";", "\t", "|"))
    between = rng.choice(("", "blank", "heading"))
    text = written(pulls, rng.choice(("de", "en")), sign, rng.random() < 0.5, between)
    text, _ = spoiled(text, rng.randint(0, 999), rng.choice((0, 0, 2)))
    if method == "guess":
        return {"step": "guess", "text": text}
    made: Payload = {"step": "read", "text": text, "layout": guess(text)}
    if rng.random() < 0.3:
        made["last"] = rng.random() < 0.5
    return made


MAKERS = {"correction": correction, "dyno-table": dyno_table}

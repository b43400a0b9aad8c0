"""Example requests about dyno sessions; every figure is made up."""

from typing import Any

INPUTS: dict[str, dict[str, Any]] = {
    "correction": {
        "conditions": {
            "air_temperature_c": 27.5,
            "barometer_kpa": 98.2,
            "pressure_kind": "station",
            "altitude_m": 240,
            "relative_humidity_percent": 45,
        },
        "figures_are": "observed",
        "power_kw": 312.4,
        "torque_nm": 548.0,
    },
}

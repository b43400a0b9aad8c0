"""Good inputs about dyno sessions, for `good_inputs`."""

from core.drives import Payload

AIR = {
    "air_temperature_c": 27.5, "barometer_kpa": 98.2, "pressure_kind": "station",
    "altitude_m": 240.0, "relative_humidity_percent": 45.0, "oil_temperature_c": 92.0,
    "water_temperature_c": 84.0,
}  # fmt: skip
GOOD: dict[str, tuple[str, Payload]] = {
    "correction": (
        "correction",
        {"conditions": AIR, "conditions_are": "this-run", "figures_are": "j607",
         "power_kw": 312.0, "torque_nm": 548.0},
    ),
    "sea level": (
        "correction",
        {"conditions": {**AIR, "pressure_kind": "sea-level", "barometer_kpa": 101.9},
         "conditions_are": "another-run", "figures_are": "observed"},
    ),
}  # fmt: skip

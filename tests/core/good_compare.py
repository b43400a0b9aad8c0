"""Good inputs about comparing dyno runs, for `good_inputs`."""

from core.drives import Payload

AIR = {"air_temperature_c": 25.0, "station_pressure_kpa": 99.0, "relative_humidity_percent": 40.0,
       "oil_temperature_c": 90.0, "water_temperature_c": 80.0}  # fmt: skip
CURVE = {"speed_rpm": [3000.0, 4000.0, 5000.0, 6000.0], "torque_nm": [500.0, 540.0, 530.0, 470.0]}
PEAKS = {"power_kw": 300.0, "power_speed_rpm": 6000.0, "torque_nm": 540.0,
         "torque_speed_rpm": 4000.0}  # fmt: skip


def runs(order: str, powers: list[float]) -> list[Payload]:
    """Runs of settings in this order, with these peak powers [kW] by SAE J607."""
    return [
        {"setting": order[i], "place": i + 1, "figures_are": "j607", "peaks": {"power_kw": power}}
        for i, power in enumerate(powers)
    ]


GOOD: dict[str, tuple[str, Payload]] = {
    "compare": (
        "compare",
        {"standard": "j607", "quantity": "peak-power", "reference": "A", "drift": "auto",
         "runs": [
             {"setting": "A", "place": 1, "figures_are": "observed", "conditions": {**AIR},
              "peaks": {**PEAKS}, "curve": {**CURVE}},
             *runs("ABBAA", [0.0, 309.0, 311.0, 304.0, 303.0])[1:],
             {"setting": "A", "place": 7, "figures_are": "observed", "left_out": "misfire",
              "conditions": {**AIR}, "peaks": {**PEAKS}}]},
    ),
    "compare band": (
        "compare",
        {"standard": "observed", "quantity": "band-torque", "reference": "B", "drift": "none",
         "band_lower_rpm": 3500.0, "band_upper_rpm": 5500.0,
         "runs": [
             # A list of its own for each, so that a change in one is a change in that one alone.
             {"setting": s, "place": i + 1, "figures_are": "observed", "conditions": {**AIR},
              "curve": {"speed_rpm": [*CURVE["speed_rpm"]],
                        "torque_nm": [t + i for t in CURVE["torque_nm"]]}}
             for i, s in enumerate("AABBC")]},
    ),
    "pulls": (
        "pulls-needed",
        {"wanted_gain_percent": 1.0, "scatter_percent": 0.5, "scatter_degrees_of_freedom": 6,
         "design": "alternating", "power_percent": 90.0},
    ),
    "pulls by dyno": (
        "pulls-needed", {"wanted_gain_percent": 2.0, "dyno": "chassis-dyno", "design": "thirds"},
    ),
}  # fmt: skip

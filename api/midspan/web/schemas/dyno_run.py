"""The air and the peaks of a dyno run, as it is kept and as it is compared."""

from .quantity import Strict, number


class RunConditionsSchema(Strict):
    """The air of a run, with oil and water."""

    air_temperature_c = number("air_temperature_c")
    station_pressure_kpa = number("station_pressure_kpa")
    relative_humidity_percent = number("relative_humidity_percent")
    oil_temperature_c = number("oil_temperature_c", required=False)
    water_temperature_c = number("water_temperature_c", required=False)


class RunPeaksSchema(Strict):
    """The greatest power and torque of a run, and where."""

    power_kw = number("power_kw", required=False)
    power_speed_rpm = number("power_speed_rpm", required=False)
    torque_nm = number("torque_nm", required=False)
    torque_speed_rpm = number("torque_speed_rpm", required=False)

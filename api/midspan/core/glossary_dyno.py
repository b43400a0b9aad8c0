"""Terms of dyno sessions: the air of a run, power and torque."""

from .term import Term, asked, told

TERMS: tuple[Term, ...] = (
    # The air of a run.
    asked(
        "air_temperature_c", "t", "degC", -20, 60, "Air temperature",
        "Of the air that the engine draws in, near its inlet.",
    ),
    asked(
        "barometer_kpa", "B", "kPa", 50, 110, "Barometer",
        "As read or reported; whether it is a station or a sea-level pressure stands beside it.",
    ),
    asked(
        "station_pressure_kpa", "B", "kPa", 50, 110, "Station pressure",
        "Absolute air pressure at the dyno, never reduced to sea level.",
    ),
    asked(
        "relative_humidity_percent", "RH", "%", 0, 100, "Relative humidity",
        "Of the air where its temperature was read.",
    ),
    asked("altitude_m", "h", "m", -450, 5000, "Altitude", "Of the dyno above sea level."),
    asked(
        "oil_temperature_c", "", "degC", -20, 200, "Oil temperature",
        "At the start of the run; no correction takes account of it.",
    ),
    asked(
        "water_temperature_c", "", "degC", -20, 150, "Water temperature",
        "At the start of the run; no correction takes account of it.",
    ),
    told("saturation_kpa", "es", "kPa", "Saturation pressure", "Of water vapour at this air."),
    told("vapour_pressure_kpa", "Pv", "kPa", "Vapour pressure", "Of the water in the air."),
    told("dry_pressure_kpa", "Pd", "kPa", "Dry pressure", "Station pressure less vapour."),
    told("factor", "", "", "Correction factor", "Corrected figure over observed figure."),
    told("ratio_to_sea_level", "", "", "Pressure over that at sea level", "At this altitude."),
    # Power and torque.
    asked(
        "power_kw", "P", "kW", -2000, 10000, "Power", "Observed or corrected, as said beside it.",
    ),
    asked(
        "torque_nm", "T", "N m", -10000, 50000, "Torque",
        "Observed or corrected, as said beside it.",
    ),
    asked(
        "power_speed_rpm", "n", "rpm", 0, 30000, "Speed at peak power", "Of the crankshaft.",
    ),
    asked(
        "torque_speed_rpm", "n", "rpm", 0, 30000, "Speed at peak torque", "Of the crankshaft.",
    ),
    asked("speed_rpm", "n", "rpm", 0, 30000, "Engine speed", "Of the crankshaft."),
    # The settings of a session.
    asked(
        "movement_u_mm", "U", "mm", 0, 50, "Movement, plus or minus",
        "Half of the 95 % coverage interval of the mid-span movement at this setting.",
    ),
)  # fmt: skip

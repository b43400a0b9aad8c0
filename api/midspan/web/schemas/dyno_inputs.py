"""What the calculations of dyno sessions take. The core checks, as in `inputs`."""

from marshmallow import Schema, fields

from midspan.core import calc_correction, correction

from .quantity import Strict, choice, number


class AirSchema(Strict):
    """The air of a run as it was read, with oil and water."""

    air_temperature_c = number("air_temperature_c")
    barometer_kpa = number("barometer_kpa")
    pressure_kind = choice(
        calc_correction.PRESSURE_KINDS,
        "Whether that is the pressure at the dyno, or reduced to sea level as weather services do.",
    )
    altitude_m = number(
        "altitude_m", required=False, note="Needed with a sea-level pressure; else a check."
    )
    relative_humidity_percent = number("relative_humidity_percent")
    oil_temperature_c = number("oil_temperature_c", required=False)
    water_temperature_c = number("water_temperature_c", required=False)


class CorrectionInputSchema(Strict):
    """Input of the calculation "correction": the air of a run, and its figures if known."""

    conditions = fields.Nested(AirSchema, required=True)
    conditions_are = choice(
        calc_correction.CONDITIONS_ARE,
        "Whether they were read at this run (so if not given) or taken over from another.",
        required=False, nullable=True,
    )  # fmt: skip
    figures_are = choice(
        correction.FIGURES_ARE,
        "observed (so if not given), or the standard by which the dyno had corrected them.",
        required=False, nullable=True,
    )  # fmt: skip
    power_kw = number("power_kw", required=False)
    torque_nm = number("torque_nm", required=False)


DYNO_INPUTS: dict[str, type[Schema]] = {"correction": CorrectionInputSchema}

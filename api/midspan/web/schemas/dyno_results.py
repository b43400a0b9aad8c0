"""What the calculations of dyno sessions give. These schemas document."""

from marshmallow import Schema, fields

from midspan.core import correction, correction_standards, limits

from .quantity import choice, measure, words
from .results import CautionSchema, WarningSchema


class RunAirSchema(Schema):
    """The air of a run, in the form that runs keep."""

    air_temperature_c = measure("air_temperature_c")
    station_pressure_kpa = measure("station_pressure_kpa")
    relative_humidity_percent = measure("relative_humidity_percent")
    oil_temperature_c = measure("oil_temperature_c", nullable=True)
    water_temperature_c = measure("water_temperature_c", nullable=True)


class ReductionSchema(Schema):
    """How a sea-level pressure was brought to the place."""

    altitude_m = measure("altitude_m")
    ratio_to_sea_level = measure("ratio_to_sea_level")
    text = words("The same in words.")
    origin = choice(limits.ORIGINS, "How well its figures are founded.")


class FiguresSchema(Schema):
    """Power and torque as the dyno read them, before any correction."""

    power_kw = measure("power_kw", nullable=True)
    torque_nm = measure("torque_nm", nullable=True)


class StandardFigureSchema(Schema):
    """A figure of a standard's form."""

    name = words("What it is, its unit at the end.")
    value = measure("value")
    origin = choice(limits.ORIGINS, "How well it is founded.")
    source = words("Title of its source; empty where there is none.")
    address = words("Where the source was read; empty where there is none.")


class StandardRangeSchema(Schema):
    """A range that a standard is meant for."""

    what = choice(("air_temperature_c", "dry_pressure_kpa", "factor"), "What it bounds.")
    low = measure("low")
    high = measure("high")
    origin = choice(limits.ORIGINS, "How well it is founded.")
    source = words("Title of its source; empty where there is none.")
    address = words("Where the source was read; empty where there is none.")


class StandardSchema(FiguresSchema):
    """A correction standard with the factor of this air, and the figures corrected by it."""

    standard = choice(correction_standards.IDS, "Which standard.")
    label = words("Its name.")
    form = words("Its form, pressures in kPa, t in degC.")
    air = choice(("dry", "total"), "Which pressure the form takes.")
    note = words("What to know of it.")
    figures = fields.List(fields.Nested(StandardFigureSchema), required=True)
    ranges = fields.List(fields.Nested(StandardRangeSchema), required=True)
    factor = measure("factor")
    warnings = fields.List(fields.Nested(WarningSchema), required=True)


class CorrectionResultSchema(Schema):
    """Result of the calculation "correction"."""

    calc = choice(("correction",), "Which calculation.")
    core_version = words("Version of the calculations.")
    conditions = fields.Nested(RunAirSchema, required=True)
    saturation_kpa = measure("saturation_kpa")
    vapour_pressure_kpa = measure("vapour_pressure_kpa")
    vapour_source = words("Where the formula of the saturation pressure comes from.")
    dry_pressure_kpa = measure("dry_pressure_kpa")
    reduction = fields.Nested(
        ReductionSchema, required=True, allow_none=True,
        metadata={"description": "null for a station pressure."},
    )  # fmt: skip
    figures_are = choice(correction.FIGURES_ARE, "What the figures sent were.")
    observed = fields.Nested(FiguresSchema, required=True)
    standards = fields.List(fields.Nested(StandardSchema), required=True)
    warnings = fields.List(fields.Nested(WarningSchema), required=True)
    cautions = fields.List(fields.Nested(CautionSchema), required=True)


DYNO_RESULTS: dict[str, type[Schema]] = {"correction": CorrectionResultSchema}

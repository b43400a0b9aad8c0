"""What spark scatter and the expected gain give. Documentation, as for `results`."""

from typing import Any

from marshmallow import Schema, fields

from midspan.core import calc_gain, calc_spark, gain_asked, gain_prior, guard, limits
from midspan.core.gain_evidence import PASSED

from .forecast_results import SpreadSchema
from .gain_inputs import ComparedSchema
from .quantity import choice, listed, measure, nested, words
from .shelf_results import ConsistencySchema, ResultSchema, WantedSchema

ORIGINS = (*limits.ORIGINS, limits.GIVEN)


def _texts(description: str) -> fields.List[Any]:
    return fields.List(fields.String(), required=True, metadata={"description": description})


class SparkIntervalSchema(Schema):
    """A figure with its 95 % interval."""

    value = measure("value")
    low = measure("low")
    high = measure("high")


class SparkRangeSchema(Schema):
    """A range; no number in it is likelier than another."""

    low = measure("low")
    high = measure("high")


class SparkSpreadSchema(Schema):
    """How far the spark wanders in one list of readings."""

    at = choice(calc_spark.PLACES, "At idle or wide open.")
    when = choice(calc_spark.TIMES, "Before or after the work.")
    count = measure("count")
    mean_deg = measure("mean_deg")
    deviation_deg = nested(SparkIntervalSchema, "Standard deviation of the readings [deg].")
    range_deg = measure("range_deg")
    resolution_share = measure("resolution_share", nullable=True)
    own_deviation_deg = nested(SparkIntervalSchema, "The same, freed of the steps read in [deg].")
    scatter_loss_percent = nested(SparkRangeSchema, "Torque lost by it [%].")
    setting_loss_percent = nested(SparkRangeSchema, "Torque lost by the setting [%].")
    scatter_loss_kw = nested(SparkRangeSchema, "null without a power.", nullable=True)


class SparkChangeSchema(Schema):
    """What the work changed."""

    at = choice(calc_spark.PLACES, "At idle or wide open.")
    ratio_of_deviations = nested(
        SparkIntervalSchema, "After over before; null if there was no spread before.", nullable=True
    )
    outcome = choice(("narrower", "wider", "not-shown"), "What the interval shows.")
    mean_change_deg = measure("mean_change_deg")
    scatter_gain_percent = nested(SparkRangeSchema, "Torque gained by it [%].")
    scatter_gain_kw = nested(SparkRangeSchema, "null without a power.", nullable=True)


class SparkLawSchema(Schema):
    """Torque lost by the square of a degree."""

    low = measure("low")
    high = measure("high")
    origin = choice(ORIGINS, "Where the figures come from.")
    text = words("The same in words.")


class SparkResultSchema(ResultSchema):
    """Result of "spark": how far the spark wanders, and what it can cost."""

    calc = choice(("spark",), "The calculation.")
    resolution_deg = measure("resolution_deg")
    away_from_best_deg = measure("away_from_best_deg")
    spreads = listed(SparkSpreadSchema, "One for each list that was given.")
    changes = listed(SparkChangeSchema, "One for each place read before and after.")
    loss_per_deg2 = nested(SparkLawSchema, "The law that the losses rest on.")
    right_range_deg = measure("right_range_deg")
    right_range_origin = choice(limits.ORIGINS, "Where that range comes from.")
    detectable_percent = measure("detectable_percent")
    said = _texts("What it means, and how little it costs.")


class GainFigureSchema(Schema):
    """A figure that friction rests on."""

    field = choice(gain_asked.FRICTION, "Which field of the input.")
    low = measure("low")
    high = measure("high")
    origin = choice(ORIGINS, "Where it comes from.")
    source = words("Title of its source; empty where there is none.")


class GainFrictionSchema(Schema):
    """What a chain that gets tight hot rubs away."""

    gain_kw = nested(SpreadSchema, "Gained by less friction [kW]; null without heat.",
                      nullable=True)  # fmt: skip
    tension_n = nested(SpreadSchema, "Pull in each strand now, hot [N].", nullable=True)
    hot_excess_mm = nested(SpreadSchema, "Excess length now, hot [mm].", nullable=True)
    figures = listed(GainFigureSchema, "What it rests on.")
    text = words("The same in words.")


class GainEvidenceSchema(Schema):
    """A comparison on the dyno."""

    engine = words("Which engine.")
    from_movement_mm = measure("from_movement_mm")
    to_movement_mm = measure("to_movement_mm")
    gain_percent = measure("gain_percent")
    low = measure("low")
    high = measure("high")
    expected_percent = measure("expected_percent")


class GainPriorSchema(Schema):
    """What the rule of thumb says: lognormal."""

    median = measure("median")
    log_sd = measure("log_sd")
    origin = choice(limits.ORIGINS, "Where the median comes from.")
    width_origin = choice(limits.ORIGINS, "Where the width comes from.")


class GainParameterSchema(Schema):
    """A figure of the loss curve, before and after the evidence."""

    parameter = choice([row.parameter for row in gain_prior.ROWS], "Which.")
    label = words("Name on the screen.")
    unit = words("Unit of its medians and intervals.")
    prior = nested(GainPriorSchema, "Before.")
    found = nested(SpreadSchema, "After.")


class GainPointSchema(Schema):
    """The loss at a movement."""

    movement_mm = measure("movement_mm")
    loss_percent = nested(SpreadSchema, "Share of peak power lost [%].")


class GainResultSchema(ResultSchema):
    """Result of "gain": the range to expect from another slack, and how thin it is."""

    calc = choice(("gain",), "The calculation.")
    method = choice(calc_gain.METHODS, "How the range was worked out.")
    method_text = words("The same in words.")
    movement_mm = measure("movement_mm")
    standard_uncertainty_mm = measure("standard_uncertainty_mm")
    zone = choice(guard.ZONES, "The zone of slack that the movement is in.")
    window = nested(WantedSchema, "The movement wanted.")
    peak_power_kw = measure("peak_power_kw")
    peak_speed_rpm = measure("peak_speed_rpm")
    gain_percent = nested(SpreadSchema, "Gain of peak power [%].")
    gain_kw = nested(SpreadSchema, "Gain of peak power [kW].")
    probability = measure("probability")
    friction = nested(GainFrictionSchema, "Friction's part of the gain.")
    rest_kw = nested(SpreadSchema, "What is left beside friction [kW].")
    detectable_percent = measure("detectable_percent")
    pulls = measure("pulls")
    engines_counted = measure("engines_counted")
    comparisons_used = measure("comparisons_used")
    evidence = listed(GainEvidenceSchema, "In the order given.")
    consistency = nested(ConsistencySchema, "Whether evidence and rule of thumb agree.")
    parameters = listed(GainParameterSchema, "The rule of thumb, before and after the evidence.")
    curve = listed(GainPointSchema, "The loss against movement.")
    said = _texts("What it rests on, and how little that is.")
    origin = choice(limits.ORIGINS, "Where the rule of thumb comes from.")


GAIN_RESULTS: dict[str, type[Schema]] = {"spark": SparkResultSchema, "gain": GainResultSchema}


class EvidenceRowSchema(ComparedSchema):
    """A comparison out of a dyno session of the shop, as "gain" takes it, and which it is."""

    session = words("The session's name. Leave it out when you send the row.")


class PassedSchema(Schema):
    """A session that gives no evidence."""

    session = words("Its name.")
    why = choice(PASSED, "Why not.")


class EvidenceOfRecordsSchema(Schema):
    """What the shop's own dyno sessions tell of slack and power."""

    calc = choice(("gain-evidence",), "What was worked out.")
    core_version = words("Version of the calculations.")
    rows = fields.List(fields.Nested(EvidenceRowSchema), required=True)
    passed = fields.List(fields.Nested(PassedSchema), required=True)

"""What the wear forecast gives. Documentation, as for `results`."""

from marshmallow import Schema, fields

from midspan.core import (
    calc_forecast,
    forecast_told,
    limits,
    measurement,
    oil_categories,
    running_figures,
)
from midspan.core import wear_prior as priors

from .quantity import choice, measure, words
from .results import LimitSchema
from .shelf_results import ResultSchema, WantedSchema

ORIGINS = (*limits.ORIGINS, running_figures.DERIVED, priors.POOLED)


class SpreadSchema(Schema):
    """Median, 80 % and 95 % interval; an end that is null lies beyond the horizon."""

    median = measure("median", nullable=True)
    low_80 = measure("low_80", nullable=True)
    high_80 = measure("high_80", nullable=True)
    low_95 = measure("low_95", nullable=True)
    high_95 = measure("high_95", nullable=True)


def _spread(description: str) -> fields.Nested:
    return fields.Nested(SpreadSchema, required=True, metadata={"description": description})


class WearEventSchema(Schema):
    """Something that the slack will do, and when."""

    event = choice(forecast_told.EVENTS, "What happens.")
    movement_mm = measure("movement_mm")
    at_running_h = _spread("Running since the first start [h].")
    at_distance_km = _spread("Distance since the first start [km].")
    probability_by_now = measure("probability_by_now")
    probability_beyond = measure("probability_beyond")
    text = words("The probabilities in words.")


class FanPointSchema(Schema):
    """The movement expected after some running."""

    at_running_h = measure("at_running_h")
    at_distance_km = measure("at_distance_km")
    movement_mm = _spread("Total mid-span movement [mm].")


class SeenMovementSchema(Schema):
    """A reading as movement, with its 95 % interval."""

    value = measure("value")
    low = measure("low")
    high = measure("high")


class PointSchema(Schema):
    """A reading, for the chart."""

    quantity = choice(measurement.KINDS, "What was measured.")
    value = measure("value")
    at_running_h = measure("at_running_h")
    at_distance_km = measure("at_distance_km")
    used = fields.Boolean(
        required=True,
        metadata={"description": "False for one that cannot be told from a taut chain."},
    )
    movement_mm = fields.Nested(
        SeenMovementSchema, required=True, allow_none=True,
        metadata={"description": "The reading as movement [mm]; null if it is not used."},
    )  # fmt: skip


class WorthSchema(Schema):
    """What a reading at some running would tell."""

    at_running_h = measure("at_running_h")
    at_distance_km = measure("at_distance_km")
    variance_share = measure("variance_share")


class NextReadingSchema(WorthSchema):
    """When the next reading tells most."""

    event = choice(forecast_told.EVENTS, "What it narrows.")
    text = words("The same in words.")
    tried = fields.List(fields.Nested(WorthSchema), required=True)


class PriorRowSchema(Schema):
    """What was known before the readings: lognormal."""

    median = measure("median")
    log_sd = measure("log_sd")
    origin = choice(ORIGINS, "Where the median comes from; the width is from memory, unverified.")
    text = words("What it rests on.")
    source = words("Title of the source; empty where there is none.")
    address = words("Where the source is found; empty where there is none.")


class WearRowSchema(Schema):
    """One unknown of the wear, before and after the readings."""

    parameter = choice(priors.PARAMETERS, "Which.")
    label = words("Name on the screen.")
    unit = words("Unit of its medians and intervals.")
    prior = fields.Nested(PriorRowSchema, required=True)
    found = _spread("After the readings.")


class PriorTakenSchema(Schema):
    """Where the prior comes from."""

    engines_behind = measure("engines_behind")
    made_at = words("When the shop's own was made; empty for the wide one.")


class QualitySchema(Schema):
    """How well the method does here."""

    effective_share = measure("effective_share")
    poor = fields.Boolean(required=True, metadata={"description": "Intervals are rough."})


class ForecastResultSchema(ResultSchema):
    """Result of "forecast": when the slack will be where, and how sure that is."""

    calc = choice(("forecast",), "The calculation.")
    method = choice(calc_forecast.METHODS, "How the posterior was worked out.")
    method_text = words("The same in words.")
    oil_kind = choice(oil_categories.OILS, "Kind of oil; null if not known.", nullable=True)
    readings_used = measure("readings_used")
    at_running_h = measure("at_running_h")
    at_distance_km = measure("at_distance_km")
    average_speed_km_per_h = measure("average_speed_km_per_h")
    horizon_h = measure("horizon_h")
    window = fields.Nested(WantedSchema, required=True)
    limit = fields.Nested(LimitSchema, required=True)
    events = fields.List(fields.Nested(WearEventSchema), required=True)
    run_in_share = _spread("Share of the first wear done by the last reading, 0 to 1.")
    fan = fields.List(fields.Nested(FanPointSchema), required=True)
    points = fields.List(fields.Nested(PointSchema), required=True)
    next_reading = fields.Nested(
        NextReadingSchema, required=True, allow_none=True,
        metadata={"description": "Null where no reading ahead would tell anything."},
    )  # fmt: skip
    wear = fields.List(fields.Nested(WearRowSchema), required=True)
    prior = fields.Nested(PriorTakenSchema, required=True)
    quality = fields.Nested(QualitySchema, required=True)
    said = fields.List(
        fields.String(),
        required=True,
        metadata={"description": "What it rests on, and how little that is."},
    )


FORECAST_RESULTS: dict[str, type[Schema]] = {"forecast": ForecastResultSchema}

"""What the wear forecast takes. The core checks, as for `inputs`."""

from marshmallow import Schema, fields, validate

from midspan.core import forecast_asked, oil_categories

from .inputs import DriveSchema, OwnLimitSchema
from .quantity import OneOf, Strict, choice, number
from .shelf_inputs import (
    ChainLengthMeasurementSchema,
    CrankRockMeasurementSchema,
    ElongationMeasurementSchema,
    MovementMeasurementSchema,
    WindowSchema,
)

_WHEN = "Give this or {}; 0 for a reading on fitting."


class _At(Strict):
    """When a reading was taken."""

    running_since_start_h = number(
        "running_since_start_h", required=False, note=_WHEN.format("distance_since_start_km")
    )
    distance_since_start_km = number(
        "distance_since_start_km", required=False, note=_WHEN.format("running_since_start_h")
    )


class ElongationThenSchema(ElongationMeasurementSchema, _At):
    """The chain's wear, measured off the engine, and when."""


class MovementThenSchema(MovementMeasurementSchema, _At):
    """The movement of the slack strand, on the engine, and when."""


class CrankRockThenSchema(CrankRockMeasurementSchema, _At):
    """How far the crank turns before the cam follows, and when."""


class ChainLengthThenSchema(ChainLengthMeasurementSchema, _At):
    """The length of the whole chain, off the engine, and when."""


class ForecastLimitSchema(OwnLimitSchema):
    """A limit that the user found in the maker's manual; its upper end is the one that counts."""

    quantity = choice(forecast_asked.LIMITED, "What it limits.")


class WearPriorSchema(Strict):
    """What the shop's own engines tell of the wear, as the service gave it."""

    first_wear_percent = number("first_wear_percent")
    first_wear_log_sd = number("first_wear_log_sd")
    time_constant_h = number("time_constant_h")
    time_constant_log_sd = number("time_constant_log_sd")
    steady_wear_percent_per_h = number("steady_wear_percent_per_h")
    steady_wear_log_sd = number("steady_wear_log_sd")
    engines = number("engines")
    made_at = fields.String(
        required=True, validate=validate.Length(1, 40),
        metadata={"description": "When it was made."},
    )  # fmt: skip


class ForecastInputSchema(WindowSchema):
    """Input of the calculation "forecast": a chain's readings over its running."""

    drive = fields.Nested(DriveSchema, required=True)
    oil_kind = choice(
        oil_categories.OILS, "Kind of oil; without it the prior is wider.",
        required=False, nullable=True,
    )  # fmt: skip
    average_speed_km_per_h = number(
        "average_speed_km_per_h", required=False, note="Assumed if not given (from memory)."
    )
    readings = fields.List(
        OneOf(
            ElongationThenSchema, MovementThenSchema, CrankRockThenSchema, ChainLengthThenSchema
        ),
        validate=validate.Length(0, forecast_asked.MOST), required=True,
        metadata={"description": "Each with its standard uncertainty, from its own result."},
    )  # fmt: skip
    own_limit = fields.Nested(
        ForecastLimitSchema, allow_none=True,
        metadata={"description": "Without it, what the trade calls too loose (no source)."},
    )  # fmt: skip
    horizon_h = number("horizon_h", required=False, note="Assumed if not given (from memory).")
    prior = fields.Nested(
        WearPriorSchema, allow_none=True,
        metadata={"description": "Without it, the wide prior by oil."},
    )  # fmt: skip


FORECAST_INPUTS: dict[str, type[Schema]] = {"forecast": ForecastInputSchema}

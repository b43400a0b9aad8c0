"""The wear forecast by the service: the phone's answer, and what the shop's history added."""

from marshmallow import Schema, fields

from .forecast_inputs import WearPriorSchema
from .forecast_results import ForecastResultSchema
from .quantity import Strict, whole
from .record_fields import Identifier


class BuildQuerySchema(Strict):
    """Which build is asked about."""

    build_id = Identifier("The build asked about: its own kept forecasts are no history.")


class WearHistorySchema(Schema):
    """How the shop's other engines were used."""

    engines_used = whole("Engines with a chain of this pitch on this oil.")
    without_oil = whole("Not used: the oil is not recorded, or was not asked about.")
    of_other_kind = whole("Not used: another oil or pitch.")
    without_readings = whole("Not used: fewer than two readings that tell anything.")
    prior = fields.Nested(
        WearPriorSchema, required=True, allow_none=True,
        metadata={"description": "To be sent with a forecast on the phone; null for the wide one."},
    )  # fmt: skip


class FullForecastSchema(ForecastResultSchema):
    """Result of the forecast by the service."""

    history = fields.Nested(WearHistorySchema, required=True)

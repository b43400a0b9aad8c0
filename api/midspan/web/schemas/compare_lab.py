"""The comparison of dyno curves by the service. Documentation, as for `results`."""

from typing import Any

from marshmallow import Schema, fields

from .compare_results import CompareResultSchema, FoundSchema
from .quantity import choice, describe, measure, words


def _line(name: str, *, nullable: bool = False) -> fields.List[Any]:
    return fields.List(
        fields.Float(), required=True, allow_none=nullable,
        metadata={"description": f"{describe(name)} One for each speed."},
    )  # fmt: skip


class CurveBandSchema(Schema):
    """A line over the speeds with its bands; null where too few runs tell the scatter."""

    mean = _line("mean")
    lower_95 = _line("lower_95", nullable=True)
    upper_95 = _line("upper_95", nullable=True)
    lower_all_95 = _line("lower_all_95", nullable=True)
    upper_all_95 = _line("upper_all_95", nullable=True)


class SettingCurveSchema(Schema):
    """The torque of a setting."""

    setting = words("Key of the setting.")
    torque_nm = fields.Nested(CurveBandSchema, required=True)


class DifferenceCurveSchema(Schema):
    """The torque of a setting less that of the reference."""

    from_setting = words("Key of the reference.")
    to_setting = words("Key of the other.")
    torque_nm = fields.Nested(CurveBandSchema, required=True)
    reference_nm = _line("reference_nm")


class BandedCurvesSchema(Schema):
    """Curves by the one standard, the drift taken out as in the comparison."""

    speed_rpm = _line("speed_rpm")
    runs_with_curve = measure("runs_with_curve")
    degrees_of_freedom = measure("degrees_of_freedom")
    pointwise_factor = measure("pointwise_factor")
    all_speeds_factor = measure("all_speeds_factor")
    settings = fields.List(fields.Nested(SettingCurveSchema), required=True)
    differences = fields.List(fields.Nested(DifferenceCurveSchema), required=True)


class RefittedGainSchema(Schema):
    """A gain with refitting allowed for."""

    from_setting = words("Key of the reference.")
    to_setting = words("Key of the other.")
    gain_percent = fields.Nested(FoundSchema, required=True)
    text = words("The same in words.")


class RefittingSchema(Schema):
    """The linear mixed model: every fitting of a setting has an offset of its own."""

    fittings = measure("fittings")
    refitting_scatter_percent = measure("refitting_scatter_percent")
    scatter_percent = measure("scatter_percent")
    differences = fields.List(fields.Nested(RefittedGainSchema), required=True)


class CurvesResultSchema(Schema):
    """What the service adds to a comparison: curves with bands, and refitting allowed for."""

    calc = choice(("compare-curves",), "What it is.")
    core_version = words("Version of the calculations.")
    compare = fields.Nested(CompareResultSchema, required=True)
    curves = fields.Nested(BandedCurvesSchema, required=True, allow_none=True)
    curves_text = words("What the bands mean, or why there are none.")
    refitting = fields.Nested(RefittingSchema, required=True, allow_none=True)
    refitting_text = words("What refitting alone does, or why nothing tells.")

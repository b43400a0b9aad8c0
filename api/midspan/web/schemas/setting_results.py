"""What the calculations that set a cam give. These schemas document."""

from typing import Any

from marshmallow import Schema, fields, validate

from midspan.core import (
    adjuster,
    calc_cam,
    cam_card,
    cam_compare,
    lobe_timing,
    setting,
    valve_events,
    wheel,
)
from midspan.core.adjust_words import MOVES

from .quantity import choice, measure, words
from .results import (
    AssumptionSchema,
    BudgetLineSchema,
    CautionSchema,
    EstimateSchema,
    LimitSchema,
    WarningSchema,
)


def _interval(description: str = "") -> fields.Nested:
    return fields.Nested(
        EstimateSchema, required=True, allow_none=True, metadata={"description": description}
    )


class SettingMeasuredSchema(Schema):
    """The measured angle with its uncertainty (JCGM 100, 95 % coverage, Student t)."""

    quantity = choice(("tdc_reading_deg", *calc_cam.FIGURES), "What was measured.")
    value = measure("value")
    standard_uncertainty = measure("standard_uncertainty")
    degrees_of_freedom = fields.Integer(
        required=True, allow_none=True, metadata={"description": "null is infinite."}
    )
    coverage_factor = measure("coverage_factor")
    expanded_uncertainty = measure("expanded_uncertainty")
    low = measure("low")
    high = measure("high")
    count = fields.Integer(required=True, metadata={"description": "Readings of each kind."})
    budget = fields.List(fields.Nested(BudgetLineSchema), required=True)


class SettingVerdictSchema(Schema):
    """What to tell the user. Of the same form as every verdict; it rests on no limit on file."""

    outcome = choice(
        setting.OUTCOMES,
        "The verdict in one word. tdc: true, correct, unsure; cam: within, early, late, too-close, "
        "no-limit; adjust: leave, set, tie, short.",
    )
    between = fields.List(
        fields.String(), required=True, allow_none=True, metadata={"description": "Always null."}
    )
    headline = words("The verdict in a few words.")
    why = words("The reason, with the figures rounded for reading.")
    next_step = words("What to do next.")
    limit = fields.Nested(
        LimitSchema, required=True, allow_none=True, metadata={"description": "Always null."}
    )


class SettingSchema(Schema):
    """What every setting bench gives."""

    core_version = words("Version of the calculations.")
    verdict = fields.Nested(SettingVerdictSchema, required=True)
    assumptions = fields.List(fields.Nested(AssumptionSchema), required=True)
    warnings = fields.List(fields.Nested(WarningSchema), required=True)
    cautions = fields.List(fields.Nested(CautionSchema), required=True)


class TdcResultSchema(SettingSchema):
    """Result of "tdc"."""

    calc = choice(("tdc",), "The calculation.")
    measured = fields.Nested(SettingMeasuredSchema, required=True)
    wheel = choice(wheel.SCALES, "How the wheel's numbers run.")
    correction_deg = measure("correction_deg")
    half_angle_deg = measure("half_angle_deg")
    drop_mm = measure("drop_mm")
    depth_rate_mm_per_deg = measure("depth_rate_mm_per_deg")


class CamLobeSchema(Schema):
    """The centrelines of one lobe; what was not read is null."""

    lobe = choice(valve_events.LOBES, "Which.")
    centreline_by = choice(lobe_timing.BY, "Which centreline is used.")
    nose_centreline_deg = _interval("From equal lift near the nose.")
    middle_centreline_deg = _interval("Halfway between opening and closing.")
    asymmetry_deg = _interval("The second less the first.")


class CamComparisonSchema(Schema):
    """A figure held against the data sheet."""

    quantity = choice(calc_cam.FIGURES, "Which.")
    card_value = measure("card_value")
    difference = fields.Nested(
        EstimateSchema, required=True, metadata={"description": "Measured less data sheet [deg]."}
    )
    tolerance_deg = measure("tolerance_deg")
    sense = choice(cam_compare.SENSES, "Which way it differs.")
    outcome = choice(cam_compare.ROW_OUTCOMES, "What came of it, with a guard band.")


class CamCardUsedSchema(Schema):
    """The data sheet compared with."""

    source = words("As entered.")
    origin = words("How well it is founded.")
    tolerance_deg = measure("tolerance_deg")


class CamChainSchema(Schema):
    """What the chain's wear has done."""

    elongation_percent = measure("elongation_percent")
    cam_retard_deg = fields.Nested(EstimateSchema, required=True)
    cam_retard_crank_deg = fields.Nested(EstimateSchema, required=True)
    rest_deg = _interval("What it leaves of the lateness; null without a data sheet.")


def _figures() -> dict[str, Any]:
    found: dict[str, Any] = {name: _interval() for name in calc_cam.FIGURES}
    return found | {"__doc__": "The figures of a cam as the trade names them; null if not read."}


CamFiguresSchema = type("CamFiguresSchema", (Schema,), _figures())


class CamResultSchema(SettingSchema):
    """Result of "cam"."""

    calc = choice(("cam",), "The calculation.")
    measured = fields.Nested(SettingMeasuredSchema, required=True)
    checking_height_mm = measure("checking_height_mm", nullable=True)
    checking_at = fields.String(
        required=True, allow_none=True, validate=validate.OneOf([*cam_card.HEIGHTS_AT, None]),
        metadata={"description": "Where the checking height is read; null if no event was."},
    )  # fmt: skip
    figures = fields.Nested(CamFiguresSchema, required=True)
    lobes = fields.List(fields.Nested(CamLobeSchema), required=True)
    card = fields.Nested(CamCardUsedSchema, required=True, allow_none=True)
    comparisons = fields.List(fields.Nested(CamComparisonSchema), required=True)
    chain = fields.Nested(CamChainSchema, required=True, allow_none=True)


class PositionSchema(Schema):
    """Where to set one adjuster."""

    kind = choice(adjuster.KINDS, "Which.")
    unit = choice((*adjuster.UNITS, "teeth"), "Unit of its figures.")
    fitted = measure("fitted")
    position = measure("position")
    change = measure("change")
    marks = measure("marks", nullable=True)


class SettingOptionSchema(Schema):
    """One setting of all the adjusters."""

    settings = fields.List(fields.Nested(PositionSchema), required=True)
    move_crank_deg = measure("move_crank_deg")
    move_cam_deg = measure("move_cam_deg")
    remainder_deg = measure("remainder_deg")
    moved = measure("moved")


class DirectionSchema(Schema):
    """Which way the best setting turns the cam against the crank."""

    move = choice(MOVES, "In one word.")
    turn = fields.String(
        required=True, allow_none=True,
        metadata={"description": "Of the camshaft against its gear, seen facing the gears."},
    )  # fmt: skip
    words = words("In a sentence.")


class RecheckSchema(Schema):
    """What to read after the best setting; null where nothing was given to work it out from."""

    intake_opening_btdc_deg = measure("intake_opening_btdc_deg", nullable=True)
    intake_closing_abdc_deg = measure("intake_closing_abdc_deg", nullable=True)
    exhaust_opening_bbdc_deg = measure("exhaust_opening_bbdc_deg", nullable=True)
    exhaust_closing_atdc_deg = measure("exhaust_closing_atdc_deg", nullable=True)
    intake_centreline_deg = measure("intake_centreline_deg", nullable=True)
    exhaust_centreline_deg = measure("exhaust_centreline_deg", nullable=True)
    lobe_separation_cam_deg = measure("lobe_separation_cam_deg", nullable=True)
    advance_deg = measure("advance_deg", nullable=True)


class AdjustResultSchema(SettingSchema):
    """Result of "adjust"."""

    calc = choice(("adjust",), "The calculation.")
    lobe = choice(valve_events.LOBES, "Lobe whose centreline is set.")
    wanted_crank_deg = measure("wanted_crank_deg")
    wanted_cam_deg = measure("wanted_cam_deg")
    options = fields.List(
        fields.Nested(SettingOptionSchema), required=True,
        metadata={"description": "The nearest settings, best first."},
    )  # fmt: skip
    tied = fields.Integer(
        required=True, metadata={"description": "How many come as near as the first."}
    )
    direction = fields.Nested(DirectionSchema, required=True)
    cam_way = words("Which way the cam turns when running, seen facing the gears.")
    recheck = fields.Nested(RecheckSchema, required=True)
    recheck_plus_minus_deg = measure("recheck_plus_minus_deg")
    tolerance_deg = measure("tolerance_deg")
    tooth_crank_deg = measure("tooth_crank_deg", nullable=True)


SETTING_RESULTS: dict[str, type[Schema]] = {
    "tdc": TdcResultSchema,
    "cam": CamResultSchema,
    "adjust": AdjustResultSchema,
}

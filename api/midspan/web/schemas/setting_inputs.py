"""What the calculations that set a cam take. The core checks, as for `inputs`."""

from marshmallow import Schema, fields, validate

from midspan.core import adjuster, calc_adjust, calc_cam, calc_tdc, cam_card, valve_events, wheel
from midspan.core.fields import MOST_READINGS

from .inputs import DriveSchema
from .quantity import Strict, choice, number, readings

_RAW = "Needed with a wheel counted both ways; not given with one round to 360, which is read as "
_RAW += "it stands."
_AT_HEIGHT = "Needed where an opening, a closing or a duration is given."


class WheelSchema(Strict):
    """A degree wheel and its pointer.

    What is not given of its errors is assumed (from memory, unverified) and named in the result.
    """

    wheel = choice(
        wheel.SCALES,
        "How the numbers run. both-ways: from 0 to 180 on either side; 0-360-up: round to 360, "
        "rising as the engine turns in its running direction; 0-360-down: falling.",
    )
    wheel_diameter_mm = number("wheel_diameter_mm", required=False)
    parallax_mm = number("parallax_mm", required=False)
    resolution_deg = number("resolution_deg", required=False)
    instrument_error_deg = number("instrument_error_deg", required=False)
    repeatability_deg = number("repeatability_deg", required=False)


class TdcInputSchema(WheelSchema):
    """Input of the calculation "tdc": true top dead centre from equal piston height."""

    method = choice(
        calc_tdc.METHODS,
        "positive-stop: the piston touched a stop; equal-drop: a dial indicator showed equal drop.",
    )
    before_readings_deg = readings("before_readings_deg", required=True)
    after_readings_deg = readings("after_readings_deg", required=True)
    depth_error_mm = number("depth_error_mm", required=False)
    stroke_mm = number("stroke_mm", required=False)
    rod_length_mm = number("rod_length_mm", required=False, note="More than half the stroke.")
    drop_mm = number("drop_mm", required=False, note="Checks the readings, no more.")


class CamEventSchema(Strict):
    """Every reading of one event of one lobe."""

    event = choice(
        valve_events.EVENTS,
        "opens and closes at the checking height; rising and falling at equal lift near the nose.",
    )
    reference = choice(
        valve_events.REFERENCES, f"The dead centre it is read from. {_RAW}",
        required=False, nullable=True,
    )  # fmt: skip
    angles_deg = readings("angles_deg", required=True)


class CamCardSchema(Strict):
    """A cam's data sheet, entered by the user: at least one figure. What follows is worked out."""

    source = fields.String(
        required=True, validate=validate.Length(1, 200),
        metadata={"description": "Whose data sheet, and which."},
    )  # fmt: skip
    checking_height_mm = number("checking_height_mm", required=False, note=_AT_HEIGHT)
    checking_at = choice(cam_card.HEIGHTS_AT, _AT_HEIGHT, required=False, nullable=True)
    intake_opening_btdc_deg = number("intake_opening_btdc_deg", required=False)
    intake_closing_abdc_deg = number("intake_closing_abdc_deg", required=False)
    exhaust_opening_bbdc_deg = number("exhaust_opening_bbdc_deg", required=False)
    exhaust_closing_atdc_deg = number("exhaust_closing_atdc_deg", required=False)
    intake_duration_deg = number("intake_duration_deg", required=False)
    exhaust_duration_deg = number("exhaust_duration_deg", required=False)
    intake_centreline_deg = number("intake_centreline_deg", required=False)
    exhaust_centreline_deg = number("exhaust_centreline_deg", required=False)
    lobe_separation_cam_deg = number("lobe_separation_cam_deg", required=False)
    advance_deg = number("advance_deg", required=False)
    tolerance_deg = number("tolerance_deg", required=False)


class WornChainSchema(Strict):
    """The state of the chain, as its own bench gives it."""

    drive = fields.Nested(DriveSchema, required=True)
    elongation_percent = number("elongation_percent")
    standard_uncertainty_percent = number("standard_uncertainty_percent")


class CamInputSchema(WheelSchema):
    """Input of the calculation "cam": where a cam stands, by equal lift or by its events."""

    tdc_reading_deg = number("tdc_reading_deg", required=False, note="0 if not given.")
    tdc_plus_minus_deg = number("tdc_plus_minus_deg", required=False)
    events = fields.List(
        fields.Nested(CamEventSchema), required=True,
        validate=validate.Length(1, len(valve_events.EVENTS)),
        metadata={"description": "Each event once, with all of its readings."},
    )  # fmt: skip
    checking_height_mm = number("checking_height_mm", required=False, note=_AT_HEIGHT)
    checking_at = choice(cam_card.HEIGHTS_AT, _AT_HEIGHT, required=False, nullable=True)
    nose_drop_mm = number("nose_drop_mm", required=False)
    dial_error_mm = number("dial_error_mm", required=False)
    centreline_by = choice(
        calc_cam.CENTRELINES,
        "Which centreline to use where a lobe has both; the one near the nose if not given.",
        required=False, nullable=True,
    )  # fmt: skip
    cams = choice(
        calc_cam.CAMS, "Whether both lobes are on one camshaft; one if not given.",
        required=False, nullable=True,
    )  # fmt: skip
    card = fields.Nested(CamCardSchema, allow_none=True)
    chain = fields.Nested(WornChainSchema, allow_none=True)


class AdjusterSchema(Strict):
    """One thing to set the cam by. Positive steps advance it."""

    kind = choice(adjuster.KINDS, "teeth: whole teeth of the chain, two at most either way.")
    unit = choice(
        adjuster.UNITS,
        "Unit of its figures; needed of all but teeth. Published sources do not agree whether "
        "keyways and bushings are quoted in crank or cam degrees, so none is assumed.",
        required=False, nullable=True,
    )  # fmt: skip
    steps = fields.List(
        number("steps"), allow_none=True, validate=validate.Length(1, MOST_READINGS),
        metadata={"description": "Every step there is; needed of all but vernier and teeth."},
    )  # fmt: skip
    ways = choice(
        adjuster.WAYS, "both: each step also serves turned round; as-listed if not given.",
        required=False, nullable=True,
    )  # fmt: skip
    radius_mm = number("radius_mm", required=False, note="Needed of an offset in mm.")
    reach = number("reach", required=False, note="Needed of a vernier.")
    mark = number("mark", required=False)
    fitted = number("fitted", required=False, note="0 if not given.")


class AdjustInputSchema(Strict):
    """Input of the calculation "adjust": which setting brings the cam to the centreline wanted."""

    lobe = choice(valve_events.LOBES, "Lobe whose centreline is set.")
    cams = choice(
        calc_adjust.CAMS, "Whether both lobes are on one camshaft; one if not given.",
        required=False, nullable=True,
    )  # fmt: skip
    intake_centreline_deg = number("intake_centreline_deg", required=False)
    exhaust_centreline_deg = number("exhaust_centreline_deg", required=False)
    intake_duration_deg = number("intake_duration_deg", required=False)
    exhaust_duration_deg = number("exhaust_duration_deg", required=False)
    target_deg = number("target_deg")
    plus_minus_deg = number("plus_minus_deg", required=False)
    tdc_plus_minus_deg = number("tdc_plus_minus_deg", required=False)
    tolerance_deg = number("tolerance_deg", required=False)
    rotation = choice(
        calc_adjust.ROTATIONS, "Of the crankshaft when running, seen facing the gears."
    )
    cam_turns = choice(
        calc_adjust.CAM_TURNS, "The cam against the crank: same if not given, as with a chain.",
        required=False, nullable=True,
    )  # fmt: skip
    crank_teeth = number("crank_teeth", required=False, note="Needed for whole teeth.")
    adjusters = fields.List(
        fields.Nested(AdjusterSchema), required=True,
        validate=validate.Length(1, calc_adjust.MOST_ADJUSTERS),
        metadata={"description": "What there is to set; at most one vernier."},
    )  # fmt: skip


SETTING_INPUTS: dict[str, type[Schema]] = {
    "tdc": TdcInputSchema,
    "cam": CamInputSchema,
    "adjust": AdjustInputSchema,
}

"""What the calculations about lift, rockers and clearance give."""

from marshmallow import Schema, fields, validate

from midspan.core import calc_lift, calc_rockers, clearance_verdict, lift_checks, lift_table

from .quantity import choice, listed, measure, nested, whole, words
from .results import BenchSchema, EstimateSchema
from .shelf_results import ResultSchema


def _flag(description: str) -> fields.Boolean:
    return fields.Boolean(required=True, metadata={"description": description})


class ColumnsSchema(Schema):
    """How a text was read."""

    angle_column = measure("angle_column")
    lift_column = measure("lift_column")
    heading = fields.List(
        fields.String(), required=True, metadata={"description": "Empty without one."}
    )
    separator = choice(("tab", "semicolon", "comma", "blank"), "What parts the columns.")
    decimal_sign = choice(("point", "comma"), "The decimal sign.")


class BadRowSchema(Schema):
    """A row that could not be used."""

    line = whole("Line of the text, or place in the lists, from 1.")
    text = words("What stands there.")
    why = words("Why it could not be used.")


class SmoothingSchema(Schema):
    """How the curve was chosen."""

    by = choice(calc_lift.SMOOTHED_BY, "By the scatter stated or assumed, or cross-validation.")
    scatter_mm = measure("scatter_mm")
    shares_sum = measure("shares_sum")
    base_filled = _flag("Whether the rest of the cycle was taken as base circle.")


class EventsSchema(Schema):
    """What happens at a height of lift, as Intervals; null where the table does not reach it."""

    height_mm = measure("height_mm")
    opens_deg = nested(EstimateSchema, "Opening [crank deg].", nullable=True)
    closes_deg = nested(EstimateSchema, "Closing [crank deg].", nullable=True)
    duration_deg = nested(EstimateSchema, "Between them [crank deg].", nullable=True)
    centre_deg = nested(EstimateSchema, "Halfway [crank deg].", nullable=True)
    area_mm_deg = measure("area_mm_deg", nullable=True)


class FindingSchema(Schema):
    """Something wrong with the readings, and what to do about it."""

    code = choice(sorted(lift_checks.STEPS), "What is wrong.")
    lines = fields.List(
        fields.Integer(), required=True, metadata={"description": "Lines it is about."}
    )
    value = measure("value")
    text = words("The same in words.")
    next_step = words("What to do.")


class LiftPointSchema(Schema):
    """A point of the smooth curve."""

    angle_deg = measure("angle_deg")
    lift_mm = measure("lift_mm")
    velocity_mm_per_deg = measure("velocity_mm_per_deg")
    acceleration_mm_per_deg2 = measure("acceleration_mm_per_deg2")


class TableReadingSchema(Schema):
    """A reading beside the smooth curve."""

    line = whole("Line of the text, or place in the lists, from 1.")
    angle_deg = measure("angle_deg")
    lift_mm = measure("lift_mm")
    residual_mm = measure("residual_mm")


class LiftResultSchema(ResultSchema):
    """Result of "lift": a lift table as a smooth curve, and what is wrong with its readings."""

    calc = choice(("lift",), "The calculation.")
    valve = choice(lift_table.VALVES, "Which lobe it is.")
    lift_of = choice(lift_table.LIFTS_OF, "Where it was read.")
    rows_used = measure("rows_used")
    columns = nested(ColumnsSchema, "How the text was read; null for lists.", nullable=True)
    bad_rows = listed(BadRowSchema, "Rows that could not be used; the others were.")
    smoothing = nested(SmoothingSchema, "How the curve was chosen.")
    maximum_lift_mm = nested(EstimateSchema, "Greatest lift [mm].")
    maximum_at_deg = measure("maximum_at_deg")
    nose_centreline_deg = nested(
        EstimateSchema, "Centre from equal lift 0.020 in below the nose [crank deg].", nullable=True
    )
    asymmetry_deg = nested(
        EstimateSchema, "Middle at the least height less that centre [crank deg].", nullable=True
    )
    durations = listed(EventsSchema, "At every height asked for.")
    findings = listed(FindingSchema, "What is wrong with the readings; empty if nothing shows.")
    least_slip_deg = measure("least_slip_deg", nullable=True)
    curve = listed(LiftPointSchema, "Empty without curve_points.")
    readings = listed(TableReadingSchema, "Empty without curve_points.")


class ValveSeenSchema(Schema):
    """What one valve does with a rocker."""

    maximum_lift_mm = nested(EstimateSchema, "Greatest valve lift [mm].")
    at_valve_lift = listed(EventsSchema, "Events at equal valve lift.")
    at_tappet_lift = listed(EventsSchema, "Events at 0.050 in of tappet lift: of the lobe alone.")


class OverlapSchema(Schema):
    """The overlap at a valve lift."""

    height_mm = measure("height_mm")
    overlap_deg = measure("overlap_deg")
    overlap_middle_deg = measure("overlap_middle_deg")


class MoveSchema(Schema):
    """How far to move the cam."""

    cam_moved_deg = measure("cam_moved_deg")
    which = choice(("all", "intake"), "Which cam: the only one or both, or the intake's alone.")


class RockerSeenSchema(Schema):
    """What a rocker does."""

    label = words("Its name.")
    rocker_ratio = measure("rocker_ratio")
    lash_mm = measure("lash_mm")
    intake = nested(ValveSeenSchema, "null without its lobe.", nullable=True)
    exhaust = nested(ValveSeenSchema, "null without its lobe.", nullable=True)
    overlap = nested(OverlapSchema, "null without both lobes.", nullable=True)
    move = nested(
        MoveSchema, "So that the chosen event is where the first rocker has it.", nullable=True
    )


class ValveLiftPointSchema(Schema):
    """Valve lift at a crank angle; null where it is not known."""

    angle_deg = measure("angle_deg")
    intake_lift_mm = measure("intake_lift_mm", nullable=True)
    exhaust_lift_mm = measure("exhaust_lift_mm", nullable=True)


class ValveLiftCurveSchema(Schema):
    """Valve lift with one rocker."""

    label = words("The rocker.")
    points = listed(ValveLiftPointSchema, "Evenly over the part of the cycle with lift.")


class RockersResultSchema(ResultSchema):
    """Result of "rockers": rockers side by side."""

    calc = choice(("rockers",), "The calculation.")
    keep = choice(calc_rockers.KEPT, "The event that is to stay where it is.")
    event_height_mm = measure("event_height_mm")
    cams = choice(calc_rockers.CAMS, "Whether both lobes are on one shaft.")
    rockers = listed(RockerSeenSchema, "In the order of the input.")
    curves = listed(ValveLiftCurveSchema, "Empty without curve_points.")


class TestSchema(Schema):
    """A test of the matrix, in its place."""

    place = measure("place")
    rocker = words("The rocker.")
    setting_deg = measure("setting_deg")
    change_min = measure("change_min")
    swap = _flag("Whether the rockers are changed before it.")
    move = _flag("Whether the cam is moved before it.")
    baseline = _flag("Whether it is the baseline.")


class MatrixResultSchema(ResultSchema):
    """Result of "matrix": the tests in the order of least work."""

    calc = choice(("matrix",), "The calculation.")
    order = listed(TestSchema, "The baseline first, and last again if asked for.")
    total_min = measure("total_min")
    least_min = measure("least_min")
    swaps = measure("swaps")
    moves = measure("moves")
    proven = _flag("Whether no order needs less work.")


class SettingSeenSchema(Schema):
    """The clearance with one rocker at one cam setting."""

    label = words("The rocker.")
    setting_deg = measure("setting_deg")
    least_at_deg = measure("least_at_deg")
    clearance_mm = nested(EstimateSchema, "The least clearance [mm].")
    outcome = choice(
        clearance_verdict.OUTCOMES,
        "would-touch if the interval reaches contact, whatever any limit says.",
    )


class ClearancePointSchema(Schema):
    """The gap at a crank angle."""

    angle_deg = measure("angle_deg")
    clearance_mm = measure("clearance_mm")
    travel_mm = measure("travel_mm")
    lift_mm = measure("lift_mm")


class ClearanceResultSchema(BenchSchema):
    """Result of "clearance": the least clearance as set now, judged, and at other settings."""

    calc = choice(("clearance",), "The calculation.")
    valve = choice(lift_table.VALVES, "Which valve.")
    method = words("How it was measured.")
    least_at_deg = measure("least_at_deg")
    seated_at_top_mm = measure("seated_at_top_mm")
    loss_per_deg_mm = measure("loss_per_deg_mm")
    settings = listed(SettingSeenSchema, "Every rocker at every setting.")
    curve = listed(ClearancePointSchema, "From 60 before to 60 after TDC; empty if not asked for.")


class PressureSchema(Schema):
    """Pressure with one exponent."""

    exponent = measure("exponent")
    pressure_kpa = measure("pressure_kpa")
    gauge_kpa = measure("gauge_kpa")


class CompressionSettingSchema(Schema):
    """Dynamic compression at a cam setting."""

    setting_deg = measure("setting_deg")
    intake_closing_abdc_deg = measure("intake_closing_abdc_deg")
    ratio = measure("ratio")
    pressure_kpa = measure("pressure_kpa")


class CompressionResultSchema(ResultSchema):
    """Result of "compression": from the intake's closing point."""

    calc = choice(("compression",), "The calculation.")
    static_ratio = measure("static_ratio")
    dynamic_ratio = nested(EstimateSchema, "Dynamic compression ratio.")
    effective_stroke_mm = measure("effective_stroke_mm")
    swept_stroke_mm = measure("swept_stroke_mm")
    pressure_kpa = measure("pressure_kpa")
    gauge_kpa = measure("gauge_kpa")
    pressures = fields.List(
        fields.Nested(PressureSchema), required=True, validate=validate.Length(1),
        metadata={"description": "At both ends of the published range of the exponent."},
    )  # fmt: skip
    settings = listed(CompressionSettingSchema, "At the cam moves asked for.")


LIFT_RESULTS: dict[str, type[Schema]] = {
    "lift": LiftResultSchema,
    "rockers": RockersResultSchema,
    "matrix": MatrixResultSchema,
    "clearance": ClearanceResultSchema,
    "compression": CompressionResultSchema,
}

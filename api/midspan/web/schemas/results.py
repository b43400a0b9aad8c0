"""What the calculations give. These schemas document; results go out as the core made them."""

from typing import Any

from marshmallow import Schema, fields, validate

from midspan.core import guard, limits

from .quantity import choice, measure, words

OUTCOMES = (
    "within", "below", "beyond", "too-close", "limits-disagree", "no-limit", "would-touch",
    *guard.ZONES,
)  # fmt: skip
JUDGED = ("within", "below", "beyond", "too-close")


def _point_mm() -> fields.List[Any]:
    return fields.List(
        fields.Float(required=True), required=True, validate=validate.Length(equal=2),
        metadata={"description": "x and y [mm]."},
    )  # fmt: skip


class EstimateSchema(Schema):
    """A value with its 95 % coverage interval, in the unit its field's name carries."""

    value = measure("value")
    low = measure("low")
    high = measure("high")
    standard_uncertainty = measure("standard_uncertainty", nullable=True)


class BudgetLineSchema(Schema):
    """One line of the uncertainty budget, in the unit of the measured quantity."""

    name = words("What is uncertain.")
    kind = choice(("A", "B"), "A from repeated readings, B from anything else.")
    standard_uncertainty = measure("standard_uncertainty")
    degrees_of_freedom = fields.Integer(
        required=True, allow_none=True, metadata={"description": "null is infinite."}
    )
    origin = words("Where the figure comes from.")


class MeasuredSchema(Schema):
    """The measured quantity with its uncertainty (JCGM 100, 95 % coverage, Student t)."""

    quantity = choice(
        (
            "elongation_percent",
            "movement_mm",
            "sag_mm",
            "crank_rock_deg",
            "pitch_diameter_mm",
            "valve_clearance_mm",
        ),
        "What was measured.",
    )
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


class StateSchema(Schema):
    """The one state of the chain on its drive, in all its readings."""

    excess_mm = fields.Nested(EstimateSchema, required=True)
    elongation_percent = fields.Nested(EstimateSchema, required=True)
    movement_mm = fields.Nested(EstimateSchema, required=True)
    sag_mm = fields.Nested(EstimateSchema, required=True)
    crank_rock_deg = fields.Nested(EstimateSchema, required=True)
    cam_retard_deg = fields.Nested(EstimateSchema, required=True)
    cam_retard_crank_deg = fields.Nested(EstimateSchema, required=True)


class LimitSchema(Schema):
    """One limit with its origin."""

    id = words("Stable name of the limit.")
    quantity = choice(sorted(limits.UNITS), "What it limits.")
    lower = fields.Float(
        required=True, allow_none=True, metadata={"description": "Least value allowed."}
    )
    upper = fields.Float(
        required=True, allow_none=True, metadata={"description": "Largest value allowed."}
    )
    upper_to = fields.Float(
        required=True, allow_none=True,
        metadata={"description": "Upper end of an upper limit that is printed as a range."},
    )  # fmt: skip
    unit = words("Unit of lower, upper and upper_to.")
    label = words("The limit in a few words.")
    origin = choice(limits.ORIGINS, "How well the figure is founded.")
    source = words("Title of the source; empty where there is none.")
    address = words("Where the source is found; empty where there is none.")
    note = words("What else to know of it.")


class VerdictSchema(Schema):
    """What to tell the user."""

    outcome = choice(OUTCOMES, "The verdict in one word.")
    between = fields.List(
        choice(guard.ZONES, "A zone of slack."), required=True, allow_none=True,
        validate=validate.Length(equal=2),
        metadata={"description": "The zones of slack the interval reaches, if more than one."},
    )  # fmt: skip
    headline = words("The verdict in a few words.")
    why = words("The reason, with the figures rounded for reading.")
    next_step = words("What to do next.")
    limit = fields.Nested(LimitSchema, required=True, allow_none=True)


class JudgementSchema(Schema):
    """The state held against one limit."""

    limit = fields.Nested(LimitSchema, required=True)
    outcome = choice(JUDGED, "What came of it.")
    value = measure("value")
    low = measure("low")
    high = measure("high")
    limit_value = measure("limit_value")
    unit = words("Unit of all four.")


class AssumptionSchema(Schema):
    """A figure that was assumed because none was given."""

    field = words("Field it stands in for.")
    value = fields.Float(required=True, metadata={"description": "The figure."})
    unit = words("Its unit.")
    origin = choice(limits.ORIGINS, "How well the figure is founded.")
    text = words("The same in words.")


class WarningSchema(Schema):
    """Something worth knowing about an input that is not wrong."""

    code = words("Stable word for programs, such as odd-links.")
    field = words("Dotted path of the field.")
    got = fields.Float(required=True, metadata={"description": "What it rests on."})
    text = words("The same in words.")
    origin = words("How well a figure in it is founded; empty where it claims none.")
    source = words("Title of its source; empty where there is none.")


class CautionSchema(Schema):
    """A usual caution for work on an engine."""

    code = words("Stable word for programs.")
    text = words("The caution.")
    # Where a caution has figures in it.
    origin = fields.String(metadata={"description": "How well its figures are founded."})
    source = fields.String(metadata={"description": "Title of their source; may be empty."})
    address = fields.String(metadata={"description": "Where it is found; may be empty."})


class BenchSchema(Schema):
    """What every bench gives."""

    core_version = words("Version of the calculations.")
    measured = fields.Nested(MeasuredSchema, required=True)
    verdict = fields.Nested(VerdictSchema, required=True)
    judgements = fields.List(fields.Nested(JudgementSchema), required=True)
    assumptions = fields.List(fields.Nested(AssumptionSchema), required=True)
    warnings = fields.List(fields.Nested(WarningSchema), required=True)
    cautions = fields.List(fields.Nested(CautionSchema), required=True)


class ElongationResultSchema(BenchSchema):
    """Result of "elongation"."""

    calc = choice(("elongation",), "The calculation.")
    state = fields.Nested(
        StateSchema, required=True, allow_none=True, metadata={"description": "null if no drive."}
    )


class SlackResultSchema(BenchSchema):
    """Result of "slack"."""

    calc = choice(("slack",), "The calculation.")
    state = fields.Nested(StateSchema, required=True)


class CrankRockResultSchema(BenchSchema):
    """Result of "crank-rock"."""

    calc = choice(("crank-rock",), "The calculation.")
    state = fields.Nested(StateSchema, required=True)


class CircleSchema(Schema):
    """A pitch circle [mm]."""

    x = fields.Float(required=True)
    y = fields.Float(required=True)
    r = fields.Float(required=True)


class OutlineSchema(Schema):
    """A drive for drawing to scale [mm]: crank gear at the origin, cam gear straight above."""

    crank = fields.Nested(CircleSchema, required=True)
    cam = fields.Nested(CircleSchema, required=True)
    taut_strand = fields.List(_point_mm(), required=True, validate=validate.Length(equal=2))
    slack_strand = fields.List(_point_mm(), required=True, validate=validate.Length(equal=2))
    slack_normal = _point_mm()


class CurvePointSchema(Schema):
    """One point of movement and lash against wear."""

    elongation_percent = measure("elongation_percent")
    excess_mm = measure("excess_mm")
    movement_mm = measure("movement_mm")
    crank_rock_deg = measure("crank_rock_deg")


class DriveResultSchema(Schema):
    """Result of "drive": the geometry, and the slack of its chain at nominal length."""

    calc = choice(("drive",), "The calculation.")
    core_version = words("Version of the calculations.")
    crank_pitch_diameter_mm = measure("crank_pitch_diameter_mm")
    cam_pitch_diameter_mm = measure("cam_pitch_diameter_mm")
    strand_mm = measure("strand_mm")
    contact_angle_deg = measure("contact_angle_deg")
    crank_wrap_deg = measure("crank_wrap_deg")
    cam_wrap_deg = measure("cam_wrap_deg")
    taut_length_pitches = measure("taut_length_pitches")
    taut_length_mm = measure("taut_length_mm")
    handbook_length_pitches = measure("handbook_length_pitches")
    chain_length_mm = measure("chain_length_mm")
    taut_centre_distance_mm = measure("taut_centre_distance_mm")
    excess_mm = measure("excess_mm")
    movement_mm = measure("movement_mm")
    crank_rock_deg = measure("crank_rock_deg")
    outline = fields.Nested(OutlineSchema, required=True)
    curve = fields.List(fields.Nested(CurvePointSchema), required=True)
    warnings = fields.List(fields.Nested(WarningSchema), required=True)

"""What a running-in plan gives, before and after its log, and its calendar."""

from marshmallow import Schema, fields

from midspan.core import limits, oil_categories, running_figures, running_steps

from .quantity import choice, listed, measure, words
from .shelf_results import WINDOW_ORIGINS, ResultSchema

ORIGINS = (*limits.ORIGINS, running_figures.DERIVED)
STATUS = ("to-do", "done", "cut-short", "skipped")
OUTCOMES = ("not-measured", "within", "below", "beyond", "too-close")


def _origin(*, nullable: bool = False) -> fields.String:
    return choice(ORIGINS, "How well it is founded.", nullable=nullable)


def _end(description: str) -> fields.Float:
    return fields.Float(required=True, allow_none=True, metadata={"description": description})


def _band(description: str) -> fields.Nested:
    return fields.Nested(
        BandSchema, required=True, allow_none=True, metadata={"description": description}
    )


class FigureOnFileSchema(Schema):
    """One figure for running in, with its origin. Sources that disagree all stay."""

    id = words("Stable name of the figure.")
    quantity = choice(sorted(running_figures.UNITS), "What it is a figure of.")
    lower = _end("Lower end; null where its source gives none.")
    upper = _end("Upper end; null where its source gives none.")
    unit = words("Unit of lower and upper.")
    label = words("The figure in a few words.")
    origin = _origin()
    source = words("Title of the source; empty where there is none.")
    address = words("Where the source is found; empty where there is none.")
    note = words("What else to know of it.")


class BandSchema(Schema):
    """The range that the sources span, and what all of them admit."""

    lower = measure("lower")
    upper = measure("upper")
    common_lower = measure("common_lower", nullable=True)
    common_upper = measure("common_upper", nullable=True)
    unit = words("Unit of the four.")
    origin = _origin()
    figures = listed(FigureOnFileSchema, "Every figure on file; not all count for the range.")


class SaidSchema(Schema):
    """Something to look at or to stop for."""

    text = words("It in words.")
    origin = _origin()


class StepCautionSchema(Schema):
    """A caution where it matters, with who says so."""

    code = words("Stable word for programs.")
    text = words("The caution.")
    origin = _origin()
    source = words("Title of the source; empty where there is none.")
    address = words("Where the source is found; empty where there is none.")


class PlanStepSchema(Schema):
    """One step of the plan and how far it has come. What does not apply is null."""

    key = words("Name of the step in the plan and in its log.")
    phase = choice(running_steps.PHASES, "Part of the plan.")
    title = words("What is done.")
    ends = choice(running_steps.ENDS, "What ends it.")
    status = choice(STATUS, "How far it has come.")
    added = fields.Boolean(
        required=True, metadata={"description": "Whether what happened put it in."}
    )
    speed = _band("Engine speed.")
    time = _band("Time in print; duration_min is what the plan takes of it.")
    duration_min = measure("duration_min", nullable=True)
    run_min = measure("run_min", nullable=True)
    at_distance_km = measure("at_distance_km", nullable=True)
    at_running_h = measure("at_running_h", nullable=True)
    due_origin = _origin(nullable=True)
    after_weeks = measure("after_weeks", nullable=True)
    engine_load = words("Load on the engine.", nullable=True)
    oil = words("What is done to oil and filter.", nullable=True)
    measures = fields.Boolean(
        required=True, metadata={"description": "Whether the chain's slack is measured."}
    )
    figures = listed(FigureOnFileSchema, "What else it rests on.")
    look_at = listed(SaidSchema, "What to look at.")
    stop_when = listed(SaidSchema, "When to stop at once.")
    cautions = listed(StepCautionSchema, "Cautions that matter now.")


class ProgressSchema(Schema):
    """How far the plan has come."""

    steps_done = fields.Integer(required=True, metadata={"description": "Steps behind."})
    steps_total = fields.Integer(required=True, metadata={"description": "Steps in all."})
    run_min = measure("run_min")
    duration_min = measure("duration_min")
    distance_since_start_km = measure("distance_since_start_km")


class DeviationSchema(Schema):
    """Where it went otherwise than planned."""

    step = words("Key of the step, if it was one's.", nullable=True)
    at = words("When it was logged.")
    text = words("It in words.")


class GradeSchema(Schema):
    """What SAE J300 asks of an oil of this grade; null where it asks nothing."""

    grade = words("The grade as SAE J300 writes it.")
    viscosity_100c_low_mm2_per_s = measure("viscosity_100c_low_mm2_per_s")
    viscosity_100c_high_mm2_per_s = measure("viscosity_100c_high_mm2_per_s", nullable=True)
    hths_low_mpa_s = measure("hths_low_mpa_s", nullable=True)
    cranking_high_mpa_s = measure("cranking_high_mpa_s", nullable=True)
    cranking_at_c = measure("cranking_at_c", nullable=True)
    pumping_high_mpa_s = measure("pumping_high_mpa_s", nullable=True)
    pumping_at_c = measure("pumping_at_c", nullable=True)
    origin = _origin()
    source = words("Title of the source.")
    address = words("Where the source is found.")


class OilFindingSchema(Schema):
    """Something worth knowing of the oil chosen."""

    code = words("Stable word for programs.")
    text = words("It in words.")
    origin = _origin()
    figures = listed(FigureOnFileSchema, "What it rests on; sources that disagree all stay.")


class OilSaidSchema(Schema):
    """The oil of the plan as it stands, and what is to be said of it."""

    kind = choice(oil_categories.OILS, "What kind of oil it is.")
    category = words("API or ILSAC category.", nullable=True)
    phosphorus_mg_per_kg = measure("phosphorus_mg_per_kg", nullable=True)
    zinc_mg_per_kg = measure("zinc_mg_per_kg", nullable=True)
    grade = fields.Nested(GradeSchema, required=True, allow_none=True)
    findings = listed(OilFindingSchema, "What is worth knowing of it.")


class ChainSaidSchema(Schema):
    """How the chain starts, and what the first running does for it."""

    movement_mm = measure("movement_mm", nullable=True)
    lower_mm = measure("lower_mm")
    upper_mm = measure("upper_mm")
    window_origin = choice(WINDOW_ORIGINS, "Where the wanted movement comes from.")
    outcome = choice(OUTCOMES, "The movement held against the window.")
    text = words("What that means.")
    next_step = words("What to do.")
    origin = _origin()
    bedding_share = measure("bedding_share")
    bedding_text = words("What the timed steps do for the chain.")
    bedding_origin = _origin()
    figures = listed(FigureOnFileSchema, "What it rests on.")


class _Planned(ResultSchema):
    steps = listed(PlanStepSchema, "In their order.")
    next = words("Key of the first step still to do; null at the end.", nullable=True)
    progress = fields.Nested(ProgressSchema, required=True)
    deviations = listed(DeviationSchema, "In the order of the log.")
    oil = fields.Nested(OilSaidSchema, required=True)
    chain = fields.Nested(ChainSaidSchema, required=True)


class PlanResultSchema(_Planned):
    """Result of "plan": the steps of running in, each figure with its origin."""

    calc = choice(("plan",), "The calculation.")


class PlanAdaptedResultSchema(_Planned):
    """Result of "plan-adapted": the plan after what happened."""

    calc = choice(("plan-adapted",), "The calculation.")


class DatedSchema(Schema):
    """A step on its day."""

    key = words("Key of the step.")
    title = words("What is done.")
    day = fields.Date(required=True, metadata={"description": "Such as 2026-01-31."})
    text = words("What the calendar says of it.")


class PlanCalendarResultSchema(ResultSchema):
    """Result of "plan-calendar": drains and re-checks still due, and all as one calendar."""

    calc = choice(("plan-calendar",), "The calculation.")
    events = listed(DatedSchema, "In the order of the steps.")
    undated = fields.List(
        fields.String(), required=True,
        metadata={"description": "Keys of the steps without a day: no use per week was given."},
    )  # fmt: skip
    text = words("The calendar, RFC 5545.")

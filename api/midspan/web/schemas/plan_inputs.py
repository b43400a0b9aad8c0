"""What a running-in plan and its log take. The core checks, as for `inputs`."""

from marshmallow import fields, validate

from midspan.core import oil_categories, plan_asked, plan_log

from .quantity import Strict, choice, number
from .shelf_inputs import WindowSchema

_CATEGORIES = [row.id for row in oil_categories.CATEGORIES]
_EITHER = "Without it and its like, nothing due at a distance gets a date."


def _text(longest: int, description: str, *, required: bool = False) -> fields.String:
    return fields.String(
        required=required, allow_none=not required, validate=validate.Length(1, longest),
        metadata={"description": description},
    )  # fmt: skip


class OilSchema(Strict):
    """An engine oil, as far as it is known."""

    kind = choice(oil_categories.OILS, "What kind of oil it is.")
    grade = _text(12, "Grade by SAE J300, as on the can: 10W-40, SAE 30.")
    category = choice(_CATEGORIES, "API or ILSAC category.", required=False, nullable=True)
    phosphorus_mg_per_kg = number("phosphorus_mg_per_kg", required=False)
    zinc_mg_per_kg = number("zinc_mg_per_kg", required=False)


class PlanInputSchema(WindowSchema):
    """Input of the calculation "plan": the engine, its oil, its chain and its use."""

    oil = fields.Nested(OilSchema, required=True)
    follower = choice(plan_asked.FOLLOWERS, "What runs on the cam: flat tappets or rollers.")
    rings = choice(plan_asked.RINGS, "Whether the piston rings are new or were left alone.")
    spring_open_load_n = number("spring_open_load_n", required=False)
    movement_mm = number("movement_mm", required=False, note="The chain's slack as it starts.")
    expanded_uncertainty_mm = number("expanded_uncertainty_mm", required=False)
    distance_per_week_km = number("distance_per_week_km", required=False, note=_EITHER)
    running_per_week_h = number("running_per_week_h", required=False, note=_EITHER)
    average_speed_km_per_h = number(
        "average_speed_km_per_h", required=False,
        note="Follows from the two above where both are given; else 50 (from memory, unverified).",
    )  # fmt: skip
    drain_interval_km = number("drain_interval_km", required=False)


class PlanEventSchema(Strict):
    """Something that happened while the plan was followed."""

    kind = choice(
        plan_log.EVENTS,
        "What happened. done, cut-short and skipped end a step; value and note tell of it; clock "
        "says that the phone's clock jumped; re-check puts one more reading of the slack in; "
        "taken-back undoes what was told last of a step, its end or its timer's start.",
    )
    at = _text(40, "When, in UTC, such as 2026-01-31T12:00:00Z.", required=True)
    step = _text(80, "Key of the step; needed by what ends one or takes that back.")
    run_min = number("run_min", required=False, note="Needed by cut-short.")
    reason = choice(
        plan_log.REASONS, "Why it was cut short; needed by cut-short.",
        required=False, nullable=True,
    )  # fmt: skip
    text = _text(1000, "Anything to say.")
    label = _text(60, "What was read; needed by value.")
    value_read = number("value_read", required=False, note="Needed by value.")
    unit = _text(20, "Unit of the value.")
    oil = fields.Nested(
        OilSchema, allow_none=True, metadata={"description": "Needed by oil-changed."}
    )
    distance_since_start_km = number(
        "distance_since_start_km",
        required=False,
        note="Needed by distance, oil-changed and re-check.",
    )


class PlanAdaptedInputSchema(Strict):
    """Input of the calculation "plan-adapted": a plan and what happened."""

    plan = fields.Nested(PlanInputSchema, required=True)
    log = fields.List(
        fields.Nested(PlanEventSchema), allow_none=True,
        validate=validate.Length(0, plan_log.MOST_EVENTS),
        metadata={"description": "What happened, in order; empty if not given."},
    )  # fmt: skip


class PlanCalendarInputSchema(PlanAdaptedInputSchema):
    """Input of the calculation "plan-calendar": when which drain or re-check is due."""

    started_on = _text(40, "Day of the first start, such as 2026-01-31.", required=True)
    made_at = _text(40, "Now, in UTC, such as 2026-01-31T12:00:00Z.", required=True)
    title = _text(200, "What the engine is called.", required=True)
    id = _text(100, "Id of the plan; leads the ids of the events.", required=True)

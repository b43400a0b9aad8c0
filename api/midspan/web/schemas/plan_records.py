"""A plan of running in, as kept: what was asked, what was answered, and the log."""

from marshmallow import fields, validate

from midspan.core.plan_log import MOST_EVENTS

from .plan_inputs import PlanEventSchema, PlanInputSchema
from .plan_results import PlanResultSchema
from .quantity import Strict
from .record_fields import Evidence, Identifier, Moment, Text
from .records import Kept, as_sent

LONGEST_INPUT, LONGEST_RESULT, LONGEST_EVENT = 8_000, 400_000, 4_000


class _Plan(Strict):
    """What a plan is, but for what the core made of it."""

    engine_id = Identifier("The engine that is run in.", allow_none=True)
    build_id = Identifier("The build it belongs to.", allow_none=True)
    label = Text(200, "What the plan is called.", required=True)
    started_at = Moment("First start of the engine; null before it.", allow_none=True)
    core_version = Text(40, "Version of the calculations that gave the result.", required=True)
    created_at = Moment("When it was first entered.", required=True)


class PlanWriteSchema(_Plan):
    """A plan with its log, to keep; the log grows while the plan is followed."""

    input = Evidence(
        PlanInputSchema, longest=LONGEST_INPUT, required=True, description="Input of the plan."
    )
    result = Evidence(
        PlanResultSchema, longest=LONGEST_RESULT, required=True,
        description="The plan as it was answered, before anything happened.",
    )  # fmt: skip
    log = fields.List(
        Evidence(PlanEventSchema, longest=LONGEST_EVENT, description="Something that happened."),
        required=True,
        validate=validate.Length(0, MOST_EVENTS, error="too-many"),
        error_messages={"invalid": "not-a-list", "required": "missing", "null": "missing"},
        metadata={
            "description": "What happened while it was followed, in order.",
            "need": f"a list of up to {MOST_EVENTS} events, empty at first",
        },
    )


class PlanRecordSchema(_Plan, Kept):
    """A plan, as kept: whatever form its parts had in the version that made them."""

    input = as_sent("Input of the plan, as sent.")
    result = as_sent("The plan, as it was answered.")
    log = fields.List(
        fields.Dict(), required=True, metadata={"description": "What happened, as sent."}
    )

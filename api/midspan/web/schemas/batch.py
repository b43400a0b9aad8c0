"""Several calculations in one request: each item names its calculation, which decides its form."""

from marshmallow import Schema, fields, validate

from .compare_inputs import COMPARE_INPUTS
from .compare_results import COMPARE_RESULTS
from .dyno_inputs import DYNO_INPUTS
from .dyno_results import DYNO_RESULTS
from .forecast_inputs import FORECAST_INPUTS
from .forecast_results import FORECAST_RESULTS
from .gain_inputs import GAIN_INPUTS
from .gain_results import GAIN_RESULTS
from .inputs import (
    CrankRockInputSchema,
    DriveInputSchema,
    ElongationInputSchema,
    SlackInputSchema,
)
from .lift_inputs import LIFT_INPUTS
from .lift_results import LIFT_RESULTS
from .plan_inputs import PlanAdaptedInputSchema, PlanCalendarInputSchema, PlanInputSchema
from .plan_results import PlanAdaptedResultSchema, PlanCalendarResultSchema, PlanResultSchema
from .problem import RefusalSchema
from .quantity import OneOf, Strict, choice
from .results import (
    CrankRockResultSchema,
    DriveResultSchema,
    ElongationResultSchema,
    SlackResultSchema,
)
from .setting_inputs import SETTING_INPUTS
from .setting_results import SETTING_RESULTS
from .shelf_inputs import (
    BoredInputSchema,
    CombinedInputSchema,
    FitInputSchema,
    GearInputSchema,
    HeatInputSchema,
)
from .shelf_results import (
    BoredResultSchema,
    CombinedResultSchema,
    FitResultSchema,
    GearResultSchema,
    HeatResultSchema,
)

MOST_ITEMS = 1000
INPUTS: dict[str, type[Schema]] = {
    "drive": DriveInputSchema,
    "elongation": ElongationInputSchema,
    "slack": SlackInputSchema,
    "crank-rock": CrankRockInputSchema,
    "heat": HeatInputSchema,
    "bored": BoredInputSchema,
    "gear": GearInputSchema,
    "combined": CombinedInputSchema,
    "fit": FitInputSchema,
    "plan": PlanInputSchema,
    "plan-adapted": PlanAdaptedInputSchema,
    "plan-calendar": PlanCalendarInputSchema,
    **SETTING_INPUTS,
    **FORECAST_INPUTS,
    **LIFT_INPUTS,
    **GAIN_INPUTS,
    **DYNO_INPUTS,
    **COMPARE_INPUTS,
}
RESULTS: dict[str, type[Schema]] = {
    "drive": DriveResultSchema,
    "elongation": ElongationResultSchema,
    "slack": SlackResultSchema,
    "crank-rock": CrankRockResultSchema,
    "heat": HeatResultSchema,
    "bored": BoredResultSchema,
    "gear": GearResultSchema,
    "combined": CombinedResultSchema,
    "fit": FitResultSchema,
    "plan": PlanResultSchema,
    "plan-adapted": PlanAdaptedResultSchema,
    "plan-calendar": PlanCalendarResultSchema,
    **SETTING_RESULTS,
    **FORECAST_RESULTS,
    **LIFT_RESULTS,
    **GAIN_RESULTS,
    **DYNO_RESULTS,
    **COMPARE_RESULTS,
}


def _item(calc: str, schema: type[Schema]) -> type[Schema]:
    """Make the schema of an item for one calculation: SlackItem and so on."""
    name = schema.__name__.removesuffix("InputSchema") + "ItemSchema"
    parts = {
        "calc": choice((calc,), "Which calculation."),
        "input": fields.Nested(schema, required=True),
    }
    return type(name, (Strict,), parts | {"__doc__": "One calculation of a batch."})


class BatchInputSchema(Strict):
    """Several calculations, each answered for itself and in order."""

    items = fields.List(
        OneOf(*(_item(calc, schema) for calc, schema in INPUTS.items())),
        required=True, validate=validate.Length(0, MOST_ITEMS),
    )  # fmt: skip


class BatchDoneSchema(Schema):
    """A calculation of the batch that was done."""

    ok = fields.Boolean(required=True, metadata={"enum": [True]})
    result = OneOf(*RESULTS.values(), required=True)


class BatchRefusedSchema(Schema):
    """A calculation of the batch whose input was refused."""

    ok = fields.Boolean(required=True, metadata={"enum": [False]})
    problems = fields.List(fields.Nested(RefusalSchema), required=True, validate=validate.Length(1))


class BatchResultSchema(Schema):
    """The answers, in the order of the items."""

    results = fields.List(OneOf(BatchDoneSchema, BatchRefusedSchema), required=True)

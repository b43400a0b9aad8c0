"""How everything is worked out, and what guards it."""

from marshmallow import Schema, fields

from midspan.core import limits

from .quantity import choice, measure, words


class GuardedModuleSchema(Schema):
    """A module of the core, and what guards it beside published values."""

    module = words("Module of the core.")
    tests = words("File of the checks, in tests/core.")
    checked = words("What they hold it against.")


class SubjectSchema(Schema):
    """Relations that belong together."""

    id = words("Stable name.")
    label = words("Name on the screen.")
    modules = fields.List(fields.Nested(GuardedModuleSchema), required=True)


class GivenSchema(Schema):
    """An input of a proof."""

    name = words("What it is.")
    unit = words("Unit; empty where it has none.")


class ProvedSchema(Schema):
    """One published value beside ours, both in the unit of the proof."""

    given = fields.List(
        fields.Float(),
        required=True,
        metadata={"description": "Inputs, in the proof's order."},
    )
    printed = words("The value as printed.")
    published_value = measure("published_value")
    computed_value = measure("computed_value")
    difference_found = measure("difference_found")
    difference_allowed = measure("difference_allowed")
    holds = fields.Boolean(
        required=True, metadata={"description": "Whether ours is as near as allowed."}
    )


class ProofSchema(Schema):
    """Published values of one source that one relation must give; ours is worked out on asking."""

    relation = words("Module and function of the core.")
    what = words("The quantity printed.")
    unit = words("Its unit; empty where it has none.")
    given = fields.List(fields.Nested(GivenSchema), required=True)
    origin = choice(limits.ORIGINS, "How well the printed values are founded.")
    source = words("Title of the source.")
    address = words("Where the source is found; empty where no address was kept.")
    because = words("Why more than half of the last digit is allowed, or what else to know.")
    rows = fields.List(fields.Nested(ProvedSchema), required=True)


class RelationSchema(Schema):
    """A relation as its docstring has it."""

    relation = words("Module and function of the core.")
    gives = words("What it gives.")
    formula = words("The formula, and what goes with it; empty where there is none.")
    takes = words("Its inputs with their units, one a line.")
    result = words("Its result with its unit.")
    validity = words("Where it holds, and how well.")
    source = words("Where it comes from.")


class WorkedFigureSchema(Schema):
    """A figure of the answers, and the relations that it comes from."""

    figure = words("Its field in the answers, or what it stands for.")
    relations = fields.List(
        fields.String(), required=True, metadata={"description": "Most telling first."}
    )


class MethodsSchema(Schema):
    """Every relation of the core with its source and validity, and every published check value."""

    subjects = fields.List(fields.Nested(SubjectSchema), required=True)
    relations = fields.List(fields.Nested(RelationSchema), required=True)
    proofs = fields.List(fields.Nested(ProofSchema), required=True)
    figures = fields.List(fields.Nested(WorkedFigureSchema), required=True)

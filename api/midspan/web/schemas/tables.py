"""The core's two tables, and its answer to a batch."""

from marshmallow import Schema, fields, validate

from .problem import RefusalSchema
from .quantity import OneOf, words
from .results import BENCH_RESULTS, DriveResultSchema, LimitSchema


class LimitsSchema(Schema):
    """Every limit on file."""

    limits = fields.List(fields.Nested(LimitSchema), required=True)


class TermSchema(Schema):
    """A quantity: its symbol, unit, name and meaning, and what an input of it admits."""

    symbol = words("Symbol in formulas.")
    unit = words("Unit; empty where it has none.")
    label = words("Name on the screen.")
    meaning = words("What it means.")
    low = fields.Float(
        required=True, allow_none=True, metadata={"description": "Least input; null for outputs."}
    )
    high = fields.Float(
        required=True, allow_none=True, metadata={"description": "Largest input; null for outputs."}
    )
    whole = fields.Boolean(required=True, metadata={"description": "Whether it is a count."})


class GlossarySchema(Schema):
    """Every term, by the field name it has everywhere."""

    terms = fields.Dict(
        keys=fields.String(), values=fields.Nested(TermSchema), required=True,
    )  # fmt: skip


class BatchDoneSchema(Schema):
    """A calculation of the batch that was done."""

    ok = fields.Boolean(required=True, metadata={"enum": [True]})
    result = OneOf(DriveResultSchema, *BENCH_RESULTS, required=True)


class BatchRefusedSchema(Schema):
    """A calculation of the batch whose input was refused."""

    ok = fields.Boolean(required=True, metadata={"enum": [False]})
    problems = fields.List(fields.Nested(RefusalSchema), required=True, validate=validate.Length(1))


class BatchResultSchema(Schema):
    """The answers, in the order of the items."""

    results = fields.List(OneOf(BatchDoneSchema, BatchRefusedSchema), required=True)


class HealthSchema(Schema):
    """The service answers."""

    status = fields.String(required=True, metadata={"enum": ["up"]})
    core_version = words("Version of the calculations.")

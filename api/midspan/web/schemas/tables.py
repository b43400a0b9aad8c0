"""The core's tables: limits, materials, the glossary."""

from marshmallow import Schema, fields

from .quantity import words
from .results import LimitSchema
from .shelf_results import MaterialSchema


class LimitsSchema(Schema):
    """Every limit on file."""

    limits = fields.List(fields.Nested(LimitSchema), required=True)


class MaterialsSchema(Schema):
    """Every material on file."""

    materials = fields.List(fields.Nested(MaterialSchema), required=True)


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


class HealthSchema(Schema):
    """The service answers."""

    status = fields.String(required=True, metadata={"enum": ["up"]})
    core_version = words("Version of the calculations.")

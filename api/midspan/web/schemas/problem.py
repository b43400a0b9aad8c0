"""The one form of every error (RFC 9457)."""

from marshmallow import Schema, fields

from ..problems import TYPES
from .quantity import words

GOT = "The value received; text stands for what JSON cannot carry, such as NaN."


class FieldErrorSchema(Schema):
    """One field that was refused."""

    field = words("Dotted path, such as drive.centre_distance_mm; empty for the whole.")
    pointer = words("The same as a JSON pointer, such as #/drive/centre_distance_mm.")
    code = words("Stable word for programs, such as out-of-range.")
    got = fields.Raw(required=True, allow_none=True, metadata={"description": GOT})
    need = words("What is accepted, in words.")
    detail = words("The whole in one sentence.")
    next_step = words("What to do about it.")


class ProblemSchema(Schema):
    """A problem detail, RFC 9457. `errors` is there when fields were refused,
    `yours` and `theirs` when a record changed meanwhile."""

    type = fields.String(
        required=True,
        metadata={
            "description": "What kind of problem; the address of a page that says more, or "
            "about:blank where the status says it all.",
            "enum": TYPES,
        },
    )
    title = words("The kind in words.")
    status = fields.Integer(required=True, metadata={"description": "The HTTP status."})
    detail = words("What happened and what to do next.")
    instance = words("The request it happened on.")
    errors = fields.List(fields.Nested(FieldErrorSchema))
    yours = fields.Raw(
        allow_none=True, metadata={"description": "The record as sent; null if it was to go."}
    )
    theirs = fields.Raw(
        allow_none=True, metadata={"description": "The record as kept; null if there is none."}
    )


class RefusalSchema(Schema):
    """One thing wrong with the input of an item in a batch."""

    code = words("Stable word for programs, such as out-of-range.")
    field = words("Dotted path in the item's input.")
    got = fields.Raw(required=True, allow_none=True, metadata={"description": GOT})
    need = words("What is accepted, in words.")
    text = words("The whole in one sentence.")
    next_step = words("What to do about it.")

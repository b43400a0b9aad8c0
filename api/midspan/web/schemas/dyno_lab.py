"""A dyno's table read by the service: the file in, lines of progress and the pulls out."""

from marshmallow import fields

from .quantity import Strict


class TableQuerySchema(Strict):
    """How the table is laid out, if it is not to be guessed."""

    layout = fields.String(
        metadata={
            "description": "The layout as JSON, as guessed before and changed; guessed without it. "
            "The whole address may have some 8,000 characters, which does for twenty columns.",
            "maxLength": 60_000,
        }
    )

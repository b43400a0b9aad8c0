"""The file of everything, and what is said of a file that was taken in."""

from typing import Any

from marshmallow import Schema, fields, validate

from ..nouns import NOUNS
from .problem import FieldErrorSchema
from .quantity import Strict, choice, words
from .record_fields import Identifier, Moment
from .records import ADDED

FORMAT = "midspan-export"
FORM = 1
MOST_CHOSEN = 40


def _exported(record: type[Schema]) -> Schema:
    """Make the schema of a record in a file: all that is the user's, for any other store."""
    made: Any = type(
        f"Exported{record.__name__.removesuffix('RecordSchema')}Schema",
        (record,),
        {
            "__doc__": f"{record.__doc__} In a file: what is the user's alone.",
            "Meta": type("Meta", (), {"exclude": ADDED, "unknown": "raise"}),
        },
    )
    schema: Schema = made()
    return schema


EXPORTED: dict[str, Schema] = {noun.many: _exported(noun.record) for noun in NOUNS}

RecordsOfFileSchema: Any = type(
    "RecordsOfFileSchema",
    (Strict,),
    {"__doc__": "The records of a file by kind, each kind after those that it refers to."}
    | {kind: fields.List(fields.Nested(one), required=True) for kind, one in EXPORTED.items()},
)


class TombstoneSchema(Strict):
    """A record that was deleted."""

    kind = choice(EXPORTED, "Its kind.")
    id = Identifier("Its id.", required=True)
    deleted_at = Moment("When it was deleted.", required=True)
    record = fields.Dict(
        required=True, allow_none=True,
        metadata={"description": "Its content, as in records; null where it is not known."},
    )  # fmt: skip


class ExportFileSchema(Strict):
    """Everything of a shop, or of a phone, as one open file."""

    format = choice((FORMAT,), "Says what kind of file it is.")
    version = fields.Integer(
        required=True, validate=validate.OneOf([FORM]),
        metadata={"description": "Version of the form; a reader refuses those it does not know."},
    )  # fmt: skip
    exported_at = Moment("When it was written.", required=True)
    core_version = words("Version of the calculations of the app that wrote it.")
    kinds = fields.List(
        choice(EXPORTED, "A kind."), required=True,
        metadata={"description": "The kinds of records, parents before children."},
    )  # fmt: skip
    records = fields.Nested(RecordsOfFileSchema, required=True)
    tombstones = fields.List(fields.Nested(TombstoneSchema), required=True)


class ConflictSchema(Schema):
    """A record that is here and in the file, and not the same: the one here was kept."""

    kind = choice(EXPORTED, "Its kind.")
    id = Identifier("Its id.", required=True)
    here = fields.Dict(required=True, metadata={"description": "As it is kept here."})
    there = fields.Dict(required=True, metadata={"description": "As it is in the file."})
    deleted_here = fields.Boolean(required=True, metadata={"description": "It was deleted here."})
    deleted_there = fields.Boolean(
        required=True, metadata={"description": "The file says that it was deleted."}
    )


class NotTakenSchema(Schema):
    """A record of the file that could not be taken."""

    kind = words("Its kind, as the file says.")
    place = fields.Integer(
        required=True,
        metadata={"description": "Its place in the file's list, from 1; 0 for the list itself."},
    )
    id = Identifier("Its id, if it has one.", required=True, allow_none=True)
    errors = fields.List(fields.Nested(FieldErrorSchema), required=True)


class ImportReportSchema(Schema):
    """What became of a file: every record of it is counted or listed once."""

    added = fields.Integer(required=True, metadata={"description": "New, and kept."})
    same = fields.Integer(required=True, metadata={"description": "Kept before, the same."})
    taken = fields.Integer(
        required=True, metadata={"description": "Now as in the file, since it was chosen."}
    )
    conflicts = fields.List(fields.Nested(ConflictSchema), required=True)
    refused = fields.List(fields.Nested(NotTakenSchema), required=True)


class ImportQuerySchema(Strict):
    """What to do with records that differ."""

    take = fields.List(
        Identifier("The id of a record that is to become as in the file."),
        validate=validate.Length(0, MOST_CHOSEN, error="too-many"),
        metadata={
            "description": "Ids of records that are to become as in the file, of those that a "
            "first import listed as conflicts. A reading never changes.",
            "need": f"up to {MOST_CHOSEN} ids",
        },
    )


class ExportQuerySchema(Strict):
    """What to export."""

    format = choice(("json", "csv"), "Everything as JSON, or the readings as CSV.", required=False)

"""Marshmallow fields whose range, unit and meaning come from the core's glossary.

A bound is written once, in the glossary. `number` documents it and, where marshmallow does load
the input (records), has the core itself check it. The schemas of the calculations only document:
their input goes to the core as it came, so that the core names every problem.
"""

from collections.abc import Iterable
from typing import Any

from marshmallow import Schema, ValidationError, fields, validate

from midspan.core import glossary
from midspan.core.fields import MOST_READINGS, Form


class Strict(Schema):
    """Base of every input: a name it does not know is refused, never dropped."""

    class Meta:
        """Refuse unknown names."""

        unknown = "raise"

    error_messages = {"unknown": "unknown-field", "type": "not-an-object"}  # noqa: RUF012


def describe(name: str) -> str:
    """Give label, unit and meaning of a glossary term in one sentence for the reference."""
    term = glossary.TERMS[name]
    unit = f" [{term.unit}]" if term.unit else ""
    return f"{term.label}{unit}. {term.meaning}"


class _Number(fields.Field[float]):
    """An input number of the glossary, checked by the core."""

    default_error_messages = {"required": "missing", "null": "missing"}  # noqa: RUF012

    def __init__(self, term: str, **kwargs: Any) -> None:  # noqa: ANN401
        """Say what is accepted, for the reference and for refusals."""
        super().__init__(**kwargs)
        self.term = term

    def _deserialize(self, value: object, *_: object, **__: object) -> Any:  # noqa: ANN401
        form = Form({self.term: value})
        taken = form.take_number(self.term)
        if form.problems:
            raise ValidationError(str(form.problems[0]["code"]))
        return taken


class Quantity(_Number):
    """An input number that may have a fraction."""


class Count(_Number):
    """An input number that must be whole."""


def number(name: str, *, required: bool = True, note: str = "") -> _Number:
    """Make the field of one input number.

    Parameters
    ----------
    name : glossary term, which gives range, unit, label and meaning
    required : whether it must be given
    note : further words for the reference
    """
    term = glossary.TERMS[name]
    kind = Count if term.whole else Quantity
    metadata = {"description": f"{describe(name)} {note}".strip()}
    metadata |= {"need": glossary.need(name), "minimum": term.low, "maximum": term.high}
    return kind(name, required=required, allow_none=not required, metadata=metadata)


def readings(name: str, *, required: bool = False) -> fields.List[Any]:
    """Make the field of a list of readings of one quantity."""
    return fields.List(
        number(name),
        required=required,
        allow_none=not required,
        validate=validate.Length(1, MOST_READINGS),
        metadata={"description": describe(name)},
    )


def numbers(name: str, most: int) -> fields.List[Any]:
    """Make the field of a list of numbers of a record, which may be left out."""
    need = f"a list of up to {most} values, each {glossary.need(name)}"
    return fields.List(
        number(name),
        allow_none=True,
        validate=validate.Length(0, most, error="too-many"),
        error_messages={"invalid": "not-a-list"},
        metadata={"description": describe(name), "need": need},
    )


def measure(name: str, *, nullable: bool = False) -> fields.Float:
    """Make the field of one number of a result."""
    return fields.Float(
        required=True, allow_none=nullable, metadata={"description": describe(name)}
    )


def choice(
    choices: Iterable[str], description: str, *, required: bool = True, nullable: bool = False
) -> fields.String:
    """Make the field of one word out of several; None stands for not given where nullable."""
    words = list(choices)
    code = "not-a-choice"
    return fields.String(
        required=required,
        allow_none=nullable,
        validate=validate.OneOf(words, error=code),
        error_messages={"invalid": code, "required": "missing", "null": "missing"},
        metadata={"description": description, "need": "one of " + ", ".join(words)},
    )


def words(description: str, *, nullable: bool = False) -> fields.String:
    """Make the field of a text in a result."""
    return fields.String(required=True, allow_none=nullable, metadata={"description": description})


def whole(description: str) -> fields.Integer:
    """Make the field of a count in a result."""
    return fields.Integer(required=True, metadata={"description": description})


def nested(schema: type[Schema], description: str, *, nullable: bool = False) -> fields.Nested:
    """Make the field of a part of a result."""
    return fields.Nested(
        schema, required=True, allow_none=nullable, metadata={"description": description}
    )


def listed(schema: type[Schema], description: str) -> fields.List[Any]:
    """Make the field of a list of parts of a result."""
    return fields.List(fields.Nested(schema), required=True, metadata={"description": description})


class OneOf(fields.Field[Any]):
    """A value that has one of several schemas."""

    def __init__(self, *schemas: type[Schema], **kwargs: Any) -> None:  # noqa: ANN401
        """Take the schemas it may have."""
        super().__init__(**kwargs)
        self.schemas = schemas

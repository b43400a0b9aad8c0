"""Marshmallow fields of records. Their messages are the codes of problems; see `parsing`."""

import math
import re
from datetime import UTC, datetime
from typing import Any
from uuid import UUID

from marshmallow import Schema, ValidationError, fields

from midspan.store.written import Written

from .quantity import OneOf

IDENTIFIER = (
    "^[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-7[0-9a-fA-F]{3}-[89abAB][0-9a-fA-F]{3}-[0-9a-fA-F]{12}$"
)
MOMENT = r"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,6})?Z$"
NEED_IDENTIFIER = "a UUID of version 7, such as 01923f5e-8c00-7000-8000-000000000001"
# A tag is printed, and part of an address; `as_tag` also wants every character printable.
TAG = r"^[^\s/]([^/]{0,38}[^\s/])?$"
NEED_TAG = "1 to 40 printable characters, no slash, no blank at either end"
MOST_NESTING = 20
LARGEST = 1e12
_ABSENT: dict[str, Any] = {"required": "missing", "null": "missing"}


def as_identifier(value: object) -> UUID | None:
    """Read a UUIDv7, or give None for anything else."""
    found = isinstance(value, str) and re.fullmatch(IDENTIFIER, value, re.ASCII)
    return UUID(str(value)) if found else None


def as_moment(value: object) -> datetime | None:
    """Read a time in UTC, or give None for anything else."""
    if not isinstance(value, str) or not re.fullmatch(MOMENT, value, re.ASCII):
        return None
    try:
        return datetime.fromisoformat(value)
    except ValueError:  # a month 13 and the like
        return None


def as_tag(value: object) -> str | None:
    """Read a tag, or give None for anything else."""
    found = isinstance(value, str) and value.isprintable() and re.fullmatch(TAG, value)
    return str(value) if found else None


class Identifier(fields.Field[UUID]):
    """The id of a record: a UUIDv7, made where the record was made."""

    default_error_messages = _ABSENT

    def __init__(self, description: str, **kwargs: Any) -> None:  # noqa: ANN401
        """Say what is accepted, for the reference and for refusals."""
        metadata = {"description": description, "pattern": IDENTIFIER, "need": NEED_IDENTIFIER}
        super().__init__(metadata=metadata, **kwargs)

    def _serialize(self, value: object, *_: object, **__: object) -> str | None:
        return None if value is None else str(value)

    def _deserialize(self, value: object, *_: object, **__: object) -> UUID:
        found = as_identifier(value)
        if found is None:
            raise ValidationError("not-an-id")
        return found


class Moment(fields.Field[datetime]):
    """A point in time: RFC 3339, in UTC."""

    default_error_messages = _ABSENT

    def __init__(self, description: str, **kwargs: Any) -> None:  # noqa: ANN401
        """Say what is accepted, for the reference and for refusals."""
        need = "a time in UTC, such as 2026-01-31T12:00:00Z"
        metadata = {"description": description, "pattern": MOMENT, "need": need}
        super().__init__(metadata=metadata, **kwargs)

    def _serialize(self, value: datetime | None, *_: object, **__: object) -> str | None:
        return None if value is None else value.astimezone(UTC).isoformat().replace("+00:00", "Z")

    def _deserialize(self, value: object, *_: object, **__: object) -> datetime:
        found = as_moment(value)
        if found is None:
            raise ValidationError("not-a-time")
        return found


class Text(fields.Field[str]):
    """A text for a person to read, as typed."""

    default_error_messages = _ABSENT

    def __init__(self, longest: int, description: str, **kwargs: Any) -> None:  # noqa: ANN401
        """Say what is accepted, for the reference and for refusals."""
        least = 1 if kwargs.get("required") else 0
        need = f"text of {least} to {longest} characters, without control characters"
        metadata = {"description": description, "minLength": least, "maxLength": longest}
        super().__init__(metadata=metadata | {"need": need}, **kwargs)

    def _deserialize(self, value: object, *_: object, **__: object) -> str:
        if not isinstance(value, str):
            raise ValidationError("not-text")
        if len(value.strip()) < self.metadata["minLength"]:
            raise ValidationError("missing")
        if len(value) > self.metadata["maxLength"]:
            raise ValidationError("too-long")
        # NUL and unpaired surrogates are legal in JSON text but no database keeps them.
        if re.search("[\x00-\x08\x0b-\x1f\x7f\ud800-\udfff]", value):
            raise ValidationError("not-text")
        return value


class Tag(fields.Field[str]):
    """The user's own short name of a part, as on its label."""

    default_error_messages = _ABSENT

    def __init__(self, description: str, **kwargs: Any) -> None:  # noqa: ANN401
        """Say what is accepted, for the reference and for refusals."""
        metadata = {"description": description, "pattern": TAG, "need": NEED_TAG}
        super().__init__(metadata=metadata | {"minLength": 1, "maxLength": 40}, **kwargs)

    def _deserialize(self, value: object, *_: object, **__: object) -> str:
        found = as_tag(value)
        if found is None:
            raise ValidationError("not-a-tag" if isinstance(value, str) else "not-text")
        return found


class Amount(fields.Field[float]):
    """A number in a unit that stands beside it; any that is finite."""

    default_error_messages = _ABSENT

    def __init__(self, description: str, **kwargs: Any) -> None:  # noqa: ANN401
        """Say what is accepted, for the reference and for refusals."""
        metadata = {"description": description, "minimum": -LARGEST, "maximum": LARGEST}
        need = f"a number from {-LARGEST:g} to {LARGEST:g}"
        super().__init__(metadata=metadata | {"need": need}, **kwargs)

    def _deserialize(self, value: object, *_: object, **__: object) -> float:
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise ValidationError("not-a-number")
        if not -LARGEST <= value <= LARGEST:  # NaN is in no range
            finite = isinstance(value, int) or math.isfinite(value)
            raise ValidationError("out-of-range" if finite else "not-finite")
        return float(value)


class Flag(fields.Field[bool]):
    """Yes or no."""

    default_error_messages = _ABSENT

    def __init__(self, description: str, **kwargs: Any) -> None:  # noqa: ANN401
        """Say what is accepted, for the reference and for refusals."""
        metadata = {"description": description, "need": "true or false"}
        super().__init__(metadata=metadata, **kwargs)

    def _deserialize(self, value: object, *_: object, **__: object) -> bool:
        if not isinstance(value, bool):
            raise ValidationError("not-a-choice")
        return value


class Evidence(OneOf):
    """An object kept exactly as sent; only its size, depth and numbers are checked."""

    default_error_messages = _ABSENT

    def __init__(
        self,
        *schemas: type[Schema],
        longest: int,
        description: str,
        **kwargs: Any,  # noqa: ANN401
    ) -> None:
        """Say what is accepted, for the reference and for refusals."""
        need = f"an object of finite values, at most {longest} characters of JSON"
        metadata = {"description": description, "need": need}
        super().__init__(*schemas, metadata=metadata, **kwargs)
        self.longest = longest

    def _deserialize(self, value: object, *_: object, **__: object) -> dict[str, Any]:
        if not isinstance(value, dict):
            raise ValidationError("not-an-object")
        code = _fault(value, MOST_NESTING)
        if code is not None:
            raise ValidationError(code)
        return self.written(value)

    def written(self, value: dict[str, Any]) -> Written:
        """Take an object that is known to be sound, with its text."""
        written = Written(value)
        if len(written.text) > self.longest:
            raise ValidationError("too-long")
        return written


def _fault(value: dict[str, Any] | list[Any], depth: int) -> str | None:
    """Find what JSON cannot carry on: numbers that are not finite, and endless nesting."""
    if depth == 0:
        return "too-deep"
    for inner in value.values() if isinstance(value, dict) else value:
        if isinstance(inner, float):
            if not math.isfinite(inner):
                return "not-finite"
        elif isinstance(inner, (dict, list)):
            code = _fault(inner, depth - 1)
            if code is not None:
                return code
    return None

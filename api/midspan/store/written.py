"""JSON objects that are kept as they came, with the text they are kept as."""

import json
from typing import Any

import orjson


class Written(dict[str, Any]):
    """A JSON object with its text: many readings at once are then written only once."""

    __slots__ = ("text",)

    def __init__(self, value: dict[str, Any]) -> None:
        """Write it."""
        super().__init__(value)
        self.text = write(value)


class Packed:
    """A JSON object of which only the text is held: many readings at once are large unpacked."""

    __slots__ = ("text",)

    def __init__(self, text: str) -> None:
        """Take the text, as `write` makes it."""
        self.text = text

    def unpack(self) -> Any:  # noqa: ANN401  (an object of JSON)
        """Read the text."""
        return json.loads(self.text)


def write(value: object) -> str:
    """Write JSON in the order of its names, without blanks."""
    if isinstance(value, (Written, Packed)):
        return value.text
    try:
        return orjson.dumps(value).decode()
    except TypeError:  # half a surrogate pair, or an integer of more than 64 bits: both are JSON
        return json.dumps(value, separators=(",", ":"))

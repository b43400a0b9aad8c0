"""Reading a JSON object field by field, so that every problem is found and named at once."""

import math

from . import glossary
from .errors import Refused, problem

MOST_READINGS = 50
# Interpreters differ in what else they take for a blank.
BLANKS = " \t\n\r\x0b\x0c"


class Form:
    """One JSON object being read.

    Every `take_*` method returns the value, or None after noting a problem; `finish` raises
    what was noted. Parts of the object share the list of problems with the whole.

    Parameters
    ----------
    payload : the object received, of any JSON type
    path : dotted path of this object in the whole payload, "" for the whole
    problems : list that problems are added to; a new one if not given
    """

    def __init__(
        self, payload: object, path: str = "", problems: list[dict[str, object]] | None = None
    ) -> None:
        """Refuse nothing yet; a payload that is no object is noted as a problem."""
        self.path = path
        self.problems: list[dict[str, object]] = [] if problems is None else problems
        self.seen: set[str] = set()
        self.payload: dict[str, object] = {}
        if isinstance(payload, dict):
            self.payload = payload
        else:
            self.refuse("not-an-object", "", payload, "an object", "Send named fields.")

    def field(self, name: str) -> str:
        """Give the dotted path of a field of this object."""
        if not name:
            return self.path
        return self.path + "." + name if self.path else name

    def refuse(self, code: str, name: str, got: object, need: str, next_step: str) -> None:
        """Note a problem with the named field."""
        bare = name.split("[")[0]
        label = glossary.label(bare) if bare in glossary.TERMS else ""
        self.problems.append(problem(code, self.field(name), got, need, next_step, label))

    def has(self, name: str) -> bool:
        """Tell whether the field was given; null counts as not given."""
        self.seen.add(name)
        return self.payload.get(name) is not None

    def take_number(self, name: str, required: bool = True) -> float | None:
        """Read a number and hold it against the glossary's range."""
        self.seen.add(name)
        value = self.payload.get(name)
        if value is None:
            if required:
                self.refuse("missing", name, None, glossary.need(name), "Measure it or look it up.")
            return None
        return self._number(name, value)

    def take_numbers(self, name: str, most: int = MOST_READINGS) -> list[float] | None:
        """Read a list of one number or more, each held against the glossary's range."""
        values = self.payload[name] if self.has(name) else None
        if isinstance(values, list) and 1 <= len(values) <= most:
            taken = [self._number(name, values[i], i) for i in range(len(values))]
            numbers = [value for value in taken if value is not None]
            return numbers if len(numbers) == len(taken) else None
        need = "a list of 1 to " + str(most) + " readings, each " + glossary.need(name)
        if values is None:
            self.refuse("missing", name, None, need, "Take at least one reading, better three.")
        elif not isinstance(values, list):
            self.refuse("not-a-list", name, values, need, "Put the readings in a list.")
        elif not values:
            self.refuse("empty-list", name, "an empty list", need, "Take at least one reading.")
        else:
            got = str(len(values)) + " readings"
            self.refuse("too-many", name, got, need, "Keep the latest, or send them apart.")
        return None

    def take_choice(
        self, name: str, choices: tuple[str, ...], default: str | None = None
    ) -> str | None:
        """Read one of the given words."""
        if not self.has(name):
            if default is None:
                need = "one of " + ", ".join(choices)
                self.refuse("missing", name, None, need, "Say how it was measured.")
            return default
        value = self.payload[name]
        if isinstance(value, str) and value in choices:
            return value
        need = "one of " + ", ".join(choices)
        self.refuse("not-a-choice", name, value, need, "Choose one of these words.")
        return None

    def take_flag(self, name: str, default: bool) -> bool:
        """Read true or false."""
        if not self.has(name):
            return default
        value = self.payload[name]
        if not isinstance(value, bool):
            self.refuse("not-a-choice", name, value, "true or false", "Send a JSON boolean.")
            return default
        return value

    def take_text(self, name: str, longest: int) -> str | None:
        """Read a text of one to `longest` characters."""
        need = "text of 1 to " + str(longest) + " characters"
        value = self.payload[name] if self.has(name) else None
        if isinstance(value, str) and 1 <= len(value.strip(BLANKS)) <= longest:
            return value.strip(BLANKS)
        code = "missing" if value is None or value == "" else "not-text"
        self.refuse(code, name, value, need, "Say where the figure comes from.")
        return None

    def take_form(self, name: str) -> "Form | None":
        """Open the object in a field, or give None if it is not given."""
        if not self.has(name):
            return None
        return Form(self.payload[name], self.field(name), self.problems)

    def take_forms(self, name: str, most: int, required: bool = True) -> "list[Form]":
        """Open every object in a list of up to `most`."""
        need = "a list of up to " + str(most) + " objects"
        if not self.has(name):
            if required:
                self.refuse("missing", name, None, need, "Send a list, empty if there is none.")
            return []
        values = self.payload[name]
        if not isinstance(values, list):
            self.refuse("not-a-list", name, values, need, "Send a list.")
            return []
        if len(values) > most:
            self.refuse("too-many", name, str(len(values)) + " items", need, "Send fewer.")
            return []
        return [
            Form(values[i], self.field(name) + "[" + str(i) + "]", self.problems)
            for i in range(len(values))
        ]

    def close(self) -> None:
        """Note every field that nothing asked for: most often a slip in its name."""
        for name in sorted(self.payload):
            if name not in self.seen:
                known = ", ".join(sorted(self.seen))
                got = self.payload[name]
                self.refuse("unknown-field", str(name)[:80], got, "no such field", "Use: " + known)

    def finish(self) -> None:
        """Raise Refused if any problem was noted, here or in a part of this object."""
        if self.problems:
            raise Refused(self.problems)

    def _number(self, name: str, value: object, index: int | None = None) -> float | None:
        """Hold a number against its range; index is its place in a list."""
        term = glossary.TERMS[name]
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            code, step = "not-a-number", "Send a JSON number, no text or unit."
        elif isinstance(value, float) and not math.isfinite(value):
            code, step = "not-finite", "Measure again; this is no reading."
        # Range first: an integer of any size compares, but not every one converts to a float.
        elif value < term.low or value > term.high:
            code, step = "out-of-range", "Check the unit and the digits."
        elif term.whole and value != int(value):
            code, step = "not-whole", "Count again: there are no part teeth."
        else:
            return int(value) if term.whole else float(value)
        place = name if index is None else name + "[" + str(index) + "]"
        self.refuse(code, place, value, glossary.need(name), step)
        return None

"""When two interpreters' answers are the same: texts exactly, numbers to 1e-12."""

import math
from collections.abc import Iterator
from typing import Any

# Numbers agree to 1e-12 of themselves. Those that are differences of lengths can come out near
# nothing, where that means less than rounding: they agree to 1e-12 mm (or degree, or per cent).
TOLERANCE = 1e-12
# A movement is the root of twice the strand times the excess length, itself a difference of
# lengths: near nothing it is its square that agrees, to 1e-12 mm times a strand of 100 mm.
OF_SQUARES = 100 * TOLERANCE
# The pull of a tight chain is such a difference times the stiffness of the loop, here 1,000 N/mm.
OF_PULLS = 1000 * TOLERANCE


def differences(here: Any, there: Any, path: str = "") -> Iterator[str]:
    """Every place where two answers differ."""
    if is_number(here) and is_number(there):
        root = "movement_mm" in path and abs(here * here - there * there) <= OF_SQUARES
        near = OF_PULLS if "tension_n" in path else TOLERANCE
        if not root and not math.isclose(here, there, rel_tol=TOLERANCE, abs_tol=near):
            yield f"{path}: {here!r} and {there!r}"
    elif isinstance(here, dict) and isinstance(there, dict) and here.keys() == there.keys():
        for name in here:
            yield from differences(here[name], there[name], f"{path}.{name}")
    elif isinstance(here, list) and isinstance(there, list) and len(here) == len(there):
        for place, (one, other) in enumerate(zip(here, there, strict=True)):
            yield from differences(one, other, f"{path}[{place}]")
    elif here != there or type(here) is not type(there):
        yield f"{path}: {here!r} and {there!r}"


def is_number(value: Any) -> bool:
    """Whether it is a JSON number."""
    return isinstance(value, (int, float)) and not isinstance(value, bool)

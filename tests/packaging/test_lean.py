"""The core as packed for the phone is the same program, less what never runs."""

import ast
from collections.abc import Iterator
from inspect import CO_OPTIMIZED
from pathlib import Path
from types import CodeType

import pytest

import lean

CORE = sorted((Path(__file__).resolve().parents[2] / "api/midspan/core").glob("*.py"))
WHOLE = '''
"""Said of the module."""
from math import pi  # its ratio

LEAST: float = 0.5


class Point:
    """Said of the class."""

    x: int


def area(radius: float, *, times: "int" = 2) -> float:
    """Said of the function."""
    word: str
    if times:
        half: list = [radius, "# no comment"]
    return pi * half[0] ** times
'''
LEFT = """from math import pi
LEAST = 0.5

class Point:
\tpass

def area(radius, *, times=2):
\tif times:
\t\thalf = [radius, '# no comment']
\treturn pi * half[0] ** times"""


def test_what_never_runs_is_left_out() -> None:
    assert lean.lean(WHOLE) == LEFT
    ran: dict[str, object] = {}
    exec(LEFT, ran)  # noqa: S102 - the text above
    whole: dict[str, object] = {}
    exec(WHOLE, whole)  # noqa: S102 - the text above
    assert ran["area"](3.0) == whole["area"](3.0)  # type: ignore[operator]


def test_a_string_over_several_lines_stays_as_it_is() -> None:
    text = lean.lean('def f(a):\n    return f"""{a}\n        deep"""')
    scope: dict[str, object] = {}
    exec(text, scope)  # noqa: S102 - the text above
    assert scope["f"](1) == "1\n        deep"  # type: ignore[operator]


@pytest.mark.parametrize("path", CORE, ids=lambda path: path.name)
def test_every_module_of_the_core_is_the_same_program(path: Path) -> None:
    source = path.read_text("utf-8")
    packed = lean.lean(source)
    left, whole = functions(packed), functions(source)
    assert [one.co_qualname for one in left] == [one.co_qualname for one in whole]
    for one, other in zip(left, whole, strict=True):
        for what in ("co_names", "co_varnames", "co_consts"):
            assert getattr(one, what) == getattr(other, what), one.co_qualname
    for node in ast.walk(ast.parse(packed)):
        assert not (isinstance(node, ast.arg) and node.annotation), node.lineno
        assert not isinstance(node, ast.AnnAssign), node.lineno


def functions(source: str) -> list[CodeType]:
    """The code of every innermost function, in order; that around them sets up annotations too."""

    def within(code: CodeType) -> Iterator[CodeType]:
        for one in code.co_consts:
            if isinstance(one, CodeType):
                inner = list(within(one))
                yield from inner or [one] if one.co_flags & CO_OPTIMIZED else inner

    return list(within(compile(source, "core", "exec", optimize=2)))

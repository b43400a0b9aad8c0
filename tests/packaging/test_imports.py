"""The core imports four standard modules and itself, so that MicroPython can run it."""

import ast
from pathlib import Path

import pytest

CORE = Path(__file__).resolve().parents[2] / "api/midspan/core"
ALLOWED = {"math", "json", "re", "collections"}
FILES = sorted(CORE.glob("*.py"))


class _Run(ast.NodeTransformer):
    """Leaves out what only type checkers read: no interpreter ever comes there."""

    def visit_If(self, node: ast.If) -> ast.AST | None:
        """Drop `if TYPE_CHECKING:`, which the core itself sets to false."""
        checking = isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING"
        return None if checking and not node.orelse else self.generic_visit(node)


def imported(tree: ast.AST) -> set[str]:
    """Top names of what a module imports from outside its own package."""
    found = set()
    for node in ast.walk(_Run().visit(tree)):
        if isinstance(node, ast.Import):
            found |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            found.add((node.module or "").partition(".")[0])
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 1, "the core imports from nothing above itself"
    return found


def test_there_are_files_to_check() -> None:
    assert len(FILES) > 10


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_core_imports_only_what_micropython_has(path: Path) -> None:
    assert imported(ast.parse(path.read_text())) <= ALLOWED

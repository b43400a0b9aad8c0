"""Print the Python core as the phone loads it: JSON of file name to source, less what never runs.

``python api/lean.py FOLDER`` leaves out comments, docstrings and annotations, by Python's own
parser: a third of what the phone would fetch. The names stay, so that a traceback can be read.
"""

import ast
import json
import re
import sys
from pathlib import Path


def strip(tree: ast.AST) -> ast.AST:
    """Take out of a parsed module what the interpreter would only skip."""
    for node in ast.walk(tree):
        if isinstance(node, ast.arg):
            node.annotation = None
        if isinstance(node, ast.FunctionDef):
            node.returns = None
        if (
            isinstance(node, (ast.Module, ast.ClassDef, ast.FunctionDef))
            and ast.get_docstring(node, clean=False) is not None
        ):
            del node.body[0]
        for block in ("body", "orelse", "finalbody"):
            statements = getattr(node, block, None)
            if isinstance(statements, list):
                left = [bare(one) for one in statements if not only_told(one)]
                setattr(node, block, left or ([ast.Pass()] if block == "body" else []))
    return ast.fix_missing_locations(tree)


def only_told(statement: ast.stmt) -> bool:
    """Whether this tells a type and does nothing."""
    return isinstance(statement, ast.AnnAssign) and statement.value is None


def bare(statement: ast.stmt) -> ast.stmt:
    """Give the same assignment without its annotation."""
    if isinstance(statement, ast.AnnAssign) and statement.value is not None:
        return ast.Assign([statement.target], statement.value)
    return statement


def lean(source: str) -> str:
    """Give the same program in fewer bytes."""
    tree = strip(ast.parse(source))
    text = ast.unparse(tree)
    tabs = re.sub(r"^(?: {4})+", lambda found: "\t" * (len(found[0]) // 4), text, flags=re.M)
    # A string that goes over several lines would have been changed as well.
    return tabs if ast.dump(ast.parse(tabs)) == ast.dump(tree) else text


def main() -> None:
    """Print every module of the folder."""
    files = sorted(Path(sys.argv[1]).glob("*.py"))
    print(json.dumps({one.name: lean(one.read_text("utf-8")) for one in files}))


if __name__ == "__main__":
    main()

"""Every public function of the core says the same things in the same order."""

import ast
import re
from pathlib import Path

import pytest

import midspan.core

CORE = Path(midspan.core.__file__).parent
SECTIONS = ["Parameters", "Returns", "Raises", "Validity", "Reference"]
# These read, carry or put together; a relation between quantities is what the form is for. They
# must still say what they do and what they take.
PLUMBING = {
    "__init__", "adjust_words", "bench", "build", "calc_adjust", "calc_bored", "calc_calendar",
    "calc_cam", "calc_clearance", "calc_combined", "calc_compare", "calc_correction", "calc_drive",
    "calc_elongation", "calc_fit", "calc_forecast", "calc_gain", "calc_gear", "calc_heat",
    "calc_lift", "calc_matrix", "calc_plan", "calc_plan_adapted", "calc_pulls", "calc_rock",
    "calc_rockers", "calc_slack", "calc_spark", "calc_tdc", "cam_card", "cam_checks",
    "cam_compare", "chain_share", "compare_asked", "compare_said", "correction_standards",
    "crank_input", "design_words", "dispatch", "dyno_layout", "dyno_pulls", "dyno_records",
    "dyno_rows", "dyno_table", "dyno_units", "errors", "fields", "forecast_asked", "forecast_told",
    "gain_asked", "gain_told", "glossary", "groups", "instrument", "left_out", "lift_table",
    "limits", "limits_valve", "lobe_timing", "materials", "measurement", "plan_asked", "plan_log",
    "plan_said", "plan_steps", "running_cautions", "running_figures", "setting", "term",
    "valve_events", "verdict", "version", "warnings", "wheel",
}  # fmt: skip
# One line says it all.
ONE_LINE = {("phase", "degrees"), ("phase", "radians"), ("uncertainty", "mean"),
            ("state", "excess_of_elongation"), ("drive", "at"), ("algebra", "times"),
            ("setting_search", "count_settings"),
            ("quantiles", "spread_of"), ("quantiles", "scaled"),
            ("wear_prior", "wear_at"), ("normal_points", "kept_points"),
            ("next_reading", "excess_slopes"), ("next_reading", "covered"),
            ("next_reading", "excess_at"),
            ("proofs", "published"), ("proofs", "recalled"),
            ("days", "take_day"), ("days", "take_moment")}  # fmt: skip


def public_functions() -> list[tuple[str, ast.FunctionDef]]:
    found = []
    for path in sorted(CORE.glob("*.py")):
        for node in ast.parse(path.read_text("utf-8")).body:
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                found.append((path.stem, node))
    return found


FUNCTIONS = public_functions()
FULL = [
    (module, node)
    for module, node in FUNCTIONS
    if module not in PLUMBING and (module, node.name) not in ONE_LINE
]


def name_of(value: object) -> str:
    return value if isinstance(value, str) else getattr(value, "name", "")


def sections(text: str) -> dict[str, str]:
    """The body of each underlined section."""
    parts = re.split(r"^(\w+)\n-+$", text, flags=re.MULTILINE)
    return {parts[i]: parts[i + 1].strip() for i in range(1, len(parts), 2)}


def test_the_relations_are_all_looked_at() -> None:
    modules = {module for module, _ in FULL}
    assert modules >= {
        "drive",
        "elongation",
        "movement",
        "phase",
        "student",
        "uncertainty",
        "guard",
        "heat",
        "gear",
        "combine",
        "chisquare",
        "algebra",
    }
    assert len(FULL) >= 35
    assert {(m, n.name) for m, n in FUNCTIONS} >= ONE_LINE - {("drive", "at")}


@pytest.mark.parametrize(("module", "node"), FUNCTIONS, ids=name_of)
def test_a_public_function_says_what_it_does(module: str, node: ast.FunctionDef) -> None:
    text = ast.get_docstring(node)
    assert text, f"{module}.{node.name}"
    summary = text.split("\n\n")[0]
    assert summary.endswith((".", "]")), summary
    assert all(arg.annotation for arg in (*node.args.args, *node.args.kwonlyargs))
    assert node.returns is not None


@pytest.mark.parametrize(("module", "node"), FULL, ids=name_of)
def test_a_relation_has_the_fixed_form(module: str, node: ast.FunctionDef) -> None:
    text = ast.get_docstring(node) or ""
    found = sections(text)
    assert list(found) == SECTIONS, f"{module}.{node.name}"
    assert all(found.values()), "an empty section"
    for argument in node.args.args:
        assert re.search(rf"\b{argument.arg}\b", found["Parameters"]), argument.arg
    raised = {
        ast.unparse(n.exc).split("(")[0]
        for n in ast.walk(node)
        if isinstance(n, ast.Raise) and n.exc is not None
    }
    for name in raised:
        assert name in found["Raises"]
    if not raised and found["Raises"] != "none":
        assert re.search(r"Error|whatever|Refused", found["Raises"])


@pytest.mark.parametrize(
    ("module", "node"),
    [(m, n) for m, n in FULL if "float" in ast.unparse(n.returns or ast.Constant(None))],
    ids=name_of,
)
def test_a_number_comes_with_its_unit(module: str, node: ast.FunctionDef) -> None:
    found = sections(ast.get_docstring(node) or "")
    unit = r"\[[^\]]+\]|by field name|units? (of|their|its)"
    assert re.search(unit, found["Returns"]), f"{module}.{node.name}: {found['Returns']}"
    if any(ast.unparse(a.annotation) == "float" for a in node.args.args if a.annotation):
        assert re.search(r"\[[^\]]+\]", found["Parameters"])


@pytest.mark.parametrize("stem", sorted(path.stem for path in CORE.glob("calc_*.py")))
def test_a_calculation_has_the_fixed_form(stem: str) -> None:
    node = next(n for m, n in FUNCTIONS if m == stem and n.name == "calculate")
    assert list(sections(ast.get_docstring(node) or "")) == SECTIONS


@pytest.mark.parametrize("path", sorted(CORE.glob("*.py")), ids=lambda path: path.name)
def test_a_module_says_what_it_is_and_can_be_read_at_a_sitting(path: Path) -> None:
    text = path.read_text("utf-8")
    assert ast.get_docstring(ast.parse(text))
    assert len(text.splitlines()) <= 400

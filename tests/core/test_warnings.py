"""What is odd but possible is said, and does not stop the answer."""

import pytest

from core.drives import WORKED, Payload
from midspan.core import run


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"links": 59}, "odd-links"),
        ({"centre_distance_mm": 114.30}, "chain-shorter-than-drive"),
        ({"links": 62}, "chain-much-longer"),
        ({"crank_teeth": 9, "cam_teeth": 60, "drive_kind": "general", "centre_distance_mm": 120.0,
          "links": 66}, "small-wrap"),
    ],
)  # fmt: skip
def test_what_is_odd_but_possible_is_warned_of(change: Payload, code: str) -> None:
    found = run("drive", {"drive": {**WORKED, **change}})
    plain = run("drive", {"drive": WORKED})
    warned = {w["code"]: w for w in found["warnings"]}
    assert code in warned
    assert code not in {w["code"] for w in plain["warnings"]}
    assert warned[code]["text"]
    assert warned[code]["field"].startswith("drive.")


@pytest.mark.parametrize(("count", "code"), [(1, "single-reading"), (2, "two-readings"), (3, None)])
def test_few_readings_are_warned_of(count: int, code: str | None) -> None:
    found = run("slack", {"drive": WORKED, "method": "total", "readings_mm": [5.5] * count})
    codes = {w["code"] for w in found["warnings"]} & {"single-reading", "two-readings"}
    assert codes == ({code} if code else set())


def test_a_reading_that_the_drive_cannot_have_is_warned_of() -> None:
    # 60 mm of movement needs 16 mm of excess: a chain worn 2.8 %; 100 mm, one worn past 6 %.
    found = run("slack", {"drive": WORKED, "method": "total", "readings_mm": [100.0] * 3})
    assert "reading-against-geometry" in {w["code"] for w in found["warnings"]}
    found = run("slack", {"drive": WORKED, "method": "total", "readings_mm": [6.0] * 3})
    assert "reading-against-geometry" not in {w["code"] for w in found["warnings"]}


def test_a_new_chain_that_would_already_be_too_loose_is_warned_of() -> None:
    """Centres typed 0.65 mm short: a new chain moves past 1/2 in; the taut distance is named."""
    found = run("drive", {"drive": {**WORKED, "centre_distance_mm": 113.50}})
    warned = {w["code"]: w for w in found["warnings"]}
    assert found["movement_mm"] > 12.7
    assert "114.16 mm" in warned["new-chain-too-loose"]["text"]  # 114.155, tests of the drive


def test_wear_below_nothing_is_warned_of() -> None:
    short = {"method": "pin-to-pin", "pitch_mm": 9.525, "pitches": 10, "readings_mm": [95.1] * 3}
    assert "below-nominal" in {w["code"] for w in run("elongation", short)["warnings"]}
    short["readings_mm"] = [95.26] * 3
    assert "below-nominal" not in {w["code"] for w in run("elongation", short)["warnings"]}

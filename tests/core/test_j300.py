"""SAE J300, row by row, and the grades that are none."""

from typing import Any

import pytest

from core.plans import PLAN
from core.reference import rows
from midspan.core import run
from midspan.core.errors import Refused
from midspan.core.j300 import grade_of

SUMMER = rows("sae-j300-2015-summer")
WINTER = rows("sae-j300-2015-winter")
LIGHT = {"0W", "5W", "10W"}


def grade(text: str) -> dict[str, Any]:
    found = grade_of(text)
    assert found is not None
    return found


@pytest.mark.parametrize("row", SUMMER, ids=lambda row: row["grade"])
def test_a_single_grade_is_its_row(row: dict[str, str]) -> None:
    found = grade("SAE " + row["grade"])
    assert found["grade"] == row["grade"]
    assert found["viscosity_100c_low_mm2_per_s"] == float(row["kv100_min"])
    assert found["viscosity_100c_high_mm2_per_s"] == float(row["kv100_below"])
    assert found["hths_low_mpa_s"] == float(row["hths_min"])
    assert found["cranking_high_mpa_s"] is found["pumping_at_c"] is None


@pytest.mark.parametrize("row", WINTER, ids=lambda row: row["grade"])
def test_a_winter_grade_is_its_row(row: dict[str, str]) -> None:
    found = grade(row["grade"].lower())
    assert found["viscosity_100c_low_mm2_per_s"] == float(row["kv100_min"])
    assert found["viscosity_100c_high_mm2_per_s"] is found["hths_low_mpa_s"] is None
    assert found["cranking_high_mpa_s"] == float(row["cranking_max"])
    assert found["cranking_at_c"] == float(row["cranking_at"])
    assert found["pumping_high_mpa_s"] == float(row["pumping_max"])
    assert found["pumping_at_c"] == float(row["pumping_at"])


@pytest.mark.parametrize("hot", SUMMER, ids=lambda row: row["grade"])
@pytest.mark.parametrize("cold", WINTER, ids=lambda row: row["grade"])
def test_a_multigrade_meets_both_rows_or_is_none(cold: dict[str, str], hot: dict[str, str]) -> None:
    found = grade_of(cold["grade"] + hot["grade"])
    if float(cold["kv100_min"]) >= float(hot["kv100_below"]):
        assert found is None
        return
    assert found is not None
    assert found["grade"] == f"{cold['grade']}-{hot['grade']}"
    least = max(float(cold["kv100_min"]), float(hot["kv100_min"]))
    assert found["viscosity_100c_low_mm2_per_s"] == least
    column = "hths_min_light" if cold["grade"] in LIGHT else "hths_min"
    assert found["hths_low_mpa_s"] == float(hot[column])


def test_the_older_table_is_not_the_one_used() -> None:
    assert grade("10W-40")["hths_low_mpa_s"] == 3.5
    assert grade("15W-40")["hths_low_mpa_s"] == 3.7
    assert grade("20")["viscosity_100c_low_mm2_per_s"] == 6.9


@pytest.mark.parametrize(
    "text", ["", "W", "70", "3W-30", "25W-20", "10W-45", "80W-90", "ten", "٣٠"]
)
def test_what_is_no_grade_is_refused_by_name(text: str) -> None:
    assert grade_of(text) is None
    if text:
        with pytest.raises(Refused) as caught:
            run("plan", PLAN | {"oil": {"kind": "mineral", "grade": text}})
        assert [p["field"] for p in caught.value.problems] == ["oil.grade"]
        assert "J300" in str(caught.value.problems[0]["need"])

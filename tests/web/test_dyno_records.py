"""Dyno sessions and runs: what the core refuses in them, and that a run is never changed."""

from copy import deepcopy
from typing import Any

import pytest

from midspan.core.errors import Refused
from midspan.web.examples import WRITES
from midspan.web.nouns import BY_NAME, take

SESSION, RUN = WRITES["session"], WRITES["run"]


def codes(kind: str, sent: dict[str, Any]) -> set[tuple[str, str]]:
    with pytest.raises(Refused) as refused:
        take(BY_NAME[kind], sent)
    return {(str(p["field"]), str(p["code"])) for p in refused.value.problems}


def test_the_examples_are_taken_as_they_are_sent() -> None:
    taken = take(BY_NAME["runs"], RUN)
    for part in ("conditions", "peaks", "curve"):
        assert taken[part] == RUN[part]
    assert take(BY_NAME["sessions"], SESSION)["settings"] == SESSION["settings"]
    assert BY_NAME["runs"].model.append_only
    assert not BY_NAME["sessions"].model.append_only


def test_two_settings_under_one_key_are_refused() -> None:
    sent = deepcopy(SESSION)
    sent["settings"][1]["key"] = "A"
    assert codes("sessions", sent) == {("settings[1].key", "given-twice")}


@pytest.mark.parametrize(
    ("part", "value", "field", "code"),
    [
        ("curve", {"speed_rpm": [3000, 2900], "torque_nm": [1, 2]}, "curve.speed_rpm[1]",
         "not-rising"),
        ("curve", {"speed_rpm": [3000, 3100], "torque_nm": [1]}, "curve.torque_nm", "not-a-pair"),
        ("curve", {"speed_rpm": [3000.0] * 401, "torque_nm": [1.0]}, "curve.speed_rpm", "too-many"),
        ("conditions", {"air_temperature_c": 20}, "conditions.station_pressure_kpa", "missing"),
        ("peaks", {"power_hp": 300}, "peaks.power_hp", "unknown-field"),
    ],
)  # fmt: skip
def test_what_no_run_can_be_is_refused_by_field(
    part: str, value: object, field: str, code: str
) -> None:
    assert (field, code) in codes("runs", RUN | {part: value})


def test_a_run_without_any_figure_is_refused() -> None:
    assert codes("runs", RUN | {"peaks": {}, "curve": None}) == {("peaks", "missing")}


@pytest.mark.parametrize("figures_are", ["corrected", "sae", 3])
def test_figures_of_no_known_standard_are_refused(figures_are: object) -> None:
    assert {field for field, _ in codes("runs", RUN | {"figures_are": figures_are})} == {
        "figures_are"
    }

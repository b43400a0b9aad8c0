"""Tables of a dyno: guessed, cut into pulls, reduced; and every row of them accounted for."""

import json
import math
import random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dyno_files import LBF_FT, noisy, rows, spoiled, torque, written
from midspan.core import run
from midspan.core.dyno_layout import cells_of, figure, guess
from midspan.core.dyno_pulls import reduced
from midspan.core.dyno_units import power_of, torque_of
from midspan.core.errors import Refused


def read(text: str, layout: dict[str, Any] | None = None, pieces: int = 1) -> dict[str, Any]:
    """Read a table in so many pieces, the state through JSON as on the phone."""
    layout = layout or run("dyno-table", {"step": "guess", "text": text})["layout"]
    lines = text.splitlines(keepends=True)
    size = max(1, math.ceil(len(lines) / pieces))
    state = None
    parts = [lines[i : i + size] for i in range(0, len(lines), size)]
    for i, part in enumerate(parts):
        found = run("dyno-table", {"step": "read", "text": "".join(part), "layout": layout,
                                   "state": state, "last": i == len(parts) - 1})  # fmt: skip
        state = json.loads(json.dumps(found["state"]))
    return found["done"]


def used(layout: dict[str, Any]) -> dict[str, tuple[int, str]]:
    return {c["role"]: (c["column"], c["unit"]) for c in layout["columns"] if c["role"]}


# ---- the guess


@pytest.mark.parametrize("sign", [";", "\t", ",", "|"])
@pytest.mark.parametrize("comma", [True, False])
@pytest.mark.parametrize("tongue", ["de", "en"])
def test_separator_decimal_sign_columns_and_units_are_made_out(
    sign: str, comma: bool, tongue: str
) -> None:
    if sign == "," and comma:
        return  # nobody can tell those apart; such files have quoted cells
    layout = guess(written([rows()], tongue, sign, comma))
    assert {"separator": layout["separator"], "comma": layout["decimal_comma"]} == {
        "separator": {";": "semicolon", "\t": "tab", ",": "comma", "|": "bar"}[sign],
        "comma": comma,
    }
    units = {"de": ("rpm", "N m", "kW", "degC"), "en": ("rpm", "lbf ft", "hp", "degF")}[tongue]
    roles = ("speed", "torque", "power", "air")
    assert used(layout) == {r: (i + 1, units[i]) for i, r in enumerate(roles)}
    assert layout["header_lines"] == 1


def test_lines_above_and_a_row_of_units_are_made_out() -> None:
    text = "Cell 2\nmade up;\n\nSpeed;Torque;Oil temp\n[rpm];[Nm];[°C]\n" + "".join(
        f"{n:.0f};{t:.1f};92.0\n" for n, t in rows()
    )
    layout = guess(text)
    assert layout["header_lines"] == 5
    assert used(layout) == {"speed": (1, "rpm"), "torque": (2, "N m"), "oil": (3, "degC")}
    assert all(c["by"] == "heading" for c in layout["columns"])


def test_without_a_heading_the_speed_is_known_by_its_size_and_the_rest_is_asked() -> None:
    text = "".join(f"{i},{n:.0f},{t:.1f}\n" for i, (n, t) in enumerate(rows()))
    layout = guess(text)
    assert layout["header_lines"] == 0
    assert used(layout) == {"speed": (2, "rpm")}
    with pytest.raises(Refused) as refused:
        run("dyno-table", {"step": "read", "text": text, "layout": layout})
    assert refused.value.problems[0]["field"] == "layout.columns"


@pytest.mark.parametrize(
    ("value", "unit"),
    [("98.4", "kPa"), ("984", "hPa"), ("29.06", "inHg"), ("738", "mmHg"), ("0.984", "bar")],
)
def test_the_unit_of_a_pressure_is_known_by_its_size(value: str, unit: str) -> None:
    text = "rpm,torque Nm,baro\n" + "".join(f"{n:.0f},{t:.1f},{value}\n" for n, t in rows())
    assert used(guess(text))["pressure"] == (3, unit)
    air = read(text)["pulls"][0]["air"]["station_pressure_kpa"]
    assert air == pytest.approx(98.4, abs=0.1)


def test_corrected_figures_are_asked_about() -> None:
    text = "rpm,corr. torque SAE (Nm)\n" + "".join(f"{n:.0f},{t:.1f}\n" for n, t in rows())
    assert "looks-corrected" in [w["code"] for w in read(text)["warnings"]]


@pytest.mark.parametrize(
    ("cell", "comma", "value"),
    [("3.5", False, 3.5), ("3,5", True, 3.5), ("1e3", False, 1000.0), ("+2", False, 2.0),
     ("-.5", False, -0.5), ("3,5", False, None), ("3.5", True, None), ("nan", False, None),
     ("inf", False, None), ("1_0", False, None), ("", False, None), ("0x10", False, None),
     ("1e99", False, None), ("3 kW", False, None)],
)  # fmt: skip
def test_a_figure_is_a_number_and_nothing_else(cell: str, comma: bool, value: float | None) -> None:
    assert figure(cell, comma) == value


def test_a_quoted_cell_may_hold_the_separator() -> None:
    assert cells_of('"3000,5","a, b",2', "comma") == ["3000,5", "a, b", "2"]


# ---- pulls


@pytest.mark.parametrize("between", ["", "blank", "heading"])
def test_pulls_in_one_file_are_told_apart(between: str) -> None:
    done = read(written([rows(), rows(), rows(3000, 6000)], between=between))
    assert [pull["rows_used"] for pull in done["pulls"]] == [201, 201, 151]
    assert done["bad_count"] == 0


def test_a_blank_line_or_the_heading_ends_a_pull_that_speed_alone_would_not() -> None:
    parts = [rows(2500, 4000), rows(4020, 6500)]
    assert len(read(written(parts))["pulls"]) == 1
    assert len(read(written(parts, between="blank"))["pulls"]) == 2
    assert len(read(written(parts, between="heading"))["pulls"]) == 2


def test_a_run_column_tells_pulls_apart() -> None:
    text = "run,rpm,Nm\n" + "".join(f"{'AB'[n > 4000]},{n:.0f},{t:.1f}\n" for n, t in rows())
    assert [pull["run"] for pull in read(text)["pulls"]] == ["A", "B"]


def test_the_way_down_is_counted_and_left_out() -> None:
    up = rows()
    down = [(n, -20.0) for n, _ in reversed(rows(2500, 6480))]
    done = read(written([[*up, *down, *up]]))
    first, second = done["pulls"]
    assert max(first["curve"]["torque_nm"]) < 545
    assert min(first["curve"]["torque_nm"][:100]) > 0
    assert first["rows_used"] + second["rows_used"] + done["rows_down"] == done["rows"] == 602


# ---- the curve


def test_peaks_and_units_come_out_right() -> None:
    (metric,) = read(written([rows()]))["pulls"]
    (other,) = read(written([rows()], "en", ",", False))["pulls"]
    best = max(rows(), key=lambda one: one[1])
    top = max(rows(), key=lambda one: one[0] * one[1])
    for pull in (metric, other):
        assert pull["peaks"]["torque_nm"] == pytest.approx(best[1], rel=1e-4)
        assert pull["peaks"]["torque_speed_rpm"] == pytest.approx(best[0])
        assert pull["peaks"]["power_kw"] == pytest.approx(power_of(top[1], top[0]), rel=1e-4)
        assert pull["air"]["air_temperature_c"] == pytest.approx(24.5)
        assert pull["power_ratio"] == pytest.approx(1, abs=1e-5)


def test_horsepower_and_foot_pounds_cross_at_5252() -> None:
    # Hot Rod, March 2011: both curves cross at 5252 rpm.
    assert power_of(100 * LBF_FT, 5252) / 0.745699872 == pytest.approx(100, rel=1e-4)
    assert torque_of(power_of(321.0, 4321), 4321) == pytest.approx(321, rel=1e-12)


def test_power_in_another_unit_than_said_is_noticed() -> None:
    text = written([rows()]).replace("Leistung [kW]", "Leistung [hp]")
    assert "power-against-torque" in [w["code"] for w in read(text)["warnings"]]


def test_power_alone_gives_torque() -> None:
    text = "rpm;kW\n" + "".join(f"{n};{power_of(t, n):.6f}\n" for n, t in rows())
    curve = read(text)["pulls"][0]["curve"]
    for speed, value in zip(curve["speed_rpm"], curve["torque_nm"], strict=True):
        assert value == pytest.approx(torque(speed), rel=1e-6)


@given(seed=st.integers(0, 999), count=st.integers(1, 1200))
@settings(max_examples=40, deadline=None)
def test_joining_keeps_every_row_and_every_mean(seed: int, count: int) -> None:
    rng = random.Random(seed)  # noqa: S311
    cells = {
        str(key): (rng.randint(1, 50), rng.uniform(0, 0.99), rng.uniform(-20, 900))
        for key in rng.sample(range(3000), count)
    }
    sums = {k: [n, n * 10 * (int(k) + part), n * t] for k, (n, part, t) in cells.items()}
    speeds, torques, counts, width = reduced(sums)
    assert len(speeds) == len(torques) == len(counts) <= 400
    assert sum(counts) == sum(n for n, _, _ in sums.values())
    assert speeds == sorted(set(speeds))
    total = sum(n * t for n, t in zip(counts, torques, strict=True))
    assert total == pytest.approx(sum(s[2] for s in sums.values()), rel=1e-9, abs=1e-6)
    assert width % 10 == 0


def test_a_long_pull_becomes_at_most_400_points() -> None:
    (pull,) = read(written([rows(1000, 9000, 2)]))["pulls"]
    assert pull["point_rpm"] == 30
    assert len(pull["curve"]["speed_rpm"]) <= 400
    assert pull["rows_used"] == sum(pull["rows_in_point"]) == 4001


# ---- nothing is lost


@given(seed=st.integers(0, 999), count=st.integers(20, 400), pieces=st.integers(1, 9))
@settings(max_examples=30, deadline=None)
def test_every_row_is_accounted_for_in_however_many_pieces(
    seed: int, count: int, pieces: int
) -> None:
    text, wrong = spoiled(written([noisy(seed, count)]), seed, count // 10)
    done = read(text, pieces=pieces)
    assert done["rows"] == count
    assert done["bad_count"] == len(done["bad_rows"]) == wrong
    assert done["rows_used"] + done["rows_down"] + done["bad_count"] == count
    lines = text.split("\n")
    for bad in done["bad_rows"]:
        assert lines[bad["line"] - 1][:80] == bad["text"]
        assert bad["why"]
    assert done == read(text)


def test_a_bad_row_says_its_line_its_text_and_why() -> None:
    text = written([rows()])
    lines = text.split("\n")
    lines[50] = "4000,000;;1,0;24,5"
    lines[60] = "99999,0;500,0;1,0;24,5"
    found = read("\n".join(lines))["bad_rows"]
    assert found == [
        {"line": 51, "text": "4000,000;;1,0;24,5", "why": "torque is missing"},
        {"line": 61, "text": "99999,0;500,0;1,0;24,5", "why": "speed is out of range"},
    ]


@pytest.mark.parametrize(
    ("payload", "field"),
    [
        ({"step": "guess"}, "text"),
        ({"step": "guess", "text": 3}, "text"),
        ({"step": "look", "text": "a"}, "step"),
        ({"step": "read", "text": "a"}, "layout"),
        ({"step": "read", "text": "a", "layout": {"separator": "?"}}, "layout.separator"),
        ({"step": "guess", "text": "a", "file": 1}, "file"),
    ],
)
def test_a_question_that_cannot_be_answered_is_refused(payload: dict[str, Any], field: str) -> None:
    with pytest.raises(Refused) as refused:
        run("dyno-table", payload)
    assert field in [p["field"] for p in refused.value.problems]


@given(text=st.text(max_size=300))
@settings(max_examples=100, deadline=None)
def test_any_text_at_all_gets_a_layout(text: str) -> None:
    layout = guess(text)
    assert len(layout["columns"]) <= 200


@pytest.mark.parametrize("wrong", [["tab"], {"a": 1}, None, 3])
def test_a_separator_of_another_kind_is_refused(wrong: object) -> None:
    layout = {"separator": wrong, "decimal_comma": False, "header_lines": 0, "heading": [],
              "columns": [{"column": 1, "role": [], "unit": "rpm"}]}  # fmt: skip
    with pytest.raises(Refused) as refused:
        run("dyno-table", {"step": "read", "text": "1", "layout": layout})
    assert "layout.separator" in [problem["field"] for problem in refused.value.problems]

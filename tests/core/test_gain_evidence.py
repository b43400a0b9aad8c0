"""Rows of evidence out of dyno sessions: what they say is what the comparison says."""

from typing import Any

import pytest
from scipy.stats import t as student

from midspan.core import run

POWERS = {"A": (300.0, 301.0, 299.5), "B": (306.0, 305.2, 306.5), "C": (303.0, 303.6, 302.9)}
MOVED: dict[str, float | None] = {"A": 1.6, "B": 5.5, "C": 12.7}


def runs(order: str) -> list[dict[str, Any]]:
    """Runs in an order such as AABB, as records are kept: with more than a comparison takes."""
    left = {key: list(values) for key, values in POWERS.items()}
    return [
        {"id": f"r{place}", "session_id": "s", "setting": key, "place": place, "note": None,
         "conditions": None, "figures_are": "j607", "curve": None,
         "peaks": {"power_kw": left[key].pop(0)}}
        for place, key in enumerate(order, start=1)
    ]  # fmt: skip


def session(order: str, **changes: Any) -> dict[str, Any]:
    settings = [{"key": key, "label": key, "movement_mm": mm} for key, mm in MOVED.items()]
    return {"engine": "Shop engine", "label": order, "standard": "j607", "settings": settings,
            "runs": runs(order)} | changes  # fmt: skip


def rows(*sessions: dict[str, Any]) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = run("gain-evidence", {"sessions": list(sessions)})["rows"]
    return found


def test_a_row_is_the_comparison_with_its_movements() -> None:
    (row,) = rows(session("ABBA"))
    asked = [{key: one[key] for key in ("setting", "place", "figures_are", "peaks")}
             for one in runs("ABBA")]  # fmt: skip
    compared = run("compare", {"standard": "j607", "quantity": "peak-power", "reference": "A",
                               "drift": "auto", "runs": asked})  # fmt: skip
    gain = compared["differences"][0]["gain_percent"]
    assert row["gain_percent"] == gain["value"]
    assert (row["from_movement_mm"], row["to_movement_mm"]) == (1.6, 5.5)
    # One degree of freedom: Student's t, not the normal, tells how little it says.
    wide = student.ppf(0.975, gain["degrees_of_freedom"]) / 1.959963984540054
    told = row["standard_uncertainty_percent"]
    assert told == pytest.approx(gain["standard_uncertainty"] * wide, rel=0.02)


def test_each_setting_is_held_against_the_first_that_ran() -> None:
    found = rows(session("AABBCCABC"))
    ends = [(row["from_movement_mm"], row["to_movement_mm"]) for row in found]
    assert ends == [(1.6, 5.5), (1.6, 12.7)]
    assert found[0]["gain_percent"] > found[1]["gain_percent"] > 0


def test_the_gain_takes_the_rows_and_counts_the_engines() -> None:
    found = rows(session("ABBABA"), session("AABBAB", engine="Other engine"))
    sent = [{key: row[key] for key in row if key != "session"} for row in found]
    drive = {"pitch_mm": 9.525, "crank_teeth": 22, "cam_teeth": 44, "centre_distance_mm": 114.1,
             "links": 58}  # fmt: skip
    asked = {"drive": drive, "movement_mm": 1.6, "peak_power_kw": 300.0, "peak_speed_rpm": 6000.0}
    bare = run("gain", asked)
    told = run("gain", asked | {"evidence": sent})
    assert (bare["engines_counted"], told["engines_counted"]) == (0, 2)
    width = [one["gain_percent"]["high_80"] - one["gain_percent"]["low_80"] for one in (bare, told)]
    assert width[1] < width[0]


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"settings": [{"key": "A", "movement_mm": 1.6}, {"key": "B"}]}, "no-two-movements"),
        ({"runs": []}, "no-two-movements"),
        ({"settings": [{"key": "A", "movement_mm": 5.5}, {"key": "B", "movement_mm": 5.5}]},
         "no-two-movements"),
        ({"settings": [{"key": "A", "movement_mm": 5.5, "movement_u_mm": 0.3},
                       {"key": "B", "movement_mm": 5.9, "movement_u_mm": 0.3}]},
         "no-two-movements"),
        ({"standard": None}, "no-standard"),
        ({"runs": [{**one, "figures_are": "j1349-1990"} for one in runs("ABBA")]},
         "cannot-compare"),
        ({"runs": runs("AB")}, "too-few-runs"),
    ],
)  # fmt: skip
def test_a_session_that_cannot_serve_is_passed_with_why(changes: dict[str, Any], why: str) -> None:
    found = run("gain-evidence", {"sessions": [session("ABBA", **changes)]})
    assert found["rows"] == []
    assert found["passed"] == [{"session": "ABBA", "why": why}]


@pytest.mark.parametrize(
    ("halves", "least"),
    # Root of the sum of squares by hand; 1.96 * 0.3 mm where no plus-or-minus was noted.
    [((0.3, 0.4), 0.5), ((0.0, 0.25), 0.25), ((None, None), 0.8316), ((None, 0.1), 0.5964)],
)
def test_slack_differs_from_beyond_both_plus_or_minuses_on(
    halves: tuple[float | None, float | None], least: float
) -> None:
    for gap, count in ((0.99 * least, 0), (1.01 * least, 1)):
        settings = [{"key": "A", "movement_mm": 3.0, "movement_u_mm": halves[0]},
                    {"key": "B", "movement_mm": 3.0 + gap, "movement_u_mm": halves[1]}]  # fmt: skip
        assert len(rows(session("ABBA", settings=settings))) == count


def test_a_setting_with_the_slack_of_the_first_gives_no_row_among_others() -> None:
    settings = [{"key": key, "movement_mm": mm, "movement_u_mm": 0.3}
                for key, mm in (("A", 5.5), ("B", 5.8), ("C", 12.7))]  # fmt: skip
    (row,) = rows(session("AABBCCABC", settings=settings))
    assert row["to_movement_mm"] == 12.7


def test_no_more_rows_than_a_gain_takes() -> None:
    found = run("gain-evidence", {"sessions": [session("ABBA") for _ in range(42)]})
    assert len(found["rows"]) == 40
    assert [one["why"] for one in found["passed"]] == ["no-room", "no-room"]

"""A running-in plan: its figures against their sources, its steps, and what must always hold."""

import math
from typing import Any

import pytest

from core.plans import PLAN, TIGHT, every_plan
from core.reference import rows
from midspan.core import oil_categories, run
from midspan.core.bedding import bedding_share
from midspan.core.errors import Refused
from midspan.core.running_figures import DERIVED, FIGURES, as_dict

ORIGINS = {"published", "common practice, no source", "from memory, unverified"}
IN_UNIT = {"mile": ("km", 1.609344), "h": ("h", 1.0), "in": ("mm", 25.4)}
PHASES = ["before first start", "first start", "load cycles", "on the road"]


def plan(**more: Any) -> dict[str, Any]:
    return run("plan", PLAN | more)


def step(found: dict[str, Any], key: str) -> dict[str, Any]:
    return next(one for one in found["steps"] if one["key"] == key)


def keys(found: dict[str, Any]) -> list[str]:
    return [one["key"] for one in found["steps"]]


@pytest.mark.parametrize("row", rows("running-in-ranges"), ids=lambda row: row["says"][:40])
def test_every_figure_in_print_is_on_file_with_its_source(row: dict[str, str]) -> None:
    unit, by = IN_UNIT.get(row["unit"], (row["unit"], 1.0))
    wanted = [(unit, by)]
    if row["unit"] == "h":
        wanted.append(("min", 60.0))
    found = [f for f in map(as_dict, FIGURES) if f["address"] == row["address"]]
    assert any(
        f["unit"] == u and same(f["lower"], row["low"], b) and same(f["upper"], row["high"], b)
        for f in found
        for u, b in wanted
    ), found
    assert all(f["origin"] == "published" for f in found)


def same(value: Any, printed: str, by: float) -> bool:
    if printed == "" or value is None:
        return printed == "" and value is None
    return math.isclose(value, float(printed) * by, rel_tol=1e-12)


@pytest.mark.parametrize("figure", FIGURES, ids=lambda figure: figure.id)
def test_a_figure_says_where_it_comes_from(figure: Any) -> None:
    assert figure.origin in ORIGINS
    if figure.origin == "published":
        assert len(figure.source) > 8
        assert "." in figure.address
    else:
        assert figure.source == figure.address == ""
        assert "published" not in (figure.label + figure.note).lower()
    ends = [end for end in (figure.lower, figure.upper) if end is not None]
    assert ends == sorted(ends)
    assert bool(ends) == (figure.quantity != "word")


def test_sources_that_conflict_are_shown_as_a_range_with_all_of_them() -> None:
    cam = step(plan(), "cam-run-in")
    assert (cam["speed"]["lower"], cam["speed"]["upper"]) == (1500, 3000)
    # Not below 2000; 1500 to 2000; 2000 to 3000: one speed is in all three.
    assert (cam["speed"]["common_lower"], cam["speed"]["common_upper"]) == (2000, 2000)
    assert (cam["time"]["lower"], cam["time"]["upper"]) == (20, 30)
    assert cam["time"]["common_lower"] is None
    assert cam["duration_min"] == 30
    published = [f for f in cam["time"]["figures"] if f["origin"] == "published"]
    assert len({f["address"] for f in published}) == 4


def test_roller_followers_need_no_cam_running_in() -> None:
    found = plan(follower="roller")
    assert "cam-run-in" not in keys(found)
    assert "first-run" in keys(found)
    assert step(found, "first-run")["speed"]["origin"] == "from memory, unverified"


def test_strong_springs_come_out_for_a_flat_tappet_only() -> None:
    assert "light-springs" in keys(plan(spring_open_load_n=1500))
    assert "light-springs" not in keys(plan(spring_open_load_n=1300))
    assert "light-springs" not in keys(plan(spring_open_load_n=1500, follower="roller"))


def test_no_load_cycles_for_rings_that_were_not_disturbed() -> None:
    assert "load cycles" not in {one["phase"] for one in plan(rings="kept")["steps"]}


def test_a_tight_chain_is_not_cured_by_waiting_and_gets_a_longer_running_in() -> None:
    usual, tight = plan(), plan(**TIGHT)
    assert tight["chain"]["outcome"] == "below"
    assert tight["chain"]["origin"] == "common practice, no source"
    assert "10,000 miles" in tight["chain"]["text"]
    assert "waiting does not cure" in tight["chain"]["text"]
    assert step(usual, "early-drain")["at_distance_km"] == pytest.approx(200 * 1.609344)
    assert step(tight, "early-drain")["at_distance_km"] == pytest.approx(1000 * 1.609344)
    synthetic = plan(**TIGHT, oil={"kind": "synthetic"})
    assert step(synthetic, "early-drain")["at_distance_km"] == pytest.approx(200 * 1.609344)
    assert "usually still right" in usual["chain"]["text"]


def test_a_cam_running_in_does_little_for_the_chain() -> None:
    # Derived beside the sources: 10 % at 0.5 h, 33 % at 2 h, 63 % at 5 h, 86 % at 10 h, 98 % at 20.
    for hours, percent in ((0.5, 10), (2, 33), (5, 63), (10, 86), (20, 98)):
        assert 100 * bedding_share(hours) == pytest.approx(percent, abs=0.5)
    chain = plan(rings="kept")["chain"]
    assert chain["bedding_origin"] == DERIVED
    assert "6 to 10 %" in chain["bedding_text"]
    assert chain["bedding_share"] == pytest.approx(bedding_share(0.5))


def test_zinc_both_sides_are_shown() -> None:
    found = {f["code"]: f for f in plan()["oil"]["findings"]}
    ids = {f["id"] for f in found["zinc-and-phosphorus"]["figures"]}
    assert {"zddp-myth", "zddp-no-myth", "zddp-break-in"} <= ids
    assert "disagree" in found["zinc-and-phosphorus"]["text"]
    assert found["zinc-and-chain"]["figures"][0]["upper"] == 350
    synthetic = {f["code"]: f for f in plan(oil={"kind": "synthetic"})["oil"]["findings"]}
    assert len(synthetic["synthetic-rings"]["figures"]) == 2


def test_phosphorus_by_zinc_is_derived_and_says_so() -> None:
    oil = {"kind": "mineral", "zinc_mg_per_kg": 1000}
    text = next(f["text"] for f in plan(oil=oil)["oil"]["findings"] if "derived" in f["text"])
    assert "750 to 900" in text


def test_the_makers_drain_interval_is_the_users_own() -> None:
    own = step(plan(drain_interval_km=5000), "normal-drain")
    assert own["due_origin"] == "maker's manual, entered by the user"
    assert own["at_distance_km"] == 5000
    assert own["figures"] == []
    assert step(plan(), "normal-drain")["due_origin"] == "from memory, unverified"


def test_hours_and_miles_come_to_the_same() -> None:
    by_km = plan()
    by_hours = plan(distance_per_week_km=None, running_per_week_h=4.0)
    for one, other in zip(by_km["steps"], by_hours["steps"], strict=True):
        assert one["after_weeks"] == other["after_weeks"], "4 h at 50 km/h are 200 km"
    assert next(a["field"] for a in by_km["assumptions"]) == "average_speed_km_per_h"
    with pytest.raises(Refused):
        plan(distance_per_week_km=2000, running_per_week_h=1.0)


@pytest.mark.parametrize("payload", list(every_plan()))
def test_a_plan_is_ordered_and_whole(payload: dict[str, Any]) -> None:
    found = run("plan", payload)
    steps = found["steps"]
    assert len(set(keys(found))) == len(steps)
    places = [PHASES.index(one["phase"]) for one in steps]
    assert places == sorted(places)
    due = [one["at_distance_km"] for one in steps if one["at_distance_km"] is not None]
    assert due == sorted(due)
    assert len(due) == 4
    minutes = [one["duration_min"] for one in steps if one["duration_min"] is not None]
    assert found["progress"]["duration_min"] == pytest.approx(sum(minutes))
    assert found["next"] == steps[0]["key"]
    for one in steps:
        assert (one["duration_min"] is not None) == (one["ends"] == "minutes")
        assert (one["at_distance_km"] is not None) == (one["ends"] == "distance")
        assert (one["due_origin"] is not None) == (one["ends"] == "distance")
        assert one["look_at"]
        assert one["cautions"]
        assert bool(one["stop_when"]) == (one["phase"] != PHASES[0] and bool(one["engine_load"]))
        for said in one["look_at"] + one["stop_when"] + one["cautions"]:
            assert said["origin"] in ORIGINS
    drains = [one["key"] for one in steps if one["oil"] and "rain" in one["oil"]]
    assert len(drains) >= 2
    assert sum(one["measures"] for one in steps) == 3


def test_the_cautions_stand_where_they_matter() -> None:
    found = plan()
    codes = {one["key"]: {c["code"] for c in one["cautions"]} for one in found["steps"]}
    assert found["steps"][0]["cautions"][0]["code"] == "manual-first"
    assert {"carbon-monoxide", "fire", "eyes-ears"} <= codes["place"]
    assert {"carbon-monoxide", "rotating", "fire"} <= codes["cam-run-in"]
    assert "electric-fan" in codes["cool"]
    for key in ("cam-drain", "early-drain", "normal-drain"):
        assert {"hot-oil", "used-oil"} <= codes[key]
    for one in found["steps"]:
        for caution in one["cautions"]:
            assert bool(caution["source"]) == (caution["origin"] == "published")


@pytest.mark.parametrize("row", rows("oil-phosphorus"), ids=lambda row: row["category"])
def test_the_phosphorus_of_a_category_is_as_printed(row: dict[str, str]) -> None:
    on_file = oil_categories.BY_ID[row["category"]]
    assert on_file.address == row["address"]
    assert on_file.origin == "published"
    for end, printed in ((on_file.lower, row["low_percent"]), (on_file.upper, row["high_percent"])):
        assert same(end, printed, 10_000)


@pytest.mark.parametrize("category", oil_categories.CATEGORIES, ids=lambda row: row.id)
def test_a_category_claims_nothing_without_an_origin(category: Any) -> None:
    if category.lower is not None or category.upper is not None:
        assert category.origin in ORIGINS
    assert (category.origin == "published") == bool(category.source and category.address)
    found = plan(oil={"kind": "mineral", "category": category.id})["oil"]["findings"]
    said = next(one for one in found if one["code"] == "category")
    assert said["origin"] in ORIGINS
    assert ("published" in said["origin"]) == bool(category.source)

"""Where a cam stands: published examples, identities of a pure advance, slips of the reader."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.drives import WORKED, Payload, floats
from core.reference import rows
from core.test_bad_input import refusal
from midspan.core import limits, run
from midspan.core.cam_card import EVENT_FIELDS, event_angle, event_figure
from midspan.core.timing import closing_of, duration, middle, opening_of, unwrap

EXAMPLES = rows("cam-timing-examples")
HEIGHT = {"checking_height_mm": 1.27, "checking_at": "tappet"}


def event(name: str, reference: str, *angles: float) -> Payload:
    return {"event": name, "reference": reference, "angles_deg": list(angles)}


def cam(events: list[Payload], **more: Any) -> dict[str, Any]:
    return run("cam", {"wheel": "both-ways", "events": events, **HEIGHT, **more})


def four(io: float, ic: float, eo: float, ec: float, times: int = 1) -> list[Payload]:
    return [
        event("intake-opens", "btdc", *[io] * times),
        event("intake-closes", "abdc", *[ic] * times),
        event("exhaust-opens", "bbdc", *[eo] * times),
        event("exhaust-closes", "atdc", *[ec] * times),
    ]


def card(**said: float) -> Payload:
    return {"source": "data sheet", **HEIGHT, **said}


def values(found: dict[str, Any]) -> dict[str, float]:
    return {name: at["value"] for name, at in found["figures"].items() if at is not None}


def of_example(number: str, role: str) -> dict[str, float]:
    return {
        row["quantity"]: float(row["value"])
        for row in EXAMPLES
        if row["example"] == number and row["role"] == role
    }


@pytest.mark.parametrize("number", ["2", "3", "4", "5", "6", "7"])
def test_published_example(number: str) -> None:
    # Each row of fixtures/cam-timing-examples.csv names its source.
    given = of_example(number, "given")
    found = values(cam([event(*what.split(), value) for what, value in given.items()]))
    results = of_example(number, "result")
    assert results
    for name, printed in results.items():
        assert found[name] == pytest.approx(printed, abs=1e-9), name


def test_duration_and_overlap_give_the_lobe_separation() -> None:
    # Example 10, starquestclub.com, Cam relationships: D 264, overlap 45 means LSA 109.5.
    half = (264 - 45) / 2
    opens = closes = 45 / 2
    found = values(cam(four(opens, 264 - 180 - opens, 264 - 180 - closes, closes)))
    assert found["lobe_separation_cam_deg"] == pytest.approx(half) == 109.5
    assert found["overlap_deg"] == pytest.approx(45)


def test_straight_up_at_106_advanced_4_is_102() -> None:
    # Example 11, dummett.net, Cam timing: "advanced is fewer degrees".
    found = cam(
        [event("intake-rising", "atdc", 102 - 40), event("intake-falling", "atdc", 102 + 40)],
        card=card(intake_centreline_deg=106),
    )
    (row,) = found["comparisons"]
    assert (row["sense"], row["difference"]["value"]) == ("early", pytest.approx(-4))
    assert found["verdict"]["outcome"] == "early"


def test_one_event_read_and_the_rest_by_the_data_sheet() -> None:
    # Example 14, hpacademy.com, SR20 step 4: sheet at 1 mm 59 BBDC / 7 ATDC; 61.5 BBDC read is
    # 2.5 early. The sheet's centreline 116 and duration 246 follow.
    sheet = card(exhaust_opening_bbdc_deg=59, exhaust_closing_atdc_deg=7)
    found = cam([event("exhaust-opens", "bbdc", 61.5)], card=sheet)
    assert values(found)["exhaust_centreline_deg"] == pytest.approx(118.5)
    assert found["lobes"][0]["centreline_by"] == "data-sheet-duration"
    by = {row["quantity"]: row for row in found["comparisons"]}
    assert by["exhaust_opening_bbdc_deg"]["difference"]["value"] == pytest.approx(2.5)
    assert by["exhaust_centreline_deg"]["card_value"] == pytest.approx(116)
    assert {row["sense"] for row in by.values()} == {"early"}


def test_separation_and_advance_of_two_centrelines() -> None:
    # Example 15, worked by hand: 108 and 112 are 110 apart on the cam, advanced 2.
    found = values(cam(four(22, 58, 62, 18)))
    assert found["intake_centreline_deg"] == pytest.approx(108)
    assert found["exhaust_centreline_deg"] == pytest.approx(112)
    assert found["lobe_separation_cam_deg"] == pytest.approx(110)
    assert found["advance_deg"] == pytest.approx(2)


EVENTS = st.tuples(floats(-20, 60), floats(20, 90), floats(20, 90), floats(-20, 60))


@given(events=EVENTS, ahead=floats(-12, 12))
def test_a_pure_advance_moves_what_it_must_and_nothing_else(
    events: tuple[float, float, float, float], ahead: float
) -> None:
    io, ic, eo, ec = events
    before = values(cam(four(io, ic, eo, ec)))
    after = values(cam(four(io + ahead, ic - ahead, eo + ahead, ec - ahead)))
    moves = {
        "intake_centreline_deg": -ahead, "exhaust_centreline_deg": ahead,
        "intake_opening_btdc_deg": ahead, "intake_closing_abdc_deg": -ahead,
        "exhaust_opening_bbdc_deg": ahead, "exhaust_closing_atdc_deg": -ahead,
        "advance_deg": ahead,
    }  # fmt: skip
    for name, was in before.items():
        assert after[name] == pytest.approx(was + moves.get(name, 0.0), abs=1e-9), name


@given(events=EVENTS, off=floats(-5, 5))
def test_a_wheel_off_tdc_is_put_right_and_leaves_durations_alone(
    events: tuple[float, float, float, float], off: float
) -> None:
    """A wheel that shows `off` at TDC shows every event that much late."""
    io, ic, eo, ec = events
    right = values(cam(four(io, ic, eo, ec)))
    shown = four(io - off, ic + off, eo - off, ec + off)
    assert values(cam(shown, tdc_reading_deg=off)) == pytest.approx(right, abs=1e-9)
    raw = values(cam(shown))
    for name in ("intake_duration_deg", "exhaust_duration_deg", "overlap_deg"):
        assert raw[name] == pytest.approx(right[name], abs=1e-9)
    apart = raw["lobe_separation_cam_deg"]
    assert apart == pytest.approx(right["lobe_separation_cam_deg"], abs=1e-9)


@given(events=EVENTS, tdc=floats(0, 359), down=st.booleans())
def test_a_wheel_round_to_360_zeroed_anywhere_reads_the_same_cam(
    events: tuple[float, float, float, float], tdc: float, down: bool
) -> None:
    io, ic, eo, ec = events
    angles = {
        "intake-opens": -io, "intake-closes": 180 + ic,
        "exhaust-opens": -180 - eo, "exhaust-closes": ec,
    }  # fmt: skip
    sign = -1 if down else 1
    found = run(
        "cam",
        {
            "wheel": "0-360-down" if down else "0-360-up",
            "tdc_reading_deg": tdc,
            "events": [
                {"event": name, "angles_deg": [min((tdc + sign * at) % 360, 360)]}
                for name, at in angles.items()
            ],
            **HEIGHT,
        },
    )
    assert values(found) == pytest.approx(values(cam(four(io, ic, eo, ec))), abs=1e-9)


@given(centre=floats(80, 140), lasting=floats(150, 330))
def test_events_and_centreline_round_trip(centre: float, lasting: float) -> None:
    opening, closing = opening_of(centre, lasting), closing_of(centre, lasting)
    assert middle(opening, closing) == pytest.approx(centre, abs=1e-12)
    assert duration(opening, closing) == pytest.approx(lasting, abs=1e-12)


@given(angle=floats(-400, 400))
def test_an_event_keeps_its_angle_under_the_trades_name(angle: float) -> None:
    for name, _, _ in EVENT_FIELDS:
        assert event_angle(name, event_figure(name, angle)) == pytest.approx(angle, abs=1e-9)


@given(angle=floats(-4000, 4000), least=floats(-400, 400))
def test_unwrapping_stays_in_its_turn(angle: float, least: float) -> None:
    found = unwrap(angle, least)
    assert least - 1e-9 <= found <= least + 360 + 1e-9
    turns = (found - angle) / 360
    assert turns == pytest.approx(round(turns), abs=1e-9)


SHEETS = [
    {"intake_opening_btdc_deg": 25, "intake_closing_abdc_deg": 55},
    {"intake_duration_deg": 260, "intake_centreline_deg": 105},
    {"intake_duration_deg": 260, "intake_opening_btdc_deg": 25},
    {"intake_duration_deg": 260, "lobe_separation_cam_deg": 110, "advance_deg": 5},
]


@pytest.mark.parametrize("said", SHEETS, ids=str)
def test_a_data_sheet_says_the_same_however_it_says_it(said: dict[str, float]) -> None:
    found = cam(four(20, 60, 60, 20, times=3), card=card(**said), tdc_plus_minus_deg=0.2)
    by = {row["quantity"]: row for row in found["comparisons"]}
    assert by["intake_centreline_deg"]["card_value"] == pytest.approx(105)
    assert by["intake_opening_btdc_deg"]["card_value"] == pytest.approx(25)
    assert by["intake_closing_abdc_deg"]["card_value"] == pytest.approx(55)
    assert found["verdict"]["outcome"] == "late"
    assert "Advance it by 5.0 crank degrees, 2.5 cam" in found["verdict"]["next_step"]


@pytest.mark.parametrize(
    ("said", "outcome"),
    [(109.9, "within"), (111.3, "too-close"), (114, "early"), (106, "late")],
)
def test_the_verdict_has_a_guard_band(said: float, outcome: str) -> None:
    sheet = card(intake_centreline_deg=said, tolerance_deg=1.0)
    found = cam(four(20, 60, 60, 20, times=3), card=sheet, tdc_plus_minus_deg=0.3)
    assert found["verdict"]["outcome"] == outcome


def test_another_checking_height_is_not_compared() -> None:
    sheet = card(intake_opening_btdc_deg=45, intake_closing_abdc_deg=75) | {
        "checking_height_mm": 0.15
    }
    found = cam(four(20, 60, 60, 20), card=sheet)
    assert [row["quantity"] for row in found["comparisons"]] == ["intake_centreline_deg"]
    assert "other-height" in {one["code"] for one in found["warnings"]}


def test_an_asymmetric_lobe_keeps_both_centrelines() -> None:
    lobe = [
        event("intake-opens", "btdc", 20), event("intake-closes", "abdc", 64),
        event("intake-rising", "atdc", 80), event("intake-falling", "atdc", 138),
    ]  # fmt: skip
    for by, centre in (("near-nose", 109), ("mid-duration", 112)):
        found = cam(lobe, centreline_by=by)
        (told,) = found["lobes"]
        assert told["centreline_by"] == by
        assert told["nose_centreline_deg"]["value"] == pytest.approx(109)
        assert told["middle_centreline_deg"]["value"] == pytest.approx(112)
        assert told["asymmetry_deg"]["value"] == pytest.approx(3)
        assert values(found)["intake_centreline_deg"] == pytest.approx(centre)
    assert cam(lobe)["lobes"][0]["centreline_by"] == "near-nose"


def test_a_sheet_that_gives_events_alone_is_met_by_the_middle_of_the_events() -> None:
    # Five late by both events; near the nose, on this asymmetric lobe, it looks the other way.
    lobe = [
        event("intake-opens", "btdc", 20), event("intake-closes", "abdc", 60),
        event("intake-rising", "atdc", 61), event("intake-falling", "atdc", 147),
    ]  # fmt: skip
    events = card(intake_opening_btdc_deg=25, intake_closing_abdc_deg=55)
    found = cam(lobe, card=events)
    assert found["lobes"][0]["centreline_by"] == "mid-duration"
    assert found["verdict"]["outcome"] == "late"
    assert {row["sense"] for row in found["comparisons"]} >= {"late"}
    assert "early" not in {row["sense"] for row in found["comparisons"]}
    # A sheet with a centreline of its own is met near the nose; so is one if nothing else was read.
    stated = cam(lobe, card=events | {"intake_centreline_deg": 105.0})
    assert stated["lobes"][0]["centreline_by"] == "near-nose"
    nose = cam(lobe[2:], card=events)
    assert "sheet-by-events" in {one["code"] for one in nose["warnings"]}
    assert "sheet-by-events" not in {one["code"] for one in found["warnings"]}


def test_what_the_chains_wear_has_retarded() -> None:
    # Design figures of the worked drive: 0.53 % is 0.99 crank degrees of retard.
    worn = {"drive": WORKED, "elongation_percent": 0.53, "standard_uncertainty_percent": 0.02}
    found = cam(four(20, 60, 60, 20), chain=worn, card=card(intake_centreline_deg=108))
    chain = found["chain"]
    assert chain["cam_retard_crank_deg"]["value"] == pytest.approx(0.99, abs=0.005)
    assert chain["rest_deg"]["value"] == pytest.approx(2 - chain["cam_retard_crank_deg"]["value"])
    late = next(r for r in found["comparisons"] if r["quantity"] == "intake_centreline_deg")
    u = late["difference"]["standard_uncertainty"]
    share = chain["cam_retard_crank_deg"]["standard_uncertainty"]
    assert chain["rest_deg"]["standard_uncertainty"] == pytest.approx((u**2 + share**2) ** 0.5)
    alone = cam(four(20, 60, 60, 20), chain=worn)["chain"]
    assert alone["rest_deg"] is None


@pytest.mark.parametrize(
    ("events", "hint"),
    [
        (four(60, 20, 60, 20)[:2], "opening and closing swapped"),
        (four(20, 60, 20, 60)[2:], "opening and closing swapped"),
        (
            [event("intake-opens", "atdc", 20), event("intake-closes", "bbdc", 60)],
            "the wheel read the other way round",
        ),
        (
            [event("exhaust-opens", "abdc", 60), event("exhaust-closes", "btdc", 20)],
            "the wheel read the other way round",
        ),
    ],
    ids=["swapped", "swapped exhaust", "wrong way", "wrong way exhaust"],
)
def test_a_likely_slip_is_named(events: list[Payload], hint: str) -> None:
    told = [one["text"] for one in cam(events)["warnings"] if one["code"] == "likely-slip"]
    assert len(told) == 1
    assert hint in told[0]


def test_a_cam_as_it_should_be_is_not_questioned() -> None:
    assert cam(four(20, 60, 60, 20, times=3), tdc_plus_minus_deg=0.3)["warnings"] == []


def test_without_a_true_tdc_it_says_what_is_allowed_for_that() -> None:
    (told,) = cam(four(20, 60, 60, 20, times=3))["warnings"]
    assert (told["code"], told["origin"]) == ("tdc-not-found", limits.MEMORY)
    allowed = cam(four(20, 60, 60, 20, times=3), tdc_plus_minus_deg=told["got"])["measured"]
    unknown = cam(four(20, 60, 60, 20, times=3))["measured"]
    assert unknown["expanded_uncertainty"] == allowed["expanded_uncertainty"]


def test_a_wheel_that_slipped_shows_in_its_scatter() -> None:
    events = four(20, 60, 60, 20, times=3)
    events[1]["angles_deg"] = [60, 60, 64]
    assert "wheel-slipped" in {one["code"] for one in cam(events)["warnings"]}


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"events": [event("intake-opens", "btdc", 200)]}, "events[0].angles_deg[0]", None),
        ({"events": [event("intake-opens", "btdc", 361)]}, "events[0].angles_deg[0]", None),
        ({"events": [{"event": "intake-opens", "angles_deg": [20]}]}, "events[0].reference", None),
        ({"events": []}, "events", "empty-list"),
        ({"events": four(20, 60, 60, 20)[:1] * 2}, "events[1].event", "conflict"),
        ({"events": [event("intake-rising", "atdc", 70)]}, "events", "missing"),
        (
            {"events": [event("intake-opens", "atdc", 50), event("intake-closes", "btdc", 40)]},
            "events",
            "wrong-way-round",
        ),
        ({"wheel": "0-360-up", "events": four(20, 60, 60, 20)}, "events[0].reference", "conflict"),
        (
            {"wheel": "0-360-up", "events": [{"event": "intake-opens", "angles_deg": [-3]}]},
            "events[0].angles_deg[0]",
            "out-of-range",
        ),
        ({"checking_height_mm": None}, "checking_height_mm", "missing"),
        ({"checking_at": None}, "checking_at", "missing"),
        ({"card": {"source": "sheet"}}, "card.intake_centreline_deg", "missing"),
        ({"card": {"intake_centreline_deg": 105}}, "card.source", "missing"),
    ],
)
def test_what_no_cam_can_be_is_refused(change: Payload, field: str, code: str | None) -> None:
    payload = {"wheel": "both-ways", "events": four(20, 60, 60, 20), **HEIGHT, **change}
    problems = refusal("cam", payload)
    assert field in [one["field"] for one in problems]
    if code is not None:
        assert code in [one["code"] for one in problems]
    assert all(one["next_step"] for one in problems)


def test_an_opening_after_tdc_counts_as_a_negative_one_before_it() -> None:
    early = cam([event("intake-opens", "atdc", 6), event("intake-closes", "abdc", 50)])
    late = cam([event("intake-opens", "btdc", -6), event("intake-closes", "abdc", 50)])
    assert values(early) == values(late)
    assert values(early)["intake_opening_btdc_deg"] == pytest.approx(-6)
    # forabodiesonly.com: ICL = D/2 - IO, an opening after TDC negative.
    assert values(early)["intake_centreline_deg"] == pytest.approx((-6 + 180 + 50) / 2 + 6)

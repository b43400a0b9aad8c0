"""Limits as data: what each may claim, and that none in print was lost or dressed up."""

from typing import Any

import pytest

from core.drives import SMALL, WORKED
from core.reference import rows
from midspan.core import run

ORIGINS = {
    "published",
    "common practice, no source",
    "from memory, unverified",
    "maker's manual, entered by the user",
}
LIMITS: list[dict[str, Any]] = run("limits", {})["limits"]
BY_ID = {limit["id"]: limit for limit in LIMITS}
KEYS = {
    "id", "quantity", "lower", "upper", "upper_to", "unit", "label", "origin", "source", "address",
    "note",
}  # fmt: skip
UNITS = {
    "elongation_percent": "%",
    "movement_mm": "mm",
    "sprocket_movement_mm": "mm",
    "crank_rock_deg": "deg",
    "over_chain_mm": "mm",
    "valve_clearance_mm": "mm",
    "radial_clearance_mm": "mm",
    "movement_percent_of_centres": "% of centre distance",
}


def test_no_two_limits_share_a_name() -> None:
    assert len(BY_ID) == len(LIMITS) >= 20


@pytest.mark.parametrize("limit", LIMITS, ids=lambda limit: limit["id"])
def test_a_limit_says_what_it_is(limit: dict[str, Any]) -> None:
    assert set(limit) == KEYS
    assert limit["origin"] in ORIGINS - {"maker's manual, entered by the user"}
    assert limit["unit"] == UNITS[limit["quantity"]]
    assert limit["label"]
    if limit["origin"] == "published":
        assert len(limit["source"]) > 8
        assert len(limit["address"]) > 8, "published where?"
    else:
        # Nothing to lean on, so nothing that looks like it.
        assert limit["source"] == limit["address"] == ""
        assert "published" not in (limit["label"] + limit["note"]).lower()
    ends = [limit["lower"], limit["upper"], limit["upper_to"]]
    known = [x for x in ends if x is not None]
    assert known == sorted(known)
    # The one that depends on the gear is worked out when a gear is known.
    assert known or limit["id"] == "wear-large-gear"
    assert all(x > 0 for x in known)


def printed(quantity: str) -> list[tuple[float | None, float | None]]:
    return [
        (x["upper"], x["upper_to"])
        for x in LIMITS
        if x["quantity"] == quantity and x["origin"] == "published"
    ]


@pytest.mark.parametrize("row", rows("crank-rock-limits"), ids=lambda r: r["says"])
def test_every_crank_rock_limit_in_print_is_there(row: dict[str, str]) -> None:
    low, high = float(row["low_deg"]), float(row["high_deg"])
    assert (low, None if high == low else high) in printed("crank_rock_deg")
    named = [x for x in LIMITS if row["address"].split("/")[-2] in x["address"] or row[
        "address"].split("/")[-1] in x["address"]]  # fmt: skip
    assert named, "its source is named"


def test_crank_rock_limits_that_conflict_are_all_shown() -> None:
    payload = {"drive": WORKED, "method": "crank-degrees", "readings_deg": [5.0] * 3}
    shown = run("crank-rock", payload)["judgements"]
    rock = [row for row in shown if row["limit"]["quantity"] == "crank_rock_deg"]
    assert {(r["limit"]["upper"], r["limit"]["upper_to"]) for r in rock} == {
        (3.0, 4.0),
        (3.0, 5.0),
        (10.0, None),
        (10.0, 15.0),
    }
    # Which is why no single one of them is called the limit.
    assert {row["outcome"] for row in rock} >= {"within", "beyond"}


@pytest.mark.parametrize(
    ("quantity", "upper", "source"),
    # The wear limits in print, each with a word of its source.
    [
        ("elongation_percent", 3.0, "diamondchain.com"),
        ("elongation_percent", 1.5, "diamondchain.com"),
        ("elongation_percent", 1.5, "fbchain.com"),
        ("elongation_percent", 2.0, "sedis.com"),
        ("elongation_percent", 1.0, "marinediesels.info"),
        ("sprocket_movement_mm", 3.175, "myvehicle.help"),
        ("movement_mm", 12.7, "gm.saturn.team"),
        ("movement_mm", 20.3, "gm.saturn.team"),
        ("movement_mm", 10.0, "forum.viva-lancia.com"),
        ("movement_percent_of_centres", 6.0, "diamondchain.com"),
        ("movement_percent_of_centres", 3.0, "diamondchain.com"),
    ],
)
def test_a_limit_in_print_is_there(quantity: str, upper: float, source: str) -> None:
    found = [
        x
        for x in LIMITS
        if x["quantity"] == quantity and x["upper"] == upper and source in x["address"]
    ]
    assert len(found) == 1
    assert found[0]["origin"] == "published"


@pytest.mark.parametrize(
    "row",
    [r for r in rows("gost-13568-97") if "life test, roller" in r["what"]],
    ids=lambda r: r["pitch_mm"],
)
def test_the_life_test_of_the_standard_is_there(row: dict[str, str]) -> None:
    exact = 100 * float(row["length_mm"]) / (float(row["pitch_mm"]) * int(row["links"]))
    found = [x for x in LIMITS if x["id"].startswith("acceptance") and x["upper"] == pytest.approx(
        exact, rel=1e-12)]  # fmt: skip
    assert len(found) == 1
    assert "13568" in found[0]["source"]


@pytest.mark.parametrize("row", rows("service-manual-inside-jaws"), ids=lambda r: r["limit_mm"])
def test_a_converted_service_limit_says_that_it_was_converted(row: dict[str, str]) -> None:
    found = [x for x in LIMITS if f"{float(row['limit_mm'])} mm" in x["label"]]
    assert len(found) == 1
    assert found[0]["upper"] == pytest.approx(float(row["derived_percent"]), abs=0.0051)
    assert "derived" in found[0]["note"]
    assert row["roller_diameter_mm"] in found[0]["note"]


def test_the_slack_window_is_the_trades_and_says_so() -> None:
    window = BY_ID["slack-window"]
    assert (window["lower"], window["upper"]) == (4.7625, 25.4 / 4)  # 3/16 and 1/4 in
    assert BY_ID["slack-too-tight"]["lower"] == 25.4 / 16
    assert BY_ID["slack-too-loose"]["upper"] == 25.4 / 2
    for name in ("slack-window", "slack-too-tight", "slack-too-loose"):
        assert BY_ID[name]["origin"] == "common practice, no source"
    assert "3/16 to 1/4 in" in window["label"]
    # Said where it is used, too.
    found = run("slack", {"drive": WORKED, "method": "total", "readings_mm": [5.5] * 3})
    assert found["verdict"]["limit"] == window


def test_recalled_figures_never_rule_a_verdict() -> None:
    """A number from memory may be shown beside; a verdict must not rest on it."""
    for percent in (0.3, 0.7, 1.2, 1.6, 3.2):
        payload = {
            "method": "pin-to-pin",
            "pitch_mm": 9.525,
            "pitches": 10,
            "readings_mm": [95.25 * (1 + percent / 100)] * 3,
        }
        ruling = run("elongation", payload)["verdict"]["limit"]
        assert ruling["origin"] == "published"


OWN_CASES = [
    (
        "elongation",
        {"method": "pin-to-pin", "pitch_mm": 9.525, "pitches": 10, "readings_mm": [95.8] * 3},
        [("elongation_percent", 0.5, "beyond"), ("elongation_percent", 0.7, "within"),
         ("reading_mm", 95.7, "beyond"), ("reading_mm", 95.9, "within")],
    ),
    (
        "slack",
        {"drive": WORKED, "method": "total", "readings_mm": [9.0] * 3},
        [("movement_mm", 8.0, "beyond"), ("movement_mm", 10.0, "within"),
         ("crank_rock_deg", 0.5, "beyond"), ("crank_rock_deg", 1.0, "within")],
    ),
    (
        "slack",
        {"drive": WORKED, "method": "one-way", "readings_mm": [4.5] * 3},
        [("reading_mm", 4.0, "beyond"), ("reading_mm", 5.0, "within"),
         ("movement_mm", 8.0, "beyond"), ("movement_mm", 10.0, "within")],
    ),
    (
        "crank-rock",
        {"drive": SMALL, "method": "crank-degrees", "readings_deg": [5.0] * 3},
        [("crank_rock_deg", 4.0, "beyond"), ("crank_rock_deg", 6.0, "within")],
    ),
    (
        "crank-rock",
        {"drive": SMALL, "method": "sprocket-movement", "readings_mm": [1.0] * 3},
        [("reading_mm", 0.8, "beyond"), ("reading_mm", 1.2, "within")],
    ),
]  # fmt: skip


@pytest.mark.parametrize(
    ("calc", "payload", "quantity", "upper", "outcome"),
    [(calc, payload, *case) for calc, payload, cases in OWN_CASES for case in cases],
)
def test_the_users_own_limit_overrides_and_is_labelled_so(
    calc: str, payload: dict[str, Any], quantity: str, upper: float, outcome: str
) -> None:
    unit = "deg" if payload["method"] == "crank-degrees" else "mm"
    exact = {f"resolution_{unit}": 0, f"instrument_error_{unit}": 0}
    own = {"quantity": quantity, "upper": upper, "source": "service manual, p. 12"}
    found = run(calc, {**payload, **exact, "own_limit": own})
    assert found["verdict"]["outcome"] == outcome
    limit = found["verdict"]["limit"]
    assert limit["origin"] == "maker's manual, entered by the user"
    assert limit["source"] == "service manual, p. 12"
    assert (limit["lower"], limit["upper"], limit["quantity"]) == (None, upper, quantity)
    assert limit["address"] == ""
    # The published ones are still there to compare, but below it.
    assert found["judgements"][0]["limit"] == limit
    assert len(found["judgements"]) > 1
    plain = run(calc, {**payload, **exact})
    assert found["judgements"][1:] == plain["judgements"]


def test_an_own_limit_on_lash_stands_and_what_the_trade_calls_the_fit_is_told() -> None:
    own = {"quantity": "crank_rock_deg", "upper": 6.0, "source": "manual"}
    payload = {"drive": WORKED, "method": "crank-degrees", "readings_deg": [5.0] * 3}
    found = run("crank-rock", {**payload, "own_limit": own})
    assert found["verdict"]["outcome"] == "within"
    assert found["verdict"]["limit"]["source"] == "manual"
    (told,) = [one for one in found["warnings"] if one["code"] == "own-limit-against-window"]
    assert "too loose" in told["text"]
    assert "own-limit-against-window" not in str(run("crank-rock", payload)["warnings"])


def test_an_own_lower_limit_can_be_failed() -> None:
    own = {"quantity": "movement_mm", "lower": 6.0, "upper": 9.0, "source": "manual"}
    payload = {"drive": WORKED, "method": "total", "resolution_mm": 0, "instrument_error_mm": 0}
    outcomes = [
        run("slack", {**payload, "readings_mm": [m] * 3, "own_limit": own})["verdict"]["outcome"]
        for m in (5.0, 7.0, 10.0)
    ]
    assert outcomes == ["below", "within", "beyond"]


@pytest.mark.parametrize(
    ("kind", "shown"), [("cam", {"slack-window"}), ("general", {"slack-general"})]
)
def test_a_limit_is_shown_only_where_it_applies(kind: str, shown: set[str]) -> None:
    payload = {"drive": {**WORKED, "drive_kind": kind}, "method": "total"}
    found = run("slack", {**payload, "readings_mm": [5.0] * 3})
    ids = {row["limit"]["id"] for row in found["judgements"]}
    assert ids & {"slack-window", "slack-general"} == shown


def test_a_limit_for_one_pitch_is_not_shown_for_another() -> None:
    for pitch, name in ((8.0, "acceptance-8"), (9.525, "acceptance-9"), (12.7, "acceptance-12")):
        payload = {"method": "pin-to-pin", "pitch_mm": pitch, "pitches": 10}
        found = run("elongation", {**payload, "readings_mm": [pitch * 10.05] * 3})
        ids = {row["limit"]["id"] for row in found["judgements"]}
        assert {x for x in ids if x.startswith("acceptance")} == {name}
        for row in found["judgements"]:
            if row["limit"]["id"].startswith("service"):
                assert f"{pitch:g}"[0] == row["limit"]["id"].split("-")[1][0]


@pytest.mark.parametrize(("z2", "percent"), [(80, 2.50), (96, 2.083), (114, 1.754), (120, 1.667)])
def test_two_hundred_over_the_teeth(z2: int, percent: float) -> None:
    # Derived from the published rule: 200/z2.
    drive = {
        **WORKED,
        "drive_kind": "general",
        "centres": "adjustable",
        "cam_teeth": z2,
        "centre_distance_mm": 400.0,
        "links": 200,
    }
    payload = {"drive": drive, "method": "pin-to-pin", "pitches": 10, "readings_mm": [95.8] * 3}
    found = run("elongation", payload)
    rules = {r["limit"]["id"]: r for r in found["judgements"]}
    assert rules["wear-large-gear"]["limit_value"] == pytest.approx(percent, abs=0.0005)
    assert "wear-general" not in rules


def test_an_own_limit_that_admits_what_the_trade_would_not_run_is_questioned() -> None:
    """A slip of the pen, 4 for 1/4 in, turns 38 mm of slack good; the trade calls it too loose."""
    own = {"quantity": "movement_mm", "upper": 101.6, "source": "manual, page 14-3"}
    payload = {"drive": WORKED, "method": "total", "readings_mm": [38.1] * 3, "own_limit": own}
    found = run("slack", payload)
    assert found["verdict"]["outcome"] == "within"
    assert "101.6" in found["verdict"]["why"]
    assert "own-limit-against-window" in {w["code"] for w in found["warnings"]}
    payload["own_limit"] = own | {"upper": 6.35}
    payload["readings_mm"] = [5.5] * 3
    codes = {w["code"] for w in run("slack", payload)["warnings"]}
    assert "own-limit-against-window" not in codes

"""The calendar of a plan, read back by an independent reader of RFC 5545."""

import datetime
from typing import Any

import icalendar
import pytest
from hypothesis import given, strategies

from core.plans import PLAN, event
from midspan.core import days, run
from midspan.core.calendar_text import calendar
from midspan.core.errors import Refused

ASKED: dict[str, Any] = {
    "plan": PLAN,
    "started_on": "2026-02-01",
    "made_at": "2026-02-01T08:00:00Z",
    "title": "Shop engine, 3rd build; ½ in \\ Größe",
    "id": "01923f5e-8c00-7000-8000-000000000009",
}
# What the form cannot carry: control characters, and halves of letters.
TEXTS = strategies.text(
    strategies.characters(exclude_categories=("Cs", "Cc")), min_size=0, max_size=300
)


def events(text: str) -> list[icalendar.Event]:
    whole = icalendar.Calendar.from_ical(text)
    assert whole["VERSION"] == "2.0"
    assert not whole.errors
    found = list(whole.walk("VEVENT"))
    assert not any(one.errors for one in found)
    return found


def test_the_reader_finds_the_drains_and_rechecks_on_their_days() -> None:
    answer = run("plan-calendar", ASKED)
    found = {
        str(e["SUMMARY"]).removeprefix(ASKED["title"] + ": "): e for e in events(answer["text"])
    }
    # 200 km a week from 1 February: 322 km after 11.3 days, 1000 km after 35 days.
    drain = found["Drain the running-in fill"]
    assert drain["DTSTART"].dt == datetime.date(2026, 2, 12)
    assert drain["DTSTAMP"].dt == datetime.datetime(2026, 2, 1, 8, tzinfo=datetime.UTC)
    slack = found["Measure the slack: the first wear should be over"]
    assert slack["DTSTART"].dt == datetime.date(2026, 3, 8)
    assert "1000 km (621 miles)" in slack["DESCRIPTION"]
    assert len(found) == len(answer["events"]) == 4
    assert answer["undated"] == []
    assert len({str(e["UID"]) for e in found.values()}) == 4


def test_days_count_from_the_last_distance_noted() -> None:
    log = [event("distance", distance_since_start_km=300.0), event("done", step="early-drain")]
    log[0]["at"] = "2026-03-10T18:00:00Z"
    answer = run("plan-calendar", ASKED | {"log": log})
    days_of = {e["key"]: e["day"] for e in answer["events"]}
    assert "early-drain" not in days_of
    # 700 km more at 200 km a week: 24.5 days after 10 March.
    assert days_of["slack-first"] == "2026-04-03"


def test_a_recheck_that_was_put_in_has_its_day_and_is_no_distance_driven() -> None:
    log = [event("re-check", distance_since_start_km=700.0)]
    log[0]["at"] = "2026-03-10T18:00:00Z"
    days_of = {e["key"]: e["day"] for e in run("plan-calendar", ASKED | {"log": log})["events"]}
    # 200 km a week from 1 February: 700 km after 24.5 days, the first drain as without it.
    assert days_of["slack-next-1"] == "2026-02-25"
    assert days_of["early-drain"] == "2026-02-12"


def test_without_a_use_per_week_nothing_has_a_day() -> None:
    plan = {k: v for k, v in PLAN.items() if k != "distance_per_week_km"}
    answer = run("plan-calendar", ASKED | {"plan": plan})
    assert answer["events"] == []
    assert len(answer["undated"]) == 4
    assert events(answer["text"]) == []


@given(TEXTS, TEXTS)
def test_any_letters_come_back_as_they_were(title: str, text: str) -> None:
    made = calendar("x", [("uid-1", "2026-02-28", title, text)], "2026-02-01T08:00:00Z")
    for line in made.split("\r\n"):
        assert len(line.encode()) <= 75
    (one,) = events(made)
    assert str(one["SUMMARY"]) == title
    assert str(one["DESCRIPTION"]) == text


def test_days_are_those_of_the_calendar() -> None:
    first = days.number_of("1900-01-01")
    assert first is not None
    start = datetime.date(1900, 1, 1)
    for i in range(0, 109_500):
        day = (start + datetime.timedelta(days=i)).isoformat()
        assert days.number_of(day) == first + i
        assert days.text_of(first + i) == day


@pytest.mark.parametrize(
    "text", ["2026-02-29", "2026-13-01", "1899-12-31", "26-1-1", "x", "２026-01-01"]
)
def test_what_is_no_day_is_refused(text: str) -> None:
    assert days.number_of(text) is None
    with pytest.raises(Refused) as caught:
        run("plan-calendar", ASKED | {"started_on": text})
    assert [p["field"] for p in caught.value.problems] == ["started_on"]

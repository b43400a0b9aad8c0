"""How chains wore in a shop's own engines: the input of a forecast for every build.

It is the forecast that was kept of a build, or its readings whose running was noted, whichever is
newer: a forecast holds what its user made of the readings, but knows none taken since.
"""

from collections import Counter
from collections.abc import Iterable
from typing import Any, NamedTuple
from uuid import UUID

from sqlalchemy import and_, or_, select
from sqlalchemy.orm import Session

from midspan.core.measurement import UNCERTAINTY

from .models import Build, Plan, Reading

MEASURING = ("slack", "crank-rock", "elongation")
# What a forecast takes as it was measured. Whatever else was measured speaks through the movement
# that the same slack would show.
DIRECT = ("elongation_percent", "movement_mm", "crank_rock_deg")
JsonObject = dict[str, Any]


class Kept(NamedTuple):
    """What a forecast of a build is asked from, and the oil that its plan names, if any."""

    input: JsonObject
    planned_oil: str | None


def of_shop(session: Session, shop: UUID, but: UUID | None) -> list[Kept]:
    """Give what is known of how the chain of every build of a shop wore, but for one build.

    Parameters
    ----------
    session : one for reading
    shop : whose
    but : the build that is asked about
    """
    ran = or_(
        Reading.distance_since_start_km.is_not(None),
        Reading.running_since_start_h.is_not(None),
        Reading.odometer_km.is_not(None),
    )
    rows = session.scalars(
        select(Reading)
        .where(
            Reading.shop_id == shop,
            Reading.deleted_at.is_(None),
            Reading.build_id.is_not(None),
            or_(Reading.calc == "forecast", and_(Reading.calc.in_(MEASURING), ran)),
        )
        .order_by(Reading.taken_at, Reading.id)
    )
    of_build: dict[UUID, list[Reading]] = {}
    for row in rows:
        if row.build_id is not None and row.build_id != but:
            of_build.setdefault(row.build_id, []).append(row)
    plans = session.scalars(
        select(Plan)
        .where(Plan.shop_id == shop, Plan.deleted_at.is_(None), Plan.build_id.is_not(None))
        .order_by(Plan.created_at, Plan.id)
    )
    planned = {plan.build_id: plan for plan in plans}
    rows_of_builds = session.execute(
        select(Build.id, Build.odometer_km).where(Build.shop_id == shop)
    )
    odometers = {build: odometer for build, odometer in rows_of_builds}  # noqa: C416
    found = []
    for build, readings in of_build.items():
        plan = planned.get(build)
        sent = _input(readings, odometers.get(build), plan)
        if sent is not None:
            found.append(Kept(sent, None if plan is None else _oil(plan)))
    return found


def _input(readings: list[Reading], odometer: float | None, plan: Plan | None) -> JsonObject | None:
    """Give the input of the forecast of one build; its readings are given oldest first."""
    if readings[-1].calc == "forecast":
        return readings[-1].input
    told = [one for one in readings if one.calc != "forecast"]
    # A build may have had several chains; the one that was read most tells most.
    ((chain, _),) = Counter(one.chain_id for one in told).most_common(1)
    told = [one for one in told if one.chain_id == chain]
    drives = [one.input["drive"] for one in told if isinstance(one.input.get("drive"), dict)]
    parts = [part for one in told if (part := measurement(one, odometer)) is not None]
    if not drives or not parts:
        kept = [one.input for one in readings if one.calc == "forecast"]
        return kept[-1] if kept else None
    speed = None if plan is None else _speed(plan.input)
    return {"drive": drives[-1], "readings": parts} | (
        {} if speed is None else {"average_speed_km_per_h": speed}
    )


def measurement(reading: Reading, odometer: float | None) -> JsonObject | None:
    """Give a reading as a forecast takes one, or None if it cannot.

    Parameters
    ----------
    reading : one of MEASURING
    odometer : what the vehicle showed when the build was started [km]
    """
    ran = _ran(reading, odometer)
    measured, state = reading.result.get("measured"), reading.result.get("state")
    if ran is None or not isinstance(measured, dict):
        return None
    kind, at = measured.get("quantity"), measured
    if kind not in DIRECT:
        moved = state.get("movement_mm") if isinstance(state, dict) else None
        if not isinstance(moved, dict):
            return None
        kind, at = "movement_mm", moved
    value, u = _numbers(at.get("value"), at.get("standard_uncertainty"))
    if u is None:  # an older core gave the interval only
        low, high, factor = _numbers(at.get("low"), at.get("high"), measured.get("coverage_factor"))
        u = None if low is None or high is None or not factor else (high - low) / 2 / factor
    if value is None or u is None or u <= 0:
        return None
    return {"quantity": kind, kind: value, UNCERTAINTY[kind]: u} | ran


def _ran(reading: Reading, odometer: float | None) -> JsonObject | None:
    if reading.running_since_start_h is not None:
        return {"running_since_start_h": reading.running_since_start_h}
    if reading.distance_since_start_km is not None:
        return {"distance_since_start_km": reading.distance_since_start_km}
    if reading.odometer_km is None or odometer is None or reading.odometer_km < odometer:
        return None
    return {"distance_since_start_km": reading.odometer_km - odometer}


def _numbers(*values: object) -> Iterable[float | None]:
    """Take numbers for numbers; a stored result is whatever a phone once sent."""
    for value in values:
        number = isinstance(value, (int, float)) and not isinstance(value, bool)
        yield float(value) if number else None  # type: ignore[arg-type]


def _speed(asked: JsonObject) -> float | None:
    speed, km, hours = _numbers(
        asked.get("average_speed_km_per_h"),
        asked.get("distance_per_week_km"),
        asked.get("running_per_week_h"),
    )
    return km / hours if km and hours else speed


def _oil(plan: Plan) -> str | None:
    """Give the kind of the oil that was filled last."""
    filled = [plan.input.get("oil")]
    filled += [event.get("oil") for event in plan.log if event.get("kind") == "oil-changed"]
    kinds = [oil.get("kind") for oil in filled if isinstance(oil, dict)]
    return kinds[-1] if kinds and isinstance(kinds[-1], str) else None

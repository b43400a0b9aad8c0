"""Readings as a table for any spreadsheet (RFC 4180). The phone writes the same columns."""

import csv
import io
import re
from collections.abc import Iterator
from typing import Any
from uuid import UUID

from midspan.store import Build, Chain, Drive, Engine, GearSet, Reading, Store, transfer
from midspan.store.models import Record

# Spreadsheets take a table for UTF-8 by this mark alone.
MARK = "\ufeff"
# In this order; a unit stands in the header of its column.
COLUMNS = (
    "id", "taken at (UTC)", "engine", "invented", "build", "drive", "chain", "chain tag",
    "gear set", "gear set tag", "calculation", "quantity",
    "value [mm]", "U, 95 % [mm]", "value [%]", "U, 95 % [%]", "value [deg]", "U, 95 % [deg]",
    "verdict", "verdict in words",
    "limit", "limit, lower", "limit, upper", "limit, unit", "limit, origin", "limit, source",
    "excess length [mm]", "elongation [%]", "movement [mm]", "crank rock [deg]",
    "load [N]", "distance run [km]", "running [h]", "odometer [km]", "note", "core version",
)  # fmt: skip
_ENDINGS = ("_mm", "_percent", "_deg")
_STATES = ("excess_mm", "elongation_percent", "movement_mm", "crank_rock_deg")
# Anything that starts like a formula, in either width and after any blanks.
_FORMULA = re.compile(r"[\s\u00a0]*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n]")


def write(store: Store, shop: UUID) -> Iterator[str]:
    """Write the table in pieces, all of it as it was at one moment.

    Parameters
    ----------
    store, shop : whose readings
    """
    with store.reading() as session:
        transfer.snapshot(session, shop)
        named: dict[type[Record], dict[UUID, Any]] = {}
        for kind in (Engine, Build, Drive, Chain, GearSet):
            # Of what was deleted the name is still worth knowing.
            both = (transfer.every(session, kind, shop, deleted=gone) for gone in (False, True))
            named[kind] = {row.id: row for rows in both for row in rows}
        yield MARK + _line(COLUMNS)
        for reading in transfer.every(session, Reading, shop, deleted=False):
            assert isinstance(reading, Reading)  # noqa: S101  (that is the kind asked for)
            yield _line(_cells(reading, named))


def defused(text: str) -> str:
    """Make plain text, by an apostrophe, of what a spreadsheet would take for a formula."""
    return f"'{text}" if _FORMULA.match(text) else text


def _line(cells: Any) -> str:  # noqa: ANN401
    out = io.StringIO()
    csv.writer(out, lineterminator="\r\n").writerow(
        [defused(cell) if isinstance(cell, str) else cell for cell in cells]
    )
    return out.getvalue()


def _cells(reading: Reading, named: dict[type[Record], dict[UUID, Any]]) -> list[object]:
    engine = named[Engine].get(_id(reading.engine_id))
    chain = named[Chain].get(_id(reading.chain_id))
    gears = named[GearSet].get(_id(reading.gear_set_id))
    build = named[Build].get(_id(reading.build_id))
    drive = named[Drive].get(_id(reading.drive_id))
    measured = _part(reading.result, "measured")
    verdict = _part(reading.result, "verdict")
    state = _part(reading.result, "state")
    limit = reading.limit or {}
    quantity = _text(measured.get("quantity"))
    values: list[object] = []
    for ending in _ENDINGS:
        of_this = quantity.endswith(ending)
        for name in ("value", "expanded_uncertainty"):
            values.append(_number(measured.get(name)) if of_this else None)
    return [
        str(reading.id),
        reading.taken_at.isoformat().replace("+00:00", "Z"),
        engine and engine.name,
        engine and ("yes" if engine.invented else "no"),
        build and build.label,
        drive and drive.label,
        chain and chain.label,
        chain and chain.tag,
        gears and gears.label,
        gears and gears.tag,
        reading.calc,
        quantity,
        *values,
        _text(verdict.get("outcome")),
        _text(verdict.get("headline")),
        _text(limit.get("label")),
        _number(limit.get("lower")),
        _number(limit.get("upper")),
        _text(limit.get("unit")),
        _text(limit.get("origin")),
        _text(limit.get("source")),
        *(_number(_part(state, name).get("value")) for name in _STATES),
        reading.load_n,
        reading.distance_since_start_km,
        reading.running_since_start_h,
        reading.odometer_km,
        reading.note,
        reading.core_version,
    ]


def _id(id: UUID | None) -> UUID:
    return id or UUID(int=0)


def _part(whole: object, name: str) -> dict[str, Any]:
    """Find a part of a result; a stored result is whatever a phone once sent."""
    part = whole.get(name) if isinstance(whole, dict) else None
    return part if isinstance(part, dict) else {}


def _text(value: object) -> str:
    # Half a surrogate pair is JSON, but no text that could be written.
    return value.encode("utf-8", "replace").decode() if isinstance(value, str) else ""


def _number(value: object) -> object:
    return value if isinstance(value, (int, float)) and not isinstance(value, bool) else None

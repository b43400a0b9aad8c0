"""What the calculations about lift, rockers and clearance take. The core checks, as in `inputs`."""

from typing import Any

from marshmallow import Schema, fields, validate

from midspan.core import (
    calc_clearance,
    calc_lift,
    calc_matrix,
    calc_rockers,
    lift_table,
    pasted,
)

from .inputs import OwnLimitSchema
from .quantity import Strict, choice, number, readings

_ASSUMED = "A usual figure is assumed, and named, if not given."


def _table_list(name: str) -> fields.List[Any]:
    return fields.List(
        number(name), allow_none=True, validate=validate.Length(1, lift_table.MOST_ROWS),
        metadata={"description": "Beside a text not allowed."},
    )  # fmt: skip


def _label(description: str) -> fields.String:
    return fields.String(
        required=True, validate=validate.Length(1, 60), metadata={"description": description}
    )


def _list_of(name: str, most: int, note: str, *, required: bool = False) -> fields.List[Any]:
    return fields.List(
        number(name), required=required, allow_none=not required,
        validate=validate.Length(1, most), metadata={"description": note},
    )  # fmt: skip


class LobeSchema(Strict):
    """A lift table: dial readings against angle over one lobe, as text or as two lists."""

    text = fields.String(
        allow_none=True, validate=validate.Length(1, pasted.MOST_CHARACTERS),
        metadata={
            "description": "The table, a row a line: CSV as in RFC 4180, or columns apart by tabs, "
            "semicolons or blanks, with decimal point or comma, with or without a heading."
        },
    )  # fmt: skip
    lift_unit = choice(
        lift_table.LIFT_UNITS, "Unit of the lifts in the text; needed with it.", required=False,
        nullable=True,
    )  # fmt: skip
    angle_column = number("angle_column", required=False)
    lift_column = number("lift_column", required=False)
    table_angles_deg = _table_list("table_angles_deg")
    table_lifts_mm = _table_list("table_lifts_mm")
    angle_of = choice(lift_table.ANGLES_OF, "Whether the angles are crank or cam degrees.")
    wheel = choice(
        lift_table.WHEELS,
        "How the numbers run: round to 360, both ways to 180, or on and on (so if not given).",
        required=False, nullable=True,
    )  # fmt: skip
    lift_of = choice(lift_table.LIFTS_OF, "Where the dial stood.")
    table_ratio = number("table_ratio", required=False, note="Needed if read at the valve.")
    table_lash_mm = number("table_lash_mm", required=False, note="0 if not given.")
    zero = choice(
        lift_table.ZEROS, "Whether zero is true TDC; tdc if not given.", required=False,
        nullable=True,
    )  # fmt: skip
    installed_centreline_deg = number(
        "installed_centreline_deg", required=False,
        note="Moves the table there; needed if its zero is not TDC.",
    )  # fmt: skip
    resolution_mm = number("resolution_mm", required=False, note=_ASSUMED)
    instrument_error_mm = number("instrument_error_mm", required=False, note=_ASSUMED)
    repeatability_mm = number("repeatability_mm", required=False, note=_ASSUMED)
    resolution_deg = number("resolution_deg", required=False, note=_ASSUMED)
    instrument_error_deg = number("instrument_error_deg", required=False, note=_ASSUMED)
    repeatability_deg = number("repeatability_deg", required=False, note=_ASSUMED)


class LiftInputSchema(Strict):
    """Input of the calculation "lift": a lift table made a smooth curve, and read."""

    valve = choice(lift_table.VALVES, "Which lobe it is.")
    lobe = fields.Nested(LobeSchema, required=True)
    heights_mm = _list_of(
        "heights_mm", calc_lift.MOST_HEIGHTS, "0.1524, 1 and 1.27 mm if not given."
    )
    smoothing = choice(
        calc_lift.SMOOTHINGS,
        "By what it is smoothed: the scatter of dial and wheel (so if not given), or "
        "cross-validation.",
        required=False, nullable=True,
    )  # fmt: skip
    curve_points = number("curve_points", required=False, note="0 if not given.")


class RockerSchema(Strict):
    """A rocker, with the lash it is set to."""

    label = _label("Its name, of its own in the list.")
    rocker_ratio = number("rocker_ratio")
    lash_mm = number("lash_mm", required=False, note="0 if not given.")


def _rockers() -> fields.List[Any]:
    return fields.List(
        fields.Nested(RockerSchema), required=True,
        validate=validate.Length(1, calc_rockers.MOST_ROCKERS),
        metadata={"description": "The present one first."},
    )  # fmt: skip


class RockersInputSchema(Strict):
    """Input of the calculation "rockers": several rockers on the same cam."""

    intake = fields.Nested(LobeSchema, allow_none=True)
    exhaust = fields.Nested(LobeSchema, allow_none=True)
    rockers = _rockers()
    heights_mm = _list_of(
        "heights_mm", calc_rockers.MOST_HEIGHTS, "Of valve lift; 1.27 and 5.08 mm if not given."
    )
    keep = choice(
        calc_rockers.KEPT, "Which event is to stay where it is; the intake's closing if not given.",
        required=False, nullable=True,
    )  # fmt: skip
    event_height_mm = number("event_height_mm", required=False, note="1.27 mm if not given.")
    cams = choice(
        calc_rockers.CAMS, "Whether both lobes are on one shaft; one if not given.",
        required=False, nullable=True,
    )  # fmt: skip
    curve_points = number("curve_points", required=False, note="0 if not given.")


class LeftOutSchema(Strict):
    """A test of the matrix that is not to be made."""

    rocker = _label("One of rockers.")
    left_out_deg = number("left_out_deg")


class MatrixInputSchema(Strict):
    """Input of the calculation "matrix": rockers and cam settings to test."""

    rockers = fields.List(
        _label("A name."), required=True, validate=validate.Length(1, calc_matrix.MOST_ROCKERS),
        metadata={"description": "The present one first; each once."},
    )  # fmt: skip
    settings_deg = _list_of(
        "settings_deg", calc_matrix.MOST_SETTINGS, "The present one first; each once.",
        required=True,
    )  # fmt: skip
    leave_out = fields.List(
        fields.Nested(LeftOutSchema), allow_none=True,
        metadata={"description": "Such as those that would touch; never the baseline."},
    )  # fmt: skip
    swap_min = number("swap_min", required=False, note=_ASSUMED)
    move_min = number("move_min", required=False, note=_ASSUMED)
    repeat_baseline = fields.Boolean(
        allow_none=True,
        metadata={"description": "Whether the first test comes again at the end; so if not given."},
    )


class DropSchema(Strict):
    """How far the seated valve travels to the piston at a crank angle."""

    drop_angle_deg = number("drop_angle_deg")
    travel_mm = number("travel_mm")


class ClearanceLimitSchema(OwnLimitSchema):
    """A least clearance that the user found in the maker's manual."""

    quantity = choice(("valve_clearance_mm",), "The least clearance over the crank.")


class CrankSchema(Strict):
    """The crank mechanism."""

    stroke_mm = number("stroke_mm")
    rod_length_mm = number("rod_length_mm", note="More than half the stroke and the offset.")
    pin_offset_mm = number("pin_offset_mm", required=False, note="0 if not given.")


class ClearanceInputSchema(CrankSchema):
    """Input of the calculation "clearance": how near valve and piston come."""

    valve = choice(lift_table.VALVES, "Which valve.")
    lobe = fields.Nested(
        LobeSchema, required=True,
        metadata={"description": "A table that ends on the base circle on both sides."},
    )  # fmt: skip
    rockers = _rockers()
    valve_axis_deg = number("valve_axis_deg", required=False, note="0 if not given.")
    method = choice(
        calc_clearance.METHODS,
        "drop: the seated valve pushed down to the piston, needs drops; clay: its thickness where "
        "thinnest, needs readings_mm.",
    )
    drops = fields.List(
        fields.Nested(DropSchema), allow_none=True,
        validate=validate.Length(1, calc_clearance.MOST_DROPS),
    )  # fmt: skip
    readings_mm = readings("readings_mm")
    settings_deg = _list_of(
        "settings_deg", calc_clearance.MOST_SETTINGS, "Cam moves to look at; -8 to 8 if not given."
    )
    tdc_plus_minus_deg = number("tdc_plus_minus_deg", required=False, note=_ASSUMED)
    resolution_mm = number("resolution_mm", required=False, note=_ASSUMED)
    instrument_error_mm = number("instrument_error_mm", required=False, note=_ASSUMED)
    repeatability_mm = number("repeatability_mm", required=False, note=_ASSUMED)
    deck_clearance_mm = number("deck_clearance_mm", required=False)
    aluminium_rods = fields.Boolean(
        allow_none=True, metadata={"description": "Asks for more clearance; false if not given."}
    )
    radial_clearance_mm = number("radial_clearance_mm", required=False)
    own_limit = fields.Nested(ClearanceLimitSchema, allow_none=True)
    curve_points = number("curve_points", required=False, note="0 if not given.")


class CompressionInputSchema(CrankSchema):
    """Input of the calculation "compression": from the intake's closing point."""

    static_ratio = number("static_ratio")
    intake_closing_abdc_deg = number("intake_closing_abdc_deg", note="Of the seat; 0 to 150.")
    closing_plus_minus_deg = number("closing_plus_minus_deg", required=False, note=_ASSUMED)
    exponent = number("exponent", required=False, note="1.3 if not given (published).")
    inlet_pressure_kpa = number(
        "inlet_pressure_kpa", required=False, note="101.325 if not given (ISO 2533)."
    )
    settings_deg = _list_of("settings_deg", 25, "Cam moves to look at; -8 to 8 if not given.")


LIFT_INPUTS: dict[str, type[Schema]] = {
    "lift": LiftInputSchema,
    "rockers": RockersInputSchema,
    "matrix": MatrixInputSchema,
    "clearance": ClearanceInputSchema,
    "compression": CompressionInputSchema,
}

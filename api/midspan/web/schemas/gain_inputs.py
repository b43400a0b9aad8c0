"""What spark scatter and the expected gain take. The core checks, as for `inputs`."""

from marshmallow import Schema, fields, validate

from midspan.core import gain_asked

from .inputs import DriveSchema
from .quantity import Strict, number, readings
from .shelf_inputs import HeatingSchema, WindowSchema

_USUAL = "A usual range is assumed if not given (from memory, unverified)."


class SparkInputSchema(Strict):
    """Input of the calculation "spark": timing read with a light, two readings or more in a list.

    At least one list is needed.
    """

    idle_before_deg = readings("idle_before_deg")
    idle_after_deg = readings("idle_after_deg")
    wide_open_before_deg = readings("wide_open_before_deg")
    wide_open_after_deg = readings("wide_open_after_deg")
    resolution_deg = number("resolution_deg", required=False, note="Assumed if not given.")
    away_from_best_deg = number("away_from_best_deg", required=False, note="0 if not given.")
    loss_per_deg2 = number("loss_per_deg2", required=False, note=_USUAL)
    peak_power_kw = number("peak_power_kw", required=False)


class ComparedSchema(Strict):
    """A comparison of two settings of one engine on the dyno."""

    engine = fields.String(
        required=True, validate=validate.Length(1, gain_asked.LONGEST_NAME),
        metadata={"description": "Which engine; the same name for the same engine."},
    )  # fmt: skip
    from_movement_mm = number("from_movement_mm")
    to_movement_mm = number("to_movement_mm")
    gain_percent = number("gain_percent")
    standard_uncertainty_percent = number("standard_uncertainty_percent")


class GainInputSchema(WindowSchema):
    """Input of the calculation "gain": slack now and wanted, power, and what is known."""

    drive = fields.Nested(DriveSchema, required=True)
    movement_mm = number("movement_mm", note="Now, measured cold.")
    standard_uncertainty_mm = number(
        "standard_uncertainty_mm", required=False, note="Of movement_mm; assumed if not given."
    )
    peak_power_kw = number("peak_power_kw")
    peak_speed_rpm = number("peak_speed_rpm")
    heat = fields.Nested(
        HeatingSchema, allow_none=True,
        metadata={"description": "Tells how tight the chain gets hot, and so what friction takes."},
    )  # fmt: skip
    pin_friction = number("pin_friction", required=False, note=_USUAL)
    bearing_friction = number("bearing_friction", required=False, note=_USUAL)
    chain_pin_mm = number("chain_pin_mm", required=False, note="From the pitch if not given.")
    crank_journal_mm = number("crank_journal_mm", required=False, note=_USUAL)
    cam_journal_mm = number("cam_journal_mm", required=False, note=_USUAL)
    stiffness_n_per_mm = number("stiffness_n_per_mm", required=False, note=_USUAL)
    friction_source = fields.String(
        allow_none=True, validate=validate.Length(1, 200),
        metadata={"description": "Where own figures of friction come from."},
    )  # fmt: skip
    evidence = fields.List(
        fields.Nested(ComparedSchema), allow_none=True,
        validate=validate.Length(0, gain_asked.MOST),
        metadata={"description": "Comparisons on the dyno; none: only the rule of thumb."},
    )  # fmt: skip
    engine = fields.String(
        allow_none=True, validate=validate.Length(1, gain_asked.LONGEST_NAME),
        metadata={"description": "The engine asked about, if it is among the evidence."},
    )  # fmt: skip
    curve_points = number("curve_points", required=False, note="0 if not given.")


GAIN_INPUTS: dict[str, type[Schema]] = {"spark": SparkInputSchema, "gain": GainInputSchema}

"""What the calculations about heat, gears and the shelf take. The core checks, as for `inputs`."""

from marshmallow import fields, validate

from midspan.core import calc_combined, calc_fit, calc_gear, materials, measurement

from .inputs import DriveSchema, LengthsSchema, OwnLimitSchema
from .quantity import OneOf, Strict, choice, number, readings

MATERIALS = sorted(material.id for material in materials.MATERIALS)
_COLD = "Measured on the cold engine; without it the chain is taken at nominal length."
_WINDOW = "The trade's window (common practice, no source) if neither end is given."


class WindowSchema(Strict):
    """The movement wanted."""

    window_lower_mm = number("window_lower_mm", required=False, note=_WINDOW)
    window_upper_mm = number("window_upper_mm", required=False, note=_WINDOW)


class HeatingSchema(Strict):
    """What block, gears and chain are made of, and how warm they get.

    Temperatures that are not given are assumed (from memory, unverified) and named in the result.
    """

    block_material = choice(
        MATERIALS, "Material of the block; needed unless block_expansion_ppm is given.",
        required=False, nullable=True,
    )  # fmt: skip
    gear_material = choice(
        MATERIALS, "Material of the gears; steel-4140 if not given.", required=False, nullable=True
    )
    chain_material = choice(
        MATERIALS, "Material of the chain; steel-4140 if not given.", required=False, nullable=True
    )
    block_expansion_ppm = number("block_expansion_ppm", required=False, note="Before any material.")
    gear_expansion_ppm = number("gear_expansion_ppm", required=False, note="Before any material.")
    chain_expansion_ppm = number("chain_expansion_ppm", required=False, note="Before any material.")
    expansion_source = fields.String(
        allow_none=True, validate=validate.Length(1, 200),
        metadata={"description": "Where an own coefficient comes from; needed with one."},
    )  # fmt: skip
    cold_temperature_c = number("cold_temperature_c", required=False)
    block_temperature_c = number("block_temperature_c", required=False)
    gear_temperature_c = number("gear_temperature_c", required=False)
    chain_temperature_c = number("chain_temperature_c", required=False)
    expansion_error_ppm = number(
        "expansion_error_ppm", required=False, note="Of each coefficient; its own if not given."
    )
    temperature_error_k = number(
        "temperature_error_k", required=False, note="Assumed if not given (from memory)."
    )
    cold_temperature_error_k = number(
        "cold_temperature_error_k", required=False, note="Assumed if not given (from memory)."
    )


class HeatInputSchema(HeatingSchema, WindowSchema):
    """Input of the calculation "heat": what becomes of a cold fit when the engine is hot."""

    drive = fields.Nested(DriveSchema, required=True)
    movement_mm = number("movement_mm", required=False, note=_COLD)
    standard_uncertainty_mm = number(
        "standard_uncertainty_mm", required=False,
        note="Of movement_mm; assumed if not given (from memory, unverified).",
    )  # fmt: skip
    stiffness_n_per_mm = number(
        "stiffness_n_per_mm", required=False,
        note="A wide range is assumed if not given (from memory, unverified).",
    )  # fmt: skip
    compliance_um_per_kn = number("compliance_um_per_kn", required=False, note="0 if not given.")
    stiffness_source = fields.String(
        allow_none=True, validate=validate.Length(1, 200),
        metadata={"description": "Where an own stiffness or give of the shafts comes from."},
    )  # fmt: skip
    curve_points = number("curve_points", required=False, note="0 if not given.")


class BoredInputSchema(WindowSchema):
    """Input of the calculation "bored": the two axes are nearer or further apart than before."""

    drive = fields.Nested(DriveSchema, required=True, metadata={"description": "As it was before."})
    new_centre_distance_mm = number("new_centre_distance_mm")
    movement_mm = number("movement_mm", required=False, note=_COLD.replace("cold", "old"))


class GearLimitSchema(OwnLimitSchema):
    """A limit of the reading on a gear, which the user found in the maker's manual."""

    quantity = choice(("reading_mm",), "The reading as shown by the instrument, same method.")


class GearInputSchema(LengthsSchema):
    """Input of the calculation "gear": the wear of one gear, from a reading across it."""

    method = choice(
        calc_gear.METHODS,
        "over-pins: over two pins in opposite gaps, needs pin_diameter_mm; over-chain: over a new "
        "chain wrapped round, needs roller_diameter_mm.",
    )
    readings_mm = readings("readings_mm", required=True)
    pin_diameter_mm = number("pin_diameter_mm", required=False)
    roller_diameter_mm = number("roller_diameter_mm", required=False)
    teeth = number("teeth", required=False, note="Needed unless a drive gives it.")
    pitch_mm = number("pitch_mm", required=False, note="Needed unless a drive gives it.")
    drive = fields.Nested(DriveSchema, allow_none=True)
    gear = choice(
        calc_gear.GEARS, "Which gear of the drive it is; needed with a drive.",
        required=False, nullable=True,
    )  # fmt: skip
    own_limit = fields.Nested(GearLimitSchema, allow_none=True)


def _only(quantity: str) -> fields.String:
    assert quantity in measurement.KINDS  # noqa: S101  (a slip shows at import)
    return choice((quantity,), "What was measured.")


class ElongationMeasurementSchema(Strict):
    """The chain's wear, measured off the engine."""

    quantity = _only("elongation_percent")
    elongation_percent = number("elongation_percent")
    standard_uncertainty_percent = number("standard_uncertainty_percent")


class MovementMeasurementSchema(Strict):
    """The movement of the slack strand, on the engine."""

    quantity = _only("movement_mm")
    movement_mm = number("movement_mm")
    standard_uncertainty_mm = number("standard_uncertainty_mm")


class CrankRockMeasurementSchema(Strict):
    """How far the crank turns before the cam follows, on the engine."""

    quantity = _only("crank_rock_deg")
    crank_rock_deg = number("crank_rock_deg")
    standard_uncertainty_deg = number("standard_uncertainty_deg")


class ChainLengthMeasurementSchema(Strict):
    """The length of the whole chain, off the engine."""

    quantity = _only("chain_length_mm")
    chain_length_mm = number("chain_length_mm")
    standard_uncertainty_mm = number("standard_uncertainty_mm")


class CombinedInputSchema(Strict):
    """Input of the calculation "combined": several readings of one chain on one drive."""

    drive = fields.Nested(DriveSchema, required=True)
    measurements = fields.List(
        OneOf(
            ElongationMeasurementSchema, MovementMeasurementSchema, CrankRockMeasurementSchema,
            ChainLengthMeasurementSchema,
        ),
        required=True, validate=validate.Length(1, calc_combined.MOST),
        metadata={"description": "Each with its standard uncertainty, from its own result."},
    )  # fmt: skip


def _name(description: str) -> fields.String:
    return fields.String(
        required=True, validate=validate.Length(1, 100), metadata={"description": description}
    )


def _names(what: str, most: int) -> fields.List[str]:
    return fields.List(
        _name(f"A name of one of the {what}, such as its id."),
        required=True, validate=validate.Length(1, most),
        metadata={"description": f"The {what} to choose from, each named once."},
    )  # fmt: skip


class TrialSchema(Strict):
    """A trial fit: a chain on a gear set, and the movement it gave."""

    chain = _name("One of chains.")
    gear_set = _name("One of gear_sets.")
    movement_mm = number("movement_mm")
    standard_uncertainty_mm = number("standard_uncertainty_mm", note="Of the movement.")
    centre_distance_mm = number(
        "centre_distance_mm", required=False, note="Only if the trial was made in another block."
    )


class BenchLengthSchema(Strict):
    """A chain measured off the engine."""

    chain = _name("One of chains.")
    elongation_percent = number("elongation_percent")
    standard_uncertainty_percent = number("standard_uncertainty_percent")


class GearWearSchema(Strict):
    """A gear set measured by itself: both of its gears together."""

    gear_set = _name("One of gear_sets.")
    added_excess_mm = number("added_excess_mm", note="The sum of its two gears.")
    standard_uncertainty_mm = number("standard_uncertainty_mm", note="Of that sum.")


class FitInputSchema(WindowSchema):
    """Input of the calculation "fit": which chain on which gear set, in one engine."""

    drive = fields.Nested(
        DriveSchema, required=True, metadata={"description": "This engine, its chain at nominal."}
    )
    chains = _names("chains", calc_fit.MOST_CHAINS)
    gear_sets = _names("gear sets", calc_fit.MOST_GEARS)
    trials = fields.List(
        fields.Nested(TrialSchema), required=True, validate=validate.Length(0, calc_fit.MOST_TRIALS)
    )
    bench = fields.List(
        fields.Nested(BenchLengthSchema), allow_none=True,
        validate=validate.Length(0, calc_fit.MOST_TRIALS),
    )  # fmt: skip
    gears = fields.List(
        fields.Nested(GearWearSchema), allow_none=True,
        validate=validate.Length(0, calc_fit.MOST_TRIALS),
    )  # fmt: skip
    heat = fields.Nested(
        HeatingSchema, allow_none=True,
        metadata={"description": "Judge the fit hot; without it only cold."},
    )  # fmt: skip

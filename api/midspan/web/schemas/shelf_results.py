"""What the calculations about heat, gears and the shelf give. Documentation, as for `results`."""

from marshmallow import Schema, fields, validate

from midspan.core import calc_heat, guard, heating, limits, measurement

from .quantity import choice, listed, measure, nested, whole, words
from .results import (
    AssumptionSchema,
    BenchSchema,
    BudgetLineSchema,
    CautionSchema,
    EstimateSchema,
    StateSchema,
    WarningSchema,
)

WINDOW_ORIGINS = (limits.PRACTICE, limits.GIVEN)


def _origin_of_window() -> fields.String:
    return choice(WINDOW_ORIGINS, "Where the wanted movement comes from.")


class ResultSchema(Schema):
    """What each of these calculations gives."""

    core_version = words("Version of the calculations.")
    assumptions = fields.List(fields.Nested(AssumptionSchema), required=True)
    warnings = fields.List(fields.Nested(WarningSchema), required=True)
    cautions = fields.List(fields.Nested(CautionSchema), required=True)


class MaterialSchema(Schema):
    """A material with its expansion coefficient and where that comes from."""

    id = words("Stable name of the material; own where the user gave the coefficient.")
    label = words("Name on the screen.")
    expansion_ppm = measure("expansion_ppm")
    origin = choice(limits.ORIGINS, "How well the figure is founded.")
    source = words("Title of the source.")
    address = words("Where the source is found; empty where there is none.")
    expansion_error_ppm = measure("expansion_error_ppm")
    error_origin = choice(
        (*limits.ORIGINS, limits.GIVEN), "How well expansion_error_ppm is founded."
    )


class UsedMaterialSchema(MaterialSchema):
    """A material as it was used."""

    part = choice(heating.PARTS, "What is made of it.")


class SeenSchema(Schema):
    """What a drive would show."""

    centre_distance_mm = measure("centre_distance_mm")
    excess_mm = measure("excess_mm")
    movement_mm = measure("movement_mm")
    crank_rock_deg = measure("crank_rock_deg")
    zone = choice(guard.ZONES, "The zone of slack that the movement is in.")


class InterferenceSchema(Schema):
    """What a chain shorter than its hot drive brings about, for the whole range of stiffness."""

    interference_mm = measure("interference_mm")
    tension_low_n = measure("tension_low_n")
    tension_high_n = measure("tension_high_n")
    shaft_load_low_n = measure("shaft_load_low_n")
    shaft_load_high_n = measure("shaft_load_high_n")
    origin = choice((*limits.ORIGINS, limits.GIVEN), "Where the stiffness comes from.")
    source = words("Title of its source; empty where none was named.")


class HotIntervalSchema(Schema):
    """The hot slack with its 95 % coverage intervals."""

    excess_mm = nested(EstimateSchema, "Excess length [mm].")
    movement_mm = nested(EstimateSchema, "Total mid-span movement [mm].")
    crank_rock_deg = nested(EstimateSchema, "Crank-rock lash [deg].")


class HotVerdictSchema(Schema):
    """The hot movement judged, with a guard band as wide as its interval's half."""

    outcome = choice((*guard.ZONES, "too-close"), "The zone of slack that it is surely in.")
    between = fields.List(
        choice(guard.ZONES, "A zone of slack."), required=True, allow_none=True,
        metadata={"description": "The two zones its interval reaches, if it is too close."},
    )  # fmt: skip
    window = choice(("within", "below", "beyond", "too-close"), "Against the movement wanted.")
    slack = choice(("some", "none", "too-close"), "Whether the hot chain has slack at all.")


class ColdTargetSchema(Schema):
    """The cold movement to aim at."""

    hot_lower_mm = measure("hot_lower_mm")
    hot_upper_mm = measure("hot_upper_mm")
    cold_lower_mm = measure("cold_lower_mm", nullable=True)
    cold_upper_mm = measure("cold_upper_mm", nullable=True)
    origin = choice((*WINDOW_ORIGINS, limits.MEMORY), "Where the least known of it comes from.")


class HeatPointSchema(Schema):
    """One point of slack against temperature."""

    block_temperature_c = measure("block_temperature_c")
    excess_mm = measure("excess_mm")
    movement_mm = measure("movement_mm")


class HeatCurveSchema(Schema):
    """Slack against temperature with a block of one material."""

    block = choice(
        ("chosen", *calc_heat.COMPARED), "The chosen block, or another material to compare with."
    )
    points = listed(HeatPointSchema, "From cold to running, evenly.")


class HeatResultSchema(ResultSchema):
    """Result of "heat": the same fit cold and hot, and the cold fit to aim at."""

    calc = choice(("heat",), "The calculation.")
    cold = nested(SeenSchema, "As measured, cold.")
    hot = nested(SeenSchema, "At running temperature.")
    hot_interval = nested(HotIntervalSchema, "At running temperature, with its uncertainty.")
    hot_verdict = nested(HotVerdictSchema, "What can be said of it.")
    budget = listed(BudgetLineSchema, "Of the hot excess length [mm].")
    interference = nested(InterferenceSchema, "null unless the hot chain is short.", nullable=True)
    cold_target = nested(ColdTargetSchema, "What becomes the wanted movement when hot.")
    curves = listed(HeatCurveSchema, "The chosen block first; empty without curve_points.")
    materials = listed(UsedMaterialSchema, "One for each part.")


class ChainNeededSchema(Schema):
    """How much a chain must differ from this one, and from nominal, to land in the window."""

    window_lower_mm = measure("window_lower_mm")
    window_upper_mm = measure("window_upper_mm")
    origin = _origin_of_window()
    length_change_low_mm = measure("length_change_low_mm")
    length_change_high_mm = measure("length_change_high_mm")
    elongation_low_percent = measure("elongation_low_percent")
    elongation_high_percent = measure("elongation_high_percent")


class BoredResultSchema(ResultSchema):
    """Result of "bored": the same chain before and after, and the chain that would fit."""

    calc = choice(("bored",), "The calculation.")
    before = nested(SeenSchema, "At the old centre distance.")
    after = nested(SeenSchema, "At the new centre distance.")
    excess_change_mm = measure("excess_change_mm")
    chain_needed = nested(ChainNeededSchema, "For the new centre distance.")


class GearResultSchema(BenchSchema):
    """Result of "gear": the effective pitch diameter, judged, and the slack its wear adds."""

    calc = choice(("gear",), "The calculation.")
    nominal_pitch_diameter_mm = measure("nominal_pitch_diameter_mm")
    radius_loss_mm = nested(EstimateSchema, "Nominal less measured pitch radius [mm].")
    added_excess_mm = nested(
        EstimateSchema, "Excess length that the wear of this one gear adds [mm]; null if no drive.",
        nullable=True,
    )  # fmt: skip


class ConsistencySchema(Schema):
    """Whether the readings agree within their uncertainties."""

    chi_square = measure("chi_square")
    degrees_of_freedom = whole("Readings beyond those needed; 0 if none is to spare.")
    probability = measure("probability", nullable=True)
    consistent = fields.Boolean(
        required=True, metadata={"description": "false if chance alone hardly explains it."}
    )


class CauseSchema(Schema):
    """A likely cause."""

    code = words("Stable word for programs.")
    text = words("The cause.")


class OddOneOutSchema(Schema):
    """The reading that does not go with the others."""

    index = whole("Its place in measurements, from 0.")
    quantity = choice(measurement.KINDS, "What was measured.")
    value = measure("value")
    expected_excess_mm = measure("expected_excess_mm")
    causes = fields.List(
        fields.Nested(CauseSchema), required=True, validate=validate.Length(1),
        metadata={"description": "The likeliest first."},
    )  # fmt: skip
    origin = choice(limits.ORIGINS, "How well the causes are founded.")


class PartSchema(Schema):
    """One of the readings, as excess length."""

    quantity = choice(measurement.KINDS, "What was measured.")
    value = measure("value")
    excess_mm = measure("excess_mm")
    standard_uncertainty_mm = measure("standard_uncertainty_mm")
    used = fields.Boolean(
        required=True,
        metadata={"description": "False for slack too small to be told from none, if others are."},
    )


class CombinedResultSchema(ResultSchema):
    """Result of "combined": one state from several readings, and whether they agree."""

    calc = choice(("combined",), "The calculation.")
    state = nested(StateSchema, "By all readings together.")
    consistency = nested(ConsistencySchema, "Whether they agree.")
    odd_one_out = nested(
        OddOneOutSchema, "null if they agree, or are too few to tell which.", nullable=True
    )
    parts = listed(PartSchema, "In the order of measurements.")


class WantedSchema(Schema):
    """The movement wanted."""

    lower_mm = measure("lower_mm")
    upper_mm = measure("upper_mm")
    origin = _origin_of_window()


class IntervalSchema(Schema):
    """A value with its 95 % coverage interval, in the unit its field's name carries."""

    value = measure("value")
    low = measure("low")
    high = measure("high")


class CombinationSchema(Schema):
    """One chain on one gear set. What is not determined, or not asked for, is null."""

    chain = words("One of chains.")
    gear_set = words("One of gear_sets.")
    determined = fields.Boolean(
        required=True,
        metadata={"description": "Whether the readings say anything of the two together."},
    )
    excess_mm = measure("excess_mm", nullable=True)
    standard_uncertainty_mm = measure("standard_uncertainty_mm", nullable=True)
    cold_movement_mm = nested(IntervalSchema, "null if not determined.", nullable=True)
    cold_probability = measure("cold_probability", nullable=True)
    hot_movement_mm = nested(
        IntervalSchema, "null if not determined, or heat was not given.", nullable=True
    )
    hot_probability = measure("hot_probability", nullable=True)


class GroupSchema(Schema):
    """Chains and gear sets that trials tie together."""

    chains = fields.List(fields.String(), required=True)
    gear_sets = fields.List(fields.String(), required=True)
    anchored = fields.Boolean(
        required=True, metadata={"description": "Whether one of them was measured by itself."}
    )


class NextTrialSchema(Schema):
    """The single trial that would tell the most."""

    chain = words("One of chains.")
    gear_set = words("One of gear_sets.")
    why = words("The reason.")
    share = measure("share", nullable=True)


class SuspectSchema(Schema):
    """A reading without which all the others agree."""

    field = words("Its place in the input, such as trials[3].")
    probability = measure("probability")
    cause = nested(CauseSchema, "What may have happened; null if nothing is known.", nullable=True)


class FitResultSchema(ResultSchema):
    """Result of "fit": every chain on every gear set, the likeliest to fit first."""

    calc = choice(("fit",), "The calculation.")
    window = nested(WantedSchema, "What each is held against.")
    combinations = listed(CombinationSchema, "All; those not determined last.")
    groups = listed(GroupSchema, "What was tried together. Between groups nothing need be known.")
    unused_trials = fields.List(
        fields.Integer(), required=True,
        metadata={"description": "Places in trials, from 0, of those that showed no movement."},
    )  # fmt: skip
    consistency = nested(ConsistencySchema, "Whether the readings agree.")
    suspects = listed(
        SuspectSchema, "Every single reading that would explain a disagreement, likeliest first."
    )
    next_trial = nested(NextTrialSchema, "The trial that would tell the most.", nullable=True)
    materials = listed(UsedMaterialSchema, "One for each part; empty without heat.")

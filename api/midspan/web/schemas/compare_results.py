"""What the comparison of dyno runs and its planner give. These schemas document."""

from marshmallow import Schema, fields

from midspan.core import calc_pulls, compare_asked, compare_said, correction, design_words, limits

from .quantity import choice, measure, words
from .shelf_results import ResultSchema


class FoundSchema(Schema):
    """A value with its 95 % interval; what too few pulls cannot tell is null."""

    value = measure("value")
    standard_uncertainty = measure("standard_uncertainty", nullable=True)
    degrees_of_freedom = measure("degrees_of_freedom")
    lower_95 = measure("lower_95", nullable=True)
    upper_95 = measure("upper_95", nullable=True)


def _found(description: str, *, nullable: bool = False) -> fields.Nested:
    return fields.Nested(
        FoundSchema, required=True, allow_none=nullable, metadata={"description": description}
    )


class BlockOfRunsSchema(Schema):
    """Runs of one setting after another."""

    setting = words("Key of the setting.")
    pulls = measure("pulls")


class OrderOfRunsSchema(Schema):
    """The order of the runs compared."""

    name = choice(design_words.NAMES, "What it is.")
    text = words("The same in words, and the order itself.")
    blocks = fields.List(fields.Nested(BlockOfRunsSchema), required=True)
    changes = measure("changes")


class DriftSchema(Schema):
    """What was done of drift."""

    asked = choice(compare_asked.DRIFTS, "What was asked for.")
    used = choice(("none", "linear"), "What was taken out.")
    change_per_pull_percent = _found("The drift found [%]; null for none.", nullable=True)
    text = words("The same in words.")


class ScatterSchema(Schema):
    """Standard deviation of a run, with its own 95 % interval."""

    scatter_percent = measure("scatter_percent", nullable=True)
    lower_95 = measure("lower_95", nullable=True)
    upper_95 = measure("upper_95", nullable=True)
    degrees_of_freedom = measure("degrees_of_freedom")


class ToldScatterSchema(ScatterSchema):
    """The scatter of all settings together."""

    text = words("The same in words.")


class ComparedSettingSchema(ScatterSchema):
    """A setting: its level and what its own runs scatter about the drift."""

    setting = words("Key of the setting.")
    count = measure("count")
    left_out_count = measure("left_out_count")
    times_fitted = measure("times_fitted")
    level = measure("level")


class ComparedFigureSchema(Schema):
    """A run by the one standard."""

    place = measure("place")
    setting = words("Key of its setting.")
    value = measure("value", nullable=True)
    without_drift = measure("without_drift", nullable=True)
    residual_percent = measure("residual_percent", nullable=True)
    factor = measure("factor", nullable=True)
    figures_are = choice(correction.FIGURES_ARE, "What was sent.")
    left_out = words("Why it is not compared; empty where it is.")


class DifferenceSchema(Schema):
    """A setting held against the reference."""

    from_setting = words("Key of the reference.")
    to_setting = words("Key of the other.")
    difference = _found("In the unit of the figures.")
    gain_percent = _found("The same in percent of the reference; the interval by Fieller.")
    gain_with_all_percent = _found("With the runs left out taken in; null if none.", nullable=True)
    p_value = measure("p_value", nullable=True)
    outcome = choice(compare_said.OUTCOMES, "The verdict in one word.")
    headline = words("The verdict in a few words.")
    why = words("The reason, with the figures rounded for reading.")
    next_step = words("What to do next.")
    detectable_percent = measure("detectable_percent", nullable=True)
    further_pulls = measure("further_pulls", nullable=True)
    further_order = fields.List(
        fields.String(), required=True, allow_none=True,
        metadata={"description": "Settings of the further pulls; null if over 60."},
    )  # fmt: skip


class LeftOutRunSchema(Schema):
    """A run left out."""

    place = measure("place")
    setting = words("Key of its setting.")
    reason = words("Why.")
    value = measure("value", nullable=True)


class CompareResultSchema(ResultSchema):
    """Result of "compare": whether the gain was shown."""

    calc = choice(("compare",), "Which calculation.")
    standard = choice(correction.FIGURES_ARE, "The one standard of every figure here.")
    standard_label = words("Its name.")
    quantity = choice(compare_asked.QUANTITIES, "The figure compared.")
    quantity_text = words("The same in words.")
    unit = choice(("kW", "N m"), "Unit of the figures.")
    band_lower_rpm = measure("band_lower_rpm", nullable=True)
    band_upper_rpm = measure("band_upper_rpm", nullable=True)
    reference = words("Key of the setting that the others are held against.")
    design = fields.Nested(OrderOfRunsSchema, required=True)
    drift = fields.Nested(DriftSchema, required=True)
    scatter = fields.Nested(ToldScatterSchema, required=True)
    settings = fields.List(fields.Nested(ComparedSettingSchema), required=True)
    runs = fields.List(fields.Nested(ComparedFigureSchema), required=True)
    differences = fields.List(fields.Nested(DifferenceSchema), required=True)
    left_out = fields.List(fields.Nested(LeftOutRunSchema), required=True)
    left_out_text = words("How many runs were left out, of which settings.")


class PlannedScatterSchema(Schema):
    """The scatter planned with, and its range."""

    scatter_percent = measure("scatter_percent")
    low = measure("low")
    high = measure("high")
    origin = choice((*limits.ORIGINS, limits.GIVEN), "How well it is founded.")
    text = words("The same in words.")


class PlannedDesignSchema(Schema):
    """What an order of pulls takes."""

    design = choice(calc_pulls.DESIGNS, "Which order.")
    text = words("The same in words.")
    pulls = measure("pulls", nullable=True)
    pulls_at_low = measure("pulls_at_low", nullable=True)
    pulls_at_high = measure("pulls_at_high", nullable=True)
    changes = measure("changes", nullable=True)
    order = words("The order written out; null where over 60 pulls are needed.", nullable=True)


class PlannedSizeSchema(Schema):
    """What so many pulls find."""

    pulls = measure("pulls")
    order = words("The order written out.")
    changes = measure("changes")
    error_factor = measure("error_factor")
    degrees_of_freedom = measure("degrees_of_freedom")
    detectable_percent = measure("detectable_percent")


class PullsResultSchema(ResultSchema):
    """Result of "pulls-needed": how many pulls, and in which order."""

    calc = choice(("pulls-needed",), "Which calculation.")
    wanted_gain_percent = measure("wanted_gain_percent")
    power_percent = measure("power_percent")
    scatter = fields.Nested(PlannedScatterSchema, required=True)
    design = choice(calc_pulls.DESIGNS, "The order asked about.")
    designs = fields.List(fields.Nested(PlannedDesignSchema), required=True)
    headline = words("The answer in a few words.")
    why = words("What it rests on.")
    order = words("The order written out; null where over 60 pulls are needed.", nullable=True)
    table = fields.List(fields.Nested(PlannedSizeSchema), required=True)


COMPARE_RESULTS: dict[str, type[Schema]] = {
    "compare": CompareResultSchema,
    "pulls-needed": PullsResultSchema,
}

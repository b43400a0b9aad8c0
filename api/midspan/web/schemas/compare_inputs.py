"""What the comparison of dyno runs and its planner take. The core checks, as in `inputs`."""

from typing import Any

from marshmallow import Schema, fields, validate

from midspan.core import calc_pulls, compare_asked, correction, dyno_records

from .dyno_run import RunConditionsSchema, RunPeaksSchema
from .quantity import Strict, choice, number


def _points(name: str) -> fields.List[Any]:
    return fields.List(
        number(name), required=True,
        validate=validate.Length(2, dyno_records.MOST_POINTS),
        metadata={"description": number(name).metadata["description"]},
    )  # fmt: skip


class ComparedCurveSchema(Strict):
    """Torque over rising speed, as `figures_are` says."""

    speed_rpm = _points("speed_rpm")
    torque_nm = _points("torque_nm")


def _key(description: str) -> fields.String:
    return fields.String(
        required=True, validate=validate.Length(1, 40), metadata={"description": description}
    )


class ComparedRunSchema(Strict):
    """A run to be compared."""

    setting = _key("Key of its setting.")
    place = number("place")
    conditions = fields.Nested(
        RunConditionsSchema, allow_none=True,
        metadata={"description": "Needed to bring it to another standard than its figures have."},
    )  # fmt: skip
    figures_are = choice(
        correction.FIGURES_ARE, "observed, or the standard that the dyno had applied."
    )
    peaks = fields.Nested(RunPeaksSchema, allow_none=True)
    curve = fields.Nested(ComparedCurveSchema, allow_none=True)
    left_out = fields.String(
        allow_none=True, validate=validate.Length(1, 200),
        metadata={"description": "Why it is left out; not given for a run that is compared."},
    )  # fmt: skip


class CompareInputSchema(Strict):
    """Input of the calculation "compare": the runs of a dyno session."""

    standard = choice(
        correction.FIGURES_ARE, "The one standard all runs are brought to; or observed."
    )
    quantity = choice(compare_asked.QUANTITIES, "The figure of each run that is compared.")
    band_lower_rpm = number("band_lower_rpm", required=False, note="Needed for a band.")
    band_upper_rpm = number("band_upper_rpm", required=False, note="Needed for a band.")
    reference = _key("Key of the setting that the others are held against.")
    drift = choice(
        compare_asked.DRIFTS,
        "auto (so if not given): a steady drift is taken out wherever the order tells it. none: "
        "the engine had settled, on the word of whoever ran it.",
        required=False, nullable=True,
    )  # fmt: skip
    runs = fields.List(
        fields.Nested(ComparedRunSchema), required=True,
        validate=validate.Length(0, compare_asked.MOST_RUNS),
        metadata={"description": "Every run made, those left out too."},
    )  # fmt: skip


class PullsInputSchema(Strict):
    """Input of the calculation "pulls-needed": a gain, and how much a pull scatters."""

    wanted_gain_percent = number("wanted_gain_percent")
    scatter_percent = number("scatter_percent", required=False, note="The shop's own; or dyno.")
    scatter_degrees_of_freedom = number(
        "scatter_degrees_of_freedom", required=False, note="Needed with scatter_percent."
    )
    dyno = choice(
        calc_pulls.USUAL, "Kind of dyno, where the shop has no scatter of its own.",
        required=False, nullable=True,
    )  # fmt: skip
    design = choice(
        calc_pulls.DESIGNS, "Order of the pulls; there-and-back if not given.",
        required=False, nullable=True,
    )  # fmt: skip
    power_percent = number("power_percent", required=False, note="80 if not given.")


COMPARE_INPUTS: dict[str, type[Schema]] = {
    "compare": CompareInputSchema,
    "pulls-needed": PullsInputSchema,
}

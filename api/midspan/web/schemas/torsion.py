"""The torsional study: what it takes and gives. Input goes to the lab as it came."""

from typing import Any

from marshmallow import Schema, fields

from midspan.lab.torsion_asked import ASSUMED, MAP

from .inputs import DriveSchema
from .plan_results import StepCautionSchema
from .quantity import Strict, choice, describe, measure, number, words
from .results import AssumptionSchema, WarningSchema

_FIGURES = {name: (value, "assumed, from memory") for name, value, _ in ASSUMED}
_FIGURES |= {name: (value, "so") for name, value in MAP}
_OPTIONAL = {
    name: number(name, required=False, note=f"{value:g} if not given, {how}.".replace(", so.", "."))
    for name, (value, how) in _FIGURES.items()
}


class TorsionInputSchema(Strict):
    """Input of the torsional study."""

    drive = fields.Nested(DriveSchema, required=True)

    class Meta(Strict.Meta):
        """Take the figures of the study too."""

        include = _OPTIONAL


def _axis(term: str, description: str) -> fields.List[Any]:
    return fields.List(measure(term), required=True, metadata={"description": description})


def _map(term: str) -> fields.List[Any]:
    row = fields.List(measure(term))
    text = f"{describe(term)} A row for each movement, in it a figure for each speed."
    return fields.List(row, required=True, metadata={"description": text})


class TorsionStudySchema(Schema):
    """Result of the torsional study: a model, not a measurement."""

    calc = choice(("torsion",), "What was worked out.")
    core_version = words("Version of the calculations.")
    said = words("What this study is, and is not.")
    movements_mm = _axis("movement_mm", "Movements of the map's rows, in and out.")
    speeds_rpm = _axis("speed_rpm", "Crank speeds of the map's columns.")
    mean_phase_deg = _map("mean_phase_deg")
    phase_range_deg = _map("phase_range_deg")
    phase_scatter_deg = _map("phase_scatter_deg")
    drive_peak_n = _map("drive_peak_n")
    slack_peak_n = _map("slack_peak_n")
    strikes_per_turn = _map("strikes_per_turn")
    closing_mm_per_s = _map("closing_mm_per_s")
    strike_energy_mj = _map("strike_energy_mj")
    natural_frequency_hz = measure("natural_frequency_hz")
    steps_per_turn = measure("steps_per_turn")
    turns_settled = fields.Integer(
        required=True, metadata={"description": "Cam turns left to settle."}
    )
    turns_seen = fields.Integer(required=True, metadata={"description": "Cam turns looked at."})
    assumptions = fields.List(fields.Nested(AssumptionSchema), required=True)
    warnings = fields.List(fields.Nested(WarningSchema), required=True)
    cautions = fields.List(fields.Nested(StepCautionSchema), required=True)

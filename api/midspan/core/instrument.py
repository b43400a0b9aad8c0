"""The instrument behind the readings, and what was measured in the form of the result."""

from collections import namedtuple

from . import glossary, limits
from .fields import Form
from .uncertainty import Component, Estimate, Interval, combine, rectangular

# Assumed where nothing is given. All of them are from memory, unverified: a 150 mm
# vernier caliper; a steel rule or dial at the chain; a dial indicator on a lifter or a valve; a
# degree wheel and pointer.
DEFAULTS = {
    "caliper": {"resolution": 0.02, "instrument_error": 0.03, "repeatability": 0.05},
    "rule": {"resolution": 0.5, "instrument_error": 0.1, "repeatability": 0.3},
    "dial": {"resolution": 0.01, "instrument_error": 0.02, "repeatability": 0.01},
    "wheel": {"resolution": 0.5, "instrument_error": 0.25, "repeatability": 0.3},
}


class Instrument(
    namedtuple("Instrument", ("resolution", "error", "repeatability", "origins", "assumptions"))
):
    """What the instrument adds to the uncertainty, in the unit of its readings.

    `origins` tells for each figure where it comes from; `assumptions` lists those we assumed.
    """

    __slots__ = ()


def assumption(field: str, value: float, origin: str, text: str) -> dict[str, object]:
    """Say one figure that was assumed because none was given."""
    unit = glossary.TERMS[field].unit
    return {"field": field, "value": value, "unit": unit, "origin": origin, "text": text}


def take_instrument(form: Form, kind: str, unit: str, single: bool) -> Instrument:
    """Read the instrument's three figures, or assume the usual ones and say so.

    Parameters
    ----------
    form : the input being read; fields end in the unit
    kind : "caliper", "rule", "dial" or "wheel"
    unit : "mm" or "deg"
    single : whether any of the readings stands alone, so that its scatter must be assumed
    """
    values, origins, assumed = {}, {}, []
    for name, default in sorted(DEFAULTS[kind].items()):
        field = name + "_" + unit
        given = form.take_number(field, required=False)
        values[name] = default if given is None else given
        origins[name] = limits.GIVEN if given is not None else limits.MEMORY
        needed = name != "repeatability" or single
        if given is None and needed:
            text = glossary.label(field) + " of a " + kind + ", assumed: none was given."
            assumed.append(assumption(field, default, limits.MEMORY, text))
    return Instrument(
        values["resolution"],
        values["instrument_error"],
        values["repeatability"],
        origins,
        assumed,
    )


def instrument_components(instrument: Instrument, weight: float) -> list[Component]:
    """Give the budget lines of resolution and instrument error; weight is their sensitivity."""
    return [
        Component(
            "resolution",
            "B",
            weight * rectangular(instrument.resolution / 2),
            None,
            instrument.origins["resolution"],
        ),
        Component(
            "instrument error",
            "B",
            weight * rectangular(instrument.error),
            None,
            instrument.origins["instrument_error"],
        ),
    ]


def measured(
    quantity: str, value: float, components: list[Component], count: int
) -> tuple[Estimate, dict[str, object]]:
    """Combine the budget and give it, with its estimate, in the form of the result."""
    estimate = combine(value, components)
    return estimate, {
        "quantity": quantity,
        "value": estimate.value,
        "standard_uncertainty": estimate.uncertainty,
        "degrees_of_freedom": estimate.dof,
        "coverage_factor": estimate.factor,
        "expanded_uncertainty": estimate.expanded,
        "low": estimate.value - estimate.expanded,
        "high": estimate.value + estimate.expanded,
        "count": count,
        "budget": budget_rows(components),
    }


def budget_rows(components: list[Component]) -> list[dict[str, object]]:
    """Give an uncertainty budget in the form of the result."""
    return [
        {
            "name": c.name,
            "kind": c.kind,
            "standard_uncertainty": c.uncertainty,
            "degrees_of_freedom": c.dof,
            "origin": c.origin,
        }
        for c in components
    ]


def interval_dict(at: Interval) -> dict[str, object]:
    """Give an interval in the form of the result."""
    return {
        "value": at.value,
        "low": at.low,
        "high": at.high,
        "standard_uncertainty": at.uncertainty,
    }

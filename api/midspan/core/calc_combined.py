"""Put elongation, movement, rock and bench length of one chain into one estimate."""

import math
from collections import namedtuple

from .build import Build, take_build
from .chisquare import tail
from .combine import Part, combine_parts, odd_one_out
from .drive import excess_length
from .fields import Form
from .limits import MEMORY
from .movement import excess_from_movement
from .phase import excess_from_rock, radians
from .state import state
from .student import coverage_factor
from .uncertainty import Estimate, rectangular
from .version import VERSION
from .warnings import cautions, drive_warnings

MOST = 10
# Readings that agree less well than one time in twenty by chance are called inconsistent.
SURPRISING = 0.05
# A likely cause is named if, once allowed for, the reading agrees this well.
EXPLAINED = 0.2

KINDS = ("elongation_percent", "movement_mm", "crank_rock_deg", "chain_length_mm")
UNCERTAINTY = {
    "elongation_percent": "standard_uncertainty_percent",
    "movement_mm": "standard_uncertainty_mm",
    "crank_rock_deg": "standard_uncertainty_deg",
    "chain_length_mm": "standard_uncertainty_mm",
}


class Cause(namedtuple("Cause", ("code", "text", "factor"))):
    """A likely slip: what the reading must be multiplied by to undo it, or None where the reading
    is right but more than slack is in it.
    """

    __slots__ = ()


# Slips seen in practice; common practice, no source.
CAUSES = {
    "movement_mm": (
        Cause("one-way", "It may have been read one way instead of in and out.", 2.0),
        Cause("counted-twice", "It may be in and out already, and was doubled once more.", 0.5),
    ),
    "crank_rock_deg": (
        Cause("cam-degrees", "It may have been read in cam degrees.", 2.0),
        Cause("doubled", "It may be in crank degrees already, and was doubled once more.", 0.5),
    ),
    "elongation_percent": (),
    "chain_length_mm": (),
}
HIGH = {
    "movement_mm": Cause("gear-worn", "Worn gears, or a push that stretched the chain.", None),
    "crank_rock_deg": Cause("keys", "Play of keys or dowel, or the cam was not held.", None),
    "elongation_percent": Cause("under-load", "Gauge or chain under more load than usual.", None),
    "chain_length_mm": Cause("under-load", "The chain was under more load than usual.", None),
}
LOW = {
    "movement_mm": Cause("not-pushed", "The strand was not pushed fully, or was held.", None),
    "crank_rock_deg": Cause("not-taken-up", "The strands were not taken up fully.", None),
    "elongation_percent": Cause("stiff", "Stiff or dirty joints: clean it and pull it.", None),
    "chain_length_mm": Cause("slack", "The chain was not pulled straight.", None),
}


def calculate(payload: object) -> dict[str, object]:
    """Combine several readings of one chain on one drive, and test whether they agree.

    Parameters
    ----------
    payload : drive and measurements, a list of quantity (one of KINDS), value and its standard
        uncertainty, each in the unit the field's name carries

    Returns
    -------
    dict: state, consistency, odd_one_out with likely cause, parts, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    All readings of the same chain on the same drive at the same temperature.

    Reference
    ---------
    See `combine`.
    """
    form = Form(payload)
    build = take_build(form)
    taken = _take(form)
    form.close()
    form.finish()
    assert build is not None  # noqa: S101  (finish raised if it was refused)
    slope = 2 * math.cos(build.geometry.angle)
    centre = max(slope * rectangular(build.centre_error), 1e-9)
    parts = [_part(build, kind, value, u) for kind, value, u in taken]
    whole = combine_parts(parts, centre)
    chance = tail(whole.chi_square, whole.dof) if whole.dof > 0 else None
    agree = chance is None or chance >= SURPRISING
    factor = coverage_factor(None)
    estimate = Estimate(whole.excess, whole.uncertainty, None, factor, factor * whole.uncertainty)
    found = state(build, "excess_mm", estimate, lambda x, _: x)
    return {
        "calc": "combined",
        "core_version": VERSION,
        "state": {
            name: {
                "value": at.value,
                "low": at.low,
                "high": at.high,
                "standard_uncertainty": at.uncertainty,
            }
            for name, at in found.items()
        },
        "consistency": {
            "chi_square": whole.chi_square,
            "degrees_of_freedom": whole.dof,
            "probability": chance,
            "consistent": agree,
        },
        "odd_one_out": None if agree else _odd(build, taken, parts, centre),
        "parts": [
            {"quantity": taken[k][0], "value": taken[k][1], "excess_mm": parts[k].excess,
             "standard_uncertainty_mm": parts[k].uncertainty}
            for k in range(len(parts))
        ],
        "assumptions": build.assumptions,
        "warnings": drive_warnings(build),
        "cautions": cautions("turn-by-hand", "valve-contact"),
    }  # fmt: skip


def _take(form: Form) -> list[tuple[str, float, float]]:
    taken = []
    for part in form.take_forms("measurements", MOST):
        kind = part.take_choice("quantity", KINDS)
        if kind is not None:
            value = part.take_number(kind)
            u = part.take_number(UNCERTAINTY[kind])
            part.close()
            if value is not None and u is not None:
                taken.append((kind, value, u))
    if not taken and not form.problems:
        need = "at least one measurement"
        form.refuse("empty-list", "measurements", "an empty list", need, "Measure something.")
    return taken


def _excess(build: Build, kind: str, value: float) -> float:
    shape = build.geometry
    if kind == "movement_mm":
        return excess_from_movement(shape.strand, value)
    if kind == "crank_rock_deg":
        return excess_from_rock(shape.crank_radius, radians(value))
    if kind == "chain_length_mm":
        return value - float(shape.taut_length)
    return excess_length(build.drive, shape.taut_length, value / 100)


def _part(build: Build, kind: str, value: float, u: float) -> Part:
    """Turn a reading into excess length; half the change over plus and minus u, as it may curve."""
    spread = (_excess(build, kind, value + u) - _excess(build, kind, value - u)) / 2
    on_centre = kind in ("elongation_percent", "chain_length_mm")
    return Part(_excess(build, kind, value), spread, on_centre)


def _odd(
    build: Build, taken: list[tuple[str, float, float]], parts: list[Part], centre: float
) -> dict[str, object] | None:
    """Name the reading that does not go with the others, and what would explain it."""
    k = odd_one_out(parts, centre)
    if k is None:
        return None
    kind, value, u = taken[k]
    rest = parts[:k] + parts[k + 1 :]
    others = combine_parts(rest, centre)
    causes = []
    for cause in CAUSES[kind]:
        mended = _part(build, kind, value * cause.factor, u * cause.factor)
        whole = combine_parts(rest + [mended], centre)
        if tail(whole.chi_square, whole.dof) >= EXPLAINED:
            causes.append(cause)
    causes.append((HIGH if parts[k].excess > others.excess else LOW)[kind])
    return {
        "index": k,
        "quantity": kind,
        "value": value,
        "expected_excess_mm": others.excess,
        "causes": [{"code": cause.code, "text": cause.text} for cause in causes],
        "origin": MEMORY,
    }

"""Put elongation, movement, rock and bench length of one chain into one estimate."""

import math

from .bench import interval_dict
from .build import Build, check_movement, take_build
from .causes import CAUSES, EXPLAINED, HIGH, LOW
from .chisquare import consistency, tail
from .combine import Part, combine_parts, odd_one_out
from .drive import Geometry, excess_length
from .fields import Form
from .limits import MEMORY
from .movement import excess_from_movement
from .phase import excess_from_rock, radians
from .state import state
from .student import coverage_factor
from .trials import excess_of_reading, is_felt
from .uncertainty import Estimate
from .version import VERSION
from .warnings import cautions, drive_warnings

MOST = 10
# Readings that agree less well than one time in twenty by chance are called inconsistent.
SURPRISING = 0.05

KINDS = ("elongation_percent", "movement_mm", "crank_rock_deg", "chain_length_mm")
UNCERTAINTY = {
    "elongation_percent": "standard_uncertainty_percent",
    "movement_mm": "standard_uncertainty_mm",
    "crank_rock_deg": "standard_uncertainty_deg",
    "chain_length_mm": "standard_uncertainty_mm",
}


# These follow the length of the chain alone, whatever the centre distance.
OF_LENGTH = ("elongation_percent", "cam_retard_deg", "cam_retard_crank_deg")


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
    taken = _take(form, build.geometry.strand if build is not None else math.inf)
    form.close()
    form.finish()
    assert build is not None  # noqa: S101  (finish raised if it was refused)
    centre = max(build.taut_uncertainty(build.geometry), 1e-9)
    parts = [_part(build, kind, value, u) for kind, value, u in taken]
    felt = [k for k in range(len(taken)) if _is_felt(taken[k])] or list(range(len(taken)))
    used = [parts[k] for k in felt]
    whole = combine_parts(used, centre)
    agreement = consistency(whole.chi_square, whole.dof, SURPRISING)
    found = state(build, "excess_mm", _estimate(whole.excess, whole.uncertainty), _as_it_is)
    # The elongation follows the length alone; the centre distance has had its say in it already.
    alone = _estimate(whole.nominal_excess, whole.nominal_uncertainty)
    for name, at in state(build.with_exact_centre(), "excess_mm", alone, _as_it_is).items():
        if name in OF_LENGTH:
            found[name] = at
    return {
        "calc": "combined",
        "core_version": VERSION,
        "state": {name: interval_dict(at) for name, at in found.items()},
        "consistency": agreement,
        "odd_one_out": (
            None if agreement["consistent"] else _odd(build, taken, felt, parts, centre)
        ),
        "parts": [
            {"quantity": taken[k][0], "value": taken[k][1], "excess_mm": parts[k].excess,
             "standard_uncertainty_mm": parts[k].uncertainty, "used": k in felt}
            for k in range(len(parts))
        ],
        "assumptions": build.assumptions,
        "warnings": drive_warnings(build),
        "cautions": cautions("turn-by-hand", "valve-contact"),
    }  # fmt: skip


def _take(form: Form, strand: float) -> list[tuple[str, float, float]]:
    taken = []
    for part in form.take_forms("measurements", MOST):
        kind = part.take_choice("quantity", KINDS)
        if kind is not None:
            value = part.take_number(kind)
            u = part.take_number(UNCERTAINTY[kind])
            part.close()
            if kind == "movement_mm":
                check_movement(part, kind, value, strand)
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


def _is_felt(reading: tuple[str, float, float]) -> bool:
    """Tell whether a reading can be told from a taut chain, of which slack says nothing."""
    kind, value, u = reading
    return kind not in ("movement_mm", "crank_rock_deg") or is_felt(value, u)


def _estimate(value: float, uncertainty: float) -> Estimate:
    factor = coverage_factor(None)
    return Estimate(value, uncertainty, None, factor, factor * uncertainty)


def _as_it_is(excess: float, _: Geometry) -> float:
    return excess


def _part(build: Build, kind: str, value: float, u: float) -> Part:
    """Turn a reading into excess length with its standard uncertainty."""
    if kind == "movement_mm":
        # The reading stands for itself here: alone, it must come back as it was read.
        spread = excess_of_reading(build.geometry.strand, value, u, value)[1]
        return Part(_excess(build, kind, value), spread, False)
    # The others are straight, so a step of u from the value gives it.
    spread = _excess(build, kind, value + u) - _excess(build, kind, value)
    return Part(_excess(build, kind, value), spread, kind != "crank_rock_deg")


def _odd(
    build: Build,
    taken: list[tuple[str, float, float]],
    felt: list[int],
    parts: list[Part],
    centre: float,
) -> dict[str, object] | None:
    """Name the reading that does not go with the others, and what would explain it."""
    used = [parts[k] for k in felt]
    odd = odd_one_out(used, centre)
    if odd is None:
        return None
    k = felt[odd]
    kind, value, u = taken[k]
    rest = used[:odd] + used[odd + 1 :]
    others = combine_parts(rest, centre)
    ratio = build.drive.cam_teeth / build.drive.crank_teeth
    causes = []
    for cause in CAUSES[kind]:
        factor = cause.factor
        if kind == "crank_rock_deg":  # cam against crank degrees go by the teeth
            factor = ratio if cause.factor > 1 else 1 / ratio
        mended = _part(build, kind, value * factor, u * factor)
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

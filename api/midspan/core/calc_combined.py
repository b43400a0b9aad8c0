"""Put elongation, movement, rock and bench length of one chain into one estimate."""

import math

from .build import Build, take_build
from .causes import CAUSES, EXPLAINED, HIGH, LOW
from .chisquare import consistency, tail
from .combine import Part, combine_parts, odd_one_out
from .drive import Geometry
from .fields import Form
from .instrument import interval_dict
from .limits import MEMORY
from .measurement import is_told, part_of, take_measurement
from .state import state
from .student import coverage_factor
from .uncertainty import Estimate
from .version import VERSION
from .warnings import cautions, drive_warnings

MOST = 10
# Readings that agree less well than one time in twenty by chance are called inconsistent: common
# practice, no source.
SURPRISING = 0.05

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
    parts = [part_of(build, kind, value, u) for kind, value, u in taken]
    felt = [k for k in range(len(taken)) if is_told(taken[k])] or list(range(len(taken)))
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
        reading = take_measurement(part, strand)
        if reading is not None:
            taken.append(reading)
    if not taken and not form.problems:
        need = "at least one measurement"
        form.refuse("empty-list", "measurements", "an empty list", need, "Measure something.")
    return taken


def _estimate(value: float, uncertainty: float) -> Estimate:
    factor = coverage_factor(None)
    return Estimate(value, uncertainty, None, factor, factor * uncertainty)


def _as_it_is(excess: float, _: Geometry) -> float:
    return excess


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
        mended = part_of(build, kind, value * factor, u * factor)
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

"""How everything is worked out, and what guards it: the relations by subject, and their proofs.

What a relation is, its validity and its source stand in its docstring and nowhere else: the
service reads them there, the phone has them from its build (`methods_text`). Here is which module
belongs to which subject, and what other checks guard it.
"""

from collections import namedtuple

from . import (
    methods_figures,
    proofs_air,
    proofs_chain,
    proofs_gears,
    proofs_statistics,
    proofs_timing,
)
from .proofs import worked

# To add published values: their module, and its name here.
SOURCES = (proofs_gears, proofs_chain, proofs_timing, proofs_air, proofs_statistics)


class Subject(namedtuple("Subject", ("id", "label", "modules"))):
    """Relations that belong together: of each module its name, the file of tests that guards it,
    and what they check beside the published values.
    """

    __slots__ = ()


_LAWS = "what must hold over the whole range"
SUBJECTS = (
    Subject("chain", "Chain geometry", (
        ("drive", "test_drive_second_opinion", "the hull round two circles by another library, "
         "coordinates of the tangent points, round trips"),
    )),
    Subject("wear", "Wear of chain and gears", (
        ("elongation", "test_elongation", "service limits of three engines, round trips"),
        ("gear", "test_gear", "a pin placed in every gap, the belt round a smaller circle, round "
         "trips"),
    )),
    Subject("slack", "Slack", (
        ("movement", "test_movement", "a chain laid link by link over both gears, round trips"),
        ("state", "test_properties", "every reading turned into every other and back"),
        ("wanted", "test_bored", "the window where none is given"),
    )),
    Subject("lash", "Lash and cam retard", (
        ("phase", "test_phase", "figures worked by hand, four ways to read one lash"),
    )),
    Subject("heat", "Heat", (
        ("heat", "test_heat", "growth worked by hand, the hull by another library, the load summed "
         "round the arc"),
        ("hot", "test_hot", "2,000 made-up drives whose truth is known, another library's "
         "derivatives"),
    )),
    Subject("uncertainty", "Uncertainty and verdicts", (
        ("uncertainty", "test_uncertainty", "two other libraries"),
        ("student", "test_uncertainty", "another library over 200 degrees of freedom"),
        ("guard", "test_verdict", "simulated readings, " + _LAWS),
        ("combine", "test_combined", "least squares by another library"),
        ("suspects", "test_suspects", "every reading left out in turn and fitted anew"),
        ("trials", "test_fit_coverage", "made-up shelves whose truth is known"),
        ("chisquare", "test_chisquare", "another library over its whole range"),
        ("algebra", "test_chisquare", "another library on matrices of any scale"),
    )),
    Subject("timing", "Setting the cam", (
        ("timing", "test_cam", "a pure advance, a wheel zeroed anywhere"),
        ("crank_slider", "test_crank_slider", "differences and another library's integrals"),
        ("adjuster", "test_adjust", "figures worked by hand"),
        ("setting_search", "test_adjust", "every combination tried"),
        ("calc_compression", "test_crank_slider", "volumes worked by hand"),
        ("spark", "test_spark", "another library, 20,000 made-up sets of readings"),
    )),
    Subject("lift", "Lift and clearance", (
        ("lobe", "test_lift", "lobes known exactly, read with made-up errors"),
        ("spline", "test_smoothing", "another library"),
        ("dial", "test_cam_uncertainty", "more near the nose than on the flank"),
        ("lift_checks", "test_lift", "faults put in on purpose"),
        ("lift_doubts", "test_clearance", "a faulty table never gives enough"),
        ("valve_train", "test_rockers", "published lifts, a cam that is moved"),
        ("clearance", "test_clearance", "a fine grid, another library's least"),
        ("clearance_verdict", "test_clearance", "a touch is a stop whatever limit is typed"),
        ("trial_order", "test_rockers", "every order tried"),
    )),
    Subject("breakin", "Running in", (
        ("bedding", "test_plan", "figures in print, each with its source"),
        ("j300", "test_j300", "the whole table as reprinted"),
    )),
    Subject("forecast", "Wear forecast", (
        ("wear", "test_forecast", "differences, round trips"),
        ("wear_prior", "test_forecast", "published wear lies within the prior"),
        ("wear_fit", "test_forecast_coverage", "made-up chains whose truth is known"),
        ("next_reading", "test_forecast", "brute force"),
        ("quantiles", "test_forecast", "another library"),
        ("normal_points", "test_forecast", "moments, another library"),
    )),
    Subject("correction", "Dyno correction", (
        ("air", "test_correction", "another library's equation of state of water"),
        ("correction", "test_correction", "each form worked out apart, misprints that must not be "
         "ours"),
        ("correction_checks", "test_correction", "every doubt brought about"),
    )),
    Subject("comparison", "Comparison of runs", (
        ("drift_fit", "test_drift_fit", "another library, designs by fractions"),
        ("betas", "test_betas", "another library"),
        ("spread_interval", "test_betas", "another library"),
        ("variance_ratio", "test_spark", "another library"),
        ("further", "test_compare", "what a plan promises, found again in the fit"),
    )),
    Subject("gain", "Expected gain", (
        ("gain_prior", "test_gain", "differences, " + _LAWS),
        ("gain_fit", "test_gain", "the full posterior, moments"),
        ("gain_friction", "test_gain", "worked on paper"),
    )),
)  # fmt: skip


def table() -> dict[str, object]:
    """Give the subjects, and every published value beside ours, worked out now.

    Parameters
    ----------
    none

    Returns
    -------
    dict: subjects with their modules, proofs as of `proofs.worked`, units by field name or named,
    figures as of `methods_figures.rows`

    Raises
    ------
    none

    Validity
    --------
    As `proofs.worked`.

    Reference
    ---------
    With each proof.
    """
    subjects = []
    for subject in SUBJECTS:
        modules = [{"module": m, "tests": t, "checked": c} for m, t, c in subject.modules]
        subjects.append({"id": subject.id, "label": subject.label, "modules": modules})
    proofs = []
    for source in SOURCES:
        proofs.extend([worked(proof) for proof in source.PROOFS])
    return {"subjects": subjects, "proofs": proofs, "figures": methods_figures.rows()}

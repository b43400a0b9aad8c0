"""Published figures of statistics: t tables, certified data sets, examples of manuals."""

import math

from .betas import factor_of_t, power_of_t, tail_of_t
from .drift_fit import Difference, Fit, Pull, difference, fit
from .proofs import published, recalled
from .proofs_data import NORRIS, SIRSTV, SLEEP_A, SLEEP_B
from .student import coverage_factor
from .uncertainty import Component, Estimate, combine

_HANDBOOK = "Machinery's Handbook, 31st ed., p. 140"
_HANDBOOK_AT = "online.flippingbook.com/view/954192180/151"
_GUM = "JCGM 100:2008 (GUM), H.1, inputs as quoted; results recalled"
_R = "R manual, t.test, data set sleep"
_R_AT = "stat.ethz.ch/R-manual/R-devel/library/stats/html/t.test.html"
_STRD = "NIST StRD SiRstv, certified"
_STRD_AT = "stata.com/support/cert/nist9/anova/sires.do"
_CERTIFIED = "Certified to more digits than a double keeps through the sums."
_DOF = (("degrees of freedom", ""),)
# Component, standard uncertainty times sensitivity [nm], degrees of freedom: GUM H.1.6.
END_GAUGE = (
    ("standard", 25, 18), ("difference", 9.7, 25.6), ("expansion difference", 2.9, 50),
    ("temperature difference", 16.6, 2),
)  # fmt: skip
T_TABLE = (
    (1, "12.706"),
    (2, "4.303"),
    (3, "3.182"),
    (4, "2.776"),
    (5, "2.571"),
    (6, "2.447"),
    (7, "2.365"),
    (8, "2.306"),
    (9, "2.262"),
)


def _end_gauge() -> Estimate:
    return combine(0.0, [Component(name, "B", u, dof, "") for name, u, dof in END_GAUGE])


def _relative() -> float:
    parts = ((0.25, 10), (0.57, 5), (0.82, 15))
    return float(combine(0.0, [Component("", "A", u, n - 1, "") for u, n in parts]).uncertainty)


def _sirstv() -> Fit:
    groups = enumerate(SIRSTV)
    return fit([Pull(str(g), 5 * g + i, v) for g, row in groups for i, v in enumerate(row)], False)


def _within() -> float:
    found = _sirstv()
    return float(found.spread**2 * found.dof)


def _between() -> float:
    levels = _sirstv().levels.values()
    grand = sum(levels) / 5
    return float(sum([5 * (level - grand) ** 2 for level in levels]))


def _sleep() -> Difference:
    runs = [Pull("A", i, v) for i, v in enumerate(SLEEP_A)]
    return difference(fit(runs + [Pull("B", 20 + i, v) for i, v in enumerate(SLEEP_B)], False),
                      "B", "A")  # fmt: skip


def _paired() -> float:
    runs = [Pull("D", i, SLEEP_A[i] - SLEEP_B[i]) for i in range(10)]
    found = fit(runs, False)
    return float(found.levels["D"] / (found.spread / math.sqrt(10)))


def _norris() -> Fit:
    return fit([Pull("A", x, y) for y, x in NORRIS], True)


def _intercept() -> float:
    found = _norris()
    return float(found.levels["A"] - found.slope * found.about)


def _power(n: float) -> float:
    return power_of_t(1 / math.sqrt(2 / n), 2 * n - 2)


def _one_sided(n: int) -> float:
    return power_of_t(5 / (20 * math.sqrt(2 / n)), 2 * n - 2, 0.10)


PROOFS = (
    published(
        "student.coverage_factor", "Student t, 95 % two-sided", "", _DOF, coverage_factor,
        _HANDBOOK, _HANDBOOK_AT, T_TABLE,
    ),
    published(
        "betas.factor_of_t", "Student t, 95 % two-sided", "", _DOF, factor_of_t,
        _HANDBOOK, _HANDBOOK_AT, T_TABLE,
    ),
    recalled(
        "uncertainty.combine", "Calibration of an end gauge: u", "nm", (),
        lambda: _end_gauge().uncertainty, _GUM, (("32",),),
    ),
    recalled(
        "uncertainty.combine", "Calibration of an end gauge: degrees of freedom", "", (),
        lambda: _end_gauge().dof, _GUM, (("16",),), 1e-9, "A whole number, cut down.",
    ),
    recalled(
        "student.coverage_factor", "Student t, 99 % two-sided", "", _DOF,
        lambda dof: coverage_factor(dof, 0.99), _GUM, ((16, "2.92"),),
    ),
    recalled(
        "uncertainty.combine", "Calibration of an end gauge: U, 99 %", "nm", (),
        lambda: coverage_factor(16, 0.99) * _end_gauge().uncertainty, _GUM, (("93",),),
    ),
    recalled(
        "uncertainty.combine", "0.25, 0.57 and 0.82 % together", "%", (), _relative,
        "JCGM 100:2008 (GUM), G.4.1", (("1.03",),),
    ),
    published(
        "drift_fit.fit", "Scatter within settings", "", (), lambda: _sirstv().spread,
        _STRD, _STRD_AT, (("0.104076068334656",),), 1e-10, _CERTIFIED,
    ),
    published(
        "drift_fit.fit", "Squares within settings", "", (), _within, _STRD, _STRD_AT,
        (("0.216636560",),), None,
    ),
    published(
        "drift_fit.fit", "Squares between settings", "", (), _between, _STRD, _STRD_AT,
        (("0.0511462616",),), None,
    ),
    published(
        "drift_fit.fit", "F ratio", "", (), lambda: _between() / 4 / _sirstv().spread ** 2,
        _STRD, _STRD_AT, (("1.18046237440255",),), 2e-9, _CERTIFIED,
    ),
    published(
        "drift_fit.difference", "Welch's t", "", (),
        lambda: _sleep().value / _sleep().uncertainty, _R, _R_AT, (("-1.8608",),),
    ),
    published(
        "drift_fit.difference", "Its degrees of freedom", "", (), lambda: _sleep().dof,
        _R, _R_AT, (("17.776",),),
    ),
    published(
        "drift_fit.difference", "Its chance", "", (), lambda: _sleep().chance,
        _R, _R_AT, (("0.07939",),),
    ),
    published(
        "drift_fit.difference", "Interval, from", "", (), lambda: _sleep().low,
        _R, _R_AT, (("-3.3654832",),),
    ),
    published(
        "drift_fit.difference", "Interval, to", "", (), lambda: _sleep().high,
        _R, _R_AT, (("0.2054832",),),
    ),
    published(
        "drift_fit.fit", "Paired t", "", (), _paired, _R, _R_AT, (("-4.0621",),),
    ),
    published(
        "betas.tail_of_t", "Chance of the paired t", "", (), lambda: tail_of_t(_paired(), 9),
        _R, _R_AT, (("0.002833",),),
    ),
    recalled(
        "drift_fit.fit", "Slope of a line", "", (), lambda: _norris().slope,
        "NIST StRD Norris", (("1.00211681802045",),), 1e-11, "Data and certified values recalled.",
    ),
    recalled(
        "drift_fit.fit", "Where the line begins", "", (), _intercept,
        "NIST StRD Norris", (("-0.262323073774029",),), 1e-9, "Data and certified values recalled.",
    ),
    recalled(
        "drift_fit.fit", "Scatter about the line", "", (), lambda: _norris().spread,
        "NIST StRD Norris", (("0.884796396144373",),), 1e-10, "Data and certified values recalled.",
    ),
    recalled(
        "betas.power_of_t", "Power for one scatter's difference", "", (("runs a side", ""),),
        _power, "R manual, power.t.test, as quoted elsewhere; no address kept",
        ((20, "0.8689528"),), 4e-7, "The source leaves out the second tail, some 2e-7.",
    ),
    recalled(
        "betas.power_of_t", "Power for one scatter's difference", "", (("runs a side", ""),),
        _power, "R manual, power.t.test, as quoted elsewhere; no address kept",
        ((22.02110, "0.90"),), 2e-6, "The source finds the number of runs for a power of 0.90.",
    ),
    published(
        "betas.power_of_t", "Power, scatter 20, difference 5", "", (("runs a side", ""),),
        _one_sided, "Listing of a statistics program, one-sided at 0.05", "pastebin.com/acBtnddQ",
        ((275, "0.900260"), (347, "0.950006"), (506, "0.990070")), 3e-6,
        "Ours is two-sided at 0.10, which counts the far tail too: 2e-6 and less.",
    ),
)  # fmt: skip

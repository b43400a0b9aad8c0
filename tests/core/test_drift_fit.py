"""Settings and drift by least squares: NIST's data sets, R's example, designs worked by hand."""

import math
from fractions import Fraction

import pytest
from scipy import stats

from core.reference import printed
from midspan.core.calc_pulls import DESIGNS, blocks_of, size_of
from midspan.core.drift_fit import Pull, difference, drift_can_be_told, fit
from midspan.core.proofs_data import NORRIS, SIRSTV, SLEEP_A, SLEEP_B
from midspan.core.proofs_statistics import PROOFS


def pulls(order: str, values: list[float]) -> list[Pull]:
    return [
        Pull(key, i + 1, value) for i, (key, value) in enumerate(zip(order, values, strict=True))
    ]


def test_scatter_within_settings_is_nists() -> None:
    """NIST StRD SiRstv, certified, with 20 degrees of freedom: closer than the proofs ask."""
    runs = [
        Pull(str(g), 5 * g + i + 1, value)
        for g, group in enumerate(SIRSTV)
        for i, value in enumerate(group)
    ]
    found = fit(runs, drift=False)
    assert found.dof == 20
    assert found.spread == pytest.approx(printed(PROOFS, "Scatter within settings"), rel=1e-12)
    assert found.spread**2 * found.dof == pytest.approx(
        printed(PROOFS, "Squares within settings"), rel=1e-9
    )
    grand = sum(found.levels.values()) / 5
    between = sum(5 * (level - grand) ** 2 for level in found.levels.values())
    assert between == pytest.approx(printed(PROOFS, "Squares between settings"), rel=1e-9)
    assert between / 4 / found.spread**2 == pytest.approx(printed(PROOFS, "F ratio"), rel=1e-9)


@pytest.mark.parametrize(("one", "other"), [(0, 3), (0, 4), (1, 3)])
def test_welch_on_nists_data_is_scipys(one: int, other: int) -> None:
    runs = [Pull("A", i, v) for i, v in enumerate(SIRSTV[one])]
    runs += [Pull("B", 9 + i, v) for i, v in enumerate(SIRSTV[other])]
    found = difference(fit(runs, drift=False), "B", "A")
    said = stats.ttest_ind(SIRSTV[one], SIRSTV[other], equal_var=False)
    assert found.value / found.uncertainty == pytest.approx(said.statistic, rel=1e-9)
    assert found.dof == pytest.approx(said.df, rel=1e-9)
    assert found.chance == pytest.approx(said.pvalue, rel=1e-8)


def test_pooled_as_the_r_manual_prints_it() -> None:
    """t.test(..., var.equal = TRUE): df 18, p 0.07919, CI -3.363874 to 0.203874."""
    runs = [Pull("A", i, v) for i, v in enumerate(SLEEP_A)]
    runs += [Pull("B", 20 + i, v) for i, v in enumerate(SLEEP_B)]
    found = fit(runs, drift=False)
    u = found.spread * math.sqrt(2 / 10)
    assert found.dof == 18
    t = stats.t.ppf(0.975, 18)
    value = found.levels["A"] - found.levels["B"]
    assert value - t * u == pytest.approx(-3.363874, abs=5e-7)
    assert value + t * u == pytest.approx(0.203874, abs=5e-7)
    assert 2 * stats.t.sf(abs(value / u), 18) == pytest.approx(0.07919, abs=5e-6)


def test_the_drift_is_nists_line() -> None:
    """NIST StRD Norris, certified. One setting, places not whole: its drift is that line."""
    found = fit([Pull("A", x, y) for y, x in NORRIS], drift=True)
    assert found.dof == 34
    assert found.slope == pytest.approx(printed(PROOFS, "Slope of a line"), rel=1e-12)
    assert found.spread == pytest.approx(printed(PROOFS, "Scatter about the line"), rel=1e-11)
    assert found.levels["A"] - found.slope * found.about == pytest.approx(
        printed(PROOFS, "Where the line begins"), rel=1e-9
    )


def test_the_drift_of_a_b_b_a_is_eliminated() -> None:
    """NIST/SEMATECH e-Handbook 2.3.3.1.2: D = ((Y1-Y2)-(Y3-Y4))/2, d = (-Y1+Y2-Y3+Y4)/4, a step
    between runs being 2 d. X 105, R 100, d 0.5 make Y 103.5, 99.5, 100.5, 106.5.
    """
    y = [103.5, 99.5, 100.5, 106.5]
    found = fit(pulls("XRRX", y), drift=True)
    assert difference(found, "R", "X").value == pytest.approx(((y[0] - y[1]) - (y[2] - y[3])) / 2)
    assert difference(found, "R", "X").value == pytest.approx(5.0)
    assert found.slope / 2 == pytest.approx(0.5)


def test_there_and_back_by_hand() -> None:
    """A 400.0, B 405.0, A 398.0: B against the mean of the As is +6.0, and nothing more is told."""
    found = difference(fit(pulls("ABA", [400.0, 405.0, 398.0]), drift=True), "A", "B")
    assert found.value == pytest.approx(6.0)
    assert (found.uncertainty, found.low, found.chance, found.dof) == (None, None, None, 0)


# Standard error of the difference over the scatter, and degrees of freedom, by normal equations in
# fractions below; printed here as a table that a reader can check by hand.
TABLE = {"ABBA": (1.000, 1), "ABAB": (1.118, 1), "AABB": (2.236, 1), "AAABBB": (1.708, 3),
         "ABABA": (0.913, 2), "AABBAA": (0.866, 3), "ABABAB": (0.854, 3), "ABBAAB": (0.820, 3),
         "ABABABA": (0.764, 4), "ABBABAAB": (0.707, 5), "AAABBBAAA": (0.707, 6)}  # fmt: skip


def by_normal_equations(order: str) -> float:
    """Standard error of B - A over the scatter, exactly: columns A, B, place."""
    rows = [
        [Fraction(key == "A"), Fraction(key == "B"), Fraction(i)] for i, key in enumerate(order)
    ]
    m = [[sum(r[i] * r[k] for r in rows) for k in range(3)] for i in range(3)]
    m = [row + [Fraction(i == k) for k in range(3)] for i, row in enumerate(m)]
    for i in range(3):  # Gauss and Jordan
        m[i] = [x / m[i][i] for x in m[i]]
        for k in range(3):
            if k != i:
                m[k] = [a - m[k][i] * b for a, b in zip(m[k], m[i], strict=True)]
    cov = [row[3:] for row in m]
    return math.sqrt(cov[0][0] + cov[1][1] - 2 * cov[0][1])


@pytest.mark.parametrize("order", TABLE)
def test_the_standard_error_of_each_design(order: str) -> None:
    noise = [math.sin(7 * i) for i in range(len(order))]
    found = fit(pulls(order, noise), drift=True)
    told = difference(found, "A", "B")
    assert (told.factor, found.dof) == (pytest.approx(TABLE[order][0], abs=5e-4), TABLE[order][1])
    assert told.factor == pytest.approx(by_normal_equations(order), rel=1e-12)


@pytest.mark.parametrize("design", DESIGNS)
@pytest.mark.parametrize("step", [2, 3, 5])
def test_the_planner_counts_as_the_fit_does(design: str, step: int) -> None:
    order = "".join(key * count for key, count in blocks_of(design, step))
    count, factor, dof = size_of(design, step)
    assert len(order) == count
    found = fit(pulls(order, [math.sin(7 * i) for i in range(count)]), drift=True)
    assert found.dof == dof
    assert difference(found, "A", "B").factor == pytest.approx(factor, rel=1e-12)


def test_two_single_pulls_cannot_tell_a_drift() -> None:
    assert not drift_can_be_told(pulls("AB", [1.0, 2.0]))
    assert not drift_can_be_told(pulls("ABC", [1.0, 2.0, 3.0]))
    assert drift_can_be_told(pulls("ABA", [1.0, 2.0, 3.0]))
    with pytest.raises(ZeroDivisionError):
        fit(pulls("AB", [1.0, 2.0]), drift=True)


def test_a_ratio_has_fiellers_interval() -> None:
    """The ends are where B - R A is just significant: put in and tested one by one."""
    values = [300.0, 302.5, 309.0, 311.5, 310.0, 301.5]
    found = difference(fit(pulls("AABBBA", values), drift=False), "A", "B")
    a = [v for v, key in zip(values, "AABBBA", strict=True) if key == "A"]
    b = [v for v, key in zip(values, "AABBBA", strict=True) if key == "B"]
    va, vb = stats.tvar(a) / 3, stats.tvar(b) / 3
    t = stats.t.ppf(0.975, found.dof)
    for ratio in (found.ratio_low, found.ratio_high):
        gap = abs(stats.tmean(b) - ratio * stats.tmean(a))
        assert gap == pytest.approx(t * math.sqrt(vb + ratio**2 * va), rel=1e-8)

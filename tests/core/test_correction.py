"""Power correction against what is printed, its misprints, other programs, and what must hold."""

import math

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from core.drives import Payload, floats
from core.good_dyno import AIR
from core.reference import rows
from midspan.core import run
from midspan.core.air import dry_pressure, vapour_pressure
from midspan.core.correction import Conditions, corrected, factor, form_factor, observed
from midspan.core.correction_standards import BY_ID, IDS
from midspan.core.errors import Refused
from midspan.core.proofs_air import PROOFS

IN_HG = 3.386389  # kPa
# Dry pressure [mbar] and temperature [C], then each form worked out apart from ours, to 5 digits.
GRID = (
    (990, 25, 1.00000, 1.00000, 1.04005, 1.03193, 1.00000),
    (1000, 25, 0.98820, 0.98824, 1.02965, 1.02161, 0.98801),
    (1000, 20, 0.97836, 0.97843, 1.02098, 1.01300, 0.97803),
    (960, 30, 1.04704, 1.04688, 1.08150, 1.07306, 1.04803),
    (980, 35, 1.03188, 1.03177, 1.06813, 1.05980, 1.03250),
    (1013, 15, 0.95369, 0.95385, 0.99924, 0.99143, 0.95310),
    (950, 10, 1.01834, 1.01827, 1.05622, 1.04796, 1.01868),
    (930, 35, 1.09703, 1.09670, 1.12556, 1.11678, 1.09947),
)
AIRS = st.builds(
    Conditions, floats(-20, 60), floats(60, 110), floats(0, 100), st.none(), st.none()
)  # fmt: skip


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


def us(fahrenheit: float, in_hg: float, humidity: float) -> Conditions:
    return Conditions(celsius(fahrenheit), in_hg * IN_HG, humidity, None, None)


def codes(found: Payload) -> set[str]:
    inner = [w["code"] for row in found["standards"] for w in row["warnings"]]
    return {*inner, *(w["code"] for w in found["warnings"])}


# ---- water vapour


@pytest.mark.parametrize("row", rows("water-vapour-pressure"))
def test_the_vapour_pressure_is_that_of_the_table(row: dict[str, str]) -> None:
    printed = float(row["saturation_kpa"])
    assert vapour_pressure(float(row["temperature_c"])) == pytest.approx(printed, rel=1e-3)


(TETENS,) = [proof.rows for proof in PROOFS if proof.source.startswith("Tetens")]


@pytest.mark.parametrize(("celsius", "printed"), TETENS)
def test_the_other_formula_in_print_gives_what_its_page_prints(celsius: int, printed: str) -> None:
    at = 0.6108 * math.exp(17.27 * celsius / (237.3 + celsius))
    assert at == pytest.approx(float(printed), rel=1e-6)


def saturation_kpa(celsius: float) -> float:
    """CoolProp has water by IAPWS-95: other people, an equation of state instead of a fit."""
    return PropsSI("P", "T", celsius + 273.15, "Q", 0, "Water") / 1000


@given(celsius=floats(0.1, 60))
def test_the_vapour_pressure_agrees_with_a_library(celsius: float) -> None:
    assert vapour_pressure(celsius) == pytest.approx(saturation_kpa(celsius), rel=2e-3)


@given(celsius=floats(0.1, 60), humidity=floats(0, 100), station=floats(70, 110))
def test_the_dry_pressure_agrees_with_a_library(
    celsius: float, humidity: float, station: float
) -> None:
    wet = humidity / 100 * saturation_kpa(celsius)
    assert dry_pressure(station, humidity, celsius) == pytest.approx(station - wet, rel=1e-3)


def test_the_misprinted_vapour_formula_is_not_ours() -> None:
    # The page prints (T 257.14 + T) where T/(257.14 + T) belongs.
    with pytest.raises(OverflowError):
        math.exp((18.678 - 25 / 234.5) * (25 * 257.14 + 25))


# ---- the forms


@pytest.mark.parametrize("row", GRID)
def test_each_form_gives_the_worked_grid(row: tuple[float, ...]) -> None:
    pressure, temperature, *wanted = row
    for standard, value in zip(IDS, wanted, strict=True):
        at = form_factor(standard, pressure / 10, temperature)
        assert at == pytest.approx(value, abs=3e-5), standard


@pytest.mark.parametrize("standard", IDS)
def test_the_factor_is_one_at_its_reference(standard: str) -> None:
    by = BY_ID[standard].by
    at = form_factor(standard, by["reference_pressure_kpa"], by["reference_temperature_c"])
    assert at == pytest.approx(1, abs=1e-12)


def test_the_measured_car() -> None:
    # tunedbytd.com, 399.03 hp at 81.30 F, 29.53 inHg, 33 %; factors worked out apart from ours.
    air = us(81.30, 29.53, 33)
    dry = dry_pressure(air.station, air.humidity, air.temperature)
    assert dry / IN_HG == pytest.approx(29.174, abs=1e-3)
    assert factor("j607", air) == pytest.approx(1.0464, abs=1e-4)
    assert factor("j1349-1990", air) == pytest.approx(1.0072, abs=1e-4)
    assert factor("iso-1585", air) == pytest.approx(1.0073, abs=1e-4)
    assert form_factor("din-70020", dry, air.temperature) == pytest.approx(1.0382, abs=1e-4)


def test_the_forum_s_cold_day() -> None:
    # gs-forum.eu: 125 PS at 1013 hPa and 20 C; at 5 C the engine gives 125 x 293/278 as read, and
    # the root form takes back too little.
    air = Conditions(5, 101.3, 0, None, None)
    read = 125 * 293 / 278
    assert corrected(read, "observed", air, "din-70020") == pytest.approx(128.33, abs=0.01)
    assert corrected(read, "observed", air, "iso-1585") == pytest.approx(122.93, abs=0.01)


@pytest.mark.parametrize("row", rows("power-correction-table"))
def test_the_engine_maker_s_table(row: dict[str, str]) -> None:
    # It is the plain root form about 99 kPa and 25 C, which J1349 turns about its 15 % of losses:
    # (factor + 0.18)/1.18 is that form.
    at = form_factor("j1349-1990", float(row["pressure_hpa"]) / 10, float(row["temperature_c"]))
    assert (at + 0.18) / 1.18 == pytest.approx(float(row["factor"]), abs=6e-5)


# ---- misprints in circulation: none of them is ours


def test_no_misprinted_form_is_ours() -> None:
    def ours(in_hg: float, fahrenheit: float) -> float:
        return form_factor("j1349-1990", in_hg * IN_HG, celsius(fahrenheit))

    def passionford(in_hg: float, fahrenheit: float) -> float:
        return 1.18 * 29.92 / in_hg * math.sqrt((fahrenheit + 460) / 505) - 0.18

    def kart(in_hg: float, fahrenheit: float) -> float:
        return 1.18 * 29.38 / in_hg * math.sqrt((fahrenheit + 460) / 537) - 0.18

    # 990 mbar is 29.23 inHg, not 29.92; 77 F is 537 degrees Rankine, not 505.
    assert ours(29.2346, 77) == pytest.approx(1, abs=1e-4)
    assert passionford(29.2346, 77) > 1.05
    assert kart(29.2346, 77) == pytest.approx(1.006, abs=1e-3)
    # dtsaust.com.au gives 101.4 kPa, 75 % and 16 C as the reference of J1349.
    assert abs(factor("j1349-1990", Conditions(16, 101.4, 75, None, None)) - 1) > 0.02
    # Its "about 4 %" of J607 over J1349 is right.
    assert form_factor("j607", 99, 25) == pytest.approx(1.04, abs=1e-3)


# ---- what must hold


@given(air=AIRS, more=floats(0.01, 2), warmer=floats(0.1, 10), standard=st.sampled_from(IDS))
def test_thicker_air_lowers_and_warmer_air_raises_the_factor(
    air: Conditions, more: float, warmer: float, standard: str
) -> None:
    at = factor(standard, air)
    assert factor(standard, air._replace(station=air.station + more)) < at
    assert factor(standard, air._replace(temperature=air.temperature + warmer)) > at
    wetter = factor(standard, air._replace(humidity=100))
    assert wetter >= at
    if BY_ID[standard].air == "total":
        assert wetter == at


@given(air=AIRS, figure=floats(1, 1000), one=st.sampled_from(IDS), other=st.sampled_from(IDS))
def test_figures_come_back(air: Conditions, figure: float, one: str, other: str) -> None:
    read = observed(figure, one, air)
    assert corrected(read, "observed", air, one) == pytest.approx(figure, rel=1e-12)
    there = corrected(figure, one, air, other)
    assert corrected(there, other, air, one) == pytest.approx(figure, rel=1e-12)


@pytest.mark.parametrize(
    ("figures_are", "wanted", "code"),
    [("j607", "observed", "standards-mixed"), ("j607", "j1349-1990", "standards-mixed"),
     ("observed", "j607", "no-conditions")],
)  # fmt: skip
def test_without_its_own_air_a_figure_stays_what_it_is(
    figures_are: str, wanted: str, code: str
) -> None:
    with pytest.raises(Refused) as refused:
        corrected(100, figures_are, None, wanted)
    assert refused.value.problems[0]["code"] == code
    assert corrected(100, figures_are, None, figures_are) == 100


# ---- the calculation


def test_observed_and_corrected_are_both_told() -> None:
    found = run("correction", {"conditions": AIR, "power_kw": 300.0, "torque_nm": 500.0})
    assert found["observed"] == {"power_kw": 300.0, "torque_nm": 500.0}
    assert [row["standard"] for row in found["standards"]] == list(IDS)
    for row in found["standards"]:
        assert row["power_kw"] == pytest.approx(300 * row["factor"], rel=1e-12)
        assert row["torque_nm"] == pytest.approx(500 * row["factor"], rel=1e-12)
        assert all(f["address"] for f in row["figures"] if f["origin"] == "published")
    recalled = {
        (row["standard"], f["name"])
        for row in found["standards"]
        for f in row["figures"]
        if f["origin"] == "from memory, unverified"
    }
    assert recalled == {("j1349-2004", "scale"), ("j1349-2004", "offset")}


def test_corrected_figures_with_another_run_s_air_are_refused() -> None:
    payload = {"conditions": AIR, "conditions_are": "another-run", "power_kw": 300.0}
    assert run("correction", {**payload, "figures_are": "observed"})
    with pytest.raises(Refused) as refused:
        run("correction", {**payload, "figures_are": "j607"})
    (told,) = refused.value.problems
    assert (told["code"], told["field"]) == ("standards-mixed", "figures_are")


@pytest.mark.parametrize(
    ("changed", "code"),
    [
        ({"air_temperature_c": 36.0}, "outside-range"),
        ({"air_temperature_c": 14.0}, "outside-range"),
        ({"barometer_kpa": 88.0, "altitude_m": None}, "outside-range"),
        ({"barometer_kpa": 94.0, "altitude_m": 600}, "large-correction"),
        ({"barometer_kpa": 101.6, "altitude_m": 700}, "looks-like-sea-level"),
        ({"barometer_kpa": 101.325, "altitude_m": None}, "standard-atmosphere"),
        ({"barometer_kpa": 85.0, "altitude_m": 100}, "pressure-against-altitude"),
        ({"barometer_kpa": 93.0, "pressure_kind": "sea-level"}, "looks-like-station"),
    ],
)
def test_doubts_are_told(changed: Payload, code: str) -> None:
    plain = {**AIR, "air_temperature_c": 25.0, "barometer_kpa": 99.9, "altitude_m": 90.0,
             "relative_humidity_percent": 20.0}  # fmt: skip
    assert codes(run("correction", {"conditions": plain})) <= {"total-or-dry", "large-correction"}
    found = run("correction", {"conditions": {**plain, **changed}})
    assert code in codes(found)
    for row in found["standards"]:
        for told in row["warnings"]:
            assert told["origin"], told["code"]


def test_a_sea_level_pressure_needs_its_altitude_and_is_brought_there() -> None:
    sea = {**AIR, "pressure_kind": "sea-level", "barometer_kpa": 101.325, "altitude_m": 1000.0}
    found = run("correction", {"conditions": sea})
    assert found["conditions"]["station_pressure_kpa"] == pytest.approx(89.87, abs=0.01)
    assert found["reduction"]["origin"] == "from memory, unverified"
    with pytest.raises(Refused) as refused:
        run("correction", {"conditions": {**sea, "altitude_m": None}})
    (told,) = refused.value.problems
    assert (told["code"], told["field"]) == ("missing", "conditions.altitude_m")
    plain = run("correction", {"conditions": {**sea, "pressure_kind": "station",
                                              "barometer_kpa": 89.9}})  # fmt: skip
    assert plain["reduction"] is None

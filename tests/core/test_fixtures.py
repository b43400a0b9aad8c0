"""Every reference table says where it comes from, and holds together."""

import re

import pytest

from core.reference import FIXTURES, rows, source

TABLES = sorted(path.stem for path in FIXTURES.glob("*.csv"))
KEYS = {"title", "address", "retrieved", "status", "units", "transcribed", "misprints"}
STATUS = re.compile(r"published|from memory, unverified|derived|in each row")


def test_there_are_tables_to_check() -> None:
    assert len(TABLES) >= 14


def test_no_citation_stands_alone() -> None:
    cited = {path.name.removesuffix(".source.json") for path in FIXTURES.glob("*.source.json")}
    assert cited == set(TABLES)


@pytest.mark.parametrize("name", TABLES)
def test_a_table_has_a_whole_citation(name: str) -> None:
    cited = source(name)
    assert cited.keys() == KEYS
    assert cited["title"]
    assert cited["retrieved"]
    assert cited["transcribed"]
    assert STATUS.search(cited["status"])
    columns = set(rows(name)[0])
    assert set(cited["units"]) <= columns, "a unit of no column"
    numeric = {c for c in columns if all(re.fullmatch(r"-?[\d.]+", r[c]) for r in rows(name))}
    unitless = {"teeth", "links", "crank_teeth", "cam_teeth"}
    assert numeric - unitless <= set(cited["units"]), "a number without a unit"


@pytest.mark.parametrize("name", TABLES)
def test_what_is_called_published_has_an_address(name: str) -> None:
    cited = source(name)
    for row in rows(name):
        address = row.get("address", cited["address"])
        if "published" in row.get("status", cited["status"]):
            assert "." in address, row
            assert not address.startswith("none"), row


@pytest.mark.parametrize("name", TABLES)
def test_what_is_recalled_says_so(name: str) -> None:
    if "from-memory" in name:
        assert source(name)["status"] == "from memory, unverified"


def test_the_thermal_table_agrees_with_two_other_sources() -> None:
    # Callister against a range table and a structural handbook, whose gray iron and wrought
    # aluminium are other alloys: within 10 %.
    alloys = {row["material"]: row for row in rows("materials-textbook-thermal-expansion")}
    assert len(alloys) == 10
    for other in rows("range-table-thermal-expansion"):
        own = [
            float(row["expansion_per_k_1e-6"])
            for row in alloys.values()
            if row["family"] == other["family"]
        ]
        assert own, other
        for value in own:
            assert 0.9 * float(other["low_1e-6"]) <= value <= 1.1 * float(other["high_1e-6"])


@pytest.mark.parametrize(
    ("centre_mm", "block", "rise_k", "change_mm"),
    # Derived by hand: C 125, 80 K, aluminium 21.5 against chain steel 12.3 is 0.092 mm; gray iron
    # 11.4 is -0.009 mm (it opens less than the chain grows); C 200, 70 K is 0.129 mm.
    [
        (125, "aluminium 356.0", 80, 0.092),
        (125, "gray iron G1800 / G3000 / G4000", 80, -0.009),
        (200, "aluminium 356.0", 70, 0.129),
    ],
)
def test_the_thermal_table_gives_the_hand_worked_growths(
    centre_mm: float, block: str, rise_k: float, change_mm: float
) -> None:
    table = {
        row["material"]: float(row["expansion_per_k_1e-6"]) * 1e-6
        for row in rows("materials-textbook-thermal-expansion")
    }
    growth = centre_mm * (table[block] - table["steel 4140 / 4340"]) * rise_k
    assert growth == pytest.approx(change_mm, abs=0.0005)

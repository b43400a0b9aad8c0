"""Expansion coefficients on file against the textbook's table."""

import pytest

from core.reference import rows, source
from midspan.core import run

TABLE = "materials-textbook-thermal-expansion"
MATERIALS = {m["id"]: m for m in run("materials", {})["materials"]}
# Our names for the textbook's rows; every row has one, and no material is without a row.
NAMES = {
    "steel A36 / 1020": "steel-1020",
    "steel 1040": "steel-1040",
    "steel 4140 / 4340": "steel-4140",
    "gray iron G1800 / G3000 / G4000": "grey-iron",
    "ductile iron 60-40-18": "ductile-iron-60-40-18",
    "ductile iron 80-55-06": "ductile-iron-80-55-06",
    "aluminium 356.0": "aluminium-356",
    "aluminium 6061": "aluminium-6061",
    "aluminium 2024": "aluminium-2024",
    "magnesium AZ91D": "magnesium-az91d",
}


def test_no_row_is_without_a_material_and_no_material_without_a_row() -> None:
    assert {row["material"] for row in rows(TABLE)} == set(NAMES)
    assert set(MATERIALS) == set(NAMES.values())


@pytest.mark.parametrize("row", rows(TABLE), ids=lambda row: row["material"])
def test_a_material_is_as_printed(row: dict[str, str]) -> None:
    material = MATERIALS[NAMES[row["material"]]]
    assert material["expansion_ppm"] == float(row["expansion_per_k_1e-6"])
    assert material["origin"] == source(TABLE)["status"] == "published"
    assert "Callister" in material["source"]
    assert "Table B.6" in material["source"]
    assert material["address"].split(",")[0] == source(TABLE)["address"].split(",")[0]
    family = row["family"].split()[-1]  # "gray iron" and "alloy steel" are iron and steel
    assert family in material["label"].lower()

"""Kinds of engine oil, its API and ILSAC categories, and how much phosphorus each of these allows.

To add a category, add a row. One without a figure on file is accepted, and nothing is claimed.
"""

from collections import namedtuple

from .limits import MEMORY, PUBLISHED

# Kinds of oil, as a plan and a forecast tell them apart.
OILS = ("mineral", "running-in", "conventional", "synthetic")

Category = namedtuple(
    "Category", ("id", "lower", "upper", "grades", "origin", "source", "address", "note")
)

_MAGAZINE = ("Trade magazine on ILSAC oils", "lubesngreases.com/magazine/20_5/"
             "the-best-thing-going/")  # fmt: skip
_SM = ("Oil maker's table of API SM", "new.petro-canada.com.ua/api_pass_sm")
_D7040 = ("ASTM D7040-04(2010), scope", "standards.iteh.ai")
_HEAVY = ("Trade magazine, on heavy-duty oils", "lubesngreases.com/magazine/23_1/automotive-11")
_LIGHT_GRADES = ("0W-20", "5W-20", "0W-30", "5W-30", "10W-30")
_LIGHT = "Grades of the ILSAC kind; the footnote for heavier grades was not legible."


def _none(id: str) -> Category:
    return Category(id, None, None, (), "", "", "", "")


# Phosphorus [mg/kg].
CATEGORIES = (
    _none("SF"),
    _none("SG"),
    _none("SH"),
    _none("SJ"),
    _none("SL"),
    Category("SM", 600.0, 800.0, (), PUBLISHED, _SM[0], _SM[1], _LIGHT),
    Category("SN", 600.0, 800.0, _LIGHT_GRADES, MEMORY, "", "", "Grades of the ILSAC kind."),
    Category("SP", 600.0, 800.0, _LIGHT_GRADES, MEMORY, "", "", "Grades of the ILSAC kind."),
    Category("GF-2", None, 1000.0, (), PUBLISHED, _MAGAZINE[0], _MAGAZINE[1],
             "0.10 % from 1996; that this is GF-2 is from memory."),
    _none("GF-3"),
    Category("GF-4", 500.0, 800.0, (), PUBLISHED, _D7040[0], _D7040[1],
             "Another table prints 600 to 800."),
    Category("GF-5", None, 800.0, _LIGHT_GRADES, PUBLISHED, _MAGAZINE[0], _MAGAZINE[1],
             "0.08 % from 2004 on."),
    Category("GF-6", 600.0, 800.0, (), MEMORY, "", "", ""),
    _none("GF-7"),
    _none("CH-4"),
    _none("CI-4"),
    Category("CJ-4", None, 1000.0, (), PUBLISHED, _HEAVY[0], _HEAVY[1], ""),
    Category("CK-4", None, None, (), PUBLISHED, _HEAVY[0], _HEAVY[1],
             "Some oils of this category hold 800 ppm."),
)  # fmt: skip
BY_ID = {category.id: category for category in CATEGORIES}

"""SAE J300: what the viscosity grade of an engine oil means, and whether it exists.

To add a grade, add a row. The table is that of January 2015; older ones differ for the light 40s
and for SAE 20.
"""

from collections import namedtuple

from .limits import PUBLISHED

SOURCE = "SAE J300, January 2015, as reprinted"
ADDRESS = "raso.name/index.php/cars/22-maintaining/51-sae-viscosity-grades-for-engine-oils"

Winter = namedtuple("Winter", ("grade", "kv_low", "cranking", "cranking_c", "pumping", "pumping_c"))
Summer = namedtuple("Summer", ("grade", "kv_low", "kv_high", "hths", "hths_light"))

# Kinematic viscosity at 100 C [mm2/s], cranking and pumping viscosity [mPa s] at [C].
WINTER = (
    Winter("0W", 3.8, 6200.0, -35.0, 60000.0, -40.0),
    Winter("5W", 3.8, 6600.0, -30.0, 60000.0, -35.0),
    Winter("10W", 4.1, 7000.0, -25.0, 60000.0, -30.0),
    Winter("15W", 5.6, 7000.0, -20.0, 60000.0, -25.0),
    Winter("20W", 5.6, 9500.0, -15.0, 60000.0, -20.0),
    Winter("25W", 9.3, 13000.0, -10.0, 60000.0, -15.0),
)
# The last column is the high-temperature high-shear viscosity of the grade with 0W, 5W or 10W.
SUMMER = (
    Summer("8", 4.0, 6.1, 1.7, 1.7),
    Summer("12", 5.0, 7.1, 2.0, 2.0),
    Summer("16", 6.1, 8.2, 2.3, 2.3),
    Summer("20", 6.9, 9.3, 2.6, 2.6),
    Summer("30", 9.3, 12.5, 2.9, 2.9),
    Summer("40", 12.5, 16.3, 3.7, 3.5),
    Summer("50", 16.3, 21.9, 3.7, 3.7),
    Summer("60", 21.9, 26.1, 3.7, 3.7),
)
LIGHT = ("0W", "5W", "10W")
NEED = "a grade of SAE J300, such as 10W-40, 5W-30, 30 or 20W"


def grade_of(text: str) -> dict[str, object] | None:
    """Give what SAE J300 asks of an oil of this grade.

    Parameters
    ----------
    text : as on the can: "10W-40", "10w40", "SAE 30"

    Returns
    -------
    dict, units by field name: grade as J300 writes it, the lower end and the end not reached of
    the kinematic viscosity at 100 C, least viscosity at 150 C and high shear, cranking and pumping
    viscosity not exceeded and at which temperature; None where there is no such grade. What the
    grade leaves open is None in the dict.

    Raises
    ------
    none

    Validity
    --------
    Engine oils. A multigrade must meet both its rows; one whose rows exclude each other is none.

    Reference
    ---------
    SAE J300, January 2015, as reprinted (see ADDRESS).
    """
    winter, summer = _rows(text)
    if winter is None and summer is None:
        return None
    if winter is not None and summer is not None and winter.kv_low >= summer.kv_high:
        return None
    name = "-".join([row.grade for row in (winter, summer) if row is not None])
    low = max([row.kv_low for row in (winter, summer) if row is not None])
    hths = None
    if summer is not None:
        light = winter is not None and winter.grade in LIGHT
        hths = summer.hths_light if light else summer.hths
    return {
        "grade": name,
        "viscosity_100c_low_mm2_per_s": low,
        "viscosity_100c_high_mm2_per_s": None if summer is None else summer.kv_high,
        "hths_low_mpa_s": hths,
        "cranking_high_mpa_s": None if winter is None else winter.cranking,
        "cranking_at_c": None if winter is None else winter.cranking_c,
        "pumping_high_mpa_s": None if winter is None else winter.pumping,
        "pumping_at_c": None if winter is None else winter.pumping_c,
        "origin": PUBLISHED,
        "source": SOURCE,
        "address": ADDRESS,
    }


def _rows(text: str) -> tuple[Winter | None, Summer | None]:
    """Find the rows that a grade names; none for what is no grade."""
    # Only plain letters: interpreters differ in the capitals of others.
    large = "".join([chr(ord(c) - 32) if "a" <= c <= "z" else c for c in text])
    bare = large.replace("SAE", "").replace(" ", "").replace("-", "")
    first, letter, last = bare.partition("W")
    winters = [row for row in WINTER if letter and row.grade == first + "W"]
    number = last if letter else first
    summers = [row for row in SUMMER if row.grade == number]
    if (letter and not winters) or (number and not summers):
        return None, None
    return winters[0] if winters else None, summers[0] if summers else None

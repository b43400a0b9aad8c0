"""Thermal expansion coefficients as data, each with where it comes from.

Mean linear coefficients near room temperature, in 1e-6 per kelvin.
"""

from collections import namedtuple

from .limits import MEMORY, PUBLISHED


class Material(
    namedtuple(
        "Material",
        ("id", "label", "expansion", "origin", "source", "address", "spread", "spread_origin"),
    )
):
    """A material and its mean linear expansion coefficient [1e-6/K], with its origin; how far
    the true one may lie from it either way [1e-6/K], and where that is from.
    """

    __slots__ = ()


_HANDBOOK = "Callister, Fundamentals of Materials Science and Engineering, 3rd ed., Table B.6"
_AT = "issuhub.com/view/index/5550, pages 843-844"


# Where tables of the same kind of metal differ, half-widths hold what they print: grey iron 10.6 to
# 11.4 (three tables), ductile iron 10.6 to 11.2 and steel 11.3 to 12.3 (grades of the table above,
# since a chain's plates and a gear need not be the grade assumed), wrought aluminium 22.9 to 23.6.
# No table prints a half-width: taking these is our own judgement, so they count as from memory.
def _row(id: str, label: str, expansion: float, spread: float) -> Material:
    return Material(id, label, expansion, PUBLISHED, _HANDBOOK, _AT, spread, MEMORY)


MATERIALS = (
    _row("grey-iron", "Grey cast iron", 11.4, 0.8),
    _row("ductile-iron-60-40-18", "Ductile iron 60-40-18", 11.2, 0.6),
    _row("ductile-iron-80-55-06", "Ductile iron 80-55-06", 10.6, 0.6),
    _row("steel-1020", "Plain carbon steel 1020", 11.7, 0.6),
    _row("steel-1040", "Plain carbon steel 1040", 11.3, 1.0),
    _row("steel-4140", "Alloy steel 4140 or 4340", 12.3, 1.0),
    _row("aluminium-356", "Cast aluminium 356", 21.5, 1.0),
    _row("aluminium-6061", "Wrought aluminium 6061", 23.6, 0.7),
    _row("aluminium-2024", "Wrought aluminium 2024", 22.9, 0.7),
    _row("magnesium-az91d", "Magnesium AZ91D", 26.0, 1.0),
)
# Of a figure of the user's own, where its source gives none; from memory, unverified.
OWN_SPREAD_PPM = 1.0


def as_dict(material: Material) -> dict[str, object]:
    """Give a material as the API and the screen show it."""
    return {
        "id": material.id,
        "label": material.label,
        "expansion_ppm": material.expansion,
        "origin": material.origin,
        "source": material.source,
        "address": material.address,
        "expansion_error_ppm": material.spread,
        "error_origin": material.spread_origin,
    }

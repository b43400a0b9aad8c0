"""Thermal expansion coefficients as data, each with where it comes from.

Mean linear coefficients near room temperature, in 1e-6 per kelvin.
"""

from collections import namedtuple

from .limits import PUBLISHED


class Material(namedtuple("Material", ("id", "label", "expansion", "origin", "source", "address"))):
    """A material and its mean linear expansion coefficient [1e-6/K], with its origin."""

    __slots__ = ()


_HANDBOOK = "Callister, Fundamentals of Materials Science and Engineering, 3rd ed., Table B.6"
_AT = "issuhub.com/view/index/5550, pages 843-844"


def _row(id: str, label: str, expansion: float) -> Material:
    return Material(id, label, expansion, PUBLISHED, _HANDBOOK, _AT)


MATERIALS = (
    _row("grey-iron", "Grey cast iron", 11.4),
    _row("ductile-iron-60-40-18", "Ductile iron 60-40-18", 11.2),
    _row("ductile-iron-80-55-06", "Ductile iron 80-55-06", 10.6),
    _row("steel-1020", "Plain carbon steel 1020", 11.7),
    _row("steel-1040", "Plain carbon steel 1040", 11.3),
    _row("steel-4140", "Alloy steel 4140 or 4340", 12.3),
    _row("aluminium-356", "Cast aluminium 356", 21.5),
    _row("aluminium-6061", "Wrought aluminium 6061", 23.6),
    _row("aluminium-2024", "Wrought aluminium 2024", 22.9),
    _row("magnesium-az91d", "Magnesium AZ91D", 26.0),
)


def as_dict(material: Material) -> dict[str, object]:
    """Give a material as the API and the screen show it."""
    return {
        "id": material.id,
        "label": material.label,
        "expansion_ppm": material.expansion,
        "origin": material.origin,
        "source": material.source,
        "address": material.address,
    }

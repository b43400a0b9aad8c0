"""One measurement of a chain, of any kind, as it is sent; and what it says of excess length."""

from .build import Build, check_movement
from .combine import Part
from .drive import excess_length
from .fields import Form
from .movement import excess_from_movement
from .phase import excess_from_rock, radians
from .trials import excess_of_reading, is_felt

KINDS = ("elongation_percent", "movement_mm", "crank_rock_deg", "chain_length_mm")
UNCERTAINTY = {
    "elongation_percent": "standard_uncertainty_percent",
    "movement_mm": "standard_uncertainty_mm",
    "crank_rock_deg": "standard_uncertainty_deg",
    "chain_length_mm": "standard_uncertainty_mm",
}


def take_measurement(part: Form, strand: float) -> tuple[str, float, float] | None:
    """Read quantity, value and standard uncertainty, and close the object.

    Whatever else the object may hold has to be read before.

    Parameters
    ----------
    part : the object being read; what is refused is noted in it
    strand : free strand of the drive, which no movement exceeds [mm]

    Returns
    -------
    quantity, value, standard uncertainty; or None where one of them was refused
    """
    kind = part.take_choice("quantity", KINDS)
    if kind is None:
        return None
    value = part.take_number(kind)
    u = part.take_number(UNCERTAINTY[kind])
    part.close()
    if kind == "movement_mm":
        check_movement(part, kind, value, strand)
    return None if value is None or u is None else (kind, value, u)


def excess_of(build: Build, kind: str, value: float) -> float:
    """Give the excess length [mm] that a measured value stands for."""
    shape = build.geometry
    if kind == "movement_mm":
        return excess_from_movement(shape.strand, value)
    if kind == "crank_rock_deg":
        return excess_from_rock(shape.crank_radius, radians(value))
    if kind == "chain_length_mm":
        return value - float(shape.taut_length)
    return excess_length(build.drive, shape.taut_length, value / 100)


def is_told(reading: tuple[str, float, float]) -> bool:
    """Tell whether a reading can be told from a taut chain, of which slack says nothing."""
    kind, value, u = reading
    return kind not in ("movement_mm", "crank_rock_deg") or is_felt(value, u)


def part_of(build: Build, kind: str, value: float, u: float) -> Part:
    """Turn a reading into excess length with its standard uncertainty [mm]."""
    if kind == "movement_mm":
        # The reading stands for itself here: alone, it must come back as it was read.
        spread = excess_of_reading(build.geometry.strand, value, u, value)[1]
        return Part(excess_of(build, kind, value), spread, False)
    # The others are straight, so a step of u from the value gives it.
    spread = excess_of(build, kind, value + u) - excess_of(build, kind, value)
    return Part(excess_of(build, kind, value), spread, kind != "crank_rock_deg")

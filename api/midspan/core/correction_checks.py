"""Doubts about a run's air: ranges of the standards, and station against sea-level pressure."""

from .air import SEA_LEVEL_KPA, height_ratio
from .correction import Conditions, factor, form_factor
from .correction_standards import (
    SUSPECT_ADDRESS,
    SUSPECT_PERCENT,
    SUSPECT_SOURCE,
    Standard,
)
from .figures import fixed
from .limits import MEMORY, PUBLISHED
from .warnings import warning

# How far weather takes a pressure from the standard atmosphere's, either way: from memory.
WEATHER_KPA = 4.0
# The air at which a standard's own level is told: the reference of SAE J1349.
ORDINARY_KPA, ORDINARY_C = 99.0, 25.0
# Nearer than this to the standard atmosphere a figure was looked up sooner than read: from
# memory, unverified.
LOOKED_UP_KPA = 0.03
# Height from which the two kinds of pressure are further apart than weather hides: from memory,
# unverified.
TELLING_M = 300.0
STANDARD_FIGURES_KPA = (101.3, SEA_LEVEL_KPA)


def doubts(standard: Standard, air: Conditions, dry: float) -> list[dict[str, object]]:
    """Say where a standard is used outside what it is meant for.

    Parameters
    ----------
    standard : the standard
    air : conditions of the run [degC, kPa, %]
    dry : dry pressure [kPa]

    Returns
    -------
    list of warnings, each with its origin

    Raises
    ------
    none

    Validity
    --------
    Ranges as on file; the published pressure range does not say of which pressure: taken as dry.

    Reference
    ---------
    See the ranges of `correction_standards.STANDARDS`.
    """
    found = []
    at = factor(standard.id, air)
    values = {"air_temperature_c": air.temperature, "dry_pressure_kpa": dry, "factor": at}
    words = {"air_temperature_c": ("Air of", "degC", 1), "dry_pressure_kpa":
             ("A dry pressure of", "kPa", 2), "factor": ("A factor of", "", 3)}  # fmt: skip
    for limit in standard.ranges:
        value = values[limit.what]
        if limit.low <= value <= limit.high:
            continue
        lead, unit, places = words[limit.what]
        ends = fixed(limit.low, 2) + " to " + fixed(limit.high, 2)
        text = lead + " " + fixed(value, places) + " " + unit
        text = text.strip() + " is outside " + ends + (" " + unit if unit else "")
        text += ", what " + standard.label + " is meant for."
        field = limit.what if limit.what == "factor" else "conditions." + limit.what
        found.append(
            warning("outside-range", field, value, text, limit.origin, limit.source)
        )  # fmt: skip
    # A standard's own reference moves every figure alike; what the air does is the rest.
    own = form_factor(standard.id, ORDINARY_KPA, ORDINARY_C)
    if abs(at / own - 1) * 100 > SUSPECT_PERCENT:
        text = "The air moves the figure by " + fixed((at / own - 1) * 100, 1) + " %: over 3 % a "
        text += "correction is suspect. Compare runs of one day, or wait for better air."
        source = SUSPECT_SOURCE + ", " + SUSPECT_ADDRESS
        found.append(warning("large-correction", "factor", at, text, PUBLISHED, source))
    if standard.id == "din-70020":
        other = form_factor(standard.id, dry, air.temperature)
        text = "Sources differ whether this standard takes total or dry pressure. Total is used; "
        text += "dry would give " + fixed(other, 4) + " in place of " + fixed(at, 4) + "."
        found.append(warning("total-or-dry", "factor", at, text, MEMORY))
    return found


def pressure_doubts(kind: str, barometer: float, altitude: float | None) -> list[dict[str, object]]:
    """Question a barometer figure that looks like the other kind of pressure.

    Parameters
    ----------
    kind : "station" or "sea-level", as the user said
    barometer : the figure as read [kPa]
    altitude : of the place [m], or None

    Returns
    -------
    list of warnings

    Raises
    ------
    none

    Validity
    --------
    Weather is taken to move a pressure by 4 kPa at most, from memory, unverified.

    Reference
    ---------
    none
    """
    field = "conditions.barometer_kpa"
    said = fixed(barometer, 2) + " kPa"
    if kind == "sea-level":
        if abs(barometer - SEA_LEVEL_KPA) > WEATHER_KPA:
            text = said + " is a rare sea-level pressure: was it read on the spot? Then it is a "
            text += "station pressure, and must not be reduced again."
            return [warning("looks-like-station", field, barometer, text, MEMORY)]
        return []
    if altitude is not None:
        usual = SEA_LEVEL_KPA * height_ratio(altitude)
        off = abs(barometer - usual)
        place = fixed(altitude, 0) + " m a station pressure is near " + fixed(usual, 1) + " kPa"
        if off > WEATHER_KPA or (altitude >= TELLING_M and _nearer(barometer, usual)):
            text = "At " + place + ", and " + said + " was given. "
            if abs(barometer - SEA_LEVEL_KPA) < off:
                text += "It looks like a sea-level pressure, as weather services give it: the "
                text += "factor would come out too small."
                return [warning("looks-like-sea-level", field, barometer, text, MEMORY)]
            text += "Check the barometer, its unit and the altitude."
            return [warning("pressure-against-altitude", field, barometer, text, MEMORY)]
    if min([abs(barometer - x) for x in STANDARD_FIGURES_KPA]) < LOOKED_UP_KPA:
        text = said + " is the standard atmosphere itself. Was it read off a barometer at the "
        text += "dyno, or taken from a table or a weather report?"
        return [warning("standard-atmosphere", field, barometer, text)]
    return []


def _nearer(barometer: float, usual: float) -> bool:
    """Tell whether a figure is nearer to sea level's pressure than to that of the place."""
    return abs(barometer - SEA_LEVEL_KPA) < abs(barometer - usual)

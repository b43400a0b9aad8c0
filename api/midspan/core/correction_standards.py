"""Power correction standards as data: form, figures, and where each figure comes from."""

from collections import namedtuple

from .limits import MEMORY, PUBLISHED

OBSERVED = "observed"


class Figure(namedtuple("Figure", ("name", "value", "origin", "source", "address"))):
    """One figure of a form and where it comes from."""

    __slots__ = ()


class Range(namedtuple("Range", ("what", "low", "high", "origin", "source", "address"))):
    """What a standard is meant for: `what` is a field of the result, ends in its unit."""

    __slots__ = ()


class Standard(
    namedtuple("Standard", ("id", "label", "form", "air", "figures", "ranges", "note", "by"))
):
    """factor = scale (reference pressure / p)^m ((t + zero) / (reference t + zero))^n - offset.

    `air` says whether p is the dry or the total pressure; `by` gives the figures by name.
    """

    __slots__ = ()


_NAMES = (
    "scale", "offset", "reference_pressure_kpa", "reference_temperature_c", "zero_k",
    "pressure_exponent", "temperature_exponent",
)  # fmt: skip
_J1990 = ("SAE J1349 JUN90, as repeated in a forum", "passionford.com/forum/6282141-post33.html")
_J2004 = (
    "Which pressure, temperature and ranges SAE J1349 AUG2004 has, as repeated in a magazine",
    "motoiq.com/dont-trust-strangers-how-dynos-lie-and-when-to-believe-one/2/",
)
_J607 = (
    "SAE J607, as repeated in a forum",
    "eng-tips.com/threads/correction-factor-limits.17569/latest",
)
_DIN = (
    "DIN 70020, as repeated in forums",
    "corsa-d.de/forum/thread/2830-chiptuning-eure-erfahrungen/?postID=63820",
)
_EEC = (
    "EEC 80/1269 as amended, spark ignition, as repeated in a forum",
    "gs-forum.eu/threads/lc-auf-dem-leistungspruefstand.91543/page-4",
)


def _standard(
    id: str, label: str, form: str, air: str, values: tuple[float, ...], said: tuple[str, str],
    recalled: tuple[str, ...] = (), ranges: tuple[Range, ...] = (), note: str = "",
) -> Standard:  # fmt: skip
    figures = []
    for name, value in zip(_NAMES, values):
        if name in recalled:
            figures.append(Figure(name, value, MEMORY, "", ""))
        else:
            figures.append(Figure(name, value, PUBLISHED, said[0], said[1]))
    by = {figure.name: figure.value for figure in figures}
    return Standard(id, label, form, air, tuple(figures), ranges, note, by)


def _sae_ranges() -> tuple[Range, ...]:
    return (
        Range("air_temperature_c", 15.0, 35.0, PUBLISHED, _J2004[0], _J2004[1]),
        Range("dry_pressure_kpa", 90.0, 105.0, PUBLISHED, _J2004[0], _J2004[1]),
    )


STANDARDS = (
    _standard(
        "j1349-1990", "SAE J1349 (1990)", "1.180 (99/Pd) sqrt((t+273)/298) - 0.180", "dry",
        (1.180, 0.180, 99.0, 25.0, 273.0, 1.0, 0.5), _J1990, ranges=_sae_ranges(),
        note="Corrects indicated power: mechanical losses are taken as 15 % and left alone.",
    ),
    _standard(
        "j1349-2004", "SAE J1349 (2004)", "1.176 (99/Pd) sqrt((t+273)/298) - 0.176", "dry",
        (1.176, 0.176, 99.0, 25.0, 273.0, 1.0, 0.5), _J2004, ("scale", "offset"), _sae_ranges(),
        note="1.176 and 0.176 are from memory, unverified; they are 1/0.85 and 0.15/0.85, rounded.",
    ),
    _standard(
        "j607", "SAE J607 (standard)", "(101.32/Pd) sqrt((1.8 t + 491.7)/519.7)", "dry",
        (1.0, 0.0, 29.92 * 3.386389, (519.7 - 491.7) / 1.8, 491.7 / 1.8, 1.0, 0.5), _J607,
        note="Reads about 4 % more than SAE J1349: never hold one against the other.",
    ),
    _standard(
        "din-70020", "DIN 70020", "(101.3/p) sqrt((t+273)/293)", "total",
        (1.0, 0.0, 101.3, 20.0, 273.0, 1.0, 0.5), _DIN,
        note="Sources differ whether p is the total or the dry pressure. Taken here: total, as its "
        "print names no vapour.",
    ),
    _standard(
        "iso-1585", "ISO 1585 form (1.2 and 0.6)", "(99/Pd)^1.2 ((t+273)/298)^0.6", "dry",
        (1.0, 0.0, 99.0, 25.0, 273.0, 1.2, 0.6), _EEC,
        ranges=(Range("factor", 0.93, 1.07, MEMORY, "", ""),),
        note="The form is published for EEC 80/1269, naturally aspirated spark ignition; that "
        "ISO 1585 and ECE R85 share it is from memory, unverified.",
    ),
)  # fmt: skip
BY_ID = {standard.id: standard for standard in STANDARDS}
IDS = tuple([standard.id for standard in STANDARDS])
# Field advice, for every standard.
SUSPECT_PERCENT = 3.0
SUSPECT_SOURCE = "Workshop's field advice"
SUSPECT_ADDRESS = "hotshotmotorworks.com/didja_know.htm"


def as_dict(standard: Standard) -> dict[str, object]:
    """Give a standard as the API and the screen show it."""
    return {
        "standard": standard.id,
        "label": standard.label,
        "form": standard.form,
        "air": standard.air,
        "note": standard.note,
        "figures": [
            {"name": f.name, "value": f.value, "origin": f.origin, "source": f.source,
             "address": f.address}
            for f in standard.figures
        ],
        "ranges": [
            {"what": r.what, "low": r.low, "high": r.high, "origin": r.origin, "source": r.source,
             "address": r.address}
            for r in standard.ranges
        ],
    }  # fmt: skip

"""What a column of a dyno table can be, in which units, and the words that give it away."""

import math

# Figure in our unit = factor times figure in the file + offset. International inch, pound and
# standard gravity; PS of 75 kgf m/s; conventional inHg and mmHg: exact or as defined.
_POUND_FOOT = 1.3558179483314004
UNITS = {
    "speed": {"rpm": (1.0, 0.0), "krpm": (1000.0, 0.0), "1/s": (60.0, 0.0)},
    "torque": {"N m": (1.0, 0.0), "lbf ft": (_POUND_FOOT, 0.0), "kgf m": (9.80665, 0.0)},
    "power": {"kW": (1.0, 0.0), "hp": (550 * _POUND_FOOT / 1000, 0.0), "PS": (0.73549875, 0.0),
              "W": (0.001, 0.0)},
    "air": {"degC": (1.0, 0.0), "degF": (5 / 9, -160 / 9), "K": (1.0, -273.15)},
    "pressure": {"kPa": (1.0, 0.0), "hPa": (0.1, 0.0), "inHg": (3.386389, 0.0),
                 "mmHg": (0.1333224, 0.0), "bar": (100.0, 0.0), "psi": (6.894757, 0.0)},
    "humidity": {"%": (1.0, 0.0), "1": (100.0, 0.0)},
    "oil": {"degC": (1.0, 0.0), "degF": (5 / 9, -160 / 9), "K": (1.0, -273.15)},
    "water": {"degC": (1.0, 0.0), "degF": (5 / 9, -160 / 9), "K": (1.0, -273.15)},
    "run": {"": (1.0, 0.0)},
}  # fmt: skip
ROLES = tuple(sorted(UNITS))
# What a figure may be in our unit; beyond, the row is listed as unreadable.
RANGES = {
    "speed": (0.0, 30000.0), "torque": (-10000.0, 50000.0), "power": (-2000.0, 10000.0),
    "air": (-20.0, 60.0), "pressure": (50.0, 110.0), "humidity": (0.0, 100.0),
    "oil": (-20.0, 200.0), "water": (-20.0, 150.0),
}  # fmt: skip
AIR_FIELDS = {
    "air": "air_temperature_c", "pressure": "station_pressure_kpa",
    "humidity": "relative_humidity_percent", "oil": "oil_temperature_c",
    "water": "water_temperature_c",
}  # fmt: skip
# First match counts, so what is narrower stands first.
WORDS = (
    ("oil", ("oil", "ölte", "öl", "oelt", "huile")),
    ("water", ("water", "coolant", "wasser", "kühl", "kuehl", "eau")),
    ("humidity", ("humid", "feucht", "rel. h", "rh")),
    ("pressure", ("baro", "air press", "ambient p", "luftdruck", "atm", "station")),
    ("air", ("air t", "intake t", "inlet t", "ambient t", "iat", "lufttemp", "ansaug", "room t")),
    ("run", ("run", "pull", "lauf", "sweep")),
    (
        "torque",
        ("torque", "moment", "couple", "nm", "n m", "n.m", "lbf", "lb-ft", "ft-lb", "ftlb", "lbft"),
    ),
    ("power", ("power", "leistung", "puissance", "kw", "hp", "bhp", "whp", "ps")),
    ("speed", ("rpm", "speed", "drehzahl", "1/min", "u/min", "min-1", "régime", "regime")),
)
NEVER = ("time", "zeit", "mph", "km/h", "vehicle", "road", "oil p", "öldr", "fuel", "boost")
UNIT_WORDS = (
    ("speed", "krpm", ("krpm",)), ("speed", "rpm", ("rpm", "1/min", "u/min", "min-1")),
    ("speed", "1/s", ("1/s", "rps", "hz")),
    ("torque", "lbf ft", ("lb", "lbf", "lbs", "ft", "ftlb", "lbft")),
    ("torque", "kgf m", ("kgm", "kgfm", "kg", "kgf", "mkp")),
    ("torque", "N m", ("nm", "n m", "n.m", "n·m")),
    ("power", "kW", ("kw",)), ("power", "hp", ("hp", "bhp", "whp")),
    ("power", "PS", ("ps", "cv", "pk")),
    ("power", "W", ("w",)),
    ("pressure", "kPa", ("kpa",)), ("pressure", "hPa", ("hpa", "mbar")),
    ("pressure", "inHg", ("inhg", "in hg")), ("pressure", "mmHg", ("mmhg", "torr")),
    ("pressure", "bar", ("bar",)), ("pressure", "psi", ("psi",)),
    ("humidity", "%", ("%",)),
)  # fmt: skip
DEGREES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("degF", ("°f", "degf", "(f)", "[f]", " f")), ("degC", ("°c", "degc", "(c)", "[c]", " c")),
    ("K", ("(k)", "[k]")),
)  # fmt: skip
CORRECTED_WORDS = ("corr", "korr", "sae", "din", "std", "iso", "j1349", "j607")


def role_of(heading: str) -> str | None:
    """Tell what a column is by its heading, or None if its words say nothing."""
    said = heading.lower()
    if any([_says(said, word) for word in NEVER]):
        return None
    for role, words in WORDS:
        if any([_says(said, word) for word in words]):
            return role
    return None


def unit_of(role: str, heading: str, values: list[float]) -> tuple[str, str]:
    """Tell the unit of a column, and by what: "heading", or "size" of its figures."""
    said = heading.lower()
    if role in ("air", "oil", "water"):
        for unit, signs in DEGREES:
            if any([sign in said for sign in signs]):
                return unit, "heading"
        middle = _middle(values)
        limit = 55 if role == "air" else 145
        return ("K" if middle > 250 else "degF" if middle > limit else "degC"), "size"
    for which, unit, known in UNIT_WORDS:
        if which == role and any([_says(said, word) for word in known]):
            return unit, "heading"
    middle = _middle(values)
    if role == "pressure":
        for unit, (low, high) in (("bar", (0.5, 1.2)), ("psi", (8, 16)), ("inHg", (20, 33)),
                                  ("kPa", (60, 110)), ("mmHg", (450, 810))):  # fmt: skip
            if low <= middle <= high:
                return unit, "size"
        return "hPa", "size"
    if role == "humidity" and values and max(values) <= 1:
        return "1", "size"
    if role == "speed" and values and max(values) <= 25:
        return "krpm", "size"
    return {"speed": "rpm", "torque": "N m", "power": "kW", "humidity": "%", "run": ""}[
        role
    ], "size"


def power_of(torque: float, speed: float) -> float:
    """Give power [kW] from torque [N m] and speed [rpm]."""
    return torque * speed * math.pi / 30000


def torque_of(power: float, speed: float) -> float:
    """Give torque [N m] from power [kW] and speed [rpm], which is not 0."""
    return power * 30000 / (speed * math.pi)


def _says(said: str, word: str) -> bool:
    """Tell whether a heading has a word; one of three letters or fewer must stand alone."""
    if len(word) > 3 or not word.isalpha():
        return word in said
    at = said.find(word)
    while at >= 0:
        before, after = said[at - 1 : at], said[at + len(word) : at + len(word) + 1]
        if not before.isalpha() and not after.isalpha():
            return True
        at = said.find(word, at + 1)
    return False


def _middle(values: list[float]) -> float:
    ordered = sorted(values)
    return ordered[len(ordered) // 2] if ordered else 0.0

"""The vector set: the same inputs, made anew each run, for every interpreter the core runs in.

`vectors()` gives (calculation, JSON text) pairs from one seed: every calculation and method over
plausible drives, every admitted number at and past the ends of its range, then the same inputs
spoiled in every way a form or a program can spoil them. No answer is stored: the check is that two
interpreters give the same one.

Left out are texts that are no JSON but that a lenient reader takes for it, and a thousand brackets
in a row: the phone writes its questions itself, with a proper JSON writer.
"""

import json
import math
import random
from collections.abc import Iterator
from typing import Any

from midspan.core.glossary import TERMS

Payload = dict[str, Any]
Vector = tuple[str, str]

SEED = 606
PITCHES_MM = (6.35, 8.0, 9.525, 12.7, 15.875)
METHODS = {
    "elongation": ("pin-to-pin", "inside-and-outside", "inside"),
    "slack": ("total", "one-way", "sag"),
    "crank-rock": ("crank-degrees", "rotor-degrees", "damper-arc", "sprocket-movement"),
}
# A value for each way a single field can be wrong, as JSON text. A number too large for a double
# stands for the ones that are not finite: the tokens NaN and Infinity are no JSON.
WRONG = ('"nine"', "true", "null", "[]", "{}", "1e400", "-1e400", "-1", "1e9", "3.5", "1e30")


def as_text(payload: Any) -> str:
    """JSON as the phone writes it: every letter as it is, none as an escaped pair."""
    return json.dumps(payload, ensure_ascii=False)


def drive(rng: random.Random) -> Payload:
    """A cam drive whose chain goes round it with a little slack, or now and then a little tight."""
    pitch = rng.choice(PITCHES_MM)
    teeth = rng.randint(15, 28)
    links = 2 * round(teeth * rng.uniform(1.27, 1.6))
    centre = pitch * teeth / 2
    for _ in range(20):  # the handbook series, turned round: near enough to be plausible
        curve = (teeth / (2 * math.pi)) ** 2 * pitch / centre
        centre = pitch * (links - 1.5 * teeth - curve) / 2
    centre *= rng.uniform(0.995, 1.0008)
    made: Payload = {
        "pitch_mm": pitch,
        "crank_teeth": teeth,
        "cam_teeth": 2 * teeth,
        "centre_distance_mm": centre,
        "links": links,
    }
    if rng.random() < 0.7:
        made["roller_diameter_mm"] = pitch * 0.6
    if rng.random() < 0.3:
        made["centre_distance_error_mm"] = rng.choice((0, 0.02, 0.2))
    if rng.random() < 0.3:
        made["drive_kind"] = rng.choice(("cam", "general"))
    if rng.random() < 0.3:
        made["centres"] = rng.choice(("fixed", "adjustable"))
    return made


def scatter(rng: random.Random, value: float, spread: float) -> list[float]:
    """One to six readings around a value, rounded as an instrument would."""
    return [max(0.0, round(rng.gauss(value, spread), 2)) for _ in range(rng.choice((1, 2, 3, 6)))]


def with_extras(rng: random.Random, made: Payload, unit: str) -> Payload:
    """Now and then the instrument's own figures and a limit of the user's."""
    if rng.random() < 0.4:
        made[f"resolution_{unit}"] = rng.choice((0.01, 0.1, 0.5))
        made[f"instrument_error_{unit}"] = rng.choice((0, 0.02, 0.25))
    if rng.random() < 0.3:
        made[f"repeatability_{unit}"] = rng.uniform(0, 0.4)
    if rng.random() < 0.3:
        limit: Payload = {"quantity": "elongation_percent", "source": "Handbuch, S. 12 (½ in)"}
        limit |= rng.choice(({"upper": 0.5}, {"lower": 0.01, "upper": 1.5}, {"lower": 0.02}))
        made["own_limit"] = limit
    return made


def elongation(rng: random.Random, method: str) -> Payload:
    """A stretch of chain measured by one of the caliper methods."""
    around = drive(rng)
    pitch, pitches = around["pitch_mm"], rng.randint(4, 20)
    roller = pitch * 0.6
    length = pitch * pitches * (1 + rng.uniform(-0.0005, 0.03))
    made: Payload = {"method": method, "pitches": pitches}
    if rng.random() < 0.5:
        made["drive"] = {**around, "roller_diameter_mm": roller}
    else:
        made |= {"pitch_mm": pitch, "roller_diameter_mm": roller}
    if method == "inside-and-outside":
        made["inside_readings_mm"] = scatter(rng, length - roller, 0.03)
        made["outside_readings_mm"] = scatter(rng, length + roller, 0.03)
    else:
        made["readings_mm"] = scatter(rng, length - (roller if method == "inside" else 0), 0.03)
    return with_extras(rng, made, "mm")


def slack(rng: random.Random, method: str) -> Payload:
    """A strand pushed by hand, or hanging."""
    size = rng.uniform(0.5, 16) / (1 if method == "total" else 2)
    made = {"drive": drive(rng), "method": method, "readings_mm": scatter(rng, size, 0.3)}
    return with_extras(rng, made, "mm")


def crank_rock(rng: random.Random, method: str) -> Payload:
    """The lash felt at the crank, by one of the four ways to read it."""
    unit = "deg" if method.endswith("degrees") else "mm"
    made: Payload = {"drive": drive(rng), "method": method}
    made[f"readings_{unit}"] = scatter(rng, rng.uniform(0.2, 8), 0.3)
    if method == "damper-arc":
        made["damper_diameter_mm"] = rng.uniform(120, 200)
    return with_extras(rng, made, unit)


MAKERS = {"elongation": elongation, "slack": slack, "crank-rock": crank_rock}


def good(rng: random.Random, each: int) -> Iterator[tuple[str, Payload]]:
    """Plausible inputs: `each` of every method, and as many drives."""
    for name, methods in METHODS.items():
        for method in methods:
            for _ in range(each):
                yield name, MAKERS[name](rng, method)
    for _ in range(each):
        yield "drive", {"drive": drive(rng), "curve_points": rng.choice((0, 2, 25))}


def fields(payload: Payload) -> Iterator[tuple[Payload, str]]:
    """Every field of the object and of the objects in it."""
    for name, value in list(payload.items()):
        yield payload, name
        if isinstance(value, dict):
            yield from fields(value)


def spoiled(rng: random.Random, name: str, payload: Payload) -> Iterator[Vector]:
    """The input with one thing wrong: a value, a reading, a missing or an unknown field."""
    count = len(list(fields(payload)))
    for place in range(count):
        copy = json.loads(json.dumps(payload))
        holder, field = list(fields(copy))[place]
        kept = holder.pop(field)
        yield name, as_text(copy)
        holder[field + "x"] = kept
        yield name, as_text(copy)
        del holder[field + "x"]
        holder[field] = "@"
        yield name, as_text(copy).replace('"@"', rng.choice(WRONG))
        if isinstance(kept, list):
            holder[field] = [*kept, "@"]
            yield name, as_text(copy).replace('"@"', rng.choice(WRONG))


def at_the_ends(payload: Payload) -> Iterator[Payload]:
    """The input with one number at an end of its admitted range, or a hair past it."""
    count = len(list(fields(payload)))
    for place in range(count):
        name = list(fields(payload))[place][1]
        if name not in TERMS or TERMS[name].low is None:
            continue
        for end, past in ((TERMS[name].low, -math.inf), (TERMS[name].high, math.inf)):
            step = end + math.copysign(1, past) if TERMS[name].whole else math.nextafter(end, past)
            for value in (end, float(end), step):
                copy = json.loads(json.dumps(payload))
                holder = list(fields(copy))[place][0]
                holder[name] = [value] if isinstance(holder[name], list) else value
                yield copy


def anything(rng: random.Random, depth: int = 0) -> Any:
    """Any JSON value, the awkward ones more often than they deserve."""
    kind = rng.randrange(8 if depth < 3 else 6)
    if kind == 0:
        return rng.choice(
            (None, True, False, 0, -0.0, 22, 22.0, 2**53, 2**53 + 1, -(2**63), 10**30)
        )
    if kind == 1:
        return rng.uniform(-1, 1) * 10.0 ** rng.randint(-300, 300)
    if kind == 2:
        return rng.choice((1e-7, 0.1 + 0.2, 1 / 3, 1e15 + 0.3, 1e16, 123456789.123456789, 1e22))
    if kind == 3:
        return rng.uniform(0, 200)
    if kind in (4, 5):
        return "".join(rng.choice(LETTERS) for _ in range(rng.choice((0, 1, 5, 79, 80, 81, 200))))
    if kind == 6:
        return [anything(rng, depth + 1) for _ in range(rng.randrange(4))]
    keys = [rng.choice(KEYS) for _ in range(rng.randrange(5))]
    return {key: anything(rng, depth + 1) for key in keys}


# Letters of one to four bytes, what JSON must escape, and what a shell or a page would stumble on.
LETTERS = "abz059 .[]{}\"\\/\n\t\x00\x7f<&'äß½°µΔ—漢字\u2028\ufeff\U0001f527"
KEYS = (
    "drive",
    "method",
    "readings_mm",
    "readings_deg",
    "pitch_mm",
    "own_limit",
    "",
    "a.b[0]",
    "ß½",
)


def strange(rng: random.Random, payload: Payload) -> Payload:
    """The input with anything at all in one field, or under one name more."""
    copy = json.loads(json.dumps(payload))
    holder, name = rng.choice(list(fields(copy)))
    if isinstance(holder[name], list) and rng.random() < 0.5:
        holder[name] = [*holder[name], anything(rng)]
    else:
        holder[rng.choice((name, name, name, rng.choice(KEYS)))] = anything(rng)
    return copy


# What no single wrong field brings about.
ODD_DRIVES: tuple[Payload, ...] = (
    {"cam_teeth": 40},
    {"centre_distance_mm": 60.0},
    {"centre_distance_mm": 130.0},
    {"links": 59},
    {"crank_teeth": 21.5},
    {
        "crank_teeth": 9,
        "cam_teeth": 96,
        "drive_kind": "general",
        "centre_distance_mm": 165.0,
        "links": 100,
    },
    {"links": 50},
    {"links": 200},
    {"roller_diameter_mm": 9.6},
    {"centre_distance_mm": 114.155},
    {"drive_kind": "general", "cam_teeth": 96, "centre_distance_mm": 300.0, "links": 130},
    {"drive_kind": "general", "cam_teeth": 22, "centre_distance_mm": 180.0, "links": 60},
)
ODD_TEXTS = ("", "{", "[1, 2", "[]", "3", '"text"', "null", "{}", '{"drive": 3}')
PLAIN_DRIVE: Payload = {
    "pitch_mm": 9.525,
    "crank_teeth": 22,
    "cam_teeth": 44,
    "centre_distance_mm": 114.1,
    "links": 58,
}


def odd() -> Iterator[Vector]:
    """Drives at the edges, broken JSON, lists too long, names that are no calculation."""
    for change in ODD_DRIVES:
        around = {**PLAIN_DRIVE, **change}
        yield "drive", as_text({"drive": around, "curve_points": 5})
        yield "slack", as_text({"drive": around, "method": "total", "readings_mm": [6, 6.5]})
    for name in (*MAKERS, "drive", "limits", "glossary", "describe", "no-such-thing"):
        for text in ODD_TEXTS:
            yield name, text
    long = {"drive": PLAIN_DRIVE, "method": "total"}
    for readings in ([], [5.0] * 50, [5.0] * 51, [100.0], [120.0], [0.0], [0.0, 0.0, 0.0]):
        yield "slack", as_text({**long, "readings_mm": readings})
    for limit in (
        {"lower": 2, "upper": 1},
        {"source": " "},
        {"upper": 3, "quantity": "reading_mm"},
    ):
        own = {"quantity": "movement_mm", "source": "manual", **limit}
        yield "slack", as_text({**long, "readings_mm": [5.0], "own_limit": own})
    chain = {"method": "pin-to-pin", "pitches": 10, "pitch_mm": 9.525}
    yield "elongation", as_text({**chain, "readings_mm": [150.0]})
    clash = {**chain, "pitch_mm": 8.0, "drive": PLAIN_DRIVE, "readings_mm": [95.3]}
    yield "elongation", as_text(clash)


def vectors(each: int = 20) -> list[Vector]:
    """The whole set, the same on every run."""
    rng = random.Random(SEED)  # noqa: S311 - a fixed sequence is the point
    made = list(good(rng, each))
    found = [(name, as_text(payload)) for name, payload in made]
    for name, payload in made[:: max(1, each // 2)]:
        found += spoiled(rng, name, payload)
        found += [(name, as_text(strange(rng, payload))) for _ in range(each)]
    for name, payload in made[::each]:
        found += [(name, as_text(copy)) for copy in at_the_ends(payload)]
    return found + list(odd())

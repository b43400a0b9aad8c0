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
from collections import Counter
from collections.abc import Iterator
from typing import Any

from midspan.core.glossary import TERMS
from plausible import MAKERS, Payload, good

Vector = tuple[str, str]

SEED = 606
EACH = 20  # questions of each maker
# A value for each way a single field can be wrong, as JSON text. A number too large for a double
# stands for the ones that are not finite: the tokens NaN and Infinity are no JSON.
WRONG = ('"nine"', "true", "null", "[]", "{}", "1e400", "-1e400", "-1", "1e9", "3.5", "1e30")


def as_text(payload: Any) -> str:
    """JSON as the phone writes it: every letter as it is, none as an escaped pair."""
    return json.dumps(payload, ensure_ascii=False)


def fields(payload: Payload) -> Iterator[tuple[Payload, str]]:
    """Every field of the object and of the objects in it."""
    for name, value in list(payload.items()):
        yield payload, name
        for inner in value if isinstance(value, list) else [value]:
            if isinstance(inner, dict):
                yield from fields(inner)


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
TABLES = ("limits", "materials", "glossary", "describe")
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
    for name in (*MAKERS, "drive", *TABLES, "no-such-thing"):
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


# Of these one answer costs as much as hundreds of a chain's, or there are hundreds of one kind: one
# in so many is asked. The steps share no divisor with the three or four ways in which a field is
# spoiled, so that all are met.
ONE_IN = {
    "clearance": 13, "rockers": 11, "forecast": 11, "gain": 7, "gain-evidence": 11,
    "pulls-needed": 7, "lift": 7, "compare": 7, "fit": 5, "cam": 5, "dyno-table": 5, "heat": 5,
    "crank-rock": 5, "plan-calendar": 5, "plan-adapted": 5,
}  # fmt: skip


def thinned(found: list[Vector]) -> Iterator[Vector]:
    """Leave out some of what takes long, evenly over all that is asked of it."""
    count: Counter[str] = Counter()
    for name, text in found:
        if count[name] % ONE_IN.get(name, 1) == 0:
            yield name, text
        count[name] += 1


def vectors() -> list[Vector]:
    """The whole set, the same on every run."""
    rng = random.Random(SEED)  # noqa: S311 - a fixed sequence is the point
    made = list(good(rng, EACH))
    found = [(name, as_text(payload)) for name, payload in made]
    for name, payload in made[:: EACH // 2]:
        found += spoiled(rng, name, payload)
        found += [(name, as_text(strange(rng, payload))) for _ in range(EACH)]
    for name, payload in made[::EACH]:
        found += [(name, as_text(copy)) for copy in at_the_ends(payload)]
    return list(thinned(found)) + list(odd())

"""Plausible lift tables, rockers, matrices, clearances and compressions, as `plausible` makes."""

import math
import random
from typing import Any

Payload = dict[str, Any]

METHODS = {
    "lift": ("pasted", "lists"),
    "rockers": ("one lobe", "two lobes"),
    "matrix": ("whole", "with gaps"),
    "clearance": ("drop", "clay"),
    "compression": ("plain",),
}
SEPARATORS = ("\t", ";", ",", " ")


def table(rng: random.Random, centre: float, half: float = 130.0) -> list[tuple[float, float]]:
    """Crank angle and lift over one lobe, read with a dial and a wheel."""
    step = rng.choice((2, 4, 5, 7.5, 10))
    height = rng.uniform(6, 10)
    start = centre - half - rng.uniform(10, 40)
    count = int(2 * (half + 30) / step)
    rows = []
    for i in range(count):
        angle = start + i * step
        seen = angle + rng.gauss(0, 0.2)
        lift = height * max(0.0, math.cos((seen - centre) / half * math.pi / 2)) ** 2
        rows.append((angle, round(lift + rng.gauss(0, 0.01), 2)))
    return rows


def faulty(rng: random.Random, rows: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Now and then a slipped wheel, a dial that sticks, a slip of the pen."""
    kind = rng.randrange(6)
    at = rng.randrange(len(rows) // 4, 3 * len(rows) // 4)
    if kind == 0:
        return rows[:at] + [(a + 3, x) for a, x in rows[at:]]
    if kind == 1:
        return rows[:at] + [(a, rows[at][1]) for a, _ in rows[at : at + 4]] + rows[at + 4 :]
    if kind == 2:
        return [*rows[:at], (rows[at][0], rows[at][1] + 0.5), *rows[at + 1 :]]
    if kind == 3:
        return rows[:at]
    return rows


def lobe(rng: random.Random, centre: float, paste: bool, whole: bool = True) -> Payload:
    """A lobe as the calculations take it."""
    rows = table(rng, centre)
    if not whole:
        rows = faulty(rng, rows)
    wheel = rng.choice(("to-360", "to-180", "continuous"))
    wound = [(turned(a, wheel), x) for a, x in rows]
    made: Payload = {"angle_of": "crank", "wheel": wheel, "lift_of": "lobe"}
    if rng.random() < 0.3:
        made |= {"resolution_mm": 0.01, "repeatability_mm": rng.choice((0.003, 0.01, 0.05))}
    if rng.random() < 0.2:
        made |= {"zero": "elsewhere", "installed_centreline_deg": abs(centre) + 2}
    if paste:
        sign = rng.choice(SEPARATORS)
        comma = sign != "," and rng.random() < 0.5
        lines = [f"{a:.6g}{sign}{x:.2f}" for a, x in wound]
        if comma:
            lines = [line.replace(".", ",") for line in lines]
        if rng.random() < 0.5:
            lines.insert(0, sign.join(("Winkel°", "Hub")))
        if rng.random() < 0.3:
            lines.insert(rng.randrange(len(lines)), rng.choice(("???", "½", '"offen', "12")))
        made |= {"text": "\n".join(lines), "lift_unit": rng.choice(("mm", "mm", "in"))}
    else:
        made["table_angles_deg"] = [a for a, _ in wound]
        made["table_lifts_mm"] = [x for _, x in wound]
    return made


def turned(angle: float, wheel: str) -> float:
    """What the wheel shows."""
    if wheel == "to-360":
        return angle % 360
    return (angle + 180) % 360 - 180 if wheel == "to-180" else angle


def lift(rng: random.Random, method: str) -> Payload:
    """A lift table, whole or with something wrong."""
    valve = rng.choice(("intake", "exhaust"))
    centre = rng.uniform(100, 118) * (1 if valve == "intake" else -1)
    made: Payload = {"valve": valve, "lobe": lobe(rng, centre, method == "pasted", False)}
    if rng.random() < 0.5:
        made["curve_points"] = rng.choice((0, 1, 7))
    if rng.random() < 0.3:
        made["heights_mm"] = [rng.uniform(0.1, 9) for _ in range(rng.randint(1, 4))]
    if rng.random() < 0.3:
        made["smoothing"] = rng.choice(("scatter", "cross-validation"))
    return made


def rocker(rng: random.Random, label: str) -> Payload:
    """A rocker, with or without lash."""
    made: Payload = {"label": label, "rocker_ratio": rng.uniform(1.2, 1.9)}
    if rng.random() < 0.5:
        made["lash_mm"] = rng.choice((0, 0.3, 0.5))
    return made


def rockers(rng: random.Random, method: str) -> Payload:
    """Two or three rockers on one lobe or two."""
    made: Payload = {"rockers": [rocker(rng, f"Nr {i}") for i in range(rng.randint(1, 3))]}
    made["intake"] = lobe(rng, rng.uniform(100, 115), rng.random() < 0.5)
    if method == "two lobes":
        made["exhaust"] = lobe(rng, -rng.uniform(100, 115), False)
        made["keep"] = rng.choice(("overlap", "overlap-middle", "exhaust-closing"))
        made["cams"] = rng.choice(("one", "two"))
    if rng.random() < 0.3:
        made["event_height_mm"] = rng.uniform(0.5, 14)
    made["curve_points"] = rng.choice((0, 1, 5))
    return made


def matrix(rng: random.Random, method: str) -> Payload:
    """Some rockers at some settings."""
    names = [f"Kipphebel {i}" for i in range(rng.randint(1, 4))]
    settings = rng.sample([-8.0, -4.0, 0.0, 2.0, 4.0], rng.randint(1, 4))
    made: Payload = {"rockers": names, "settings_deg": settings}
    made["repeat_baseline"] = rng.random() < 0.5
    if rng.random() < 0.6:
        made |= {"swap_min": rng.choice((0, 30, 90)), "move_min": rng.choice((0, 45, 120))}
    if method == "with gaps":
        cells = [(n, s) for n in names for s in settings][1:]
        made["leave_out"] = [
            {"rocker": n, "left_out_deg": s} for n, s in rng.sample(cells, len(cells) // 3)
        ]
    return made


def clearance(rng: random.Random, method: str) -> Payload:
    """A valve over a piston."""
    valve = rng.choice(("intake", "exhaust"))
    centre = rng.uniform(100, 115) * (1 if valve == "intake" else -1)
    made: Payload = {"valve": valve, "lobe": lobe(rng, centre, rng.random() < 0.5)}
    made["rockers"] = [rocker(rng, f"{i}") for i in range(rng.randint(1, 2))]
    made |= {"method": method, "stroke_mm": rng.uniform(60, 100), "rod_length_mm": 145.0}
    if method == "drop":
        made["drops"] = [
            {"drop_angle_deg": a, "travel_mm": 4.5 + 0.015 * a * a + rng.gauss(0, 0.05)}
            for a in rng.sample(range(-20, 21, 5), rng.randint(1, 6))
        ]
    else:
        made["readings_mm"] = [rng.uniform(1, 4) for _ in range(rng.randint(1, 3))]
    for name, value in (
        ("pin_offset_mm", 1.0), ("valve_axis_deg", 22.0), ("deck_clearance_mm", 1.0),
        ("aluminium_rods", True), ("radial_clearance_mm", 1.3), ("curve_points", 3),
        ("settings_deg", [5.0, -5.0]), ("tdc_plus_minus_deg", 0.4),
    ):  # fmt: skip
        if rng.random() < 0.4:
            made[name] = value
    return made


def compression(rng: random.Random, _method: str) -> Payload:
    """A cylinder shut in."""
    made: Payload = {"stroke_mm": rng.uniform(60, 100), "rod_length_mm": rng.uniform(120, 170)}
    made |= {"static_ratio": rng.uniform(8, 13), "intake_closing_abdc_deg": rng.uniform(30, 80)}
    if rng.random() < 0.5:
        made |= {"exponent": rng.uniform(1.2, 1.35), "inlet_pressure_kpa": rng.uniform(85, 103)}
    if rng.random() < 0.5:
        made |= {"pin_offset_mm": rng.uniform(-2, 2), "closing_plus_minus_deg": 1.5}
    return made


MAKERS = {
    "lift": lift,
    "rockers": rockers,
    "matrix": matrix,
    "clearance": clearance,
    "compression": compression,
}

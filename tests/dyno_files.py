"""Made-up dyno tables, with what went into them."""

import math
import random
from typing import Any

HEADINGS = {
    "en": ("Engine speed (rpm)", "Torque (lbf ft)", "Power (hp)", "Intake temp (F)"),
    "de": ("Drehzahl [1/min]", "Drehmoment [Nm]", "Leistung [kW]", "Lufttemperatur [°C]"),
}
LBF_FT = 1.3558179483314004
HP_KW = 0.745699872


def torque(speed: float) -> float:
    """Torque of the made-up engine [N m]."""
    return 480 + 60 * math.sin((speed - 2500) / 1400)


def rows(low: float = 2500, high: float = 6500, step: float = 20) -> list[tuple[float, float]]:
    """Speed and torque of a pull."""
    count = int((high - low) / step) + 1
    return [(low + i * step, torque(low + i * step)) for i in range(count)]


def written(
    pulls: list[list[tuple[float, float]]], tongue: str = "de", sign: str = ";",
    comma: bool = True, between: str = "",
) -> str:  # fmt: skip
    """A table as a dyno would write it; `between` stands between two pulls."""
    lines = [sign.join(HEADINGS[tongue])]
    for i, pull in enumerate(pulls):
        if i and between == "blank":
            lines.append("")
        elif i and between == "heading":
            lines.append(sign.join(HEADINGS[tongue]))
        for speed, nm in pull:
            kw = nm * speed * math.pi / 30000
            cells = [speed, nm, kw, 24.5]
            if tongue == "en":
                cells = [speed, nm / LBF_FT, kw / HP_KW, 76.1]
            text = sign.join(f"{x:.3f}" for x in cells)
            lines.append(text.replace(".", ",") if comma else text)
    return "\n".join(lines) + "\n"


def noisy(seed: int, count: int) -> list[tuple[float, float]]:
    """Several pulls one after another, up and down as on a roller, with noise."""
    rng = random.Random(seed)  # noqa: S311
    found, speed, rising = [], 2500.0, True
    for _ in range(count):
        speed += rng.uniform(0, 30) if rising else -rng.uniform(20, 120)
        if speed > 6500:
            rising = False
        elif speed < 2500:
            rising = True
        seen = speed + rng.gauss(0, 15)
        found.append((seen, torque(seen) + rng.gauss(0, 4) if rising else -20.0))
    return found


def spoiled(text: str, seed: int, how_many: int) -> tuple[str, int]:
    """The table with some rows nobody can read; and how many there are."""
    rng = random.Random(seed)  # noqa: S311
    lines = text.split("\n")
    body = range(2, len(lines) - 1)
    for at in rng.sample(body, how_many):
        lines[at] = rng.choice(("---;;;", "3000;x;1;2", "99999;1;1;1", "12", "stop", "5e9;1;1;1"))
    return "\n".join(lines), how_many


def close(one: Any, other: Any, path: str = "") -> list[str]:
    """Where two answers differ by more than the last digits of their sums."""
    if isinstance(one, dict) and isinstance(other, dict):
        found = [f"{path}: {set(one) ^ set(other)}"] if set(one) != set(other) else []
        return found + [
            d for k in set(one) & set(other) for d in close(one[k], other[k], f"{path}.{k}")
        ]
    if isinstance(one, list) and isinstance(other, list):
        if len(one) != len(other):
            return [f"{path}: {len(one)} against {len(other)}"]
        return [
            d
            for i, (a, b) in enumerate(zip(one, other, strict=True))
            for d in close(a, b, f"{path}[{i}]")
        ]
    if isinstance(one, float) and isinstance(other, float):
        return (
            []
            if math.isclose(one, other, rel_tol=1e-10, abs_tol=1e-9)
            else [f"{path}: {one} {other}"]
        )
    return [] if one == other else [f"{path}: {one!r} {other!r}"]

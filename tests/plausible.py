"""Plausible inputs of every calculation and method, made at random from a seed."""

import math
import random
from collections.abc import Iterator
from typing import Any

import plausible_compare
import plausible_dyno
import plausible_forecast
import plausible_gain
import plausible_lift
import plausible_setting as setting

Payload = dict[str, Any]

PITCHES_MM = (6.35, 8.0, 9.525, 12.7, 15.875)
METHODS = {
    "elongation": ("pin-to-pin", "inside-and-outside", "inside"),
    "slack": ("total", "one-way", "sag"),
    "crank-rock": ("crank-degrees", "rotor-degrees", "damper-arc", "sprocket-movement"),
    "heat": ("materials", "own figures"),
    "bored": ("measured", "nominal"),
    "gear": ("over-pins", "over-chain"),
    "combined": ("agreeing", "one wrong"),
    "fit": ("cold", "hot"),
    "plan": ("flat", "roller"),
    "plan-adapted": ("flat", "roller"),
    "plan-calendar": ("flat", "roller"),
    "tdc": ("positive-stop", "equal-drop"),
    "cam": ("both-ways", "0-360-up", "0-360-down"),
    "adjust": ("steps", "vernier"),
    "forecast": ("measured", "nothing yet"),
    **plausible_lift.METHODS,
    **plausible_dyno.METHODS,
    **plausible_compare.METHODS,
    **plausible_gain.METHODS,
}
MATERIALS = ("grey-iron", "aluminium-356", "magnesium-az91d", "steel-1040")


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


def window(rng: random.Random, made: Payload) -> Payload:
    """Now and then a wanted movement of one's own."""
    if rng.random() < 0.4:
        made["window_lower_mm"] = rng.uniform(2, 5)
        made["window_upper_mm"] = made["window_lower_mm"] + rng.uniform(0.5, 3)
    return made


def heating(rng: random.Random, method: str) -> Payload:
    """Materials or figures of one's own, and some of the temperatures."""
    made: Payload = {"block_material": rng.choice(MATERIALS)}
    if method == "own figures":
        made = {"expansion_source": "Datenblatt S. 3 (20…100 °C)", "block_expansion_ppm": 21.0}
        made["chain_expansion_ppm"] = rng.uniform(10, 13)
    for part, low, high in (("block", 40, 120), ("gear", 60, 130), ("chain", 60, 130)):
        if rng.random() < 0.6:
            made[f"{part}_temperature_c"] = rng.uniform(low, high)
    if rng.random() < 0.4:
        made["cold_temperature_c"] = rng.uniform(-10, 30)
    for field, most in (
        ("expansion_error_ppm", 3), ("temperature_error_k", 20), ("cold_temperature_error_k", 5)
    ):  # fmt: skip
        # By what was drawn already, so that all else is drawn as it was before there were these.
        own = random.Random(field + repr(made))  # noqa: S311
        if own.random() < 0.2:
            made[field] = own.uniform(0, most)
    return made


def heat(rng: random.Random, method: str) -> Payload:
    """A drive warmed."""
    made = {"drive": drive(rng), **heating(rng, method), "curve_points": rng.choice((0, 1, 5))}
    if rng.random() < 0.7:
        made["movement_mm"] = rng.uniform(0.5, 12)
    if rng.random() < 0.3:
        made["stiffness_n_per_mm"] = rng.uniform(500, 20000)
        made["stiffness_source"] = "measured on a bench"
    own = random.Random(repr(made))  # noqa: S311
    if own.random() < 0.3:
        made["compliance_um_per_kn"] = own.uniform(0, 50)
    if "movement_mm" in made and own.random() < 0.5:
        made["standard_uncertainty_mm"] = own.uniform(0.01, 0.5)
    return window(rng, made)


def bored(rng: random.Random, method: str) -> Payload:
    """Shafts moved by a few tenths."""
    around = drive(rng)
    made = {"drive": around}
    made["new_centre_distance_mm"] = around["centre_distance_mm"] + rng.uniform(-0.4, 0.4)
    if method == "measured":
        made["movement_mm"] = rng.uniform(0.5, 12)
    return window(rng, made)


def gear(rng: random.Random, method: str) -> Payload:
    """A gear read over pins, or over a chain wrapped round it."""
    pitch = rng.choice(PITCHES_MM)
    made: Payload = {"method": method}
    if rng.random() < 0.5:
        around = drive(rng)
        pitch = around["pitch_mm"]
        which = rng.choice(("crank", "cam"))
        made |= {"drive": around, "gear": which}
        teeth = around[f"{which}_teeth"]
    else:
        teeth = rng.choice((18, 21, 36, 42))
        made |= {"teeth": teeth, "pitch_mm": pitch}
    made["pin_diameter_mm" if method == "over-pins" else "roller_diameter_mm"] = pitch * 0.6
    across = pitch / math.sin(math.pi / teeth) + pitch * 0.6 - rng.uniform(0, 0.6)
    made["readings_mm"] = scatter(rng, across, 0.03)
    if rng.random() < 0.3:
        limit = {"quantity": "reading_mm", "lower": round(across, 1), "source": "manual"}
        made["own_limit"] = limit
    return made


def combined(rng: random.Random, method: str) -> Payload:
    """Several readings of about the same slack; in one of the two, one that is not."""
    around = drive(rng)
    movement = rng.uniform(3, 10)
    slack_mm = movement**2 / (1.9 * around["centre_distance_mm"])
    radius = around["pitch_mm"] * around["crank_teeth"] / (2 * math.pi)
    parts: list[Payload] = [
        {"quantity": "movement_mm", "movement_mm": movement, "standard_uncertainty_mm": 0.3},
        {
            "quantity": "crank_rock_deg",
            "crank_rock_deg": math.degrees(slack_mm / radius) * rng.uniform(0.9, 1.1),
            "standard_uncertainty_deg": 0.05,
        },
        {
            "quantity": "elongation_percent",
            "elongation_percent": rng.uniform(0, 0.1),
            "standard_uncertainty_percent": rng.choice((0.01, 0.2)),
        },
        {
            "quantity": "chain_length_mm",
            "chain_length_mm": around["pitch_mm"] * around["links"] * rng.uniform(1, 1.001),
            "standard_uncertainty_mm": rng.choice((0.03, 1.0)),
        },
    ]
    if method == "one wrong":
        one = rng.choice(parts)
        one[one["quantity"]] *= rng.choice((0, 0.5, 2))
        one[one["quantity"]] = max(one[one["quantity"]], 0 if "mm" not in one["quantity"] else 10)
    rng.shuffle(parts)
    return {"drive": around, "measurements": parts[: rng.randint(1, 4)]}


def fit(rng: random.Random, method: str) -> Payload:
    """A shelf with some trials; not everything was tried, and some of it in another block."""
    around = drive(rng)
    chains = [f"chain {i}" for i in range(rng.randint(1, 7))]
    gears = [f"Räder {j}" for j in range(rng.randint(1, 4))]
    trials: list[Payload] = []
    for _ in range(rng.randint(0, 12)):
        one = {"chain": rng.choice(chains), "gear_set": rng.choice(gears)}
        one |= {"movement_mm": max(0.0, round(rng.gauss(6, 3), 2)), "standard_uncertainty_mm": 0.3}
        if rng.random() < 0.2:
            one["centre_distance_mm"] = around["centre_distance_mm"] + 0.05
        trials.append(one)
    made = {"drive": around, "chains": chains, "gear_sets": gears, "trials": trials}
    if rng.random() < 0.6:
        made["bench"] = [
            {"chain": chain, "elongation_percent": rng.uniform(0, 0.1),
             "standard_uncertainty_percent": 0.01}
            for chain in rng.sample(chains, (len(chains) + 1) // 2)
        ]  # fmt: skip
    if rng.random() < 0.5:
        made["gears"] = [
            {"gear_set": rng.choice(gears), "added_excess_mm": rng.uniform(-0.05, 0.3),
             "standard_uncertainty_mm": 0.03}
        ]  # fmt: skip
    if method == "hot":
        made["heat"] = heating(rng, "materials")
    return window(rng, made)


def oil(rng: random.Random) -> Payload:
    """An oil with some of what its can says."""
    made: Payload = {"kind": rng.choice(("mineral", "running-in", "conventional", "synthetic"))}
    if rng.random() < 0.7:
        made["grade"] = rng.choice(("0W-20", "5w30", "10W-40", "SAE 30", "20W-50", "15W", "25W-20"))
    if rng.random() < 0.5:
        made["category"] = rng.choice(("SF", "SM", "SP", "GF-5", "GF-4", "CJ-4", "CK-4"))
    if rng.random() < 0.4:
        made["phosphorus_mg_per_kg"] = rng.uniform(500, 1500)
    if rng.random() < 0.4:
        made["zinc_mg_per_kg"] = rng.uniform(500, 1700)
    return made


def plan(rng: random.Random, method: str) -> Payload:
    """An engine to be run in."""
    made: Payload = {"oil": oil(rng), "follower": method, "rings": rng.choice(("new", "kept"))}
    if rng.random() < 0.6:
        made["movement_mm"] = rng.uniform(0.5, 10)
        made["expanded_uncertainty_mm"] = rng.choice((0, 0.3, 3.0))
    if rng.random() < 0.5:
        made["spring_open_load_n"] = rng.uniform(800, 2000)
    if rng.random() < 0.8:
        use = rng.choice(("distance_per_week_km", "running_per_week_h", "average_speed_km_per_h"))
        made[use] = rng.uniform(1, 100)
    if rng.random() < 0.3:
        made["drain_interval_km"] = rng.uniform(1000, 15000)
    return window(rng, made)


TIMED = ("cam-run-in", "cam-run-in-2", "first-run", "load-cycles", "load-cycles-2")


def log(rng: random.Random) -> list[Payload]:
    """Some of what may happen, in any order."""
    found: list[Payload] = []
    for i in range(rng.randint(0, 9)):
        kind = rng.choice(("done", "cut-short", "skipped", "value", "note", "distance",
                           "oil-changed", "clock", "started", "paused", "re-check"))  # fmt: skip
        one: Payload = {"kind": kind, "at": f"2026-02-{10 + i}T08:{i}0:00.5Z"}
        if kind == "cut-short":
            one |= {"step": rng.choice(TIMED), "run_min": rng.uniform(0, 40)}
            one["reason"] = rng.choice(("noise", "time", "leak"))
        elif kind == "value":
            one |= {"label": "Öldruck", "value_read": rng.uniform(0, 8), "unit": "bar"}
        elif kind == "oil-changed":
            one |= {"oil": oil(rng), "distance_since_start_km": rng.uniform(0, 2000)}
        elif kind in ("distance", "re-check"):
            one["distance_since_start_km"] = rng.uniform(0, 20000)
        else:
            one["step"] = rng.choice((*TIMED, "cool", "prime", "early-drain", "½"))
            one["text"] = rng.choice(("looks good", "Leck, Pumpe"))
        found.append(one)
    return found


def plan_adapted(rng: random.Random, method: str) -> Payload:
    """A plan and what happened."""
    return {"plan": plan(rng, method), "log": log(rng)}


def plan_calendar(rng: random.Random, method: str) -> Payload:
    """A plan, what happened, and the day of its first start."""
    day = f"{rng.choice((1999, 2024, 2026, 2099))}-{rng.randint(1, 12):02}-{rng.randint(1, 30):02}"
    title = rng.choice(("Shop engine", "Größe ½; zwei, drei", "x" * 90))
    return plan_adapted(rng, method) | {
        "started_on": day, "made_at": "2026-02-03T10:00:00Z", "title": title, "id": "p-1",
    }  # fmt: skip


MAKERS = {
    "tdc": setting.tdc,
    "cam": setting.cam,
    "adjust": setting.adjust,
    "elongation": elongation,
    "slack": slack,
    "crank-rock": crank_rock,
    "heat": heat,
    "bored": bored,
    "gear": gear,
    "combined": combined,
    "fit": fit,
    "plan": plan,
    "plan-adapted": plan_adapted,
    "plan-calendar": plan_calendar,
    "forecast": lambda rng, method: plausible_forecast.forecast(rng, method, drive(rng)),
    "spark": plausible_gain.spark,
    "gain": lambda rng, method: plausible_gain.gain(rng, method, drive(rng)),
    **plausible_lift.MAKERS,
    **plausible_dyno.MAKERS,
    **plausible_compare.MAKERS,
}


def good(rng: random.Random, each: int) -> Iterator[tuple[str, Payload]]:
    """Plausible inputs: `each` of every method, and as many drives."""
    for name, methods in METHODS.items():
        for method in methods:
            for _ in range(each):
                yield name, MAKERS[name](rng, method)
    for _ in range(each):
        yield "drive", {"drive": drive(rng), "curve_points": rng.choice((0, 2, 25))}

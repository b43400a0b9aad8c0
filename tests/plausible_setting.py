"""Plausible inputs of the calculations that set a cam, made at random from a seed."""

import random
from typing import Any

Payload = dict[str, Any]

SCALES = ("both-ways", "0-360-up", "0-360-down")
DRIVE = {
    "pitch_mm": 9.525,
    "crank_teeth": 22,
    "cam_teeth": 44,
    "centre_distance_mm": 114.1,
    "links": 58,
}
KINDS = ("holes", "bushings", "keys", "keyways")
UNITS = ("crank-deg", "cam-deg", "mm-at-crank", "mm-at-cam")


def noisy(rng: random.Random, value: float, count: int) -> list[float]:
    """Readings of one place, as a wheel with half degrees shows them."""
    return [round(2 * rng.gauss(value, 0.3)) / 2 for _ in range(count)]


def on_wheel(scale: str, turned: float) -> float:
    """What a wheel round to 360 shows when the crank has turned so far since its zero."""
    return (-turned if scale == "0-360-down" else turned) % 360


def instrument(rng: random.Random, made: Payload) -> Payload:
    """Now and then the wheel's own figures."""
    if rng.random() < 0.4:
        made |= {"resolution_deg": rng.choice((0.25, 0.5, 1.0)), "instrument_error_deg": 0.2}
    if rng.random() < 0.3:
        made |= {"wheel_diameter_mm": rng.uniform(150, 450), "parallax_mm": rng.uniform(0, 1)}
    if rng.random() < 0.3:
        made["repeatability_deg"] = rng.uniform(0, 0.4)
    return made


def tdc(rng: random.Random, method: str) -> Payload:
    """A stop touched from both sides, or equal drop by a dial indicator."""
    scale, half, count = rng.choice(SCALES), rng.uniform(4, 50), rng.choice((1, 2, 3, 5))
    zero = rng.uniform(-3, 3) if scale == "both-ways" else rng.uniform(0, 360)
    made: Payload = {"method": method, "wheel": scale}
    if scale == "both-ways":
        made["before_readings_deg"] = [abs(x) for x in noisy(rng, half - zero, count)]
        made["after_readings_deg"] = [abs(x) for x in noisy(rng, half + zero, count)]
    else:
        for field, at in (("before", zero - half), ("after", zero + half)):
            shown = [on_wheel(scale, x) for x in noisy(rng, at, count)]
            made[f"{field}_readings_deg"] = shown
    if rng.random() < 0.5:
        made |= {"stroke_mm": rng.uniform(60, 110), "rod_length_mm": rng.uniform(120, 170)}
    if rng.random() < 0.3:
        made |= {"depth_error_mm": rng.uniform(0, 0.1), "drop_mm": rng.uniform(0.1, 20)}
    return instrument(rng, made)


def events(rng: random.Random, scale: str, tdc_at: float) -> list[Payload]:
    """Some or all events of a cam, read off the wheel."""
    centre, lasting = rng.uniform(98, 120), rng.uniform(200, 300)
    other, also = rng.uniform(98, 120), rng.uniform(200, 300)
    nose = rng.uniform(20, 50)
    angles = {
        "intake-opens": ("btdc", centre - lasting / 2),
        "intake-closes": ("abdc", centre + lasting / 2),
        "exhaust-opens": ("bbdc", -other - also / 2),
        "exhaust-closes": ("atdc", -other + also / 2),
        "intake-rising": ("atdc", centre - nose),
        "intake-falling": ("atdc", centre + nose),
    }
    if rng.random() < 0.5:
        angles = dict(list(angles.items())[: rng.choice((1, 2, 4))])
    bottom = {"intake": 180, "exhaust": -180}
    found = []
    for name, (reference, at) in angles.items():
        zero = bottom[name.split("-")[0]] if reference.endswith("bdc") else 0
        value = zero - at if reference.startswith("b") else at - zero
        one: Payload = {"event": name}
        count = rng.choice((1, 2, 3))
        if scale == "both-ways":
            one |= {"reference": reference, "angles_deg": noisy(rng, value + tdc_at, count)}
        else:
            turned = at - tdc_at if scale == "0-360-down" else at + tdc_at
            one["angles_deg"] = [on_wheel(scale, x) for x in noisy(rng, turned, count)]
        found.append(one)
    rng.shuffle(found)
    return found


def card(rng: random.Random) -> Payload:
    """Some of what a data sheet says."""
    said: Payload = {
        "intake_opening_btdc_deg": 22.0, "intake_closing_abdc_deg": 58.0,
        "exhaust_opening_bbdc_deg": 61.0, "exhaust_closing_atdc_deg": 19.0,
        "intake_duration_deg": 260.0, "exhaust_duration_deg": 260.0,
        "intake_centreline_deg": 108.0, "exhaust_centreline_deg": 111.0,
        "lobe_separation_cam_deg": 109.5, "advance_deg": 1.5,
    }  # fmt: skip
    kept = {name: said[name] for name in rng.sample(list(said), rng.randint(1, 8))}
    kept |= {"source": "Datenblatt № 4", "checking_at": "tappet"}
    kept["checking_height_mm"] = rng.choice((1.27, 1.0))
    if rng.random() < 0.5:
        kept["tolerance_deg"] = rng.choice((0, 0.5, 1, 2))
    return kept


def cam(rng: random.Random, scale: str) -> Payload:
    """A cam read with this wheel."""
    at = rng.choice((0, 0.75, -1.5)) if scale == "both-ways" else rng.choice((0, 35, 325.5))
    made: Payload = {"wheel": scale, "events": events(rng, scale, at), "tdc_reading_deg": at}
    made |= {"checking_height_mm": rng.choice((0, 0.15, 1.0, 1.27)), "checking_at": "tappet"}
    if rng.random() < 0.7:
        made["tdc_plus_minus_deg"] = rng.uniform(0.1, 0.6)
    if rng.random() < 0.3:
        made |= {"nose_drop_mm": rng.uniform(0.2, 1.5), "dial_error_mm": rng.uniform(0, 0.05)}
    if rng.random() < 0.3:
        made["centreline_by"] = rng.choice(("near-nose", "mid-duration"))
    if rng.random() < 0.6:
        made["card"] = card(rng)
    if rng.random() < 0.5:
        made["cams"] = rng.choice(("one", "two"))
    if rng.random() < 0.4:
        worn = {"elongation_percent": rng.uniform(0, 0.6), "standard_uncertainty_percent": 0.02}
        made["chain"] = {"drive": DRIVE, **worn}
    return instrument(rng, made)


def stepped(rng: random.Random) -> Payload:
    """Holes, bushings, keys or keyways."""
    unit = rng.choice(UNITS)
    size = rng.choice((1.0, 2.0)) if unit.endswith("deg") else 0.254
    one: Payload = {"kind": rng.choice(KINDS), "unit": unit}
    one["steps"] = [i * size for i in range(rng.randint(1, 5))]
    if unit.startswith("mm"):
        one["radius_mm"] = rng.uniform(12, 30)
    if rng.random() < 0.5:
        one["ways"] = rng.choice(("as-listed", "both"))
    if rng.random() < 0.4:
        one["fitted"] = rng.choice(one["steps"])
    return one


def adjust(rng: random.Random, method: str) -> Payload:
    """A cam to be moved by one to three things."""
    lobe = rng.choice(("intake", "exhaust"))
    made: Payload = {"lobe": lobe, "rotation": rng.choice(("clockwise", "anticlockwise"))}
    made[f"{lobe}_centreline_deg"] = round(rng.uniform(95, 130), 1)
    made["target_deg"] = round(rng.uniform(100, 112), 1)
    adjusters = [stepped(rng) for _ in range(rng.randint(1, 2))]
    if method == "vernier":
        vernier: Payload = {"kind": "vernier", "unit": rng.choice(UNITS[:2]), "reach": 8.0}
        if rng.random() < 0.6:
            vernier |= {"mark": 0.5, "fitted": rng.choice((0, -1.5))}
        adjusters = [vernier, *adjusters[1:]]
    if rng.random() < 0.4:
        made["crank_teeth"] = rng.randint(18, 24)
        adjusters.append({"kind": "teeth"})
    made["adjusters"] = adjusters
    if rng.random() < 0.5:
        made |= {"intake_duration_deg": 255.0, "exhaust_duration_deg": 265.0, "cams": "two"}
    if rng.random() < 0.5:
        made |= {"plus_minus_deg": rng.uniform(0, 1), "tdc_plus_minus_deg": rng.uniform(0, 0.6)}
    if rng.random() < 0.5:
        made |= {"tolerance_deg": rng.choice((0, 0.5, 1)), "cam_turns": "opposite"}
    return made

"""What the torsional study is asked from, and the figures assumed where none is given."""

import math
from typing import NamedTuple

from midspan.core.build import Build, take_build
from midspan.core.fields import Form
from midspan.core.instrument import assumption
from midspan.core.limits import MEMORY
from midspan.core.movement import excess_from_movement

from .torsion import LOOK_TURNS, SETTLE_TURNS, Plant, Wave, steps_per_turn

# Where none is given: the order of magnitude for a V8 with a pushrod cam, all from memory,
# unverified; stiffness is within "a few to about 15 kN/mm per span", which is weakly derived too.
ASSUMED = (
    ("vibration_order", 4.5, "Order of the crank's vibration, assumed."),
    ("amplitude_deg", 0.3, "Swing of the crank nose, assumed: some 0.1 to 0.3 deg with a damper."),
    ("cam_inertia_kg_m2", 0.003, "Inertia of cam and gear, assumed."),
    ("strand_stiffness_n_per_mm", 5000.0, "Stiffness of a strand, assumed: 2000 to 15000."),
    ("damping_ratio", 0.1, "Damping of a taut strand, assumed."),
    ("mean_torque_nm", 3.0, "Mean torque of the valve train, assumed."),
    ("pulse_torque_nm", 20.0, "Pulses of the valve train, assumed: tens of N m, reversing."),
    ("pulse_order", 8.0, "Pulses per cam turn, assumed: as many as cylinders."),
)
MAP = (
    ("least_movement_mm", 0.0), ("most_movement_mm", 13.0), ("movements", 8.0),
    ("lowest_speed_rpm", 1000.0), ("highest_speed_rpm", 6500.0), ("speeds", 8.0),
)  # fmt: skip
# Steps of the integration that one request may cost.
MOST_STEPS = 60_000


class Asked(NamedTuple):
    """The study: drive, plant, vibration, and both axes of the map in the user's units."""

    build: Build
    plant: Plant
    waves: tuple[Wave, ...]
    movements: list[float]
    excess: list[float]
    speeds: list[float]
    steps: int
    assumptions: list[dict[str, object]]


def take_torsion(payload: object) -> Asked:
    """Read the input of the study.

    Raises
    ------
    Refused : input that cannot be used, with every problem in it
    """
    form = Form(payload)
    build = take_build(form)
    assumed = []
    figure: dict[str, float] = {}
    for name, value, text in ASSUMED:
        given = form.take_number(name, required=False)
        figure[name] = value if given is None else given
        if given is None:
            assumed.append(assumption(name, value, MEMORY, text))
    for name, value in MAP:
        given = form.take_number(name, required=False)
        figure[name] = value if given is None else given
    form.close()
    for low, high in (("least_movement_mm", "most_movement_mm"),
                      ("lowest_speed_rpm", "highest_speed_rpm")):  # fmt: skip
        if figure[low] >= figure[high]:
            need = f"more than {low}, {figure[low]:g}"
            form.refuse("out-of-order", high, figure[high], need, "Swap them, or widen the map.")
    form.finish()
    assert build is not None  # noqa: S101  (finish raised otherwise)
    plant = _plant(build, figure)
    amplitude = math.radians(figure["amplitude_deg"])
    waves = (Wave(figure["vibration_order"], amplitude, 0.0),)
    movements = _even(figure, "least_movement_mm", "most_movement_mm", "movements")
    rpm = _even(figure, "lowest_speed_rpm", "highest_speed_rpm", "speeds")
    steps = steps_per_turn(plant, waves, rpm[0] * math.pi / 30)
    whole = (SETTLE_TURNS + LOOK_TURNS) * steps
    if whole > MOST_STEPS:
        need = f"a map of at most {MOST_STEPS} steps; this one takes {whole}"
        step = "Start at a higher speed, or take less stiffness or a larger inertia."
        form.refuse("too-costly", "lowest_speed_rpm", figure["lowest_speed_rpm"], need, step)
    form.finish()
    strand = build.geometry.strand
    excess = [excess_from_movement(strand, m) / 1000 for m in movements]
    return Asked(build, plant, waves, movements, excess, rpm, steps, assumed)


def _plant(build: Build, figure: dict[str, float]) -> Plant:
    shape = build.geometry
    inertia = figure["cam_inertia_kg_m2"]
    plant = Plant(
        shape.crank_radius / 1000, shape.cam_radius / 1000, inertia,
        1000 * figure["strand_stiffness_n_per_mm"], 0.0, figure["mean_torque_nm"],
        (Wave(figure["pulse_order"], figure["pulse_torque_nm"], 0.0),),
    )  # fmt: skip
    critical = 2 * math.sqrt(plant.stiffness * plant.mass)
    return plant._replace(damping=figure["damping_ratio"] * critical)


def _even(figure: dict[str, float], low: str, high: str, count: str) -> list[float]:
    number = int(figure[count])
    return [figure[low] + (figure[high] - figure[low]) * i / (number - 1) for i in range(number)]

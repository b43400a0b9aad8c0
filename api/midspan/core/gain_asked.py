"""What an expected gain is asked from: drive, slack, power, heat, friction and evidence."""

from collections import namedtuple

from . import limits
from .build import Build, check_movement, take_build
from .calc_heat import STIFFNESS_N_PER_MM
from .fields import Form
from .gain_fit import Compared
from .heat import hot_excess
from .heating import take_heating
from .hot import change_uncertainty
from .instrument import assumption
from .movement import READING_MM
from .state import elongation_of_movement
from .wanted import take_window

MOST = 40
LONGEST_NAME = 100
# A pin is 3.28 mm thick in a chain of 9.525 mm pitch (published); others are taken in proportion.
PIN_SHARE = 3.28 / 9.525
PIN_SOURCE = "A chain maker's catalogue, p. 88, size 06B-1, d2; other pitches in proportion"

# Where no figure is given; from memory, unverified.
USUAL = (
    ("pin_friction", 0.08, 0.12),
    ("bearing_friction", 0.002, 0.01),
    ("crank_journal_mm", 55.0, 70.0),
    ("cam_journal_mm", 45.0, 52.0),
)
FRICTION = ("pin_friction", "bearing_friction", "crank_journal_mm", "cam_journal_mm",
            "chain_pin_mm", "stiffness_n_per_mm")  # fmt: skip


class Figure(namedtuple("Figure", ("field", "low", "high", "origin", "source"))):
    """A figure that friction rests on: from and to [unit of its field], and where it is from."""

    __slots__ = ()


class Asked(
    namedtuple(
        "Asked",
        (
            "build", "movement", "uncertainty", "window", "power", "speed", "change",
            "change_uncertainty", "figures", "rows", "engine", "points", "assumptions",
        ),
    )
):  # fmt: skip
    """The question: Build, movement now with its standard uncertainty [mm], window (from, to
    [mm], origin), peak power [kW] at speed [1/min], change of excess length from cold to hot with
    its standard uncertainty [mm] (None without heat), Figures by field, Compared rows, engine
    asked about or None, points of the curve, what was assumed.
    """

    __slots__ = ()


def take_gain(form: Form) -> Asked:
    """Read every field of an expected gain's input; what is refused is noted in the form.

    Parameters
    ----------
    form : the input being read

    Returns
    -------
    Asked; of no use before `finish` was called
    """
    assumed: list[dict[str, object]] = []
    build = take_build(form)
    movement = form.take_number("movement_mm")
    reading = form.take_number("standard_uncertainty_mm", required=False)
    if reading is None:
        reading = READING_MM
        text = "Uncertainty of the movement read cold, assumed: none was given."
        assumed.append(assumption("standard_uncertainty_mm", reading, limits.MEMORY, text))
    window = take_window(form)
    power = form.take_number("peak_power_kw")
    speed = form.take_number("peak_speed_rpm")
    heat = form.take_form("heat")
    heating = None
    if heat is not None:
        heating, _ = take_heating(heat, assumed)
        heat.close()
    figures = _take_figures(form, build)
    rows = [_take_row(part) for part in form.take_forms("evidence", MOST, required=False)]
    engine = form.take_text("engine", LONGEST_NAME) if form.has("engine") else None
    points = int(form.take_number("curve_points", required=False) or 0)
    if build is not None:
        check_movement(form, "movement_mm", movement, build.geometry.strand)
        check_movement(form, "window_upper_mm", window[1], build.geometry.strand)
    change, doubt = None, 0.0
    if build is not None and heating is not None and movement is not None and not form.problems:
        elongation = elongation_of_movement(build, movement)
        growth = heating.growth()
        cold = build.drive.links * build.drive.pitch * (1 + elongation) - build.geometry.taut_length
        change = hot_excess(build.drive, growth, elongation) - cold
        doubt = change_uncertainty(build, heating)
        assumed = assumed + build.assumptions
    return Asked(
        build, movement, reading, window, power, speed, change, doubt, figures, rows, engine,
        points, assumed,
    )  # fmt: skip


def _take_figures(form: Form, build: Build | None) -> dict[str, Figure]:
    """Read the figures that friction rests on, or take the usual wide ranges."""
    source = form.take_text("friction_source", 200) if form.has("friction_source") else None
    pitch = 0.0 if build is None else build.drive.pitch
    pin = PIN_SHARE * pitch
    usual = [Figure(name, low, high, limits.MEMORY, "") for name, low, high in USUAL]
    soft, stiff = STIFFNESS_N_PER_MM
    usual.append(Figure("stiffness_n_per_mm", soft, stiff, limits.MEMORY, ""))
    usual.append(Figure("chain_pin_mm", pin, pin, limits.PUBLISHED, PIN_SOURCE))
    found = {}
    for one in usual:
        given = form.take_number(one.field, required=False)
        if given is not None:
            origin = limits.OWN if source else limits.GIVEN
            one = Figure(one.field, given, given, origin, source or "")
        found[one.field] = one
    return found


def _take_row(part: Form) -> Compared:
    """Read one comparison on the dyno."""
    row = Compared(
        part.take_text("engine", LONGEST_NAME),
        part.take_number("from_movement_mm"),
        part.take_number("to_movement_mm"),
        part.take_number("gain_percent"),
        part.take_number("standard_uncertainty_percent"),
    )
    part.close()
    return row

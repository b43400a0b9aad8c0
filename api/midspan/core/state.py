"""The one physical state of a chain on its drive, and all the readings of it."""

from .build import Build
from .drive import Geometry, elongation_of, excess_length, geometry_at
from .movement import excess_from_movement, movement_from_excess, sag_from_excess
from .phase import cam_retard, degrees, rock_from_excess
from .student import coverage_factor
from .uncertainty import Estimate, Interval, direction, rectangular

TYPE_CHECKING = False  # MicroPython has no typing module; type checkers take this as true
if TYPE_CHECKING:
    from collections.abc import Callable

    # Gives the excess length from the reading and the drive at some centre distance.
    Reading = Callable[[float, Geometry], float]


def readings_of(build: Build, shape: Geometry, excess: float) -> dict[str, float]:
    """Give every reading of the state that has this excess length.

    Parameters
    ----------
    build : the drive
    shape : its geometry, at the centre distance meant
    excess : excess length [mm]

    Returns
    -------
    dict by field name, in the units their names carry (mm, percent, degrees)

    Raises
    ------
    none

    Validity
    --------
    As the single conversions; below zero excess nothing moves, hangs or rocks.

    Reference
    ---------
    The conversions in drive, movement and phase.
    """
    straight = _straight(build, shape, excess)
    slack = _slack(shape, excess)
    return {name: straight[name] if name in straight else slack[name] for name in NAMES}


# In the order in which they are told.
NAMES = (
    "excess_mm",
    "elongation_percent",
    "movement_mm",
    "sag_mm",
    "crank_rock_deg",
    "cam_retard_deg",
    "cam_retard_crank_deg",
)
# What only slack can show: nothing moves, hangs or rocks below zero excess.
NEVER_NEGATIVE = ("movement_mm", "sag_mm", "crank_rock_deg")


def _straight(build: Build, shape: Geometry, excess: float) -> dict[str, float]:
    """Give what goes on below zero excess as it does above."""
    elongation = elongation_of(build.drive, shape.taut_length, excess)
    retard = degrees(cam_retard(shape.strand, shape.cam_radius, elongation))
    return {
        "excess_mm": excess,
        "elongation_percent": 100 * elongation,
        "cam_retard_deg": retard,
        "cam_retard_crank_deg": retard * build.drive.cam_teeth / build.drive.crank_teeth,
    }


def _slack(shape: Geometry, excess: float) -> dict[str, float]:
    """Give what only slack can show."""
    return {
        "movement_mm": movement_from_excess(shape.strand, excess),
        "sag_mm": sag_from_excess(shape.strand, excess),
        "crank_rock_deg": degrees(rock_from_excess(shape.crank_radius, excess)),
    }


def state(
    build: Build, quantity: str, reading: Estimate, to_excess: "Reading"
) -> dict[str, Interval]:
    """Turn one measured reading into all readings of the state, each with its interval.

    Both the reading and the centre distance are uncertain. Each quantity is worked out from the
    two together, so that what cancels does cancel: a movement gives an excess length that hardly
    feels the centre distance, while the elongation behind it carries the whole of its error.

    Parameters
    ----------
    build : the drive
    quantity : which of the readings was measured; it is given as measured, not there and back
    reading : the measured value, in the unit `to_excess` takes
    to_excess : gives the excess length [mm] from the reading and a Geometry

    Returns
    -------
    dict of Interval by field name, in the units their names carry

    Raises
    ------
    none

    Validity
    --------
    95 % coverage; the chain's links and pitch taken as exact.

    Reference
    ---------
    JCGM 100:2008 (GUM), 5.1.3; see `uncertainty.propagate`.
    """
    x, u, half = reading.value, reading.uncertainty, reading.expanded
    centre = build.drive.centre_distance
    centre_u = rectangular(build.centre_error)
    expanded = [half, coverage_factor(None) * centre_u]
    # The same few points serve all seven quantities: work each out once.
    known: dict[tuple[float, float], tuple[Geometry, float]] = {}

    def at(x: float, c: float) -> tuple[Geometry, float]:
        found = known.get((x, c))
        if found is None:
            shape = build.geometry
            if c != centre:
                shape = geometry_at(build.drive, shape, c)
            found = known[(x, c)] = (shape, to_excess(x, shape))
        return found

    def straight(x: float, c: float) -> dict[str, float]:
        shape, excess = at(x, c)
        return _straight(build, shape, excess)

    # For each input the readings with it a standard uncertainty above, and below.
    moved = [
        (straight(x + u, centre), straight(x - u, centre)),
        (straight(x, centre + centre_u), straight(x, centre - centre_u)),
    ]

    def way(name: str) -> tuple[float, list[float]]:
        return direction([(up[name] - down[name]) / 2 for up, down in moved], expanded)

    shape, excess = at(x, centre)
    best = _straight(build, shape, excess)
    slack = _slack(shape, excess)
    # What slack alone can show is an image of the excess: its ends lie where those of the excess
    # do. Looked for by itself it would trip over the kink where the slack ends.
    excess_u, steps = way("excess_mm")
    ends = [at(x + k * steps[0], centre + k * steps[1]) for k in (-1, 1)]
    lows, highs = [_slack(shape, excess) for shape, excess in ends]
    reach = (ends[1][1] - ends[0][1]) / 2
    share = excess_u / max(reach, excess_u) if excess_u else 0.0  # 1 / k, but for ends cut off

    def one(name: str) -> Interval:
        if name == quantity:
            low = max(x - half, 0.0) if name in NEVER_NEGATIVE else x - half
            return Interval(x, low, x + half, u)
        if name in slack:
            low, high = lows[name], highs[name]
            return Interval(slack[name], low, high, share * (high - low) / 2)
        spread, steps = way(name)
        low = straight(x - steps[0], centre - steps[1])[name]
        high = straight(x + steps[0], centre + steps[1])[name]
        return Interval(best[name], low, high, spread)

    return {name: one(name) for name in NAMES}


def elongation_of_movement(build: Build, movement: float | None) -> float:
    """Elongation of a chain that moves so far on its drive; none measured is a nominal chain.

    Parameters
    ----------
    build : the drive
    movement : total movement by hand [mm], or None

    Returns
    -------
    elongation as a fraction [1]

    Raises
    ------
    none

    Validity
    --------
    As `movement.excess_from_movement` and `drive.elongation_of`.

    Reference
    ---------
    As these.
    """
    if movement is None:
        return 0.0
    excess = excess_from_movement(build.geometry.strand, movement)
    return elongation_of(build.drive, build.geometry.taut_length, excess)


def excess_of_elongation(build: Build, percent: float, shape: Geometry) -> float:
    """Give the excess length [mm] of a wear elongation in percent."""
    return excess_length(build.drive, shape.taut_length, percent / 100)

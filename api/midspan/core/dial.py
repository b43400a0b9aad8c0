"""How far a dial indicator's error moves an event: by how fast the lift changes there."""

from . import limits
from .cam_checks import pairs
from .instrument import assumption
from .timing import NOSE_DROP_MM
from .valve_events import Event

# Lift per crank degree on the flank and on the ramp, and the lift up to which it is the ramp: from
# memory, unverified.
FLANK_MM, RAMP_MM, RAMP_TO_MM = 0.12, 0.025, 0.25


def dial_angles(
    events: dict[str, Event],
    lift: float | None,
    drop: float | None,
    dial: float,
    assumed: list[dict[str, object]],
) -> dict[str, float]:
    """Give the dial's error at each event as a crank angle [deg].

    Parameters
    ----------
    events : Event by name
    lift : checking height of the opening and closing events [mm], None if there are none
    drop : how far below maximum lift the nose was read [mm], None if not given
    dial : half-width of the dial's error [mm]
    assumed : list that what was assumed is added to

    Returns
    -------
    half-width by event name [deg]

    Raises
    ------
    none

    Validity
    --------
    A nose like a parabola: its lift falls with the square of the angle, so the lift there changes
    by 2 drop / half-angle. Flank and ramp as assumed.

    Reference
    ---------
    Derived; 0.020 in below maximum: starracing.com/MotorcycleCamDegree101.php.
    """
    found = {}
    if lift is not None:
        rate = FLANK_MM if lift > RAMP_TO_MM else RAMP_MM
        text = "Lift per crank degree at the checking height, which weighs the dial's error."
        assumed.append(assumption("lift_rate_mm_per_deg", rate, limits.MEMORY, text))
        found = dict.fromkeys(events, dial / rate)
    near = [pair for pair in pairs(events) if pair.least == 0]
    if near and drop is None:
        text = "Below maximum lift where the nose was read: 0.020 in is published practice "
        text += "(starracing.com, Cam Degree 101). Assumed: none was given."
        assumed.append(assumption("nose_drop_mm", NOSE_DROP_MM, limits.PUBLISHED, text))
    for pair in near:
        half = (pair.last.at - pair.first.at) / 2
        angle = dial * half / (2 * (NOSE_DROP_MM if drop is None else drop))
        found[pair.first.name] = found[pair.last.name] = angle
    return found

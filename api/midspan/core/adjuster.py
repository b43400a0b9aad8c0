"""What a cam can be moved by: verniers, bushings, keys, keyways, holes and whole teeth."""

from collections import namedtuple

from .fields import Form
from .figures import short
from .phase import degrees

KINDS = ("vernier", "holes", "bushings", "keys", "keyways", "teeth")
UNITS = ("crank-deg", "cam-deg", "mm-at-crank", "mm-at-cam")
WAYS = ("as-listed", "both")
SAID_STEPS = 12
MOST_TEETH = 2
# Two positions closer than this are the same step.
SAME = 1e-9
UNIT_STEP = (
    "Look on the part or its box. Published sources do not agree whether such steps are crank or "
    "cam degrees, so none is assumed."
)


class Adjuster(
    namedtuple("Adjuster", ("kind", "unit", "factor", "steps", "fitted", "reach", "mark"))
):
    """One thing to set: kind, unit of its steps, crank degrees per unit, the steps it has (None
    if it can be set anywhere within its reach), what is fitted, its reach and one mark (or None).
    """

    __slots__ = ()


def crank_degrees_per(unit: str, radius: float | None) -> float:
    """Crank degrees that one unit of a step moves the cam by.

    crank degrees 1; cam degrees 2; an offset e at radius R is e/R rad of its own shaft

    Parameters
    ----------
    unit : one of UNITS
    radius : R, of the key or dowel from its shaft's axis, for an offset [mm]

    Returns
    -------
    crank degrees per unit [crank deg]

    Raises
    ------
    none

    Validity
    --------
    Offsets small against the radius; the cam at half the crank's speed.

    Reference
    ---------
    1 cam degree is 2 crank degrees: 73-87chevytrucks.com, How to evaluate an engine timing chain.
    Offset: arc over radius, derived.
    """
    if unit == "crank-deg":
        return 1.0
    if unit == "cam-deg" or radius is None:
        return 2.0
    return degrees(1 / radius) * (1.0 if unit == "mm-at-crank" else 2.0)


def tooth_step(teeth: int) -> float:
    """Crank angle of one tooth of the crank gear, and as much of one of the cam gear.

    360 / z1

    Parameters
    ----------
    teeth : z1, of the crank gear [1]

    Returns
    -------
    angle [crank deg]

    Raises
    ------
    none

    Validity
    --------
    A cam gear of twice the teeth.

    Reference
    ---------
    18 crank degrees on a drive of 20 and 40 teeth: dummett.net, Cam timing.
    """
    return 360 / teeth


def take_adjuster(part: Form, teeth: int | None, counted: bool) -> Adjuster | None:
    """Read one adjuster.

    Parameters
    ----------
    part : the input being read
    teeth : of the crank gear, None if not given or refused [1]
    counted : whether they were given at all

    Returns
    -------
    Adjuster, None after noting what is wrong with it

    Raises
    ------
    none

    Validity
    --------
    Positive steps advance the cam. Teeth: up to two either way.

    Reference
    ---------
    `crank_degrees_per`, `tooth_step`.
    """
    before = len(part.problems)
    kind = part.take_choice("kind", KINDS)
    if kind == "teeth":
        part.close()
        if not counted:
            need = "the teeth of the crank gear, for a step of whole teeth"
            part.refuse("missing", "crank_teeth", None, need, "Count them.")
        if teeth is None:
            return None
        steps = tuple([float(i) for i in range(-MOST_TEETH, MOST_TEETH + 1)])
        return Adjuster(kind, "teeth", tooth_step(teeth), steps, 0.0, None, None)
    unit = _take_unit(part)
    offset = unit in ("mm-at-crank", "mm-at-cam")
    radius = part.take_number("radius_mm", required=offset)
    fitted = part.take_number("fitted", required=False)
    factor = None if unit is None else crank_degrees_per(unit, radius)
    found: tuple[tuple[float, ...] | None, float, float | None, float | None] | None = None
    if kind == "vernier":
        reach = part.take_number("reach")
        mark = part.take_number("mark", required=False)
        at = fitted or 0.0
        if reach is not None and abs(at) > reach:
            need = "within its reach of " + short(reach, 4)
            part.refuse("conflict", "fitted", at, need, "Read the vernier again.")
        found = (None, at, reach, mark)
    elif kind is not None:
        listed = part.take_numbers("steps")
        ways = part.take_choice("ways", WAYS, WAYS[0])
        if listed is not None:
            steps = _distinct(listed + [-x for x in listed if x != 0] if ways == "both" else listed)
            found = (steps, _fitted(part, steps, fitted), None, None)
    part.close()
    if len(part.problems) > before or found is None:
        return None
    return Adjuster(kind, unit, factor, found[0], found[1], found[2], found[3])


def _take_unit(part: Form) -> str | None:
    """Read the unit, which must be stated; say why if it is not."""
    if not part.has("unit"):
        part.refuse("missing", "unit", None, "one of " + ", ".join(UNITS), UNIT_STEP)
        return None
    return part.take_choice("unit", UNITS)


def _distinct(values: list[float]) -> tuple[float, ...]:
    found: list[float] = []
    for value in sorted(values):
        if not found or value - found[-1] > SAME:
            found.append(value)
    return tuple(found)


def _fitted(part: Form, steps: tuple[float, ...], fitted: float | None) -> float:
    """Find the step that is fitted among those there are; zero if it is one and none is named."""
    at = 0.0 if fitted is None else fitted
    near = [x for x in steps if abs(x - at) <= SAME]
    if near:
        return near[0]
    need = "one of the steps: " + ", ".join([short(x, 4) for x in steps[:SAID_STEPS]])
    part.refuse("conflict", "fitted", fitted, need, "Say which one is fitted now.")
    return at

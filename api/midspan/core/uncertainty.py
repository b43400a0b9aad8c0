"""From repeated readings to an estimate with its expanded uncertainty, in the GUM's way."""

import math
from collections import namedtuple

from .student import ENDLESS, NORMAL_95, coverage_factor

TYPE_CHECKING = False  # MicroPython has no typing module; type checkers take this as true
if TYPE_CHECKING:
    from collections.abc import Callable


class Component(namedtuple("Component", ("name", "kind", "uncertainty", "dof", "origin"))):
    """A line of the uncertainty budget: kind "A" or "B", its standard uncertainty in the unit
    of the result, degrees of freedom (None is infinite), and where the figure comes from.
    """

    __slots__ = ()


class Estimate(namedtuple("Estimate", ("value", "uncertainty", "dof", "factor", "expanded"))):
    """A measured value: value, standard uncertainty u, effective degrees of freedom (None is
    infinite), coverage factor k, expanded uncertainty U = k u for 95 % coverage.
    """

    __slots__ = ()


class Interval(namedtuple("Interval", ("value", "low", "high", "uncertainty"))):
    """A derived value with its 95 % interval, which need not be symmetric, and its u."""

    __slots__ = ()


def interval(value: float, uncertainty: float) -> Interval:
    """Give a value with its 95 % interval.

    Parameters
    ----------
    value, uncertainty : best estimate and its standard uncertainty [any unit]

    Returns
    -------
    Interval, normal, in units of its value

    Raises
    ------
    none

    Validity
    --------
    Many degrees of freedom.

    Reference
    ---------
    JCGM 100:2008 (GUM), 6.2 and G.1.3.
    """
    half = NORMAL_95 * uncertainty
    return Interval(value, value - half, value + half, uncertainty)


def interval_of(estimate: Estimate) -> Interval:
    """Give an estimate as its 95 % interval, symmetric about its value.

    y - U to y + U

    Parameters
    ----------
    estimate : value y, expanded uncertainty U [any unit]

    Returns
    -------
    Interval, in units of its value

    Raises
    ------
    none

    Validity
    --------
    As the estimate's own coverage factor.

    Reference
    ---------
    JCGM 100:2008 (GUM), 6.2.
    """
    value, half = estimate.value, estimate.expanded
    return Interval(value, value - half, value + half, estimate.uncertainty)


def mean(values: list[float]) -> float:
    """Arithmetic mean of one or more values, in their unit.

    Taken from the first value on, so that equal readings give exactly that reading.
    """
    first = values[0]
    return first + sum([x - first for x in values]) / len(values)


def sample_deviation(values: list[float]) -> float:
    """Experimental standard deviation of two or more values, in their unit.

    s = sqrt(sum (x_i - mean)^2 / (N - 1))

    Parameters
    ----------
    values : repeated readings of one quantity [any unit], two or more

    Returns
    -------
    standard deviation of one reading [the same unit]

    Raises
    ------
    ZeroDivisionError : fewer than two values

    Validity
    --------
    Independent readings: gauge taken off and set again between them.

    Reference
    ---------
    JCGM 100:2008 (GUM), 4.2.2, formula (4).
    """
    centre = mean(values)
    return math.sqrt(sum([(x - centre) ** 2 for x in values]) / (len(values) - 1))


def rectangular(half_width: float) -> float:
    """Standard uncertainty of a value known only to lie within plus or minus a half-width.

    u = a / sqrt(3)

    Parameters
    ----------
    half_width : a [any unit]

    Returns
    -------
    standard uncertainty [the same unit]

    Raises
    ------
    none

    Validity
    --------
    Every value in the range equally likely. The resolution q of a display is a = q / 2.

    Reference
    ---------
    JCGM 100:2008 (GUM), 4.3.7 and F.2.2.1.
    """
    return half_width / math.sqrt(3)


def repeat_component(
    values: list[float], single_deviation: float, origin: str, name: str, weight: float = 1.0
) -> Component:
    """Scatter of the readings: Type A from their own spread, or, for one reading, an assumed one.

    u = s / sqrt(N)

    Parameters
    ----------
    values : the readings [any unit]
    single_deviation : standard deviation of one reading, used when there is one only [same unit]
    origin : where single_deviation comes from
    name : name of the line in the budget
    weight : sensitivity of the result to the mean of these readings [1]

    Returns
    -------
    Component, its uncertainty in the unit of the result

    Raises
    ------
    none

    Validity
    --------
    Two readings say little of their spread; Student's factor then widens the interval honestly.

    Reference
    ---------
    JCGM 100:2008 (GUM), 4.2.3 and 4.3.
    """
    count = len(values)
    if count == 1:
        return Component(name, "B", weight * single_deviation, None, origin)
    deviation = weight * sample_deviation(values) / math.sqrt(count)
    return Component(name, "A", deviation, count - 1, "the readings themselves")


def combine(value: float, components: list[Component]) -> Estimate:
    """Combine independent components into one estimate.

    u_c^2 = sum u_i^2;  nu_eff = u_c^4 / sum (u_i^4 / nu_i), cut down to a whole number;  U = k u_c

    Parameters
    ----------
    value : best estimate [any unit]
    components : lines of the budget, in the same unit

    Returns
    -------
    Estimate

    Raises
    ------
    none

    Validity
    --------
    Components independent of each other; more than 1000 degrees of freedom count as infinite.

    Reference
    ---------
    JCGM 100:2008 (GUM), 5.1.2, G.4.1 formula (G.2b), G.6.4.
    """
    u = math.sqrt(sum([c.uncertainty**2 for c in components]))
    # As fractions of u, so that readings near the ends of their range cannot under- or overflow.
    limited = [(c.uncertainty / u) ** 4 / c.dof for c in components if c.dof is not None and u > 0]
    spread = sum(limited)
    dof = None
    if spread > 1.0 / ENDLESS:
        # The tiny lift keeps an exact whole number from being cut to the one below it.
        dof = max(1, int(1 / spread * (1 + 1e-12)))
    factor = coverage_factor(dof)
    return Estimate(value, u, dof, factor, factor * u)


def steepest(
    function: "Callable[[list[float]], float]", inputs: list[tuple[float, float, float]]
) -> tuple[float, list[float]]:
    """Find the standard uncertainty of a result and how far to move each input for its ends.

    Z_i = (f(.., x_i + u_i, ..) - f(.., x_i - u_i, ..)) / 2;  u = sqrt(sum Z_i^2);
    d_i = U_i Z_i / u

    Parameters
    ----------
    function : takes the list of input values, gives the result
    inputs : for each input its value, standard and expanded uncertainty [its unit]

    Returns
    -------
    standard uncertainty [unit of the result] and the steps d_i [unit of each input]

    Raises
    ------
    whatever the function raises

    Validity
    --------
    As `propagate`.

    Reference
    ---------
    As `propagate`.
    """
    values = [x for x, _, _ in inputs]
    changes = []
    for i in range(len(inputs)):
        x, u, _ = inputs[i]
        values[i] = x + u
        upper = function(values)
        values[i] = x - u
        lower = function(values)
        values[i] = x
        changes.append((upper - lower) / 2)
    return direction(changes, [expanded for _, _, expanded in inputs])


def direction(changes: list[float], expanded: list[float]) -> tuple[float, list[float]]:
    """Find which way to move the inputs for the ends of a result, and how far.

    u = sqrt(sum Z_i^2);  d_i = U_i Z_i / u

    Parameters
    ----------
    changes : Z_i, what the standard uncertainty of each input makes of the result [its unit]
    expanded : U_i, expanded uncertainty of each input [unit of the input]

    Returns
    -------
    standard uncertainty [unit of the result] and the steps d_i [unit of each input]

    Raises
    ------
    none

    Validity
    --------
    As `propagate`.

    Reference
    ---------
    As `propagate`.
    """
    total = math.sqrt(sum([z * z for z in changes]))
    if total == 0:
        return 0.0, [0.0 for _ in changes]
    return total, [far * z / total for far, z in zip(expanded, changes)]


def propagate(
    function: "Callable[[list[float]], float]", inputs: list[tuple[float, float, float]]
) -> Interval:
    """Carry the uncertainty of independent inputs through a function.

    Z_i = (f(.., x_i + u_i, ..) - f(.., x_i - u_i, ..)) / 2;  u = sqrt(sum Z_i^2)

    The ends of the interval are the function at x_i + U_i Z_i / u and at x_i - U_i Z_i / u: all
    inputs moved together along the direction in which the result changes most. For a straight
    function that is plus and minus the expanded uncertainty; for one input and a monotone
    function it maps the input's interval exactly, however curved the function.

    Parameters
    ----------
    function : takes the list of input values, gives the result
    inputs : for each input its value, standard and expanded uncertainty [its unit]

    Returns
    -------
    Interval, in the unit of the result

    Raises
    ------
    whatever the function raises

    Validity
    --------
    Independent inputs; the function steady (monotone) in each of them over its interval.

    Reference
    ---------
    JCGM 100:2008 (GUM), 5.1.3 NOTE 2; the ends are our extension of it, since mid-span movement
    grows as a square root and a symmetric interval would reach below zero.
    """
    centre = [x for x, _, _ in inputs]
    total, steps = steepest(function, inputs)
    low = function([x - step for x, step in zip(centre, steps)])
    high = function([x + step for x, step in zip(centre, steps)])
    return Interval(function(centre), low, high, total)

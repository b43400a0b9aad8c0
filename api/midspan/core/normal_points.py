"""Evenly spread points, normal and in the cube, the same for every interpreter and every run."""

import math

# One prime for each of four dimensions; the first points of the sequence lie badly.
PRIMES = (2, 3, 5, 7)
SKIPPED = 20


def normal_quantile(probability: float) -> float:
    """Standard normal quantile.

    A start by Tukey's lambda, then Halley's method on the distribution function.

    Parameters
    ----------
    probability : strictly between 0 and 1 [1]

    Returns
    -------
    z with Phi(z) = probability [1]

    Raises
    ------
    none

    Validity
    --------
    To 1e-13 between 1e-6 and 1 - 1e-6.

    Reference
    ---------
    Halley's method; checked against Python's statistics.NormalDist.
    """
    z = (probability**0.135 - (1 - probability) ** 0.135) / 0.1975
    for _ in range(4):
        off = 0.5 * math.erfc(-z / math.sqrt(2)) - probability
        step = off * math.sqrt(2 * math.pi) * math.exp(z * z / 2)
        z -= step / (1 + z * step / 2)
    return float(z)


def normal_points(count: int) -> list[list[float]]:
    """Points that spread like independent standard normals in four dimensions, but evenly.

    u = digits of i in base 2, 3, 5 and 7, mirrored at the point; z = Phi^-1(u)

    Parameters
    ----------
    count : how many points

    Returns
    -------
    list of lists of four [1]

    Raises
    ------
    none

    Validity
    --------
    For integrals of smooth functions; error falls nearly as 1 / count.

    Reference
    ---------
    Halton, Numerische Mathematik 2 (1960) 84, from memory, unverified; moments checked.
    """
    last = count + SKIPPED
    return [
        [normal_quantile(_mirrored(i, prime)) for prime in PRIMES]
        for i in range(SKIPPED + 1, last + 1)
    ]


def _mirrored(index: int, base: int) -> float:
    found, weight = 0.0, 1.0 / base
    while index:
        found += (index % base) * weight
        index //= base
        weight /= base
    return found


_known: dict[int, list[list[float]]] = {}


def kept_points(count: int) -> list[list[float]]:
    """Give `normal_points`, worked out once: they take longer than what is done with them."""
    if count not in _known:
        _known[count] = normal_points(count)
    return _known[count]


def even_points(count: int, dimensions: int) -> list[list[float]]:
    """Give points that fill the unit cube evenly, the same for every interpreter.

    u_j = fraction of (1/2 + i / g^(j + 1)), g the root of g^(d + 1) = g + 1

    Parameters
    ----------
    count : how many
    dimensions : d

    Returns
    -------
    list of lists of numbers above 0 and below 1 [1]

    Raises
    ------
    none

    Validity
    --------
    For integrals of smooth functions.

    Reference
    ---------
    Additive recurrence with the generalised golden ratio, from memory, unverified; moments checked.
    """
    g = 2.0
    for _ in range(60):
        g = (1 + g) ** (1 / (dimensions + 1))
    found = []
    for i in range(1, count + 1):
        row = []
        for j in range(dimensions):
            at = 0.5 + i / g ** (j + 1)
            row.append(min(max(at - math.floor(at), 1e-9), 1 - 1e-9))
        found.append(row)
    return found

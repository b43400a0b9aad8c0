"""Several readings of one chain on one drive, put into one estimate of its excess length."""

import math
from collections import namedtuple

from .algebra import inverse, times


class Part(namedtuple("Part", ("excess", "uncertainty", "on_centre"))):
    """One reading as excess length [mm], its standard uncertainty [mm], and whether it was
    worked out with the centre distance, so that an error there shifts it.
    """

    __slots__ = ()


class Combined(
    namedtuple(
        "Combined",
        ("excess", "uncertainty", "nominal_excess", "nominal_uncertainty", "chi_square", "dof"),
    )
):
    """Estimate of the excess length and its standard uncertainty; the same for the excess length
    that the chain would have at exactly the stated centre distance, which is what its elongation
    follows [mm]; weighted sum of squared residuals and its degrees of freedom.
    """

    __slots__ = ()


def combine_parts(parts: list[Part], centre_uncertainty: float) -> Combined:
    """Combine readings of one excess length, some of which share an error of the drive.

    Least squares for the excess e and the drive's own error c: a part reads e, or e + c; and c
    reads zero with the given uncertainty.

    Parameters
    ----------
    parts : one or more readings
    centre_uncertainty : standard uncertainty of the taut length by the centre distance [mm]

    Returns
    -------
    Combined

    Raises
    ------
    none

    Validity
    --------
    Readings independent but for the shared centre distance; uncertainties known.

    Reference
    ---------
    Weighted mean and chi-square consistency, generalised to one shared error; JCGM 100:2008
    (GUM), 5.2 for the correlation, H.3 for least squares.
    """
    matrix = [[0.0, 0.0], [0.0, 1 / centre_uncertainty**2]]
    vector = [0.0, 0.0]
    for part in parts:
        weight = 1 / part.uncertainty**2
        row = (1.0, 1.0 if part.on_centre else 0.0)
        for i in (0, 1):
            vector[i] += weight * row[i] * part.excess
            for k in (0, 1):
                matrix[i][k] += weight * row[i] * row[k]
    covariance = inverse(matrix)
    excess, shift = times(covariance, vector)
    total = (shift / centre_uncertainty) ** 2
    for part in parts:
        fitted = excess + (shift if part.on_centre else 0.0)
        total += ((part.excess - fitted) / part.uncertainty) ** 2
    both = covariance[0][0] + covariance[1][1] + 2 * covariance[0][1]
    return Combined(
        excess,
        math.sqrt(covariance[0][0]),
        excess + shift,
        math.sqrt(both),
        total,
        len(parts) - 1,
    )


def odd_one_out(parts: list[Part], centre_uncertainty: float) -> int | None:
    """Find the reading without which the others agree best.

    Parameters
    ----------
    parts : three or more readings
    centre_uncertainty : as for `combine_parts` [mm]

    Returns
    -------
    its index, or None with fewer than three readings, where two that differ look alike

    Raises
    ------
    none

    Validity
    --------
    At most one reading is wrong.

    Reference
    ---------
    Leave-one-out on the chi-square of `combine_parts`.
    """
    if len(parts) < 3:
        return None
    rest = [
        combine_parts(parts[:k] + parts[k + 1 :], centre_uncertainty).chi_square
        for k in range(len(parts))
    ]
    return rest.index(min(rest))

"""The little linear algebra that the phone needs too: a symmetric matrix, solved by Cholesky."""

import math


def triangle(matrix: list[list[float]]) -> list[list[float]]:
    """Lower triangle L of a symmetric positive definite matrix, by Cholesky.

    A = L L^T

    Parameters
    ----------
    matrix : square, symmetric, positive definite; may be empty [any unit]

    Returns
    -------
    L [root of that unit]

    Raises
    ------
    ValueError : not positive definite

    Validity
    --------
    As `inverse`.

    Reference
    ---------
    As `inverse`.
    """
    size = len(matrix)
    lower = [[0.0] * size for _ in range(size)]
    for i in range(size):
        for k in range(i + 1):
            left = matrix[i][k] - sum([lower[i][m] * lower[k][m] for m in range(k)])
            if i == k:
                if not left > 0:  # not a number is not positive either
                    raise ValueError("matrix is not positive definite")
                lower[i][i] = math.sqrt(left)
            else:
                lower[i][k] = left / lower[k][k]
    return lower


def inverse(matrix: list[list[float]]) -> list[list[float]]:
    """Inverse of a symmetric positive definite matrix.

    A = L L^T;  A^-1 = L^-T L^-1

    Parameters
    ----------
    matrix : square, symmetric, positive definite; may be empty [any unit]

    Returns
    -------
    its inverse [one over that unit]

    Raises
    ------
    ValueError : not positive definite

    Validity
    --------
    Small matrices; sizes of a shelf, up to some dozens.

    Reference
    ---------
    Cholesky decomposition; checked against numpy.
    """
    size = len(matrix)
    lower = triangle(matrix)
    # Columns of L^-1, then their products.
    solved = [[0.0] * size for _ in range(size)]
    for c in range(size):
        for i in range(c, size):
            right = 1.0 if i == c else 0.0
            right -= sum([lower[i][m] * solved[m][c] for m in range(c, i)])
            solved[i][c] = right / lower[i][i]
    return [
        [sum([solved[m][i] * solved[m][k] for m in range(max(i, k), size)]) for k in range(size)]
        for i in range(size)
    ]


def times(matrix: list[list[float]], vector: list[float]) -> list[float]:
    """Product of a matrix and a vector."""
    return [sum([a * x for a, x in zip(row, vector)]) for row in matrix]

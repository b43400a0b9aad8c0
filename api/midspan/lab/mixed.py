"""A setting fitted several times: runs scatter, and every fitting adds an offset of its own."""

from collections import namedtuple
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import numpy as np

    Array = np.ndarray[Any, np.dtype[np.float64]]
    Whole = np.ndarray[Any, np.dtype[Any]]

# Variance of fittings over variance of runs: between nothing and far beyond anything met.
MOST = 1e4


class Mixed(
    namedtuple("Mixed", ("effects", "covariance", "of_fitting", "of_run", "slopes", "information"))
):
    """A linear mixed model fitted by REML.

    `effects`, `covariance` : fixed effects and their covariance [unit of the figures, squared]
    `of_fitting`, `of_run` : variance between fittings and between runs of one fitting
    `slopes` : change of the covariance with each of the two variances
    `information` : expected REML information of the two variances, what Satterthwaite's rests on
    """

    __slots__ = ()


def fit_mixed(figures: "Array", fixed: "Array", groups: "Whole") -> Mixed:
    """Fit y = X b + Z u + e, u and e normal and independent, by restricted maximum likelihood.

    Parameters
    ----------
    figures : y, one for each run [any unit]
    fixed : X, settings and drift, of full rank
    groups : number of the fitting that each run belongs to

    Returns
    -------
    Mixed
    """
    import numpy as np
    from scipy.optimize import minimize_scalar

    ones = (groups[:, None] == np.unique(groups)[None, :]).astype(float)
    alike = ones @ ones.T
    count, columns = fixed.shape

    # Rotated so that what no fixed effect explains is independent, whatever the ratio.
    rest = np.linalg.qr(fixed, mode="complete")[0][:, columns:]
    sizes, turned = np.linalg.eigh(rest.T @ alike @ rest)
    squared = (turned.T @ (rest.T @ figures)) ** 2

    def cost(root: float) -> float:
        scaled = 1 + root * root * sizes
        return float(np.log(scaled).sum() + (count - columns) * np.log((squared / scaled).sum()))

    # Over the root, near which the cost is even where nothing lies between fittings.
    roots = [0.0]
    for most in (MOST**0.5, 5.0):
        at = minimize_scalar(cost, bounds=(0.0, most), method="bounded", options={"xatol": 1e-8})
        roots.append(float(at.x))
    best = min(roots, key=cost) ** 2
    inverse = np.linalg.inv(np.eye(count) + best * alike)
    inner = np.linalg.inv(fixed.T @ inverse @ fixed)
    projected = inverse - inverse @ fixed @ inner @ fixed.T @ inverse
    squares = float(figures @ projected @ figures)
    of_run = squares / (count - columns)
    # P of the true variances, and its products with the derivatives of V: Z Z' and the identity.
    by = [projected @ alike / of_run, projected / of_run]
    information = np.array([[0.5 * np.trace(a @ b) for b in by] for a in by])
    weight = inner @ fixed.T @ inverse
    slopes = [weight @ alike @ weight.T, weight @ weight.T]
    return Mixed(
        weight @ figures, of_run * inner, best * of_run, of_run, slopes, information
    )  # fmt: skip


def contrast(found: Mixed, weights: "Array", least: int) -> tuple[float, float, float]:
    """Give a contrast of the effects, its standard error, and Satterthwaite's degrees of freedom.

    nu = 2 v^2 / (g' I^-1 g), v its variance and g the slopes of that over the two variances.
    Where nothing shows between fittings it is too small; fittings less settings are there anyway.

    Parameters
    ----------
    found : the model
    weights : of each fixed effect
    least : fittings less settings and drift
    """
    import numpy as np

    variance = float(weights @ found.covariance @ weights)
    slope = np.array([weights @ part @ weights for part in found.slopes])
    spread = float(slope @ np.linalg.solve(found.information, slope))
    dof = max(2 * variance**2 / spread, float(least), 1.0)
    return float(weights @ found.effects), variance**0.5, dof

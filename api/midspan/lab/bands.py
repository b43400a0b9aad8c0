"""Bands about curves: at each speed, and over all speeds at once."""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import numpy as np

    Array = np.ndarray[Any, np.dtype[np.float64]]

DRAWS = 1000
# Draws of the scatter for each of those. More degrees of freedom than this make hardly a narrower
# band, and take longer.
MOST_DRAWN = 30
SEED = 1717


def banded(lines: "Array", design: "Array", keys: list[str], reference: str) -> dict[str, Any]:
    """Fit a level of every setting at every speed, and put bands about levels and differences.

    Parameters
    ----------
    lines : a row for each run, a column for each speed [any unit]
    design : the runs' fixed effects: settings in the order of `keys`, and maybe the drift
    keys : settings
    reference : the one that the others are held against

    Returns
    -------
    dict: degrees_of_freedom; both factors of the standard error, 0 where nothing tells the scatter;
    settings and differences, each with mean and the ends of both bands
    """
    import numpy as np
    from scipy.stats import t as student

    inner = np.linalg.inv(design.T @ design)
    effects = inner @ design.T @ lines
    rests = lines - design @ effects
    dof = len(lines) - design.shape[1]
    spread = np.sqrt((rests**2).sum(axis=0) / dof) if dof > 0 else None
    near = float(student.ppf(0.975, dof)) if dof > 0 else 0.0
    wide = wide_factor(rests, dof) if dof > 0 else 0.0

    def shown(weights: "Array") -> dict[str, Any]:
        mean = weights @ effects
        row: dict[str, Any] = {"mean": mean.tolist()}
        names = ("lower_95", "upper_95", "lower_all_95", "upper_all_95")
        if spread is None:
            return row | dict.fromkeys(names)
        error = spread * np.sqrt(weights @ inner @ weights)
        ends = (mean - near * error, mean + near * error, mean - wide * error, mean + wide * error)
        return row | {name: end.tolist() for name, end in zip(names, ends, strict=True)}

    def unit(key: str) -> "Array":
        return np.array([float(i == keys.index(key)) for i in range(design.shape[1])])

    others = [key for key in keys if key != reference]
    level = unit(reference) @ effects
    return {
        "degrees_of_freedom": max(dof, 0),
        "pointwise_factor": near,
        "all_speeds_factor": wide,
        "settings": [{"setting": key, "torque_nm": shown(unit(key))} for key in keys],
        "differences": [
            {
                "from_setting": reference,
                "to_setting": key,
                "torque_nm": shown(unit(key) - unit(reference)),
                "reference_nm": level.tolist(),
            }
            for key in others
        ],
    }


def wide_factor(rests: "Array", dof: int) -> float:
    """Factor of the standard error within which all speeds lie at once, 95 times in 100.

    The largest of |t| over the speeds, drawn with the correlation between speeds that the runs
    show, part of it taken as independent because few runs show it badly; never more than
    Bonferroni's.

    Parameters
    ----------
    rests : what the fit leaves of each run at each speed
    dof : its degrees of freedom, 1 or more
    """
    import numpy as np
    from scipy.stats import t as student

    count = rests.shape[1]
    size = np.sqrt((rests**2).sum(axis=0))
    size[size == 0] = 1.0
    shape = rests / size
    share = 1 / (dof + 1)
    rng = np.random.default_rng(SEED)
    rows = len(rests)

    def noise(runs: int) -> "Array":
        alike = rng.standard_normal((runs, rows)) @ shape
        alone = rng.standard_normal((runs, count))
        mixed: Array = (1 - share) ** 0.5 * alike + share**0.5 * alone
        return mixed

    over = noise(DRAWS)
    under = np.zeros((DRAWS, count))
    drawn = min(dof, MOST_DRAWN)
    for _ in range(drawn):
        under += noise(DRAWS) ** 2
    largest = np.abs(over / np.sqrt(under / drawn)).max(axis=1)
    factor = float(np.quantile(largest, 0.95))
    at_one = float(student.ppf(0.975, dof))
    return min(max(factor, at_one), float(student.ppf(1 - 0.025 / count, dof)))

"""Whether a value with its uncertainty meets a limit: the guard-band decision."""

from .limits import TOO_LOOSE_MM, TOO_TIGHT_MM, WANTED_FROM_MM, WANTED_TO_MM

ZONES = ("too-tight", "tight", "wanted", "loose", "too-loose")


def judge(
    low: float, high: float, lower: float | None, upper: float | None, upper_to: float | None = None
) -> str:
    """Hold a 95 % interval against a limit, with a guard band as wide as the interval's half.

    Parameters
    ----------
    low, high : ends of the 95 % coverage interval [unit of the limit]
    lower, upper : the limit; None where there is none [same unit]
    upper_to : upper end of an upper limit printed as a range [same unit]

    Returns
    -------
    "within" : the whole interval meets the limit
    "below" : the whole interval lies under the lower limit
    "beyond" : the whole interval lies over the upper limit
    "too-close" : the interval holds a limit, or lies in the printed range of one

    Raises
    ------
    none

    Validity
    --------
    "within" and "beyond" are each wrong at most once in forty times if the interval is right.

    Reference
    ---------
    JCGM 106:2012, 8.3, guarded acceptance and rejection with w = U; ISO 14253-1 decision rule.
    """
    if lower is not None and high < lower:
        return "below"
    last = upper if upper_to is None else upper_to
    if last is not None and low > last:
        return "beyond"
    if (lower is None or low >= lower) and (upper is None or high <= upper):
        return "within"
    return "too-close"


def zone(movement: float) -> str:
    """Name the zone of the trade's slack window that a total movement lies in.

    Parameters
    ----------
    movement : total mid-span movement, hand-pushed [mm]

    Returns
    -------
    one of ZONES

    Raises
    ------
    none

    Validity
    --------
    Fresh chain, short fixed-centre cam drive.

    Reference
    ---------
    Common practice, no source: too tight at 1/16 in, wanted 3/16 to 1/4 in, too loose at 1/2 in.
    """
    if movement <= TOO_TIGHT_MM:
        return "too-tight"
    if movement < WANTED_FROM_MM:
        return "tight"
    if movement <= WANTED_TO_MM:
        return "wanted"
    return "loose" if movement < TOO_LOOSE_MM else "too-loose"


def misfit(low: float, high: float) -> str | None:
    """Name the end of the slack window that rules a fit out, whatever else is within its limit.

    Parameters
    ----------
    low, high : ends of the 95 % interval of the total mid-span movement [mm]

    Returns
    -------
    "too-tight" or "too-loose" where the whole interval lies there; None where there is doubt

    Raises
    ------
    none

    Validity
    --------
    As `zone`.

    Reference
    ---------
    As `zone` for the ends, as `judge` for the guard band.
    """
    found = zone(low)
    return found if found == zone(high) and found in (ZONES[0], ZONES[-1]) else None

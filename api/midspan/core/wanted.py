"""The movement that is wanted: a window of the user's own, or the trade's."""

from . import glossary, limits
from .fields import Form
from .figures import short
from .warnings import warning


def take_window(form: Form) -> tuple[float, float, str]:
    """Read the wanted movement, or take the trade's; give its origin with it.

    Parameters
    ----------
    form : the input being read; what is refused is noted in it

    Returns
    -------
    lower and upper end of the total movement wanted [mm], and the origin of the two

    Raises
    ------
    none

    Validity
    --------
    The trade's window is for a fresh chain on a short cam drive.

    Reference
    ---------
    Common practice, no source, where none is given.
    """
    lower = form.take_number("window_lower_mm", required=False)
    upper = form.take_number("window_upper_mm", required=False)
    origin = limits.PRACTICE if lower is None and upper is None else limits.GIVEN
    for name, end, other in (
        ("window_lower_mm", lower, upper),
        ("window_upper_mm", upper, lower),
    ):
        if end is None and other is not None and not form.has(name):
            form.refuse("missing", name, None, glossary.need(name), "Give both ends, or neither.")
            return 0.0, 0.0, origin
    lower = limits.WANTED_FROM_MM if lower is None else lower
    upper = limits.WANTED_TO_MM if upper is None else upper
    if lower >= upper:
        need = "more than the lower end, " + short(lower, 6) + " mm"
        form.refuse("conflict", "window_upper_mm", upper, need, "Swap the two.")
    return lower, upper, origin


def read_cold(lower: float, origin: str) -> list[dict[str, object]]:
    """Warn where the trade's window, which is read cold, stands in for one that is wanted hot.

    Parameters
    ----------
    lower, origin : what `take_window` gave [mm]

    Returns
    -------
    list of one warning, or of none where the window is the user's own

    Raises
    ------
    none

    Validity
    --------
    For what is judged hot.

    Reference
    ---------
    Common practice, no source.
    """
    if origin != limits.PRACTICE:
        return []
    text = "The movement wanted is the trade's, who reads it on a cold engine. Here it stands for"
    text += " what is wanted hot, which practice does not tell: enter a hot window of your own, or"
    text += " keep to the cold one."
    return [warning("window-read-cold", "window_lower_mm", lower, text, limits.PRACTICE)]

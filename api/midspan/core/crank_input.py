"""The crank mechanism as it is typed in."""

from .crank_slider import Slider
from .fields import Form
from .figures import short


def take_slider(form: Form) -> Slider | None:
    """Read stroke, rod length and pin offset, or note what is wrong with them.

    Parameters
    ----------
    form : the input being read
    """
    stroke = form.take_number("stroke_mm")
    rod = form.take_number("rod_length_mm")
    offset = form.take_number("pin_offset_mm", required=False)
    offset = 0.0 if offset is None else offset
    if stroke is None or rod is None:
        return None
    least = stroke / 2 + abs(offset)
    if rod <= least:
        need = "more than half the stroke and the pin offset together, " + short(least, 6) + " mm"
        step = "Check the unit; the rod is measured between the centres of its two eyes."
        form.refuse("conflict", "rod_length_mm", rod, need, step)
        return None
    return Slider(stroke / 2, rod, offset)

"""What the core says of input it cannot use."""

from .figures import short


class Refused(Exception):  # noqa: N818  (it names what happened, not a fault of ours)
    """Input refused, with every problem found in it, not only the first.

    Parameters
    ----------
    problems : list of dict as `problem` makes them
    """

    def __init__(self, problems: list[dict[str, object]]) -> None:
        """Keep the problems; the message is their texts, one after another."""
        super().__init__(" ".join([str(p["text"]) for p in problems]))
        self.problems = problems


def shown(got: object) -> object:
    """Give a received value back in a form that JSON can carry and a person can read.

    Parameters
    ----------
    got : any JSON value, NaN and infinities included

    Returns
    -------
    number, text, boolean or None; text is cut at 80 characters, a list or object is only named
    """
    if got is None or isinstance(got, bool):
        return got
    if isinstance(got, float):
        if got != got:
            return "NaN"
        if got in (float("inf"), float("-inf")):
            return "Infinity" if got > 0 else "-Infinity"
        return got
    if isinstance(got, int):
        # Beyond 2**53 a JSON reader may not keep the digits, so say the size instead.
        return got if -(2**53) <= got <= 2**53 else "an integer beyond 2^53"
    if isinstance(got, str):
        return got if len(got) <= 80 else got[:77] + "..."
    return "a list" if isinstance(got, list) else "an object"


def problem(
    code: str, field: str, got: object, need: str, next_step: str, label: str = ""
) -> dict[str, object]:
    """Say one thing that is wrong with the input.

    Parameters
    ----------
    code : stable word for programs, such as "out-of-range"
    field : dotted path of the field, such as "drive.centre_distance_mm"
    got : the value received
    need : what would be accepted, in words
    next_step : what to do about it
    label : the field's name on the screen; the path if not given

    Returns
    -------
    dict with code, field, got, need, text, next_step
    """
    value = shown(got)
    said = "nothing" if value is None else str(value)
    if isinstance(value, float):
        said = short(value, 9)
    text = (label or field or "The input") + ": got " + said + ", needs " + need + "."
    return {
        "code": code,
        "field": field,
        "got": value,
        "need": need,
        "text": text,
        "next_step": next_step,
    }

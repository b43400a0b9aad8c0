"""A setting of the adjusters in words: what to fit, which way to turn, what is left over."""

from .adjuster import SAME, Adjuster
from .figures import fixed, short
from .setting import shown_setting
from .setting_search import EQUAL_DEG, Setting

MOVES = ("advance", "retard", "none")
_OTHER = {"clockwise": "anticlockwise", "anticlockwise": "clockwise"}


def way_of(rotation: str | None, turns: str | None) -> str:
    """Say which way the cam turns when running, seen facing the gears."""
    return rotation or "" if turns == "same" else _OTHER[rotation or ""]


def direction(move: float, way: str) -> dict[str, object]:
    """Say which way to turn the cam against the crank, in one word and in a sentence."""
    if move == 0:
        return {"move": "none", "turn": None, "words": "Leave the cam where it is."}
    ahead = move > 0
    turn = way if ahead else _OTHER[way]
    words = "{}: turn the camshaft {} against its gear, seen facing the gears: {} its running "
    words += "direction. At the crank, set the gear {} on its shaft."
    words = words.format(
        "Advance" if ahead else "Retard",
        turn,
        "in" if ahead else "against",
        "ahead in the running direction" if ahead else "back",
    )
    return {"move": "advance" if ahead else "retard", "turn": turn, "words": words}


def shown_option(one: Setting, adjusters: list[Adjuster]) -> dict[str, object]:
    """Give a setting in the form of the result."""
    rows = []
    for adjuster, position in zip(adjusters, one.positions):
        change = position - adjuster.fitted
        rows.append(
            {
                "kind": adjuster.kind,
                "unit": adjuster.unit,
                "fitted": adjuster.fitted,
                "position": position,
                "change": change,
                "marks": None if adjuster.mark is None else change / adjuster.mark,
            }
        )
    return {
        "settings": rows,
        "move_crank_deg": one.move,
        "move_cam_deg": one.move / 2,
        "remainder_deg": one.remainder,
        "moved": one.moved,
    }


def _words(one: Setting, adjusters: list[Adjuster]) -> str:
    """Say a setting: what to fit or set where."""
    parts = []
    for adjuster, position in zip(adjusters, one.positions):
        change = position - adjuster.fitted
        if abs(change) <= SAME:
            continue
        if adjuster.kind == "teeth":
            count = fixed(abs(change), 0)
            word = "tooth" if abs(change) == 1 else "teeth"
            parts.append("{} {} {}".format(count, word, "ahead" if change > 0 else "back"))
            continue
        unit = adjuster.unit.replace("-", " ")
        # A listed step is named as it is marked; a vernier is set as finely as it can be read.
        said = _signed(position) if adjuster.steps is not None else _set_to(position, 2)
        text = "{} at {} {}".format(adjuster.kind, said, unit)
        if adjuster.mark is not None:
            text += " ({} marks)".format(_set_to(change / adjuster.mark, 1))
        parts.append(text)
    return ", ".join(parts)


def _signed(value: float) -> str:
    return ("+" if value > 0 else "") + short(value, 4)


def _set_to(value: float, decimals: int) -> str:
    return ("+" if value > 0 else "") + fixed(value, decimals)


def verdict_on(
    best: Setting,
    equal: list[Setting],
    adjusters: list[Adjuster],
    wanted: float,
    tolerance: float,
    doubt: float,
    lobe: str,
) -> dict[str, object]:
    """Say what to set, or plainly that nothing reaches."""
    word = "advance" if wanted > 0 else "retard"
    size, left = fixed(abs(wanted), 1), fixed(abs(best.remainder), 1)
    why = "Wanted: {} by {} crank degrees, {} cam degrees.".format(
        word, size, fixed(abs(wanted) / 2, 1)
    )
    step = "Then read the {} centreline again, the wheel untouched.".format(lobe)
    if best.moved == 0 and abs(wanted) <= tolerance:
        why += " That is within plus or minus {}.".format(fixed(tolerance, 1))
        return shown_setting("leave", "Leave it as it is", why, "Write the setting down.")
    said = _words(best, adjusters)
    why += " This leaves {} of it.".format(left) if left != "0.0" else " This reaches it."
    apart = [one for one in equal if abs(one.move - best.move) > EQUAL_DEG]
    if apart:
        why += " Exactly as near: {}.".format(_words(apart[0], adjusters) or "what is fitted now")
    if abs(best.remainder) > tolerance:
        why += " No setting comes nearer."
        headline = "Out of reach: {} crank degrees are left".format(left)
        step = "Use another step, bushing or tooth; " + (
            "at best: " + said if said else "none helps"
        )
        return shown_setting("short", headline, why, step + ".")
    if abs(best.remainder) + doubt > tolerance:
        why += " The readings alone, plus or minus {}, may yet hide more.".format(fixed(doubt, 1))
    if apart:
        other = _words(apart[0], adjusters) or "as it is"
        headline = "A tie: {}, or {}".format(said or "as it is", other)
        return shown_setting("tie", headline, why, "Choose either. " + step)
    return shown_setting("set", "Set " + said, why, step)

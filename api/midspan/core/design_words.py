"""The order in which settings were run: recognised, and named in words."""

from collections import namedtuple

from .drift_fit import Pull, drift_can_be_told

NAMES = {
    "a-b": "A/B: one change, no return",
    "a-b-a": "A/B/A: there and back",
    "a-b-b-a": "A/B/B/A: there and back, both run as often",
    "alternating": "A/B/A/B: changed at every run",
    "free": "Not one of the usual orders",
}


class Design(namedtuple("Design", ("name", "blocks", "fitted", "told", "balanced"))):
    """An order of runs.

    `blocks` : (setting, runs) in order; `fitted` : by setting, how often it was fitted
    `told` : whether a drift can be told from the settings
    `balanced` : by setting, whether a steady drift falls alike on it and on the reference
    """

    __slots__ = ()


def recognise(pulls: list[Pull], reference: str) -> Design:
    """Recognise the order of the runs that are compared, which come in the order of their places.

    Parameters
    ----------
    pulls : the runs compared, by place
    reference : key of the setting that the others are held against
    """
    blocks: list[tuple[str, int]] = []
    for pull in pulls:
        if blocks and blocks[-1][0] == pull.setting:
            blocks[-1] = (pull.setting, blocks[-1][1] + 1)
        else:
            blocks.append((pull.setting, 1))
    fitted: dict[str, int] = {}
    places: dict[str, list[float]] = {}
    for setting, _ in blocks:
        fitted[setting] = fitted.get(setting, 0) + 1
    for pull in pulls:
        places.setdefault(pull.setting, []).append(pull.place)
    centre = {key: sum(own) / len(own) for key, own in places.items()}
    balanced = {key: abs(at - centre[reference]) < 1e-9 for key, at in centre.items()}
    told = drift_can_be_told(pulls)
    return Design(_name(blocks, len(fitted)), blocks, fitted, told, balanced)


def _name(blocks: list[tuple[str, int]], settings: int) -> str:
    sizes = [count for _, count in blocks]
    if settings != 2:
        return "free"
    if len(blocks) == 2:
        return "a-b"
    if len(blocks) == 3:
        alike = sizes[0] == sizes[2] and sizes[1] == 2 * sizes[0]
        return "a-b-b-a" if alike else "a-b-a"
    if max(sizes) == 1:
        return "alternating"
    return "free"


def order_text(blocks: list[tuple[str, int]]) -> str:
    """Write an order of runs, such as "A A B B A A"; with long blocks "6 x A, 12 x B, 6 x A"."""
    if max([count for _, count in blocks]) > 4:
        return ", ".join([str(count) + " x " + setting for setting, count in blocks])
    return " ".join([setting for setting, count in blocks for _ in range(count)])

"""What a comparison of dyno runs comes to, in words."""

from collections import namedtuple

from .design_words import Design, order_text
from .drift_fit import Difference
from .figures import fixed, short
from .left_out import BEST_OF

OUTCOMES = ("shown", "shown-if-settled", "not-shown", "too-few", "not-evidence")
ALPHA = 0.05
# With fewer degrees of freedom a session hardly shows anything: common practice, no source.
FEW = 3
AGAIN = "Run both settings again, there and back."


class Verdict(namedtuple("Verdict", ("outcome", "headline", "why", "next_step"))):
    """The verdict on one difference."""

    __slots__ = ()


def signed(value: float, decimals: int) -> str:
    """Write a number with its sign."""
    return ("+" if value > 0 else "") + fixed(value, decimals)


def judge(
    found: Difference, design: Design, to: str, drift: bool, tests: int, best: list[str],
    from_setting: str, able: float | None, more: list[str] | None,
) -> Verdict:  # fmt: skip
    """Say whether a difference is shown, and on what condition.

    Parameters
    ----------
    found : the difference
    design : the order of the runs
    to, from_setting : the settings compared
    drift : whether a drift was taken out
    tests : differences judged side by side, which share the chance of a false alarm
    best : settings of which only the best runs were kept
    able : smallest gain that the session finds four times in five [%]
    more : settings of the further pulls that would decide, None if too many
    """
    pair = to + " against " + from_setting
    if from_setting in best or to in best:
        step = "Take every run in that nothing was wrong with, or run again and keep all."
        return Verdict("not-evidence", "No evidence: only the best runs were kept", BEST_OF, step)
    if found.uncertainty is None or found.ratio_low is None or found.ratio_high is None:
        return _too_few(found, design, pair, drift)
    low, high = 100 * (found.ratio_low - 1), 100 * (found.ratio_high - 1)
    value = 100 * (found.ratio - 1)
    size = fixed(abs(value), 2) + " %"
    span = signed(low, 2) + " to " + signed(high, 2) + " %"
    why = pair + ": " + signed(value, 2) + " %, 95 % interval " + span + "."
    if found.chance < ALPHA / tests:
        word = "gain" if value > 0 else "loss"
        why += _drift_words(design, to, drift)
        if not drift and not design.balanced[to]:
            why += " Without that the order cannot tell the change from a drift."
            step = "Go back to " + from_setting + " and run it again: that settles it."
            head = "Shown, if the engine had settled: a " + word + " of " + size
            return Verdict("shown-if-settled", head, why, step)
        return Verdict("shown", "Shown: a " + word + " of " + size, why, _refit(design, to))
    if tests > 1 and found.chance < ALPHA:
        why += " With " + str(tests) + " differences judged at once one such is too easily chance."
    if able is not None:
        why += " This session finds a gain of " + short(able, 2) + " % four times in five."
    step = _further(more, value)
    if found.dof < FEW:
        return Verdict("too-few", "Too few pulls: nothing is shown", why, step)
    return Verdict("not-shown", "Not shown: the difference may be chance", why, step)


def _too_few(found: Difference, design: Design, pair: str, drift: bool) -> Verdict:
    why = "Found" if found.ratio is None else "Found " + signed(100 * (found.ratio - 1), 2) + " %"
    why += " for " + pair + ", but nothing tells how much of that is scatter"
    if not design.told:
        why += " or drift: each setting was run once."
    elif found.dof and not found.uncertainty:
        why += ": the runs are all the same, so the figures are rounded coarser than they scatter."
    elif found.dof:
        why += ": it is too large for an interval."
    else:
        why += ": the runs are used up by the settings" + (" and the drift." if drift else ".")
    return Verdict("too-few", "Too few pulls: nothing is shown", why, AGAIN)


def _drift_words(design: Design, to: str, drift: bool) -> str:
    if drift:
        return " A steady drift is taken out."
    if design.balanced[to]:
        return " A steady drift falls alike on both settings."
    return " No drift was taken out, as you say that the engine had settled."


def _refit(design: Design, to: str) -> str:
    if design.fitted[to] == 1:
        return to + " was fitted once, so what refitting alone does is in it. Fit it once more."
    return "Note the settings as measured, so that the gain can be used again."


def _further(more: list[str] | None, value: float) -> str:
    found = signed(value, 2) + " %"
    if more is None:
        return "If the true gain is the " + found + " found, over 60 more pulls would be needed."
    blocks: list[tuple[str, int]] = []
    for key in more:
        if blocks and blocks[-1][0] == key:
            blocks[-1] = (key, blocks[-1][1] + 1)
        else:
            blocks.append((key, 1))
    count = str(len(more)) + (" more pull" if len(more) == 1 else " more pulls")
    order = " (" + order_text(blocks) + ")" if len(more) <= 12 else ""
    return count + order + " would show a true gain of " + found + " four times in five."


def hangs(verdict: Verdict, every: Difference | None, alpha: float) -> str:
    """Say so where a gain is only shown because runs were left out.

    Parameters
    ----------
    verdict : on the runs kept
    every : the difference with every run in, None where none was left out
    alpha : chance at which a difference counts as shown [1]
    """
    if every is None or not verdict.outcome.startswith("shown"):
        return ""
    if every.chance is not None and every.chance < alpha:
        return " It is shown with the runs left out taken in, too."
    value = signed(100 * (every.ratio - 1), 2)
    text = " With the runs left out taken in it is " + value + " % and not shown: it hangs on them."
    return text

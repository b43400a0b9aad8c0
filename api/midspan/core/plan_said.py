"""What a plan says of its oil and of its chain, in sentences that name their figures."""

from . import oil_categories
from .bedding import bedding_share
from .figures import fixed, short
from .limits import MEMORY, PRACTICE, PUBLISHED
from .plan_asked import Asked, Chain, Oil
from .running_figures import BY_ID, DERIVED, as_dict

_ZDDP = ("zddp-break-in", "zddp-older", "phosphorus-1000", "zddp-myth", "zddp-no-myth")


def oil_findings(asked: Asked) -> list[dict[str, object]]:
    """Say what is worth knowing of the oil chosen; where sources disagree, both are shown."""
    oil, found = asked.oil, []
    if oil.kind == "synthetic" and asked.rings == "new":
        text = "New rings on synthetic oil: the sources disagree. Both are below; the ring and "
        text += "engine makers decide."
        found.append(_said("synthetic-rings", text, PUBLISHED, ("synthetic-later",
                                                               "synthetic-myth")))  # fmt: skip
    if oil.kind == "running-in":
        text = "Running-in oil comes out, with the filter, after the first running."
        found.append(_said("running-in-oil", text, PUBLISHED, ("drain-running-in-oil",)))
    if oil.category is not None:
        found.append(_category(oil))
    if oil.phosphorus is not None or oil.zinc is not None or asked.follower == "flat":
        found.append(_zddp(asked))
    if oil.zinc is not None or asked.follower == "flat":
        text = "Zinc that may help a flat tappet may hurt the chain, by a patent's claim."
        found.append(_said("zinc-and-chain", text, PUBLISHED, ("zinc-chain",)))
    return found


def _said(code: str, text: str, origin: str, figures: tuple[str, ...]) -> dict[str, object]:
    rows = [as_dict(BY_ID[name]) for name in figures]
    return {"code": code, "text": text, "origin": origin, "figures": rows}


def _category(oil: Oil) -> dict[str, object]:
    row = oil_categories.BY_ID[oil.category]
    if row.lower is None and row.upper is None:
        text = "No phosphorus figure is on file for " + row.id + ". " + row.note
        return _said("category", text.strip(), row.origin or MEMORY, ())
    ends = ("" if row.lower is None else fixed(row.lower, 0) + " to ") + fixed(row.upper, 0)
    text = row.id + " oils hold " + ("at most " if row.lower is None else "") + ends
    text += " mg/kg of phosphorus. " + row.note
    if oil.grade is not None and row.grades and oil.grade["grade"] not in row.grades:
        text += " It covers other grades than " + str(oil.grade["grade"]) + ": ask the maker."
    if row.origin == PUBLISHED:
        text = text.strip() + " (" + row.source + ", " + row.address + ")"
    return _said("category", text.strip(), row.origin, ())


def _zddp(asked: Asked) -> dict[str, object]:
    oil = asked.oil
    text = "How much zinc and phosphorus a flat tappet needs: the sources disagree; all are below."
    if asked.follower != "flat":
        text = "Roller followers do not depend on zinc and phosphorus as flat ones may."
    rows: tuple[str, ...] = _ZDDP
    if oil.phosphorus is not None:
        text += " Yours holds " + short(oil.phosphorus, 4) + " mg/kg of phosphorus."
    elif oil.zinc is not None:
        share = BY_ID["phosphorus-of-zinc"]
        low, high = oil.zinc * share.lower / 100, oil.zinc * share.upper / 100
        text += " Yours holds " + short(oil.zinc, 4) + " mg/kg of zinc, so some " + short(low, 2)
        text += " to " + short(high, 2) + " of phosphorus (derived)."
        rows = _ZDDP + ("phosphorus-of-zinc",)
    origin = PUBLISHED if asked.follower == "flat" else PRACTICE
    return _said("zinc-and-phosphorus", text, origin, rows)


def chain_said(asked: Asked, minutes: float) -> dict[str, object]:
    """Say how the chain starts, and what the first running does for it.

    Parameters
    ----------
    asked : what the plan is for
    minutes : running of the timed steps [min]

    Returns
    -------
    dict: movement and window [mm], outcome, what it means with its origin, and the share of the
    chain's first wear [1] that the timed steps do, derived
    """
    chain = asked.chain
    text, next_step, origin = _state(chain, asked.oil.kind)
    share = bedding_share(minutes / 60)
    said = "The " + short(minutes, 3) + " minutes of the timed steps do about "
    said += short(100 * share, 1 if share < 0.1 else 2) + " % of the chain's own first wear."
    if asked.follower == "flat":
        low, high = bedding_share(20 / 60), bedding_share(30 / 60)
        said += " The cam's 20 to 30 minutes alone do some " + fixed(100 * low, 0) + " to "
        said += fixed(100 * high, 0) + " %."
    return {
        "movement_mm": chain.movement,
        "lower_mm": chain.lower,
        "upper_mm": chain.upper,
        "window_origin": chain.origin,
        "outcome": chain.outcome or "not-measured",
        "text": text,
        "next_step": next_step,
        "origin": origin,
        "bedding_share": share,
        "bedding_text": said,
        "bedding_origin": DERIVED,
        "figures": [as_dict(BY_ID[n]) for n in ("chain-20-h", "chain-0-1-percent",
                                                 "chain-10000-miles")],
    }  # fmt: skip


def _state(chain: Chain, oil: str) -> tuple[str, str, str]:
    if chain.outcome is None:
        return "The slack was not given.", "Measure it before the first start.", PRACTICE
    if chain.outcome == "within":
        text = "The slack is right: slack that is right on fitting is usually still right after"
        text += " running in."
        return text, "Leave it, and measure again when the plan says so.", PRACTICE
    if chain.outcome == "below":
        text = "The chain starts too tight, and waiting does not cure that: with today's oils it "
        text += "may need some 10,000 miles to bed in."
        if oil == "running-in":
            text += " Running-in oil and a longer running-in shorten it."
        else:
            text += " A dedicated running-in oil and a longer running-in would shorten it."
        return text, "Better try another chain or gear set now, before the first start.", PRACTICE
    if chain.outcome == "beyond":
        text = "The chain starts loose, and running in only adds to it."
        return text, "Try another chain or gear set now, before the first start.", PRACTICE
    text = "The slack is too close to an end of the window to call."
    return text, "Measure again before the first start.", PRACTICE

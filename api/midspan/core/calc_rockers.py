"""Rockers side by side: valve-lift curves, events, and the cam setting that keeps one of them."""

from .calc_lift import event_dict
from .fields import Form
from .figures import fixed
from .instrument import interval_dict
from .lift_doubts import table_faults
from .uncertainty import interval
from .valve_train import Train, take_train
from .version import VERSION
from .warnings import cautions, warning

MOST_ROCKERS, MOST_HEIGHTS = 6, 8
# What is to stay where it is: an event at a valve lift, or the overlap.
KEPT = (
    "intake-closing", "intake-opening", "exhaust-closing", "exhaust-opening", "intake-centre",
    "overlap-middle", "overlap",
)  # fmt: skip
CAMS = ("one", "two")
# 0.050 and 0.200 in of valve lift if nothing is asked for, and the tappet lift of the trade: common
# practice, no source.
HEIGHTS_MM, TAPPET_MM = (1.27, 5.08), 1.27
EVENT_HEIGHT_MM = 1.27
# A larger move of the cam wants the clearance checked first; from memory, unverified.
LARGE_MOVE_DEG = 8.0


def calculate(payload: object) -> dict[str, object]:
    """Compare rockers on one cam.

    Parameters
    ----------
    payload : intake and exhaust (lobes, see `lift_table`; one of the two may be left out), rockers
        (list of label, rocker_ratio, lash_mm; the first is the present one), heights_mm of valve
        lift, keep (see KEPT), event_height_mm, cams ("one" shaft for both lobes, or "two"),
        curve_points

    Returns
    -------
    dict: rockers (maximum lift, events at equal valve lift and at equal tappet lift, overlap, how
    far to move the cam), curves, assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    The ratio as one figure over the whole lift; nothing bends. Lash at the valve.

    Reference
    ---------
    Net lift = lobe lift times ratio less lash: helpcenter.jegs.com (rocker arm ratio explained),
    speedyauto.cc (changing the valve lash).
    """
    form = Form(payload)
    intake = take_train(form, "intake", "intake", required=not form.has("exhaust"))
    exhaust = take_train(form, "exhaust", "exhaust", required=False)
    rockers = take_rockers(form)
    heights = form.take_numbers("heights_mm", MOST_HEIGHTS) if form.has("heights_mm") else None
    kept = form.take_choice("keep", KEPT, KEPT[0] if form.has("intake") else KEPT[2])
    height = form.take_number("event_height_mm", required=False)
    height = EVENT_HEIGHT_MM if height is None else height
    cams = form.take_choice("cams", CAMS, CAMS[0])
    points = int(form.take_number("curve_points", required=False) or 0)
    form.close()
    for lobe in ("intake", "exhaust"):
        if kept is not None and (kept.startswith(lobe) or "overlap" in kept):
            if not form.has(lobe):
                step = "Give its lift table, or keep another event."
                form.refuse("missing", lobe, None, "the lobe that the event is of", step)
    form.finish()
    assert kept is not None  # noqa: S101  (finish raised if it was refused)
    trains = [
        {
            lobe: None if train is None else train.with_rocker(ratio, lash)
            for lobe, train in (("intake", intake), ("exhaust", exhaust))
        }
        for _, ratio, lash in rockers
    ]
    places = [_place(one, kept, height) for one in trains]
    rows = []
    for (label, ratio, lash), one, place in zip(rockers, trains, places):
        rows.append(
            {
                "label": label,
                "rocker_ratio": ratio,
                "lash_mm": lash,
                "intake": _seen(one["intake"], heights or list(HEIGHTS_MM)),
                "exhaust": _seen(one["exhaust"], heights or list(HEIGHTS_MM)),
                "overlap": _overlap(one, height),
                "move": _move(places[0], place, kept, cams == "two"),
            }
        )
    return {
        "calc": "rockers",
        "core_version": VERSION,
        "keep": kept,
        "event_height_mm": height,
        "cams": cams,
        "rockers": rows,
        "curves": _curves(rockers, trains, points),
        "assumptions": [],
        "warnings": _faults(intake, exhaust) + _doubts(kept, cams == "two", places, rows),
        "cautions": cautions("turn-by-hand", "valve-contact"),
    }


def take_rockers(form: Form) -> list[tuple[str, float, float]]:
    """Read the rockers, each with a name of its own: label, ratio and lash.

    Parameters
    ----------
    form : the input being read
    """
    found: list[tuple[str, float, float]] = []
    forms = form.take_forms("rockers", MOST_ROCKERS)
    if form.has("rockers") and isinstance(form.payload["rockers"], list) and not forms:
        need = "a list of 1 to " + str(MOST_ROCKERS) + " rockers"
        form.refuse("empty-list", "rockers", "an empty list", need, "Give the present one first.")
    for part in forms:
        label = part.take_text("label", 60)
        ratio = part.take_number("rocker_ratio")
        lash = part.take_number("lash_mm", required=False)
        part.close()
        if label is not None and label in [one[0] for one in found]:
            part.refuse("conflict", "label", label, "a name of its own", "Name it otherwise.")
        if label is not None and ratio is not None:
            found.append((label, ratio, 0.0 if lash is None else lash))
    return found


def _seen(train: Train | None, heights: list[float]) -> dict[str, object] | None:
    """Give what one valve does with a rocker."""
    if train is None:
        return None
    rows: dict[str, list[dict[str, object]]] = {"valve": [], "tappet": []}
    for name, at_valve, wanted in (("valve", True, heights), ("tappet", False, [TAPPET_MM])):
        for height in wanted:
            found = train.events(height, at_valve)
            if found is not None:
                rows[name].append(event_dict(found))
    spread = train.lift_uncertainty(train.lobe.top_at + train.later)
    return {
        "maximum_lift_mm": interval_dict(interval(train.maximum(), spread)),
        "at_valve_lift": rows["valve"],
        "at_tappet_lift": rows["tappet"],
    }


def _overlap(one: dict[str, Train | None], height: float) -> dict[str, object] | None:
    """Give the overlap at a valve lift, if both lobes are known and reach it."""
    ends = _overlap_ends(one, height)
    if ends is None:
        return None
    return {
        "height_mm": height,
        "overlap_deg": ends[1] - ends[0],
        "overlap_middle_deg": (ends[0] + ends[1]) / 2,
    }


def _overlap_ends(one: dict[str, Train | None], height: float) -> tuple[float, float] | None:
    intake, exhaust = one["intake"], one["exhaust"]
    if intake is None or exhaust is None:
        return None
    opens, closes = intake.events(height), exhaust.events(height)
    if opens is None or closes is None:
        return None
    return float(opens.opens.value), float(closes.closes.value)


def _place(one: dict[str, Train | None], kept: str, height: float) -> float | None:
    """Where the chosen event is [deg after TDC]; the overlap's own length for "overlap"."""
    if "overlap" in kept:
        ends = _overlap_ends(one, height)
        if ends is None:
            return None
        return ends[1] - ends[0] if kept == "overlap" else (ends[0] + ends[1]) / 2
    lobe, what = kept.split("-")
    train = one[lobe]
    found = None if train is None else train.events(height)
    if found is None:
        return None
    at = {"opening": found.opens, "closing": found.closes, "centre": found.centre}[what]
    return float(at.value)


def _move(first: float | None, now: float | None, kept: str, two: bool) -> dict[str, object] | None:
    """How far to move the cam so that the event is where it was with the first rocker."""
    if first is None or now is None or (kept == "overlap" and not two):
        return None
    # A later event needs an earlier cam; of two cams the intake alone goes later for less overlap.
    earlier = first - now if kept == "overlap" else now - first
    return {"cam_moved_deg": earlier, "which": "intake" if kept == "overlap" else "all"}


def _curves(
    rockers: list[tuple[str, float, float]], trains: list[dict[str, Train | None]], points: int
) -> list[dict[str, object]]:
    """Give the valve-lift curves over the part of the cycle in which a valve moves."""
    if points == 0:
        return []
    low, high = 0.0, 0.0
    for train in trains[0].values():
        if train is not None:
            low = min(low, train.lobe.first + train.later)
            high = max(high, train.lobe.last + train.later)
    low, high = max(low, -360.0), min(high, 360.0)
    curves: list[dict[str, object]] = []
    for (label, _, _), one in zip(rockers, trains):
        rows = []
        for i in range(points):
            at = low + (high - low) * (i / (points - 1) if points > 1 else 0.0)
            row: dict[str, object] = {"angle_deg": at}
            for lobe in ("intake", "exhaust"):
                train = one[lobe]
                row[lobe + "_lift_mm"] = None if train is None else _within(train, at)
            rows.append(row)
        curves.append({"label": label, "points": rows})
    return curves


def _within(train: Train, at: float) -> float | None:
    """Valve lift where the table tells it: on its readings, or on the base circle beyond."""
    lobe = train.lobe
    inside = lobe.first <= at - train.later <= lobe.last
    if inside:
        return train.lift(at)
    return 0.0 if lobe.base else None


def _faults(intake: Train | None, exhaust: Train | None) -> list[dict[str, object]]:
    """Warn of what is wrong with the tables."""
    found = []
    for name, train in (("intake", intake), ("exhaust", exhaust)):
        if train is not None:
            found += table_faults(name, train.lobe)
    return found


def _doubts(
    kept: str, two: bool, places: list[float | None], rows: list[dict[str, object]]
) -> list[dict[str, object]]:
    """Say what the figures cannot."""
    found = []
    if kept == "overlap" and not two:
        text = "Both lobes are on one shaft: moving it shifts the overlap, never its length. "
        text += "Only its middle can be kept."
        found.append(warning("overlap-on-one-shaft", "cams", 1, text))
    missing = [str(row["label"]) for row, place in zip(rows, places) if place is None]
    if missing:
        text = "The height chosen is not reached within the table: " + ", ".join(missing) + "."
        found.append(warning("event-not-reached", "event_height_mm", len(missing), text))
    moves = [row["move"] for row in rows]
    far = [m["cam_moved_deg"] for m in moves if isinstance(m, dict)]
    far = [x for x in far if isinstance(x, float) and abs(x) > LARGE_MOVE_DEG]
    if far:
        text = "A move of {} degrees is large: check valve to piston clearance before turning."
        text = text.format(fixed(far[0], 1))
        found.append(warning("large-move", "keep", far[0], text))
    return found

"""What the comparison of dyno runs takes, read and brought to one standard."""

from collections import namedtuple

from .correction import FIGURES_ARE, Conditions, corrected, take_conditions
from .dyno_records import MOST_POINTS, PEAKS
from .dyno_units import power_of
from .errors import Refused
from .fields import Form

QUANTITIES = {
    "peak-power": ("Peak power", "kW"),
    "peak-torque": ("Peak torque", "N m"),
    "band-power": ("Average power over a band of speed", "kW"),
    "band-torque": ("Average torque over a band of speed", "N m"),
}
DRIFTS = ("auto", "none", "linear")
MOST_RUNS = 200


class Run(
    namedtuple(
        "Run", ("setting", "place", "value", "raw", "left_out", "curve", "oil", "figures_are")
    )
):
    """One run: its figure by the standard wanted (None if it has none) and as it was sent.

    `left_out` is the reason why it is not compared, "" where it is; `curve` its points, or None.
    """

    __slots__ = ()


class Asked(
    namedtuple(
        "Asked", ("standard", "quantity", "lower", "upper", "reference", "drift", "runs")
    )
):  # fmt: skip
    """The question, every figure by one standard; runs in the order of their places."""

    __slots__ = ()


def take_compare(form: Form) -> Asked:
    """Read standard, quantity, reference, drift and runs.

    Parameters
    ----------
    form : the input being read; what is refused is noted in it
    """
    standard = form.take_choice("standard", FIGURES_ARE)
    quantity = form.take_choice("quantity", tuple(sorted(QUANTITIES)))
    band = quantity is not None and quantity.startswith("band")
    lower = form.take_number("band_lower_rpm", required=band)
    upper = form.take_number("band_upper_rpm", required=band)
    if lower is not None and upper is not None and lower >= upper:
        need = "a band that ends above where it begins"
        form.refuse("conflict", "band_upper_rpm", upper, need, "Turn them round, or widen it.")
    drift = form.take_choice("drift", DRIFTS, "auto")
    reference = form.take_text("reference", 40)
    whole = standard and quantity and (not band or (lower and upper and lower < upper))
    runs = []
    parts = form.take_forms("runs", MOST_RUNS)
    for part in parts:
        taken = _take_run(part, standard, quantity, (lower, upper), bool(whole))
        if taken is not None:
            runs.append((taken, part))
    _check_places(runs)
    used = [run for run, _ in runs if not run.left_out]
    if not form.problems:
        settings = {run.setting for run in used}
        if reference not in settings:
            need = "the key of a setting with a run that is compared"
            form.refuse("not-a-choice", "reference", reference, need, "Say what to compare with.")
        elif len(settings) < 2:
            need = "runs of two settings at least"
            form.refuse("too-few", "runs", str(len(used)) + " runs", need, "Add the other setting.")
    ordered = sorted([run for run, _ in runs], key=lambda run: run.place)
    return Asked(standard, quantity, lower, upper, reference, drift, ordered)


def _take_run(
    part: Form, standard: str | None, quantity: str | None,
    band: tuple[float | None, float | None], whole: bool,
) -> Run | None:  # fmt: skip
    before = len(part.problems)
    setting = part.take_text("setting", 40)
    place = part.take_number("place")
    air = take_conditions(part.take_form("conditions"))
    basis = part.take_choice("figures_are", FIGURES_ARE)
    peaks = _take_peaks(part)
    curve = _take_curve(part)
    # An empty text is refused too: a reason must not be empty.
    reason = part.take_text("left_out", 200) if part.has("left_out") else None
    part.close()
    if len(part.problems) > before or not whole:
        return None
    raw = _figure(quantity or "", band, peaks, curve)
    value = None
    if raw is None:
        if reason is None:
            _refuse_figure(part, quantity or "", band, curve)
            return None
    else:
        value = _brought(part, raw, str(basis), air, str(standard), reason is not None)
        if value is None and reason is None:
            return None
    oil = None if air is None else air.oil
    return Run(setting, place, value, raw, reason or "", curve, oil, basis)


def _brought(
    part: Form, raw: float, basis: str, air: Conditions | None, standard: str, silent: bool
) -> float | None:
    """Bring a figure to the standard; a run left out is not worth a complaint."""
    try:
        return float(corrected(raw, basis, air, standard, "figures_are"))
    except Refused as refused:
        if silent:
            return None
        for p in refused.problems:
            need, step = str(p["need"]), str(p["next_step"])
            part.refuse(str(p["code"]), "figures_are", basis, need, step)
    return None


def _take_peaks(part: Form) -> dict[str, float | None]:
    peaks = part.take_form("peaks")
    found: dict[str, float | None] = {}
    if peaks is None:
        return found
    for name in PEAKS:
        found[name] = peaks.take_number(name, required=False)
    peaks.close()
    return found


def _take_curve(part: Form) -> tuple[list[float], list[float]] | None:
    curve = part.take_form("curve")
    if curve is None:
        return None
    speeds = curve.take_numbers("speed_rpm", MOST_POINTS)
    torques = curve.take_numbers("torque_nm", MOST_POINTS)
    curve.close()
    if speeds is None or torques is None:
        return None
    if len(speeds) != len(torques) or len(speeds) < 2:
        got = str(len(speeds)) + " speeds and " + str(len(torques)) + " torques"
        need = "as many torques as speeds, two at least"
        curve.refuse("conflict", "torque_nm", got, need, "Import the file of the run again.")
        return None
    for i in range(1, len(speeds)):
        if speeds[i] <= speeds[i - 1]:
            need = "speeds that rise from point to point"
            name = "speed_rpm[" + str(i) + "]"
            curve.refuse("not-rising", name, speeds[i], need, "Import the file of the run again.")
            return None
    return speeds, torques


def _figure(
    quantity: str, band: tuple[float | None, float | None], peaks: dict[str, float | None],
    curve: tuple[list[float], list[float]] | None,
) -> float | None:  # fmt: skip
    """Give the figure asked for as it was sent, or None where the run does not have it."""
    power = quantity.endswith("power")
    if quantity.startswith("peak"):
        told = peaks.get("power_kw" if power else "torque_nm")
        if told is None and curve is not None:
            told = max(ordinates(curve, power))
        return told if told else None
    if curve is None or band[0] is None or band[1] is None:
        return None
    return band_mean(curve[0], ordinates(curve, power), band[0], band[1])


def ordinates(curve: tuple[list[float], list[float]], power: bool) -> list[float]:
    """Give the torques of a curve [N m], or its powers [kW]."""
    if not power:
        return curve[1]
    return [power_of(torque, speed) for speed, torque in zip(curve[0], curve[1])]


def band_mean(xs: list[float], ys: list[float], low: float, high: float) -> float | None:
    """Give the mean over a band by the trapezoid rule; None if it is 0 or the curve leaves it."""
    if low < xs[0] or high > xs[-1]:
        return None
    area = 0.0
    for i in range(1, len(xs)):
        x0, x1 = max(xs[i - 1], low), min(xs[i], high)
        if x1 > x0:
            slope = (ys[i] - ys[i - 1]) / (xs[i] - xs[i - 1])
            middle = ys[i - 1] + slope * ((x0 + x1) / 2 - xs[i - 1])
            area += middle * (x1 - x0)
    return area / (high - low) or None


def _refuse_figure(
    part: Form, quantity: str, band: tuple[float | None, float | None],
    curve: tuple[list[float], list[float]] | None,
) -> None:  # fmt: skip
    step = "Enter it, leave the run out and say why, or compare another figure."
    if quantity.startswith("peak"):
        field = "power_kw" if quantity.endswith("power") else "torque_nm"
        need = "its peak above zero, or a curve"
        part.refuse("missing", "peaks." + field, None, need, step)
    elif curve is None:
        part.refuse("missing", "curve", None, "a curve over the band", step)
    else:
        got = str(int(curve[0][0])) + " to " + str(int(curve[0][-1])) + " rpm"
        step = "Narrow the band, or leave the run out and say why."
        part.refuse("out-of-range", "curve", got, "torque over the whole band", step)


def _check_places(runs: list[tuple[Run, Form]]) -> None:
    seen: set[int] = set()
    for run, part in runs:
        if run.place in seen:
            need = "a place of its own in the session"
            part.refuse("conflict", "place", run.place, need, "Number the runs as they were made.")
        seen.add(run.place)

"""What a kept dyno session and its runs must be like."""

from .correction import take_conditions
from .fields import Form

MOST_SETTINGS, MOST_POINTS = 20, 400
PEAKS = ("power_kw", "power_speed_rpm", "torque_nm", "torque_speed_rpm")


def take_settings(form: Form) -> None:
    """Note what is wrong with the settings of a session: each has a key of its own.

    Parameters
    ----------
    form : settings, a list of key, label, movement_mm, movement_u_mm, note
    """
    keys: list[str] = []
    for setting in form.take_forms("settings", MOST_SETTINGS):
        key = setting.take_text("key", 12)
        setting.take_text("label", 60)
        setting.take_number("movement_mm", required=False)
        setting.take_number("movement_u_mm", required=False)
        if setting.has("note"):
            setting.take_text("note", 4000)
        setting.close()
        if key is not None and key in keys:
            need = "a key that no other setting of the session has"
            setting.refuse("given-twice", "key", key, need, "Call it by the next letter.")
        if key is not None:
            keys.append(key)


def take_run(form: Form) -> None:
    """Note what is wrong with the air, the peaks and the curve of a run.

    Parameters
    ----------
    form : conditions, peaks and curve, as runs keep them
    """
    take_conditions(form.take_form("conditions"))
    found = False
    peaks = form.take_form("peaks")
    if peaks is not None:
        for name in PEAKS:
            peaks.take_number(name, required=False)
        found = peaks.has("power_kw") or peaks.has("torque_nm")
        peaks.close()
    curve = form.take_form("curve")
    if curve is not None:
        _take_curve(curve)
    elif not found:
        need = "peak power, peak torque or a curve"
        form.refuse("missing", "peaks", None, need, "Type what the dyno showed, or bring its file.")


def _take_curve(curve: Form) -> None:
    speeds = curve.take_numbers("speed_rpm", MOST_POINTS)
    torques = curve.take_numbers("torque_nm", MOST_POINTS)
    curve.close()
    if speeds is None or torques is None:
        return
    if len(speeds) != len(torques):
        got = str(len(torques)) + " values"
        need = "as many values as speeds: " + str(len(speeds))
        curve.refuse("not-a-pair", "torque_nm", got, need, "Send one torque for each speed.")
    falls = [i for i in range(1, len(speeds)) if speeds[i] <= speeds[i - 1]]
    if falls:
        name = "speed_rpm[" + str(falls[0]) + "]"
        need = "more than the speed before it, " + str(speeds[falls[0] - 1])
        curve.refuse(
            "not-rising", name, speeds[falls[0]], need, "Send one pull, from slow to fast."
        )

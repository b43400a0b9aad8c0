"""Power correction: the factor of a run's air by every standard, figures as read and corrected."""

from .air import VAPOUR_SOURCE, dry_pressure, height_ratio, vapour_pressure
from .correction import FIGURES_ARE, Conditions, factor, observed
from .correction_checks import doubts, pressure_doubts
from .correction_standards import OBSERVED, STANDARDS, Standard, as_dict
from .fields import Form
from .limits import MEMORY
from .running_cautions import as_dict as caution
from .version import VERSION

PRESSURE_KINDS = ("station", "sea-level")
CONDITIONS_ARE = ("this-run", "another-run")
# What to mind at a dyno.
CAUTION_CODES = ("carbon-monoxide", "rotating", "hot-oil", "eyes-ears", "fire", "manual-first")


def calculate(payload: object) -> dict[str, object]:
    """Work out the correction factor by every standard, and figures as read and corrected.

    Parameters
    ----------
    payload : conditions (air_temperature_c, barometer_kpa, pressure_kind, altitude_m,
        relative_humidity_percent, oil_temperature_c, water_temperature_c), conditions_are,
        figures_are, power_kw, torque_nm

    Returns
    -------
    dict: conditions in the form runs keep, dry_pressure_kpa, vapour_pressure_kpa, reduction,
    observed, standards, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it; figures that a dyno had
        corrected, with another run's air

    Validity
    --------
    See `correction.factor`.

    Reference
    ---------
    See `correction_standards.STANDARDS`.
    """
    form = Form(payload)
    inner = form.take_form("conditions")
    if inner is None:
        need = "an object: air temperature, barometer and its kind, humidity"
        form.refuse("missing", "conditions", None, need, "Read them at the dyno, for this run.")
        inner = Form({}, "conditions", [])
    temperature = inner.take_number("air_temperature_c")
    barometer = inner.take_number("barometer_kpa")
    kind = inner.take_choice("pressure_kind", PRESSURE_KINDS)
    altitude = inner.take_number("altitude_m", required=kind == "sea-level")
    humidity = inner.take_number("relative_humidity_percent")
    oil = inner.take_number("oil_temperature_c", required=False)
    water = inner.take_number("water_temperature_c", required=False)
    inner.close()
    whose = form.take_choice("conditions_are", CONDITIONS_ARE, "this-run")
    basis = form.take_choice("figures_are", FIGURES_ARE, OBSERVED)
    power = form.take_number("power_kw", required=False)
    torque = form.take_number("torque_nm", required=False)
    form.close()
    if whose == "another-run" and basis is not None and basis != OBSERVED:
        need = "this run's own conditions: only they take the dyno's correction off again"
        step = "Enter this run's own air, or take the figures as the dyno read them."
        form.refuse("standards-mixed", "figures_are", basis, need, step)
    form.finish()
    assert temperature is not None and barometer is not None  # noqa: S101, PT018  (finish raised)
    assert humidity is not None and kind is not None and basis is not None  # noqa: S101, PT018
    station = barometer
    if kind == "sea-level" and altitude is not None:
        station = barometer * height_ratio(altitude)
    air = Conditions(temperature, station, humidity, oil, water)
    dry = dry_pressure(station, humidity, temperature)
    read = {
        "power_kw": None if power is None else observed(power, basis, air),
        "torque_nm": None if torque is None else observed(torque, basis, air),
    }
    return {
        "calc": "correction",
        "core_version": VERSION,
        "conditions": {
            "air_temperature_c": temperature,
            "station_pressure_kpa": station,
            "relative_humidity_percent": humidity,
            "oil_temperature_c": oil,
            "water_temperature_c": water,
        },
        "vapour_pressure_kpa": station - dry,
        "saturation_kpa": vapour_pressure(temperature),
        "vapour_source": VAPOUR_SOURCE,
        "dry_pressure_kpa": dry,
        "reduction": _reduction(kind, altitude),
        "figures_are": basis,
        "observed": read,
        "standards": [_row(standard, air, dry, read) for standard in STANDARDS],
        "warnings": pressure_doubts(kind, barometer, altitude),
        "cautions": dyno_cautions(),
    }


def _reduction(kind: str, altitude: float | None) -> dict[str, object] | None:
    """Say how a sea-level pressure was brought to the place; None for a station pressure."""
    if kind == "station" or altitude is None:
        return None
    text = "Sea-level pressure brought to the place by the standard atmosphere of ISO 2533. A "
    text += "barometer at the dyno is better."
    return {"altitude_m": altitude, "ratio_to_sea_level": height_ratio(altitude), "text": text,
            "origin": MEMORY}  # fmt: skip


def _row(
    standard: Standard, air: Conditions, dry: float, read: dict[str, float | None]
) -> dict[str, object]:
    """Give a standard with its factor and the figures corrected by it."""
    at = factor(standard.id, air)
    row = as_dict(standard)
    row["factor"] = at
    for name, value in read.items():
        row[name] = None if value is None else value * at
    row["warnings"] = doubts(standard, air, dry)
    return row


def dyno_cautions() -> list[dict[str, object]]:
    """Give what to mind at a dyno, the maker's manual last."""
    return [caution(code) for code in CAUTION_CODES]

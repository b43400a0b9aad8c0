"""Power correction: from the air of a run to a factor, and figures from one basis to another."""

from collections import namedtuple

from .air import dry_pressure
from .correction_standards import BY_ID, IDS, OBSERVED
from .errors import Refused, problem
from .fields import Form

# What dyno figures may be: as read, or with a standard's correction applied by the dyno.
FIGURES_ARE = (OBSERVED,) + IDS


class Conditions(namedtuple("Conditions", ("temperature", "station", "humidity", "oil", "water"))):
    """The air of a run [degC, kPa, %] and its oil and water [degC, or None]."""

    __slots__ = ()


def factor(standard: str, air: Conditions) -> float:
    """Correction factor of a standard: corrected figure = factor times observed figure.

    factor = scale (p_ref / p)^m ((t + zero) / (t_ref + zero))^n - offset

    Parameters
    ----------
    standard : id of a standard, one of IDS
    air : conditions of the run, pressure as at the engine [degC, kPa, %]

    Returns
    -------
    factor, for power and torque alike [1]

    Raises
    ------
    none

    Validity
    --------
    Naturally aspirated spark ignition at full throttle. Outside a standard's own ranges the factor
    is worked out all the same; `correction_checks.doubts` says so.

    Reference
    ---------
    See the figures of each row of `correction_standards.STANDARDS`.
    """
    pressure = air.station
    if BY_ID[standard].air == "dry":
        pressure = dry_pressure(air.station, air.humidity, air.temperature)
    return form_factor(standard, pressure, air.temperature)


def form_factor(standard: str, pressure: float, temperature: float) -> float:
    """Correction factor from the pressure that the standard's form takes.

    factor = scale (p_ref / p)^m ((t + zero) / (t_ref + zero))^n - offset

    Parameters
    ----------
    standard : id of a standard, one of IDS
    pressure : dry or total, as the standard's `air` says [kPa]
    temperature : of the air [degC]

    Returns
    -------
    factor [1]

    Raises
    ------
    none

    Validity
    --------
    As `factor`.

    Reference
    ---------
    As `factor`.
    """
    by = BY_ID[standard].by
    zero = by["zero_k"]
    air = (by["reference_pressure_kpa"] / pressure) ** by["pressure_exponent"]
    warm = (temperature + zero) / (by["reference_temperature_c"] + zero)
    return float(by["scale"] * air * warm ** by["temperature_exponent"] - by["offset"])


def observed(
    value: float, figures_are: str, air: Conditions | None, field: str = "figures_are"
) -> float:
    """Bring a figure back to what was read, by the run's own air and the dyno's own standard.

    observed = figure / factor of the standard that was applied

    Parameters
    ----------
    value : power or torque [any unit]
    figures_are : "observed", or the id of the standard that the dyno applied
    air : the run's own conditions [degC, kPa, %], or None if they are not known
    field : name of the field to complain of

    Returns
    -------
    the figure as read [unit of the value]

    Raises
    ------
    Refused : corrected figures without the run's own conditions

    Validity
    --------
    The dyno used the same conditions; its own rounding comes back with them.

    Reference
    ---------
    none
    """
    if figures_are == OBSERVED:
        return value
    if air is None:
        raise Refused([_no_air(figures_are, field)])
    return value / factor(figures_are, air)


def corrected(
    value: float, figures_are: str, air: Conditions | None, standard: str,
    field: str = "figures_are",
) -> float:  # fmt: skip
    """Bring a figure to a standard, through what was read; standards are never mixed.

    corrected = observed times factor of the standard wanted

    Parameters
    ----------
    value : power or torque [any unit]
    figures_are : "observed", or the id of the standard that the dyno applied
    air : the run's own conditions [degC, kPa, %], or None if they are not known
    standard : "observed", or the id of the standard wanted
    field : name of the field to complain of

    Returns
    -------
    the figure by the standard wanted [unit of the value]

    Raises
    ------
    Refused : another standard than the dyno's is wanted and the run's conditions are not known

    Validity
    --------
    As `factor`.

    Reference
    ---------
    none
    """
    if figures_are == standard:
        return value
    if air is None and standard != OBSERVED and figures_are == OBSERVED:
        step = "Enter the run's air temperature, station pressure and humidity."
        need = "the run's own conditions, to correct to " + BY_ID[standard].label
        raise Refused([problem("no-conditions", field, figures_are, need, step)])
    read = observed(value, figures_are, air, field)
    if standard == OBSERVED or air is None:
        return read
    return read * factor(standard, air)


def _no_air(figures_are: str, field: str) -> dict[str, object]:
    name = BY_ID[figures_are].label
    need = "the run's own conditions: only they, with " + name + ", take its correction off again"
    step = "Enter that run's own air, or keep to " + name + " for the whole session."
    return problem("standards-mixed", field, figures_are, need, step)


def take_conditions(form: Form | None) -> Conditions | None:
    """Read the conditions of a run, as runs keep them.

    Parameters
    ----------
    form : air_temperature_c, station_pressure_kpa, relative_humidity_percent, and if known
        oil_temperature_c, water_temperature_c; None if there are none

    Returns
    -------
    Conditions, or None after noting a problem or without a form

    Raises
    ------
    none

    Validity
    --------
    The glossary's ranges.

    Reference
    ---------
    none
    """
    if form is None:
        return None
    temperature = form.take_number("air_temperature_c")
    station = form.take_number("station_pressure_kpa")
    humidity = form.take_number("relative_humidity_percent")
    oil = form.take_number("oil_temperature_c", required=False)
    water = form.take_number("water_temperature_c", required=False)
    form.close()
    if temperature is None or station is None or humidity is None:
        return None
    return Conditions(temperature, station, humidity, oil, water)

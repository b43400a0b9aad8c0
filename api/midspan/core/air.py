"""Air at the dynamometer: water vapour, dry pressure, and station against sea-level pressure."""

import math

# Reduction with height in the standard atmosphere of ISO 2533; both constants from memory,
# unverified, checked against a published column of heights and pressures.
LAPSE_PER_M, LAPSE_EXPONENT = 2.25577e-5, 5.25588
# The standard atmosphere, ISO 2533.
SEA_LEVEL_KPA = 101.325
VAPOUR_SOURCE = "Buck (1996), as printed in rdrr.io/cran/pvldcurve/man/SaturationVaporPressure.html"


def vapour_pressure(temperature: float) -> float:
    """Saturation vapour pressure of water.

    es = 0.61121 exp((18.678 - t/234.5) t/(257.14 + t))

    Parameters
    ----------
    temperature : t, of the air [degC]

    Returns
    -------
    es over liquid water [kPa]

    Raises
    ------
    none

    Validity
    --------
    0 to 50 degC: within 0.1 % of published tables. Below, ice holds less: the difference at
    -20 degC is 0.02 kPa.

    Reference
    ---------
    Buck's equation, rdrr.io/cran/pvldcurve/man/SaturationVaporPressure.html, whose print lacks the
    line between t and 257.14 + t; held against "Vapour pressure of water",
    db0nus869y26v.cloudfront.net/en/Vapour_pressure_of_water.
    """
    share = temperature / (257.14 + temperature)
    return 0.61121 * math.exp((18.678 - temperature / 234.5) * share)


def dry_pressure(station: float, humidity: float, temperature: float) -> float:
    """Pressure of the dry part of the air, which brings the oxygen.

    Pd = B - RH es(t)

    Parameters
    ----------
    station : B, absolute pressure where the engine stands, never reduced to sea level [kPa]
    humidity : RH, relative [%]
    temperature : t, of the air where the humidity was read [degC]

    Returns
    -------
    Pd [kPa]

    Raises
    ------
    none

    Validity
    --------
    As `vapour_pressure`.

    Reference
    ---------
    Dalton's law; the form (B - Pv) in eng-tips.com/threads/correction-factor-limits.17569/latest.
    """
    return station - humidity / 100 * vapour_pressure(temperature)


def height_ratio(altitude: float) -> float:
    """Pressure at a height over that at sea level, in the standard atmosphere.

    p/p0 = (1 - 2.25577e-5 h)^5.25588

    Parameters
    ----------
    altitude : h, above sea level [m]

    Returns
    -------
    p/p0 [1]

    Raises
    ------
    none

    Validity
    --------
    -500 to 11000 m. A weather service that reduces by the day's own temperature differs by some
    tenths of a kPa at 500 m: read a station pressure where you can.

    Reference
    ---------
    ISO 2533, constants from memory, unverified; a maker's table AH00.10-P-2010-02A prints losses of
    6, 12, 58, 115 and 221 hPa at 50, 100, 500, 1000 and 2000 m.
    """
    return float((1 - LAPSE_PER_M * altitude) ** LAPSE_EXPONENT)

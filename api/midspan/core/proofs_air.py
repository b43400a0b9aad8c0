"""Published figures of air and of the correction of power."""

from .air import height_ratio, vapour_pressure
from .correction import Conditions, corrected, factor, form_factor
from .proofs import published, recalled

_DAYS = "Dyno correction standards"
_DAYS_AT = "teamzr1.com/ubbthreads, number 2481"
_AIR = (("air", "degF"), ("barometer", "inHg"), ("humidity", "%"))
# The engine maker's table, read as a search result without address.
_TABLE = "Engine maker's table AH00.10-P-2010-02A, no address kept"
_IN_HG_KPA = 3.386389


def _conditions(fahrenheit: float, in_hg: float, humidity: float) -> Conditions:
    return Conditions((fahrenheit - 32) / 1.8, in_hg * _IN_HG_KPA, humidity, None, None)


def _j607(fahrenheit: float, in_hg: float, humidity: float) -> float:
    return factor("j607", _conditions(fahrenheit, in_hg, humidity))


def _corrected(power: float, fahrenheit: float, in_hg: float, humidity: float) -> float:
    return corrected(power, "observed", _conditions(fahrenheit, in_hg, humidity), "j607")


def _plain_root(hectopascal: float, celsius: float) -> float:
    """Give the plain root form about 99 kPa and 25 C: J1349 turns it about its 15 % of losses."""
    return (form_factor("j1349-1990", hectopascal / 10, celsius) + 0.18) / 1.18


_WATER = (
    (0, "0.6113"), (5, "0.8726"), (10, "1.2281"), (15, "1.7056"), (20, "2.3388"), (25, "3.1690"),
    (30, "4.2455"), (35, "5.6267"), (40, "7.3814"), (45, "9.5898"), (50, "12.3440"),
)  # fmt: skip
_ROOT = (
    (1040, 0, "0.9111"), (1040, 10, "0.9277"), (1040, 20, "0.9439"), (1040, 25, "0.9519"),
    (1040, 30, "0.9599"), (1040, 40, "0.9756"), (1040, 50, "0.9910"), (1020, 0, "0.9290"),
    (1020, 10, "0.9458"), (1020, 20, "0.9624"), (1020, 25, "0.9706"), (1020, 30, "0.9787"),
    (1020, 40, "0.9947"), (1020, 50, "1.0105"), (1010, 0, "0.9382"), (1010, 10, "0.9552"),
    (1010, 20, "0.9719"), (1010, 25, "0.9802"), (1010, 30, "0.9884"), (1010, 40, "1.0046"),
    (1010, 50, "1.0205"), (1000, 0, "0.9476"), (1000, 10, "0.9648"), (1000, 20, "0.9817"),
    (1000, 25, "0.9900"), (1000, 30, "0.9983"), (1000, 40, "1.0146"), (1000, 50, "1.0307"),
    (995, 0, "0.9523"), (995, 10, "0.9696"), (995, 20, "0.9866"), (995, 25, "0.9950"),
    (995, 30, "1.0033"), (995, 40, "1.0197"), (995, 50, "1.0359"),
)  # fmt: skip

PROOFS = (
    published(
        "air.vapour_pressure", "Vapour pressure of water", "kPa", (("air", "degC"),),
        vapour_pressure, "Vapour pressure of water: table",
        "db0nus869y26v.cloudfront.net/en/Vapour_pressure_of_water", _WATER,
        lambda celsius: 1e-3 * vapour_pressure(celsius),
        "The formula is a fit: a thousandth is allowed.",
    ),
    published(
        "air.vapour_pressure", "Vapour pressure of water", "kPa", (("air", "degC"),),
        vapour_pressure, "Tetens equation, printed values",
        "rdrr.io/github/jvitorpinto/agmet/man/tetens_equation.html", (
            (5, "0.872311"), (10, "1.227963"), (15, "1.705346"), (20, "2.338281"),
            (25, "3.167778"), (30, "4.243065"),
        ), lambda celsius: 1e-3 * vapour_pressure(celsius),
        "Another formula than ours; both are fits, to a thousandth.",
    ),
    recalled(
        "air.height_ratio", "Loss of pressure with height", "hPa", (("height", "m"),),
        lambda metres: 1013.25 * (1 - height_ratio(metres)), _TABLE,
        ((50, "6"), (100, "12"), (500, "58"), (1000, "115")), 0.65,
        "500 m is 0.56 off in ISO 2533 too.",
    ),
    recalled(
        "air.height_ratio", "Loss of pressure with height", "hPa", (("height", "m"),),
        lambda metres: 1013.25 * (1 - height_ratio(metres)), _TABLE, ((2000, "221"),), 3.0,
        "ISO 2533 gives 218.3; the table is rounder.",
    ),
    published(
        "correction.factor", "Factor by SAE J607", "", _AIR, _j607, _DAYS, _DAYS_AT,
        ((85, 28.85, 85, "1.1005"), (55, 30.10, 35, "0.994")), 1e-3,
        "The source does not say how it takes the moisture of the air.",
    ),
    published(
        "correction.corrected", "Power by SAE J607", "hp", (("power read", "hp"),) + _AIR,
        _corrected, _DAYS, _DAYS_AT,
        ((400, 85, 28.85, 85, "440"), (442, 55, 30.10, 35, "440")), 1.0,
        "The source says about 440.",
    ),
    published(
        "correction.form_factor", "SAE J607 on a day of 99 kPa dry and 25 C", "", (),
        lambda: form_factor("j607", 99, 25), "Atmospheric correction",
        "dtsaust.com.au/atmocorrect.php", (("1.04",),), None,
        "Where J1349 is 1. The source says about 4 %.",
    ),
    recalled(
        "correction.form_factor", "Factor about 99 kPa and 25 C", "",
        (("pressure", "hPa"), ("air", "degC")), _plain_root, _TABLE, _ROOT,
    ),
)  # fmt: skip

"""Published examples of setting a cam: dead centre, centrelines, durations, compression."""

import math

from .adjuster import tooth_step
from .calc_compression import pressure
from .crank_slider import Slider, drop
from .proofs import published
from .timing import closing_of, duration, lobe_separation, middle, opening_of, overlap

_WHEEL = "Degree-wheel page"
_WHEEL_AT = "blog.decatech.com/how-to-wos/degree-wheel-murah-5f8779"
_SLANT = "Degreeing a slant camshaft"
_SLANT_AT = "forabodiesonly.com/mopar/posts/1970493881/printfriendly"
_DIAGRAMS = "Valve timing diagrams"
_DIAGRAMS_AT = "ausmini.com/forums/viewtopic.php?p=237565"
_AROC = "AROC, Measuring TDC"
_AROC_AT = "stlaroc.com/features/meastdc.html"
_PRESSURE = "Compression ratio"
_PRESSURE_AT = "altsci.com/3/p/Compression%20ratio/37"
_INTAKE = (("opens before TDC", "deg"), ("closes after BDC", "deg"))
_EXHAUST = (("opens before BDC", "deg"), ("closes after TDC", "deg"))
# In inches; the relation knows no unit.
_CRANK = Slider(3.48 / 2, 5.70, 0.0)
_ABOUT = "Worked for a stroke of 3.48 in and a rod of 5.70 in. The source says about."


def _intake_duration(opens: float, closes: float) -> float:
    return duration(-opens, 180 + closes)


def _exhaust_duration(opens: float, closes: float) -> float:
    return duration(-180 - opens, closes)


def _moved(start: float, end: float) -> float:
    return drop(_CRANK, math.radians(end)) - drop(_CRANK, math.radians(start))


_FROM_TO = (("from, after TDC", "deg"), ("to, after TDC", "deg"))

PROOFS = (
    published(
        "timing.middle", "How far the wheel is off", "deg",
        (("stop one way", "deg"), ("stop the other way", "deg")),
        lambda one, other: -middle(-one, other), _WHEEL, _WHEEL_AT, ((36.75, 35.25, "0.75"),),
    ),
    published(
        "timing.duration", "Each side of true TDC", "deg",
        (("stop one way", "deg"), ("stop the other way", "deg")),
        lambda one, other: duration(-one, other) / 2, _WHEEL, _WHEEL_AT, ((36.75, 35.25, "36"),),
        1e-9, "36 exactly.",
    ),
    published(
        "timing.middle", "Intake centreline", "deg",
        (("rising, after TDC", "deg"), ("falling, after TDC", "deg")), middle,
        _WHEEL, _WHEEL_AT, ((60, 145.5, "102.75"),),
    ),
    published(
        "timing.middle", "Intake centreline", "deg", _INTAKE,
        lambda opens, closes: middle(-opens, 180 + closes), _SLANT, _SLANT_AT, ((6, 42, "108"),),
        1e-9, "Whole degrees, exactly.",
    ),
    published(
        "timing.duration", "Intake duration", "deg", _INTAKE, _intake_duration,
        _SLANT, _SLANT_AT, ((6, 42, "228"),), 1e-9, "Whole degrees, exactly.",
    ),
    published(
        "timing.overlap", "Overlap", "deg",
        (("intake opens before TDC", "deg"), ("exhaust closes after TDC", "deg")),
        lambda opens, closes: overlap(-opens, closes), _SLANT, _SLANT_AT, ((6, 12, "18"),),
        1e-9, "Whole degrees, exactly.",
    ),
    published(
        "timing.duration", "Intake duration", "deg", _INTAKE, _intake_duration,
        _DIAGRAMS, _DIAGRAMS_AT, ((20, 60, "260"), (25, 55, "260"), (15, 65, "260")),
        1e-9, "As ground, advanced and retarded by 5: whole degrees, exactly.",
    ),
    published(
        "timing.duration", "Exhaust duration", "deg", _EXHAUST, _exhaust_duration,
        _DIAGRAMS, _DIAGRAMS_AT, ((60, 20, "260"),), 1e-9, "Whole degrees, exactly.",
    ),
    published(
        "timing.opening_of", "Intake opens before TDC", "deg",
        (("centreline", "deg"), ("duration", "deg")),
        lambda centre, lasting: -opening_of(centre, lasting), _DIAGRAMS, _DIAGRAMS_AT,
        ((105, 260, "25"), (115, 260, "15")), 1e-9,
        "A cam of 20-60 / 60-20 advanced and retarded by 5; the centrelines are worked from it.",
    ),
    published(
        "timing.closing_of", "Intake closes after BDC", "deg",
        (("centreline", "deg"), ("duration", "deg")),
        lambda centre, lasting: closing_of(centre, lasting) - 180, _DIAGRAMS, _DIAGRAMS_AT,
        ((105, 260, "55"), (115, 260, "65")), 1e-9,
        "A cam of 20-60 / 60-20 advanced and retarded by 5; the centrelines are worked from it.",
    ),
    published(
        "timing.lobe_separation", "Lobe separation", "cam deg",
        (("duration of each", "deg"), ("overlap", "deg")),
        lambda lasting, both: lobe_separation(
            middle(-both / 2, lasting - both / 2), middle(-both / 2, lasting - both / 2)
        ),
        "Cam relationships", "starquestclub.com, topic 149479", ((264, 45, "109.5"),),
    ),
    published(
        "adjuster.tooth_step", "One tooth of the crank gear", "deg", (("crank teeth", ""),),
        tooth_step, "Cam timing", "dummett.net/ime/website/ime/a2z/cam_time.html",
        ((20, "18"),), 1e-9, "18 exactly.",
    ),
    published(
        "crank_slider.drop", "Piston moves", "in", _FROM_TO, _moved, _AROC, _AROC_AT,
        ((0, 5, "0.009"),), None, _ABOUT,
    ),
    published(
        "crank_slider.drop", "Piston moves", "in", _FROM_TO, _moved, _AROC, _AROC_AT,
        ((87.5, 92.5, "0.150"),), 0.0025, _ABOUT,
    ),
    published(
        "crank_slider.drop", "Piston moves", "in", _FROM_TO, _moved, _AROC, _AROC_AT,
        ((0, 2, "0.0013"),), 0.0001, _ABOUT,
    ),
    published(
        "calc_compression.pressure", "Pressure after compression", "times inlet pressure",
        (("ratio", ""), ("exponent", "")),
        lambda ratio, exponent: pressure(ratio, exponent, 1.0), _PRESSURE, _PRESSURE_AT,
        ((7.5, 1.3, "13.7"),),
    ),
    published(
        "calc_compression.pressure", "Pressure after compression", "psi",
        (("ratio", ""), ("exponent", ""), ("inlet", "psi")), pressure, _PRESSURE, _PRESSURE_AT,
        ((7.5, 1.3, 14.7, "201.8"),),
    ),
    published(
        "calc_compression.pressure", "The same on a gauge", "psi",
        (("ratio", ""), ("exponent", ""), ("inlet", "psi")),
        lambda ratio, exponent, inlet: pressure(ratio, exponent, inlet) - inlet,
        _PRESSURE, _PRESSURE_AT, ((7.5, 1.3, 14.7, "187.1"),),
    ),
)  # fmt: skip

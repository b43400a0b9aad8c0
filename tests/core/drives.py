"""Drives the core's tests share: the one worked by hand in the design, and any plausible one."""

import math
from typing import Any

from hypothesis import strategies as st

Payload = dict[str, Any]

# Worked by hand, apart from the program: 22/44 teeth, pitch 9.525 mm, 58 links. Just taut at
# 114.155 mm; here 0.05 mm closer.
WORKED: Payload = {
    "pitch_mm": 9.525,
    "crank_teeth": 22,
    "cam_teeth": 44,
    "centre_distance_mm": 114.10,
    "links": 58,
}


def floats(low: float, high: float) -> st.SearchStrategy[float]:
    """Finite numbers of a range."""
    return st.floats(low, high, allow_nan=False, allow_infinity=False)


def handbook_centre(pitch: float, z1: int, z2: int, links: float) -> float:
    """Centre distance of a chain by the handbook's inverse, Mott Ex. 7-3 form."""
    half = links - (z1 + z2) / 2
    root = half * half - 8 * ((z2 - z1) / (2 * math.pi)) ** 2
    return pitch * (half + math.sqrt(root)) / 4


# Small gears close together: lash about the first limits in print is no more than loose here.
SMALL: Payload = {
    "pitch_mm": 6.35,
    "crank_teeth": 15,
    "cam_teeth": 30,
    "centre_distance_mm": handbook_centre(6.35, 15, 30, 40),
    "links": 40,
}


@st.composite
def cam_drives(draw: st.DrawFn, loosest_mm: float = 3.0) -> Payload:
    """A cam drive whose chain is between just taut and a few millimetres long."""
    z1 = draw(st.integers(15, 30))
    pitch = draw(st.sampled_from((6.35, 8.0, 9.525, 12.7)))
    links = 2 * math.ceil(z1 * draw(floats(1.28, 2.2)))
    taut = handbook_centre(pitch, z1, 2 * z1, links)
    # 2 cos b per mm of centre distance, and cos b is about 0.9: half the excess, a bit more.
    centre = taut - draw(floats(0.03, loosest_mm)) * 0.55
    return {
        "pitch_mm": pitch,
        "crank_teeth": z1,
        "cam_teeth": 2 * z1,
        "centre_distance_mm": centre,
        "links": links,
    }

"""The taut length against general-purpose libraries that know nothing of chains."""

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq
from shapely import MultiPoint, Point, union_all

from core.drives import Payload, cam_drives
from midspan.core import run
from midspan.core.drive import Drive, geometry, taut_centre_distance

DRIVES = [
    Drive(9.525, 22, 44, 114.10, 58),
    Drive(9.525, 18, 36, 110.0, 52),
    Drive(8.0, 18, 36, 97.29, 52),
    Drive(12.7, 17, 65, 387.9, 104),
    Drive(9.525, 44, 22, 114.10, 58),
    Drive(9.525, 30, 30, 142.875, 60),
]


def hull_length(r1: float, r2: float, centre: float, quarter: int) -> float:
    """Girth of the hull round two circles, each drawn with 4 * quarter corners on it."""
    circles = [
        Point(0, 0).buffer(r1, quad_segs=quarter),
        Point(0, centre).buffer(r2, quad_segs=quarter),
    ]
    return float(union_all(circles).convex_hull.length)


@pytest.mark.parametrize("drive", DRIVES, ids=str)
def test_belt_round_circles_of_z_pitches(drive: Drive) -> None:
    """Circles whose girth is z pitches: the belt round them, by shapely.

    The corners lie on the circles, so the hull is short; and each circle holds one smaller by
    cos(pi / corners), so it is short by no more than 2 pi r (1 - cos). The belt itself differs from
    the chain line, whose tangents are to the pitch circles, by -(C cos b) (db)^2, worked out here.
    """
    r1, r2 = (z * drive.pitch / (2 * math.pi) for z in (drive.crank_teeth, drive.cam_teeth))
    quarter = 4096
    shortfall = 2 * math.pi * max(r1, r2) * (1 - math.cos(math.pi / (4 * quarter)))
    hull = hull_length(r1, r2, drive.centre_distance, quarter)
    shape = geometry(drive)
    turned = shape.angle - math.asin((r2 - r1) / drive.centre_distance)
    second_order = shape.strand * turned**2
    assert hull - 2 * second_order - 1e-9 <= shape.taut_length
    assert shape.taut_length <= hull + shortfall + 2 * second_order + 1e-9
    assert shortfall + 4 * second_order < 5e-4  # so the bracket means something


def test_the_hull_comes_closer_as_its_corners_double() -> None:
    r1, r2 = (z * 9.525 / (2 * math.pi) for z in (22, 44))
    b = math.asin((r2 - r1) / 114.1)
    belt = 2 * 114.1 * math.cos(b) + r1 * (math.pi - 2 * b) + r2 * (math.pi + 2 * b)
    misses = [belt - hull_length(r1, r2, 114.1, 2**k) for k in range(4, 11)]
    assert all(miss > 0 for miss in misses)
    orders = [math.log2(a / b) for a, b in pairwise(misses)]
    assert np.mean(orders) == pytest.approx(2, abs=0.1)


def polygon(radius: float, teeth: int, turn: float, y: float) -> list[tuple[float, float]]:
    """Joint centres of a chain seated all round a gear."""
    angles = [2 * math.pi * i / teeth + turn for i in range(teeth)]
    return [(radius * math.cos(a), y + radius * math.sin(a)) for a in angles]


@pytest.mark.parametrize("drive", DRIVES[:3], ids=str)
def test_taut_length_is_the_mean_over_all_positions_of_the_gears(drive: Drive) -> None:
    """A chain lies on polygons. Its taut length, hull of their corners, swings with the turning
    of the gears; the formula must give the mean, and the swing be small against a working slack.
    """
    shape = geometry(drive)
    steps = 16
    lengths = []
    for i in range(steps):
        crank = polygon(
            shape.crank_radius, drive.crank_teeth, 2 * math.pi * i / steps / drive.crank_teeth, 0
        )
        for j in range(steps):
            turn = 2 * math.pi * j / steps / drive.cam_teeth
            cam = polygon(shape.cam_radius, drive.cam_teeth, turn, drive.centre_distance)
            lengths.append(MultiPoint(crank + cam).convex_hull.length)
    assert np.mean(lengths) == pytest.approx(shape.taut_length, abs=0.0005)
    assert max(lengths) - min(lengths) < 0.05


def belt_pitches(pitch: float, z1: int, z2: int, centre: float) -> float:
    """The chain line written anew, from the corners of the tangent points."""
    r1 = pitch / 2 / math.sin(math.pi / z1)
    r2 = pitch / 2 / math.sin(math.pi / z2)
    strand = math.sqrt(centre**2 - (r2 - r1) ** 2)
    lean = math.atan2(r2 - r1, strand)
    return 2 * strand / pitch + z1 * (0.5 - lean / math.pi) + z2 * (0.5 + lean / math.pi)


@settings(max_examples=200)
@given(
    z1=st.integers(9, 60),
    z2=st.integers(9, 150),
    spare=st.floats(1.01, 20),
    pitch=st.floats(3, 130),
    start=st.floats(0.1, 10),
)
def test_taut_centre_distance_is_the_root(
    z1: int, z2: int, spare: float, pitch: float, start: float
) -> None:
    """From any starting point, the root that a bracketing solver finds."""
    least = abs(0.5 / math.sin(math.pi / z2) - 0.5 / math.sin(math.pi / z1)) * pitch
    links = math.ceil(max(z1, z2) + 2 * spare)
    floor = least * (1 + 1e-9) + 1e-9 * pitch

    def miss(centre: float) -> float:
        return belt_pitches(pitch, z1, z2, centre) - links

    touching = (0.5 / math.sin(math.pi / z2) + 0.5 / math.sin(math.pi / z1)) * pitch
    found = taut_centre_distance(Drive(pitch, z1, z2, touching + start * pitch, links))
    if miss(floor) > 0:
        assert found is None
        return
    root = brentq(miss, floor, links * pitch, xtol=1e-13, rtol=1e-14)
    assert found == pytest.approx(root, rel=1e-9)


@settings(max_examples=100)
@given(drive=cam_drives())
def test_the_outline_is_tangent_and_as_long_as_the_strand(drive: Payload) -> None:
    found = run("drive", {"drive": drive})
    outline = found["outline"]
    crank = np.array([outline["crank"]["x"], outline["crank"]["y"]])
    cam = np.array([outline["cam"]["x"], outline["cam"]["y"]])
    assert cam - crank == pytest.approx([0, drive["centre_distance_mm"]])
    assert outline["crank"]["r"] == pytest.approx(found["crank_pitch_diameter_mm"] / 2)
    assert outline["cam"]["r"] == pytest.approx(found["cam_pitch_diameter_mm"] / 2)
    sides = []
    for name in ("taut_strand", "slack_strand"):
        low, high = (np.array(point) for point in outline[name])
        along = high - low
        assert np.hypot(*along) == pytest.approx(found["strand_mm"])
        assert np.hypot(*(low - crank)) == pytest.approx(outline["crank"]["r"])
        assert np.hypot(*(high - cam)) == pytest.approx(outline["cam"]["r"])
        assert along @ (low - crank) == pytest.approx(0, abs=1e-7)
        assert along @ (high - cam) == pytest.approx(0, abs=1e-7)
        sides.append(low)
    assert sides[0][0] * sides[1][0] < 0, "one strand each side"
    normal = np.array(outline["slack_normal"])
    assert np.hypot(*normal) == pytest.approx(1)
    assert normal @ (sides[1] - crank) == pytest.approx(outline["crank"]["r"]), "pointing outwards"
    wraps = found["crank_wrap_deg"] + found["cam_wrap_deg"]
    assert wraps == pytest.approx(360)
    assert found["cam_wrap_deg"] - 180 == pytest.approx(2 * found["contact_angle_deg"])

"""The drive itself: lengths, wraps, fit of the nominal chain, its outline and its curve."""

import math

from .build import Build, take_build
from .drive import elongation_of, excess_length, handbook_pitches, taut_centre_distance
from .fields import Form
from .phase import degrees
from .state import readings_of
from .version import VERSION
from .warnings import drive_warnings

# The curve ends at the widest wear limit of general drives.
CURVE_END = 0.03


def calculate(payload: object) -> dict[str, object]:
    """Work out a drive.

    Parameters
    ----------
    payload : {"drive": the drive, "curve_points": how many points of the curve, default 0}

    Returns
    -------
    dict of lengths [mm], angles [deg], outline [mm], curve and warnings

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    As `drive.geometry`; the chain at its nominal length.

    Reference
    ---------
    See `drive`.
    """
    form = Form(payload)
    build = take_build(form)
    points = form.take_number("curve_points", required=False)
    form.close()
    form.finish()
    assert build is not None  # noqa: S101  (finish raised if it was refused)
    drive, shape = build.drive, build.geometry
    nominal = readings_of(build, shape, excess_length(drive, shape.taut_length, 0.0))
    return {
        "calc": "drive",
        "core_version": VERSION,
        "crank_pitch_diameter_mm": 2 * shape.crank_radius,
        "cam_pitch_diameter_mm": 2 * shape.cam_radius,
        "strand_mm": shape.strand,
        "contact_angle_deg": degrees(shape.angle),
        "crank_wrap_deg": 180 - 2 * degrees(shape.angle),
        "cam_wrap_deg": 180 + 2 * degrees(shape.angle),
        "taut_length_pitches": shape.taut_pitches,
        "taut_length_mm": shape.taut_length,
        "handbook_length_pitches": handbook_pitches(drive),
        "chain_length_mm": drive.links * drive.pitch,
        "taut_centre_distance_mm": taut_centre_distance(drive),
        "excess_mm": nominal["excess_mm"],
        "movement_mm": nominal["movement_mm"],
        "crank_rock_deg": nominal["crank_rock_deg"],
        "outline": outline(build),
        "curve": curve(build, int(points or 0)),
        "warnings": drive_warnings(build),
    }


def outline(build: Build) -> dict[str, object]:
    """Give the pitch circles and tangent points for a drawing to scale.

    Parameters
    ----------
    build : the drive

    Returns
    -------
    dict of points [mm]: crank gear at the origin, cam gear straight above; each strand from its
    tangent point on the crank gear to that on the cam gear; the taut one on the left

    Raises
    ------
    none

    Validity
    --------
    Chain line on the pitch circles.

    Reference
    ---------
    Plane geometry: the tangent points lie at right angles to the strands.
    """
    shape = build.geometry
    sine, cosine = math.sin(shape.angle), math.cos(shape.angle)
    r1, r2, c = shape.crank_radius, shape.cam_radius, build.drive.centre_distance
    # The right-hand outward normal: it leans down when the upper gear is the larger.
    right = [[r1 * cosine, -r1 * sine], [r2 * cosine, c - r2 * sine]]
    return {
        "crank": {"x": 0.0, "y": 0.0, "r": r1},
        "cam": {"x": 0.0, "y": c, "r": r2},
        "taut_strand": [[-x, y] for x, y in right],
        "slack_strand": right,
        "slack_normal": [cosine, -sine],
    }


def curve(build: Build, points: int) -> list[dict[str, float]]:
    """Give movement and lash against wear, from just taut to the widest wear limit.

    Parameters
    ----------
    build : the drive
    points : how many points, 0 for none

    Returns
    -------
    list of dict with elongation_percent, excess_mm, movement_mm, crank_rock_deg; closer together
    near taut, where the movement rises steeply

    Raises
    ------
    none

    Validity
    --------
    As the conversions in `state.readings_of`.

    Reference
    ---------
    See `state.readings_of`.
    """
    shape = build.geometry
    start = elongation_of(build.drive, shape.taut_length, 0.0)
    end = max(CURVE_END, start + CURVE_END / 2)
    rows = []
    for i in range(points):
        share = (i / (points - 1)) ** 2 if points > 1 else 0.0
        elongation = start + (end - start) * share
        excess = excess_length(build.drive, shape.taut_length, elongation)
        # The first point is taut by definition; keep rounding from making it a hair loose.
        at = readings_of(build, shape, excess if i else 0.0)
        names = ("elongation_percent", "excess_mm", "movement_mm", "crank_rock_deg")
        rows.append({name: at[name] for name in names})
    return rows

"""Two toothed gears and the chain round them: taut length, strand, wraps, excess length."""

import math
from collections import namedtuple


class Drive(namedtuple("Drive", ("pitch", "crank_teeth", "cam_teeth", "centre_distance", "links"))):
    """A drive as built: pitch [mm], crank_teeth, cam_teeth, centre_distance [mm], links."""

    __slots__ = ()

    def at(self, centre_distance: float) -> "Drive":
        """Give the same drive at another centre distance [mm]."""
        return Drive(self.pitch, self.crank_teeth, self.cam_teeth, centre_distance, self.links)


class Geometry(
    namedtuple(
        "Geometry",
        ("crank_radius", "cam_radius", "angle", "strand", "taut_length", "taut_pitches"),
    )
):
    """A drive worked out: radii, strand and taut_length [mm], angle [rad]."""

    __slots__ = ()


def pitch_radius(pitch: float, teeth: int) -> float:
    """Radius of the circle through the joint centres of a chain seated on a gear.

    r = p / (2 sin(pi / z))

    Parameters
    ----------
    pitch : chain pitch [mm]
    teeth : number of teeth, 3 or more

    Returns
    -------
    pitch radius [mm]

    Raises
    ------
    none

    Validity
    --------
    A gear and a chain of the same pitch. A worn chain rides higher, which is not included.

    Reference
    ---------
    ISO 606, pitch diameter; R. L. Mott, Machine Elements in Mechanical Design, 4th ed., Ex. 7-3.
    """
    return pitch / (2 * math.sin(math.pi / teeth))


def geometry(drive: Drive) -> Geometry:
    """Work out the taut chain line: straight strands tangent to both pitch circles.

    sin b = (r2 - r1) / C;  s = C cos b;
    X = 2 s / p + z1 (pi - 2 b) / (2 pi) + z2 (pi + 2 b) / (2 pi)

    Parameters
    ----------
    drive : Drive, lengths in [mm]

    Returns
    -------
    Geometry: radii, strand and taut length in [mm], strand angle in [rad]

    Raises
    ------
    ValueError : centre distance not larger than the difference of the pitch radii

    Validity
    --------
    Two gears, no guide or tensioner pressing on a strand. The joints lie on polygons, not on
    circles: as the gears turn, the true length varies about this mean by the polygon effect.

    Reference
    ---------
    Plane geometry of tangent circles; the handbook series of `handbook_pitches` is its
    approximation and the check on it.
    """
    r1 = pitch_radius(drive.pitch, drive.crank_teeth)
    r2 = pitch_radius(drive.pitch, drive.cam_teeth)
    return _laid_round(drive, r1, r2, drive.centre_distance)


def geometry_at(drive: Drive, shape: Geometry, centre_distance: float) -> Geometry:
    """Work out the taut chain line of the same two gears at another centre distance.

    As `geometry`, but for the radii, which stay as they are.

    Parameters
    ----------
    drive : Drive, lengths in [mm]; its own centre distance is not used
    shape : its geometry at any centre distance
    centre_distance : C [mm]

    Returns
    -------
    Geometry: radii, strand and taut length in [mm], strand angle in [rad]

    Raises
    ------
    ValueError : as `geometry`

    Validity
    --------
    As `geometry`.

    Reference
    ---------
    As `geometry`.
    """
    return _laid_round(drive, shape.crank_radius, shape.cam_radius, centre_distance)


def _laid_round(drive: Drive, r1: float, r2: float, centre: float) -> Geometry:
    """Lay the chain round two circles."""
    if centre <= abs(r2 - r1):
        raise ValueError("centre distance must exceed the difference of the pitch radii")
    angle = math.asin((r2 - r1) / centre)
    strand = centre * math.cos(angle)
    pitches = (
        2 * strand / drive.pitch
        + drive.crank_teeth * (math.pi - 2 * angle) / (2 * math.pi)
        + drive.cam_teeth * (math.pi + 2 * angle) / (2 * math.pi)
    )
    return Geometry(r1, r2, angle, strand, pitches * drive.pitch, pitches)


def handbook_pitches(drive: Drive) -> float:
    """Chain length in pitches by the usual handbook series.

    X = 2 C / p + (z1 + z2) / 2 + ((z2 - z1) / (2 pi))^2 p / C

    Parameters
    ----------
    drive : Drive, lengths in [mm]

    Returns
    -------
    length [pitches]

    Raises
    ------
    none

    Validity
    --------
    An approximation, good to a few hundredths of a pitch for the usual centre distances of
    30 to 50 pitches; a short cam drive can lie further off. Shown as a check, never used.

    Reference
    ---------
    R. L. Mott, Machine Elements in Mechanical Design, 4th ed., Ex. 7-3; ISO 10823.
    """
    c = drive.centre_distance / drive.pitch
    step = (drive.cam_teeth - drive.crank_teeth) / (2 * math.pi)
    return float(2 * c + (drive.crank_teeth + drive.cam_teeth) / 2 + step * step / c)


def excess_length(drive: Drive, taut_length: float, elongation: float) -> float:
    """Length of the chain beyond the taut length of its drive.

    e = n p (1 + epsilon) - X p

    Parameters
    ----------
    drive : Drive, lengths in [mm]
    taut_length : X p [mm], from `geometry`
    elongation : wear elongation as a fraction [1], 0.01 is 1 %

    Returns
    -------
    excess length [mm]; negative is interference

    Raises
    ------
    none

    Validity
    --------
    A chain that wore evenly, so that the measured pitches speak for all.

    Reference
    ---------
    Definition.
    """
    return float(drive.links * drive.pitch * (1 + elongation) - taut_length)


def elongation_of(drive: Drive, taut_length: float, excess: float) -> float:
    """Elongation at which the chain has the given excess: the inverse of `excess_length`.

    epsilon = (e + X p) / (n p) - 1

    Parameters
    ----------
    drive : Drive, lengths in [mm]
    taut_length : X p [mm]
    excess : excess length [mm]

    Returns
    -------
    elongation as a fraction [1]

    Raises
    ------
    none

    Validity
    --------
    As `excess_length`. It carries every error of the centre distance: 0.1 mm there is about
    0.035 % on a 58-link chain of 9.525 mm pitch.

    Reference
    ---------
    Definition.
    """
    return float((excess + taut_length) / (drive.links * drive.pitch) - 1)


def taut_centre_distance(drive: Drive) -> float | None:
    """Centre distance at which the chain, at its nominal length, has no slack.

    X(C) = n, solved by the secant method; X grows steadily with C and is almost straight.

    Parameters
    ----------
    drive : Drive, lengths in [mm]; its own centre distance is the starting point

    Returns
    -------
    centre distance [mm], or None where no centre distance does it

    Raises
    ------
    none

    Validity
    --------
    As `geometry`.

    Reference
    ---------
    Inverse of the exact taut length; published examples hold it to a handbook's printed digits.
    """
    r1 = pitch_radius(drive.pitch, drive.crank_teeth)
    r2 = pitch_radius(drive.pitch, drive.cam_teeth)
    least = abs(r2 - r1)

    def miss(centre: float) -> float:
        return float(_laid_round(drive, r1, r2, centre).taut_pitches - drive.links)

    floor = least * (1 + 1e-9) + 1e-9
    if miss(floor) > 0:
        return None
    old: float = drive.centre_distance
    new: float = old + drive.pitch
    f_old, f_new = miss(old), miss(new)
    for _ in range(60):
        if f_new == f_old:
            break
        step = f_new * (new - old) / (f_new - f_old)
        old, f_old = new, f_new
        new = max(new - step, floor)
        f_new = miss(new)
        if abs(step) < 1e-12 * new:
            break
    return new

"""A drive at running temperature: block, gears and chain grow, each by its own material."""

import math
from collections import namedtuple

from .drive import Drive, Geometry, pitch_radius


class Growth(namedtuple("Growth", ("block", "gears", "chain"))):
    """Thermal strain of block, gears and chain: expansion times temperature rise [1]."""

    __slots__ = ()


def hot_geometry(drive: Drive, growth: Growth) -> Geometry:
    """Work out the taut chain line of a drive whose block and gears have grown.

    C' = C (1 + g_b);  r' = r (1 + g_g);  sin b' = (r2' - r1') / C';
    L' = 2 C' cos b' + (z1 (pi - 2 b') + z2 (pi + 2 b')) p (1 + g_g) / (2 pi)

    The strands grow with the block, the wraps with the gears.

    Parameters
    ----------
    drive : Drive at the temperature it was measured at, lengths in [mm]
    growth : Growth, strains [1]

    Returns
    -------
    Geometry, lengths in [mm], angle in [rad]; taut_pitches in cold pitches

    Raises
    ------
    ValueError : centre distance not larger than the difference of the pitch radii

    Validity
    --------
    Each part at one temperature; the shafts carried by the block alone.

    Reference
    ---------
    Geometry of `drive.geometry`; derived.
    """
    scale = 1 + growth.gears
    r1 = pitch_radius(drive.pitch, drive.crank_teeth) * scale
    r2 = pitch_radius(drive.pitch, drive.cam_teeth) * scale
    centre = drive.centre_distance * (1 + growth.block)
    if centre <= abs(r2 - r1):
        raise ValueError("centre distance must exceed the difference of the pitch radii")
    angle = math.asin((r2 - r1) / centre)
    strand = centre * math.cos(angle)
    turns = drive.crank_teeth * (math.pi - 2 * angle) + drive.cam_teeth * (math.pi + 2 * angle)
    taut = 2 * strand + turns * drive.pitch * scale / (2 * math.pi)
    return Geometry(r1, r2, angle, strand, taut, taut / drive.pitch)


def hot_excess(
    drive: Drive, growth: Growth, elongation: float, shape: Geometry | None = None
) -> float:
    """Excess length of the chain at running temperature.

    e' = n p (1 + epsilon) (1 + g_c) - L'

    Parameters
    ----------
    drive : Drive as measured cold, lengths in [mm]
    growth : Growth, strains [1]
    elongation : wear elongation, cold, as a fraction [1]
    shape : `hot_geometry` of the same drive and growth, where it was worked out already

    Returns
    -------
    excess length [mm]; negative is interference

    Raises
    ------
    ValueError : as `hot_geometry`

    Validity
    --------
    As `hot_geometry`; no load on the chain but what takes up its slack.

    Reference
    ---------
    Definition; derived.
    """
    length = drive.links * drive.pitch * (1 + elongation) * (1 + growth.chain)
    hot = hot_geometry(drive, growth) if shape is None else shape
    return float(length - hot.taut_length)


def elongation_for_hot_excess(drive: Drive, growth: Growth, excess: float) -> float:
    """Elongation, cold, at which the hot chain has the given excess: inverse of `hot_excess`.

    Parameters
    ----------
    drive : Drive as measured cold, lengths in [mm]
    growth : Growth, strains [1]
    excess : hot excess length wanted [mm]

    Returns
    -------
    elongation as a fraction [1]

    Raises
    ------
    ValueError : as `hot_geometry`

    Validity
    --------
    As `hot_excess`.

    Reference
    ---------
    As `hot_excess`.
    """
    taut = hot_geometry(drive, growth).taut_length
    return float((taut + excess) / (drive.links * drive.pitch * (1 + growth.chain)) - 1)


def tension(stiffness: float, excess: float) -> float:
    """Tension of a chain that is too short for its drive.

    T = k (-e)

    Parameters
    ----------
    stiffness : of the whole loop, chain, shafts and block together [N/mm]
    excess : excess length [mm]; with slack there is no tension

    Returns
    -------
    tension in each strand [N]

    Raises
    ------
    none

    Validity
    --------
    Small interference; a stiffness from elsewhere carries its own wide range.

    Reference
    ---------
    Linear spring.
    """
    return -excess * stiffness if excess < 0 else 0.0


def loop_stiffness(chain: float, compliance: float, angle: float) -> float:
    """Stiffness of a loop whose shafts give way too.

    1 / k = 1 / k_c + 4 c cos^2 b

    A pull T in both strands loads each shaft with F = 2 T cos b; the shafts come nearer by c F,
    and the taut length shrinks by 2 cos b for every millimetre of that.

    Parameters
    ----------
    chain : of the loop without that, k_c: pull in a strand by interference [N/mm]
    compliance : of both shafts with bearings and block, along the centre line, c [mm/N]
    angle : strand angle b [rad]

    Returns
    -------
    stiffness k [N/mm]

    Raises
    ------
    none

    Validity
    --------
    Small, elastic.

    Reference
    ---------
    Two springs in series; statics, derived.
    """
    return 1 / (1 / chain + 4 * compliance * math.cos(angle) ** 2)


def shaft_load(strand_tension: float, angle: float) -> float:
    """Load that both strands, equally tight, put on each shaft along the centre line.

    F = 2 T cos b

    Parameters
    ----------
    strand_tension : T [N]
    angle : strand angle b [rad]

    Returns
    -------
    load [N]

    Raises
    ------
    none

    Validity
    --------
    At rest. Running adds the working pull.

    Reference
    ---------
    Statics.
    """
    return 2 * strand_tension * math.cos(angle)

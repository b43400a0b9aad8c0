"""Chain length from what a rule or a caliper reads, and the wear elongation it means."""

# A length allowed a new chain: only positive, at most this, over nominal. Published.
NEW_CHAIN_PERCENT = 0.15
NEW_CHAIN_SOURCE = "GOST 13568-97 (full text of ISO 606:1994), cl. 4.10"


def length_from_jaws(inside: float, outside: float) -> float:
    """Length over m pitches from an inside and an outside caliper reading.

    L = (L1 + L2) / 2

    Parameters
    ----------
    inside : L1, between the facing sides of the end rollers, m p - d1 on a new chain [mm]
    outside : L2, over their far sides, m p + d1 on a new chain [mm]

    Returns
    -------
    length between the joint centres [mm]

    Raises
    ------
    none

    Validity
    --------
    Both readings over the same two rollers, chain under light tension; the roller diameter
    cancels, and with it the wear of the rollers themselves if it is even.

    Reference
    ---------
    chain-sprocket-parts.com, How to measure the specification of the chain (published).
    """
    return (inside + outside) / 2


def length_from_inside(inside: float, roller_diameter: float) -> float:
    """Length over m pitches from an inside caliper reading alone.

    L = L1 + d1

    Parameters
    ----------
    inside : L1, between the facing sides of the end rollers [mm]
    roller_diameter : d1 [mm]

    Returns
    -------
    length between the joint centres [mm]

    Raises
    ------
    none

    Validity
    --------
    Chain under light tension. An error of the roller diameter passes into the length whole.

    Reference
    ---------
    Geometry; it explains published service limits over 16 links (derived).
    """
    return inside + roller_diameter


def elongation_from_length(pitch: float, pitches: int, length: float) -> float:
    """Wear elongation from the length over m pitches.

    epsilon = (L - m p) / (m p)

    Parameters
    ----------
    pitch : p [mm]
    pitches : m, pitches spanned
    length : L, between joint centres [mm]

    Returns
    -------
    elongation as a fraction [1]

    Raises
    ------
    none

    Validity
    --------
    Against nominal length. A new chain may itself be up to 0.15 % long (ISO 606).

    Reference
    ---------
    chain-sprocket-parts.com, as above; example: 24 x 12.7 mm read 307.2 mm is 0.79 %
    (jitetan.com, chain elongation).
    """
    nominal = pitch * pitches
    return (length - nominal) / nominal


def length_of_elongation(pitch: float, pitches: int, elongation: float) -> float:
    """Length over m pitches at a given elongation: the inverse of `elongation_from_length`.

    L = m p (1 + epsilon)

    Parameters
    ----------
    pitch : p [mm]
    pitches : m, pitches spanned
    elongation : fraction [1]

    Returns
    -------
    length between joint centres [mm]

    Raises
    ------
    none

    Validity
    --------
    As `elongation_from_length`.

    Reference
    ---------
    As `elongation_from_length`.
    """
    return pitch * pitches * (1 + elongation)

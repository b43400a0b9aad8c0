"""Why a reading may stand apart from the others: slips seen in practice, and what they leave."""

from collections import namedtuple

# A likely cause is named if, once allowed for, the reading agrees at least this well by chance:
# from memory, unverified.
EXPLAINED = 0.2


class Cause(namedtuple("Cause", ("code", "text", "factor"))):
    """A likely slip: what the reading must be multiplied by to undo it, or None where the reading
    is right but more than slack is in it.
    """

    __slots__ = ()


# Slips seen in practice; common practice, no source.
CAUSES = {
    "movement_mm": (
        Cause("one-way", "It may have been read one way instead of in and out.", 2.0),
        Cause("counted-twice", "It may be in and out already, and was doubled once more.", 0.5),
    ),
    "crank_rock_deg": (
        Cause("cam-degrees", "It may have been read in cam degrees.", 2.0),
        Cause("doubled", "It may be in crank degrees already, and was doubled once more.", 0.5),
    ),
    "elongation_percent": (),
    "chain_length_mm": (),
}
HIGH = {
    "movement_mm": Cause("gear-worn", "Worn gears, or a push that stretched the chain.", None),
    "crank_rock_deg": Cause("keys", "Play of keys or dowel, or the cam was not held.", None),
    "elongation_percent": Cause("under-load", "Gauge or chain under more load than usual.", None),
    "chain_length_mm": Cause("under-load", "The chain was under more load than usual.", None),
}
LOW = {
    "movement_mm": Cause("not-pushed", "The strand was not pushed fully, or was held.", None),
    "crank_rock_deg": Cause("not-taken-up", "The strands were not taken up fully.", None),
    "elongation_percent": Cause("stiff", "Stiff or dirty joints: clean it and pull it.", None),
    "chain_length_mm": Cause("slack", "The chain was not pulled straight.", None),
}

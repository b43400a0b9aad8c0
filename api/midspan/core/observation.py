"""One reading of a shelf: the chain, gear set or block it rests on, and what it says."""

from collections import namedtuple


class Observation(namedtuple("Observation", ("chain", "gears", "block", "value", "uncertainty"))):
    """One reading: indices of what it rests on (None where it does not), its value beyond
    nominal and its standard uncertainty, both in mm of excess length.
    """

    __slots__ = ()

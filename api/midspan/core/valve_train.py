"""From lobe to valve: lobe lift times rocker ratio less lash, with the cam where it is set."""

from collections import namedtuple

from .fields import Form
from .lift_table import Table, take_table
from .lobe import Events, Lobe, lobe_from
from .timing import NOSE_DROP_MM
from .uncertainty import interval


class Train(namedtuple("Train", ("lobe", "factor", "offset", "ratio", "lash", "later"))):
    """A valve driven by a lobe: lobe lift is factor times the lift as read plus offset; valve lift
    is ratio times lobe lift less lash; later tells by how many crank degrees the lobe comes after
    where the table has it.
    """

    __slots__ = ()

    def lift(self, angle: float) -> float:
        """Valve lift at a crank angle after TDC [mm]."""
        lobe = self.factor * self.lobe.spline.at(angle - self.later) + self.offset
        return max(0.0, float(lobe * self.ratio - self.lash))

    def rate(self, angle: float) -> float:
        """Valve velocity at a crank angle after TDC, none while it is shut [mm/deg]."""
        if self.lift(angle) <= 0:
            return 0.0
        return float(self.ratio * self.factor * self.lobe.spline.slope(angle - self.later))

    def lift_uncertainty(self, angle: float) -> float:
        """Standard uncertainty of the valve lift at a crank angle, from the table [mm]."""
        lobe = self.lobe
        spread = (lobe.spread(angle - self.later) ** 2 + lobe.dial**2) ** 0.5
        return float(self.ratio * self.factor * spread)

    def maximum(self) -> float:
        """Greatest valve lift [mm]."""
        return self.lift(self.lobe.top_at + self.later)

    def as_read(self, lift: float, at_valve: bool) -> float:
        """Lift as the table has it for a lift at the valve or at the tappet [mm]."""
        lobe = (lift + self.lash) / self.ratio if at_valve else lift
        return float((lobe - self.offset) / self.factor)

    def events(self, height: float, at_valve: bool = True) -> Events | None:
        """Events at a height of valve lift, or of tappet lift, in degrees after TDC."""
        found = self.lobe.events(self.as_read(height, at_valve))
        if found is None:
            return None
        moved = [
            interval(x.value + self.later, x.uncertainty)
            for x in (found.opens, found.closes, found.centre)
        ]
        scale = self.factor * (self.ratio if at_valve else 1.0)
        shift = self.offset * (self.ratio if at_valve else 1.0)
        lost = shift - (self.lash if at_valve else 0.0)
        area = scale * found.area + lost * found.duration.value
        return Events(height, moved[0], moved[1], found.duration, moved[2], area)

    def moved(self, earlier: float) -> "Train":
        """The same with the cam moved by so many crank degrees, earlier if positive."""
        return Train(
            self.lobe, self.factor, self.offset, self.ratio, self.lash, self.later - earlier
        )

    def with_rocker(self, ratio: float, lash: float) -> "Train":
        """The same lobe with another rocker."""
        return Train(self.lobe, self.factor, self.offset, ratio, lash, self.later)


def take_train(form: Form, name: str, valve: str, required: bool = True) -> Train | None:
    """Read a lobe and put it where it is installed, with a rocker of ratio 1 and no lash.

    Parameters
    ----------
    form : the input being read
    name : field that holds the lobe
    valve : "intake" or "exhaust"
    required : whether it must be given

    Returns
    -------
    Train, or None if it is not given or was refused

    Raises
    ------
    none

    Validity
    --------
    As `train_of`.

    Reference
    ---------
    none
    """
    table = take_table(form, name, required)
    if table is None:
        return None
    if table.zero != "tdc" and table.installed is None:
        need = "where the lobe's centre is: the table's zero is not TDC"
        step = "Measure the centreline with the degree wheel, and enter it."
        form.refuse("missing", name + ".installed_centreline_deg", None, need, step)
        return None
    return train_of(table, valve)


def train_of(table: Table, valve: str) -> Train:
    """Put a lobe where it is installed, with a rocker of ratio 1 and no lash.

    Parameters
    ----------
    table : its readings
    valve : "intake" or "exhaust"

    Returns
    -------
    Train

    Raises
    ------
    none

    Validity
    --------
    A table whose zero is TDC, or with its installed centreline.

    Reference
    ---------
    Centre from equal lift 0.020 in below the nose: starracing.com/MotorcycleCamDegree101.php.
    """
    lobe: Lobe = lobe_from(table)
    factor, offset = table.lobe_scale()
    later = 0.0
    if table.installed is not None:
        wanted = table.installed if valve == "intake" else -table.installed
        nose = lobe.events(lobe.top - min(NOSE_DROP_MM, lobe.top / 4))
        later = wanted - (lobe.top_at if nose is None else nose.centre.value)
    return Train(lobe, factor, offset, 1.0, 0.0, later)

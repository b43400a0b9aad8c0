"""What a worn chain alone has done to a cam's timing."""

from collections import namedtuple

from .build import take_build
from .fields import Form
from .instrument import interval_dict
from .phase import cam_retard, degrees
from .uncertainty import Interval, interval


class Share(namedtuple("Share", ("elongation", "cam", "ratio"))):
    """A chain's elongation [%], the retard that follows [cam deg], crank degrees per cam degree."""

    __slots__ = ()

    def shown(self, late: Interval | None) -> dict[str, object]:
        """Give it in the form of the result, with what it leaves of a lateness [crank deg]."""
        crank = _times(self.cam, self.ratio)
        rest = None
        if late is not None:
            u = (late.uncertainty**2 + crank.uncertainty**2) ** 0.5
            half = (((late.high - late.low) / 2) ** 2 + ((crank.high - crank.low) / 2) ** 2) ** 0.5
            left = late.value - crank.value
            rest = interval_dict(Interval(left, left - half, left + half, u))
        return {
            "elongation_percent": self.elongation,
            "cam_retard_deg": interval_dict(self.cam),
            "cam_retard_crank_deg": interval_dict(crank),
            "rest_deg": rest,
        }


def _times(at: Interval, factor: float) -> Interval:
    return Interval(at.value * factor, at.low * factor, at.high * factor, at.uncertainty * factor)


def chain_share(form: Form) -> Share | None:
    """Read the chain's state as the chain bench gives it; None if it is not given."""
    part = form.take_form("chain")
    if part is None:
        return None
    build = take_build(part)
    elongation = part.take_number("elongation_percent")
    u = part.take_number("standard_uncertainty_percent")
    part.close()
    if build is None or elongation is None or u is None:
        return None
    shape = build.geometry
    per_percent = degrees(cam_retard(shape.strand, shape.cam_radius, 0.01))
    cam = interval(per_percent * elongation, per_percent * u)
    return Share(elongation, cam, build.drive.cam_teeth / build.drive.crank_teeth)

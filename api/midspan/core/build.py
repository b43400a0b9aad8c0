"""Reading a drive from the input: its fields, and whether it can exist."""

import math
from collections import namedtuple

from . import limits
from .drive import Drive, Geometry, geometry, pitch_radius
from .fields import Form
from .figures import fixed, short
from .instrument import assumption
from .uncertainty import rectangular

KINDS = ("cam", "general")
CENTRES = ("fixed", "adjustable")
# Half-width assumed for a centre distance given without one: from memory, unverified.
CENTRE_ERROR_MM = 0.05
# A steel chain yields long before it is stretched this far: the links were miscounted. From
# memory, unverified.
MOST_STRAIN = 0.01


class Build(
    namedtuple(
        "Build",
        ("drive", "geometry", "roller", "centre_error", "kind", "centres", "assumptions"),
    )
):
    """A drive that can exist, with what is known of it: Drive, Geometry, roller diameter [mm] or
    None, half-width of the centre distance [mm], kind, centres, and what was assumed.
    """

    __slots__ = ()

    def taut_uncertainty(self, shape: Geometry) -> float:
        """Give the standard uncertainty of the taut length [mm] by the centre distance alone."""
        return 2 * math.cos(shape.angle) * rectangular(self.centre_error)

    @property
    def centre_origin(self) -> str:
        """Where the half-width of the centre distance is from."""
        assumed = [a["field"] for a in self.assumptions]
        return limits.MEMORY if "centre_distance_error_mm" in assumed else limits.GIVEN

    def with_exact_centre(self) -> "Build":
        """Give the same drive, its centre distance taken as exact."""
        return Build(
            self.drive, self.geometry, self.roller, 0.0, self.kind, self.centres, self.assumptions
        )


def take_build(form: Form, required: bool = True) -> Build | None:
    """Read the "drive" field and check that the drive can exist.

    Parameters
    ----------
    form : the whole input
    required : whether a missing drive is a problem

    Returns
    -------
    Build, or None where it is not given or refused (the problem is then noted)
    """
    part = form.take_form("drive")
    if part is None:
        if required:
            form.refuse("missing", "drive", None, "the drive", "Enter teeth, pitch, centres, links")
        return None
    before = len(form.problems)
    drive = Drive(
        part.take_number("pitch_mm"),
        part.take_number("crank_teeth"),
        part.take_number("cam_teeth"),
        part.take_number("centre_distance_mm"),
        part.take_number("links"),
    )
    roller = part.take_number("roller_diameter_mm", required=False)
    error = part.take_number("centre_distance_error_mm", required=False)
    kind = part.take_choice("drive_kind", KINDS, "cam")
    centres = part.take_choice("centres", CENTRES, "fixed")
    part.close()
    if len(form.problems) > before:
        return None
    shape = _fits(part, drive, roller, kind)
    if shape is None:
        return None
    assumed = []
    room = (drive.centre_distance - shape.crank_radius - shape.cam_radius) / 2
    if error is not None and error > room:
        need = "at most " + short(room, 3) + " mm: further off the two gears would touch"
        step = "Measure the centre distance better, or check its unit."
        part.refuse("gears-collide", "centre_distance_error_mm", error, need, step)
        return None
    if error is None:
        error = min(CENTRE_ERROR_MM, room)
        text = "Plus or minus on the centre distance, assumed: none was given."
        assumed.append(assumption("centre_distance_error_mm", error, limits.MEMORY, text))
    return Build(drive, shape, roller, error, kind, centres, assumed)


def check_movement(form: Form, name: str, movement: float | None, strand: float) -> None:
    """Refuse a movement longer than the strand that makes it."""
    if movement is not None and movement > strand:
        need = "at most the free strand, " + fixed(strand, 1) + " mm"
        form.refuse("out-of-range", name, movement, need, "Check the unit.")


def check_centres(form: Form, name: str, centre: float | None, build: Build) -> bool:
    """Refuse another centre distance at which the gears of the drive would touch."""
    reach = build.geometry.crank_radius + build.geometry.cam_radius
    if centre is None or centre > reach:
        return True
    need = "more than " + _mm(reach) + ", or the two gears would touch"
    form.refuse("gears-collide", name, centre, need, "Check the unit.")
    return False


def facts_of(build: Build | None, pitch: float) -> dict[str, object]:
    """Give what decides which limits apply; without a drive a cam drive is meant."""
    if build is None:
        return {"drive_kind": "cam", "centres": "fixed", "pitch_mm": pitch, "cam_teeth": None}
    return {
        "drive_kind": build.kind,
        "centres": build.centres,
        "pitch_mm": build.drive.pitch,
        "cam_teeth": build.drive.cam_teeth,
    }


def _fits(part: Form, drive: Drive, roller: float | None, kind: str | None) -> Geometry | None:
    """Check what no single field can show; note the problems."""
    if roller is not None and roller >= drive.pitch:
        need = "less than the pitch, " + short(drive.pitch, 6) + " mm"
        part.refuse("conflict", "roller_diameter_mm", roller, need, "Check which is which.")
    if kind == "cam" and drive.cam_teeth != 2 * drive.crank_teeth:
        need = str(2 * drive.crank_teeth) + ", twice the crank gear: a cam turns at half speed"
        step = "Count both gears again. A drive through an idler is a general one, not a cam drive."
        part.refuse("not-half-speed", "cam_teeth", drive.cam_teeth, need, step)
    reach = pitch_radius(drive.pitch, drive.crank_teeth) + pitch_radius(
        drive.pitch, drive.cam_teeth
    )
    if drive.centre_distance <= reach:
        need = "more than " + _mm(reach) + ", or the two gears would touch"
        step = "Check the unit, the pitch and the teeth."
        part.refuse("gears-collide", "centre_distance_mm", drive.centre_distance, need, step)
        return None
    shape = geometry(drive)
    nominal = drive.links * drive.pitch
    if nominal < shape.taut_length * (1 - MOST_STRAIN):
        fewest = 2 * math.ceil(shape.taut_pitches / 2)
        need = "about " + str(fewest) + " links to go round this drive"
        step = "Count the links again, and check the centre distance and the teeth."
        part.refuse("chain-too-short", "links", drive.links, need, step)
        return None
    return shape


def _mm(length: float) -> str:
    return fixed(length, 2) + " mm"

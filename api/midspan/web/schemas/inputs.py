"""What the calculations take. These schemas document; the core checks."""

from marshmallow import fields, validate

from midspan.core import build, calc_elongation, calc_rock, calc_slack

from .quantity import Strict, choice, number, readings

OWN_QUANTITIES = ("elongation_percent", "movement_mm", "crank_rock_deg", "reading_mm")


class DriveSchema(Strict):
    """A two-sprocket chain drive. A cam drive has a cam gear of twice the crank gear's teeth."""

    pitch_mm = number("pitch_mm")
    crank_teeth = number("crank_teeth")
    cam_teeth = number("cam_teeth")
    centre_distance_mm = number("centre_distance_mm")
    links = number("links")
    roller_diameter_mm = number("roller_diameter_mm", required=False, note="Less than the pitch.")
    centre_distance_error_mm = number(
        "centre_distance_error_mm", required=False,
        note=f"If not given, {build.CENTRE_ERROR_MM} is assumed (from memory, unverified).",
    )  # fmt: skip
    drive_kind = choice(
        build.KINDS, f"What the drive is for; {build.KINDS[0]} if not given.",
        required=False, nullable=True,
    )  # fmt: skip
    centres = choice(
        build.CENTRES, f"Whether the axes can be moved; {build.CENTRES[0]} if not given.",
        required=False, nullable=True,
    )  # fmt: skip


class OwnLimitSchema(Strict):
    """A limit the user found in the maker's manual. It governs, and is labelled so."""

    quantity = choice(
        OWN_QUANTITIES,
        "What it limits; reading_mm is the reading as shown by the instrument, same method.",
    )
    lower = number("lower", required=False)
    upper = number("upper", required=False, note="At least one of lower and upper is needed.")
    source = fields.String(
        required=True, validate=validate.Length(1, 200),
        metadata={"description": "Where the figure was found."},
    )  # fmt: skip


class _Bench(Strict):
    """What every bench may be told."""

    own_limit = fields.Nested(OwnLimitSchema, allow_none=True)


class LengthsSchema(_Bench):
    """What an instrument for lengths may be told; usual figures are assumed and named if not."""

    resolution_mm = number("resolution_mm", required=False)
    instrument_error_mm = number("instrument_error_mm", required=False)
    repeatability_mm = number("repeatability_mm", required=False)


class DriveInputSchema(Strict):
    """Input of the calculation "drive"."""

    drive = fields.Nested(DriveSchema, required=True)
    curve_points = number("curve_points", required=False, note="0 if not given.")


class ElongationInputSchema(LengthsSchema):
    """Input of the calculation "elongation": the length over some pitches."""

    method = choice(
        calc_elongation.METHODS,
        "How it was measured. pin-to-pin and inside need readings_mm; inside also needs the "
        "roller's diameter; inside-and-outside needs inside_readings_mm and outside_readings_mm.",
    )
    pitches = number("pitches")
    readings_mm = readings("readings_mm")
    inside_readings_mm = readings("inside_readings_mm")
    outside_readings_mm = readings("outside_readings_mm")
    pitch_mm = number("pitch_mm", required=False, note="Needed unless the drive gives it.")
    roller_diameter_mm = number("roller_diameter_mm", required=False)
    drive = fields.Nested(DriveSchema, allow_none=True)


class SlackInputSchema(LengthsSchema):
    """Input of the calculation "slack": the movement or sag of a strand on the engine."""

    drive = fields.Nested(DriveSchema, required=True)
    method = choice(
        calc_slack.METHODS,
        "total: pushed by hand fully in and fully out; one-way: from straight to one side; "
        "sag: hanging level under its own weight.",
    )
    readings_mm = readings("readings_mm", required=True)


class CrankRockInputSchema(LengthsSchema):
    """Input of the calculation "crank-rock": how far one shaft turns before the other follows."""

    drive = fields.Nested(DriveSchema, required=True)
    method = choice(
        calc_rock.METHODS,
        "crank-degrees and rotor-degrees need readings_deg; damper-arc needs readings_mm and "
        "damper_diameter_mm; sprocket-movement needs readings_mm.",
    )
    readings_deg = readings("readings_deg")
    readings_mm = readings("readings_mm")
    damper_diameter_mm = number("damper_diameter_mm", required=False)
    resolution_deg = number("resolution_deg", required=False)
    instrument_error_deg = number("instrument_error_deg", required=False)
    repeatability_deg = number("repeatability_deg", required=False)

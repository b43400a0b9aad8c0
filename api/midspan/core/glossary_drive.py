"""Terms of the drive: as it is built, worked out, and its one state in all its readings."""

from .term import Term, asked, counted, told

TERMS: tuple[Term, ...] = (
    # The drive, as it is built.
    asked("pitch_mm", "p", "mm", 3, 130, "Chain pitch", "Distance between joint centres."),
    counted("crank_teeth", "z1", 9, 150, "Crank gear teeth", "Teeth of the crankshaft gear."),
    counted("cam_teeth", "z2", 9, 150, "Cam gear teeth", "Teeth of the camshaft gear."),
    asked(
        "centre_distance_mm", "C", "mm", 10, 5000, "Centre distance",
        "Distance between the crankshaft and camshaft axes.",
    ),
    asked(
        "centre_distance_error_mm", "a_C", "mm", 0, 10, "Centre distance, plus or minus",
        "Half-width of the range that surely holds the centre distance.",
    ),
    counted("links", "n", 10, 1000, "Links", "Pitches in the whole chain; one link is one pitch."),
    asked(
        "roller_diameter_mm", "d1", "mm", 1, 100, "Roller diameter",
        "Outside diameter of the roller, or of the bush in a chain without rollers.",
    ),
    # The one state, in its readings.
    told(
        "excess_mm", "e", "mm", "Excess length",
        "Length of the chain beyond the taut length of its drive; negative is interference.",
    ),
    asked(
        "elongation_percent", "epsilon", "%", -5, 20, "Wear elongation",
        "Lengthening over nominal: (L - m p) / (m p).",
    ),
    told(
        "sag_mm", "f", "mm", "Gravity sag",
        "Sag at mid-span of a slack strand that hangs level under its own weight.",
    ),
    asked(
        "crank_rock_deg", "theta", "deg", 0, 90, "Crank-rock lash",
        "Crank angle between the two strands taking up, cam held.",
    ),
    told(
        "cam_retard_deg", "phi", "deg", "Cam retard, cam degrees",
        "How late the cam runs for the lengthening of the taut strand, in cam degrees.",
    ),
    told(
        "cam_retard_crank_deg", "2 phi", "deg", "Cam retard, crank degrees",
        "The cam retard in crank degrees: twice the cam degrees.",
    ),
    told(
        "sprocket_movement_mm", "e", "mm", "Chain movement at the cam gear",
        "Travel of the chain at the cam gear's pitch circle, crank held, cam turned both ways.",
    ),
    told(
        "reading_mm", "x", "mm", "Reading", "The reading as shown by the instrument, in mm.",
    ),
    # The slack wanted.
    asked(
        "movement_mm", "m", "mm", 0, 5000, "Mid-span movement",
        "Total movement of the slack strand's middle, pushed by hand fully in and fully out.",
    ),
    asked(
        "window_lower_mm", "", "mm", 0, 5000, "Wanted movement, from",
        "Least total mid-span movement wanted.",
    ),
    asked(
        "window_upper_mm", "", "mm", 0, 5000, "Wanted movement, to",
        "Largest total mid-span movement wanted.",
    ),
    # The drive, worked out.
    told("crank_pitch_diameter_mm", "d", "mm", "Crank gear pitch diameter", "p / sin(180/z1)."),
    told("cam_pitch_diameter_mm", "d", "mm", "Cam gear pitch diameter", "p / sin(180/z2)."),
    told("strand_mm", "s", "mm", "Free strand", "Length between the two tangent points."),
    told(
        "contact_angle_deg", "b", "deg", "Strand angle", "Angle of a strand to the centre line.",
    ),
    told("crank_wrap_deg", "", "deg", "Wrap on the crank gear", "180 - 2 b."),
    told("cam_wrap_deg", "", "deg", "Wrap on the cam gear", "180 + 2 b."),
    told("taut_length_pitches", "X", "", "Taut length in pitches", "Exact, on pitch circles."),
    told("taut_length_mm", "X p", "mm", "Taut length", "Length of a chain with no slack."),
    told(
        "handbook_length_pitches", "X", "", "Handbook length in pitches",
        "The usual series for X, as a check on the exact figure.",
    ),
    asked(
        "chain_length_mm", "L", "mm", 10, 200000, "Chain length",
        "Length of the whole chain, joint to joint.",
    ),
    told(
        "taut_centre_distance_mm", "C_0", "mm", "Taut centre distance",
        "Centre distance at which this chain, at nominal length, has no slack.",
    ),
    told(
        "over_chain_mm", "", "mm", "Over the wrapped chain",
        "Diameter of a gear measured over the rollers of a new chain wrapped round it.",
    ),
    told("pitch_diameter_mm", "d", "mm", "Pitch diameter", "Of the gear as measured."),
    told(
        "radius_loss_mm", "", "mm", "Loss of pitch radius", "Nominal less measured pitch radius.",
    ),
    told(
        "nominal_pitch_diameter_mm", "d", "mm", "Nominal pitch diameter", "p / sin(180/z).",
    ),
)  # fmt: skip

"""Symbol, name, unit and meaning of every quantity: their one home.

Field names, labels, descriptions and the admitted range of every input come from here.
A field name carries its unit as its ending; a test compares.
"""

from collections import namedtuple

Term = namedtuple("Term", ("name", "symbol", "unit", "low", "high", "label", "meaning", "whole"))


def _input(
    name: str, symbol: str, unit: str, low: float, high: float, label: str, meaning: str
) -> Term:
    return Term(name, symbol, unit, low, high, label, meaning, False)


def _count(name: str, symbol: str, low: int, high: int, label: str, meaning: str) -> Term:
    return Term(name, symbol, "", low, high, label, meaning, True)


def _output(name: str, symbol: str, unit: str, label: str, meaning: str) -> Term:
    return Term(name, symbol, unit, None, None, label, meaning, False)


_ROWS = (
    # The drive, as it is built.
    _input("pitch_mm", "p", "mm", 3, 130, "Chain pitch", "Distance between joint centres."),
    _count("crank_teeth", "z1", 9, 150, "Crank gear teeth", "Teeth of the crankshaft gear."),
    _count("cam_teeth", "z2", 9, 150, "Cam gear teeth", "Teeth of the camshaft gear."),
    _input(
        "centre_distance_mm", "C", "mm", 10, 5000, "Centre distance",
        "Distance between the crankshaft and camshaft axes.",
    ),
    _input(
        "centre_distance_error_mm", "a_C", "mm", 0, 10, "Centre distance, plus or minus",
        "Half-width of the range that surely holds the centre distance.",
    ),
    _count("links", "n", 10, 1000, "Links", "Pitches in the whole chain; one link is one pitch."),
    _input(
        "roller_diameter_mm", "d1", "mm", 1, 100, "Roller diameter",
        "Outside diameter of the roller, or of the bush in a chain without rollers.",
    ),
    # What was read.
    _count(
        "pitches", "m", 1, 1000, "Pitches measured",
        "Number of pitches the reading spans; one link is one pitch.",
    ),
    _input("readings_mm", "x", "mm", 0, 20000, "Readings", "Repeated readings of one length."),
    _input(
        "inside_readings_mm", "L1", "mm", 0, 20000, "Inside readings",
        "Between the facing sides of the two end rollers: m p - d1 on a new chain.",
    ),
    _input(
        "outside_readings_mm", "L2", "mm", 0, 20000, "Outside readings",
        "Over the far sides of the two end rollers: m p + d1 on a new chain.",
    ),
    _input("readings_deg", "x", "deg", 0, 90, "Readings", "Repeated readings of one angle."),
    _input(
        "damper_diameter_mm", "D", "mm", 20, 1000, "Damper diameter",
        "Diameter of the rim on which the arc was measured.",
    ),
    # The instrument.
    _input(
        "resolution_mm", "q", "mm", 0, 25, "Resolution", "Smallest step the instrument shows.",
    ),
    _input(
        "instrument_error_mm", "a_I", "mm", 0, 25, "Instrument error, plus or minus",
        "Largest error the instrument is allowed, as a half-width.",
    ),
    _input(
        "repeatability_mm", "s_0", "mm", 0, 25, "Repeatability",
        "Standard deviation of one reading, used when there is only one.",
    ),
    _input("resolution_deg", "q", "deg", 0, 10, "Resolution", "Smallest step that can be read."),
    _input(
        "instrument_error_deg", "a_I", "deg", 0, 10, "Instrument error, plus or minus",
        "Largest error the instrument is allowed, as a half-width.",
    ),
    _input(
        "repeatability_deg", "s_0", "deg", 0, 10, "Repeatability",
        "Standard deviation of one reading, used when there is only one.",
    ),
    # A limit of the user's own.
    _input("lower", "", "", 0, 20000, "Lower limit", "Least value allowed, in the limit's unit."),
    _input("upper", "", "", 0, 20000, "Upper limit", "Largest value allowed, in the limit's unit."),
    # Heat.
    _input(
        "cold_temperature_c", "T0", "degC", -50, 60, "Temperature when measured",
        "Temperature of block, gears and chain when the drive and its slack were measured.",
    ),
    _input(
        "block_temperature_c", "Tb", "degC", -50, 300, "Block, running",
        "Temperature of the block between the two shafts when running.",
    ),
    _input(
        "gear_temperature_c", "Tg", "degC", -50, 300, "Gears, running",
        "Temperature of the gears when running.",
    ),
    _input(
        "chain_temperature_c", "Tc", "degC", -50, 300, "Chain, running",
        "Temperature of the chain when running.",
    ),
    _input(
        "block_expansion_ppm", "alpha_b", "1e-6/K", 0, 60, "Expansion of the block",
        "Mean linear expansion coefficient, of the user's own source.",
    ),
    _input(
        "gear_expansion_ppm", "alpha_g", "1e-6/K", 0, 60, "Expansion of the gears",
        "Mean linear expansion coefficient, of the user's own source.",
    ),
    _input(
        "chain_expansion_ppm", "alpha_c", "1e-6/K", 0, 60, "Expansion of the chain",
        "Mean linear expansion coefficient, of the user's own source.",
    ),
    _input(
        "stiffness_n_per_mm", "k", "N/mm", 1, 1000000, "Stiffness of the loop",
        "Pull in a strand per millimetre of interference: chain, shafts and block together.",
    ),
    _input(
        "movement_mm", "m", "mm", 0, 5000, "Mid-span movement",
        "Total movement of the slack strand's middle, pushed by hand fully in and fully out.",
    ),
    _input(
        "window_lower_mm", "", "mm", 0, 5000, "Wanted movement, from",
        "Least total mid-span movement wanted.",
    ),
    _input(
        "window_upper_mm", "", "mm", 0, 5000, "Wanted movement, to",
        "Largest total mid-span movement wanted.",
    ),
    # Several readings in one.
    _input(
        "standard_uncertainty_mm", "u", "mm", 0.0001, 1000, "Standard uncertainty",
        "Of the value beside it, as a standard deviation.",
    ),
    _input(
        "standard_uncertainty_percent", "u", "%", 0.00001, 100, "Standard uncertainty",
        "Of the value beside it, as a standard deviation.",
    ),
    _input(
        "standard_uncertainty_deg", "u", "deg", 0.0001, 90, "Standard uncertainty",
        "Of the value beside it, as a standard deviation.",
    ),
    # Gears.
    _input(
        "added_excess_mm", "", "mm", -50, 50, "Slack added by wear of the gears",
        "Excess length that a gear set's own wear adds, from its measurement.",
    ),
    _input(
        "new_centre_distance_mm", "C'", "mm", 10, 5000, "New centre distance",
        "Distance between the two axes after the change.",
    ),
    _input(
        "pin_diameter_mm", "d_R", "mm", 1, 100, "Pin diameter",
        "Diameter of the measuring pins, equal to the roller diameter.",
    ),
    _count("teeth", "z", 9, 150, "Teeth", "Teeth of the gear measured."),
    # What a record adds to what a calculation needs.
    _input(
        "distance_run_km", "", "km", 0, 10000000, "Distance run", "How far the chain has run.",
    ),
    _input(
        "odometer_km", "", "km", 0, 10000000, "Odometer",
        "Distance that the vehicle showed when the build was started.",
    ),
    _input(
        "load_n", "F", "N", 0, 100000, "Load on the chain",
        "Pull on the chain while its length was measured.",
    ),
    _input(
        "keyway_offsets_crank_deg", "", "deg", -30, 30, "Keyway or bushing offsets",
        "What each keyway or bushing adds to the cam timing, in crank degrees.",
    ),
    _count("curve_points", "", 0, 400, "Points of the curve", "How many points to work out."),
    # The one state, in its readings.
    _output(
        "excess_mm", "e", "mm", "Excess length",
        "Length of the chain beyond the taut length of its drive; negative is interference.",
    ),
    _input(
        "elongation_percent", "epsilon", "%", -5, 20, "Wear elongation",
        "Lengthening over nominal: (L - m p) / (m p).",
    ),
    _output(
        "sag_mm", "f", "mm", "Gravity sag",
        "Sag at mid-span of a slack strand that hangs level under its own weight.",
    ),
    _input(
        "crank_rock_deg", "theta", "deg", 0, 90, "Crank-rock lash",
        "Crank angle between the two strands taking up, cam held.",
    ),
    _output(
        "cam_retard_deg", "phi", "deg", "Cam retard, cam degrees",
        "How late the cam runs for the lengthening of the taut strand, in cam degrees.",
    ),
    _output(
        "cam_retard_crank_deg", "2 phi", "deg", "Cam retard, crank degrees",
        "The cam retard in crank degrees: twice the cam degrees.",
    ),
    _output(
        "sprocket_movement_mm", "e", "mm", "Chain movement at the cam gear",
        "Travel of the chain at the cam gear's pitch circle, crank held, cam turned both ways.",
    ),
    _output(
        "reading_mm", "x", "mm", "Reading", "The reading as shown by the instrument, in mm.",
    ),
    # The drive, worked out.
    _output("crank_pitch_diameter_mm", "d", "mm", "Crank gear pitch diameter", "p / sin(180/z1)."),
    _output("cam_pitch_diameter_mm", "d", "mm", "Cam gear pitch diameter", "p / sin(180/z2)."),
    _output("strand_mm", "s", "mm", "Free strand", "Length between the two tangent points."),
    _output(
        "contact_angle_deg", "b", "deg", "Strand angle", "Angle of a strand to the centre line.",
    ),
    _output("crank_wrap_deg", "", "deg", "Wrap on the crank gear", "180 - 2 b."),
    _output("cam_wrap_deg", "", "deg", "Wrap on the cam gear", "180 + 2 b."),
    _output("taut_length_pitches", "X", "", "Taut length in pitches", "Exact, on pitch circles."),
    _output("taut_length_mm", "X p", "mm", "Taut length", "Length of a chain with no slack."),
    _output(
        "handbook_length_pitches", "X", "", "Handbook length in pitches",
        "The usual series for X, as a check on the exact figure.",
    ),
    _input(
        "chain_length_mm", "L", "mm", 10, 200000, "Chain length",
        "Length of the whole chain, joint to joint.",
    ),
    _output(
        "taut_centre_distance_mm", "C_0", "mm", "Taut centre distance",
        "Centre distance at which this chain, at nominal length, has no slack.",
    ),
    _output(
        "over_chain_mm", "", "mm", "Over the wrapped chain",
        "Diameter of a gear measured over the rollers of a new chain wrapped round it.",
    ),
    _output("pitch_diameter_mm", "d", "mm", "Pitch diameter", "Of the gear as measured."),
    _output(
        "radius_loss_mm", "", "mm", "Loss of pitch radius", "Nominal less measured pitch radius.",
    ),
    _output(
        "nominal_pitch_diameter_mm", "d", "mm", "Nominal pitch diameter", "p / sin(180/z).",
    ),
    # Heat and moved shafts, worked out.
    _output(
        "expansion_ppm", "alpha", "1e-6/K", "Expansion coefficient",
        "Mean linear thermal expansion near room temperature.",
    ),
    _output(
        "interference_mm", "-e", "mm", "Interference",
        "How much the chain is shorter than its drive, where it is.",
    ),
    _output("tension_low_n", "F", "N", "Pull in a strand, from", "With the softest loop."),
    _output("tension_high_n", "F", "N", "Pull in a strand, to", "With the stiffest loop."),
    _output(
        "shaft_load_low_n", "", "N", "Load on the cam bearing, from",
        "Of the two strands together, with the softest loop.",
    ),
    _output(
        "shaft_load_high_n", "", "N", "Load on the cam bearing, to",
        "Of the two strands together, with the stiffest loop.",
    ),
    _output("hot_lower_mm", "", "mm", "Wanted hot, from", "Least movement wanted when hot."),
    _output("hot_upper_mm", "", "mm", "Wanted hot, to", "Largest movement wanted when hot."),
    _output(
        "cold_lower_mm", "", "mm", "Cold target, from",
        "Cold movement that becomes the least wanted when hot.",
    ),
    _output(
        "cold_upper_mm", "", "mm", "Cold target, to",
        "Cold movement that becomes the largest wanted when hot.",
    ),
    _output(
        "excess_change_mm", "", "mm", "Change of excess length",
        "After less before; positive is looser.",
    ),
    _output(
        "length_change_low_mm", "", "mm", "Chain needed, change from",
        "Whole length wanted less that of this chain, for the least movement wanted.",
    ),
    _output(
        "length_change_high_mm", "", "mm", "Chain needed, change to",
        "Whole length wanted less that of this chain, for the largest movement wanted.",
    ),
    _output(
        "elongation_low_percent", "", "%", "Chain needed, elongation from",
        "Over nominal, for the least movement wanted; negative is shorter than nominal.",
    ),
    _output(
        "elongation_high_percent", "", "%", "Chain needed, elongation to",
        "Over nominal, for the largest movement wanted; negative is shorter than nominal.",
    ),
    # Several readings in one, and the shelf.
    _output(
        "expected_excess_mm", "e", "mm", "Expected excess length", "By all the other readings.",
    ),
    _output(
        "chi_square", "", "", "Chi-square", "Weighted sum of squared residuals.",
    ),
    _output(
        "probability", "", "", "Probability",
        "Of readings that agree as badly or worse by chance alone.",
    ),
    _output("lower_mm", "", "mm", "Window, from", "Least movement wanted."),
    _output("upper_mm", "", "mm", "Window, to", "Largest movement wanted."),
    _output(
        "cold_movement_mm", "m", "mm", "Cold movement", "Total mid-span movement expected cold.",
    ),
    _output(
        "hot_movement_mm", "m", "mm", "Hot movement", "Total mid-span movement expected hot.",
    ),
    _output("cold_probability", "", "", "In the window, cold", "Probability, 0 to 1."),
    _output("hot_probability", "", "", "In the window, hot", "Probability, 0 to 1."),
    _output(
        "share", "", "", "Share of the variance",
        "Of the best few predictions together, that the trial would take away; 0 to 1.",
    ),
    # Uncertainty, in the words of JCGM 100 (GUM).
    _output("value", "", "", "Value", "Best estimate."),
    _output("low", "", "", "Low end", "Low end of the 95 % coverage interval."),
    _output("high", "", "", "High end", "High end of the 95 % coverage interval."),
    _output("standard_uncertainty", "u", "", "Standard uncertainty", "As a standard deviation."),
    _output("degrees_of_freedom", "nu", "", "Degrees of freedom", "Effective; none is infinite."),
    _output("coverage_factor", "k", "", "Coverage factor", "Student t for 95 % coverage."),
    _output("expanded_uncertainty", "U", "", "Expanded uncertainty", "k times u, 95 % coverage."),
    _output("count", "N", "", "Readings taken", "How many readings the estimate rests on."),
    _output(
        "upper_to", "", "", "Upper limit, to", "Far end of an upper limit printed as a range.",
    ),
    _output(
        "movement_percent_of_centres", "", "% of centre distance",
        "Movement by centre distance",
        "Total mid-span movement as a share of the centre distance.",
    ),
    _output("limit_value", "", "", "Limit on this drive", "The limit, in the judged quantity."),
)  # fmt: skip

TERMS: dict[str, Term] = {}
for _term in _ROWS:
    TERMS[_term.name] = _term


def label(name: str) -> str:
    """Give the screen's name of a field, or the field's own name if it has none."""
    return str(TERMS[name].label) if name in TERMS else name


def need(name: str) -> str:
    """Say in words what a numeric field accepts, from its term."""
    term = TERMS[name]
    kind = "a whole number" if term.whole else "a number"
    unit = " " + term.unit if term.unit else ""
    return kind + " from " + str(term.low) + " to " + str(term.high) + unit

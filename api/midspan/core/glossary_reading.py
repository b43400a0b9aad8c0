"""Terms of readings: what was read, with what, how sure it is, and what it is held against."""

from .term import Term, asked, counted, told

TERMS: tuple[Term, ...] = (
    # What was read.
    counted(
        "pitches", "m", 1, 1000, "Pitches measured",
        "Number of pitches the reading spans; one link is one pitch.",
    ),
    asked("readings_mm", "x", "mm", 0, 20000, "Readings", "Repeated readings of one length."),
    asked(
        "inside_readings_mm", "L1", "mm", 0, 20000, "Inside readings",
        "Between the facing sides of the two end rollers: m p - d1 on a new chain.",
    ),
    asked(
        "outside_readings_mm", "L2", "mm", 0, 20000, "Outside readings",
        "Over the far sides of the two end rollers: m p + d1 on a new chain.",
    ),
    asked("readings_deg", "x", "deg", 0, 90, "Readings", "Repeated readings of one angle."),
    asked(
        "damper_diameter_mm", "D", "mm", 20, 1000, "Damper diameter",
        "Diameter of the rim on which the arc was measured.",
    ),
    # The instrument.
    asked(
        "resolution_mm", "q", "mm", 0, 25, "Resolution", "Smallest step the instrument shows.",
    ),
    asked(
        "instrument_error_mm", "a_I", "mm", 0, 25, "Instrument error, plus or minus",
        "Largest error the instrument is allowed, as a half-width.",
    ),
    asked(
        "repeatability_mm", "s_0", "mm", 0, 25, "Repeatability",
        "Standard deviation of one reading, used when there is only one.",
    ),
    asked("resolution_deg", "q", "deg", 0, 10, "Resolution", "Smallest step that can be read."),
    asked(
        "instrument_error_deg", "a_I", "deg", 0, 10, "Instrument error, plus or minus",
        "Largest error the instrument is allowed, as a half-width.",
    ),
    asked(
        "repeatability_deg", "s_0", "deg", 0, 10, "Repeatability",
        "Standard deviation of one reading, used when there is only one.",
    ),
    # A limit of the user's own.
    asked("lower", "", "", 0, 20000, "Lower limit", "Least value allowed, in the limit's unit."),
    asked("upper", "", "", 0, 20000, "Upper limit", "Largest value allowed, in the limit's unit."),
    # Several readings in one.
    asked(
        "standard_uncertainty_mm", "u", "mm", 0.0001, 1000, "Standard uncertainty",
        "Of the value beside it, as a standard deviation.",
    ),
    asked(
        "standard_uncertainty_percent", "u", "%", 0.00001, 100, "Standard uncertainty",
        "Of the value beside it, as a standard deviation.",
    ),
    asked(
        "standard_uncertainty_deg", "u", "deg", 0.0001, 90, "Standard uncertainty",
        "Of the value beside it, as a standard deviation.",
    ),
    # Uncertainty, in the words of JCGM 100 (GUM).
    told("value", "", "", "Value", "Best estimate."),
    told("low", "", "", "Low end", "Low end of the 95 % coverage interval."),
    told("high", "", "", "High end", "High end of the 95 % coverage interval."),
    told("standard_uncertainty", "u", "", "Standard uncertainty", "As a standard deviation."),
    told("degrees_of_freedom", "nu", "", "Degrees of freedom", "Effective; none is infinite."),
    told("coverage_factor", "k", "", "Coverage factor", "Student t for 95 % coverage."),
    told("expanded_uncertainty", "U", "", "Expanded uncertainty", "k times u, 95 % coverage."),
    told("count", "N", "", "Readings taken", "How many readings the estimate rests on."),
    told(
        "upper_to", "", "", "Upper limit, to", "Far end of an upper limit printed as a range.",
    ),
    told(
        "movement_percent_of_centres", "", "% of centre distance",
        "Movement by centre distance",
        "Total mid-span movement as a share of the centre distance.",
    ),
    told("limit_value", "", "", "Limit on this drive", "The limit, in the judged quantity."),
)  # fmt: skip

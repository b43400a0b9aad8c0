"""Terms of parts on the shelf, and of putting them together."""

from .term import Term, asked, counted, told

TERMS: tuple[Term, ...] = (
    # Gears.
    asked(
        "added_excess_mm", "", "mm", -50, 50, "Slack added by wear of the gears",
        "Excess length that a gear set's own wear adds, from its measurement.",
    ),
    asked(
        "new_centre_distance_mm", "C'", "mm", 10, 5000, "New centre distance",
        "Distance between the two axes after the change.",
    ),
    asked(
        "pin_diameter_mm", "d_R", "mm", 1, 100, "Pin diameter",
        "Diameter of the measuring pins, equal to the roller diameter.",
    ),
    counted("teeth", "z", 9, 150, "Teeth", "Teeth of the gear measured."),
    # What a record adds to what a calculation needs.
    asked(
        "distance_run_km", "", "km", 0, 10000000, "Distance run", "How far the chain has run.",
    ),
    asked(
        "odometer_km", "", "km", 0, 10000000, "Odometer",
        "Distance that the vehicle showed at the time.",
    ),
    asked(
        "load_n", "F", "N", 0, 100000, "Load on the chain",
        "Pull on the chain while its length was measured.",
    ),
    asked(
        "keyway_offsets_crank_deg", "", "deg", -30, 30, "Keyway or bushing offsets",
        "What each keyway or bushing adds to the cam timing, in crank degrees.",
    ),
    counted("curve_points", "", 0, 400, "Points of the curve", "How many points to work out."),
    # Several readings in one, and the shelf.
    told(
        "expected_excess_mm", "e", "mm", "Expected excess length", "By all the other readings.",
    ),
    told(
        "chi_square", "", "", "Chi-square", "Weighted sum of squared residuals.",
    ),
    told(
        "probability", "", "", "Probability",
        "Of readings that agree as badly or worse by chance alone.",
    ),
    told("lower_mm", "", "mm", "Window, from", "Least movement wanted."),
    told("upper_mm", "", "mm", "Window, to", "Largest movement wanted."),
    told(
        "cold_movement_mm", "m", "mm", "Cold movement", "Total mid-span movement expected cold.",
    ),
    told(
        "hot_movement_mm", "m", "mm", "Hot movement", "Total mid-span movement expected hot.",
    ),
    told("cold_probability", "", "", "In the window, cold", "Probability, 0 to 1."),
    told("hot_probability", "", "", "In the window, hot", "Probability, 0 to 1."),
    told(
        "share", "", "", "Share of the variance",
        "Of the best few predictions together, that the trial would take away; 0 to 1.",
    ),
)  # fmt: skip

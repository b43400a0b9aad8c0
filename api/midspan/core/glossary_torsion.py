"""Terms of the study of a drive whose crank does not turn evenly."""

from .term import Term, asked, counted, told

TERMS: tuple[Term, ...] = (
    asked(
        "least_movement_mm", "", "mm", 0, 100, "From a movement of",
        "Mid-span movement, in and out, at the tight end of the map.",
    ),
    asked(
        "most_movement_mm", "", "mm", 0.1, 100, "To a movement of",
        "Mid-span movement, in and out, at the loose end of the map.",
    ),
    counted("movements", "", 2, 15, "Rows of the map", "How many movements are tried."),
    asked("lowest_speed_rpm", "", "rpm", 300, 12000, "From a speed of", "Of the crankshaft."),
    asked("highest_speed_rpm", "", "rpm", 301, 12000, "To a speed of", "Of the crankshaft."),
    counted("speeds", "", 2, 15, "Columns of the map", "How many speeds are tried."),
    asked(
        "vibration_order", "", "", 0.5, 12, "Order of the vibration",
        "Swings of the crank nose per turn of the crank.",
    ),
    asked(
        "amplitude_deg", "A", "deg", 0, 3, "Amplitude of the vibration",
        "How far the crank nose swings either way, crank degrees.",
    ),
    asked(
        "cam_inertia_kg_m2", "J", "kg m2", 1e-5, 1, "Inertia of the cam",
        "Cam, its gear and all that turns with them.",
    ),
    asked(
        "strand_stiffness_n_per_mm", "k", "N/mm", 200, 100000, "Stiffness of a strand",
        "Pull per millimetre of stretch of one free strand.",
    ),
    asked(
        "damping_ratio", "", "", 0, 1, "Damping of a taut strand",
        "Share of the damping at which the cam on one strand would no longer swing.",
    ),
    asked(
        "mean_torque_nm", "M", "N m", 0, 200, "Mean torque of the valve train",
        "What turning the cam takes on average.",
    ),
    asked(
        "pulse_torque_nm", "", "N m", 0, 500, "Pulses of the valve train, either way",
        "How far the torque swings about its mean as the valves open and close.",
    ),
    asked(
        "pulse_order", "", "", 0.5, 32, "Pulses per turn of the cam",
        "Usually as many as cylinders.",
    ),
    told("mean_phase_deg", "", "deg", "Mean phase", "Of the cam, crank degrees; late is negative."),
    told(
        "phase_range_deg", "", "deg", "Phase, end to end",
        "From the latest to the earliest the cam stands, crank degrees.",
    ),
    told(
        "phase_scatter_deg", "", "deg", "Phase scatter",
        "Standard deviation of the cam's phase, crank degrees; spark driven by it shares it.",
    ),
    told("drive_peak_n", "", "N", "Peak pull, drive strand", "Largest tension."),
    told("slack_peak_n", "", "N", "Peak pull, slack strand", "Largest tension."),
    told("strikes_per_turn", "", "", "Strikes per cam turn", "How often a loose strand closes."),
    told("closing_mm_per_s", "", "mm/s", "Closing speed", "Of the hardest strike."),
    told("strike_energy_mj", "", "mJ", "Energy of the hardest strike", "Of the cam's inertia."),
    told("natural_frequency_hz", "", "Hz", "Natural frequency", "Of the cam on one taut strand."),
    told("steps_per_turn", "", "", "Steps per cam turn", "Of the integration."),
)  # fmt: skip

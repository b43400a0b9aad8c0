"""Terms of running in: the plan, its log, the oil."""

from .term import Term, asked, told

TERMS: tuple[Term, ...] = (
    asked(
        "spring_open_load_n", "F_o", "N", 0, 10000, "Spring load at full lift",
        "Load of one valve's springs at full lift.",
    ),
    asked(
        "expanded_uncertainty_mm", "U", "mm", 0, 1000, "Plus or minus on the movement",
        "Half of the 95 % coverage interval of the movement.",
    ),
    asked(
        "distance_per_week_km", "", "km", 1, 20000, "Distance a week",
        "How far it is driven a week.",
    ),
    asked(
        "running_per_week_h", "", "h", 0.1, 168, "Hours a week", "How long it is run a week.",
    ),
    asked(
        "average_speed_km_per_h", "", "km/h", 1, 200, "Average speed",
        "Turns hours of running into distance.",
    ),
    asked(
        "drain_interval_km", "", "km", 100, 100000, "Normal drain interval",
        "Distance between oil changes by the maker's manual.",
    ),
    asked(
        "phosphorus_mg_per_kg", "", "mg/kg", 0, 10000, "Phosphorus",
        "Phosphorus content of the oil by mass; the same as ppm.",
    ),
    asked(
        "zinc_mg_per_kg", "", "mg/kg", 0, 10000, "Zinc",
        "Zinc content of the oil by mass; the same as ppm.",
    ),
    # The log.
    asked(
        "run_min", "", "min", 0, 100000, "Run so far", "How long a step was really run.",
    ),
    asked(
        "distance_since_start_km", "", "km", 0, 10000000, "Distance since the first start",
        "How far the engine has run since its first start in this build.",
    ),
    asked(
        "value_read", "", "", -1000000000, 1000000000, "Value read",
        "Read off a gauge, in the unit beside it.",
    ),
    # The plan.
    told("duration_min", "", "min", "To run", "How long a step is to be run."),
    told(
        "at_distance_km", "", "km", "Due at", "Distance since the first start at which it is due.",
    ),
    told(
        "at_running_h", "", "h", "Due after", "Running since the first start at which it is due.",
    ),
    told("after_weeks", "", "weeks", "Due in", "Weeks of use until it is due."),
    told("common_lower", "", "", "All agree, from", "Lower end of what every source admits."),
    told("common_upper", "", "", "All agree, to", "Upper end of what every source admits."),
    told("steps_done", "", "", "Steps done", "Steps that were ticked, cut short or left out."),
    told("steps_total", "", "", "Steps", "Steps of the plan."),
    told(
        "bedding_share", "", "", "Share of the first wear",
        "Share of the chain's first wear that the timed steps do; 0 to 1.",
    ),
    # The oil, by SAE J300.
    told(
        "viscosity_100c_low_mm2_per_s", "", "mm2/s", "Viscosity at 100 C, from",
        "Least kinematic viscosity at 100 C.",
    ),
    told(
        "viscosity_100c_high_mm2_per_s", "", "mm2/s", "Viscosity at 100 C, below",
        "Kinematic viscosity at 100 C that is not reached.",
    ),
    told(
        "hths_low_mpa_s", "", "mPa.s", "Viscosity at 150 C under shear, from",
        "Least high-temperature high-shear viscosity.",
    ),
    told(
        "cranking_high_mpa_s", "", "mPa.s", "Cranking viscosity, to",
        "Largest low-temperature cranking viscosity.",
    ),
    told("cranking_at_c", "", "degC", "Cranking, at", "Temperature of the cranking viscosity."),
    told(
        "pumping_high_mpa_s", "", "mPa.s", "Pumping viscosity, to",
        "Largest low-temperature pumping viscosity.",
    ),
    told("pumping_at_c", "", "degC", "Pumping, at", "Temperature of the pumping viscosity."),
)  # fmt: skip

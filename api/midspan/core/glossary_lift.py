"""Terms of lift curves, rockers, clearance and compression."""

from .term import Term, asked, counted, told

TERMS: tuple[Term, ...] = (
    # The table.
    asked(
        "table_angles_deg", "", "deg", -1440, 1440, "Angles of the table",
        "Wheel readings in the order in which they were taken, crank or cam degrees as stated.",
    ),
    asked(
        "table_lifts_mm", "", "mm", -100, 100, "Lifts of the table",
        "Dial readings that belong to the angles, zero on the base circle.",
    ),
    counted("angle_column", "", 1, 50, "Column of the angle", "Counted from 1; guessed if empty."),
    counted("lift_column", "", 1, 50, "Column of the lift", "Counted from 1; guessed if empty."),
    asked(
        "table_ratio", "R", "", 0.5, 4, "Rocker ratio when read",
        "Of the rocker on the engine while lift was read at the valve.",
    ),
    asked(
        "table_lash_mm", "", "mm", 0, 5, "Lash when read",
        "At the valve, while lift was read there; none with a hydraulic lifter.",
    ),
    asked(
        "installed_centreline_deg", "CL", "deg", 0, 270, "Centreline as installed",
        "Of this lobe, from equal lift near its nose: intake after TDC, exhaust before TDC.",
    ),
    asked(
        "heights_mm", "h", "mm", 0.001, 50, "Heights of lift",
        "Lifts at which opening and closing are wanted.",
    ),
    told("height_mm", "h", "mm", "Height of lift", "At which opening and closing are taken."),
    told("opens_deg", "", "deg", "Opens", "Crank angle after the table's zero; before, negative."),
    told("closes_deg", "", "deg", "Closes", "Crank angle after the table's zero."),
    told("duration_deg", "D", "deg", "Duration", "From opening to closing, crank degrees."),
    told("centre_deg", "", "deg", "Centre", "Halfway between opening and closing."),
    told(
        "area_mm_deg", "", "mm deg", "Area under the curve",
        "Of lift over crank degrees, between opening and closing.",
    ),
    told("maximum_lift_mm", "", "mm", "Maximum lift", "Of the smooth curve, as it was read."),
    told(
        "maximum_at_deg", "", "deg", "Maximum at",
        "Crank angle of the greatest lift: flat, so less sure than a centre from equal lift.",
    ),
    told("scatter_mm", "s", "mm", "Scatter of the readings", "About the smooth curve."),
    told("shares_sum", "", "", "Terms of the curve", "Trace of the hat matrix of the smoothing."),
    told(
        "least_slip_deg", "", "deg", "Least slip that would show",
        "A wheel that slips by less on a flank need not be noticed.",
    ),
    told("rows_used", "", "", "Rows used", "Rows of the table that the curve rests on."),
    told("line", "", "", "Line", "Line of the text, or place in the lists, from 1."),
    told("lines", "", "", "Lines", "Lines of the text, or places in the lists, from 1."),
    told("angle_deg", "", "deg", "Crank angle", "After the table's zero, or after TDC."),
    told("lift_mm", "", "mm", "Lift", "Of lobe or valve, as named beside it."),
    told("velocity_mm_per_deg", "", "mm/deg", "Velocity", "Of the lift, per crank degree."),
    told(
        "acceleration_mm_per_deg2", "", "mm/deg2", "Acceleration",
        "Of the lift, per crank degree squared.",
    ),
    told("residual_mm", "", "mm", "Off the curve", "Reading less the smooth curve."),
    # Rockers.
    asked(
        "rocker_ratio", "R", "", 0.5, 4, "Rocker ratio",
        "Valve lift by lobe lift; real ones wander over the lift.",
    ),
    asked(
        "lash_mm", "", "mm", 0, 5, "Lash", "At the valve; none with a hydraulic lifter.",
    ),
    asked(
        "event_height_mm", "h", "mm", 0.001, 50, "Height of the event to keep",
        "Valve lift at which the chosen event is to stay where it is.",
    ),
    told(
        "cam_moved_deg", "", "deg", "Move the cam by",
        "Crank degrees; positive is earlier (advance).",
    ),
    told(
        "overlap_middle_deg", "", "deg", "Middle of the overlap", "Crank degrees after TDC.",
    ),
    told("intake_lift_mm", "", "mm", "Intake valve lift", "At this crank angle."),
    told("exhaust_lift_mm", "", "mm", "Exhaust valve lift", "At this crank angle."),
    # The matrix of tests.
    asked(
        "settings_deg", "", "deg", -30, 30, "Cam settings to test",
        "Crank degrees from the present setting; positive is earlier.",
    ),
    asked(
        "swap_min", "", "min", 0, 10000, "To swap rockers",
        "Minutes for one change of all rockers, lash set again.",
    ),
    asked(
        "move_min", "", "min", 0, 10000, "To move the cam",
        "Minutes for one change of the cam setting, checked again.",
    ),
    asked(
        "left_out_deg", "", "deg", -30, 30, "Cam setting left out",
        "With the rocker beside it; one of the settings to test.",
    ),
    told("least_min", "", "min", "Least that any order needs", "A bound from below."),
    told("total_min", "", "min", "All changes together", "Minutes between the tests."),
    told("change_min", "", "min", "Change before it", "Minutes from the test before."),
    told("setting_deg", "", "deg", "Cam setting", "Crank degrees; positive is earlier."),
    counted("place", "", 1, 100000, "Place in the order", "From 1, as they came or are to come."),
    told("swaps", "", "", "Rocker swaps", "In the whole order."),
    told("moves", "", "", "Cam moves", "In the whole order."),
    # Clearance.
    asked(
        "pin_offset_mm", "e", "mm", -10, 10, "Pin offset",
        "Of the piston pin from the bore's middle, positive towards the major thrust side.",
    ),
    asked(
        "valve_axis_deg", "", "deg", 0, 60, "Valve to bore angle",
        "Angle between the valve's axis and the bore's.",
    ),
    asked(
        "drop_angle_deg", "A", "deg", -90, 90, "Crank angle of the reading",
        "After true TDC; before it, negative.",
    ),
    asked(
        "travel_mm", "TC", "mm", 0, 200, "Valve travel to the piston",
        "How far the valve goes from its seat until it touches the piston, along its axis.",
    ),
    asked(
        "deck_clearance_mm", "", "mm", 0, 10, "Deck clearance",
        "Between piston crown and head at TDC, gasket pressed.",
    ),
    asked(
        "radial_clearance_mm", "", "mm", 0, 50, "Clearance round the valve head",
        "Between the valve's edge and the side of its pocket.",
    ),
    told("valve_clearance_mm", "VC", "mm", "Valve to piston clearance", "Least over the crank."),
    told("clearance_mm", "VC", "mm", "Clearance", "Between valve and piston, along the valve."),
    told("least_at_deg", "", "deg", "Least at", "Crank angle after TDC; before it, negative."),
    told(
        "seated_at_top_mm", "TC", "mm", "Seated valve to piston at TDC",
        "How far the valve could go at TDC before it touched.",
    ),
    told(
        "loss_per_deg_mm", "", "mm", "Clearance lost per crank degree",
        "The piston's speed where the gap is least: moving the cam by a degree costs so much.",
    ),
    # Compression.
    asked(
        "static_ratio", "SCR", "", 4, 30, "Static compression ratio",
        "Swept and clearance volume over clearance volume.",
    ),
    asked(
        "closing_plus_minus_deg", "U", "deg", 0, 30, "Closing point, plus or minus",
        "Half of the 95 % coverage interval of the seat closing point.",
    ),
    asked("exponent", "n", "", 1, 1.45, "Exponent", "Of the compression, polytropic."),
    asked(
        "inlet_pressure_kpa", "p1", "kPa", 20, 400, "Pressure at closing",
        "Absolute pressure in the cylinder when the intake valve closes.",
    ),
    told("dynamic_ratio", "DCR", "", "Dynamic compression ratio", "From where the intake closes."),
    told("ratio", "DCR", "", "Dynamic compression ratio", "At this cam setting."),
    told("effective_stroke_mm", "", "mm", "Stroke left", "From where the intake closes to TDC."),
    told("swept_stroke_mm", "", "mm", "Swept stroke", "From bottom to top dead centre."),
    told("pressure_kpa", "p2", "kPa", "Pressure at TDC", "Absolute, turning without burning."),
    told("gauge_kpa", "", "kPa", "Pressure on a gauge", "Above the pressure at closing."),
)  # fmt: skip

"""Terms of setting the cam: the degree wheel, true TDC, valve events, adjusters."""

from .term import Term, asked, told

TERMS: tuple[Term, ...] = (
    # The wheel.
    asked(
        "wheel_diameter_mm", "D", "mm", 50, 1000, "Wheel diameter",
        "Diameter of the degree wheel at its marks.",
    ),
    asked(
        "parallax_mm", "p", "mm", 0, 10, "Pointer parallax, plus or minus",
        "How far off the eye may see the pointer, along the wheel's rim.",
    ),
    # The crank.
    asked("stroke_mm", "S", "mm", 10, 1000, "Stroke", "Twice the crank throw."),
    asked(
        "rod_length_mm", "L", "mm", 20, 3000, "Rod length",
        "Connecting rod, between the centres of its two eyes.",
    ),
    # True TDC.
    asked(
        "before_readings_deg", "", "deg", 0, 360, "Readings before TDC",
        "Wheel readings where the piston, coming up, is at the stop or the height chosen.",
    ),
    asked(
        "after_readings_deg", "", "deg", 0, 360, "Readings after TDC",
        "Wheel readings where the piston, going down, is at the stop or the same height.",
    ),
    asked(
        "depth_error_mm", "", "mm", 0, 2, "Stop flex or dial error, plus or minus",
        "How much the stop gives, or the dial may be off, between the two sides.",
    ),
    asked(
        "drop_mm", "s", "mm", 0.01, 300, "Drop of the piston",
        "How far the piston stands below its highest point where the wheel was read.",
    ),
    asked(
        "tdc_reading_deg", "", "deg", -180, 360, "True TDC on the wheel",
        "What the wheel shows at true TDC; counted both ways, after its zero is positive.",
    ),
    asked(
        "tdc_plus_minus_deg", "U", "deg", 0, 45, "True TDC, plus or minus",
        "Half of the 95 % coverage interval of true TDC.",
    ),
    told(
        "correction_deg", "", "deg", "Correction of the wheel",
        "Add it to what the wheel shows, counted in crank degrees after TDC.",
    ),
    told(
        "half_angle_deg", "A", "deg", "Each stop, once the wheel is right",
        "Crank degrees from true TDC to either stop reading.",
    ),
    told(
        "depth_rate_mm_per_deg", "ds/dA", "mm/deg", "Piston travel per crank degree",
        "Where the wheel was read; the larger, the less a depth error matters.",
    ),
    # Valve events, read.
    asked(
        "angles_deg", "", "deg", -180, 360, "Readings",
        "Repeated readings of one event, from the dead centre named or as the wheel shows it.",
    ),
    asked(
        "checking_height_mm", "h", "mm", 0, 20, "Checking height",
        "Lift at which opening and closing are read; 0 is the seat, the first movement.",
    ),
    asked(
        "nose_drop_mm", "", "mm", 0.01, 10, "Below maximum lift",
        "How far below maximum lift the two equal-lift readings were taken.",
    ),
    asked(
        "dial_error_mm", "", "mm", 0, 1, "Dial indicator error, plus or minus",
        "How far off the lift may be when an event is read.",
    ),
    told(
        "lift_rate_mm_per_deg", "", "mm/deg", "Lift per crank degree",
        "Where an event is read; the larger, the less the dial's error matters.",
    ),
    # Valve events, as the trade names them: crank degrees.
    asked(
        "intake_opening_btdc_deg", "IO", "deg", -180, 180, "Intake opens, before TDC",
        "After TDC is negative.",
    ),
    asked(
        "intake_closing_abdc_deg", "IC", "deg", -180, 180, "Intake closes, after BDC",
        "Before BDC is negative.",
    ),
    asked(
        "exhaust_opening_bbdc_deg", "EO", "deg", -180, 180, "Exhaust opens, before BDC",
        "After BDC is negative.",
    ),
    asked(
        "exhaust_closing_atdc_deg", "EC", "deg", -180, 180, "Exhaust closes, after TDC",
        "Before TDC is negative.",
    ),
    asked(
        "intake_duration_deg", "Di", "deg", 20, 540, "Intake duration",
        "Crank degrees from opening to closing, at the checking height.",
    ),
    asked(
        "exhaust_duration_deg", "De", "deg", 20, 540, "Exhaust duration",
        "Crank degrees from opening to closing, at the checking height.",
    ),
    asked(
        "intake_centreline_deg", "ICL", "deg", 0, 270, "Intake centreline, after TDC",
        "Crank angle halfway between two points of equal lift of the intake lobe.",
    ),
    asked(
        "exhaust_centreline_deg", "ECL", "deg", 0, 270, "Exhaust centreline, before TDC",
        "Crank angle halfway between two points of equal lift of the exhaust lobe.",
    ),
    asked(
        "lobe_separation_cam_deg", "LSA", "deg", 40, 180, "Lobe separation, cam degrees",
        "Half the sum of the two centrelines; in cam degrees.",
    ),
    asked(
        "advance_deg", "", "deg", -90, 90, "Advance",
        "Lobe separation less intake centreline, crank degrees; retarded is negative.",
    ),
    told(
        "overlap_deg", "OL", "deg", "Overlap",
        "Crank degrees through which both valves are open; negative if neither is.",
    ),
    told(
        "nose_centreline_deg", "", "deg", "Centreline near the nose",
        "From the two readings of equal lift near maximum lift.",
    ),
    told(
        "middle_centreline_deg", "", "deg", "Centreline at mid-duration",
        "Halfway between opening and closing at the checking height.",
    ),
    told(
        "asymmetry_deg", "", "deg", "Asymmetry of the lobe",
        "Centreline at mid-duration less the one near the nose.",
    ),
    asked(
        "tolerance_deg", "", "deg", 0, 20, "Tolerance, plus or minus",
        "How far off the data sheet a crank angle may be.",
    ),
    told("card_value", "", "", "Data sheet", "The data sheet's figure for the same quantity."),
    told(
        "rest_deg", "", "deg", "Late for other reasons",
        "What the chain's wear does not explain; early is negative.",
    ),
    # Adjusters.
    asked(
        "target_deg", "", "deg", 0, 270, "Centreline wanted",
        "Of the lobe that was measured: intake after TDC, exhaust before TDC, crank degrees.",
    ),
    asked(
        "plus_minus_deg", "U", "deg", 0, 45, "Plus or minus",
        "Half of the 95 % coverage interval of the centreline measured.",
    ),
    asked(
        "steps", "", "", -100, 100, "Steps",
        "What each hole, bushing, key or keyway adds to the cam's advance, in the unit stated.",
    ),
    asked(
        "fitted", "", "", -100, 100, "Fitted now",
        "The step or setting that was fitted when the cam was measured, in the unit stated.",
    ),
    asked(
        "reach", "", "", 0.01, 100, "Reach, either way",
        "How far a vernier without steps goes from its middle, in the unit stated.",
    ),
    asked(
        "mark", "", "", 0.001, 100, "One mark",
        "What one mark of the vernier is worth, in the unit stated.",
    ),
    asked(
        "radius_mm", "R", "mm", 1, 500, "Radius of the offset",
        "Distance of the key or dowel from the axis of its shaft.",
    ),
    told("position", "", "", "Position", "The step or setting to fit, in the unit stated."),
    told("change", "", "", "Change", "Position less what is fitted now, in the unit stated."),
    told("marks", "", "", "Marks", "The change in marks of the vernier."),
    told(
        "tooth_crank_deg", "", "deg", "One tooth", "What one tooth is worth, in crank degrees.",
    ),
    told(
        "wanted_crank_deg", "", "deg", "Wanted move, crank degrees",
        "Advance is positive, retard negative.",
    ),
    told(
        "wanted_cam_deg", "", "deg", "Wanted move, cam degrees", "Half the crank degrees.",
    ),
    told("move_crank_deg", "", "deg", "Move, crank degrees", "Advance is positive."),
    told("move_cam_deg", "", "deg", "Move, cam degrees", "Half the crank degrees."),
    told(
        "remainder_deg", "", "deg", "Left over",
        "Wanted less got, crank degrees: what these steps cannot reach.",
    ),
    told("tied", "", "", "Equally near", "How many settings come as near as the first."),
    told("moved", "", "", "Parts moved", "How many of the adjusters the setting changes."),
    told(
        "recheck_plus_minus_deg", "", "deg", "Re-check, plus or minus",
        "How far the next reading of the centreline may differ by the readings alone, 95 %.",
    ),
)  # fmt: skip

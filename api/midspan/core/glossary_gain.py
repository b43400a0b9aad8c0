"""Terms of spark scatter and of the gain to be expected."""

from .term import Term, asked, told

_SPARK = "In crank degrees before TDC, read with a timing light."

TERMS: tuple[Term, ...] = (
    asked("idle_before_deg", "", "deg", -40, 90, "At idle, before the work", _SPARK),
    asked("idle_after_deg", "", "deg", -40, 90, "At idle, after the work", _SPARK),
    asked("wide_open_before_deg", "", "deg", -40, 90, "Wide open, before the work", _SPARK),
    asked("wide_open_after_deg", "", "deg", -40, 90, "Wide open, after the work", _SPARK),
    asked(
        "away_from_best_deg", "x", "deg", -30, 30, "Setting, off the best one",
        "Crank degrees between the setting used and the one with most torque.",
    ),
    asked(
        "loss_per_deg2", "k", "1/deg2", 0.000001, 0.01, "Loss by the square of a degree",
        "Share of torque lost at one crank degree off the best point.",
    ),
    asked(
        "peak_power_kw", "P", "kW", 1, 10000, "Peak power",
        "Of the engine as it is, measured or hoped for.",
    ),
    told("mean_deg", "", "deg", "Mean timing", "Mean of the readings."),
    told("deviation_deg", "s", "deg", "Standard deviation", "Of the readings as they are."),
    told("range_deg", "", "deg", "Range", "Largest less smallest reading."),
    told(
        "resolution_share", "", "", "Share by reading in steps",
        "How much of the variance the steps of the reading explain; 0 to 1.",
    ),
    told(
        "own_deviation_deg", "q", "deg", "Scatter of the spark",
        "Standard deviation, freed of what reading in steps adds.",
    ),
    told("scatter_loss_percent", "", "%", "Lost by scatter", "Of the torque."),
    told("setting_loss_percent", "", "%", "Lost by the setting", "Of the torque."),
    told("scatter_loss_kw", "", "kW", "Lost by scatter", "Of the peak power given."),
    told("ratio_of_deviations", "", "", "After over before", "Ratio of standard deviations."),
    told("mean_change_deg", "", "deg", "Change of the mean", "After less before."),
    told("scatter_gain_percent", "", "%", "Gained by less scatter", "Of the torque."),
    told("scatter_gain_kw", "", "kW", "Gained by less scatter", "Of the peak power given."),
    told(
        "right_range_deg", "", "deg", "Range with the right slack",
        "All readings within this; common practice, no source.",
    ),
    # The gain.
    asked(
        "peak_speed_rpm", "n", "rpm", 500, 20000, "Speed at peak power", "Of the crankshaft.",
    ),
    asked(
        "from_movement_mm", "m1", "mm", 0, 100, "Movement before",
        "Mid-span movement, cold, of the setting compared with.",
    ),
    asked(
        "to_movement_mm", "m2", "mm", 0, 100, "Movement after",
        "Mid-span movement, cold, of the other setting.",
    ),
    asked(
        "gain_percent", "", "%", -50, 50, "Gain",
        "Of one setting over another; negative for a loss.",
    ),
    asked(
        "pin_friction", "mu", "", 0.001, 1, "Friction of pin in bush", "Coefficient of friction.",
    ),
    asked(
        "bearing_friction", "mu", "", 0.0001, 1, "Friction of the shaft bearings",
        "Coefficient of friction of an oiled journal.",
    ),
    asked("chain_pin_mm", "d", "mm", 0.5, 60, "Pin diameter", "Of the chain."),
    asked(
        "crank_journal_mm", "", "mm", 5, 500, "Front crank journal",
        "Diameter of the main bearing beside the chain.",
    ),
    asked(
        "cam_journal_mm", "", "mm", 5, 500, "Front cam journal",
        "Diameter of the cam bearing beside the chain.",
    ),
    told("gain_kw", "", "kW", "Gain", "Of the peak power given."),
    told("rest_kw", "", "kW", "The rest of it", "What nobody has worked out."),
    told("tension_n", "F", "N", "Pull in each strand", "Of a hot chain that is too short."),
    told("hot_excess_mm", "e", "mm", "Excess length, hot", "Negative is interference."),
    told("loss_percent", "", "%", "Lost power", "Share of the peak power."),
    told("expected_percent", "", "%", "Expected", "By the most likely loss curve."),
    told("engines_counted", "", "", "Engines", "Engines with evidence; 0: only a rule of thumb."),
    told("comparisons_used", "", "", "Comparisons", "Comparisons on the dyno that it rests on."),
)  # fmt: skip

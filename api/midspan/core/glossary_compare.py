"""Terms of comparing dyno runs: scatter, drift, gain, and how many pulls it takes."""

from .term import Term, asked, counted, told

TERMS: tuple[Term, ...] = (
    asked("band_lower_rpm", "", "rpm", 100, 30000, "Band from", "Engine speed where it begins."),
    asked("band_upper_rpm", "", "rpm", 100, 30000, "Band to", "Engine speed where it ends."),
    asked(
        "wanted_gain_percent", "", "%", 0.05, 50, "Gain to be shown",
        "The smallest gain that is worth knowing.",
    ),
    asked(
        "scatter_percent", "s", "%", 0.01, 20, "Scatter of a pull",
        "Standard deviation of runs of one setting; of one level.",
    ),
    counted(
        "scatter_degrees_of_freedom", "nu", 1, 10000, "Degrees of freedom of the scatter",
        "About the runs it was found from, less one a setting.",
    ),
    asked(
        "power_percent", "", "%", 50, 99, "Chance to find it",
        "Probability that a gain of this size is shown if it is there.",
    ),
    told("lower_95", "", "", "From, 95 %", "Low end of the 95 % interval."),
    told("upper_95", "", "", "To, 95 %", "High end of the 95 % interval."),
    told(
        "gain_with_all_percent", "", "%", "Gain with every run",
        "The same with the runs left out taken in.",
    ),
    told("p_value", "p", "", "Chance", "Of a difference so large if there is none; two-sided."),
    told(
        "change_per_pull_percent", "", "%", "Drift a pull", "Of the reference's level, per place.",
    ),
    told("level", "", "", "Level", "Mean at the middle of the session, drift taken out."),
    told("left_out_count", "", "", "Left out", "How many runs of this setting are not compared."),
    told("times_fitted", "", "", "Times fitted", "How often the setting was set anew."),
    told("without_drift", "", "", "Without drift", "Brought to the middle of the session."),
    told("residual_percent", "", "%", "Off its setting", "A run less its setting's level."),
    told(
        "detectable_percent", "", "%", "Smallest gain it finds",
        "The true gain that is shown with the wanted probability; 80 % if not said.",
    ),
    told("further_pulls", "", "", "Further pulls", "That would show the gain found, if true."),
    told("mean", "", "", "Mean", "Of the runs, drift taken out."),
    told("lower_all_95", "", "", "From, all speeds", "Low end of the band for all speeds at once."),
    told("upper_all_95", "", "", "To, all speeds", "High end of the band for all speeds at once."),
    told("reference_nm", "T", "N m", "Torque of the reference", "What the difference is from."),
    told("runs_with_curve", "", "", "Runs with a curve", "That the bands rest on."),
    told("pointwise_factor", "t", "", "Factor at one speed", "Of the standard error."),
    told("all_speeds_factor", "", "", "Factor at all speeds", "Of the standard error."),
    told("fittings", "", "", "Fittings", "How often any setting was fitted."),
    told(
        "refitting_scatter_percent", "", "%", "Scatter of refitting",
        "Standard deviation between fittings of one setting.",
    ),
    told("pulls", "n", "", "Pulls", "How many runs."),
    told("changes", "", "", "Changes", "How often the setting is changed."),
    told("error_factor", "", "", "Standard error over scatter", "Of the difference, by design."),
    told("pulls_at_low", "", "", "Pulls, small scatter", "At the low end of the scatter."),
    told("pulls_at_high", "", "", "Pulls, large scatter", "At the high end of the scatter."),
)  # fmt: skip

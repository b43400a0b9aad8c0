"""Terms of the wear forecast: the wear, what is expected when, and how sure that is."""

from .term import Term, asked, counted, told

TERMS: tuple[Term, ...] = (
    asked(
        "running_since_start_h", "t", "h", 0, 100000, "Running since the first start",
        "How long the engine has run since its first start with this chain.",
    ),
    asked(
        "horizon_h", "", "h", 10, 100000, "As far as", "Running beyond which nothing is forecast.",
    ),
    # A prior from the shop's own records.
    asked(
        "first_wear_percent", "a", "%", 0.0001, 10, "First wear",
        "Elongation by the first wear in all; the median.",
    ),
    asked(
        "first_wear_log_sd", "", "", 0.01, 5, "Spread of the first wear",
        "Standard deviation of its natural logarithm.",
    ),
    asked(
        "time_constant_h", "tau", "h", 0.01, 10000, "Time constant of the first wear",
        "Running in which 63 % of the first wear is done; the median.",
    ),
    asked(
        "time_constant_log_sd", "", "", 0.01, 5, "Spread of the time constant",
        "Standard deviation of its natural logarithm.",
    ),
    asked(
        "steady_wear_percent_per_h", "w", "%/h", 0.00000001, 1, "Steady wear",
        "Elongation an hour once the first wear is done; the median.",
    ),
    asked(
        "steady_wear_log_sd", "", "", 0.01, 5, "Spread of the steady wear",
        "Standard deviation of its natural logarithm.",
    ),
    counted(
        "engines", "", 2, 100000, "Engines behind it",
        "How many engines of the shop's own records are behind a prior.",
    ),
    # The answer.
    told("engines_behind", "", "", "Engines behind it", "Of this shop; 0 for the wide prior."),
    told("readings_used", "", "", "Readings used", "How many readings the forecast rests on."),
    told("median", "", "", "Median", "As likely below as above."),
    told("low_80", "", "", "From, 80 %", "Low end of the 80 % interval."),
    told("high_80", "", "", "To, 80 %", "High end of the 80 % interval."),
    told("low_95", "", "", "From, 95 %", "Low end of the 95 % interval."),
    told("high_95", "", "", "To, 95 %", "High end of the 95 % interval."),
    told(
        "run_in_share", "", "", "Share of the first wear done", "By the last reading; 0 to 1.",
    ),
    told(
        "probability_by_now", "", "", "Probability that it has happened",
        "By the last reading, or on fitting if there is none; 0 to 1.",
    ),
    told(
        "probability_beyond", "", "", "Probability that it is further off",
        "Beyond the horizon; 0 to 1.",
    ),
    told(
        "variance_share", "", "", "Share of the variance taken away",
        "That a reading there is expected to take off the variance of what is asked; 0 to 1.",
    ),
    told(
        "effective_share", "", "", "Effective share",
        "Of the points that the method works with; 1 where its shape is the true one.",
    ),
    told("log_sd", "", "", "Spread", "Standard deviation of the natural logarithm."),
)  # fmt: skip

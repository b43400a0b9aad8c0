"""Which relations a figure on the screen comes from: a figure opens them, and they its formula."""

_MEASURED = ("uncertainty.combine", "student.coverage_factor", "guard.judge")
_READ = ("uncertainty.repeat_component", "uncertainty.rectangular") + _MEASURED
_STATE = ("state.state",) + _MEASURED
_EVENT = ("timing.after_tdc",) + _MEASURED
_CENTRE = ("timing.middle",) + _EVENT

# By the field's name in the answers. A relation is named as in its docstring's module.
FIGURES = {
    # One state of the chain.
    "elongation_percent": (
        "elongation.length_from_jaws", "elongation.length_from_inside",
        "elongation.elongation_from_length", "drive.elongation_of",
    ) + _READ,
    "movement_mm": ("movement.excess_from_movement", "movement.movement_from_excess") + _STATE,
    "sag_mm": ("movement.excess_from_sag", "movement.sag_from_excess") + _STATE,
    "excess_mm": ("drive.excess_length", "drive.geometry", "drive.pitch_radius") + _STATE,
    "crank_rock_deg": (
        "phase.rock_from_excess", "phase.excess_from_rock", "phase.angle_of_arc",
    ) + _STATE,
    "cam_retard_deg": ("phase.cam_retard",) + _STATE,
    "cam_retard_crank_deg": ("phase.cam_retard",) + _STATE,
    "pitch_diameter_mm": ("gear.pitch_diameter_over_pins", "gear.over_pins") + _READ,
    "radius_loss_mm": ("gear.pitch_diameter_over_pins", "gear.over_pins") + _READ,
    "added_excess_mm": ("gear.excess_from_radius_loss", "drive.geometry"),
    "combined": ("combine.combine_parts", "chisquare.consistency", "combine.odd_one_out"),
    "hot_movement_mm": (
        "heat.hot_excess", "heat.hot_geometry", "movement.movement_from_excess", "hot.hot_state",
        "hot.change_uncertainty", "hot.hot_verdict",
    ),
    "bored_movement_mm": ("drive.excess_length", "drive.geometry", "drive.taut_centre_distance"),
    # Setting the cam.
    "tdc_reading_deg": ("timing.middle", "timing.unwrap", "crank_slider.drop_rate") + _READ,
    "intake_centreline_deg": _CENTRE,
    "exhaust_centreline_deg": _CENTRE,
    "nose_centreline_deg": _CENTRE,
    "intake_opening_btdc_deg": _EVENT,
    "intake_closing_abdc_deg": _EVENT,
    "exhaust_opening_bbdc_deg": _EVENT,
    "exhaust_closing_atdc_deg": _EVENT,
    "intake_duration_deg": ("timing.duration",) + _EVENT,
    "exhaust_duration_deg": ("timing.duration",) + _EVENT,
    "lobe_separation_cam_deg": ("timing.lobe_separation",) + _CENTRE,
    "advance_deg": ("timing.advance",) + _CENTRE,
    "overlap_deg": ("timing.overlap",) + _EVENT,
    "move_crank_deg": (
        "setting_search.settings_for", "setting_search.ties", "adjuster.crank_degrees_per",
        "adjuster.tooth_step",
    ),
    # Lift and clearance.
    "duration_deg": (
        "lobe.lobe_from", "lobe.reading_weights", "timing.duration", "lift_checks.findings",
    ),
    "cam_moved_deg": ("valve_train.train_of", "lobe.lobe_from", "timing.middle"),
    "total_min": (
        "trial_order.total", "trial_order.change", "trial_order.best_order", "trial_order.least",
    ),
    "valve_clearance_mm": (
        "clearance.smallest", "clearance.top_from_clay", "clearance.top_from_drop",
        "crank_slider.drop", "valve_train.train_of", "clearance_verdict.verdict_of",
    ),
    "dynamic_ratio": (
        "crank_slider.compression_from", "crank_slider.drop", "calc_compression.pressure",
        "uncertainty.propagate",
    ),
    # Running in, and what is to come.
    "at_running_h": (
        "wear.elongation_by", "wear.hours_until", "wear_prior.wide", "wear_prior.pooled",
        "wear_fit.most_likely", "wear_fit.laplace_draws", "quantiles.quantile",
    ),
    # The dyno.
    "range_deg": ("spark.deviation_interval", "spark.freed", "spark.ratio_interval"),
    "mean_loss_percent": ("spark.mean_loss",),
    "gain_kw": (
        "gain_prior.gain_of", "gain_prior.loss", "gain_prior.rise", "gain_fit.learn",
        "gain_fit.spread_points", "quantiles.quantile",
    ),
    "friction_gain_kw": ("gain_friction.pin_power", "gain_friction.bearing_power", "heat.tension"),
    "correction_factor": (
        "correction.factor", "correction.form_factor", "air.dry_pressure", "air.vapour_pressure",
        "correction.corrected",
    ),
    "difference_percent": (
        "drift_fit.difference", "drift_fit.fit", "drift_fit.drift_can_be_told",
        "betas.factor_of_t", "betas.tail_of_t",
    ),
    "detectable_percent": ("further.detectable", "betas.detectable_shift", "spark.detectable"),
    "further_pulls": ("further.further_pulls", "betas.power_of_t", "further.detectable"),
}  # fmt: skip


def rows() -> list[dict[str, object]]:
    """Give every figure with the relations it opens, most telling first.

    Parameters
    ----------
    none

    Returns
    -------
    list of dict: figure (field name, or what it stands for), relations (module and function)

    Raises
    ------
    none

    Validity
    --------
    The relations are those of `methods.SUBJECTS`.

    Reference
    ---------
    none
    """
    return [{"figure": name, "relations": list(FIGURES[name])} for name in sorted(FIGURES)]

"""Terms of heat and of moved shafts."""

from .term import Term, asked, told

TERMS: tuple[Term, ...] = (
    # Heat.
    asked(
        "cold_temperature_c", "T0", "degC", -50, 60, "Temperature when measured",
        "Temperature of block, gears and chain when the drive and its slack were measured.",
    ),
    asked(
        "block_temperature_c", "Tb", "degC", -50, 300, "Block, running",
        "Temperature of the block between the two shafts when running.",
    ),
    asked(
        "gear_temperature_c", "Tg", "degC", -50, 300, "Gears, running",
        "Temperature of the gears when running.",
    ),
    asked(
        "chain_temperature_c", "Tc", "degC", -50, 300, "Chain, running",
        "Temperature of the chain when running.",
    ),
    asked(
        "block_expansion_ppm", "alpha_b", "1e-6/K", 0, 60, "Expansion of the block",
        "Mean linear expansion coefficient, of the user's own source.",
    ),
    asked(
        "gear_expansion_ppm", "alpha_g", "1e-6/K", 0, 60, "Expansion of the gears",
        "Mean linear expansion coefficient, of the user's own source.",
    ),
    asked(
        "chain_expansion_ppm", "alpha_c", "1e-6/K", 0, 60, "Expansion of the chain",
        "Mean linear expansion coefficient, of the user's own source.",
    ),
    asked(
        "stiffness_n_per_mm", "k", "N/mm", 1, 1000000, "Stiffness of the loop",
        "Pull in a strand per millimetre of interference: chain, shafts and block together.",
    ),
    asked(
        "compliance_um_per_kn", "c", "um/kN", 0, 1000, "Give of shafts and block",
        "How much nearer the shafts come by the load on them, if not in the stiffness.",
    ),
    asked(
        "expansion_error_ppm", "a_alpha", "1e-6/K", 0, 30, "Expansion, plus or minus",
        "Half-width of the range that surely holds an expansion coefficient.",
    ),
    asked(
        "temperature_error_k", "a_T", "K", 0, 100, "Running temperatures, plus or minus",
        "Half-width of the range that surely holds each running temperature.",
    ),
    asked(
        "cold_temperature_error_k", "a_T0", "K", 0, 50, "Temperature when measured, plus or minus",
        "Half-width of the range that surely holds the temperature when measured.",
    ),
    # Heat and moved shafts, worked out.
    told(
        "expansion_ppm", "alpha", "1e-6/K", "Expansion coefficient",
        "Mean linear thermal expansion near room temperature.",
    ),
    told(
        "interference_mm", "-e", "mm", "Interference",
        "How much the chain is shorter than its drive, where it is.",
    ),
    told("tension_low_n", "F", "N", "Pull in a strand, from", "With the softest loop."),
    told("tension_high_n", "F", "N", "Pull in a strand, to", "With the stiffest loop."),
    told(
        "shaft_load_low_n", "", "N", "Load on the cam bearing, from",
        "Of the two strands together, with the softest loop.",
    ),
    told(
        "shaft_load_high_n", "", "N", "Load on the cam bearing, to",
        "Of the two strands together, with the stiffest loop.",
    ),
    told("hot_lower_mm", "", "mm", "Wanted hot, from", "Least movement wanted when hot."),
    told("hot_upper_mm", "", "mm", "Wanted hot, to", "Largest movement wanted when hot."),
    told(
        "cold_lower_mm", "", "mm", "Cold target, from",
        "Cold movement that becomes the least wanted when hot.",
    ),
    told(
        "cold_upper_mm", "", "mm", "Cold target, to",
        "Cold movement that becomes the largest wanted when hot.",
    ),
    told(
        "excess_change_mm", "", "mm", "Change of excess length",
        "After less before; positive is looser.",
    ),
    told(
        "length_change_low_mm", "", "mm", "Chain needed, change from",
        "Whole length wanted less that of this chain, for the least movement wanted.",
    ),
    told(
        "length_change_high_mm", "", "mm", "Chain needed, change to",
        "Whole length wanted less that of this chain, for the largest movement wanted.",
    ),
    told(
        "elongation_low_percent", "", "%", "Chain needed, elongation from",
        "Over nominal, for the least movement wanted; negative is shorter than nominal.",
    ),
    told(
        "elongation_high_percent", "", "%", "Chain needed, elongation to",
        "Over nominal, for the largest movement wanted; negative is shorter than nominal.",
    ),
)  # fmt: skip

"""Example requests about comparing dyno runs; every figure is made up."""

from typing import Any

# A B B A twice as often, with a little drift: setting, peak power, peak torque.
_RUNS = (
    ("A", 300.4, 521.0), ("A", 301.3, 522.6), ("B", 305.9, 529.4), ("B", 306.6, 530.9),
    ("B", 305.7, 529.8), ("B", 307.1, 532.0), ("A", 302.0, 523.9), ("A", 301.5, 523.1),
)  # fmt: skip
INPUTS: dict[str, dict[str, Any]] = {
    "compare": {
        "standard": "j607",
        "quantity": "peak-power",
        "reference": "A",
        "drift": "auto",
        "runs": [
            {
                "setting": setting,
                "place": i + 1,
                "figures_are": "j607",
                "peaks": {"power_kw": power, "torque_nm": torque},
            }
            for i, (setting, power, torque) in enumerate(_RUNS)
        ],
    },
    "pulls-needed": {
        "wanted_gain_percent": 1.0,
        "scatter_percent": 0.4,
        "scatter_degrees_of_freedom": 8,
        "design": "there-and-back",
    },
}

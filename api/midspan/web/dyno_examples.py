"""Example requests about dyno sessions; every figure is made up."""

from typing import Any

INPUTS: dict[str, dict[str, Any]] = {
    "correction": {
        "conditions": {
            "air_temperature_c": 27.5,
            "barometer_kpa": 98.2,
            "pressure_kind": "station",
            "altitude_m": 240,
            "relative_humidity_percent": 45,
        },
        "figures_are": "observed",
        "power_kw": 312.4,
        "torque_nm": 548.0,
    },
}


def writes(at: str, engine: str, build: str, session: str) -> dict[str, dict[str, Any]]:
    """Make a session and a run of it."""
    return {
        "session": {
            "engine_id": engine, "build_id": build, "label": "Slack, tight against free", "at": at,
            "standard": "j1349-2004", "note": "Made up.", "invented": True, "created_at": at,
            "settings": [
                {"key": "A", "label": "As built", "movement_mm": 2.5, "movement_u_mm": 0.3,
                 "note": None},
                {"key": "B", "label": "Freed", "movement_mm": 5.5, "movement_u_mm": 0.3,
                 "note": "Idler shimmed."},
            ],
        },
        "run": {
            "session_id": session, "setting": "A", "place": 1, "taken_at": at,
            "conditions": {
                "air_temperature_c": 27.5, "station_pressure_kpa": 98.2,
                "relative_humidity_percent": 45.0, "oil_temperature_c": 92.0,
                "water_temperature_c": 84.0,
            },
            "figures_are": "observed",
            "peaks": {"power_kw": 312.4, "power_speed_rpm": 5900.0, "torque_nm": 548.0,
                      "torque_speed_rpm": 4300.0},
            "curve": {"speed_rpm": [3000.0, 4300.0, 5900.0], "torque_nm": [501.0, 548.0, 505.6]},
            "source": None, "core_version": "0.1.0", "note": "Made up.", "created_at": at,
        },
    }  # fmt: skip


TABLE = "Drehzahl [1/min];Drehmoment [Nm]\n" + "".join(
    f"{speed};{500 + speed / 100:.1f}\n".replace(".", ",") for speed in range(3000, 3500, 50)
)
# Shortened: layout and pulls are left empty.
TABLE_ANSWER = (
    f'{{"bytes": {len(TABLE.encode())}, "rows": {TABLE.count(chr(10)) - 1}}}\n'
    '{"layout": {}, "done": {"pulls": []}}\n'
)

"""The torsional study against closed solutions, its own energy, finer steps and another solver."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from core.drives import WORKED
from midspan.core.errors import Refused
from midspan.lab.torsion import Motion, Plant, Wave, simulate, steps_per_turn
from midspan.lab.torsion_told import study

RADIUS = 0.0668
MASS = 0.003 / RADIUS**2
STIFF = 5e6
CRITICAL = 2 * math.sqrt(STIFF * MASS)
QUIET = Plant(0.0335, RADIUS, 0.003, STIFF, 0.1 * CRITICAL, 3.0, ())
SHAKEN = QUIET._replace(pulses=(Wave(8, 20.0, 0.0),))
SWING = (Wave(4.5, math.radians(0.3), 0.0),)
SPEEDS = [n * math.pi / 30 for n in (2000.0, 3500.0, 6000.0)]
SLACK = [0.0, 0.0002, 0.001]


def test_without_vibration_it_stands_at_the_static_take_up() -> None:
    seen = simulate(QUIET, (), SLACK, SPEEDS)
    take_up = QUIET.torque / RADIUS / STIFF
    assert seen.mean == pytest.approx(np.full((3, 3), -take_up), rel=1e-9)
    assert np.all(seen.high - seen.low < 1e-12)
    assert not seen.strikes.any()
    assert not seen.slack_peak.any()
    assert seen.drive_peak == pytest.approx(np.full((3, 3), QUIET.torque / RADIUS), rel=1e-9)


def test_preloaded_it_is_the_base_excited_oscillator() -> None:
    """Two taut strands are one spring of 2 k and one damper of 2 c: m u'' = 2c(a'-u') + 2k(a-u)."""
    swing = (Wave(2.0, math.radians(0.05), 0.0),)
    seen = simulate(QUIET._replace(torque=0.0), swing, [-0.001], SPEEDS)
    for column, speed in enumerate(SPEEDS):
        at = 2j * speed
        spring = 2 * STIFF + 2 * QUIET.damping * at
        gain = abs(spring / (spring + MASS * at**2))
        range_ = 2 * gain * QUIET.crank_radius * swing[0].size
        found = float((seen.high - seen.low)[0, column])
        # The ends are read at whole steps: less than pi**2 / 2 / steps**2 of the range is missed.
        assert found == pytest.approx(range_, rel=2e-3)
        assert float(seen.deviation[0, column]) == pytest.approx(range_ / math.sqrt(8), rel=1e-4)


def test_one_strand_always_taut_is_the_same_oscillator_with_half_the_stiffness() -> None:
    swing = (Wave(1.0, math.radians(0.02), 0.0),)
    loaded = QUIET._replace(torque=40.0)
    seen = simulate(loaded, swing, [0.01], SPEEDS)
    for column, speed in enumerate(SPEEDS):
        spring = STIFF + QUIET.damping * 1j * speed
        gain = abs(spring / (spring - MASS * speed**2))
        found = float(seen.deviation[0, column])
        assert found == pytest.approx(gain * QUIET.crank_radius * swing[0].size / math.sqrt(2),
                                      rel=1e-4)  # fmt: skip
    assert seen.mean == pytest.approx(np.full((1, 3), -40 / RADIUS / STIFF), rel=1e-6)


def test_work_put_in_is_taken_lost_or_held() -> None:
    seen = simulate(SHAKEN, SWING, SLACK, SPEEDS, balance=True)
    held = seen.balance
    assert held is not None
    assert np.all(held.lost > 0)
    assert seen.strikes.any(), "nothing was struck: the balance proves too little"
    left = held.put_in - held.taken - held.lost - held.gained
    # The strikes lie within steps, where no rule of quadrature is of its full order.
    assert np.all(np.abs(left) < 0.02 * (held.lost + np.abs(held.taken)))


def test_between_strikes_it_converges_at_fourth_order() -> None:
    plant = QUIET._replace(torque=0.0, pulses=(Wave(3, 4.0, 0.3),))
    count = steps_per_turn(plant, SWING, SPEEDS[2])

    def run(times: int) -> "np.ndarray":
        seen = simulate(plant, (Wave(2.0, 1e-4, 0.0),), [-0.001], SPEEDS[2:], count * times)
        return seen.deviation

    coarse, middle, fine = run(1), run(2), run(4)
    order = np.log2(np.abs(coarse - middle) / np.abs(middle - fine))
    assert np.all(order > 3.5), order


def test_halving_the_step_changes_no_periodic_cell_by_more_than_two_percent() -> None:
    """With little slack the motion repeats; with much it need not, and only its size is held."""
    count = steps_per_turn(SHAKEN, SWING, SPEEDS[1])
    one = simulate(SHAKEN, SWING, [-0.0005, 0.0, 0.00005], SPEEDS[1:], count)
    two = simulate(SHAKEN, SWING, [-0.0005, 0.0, 0.00005], SPEEDS[1:], 2 * count)
    assert one.deviation == pytest.approx(two.deviation, rel=0.02)
    assert one.drive_peak == pytest.approx(two.drive_peak, rel=0.02)


@pytest.fixture(scope="module")
def shaken() -> Motion:
    return simulate(SHAKEN, SWING, SLACK, SPEEDS)


@pytest.mark.parametrize(("row", "column"), [(0, 0), (1, 2), (2, 1)])
def test_scipy_with_its_events_comes_to_the_same(shaken: Motion, row: int, column: int) -> None:
    """Another method, of another order, stopped at each strike; through the transient already."""
    rate, slack = SPEEDS[column], SLACK[row]

    def crank(t: float) -> tuple[float, float]:
        size, order = QUIET.crank_radius * SWING[0].size, SWING[0].order
        return size * math.sin(order * rate * t), size * order * rate * math.cos(order * rate * t)

    def moved(t: float, y: "np.ndarray") -> list[float]:
        a, rise = crank(t)
        d, rising = a - y[0], rise - y[1]
        k, c = STIFF, QUIET.damping
        drive = max(k * d + c * rising, 0.0) if d > 0 else 0.0
        other = max(-k * (d + slack) - c * rising, 0.0) if d < -slack else 0.0
        load = (3.0 + 20.0 * math.sin(8 * rate * t / 2)) / RADIUS
        return [y[1], (drive - other - load) / MASS]

    turn = 4 * math.pi / rate
    closes = [lambda t, y: crank(t)[0] - y[0], lambda t, y: crank(t)[0] - y[0] + slack]
    start = [-3.0 / RADIUS / STIFF, 0.0]
    told = solve_ivp(
        moved, (0, 10 * turn), start, events=closes, rtol=1e-7, atol=1e-12,
        max_step=turn / 400, dense_output=True,
    )  # fmt: skip
    at = np.linspace(6 * turn, 10 * turn, 8000, endpoint=False)
    theirs = told.sol(at)[0]
    assert float(shaken.deviation[row, column]) == pytest.approx(float(np.std(theirs)), rel=0.05)
    assert float(shaken.mean[row, column]) == pytest.approx(
        float(np.mean(theirs)), rel=0.1, abs=2e-6
    )


def test_more_slack_leaves_no_less_room_to_stand_still_in() -> None:
    """At rest the cam stands anywhere from one strand's take-up to the other's."""
    slack = [float(x) for x in np.linspace(0, 0.003, 7)]
    ends = [
        simulate(QUIET._replace(torque=pull), (), slack, [400.0]).mean[:, 0] for pull in (3.0, -3.0)
    ]
    ranges = ends[1] - ends[0]
    assert np.all(np.diff(ranges) > 0)
    assert ranges == pytest.approx(np.array(slack) + 2 * 3.0 / RADIUS / STIFF, rel=1e-3)


def test_the_study_says_what_it_is_and_what_it_assumed() -> None:
    found = study({"drive": WORKED, "movements": 3, "speeds": 2, "lowest_speed_rpm": 4000.0})
    assert "not a measurement" in found["said"]
    assert {len(found[q]) for q in ("phase_scatter_deg", "drive_peak_n")} == {3}
    assert {len(row) for row in found["closing_mm_per_s"]} == {2}
    origins = {a["field"]: a["origin"] for a in found["assumptions"]}
    assert origins["strand_stiffness_n_per_mm"] == "from memory, unverified", origins


@pytest.mark.parametrize(
    ("given", "field"),
    [
        ({"speeds": 16}, "speeds"),
        ({"movements": 99}, "movements"),
        ({"least_movement_mm": 9.0, "most_movement_mm": 3.0}, "most_movement_mm"),
        ({"speeds": 2.5}, "speeds"),
        ({"amplitude_deg": -1.0}, "amplitude_deg"),
        ({"lowest_speed_rpm": 300.0, "strand_stiffness_n_per_mm": 100000.0,
          "cam_inertia_kg_m2": 1e-5}, "lowest_speed_rpm"),
    ],
)  # fmt: skip
def test_what_it_cannot_or_will_not_work_out_is_refused_by_name(
    given: dict[str, float], field: str
) -> None:
    with pytest.raises(Refused) as refused:
        study({"drive": WORKED, **given})
    assert [p["field"] for p in refused.value.problems] == [field]

"""Rockers: published figures, the identities of a cam that is moved, and the order of tests."""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.drives import floats
from core.lobes import PERFECT, duration, polynomial, read
from midspan.core import run
from midspan.core.fields import Form
from midspan.core.trial_order import Costs, best_order, least, total
from midspan.core.valve_train import Train, take_train

HALF, INCH = 130.0, 25.4


def train(curve, centre: float = 108.0, step: float = 3.0) -> Train:
    found = take_train(Form({"lobe": read(curve, centre, HALF, step) | PERFECT}), "lobe", "intake")
    assert found is not None
    return found


LOBE = train(polynomial(8.0, HALF))


@pytest.mark.parametrize(
    ("lobe", "ratio", "lash", "valve"),
    [
        # onallcylinders.com/2021/03/10, staggered rocker arms
        (0.300, 1.5, 0.0, 0.450),
        # helpcenter.jegs.com, rocker arm ratio explained
        (0.400, 1.5, 0.0, 0.600),
        (0.400, 1.6, 0.0, 0.640),
        # speedyauto.cc, changing the valve lash: 0.500 in listed opens 0.480 at 0.020 in
        (0.500 / 1.5, 1.5, 0.020, 0.480),
    ],
)
def test_the_published_lifts(lobe: float, ratio: float, lash: float, valve: float) -> None:
    at = train(polynomial(lobe * INCH, HALF)).with_rocker(ratio, lash * INCH)
    assert at.maximum() / INCH == pytest.approx(valve, abs=2e-4)


def test_the_ratio_changes_no_duration_at_the_tappet_but_one_at_the_valve() -> None:
    """pontiacstreetperformance.com/psp/RockerArms.html, of 0.050 in at the tappet."""
    low, high = LOBE.with_rocker(1.5, 0.0), LOBE.with_rocker(1.6, 0.0)
    tappet = [one.events(0.050 * INCH, at_valve=False) for one in (low, high)]
    assert tappet[0].duration == tappet[1].duration
    valve = [one.events(0.075 * INCH).duration.value for one in (low, high)]
    # Which at 1.5 is the same point, and at 1.6 a longer one: 0.0469 in at the tappet.
    assert valve[0] == pytest.approx(tappet[0].duration.value)
    exact = duration(polynomial(8.0, HALF), HALF, 0.075 / 1.6 * INCH)
    assert valve[1] == pytest.approx(exact, abs=0.02)
    assert valve[1] > valve[0] + 0.5


@given(earlier=floats(-30, 30), height=floats(0.3, 9), ratio=floats(1.2, 1.9), lash=floats(0, 0.6))
def test_a_cam_moved_shifts_every_event_and_changes_no_length(
    earlier: float, height: float, ratio: float, lash: float
) -> None:
    now = LOBE.with_rocker(ratio, lash)
    then = now.moved(earlier)
    a, b = now.events(height), then.events(height)
    assert (a is None) == (b is None)
    if a is None:
        return
    for one, other in ((a.opens, b.opens), (a.closes, b.closes), (a.centre, b.centre)):
        assert other.value == pytest.approx(one.value - earlier, abs=1e-9)
    assert b.duration == a.duration
    assert b.area == pytest.approx(a.area)
    assert then.lift(60.0 - earlier) == pytest.approx(now.lift(60.0), abs=1e-12)


@given(ratio=floats(1.2, 1.9), lash=floats(0.01, 0.6), at=floats(-30, 250), height=floats(0.5, 6))
def test_the_ratio_scales_and_lash_takes_away(ratio, lash, at, height) -> None:
    plain, geared = LOBE.with_rocker(1.0, 0.0), LOBE.with_rocker(ratio, 0.0)
    assert geared.lift(at) == pytest.approx(ratio * plain.lift(at), abs=1e-12)
    loose = LOBE.with_rocker(ratio, lash)
    assert loose.lift(at) == pytest.approx(max(0.0, geared.lift(at) - lash), abs=1e-12)
    assert loose.events(height).duration.value < geared.events(height).duration.value


def asked(**others):
    curve = polynomial(8.0, HALF)
    rockers = [{"label": "a", "rocker_ratio": 1.5, "lash_mm": 0.4},
               {"label": "b", "rocker_ratio": 1.65, "lash_mm": 0.4}]  # fmt: skip
    payload = {"intake": read(curve, 108.0, HALF, 3.0) | PERFECT,
               "exhaust": read(curve, -112.0, HALF, 3.0) | PERFECT, "rockers": rockers}  # fmt: skip
    return payload | others


@pytest.mark.parametrize("keep", ["intake-closing", "intake-opening", "exhaust-closing"])
def test_after_the_move_the_event_is_where_it_was(keep: str) -> None:
    payload = asked(keep=keep, event_height_mm=1.5)
    found = run("rockers", payload)
    first, second = found["rockers"]
    assert first["move"]["cam_moved_deg"] == 0
    move = second["move"]["cam_moved_deg"]
    lobe, what = keep.split("-")
    name = {"closing": "closes", "opening": "opens"}[what]
    whole = take_train(Form({"lobe": payload[lobe]}), "lobe", lobe)
    before = getattr(whole.with_rocker(1.5, 0.4).events(1.5), name).value
    after = getattr(whole.with_rocker(1.65, 0.4).moved(move).events(1.5), name).value
    assert after == pytest.approx(before, abs=1e-6)
    # More ratio closes later, so the cam must come earlier; and opens sooner, so later.
    assert (move > 0) == (what == "closing")


def test_overlap_is_no_matter_of_moving_one_shaft() -> None:
    """Overlap, in crank degrees, stays under pure advance; only its middle moves."""
    one = run("rockers", asked(keep="overlap", cams="one"))
    assert one["rockers"][1]["move"] is None
    assert "overlap-on-one-shaft" in [w["code"] for w in one["warnings"]]
    two = run("rockers", asked(keep="overlap", cams="two"))
    move = two["rockers"][1]["move"]
    longer = (
        two["rockers"][1]["overlap"]["overlap_deg"] - two["rockers"][0]["overlap"]["overlap_deg"]
    )
    assert longer > 0
    assert move == {"cam_moved_deg": pytest.approx(-longer), "which": "intake"}


CELLS = st.lists(
    st.tuples(st.integers(0, 2), st.integers(0, 3)), min_size=1, max_size=7, unique=True
)


@settings(max_examples=60)
@given(cells=CELLS, swap=st.integers(0, 9), move=st.integers(0, 9), back=st.booleans())
def test_the_order_is_the_best_there_is(cells, swap: int, move: int, back: bool) -> None:
    costs = Costs(float(swap), float(move))
    order, proven = best_order(costs, cells, back)
    ends = [cells[0]] if back and len(cells) > 1 else []
    every = ([cells[0], *rest, *ends] for rest in itertools.permutations(cells[1:]))
    assert proven
    assert total(costs, order) == min(total(costs, one) for one in every)
    assert total(costs, order) >= least(costs, cells, back)
    assert order[0] == cells[0]
    assert sorted(order[: len(cells)]) == sorted(cells)
    assert order[len(cells) :] == ends


@pytest.mark.parametrize("back", [True, False])
def test_a_whole_matrix_of_any_size_changes_rockers_as_seldom_as_can_be(back: bool) -> None:
    for rockers, settings_ in itertools.product(range(1, 7), range(1, 10)):
        cells = list(itertools.product(range(rockers), range(settings_)))
        order, proven = best_order(Costs(90.0, 45.0), cells, back)
        swaps = sum(a[0] != b[0] for a, b in itertools.pairwise(order))
        assert swaps == rockers - 1 + (back and rockers > 1)
        assert proven


def test_the_baseline_comes_again_and_what_is_left_out_stays_out() -> None:
    found = run("matrix", {"rockers": ["1.5", "1.6"], "settings_deg": [0.0, 4.0, -4.0],
                           "leave_out": [{"rocker": "1.6", "left_out_deg": 4.0}]})  # fmt: skip
    rows = [(row["rocker"], row["setting_deg"]) for row in found["order"]]
    assert rows[0] == rows[-1] == ("1.5", 0.0)
    assert ("1.6", 4.0) not in rows
    assert len(rows) == 6
    assert found["total_min"] == sum(row["change_min"] for row in found["order"])
    assert {a["origin"] for a in found["assumptions"]} == {"from memory, unverified"}

"""The steps of running in, as data, in their order.

To add one, add a row. `where` holds the conditions: all must be met by what is known of the engine
(follower, rings, springs). `ends` says what ends it: a tick, minutes or a distance. A step's
figures are named, never written here (`running_figures`).
"""

from collections import namedtuple

from .limits import MEMORY, PRACTICE

PHASES = ("before first start", "first start", "load cycles", "on the road")
ENDS = ("tick", "minutes", "distance")


class Template(
    namedtuple(
        "Template",
        (
            "key", "phase", "title", "ends", "where", "speed", "time", "figures", "load", "oil",
            "look_at", "stop_when", "cautions", "measures",
        ),
    )
):  # fmt: skip
    """One step before it is fitted to an engine.

    `speed` and `time` name the quantity's figures by the start of their ids; `figures` names what
    else it rests on. `look_at` and `stop_when` are pairs of text and origin. `measures` tells
    whether the chain's slack is measured then.
    """

    __slots__ = ()


def _step(
    key: str,
    phase: int,
    title: str,
    *look_at: tuple[str, str],
    ends: str = "tick",
    where: dict[str, str] | None = None,
    speed: str = "",
    time: str = "",
    figures: tuple[str, ...] = (),
    load: str = "",
    oil: str = "",
    stop_when: tuple[tuple[str, str], ...] = (),
    cautions: tuple[str, ...] = (),
    measures: bool = False,
) -> Template:
    return Template(
        key, PHASES[phase], title, ends, where or {}, speed, time, figures, load, oil, look_at,
        stop_when, cautions, measures,
    )  # fmt: skip


def _usual(text: str) -> tuple[str, str]:
    return text, PRACTICE


def _recalled(text: str) -> tuple[str, str]:
    return text, MEMORY


_STOP = (
    _usual("No oil pressure at once, or it falls: ignition off."),
    _usual("A knock, a squeal or a tick that was not there."),
    _usual("Coolant or oil hotter than the maker allows, or climbing without end."),
    _usual("Fuel, oil or coolant running out anywhere; smoke that is not assembly oil."),
    _usual("Anyone dizzy, or the gas alarm sounds: engine off, everybody out."),
)
_RUNNING = ("carbon-monoxide", "rotating", "eyes-ears", "fire")

STEPS = (
    _step(
        "place", 0, "Make the place safe",
        _usual("Exhaust hose to the outside, gas alarm on."),
        _usual("Extinguisher in reach, a second person who can cut fuel and ignition."),
        _usual("Battery connected last; nothing lies on the engine."),
        cautions=("manual-first", "carbon-monoxide", "fire", "eyes-ears"),
    ),
    _step(
        "flat-fitting", 0, "Check cam and flat followers",
        _usual("New followers with a new cam; each turns freely in its bore."),
        _usual("Running-in paste on every lobe and every follower's foot."),
        _usual("The dark coating of the lobes stays on."),
        _usual("Gaps between spring coils and between valve and piston as below, or more."),
        where={"follower": "flat"}, figures=("coil-gap", "valve-gap"),
        cautions=("turn-by-hand", "valve-contact"),
    ),
    _step(
        "light-springs", 0, "Take the inner springs out",
        _usual("Outer springs alone carry the running-in; write down which went where."),
        where={"follower": "flat", "springs": "strong"}, figures=("springs-light",),
        cautions=("valve-contact",),
    ),
    _step(
        "roller-fitting", 0, "Check cam and roller followers",
        _usual("Rollers turn freely, link bars face the right way, engine oil on the lobes."),
        _usual("Spring travel beyond the lift as below, or more."),
        where={"follower": "roller"}, figures=("roller-travel", "valve-gap"),
        cautions=("turn-by-hand", "valve-contact"),
    ),
    _step(
        "slack-cold", 0, "Measure the chain's slack, cold",
        _usual("Write it down: every later reading is held against this one."),
        _usual("Slack that is right on fitting is usually still right after running in."),
        cautions=("turn-by-hand",), measures=True,
    ),
    _step(
        "turn", 0, "Turn the crank two full turns by hand",
        _recalled("Two full turns before the starter is used; it must never bind."),
        _usual("Timing marks line up again."),
        cautions=("turn-by-hand", "valve-contact"),
    ),
    _step(
        "prime", 0, "Fill, prime, and set it to start at once",
        _usual("Coolant bled, fuel at the carburettor or rail, static timing set."),
        _usual("Oil reaches the top of the engine and the gauge shows pressure."),
        _usual("It must start without long cranking: the lobes get little oil while it cranks."),
        oil="Fill with the oil of the plan and fit a new filter, filled where its place allows. "
        "Drive the pump until the gauge shows pressure.",
        cautions=("fire", "hot-oil"),
    ),
    _step(
        "cam-run-in", 1, "Run the cam in",
        _usual("Oil pressure first, then coolant, then leaks."),
        _usual("Straight up to speed, and vary it all the time; never idle, no load."),
        _usual("Vary it upwards: the lobes are oiled by splash, and slower means less of it."),
        _usual("Every pushrod turns; one that stands still is being lost."),
        _usual("Set the ignition roughly: a hot exhaust glows when it is late."),
        ends="minutes", where={"follower": "flat"}, speed="cam-speed-", time="cam-time-",
        load="none", stop_when=_STOP, cautions=_RUNNING,
    ),
    _step(
        "first-run", 1, "First run",
        _usual("Oil pressure first, then coolant, then leaks."),
        _usual("Vary the speed gently until pressure and temperature stand still."),
        _usual("Roller followers need none of a flat tappet's cam running-in."),
        ends="minutes", where={"follower": "roller"}, speed="roller-speed", time="roller-time",
        load="none", stop_when=_STOP, cautions=_RUNNING,
    ),
    _step(
        "cool", 1, "Stop, let it cool, look it over",
        _usual("Levels, leaks, belt, every bolt that the maker wants checked."),
        _usual("Cut the old filter open: glitter of iron means stop and look."),
        _usual("Valve lash, where it is set by hand."),
        cautions=("hot-oil", "electric-fan"),
    ),
    _step(
        "inner-springs", 1, "Put the inner springs back",
        _usual("The same spring in the same place; gaps checked again."),
        where={"follower": "flat", "springs": "strong"}, figures=("coil-gap",),
        cautions=("valve-contact",),
    ),
    _step(
        "cam-drain", 1, "First drain: oil and filter",
        _usual("Look at the drained oil and the cut filter for metal."),
        where={"follower": "flat"},
        figures=("drain-30-min", "drain-1-h", "drain-20-min", "drain-running-in-oil"),
        oil="Drain warm, not hot. New filter, and the oil of the plan again.",
        cautions=("hot-oil", "used-oil"),
    ),
    _step(
        "warm", 2, "Warm it through before any load",
        _usual("Light throttle until the oil is as warm as below."),
        where={"rings": "new"}, figures=("oil-before-load",), load="light",
        stop_when=_STOP, cautions=("road", "carbon-monoxide"),
    ),
    _step(
        "load-cycles", 2, "Load and coast to seat the rings",
        _usual("Pull firmly in a high gear, then close the throttle and coast; again and again."),
        _usual("Never lug it, never hold one speed, never an over-rich mixture."),
        _usual("Blow-by and smoke fall off as the rings seat."),
        ends="minutes", where={"rings": "new"}, time="ring-hour",
        figures=("ring-friction", "ring-pulls", "ring-road-speed", "oil-at-load"),
        load="half to three quarters, then coast", stop_when=_STOP, cautions=("road", "hot-oil"),
    ),
    _step(
        "ring-drain", 2, "First drain: oil and filter",
        _usual("Look at the drained oil and the cut filter for metal."),
        where={"follower": "roller", "rings": "new"},
        figures=("drain-30-min", "drain-1-h", "drain-running-in-oil"),
        oil="Drain warm, not hot. New filter, and the oil of the plan again.",
        cautions=("hot-oil", "used-oil"),
    ),
    _step(
        "early-drain", 3, "Drain the running-in fill",
        _usual("Look at the drained oil and the cut filter for metal."),
        ends="distance",
        figures=("drain-miles", "drain-never-over", "synthetic-later", "synthetic-myth",
                 "drain-aircraft", "drain-diesel"),
        oil="Drain warm, new filter; from here on the oil the engine is to live with.",
        cautions=("hot-oil", "used-oil"),
    ),
    _step(
        "slack-first", 3, "Measure the slack: the first wear should be over",
        _usual("Cold, the same way and by the same hand as before."),
        ends="distance", figures=("chain-20-h", "chain-0-1-percent"),
        cautions=("turn-by-hand",), measures=True,
    ),
    _step(
        "normal-drain", 3, "First normal drain",
        _usual("Oil use since the last drain; it should have become steady."),
        ends="distance", figures=("drain-normal",),
        oil="Drain warm, new filter, the oil the engine lives with.",
        cautions=("hot-oil", "used-oil"),
    ),
    _step(
        "slack-bedded", 3, "Measure the slack: bedded in",
        _usual("Cold, the same way as before. What it shows now it will keep for long."),
        ends="distance", figures=("chain-10000-miles",), cautions=("turn-by-hand",), measures=True,
    ),
)  # fmt: skip
# Not in any plan until its log puts it in.
PUT_IN = (
    _step(
        "slack-next", 3, "Measure the slack: here a reading tells most",
        _usual("Cold, the same way and by the same hand as before."),
        ends="distance", cautions=("turn-by-hand",), measures=True,
    ),
)  # fmt: skip
BY_KEY = {template.key: template for template in STEPS + PUT_IN}

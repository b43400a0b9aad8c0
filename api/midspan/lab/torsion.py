"""A study of the drive with a crank that does not turn evenly: a model, not a measurement.

The crank's pitch line moves by a(t) about its even motion, the cam's by u(t). Two strands pull the
cam, each only while it is taut: the drive strand from d = a - u = 0 on, the other from d = -e on,
where e is the excess length of the chain. With the cam's inertia as a mass at the pitch line,

    m u'' = Td - Ts - F(t);   Td = k d + c d' while d > 0, never below zero;
    Ts = -k (d + e) - c d' while d < -e, never below zero.

Below zero excess both strands are taut at rest, and the model is linear until one goes slack.
"""

import math
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    import numpy as np

    Array = np.ndarray[Any, np.dtype[np.float64]]

# Steps in the shortest of the periods at hand, and whole cam turns to settle and to look at.
STEPS_IN_PERIOD = 24
SETTLE_TURNS, LOOK_TURNS = 6, 4
# A strand that closes slower than this [m/s] has not been struck.
STRUCK_M_PER_S = 0.005


class Wave(NamedTuple):
    """One harmonic: order per turn of its own shaft, size [rad or N m], phase [rad]."""

    order: float
    size: float
    phase: float


class Plant(NamedTuple):
    """The drive: pitch radii [m], cam inertia [kg m2], stiffness of a strand [N/m], damping of a
    taut strand [N s/m], mean valve-train torque [N m] and its harmonics, by cam angle.
    """

    crank_radius: float
    cam_radius: float
    inertia: float
    stiffness: float
    damping: float
    torque: float
    pulses: tuple[Wave, ...]

    @property
    def mass(self) -> float:
        """Inertia of the cam, as a mass at the pitch line [kg]."""
        return float(self.inertia / self.cam_radius**2)

    @property
    def natural(self) -> float:
        """Angular frequency of the cam on one taut strand [rad/s]."""
        return math.sqrt(self.stiffness / self.mass)


class Balance(NamedTuple):
    """Energies over the turns looked at [J]: what the crank put in, what the valve train took,
    what damping and strikes took, and what the drive held more at the end.
    """

    put_in: "Array"
    taken: "Array"
    lost: "Array"
    gained: "Array"


class Motion(NamedTuple):
    """What one map came to, each an array of (excess, speed).

    Mean of the cam's motion u at the pitch line and its ends [m], late being negative; its standard
    deviation [m]; peak tensions of the strands [N]; strikes per cam turn, and the hardest closing
    speed [m/s]. The energy balance only where asked for.
    """

    mean: "Array"
    low: "Array"
    high: "Array"
    deviation: "Array"
    drive_peak: "Array"
    slack_peak: "Array"
    strikes: "Array"
    closing: "Array"
    balance: Balance | None


def steps_per_turn(plant: Plant, waves: tuple[Wave, ...], slowest: float) -> int:
    """Steps in a cam turn that follow strand, vibration and valve train alike.

    Parameters
    ----------
    plant, waves : the drive and the crank's vibration, by crank angle
    slowest : lowest crank speed of the map [rad/s]

    Returns
    -------
    steps per cam turn [1], at least 200
    """
    turn = 4 * math.pi / slowest
    # Both strands taut are twice as stiff.
    strand = turn * math.sqrt(2) * plant.natural / (2 * math.pi)
    orders = [2 * w.order for w in waves] + [w.order for w in plant.pulses] + [1]
    return max(200, math.ceil(STEPS_IN_PERIOD * max(strand, *orders)))


def simulate(
    plant: Plant, waves: tuple[Wave, ...], excess: list[float], speeds: list[float],
    steps: int | None = None, *, balance: bool = False,
) -> Motion:  # fmt: skip
    """Follow every pair of excess and speed at once, by classical Runge-Kutta at a fixed step.

    Parameters
    ----------
    plant : the drive
    waves : torsional vibration of the crank nose, by crank angle
    excess : excess lengths [m]
    speeds : crank speeds [rad/s]
    steps : steps per cam turn; as `steps_per_turn` gives for the slowest if None
    balance : whether to add up the energies too

    Returns
    -------
    Motion

    Validity
    --------
    Rigid shafts, pitch lines instead of polygons, strands without mass or wave; the valve train's
    torque follows the cam's mean angle. A study: compare its cells, and believe no single figure.

    Reference
    ---------
    Newton's second law on a base-excited oscillator; J. C. Butcher, Numerical Methods for Ordinary
    Differential Equations, the classical fourth-order method.
    """
    # Not at the start of the service: it takes longer than all else of it.
    import numpy as np

    rate = np.array(speeds)[None, :] + np.zeros((len(excess), 1))
    strands = _Strands(plant, np.array(excess)[:, None] + np.zeros_like(rate))
    count = steps or steps_per_turn(plant, waves, min(speeds))
    step = 4 * math.pi / rate / count
    # It starts where the mean load holds it on the drive strand, or between both.
    load = plant.torque / plant.cam_radius / plant.stiffness
    u = -load + np.minimum(strands.slack, 0) / 2
    v = np.zeros_like(u)
    watch: _Watch | None = None
    here = _push(plant, waves, rate, 0.0)
    for n in range((SETTLE_TURNS + LOOK_TURNS) * count):
        if n == SETTLE_TURNS * count:
            watch = _Watch(strands, u, here.a, v, balance)
        half = _push(plant, waves, rate, 4 * math.pi * (n + 0.5) / count)
        ahead = _push(plant, waves, rate, 4 * math.pi * (n + 1) / count)
        k1 = strands.speed_up(here, u, v)
        v2 = v + step / 2 * k1
        k2 = strands.speed_up(half, u + step / 2 * v, v2)
        v3 = v + step / 2 * k2
        k3 = strands.speed_up(half, u + step / 2 * v2, v3)
        v4 = v + step * k3
        k4 = strands.speed_up(ahead, u + step * v3, v4)
        u_next = u + step / 6 * (v + 2 * v2 + 2 * v3 + v4)
        v_next = v + step / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        if watch is not None:
            watch.step(here, u, v, ahead, u_next)
            if balance:
                middle = (half, u + step / 2 * v2, v3)
                watch.add_energy(step, (here, u, v), middle, (ahead, u_next, v_next))
        u, v, here = u_next, v_next, ahead
    assert watch is not None  # noqa: S101  (there are turns to look at)
    return watch.seen(LOOK_TURNS * count, here.a, u, v)


class _Push(NamedTuple):
    """Crank motion [m] and its rate [m/s] at the pitch line, and the load on the cam there [N]."""

    a: "Array"
    rise: "Array"
    load: float


def _push(plant: Plant, waves: tuple[Wave, ...], rate: "Array", angle: float) -> _Push:
    """Give what acts at a crank angle; the cam's is half of it."""
    swing = sum(w.size * math.sin(w.order * angle + w.phase) for w in waves)
    rise = sum(w.size * w.order * math.cos(w.order * angle + w.phase) for w in waves)
    pulse = sum(w.size * math.sin(w.order * angle / 2 + w.phase) for w in plant.pulses)
    return _Push(
        plant.crank_radius * swing + 0 * rate,
        plant.crank_radius * rise * rate,
        (plant.torque + pulse) / plant.cam_radius,
    )


class _Strands:
    """Both strands of every cell."""

    def __init__(self, plant: Plant, slack: "Array") -> None:
        self.plant = plant
        self.slack = slack

    def pull(self, a: "Array", rise: "Array", u: "Array", v: "Array") -> tuple["Array", "Array"]:
        """Give the tensions of drive and slack strand."""
        import numpy as np

        k, c = self.plant.stiffness, self.plant.damping
        d, rising = a - u, rise - v
        drive = np.where(d > 0, np.maximum(k * d + c * rising, 0), 0)
        other = np.where(d < -self.slack, np.maximum(-k * (d + self.slack) - c * rising, 0), 0)
        return drive, other

    def speed_up(self, at: _Push, u: "Array", v: "Array") -> "Array":
        """Give the cam's acceleration at the pitch line."""
        drive, other = self.pull(at.a, at.rise, u, v)
        faster: Array = (drive - other - at.load) / self.plant.mass
        return faster

    def held(self, a: "Array", u: "Array", v: "Array") -> "Array":
        """Give the energy in the cam's motion and in the taut strands."""
        import numpy as np

        d = a - u
        stretch = np.maximum(d, 0) ** 2 + np.maximum(-d - self.slack, 0) ** 2
        energy: Array = (self.plant.mass * v * v + self.plant.stiffness * stretch) / 2
        return energy


class _Watch:
    """Adds up what is seen from the end of settling on."""

    def __init__(
        self, strands: _Strands, u: "Array", a: "Array", v: "Array", balance: bool
    ) -> None:
        import numpy as np

        self.np = np
        self.strands = strands
        self.base, self.total, self.squares = u.copy(), np.zeros_like(u), np.zeros_like(u)
        self.low, self.high = u.copy(), u.copy()
        self.drive, self.slack = np.zeros_like(u), np.zeros_like(u)
        self.strikes, self.closing = np.zeros_like(u), np.zeros_like(u)
        self.energies = [np.zeros_like(u) for _ in range(3)] if balance else []
        self.began = strands.held(a, u, v)

    def step(self, here: _Push, u: "Array", v: "Array", ahead: _Push, u_next: "Array") -> None:
        """See one step."""
        np = self.np
        off = u - self.base
        self.total += off
        self.squares += off * off
        np.minimum(self.low, u, out=self.low)
        np.maximum(self.high, u, out=self.high)
        drive, other = self.strands.pull(here.a, here.rise, u, v)
        np.maximum(self.drive, drive, out=self.drive)
        np.maximum(self.slack, other, out=self.slack)
        d, then = here.a - u, ahead.a - u_next
        taut = self.strands.slack
        struck = ((d <= 0) & (then > 0)) | ((d >= -taut) & (then < -taut))
        speed = np.where(struck, np.abs(here.rise - v), 0)
        self.strikes += speed > STRUCK_M_PER_S
        np.maximum(self.closing, speed, out=self.closing)

    def add_energy(self, step: "Array", *places: tuple[_Push, "Array", "Array"]) -> None:
        """Add the work of one step, by Simpson's rule over its start, middle and end."""
        np = self.np
        for (at, u, v), weight in zip(places, (1, 4, 1), strict=True):
            drive, other = self.strands.pull(at.a, at.rise, u, v)
            k, d = self.strands.plant.stiffness, at.a - u
            spring = k * np.maximum(d, 0) - k * np.maximum(-d - self.strands.slack, 0)
            share = step * weight / 6
            for energy, power in zip(
                self.energies,
                ((drive - other) * at.rise, at.load * v, (drive - other - spring) * (at.rise - v)),
                strict=True,
            ):
                energy += share * power

    def seen(self, count: int, a: "Array", u: "Array", v: "Array") -> Motion:
        """Give what it came to after so many steps."""
        np = self.np
        mean = self.total / count
        deviation = np.sqrt(np.maximum(self.squares / count - mean**2, 0))
        gained = self.strands.held(a, u, v) - self.began
        return Motion(
            self.base + mean, self.low, self.high, deviation, self.drive, self.slack,
            self.strikes / LOOK_TURNS, self.closing,
            Balance._make([*self.energies, gained]) if self.energies else None,
        )  # fmt: skip

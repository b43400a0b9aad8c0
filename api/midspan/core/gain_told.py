"""What is told of an expected gain: the range, friction's part, the curve, and how thin it is."""

import math
from collections import namedtuple

from .figures import fixed
from .gain_asked import FRICTION, Asked
from .gain_friction import bearing_power, pin_power
from .gain_prior import ROWS, WIDTH_ORIGIN, gain_of, loss
from .heat import shaft_load, tension
from .limits import TOO_LOOSE_MM
from .movement import excess_from_movement
from .normal_points import even_points, normal_quantile
from .quantiles import spread_of
from .student import NORMAL_95

# The slack now, the slack wanted, the warmth, and what friction rests on.
DIMENSIONS = 7
FARTHEST_MM = 15.0


class Drawn(namedtuple("Drawn", ("gains", "friction", "pulls", "hot"))):
    """Equally likely gains [% of peak power], friction's part of each [kW], the pull in a strand
    now [N] and the hot excess length now [mm] of each; the last three None without heat.
    """

    __slots__ = ()


def drawn(asked: Asked, sets: list[list[float]]) -> Drawn:
    """Draw gains, each with its own engine, slack, warmth and friction.

    Parameters
    ----------
    asked : the question
    sets : equally likely logarithms of the loss curve
    """
    gains, friction, pulls, hots = [], [], [], []
    lower, upper = asked.window[0], asked.window[1]
    for logs, even in zip(sets, known_points(len(sets))):
        now = max(asked.movement + asked.uncertainty * even[0], 0.0)
        wanted = lower + (upper - lower) * even[1]
        gains.append(gain_of(logs, now, wanted))
        if asked.change is None:
            continue
        warm = asked.change + asked.change_uncertainty * even[2]
        powers = []
        for movement in (now, wanted):
            hot = excess_from_movement(asked.build.geometry.strand, movement) + warm
            pull, power = rubbed(asked, hot, even[3:])
            powers.append(power)
            if len(powers) == 1:
                pulls.append(pull)
                hots.append(hot)
        friction.append(powers[0] - powers[1])
    if asked.change is None:
        return Drawn(gains, None, None, None)
    return Drawn(gains, friction, pulls, hots)


_known: dict[int, list[list[float]]] = {}


def known_points(count: int) -> list[list[float]]:
    """Give `even_points`, the slack now and the warmth made standard normal; worked out once."""
    if count not in _known:
        points = even_points(count, DIMENSIONS)
        for row in points:
            row[0], row[2] = normal_quantile(row[0]), normal_quantile(row[2])
        _known[count] = points
    return _known[count]


def rubbed(asked: Asked, hot: float, even: list[float]) -> tuple[float, float]:
    """Give the pull in each strand [N] at a hot excess length [mm], and what it rubs away [kW].

    Parameters
    ----------
    asked : the question
    hot : excess length, hot [mm]
    even : four numbers from 0 to 1: where in their ranges the figures lie
    """
    at = {}
    shares = {
        "stiffness_n_per_mm": even[0], "pin_friction": even[1], "bearing_friction": even[2],
        "crank_journal_mm": even[3], "cam_journal_mm": even[3], "chain_pin_mm": 0.0,
    }  # fmt: skip
    for field, share in shares.items():
        figure = asked.figures[field]
        # By ratio: a stiffness may be fifteen times another.
        at[field] = figure.low * (figure.high / figure.low) ** share
    pull = tension(at["stiffness_n_per_mm"], hot)
    drive = asked.build.drive
    turns, ratio = asked.speed / 60, drive.crank_teeth / drive.cam_teeth
    pins = pin_power(at["pin_friction"], pull, at["chain_pin_mm"], turns, ratio)
    load = shaft_load(pull, asked.build.geometry.angle)
    bearings = bearing_power(
        at["bearing_friction"], load, at["crank_journal_mm"], at["cam_journal_mm"], turns, ratio
    )
    return pull, (pins + bearings) / 1000


def friction_told(asked: Asked, found: Drawn) -> dict[str, object]:
    """Give friction's part, and what it rests on."""
    rows = []
    for field in FRICTION:
        figure = asked.figures[field]
        rows.append({
            "field": field, "low": figure.low, "high": figure.high, "origin": figure.origin,
            "source": figure.source,
        })  # fmt: skip
    if found.friction is None:
        text = "Without the engine's warmth nothing is known of how tight the chain gets: enter it "
        text += "to see what friction takes."
    else:
        tight = sum([1 for pull in found.pulls if pull > 0]) / len(found.pulls)
        text = "The hot chain is tight with a probability of " + fixed(100 * tight, 0) + " %. "
        text += "Its friction is part of the gain above, not added to it."
    return {
        "gain_kw": None if found.friction is None else spread_of(found.friction),
        "tension_n": None if found.pulls is None else spread_of(found.pulls),
        "hot_excess_mm": None if found.hot is None else spread_of(found.hot),
        "figures": rows,
        "text": text,
    }


def rest_told(asked: Asked, found: Drawn) -> dict[str, float | None]:
    """Give what is left of the gain beside friction [kW]."""
    share = asked.power / 100
    friction = found.friction or [0.0] * len(found.gains)
    return spread_of([share * g - f for g, f in zip(found.gains, friction)])


def curve(asked: Asked, sets: list[list[float]]) -> list[dict[str, object]]:
    """Give the loss against movement as a band."""
    count = asked.points
    rows = [row.start for row in asked.rows] + [row.end for row in asked.rows]
    reach = max([FARTHEST_MM, asked.movement, asked.window[1]] + rows)
    found = []
    for i in range(count):
        at = reach * i / (count - 1) if count > 1 else 0.0
        spread = spread_of([loss(logs, at) for logs in sets])
        found.append({"movement_mm": at, "loss_percent": spread})
    return found


def evidence_told(asked: Asked, logs: list[float]) -> list[dict[str, object]]:
    """Give each comparison with its interval, and its two ends on the most likely curve."""
    found = []
    for row in asked.rows:
        half = NORMAL_95 * row.uncertainty
        found.append({
            "engine": row.engine,
            "from_movement_mm": row.start,
            "to_movement_mm": row.end,
            "gain_percent": row.gain,
            "low": row.gain - half,
            "high": row.gain + half,
            "expected_percent": gain_of(logs, row.start, row.end),
        })  # fmt: skip
    return found


def parameters(sets: list[list[float]]) -> list[dict[str, object]]:
    """Give the four figures of the rule, as thought before and as found."""
    found = []
    for i in range(len(ROWS)):
        row = ROWS[i]
        found.append({
            "parameter": row.parameter,
            "label": row.label,
            "unit": row.unit,
            "prior": {
                "median": row.median,
                "log_sd": math.sqrt(row.common**2 + row.between**2),
                "origin": row.origin,
                "width_origin": WIDTH_ORIGIN,
            },
            "found": spread_of([math.exp(logs[i]) for logs in sets]),
        })  # fmt: skip
    return found


def how_thin(asked: Asked, gain: dict[str, float | None]) -> list[str]:
    """Say what the range of the gain [%] rests on, and how little that is."""
    engines, rows = len({row.engine for row in asked.rows}), len(asked.rows)
    if engines == 0:
        found = ["0 engines: only a rule of thumb (common practice, no source)."]
        least = gain["low_95"]
        if least is not None and least > 0:
            text = "That the range leaves out no gain at all is the rule's doing: nobody saw it."
            found.append(text)
    else:
        text = str(engines) + (" engine, " if engines == 1 else " engines, ") + str(rows)
        text += " comparison" if rows == 1 else " comparisons"
        if engines < 3:
            text += ": still mostly a rule of thumb (common practice, no source)."
        elif engines < 10:
            text += ": a rule of thumb, corrected a little."
        else:
            text += " behind it, and a rule of thumb."
        found = [text]
    found.append(
        "Nobody has published what slack costs. No single number is honest here: plan with the "
        "range, and prove it on the dyno."
    )
    if asked.movement > TOO_LOOSE_MM:
        found.append("Beyond half an inch of movement nobody has looked: the curve is a guess.")
    return found

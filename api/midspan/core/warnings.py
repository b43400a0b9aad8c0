"""What is worth saying about an input that is not wrong, and the usual cautions."""

import math

from .build import Build
from .drive import excess_length, taut_centre_distance
from .elongation import NEW_CHAIN_PERCENT, NEW_CHAIN_SOURCE
from .figures import fixed
from .guard import misfit
from .limits import MEMORY, PRACTICE, PUBLISHED, TOO_LOOSE_MM
from .movement import movement_from_excess

TYPE_CHECKING = False  # MicroPython has no typing module; type checkers take this as true
if TYPE_CHECKING:
    from .limits import Limit
    from .uncertainty import Interval

_INSTALL = "hkkchain.com/engineering-info/installation"

# Elongation between these is a believable chain; beyond, an input is likelier wrong. From memory,
# unverified.
BELIEVABLE_PERCENT = (-0.1, 4.0)

CAUTIONS = {
    "turn-by-hand": (
        "Turn the crank by hand, plugs out, battery disconnected; keep fingers out of the mesh."
    ),
    "valve-contact": (
        "Heads on and chain off: never turn crank or cam alone. Valves can meet pistons."
    ),
    "no-start": (
        "Make sure it cannot start: battery off, ignition and fuel dead, in neutral, plugs out."
    ),
    "light-touch": (
        "Touch a stop gently, by hand, never with the starter: it can bend, or mark the piston. "
        "Where the maker forbids turning backward with the chain on, do not."
    ),
    "running-direction": (
        "Turn only in the running direction up to each reading. Gone past it? Go back well beyond, "
        "and come up again: only then is the chain's slack where it is when running."
    ),
    "clearance-after": (
        "A cam moved moves its valves: advance brings the intake nearer to the piston, retard the "
        "exhaust. Check the clearance, then turn two whole turns by hand before anything else."
    ),
    "checking-springs": (
        "Light checking springs for setting only: the engine must never be started with them."
    ),
    "hot": "Hot oil, coolant and metal burn. Measure cold; let a hot engine cool first.",
    "running-engine": (
        "The engine runs: keep hands, hair, sleeves and the light's leads clear of fan, belts and "
        "pulleys; brake on, out of gear, wheels blocked. Wide open only on a guarded dyno."
    ),
    "exhaust-gas": "Exhaust gas kills: lead it outside, and air the room.",
    "hot-parts": "Exhaust, coolant and ignition leads burn or shock: do not lean over them.",
    "manual-first": (
        "The maker's manual, local codes and licensed practice come before any figure here."
    ),
}


def cautions(*codes: str) -> list[dict[str, object]]:
    """Give the cautions of these codes, the maker's manual always last."""
    return [{"code": c, "text": CAUTIONS[c]} for c in codes + ("manual-first",)]


def warning(
    code: str, field: str, got: object, text: str, origin: str = "", source: str = ""
) -> dict[str, object]:
    """Say one thing worth knowing; origin and source where a number is claimed."""
    return {
        "code": code,
        "field": field,
        "got": got,
        "text": text,
        "origin": origin,
        "source": source,
    }


def drive_warnings(build: Build) -> list[dict[str, object]]:
    """Say what is unusual about a drive and its chain at nominal length."""
    found = []
    drive, shape = build.drive, build.geometry
    if drive.links % 2:
        text = "An odd number of links needs an offset link. Count again."
        found.append(warning("odd-links", "drive.links", drive.links, text))
    excess = excess_length(drive, shape.taut_length, 0.0)
    if excess < 0:
        text = "At nominal length the chain is " + fixed(-excess, 2) + " mm shorter than its drive."
        text += " It could only be fitted stretched, or one of the figures is off."
        found.append(warning("chain-shorter-than-drive", "drive.links", drive.links, text))
    if excess > 2 * drive.pitch:
        text = "Two links fewer would still go round. Check links and centre distance."
        found.append(warning("chain-much-longer", "drive.links", drive.links, text))
    moves = movement_from_excess(shape.strand, excess)
    if build.kind == "cam" and build.centres == "fixed" and moves > TOO_LOOSE_MM:
        text = "A new chain would already move " + fixed(moves, 1) + " mm: too loose."
        taut = taut_centre_distance(drive)
        if taut is not None:
            text += " It is taut at " + fixed(taut, 2) + " mm of centres: check yours."
        got = drive.centre_distance
        field = "drive.centre_distance_mm"
        found.append(warning("new-chain-too-loose", field, got, text, PRACTICE))
    wrap = 180 - 2 * abs(shape.angle) * 180 / math.pi
    if wrap < 120:
        text = "The small gear is wrapped by " + fixed(wrap, 0) + " degrees only; 120 is advised."
        field = "drive.centre_distance_mm"
        got = drive.centre_distance
        found.append(warning("small-wrap", field, got, text, PUBLISHED, _INSTALL))
    return found


def count_warnings(field: str, count: int) -> list[dict[str, object]]:
    """Say how little one or two readings tell of their own scatter."""
    if count == 1:
        text = "One reading says nothing of its scatter, so a usual one is assumed."
        return [warning("single-reading", field, count, text)]
    if count == 2:
        text = "Two readings tell little of their scatter; a third narrows the interval a lot."
        return [warning("two-readings", field, count, text)]
    return []


def state_warnings(build: Build, state: "dict[str, Interval]") -> list[dict[str, object]]:
    """Say where the readings and the geometry do not go together."""
    at = state["elongation_percent"]
    least, most = BELIEVABLE_PERCENT
    if at.high < 0 and at.high >= least:
        text = "On this drive that would be a chain shorter than new. Check the centre distance."
        got = build.drive.centre_distance
        field = "drive.centre_distance_mm"
        return [warning("reading-against-geometry", field, got, text, PUBLISHED, NEW_CHAIN_SOURCE)]
    if at.high < least or at.low > most:
        text = "On this drive that would be a chain worn " + fixed(at.value, 2) + " %."
        text += " Check links, teeth and centre distance against the reading."
        field = "drive.centre_distance_mm"
        return [warning("reading-against-geometry", field, at.value, text, MEMORY)]
    return []


def length_warnings(low: float, high: float) -> list[dict[str, object]]:
    """Say when an elongation [%] is below nominal, or within the tolerance of a new chain."""
    if high < 0:
        text = "Shorter than nominal, which no chain is: check pitches, pitch and jaws."
        return [
            warning("below-nominal", "elongation_percent", high, text, PUBLISHED, NEW_CHAIN_SOURCE)
        ]
    if low <= NEW_CHAIN_PERCENT and high >= 0:
        text = "A new chain may be up to 0.15 % long: this need not be wear."
        return [
            warning(
                "length-tolerance", "elongation_percent", high, text, PUBLISHED, NEW_CHAIN_SOURCE
            )
        ]
    return []


def own_against_window(
    build: Build, own: "Limit | None", moves: "Interval"
) -> list[dict[str, object]]:
    """Say when the user's own limit rules over slack that the trade would not run."""
    end = misfit(moves.low, moves.high)
    if own is None or build.kind != "cam" or end is None:
        return []
    text = "Whatever your own limit says, the trade calls this " + end.replace("-", " ")
    text += ". Check that the limit was typed as printed."
    got = own.lower if own.upper is None else own.upper
    return [warning("own-limit-against-window", "own_limit", got, text, PRACTICE)]

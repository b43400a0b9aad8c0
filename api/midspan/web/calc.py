"""The calculations: open to anyone, nothing is kept."""

from collections.abc import Callable
from functools import wraps
from typing import Any

from flask import Response
from flask_smorest import Blueprint

from midspan.core import CALCS, run
from midspan.core.errors import Refused

from . import body
from .body import answer, written
from .example_names import named
from .problems import refuse
from .schemas.batch import INPUTS, MOST_ITEMS, RESULTS, BatchInputSchema, BatchResultSchema

View = Callable[..., Response]


class CalcBlueprint(Blueprint):
    """Documents inputs and results by their schemas, and hands the body to the view untouched.

    The core checks all of the input and makes all of the result, so nothing is left for the
    library's own decorators to do but to document.
    """

    def arguments(self, *args: Any, **kwargs: Any) -> Callable[[View], View]:  # noqa: ANN401
        """Document what comes in."""
        documented = super().arguments(*args, **kwargs)

        def decorate(view: View) -> View:
            @wraps(view)
            def take() -> Response:
                return view(body.read())

            return _documented(take, documented(view))

        return decorate

    def response(self, *args: Any, **kwargs: Any) -> Callable[[View], View]:  # noqa: ANN401
        """Document what goes out."""
        documented = super().response(*args, **kwargs)
        return lambda view: _documented(view, documented(view))


def _documented(view: View, by: Any) -> View:  # noqa: ANN401
    """Give a view the document that the library made of it."""
    view._apidoc = by._apidoc  # type: ignore[attr-defined]
    return view


blp = CalcBlueprint(
    "calculations", __name__, url_prefix="/api/v1/calc",
    description="Calculations. Open to anyone; nothing is kept.",
)  # fmt: skip


@blp.post("/drive")
@blp.arguments(INPUTS["drive"], examples=named("drive-input"))
@blp.response(200, RESULTS["drive"], examples=named("drive-result"))
def drive(payload: object) -> Response:
    """Work out a drive: lengths, wraps, and the slack of its chain at nominal length."""
    return answer(run("drive", payload))


@blp.post("/elongation")
@blp.arguments(INPUTS["elongation"], examples=named("elongation-input"))
@blp.response(200, RESULTS["elongation"], examples=named("elongation-result"))
def elongation(payload: object) -> Response:
    """Judge the wear of a chain from its length over some pitches."""
    return answer(run("elongation", payload))


@blp.post("/slack")
@blp.arguments(INPUTS["slack"], examples=named("slack-input"))
@blp.response(200, RESULTS["slack"], examples=named("slack-result"))
def slack(payload: object) -> Response:
    """Judge the slack of a fitted chain from the movement or sag of a strand."""
    return answer(run("slack", payload))


@blp.post("/crank-rock")
@blp.arguments(INPUTS["crank-rock"], examples=named("crank-rock-input"))
@blp.response(200, RESULTS["crank-rock"], examples=named("crank-rock-result"))
def crank_rock(payload: object) -> Response:
    """Judge a fitted chain by how far the crank turns before the cam follows."""
    return answer(run("crank-rock", payload))


@blp.post("/heat")
@blp.arguments(INPUTS["heat"], examples=named("heat-input"))
@blp.response(200, RESULTS["heat"], examples=named("heat-result"))
def heat(payload: object) -> Response:
    """Work out the slack of a hot engine, and the cold slack to aim at."""
    return answer(run("heat", payload))


@blp.post("/bored")
@blp.arguments(INPUTS["bored"], examples=named("bored-input"))
@blp.response(200, RESULTS["bored"], examples=named("bored-result"))
def bored(payload: object) -> Response:
    """Work out what a changed centre distance does to slack, and the chain it needs."""
    return answer(run("bored", payload))


@blp.post("/gear")
@blp.arguments(INPUTS["gear"], examples=named("gear-input"))
@blp.response(200, RESULTS["gear"], examples=named("gear-result"))
def gear(payload: object) -> Response:
    """Judge the wear of a gear, and the slack that it adds."""
    return answer(run("gear", payload))


@blp.post("/combined")
@blp.arguments(INPUTS["combined"], examples=named("combined-input"))
@blp.response(200, RESULTS["combined"], examples=named("combined-result"))
def combined(payload: object) -> Response:
    """Put several readings of one chain into one, and tell whether they agree."""
    return answer(run("combined", payload))


@blp.post("/fit")
@blp.arguments(INPUTS["fit"], examples=named("fit-input"))
@blp.response(200, RESULTS["fit"], examples=named("fit-result"))
def fit(payload: object) -> Response:
    """Predict and rank every chain on every gear set of a shelf, in one engine."""
    return answer(run("fit", payload))


@blp.post("/plan")
@blp.arguments(INPUTS["plan"], examples=named("plan-input"))
@blp.response(200, RESULTS["plan"], examples=named("plan-result"))
def plan(payload: object) -> Response:
    """Plan the running in of an engine: steps, drains, and when to measure the chain again."""
    return answer(run("plan", payload))


@blp.post("/plan-adapted")
@blp.arguments(INPUTS["plan-adapted"], examples=named("plan-adapted-input"))
@blp.response(200, RESULTS["plan-adapted"], examples=named("plan-adapted-result"))
def plan_adapted(payload: object) -> Response:
    """Work what happened into a running-in plan: steps cut short, oil changed."""
    return answer(run("plan-adapted", payload))


@blp.post("/plan-calendar")
@blp.arguments(INPUTS["plan-calendar"], examples=named("plan-calendar-input"))
@blp.response(200, RESULTS["plan-calendar"], examples=named("plan-calendar-result"))
def plan_calendar(payload: object) -> Response:
    """Date the drains and re-checks of a plan, and write them as a calendar (RFC 5545)."""
    return answer(run("plan-calendar", payload))


@blp.post("/tdc")
@blp.arguments(INPUTS["tdc"], examples=named("tdc-input"))
@blp.response(200, RESULTS["tdc"], examples=named("tdc-result"))
def tdc(payload: object) -> Response:
    """Find true top dead centre and how far the degree wheel is off."""
    return answer(run("tdc", payload))


@blp.post("/cam")
@blp.arguments(INPUTS["cam"], examples=named("cam-input"))
@blp.response(200, RESULTS["cam"], examples=named("cam-result"))
def cam(payload: object) -> Response:
    """Find where a cam stands, and hold it against its data sheet."""
    return answer(run("cam", payload))


@blp.post("/adjust")
@blp.arguments(INPUTS["adjust"], examples=named("adjust-input"))
@blp.response(200, RESULTS["adjust"], examples=named("adjust-result"))
def adjust(payload: object) -> Response:
    """Choose how to set the cam adjusters, and say what the re-check must read."""
    return answer(run("adjust", payload))


@blp.post("/forecast")
@blp.arguments(INPUTS["forecast"], examples=named("forecast-input"))
@blp.response(200, RESULTS["forecast"], examples=named("forecast-result"))
def forecast(payload: object) -> Response:
    """Forecast when the slack enters its window, leaves it, and reaches the limit."""
    return answer(run("forecast", payload))


@blp.post("/lift")
@blp.arguments(INPUTS["lift"], examples=named("lift-input"))
@blp.response(200, RESULTS["lift"], examples=named("lift-result"))
def lift(payload: object) -> Response:
    """Make a smooth curve of a lift table, and read durations, centre and faults off it."""
    return answer(run("lift", payload))


@blp.post("/rockers")
@blp.arguments(INPUTS["rockers"], examples=named("rockers-input"))
@blp.response(200, RESULTS["rockers"], examples=named("rockers-result"))
def rockers(payload: object) -> Response:
    """Compare rockers on one cam, and find the cam setting that keeps an event."""
    return answer(run("rockers", payload))


@blp.post("/matrix")
@blp.arguments(INPUTS["matrix"], examples=named("matrix-input"))
@blp.response(200, RESULTS["matrix"], examples=named("matrix-result"))
def matrix(payload: object) -> Response:
    """Put tests of rockers and cam settings in the order of least work."""
    return answer(run("matrix", payload))


@blp.post("/clearance")
@blp.arguments(INPUTS["clearance"], examples=named("clearance-input"))
@blp.response(200, RESULTS["clearance"], examples=named("clearance-result"))
def clearance(payload: object) -> Response:
    """Judge how near valve and piston come, now and at other settings."""
    return answer(run("clearance", payload))


@blp.post("/compression")
@blp.arguments(INPUTS["compression"], examples=named("compression-input"))
@blp.response(200, RESULTS["compression"], examples=named("compression-result"))
def compression(payload: object) -> Response:
    """Work out dynamic compression from where the intake closes."""
    return answer(run("compression", payload))


@blp.post("/correction")
@blp.arguments(INPUTS["correction"], examples=named("correction-input"))
@blp.response(200, RESULTS["correction"], examples=named("correction-result"))
def correction(payload: object) -> Response:
    """Work out the power correction of a run by every standard."""
    return answer(run("correction", payload))


@blp.post("/compare")
@blp.arguments(INPUTS["compare"], examples=named("compare-input"))
@blp.response(200, RESULTS["compare"], examples=named("compare-result"))
def compare(payload: object) -> Response:
    """Tell whether dyno runs show a gain of one setting over another."""
    return answer(run("compare", payload))


@blp.post("/pulls-needed")
@blp.arguments(INPUTS["pulls-needed"], examples=named("pulls-needed-input"))
@blp.response(200, RESULTS["pulls-needed"], examples=named("pulls-needed-result"))
def pulls_needed(payload: object) -> Response:
    """Plan how many dyno pulls a gain takes to be shown, and in which order."""
    return answer(run("pulls-needed", payload))


@blp.post("/spark")
@blp.arguments(INPUTS["spark"], examples=named("spark-input"))
@blp.response(200, RESULTS["spark"], examples=named("spark-result"))
def spark(payload: object) -> Response:
    """Judge how far the spark wanders, before and after, and what that can cost."""
    return answer(run("spark", payload))


@blp.post("/gain")
@blp.arguments(INPUTS["gain"], examples=named("gain-input"))
@blp.response(200, RESULTS["gain"], examples=named("gain-result"))
def gain(payload: object) -> Response:
    """Tell what range of gain to expect from another slack."""
    return answer(run("gain", payload))


@blp.post("/batch")
@blp.arguments(BatchInputSchema, examples=named("batch"))
@blp.response(200, BatchResultSchema, examples=named("batch-result"))
def batch(payload: object) -> Response:
    """Do several calculations at once; each is answered for itself, in order."""
    # Each is written as soon as it is done: a thousand results are a lot to keep.
    done = b",".join([written(_done(item)) for item in _items(payload)])
    return Response(b'{"results":[' + done + b"]}", content_type="application/json")


def _items(payload: object) -> list[Any]:
    need = f"a list of 0 to {MOST_ITEMS} items, each with calc and input"
    if not isinstance(payload, dict):
        raise refuse("not-an-object", "", payload, "an object with items", "Send named fields.")
    for name in payload:
        if name != "items":
            raise refuse("unknown-field", str(name), payload[name], "no such field", "Use: items")
    if "items" not in payload:
        raise refuse("missing", "items", None, need, "Put the calculations in a list.")
    items = payload["items"]
    if not isinstance(items, list):
        raise refuse("not-a-list", "items", items, need, "Put the calculations in a list.")
    if len(items) > MOST_ITEMS:
        raise refuse("too-many", "items", f"{len(items)} items", need, "Send several batches.")
    return items


def _done(item: object) -> dict[str, object]:
    """Do one item; what is refused is part of the answer, not an error of the batch."""
    try:
        if not isinstance(item, dict):
            raise refuse("not-an-object", "", item, "calc and input", "Send named fields.")
        calc = item.get("calc")
        if not isinstance(calc, str) or calc not in CALCS:
            need = "one of " + ", ".join(sorted(CALCS))
            raise refuse("unknown-calc", "calc", calc, need, "Choose one of these.")
        for name in item:
            if name not in ("calc", "input"):
                more = "Use: calc, input"
                raise refuse("unknown-field", str(name), item[name], "no such field", more)
        return {"ok": True, "result": run(calc, item.get("input"))}
    except Refused as refused:
        return {"ok": False, "problems": refused.problems}

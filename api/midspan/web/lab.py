"""What the service alone can work out, with libraries and records that no phone carries."""

from datetime import UTC, datetime
from typing import Any

from flask import Response, jsonify
from flask_smorest import Blueprint

from midspan.core import run
from midspan.lab.compare import compare as compare_curves
from midspan.lab.forecast import forecast as full_forecast
from midspan.lab.gain import gain as full_gain
from midspan.lab.torsion_told import study
from midspan.store import evidence, histories

from . import body
from .access import shop
from .example_names import named
from .parsing import RecordParser
from .schemas.compare_inputs import CompareInputSchema
from .schemas.compare_lab import CurvesResultSchema
from .schemas.forecast_inputs import ForecastInputSchema
from .schemas.forecast_lab import BuildQuerySchema, FullForecastSchema
from .schemas.gain_inputs import GainInputSchema
from .schemas.gain_results import EvidenceOfRecordsSchema, GainResultSchema
from .schemas.torsion import TorsionInputSchema, TorsionStudySchema
from .settling import store


class LabParser(RecordParser):
    """Hands the body over untouched, and loads the query."""

    def parse(self, *args: Any, **kwargs: Any) -> Any:  # noqa: ANN401
        """Read the body, or the query where that is asked for."""
        if kwargs.get("location") == "query":
            return super().parse(*args, **kwargs)
        return body.read()


class LabBlueprint(Blueprint):
    """Documents inputs by their schemas and hands them to the calculation."""

    ARGUMENTS_PARSER = LabParser()


blp = LabBlueprint(
    "lab", __name__, url_prefix="/api/v1/lab",
    description="What takes more than a phone has. Nothing is kept.",
)  # fmt: skip


@blp.post("/forecast")
@blp.arguments(BuildQuerySchema, location="query")
@blp.arguments(ForecastInputSchema, examples=named("forecast-input"))
@blp.response(200, FullForecastSchema, examples=named("lab-forecast-result"))
def forecast(query: dict[str, Any], payload: object) -> Response:
    """Forecast from the full posterior, with what the shop's other engines on this oil tell."""
    with store().reading() as session:
        kept = histories.of_shop(session, shop(), query.get("build_id"))
    now = datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
    return jsonify(full_forecast(payload, kept, now))


@blp.post("/compare")
@blp.arguments(CompareInputSchema, examples=named("compare-input"))
@blp.response(200, CurvesResultSchema, examples=named("lab-compare-result"))
def compare(payload: object) -> Response:
    """Compare dyno runs over the whole curve, and with refitting of a setting allowed for."""
    return jsonify(compare_curves(payload))


@blp.post("/gain")
@blp.arguments(GainInputSchema, examples=named("gain-input"))
@blp.response(200, GainResultSchema, examples=named("gain-result"))
def gain(payload: object) -> Response:
    """Tell the range of gain from the full posterior of every comparison sent."""
    return jsonify(full_gain(payload))


@blp.post("/torsion")
@blp.arguments(TorsionInputSchema, examples=named("torsion-input"))
@blp.response(200, TorsionStudySchema, examples=named("torsion-result"))
def torsion(payload: object) -> Response:
    """Study, as a model, what a crank that does not turn evenly does to the cam: not measured."""
    return jsonify(study(payload))


@blp.get("/gain-evidence")
@blp.response(200, EvidenceOfRecordsSchema, examples=named("gain-evidence"))
def gain_evidence() -> Response:
    """Give what the shop's own dyno sessions tell of slack and power, as "gain" takes it."""
    with store().reading() as session:
        sessions = evidence.sessions_of(session, shop())
    return jsonify(run("gain-evidence", {"sessions": sessions}))

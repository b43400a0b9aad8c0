"""The core's tables: limits, materials, the glossary, and the methods with their proofs."""

from flask import Response, jsonify
from flask_smorest import Blueprint

from midspan.core import run

from .example_names import named
from .methods import relations
from .schemas.methods import MethodsSchema
from .schemas.tables import GlossarySchema, LimitsSchema, MaterialsSchema

blp = Blueprint(
    "tables", __name__, url_prefix="/api/v1",
    description="Limits and materials with their origins, the glossary, methods and their proofs.",
)  # fmt: skip


@blp.get("/limits")
@blp.response(200, LimitsSchema, examples=named("limits"))
def limits() -> Response:
    """List every limit on file; sources that disagree all stay."""
    return jsonify(run("limits", {}))


@blp.get("/materials")
@blp.response(200, MaterialsSchema, examples=named("materials"))
def materials() -> Response:
    """List every material on file with its expansion coefficient."""
    return jsonify(run("materials", {}))


@blp.get("/glossary")
@blp.response(200, GlossarySchema, examples=named("glossary"))
def glossary() -> Response:
    """List every term: symbol, unit, name, meaning, and what an input of it admits."""
    return jsonify(run("glossary", {}))


@blp.get("/methods")
@blp.response(200, MethodsSchema, examples=named("methods"))
def methods() -> Response:
    """List every relation with its source and validity, and every published value beside ours."""
    return jsonify({**run("methods", {}), "relations": relations()})

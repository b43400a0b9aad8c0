"""Whether the process is up, and whether it can serve."""

from flask import current_app
from flask_smorest import Blueprint

from midspan.core import VERSION
from midspan.store import at_head

from .example_names import named
from .problems import Problem
from .schemas.tables import HealthSchema

blp = Blueprint("health", __name__, description="Whether the service is up and ready.")


@blp.get("/healthz")
@blp.response(200, HealthSchema, examples=named("health"))
def healthz() -> dict[str, str]:
    """Answer if the process is up."""
    return {"status": "up", "core_version": VERSION}


@blp.get("/readyz")
@blp.response(200, HealthSchema, examples=named("health"))
def readyz() -> dict[str, str]:
    """Answer if the database can be reached and has the form this version needs."""
    if not at_head(current_app.extensions["midspan"]):
        raise Problem("store-not-migrated")
    return {"status": "up", "core_version": VERSION}

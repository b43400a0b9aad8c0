"""The pages that the `type` of a problem leads to: what each kind means."""

from flask import Blueprint, Response, abort

from .problems import KINDS, PATH

blp = Blueprint("problems", __name__)


@blp.get(PATH + "<kind>")
def page(kind: str) -> Response:
    """Say what a kind of problem means and what to do about it."""
    if kind not in KINDS:
        abort(404)
    status, title, detail = KINDS[kind]
    return Response(f"{title} ({status})\n\n{detail}\n", mimetype="text/plain")

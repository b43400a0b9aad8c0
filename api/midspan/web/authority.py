"""The certificate of this service's own authority, for phones to fetch before they trust it."""

from pathlib import Path

from flask import Blueprint, Response, current_app

from .problems import Problem

# What phones take for a certificate to install.
MEDIA_TYPE = "application/x-x509-ca-cert"
blp = Blueprint("authority", __name__)


@blp.get("/authority.crt")
def authority() -> Response:
    """Give the certificate; a service for this machine alone has none."""
    file: Path = current_app.config["MIDSPAN_AUTHORITY"]
    if not file.is_file():
        raise Problem("no-authority")
    found = Response(file.read_bytes(), mimetype=MEDIA_TYPE)
    found.headers["Content-Disposition"] = "attachment; filename=midspan-authority.crt"
    found.headers["Cache-Control"] = "no-store"
    return found

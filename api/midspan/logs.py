"""Log lines as JSON, one object a line, on standard error."""

import json
import logging
from datetime import UTC, datetime
from typing import Any

from .web.observe import request_id


class Json(logging.Formatter):
    """Writes a record as one JSON object on one line."""

    def format(self, record: logging.LogRecord) -> str:
        """Write time, level, who says it, what, in which request, and where it went wrong."""
        line: dict[str, Any] = {
            "time": datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds"),
            "level": record.levelname.lower(),
            "logger": record.name,
            "message": record.getMessage(),
        }
        if request_id.get():
            line["request"] = request_id.get()
        line |= getattr(record, "told", {})
        if record.exc_info:
            line["error"] = self.formatException(record.exc_info)
        return json.dumps(line)


def configuration(level: str) -> dict[str, Any]:
    """Give logging's settings, for gunicorn and all else alike."""
    return {
        "version": 1,
        "disable_existing_loggers": False,
        "formatters": {"json": {"()": Json}},
        "handlers": {
            "stderr": {
                "class": "logging.StreamHandler",
                "formatter": "json",
                "stream": "ext://sys.stderr",
            }
        },
        "root": {"level": level.upper(), "handlers": ["stderr"]},
        "loggers": {
            # Its greetings say nothing that is not printed in plainer words.
            name: {"level": "WARNING", "handlers": [], "propagate": True}
            for name in ("gunicorn.error", "gunicorn.access", "alembic")
        },
    }

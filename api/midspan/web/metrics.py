"""Figures for whoever looks after the service, in the Prometheus text format.

Workers are processes of their own, so each keeps its figures in a file, and any of them adds all
up. They are counted by method, route and status, all from short lists, so that no caller can make
them grow. To read them takes an owner's token: behind a proxy on the same machine every caller
looks local, so the address would prove nothing.
"""

import os
from typing import Any

from flask import Blueprint, Response, current_app

FOLDER = "PROMETHEUS_MULTIPROC_DIR"  # the library's own variable
BUCKETS = (0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0, 30.0)
blp = Blueprint("metrics", __name__)


class Metrics:
    """The figures of one app."""

    def __init__(self) -> None:
        """Prepare to count."""
        # Not at the top: the library decides at its import whether there are several workers.
        from prometheus_client import CollectorRegistry, Histogram

        self.registry = CollectorRegistry()
        self._seconds = Histogram(
            "midspan_request_seconds",
            "Time to answer a request, in seconds.",
            ("method", "route", "status"),
            registry=self.registry,
            buckets=BUCKETS,
        )
        self._children: dict[tuple[str, str, int], Any] = {}

    def count(self, method: str, route: str, status: int, seconds: float) -> None:
        """Count one request."""
        labels = (method, route, status)
        child = self._children.get(labels)
        if child is None:
            child = self._children[labels] = self._seconds.labels(method, route, str(status))
        child.observe(seconds)

    def text(self) -> tuple[bytes, str]:
        """Give the figures of all workers, and their media type."""
        from prometheus_client import CONTENT_TYPE_LATEST, CollectorRegistry, generate_latest
        from prometheus_client.multiprocess import MultiProcessCollector

        registry = self.registry
        if os.environ.get(FOLDER):
            registry = CollectorRegistry()
            MultiProcessCollector(registry)  # type: ignore[no-untyped-call]
        return generate_latest(registry), CONTENT_TYPE_LATEST


@blp.get("/metrics")
def metrics() -> Response:
    """Give the figures since the service was started."""
    found: Metrics = current_app.extensions["midspan-metrics"]
    text, media_type = found.text()
    return Response(text, content_type=media_type)

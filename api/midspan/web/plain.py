"""Flask without what this service has no use for, and which costs time at every request."""

from collections.abc import Callable
from typing import Any

from flask import Flask, Request, request


class PlainFlask(Flask):
    """Takes every function for what it is: none of ours is a coroutine."""

    def ensure_sync(self, func: Callable[..., Any]) -> Callable[..., Any]:
        """Look no further; the framework would search each function for signs of one."""
        return func


def asked() -> Request:
    """Give the request itself: what stands for it everywhere finds it anew at each use."""
    found: Request = request._get_current_object()  # type: ignore[attr-defined]
    return found

"""How often anyone may ask: little where codes could be guessed, plenty elsewhere.

What is counted here, each worker counts for itself, unless the setting names a store that they
share. Wrong pairing codes are counted in the database as well, which every host shares anyway;
see `midspan.store.devices`.
"""

import threading
import time

from flask import Flask
from limits import RateLimitItem, RateLimitItemPerMinute
from limits.errors import ConfigurationError, StorageError
from limits.storage import MemoryStorage, Storage, storage_from_string

from midspan.settings import BadSetting, Settings, variable

from .plain import asked
from .problems import Problem

PAIR = "/api/v1/pair"
PAIR_EACH = RateLimitItemPerMinute(10, namespace="pair-each")
PAIR_ALL = RateLimitItemPerMinute(60, multiples=10, namespace="pair-all")


class Counts(MemoryStorage):
    """Counts in this worker's memory.

    The library's own starts a thread at almost every request, to drop what has run out; under load
    they cost more than the calculation that was asked for. Here a request does it, once a window.
    """

    def __init__(self) -> None:
        """Start with nothing counted."""
        super().__init__()
        self._lock = threading.Lock()
        self._tidy_at = 0.0

    def incr(self, key: str, expiry: float, amount: int = 1) -> int:
        """Count so many more under a key, whose window starts with its first."""
        now = time.time()
        with self._lock:
            if now >= self._tidy_at:
                for old in [k for k, ends in self.expirations.items() if ends <= now]:
                    self.clear(old)
                self._tidy_at = now + expiry
            if self.expirations.get(key, 0.0) <= now:
                self.storage[key] = 0
                self.expirations[key] = now + expiry
            self.storage[key] += amount
            return self.storage[key]


def limit(app: Flask, settings: Settings) -> None:
    """Count requests, by the address they come from, and answer too many with 429."""
    shared, own = open_store(settings), Counts()
    most = settings.requests_per_minute
    any_route = [RateLimitItemPerMinute(most, namespace="any")] if most else []

    def check() -> None:
        request = asked()
        address = request.remote_addr or ""
        for item in any_route:
            _hit(app, shared, own, item, address)
        if request.path == PAIR:
            _hit(app, shared, own, PAIR_EACH, address)
            _hit(app, shared, own, PAIR_ALL, "all")

    app.before_request(check)


def open_store(settings: Settings) -> Storage:
    """Open the store of counts that the settings name.

    Raises
    ------
    BadSetting : it cannot be used
    """
    if settings.rate_limit_store == Settings.rate_limit_store:
        return Counts()
    try:
        found = storage_from_string(settings.rate_limit_store, wrap_exceptions=True)
    except ConfigurationError:  # its words may hold a password
        need = "needs a URI that the package limits knows, with that store's client installed."
        raise BadSetting(f"{variable('rate_limit_store')}: {need}") from None
    assert isinstance(found, Storage)  # noqa: S101  (the others are named async+)
    return found


def _hit(
    app: Flask, shared: Storage, own: Storage, item: RateLimitItem, who: str
) -> None:  # fmt: skip
    """Count one request; where the shared store is away, this worker counts by itself."""
    key, lasts = f"{item.namespace}/{who}", item.get_expiry()
    used = shared
    try:
        count = used.incr(key, lasts)
    except StorageError as error:
        app.logger.warning("the store of rate limits cannot be used: %s", type(error).__name__)
        used = own
        count = used.incr(key, lasts)
    if count > item.amount:
        ends = used.get_expiry(key)
        wait = {"Retry-After": str(max(1, round(ends - time.time())))}
        raise Problem("too-many-requests", headers=wait)

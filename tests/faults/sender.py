"""A phone's way of sending, over real HTTP: a batch is sent under its key until it is answered."""

import http.client
import json
import random
from collections.abc import Callable
from typing import Any
from uuid import UUID

from sqlalchemy import func, select

from midspan.store import Chain, Reading, Store
from midspan.store.models import LOCAL_SHOP, Shop
from midspan.web.examples import WRITES

READINGS = 4  # of each batch; besides them it changes the one chain
CUT = (OSError, http.client.HTTPException, ValueError)


def key(number: int) -> str:
    """Make an id; its time is that of the phone's clock, which nothing here relies on."""
    return f"01923f5e-8c00-7000-8000-{number:012x}"


class Sender:
    """Sends batches of readings and changes of one chain, and knows what must be there after."""

    def __init__(self, address: str, token: str) -> None:
        host, port = address.split("//")[1].split(":")
        self.host, self.port = host, int(port)
        self.token = token
        self.sent = 0
        self.tries = 0
        self.version = 0
        self.readings: dict[str, str] = {}

    def next_body(self) -> bytes:
        """Write the next batch: readings that are new, and the chain changed once more."""
        changes: list[dict[str, Any]] = []
        for _ in range(READINGS):
            id, note = key(1000 + len(self.readings)), f"{random.random()}"  # noqa: S311
            self.readings[id] = note
            record = WRITES["reading"] | {"engine_id": None, "note": note, "chain_id": key(1)}
            changes.append({"kind": "readings", "id": id, "base_version": None, "record": record})
        chain = WRITES["chain"] | {"engine_id": None, "label": f"Change {self.sent}"}
        base = self.version or None
        changes.append({"kind": "chains", "id": key(1), "base_version": base, "record": chain})
        return json.dumps({"changes": changes}).encode()

    def send(self, again: Callable[[], None]) -> None:
        """Send one batch; whenever that fails, see to it by `again` and send the same once more."""
        body, name = self.next_body(), f'"batch-{self.sent}"'
        while True:
            self.tries += 1
            try:
                status, answer = self.post(body, name)
            except CUT:
                again()
                continue
            if status == 200:
                break
            assert status == 503, answer
            again()
        done = [(result["status"], result["version"]) for result in answer["results"]]
        first = self.version == 0
        # Answered as the first time: had it been done twice, the readings would be there already.
        assert done == [(201, 1)] * READINGS + [(201 if first else 200, self.version + 1)]
        self.version += 1
        self.sent += 1

    def post(self, body: bytes, name: str) -> tuple[int, Any]:
        """Send it once."""
        connection = http.client.HTTPConnection(self.host, self.port, timeout=60)
        try:
            headers = {"Authorization": f"Bearer {self.token}", "Idempotency-Key": name}
            headers["Content-Type"] = "application/json"
            connection.request("POST", "/api/v1/sync", body, headers)
            answer = connection.getresponse()
            return answer.status, json.loads(answer.read())
        finally:
            connection.close()

    def check(self, url: str) -> str:
        """Count in the database itself: nothing lost, nothing doubled; say how many."""
        store = Store(url)
        with store.reading() as session:
            rows = session.execute(select(Reading.id, Reading.note, Reading.version)).all()
            chain = session.get_one(Chain, (LOCAL_SHOP, UUID(key(1))))
            seq = session.get_one(Shop, LOCAL_SHOP).seq
            chains = session.scalar(select(func.count()).select_from(Chain))
        store.close()
        kept = {str(id): note for id, note, _ in rows}
        lost = [id for id in self.readings if id not in kept]
        doubled = len(rows) - len(kept) + len(kept.keys() - self.readings.keys())
        assert (lost, doubled) == ([], 0)
        assert kept == self.readings
        assert {version for *_, version in rows} == {1}
        # Each change was done once: the counters say so, whatever was sent how often.
        assert (chains, chain.version, chain.label) == (1, self.sent, f"Change {self.sent - 1}")
        assert seq == self.sent * (READINGS + 1)
        return (
            f"{self.sent} batches in {self.tries} tries, {len(rows)} readings: "
            f"{len(lost)} lost, {doubled} doubled"
        )

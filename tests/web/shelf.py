"""Records sent to the service one by one, every answer held against the document."""

import json
from typing import Any

from web.document import Document

BUILD = 5  # the number of the build that the example of an entry refers to
SESSION = 9  # the number of the dyno session that the example of a run refers to


def many(noun: str) -> str:
    """Give the noun as it stands in addresses."""
    return "entries" if noun == "entry" else f"{noun}s"


def key(number: int) -> str:
    """Make an id."""
    return f"01923f5e-8c00-7000-8000-{number:012x}"


def compact(value: Any) -> str:
    """Write JSON as a browser does: no blanks, every letter as it is."""
    return json.dumps(value, separators=(",", ":"), ensure_ascii=False)


class Shelf:
    """Sends records and holds every answer against the document."""

    def __init__(self, client: Any, document: Document) -> None:
        self.client = client
        self.document = document
        self.etag: str | None = None

    def put(
        self, noun: str, number: int, values: Any, status: int, if_match: str | None = None
    ) -> Any:
        """Keep a record."""
        return self._ask("put", noun, number, status, if_match, json=values)

    def delete(self, noun: str, number: int, status: int, if_match: str | None = None) -> Any:
        """Delete a record, or set it aside."""
        return self._ask("delete", noun, number, status, if_match)

    def get(self, noun: str, number: int, query: str = "") -> Any:
        """Get a record."""
        answer = self.client.get(f"/api/v1/{many(noun)}/{key(number)}{query}")
        self.etag = answer.headers.get("ETag")
        return self.document.expect(answer, "get", f"/api/v1/{many(noun)}/{{id}}")

    def page(self, noun: str, query: str = "") -> Any:
        """Get a page of records."""
        answer = self.client.get(f"/api/v1/{many(noun)}{query}")
        return self.document.expect(answer, "get", f"/api/v1/{many(noun)}")

    def sync(self, changes: Any, key: str, status: int = 200) -> Any:
        """Send a batch, written as phones write it."""
        answer = self.client.post(
            "/api/v1/sync",
            data=compact({"changes": changes}),
            content_type="application/json",
            headers={"Idempotency-Key": f'"{key}"'},
        )
        assert answer.status_code == status, answer.text
        return self.document.expect(answer, "post", "/api/v1/sync")

    def changes(self, after: str | None = None, limit: int = 100, status: int = 200) -> Any:
        """Ask what changed."""
        query = f"?limit={limit}" + (f"&after={after}" if after else "")
        answer = self.client.get("/api/v1/changes" + query)
        assert answer.status_code == status, answer.text
        return self.document.expect(answer, "get", "/api/v1/changes")

    def _ask(
        self,
        method: str,
        noun: str,
        number: int,
        status: int,
        if_match: str | None,
        **sent: Any,
    ) -> Any:
        headers = {} if if_match is None else {"If-Match": if_match}
        if "json" in sent:
            data = json.dumps(sent.pop("json"))
            sent |= {"data": data, "content_type": "application/json"}
        answer = self.client.open(
            f"/api/v1/{many(noun)}/{key(number)}", method=method.upper(), headers=headers, **sent
        )
        assert answer.status_code == status, answer.text
        self.etag = answer.headers.get("ETag")
        return self.document.expect(answer, method, f"/api/v1/{many(noun)}/{{id}}")

"""Who gets in where, generated over every route: one added later is covered as it is."""

import json
import re
from collections.abc import Iterator
from typing import Any
from uuid import UUID

import pytest
from flask import Flask
from flask.testing import FlaskClient
from sqlalchemy import select

from databases import Databases
from midspan.settings import Settings
from midspan.store import Store, tokens
from midspan.store.models import Base
from midspan.web import create_app
from web.document import Document
from web.pairing import OTHER_SHOP, add_shop, bearer, client_of, paired

# Written out here once more: what is opened by mistake shows.
OPEN = {
    "/", "/healthz", "/readyz", "/problems/<kind>", "/authority.crt", "/api/v1/openapi.json",
    "/api/v1/limits", "/api/v1/materials", "/api/v1/glossary", "/api/v1/methods",
    "/api/v1/pair",
}  # fmt: skip
OWNERS = {("post", "/api/v1/pairing-codes"), ("get", "/api/v1/devices")}
# Asked by POST, but nothing is kept.
READING = {
    ("post", "/api/v1/lab/forecast"),
    ("post", "/api/v1/lab/gain"),
    ("post", "/api/v1/lab/torsion"),
    ("post", "/api/v1/lab/dyno-table"),
    ("post", "/api/v1/lab/compare"),
}
EACH_ITS_OWN = ("delete", "/api/v1/devices/{id}")
ID = "01923f5e-8c00-7000-8000-000000000001"
UUID7 = re.compile("[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
MARK = "only the other shop knows this"
WORDS = ("name", "label", "note", "title", "text", "description")


def is_open(path: str) -> bool:
    return path in OPEN or path.startswith("/api/v1/calc/")


def operations() -> list[tuple[str, str]]:
    return [(method, path) for method, path, _ in Document().operations()]


def closed() -> list[tuple[str, str]]:
    return [(method, path) for method, path in operations() if not is_open(path)]


def least(method: str, path: str) -> str:
    """Give the least role that may ask."""
    if (method, path) in OWNERS:
        return "owner"
    return "reader" if method == "get" or (method, path) in (*READING, EACH_ITS_OWN) else "member"


def routes() -> Iterator[tuple[str, str]]:
    """Give every method and route that the service answers, in the document or not."""
    app = create_app(Settings(database_url="sqlite://"))
    for rule in app.url_map.iter_rules():
        for method in sorted((rule.methods or set()) - {"OPTIONS"}):
            yield method, rule.rule


def filled(path: str, id: str = ID) -> str:
    """Put an id, or some word, where a path leaves room."""
    return re.sub("[<{][a-z_]+[>}]", "C-07", path.replace("{id}", id).replace("<id>", id))


def body_of(document: Document, method: str, path: str) -> Any:
    """Give the document's own example of a body, every id in it the one used here; None without."""
    operation = document.whole["paths"][path][method]
    if "requestBody" not in operation:
        return None
    (media,) = operation["requestBody"]["content"].values()
    example = document.resolved(next(iter(media["examples"].values())))["value"]
    return json.loads(UUID7.sub(ID, json.dumps(example)))


def ask(client: FlaskClient, method: str, path: str, body: Any) -> Any:
    return client.open(path, method=method.upper(), json=body, headers={"Idempotency-Key": ID})


@pytest.fixture(scope="module")
def shut() -> FlaskClient:
    """A client without a token; it is turned away before any store is asked, so there is none."""
    return create_app(Settings(database_url="sqlite://")).test_client()


@pytest.mark.parametrize(("method", "path"), list(routes()))
def test_without_a_token_only_what_is_listed_answers(
    shut: FlaskClient, method: str, path: str
) -> None:
    answer = shut.open(filled(path), method=method)
    if is_open(path):
        assert answer.status_code not in (401, 403)
        return
    assert answer.status_code == 401
    assert answer.headers["WWW-Authenticate"].startswith("Bearer")
    if method != "HEAD":
        problem = answer.get_json(force=True)
        assert problem["type"] == "/problems/not-paired"
        assert "midspan pair" in problem["detail"]


def test_the_check_above_sees_the_records() -> None:
    found = set(routes())
    assert {("PUT", "/api/v1/readings/<id>"), ("GET", "/api/v1/engines")} <= found
    assert {path for _, path in found if is_open(path)} >= OPEN - {"/"}


def test_a_route_that_nobody_listed_is_closed(own_app: Flask) -> None:
    own_app.add_url_rule("/api/v1/forgotten", view_func=lambda: "secret")
    assert own_app.test_client().get("/api/v1/forgotten").status_code == 401


@pytest.mark.parametrize(("method", "path"), operations())
def test_the_document_says_which_take_a_token(document: Document, method: str, path: str) -> None:
    security = document.whole["paths"][path][method]["security"]
    told = [{"deviceToken": [least(method, path)]}]
    assert security == ([] if is_open(path) else told)
    scheme = document.whole["components"]["securitySchemes"]["deviceToken"]
    assert (scheme["type"], scheme["scheme"]) == ("http", "bearer")


@pytest.mark.parametrize(("method", "path"), closed())
def test_every_role_on_every_route(app: Flask, document: Document, method: str, path: str) -> None:
    order = ["reader", "member", "owner"]
    # The device asked for here is none of its own.
    needed = "owner" if (method, path) == EACH_ITS_OWN else least(method, path)
    # Who is let in to a study need not wait for it.
    body = {} if path.startswith("/api/v1/lab/") else body_of(document, method, path)
    for role in order:
        client = client_of(app, paired(app.extensions["midspan"], role)[0])
        answer = ask(client, method, filled(path), body)
        if order.index(role) >= order.index(needed):
            assert answer.status_code not in (401, 403), role
            continue
        assert answer.status_code == 403, role
        problem = document.expect(answer, method, path)
        assert problem["type"] == "/problems/not-allowed"
        assert needed in problem["detail"]
        assert "Ask an owner" in problem["detail"]


def test_a_reader_may_not_even_ask_for_the_heads_of_what_is_the_owners(app: Flask) -> None:
    client = client_of(app, paired(app.extensions["midspan"], "reader")[0])
    assert client.head("/api/v1/devices").status_code == 403


def test_what_a_reader_was_refused_is_not_kept(app: Flask, document: Document) -> None:
    client = client_of(app, paired(app.extensions["midspan"], "reader")[0])
    path = "/api/v1/engines/{id}"
    assert ask(client, "put", filled(path), body_of(document, "put", path)).status_code == 403
    assert client.get("/api/v1/engines").get_json()["items"] == []


class TwoShops:
    """Two shops on one store. The other has a record of every noun that the document knows."""

    def __init__(self, app: Flask, document: Document) -> None:
        self.app = app
        self.document = document
        self.store: Store = app.extensions["midspan"]
        add_shop(self.store)
        token, device = paired(self.store, shop=OTHER_SHOP)
        self.theirs = client_of(app, token)
        self.ids = [ID, str(device.id)]
        self.nouns = [path for method, path in closed() if method == "put"]
        for path in self.nouns:
            body = body_of(document, "put", path)
            for name in [name for name in WORDS if isinstance(body.get(name), str)]:
                body[name] = MARK
            answer = ask(self.theirs, "put", filled(path), body)
            assert answer.status_code == 201, (path, answer.text)
        self.open_ours()

    def open_ours(self) -> None:
        """Open a shop of ours, with nothing in it yet."""
        shop = add_shop(self.store, tokens.new_id())
        self.ours = client_of(self.app, paired(self.store, shop=shop)[0])

    def kept(self) -> dict[str, list[Any]]:
        """Give all that is kept of the other shop, straight from the store."""
        found = {}
        with self.store.engine.connect() as connection:
            for name, table in Base.metadata.tables.items():
                if "shop_id" in table.columns:
                    rows = connection.execute(select(table).where(table.c.shop_id == OTHER_SHOP))
                    found[name] = sorted(map(repr, rows))
        return found


@pytest.fixture(scope="module")
def both(store_kind: str, databases: Databases, document: Document) -> Iterator[TwoShops]:
    with databases.lent(store_kind) as (url, _):
        app = create_app(Settings(database_url=url, requests_per_minute=0))
        yield TwoShops(app, document)
        app.extensions["midspan"].close()


@pytest.fixture
def shops(both: TwoShops) -> TwoShops:
    """Theirs as it was left by other checks, and a new one of ours."""
    both.open_ours()
    return both


def test_the_other_shop_sees_its_own(shops: TwoShops) -> None:
    """So that the checks below do not pass because nothing is there."""
    assert len(shops.nouns) >= 5
    for path in shops.nouns:
        assert MARK in shops.theirs.get(filled(path)).text, path
        assert MARK in shops.theirs.get(path.removesuffix("/{id}")).text, path
    before = shops.kept()
    assert MARK in str(before)
    another = filled("/api/v1/engines/{id}", ID[:-1] + "2")
    body = body_of(shops.document, "put", "/api/v1/engines/{id}")
    assert ask(shops.theirs, "put", another, body).status_code == 201
    assert shops.kept() != before


@pytest.mark.parametrize(("method", "path"), closed())
def test_a_token_of_one_shop_neither_reads_nor_writes_another(
    shops: TwoShops, method: str, path: str
) -> None:
    before = shops.kept()
    for id in shops.ids if "{id}" in path else shops.ids[:1]:
        body = body_of(shops.document, method, path)
        answer = ask(shops.ours, method, filled(path, id), body)
        assert MARK not in answer.text
        assert str(OTHER_SHOP) not in answer.text
        if "{id}" in path and method != "put":
            assert answer.status_code == 404
        if method == "put":
            # The same id in our own shop is a record of our own; what it refers to is not there.
            assert answer.status_code in (201, 422), answer.text
            if answer.status_code == 422:
                assert {e["code"] for e in answer.get_json()["errors"]} == {"no-such-record"}
    assert shops.kept() == before


def test_after_all_that_each_shop_has_its_own(shops: TwoShops) -> None:
    """Every route one after the other, our records under the very ids of the other shop's."""
    before = shops.kept()
    for again in (False, True):
        for method, path in closed():
            if (method, path) == EACH_ITS_OWN or (again and (method, path) in READING):
                continue
            ask(shops.ours, method, filled(path), body_of(shops.document, method, path))
    for path in shops.nouns:
        ours = shops.ours.get(path.removesuffix("/{id}")).text
        assert MARK not in ours
    assert shops.kept() == before


def test_a_token_with_another_shops_id_put_in_is_nobodys(app: Flask) -> None:
    store = app.extensions["midspan"]
    add_shop(store)
    token, _ = paired(store)
    taken = tokens.read_token(token)
    assert taken is not None
    forged, _ = tokens.new_token(OTHER_SHOP, taken.device)
    mixed = forged[: len(forged) - 43] + token[len(token) - 43 :]
    for text in (forged, mixed, token[:-1], token + "A", token.upper(), "", "midspan_"):
        answer = app.test_client().get("/api/v1/me", headers=bearer(text))
        assert answer.status_code == 401, text
    assert app.test_client().get("/api/v1/me", headers=bearer(token)).status_code == 200


def test_a_record_of_ours_cannot_refer_to_one_of_theirs(shops: TwoShops) -> None:
    body = body_of(shops.document, "put", "/api/v1/drives/{id}")
    answer = ask(shops.ours, "put", filled("/api/v1/drives/{id}"), body)
    assert answer.status_code == 422
    assert [e["field"] for e in answer.get_json()["errors"]] == ["engine_id"]
    assert UUID(body["engine_id"]) == UUID(ID)

"""Pairing over HTTP: a code works once and ends; guessing is stopped; nothing secret is left."""

import logging
import re
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from sqlalchemy import MetaData, select

from midspan.settings import Settings
from midspan.store import devices, tokens
from midspan.store.models import LOCAL_SHOP
from midspan.web import create_app, rates
from web.document import Document
from web.pairing import client_of, paired

PAIR = "/api/v1/pair"
CODES = "/api/v1/pairing-codes"
DEVICES = "/api/v1/devices"
# Of 2^50 codes; more guesses than can be answered in the life of a code.
ATTACK = 400


@pytest.fixture
def app(own_app: Flask) -> Flask:
    """A service that nobody has asked yet: it counts how often it is asked to pair."""
    return own_app


def code_for(client: FlaskClient, role: str = "member") -> str:
    made = client.post(CODES, json={"role": role})
    assert made.status_code == 201
    return str(made.get_json()["code"])


def send(client: FlaskClient, code: str, address: str = "127.0.0.1", name: str = "Phone") -> Any:
    body = {"code": code, "device_name": name}
    return client.post(PAIR, json=body, environ_overrides={"REMOTE_ADDR": address})


def pass_time(monkeypatch: pytest.MonkeyPatch, by: timedelta) -> None:
    """Set the clock of the store forward."""

    class Later(datetime):
        @classmethod
        def now(cls, tz: Any = None) -> datetime:
            return datetime.now(tz) + by

    monkeypatch.setattr(devices, "datetime", Later)


@pytest.mark.parametrize("role", devices.ROLES)
def test_a_code_lets_a_device_in_as_what_it_says(
    app: Flask, client: FlaskClient, bare_client: FlaskClient, document: Document, role: str
) -> None:
    made = document.expect(client.post(CODES, json={"role": role}), "post", CODES)
    assert made["role"] == role
    answer = send(bare_client, made["code"])
    told = document.expect(answer, "post", PAIR)
    assert (answer.status_code, answer.headers["Cache-Control"]) == (201, "no-store")
    assert (told["device"]["role"], told["device"]["name"]) == (role, "Phone")
    mine = client_of(app, told["token"])
    me = document.expect(mine.get("/api/v1/me"), "get", "/api/v1/me")
    assert me["shop_name"] == told["shop_name"] == "This machine"
    assert me["device"]["id"] == told["device"]["id"]


@pytest.mark.parametrize("change", [str.lower, lambda c: c.replace("-", ""), lambda c: f" {c} "])
def test_a_code_may_be_typed_as_people_type(
    client: FlaskClient, bare_client: FlaskClient, change: Any
) -> None:
    assert send(bare_client, change(code_for(client))).status_code == 201


def test_letters_that_look_like_digits_are_read_as_those(
    client: FlaskClient, bare_client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tokens, "new_code", lambda: "01V23-45678")
    assert code_for(client) == "01V23-45678"
    assert send(bare_client, "oiu23-45678").status_code == 201


def test_a_code_works_once(
    client: FlaskClient, bare_client: FlaskClient, document: Document
) -> None:
    code = code_for(client)
    assert send(bare_client, code).status_code == 201
    again = send(bare_client, code)
    assert document.expect(again, "post", PAIR)["type"] == "/problems/code-refused"
    assert len(client.get(DEVICES).get_json()["items"]) == 2


@pytest.mark.parametrize(("minutes", "status"), [(9.9, 201), (10.1, 403)])
def test_a_code_ends_after_ten_minutes(
    client: FlaskClient, bare_client: FlaskClient, monkeypatch: pytest.MonkeyPatch,
    minutes: float, status: int,
) -> None:  # fmt: skip
    code = code_for(client)
    pass_time(monkeypatch, timedelta(minutes=minutes))
    assert send(bare_client, code).status_code == status


def test_wrong_used_and_late_codes_are_refused_in_the_same_words(
    client: FlaskClient, bare_client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    used, late = code_for(client), code_for(client)
    assert send(bare_client, used).status_code == 201
    said = [send(bare_client, code).text for code in (used, "ABCDE-23456")]
    pass_time(monkeypatch, timedelta(minutes=11))
    said.append(send(bare_client, late).text)
    assert len(set(said)) == 1


def test_guessing_is_stopped_for_one_address(client: FlaskClient, bare_client: FlaskClient) -> None:
    code = code_for(client)
    answers = [send(bare_client, tokens.new_code()) for _ in range(ATTACK)]
    heard = [answer.status_code for answer in answers]
    assert heard.count(403) == rates.PAIR_EACH.amount
    assert heard.count(429) == ATTACK - rates.PAIR_EACH.amount
    assert 1 <= int(answers[-1].headers["Retry-After"]) <= 60
    assert answers[-1].get_json(force=True)["type"] == "/problems/too-many-requests"
    # Another address is not kept out by it, and the code still works there.
    assert send(bare_client, code, "127.0.0.2").status_code == 201


def test_guessing_from_ever_new_addresses_is_stopped_too(
    client: FlaskClient, bare_client: FlaskClient
) -> None:
    code = code_for(client)
    heard = [
        send(bare_client, tokens.new_code(), f"10.0.{n // 250}.{n % 250}").status_code
        for n in range(ATTACK)
    ]
    assert 201 not in heard
    assert heard.count(403) == rates.PAIR_ALL.amount < ATTACK
    assert send(bare_client, code, "10.9.9.9").status_code == 429


def test_wrong_tries_void_every_open_code_whoever_sent_them(
    settings: Settings, app: Flask, client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Counted in the database: two hosts that share nothing else stop an attack on both."""
    codes = [code_for(client), code_for(client)]
    other = create_app(settings)
    hosts = [app.test_client(), other.test_client()]
    for n in range(devices.MOST_WRONG_TRIES):
        answer = send(hosts[n % 2], tokens.new_code(), f"10.0.0.{n}")
        assert answer.status_code == 403
    for host, code in zip(hosts, codes, strict=True):
        assert send(host, code, "10.0.1.1").status_code == 403
    # A new one works: nobody is locked out for good.
    assert send(hosts[0], code_for(client), "10.0.1.2").status_code == 201
    other.extensions["midspan"].close()


def test_one_try_fewer_voids_nothing(client: FlaskClient, bare_client: FlaskClient) -> None:
    code = code_for(client)
    for n in range(devices.MOST_WRONG_TRIES - 1):
        send(bare_client, tokens.new_code(), f"10.0.0.{n}")
    assert send(bare_client, code, "10.0.1.1").status_code == 201


def test_devices_are_listed_and_revoked(
    app: Flask, client: FlaskClient, document: Document
) -> None:
    token, device = paired(app.extensions["midspan"], "member")
    phone = client_of(app, token)
    assert phone.get("/api/v1/engines").status_code == 200
    listed = document.expect(client.get(DEVICES), "get", DEVICES)["items"]
    assert [row["role"] for row in listed] == ["owner", "member"]
    assert all(row["last_seen_at"] for row in listed)
    gone = document.expect(client.delete(f"{DEVICES}/{device.id}"), "delete", DEVICES + "/{id}")
    assert gone["revoked_at"]
    assert phone.get("/api/v1/engines").status_code == 401
    assert [row["role"] for row in client.get(DEVICES).get_json()["items"]] == ["owner"]
    assert client.delete(f"{DEVICES}/{device.id}").status_code == 404
    every = document.expect(client.get(DEVICES + "?deleted=true"), "get", DEVICES)["items"]
    assert [bool(row["revoked_at"]) for row in every] == [False, True]


def test_a_device_may_unpair_itself_and_no_other(app: Flask, client: FlaskClient) -> None:
    store = app.extensions["midspan"]
    (token, mine), (_, others) = paired(store, "reader"), paired(store, "reader")
    phone = client_of(app, token)
    assert phone.delete(f"{DEVICES}/{others.id}").status_code == 403
    assert phone.delete(f"{DEVICES}/{mine.id}").status_code == 200
    assert phone.get("/api/v1/me").status_code == 401
    assert len(client.get(DEVICES).get_json()["items"]) == 2


def test_devices_come_page_by_page(app: Flask, client: FlaskClient) -> None:
    for _ in range(4):
        paired(app.extensions["midspan"], "member")
    seen, query = [], "?limit=2"
    while query:
        page = client.get(DEVICES + query).get_json()
        seen += [row["id"] for row in page["items"]]
        query = f"?limit=2&after={page['next']}" if page["next"] else ""
    assert len(seen) == len(set(seen)) == 5


def test_last_seen_is_told_within_minutes_without_a_write_each_time(
    app: Flask, client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    def seen() -> Any:
        client.get("/api/v1/engines")
        return client.get(DEVICES).get_json()["items"][0]["last_seen_at"]

    first = seen()
    assert seen() == first
    pass_time(monkeypatch, devices.SEEN_EVERY + timedelta(seconds=1))
    assert seen() > first


def everything_kept(settings: Settings, app: Flask) -> bytes:
    """All that is on disk: SQLite's files, or every value of every table of PostgreSQL."""
    if settings.data_dir.exists():
        return b"".join(file.read_bytes() for file in settings.data_dir.iterdir())
    engine = app.extensions["midspan"].engine
    tables = MetaData()
    tables.reflect(engine)
    with engine.connect() as connection:
        rows = [row for table in tables.sorted_tables for row in connection.execute(select(table))]
    values = [v if isinstance(v, bytes) else str(v).encode() for row in rows for v in row]
    return b" ".join(values + [value.replace(b"-", b"") for value in values])


def test_neither_tokens_nor_codes_are_left_anywhere(
    settings: Settings, app: Flask, client: FlaskClient, bare_client: FlaskClient,
    caplog: pytest.LogCaptureFixture,
) -> None:  # fmt: skip
    with caplog.at_level(logging.DEBUG):
        logging.getLogger("sqlalchemy.engine").setLevel(logging.DEBUG)
        code, unused = code_for(client), code_for(client)
        told = send(bare_client, code).get_json()
        phone = client_of(app, told["token"])
        answers = [send(bare_client, code), send(bare_client, unused[:-1] + "$")]
        answers += [phone.get(path) for path in ("/api/v1/me", "/api/v1/engines", DEVICES)]
        answers += [client.get(DEVICES), phone.delete(f"{DEVICES}/{told['device']['id']}")]
        answers += [phone.get("/api/v1/me")]
    assert "pairing_code" in caplog.text  # what was sent to the database was logged
    secret = told["token"].removeprefix(tokens.PREFIX)[-43:]
    kept = everything_kept(settings, app)
    assert told["device"]["id"].replace("-", "").encode() in kept
    for word in (told["token"], secret, code, code.replace("-", ""), unused):
        assert word not in caplog.text
        assert word.encode() not in kept
        assert not any(word in answer.text for answer in answers)
    for raw in (tokens.read_token(told["token"]),):
        assert raw is not None
        assert raw.secret not in kept
        assert raw.secret.hex() not in caplog.text + kept.decode("latin-1")


def test_a_token_holds_256_bits_of_chance_and_names_its_shop_and_device(app: Flask) -> None:
    token, device = paired(app.extensions["midspan"])
    read = tokens.read_token(token)
    assert read is not None
    assert (read.shop, read.device, len(read.secret)) == (LOCAL_SHOP, device.id, 32)
    made = {tokens.new_token(LOCAL_SHOP, device.id)[0] for _ in range(50)}
    assert len(made) == 50
    assert re.fullmatch(r"midspan_[A-Za-z0-9_-]{86}", token)


def test_ids_made_here_are_of_version_7_and_tell_the_time() -> None:
    before = datetime.now(UTC)
    id = tokens.new_id()
    assert (id.version, id.variant) == (7, "specified in RFC 4122")
    made = datetime.fromtimestamp((id.int >> 80) / 1000, UTC)
    assert abs(made - before) < timedelta(seconds=60)
    assert len({tokens.new_id() for _ in range(1000)}) == 1000

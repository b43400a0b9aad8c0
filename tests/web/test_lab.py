"""The full forecast over HTTP, and the shop's own history in it."""

from typing import Any
from uuid import UUID

import pytest

from midspan.core import VERSION, run
from midspan.web.examples import INPUTS, WRITES
from web.document import Document
from web.pairing import OTHER_SHOP, add_shop, client_of, paired

PATH = "/api/v1/lab/forecast"
ASKED = INPUTS["forecast"]


def ident(number: int) -> str:
    return str(UUID(f"01923f5e-8c00-7000-8000-{number:012x}"))


def put(client, many: str, id: str, values: dict[str, Any]) -> None:
    answer = client.put(f"/api/v1/{many}/{id}", json=values)
    assert answer.status_code == 201, answer.get_json()


def keep(client, number: int, sent: dict[str, Any]) -> str:
    """Keep an engine's forecast as a phone would, with engine and build."""
    engine, build = ident(1000 + number), ident(2000 + number)
    put(client, "engines", engine, WRITES["engine"])
    of_build = {key: WRITES["build"][key] for key in ("label", "started_at", "created_at")}
    put(client, "builds", build, of_build | {"engine_id": engine})
    reading = {
        "engine_id": engine, "build_id": build, "calc": "forecast", "input": sent,
        "taken_at": "2026-02-03T10:00:00Z", "result": run("forecast", sent),
        "core_version": VERSION, "limit": None,
    }  # fmt: skip
    put(client, "readings", ident(3000 + number), reading)
    return build


def test_without_history_it_is_the_wide_prior(client, document: Document) -> None:
    found = document.expect(client.post(PATH, json=ASKED), "post", PATH)
    assert found["method"] == "full", found
    assert found["history"] == {"engines_used": 0, "without_oil": 0, "of_other_kind": 0,
                                "without_readings": 0, "prior": None}  # fmt: skip


def test_engines_on_the_same_oil_sharpen_it(client, document: Document) -> None:
    builds = [keep(client, n, ASKED) for n in range(3)]
    keep(client, 3, ASKED | {"oil_kind": "mineral"})
    keep(client, 4, {key: ASKED[key] for key in ("drive", "readings")})
    keep(client, 5, ASKED | {"readings": []})
    found = document.expect(client.post(PATH, json=ASKED), "post", PATH)
    assert found["history"]["engines_used"] == found["prior"]["engines_behind"] == 3
    counts = [found["history"][n] for n in ("of_other_kind", "without_oil", "without_readings")]
    assert counts == [1, 1, 1]
    assert "3 engines of this shop" in " ".join(found["said"])
    # What comes back goes into the phone's own calculation.
    again = run("forecast", ASKED | {"prior": found["history"]["prior"]})
    assert again["prior"]["engines_behind"] == 3
    own = client.post(f"{PATH}?build_id={builds[0]}", json=ASKED).get_json()
    assert own["history"]["engines_used"] == 2


def test_another_shops_engines_are_nobodys_business(app, client) -> None:
    store = app.extensions["midspan"]
    add_shop(store, OTHER_SHOP)
    other = client_of(app, paired(store, shop=OTHER_SHOP)[0])
    for number in range(3):
        keep(other, number, ASKED)
    assert client.post(PATH, json=ASKED).get_json()["history"]["engines_used"] == 0
    assert other.post(PATH, json=ASKED).get_json()["history"]["engines_used"] == 3


@pytest.mark.parametrize("change", [{"oil_kind": "olive"}, {"readings": "none"}])
def test_bad_input_is_refused_as_by_the_calculation(client, change: dict[str, Any]) -> None:
    answer = client.post(PATH, json=ASKED | change)
    plain = client.post("/api/v1/calc/forecast", json=ASKED | change)
    assert answer.status_code == plain.status_code == 422
    assert answer.get_json()["errors"] == plain.get_json()["errors"]


def test_it_takes_a_token(bare_client) -> None:
    assert bare_client.post(PATH, json=ASKED).status_code == 401

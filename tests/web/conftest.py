"""The service on an empty, migrated store of either kind; its document; well-formed requests."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient

from databases import KINDS, Databases
from midspan.settings import Settings
from midspan.web import create_app
from midspan.web.examples import WRITES
from web.document import Document
from web.pairing import client_of, paired
from web.process import Process
from web.shelf import BUILD, Shelf


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Run what may touch the store on both kinds; a module can say that it KEEPS_NOTHING."""
    if "store_kind" in metafunc.fixturenames:
        nothing = getattr(metafunc.module, "KEEPS_NOTHING", False)
        metafunc.parametrize("store_kind", KINDS[:1] if nothing else KINDS, scope="module")


@pytest.fixture
def settings(tmp_path: Path, store_kind: str, databases: Databases) -> Iterator[Settings]:
    """Settings of a service with a data folder and a migrated database of its own."""
    with databases.lent(store_kind) as (url, folder):
        yield Settings(
            data_dir=folder or tmp_path / "data", database_url=url, requests_per_minute=0
        )


@pytest.fixture(scope="module")
def made_apps() -> Iterator[dict[Settings, tuple[Flask, dict[str, Any]]]]:
    """The services of a module, each with its configuration as it was made."""
    made: dict[Settings, tuple[Flask, dict[str, Any]]] = {}
    yield made
    for app, _ in made.values():
        app.extensions["midspan"].close()


@pytest.fixture
def app(settings: Settings, made_apps: dict[Settings, tuple[Flask, Any]]) -> Iterator[Flask]:
    """The service on them: one for all checks of a module, before each of which it is emptied.

    It counts requests and pairings on from check to check, and takes no further routes; a check
    that minds takes `own_app`.
    """
    alike = replace(settings, data_dir=Path())
    if alike not in made_apps:
        made = create_app(settings)
        made_apps[alike] = made, dict(made.config)
    one, config = made_apps[alike]
    one.config.clear()
    one.config.update(config)
    yield one
    if settings.database_url.startswith("sqlite"):
        one.extensions["midspan"].close()  # of its file; the next check brings another


@pytest.fixture
def own_app(settings: Settings) -> Iterator[Flask]:
    """The service on them, made anew."""
    made = create_app(settings)
    yield made
    made.extensions["midspan"].close()


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """A client of the service, with the token of an owner's device."""
    return client_of(app, paired(app.extensions["midspan"])[0])


@pytest.fixture
def bare_client(app: Flask) -> FlaskClient:
    """A client of the service, without a token."""
    return app.test_client()


@pytest.fixture(scope="session")
def document() -> Document:
    """The OpenAPI document."""
    return Document()


@pytest.fixture
def drive() -> dict[str, Any]:
    """A drive that can exist."""
    return {
        "pitch_mm": 9.525, "crank_teeth": 22, "cam_teeth": 44, "centre_distance_mm": 114.1,
        "links": 58,
    }  # fmt: skip


@pytest.fixture
def slack(drive: dict[str, Any]) -> dict[str, Any]:
    """A well-formed input of the calculation "slack"."""
    return {"drive": drive, "method": "total", "readings_mm": [5.4, 5.6, 5.5]}


@pytest.fixture
def shelf(client: FlaskClient, document: Document) -> Shelf:
    """The service's records, with the engine and the build that the others refer to."""
    made = Shelf(client, document)
    made.put("engine", 1, WRITES["engine"], 201)
    made.put("build", BUILD, WRITES["build"], 201)
    return made


@pytest.fixture
def start(tmp_path: Path) -> Iterator[Any]:
    """Start processes on one data folder; none is left behind."""
    started = []

    def one(*words: str, data: Path = tmp_path, **more: Any) -> Process:
        started.append(Process(data, *words, **more))
        return started[-1]

    yield one
    for process in started:
        process.kill()

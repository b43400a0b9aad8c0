"""The service on an empty, migrated SQLite store; its document; and well-formed requests."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient

from midspan.settings import Settings
from midspan.store import upgrade
from midspan.web import create_app
from web.document import Document
from web.pairing import client_of, paired
from web.process import Process


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """Settings of a service with a data folder of its own."""
    return Settings(data_dir=tmp_path / "data", requests_per_minute=0)


@pytest.fixture
def app(settings: Settings) -> Iterator[Flask]:
    """The service, its database migrated."""
    made = create_app(settings)
    upgrade(made.extensions["midspan"])
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
def start(tmp_path: Path) -> Iterator[Any]:
    """Start processes on one data folder; none is left behind."""
    started = []

    def one(*words: str, **more: Any) -> Process:
        started.append(Process(tmp_path, *words, **more))
        return started[-1]

    yield one
    for process in started:
        process.kill()

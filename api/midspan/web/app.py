"""The application factory: a table of contents of the service."""

from flask import Flask
from sqlalchemy.exc import InterfaceError, OperationalError, ProgrammingError

from midspan.core.errors import Refused
from midspan.settings import Settings
from midspan.store import Store

from . import (
    access,
    authority,
    calc,
    dyno_lab,
    headers,
    health,
    lab,
    labels,
    metrics,
    observe,
    pages,
    pairing,
    problem_pages,
    problems,
    proxies,
    rates,
    records,
    sync,
    tables,
    transfer,
)
from .body import StrictJson
from .openapi import CONFIG, MidspanApi
from .plain import PlainFlask


def create_app(settings: Settings) -> Flask:
    """Make the service.

    Parameters
    ----------
    settings : see `midspan.settings`; the database must have been migrated
    """
    app = PlainFlask("midspan", static_folder=None)
    app.config.from_mapping(CONFIG)
    app.config["MAX_CONTENT_LENGTH"] = settings.max_body_bytes
    app.config["MIDSPAN_MAX_IMPORT_BYTES"] = settings.max_import_bytes
    app.config["MIDSPAN_MAX_TABLE_BYTES"] = settings.max_table_bytes
    app.config["TRUSTED_HOSTS"] = list(settings.trusted_hosts)
    app.config["MIDSPAN_AUTHORITY"] = settings.authority_file()
    app.json = StrictJson(app)
    app.extensions["midspan"] = Store(settings.database())
    counted = app.extensions["midspan-metrics"] = metrics.Metrics()

    api = MidspanApi()
    api.init_app(app)
    for blueprint in (
        calc.blp,
        lab.blp,
        dyno_lab.blp,
        tables.blp,
        records.blp,
        sync.blp,
        transfer.blp,
        labels.blp,
        pairing.blp,
        health.blp,
    ):
        api.register_blueprint(blueprint)
    app.register_blueprint(problem_pages.blp)
    app.register_blueprint(authority.blp)
    app.register_blueprint(metrics.blp)

    app.register_error_handler(Refused, problems.on_refused)
    app.register_error_handler(problems.Problem, problems.on_problem)
    app.register_error_handler(OperationalError, problems.on_store)
    app.register_error_handler(InterfaceError, problems.on_store)
    app.register_error_handler(ProgrammingError, problems.on_query)
    app.register_error_handler(Exception, problems.on_unexpected)

    rates.limit(app, settings)
    access.guard(app)
    pages.serve(app)
    app.wsgi_app = headers.secure(app.wsgi_app)  # type: ignore[method-assign,assignment]
    proxies.trust(app, settings.trusted_proxies)
    observe.watch(app, counted)
    return app

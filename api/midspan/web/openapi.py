"""The OpenAPI document: names of its components, and fields that marshmallow does not know."""

from threading import Lock
from typing import Any

from apispec.ext.marshmallow import MarshmallowPlugin
from flask import current_app
from flask.typing import ResponseReturnValue
from flask_smorest import Api, Blueprint
from marshmallow import Schema, fields

from midspan.core import VERSION

from . import problems
from .access import AccessPlugin
from .example_names import named
from .schemas.devices import Code
from .schemas.problem import ProblemSchema
from .schemas.quantity import Count, OneOf, Quantity
from .schemas.record_fields import Amount, Evidence, Flag, Identifier, Moment, Tag, Text

DESCRIPTION = (
    "Judge and set up the camshaft chain drive of an engine. Numbers are unrounded; a field's "
    "name carries its unit. Every figure names its origin: published, common practice, or from "
    "memory. The maker's manual, local codes and licensed practice come before any figure here."
)
CONFIG = {
    "API_TITLE": "Midspan",
    "API_VERSION": "v1",
    "OPENAPI_VERSION": "3.1.0",
    "OPENAPI_URL_PREFIX": "/api/v1",
    "OPENAPI_JSON_PATH": "openapi.json",
    "API_SPEC_OPTIONS": {"info": {"description": DESCRIPTION, "x-core-version": VERSION}},
}


def component_name(schema: type[Schema] | Schema) -> str:
    """Name a component after its schema's class, without the ending."""
    kind = schema if isinstance(schema, type) else type(schema)
    return kind.__name__.removesuffix("Schema")


def one_of(converter: Any, field: fields.Field[Any], ret: dict[str, Any]) -> dict[str, Any]:  # noqa: ANN401
    """Document a OneOf field, for apispec."""
    if not isinstance(field, OneOf):
        return {}
    found = [converter.resolve_nested_schema(schema) for schema in field.schemas]
    if field.allow_none:
        found.append({"type": "null"})
    ret.pop("type", None)
    return found[0] if len(found) == 1 else {"oneOf": found}


class MidspanApi(Api):
    """flask-smorest with our one form of errors, in the document and on the wire.

    The document is made when it is first asked for: making it takes longer than all else at the
    start of a service, and most workers are never asked.
    """

    ERROR_SCHEMA = ProblemSchema

    def __init__(self) -> None:
        """Prepare the document; `init_app` ties it to an app."""
        self._blueprints: list[Blueprint] = []
        self._options: dict[str, Any] = {}
        self._document: dict[str, Any] | None = None
        self._making = Lock()
        self._plugin = MarshmallowPlugin(schema_name_resolver=component_name)
        super().__init__(spec_kwargs={"marshmallow_plugin": self._plugin})
        self.register_field(Quantity, "number", None)
        self.register_field(Count, "integer", None)
        self.register_field(Identifier, "string", "uuid")
        self.register_field(Moment, "string", "date-time")
        self.register_field(Text, "string", None)
        self.register_field(Amount, "number", None)
        self.register_field(Tag, "string", None)
        self.register_field(Flag, "boolean", None)
        self.register_field(Code, "string", None)
        self.register_field(OneOf, None, None)
        self.register_field(Evidence, None, None)

    def register_blueprint(self, blp: Blueprint) -> None:
        """Add the routes of a blueprint; they are described when the document is made."""
        self._app.extensions["flask-smorest"]["blp_name_to_api"][blp.name] = self
        self._app.register_blueprint(blp)
        self._blueprints.append(blp)

    def document(self) -> dict[str, Any]:
        """Give the document, made once for all threads."""
        with self._making:
            if self._document is None:
                self._describe()
                made: dict[str, Any] = self.spec.to_dict()
                self._document = made
        return self._document

    def _init_spec(self, **options: Any) -> None:  # noqa: ANN401
        """Keep for `_describe` what flask-smorest would begin the document with."""
        self._options = options

    def _describe(self) -> None:
        # Only here, as the core works out each example.
        from .code_samples import CodeSamplesPlugin
        from .examples import ALL

        extra = [AccessPlugin(), CodeSamplesPlugin()]
        super()._init_spec(**self._options, extra_plugins=extra)
        assert self._plugin.converter is not None  # noqa: S101  (the line above made it)
        self._plugin.converter.add_attribute_function(one_of)  # type: ignore[no-untyped-call]
        for name, example in ALL.items():
            self.spec.components.example(name, {"value": example})
        for blp in self._blueprints:
            blp.register_views_in_doc(self, self._app, self.spec, name=blp.name, parameters=None)
            self.spec.tag({"name": blp.name, "description": blp.description})

    def _openapi_json(self) -> ResponseReturnValue:
        return current_app.json.response(self.document())

    def _register_responses(self) -> None:
        """Document every error alike: one response, one media type."""
        content = {problems.MEDIA_TYPE: {"schema": self.ERROR_SCHEMA, "examples": named("refused")}}
        # Of 422 Python has two names, an older and a newer one; the library asks for either.
        for name, description in (
            ("DEFAULT_ERROR", "Anything refused, as a problem detail (RFC 9457)."),
            ("UNPROCESSABLE_ENTITY", "Input refused; errors names every field."),
            ("UNPROCESSABLE_CONTENT", "Input refused; errors names every field."),
        ):
            response = {"description": description, "content": content}
            self.spec.components.response(name, response, lazy=True)

    def _register_etag_headers(self) -> None:
        """Leave out what we do not use."""

    def _register_pagination_header(self) -> None:
        """Leave out what we do not use: pages carry their next key in the body."""

    def handle_http_exception(self, error: Any) -> Any:  # noqa: ANN401
        """Answer with a problem detail."""
        return problems.on_http(error)


def document() -> dict[str, Any]:
    """Give the OpenAPI document; it depends on no setting and no database."""
    from midspan.settings import Settings

    from .app import create_app

    app = create_app(Settings(database_url="sqlite://"))
    api: MidspanApi = app.extensions["flask-smorest"]["apis"][""]["ext_obj"]
    return api.document()

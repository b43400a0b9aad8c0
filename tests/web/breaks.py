"""What of an OpenAPI document would break a client that was written against an earlier one.

A client may rely on: what it could send is still taken, and what it is told is still there, of the
same types. It has to bear with more of everything: new paths, new fields that it need not send, new
fields in an answer, new values of an enumeration in an answer, new forms an answer may take.
"""

from collections.abc import Iterator
from typing import Any

Json = dict[str, Any]

# Keyword of a bound -> whether a bigger figure admits less.
BOUNDS = {
    "minimum": True, "exclusiveMinimum": True, "minLength": True, "minItems": True,
    "maximum": False, "exclusiveMaximum": False, "maxLength": False, "maxItems": False,
}  # fmt: skip
# Keywords of a schema that are compared, and those that no client depends on. A document with any
# other has outgrown this file.
COMPARED = {
    "$ref", "type", "enum", "const", "format", "pattern", "multipleOf", "uniqueItems", "default",
    "properties", "required", "additionalProperties", "items", "oneOf", "anyOf", *BOUNDS,
}  # fmt: skip
WORDS = {"description", "title", "example", "examples", "deprecated"}
ROLES = ("reader", "member", "owner")
METHODS = ("get", "put", "post", "delete", "patch", "head", "options")


def breaks(old: Json, new: Json) -> list[str]:
    """Say, a line each, what in `new` breaks a client of `old`; nothing if nothing does."""
    return sorted(set(_Comparison(old, new).paths()))


def _types(schema: Json) -> set[str]:
    """The types a schema admits, or none if it does not say."""
    found = schema.get("type", [])
    return {found} if isinstance(found, str) else set(found)


def _within(inner: Json, outer: Json) -> bool:
    """Tell whether all that has the types of `inner` has one of `outer`."""
    have, admitted = _types(inner), _types(outer)
    if not admitted:
        return True
    if "number" in admitted:
        admitted = admitted | {"integer"}
    return bool(have) and have <= admitted


class _Comparison:
    def __init__(self, old: Json, new: Json) -> None:
        self.old, self.new = old, new
        # A schema that holds itself is compared once a direction.
        self._seen: set[tuple[str, str, bool]] = set()

    def paths(self) -> Iterator[str]:
        for path, was in self.old["paths"].items():
            now = self.new["paths"].get(path)
            if now is None:
                yield f"{path}: gone"
                continue
            for method in METHODS:
                if method not in was:
                    continue
                where = f"{method.upper()} {path}"
                if method not in now:
                    yield f"{where}: gone"
                    continue
                shared = was.get("parameters", []), now.get("parameters", [])
                yield from self._operation(where, was[method], now[method], shared)

    def _operation(
        self, where: str, was: Json, now: Json, shared: tuple[list[Json], list[Json]]
    ) -> Iterator[str]:
        yield from _access(
            where, was.get("security", self.old.get("security")),
            now.get("security", self.new.get("security")),
        )  # fmt: skip
        yield from self._parameters(
            where,
            [*shared[0], *was.get("parameters", [])],
            [*shared[1], *now.get("parameters", [])],
        )
        yield from self._request(where, was.get("requestBody"), now.get("requestBody"))
        for status, response in was["responses"].items():
            if status not in now["responses"]:
                yield f"{where}: answer {status} gone"
                continue
            before = self._resolved(self.old, response)
            after = self._resolved(self.new, now["responses"][status])
            place = f"{where}: answer {status}"
            yield from self._content(
                place, before.get("content", {}), after.get("content", {}), sent=False
            )
            yield from self._headers(place, before.get("headers", {}), after.get("headers", {}))

    def _parameters(self, where: str, was: list[Json], now: list[Json]) -> Iterator[str]:
        before = {(p["in"], p["name"]): p for p in (self._resolved(self.old, p) for p in was)}
        after = {(p["in"], p["name"]): p for p in (self._resolved(self.new, p) for p in now)}
        for key, parameter in before.items():
            if key not in after:
                yield f"{where}: {key[0]} parameter {key[1]} gone"
                continue
            place = f"{where}: {key[0]} parameter {key[1]}"
            if after[key].get("required") and not parameter.get("required"):
                yield f"{place}: required now"
            for keyword in ("style", "explode"):  # how several values are written
                was_so, is_so = parameter.get(keyword), after[key].get(keyword)
                if was_so != is_so:
                    yield f"{place}: {keyword} was {was_so}, is {is_so}"
            yield from self._schema(
                place, parameter.get("schema", {}), after[key].get("schema", {}), sent=True
            )
        for key, parameter in after.items():
            if key not in before and parameter.get("required"):
                yield f"{where}: {key[0]} parameter {key[1]}: new and required"

    def _request(self, where: str, was: Json | None, now: Json | None) -> Iterator[str]:
        before = self._resolved(self.old, was or {})
        after = self._resolved(self.new, now or {})
        if after.get("required") and not before.get("required"):
            yield f"{where}: request: a body is required now"
        yield from self._content(
            f"{where}: request", before.get("content", {}), after.get("content", {}), sent=True
        )

    def _content(self, where: str, was: Json, now: Json, *, sent: bool) -> Iterator[str]:
        for media, before in was.items():
            if media not in now:
                yield f"{where}: {media} gone"
            else:
                yield from self._schema(
                    where, before.get("schema", {}), now[media].get("schema", {}), sent=sent
                )

    def _headers(self, where: str, was: Json, now: Json) -> Iterator[str]:
        after = {name.lower(): header for name, header in now.items()}
        for name, header in was.items():
            if name.lower() not in after:
                yield f"{where}: header {name} gone"
                continue
            pair = self._resolved(self.old, header), self._resolved(self.new, after[name.lower()])
            schemas = [one.get("schema", {}) for one in pair]
            yield from self._schema(f"{where}: header {name}", *schemas, sent=False)

    def _resolved(self, document: Json, found: Json) -> Json:
        while "$ref" in found:
            target: Any = document
            for step in found["$ref"].removeprefix("#/").split("/"):
                target = target[step.replace("~1", "/").replace("~0", "~")]
            found = target
        return found

    def _schema(self, where: str, was: Json, now: Json, *, sent: bool) -> Iterator[str]:
        if "$ref" in was and "$ref" in now:
            pair = (was["$ref"], now["$ref"], sent)
            if pair in self._seen:
                return
            self._seen.add(pair)
        was, now = self._resolved(self.old, was), self._resolved(self.new, now)
        # What is sent must fit the new schema; what is told must fit the old one.
        inner, outer = (was, now) if sent else (now, was)
        if not _within(inner, outer):
            yield f"{where}: type was {sorted(_types(was))}, is {sorted(_types(now))}"
        yield from self._values(where, was, now, sent=sent)
        if sent:
            yield from self._limits(where, was, now)
        yield from self._properties(where, was, now, sent=sent)
        yield from self._parts(where, was, now, sent=sent)
        for keyword in ("oneOf", "anyOf"):
            yield from self._forms(where, was.get(keyword), now.get(keyword), was, now, sent=sent)

    def _values(self, where: str, was: Json, now: Json, *, sent: bool) -> Iterator[str]:
        before, after = _enumerated(was), _enumerated(now)
        if sent and after is not None:
            if before is None:
                yield f"{where}: any value before, only {after} now"
            else:
                for value in before:
                    if value not in after:
                        yield f"{where}: value {value!r} no longer taken"
        if not sent and before is not None:
            if after is None:
                yield f"{where}: one of {before} before, any value now"
            else:
                gone = [value for value in before if value not in after]
                yield from (f"{where}: value {value!r} no longer told" for value in gone)
        if sent and "default" in was and now.get("default") != was["default"]:
            yield f"{where}: left out, it was {was['default']!r}, is {now.get('default')!r}"
        if not sent and was.get("format") and now.get("format") != was["format"]:
            yield f"{where}: format was {was['format']}, is {now.get('format')}"

    def _limits(self, where: str, was: Json, now: Json) -> Iterator[str]:
        for keyword, bigger_is_less in BOUNDS.items():
            before, after = was.get(keyword), now.get(keyword)
            if after is None:
                continue
            if before is None or (after > before if bigger_is_less else after < before):
                yield f"{where}: {keyword} was {before}, is {after}"
        for keyword in ("pattern", "format", "multipleOf", "uniqueItems"):
            if now.get(keyword) and now[keyword] != was.get(keyword):
                yield f"{where}: {keyword} was {was.get(keyword)}, is {now[keyword]}"
        if (
            now.get("additionalProperties") is False
            and was.get("additionalProperties") is not False
        ):
            yield f"{where}: fields of any name before, only its own now"

    def _properties(self, where: str, was: Json, now: Json, *, sent: bool) -> Iterator[str]:
        before, after = was.get("properties", {}), now.get("properties", {})
        needed, given = set(now.get("required", [])), set(was.get("required", []))
        for name, schema in before.items():
            if name not in after:
                yield f"{where}.{name}: gone"
            else:
                yield from self._schema(f"{where}.{name}", schema, after[name], sent=sent)
        changed = needed - given if sent else (given - needed) & set(after)
        for name in sorted(changed):
            yield f"{where}.{name}: {'required now' if sent else 'may be missing now'}"

    def _parts(self, where: str, was: Json, now: Json, *, sent: bool) -> Iterator[str]:
        """Compare what a list holds, and what fields of any name hold."""
        for keyword, shown in (("items", "[]"), ("additionalProperties", ".*")):
            before, after = was.get(keyword), now.get(keyword)
            if isinstance(before, dict) and isinstance(after, dict):
                yield from self._schema(where + shown, before, after, sent=sent)
            elif sent and isinstance(after, dict) and after:
                yield f"{where}{shown}: anything before, not now"
            elif not sent and isinstance(before, dict) and before:
                yield f"{where}{shown}: no longer said what it is"

    def _forms(
        self,
        where: str,
        was: list[Json] | None,
        now: list[Json] | None,
        old: Json,
        new: Json,
        *,
        sent: bool,
    ) -> Iterator[str]:
        """Compare the forms something may take: one of the same name with each other, else any."""
        if was is None and now is None:
            return
        before, after = was or [old], now or [new]
        if (was is None or now is None) and (_is_bare(old, was) or _is_bare(new, now)):
            yield f"{where}: the forms it may take are told otherwise"
            return
        ours, theirs = (before, after) if sent else (after, before)
        for form in ours:
            pairs = [(form, other) if sent else (other, form) for other in theirs]
            named = [p for p in pairs if "$ref" in p[0] and p[0].get("$ref") == p[1].get("$ref")]
            if named:
                yield from self._schema(where, *named[0], sent=sent)
            elif "$ref" in form and not sent:
                continue  # a new form of an answer, which a client has to bear with
            elif not any(self._fits(pair, sent=sent) for pair in pairs):
                yield f"{where}: the form {form.get('$ref', form.get('type'))} " + (
                    "is no longer taken" if sent else "is new"
                )

    def _fits(self, pair: tuple[Json, Json], *, sent: bool) -> bool:
        apart = _Comparison(self.old, self.new)
        return not list(apart._schema("", *pair, sent=sent))


def _access(where: str, was: list[Json] | None, now: list[Json] | None) -> Iterator[str]:
    """Compare who may ask: anyone, or the devices of a role, if it is told."""
    if now == []:
        return
    if was == []:
        yield f"{where}: open before, takes a token now"
        return
    before, after = (
        [ROLES.index(role) for one in told or [] for roles in one.values() for role in roles]
        for told in (was, now)
    )
    if before and after and min(after) > min(before):
        yield f"{where}: took the role {ROLES[min(before)]}, takes {ROLES[min(after)]} now"


def unknown(schema: Json) -> set[str]:
    """List the keywords of a schema and its parts that are not compared here."""
    found = set(schema) - COMPARED - WORDS
    parts = [
        *schema.get("properties", {}).values(),
        *schema.get("oneOf", []),
        *schema.get("anyOf", []),
    ]
    parts += [schema[name] for name in ("items", "additionalProperties") if name in schema]
    for part in parts:
        if isinstance(part, dict):
            found |= unknown(part)
    return found


def _is_bare(schema: Json, forms: list[Json] | None) -> bool:
    """Tell whether a schema without forms says nothing of its own to compare them with."""
    return forms is None and not ({"type", "enum", "const"} & set(schema))


def _enumerated(schema: Json) -> list[Any] | None:
    """The values a schema admits, if it lists them."""
    if "const" in schema:
        return [schema["const"]]
    found: list[Any] | None = schema.get("enum")
    return found

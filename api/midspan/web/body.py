"""JSON in and out: strictly both ways, and saying what is wrong with what came in."""

import json
import math
from collections import Counter
from typing import Any

import orjson
from flask import Response
from flask.json.provider import DefaultJSONProvider

from .plain import asked
from .problems import Problem, refuse

# Deeper than this the quick reader leaves it to the strict one; nothing we take is.
DEEPEST = 20
# The quick reader makes a float of an integer that is wider; the digits would be lost.
_WIDEST = float(2**63)
_APART = (b" :", b"\t:", b"\n:", b"\r:")


class StrictJson(DefaultJSONProvider):
    """Writes answers in the core's own order, and never a NaN, which is no JSON."""

    sort_keys = False

    def dumps(self, obj: Any, **kwargs: Any) -> str:  # noqa: ANN401
        """Write JSON; a number that is not finite is a fault of ours and raises."""
        return super().dumps(obj, allow_nan=False, **kwargs)


def answer(value: dict[str, Any]) -> Response:
    """Answer with a result of the core.

    Raises
    ------
    ValueError : as `written`
    """
    return Response(written(value), content_type="application/json")


def written(value: dict[str, Any]) -> bytes:
    """Write a result of the core: as StrictJson does, and quicker.

    Raises
    ------
    ValueError : a number in it is not finite, which is a fault of ours
    """
    if not _finite(value):
        raise ValueError("a number of the result is not finite")
    try:
        return orjson.dumps(value)
    except TypeError:  # half a surrogate pair, or an integer of more than 64 bits: both are JSON
        return json.dumps(value, separators=(",", ":")).encode()


def _finite(value: Any) -> bool:  # noqa: ANN401  (an object or a list)
    for inner in value.values() if type(value) is dict else value:
        kind = type(inner)
        if kind is float:
            if not math.isfinite(inner):
                return False
        elif (kind is dict or kind is list or kind is tuple) and not _finite(inner):
            return False
    return True


def read() -> Any:  # noqa: ANN401  (any JSON value)
    """Read the body.

    Only application/json is taken: a form on a foreign page cannot send that, so it cannot
    reach the records. NaN and infinities are let through for the core to refuse by field.

    Raises
    ------
    Problem : not sent as JSON, not UTF-8, not JSON, nested too deep
    Refused : a name given twice in one object
    """
    return parse_many(received(), DEEPEST)[0]


def received() -> bytes:
    """Give the bytes of the body.

    Raises
    ------
    Problem : not sent as JSON, too large
    """
    request = asked()
    if request.environ.get("CONTENT_TYPE") != "application/json":
        _check_type(request.mimetype, request.mimetype_params)
    data = request.get_data(cache=False)
    if request.content_length is None:
        # A body sent in chunks tells no length; the framework then stops reading at the limit.
        most = request.max_content_length
        if most is not None and len(data) >= most:
            raise Problem("body-too-large")
    return data


def _check_type(mimetype: str, params: dict[str, str]) -> None:
    if mimetype != "application/json":
        raise Problem("not-sent-as-json")
    if params.get("charset", "utf-8").lower() not in ("utf-8", "utf8", "us-ascii"):
        raise Problem("not-sent-as-json", "JSON is UTF-8: leave the charset out.")


def parse_many(data: bytes, deepest: int) -> tuple[Any, bool]:
    """Read a body: the same as `parse`, and quicker if nothing is wrong.

    Returns
    -------
    the value, and whether it is known to be sound: no name twice, every number finite, and nested
    no deeper than `deepest`
    """
    try:
        found = orjson.loads(data)
        if isinstance(found, dict) and (
            _as_written(found, data, deepest) or _all_names_kept(found, data, deepest)
        ):
            return found, True
    except (orjson.JSONDecodeError, orjson.JSONEncodeError, RecursionError, OverflowError):
        pass  # among them: nested deeper than the quick writer goes
    return parse(data), False


def _as_written(found: dict[str, Any], data: bytes, deepest: int) -> bool:
    """Tell whether a body is, to the byte, what we would write ourselves, as the phone's are.

    Then nothing of it was lost by the quick reader: no name, no digit. How deep it is nested is
    seen by how far it is indented when written so: there a line can start nowhere else.
    """
    if orjson.dumps(found) != data:
        return False
    return b"\n" + b"  " * deepest not in orjson.dumps(found, option=orjson.OPT_INDENT_2)


def pieces(data: bytes, before: bytes, after: bytes) -> list[bytes]:
    """Cut the objects of a list apart that stands between two texts, each written like the first.

    Where an object only looks like the end of one and the start of the next, the pieces are no
    JSON; so read each, and all of the body at once if one cannot be read. Empty if it is not so
    written at all.
    """
    start, end = len(before), len(data) - len(after)
    first = data[start : data.find(b":", start) + 1]
    if not (data.startswith(before + b"{") and data.endswith(b"}" + after) and first):
        return []
    cut = data[start:end].split(b"}," + first)
    last = len(cut) - 1
    return [
        (first if n else b"") + piece + (b"}" if n < last else b"") for n, piece in enumerate(cut)
    ]


def read_piece(data: bytes, deepest: int) -> dict[str, Any] | None:
    """Read an object that is just what we would write ourselves; None for any other."""
    try:
        found = orjson.loads(data)
        return found if type(found) is dict and _as_written(found, data, deepest) else None
    except (orjson.JSONDecodeError, TypeError):
        return None


def _all_names_kept(found: dict[str, Any], data: bytes, deepest: int) -> bool:
    """Tell the same of any other body.

    Of a name given twice the quick reader keeps one: then there are more colons than names, unless
    a colon stands apart from its name.
    """
    if any(apart in data for apart in _APART):
        return False
    return data.count(b'":') == _names(found, deepest)


def _names(value: dict[str, Any] | list[Any], depth: int) -> int:
    """Count the names in everything that is nested here."""
    if depth == 0:
        raise RecursionError
    if type(value) is dict:
        count, inside = len(value), list(value.values())
    else:
        count, inside = 0, value  # type: ignore[assignment]
    for inner in inside:
        kind = type(inner)
        if kind is dict or kind is list:
            count += _names(inner, depth - 1)
        elif kind is float and not -_WIDEST < inner < _WIDEST:
            raise OverflowError
    return count


def parse(data: bytes) -> Any:  # noqa: ANN401  (any JSON value)
    """Read JSON strictly, and say what is wrong with it."""
    try:
        return json.loads(data.decode(), object_pairs_hook=_object)
    except json.JSONDecodeError as error:
        where = f"{error.msg} at line {error.lineno}, column {error.colno}."
        raise Problem("not-json", where) from None
    except UnicodeDecodeError as error:
        raise Problem("not-json", f"Byte {error.start} is not UTF-8.") from None
    except RecursionError:
        raise Problem("not-json", "Nested too deep.") from None
    except ValueError:  # an integer of more digits than Python reads
        raise Problem("not-json", "A number has too many digits.") from None


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        # Counted once: a body may hold some hundred thousand names, and anyone may send one.
        counts = Counter(name for name, _ in pairs)
        twice = next(name for name, count in counts.items() if count > 1)
        raise refuse("given-twice", twice[:80], "two values", "each name once", "Keep one.")
    return found

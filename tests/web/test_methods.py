"""The methods as the service gives them: the core's table, and the text of its docstrings."""

import midspan.core.drive
from midspan.core import run
from web.document import Document


def test_the_methods_are_the_cores(client, document: Document) -> None:
    answer = client.get("/api/v1/methods")
    found = document.expect(answer, "get", "/api/v1/methods")
    relations = found.pop("relations")
    assert found == run("methods", {})
    named = {one["relation"] for one in relations}
    assert {proof["relation"] for proof in found["proofs"]} <= named
    assert len(named) == len(relations) > 140
    modules = [m["module"] for subject in found["subjects"] for m in subject["modules"]]
    assert list(dict.fromkeys(one["relation"].split(".")[0] for one in relations)) == modules


def test_the_text_is_that_of_the_docstring(client) -> None:
    relations = client.get("/api/v1/methods").get_json()["relations"]
    (one,) = [x for x in relations if x["relation"] == "drive.pitch_radius"]
    whole = midspan.core.drive.pitch_radius.__doc__ or ""
    for name in ("gives", "formula", "validity", "source"):
        assert one[name]
        assert " ".join(one[name].split()) in " ".join(whole.split()), name

"""Every sentence of the core has its words in the other language of the phone app."""

import json
import re
from typing import Any

import pytest

from phrases import CALCS, ORIGINS, ROOT, book, kept, modules, own_words, say, spoken, uncovered

ONE_IN = 3


def test_every_text_of_the_source_stands_in_a_phrase() -> None:
    missing = {name: found for name in modules() if (found := uncovered(name))}
    assert not missing


def test_what_the_core_says_comes_out_whole() -> None:
    as_is = kept()
    said = say(spoken(set(CALCS), ONE_IN))
    assert len(said) > 1000
    missing = {text: one["left"] for text, one in said.items() if one["left"] and text not in as_is}
    assert not missing


@pytest.mark.parametrize("file", ["result/strings.ts", "es/result.ts"])
def test_every_origin_has_words_on_the_screen(file: str) -> None:
    lines = (ROOT / "pwa/src" / file).read_text("utf-8").split("origins: {")[1].split("}")[0]
    assert {one for one in ORIGINS if f'{one}": ' in lines or f"{one}: " in lines} == ORIGINS


def test_a_phrase_and_its_translation_have_the_same_holes() -> None:
    for english, other in book().items():
        holes = sorted(re.findall(r"\{\d\}", english))
        assert holes == [f"{{{at}}}" for at in range(len(holes))], english
        # With an exclamation mark what fills the hole stays as it is.
        assert sorted(re.findall(r"\{\d\}", other.replace("!}", "}"))) == holes, english


def test_what_has_no_phrase_is_found() -> None:
    text = "Nobody ever said this before."
    assert say({text: "{}"})[text]["left"] == [text]


def free_texts(schemas: dict[str, Any], schema: dict[str, Any], name: str) -> set[str]:
    """Fields of a question that take a text of any form, by the OpenAPI document."""
    found: set[str] = set()
    asked = {name}
    left = [("", schema)]
    while left:
        field, one = left.pop()
        if target := one.get("$ref", "").split("/")[-1]:
            if target not in asked:
                asked.add(target)
                left.append((field, schemas[target]))
            continue
        kinds = one.get("type", [])
        if "string" in kinds and not {"enum", "format", "pattern"} & set(one):
            found.add(field)
        left += one.get("properties", {}).items()
        left += [
            (field, inner) for key in ("allOf", "anyOf", "oneOf") for inner in one.get(key, [])
        ]
        left += [(field, one["items"])] if "items" in one else []
    return found


def test_every_field_for_free_text_is_known_to_be_the_users_own() -> None:
    document = json.loads((ROOT / "fixtures/openapi.json").read_text("utf-8"))
    schemas = document["components"]["schemas"]
    found: set[str] = set()
    for path, operations in document["paths"].items():
        if "/calc/" in path or "/lab/compare" in path or "/lab/forecast" in path:
            for content in operations["post"]["requestBody"]["content"].values():
                found |= free_texts(schemas, content["schema"], path)
    # Chosen from a list, or for programs, though the document names no list.
    chosen = {"at", "grade", "id", "made_at", "started_on", "step", "unit", ""}
    assert found - chosen == own_words()

"""The printed label: well-formed, safe, and a code that says the tag."""

import re
from typing import Any
from urllib.parse import quote
from xml.etree import ElementTree

import numpy
import pytest
import zxingcpp

from midspan.web.labels import CODE_MM, HEIGHT_MM, MARGIN_MM, PREFIX, WIDTH_MM
from web.document import Document

KEEPS_NOTHING = True
SVG = "{http://www.w3.org/2000/svg}"
PATH = "/api/v1/labels/{tag}.svg"
TAGS = ["1", "C-07", "C 07", "Ä-12", "日本", "x" * 20, "x" * 21, "x" * 40, "<&\">'", "..", "%2F"]


def label(client: Any, tag: str) -> ElementTree.Element:
    answer = client.get(f"/api/v1/labels/{quote(tag, safe='')}.svg")
    assert answer.status_code == 200, answer.text
    assert answer.mimetype == "image/svg+xml"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    return ElementTree.fromstring(answer.text)  # noqa: S314  (our own answer)


def modules(drawn: ElementTree.Element) -> list[list[bool]]:
    """Read the code's modules back from its drawing, quiet zone and all."""
    (path,) = drawn.iter(f"{SVG}path")
    scale = re.search(r"scale\(([\d.]+)\)", path.attrib["transform"])
    assert scale
    size = round(CODE_MM / float(scale[1]))
    dark = [[False] * size for _ in range(size)]
    runs = re.findall(r"M(\d+) (\d+)h(\d+)v1h-(\d+)z", path.attrib["d"])
    assert "".join(f"M{x} {y}h{n}v1h-{n}z" for x, y, n, _ in runs) == path.attrib["d"]
    for x, y, count, _ in runs:
        for step in range(int(count)):
            dark[int(y)][int(x) + step] = True
    return dark


@pytest.mark.parametrize("tag", TAGS)
def test_the_tag_is_printed_in_words_within_the_label(client, tag: str) -> None:
    drawn = label(client, tag)
    assert drawn.attrib["viewBox"] == f"0 0 {WIDTH_MM:g} {HEIGHT_MM:g}"
    lines = list(drawn.iter(f"{SVG}text"))
    assert "".join(line.text or "" for line in lines) == tag
    for line in lines:
        size = float(line.attrib["font-size"])
        assert size >= 2.5  # legible: about 7 pt
        assert size * 0.6 * len(line.text or "") <= WIDTH_MM - 2 * MARGIN_MM
        assert MARGIN_MM + CODE_MM < float(line.attrib["y"]) < HEIGHT_MM - MARGIN_MM
    last = float(lines[-1].attrib["y"])
    rules = [float(line.attrib["y1"]) for line in drawn.iter(f"{SVG}line")]
    assert len(rules) == 2
    assert last + 5 < rules[0]
    assert rules[1] <= HEIGHT_MM - MARGIN_MM


@pytest.mark.parametrize("tag", TAGS)
def test_the_code_is_a_code_in_its_quiet_zone(client, tag: str) -> None:
    dark = modules(label(client, tag))
    assert all(len(row) == len(dark) for row in dark)
    for edge in (*dark[:4], *dark[-4:]):
        assert not any(edge)
    for row in dark:
        assert not any(row[:4] + row[-4:])
    # A square of 4 v + 17 modules with a finder in three corners (ISO/IEC 18004, 6.3.3).
    inner = [row[4:-4] for row in dark[4:-4]]
    assert (len(inner) - 17) % 4 == 0
    finder = ["1111111", "1000001", "1011101", "1011101", "1011101", "1000001", "1111111"]
    for at_x, at_y in ((0, 0), (-7, 0), (0, -7)):
        rows = inner[at_y : at_y + 7 or None]
        seen = ["".join("01"[x] for x in row[at_x : at_x + 7 or None]) for row in rows]
        assert seen == finder


@pytest.mark.parametrize("tag", TAGS)
def test_a_reader_of_codes_reads_the_tag(client, tag: str) -> None:
    dark = numpy.array(modules(label(client, tag)))
    image = numpy.kron(~dark, numpy.ones((4, 4))).astype(numpy.uint8) * 255
    (read,) = zxingcpp.read_barcodes(image)
    assert read.text == PREFIX + tag
    assert read.format == zxingcpp.BarcodeFormat.QRCode


def test_it_is_drawn_without_what_the_security_policy_forbids(client, document: Document) -> None:
    drawn = label(client, "C-07")
    assert {element.tag.removeprefix(SVG) for element in drawn.iter()} == {
        "svg", "title", "rect", "path", "text", "line",
    }  # fmt: skip
    for element in drawn.iter():
        assert not {"style", "href"} & set(element.attrib)
    content = document.whole["paths"][PATH]["get"]["responses"]["200"]["content"]
    assert set(content) == {"image/svg+xml"}

"""Labels to print and stick on a part: its tag as a QR code and in words."""

from xml.etree.ElementTree import Element, SubElement, tostring

import segno
from flask import Response
from flask_smorest import Blueprint

from .problems import refuse
from .schemas.record_fields import NEED_TAG, TAG, as_tag

PREFIX = "midspan:tag:"
MEDIA_TYPE = "image/svg+xml"
WIDTH_MM, HEIGHT_MM, MARGIN_MM, CODE_MM = 40.0, 62.0, 3.0, 34.0
LARGEST_MM, LINE = 6.0, 20
# Width of a character of the monospaced face by its height, near enough to keep within the label.
WIDE = 0.62

blp = Blueprint("labels", __name__, url_prefix="/api/v1", description="Labels to print.")

_TAG = {
    "in": "path",
    "name": "tag",
    "required": True,
    "schema": {"type": "string", "pattern": TAG, "maxLength": 40},
    "description": "The user's own tag of a chain or a gear set: " + NEED_TAG + ".",
}
_ANSWER = {
    "description": "The label, 40 mm wide.",
    "content": {
        MEDIA_TYPE: {
            "schema": {"type": "string"},
            "examples": {"label": {"$ref": "#/components/examples/label"}},
        }
    },
}


@blp.route("/labels/<tag>.svg", parameters=[_TAG])
@blp.doc(summary="Draw a label: the tag as a QR code, the tag in words, and room to write.")
@blp.doc(responses={"200": _ANSWER})
def label(tag: str) -> Response:
    """Draw the label of a tag, whether or not a part has it already."""
    if as_tag(tag) is None:
        raise refuse("not-a-tag", "tag", tag, NEED_TAG, "Choose another tag.")
    return Response(draw(tag), mimetype=MEDIA_TYPE)


def draw(tag: str) -> str:
    """Draw a label as SVG, in millimetres.

    The code says midspan:tag: and the tag, in UTF-8, at error correction level M, with the quiet
    zone of four modules that ISO/IEC 18004 asks for.

    Parameters
    ----------
    tag : as `as_tag` lets through
    """
    size = {"width": f"{WIDTH_MM:g}mm", "height": f"{HEIGHT_MM:g}mm"}
    box = f"0 0 {WIDTH_MM:g} {HEIGHT_MM:g}"
    whole = Element("svg", size, xmlns="http://www.w3.org/2000/svg", viewBox=box, role="img")
    SubElement(whole, "title").text = f"Label {tag}"
    SubElement(whole, "rect", size | {"fill": "#fff"})
    _code(whole, tag)
    bottom = _words(whole, tag, MARGIN_MM + CODE_MM)
    for share in (0.55, 1.0):  # two lines to write on
        y = f"{bottom + share * (HEIGHT_MM - MARGIN_MM - bottom):.2f}"
        ends = {"x1": f"{MARGIN_MM:g}", "x2": f"{WIDTH_MM - MARGIN_MM:g}", "y1": y, "y2": y}
        SubElement(whole, "line", ends | {"stroke": "#000", "stroke-width": "0.2"})
    return tostring(whole, encoding="unicode")


def _code(whole: Element, tag: str) -> None:
    """Draw the code: a run of dark modules in a row is one stroke."""
    code = segno.make(PREFIX + tag, error="m", micro=False, encoding="utf-8", boost_error=False)
    rows = [list(row) for row in code.matrix_iter(border=4)]
    steps = []
    for y, row in enumerate(rows):
        x = 0
        while x < len(row):
            run = 1
            while x + run < len(row) and row[x + run] == row[x]:
                run += 1
            if row[x]:
                steps.append(f"M{x} {y}h{run}v1h-{run}z")
            x += run
    module = CODE_MM / len(rows)
    place = f"translate({MARGIN_MM:g} {MARGIN_MM:g}) scale({module:.5f})"
    drawn = {"transform": place, "d": "".join(steps), "shape-rendering": "crispEdges"}
    SubElement(whole, "path", drawn)


def _words(whole: Element, tag: str, top: float) -> float:
    """Print the tag in one line or two, as large as fits; give where it ends."""
    lines = [tag[i : i + LINE] for i in range(0, len(tag), LINE)]
    room = WIDTH_MM - 2 * MARGIN_MM
    height = min(LARGEST_MM, room / (WIDE * max(len(line) for line in lines)))
    for line in lines:
        top += height
        place = {"x": f"{WIDTH_MM / 2:g}", "y": f"{top:.2f}", "text-anchor": "middle"}
        face = {"font-family": "monospace", "font-size": f"{height:.2f}", "xml:space": "preserve"}
        SubElement(whole, "text", place | face).text = line
    return top

"""A big dyno table read as it comes in: whole chunks by numpy, chunks with trouble row by row.

Both ways add to the same state by the same rules as `core.dyno_pulls`, so the answer is the same.
"""

from collections.abc import Iterator
from typing import IO, Any

from midspan.core.dyno_layout import guess
from midspan.core.dyno_pulls import new_state
from midspan.core.dyno_rows import read_lines
from midspan.core.dyno_table import check_layout, tell
from midspan.core.fields import Form
from midspan.core.version import VERSION

CHUNK_BYTES = 1 << 19
# A line longer than this is no row of a table.
LONGEST_LINE = 1 << 20
Layout = dict[str, Any]


def read(source: IO[bytes], layout: Layout | None = None) -> Iterator[dict[str, Any]]:
    """Read a table, and tell how far it has come after each chunk.

    Parameters
    ----------
    source : the file; its text is UTF-8, or Latin-1 where it is not
    layout : as guessed before and changed by the user; guessed from the beginning if not given

    Yields
    ------
    {"bytes", "rows"} after each chunk, then one with "layout" and "done", as `core.dyno_table`;
    done is None where no columns of speed and torque or power could be made out
    """
    from midspan.lab import dyno_chunk  # numpy, which the service does not start with

    state: dict[str, Any] = new_state(1)
    read_bytes = 0
    for chunk in _whole_lines(source):
        text = _text(chunk)
        if layout is None:
            layout = guess(text[:200_000])
        if not readable(layout):
            break
        if not dyno_chunk.add_chunk(state, text, layout):
            read_lines(state, text, layout)
        read_bytes += len(chunk)
        yield {"bytes": read_bytes, "rows": state["rows"]}
    layout = guess("") if layout is None else layout
    done = tell(state, layout) if readable(layout) else None
    yield {"layout": layout, "done": done, "core_version": VERSION}


def readable(layout: Layout) -> bool:
    """Tell whether anything can be read by a layout."""
    form = Form({})
    check_layout(form, layout)
    return not form.problems


def _whole_lines(source: IO[bytes]) -> Iterator[bytes]:
    rest = b""
    while block := source.read(CHUNK_BYTES):
        block = rest + block
        cut = block.rfind(b"\n") + 1
        if cut == 0 and len(block) > LONGEST_LINE:
            cut = len(block)
        rest = block[cut:]
        if cut:
            yield block[:cut]
    if rest:
        yield rest


def _text(chunk: bytes) -> str:
    try:
        return chunk.decode()
    except UnicodeDecodeError:
        return chunk.decode("latin-1")

"""What a sample of an operation shows, whatever language it is written in."""

from typing import Any, NamedTuple


class Call(NamedTuple):
    """How one operation is asked, once."""

    method: str
    place: str
    token: bool  # whether it is asked in the name of a device
    what: str = ""  # beside another sample of the operation: what this one does
    media: str = ""  # of the body; empty if there is none
    body: Any = None
    file: str = ""  # where a body too long to be shown is read from
    whence: str = ""  # what wrote that file, if we did
    saved: str = ""  # where an answer is saved that is no JSON to look at
    paged: bool = False
    if_match: bool = False
    keyed: bool = False  # whether it takes an Idempotency-Key
    changed: str = ""  # which field of a kept record is changed
    lines: bool = False  # whether it is answered in lines of JSON

    @property
    def address(self) -> str:
        """The place, with how much of a list is asked for."""
        return self.place + ("?limit=100" if self.paged else "")

    @property
    def file_said(self) -> str:
        """What the file holds, where its name does not tell."""
        if self.whence:
            return f"{self.file} is what {self.whence} gave."
        shown = "holds what the example of the body shows"
        return f"{self.file} {shown}." if self.media.endswith("json") and self.file else ""


# A text that a sample may change, the first that a record has, and what into.
CHANGES = {"note": "Looked at again.", "text": "Looked at again.", "label": "Another name"}
# In a program, a key is made for each batch.
KEY = '"01923f5e-8c00-7000-8000-0000000000ff"'

"""The OpenAPI document of the last release, which a change may add to and must not break.

    PYTHONPATH=tests .venv/bin/python -m web.baseline

writes it again, from the document in fixtures/. Once its version is tagged, only if that breaks
nothing. It is compressed because nobody reads it: it is compared.
"""

import gzip
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

from web.breaks import breaks

FIXTURES = Path(__file__).resolve().parents[2] / "fixtures"
BASELINE = FIXTURES / "openapi-baseline.json.gz"


def baseline() -> dict[str, Any]:
    """Read the document of the last release."""
    found: dict[str, Any] = json.loads(gzip.decompress(BASELINE.read_bytes()))
    return found


def packed(document: dict[str, Any]) -> bytes:
    """Compress a document, the same bytes for the same document; samples break nobody."""

    def without_samples(read: dict[str, Any]) -> dict[str, Any]:
        read.pop("x-codeSamples", None)
        return read

    bare = json.loads(json.dumps(document), object_hook=without_samples)
    return gzip.compress(json.dumps(bare, sort_keys=True).encode(), mtime=0)


def refusal(old: dict[str, Any], new: dict[str, Any], tags: set[str]) -> str:
    """Say why the baseline must stay as it is; nothing if it may be written."""
    version = old["info"]["x-core-version"]
    found = breaks(old, new)
    if f"v{version}" not in tags or not found:
        return ""
    return f"Version {version} is released, and these would break its clients:\n" + "\n".join(found)


def _tags() -> set[str]:
    found = subprocess.run(["git", "tag"], cwd=FIXTURES, capture_output=True, text=True, check=True)
    return set(found.stdout.split())


def main() -> int:
    """Write the baseline, or say why not."""
    new = json.loads((FIXTURES / "openapi.json").read_text(encoding="utf-8"))
    why = refusal(baseline(), new, _tags()) if BASELINE.exists() else ""
    if why:
        print(why, file=sys.stderr)
        return 1
    BASELINE.write_bytes(packed(new))
    return 0


if __name__ == "__main__":
    sys.exit(main())

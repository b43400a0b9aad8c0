"""What the samples use of curl, for a machine that has none: run as `curl` by a shell.

It ends as curl does, with 22 where the service refused, and says status, method and address on
standard error, as the real one is told to do by the checks.
"""

import sys
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import Request, urlopen

VALUES = ("-X", "-H", "--data-binary", "--output")
REFUSED, UNKNOWN = 22, 2


def main(words: list[str]) -> int:
    """Do what the words say."""
    told: dict[str, list[str]] = {name: [] for name in VALUES}
    address = ""
    left = iter(words)
    for word in left:
        if word in VALUES:
            told[word].append(next(left))
        elif word.startswith("-") and word != "--fail-with-body":
            print(f"the checks' own curl does not know {word}", file=sys.stderr)
            return UNKNOWN
        elif not word.startswith("-"):
            address = word
    body = None
    for data in told["--data-binary"]:
        body = Path(data[1:]).read_bytes() if data.startswith("@") else data.encode()
    method = told["-X"][0] if told["-X"] else "GET" if body is None else "POST"
    headers = dict(header.split(": ", 1) for header in told["-H"])
    try:
        with urlopen(Request(address, body, headers, method=method), timeout=60) as answer:  # noqa: S310
            status, received = answer.status, answer.read()
    except HTTPError as refused:
        status, received = refused.code, refused.read()
    if told["--output"]:
        Path(told["--output"][0]).write_bytes(received)
    else:
        sys.stdout.buffer.write(received)
        sys.stdout.buffer.flush()
    print(status, method, address, file=sys.stderr)
    return REFUSED if status >= 400 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

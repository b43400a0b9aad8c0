"""What to do once on each phone, in words, for whoever stands before the machine that serves."""

from collections.abc import Sequence
from io import StringIO

import segno

from .authority import Certificate

PATH = "/authority.crt"
_STEPS = """
Once on each phone, so that it trusts this service and works without signal:

 1. Open {file} (or scan the code above).
    The browser warns this one time, because it cannot know this service yet. Go on to the page
    all the same; it only hands over the certificate of this shop's own authority.
 2. iOS: allow the download; Settings > Profile Downloaded > Install; then
    Settings > General > About > Certificate Trust Settings: switch it on.
    Android: Settings > search "CA certificate" > Install anyway > choose the file.
 3. Before you switch it on, compare the SHA-256 fingerprint the phone shows with this one:
    {fingerprint}
    If they differ, somebody is between the phone and this machine: do not trust it.
 4. Open {app}, and add it to the home screen.

The certificate can vouch for private addresses only. It is removed where it was installed.
"""


def steps(certificate: Certificate, addresses: Sequence[str], port: int) -> str:
    """Give the addresses of the service, a code to scan and the steps.

    Parameters
    ----------
    certificate : what the service shows
    addresses : where phones reach the service, the likeliest first
    port : the service's port
    """
    urls = [f"https://{address}:{port}/" for address in addresses]
    file = urls[0].removesuffix("/") + PATH
    return "\n".join(
        (
            "Midspan answers in this network: " + "  ".join(urls) + "  (Ctrl+C stops it)",
            "",
            code(file),
            _STEPS.format(
                file=file,
                app=urls[0],
                fingerprint=_in_lines(certificate.fingerprint),
            ),
        )
    )


def code(text: str) -> str:
    """Draw a QR code for a terminal, with its quiet zone."""
    drawn = StringIO()
    segno.make(text, micro=False, error="l").terminal(drawn, border=4, compact=True)
    return drawn.getvalue()


def _in_lines(fingerprint: str) -> str:
    half = len(fingerprint) // 2
    return fingerprint[:half] + "\n    " + fingerprint[half + 1 :]

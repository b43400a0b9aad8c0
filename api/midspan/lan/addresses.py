"""Which addresses phones can reach this machine at: private IPv4 ones, for they stay in the shop.

IPv6 is left out: a phone in the shop has IPv4, and IPv6 addresses change by the day on purpose.
"""

from collections.abc import Sequence
from ipaddress import IPv4Address, IPv4Network

import ifaddr

# What the authority may sign and nothing else; a public address would be another's to vouch for.
PRIVATE = tuple(
    IPv4Network(text)
    for text in (
        "10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16",  # RFC 1918
        "100.64.0.0/10",  # RFC 6598, used by private overlay networks
        "169.254.0.0/16",  # RFC 3927, a network without a router
        "127.0.0.0/8",  # this machine
        "192.0.2.0/24",  # RFC 5737, documentation: examples and checks
    )
)  # fmt: skip


class NotPrivate(ValueError):  # noqa: N818  (it names what is wrong)
    """An address that phones in the shop's network cannot be meant to use; the message says why."""


def choose(wanted: Sequence[str]) -> list[str]:
    """Take the addresses that were asked for, or find those of this machine's networks.

    Raises
    ------
    NotPrivate : one that was asked for is not a private IPv4 address, or none was found
    """
    for text in wanted:
        if not is_private(text):
            raise NotPrivate(
                f"{text} is not a private IPv4 address such as 192.168.1.20. For a public one, put "
                "a proxy with a certificate of a public authority before Midspan: see README.md."
            )
    found = list(wanted) or sorted(_found(), key=IPv4Address)
    if not found:
        raise NotPrivate(
            "This machine has no private IPv4 address: is it connected to the shop's network? "
            "Name one yourself with MIDSPAN_LAN_ADDRESSES."
        )
    return found


def is_private(text: str) -> bool:
    """Tell whether this is an address that the authority may sign."""
    try:
        address = IPv4Address(text)
    except ValueError:
        return False
    return any(address in network for network in PRIVATE)


def _found() -> set[str]:
    every = [ip.ip for adapter in ifaddr.get_adapters() for ip in adapter.ips if ip.is_IPv4]
    return {str(ip) for ip in every if is_private(str(ip)) and not IPv4Address(ip).is_loopback}

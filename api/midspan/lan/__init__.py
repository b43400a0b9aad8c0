"""Answering phones in the shop's own network: addresses, a private authority, steps to trust it.

A browser gives an app a service worker, so a life without a network, only over HTTPS. A public
authority signs no private address; so this machine makes an authority of its own, once.
"""

from .addresses import NotPrivate as NotPrivate
from .addresses import choose as choose
from .authority import Certificate as Certificate
from .authority import certificate as certificate
from .steps import code as code
from .steps import steps as steps

"""The service: HTTP in front of the core and the store."""

from .app import create_app as create_app

"""Searches that give the same examples on every machine, and are never failed for being slow."""

from hypothesis import settings

settings.register_profile("core", deadline=None, derandomize=True, database=None)
settings.load_profile("core")

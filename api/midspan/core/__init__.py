"""The calculations: pure Python, the same file in CPython and in MicroPython on the phone."""

from .dispatch import CALCS as CALCS
from .dispatch import dispatch as dispatch
from .dispatch import run as run
from .version import VERSION as VERSION

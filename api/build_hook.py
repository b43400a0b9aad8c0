"""Build the phone app while the wheel is built, and put it into the wheel.

Hatchling calls this. It needs the network once, for npm's packages; MIDSPAN_SKIP_PWA=1 leaves the
phone app out, for someone who only wants the service's interface.
"""

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

sys.path.insert(0, str(Path(__file__).resolve().parent))
import npm


class PhoneAppHook(BuildHookInterface):  # type: ignore[type-arg]
    """Runs ``npm ci`` and ``npm run build`` in pwa/ and adds its dist/ as midspan/_pwa."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Build the app; an editable install uses pwa/dist where it is."""
        if os.environ.get("MIDSPAN_SKIP_PWA") == "1":
            self.app.display_warning("MIDSPAN_SKIP_PWA=1: this build has no phone app.")
            return
        try:
            npm.install()
            npm.npm("run", "build")
        except subprocess.CalledProcessError:
            sys.exit("The phone app could not be built; npm's own words are above.")
        if version != "editable":
            build_data["force_include"][str(npm.PWA / "dist")] = "midspan/_pwa"

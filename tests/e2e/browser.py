"""A Chromium with a profile on disk, started and killed as a process of its own."""

import os
import signal
import subprocess
import time
from pathlib import Path

from playwright.sync_api import BrowserContext, ConsoleMessage, Page, Playwright

from e2e.chromium import QUIET

PHONE = {"width": 390, "height": 844}
# What a page that tried the network while there was none may say, and nothing else.
NO_NETWORK = (
    "net::ERR_INTERNET_DISCONNECTED",
    "net::ERR_CONNECTION_REFUSED",
    "net::ERR_CONNECTION_RESET",  # the service was killed with the line open
)


class Phone:
    """A browser profile that outlives its browser, and what its pages complained of."""

    def __init__(self, playwright: Playwright, program: str, profile: Path) -> None:
        self.playwright = playwright
        self.program = program
        self.profile = profile
        self.complaints: list[str] = []
        self.lost_network = False
        # Further flags for the browser, such as what its camera shows.
        self.more: tuple[str, ...] = ()
        self.paired: set[str] = set()  # addresses of the services that it was paired with
        self.process: subprocess.Popen[bytes] | None = None
        self.context: BrowserContext | None = None

    def start(self) -> BrowserContext:
        """Start the browser on the profile, as a person taps the icon."""
        browser = self.playwright.chromium.connect_over_cdp(f"http://127.0.0.1:{self.launch()}")
        self.context = browser.contexts[0]
        return self.context

    def launch(self) -> str:
        """Start the browser and nothing that listens to it; give the port it is steered by."""
        port_file = self.profile / "DevToolsActivePort"
        port_file.unlink(missing_ok=True)
        root = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
        self.process = subprocess.Popen(
            [
                self.program,
                "--headless",
                "--remote-debugging-port=0",
                f"--user-data-dir={self.profile}",
                "--hide-scrollbars",  # as on a phone, where they take no room
                f"--window-size={PHONE['width']},{PHONE['height']}",
                *QUIET,
                *root,
                *self.more,
                "about:blank",
            ],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )
        end = time.monotonic() + 60
        while not (port_file.exists() and "\n" in port_file.read_text()):
            assert self.process.poll() is None, "the browser stopped"
            assert time.monotonic() < end, "the browser did not start"
            time.sleep(0.05)
        return port_file.read_text().splitlines()[0]

    def page(self) -> Page:
        """Open a fresh page at phone size that is listened to."""
        assert self.context is not None
        page = self.context.new_page()
        page.set_viewport_size(PHONE)  # type: ignore[arg-type]
        page.on("console", self._hear)
        page.on("pageerror", lambda error: self.complaints.append(f"uncaught: {error}"))
        return page

    def lose_network(self) -> None:
        """Switch the browser's network off."""
        assert self.context is not None
        self.lost_network = True
        self.context.set_offline(True)

    def regain_network(self) -> None:
        """Switch the browser's network on."""
        assert self.context is not None
        self.context.set_offline(False)

    def close(self) -> None:
        """End the browser as a person does, with all that it has to write down."""
        assert self.context is not None
        assert self.context.browser is not None
        assert self.process is not None
        self.context.browser.new_browser_cdp_session().send("Browser.close")
        self.process.wait(timeout=60)
        self.process = self.context = None

    def kill(self) -> None:
        """End the browser and all its processes at once, with no chance to tidy up."""
        if self.process is not None:
            os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait()
            self.process = None
            self.context = None

    def _hear(self, message: ConsoleMessage) -> None:
        if message.type not in ("error", "warning"):
            return
        if self.lost_network and any(code in message.text for code in NO_NETWORK):
            return
        self.complaints.append(f"{message.type}: {message.text}")

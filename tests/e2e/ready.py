"""A service with a phone that is paired and can work offline: what most checks begin with."""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from playwright.sync_api import Page, Playwright

from e2e.browser import Phone
from e2e.flow import READY, open_app
from e2e.service import Service


class Ready:
    """Both as they are after the first evening in a shop, and as often as they are asked for.

    The service goes on from check to check, its rows brought back to that evening; the phone is a
    new browser on a copy of that evening's profile.

    Parameters
    ----------
    folder : where the service's data and the phone's profile lie, and their copies
    """

    def __init__(self, folder: Path, playwright: Playwright, program: str) -> None:
        self.playwright, self.program = playwright, program
        self.one = Service(folder / "data")
        self.data, self.profile = folder / "data-then", folder / "profile-then"
        phone = Phone(playwright, program, self.profile)
        try:
            self.one.start()
            phone.start()
            open_app(phone, self.one).evaluate(READY)
            assert phone.complaints == []
            phone.close()
        finally:
            phone.kill()
            self.one.kill()
        shutil.copytree(self.one.data, self.data)
        self.paired = phone.paired

    def service(self) -> Service:
        """Give the service, started, with nothing kept but the phone's pairing."""
        if self.one.process is None:
            shutil.rmtree(self.one.data)
            shutil.copytree(self.data, self.one.data)
            self.one.start()
        else:
            self._bring_rows_back()
        return self.one

    def _bring_rows_back(self) -> None:
        now, then = next(self.one.data.glob("*.sqlite3")), next(self.data.glob("*.sqlite3"))
        with closing(sqlite3.connect(now, timeout=60)) as database:
            database.execute("ATTACH ? AS evening", (str(then),))
            tables = database.execute("SELECT name FROM evening.sqlite_master WHERE type = 'table'")
            with database:
                for (name,) in tables.fetchall():
                    database.execute(f"DELETE FROM main.{name}")  # noqa: S608
                    database.execute(f"INSERT INTO main.{name} SELECT * FROM evening.{name}")  # noqa: S608

    def phone(self, folder: Path) -> Phone:
        """Give the phone, not yet started, with its profile in this folder."""
        shutil.copytree(self.profile, folder / "profile", symlinks=True)
        phone = Phone(self.playwright, self.program, folder / "profile")
        phone.paired |= self.paired
        return phone

    @contextmanager
    def opened(self, folder: Path) -> Iterator[tuple[Phone, Page]]:
        """Open the app for a whole module; fails if a page complained."""
        service, phone = self.service(), self.phone(folder)
        try:
            phone.start()
            yield phone, open_app(phone, service)
            assert phone.complaints == []
        finally:
            phone.kill()

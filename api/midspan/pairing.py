"""Pairing from the machine that runs the service: what its commands do."""

from collections.abc import Iterator
from contextlib import contextmanager
from uuid import UUID

from .settings import Settings
from .store import Device, Store, devices, upgrade
from .store.models import LOCAL_SHOP

CODE_MINUTES = int(devices.CODE_LASTS.total_seconds() // 60)


def link(address: str, code: str) -> str:
    """Give the address that pairs the device which opens it; browsers send no part after #."""
    return f"{address.rstrip('/')}/#/pair/{code}"


def new_code(settings: Settings, role: str) -> str:
    """Make a code that pairs one device."""
    with _store(settings) as store, store.writing() as session:
        return devices.open_code(session, LOCAL_SHOP, role)[0]


def first_code(settings: Settings) -> str | None:
    """Make a code for the first owner; None where a device is paired already."""
    with _store(settings) as store, store.writing() as session:
        if devices.any_paired(session, LOCAL_SHOP):
            return None
        return devices.open_code(session, LOCAL_SHOP, "owner")[0]


def paired_devices(settings: Settings) -> Iterator[Device]:
    """Give the paired devices, the first paired first."""
    after = None
    with _store(settings) as store, store.reading() as session:
        while True:
            rows, after = devices.page(session, LOCAL_SHOP, after, 100)
            yield from rows
            if after is None:
                return


def revoke_device(settings: Settings, id: UUID) -> str | None:
    """Revoke a device and give its name; None where no paired device has this id."""
    with _store(settings) as store, store.writing() as session:
        found = devices.revoke(session, LOCAL_SHOP, id)
        return None if found is None else found.name


@contextmanager
def _store(settings: Settings) -> Iterator[Store]:
    store = Store(settings.database())
    upgrade(store)
    try:
        yield store
    finally:
        store.close()

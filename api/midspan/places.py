"""Where the parts that are not Python code lie: packed in the wheel, or in a checkout."""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent
CHECKOUT = PACKAGE.parent.parent


def _first(packed: str, checkout: str) -> Path:
    """Prefer what was packed with this package; a checkout may hold another version."""
    inside = PACKAGE / packed
    return inside if inside.is_dir() else CHECKOUT / checkout


def migrations() -> Path:
    """Give the folder of the database migrations."""
    return _first("_migrations", "migrations")


def pwa() -> Path | None:
    """Give the folder of the built app for the phone, or None where it was not built."""
    found = _first("_pwa", "pwa/dist")
    return found if (found / "index.html").is_file() else None

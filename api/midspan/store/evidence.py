"""The dyno sessions of a shop, in the form in which the core makes evidence of them."""

from typing import Any
from uuid import UUID

from sqlalchemy import select
from sqlalchemy.orm import Session

from midspan.core.gain_evidence import MOST_SESSIONS, OF_RUN

from .models import DynoRun, DynoSession, Engine


def sessions_of(session: Session, shop: UUID) -> list[dict[str, Any]]:
    """Give the sessions of a shop with their runs, the newest first; invented ones are none.

    Parameters
    ----------
    session : one for reading
    shop : whose
    """
    kept = session.scalars(
        select(DynoSession)
        .where(
            DynoSession.shop_id == shop,
            DynoSession.deleted_at.is_(None),
            DynoSession.invented.is_(False),
        )
        .order_by(DynoSession.at.desc(), DynoSession.id)
        .limit(MOST_SESSIONS)
    ).all()
    owners = session.execute(select(Engine.id, Engine.name).where(Engine.shop_id == shop))
    engines = {id: name for id, name in owners}  # noqa: C416
    runs: dict[UUID, list[dict[str, Any]]] = {}
    rows = session.scalars(
        select(DynoRun)
        .where(
            DynoRun.shop_id == shop,
            DynoRun.deleted_at.is_(None),
            DynoRun.session_id.in_([one.id for one in kept]),
        )
        .order_by(DynoRun.place, DynoRun.id)
    )
    for row in rows:
        runs.setdefault(row.session_id, []).append({name: getattr(row, name) for name in OF_RUN})
    return [
        {
            "engine": None if one.engine_id is None else engines.get(one.engine_id),
            "label": one.label,
            "standard": one.standard,
            "settings": one.settings,
            "runs": runs.get(one.id, []),
        }
        for one in kept
    ]

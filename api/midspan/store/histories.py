"""How chains wore in a shop's own engines: the forecasts that were kept, with what was read."""

from typing import Any, NamedTuple
from uuid import UUID

from sqlalchemy import select
from sqlalchemy.orm import Session

from .models import Plan, Reading


class Kept(NamedTuple):
    """The input of a kept forecast, and the oil that the plan of its build names, if any."""

    input: dict[str, Any]
    planned_oil: str | None


def of_shop(session: Session, shop: UUID, but: UUID | None) -> list[Kept]:
    """Give the newest kept forecast of every build of a shop, but for one build.

    Parameters
    ----------
    session : one for reading
    shop : whose
    but : the build that is asked about
    """
    rows = session.scalars(
        select(Reading)
        .where(
            Reading.shop_id == shop,
            Reading.calc == "forecast",
            Reading.deleted_at.is_(None),
            Reading.build_id.is_not(None),
        )
        .order_by(Reading.taken_at, Reading.id)
    )
    newest = {row.build_id: row.input for row in rows if row.build_id != but}
    plans = session.scalars(
        select(Plan)
        .where(Plan.shop_id == shop, Plan.deleted_at.is_(None), Plan.build_id.is_not(None))
        .order_by(Plan.created_at, Plan.id)
    )
    oils = {plan.build_id: _oil(plan.input) for plan in plans}
    return [Kept(sent, oils.get(build)) for build, sent in newest.items()]


def _oil(asked: dict[str, Any]) -> str | None:
    oil = asked.get("oil")
    kind = oil.get("kind") if isinstance(oil, dict) else None
    return kind if isinstance(kind, str) else None

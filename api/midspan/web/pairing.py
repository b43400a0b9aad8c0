"""Pairing devices with the shop, and revoking them."""

from typing import Any
from uuid import UUID

from midspan.store import devices

from . import access
from .example_names import named
from .problems import Problem
from .records import ID, RecordBlueprint, read_id
from .schemas import devices as s
from .schemas.records import PageQuerySchema
from .settling import store

blp = RecordBlueprint(
    "pairing", __name__, url_prefix="/api/v1",
    description="Devices of the shop. An owner lets them in by a code, and revokes them.",
)  # fmt: skip
blp.url_value_preprocessor(read_id)


@blp.post("/pair")
@blp.arguments(s.PairSchema, examples=named("pair"))
@blp.response(201, s.PairedSchema, examples=named("paired"))
def pair(values: dict[str, Any]) -> dict[str, Any]:
    """Pair a device by a code, which is then used up; the token comes in this answer alone."""
    with store().writing() as session:
        done = devices.pair(session, values["code"], values["device_name"])
        shop_name = devices.shop_name(session, done[1].shop_id) if done else ""
    if done is None:
        raise Problem("code-refused")
    token, device = done
    return {"token": token, "shop_name": shop_name, "device": device}


@blp.post("/pairing-codes")
@blp.arguments(s.NewCodeSchema, examples=named("new-code"))
@blp.response(201, s.CodeSchema, examples=named("code"))
def new_code(values: dict[str, Any]) -> dict[str, Any]:
    """Make a code that pairs one device, within ten minutes."""
    with store().writing() as session:
        code, ends = devices.open_code(session, access.shop(), values["role"])
    return {"code": code, "role": values["role"], "expires_at": ends}


@blp.get("/me")
@blp.response(200, s.MeSchema, examples=named("me"))
def me() -> dict[str, Any]:
    """Say which device asks, what it may do, and in which shop."""
    with store().reading() as session:
        return {
            "shop_name": devices.shop_name(session, access.shop()),
            "device": access.device(),
        }


@blp.get("/devices")
@blp.arguments(PageQuerySchema, location="query")
@blp.response(200, s.DevicePageSchema, examples=named("device-page"))
def page(query: dict[str, Any]) -> dict[str, Any]:
    """List the paired devices, page by page; with deleted=true those revoked too."""
    after, limit, revoked = query.get("after"), query["limit"], query["deleted"]
    with store().reading() as session:
        rows, following = devices.page(session, access.shop(), after, limit, revoked=revoked)
    return {"items": rows, "next": following}


@blp.route("/devices/<id>", methods=["DELETE"], parameters=[ID])
@blp.response(200, s.DeviceSchema, examples=named("device"))
def revoke(id: UUID) -> Any:  # noqa: ANN401
    """Revoke a device: its token no longer works. A device may revoke itself; others, an owner."""
    if id != access.device().id:
        access.need("owner")
    with store().writing() as session:
        found = devices.revoke(session, access.shop(), id)
    if found is None:
        raise Problem("no-such-record", f"No paired device has the id {id}.")
    return found

"""Pairing: what is sent, and what is given back."""

from marshmallow import Schema, ValidationError, fields

from midspan.store import devices, tokens

from .quantity import Strict, choice, words
from .record_fields import Identifier, Moment, Text

NEED_CODE = "a pairing code of 10 letters and digits, such as ABCDE-23456"
CODE = "^[ -]*([0-9A-Za-z][ -]*){10}$"
LONGEST_NAME = 60


class Code(fields.Field[str]):
    """A pairing code as typed: in either case, with or without its hyphen."""

    default_error_messages = {"required": "missing", "null": "missing"}  # noqa: RUF012

    def __init__(self) -> None:
        """Say what is accepted, for the reference and for refusals."""
        description = "The code that the service or an owner's device shows."
        metadata = {"description": description, "pattern": CODE, "need": NEED_CODE}
        super().__init__(required=True, metadata=metadata | {"maxLength": 40})

    def _deserialize(self, value: object, *_: object, **__: object) -> str:
        if not isinstance(value, str):
            raise ValidationError("not-text")
        found = tokens.tidy_code(value) if len(value) <= self.metadata["maxLength"] else None
        if found is None:
            raise ValidationError("not-a-code")
        return found


class PairSchema(Strict):
    """What pairs a device."""

    code = Code()
    device_name = Text(LONGEST_NAME, "What the device is to be called.", required=True)


class NewCodeSchema(Strict):
    """What a device is to be paired as."""

    role = choice(devices.ROLES, "What the device may do.")


class CodeSchema(Schema):
    """A pairing code: for one device, once."""

    code = words("The code; it is not kept, and not shown again.")
    role = words("What the device will be allowed to do.")
    expires_at = Moment("When it ends.", required=True)


class DeviceSchema(Schema):
    """A paired device."""

    id = Identifier("The device's id.", required=True)
    name = words("What the device is called.")
    role = words("What it may do: reader, member or owner.")
    created_at = Moment("When it was paired.", required=True)
    last_seen_at = Moment(
        "When it was last seen, within five minutes.", required=True, allow_none=True
    )
    revoked_at = Moment("When it was revoked.", required=True, allow_none=True)


class PairedSchema(Schema):
    """A device just paired, with its token: given here, once, and kept nowhere."""

    token = words("Send it as Authorization: Bearer; keep it on the device alone.")
    shop_name = words("The shop it is paired with.")
    device = fields.Nested(DeviceSchema, required=True)


class MeSchema(Schema):
    """The device that asks, and its shop."""

    shop_name = words("The shop it is paired with.")
    device = fields.Nested(DeviceSchema, required=True)


class DevicePageSchema(Schema):
    """Paired devices, in the order in which they were paired."""

    items = fields.List(fields.Nested(DeviceSchema), required=True)
    next = Identifier(
        "Send it as after to get the next page; null at the end.", required=True, allow_none=True
    )

"""What only its holder knows: device tokens and pairing codes. Of both only hashes are kept.

A token names its shop and its device, so that looking it up asks for one key of one shop; then
come 256 bits of chance. A code is short enough to type: 50 bits that count for ten minutes.
"""

import hashlib
import re
import secrets
import time
from base64 import urlsafe_b64decode, urlsafe_b64encode
from typing import NamedTuple
from uuid import UUID

PREFIX = "midspan_"
SECRET_BYTES = 32
TOKEN = re.compile(PREFIX + "[A-Za-z0-9_-]{86}")  # 16 + 16 + 32 bytes in base64

# Digits and letters without the four that are taken for another (I, L, O, and U for V).
ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
CODE_LENGTH = 10
MISREAD = str.maketrans("ILOU", "110V", " -")


class Token(NamedTuple):
    """A token, taken apart."""

    shop: UUID
    device: UUID
    secret: bytes


def new_id() -> UUID:
    """Make a UUID of version 7 (RFC 9562): the time in milliseconds, then chance."""
    chance = secrets.randbits(74)
    high = time.time_ns() // 1_000_000 << 16 | 0x7000 | chance >> 62
    return UUID(int=high << 64 | 0b10 << 62 | chance & (1 << 62) - 1)


def new_token(shop: UUID, device: UUID) -> tuple[str, str]:
    """Make a token; give its text, for the device alone, and the hash to keep."""
    secret = secrets.token_bytes(SECRET_BYTES)
    text = urlsafe_b64encode(shop.bytes + device.bytes + secret).decode().rstrip("=")
    return PREFIX + text, hash_secret(secret)


def read_token(text: str) -> Token | None:
    """Take a token apart, or give None for anything else."""
    if not TOKEN.fullmatch(text):
        return None
    whole = urlsafe_b64decode(text.removeprefix(PREFIX) + "==")
    return Token(UUID(bytes=whole[:16]), UUID(bytes=whole[16:32]), whole[32:])


def hash_secret(secret: bytes) -> str:
    """Hash the secret of a token. Nobody guesses 256 bits, so the hash may be a fast one."""
    return hashlib.sha256(secret).hexdigest()


def same(one: str, other: str) -> bool:
    """Compare two hashes in a time that does not tell how much of them is alike."""
    return secrets.compare_digest(one, other)


def new_code() -> str:
    """Make a pairing code, as it is shown: ABCDE-FGHJK."""
    code = "".join(secrets.choice(ALPHABET) for _ in range(CODE_LENGTH))
    return f"{code[:5]}-{code[5:]}"


def tidy_code(typed: str) -> str | None:
    """Read a code as typed, in either case and with letters misread; None if it cannot be one."""
    code = typed.upper().translate(MISREAD)
    return code if re.fullmatch(f"[{ALPHABET}]{{{CODE_LENGTH}}}", code) else None


def hash_code(code: str) -> str:
    """Hash a tidied code, slowly: whoever reads the database cannot try all in ten minutes."""
    return hashlib.scrypt(code.encode(), salt=b"midspan pairing code", n=4096, r=8, p=1).hex()

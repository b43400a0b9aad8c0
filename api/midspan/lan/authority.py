"""The private authority of one data folder, and the certificate that it signs for the service.

Made once and kept in `tls/` of the data folder. Nobody but this user can read the keys. What the
authority can vouch for is cut down to private addresses (RFC 5280, 4.2.1.10), so a phone that
trusts it can still not be shown a false bank by whoever steals its key.
"""

import os
import secrets
from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from ipaddress import IPv4Address
from pathlib import Path
from typing import NamedTuple

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from .addresses import PRIVATE

AUTHORITY_DAYS = 3650
# Phones refuse longer ones: support.apple.com/102028 says 398 days, for public authorities.
LEAF_DAYS = 397
RENEW_BEFORE = timedelta(days=30)
# A phone's clock may be behind this machine's.
EARLIER = timedelta(hours=1)


class Certificate(NamedTuple):
    """What the service shows, and what a phone must come to trust."""

    file: Path  # the service's key and certificate
    authority: Path  # the authority's certificate, for the phone
    fingerprint: str  # SHA-256 of the authority's certificate
    ends: datetime


class _Signer(NamedTuple):
    key: ec.EllipticCurvePrivateKey
    own: x509.Certificate


def certificate(public: Path, addresses: Sequence[str], now: datetime | None = None) -> Certificate:
    """Make what is missing, outgrown or near its end; leave alone what still serves.

    Parameters
    ----------
    public : where the authority's certificate is to lie; keys and the service's lie beside it
    addresses : where phones reach the service; this machine's own are added
    now : the time to judge by; None for the clock's
    """
    now = now or datetime.now(UTC)
    public.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
    signer = _authority(public.parent / "authority.pem", now)
    _write(public, signer.own.public_bytes(serialization.Encoding.DER), 0o644)
    names = [*sorted({"127.0.0.1", *addresses}, key=IPv4Address)]
    file = public.parent / "service.pem"
    leaf = _certificate_of(file)
    if leaf is None or not _serves(leaf, signer, names, now):
        leaf = _write_leaf(file, signer, names, now)
    fingerprint = signer.own.fingerprint(hashes.SHA256()).hex(":").upper()
    return Certificate(file, public, fingerprint, leaf.not_valid_after_utc)


def _authority(file: Path, now: datetime) -> _Signer:
    """Read the authority, or make it; of two processes at once, the first one's stays."""
    kept = _certificate_of(file)
    if kept is None or kept.not_valid_after_utc <= now:
        key = ec.generate_private_key(ec.SECP256R1())
        host = os.uname().nodename if hasattr(os, "uname") else "this machine"
        name = f"Midspan private authority, {host[:24]} {secrets.token_hex(3)}"
        # nothing but signing, and nothing below it but certificates of services
        signs = dict.fromkeys(("key_cert_sign", "crl_sign"), True)
        built = (
            _started(name, key, now, timedelta(days=AUTHORITY_DAYS))
            .issuer_name(_named(name))
            .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
            .add_extension(_key_usage(signs), critical=True)
            .add_extension(
                x509.NameConstraints(
                    [*map(x509.IPAddress, PRIVATE), x509.DNSName("localhost")], None
                ),
                critical=True,
            )
        )
        _write(file, _pem(key, built.sign(key, hashes.SHA256())), 0o600, first=kept is None)
    read = serialization.load_pem_private_key(file.read_bytes(), None)
    own = _certificate_of(file)
    assert isinstance(read, ec.EllipticCurvePrivateKey)  # noqa: S101  (written above)
    assert own is not None  # noqa: S101
    return _Signer(read, own)


def _write_leaf(
    file: Path, signer: _Signer, addresses: Sequence[str], now: datetime
) -> x509.Certificate:
    key = ec.generate_private_key(ec.SECP256R1())
    names: list[x509.GeneralName] = [x509.IPAddress(IPv4Address(text)) for text in addresses]
    identifier = x509.SubjectKeyIdentifier.from_public_key(signer.key.public_key())
    lives = min(timedelta(days=LEAF_DAYS), signer.own.not_valid_after_utc - now + EARLIER)
    made = (
        _started("Midspan", key, now, lives)
        .issuer_name(signer.own.subject)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(_key_usage({"digital_signature": True}), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(
            x509.SubjectAlternativeName([*names, x509.DNSName("localhost")]), critical=False
        )
        .add_extension(
            x509.AuthorityKeyIdentifier.from_issuer_subject_key_identifier(identifier),
            critical=False,
        )
        .sign(signer.key, hashes.SHA256())
    )
    _write(file, _pem(key, made), 0o600)
    return made


def _serves(
    leaf: x509.Certificate, signer: _Signer, addresses: Sequence[str], now: datetime
) -> bool:
    names = leaf.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    ours = {str(address) for address in names.get_values_for_type(x509.IPAddress)}
    try:
        leaf.verify_directly_issued_by(signer.own)
    except Exception:  # any doubt means a new one; the library names several
        return False
    return ours == set(addresses) and leaf.not_valid_after_utc - now > RENEW_BEFORE


def _started(
    name: str, key: ec.EllipticCurvePrivateKey, now: datetime, lives: timedelta
) -> x509.CertificateBuilder:
    public = key.public_key()
    return (
        x509.CertificateBuilder()
        .subject_name(_named(name))
        .public_key(public)
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - EARLIER)
        .not_valid_after(now - EARLIER + lives)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(public), critical=False)
    )


def _named(name: str) -> x509.Name:
    return x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)])


def _key_usage(given: dict[str, bool]) -> x509.KeyUsage:
    kinds = (
        "digital_signature", "content_commitment", "key_encipherment", "data_encipherment",
        "key_agreement", "key_cert_sign", "crl_sign", "encipher_only", "decipher_only",
    )  # fmt: skip
    return x509.KeyUsage(**{kind: given.get(kind, False) for kind in kinds})


def _pem(key: ec.EllipticCurvePrivateKey, own: x509.Certificate) -> bytes:
    """Give key and certificate as one text, so that both are replaced at one instant."""
    private = key.private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.PKCS8,
        serialization.NoEncryption(),
    )
    return private + own.public_bytes(serialization.Encoding.PEM)


def _certificate_of(file: Path) -> x509.Certificate | None:
    return x509.load_pem_x509_certificate(file.read_bytes()) if file.exists() else None


def _write(file: Path, content: bytes, mode: int, first: bool = False) -> None:
    """Write a file whole or not at all; `first`: unless another process was quicker."""
    if file.exists() and file.read_bytes() == content:
        return
    aside = file.with_name(f"{file.name}.{secrets.token_hex(4)}")
    put: Callable[[Path, Path], None] = os.link if first else os.replace
    descriptor = os.open(aside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, mode)
    try:
        with os.fdopen(descriptor, "wb") as opened:
            opened.write(content)
            opened.flush()
            os.fsync(descriptor)
        put(aside, file)
    except FileExistsError:
        pass  # the quicker process's authority is as good, and its phones may trust it already
    finally:
        aside.unlink(missing_ok=True)

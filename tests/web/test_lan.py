"""The private authority: what it signs, what it may not sign, and the service that shows it."""

import re
import socket
import ssl
import urllib.error
import urllib.request
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from ipaddress import IPv4Address, IPv4Network
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization

from midspan import lan
from midspan.lan import addresses, authority

SHOP = ["192.168.1.20", "10.0.0.7"]
NOW = datetime.now(UTC).replace(microsecond=0)


def read(file: Path) -> x509.Certificate:
    return x509.load_pem_x509_certificate(file.read_bytes())


def names(file: Path) -> set[str]:
    held = read(file).extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    return {str(name) for name in held.get_values_for_type(x509.IPAddress)}


def trusting(public: Path) -> ssl.SSLContext:
    """A client that trusts this authority and nobody else."""
    made = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
    made.load_verify_locations(cadata=public.read_bytes())
    # The rules of RFC 5280 to the letter, as phones have them.
    made.verify_flags |= ssl.VerifyFlags.VERIFY_X509_STRICT
    return made


def shake_hands(public: Path, file: Path, name: str) -> None:
    """Let a client and a server shake hands without a network; raises what the client says."""
    server_context = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
    server_context.load_cert_chain(file)
    to_client, to_server = ssl.MemoryBIO(), ssl.MemoryBIO()
    client = trusting(public).wrap_bio(to_client, to_server, server_hostname=name)
    server = server_context.wrap_bio(to_server, to_client, server_side=True)
    for _ in range(4):
        for side in (client, server):
            try:
                side.do_handshake()
            except ssl.SSLWantReadError:
                continue
    assert client.version() in ("TLSv1.2", "TLSv1.3")


def test_a_client_that_trusts_the_authority_alone_is_satisfied(tmp_path: Path) -> None:
    made = lan.certificate(tmp_path / "tls" / "authority.crt", SHOP)
    for name in (*SHOP, "127.0.0.1", "localhost"):
        shake_hands(made.authority, made.file, name)
    with pytest.raises(ssl.SSLCertVerificationError, match=r"192\.168\.1\.21"):
        shake_hands(made.authority, made.file, "192.168.1.21")
    assert (
        made.fingerprint.replace(":", "").lower() == sha256(made.authority.read_bytes()).hexdigest()
    )


def sign_for(tmp_path: Path, name: x509.GeneralName) -> Path:
    """Sign a name with the real authority's key, as a thief of it would."""
    lan.certificate(tmp_path / "authority.crt", SHOP)
    stolen = tmp_path / "authority.pem"
    key = serialization.load_pem_private_key(stolen.read_bytes(), None)
    made = (
        x509.CertificateBuilder()
        .subject_name(x509.Name([]))
        .issuer_name(read(stolen).subject)
        .public_key(key.public_key())  # type: ignore[arg-type]
        .serial_number(1)
        .not_valid_before(NOW - timedelta(days=1))
        .not_valid_after(NOW + timedelta(days=1))
        .add_extension(x509.SubjectAlternativeName([name]), critical=True)
        .add_extension(
            x509.AuthorityKeyIdentifier.from_issuer_public_key(key.public_key()),  # type: ignore[arg-type]
            critical=False,
        )
        .sign(key, hashes.SHA256())  # type: ignore[arg-type]
    )
    own = key.private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.PKCS8,
        serialization.NoEncryption(),
    )
    file = tmp_path / "stolen.pem"
    file.write_bytes(own + made.public_bytes(serialization.Encoding.PEM))
    return file


@pytest.mark.parametrize("text", ["198.51.100.7", "11.0.0.1", "2001:db8::1", "bank.example"])
def test_a_stolen_key_can_vouch_for_nothing_outside(tmp_path: Path, text: str) -> None:
    name = x509.DNSName(text) if "bank" in text else x509.IPAddress(_address(text))
    file = sign_for(tmp_path, name)
    with pytest.raises(ssl.SSLCertVerificationError, match="permitted subtree"):
        shake_hands(tmp_path / "authority.crt", file, text)


def test_that_check_sees_what_is_permitted(tmp_path: Path) -> None:
    file = sign_for(tmp_path, x509.IPAddress(IPv4Address("192.168.7.7")))
    shake_hands(tmp_path / "authority.crt", file, "192.168.7.7")


def _address(text: str):
    import ipaddress

    return ipaddress.ip_address(text)


def test_the_keys_are_for_this_user_alone(tmp_path: Path) -> None:
    made = lan.certificate(tmp_path / "tls" / "authority.crt", SHOP)
    assert made.authority.parent.stat().st_mode & 0o777 == 0o700
    held = {path.name: path for path in made.authority.parent.iterdir()}
    assert set(held) == {"authority.crt", "authority.pem", "service.pem"}
    for name, path in held.items():
        secret = b"PRIVATE KEY" in path.read_bytes()
        assert secret == (name != "authority.crt")
        assert path.stat().st_mode & 0o777 == (0o600 if secret else 0o644)


def test_it_lives_as_long_as_phones_allow_and_signs_no_other_authority(tmp_path: Path) -> None:
    made = lan.certificate(tmp_path / "authority.crt", SHOP, NOW)
    leaf = read(made.file)
    life = leaf.not_valid_after_utc - leaf.not_valid_before_utc
    assert timedelta(days=360) < life <= timedelta(days=398)
    assert leaf.not_valid_before_utc < NOW
    own = x509.load_der_x509_certificate(made.authority.read_bytes())
    basic = own.extensions.get_extension_for_class(x509.BasicConstraints)
    assert (basic.critical, basic.value.ca, basic.value.path_length) == (True, True, 0)
    usage = own.extensions.get_extension_for_class(x509.KeyUsage)
    assert usage.critical
    assert usage.value.key_cert_sign
    assert not usage.value.digital_signature


def test_it_is_made_once_and_renewed_when_it_must_be(tmp_path: Path) -> None:
    public = tmp_path / "authority.crt"
    first = lan.certificate(public, SHOP, NOW)
    before = first.file.read_bytes()
    trusted = public.read_bytes()
    lan.certificate(public, SHOP, NOW + timedelta(days=300))
    assert first.file.read_bytes() == before
    # near its end
    later = NOW + timedelta(days=370)
    assert lan.certificate(public, SHOP, later).ends > later + timedelta(days=360)
    renewed = first.file.read_bytes()
    assert renewed != before
    # another address
    assert names(first.file) == {*SHOP, "127.0.0.1"}
    moved = lan.certificate(public, ["192.168.1.99"], later)
    assert names(moved.file) == {"192.168.1.99", "127.0.0.1"}
    # and phones need not learn another authority for any of it
    assert public.read_bytes() == trusted
    end = NOW + timedelta(days=authority.AUTHORITY_DAYS)
    last = lan.certificate(public, SHOP, end - timedelta(days=10))
    assert last.ends <= end
    assert public.read_bytes() == trusted
    anew = lan.certificate(public, SHOP, end + timedelta(days=1))
    assert public.read_bytes() != trusted
    assert anew.ends > end + timedelta(days=360)


def test_many_at_once_make_one_authority(tmp_path: Path) -> None:
    public = tmp_path / "authority.crt"
    with ThreadPoolExecutor(8) as pool:
        prints = set(pool.map(lambda _: lan.certificate(public, SHOP).fingerprint, range(8)))
    assert len(prints) == 1
    shake_hands(public, tmp_path / "service.pem", SHOP[0])


@pytest.mark.parametrize("text", ["8.8.8.8", "fd00::1", "shop.example", "192.168.1.1/24"])
def test_only_private_addresses_are_taken(text: str) -> None:
    with pytest.raises(lan.NotPrivate, match=re.escape(text)):
        lan.choose([text])


def test_addresses_are_found_without_sending_anything(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(addresses, "_found", lambda: {"192.168.1.20", "10.0.0.7"})
    assert lan.choose([]) == ["10.0.0.7", "192.168.1.20"]
    assert lan.choose(["192.168.1.20"]) == ["192.168.1.20"]
    monkeypatch.setattr(addresses, "_found", set)
    with pytest.raises(lan.NotPrivate, match="MIDSPAN_LAN_ADDRESSES"):
        lan.choose([])


def test_the_permitted_networks_are_private_by_the_registry() -> None:
    # The one that Python's copy of the registry calls neither private nor global: shared space.
    for network in set(addresses.PRIVATE) - {IPv4Network("100.64.0.0/10")}:
        assert network.is_private


def test_the_service_answers_phones_over_tls(start) -> None:
    # 127.0.0.2 stands for the shop's network: another address, and never off this machine.
    process = start("--lan", settings={"MIDSPAN_LAN_ADDRESSES": "127.0.0.2"})
    process.wait_until_it_says_where()
    assert process.address.startswith("https://127.0.0.2:")
    blind = ssl.create_default_context()
    blind.check_hostname, blind.verify_mode = False, ssl.CERT_NONE
    with urllib.request.urlopen(process.address + "/authority.crt", context=blind) as answer:  # noqa: S310
        public = answer.read()
        assert answer.headers.get_content_type() == "application/x-x509-ca-cert"
    said = ""
    while "vouch for private" not in said:
        said += process.running.stdout.readline()
    printed = re.findall(r"(?:[0-9A-F]{2}:){15}[0-9A-F]{2}", said)
    assert "".join(printed).replace(":", "").lower() == sha256(public).hexdigest()
    for word in ("iOS", "Android", "/authority.crt", "█"):
        assert word in said

    process.tls = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
    with pytest.raises(urllib.error.URLError, match="CERTIFICATE_VERIFY_FAILED"):
        process.ask("GET", "/healthz")
    process.tls.load_verify_locations(cadata=public)
    assert process.ask("GET", "/healthz")[0] == 200
    # this machine too, and no name that is not its own
    process.address = process.address.replace("127.0.0.2", "127.0.0.1")
    assert process.ask("GET", "/healthz")[0] == 200
    with socket.create_connection(process.host, timeout=60) as plain:
        plain.sendall(b"GET /healthz HTTP/1.1\r\nHost: localhost\r\n\r\n")
        assert b"200" not in plain.recv(1000)
    assert process.stop() == 0
    assert "Traceback" not in process.kill()


def test_a_machine_without_such_an_address_is_told(start) -> None:
    process = start("--lan", settings={"MIDSPAN_LAN_ADDRESSES": "198.51.100.7"})
    assert process.running.wait(timeout=60) == 1
    assert "not a private IPv4 address" in process.kill()

"""A throw-away private authority and one certificate for this laptop, so that devices can speak https with it where no public name exists.

The authority's key is never written and is gone once it has signed, so an authority installed on a phone can sign nothing more; by its name constraints
(RFC 5280, section 4.2.1.10) it could speak for private addresses and .local names only. Lives 397 days; needs the extra "share".
"""

import ipaddress
import re
import socket
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from inspector.errors import InspectorError
from inspector.record import durable
from inspector.record.holding import make_private

LIFE = timedelta(days=397)
SPARE = timedelta(days=14)
# The usual addresses of a laptop's own hotspot (common practice), so that one authority serves wherever it is opened.
HOTSPOTS = ("192.168.137.1", "10.42.0.1", "192.168.2.1")
PRIVATE = ("10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "127.0.0.0/8")


class NoShareExtra(InspectorError):
    """What full sharing needs is not installed."""


@dataclass(frozen=True)
class Identity:
    """Files of the certificate, its key and the authority (PEM), and the SHA-256 fingerprint of the authority in pairs of digits."""

    certificate: Path
    key: Path
    authority: Path
    fingerprint: str


def identity_for(folder: Path, address: str, moment: datetime | None = None) -> Identity:
    """The identity kept in `folder` if it covers `address` and lasts, else a new one (then devices must install the new authority)."""
    require_extra()
    moment = moment or datetime.now(UTC)
    make_private(folder)
    if not _serves(folder, address, moment):
        _make(folder, address, moment)
    return Identity(folder / "certificate.pem", folder / "key.pem", folder / "authority.pem", _fingerprint(folder / "authority.pem"))


def require_extra() -> None:
    """NoShareExtra with one sentence where the extra is missing."""
    try:
        import cheroot  # noqa: F401
        import cryptography  # noqa: F401
    except ImportError as problem:
        raise NoShareExtra("Full sharing needs two more packages: pip install 'inspector[share]' (in a checkout: pip install '.[share]'). "
                           "Without them, share with --mode basic.") from problem


def _serves(folder: Path, address: str, moment: datetime) -> bool:
    from cryptography import x509

    try:
        found = x509.load_pem_x509_certificate((folder / "certificate.pem").read_bytes())
        names = found.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
        whole = (folder / "key.pem").is_file() and (folder / "authority.pem").is_file()
    except (OSError, ValueError, x509.ExtensionNotFound):
        return False
    return whole and ipaddress.ip_address(address) in names.get_values_for_type(x509.IPAddress) and found.not_valid_after_utc > moment + SPARE


def _make(folder: Path, address: str, moment: datetime) -> None:
    from cryptography.hazmat.primitives import serialization
    from cryptography.hazmat.primitives.asymmetric import ec

    authority_key, key = ec.generate_private_key(ec.SECP256R1()), ec.generate_private_key(ec.SECP256R1())
    authority = _authority(authority_key, address, moment)
    certificate = _certificate(authority, authority_key, key.public_key(), address, moment)
    plain = serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    pem = serialization.Encoding.PEM
    # The certificate comes last: without it the others count for nothing and are made anew.
    (folder / "certificate.pem").unlink(missing_ok=True)
    durable.replace(folder / "key.pem", key.private_bytes(pem, *plain), mode=0o600)
    durable.replace(folder / "authority.pem", authority.public_bytes(pem), mode=0o600)
    durable.replace(folder / "certificate.pem", certificate.public_bytes(pem), mode=0o600)


def _named(name: str):
    from cryptography import x509
    from cryptography.x509.oid import NameOID

    return x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)])


def _spoken_for(address: str) -> list[ipaddress.IPv4Network]:
    # An address outside the private ranges (some networks have such) is permitted alone.
    ranges, own = [ipaddress.ip_network(one) for one in PRIVATE], ipaddress.ip_network(address)
    return ranges if any(own.subnet_of(one) for one in ranges) else [*ranges, own]


def _authority(key, address: str, moment: datetime):
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes

    name = _named(f"Inspector on {_host()}, {moment:%Y-%m-%d}")
    permitted = [x509.IPAddress(one) for one in _spoken_for(address)] + [x509.DNSName("local"), x509.DNSName("localhost")]
    usage = x509.KeyUsage(False, False, False, False, False, True, False, False, False)
    builder = x509.CertificateBuilder(name, name, key.public_key(), x509.random_serial_number(), moment - timedelta(days=1), moment + LIFE)
    builder = builder.add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True).add_extension(usage, critical=True)
    builder = builder.add_extension(x509.NameConstraints(permitted, None), critical=True)
    return builder.add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False).sign(key, hashes.SHA256())


def _certificate(authority, authority_key, public_key, address: str, moment: datetime):
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes
    from cryptography.x509.oid import ExtendedKeyUsageOID

    names = [x509.IPAddress(ipaddress.ip_address(one)) for one in dict.fromkeys((address, *HOTSPOTS))] + [x509.DNSName(f"{_host()}.local")]
    usage = x509.KeyUsage(True, False, False, False, False, False, False, False, False)
    builder = x509.CertificateBuilder(authority.subject, _named(_host()), public_key, x509.random_serial_number(), moment - timedelta(days=1), moment + LIFE)
    builder = builder.add_extension(x509.SubjectAlternativeName(names), critical=False).add_extension(usage, critical=True)
    builder = builder.add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
    builder = builder.add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
    builder = builder.add_extension(x509.AuthorityKeyIdentifier.from_issuer_public_key(authority_key.public_key()), critical=False)
    return builder.sign(authority_key, hashes.SHA256())


def _host() -> str:
    return re.sub(r"[^a-z0-9]+", "-", socket.gethostname().lower()).strip("-")[:40] or "laptop"


def _fingerprint(path: Path) -> str:
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes

    digest = x509.load_pem_x509_certificate(path.read_bytes()).fingerprint(hashes.SHA256()).hex().upper()
    return " ".join(digest[place:place + 2] for place in range(0, 64, 2))

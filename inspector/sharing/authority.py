"""A private authority and one certificate for this laptop, so that devices can speak https with it.

No public name exists for a laptop on a hotspot. The authority's key is never written: it is
forgotten once it has signed, so an authority installed on a phone can sign nothing more; by its
name constraints (RFC 5280, section 4.2.1.10) it could speak for private addresses and .local names
only. It lives 397 days and needs the packages of the extra "share".
"""

import ipaddress
import re
import socket
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from inspector.record import durable
from inspector.record.folder_lock import make_private
from inspector.values.errors import InspectorError

_FILES = ("certificate.pem", "key.pem", "authority.pem")
LIFE = timedelta(days=397)
SPARE = timedelta(days=14)
# The usual addresses of a laptop's own hotspot (common practice, no source), so that one authority
# serves wherever the hotspot is opened.
HOTSPOTS = ("192.168.137.1", "10.42.0.1", "192.168.2.1")
PRIVATE = ("10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "127.0.0.0/8")


class NoShareExtra(InspectorError):
    """What full sharing needs is not installed."""


class AuthorityKept(InspectorError):
    """The kept authority does not serve, and nobody agreed to a new one."""


@dataclass(frozen=True)
class Identity:
    """The files by which this laptop proves who it is.

    Parameters
    ----------
    certificate, key, authority : Path
        PEM files.
    fingerprint : str
        SHA-256 of the authority's certificate, in pairs of digits.
    news : str
        Since when and why the authority is another one than before, "" for the first one.
    """

    certificate: Path
    key: Path
    authority: Path
    fingerprint: str
    news: str = ""


def _yes(_: str) -> bool:
    return True


def identity_for(
    folder: Path,
    address: str,
    moment: datetime | None = None,
    agreed: Callable[[str], bool] = _yes,
) -> Identity:
    """Return the identity for an address; one that does not cover it, or ends soon, is replaced.

    Parameters
    ----------
    folder : Path
        Where it is kept.
    address : str
        IPv4.
    moment : datetime, optional
        Now.
    agreed : callable
        Asked with the reason before an old authority is replaced, because every device that trusts
        it must then install the new one.

    Returns
    -------
    Identity
        A new one means that devices must install the new authority.

    Raises
    ------
    NoShareExtra
        Where the packages of the extra are not installed.
    AuthorityKept
        Where a new authority is needed and not agreed to.
    """
    require_extra()
    moment = moment or datetime.now(UTC)
    make_private(folder)
    why = why_not(folder, address, moment)
    if why:
        is_first = not any((folder / name).exists() for name in _FILES)
        if not is_first and not agreed(why):
            raise AuthorityKept(
                f"Full sharing needs a new authority: {why}. Nothing was changed. With "
                "--new-authority a new one is made, which each device must install once."
            )
        _make(folder, address, moment)
        _keep_news(folder, "" if is_first else f"New since {moment:%Y-%m-%d %H:%M} UTC: {why}.")
    return Identity(
        folder / "certificate.pem",
        folder / "key.pem",
        folder / "authority.pem",
        _fingerprint(folder / "authority.pem"),
        _news(folder),
    )


def _keep_news(folder: Path, news: str) -> None:
    """Keep what the sharing page has to say about a new authority; "" for nothing."""
    (folder / "news.txt").unlink(missing_ok=True)
    if news:
        durable.replace(folder / "news.txt", news.encode("utf-8"), mode=0o600)


def _news(folder: Path) -> str:
    """Return what the sharing page has to say; "" for nothing."""
    path = folder / "news.txt"
    return path.read_text(encoding="utf-8") if path.is_file() else ""


def require_extra() -> None:
    """Raise NoShareExtra, with what to install, where a package of the extra is missing."""
    try:
        import cheroot  # noqa: F401
        import cryptography  # noqa: F401
    except ImportError as problem:
        raise NoShareExtra(
            "Full sharing needs two more packages: pip install 'inspector[share]' "
            "(in a checkout: pip install '.[share]'). Without them, share with --mode basic."
        ) from problem


def why_not(folder: Path, address: str, moment: datetime) -> str:
    """Say why the kept identity does not serve.

    Parameters
    ----------
    folder : Path
        Where it is kept.
    address : str
        IPv4.
    moment : datetime
        Now, by this computer's clock.

    Returns
    -------
    str
        The reason, to be put into a sentence; "" where it serves.
    """
    from cryptography import x509

    # All three or none: a key without its certificate serves nothing.
    missing = [name for name in _FILES if not (folder / name).is_file()]
    if missing:
        return f"of the old one {' and '.join(missing)} is missing"
    try:
        found = x509.load_pem_x509_certificate((folder / "certificate.pem").read_bytes())
        names = found.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    except (OSError, ValueError, x509.ExtensionNotFound):
        return "the old one's certificate.pem cannot be read"
    covered = [str(each) for each in names.get_values_for_type(x509.IPAddress)]
    if address not in covered:
        return f"the old one does not cover the address {address}, only {', '.join(covered)}"
    ends = found.not_valid_after_utc
    # Renewed some days early, so that it does not end in the middle of a visit.
    if ends <= moment + SPARE:
        return (
            f"the old one ends on {ends:%Y-%m-%d} and this computer's clock says "
            f"{moment:%Y-%m-%d} (if that is not today, set the clock first)"
        )
    return ""


def clock_warning(identity: Identity, moment: datetime | None = None) -> str:
    """Say that this computer's clock is before the time at which its own certificate was made.

    Parameters
    ----------
    identity : Identity
    moment : datetime, optional
        Now.

    Returns
    -------
    str
        A sentence; "" where the clock may be right.
    """
    from cryptography import x509

    moment = moment or datetime.now(UTC)
    found = x509.load_pem_x509_certificate(identity.certificate.read_bytes())
    if moment >= found.not_valid_before_utc:
        return ""
    return (
        f"This computer's clock says {moment:%Y-%m-%d}, which is before its certificate was made "
        f"({found.not_valid_before_utc:%Y-%m-%d}): set the clock."
    )


def _make(folder: Path, address: str, moment: datetime) -> None:
    """Make authority, key and certificate for one address, and write what has to be kept."""
    from cryptography.hazmat.primitives import serialization
    from cryptography.hazmat.primitives.asymmetric import ec

    authority_key = ec.generate_private_key(ec.SECP256R1())
    key = ec.generate_private_key(ec.SECP256R1())
    authority = _authority(authority_key, address, moment)
    certificate = _certificate(authority, authority_key, key.public_key(), address, moment)
    pem = serialization.Encoding.PEM
    key_text = key.private_bytes(
        pem, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )
    # The certificate comes last: without it the others count for nothing and are made anew.
    (folder / "certificate.pem").unlink(missing_ok=True)
    durable.replace(folder / "key.pem", key_text, mode=0o600)
    durable.replace(folder / "authority.pem", authority.public_bytes(pem), mode=0o600)
    durable.replace(folder / "certificate.pem", certificate.public_bytes(pem), mode=0o600)


def _named(name: str):
    """Return an X.509 name that has only a common name."""
    from cryptography import x509
    from cryptography.x509.oid import NameOID

    return x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)])


def _permitted_networks(address: str) -> list[ipaddress.IPv4Network]:
    """The private ranges, and an address outside them (some networks have such) alone."""
    ranges = [ipaddress.ip_network(each) for each in PRIVATE]
    own = ipaddress.ip_network(address)
    return ranges if any(own.subnet_of(each) for each in ranges) else [*ranges, own]


def _authority(key, address: str, moment: datetime):
    """The authority's certificate, signed by itself."""
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes

    name = _named(f"Inspector on {_host()}, {moment:%Y-%m-%d}")
    # An installed authority could vouch for any site: these constraints keep it to private
    # addresses and .local.
    networks = [x509.IPAddress(each) for each in _permitted_networks(address)]
    permitted = [*networks, x509.DNSName("local"), x509.DNSName("localhost")]
    identifier = x509.SubjectKeyIdentifier.from_public_key(key.public_key())
    builder = _builder(name, name, key.public_key(), moment)
    # No authority below it: what it signs is the end.
    builder = builder.add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
    builder = builder.add_extension(_usage(signs_certificates=True), critical=True)
    builder = builder.add_extension(x509.NameConstraints(permitted, None), critical=True)
    builder = builder.add_extension(identifier, critical=False)
    return builder.sign(key, hashes.SHA256())


def _certificate(authority, authority_key, public_key, address: str, moment: datetime):
    """The laptop's certificate, signed by the authority."""
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes
    from cryptography.x509.oid import ExtendedKeyUsageOID

    addresses = [ipaddress.ip_address(each) for each in dict.fromkeys((address, *HOTSPOTS))]
    # By address, since phones find no name on a hotspot; the name is for those that know .local.
    names = [*map(x509.IPAddress, addresses), x509.DNSName(f"{_host()}.local")]
    purpose = x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH])
    issuer = x509.AuthorityKeyIdentifier.from_issuer_public_key(authority_key.public_key())
    builder = _builder(authority.subject, _named(_host()), public_key, moment)
    builder = builder.add_extension(x509.SubjectAlternativeName(names), critical=False)
    # A server's certificate: it may not sign others.
    builder = builder.add_extension(_usage(signs_certificates=False), critical=True)
    builder = builder.add_extension(x509.BasicConstraints(False, None), critical=True)
    builder = builder.add_extension(purpose, critical=False)
    builder = builder.add_extension(issuer, critical=False)
    return builder.sign(authority_key, hashes.SHA256())


def _builder(issuer, subject, public_key, moment: datetime):
    """Return the beginning of a certificate that is valid from yesterday on."""
    from cryptography import x509

    # Begun a day early, for devices whose clock is behind.
    begin, number = moment - timedelta(days=1), x509.random_serial_number()
    return x509.CertificateBuilder(issuer, subject, public_key, number, begin, moment + LIFE)


def _usage(*, signs_certificates: bool):
    """An authority signs certificates; the laptop's own key signs what it says."""
    from cryptography import x509

    return x509.KeyUsage(
        digital_signature=not signs_certificates,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        key_cert_sign=signs_certificates,
        crl_sign=False,
        encipher_only=False,
        decipher_only=False,
    )


def _host() -> str:
    return re.sub(r"[^a-z0-9]+", "-", socket.gethostname().lower()).strip("-")[:40] or "laptop"


def _fingerprint(path: Path) -> str:
    """Return the SHA-256 fingerprint in pairs, as browsers show it for comparing by eye."""
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes

    certificate = x509.load_pem_x509_certificate(path.read_bytes())
    digest = certificate.fingerprint(hashes.SHA256()).hex().upper()
    return " ".join(digest[place : place + 2] for place in range(0, 64, 2))

"""A private authority and one certificate for this laptop, so that devices can speak https with it.

No public name exists for a laptop on a hotspot. The authority's key is never written: it is
forgotten once it has signed, so an authority installed on a phone can sign nothing more; by its
name constraints (RFC 5280, section 4.2.1.10) it could speak for private addresses and .local names
only. It lives 397 days.
"""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from inspector.record import durable
from inspector.record.folder_lock import make_private
from inspector.sharing import tls_certificates
from inspector.values.errors import InspectorError

_FILES = ("certificate.pem", "key.pem", "authority.pem")
SPARE = timedelta(days=14)


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


def identity_for(
    folder: Path, address: str, moment: datetime | None = None, *, agreed: bool = False
) -> Identity:
    """Return the identity for an address.

    Parameters
    ----------
    folder : Path
        Where it is kept.
    address : str
        IPv4.
    moment : datetime, optional
        Now.
    agreed : bool
        Whether an authority that does not serve, or ends soon, may be replaced: every device that
        trusts it must then install the new one.

    Returns
    -------
    Identity

    Raises
    ------
    AuthorityKept
        Where a new authority is needed and not agreed to.
    """
    moment = moment or datetime.now(UTC)
    make_private(folder)
    why = why_not(folder, address, moment)
    if why:
        is_first = not any((folder / name).exists() for name in _FILES)
        if not is_first and not agreed:
            raise AuthorityKept(
                f"A new authority is needed: {why}. Each phone that trusts the old one must "
                "install the new one once."
            )
        _keep(folder, tls_certificates.make([address], moment))
        _keep_news(folder, "" if is_first else f"New since {moment:%Y-%m-%d %H:%M} UTC: {why}.")
    return Identity(
        folder / "certificate.pem",
        folder / "key.pem",
        folder / "authority.pem",
        tls_certificates.read((folder / "authority.pem").read_bytes()).fingerprint,
        _news(folder),
    )


def _keep(folder: Path, made: tls_certificates.Made) -> None:
    """Keep what was made on disk."""
    # The certificate comes last: without it the others count for nothing and are made anew.
    (folder / "certificate.pem").unlink(missing_ok=True)
    durable.replace(folder / "key.pem", made.key, mode=0o600)
    durable.replace(folder / "authority.pem", made.authority, mode=0o600)
    durable.replace(folder / "certificate.pem", made.certificate, mode=0o600)


def _keep_news(folder: Path, news: str) -> None:
    """Keep what the sharing page has to say about a new authority; "" for nothing."""
    (folder / "news.txt").unlink(missing_ok=True)
    if news:
        durable.replace(folder / "news.txt", news.encode("utf-8"), mode=0o600)


def _news(folder: Path) -> str:
    """Return what the sharing page has to say; "" for nothing."""
    path = folder / "news.txt"
    return path.read_text(encoding="utf-8") if path.is_file() else ""


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
    # All three or none: a key without its certificate serves nothing.
    missing = [name for name in _FILES if not (folder / name).is_file()]
    if missing:
        return f"of the old one {' and '.join(missing)} is missing"
    try:
        found = tls_certificates.read((folder / "certificate.pem").read_bytes())
        tls_certificates.read((folder / "authority.pem").read_bytes())
    except (OSError, ValueError):
        return "the old one's certificate.pem or authority.pem cannot be read"
    if address not in found.addresses:
        covered = ", ".join(found.addresses)
        return f"the old one does not cover the address {address}, only {covered}"
    # Renewed some days early, so that it does not end in the middle of a visit.
    if found.ends <= moment + SPARE:
        return (
            f"the old one ends on {found.ends:%Y-%m-%d} and this computer's clock says "
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
    moment = moment or datetime.now(UTC)
    begins = tls_certificates.read(identity.certificate.read_bytes()).begins
    if moment >= begins:
        return ""
    return (
        f"This computer's clock says {moment:%Y-%m-%d}, which is before its certificate was made "
        f"({begins:%Y-%m-%d}): set the clock."
    )


def file_of(folder: Path) -> bytes:
    """Return the authority's certificate as devices fetch it.

    Parameters
    ----------
    folder : Path
        Where the identity is kept.

    Returns
    -------
    bytes
        DER.
    """
    import ssl

    return ssl.PEM_cert_to_DER_cert((folder / "authority.pem").read_text(encoding="ascii"))

"""Makes and reads the two certificates of a laptop: its authority's, and its own.

The names in them are of RFC 5280, the signatures ECDSA with SHA-256 on P-256 (RFC 5758). Both
libraries are pure Python: they sign twice when an authority is made, and the speech over https
itself is the system's.
"""

import ipaddress
import re
import secrets
import socket
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from hashlib import sha1, sha256

LIFE = timedelta(days=397)
# The usual addresses of a laptop's own hotspot (common practice, no source), so that one authority
# serves wherever the hotspot is opened.
HOTSPOTS = ("192.168.137.1", "10.42.0.1", "192.168.2.1")
PRIVATE = ("10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "127.0.0.0/8")


@dataclass(frozen=True)
class Made:
    """What was made for one address, as PEM.

    Parameters
    ----------
    certificate, key, authority : bytes
    """

    certificate: bytes
    key: bytes
    authority: bytes


@dataclass(frozen=True)
class Read:
    """What a certificate says.

    Parameters
    ----------
    addresses : list of str
        IPv4, for which it is valid.
    begins, ends : datetime
        UTC.
    fingerprint : str
        SHA-256, in pairs of digits as browsers show it for comparing by eye.
    """

    addresses: list[str]
    begins: datetime
    ends: datetime
    fingerprint: str


def make(addresses: list[str], moment: datetime) -> Made:
    """Make an authority, and a certificate that it signed.

    Parameters
    ----------
    addresses : list of str
        IPv4, the certificate's own; those of hotspots are added.
    moment : datetime
        Now.

    Returns
    -------
    Made
        Without the authority's key, which is forgotten here: it can sign nothing more.
    """
    from ecdsa import NIST256p, SigningKey

    authority_key, key = SigningKey.generate(NIST256p), SigningKey.generate(NIST256p)
    named = _name(f"Inspector on {host_name()}, {moment:%Y-%m-%d}")
    authority = _signed(
        _body(named, named, authority_key, moment, _of_authority(authority_key, addresses)),
        authority_key,
    )
    certificate = _signed(
        _body(named, _name(host_name()), key, moment, _of_laptop(authority_key, addresses)),
        authority_key,
    )
    return Made(_pem(certificate), key.to_pem(format="pkcs8"), _pem(authority))


def read(data: bytes) -> Read:
    """Read a certificate.

    Parameters
    ----------
    data : bytes
        PEM.

    Returns
    -------
    Read

    Raises
    ------
    ValueError
        Where it is none.
    """
    from asn1crypto import pem, x509

    try:
        _, _, der = pem.unarmor(data)
        found = x509.Certificate.load(der, strict=True)
        names = found.subject_alt_name_value or ()
        addresses = [name.native for name in names if name.name == "ip_address"]
        digits = found.sha256.hex().upper()
    except (TypeError, KeyError) as problem:
        raise ValueError("this is no certificate") from problem
    pairs = " ".join(digits[place : place + 2] for place in range(0, 64, 2))
    return Read(addresses, found.not_valid_before, found.not_valid_after, pairs)


def host_name() -> str:
    """Return this computer's name, as a name of the network may be."""
    return re.sub(r"[^a-z0-9]+", "-", socket.gethostname().lower()).strip("-")[:40] or "laptop"


def _of_authority(key, addresses: list[str]) -> list[dict]:
    """What the authority may do: sign for private addresses and .local names, and nothing else."""
    # An installed authority could vouch for any site: these constraints keep it to what is near.
    networks = [{"base": _general("ip_address", each)} for each in _permitted(addresses)]
    names = [{"base": _general("dns_name", name)} for name in ("local", "localhost")]
    return [
        # No authority below it: what it signs is the end.
        _extension("basic_constraints", {"ca": True, "path_len_constraint": 0}, critical=True),
        _extension("key_usage", {"key_cert_sign"}, critical=True),
        _extension("name_constraints", {"permitted_subtrees": networks + names}, critical=True),
        _extension("key_identifier", _key_identifier(key)),
    ]


def _of_laptop(authority_key, addresses: list[str]) -> list[dict]:
    """What the laptop's certificate is for: it answers under its addresses, and signs no other."""
    # By address, since phones find no name on a hotspot; the name is for those that know .local.
    own = [_general("ip_address", each) for each in dict.fromkeys((*addresses, *HOTSPOTS))]
    names = [*own, _general("dns_name", f"{host_name()}.local")]
    return [
        _extension("subject_alt_name", names),
        _extension("key_usage", {"digital_signature"}, critical=True),
        _extension("basic_constraints", {"ca": False}, critical=True),
        _extension("extended_key_usage", ["server_auth"]),
        _extension("authority_key_identifier", {"key_identifier": _key_identifier(authority_key)}),
    ]


def _permitted(addresses: list[str]) -> list[str]:
    """The private ranges, and addresses outside them (some networks have such) each alone."""
    ranges = [ipaddress.ip_network(each) for each in PRIVATE]
    own = [ipaddress.ip_network(each) for each in addresses]
    outside = [each for each in own if not any(each.subnet_of(known) for known in ranges)]
    return [str(each) for each in (*ranges, *outside)]


def _body(issuer, subject, key, moment: datetime, extensions: list[dict]):
    """What a certificate says, to be signed; it is valid from yesterday on."""
    from asn1crypto import keys, x509

    # Begun a day early, for devices whose clock is behind.
    begin, end = moment - timedelta(days=1), moment + LIFE
    return x509.TbsCertificate(
        {
            "version": "v3",
            # Positive and of 20 bytes at most (RFC 5280, section 4.1.2.2).
            "serial_number": secrets.randbits(152) | 1,
            "signature": {"algorithm": "sha256_ecdsa"},
            "issuer": issuer,
            "validity": {"not_before": _time(begin), "not_after": _time(end)},
            "subject": subject,
            "subject_public_key_info": keys.PublicKeyInfo.load(key.verifying_key.to_der()),
            "extensions": extensions,
        }
    )


def _signed(body, key) -> bytes:
    """A certificate in DER."""
    from asn1crypto import x509
    from ecdsa.util import sigencode_der

    signature = key.sign_deterministic(body.dump(), hashfunc=sha256, sigencode=sigencode_der)
    algorithm = {"algorithm": "sha256_ecdsa"}
    return x509.Certificate(
        {
            "tbs_certificate": body,
            "signature_algorithm": algorithm,
            "signature_value": signature,
        }
    ).dump()


def _pem(der: bytes) -> bytes:
    from asn1crypto import pem

    return pem.armor("CERTIFICATE", der)


def _name(common: str):
    """Return an X.509 name that has only a common name."""
    from asn1crypto import x509

    return x509.Name.build({"common_name": common})


def _time(moment: datetime):
    """A time of a certificate, as RFC 5280, section 4.1.2.5 writes it until 2049."""
    from asn1crypto import x509

    return x509.Time("utc_time", moment.astimezone(UTC).replace(microsecond=0))


def _general(kind: str, value: str):
    """A name of a certificate: an address, a range of them, or a name of the network."""
    from asn1crypto import x509

    return x509.GeneralName(kind, value)


def _extension(name: str, value, *, critical: bool = False) -> dict:
    return {"extn_id": name, "critical": critical, "extn_value": value}


def _key_identifier(key) -> bytes:
    """SHA-1 of the public key (RFC 5280, section 4.2.1.2): a name of it, and no protection."""
    return sha1(key.verifying_key.to_string("uncompressed"), usedforsecurity=False).digest()

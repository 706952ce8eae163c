"""The certificates that are made here, read by an independent library and by the system's TLS."""

import ipaddress
import ssl
from datetime import UTC, datetime, timedelta

import pytest

from inspector.sharing import authority, tls_certificates

ADDRESS = "192.168.7.7"
NOW = datetime(2026, 5, 2, 9, 14, 7, 512, tzinfo=UTC)
x509 = pytest.importorskip("cryptography.x509")


@pytest.fixture(scope="module")
def made():
    return tls_certificates.make([ADDRESS], NOW)


@pytest.fixture(scope="module")
def root(made):
    return x509.load_pem_x509_certificate(made.authority)


@pytest.fixture(scope="module")
def leaf(made):
    return x509.load_pem_x509_certificate(made.certificate)


def value(certificate, kind):
    return certificate.extensions.get_extension_for_class(kind).value


def test_the_authority_signed_both(root, leaf):
    """The signatures verify: its own, and that of the laptop's certificate."""
    root.verify_directly_issued_by(root)
    leaf.verify_directly_issued_by(root)


def test_the_authority_speaks_for_what_is_near_only(root):
    """Private ranges and .local, said in a way that must not be passed over; no authority below."""
    found = root.extensions.get_extension_for_class(x509.NameConstraints)
    basic = root.extensions.get_extension_for_class(x509.BasicConstraints)

    assert found.critical
    assert {"local", "localhost", *tls_certificates.PRIVATE} == {
        str(one.value) for one in found.value.permitted_subtrees
    }
    assert (True, True, 0) == (basic.critical, basic.value.ca, basic.value.path_length)
    assert value(root, x509.KeyUsage).key_cert_sign
    assert not value(root, x509.KeyUsage).digital_signature


def test_an_address_outside_the_private_ranges_is_permitted_alone():
    """Some networks hand such addresses out; the range around it is not this authority's."""
    made = tls_certificates.make(["203.0.113.9"], NOW)
    permitted = value(x509.load_pem_x509_certificate(made.authority), x509.NameConstraints)

    assert ipaddress.ip_network("203.0.113.9/32") in [
        one.value for one in permitted.permitted_subtrees
    ]


def test_the_laptops_certificate_is_a_servers_for_its_addresses(leaf):
    """It names its address, the usual hotspots and a .local name, signs nothing, and is made for
    servers."""
    names = value(leaf, x509.SubjectAlternativeName)
    addresses = names.get_values_for_type(x509.IPAddress)

    assert [ADDRESS, *tls_certificates.HOTSPOTS] == [str(one) for one in addresses]
    assert names.get_values_for_type(x509.DNSName)[0].endswith(".local")
    assert not value(leaf, x509.BasicConstraints).ca
    assert [x509.ExtendedKeyUsageOID.SERVER_AUTH] == list(value(leaf, x509.ExtendedKeyUsage))


def test_the_dates_are_those_that_phones_accept(root, leaf):
    """At most 825 days, as one maker of phones asks of certificates (support.apple.com/103769, no
    edition, read 2026), and begun a day early."""
    for one in (root, leaf):
        assert one.not_valid_before_utc == (NOW - timedelta(days=1)).replace(microsecond=0)
        assert (one.not_valid_after_utc - one.not_valid_before_utc).days <= 825
        assert one.serial_number.bit_length() <= 159


def test_what_is_read_is_what_the_other_library_reads(made, root, leaf):
    """Addresses, dates and fingerprint, with an independent reader."""
    from cryptography.hazmat.primitives import hashes

    read = tls_certificates.read(made.certificate)
    digits = tls_certificates.read(made.authority).fingerprint.replace(" ", "")

    assert [ADDRESS, *tls_certificates.HOTSPOTS] == read.addresses
    assert (leaf.not_valid_before_utc, leaf.not_valid_after_utc) == (read.begins, read.ends)
    assert root.fingerprint(hashes.SHA256()).hex().upper() == digits


def test_the_system_takes_key_and_certificate_together(tmp_path):
    """The system's TLS loads what is kept on disk, and the authority as one that it trusts."""
    identity = authority.identity_for(tmp_path, ADDRESS)
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)

    context.load_cert_chain(identity.certificate, identity.key)
    ssl.create_default_context(cadata=authority.file_of(tmp_path))


@pytest.mark.parametrize("data", [b"", b"x", b"-----BEGIN CERTIFICATE-----\nAAAA\n-----END"])
def test_what_is_no_certificate_is_a_value_error(data):
    """A damaged file is told from a certificate."""
    with pytest.raises(ValueError, match="."):
        tls_certificates.read(data)

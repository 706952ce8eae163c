"""A new authority means work on every device, so it is asked for, announced, and told why."""

from datetime import UTC, datetime, timedelta

import pytest

from inspector import create_app
from inspector.sharing import authority
from inspector.sharing.network.doors import Shared

ADDRESS, OTHER = "192.168.7.7", "192.168.7.8"


def test_the_first_authority_is_made_without_asking(tmp_path):
    """There is no device yet that would have to change anything."""
    made = authority.identity_for(tmp_path, ADDRESS)
    assert "" == made.news
    assert made.fingerprint == authority.identity_for(tmp_path, ADDRESS).fingerprint


def remove_key(folder):
    (folder / "key.pem").unlink()


def spoil_certificate(folder):
    (folder / "certificate.pem").write_text("no certificate")


def spoil_authority(folder):
    (folder / "authority.pem").write_bytes(b"-----BEGIN CERTIFICATE-----\nAAAA\n")


def nothing(_):
    pass


@pytest.mark.parametrize(
    ("spoil", "address", "later", "why"),
    [
        (nothing, OTHER, 0, "does not cover the address 192.168.7.8"),
        (nothing, ADDRESS, 390, "ends on "),
        (remove_key, ADDRESS, 0, "key.pem is missing"),
        (spoil_certificate, ADDRESS, 0, "cannot be read"),
        (spoil_authority, ADDRESS, 0, "cannot be read"),
    ],
    ids=["another address", "it ends", "no key", "damaged", "authority damaged"],
)
def test_an_old_one_is_replaced_only_where_that_was_agreed(tmp_path, spoil, address, later, why):
    """Refused, nothing is touched and the sentence says why and how; agreed, the news says why."""
    moment = datetime.now(UTC) + timedelta(days=later)
    authority.identity_for(tmp_path, ADDRESS)
    spoil(tmp_path)
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    with pytest.raises(authority.AuthorityKept, match="A new authority is needed") as refused:
        authority.identity_for(tmp_path, address, moment)
    assert why in str(refused.value)
    assert before == {path.name: path.read_bytes() for path in tmp_path.iterdir()}

    made = authority.identity_for(tmp_path, address, moment, agreed=True)
    assert made.news.startswith(f"New since {moment:%Y-%m-%d}")
    assert why in made.news
    # It stays news at the next start, when the new one serves.
    assert made == authority.identity_for(tmp_path, address, moment)


def test_a_clock_that_is_behind_replaces_nothing_and_is_named(tmp_path):
    """An empty battery puts a laptop into the past; devices with a right clock still trust it."""
    made = authority.identity_for(tmp_path, ADDRESS)
    past = datetime(2010, 1, 1, tzinfo=UTC)
    assert made == authority.identity_for(tmp_path, ADDRESS, past)
    assert "clock says 2010-01-01" in authority.clock_warning(made, past)
    assert "" == authority.clock_warning(made)


def test_both_pages_say_that_it_is_new_and_why(tmp_path):
    """The laptop's sharing page, and the page on which a phone learns to trust it."""
    authority.identity_for(tmp_path / "tls", ADDRESS)
    made = authority.identity_for(tmp_path / "tls", OTHER, agreed=True)
    shared = Shared(OTHER, 5731, 5732, made.fingerprint, made.news)
    app = create_app(tmp_path / "data", TESTING=True, SHARED=shared)
    page = app.test_client().get("/sharing").get_data(as_text=True)
    other = app.test_client().get("/trust", headers={"Host": f"{OTHER}:5731"})
    app.extensions["data_folder"].close()
    for text in (page, other.get_data(as_text=True)):
        assert "The authority is a new one" in text
        assert "does not cover the address 192.168.7.8" in text
        assert made.fingerprint in text

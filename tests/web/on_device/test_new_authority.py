"""A new authority means work on every device, so it is asked for, announced, and told why."""

from datetime import UTC, datetime, timedelta

import pytest

from inspector.cli import shared_server
from inspector.cli.parser import main
from inspector.sharing import authority, certificate_page
from inspector.sharing.shared_inspections import Shared

pytest.importorskip("cheroot")
pytest.importorskip("cryptography")
ADDRESS, OTHER = "192.168.7.7", "192.168.7.8"


def no(_):
    return False


def test_the_first_authority_is_made_without_asking(tmp_path):
    """There is no device yet that would have to change anything."""
    made = authority.identity_for(tmp_path, ADDRESS, agreed=no)
    assert "" == made.news
    assert made.fingerprint == authority.identity_for(tmp_path, ADDRESS, agreed=no).fingerprint


def remove_key(folder):
    (folder / "key.pem").unlink()


def spoil_certificate(folder):
    (folder / "certificate.pem").write_text("no certificate")


def nothing(_):
    pass


@pytest.mark.parametrize(
    ("spoil", "address", "later", "why"),
    [
        (nothing, OTHER, 0, "does not cover the address 192.168.7.8"),
        (nothing, ADDRESS, 390, "ends on "),
        (remove_key, ADDRESS, 0, "key.pem is missing"),
        (spoil_certificate, ADDRESS, 0, "certificate.pem cannot be read"),
    ],
    ids=["another address", "it ends", "no key", "damaged"],
)
def test_an_old_one_is_replaced_only_where_that_was_agreed(tmp_path, spoil, address, later, why):
    """Refused, nothing is touched and the sentence says why and how; agreed, the news says why."""
    moment = datetime.now(UTC) + timedelta(days=later)
    authority.identity_for(tmp_path, ADDRESS)
    spoil(tmp_path)
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    with pytest.raises(authority.AuthorityKept, match="--new-authority") as refused:
        authority.identity_for(tmp_path, address, moment, no)
    assert why in str(refused.value)
    assert before == {path.name: path.read_bytes() for path in tmp_path.iterdir()}

    asked = []
    made = authority.identity_for(
        tmp_path, address, moment, lambda reason: not asked.append(reason)
    )
    assert why in asked[0]
    assert made.news.startswith(f"New since {moment:%Y-%m-%d}")
    assert why in made.news
    # It stays news at the next start, when the new one serves.
    assert made == authority.identity_for(tmp_path, address, moment, no)


def test_a_clock_that_is_behind_replaces_nothing_and_is_named(tmp_path):
    """An empty battery puts a laptop into the past; devices with a right clock still trust it."""
    made = authority.identity_for(tmp_path, ADDRESS)
    past = datetime(2010, 1, 1, tzinfo=UTC)
    assert made == authority.identity_for(tmp_path, ADDRESS, past, no)
    assert "clock says 2010-01-01" in authority.clock_warning(made, past)
    assert "" == authority.clock_warning(made)


def test_both_pages_say_that_it_is_new_and_why(tmp_path):
    """The laptop's sharing page, and the page where a device fetches the authority."""
    from inspector import create_app

    authority.identity_for(tmp_path / "tls", ADDRESS)
    made = authority.identity_for(tmp_path / "tls", OTHER)
    shared = Shared(OTHER, 5731, "full", made.fingerprint, 5732, made.news)
    app = create_app(tmp_path / "data", TESTING=True, SHARED=shared)
    page = app.test_client().get("/sharing").get_data(as_text=True)
    app.extensions["data_folder"].close()
    fetching = certificate_page.make(made, OTHER).test_client()
    host = {"Host": f"{OTHER}:5732"}
    other_page = fetching.get("/", headers=host).get_data(as_text=True)
    for text in (page, other_page):
        assert "The authority is a new one" in text
        assert "does not cover the address 192.168.7.8" in text
    assert f"{datetime.now(UTC):%Y-%m-%d}" in other_page
    assert "image/svg+xml" == fetching.get("/here.svg", headers=host).content_type.split(";")[0]


def test_nobody_at_the_terminal_agrees_to_nothing(monkeypatch, capsys):
    """A program started by another one has nobody to ask; a person's answer counts."""
    monkeypatch.setattr("sys.stdin.isatty", lambda: False, raising=False)
    assert not shared_server._asked("it ends")
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    for answer, expected in (("y", True), ("yes", True), ("", False), ("n", False)):
        monkeypatch.setattr("builtins.input", lambda _, answer=answer: answer)
        assert expected == shared_server._asked("it ends")
    assert "Each device that trusts the old one" in capsys.readouterr().out


def test_the_option_means_nothing_without_sharing(tmp_path, capsys):
    """--new-authority alone is refused."""
    assert 1 == main(["serve", "--data", str(tmp_path), "--new-authority", "--no-browser"])
    assert "--share" in capsys.readouterr().err

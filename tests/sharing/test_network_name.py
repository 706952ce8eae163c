"""The network's name and password: the standard code, and what is kept of them."""

import pytest

from inspector.record.catalogue import Catalogue
from inspector.sharing.network_name import Network, NetworkName, NetworkRefused

SECRET = "long enough 9"


@pytest.fixture
def catalogue(tmp_path):
    return Catalogue(tmp_path / "catalogue.json")


@pytest.mark.parametrize(
    ("name", "password", "text"),
    [
        ("deck", SECRET, f"WIFI:T:WPA;S:deck;P:{SECRET};;"),
        ("deck", "", "WIFI:T:nopass;S:deck;;"),
        ('a;b,c:d"e\\f', "12345678", 'WIFI:T:WPA;S:a\\;b,c\\:d\\"e\\\\f;P:12345678;;'),
    ],
)
def test_the_code_says_what_cameras_understand(name, password, text):
    """The form that the cameras of phones read, with its signs escaped (from memory; there is no
    standard's text for it)."""
    assert text == Network(name, password).code_text


def test_the_password_is_on_disk_only_where_the_user_said_so(catalogue, tmp_path):
    """Forgotten when sharing stops; kept by the tick; taken off the disk without it."""
    network, path = NetworkName(catalogue), tmp_path / "catalogue.json"
    network.take(" deck ", SECRET, keep=False)
    assert Network("deck", SECRET) == network.now()
    assert SECRET not in path.read_text()
    network.forget_what_is_not_kept()
    assert network.now() is None

    network.take("deck", SECRET, keep=True)
    network.forget_what_is_not_kept()
    assert Network("deck", SECRET) == NetworkName(catalogue).now()
    assert network.is_kept

    network.take("deck", SECRET, keep=False)
    assert SECRET not in path.read_text()
    assert not network.is_kept


@pytest.mark.parametrize(
    ("name", "password", "sentence"),
    [
        ("", SECRET, "1 to 32 letters"),
        ("x" * 33, SECRET, "1 to 32 letters"),
        ("é" * 17, SECRET, "1 to 32 letters"),
        ("deck\n", "short", "8 to 64 characters, and this one has 5"),
        ("deck", "x" * 65, "8 to 64 characters"),
        ("deck", "12345678\x07", "one line"),
    ],
)
def test_what_no_network_can_have_is_refused_in_a_sentence(catalogue, name, password, sentence):
    """No phone is sent after a network that cannot be; nothing of it is kept."""
    network = NetworkName(catalogue)
    with pytest.raises(NetworkRefused, match=sentence):
        network.take(name, password, keep=True)

    assert network.now() is None

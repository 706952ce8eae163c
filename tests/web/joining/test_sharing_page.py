"""The laptop's pages of sharing: the button, the question, the codes, stop; without a network."""

import re

import pytest

from inspector.sharing import addresses
from inspector.sharing.addresses import Address
from inspector.sharing.network.doors import Shared
from inspector.sharing.network.ports import NoPort

HOTSPOT, HOTEL = Address("10.42.0.1", "wlan0"), Address("192.168.3.7", "eth0")
NETWORK = {"name": "deck", "password": "long enough"}


class NoDoors:
    """Opens nothing, and says what it was asked."""

    def __init__(self):
        self.asked = []
        self.fault = None

    def open(self, address):
        self.asked.append(address)
        if self.fault:
            raise self.fault
        return Shared(address, 5731, no_https="A new authority is needed: it ends.", needs_new=True)

    def open_secure(self, shared, *, agreed):
        self.asked.append(("https", agreed))
        return Shared(shared.address, shared.port, 5732, "AA BB")

    def shut(self):
        self.asked.append("shut")


@pytest.fixture
def doors(app, monkeypatch):
    """What the application would open, in place of the network."""
    found = NoDoors()
    app.extensions["sharing"]._doors = found
    own(monkeypatch, HOTSPOT)
    return found


def own(monkeypatch, *found):
    """These are the addresses of this computer."""
    monkeypatch.setattr(addresses, "own_addresses", lambda: list(found))


def text_of(answer):
    return " ".join(answer.get_data(as_text=True).split())


def test_with_one_network_and_one_inspection_nothing_is_asked(client, doors, begun, app):
    """The button leads straight to the codes, and the inspection is shared."""
    answer = client.post("/sharing/start")

    assert "/sharing/network" == answer.headers["Location"]
    assert ["shut", "10.42.0.1"] == doors.asked
    assert [begun] == list(app.extensions["sharing"].inspections())
    assert ["localhost", "127.0.0.1", "[::1]", "10.42.0.1"] == app.config["TRUSTED_HOSTS"]
    client.post("/sharing/start")
    assert ["shut", "10.42.0.1"] == doors.asked


def test_several_networks_are_asked_about_in_words_the_last_one_first(client, doors, monkeypatch):
    """Each with what it is; what was chosen last is ticked. Nothing is opened before."""
    own(monkeypatch, HOTSPOT, HOTEL)
    page = text_of(client.post("/sharing/start"))
    assert [] == doors.asked
    assert "this computer&#39;s own hotspot (wlan0) <small>10.42.0.1</small>" in page
    assert "a network cable (eth0) <small>192.168.3.7</small>" in page
    client.post("/sharing/start", data={"address": "192.168.3.7"})
    client.post("/sharing/stop")
    page = text_of(client.post("/sharing/start"))

    assert ["shut", "192.168.3.7", "shut"] == doors.asked
    assert 'value="192.168.3.7" checked' in page
    assert "192.168.3.7, as last time" in page


@pytest.mark.parametrize(
    ("found", "asked", "sentence"),
    [
        ((), "", "on no network that a phone could be on"),
        ((HOTSPOT,), "10.9.9.9", "is not an address of this computer"),
    ],
)
def test_where_there_is_no_network_one_sentence_says_what_to_do(
    client, doors, monkeypatch, found, asked, sentence
):
    """Nothing is opened."""
    own(monkeypatch, *found)
    answer = client.post("/sharing/start", data={"address": asked})

    assert 400 == answer.status_code
    assert sentence in text_of(answer)
    assert [] == doors.asked


def test_a_taken_port_leaves_nothing_shared(client, doors, app):
    """The sentence of the port, and the button once more."""
    doors.fault = NoPort("Port 5731 cannot be had.")

    assert "Port 5731 cannot be had." in text_of(client.post("/sharing/start"))
    assert app.extensions["sharing"].shared is None


def test_of_several_inspections_one_is_chosen_by_a_tap(client, doors, begun):
    """Which vessel is asked once, then the codes come; another one may be shared beside it."""
    client.post("/inspections", data={"go": "walk"})
    assert "/sharing" == client.post("/sharing/start").headers["Location"]
    assert "Which vessel do the phones walk?" in text_of(client.get("/sharing"))
    answer = client.post("/sharing/inspection", data={"id": begun, "do": "share"})

    assert "/sharing/network" == answer.headers["Location"]
    assert "Which vessel" not in text_of(client.get("/sharing"))
    assert f"<h3>Vessel without a name yet, begun {begun[:10]}" in text_of(client.get("/sharing"))


def test_the_network_is_typed_shown_and_forgotten(client, doors, begun, tmp_path):
    """Its code stands alone; without the tick nothing of it is on disk, and stopping forgets it."""
    client.post("/sharing/start")
    page = text_of(client.post("/sharing/network", data=NETWORK))
    assert 1 == page.count("<svg")
    assert "code 1 of 2" in page
    assert NETWORK["password"] not in page
    assert NETWORK["password"] in text_of(client.get("/sharing/network"))
    assert NETWORK["password"] not in (tmp_path / "data" / "catalogue.json").read_text()
    client.post("/sharing/stop")
    client.post("/sharing/start")
    assert NETWORK["password"] not in text_of(client.get("/sharing/network"))
    client.post("/sharing/network", data={**NETWORK, "keep": "yes"})

    assert NETWORK["password"] in (tmp_path / "data" / "catalogue.json").read_text()


def test_a_password_that_cannot_be_comes_back_with_a_sentence(client, doors, begun):
    """What was typed of the name stays."""
    client.post("/sharing/start")
    answer = client.post("/sharing/network", data={"name": "deck", "password": "short"})

    assert 400 == answer.status_code
    assert "8 to 64 characters" in text_of(answer)
    assert 'value="deck"' in text_of(answer)


def test_the_code_to_join_says_the_next_name_and_no_log_sees_it(client, doors, begun):
    """One drawing, the letters, and the vessel; the way by hand leads to the same address."""
    client.post("/sharing/start")
    page = text_of(client.post("/sharing/code"))

    assert 1 == page.count("<svg")
    assert "code 2 of 2" in page
    assert re.search(r"<code>[a-z2-9]{4}-[a-z2-9]{4}-[a-z2-9]{4}</code>", page)
    assert "10.42.0.1:5731/join" in page


def test_a_new_authority_is_made_once_the_button_says_so(client, doors, begun, app):
    """Sharing works without https meanwhile; agreed, the page shows the new fingerprint."""
    client.post("/sharing/start")
    page = text_of(client.get("/sharing"))
    assert "Not possible now: A new authority is needed: it ends." in page
    client.post("/sharing/authority")

    assert ("https", True) == doors.asked[-1]
    assert "AA BB" in text_of(client.get("/sharing"))


def test_stop_shuts_ends_the_code_and_takes_the_address_back(client, doors, begun, app):
    """Afterwards only this computer's own names are answered."""
    client.post("/sharing/start")
    client.post("/sharing/code")
    client.post("/sharing/stop")

    assert "shut" == doors.asked[-1]
    assert 0 == app.extensions["sharing"].pairing.seconds_left()
    assert ["localhost", "127.0.0.1", "[::1]"] == app.config["TRUSTED_HOSTS"]
    assert 400 == client.get("/", headers={"Host": "10.42.0.1:5731"}).status_code
    assert "Nothing is shared now" in text_of(client.post("/sharing/code"))


def test_the_addresses_of_the_forms_lead_back_to_their_page(client):
    """A reload or the back button of the browser meets no error."""
    for path in ("start", "stop", "authority", "code", "inspection", "device/x"):
        assert "/sharing" == client.get(f"/sharing/{path}").headers["Location"]

"""The laptop's list of phones: what each says of itself, checked, kept, and told in sentences."""

import pytest

from inspector.record.catalogue import Catalogue
from inspector.sharing.devices import Devices
from inspector.web.joining import phones

NOW = 1_780_000_000.0
SAID = {
    "answers": 3,
    "photos": 1,
    "refused": 0,
    "since": "2026-05-28T20:00:00.000Z",
    "ready": "not ready",
    "lines": [["clock", "ready with a caution", "Set it."]],
    "judges": True,
    "round": False,
}


def say(device, inspection, **more):
    """What the walk page of a device tells the laptop."""
    return device.ask("POST", f"/exchange/{inspection}/device", json={**SAID, **more})


@pytest.mark.parametrize(
    ("more", "sentence"),
    [
        ({}, "Still holds 3 answers and 1 photo, the oldest from 26 minutes ago."),
        ({"answers": 1, "photos": 0, "since": ""}, "Still holds 1 answer."),
        ({"answers": 0, "photos": 0}, "Holds nothing that is not here."),
        (
            {"answers": 0, "photos": 0, "refused": 2},
            "Holds nothing that is not here; 2 entries refused here and kept there.",
        ),
    ],
)
def test_what_is_on_a_phone_only_is_one_sentence(more, sentence):
    """Counted, with the age of the oldest."""
    assert sentence == phones.held(phones.read({**SAID, **more}), NOW)


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(5, "just now"), (60, "1 minute ago"), (7_300, "2 hours ago"), (180_000, "2 days ago")],
)
def test_how_long_ago_is_said_in_words(seconds, words):
    """In the largest unit that is whole."""
    assert words == phones.ago(seconds)


@pytest.mark.parametrize(
    "body",
    [None, [], {}, {**SAID, "answers": -1}, {**SAID, "photos": "3"}, {**SAID, "refused": True}],
)
def test_what_is_no_count_is_refused(body):
    """A sentence, and nothing kept."""
    with pytest.raises(phones.NotSaid):
        phones.read(body)


def test_what_else_cannot_be_read_is_left_out():
    """Unknown states, times without a zone, lines that are none: nothing; texts are bounded."""
    long = ["x" * 999, "y", "z"]
    read = phones.read({**SAID, "ready": "sure", "since": "soon", "lines": [1, ["a"], long]})

    assert ("", "") == (read["ready"], read["since"])
    assert [[phones.LONGEST, 1, 1]] == [[len(text) for text in row] for row in read["lines"]]


def test_the_laptop_lists_what_a_phone_said(tablet, laptop, shared_id):
    """Holdings, state, next steps, judgement and round, on the page and in the part that its
    script asks for; the first page counts it."""
    assert 200 == say(tablet, shared_id).status_code
    for text in (laptop.get("/sharing").get_data(as_text=True), laptop.get("/sharing/now").json):
        page = text if isinstance(text, str) else text["phones"]
        assert "Still holds 3 answers and 1 photo" in page
        assert "<b>not ready</b>" in page
        assert "Set it." in page
        assert "Readings are judged on it; no round is on it." in " ".join(page.split())
    assert "1 of them still holding something" in laptop.get("/").get_data(as_text=True)


def test_what_a_phone_says_is_shown_as_text(tablet, laptop, shared_id):
    """A device cannot bring markup onto the laptop's page."""
    say(tablet, shared_id, lines=[["<b>x</b>", "<img src=x>", "<script>alert(1)</script>"]])

    assert "<script>alert" not in laptop.get("/sharing/now").json["phones"]
    assert "&lt;script&gt;" in laptop.get("/sharing/now").json["phones"]


def test_only_a_device_that_is_let_in_says_something(tablet, new_device, laptop, shared_id):
    """Not a stranger, not by the cookie alone, not of an inspection that is not shared."""
    other = laptop.post("/inspections", data={"go": "walk"}).headers["Location"].split("/")[2]

    assert 401 == say(new_device(), shared_id).status_code
    path = f"/exchange/{shared_id}/device"
    assert 401 == tablet.ask("POST", path, token=False, json=SAID).status_code
    assert 403 == say(tablet, other).status_code


def test_what_was_said_is_still_known_after_a_start(tmp_path):
    """The laptop that was started again lists what a phone held when it spoke last; what is said
    every few seconds costs no write each time."""
    clock = [1_000.0]
    path = tmp_path / "catalogue.json"
    devices = Devices(Catalogue(path), lambda: clock[0])
    _, document = devices.let_in("one")
    said = phones.read(SAID)
    devices.hear(document["id"], "visit", said)
    before = path.stat().st_mtime_ns
    clock[0] += 20
    devices.hear(document["id"], "visit", said)
    assert before == path.stat().st_mtime_ns

    again = Devices(Catalogue(path), lambda: clock[0]).all()[0]["said"]["visit"]
    assert said.items() <= again.items()


def test_a_phone_that_moves_to_https_is_the_same_line(shared_app, tablet, laptop, shared_id):
    """Its code is good once and for its name alone; its old pass ends with it, what it recorded
    under its old name may still arrive, and the page of before says where it goes on."""
    from dataclasses import replace

    sharing = shared_app.extensions["sharing"]
    assert 400 == tablet.ask("POST", "/join/move").status_code
    sharing.shared = replace(sharing.shared, secure_port=5732)
    address = tablet.ask("POST", "/join/move").json["address"]
    code = address.partition("#move")[2]
    first = tablet.id
    token, new = sharing.devices.let_in("ignored", moves=sharing.pairing.use(code), secure=True)

    assert f"{sharing.shared.secure_origin}/join" == address.partition("#")[0]
    assert ["tablet of QX"] == [row["name"] for row in sharing.devices.all()]
    assert new["id"] != first
    assert first in sharing.devices.names_of(new["id"], [])
    refused = tablet.ask("GET", "/", token=False)
    assert 401 == refused.status_code
    assert "goes on at https://192.168.137.1:5732/" in refused.get_data(as_text=True)
    assert new["id"] == sharing.devices.of_token(token)["id"]


def test_a_phone_that_was_ended_cannot_move(shared_app, tablet, new_device, shared_id):
    """The code that it got before is worth nothing once it is let in no longer."""
    sharing = shared_app.extensions["sharing"]
    code = sharing.pairing.code_to_move(tablet.id)
    sharing.devices.revoke(tablet.id)

    assert 403 == new_device().join(code).status_code

"""Sharing over HTTP: what a device reaches before, while and after it is let in."""

import hashlib
import io
import re

import pytest
from PIL import Image


def entry(device, number, **more):
    return {
        "id": f"{device}:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": device,
        "who": "QX",
        "subject": "sheet/hull/shell-and-sea-chests/anodes",
        "field": "note",
        "value": "grey",
        "replaces": [],
        **more,
    }


def a_photo(colour="teal", size=(90, 60)):
    out = io.BytesIO()
    Image.new("RGB", size, colour).save(out, "JPEG")
    return out.getvalue()


def sha_of(data):
    return hashlib.sha256(data).hexdigest()


def hand_over(device, one, entries):
    return device.ask(
        "POST", f"/exchange/{one}/entries", json={"device": device.id, "entries": entries}
    )


def test_the_sharing_page_draws_the_code_and_shows_it_in_letters(laptop, shared_id):
    """The laptop makes a code: a drawing to scan, the letters beside it.

    The plain page does not repeat it.
    """
    page = laptop.post("/sharing/code").get_data(as_text=True)
    letters = re.search(r"\b[a-z2-9]{4}-[a-z2-9]{4}-[a-z2-9]{4}\b", page).group()

    assert "<svg" in page
    assert letters not in laptop.get("/sharing").get_data(as_text=True)


@pytest.mark.parametrize(
    "path",
    [
        "/sharing",
        "/",
        "/inspection/{id}/walk",
        "/inspection/{id}/prepare",
        "/inspection/{id}/report.pdf",
        "/import",
        "/brief/new",
    ],
)
def test_without_a_pass_only_the_join_page_is_there(new_device, shared_id, path):
    """A stranger on the network sees a refusal for every page but the join page."""
    stranger = new_device()

    assert stranger.ask("GET", path.format(id=shared_id)).status_code in (401, 403)
    assert 200 == stranger.ask("GET", "/join").status_code


@pytest.mark.parametrize(
    ("method", "path"),
    [
        ("GET", "/session"),
        ("GET", "/exchange/{id}/entries"),
        ("POST", "/exchange/{id}/entries"),
        ("PUT", "/exchange/{id}/photo/" + "0" * 64),
        ("GET", "/exchange/{id}/photo/" + "0" * 64),
    ],
)
def test_without_a_pass_the_exchange_answers_401_in_json(new_device, shared_id, method, path):
    """The walk's scripts get a status and a sentence that they can show."""
    answer = new_device().ask(method, path.format(id=shared_id))

    assert 401 == answer.status_code
    assert "not let in" in answer.json["error"]


def test_a_device_that_joined_walks(tablet, shared_id):
    """List, walk, entries, photos.

    What a walk needs, by cookie for pages and by token for the exchange.
    """
    photo = a_photo()
    assert shared_id in tablet.ask("GET", "/", token=False).get_data(as_text=True)
    assert 200 == tablet.ask("GET", f"/inspection/{shared_id}/walk", token=False).status_code
    assert {f"{tablet.id}:1": "stored"} == hand_over(tablet, shared_id, [entry(tablet.id, 1)]).json[
        "fates"
    ]
    assert (
        200
        == tablet.ask("PUT", f"/exchange/{shared_id}/photo/{sha_of(photo)}", data=photo).status_code
    )
    shown = tablet.ask("GET", f"/inspection/{shared_id}/photo/{sha_of(photo)}/thumb", token=False)
    assert 200 == shown.status_code
    shown.close()
    session = tablet.ask("GET", "/session").json
    assert ("", True) == (session["csrf"], session["now"].endswith("Z"))


@pytest.mark.parametrize(
    ("method", "path"),
    [
        ("POST", "/inspections"),
        ("POST", "/surveyors"),
        ("POST", "/inspection/{id}/edit/vessel"),
        ("GET", "/inspection/{id}/prepare"),
        ("GET", "/sharing"),
        ("POST", "/sharing/code"),
        ("POST", "/sharing/device/x"),
        ("POST", "/import"),
        ("GET", "/inspection/{id}/bundle.zip"),
        ("GET", "/inspection/{id}/decide"),
    ],
)
def test_a_device_reaches_nothing_but_the_walk(tablet, shared_id, method, path):
    """Preparing, deciding, sharing and bundles are the laptop's own, whatever pass is shown."""
    assert 403 == tablet.ask(method, path.format(id=shared_id)).status_code


def test_a_cookie_alone_writes_nothing(tablet, shared_id):
    """The cookie only loads pages.

    Entries and photos need the token, so another site's page could not write with the cookie.
    """
    assert (
        401
        == tablet.ask(
            "POST", f"/exchange/{shared_id}/entries", token=False, json={"entries": []}
        ).status_code
    )


def test_an_inspection_that_is_not_shared_is_out_of_reach(tablet, laptop):
    """A device reaches only what was shared with it."""
    other = laptop.post("/inspections", data={"go": "walk"}).headers["Location"].split("/")[2]

    assert 403 == tablet.ask("GET", f"/inspection/{other}/walk").status_code
    assert 403 == tablet.ask("GET", f"/exchange/{other}/entries").status_code
    assert other not in tablet.ask("GET", "/").get_data(as_text=True)


def test_a_revoked_device_is_out_at_once(tablet, laptop, shared_id):
    """Neither its token nor its cookie lets it in any more; what it handed over stays."""
    hand_over(tablet, shared_id, [entry(tablet.id, 1)])
    laptop.post(f"/sharing/device/{tablet.id}", data={"do": "revoke"})

    assert 401 == tablet.ask("GET", f"/exchange/{shared_id}/entries").status_code
    assert 401 == tablet.ask("GET", f"/inspection/{shared_id}/walk", token=False).status_code
    assert f"{tablet.id}:1" in [
        one["id"] for one in laptop.get(f"/exchange/{shared_id}/entries").json["entries"]
    ]


def test_a_device_writes_in_its_own_name_only(tablet, shared_id, laptop):
    """New entries of others are refused with a sentence; those that are known pass as known.

    The refusal is kept and reported.
    """
    known = laptop.get(f"/exchange/{shared_id}/entries").json["entries"][0]
    fates = hand_over(tablet, shared_id, [entry("other", 1), known, entry(tablet.id, 1)]).json[
        "fates"
    ]

    assert fates["other:1"].startswith("refused: other:1 is an entry of other")
    assert "already had" == fates[known["id"]]
    assert "stored" == fates[f"{tablet.id}:1"]


def test_holes_are_told_on_both_ways(tablet, shared_id):
    """A reply names, for each device, how far everything is here and what is missing."""
    reply = hand_over(tablet, shared_id, [entry(tablet.id, 1), entry(tablet.id, 4)]).json
    read = tablet.ask("GET", f"/exchange/{shared_id}/entries").json

    assert 1 == reply["held"][tablet.id] == read["held"][tablet.id]
    assert [2, 3] == reply["missing"][tablet.id] == read["missing"][tablet.id]


def test_a_used_guessed_or_missing_code_lets_nobody_in(new_device, code, tablet):
    """A code that was used, and five guesses: refused with sentences.

    Then even the right one has to wait.
    """
    live = code()
    assert [403] * 5 == [
        new_device(f"192.168.137.{number}").join("aaaa-bbbb-cccc").status_code
        for number in range(60, 65)
    ]
    locked = new_device().join(live)

    assert 429 == locked.status_code
    assert int(locked.headers["Retry-After"]) > 0
    assert "wait" in locked.json["error"]


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"[]",
        b"{}",
        b'{"code": 1, "name": "x"}',
        b'{"code": "x", "name": ""}',
        b'{"code": "x", "name": "a\\u0007"}',
        b'{"code": "x", "code": "y", "name": "n"}',
        b"[" * 4000,
        b"\xff",
    ],
)
def test_a_join_that_is_none_costs_no_try(new_device, shared_app, body):
    """A body that asks for nothing gets a sentence and is not counted as a guess."""
    answer = new_device().ask("POST", "/join", data=body, content_type="application/json")

    assert 400 == answer.status_code
    assert answer.json["error"].endswith(".")
    assert 0 == shared_app.extensions["sharing"].pairing._wrong


def test_the_cookie_of_the_pass_is_for_this_site_only(new_device, code, shared_id):
    """HttpOnly, SameSite=Strict."""
    cookie = new_device().join(code()).headers["Set-Cookie"]

    assert "HttpOnly" in cookie
    assert "SameSite=Strict" in cookie


def test_a_false_name_from_the_network_is_not_this_computer(new_device, shared_id):
    """Whoever says "localhost" from another address is neither the laptop nor let in."""
    assert 400 == new_device().ask("GET", "/", host="localhost:5731").status_code
    assert 400 == new_device().ask("GET", "/", host="rebound.example").status_code


def test_the_shared_name_from_this_computer_is_not_the_laptop_either(new_device, shared_id):
    """The laptop's rights belong to its loopback names.

    Under the shared name it is a device like any other.
    """
    assert 401 == new_device("127.0.0.1").ask("GET", "/").status_code


def test_a_copy_comes_before_its_original_and_stands_in_for_it(tablet, laptop, shared_id):
    """The copy is shown until the original is here; each says what is there.

    Both may be handed over again.
    """
    original, small = a_photo("navy", (3000, 200)), a_photo("teal", (300, 200))
    sha, path = sha_of(original), f"/exchange/{shared_id}/photo/{sha_of(original)}"
    assert {"original": False, "copy": False} == tablet.ask("GET", path).json
    digest = {"X-Digest": f"sha256={sha_of(small)}"}
    for _ in range(2):
        assert (200, "copy") == (
            (
                answer := tablet.ask("PUT", f"{path}?size=copy", data=small, headers=digest)
            ).status_code,
            answer.json["size"],
        )
    assert {"original": False, "copy": True} == tablet.ask("GET", path).json
    assert (300, 200) == shown_size(laptop, shared_id, sha)
    assert (
        200
        == tablet.ask("PUT", path, data=original, headers={"X-Digest": f"sha256={sha}"}).status_code
    )

    assert {"original": True, "copy": True} == tablet.ask("GET", path).json
    assert (3000, 200) == shown_size(laptop, shared_id, sha)


def shown_size(laptop, one, sha):
    answer = laptop.get(f"/inspection/{one}/photo/{sha}/copy")
    with Image.open(io.BytesIO(answer.data)) as picture:
        answer.close()
        return picture.size


@pytest.mark.parametrize(
    ("size", "data", "digest"),
    [
        ("copy", a_photo(), ""),
        ("copy", a_photo(), "0" * 64),
        ("copy", b"GIF89a", None),
        ("copy", a_photo()[:-40], None),
        ("original", a_photo(), "0" * 64),
        ("other", a_photo(), None),
    ],
)
def test_a_photo_that_is_altered_or_none_is_refused(tablet, shared_id, size, data, digest):
    """A copy without its digest, a wrong digest, a body that is no whole picture.

    Refused with a sentence, nothing kept.
    """
    headers = (
        {"X-Digest": f"sha256={sha_of(data) if digest is None else digest}"} if digest != "" else {}
    )
    sha = "1" * 64 if size == "copy" else sha_of(data)
    answer = tablet.ask(
        "PUT", f"/exchange/{shared_id}/photo/{sha}?size={size}", data=data, headers=headers
    )

    assert 400 == answer.status_code
    assert answer.json["error"]
    assert {"original": False, "copy": False} == tablet.ask(
        "GET", f"/exchange/{shared_id}/photo/{sha}"
    ).json


def test_every_answer_says_which_version_it_is_of(tablet, laptop, new_device):
    """Pages, refusals and the exchange alike."""
    answers = [
        laptop.get("/"),
        tablet.ask("GET", "/session"),
        new_device().ask("GET", "/"),
        laptop.get("/nowhere"),
    ]

    assert all(answer.headers["X-Inspector"] for answer in answers)


def test_the_laptop_shares_and_ends_sharing_on_its_page(laptop, shared_id, tablet):
    """Ending the sharing of an inspection takes it from the devices, and it can be shared again."""
    laptop.post("/sharing/inspection", data={"id": shared_id, "do": "end"})
    assert 403 == tablet.ask("GET", f"/inspection/{shared_id}/walk").status_code
    laptop.post("/sharing/inspection", data={"id": shared_id, "do": "share"})

    assert 200 == tablet.ask("GET", f"/inspection/{shared_id}/walk").status_code


def test_without_sharing_there_is_neither_code_nor_joining(client, begun):
    """An instance that only serves this computer lets nobody join, and has the button for it."""
    assert 400 == client.post("/sharing/code").status_code
    assert 'action="/sharing/start"' in client.get("/sharing").get_data(as_text=True)
    assert 'action="/sharing/start"' in client.get("/").get_data(as_text=True)
    assert 404 == client.post("/join", json={"code": "x", "name": "y"}).status_code
    assert 400 == client.get("/sharing/network").status_code
    assert 404 == client.get("/authority.crt").status_code

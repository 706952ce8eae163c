"""The one-time code and the devices' passes: what lets in, and what never does."""

import hashlib
import json

import pytest

from inspector.record.catalogue import Catalogue
from inspector.sharing.devices import LIFE as PASS_LIFE
from inspector.sharing.devices import MOST, Devices, NoMoreDevices
from inspector.sharing.pairing import LIFE, MOST_WRONG, CodeRefused, Pairing


class Clock:
    """A clock that the test turns."""

    now = 1000.0

    def __call__(self):
        return self.now


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def pairing(clock):
    return Pairing(clock)


@pytest.fixture
def devices(tmp_path, clock):
    return Devices(Catalogue(tmp_path / "catalogue.json"), clock)


def refused(pairing, code):
    with pytest.raises(CodeRefused) as caught:
        pairing.use(code)
    return caught.value


def test_a_code_lets_in_once(pairing):
    """The code works the first time, however it is typed, and never again."""
    code = pairing.new_code()
    pairing.use(" " + code.upper().replace("-", "  "))

    assert 403 == refused(pairing, code).status


def test_a_code_ends_after_ten_minutes_and_with_the_next_one(pairing, clock):
    """A code that is too old, or that another one followed, lets nobody in."""
    first = pairing.new_code()
    second = pairing.new_code()
    assert 403 == refused(pairing, first).status
    clock.now += LIFE

    assert 403 == refused(pairing, second).status


def test_five_wrong_tries_lock_even_the_right_code_for_a_while(pairing, clock):
    """While tries are locked nothing is looked at; after the wait the right code works."""
    code = pairing.new_code()
    for _ in range(5):
        assert 403 == refused(pairing, "wrong").status
    locked = refused(pairing, code)
    assert (429, True) == (locked.status, 0 < locked.wait <= 61)
    clock.now += locked.wait

    pairing.use(code)


def test_each_lock_lasts_longer_and_twenty_wrong_tries_end_the_code(pairing, clock):
    """Who goes on guessing waits twice as long each time; no code outlives twenty wrong tries."""
    code, waits = pairing.new_code(), []
    for number in range(MOST_WRONG):
        refused(pairing, f"wrong{number}")
        if (number + 1) % 5 == 0:
            waits.append(refused(pairing, "locked").wait)
            clock.now += waits[-1]

    assert sorted(waits) == waits
    assert waits[-1] > 4 * waits[0]
    assert 403 == refused(pairing, code).status


def test_without_a_code_nothing_lets_in(pairing):
    """No code was made: neither nothing nor anything is one."""
    assert [403, 403] == [refused(pairing, "").status, refused(pairing, "----").status]


def test_only_a_digest_of_the_token_is_kept(devices, tmp_path):
    """The catalogue knows the SHA-256 of a token, never the token."""
    token, document = devices.let_in("Tablet of QX")
    kept = (tmp_path / "catalogue.json").read_text()

    assert token not in kept
    assert hashlib.sha256(token.encode()).hexdigest() in kept
    assert document["id"] == devices.of_token(token)["id"]


def test_a_revoked_or_expired_pass_lets_in_no_more(devices, clock, tmp_path):
    """Revoked is at once, expired is after thirty days, and both hold after a restart."""
    token, document = devices.let_in("one")
    late, _ = devices.let_in("two")
    devices.revoke(document["id"])
    assert devices.of_token(token) is None
    assert devices.of_id(document["id"]) is None
    clock.now += PASS_LIFE + 1

    assert devices.of_token(late) is None
    assert Devices(Catalogue(tmp_path / "catalogue.json"), clock).of_token(token) is None


def test_the_same_browser_stays_the_same_device(devices):
    """With its earlier pass a device keeps its name in the journal, even after it was revoked.

    The old token is worth nothing.
    """
    token, first = devices.let_in("one")
    devices.revoke(first["id"])
    fresh, again = devices.let_in("one", (first["id"], token))

    assert first["id"] == again["id"]
    assert devices.of_token(token) is None
    assert first["id"] == devices.of_token(fresh)["id"]


def test_a_false_earlier_pass_makes_another_device(devices):
    """Who only knows a device's id does not become it."""
    _, first = devices.let_in("one")
    _, other = devices.let_in("one", (first["id"], "guess"))

    assert first["id"] != other["id"]


def test_devices_are_bounded(devices):
    """No more devices than the list can show."""
    for number in range(MOST):
        devices._keep(
            {
                "id": f"d-{number}",
                "name": "x",
                "token_sha256": "",
                "since": 0,
                "seen": 0,
                "revoked": False,
            }
        )
    with pytest.raises(NoMoreDevices, match="take out"):
        devices.let_in("one more")


def test_a_device_seen_often_costs_few_writes(devices, clock, tmp_path):
    """ "Last seen" is written now and then only, yet shown to the second."""
    token, _ = devices.let_in("one")
    before = (tmp_path / "catalogue.json").stat().st_mtime_ns
    clock.now += 10
    devices.of_token(token)

    assert before == (tmp_path / "catalogue.json").stat().st_mtime_ns
    assert clock.now == devices.all()[0]["seen"]
    assert "token_sha256" not in json.dumps(devices.all())

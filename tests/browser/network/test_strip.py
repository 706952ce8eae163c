"""The strip at the top of the walk is true at every moment, whatever the computer or the link does;
nothing that waits is lost meanwhile."""

import errno

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.record import durable
from inspector.web import exchange
from inspector.web.on_device import offline
from tests import a_walk
from tests.a_faulty_door import door_before
from tests.a_server import serving


@pytest.fixture
def door(tmp_path):
    """A door before a real server; the application is `door.app`."""
    app = create_app(tmp_path / "data", TESTING=True)
    with serving(app) as port, door_before(port) as one:
        one.app, one.address = app, f"http://127.0.0.1:{one.port}"
        yield one


@pytest.fixture
def walk(phone, door):
    """A walk on the first sheet of the hull, with everything handed over."""
    phone.inspection = a_walk.begin(phone, door.address)
    a_walk.sheet(phone)
    rate(phone, 0)
    a_walk.handed_over(phone)
    return phone


def rate(page, number):
    button = a_walk.plain_cards(page).nth(number).locator("[data-rate=fair]")
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")


def nudge(page):
    page.evaluate("() => window.dispatchEvent(new Event('online'))")


def there(door, page):
    """How many ratings the computer has."""
    record = door.app.extensions["data_folder"].inspections.get(page.inspection)
    return sum(entry.field == "rating" for entry in record.entries)


# The fault, the addresses that it meets, and the sentence that is true of it.
FAULTS = [
    ("cut", "/", "no contact with "),
    ("silence", "/exchange/", "no answer from "),
    ("half", "/exchange/", " broke off half way"),
    ("garbage", "/exchange/", " sent an answer that cannot be read"),
    ("sign-in page", "/", "something else answers in place of "),
    ("page 502", "/exchange/", "error 502 came in place of an answer from "),
    ("page 500", "/exchange/", "error 500 came in place of an answer from "),
    ("own 500", "/exchange/", " has a fault of its own (500)"),
    ("own 503", "/exchange/", " is busy with other photos; this goes on by itself"),
    ("own 507", "/exchange/", " takes nothing more; free some space there"),
    ("own 401", "/exchange/", "this device is not let in any more; pair it again"),
    ("own 403", "/exchange/", "A sentence of the computer."),
]
SENTENCES = [sentence for _, _, sentence in FAULTS if sentence != "no contact with "]


@pytest.mark.parametrize(("fault", "only", "sentence"), FAULTS, ids=[one[0] for one in FAULTS])
def test_each_fault_has_its_own_true_sentence_and_ends_with_it(walk, door, fault, only, sentence):
    """The strip names this fault and no other one, keeps count of what waits, and is free of it
    as soon as everything is handed over."""
    door.fails(fault, only)
    rate(walk, 1)
    strip = walk.locator("#strip")

    expect(strip).to_contain_text(sentence, timeout=30_000)
    said = strip.inner_text()
    # An answer that broke off may be of entries that were taken: only the computer's word counts.
    assert "1 to hand over" in said
    assert [] == [each for each in SENTENCES if each != sentence and each in said]
    if fault != "cut":
        assert "no contact" not in said
    assert "wrong" in strip.get_attribute("class")

    door.fails("")
    nudge(walk)
    a_walk.handed_over(walk)
    assert sentence not in strip.inner_text()
    assert "wrong" not in strip.get_attribute("class")
    assert there(door, walk) == 2


def test_a_full_disk_of_the_computer_is_named_as_that(walk, door, monkeypatch):
    """The real refusal of a disk that takes nothing more; with room again everything arrives."""

    def full(*_):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(durable, "_write_all", full)
    rate(walk, 1)
    expect(walk.locator("#strip")).to_contain_text("takes nothing more; free some space there")
    expect(walk.locator("#strip")).to_contain_text("1 to hand over")
    monkeypatch.undo()
    nudge(walk)
    a_walk.handed_over(walk)
    assert there(door, walk) == 2


def test_a_long_hand_over_that_succeeds_never_looks_like_distance(walk, door, tmp_path):
    """After a time without contact every photo takes long: from the first answer on the strip says
    that it is being handed over, and never "no contact"."""
    door.fails("cut", "/")
    rate(walk, 1)
    card = a_walk.unfold(a_walk.plain_cards(walk).first)
    card.locator("[data-act=photo]").click()
    pictures = list(a_walk.pictures(tmp_path, 3).values())
    card.locator("input[data-photo=choose]").set_input_files(pictures)
    strip = walk.locator("#strip")
    expect(strip).to_contain_text("3 photos to hand over", timeout=30_000)
    expect(strip).to_contain_text("no contact with")

    door.delay = 1.5
    door.fails("")
    nudge(walk)
    expect(strip).to_contain_text("handing over now", timeout=20_000)
    seen = set()
    for _ in range(400):
        seen.add(strip.inner_text())
        if any("all handed over" in each for each in seen):
            break
        walk.wait_for_timeout(100)

    assert any("all handed over" in each for each in seen)
    assert [] == [each for each in seen if "no contact" in each]
    # Six pictures, each a small copy and an original, were counted down in words.
    assert len([each for each in seen if "handing over now" in each]) >= 2


def test_an_answer_that_takes_long_is_counted_and_no_fault(walk):
    """While one request is under way for long the strip says since when, without alarm."""
    text, classes = walk.evaluate(
        """async () => {
      const { paintStrip } = await import(document.querySelector("script[src*='main.js']").src.replace("main.js", "screens/strip.js"));
      const connection = { clockOffset: 0, host: "laptop", waitingSince: Date.now() - 47000 };
      paintStrip({ active: true, connection, host: "laptop", photos: 1, proved: false, queued: 0, refused: [], since: "", trouble: "", waits: true },
        { old: false, otherTabs: false, spaceLeft: null });
      // Read in the same step: the page paints its own strip at any moment.
      const strip = document.querySelector("#strip");
      return [strip.innerText, strip.className];
    }"""
    )
    assert "handing over now, waiting for an answer since 47 s" in text
    assert "wrong" not in classes


def test_silence_behind_a_session_that_answers_is_not_over_with_the_session(walk):
    """Only an answer of the work itself ends it; any answer ends a silence of everything."""
    ended = walk.evaluate(
        """async () => {
      const main = document.querySelector("script[src*='main.js']").src;
      const { Trouble } = await import(main.replace("main.js", "handover/trouble.js"));
      const { Away } = await import(main.replace("main.js", "handover/problems.js"));
      const met = (request) => {
        const trouble = new Trouble();
        trouble.met(Object.assign(new Away("no answer", true), { request }), "laptop");
        return trouble;
      };
      return [
        met("POST /exchange/x/entries").endedBy("GET /session"),
        met("POST /exchange/x/entries").endedBy("GET /exchange/x/entries"),
        met("GET /session").endedBy("GET /session"),
      ];
    }"""
    )
    assert [False, True, True] == ended


@pytest.mark.parametrize(
    ("shift", "words"),
    [("2026-01-01T00:00:00.000Z", "behind"), ("2999-01-01T00:00:00.000Z", "ahead of")],
)
def test_a_clock_that_is_off_is_named(phone, door, monkeypatch, shift, words):
    """Which of the two is wrong cannot be known, so the strip names both."""
    monkeypatch.setattr(exchange, "now", lambda: shift)
    a_walk.begin(phone, door.address)
    expect(phone.locator("#strip")).to_contain_text(f"days {words} this device's: set the wrong")


def test_a_page_kept_open_across_an_update_says_that_it_is_old(walk, monkeypatch):
    """The computer ships another walk page now: the open page learns it with the next session."""
    assert "old" not in walk.locator("#strip").inner_text()
    monkeypatch.setattr(offline, "edition", lambda: "feedc0ffee12")
    # A page asks for its session again once it is a minute old.
    walk.evaluate("() => { const real = Date.now; Date.now = () => real() + 61000; }")
    nudge(walk)
    expect(walk.locator("#strip")).to_contain_text("this tab is old")


def updated(phone, door, monkeypatch) -> None:
    """Keep a walk, then load its page anew after an update, whose worker begins to be installed."""
    a_walk.begin(phone, door.address)
    a_walk.kept_for_good(phone)
    monkeypatch.setattr(offline, "edition", lambda: "feedc0ffee12")
    load_until_newest(phone, phone.url)
    phone.evaluate("async () => (await navigator.serviceWorker.getRegistration()).update()")


def load_until_newest(page, address) -> None:
    """Load a page, again where the computer was too busy and the page kept here came instead."""
    for _ in range(20):
        page.goto("about:blank")
        page.goto(address, timeout=60_000)
        if page.locator("script[src*='feedc0ffee12']").count():
            return
    raise AssertionError("only the page of the older edition comes")


def test_the_worker_of_the_newest_page_takes_over_under_it_and_it_is_never_called_old(
    phone, door, monkeypatch
):
    """Loaded anew after an update, the open page comes into the charge of its own edition's worker
    without being touched, keeps its state, and is what opens in another tab without the
    computer."""
    updated(phone, door, monkeypatch)
    phone.evaluate("() => { window.untouched = true; }")
    phone.evaluate(CALLED_OLD)

    assert ["inspection-walk-feedc0ffee12"] == kept_editions(phone)
    assert [True, False] == phone.evaluate("() => [window.untouched, window.calledOld]")
    assert "feedc0ffee12" == phone.evaluate(EDITION_IN_CHARGE)
    a_walk.kept_for_good(phone)
    again, address = phone.context.new_page(), phone.url
    phone.close()
    door.fails("cut", "/")
    again.goto(address)
    expect(again.locator("script[src*='feedc0ffee12']")).to_have_count(1)
    expect(again.locator("#strip")).to_contain_text("no contact with")
    assert "old" not in again.locator("#strip").inner_text()


def test_a_tab_that_is_opened_the_moment_the_old_one_is_closed_opens(phone, door, monkeypatch):
    """While one worker hands over to the next, a page that is asked for waits for them as long as
    that takes, and comes."""
    updated(phone, door, monkeypatch)
    again, address = phone.context.new_page(), phone.url

    phone.close()
    again.goto(address, timeout=60_000)

    # The newest page, or the one kept here where the computer was too busy to give it.
    expect(again.locator("script[src*='main.js']")).to_have_count(1)
    expect(again.locator("#strip")).not_to_be_empty(timeout=60_000)


# Notes whether the strip calls the page old at any moment from now on.
CALLED_OLD = """() => {
  const strip = document.querySelector("#strip");
  const look = () => { window.calledOld ||= strip.innerText.includes("old"); };
  window.calledOld = false;
  look();
  new MutationObserver(look).observe(strip, { subtree: true, childList: true, characterData: true });
}"""
EDITION_IN_CHARGE = """() => new Promise((done) => {
  const channel = new MessageChannel();
  channel.port1.onmessage = (event) => done(event.data.answer);
  navigator.serviceWorker.controller.postMessage({ edition: true }, [channel.port2]);
})"""


def kept_editions(page) -> list[str]:
    """The caches on this device, once a worker has removed those of older editions."""
    for _ in range(160):
        cached = page.evaluate("async () => await caches.keys()")
        if len(cached) == 1:
            break
        page.wait_for_timeout(500)
    return cached

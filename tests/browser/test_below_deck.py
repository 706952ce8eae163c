"""Below deck: the computer is killed, the page is reloaded and closed, a network lies; nothing
is lost, and the page says where the work is."""

import base64
import hashlib
import json
import subprocess
import sys

from playwright.sync_api import expect

from tests import a_walk
from tests.a_computer import ROOT, SignInPage


def photos_there(computer, inspection):
    """SHA-256 of every original on the computer's disk, computed anew."""
    folder = computer.data / "inspections" / inspection / "photos"
    return {
        hashlib.sha256(path.read_bytes()).hexdigest() for path in folder.iterdir() if path.is_file()
    }


def test_a_stretch_below_with_the_computer_killed_loses_nothing(phone, computer, tmp_path):
    """Plug pulled mid-edit, tab closed; twenty answers, three photos, a reload, all without a
    computer; then both logs are equal."""
    inspection = a_walk.begin(phone, computer.address)
    a_walk.kept_for_good(phone)
    a_walk.sheet(phone)
    first = a_walk.unfold(a_walk.plain_cards(phone).first)
    first.locator("[data-act=note]").click()
    first.locator("[data-note]").press_sequentially("Half a senten")
    phone.wait_for_timeout(600)  # longer than the pause after which a draft is on disk
    computer.kill()
    before, context = phone.url, phone.context
    phone.close(run_before_unload=False)
    phone = context.new_page()
    phone.goto(before)
    expect(a_walk.plain_cards(phone).first.locator("[data-note]")).to_have_value("Half a senten")
    pictures = a_walk.pictures(tmp_path, 3)
    answer_twenty(phone)
    photograph(phone, list(pictures.values()))
    expect(phone.locator("#strip")).to_contain_text("3 photos to hand over since")
    expect(phone.locator("#strip")).to_contain_text("no contact with")
    phone.reload()
    expect(phone.locator("[data-rate][aria-pressed=true]").first).to_be_visible()

    computer.start()

    phone.evaluate("() => window.dispatchEvent(new Event('online'))")
    a_walk.handed_over(phone)
    assert a_walk.log_of(phone) == computer.entries(inspection)
    assert set(pictures) <= photos_there(computer, inspection)
    assert {"Half a senten"} == {
        one["value"] for one in computer.entries(inspection).values() if one["field"] == "note"
    }


def answer_twenty(page):
    for system in ("hull", "propulsion"):
        a_walk.sheet(page, system)
        cards = a_walk.plain_cards(page)
        for index in range(10):
            button = cards.nth(index).locator("button[data-rate=fair]")
            button.click()
            expect(button).to_have_attribute("aria-pressed", "true")


def photograph(page, files):
    card = a_walk.unfold(a_walk.plain_cards(page).first)
    card.locator("[data-act=photo]").click()
    card.locator("input[data-photo=choose]").set_input_files(files)
    expect(card.locator("[data-photos] button")).to_have_count(len(files), timeout=30_000)


def test_two_answers_given_apart_are_shown_on_both_devices_and_one_tap_settles_them(
    phones, computer
):
    """Neither answer hides the other, whatever the clocks say; the tap of one surveyor settles
    it for both; notes can be joined."""
    anna, ben = phones(), phones()
    ben.add_init_script(
        "const real = Date.now; Date.now = () => real() - 86400000; const Then = Date; "
        "globalThis.Date = class extends Then { constructor(...a) { a.length ? super(...a) : super(real() - 86400000); } };"
    )
    inspection = a_walk.begin(anna, computer.address, "Anna")
    a_walk.come_aboard(ben, computer.address, inspection, "Ben")
    for page in (anna, ben):
        a_walk.sheet(page)
        expect(page.locator("#strip")).to_contain_text("handed over")
    computer.kill()
    for page, rating, words in (
        (anna, "good", "Anna saw it dry."),
        (ben, "poor", "Ben saw it wet."),
    ):
        card = a_walk.plain_cards(page).first
        card.locator(f"[data-rate={rating}]").click()
        a_walk.unfold(card).locator("[data-act=note]").click()
        card.locator("[data-note]").fill(words)
        card.locator("[data-note]").blur()
        expect(page.locator("#strip")).to_contain_text("2 to hand over")

    computer.start()

    disputes = [
        a_walk.plain_cards(page).first.locator("[data-dispute=rating]") for page in (anna, ben)
    ]
    for page, dispute in zip((anna, ben), disputes, strict=True):
        nudge_until(page, dispute, "Ben")
        expect(dispute).to_contain_text("good")
        expect(dispute).to_contain_text("poor")
        expect(dispute).to_contain_text("Anna")
    # Merely leaving a field settles nothing.
    note = a_walk.plain_cards(anna).first.locator("[data-note]")
    note.focus()
    note.blur()
    anna.wait_for_timeout(300)
    expect(a_walk.plain_cards(anna).first.locator("[data-dispute=note]")).to_be_visible()
    disputes[0].locator("button", has_text="poor").click()
    a_walk.plain_cards(anna).first.locator(
        "[data-dispute=note] button", has_text="keep both"
    ).click()
    a_walk.handed_over(anna)
    nudge_while(ben, disputes[1])
    nudge_while(ben, a_walk.plain_cards(ben).first.locator("[data-dispute=note]"))
    for page, dispute in zip((anna, ben), disputes, strict=True):
        expect(dispute).to_be_hidden()
        card = a_walk.plain_cards(page).first
        expect(card.locator("[data-rate=poor]")).to_have_attribute("aria-pressed", "true")
        note = card.locator("[data-note]").input_value()
        assert "Anna saw it dry." in note
        assert "Ben saw it wet." in note


def nudge_until(page, locator, words):
    """Let the page hand over and fetch now, instead of waiting for its own turn."""
    for _ in range(100):
        page.evaluate("() => window.dispatchEvent(new Event('online'))")
        page.wait_for_timeout(100)
        if locator.is_visible() and words in locator.inner_text():
            return
    raise AssertionError(f"{words!r} did not come: {page.locator('#strip').inner_text()}")


def nudge_while(page, locator):
    """Let the page hand over and fetch until that is no longer in sight."""
    for _ in range(60):
        page.evaluate("() => window.dispatchEvent(new Event('online'))")
        page.wait_for_timeout(100)
        if not locator.is_visible():
            return
    raise AssertionError("it stayed in sight")


def test_a_refused_entry_stays_on_the_device_and_is_shown_with_its_reason(phone, computer):
    """What the computer refuses is never dropped: it stands in a list with what, whose and why,
    and "all handed over" is not said."""
    inspection = a_walk.begin(phone, computer.address)
    a_walk.sheet(phone)
    clash = {
        "at": "2026-05-02T09:14:07.512Z",
        "who": "",
        "field": "rating",
        "value": "good",
        "replaces": [],
        "subject": "sheet/hull/other/other",
    }
    # Another entry already bears the number that this device gives next.
    phone.evaluate(
        """async ([inspection, clash]) => {
      const open = indexedDB.open("inspection-walk");
      const database = await new Promise((done) => { open.onsuccess = () => done(open.result); });
      const read = database.transaction("meta").objectStore("meta").get("device");
      const device = await new Promise((done) => { read.onsuccess = () => done(read.result); });
      database.close();
      const { csrf } = await (await fetch("/session")).json();
      await fetch(`/exchange/${inspection}/entries`, { method: "POST", headers: { "X-CSRFToken": csrf, "Content-Type": "application/json" },
        body: JSON.stringify({ device, entries: [{ ...clash, id: `${device}:1`, device }] }) });
    }""",
        [inspection, clash],
    )

    a_walk.plain_cards(phone).first.locator("[data-rate=failed]").click()

    expect(phone.locator("#strip")).to_contain_text("refused entries: 1", timeout=20_000)
    assert "all handed over" not in phone.locator("#strip").inner_text()
    phone.evaluate("() => { location.hash = 'refused'; }")
    expect(phone.locator("#refused article")).to_have_count(1)
    expect(phone.locator("#refused article")).to_contain_text("failed")
    expect(phone.locator("#refused article")).to_contain_text("already kept")
    phone.reload()
    expect(phone.locator("#refused article")).to_contain_text("failed")


def test_what_waits_can_be_saved_to_one_file_with_its_photos(phone, computer, tmp_path):
    """Without any contact one file holds the entries and the photos, whole."""
    inspection = a_walk.begin(phone, computer.address)
    a_walk.sheet(phone)
    expect(phone.locator("#strip")).to_contain_text("handed over")
    computer.kill()
    a_walk.plain_cards(phone).first.locator("[data-rate=poor]").click()
    pictures = a_walk.pictures(tmp_path, 2)
    photograph(phone, list(pictures.values()))
    phone.evaluate("() => { location.hash = 'sheets'; }")

    with phone.expect_download() as waiting:
        phone.click("#save-file")

    saved = json.loads(waiting.value.path().read_text(encoding="utf-8"))
    assert ["inspector-waiting", 1, inspection] == [
        saved["format"],
        saved["version"],
        saved["inspection"],
    ]
    assert a_walk.log_of(phone).items() >= {one["id"]: one for one in saved["entries"]}.items()
    assert ["poor"] == [one["value"] for one in saved["entries"] if one["field"] == "rating"]
    assert set(pictures) == {
        hashlib.sha256(base64.b64decode(one["base64"])).hexdigest() for one in saved["photos"]
    }
    assert set(pictures) == {one["sha256"] for one in saved["photos"]}
    take_in(waiting.value.path(), computer.data)
    computer.start()
    assert a_walk.log_of(phone) == computer.entries(inspection)
    assert set(pictures) <= photos_there(computer, inspection)


def take_in(file, data):
    """`inspector import FILE`, as on the laptop that a stick was carried to."""
    done = subprocess.run(
        [sys.executable, "-m", "inspector", "import", str(file), "--data", str(data)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_ready_screen_proves_each_line_before_boarding(phone, computer):
    """Every line has its word and what to do; with the computer killed before, the line about it
    is not ready."""
    a_walk.begin(phone, computer.address)
    a_walk.kept_for_good(phone)
    a_walk.judges_here(phone)
    lines = phone.locator("#ready li")
    words = {
        line.locator("b").inner_text(): line.get_attribute("data-ready") for line in lines.all()
    }
    expected = {
        "sheets and checks",
        "what was recorded so far",
        "photos",
        "the app itself",
        "clock",
        "writing and reading",
        "judging without the computer",
    }
    assert expected <= {name for name, word in words.items() if word == "ready"}
    assert {"kept for good", "free space", "the round"} | expected == set(words)
    assert "ready with a caution" == words["the round"]
    assert all(len(line.locator("small").first.inner_text()) > 20 for line in lines.all())

    computer.kill()
    phone.reload()

    expect(lines.nth(1)).to_have_attribute("data-ready", "not ready")
    expect(phone.locator("#ready h2")).to_contain_text("Not ready yet")


def test_a_sign_in_page_of_a_network_is_neither_kept_nor_shown_nor_believed(phone, computer):
    """While something else answers every address with 200, the walk opens as it was kept,
    records on, and hands over to nobody."""
    inspection = a_walk.begin(phone, computer.address)
    a_walk.kept_for_good(phone)
    computer.kill()
    impostor = SignInPage(computer.port)
    try:
        phone.reload()
        a_walk.sheet(phone)
        a_walk.plain_cards(phone).first.locator("[data-rate=good]").click()
        expect(phone.locator("#strip")).to_contain_text(
            "something else answers in place of", timeout=20_000
        )
        expect(phone.locator("#strip")).to_contain_text("1 to hand over")
        phone.wait_for_timeout(1_000)
        phone.reload()
        expect(phone.locator("#here")).to_be_visible()
        assert any(line.endswith("/walk") for line in impostor.asked)
    finally:
        impostor.stop()
    phone.reload()
    expect(phone.locator("#strip")).to_contain_text("no contact with")
    assert "Welcome" not in phone.content()
    computer.start()
    nudge_until(phone, phone.locator("#strip"), "all handed over")
    assert a_walk.log_of(phone) == computer.entries(inspection)


def test_a_computer_put_back_to_an_older_state_gets_the_lost_entries_again(phone, computer):
    """Entries that were handed over once and are gone there, as after an old backup, are handed
    over again from this device's log."""
    inspection = a_walk.begin(phone, computer.address)
    a_walk.sheet(phone)
    a_walk.plain_cards(phone).first.locator("[data-rate=good]").click()
    a_walk.handed_over(phone)
    computer.kill()
    folder = computer.data / "inspections" / inspection / "journal"
    for journal in folder.glob("*.jsonl"):
        lines = journal.read_text(encoding="utf-8").splitlines(keepends=True)
        journal.write_text(
            "".join(line for line in lines if '"phone-' not in line), encoding="utf-8"
        )
    computer.start()

    nudge_until(phone, phone.locator("#strip"), "all handed over")

    for _ in range(20):
        if a_walk.log_of(phone) == computer.entries(inspection):
            break
        phone.evaluate("() => window.dispatchEvent(new Event('online'))")
        phone.wait_for_timeout(300)
    assert a_walk.log_of(phone) == computer.entries(inspection)


# What may come back in place of a proper answer to a hand-over.
FALSE_ANSWERS = {
    "an error of the server": {
        "status": 500,
        "content_type": "text/html",
        "body": "<h1>Internal error</h1>",
    },
    "a proxy's page": {"status": 502, "content_type": "text/html", "body": "bad gateway"},
    "a pass that is over": {
        "status": 401,
        "content_type": "application/json",
        "body": '{"error": "not let in"}',
    },
    "an outdated form": {
        "status": 400,
        "content_type": "application/json",
        "body": '{"error": "This page was open too long."}',
    },
    "a page with status 200": {
        "status": 200,
        "content_type": "text/html",
        "body": "<h1>Welcome</h1>",
    },
    "JSON that names no entry": {
        "status": 200,
        "content_type": "application/json",
        "body": '{"fates": {}}',
    },
    "JSON that names another entry": {
        "status": 200,
        "content_type": "application/json",
        "body": '{"fates": {"phone-x:1": "stored"}}',
    },
    "a fate that nobody knows": {
        "status": 200,
        "content_type": "application/json",
        "body": '{"fates": {"ID": "perhaps"}}',
    },
    "half an answer": {
        "status": 200,
        "content_type": "application/json",
        "body": '{"fates": {"phone-',
    },
}


def test_nothing_leaves_the_queue_without_a_proper_answer(phone, served, tmp_path):
    """Errors, a pass that is over, a false page, half an answer, an answer about something else:
    what waits goes on waiting, photos too."""
    address, app = served
    inspection = a_walk.begin(phone, address)
    a_walk.sheet(phone)
    expect(phone.locator("#strip")).to_contain_text("handed over")
    answers = dict(FALSE_ANSWERS)

    def falsely(route):
        if route.request.method != "POST":
            return route.continue_()
        first = route.request.post_data_json["entries"][0]["id"]
        return route.fulfill(**{**current, "body": current["body"].replace("ID", first)})

    phone.route("**/exchange/*/entries", falsely)
    for number, (_, current) in enumerate(answers.items()):  # noqa: B007  (the route above reads it)
        a_walk.plain_cards(phone).nth(number).locator("[data-rate=poor]").click()
        expect(phone.locator("#strip")).to_contain_text(f"kept here · {number + 1} to hand over")
        with phone.expect_response("**/exchange/*/entries"):
            phone.evaluate("() => window.dispatchEvent(new Event('online'))")
    phone.unroute("**/exchange/*/entries")
    current = {"status": 200, "content_type": "application/json", "body": '{"sha": "0"}'}
    phone.route(
        "**/exchange/*/photo/*",
        lambda route: (
            route.fulfill(**current) if route.request.method == "PUT" else route.continue_()
        ),
    )
    pictures = a_walk.pictures(tmp_path, 1)
    photograph(phone, list(pictures.values()))
    nudge_until(phone, phone.locator("#strip"), "kept here · 1 photo to hand over")
    phone.unroute("**/exchange/*/photo/*")

    nudge_until(phone, phone.locator("#strip"), "all handed over")

    record = app.extensions["data_folder"].inspections.get(inspection)
    assert ["poor"] * len(answers) == [
        entry.value for entry in record.entries if entry.field == "rating"
    ]
    assert a_walk.log_of(phone).keys() == {entry.id for entry in record.entries}


def test_entries_that_the_computer_names_as_missing_are_sent_again(phone, served):
    """A hole in what the computer says it has is filled from this device's own log."""
    address, _ = served
    a_walk.begin(phone, address)
    a_walk.sheet(phone)
    a_walk.plain_cards(phone).first.locator("[data-rate=poor]").click()
    a_walk.handed_over(phone)
    device = next(
        one["device"] for one in a_walk.log_of(phone).values() if one["device"].startswith("phone-")
    )

    def with_a_hole(route):
        if route.request.method != "GET":
            return route.continue_()
        answer = route.fetch()
        return route.fulfill(
            response=answer, json={**answer.json(), "missing": {device: [1]}, "held": {device: 0}}
        )

    phone.route("**/exchange/*/entries*", with_a_hole)

    with phone.expect_request(
        lambda request: request.method == "POST" and "/entries" in request.url
    ) as again:
        phone.evaluate("() => window.dispatchEvent(new Event('online'))")

    sent = again.value.post_data_json["entries"]
    assert f"{device}:1" in [entry["id"] for entry in sent]
    assert {"rating", "depth"} == {entry["field"] for entry in sent}


def test_what_a_full_device_cannot_keep_is_never_shown_as_kept(phone, served):
    """When the store takes nothing more the page says so at once, the tap does not count, and
    typed text stays in its field."""
    address, _ = served
    a_walk.begin(phone, address)
    a_walk.sheet(phone)
    # As a browser does it when the disk is full: the transaction is broken off.
    phone.evaluate("""() => {
      const add = IDBObjectStore.prototype.add;
      IDBObjectStore.prototype.add = function (row) { const asked = add.call(this, row); this.transaction.abort(); return asked; };
    }""")
    card = a_walk.plain_cards(phone).first

    card.locator("[data-rate=poor]").click()

    expect(phone.locator("#alarm")).to_contain_text("Not kept")
    expect(card.locator("[data-rate=poor]")).to_have_attribute("aria-pressed", "false")
    a_walk.unfold(card).locator("[data-act=note]").click()
    card.locator("[data-note]").fill("Written on a full phone.")
    card.locator("[data-note]").blur()
    phone.wait_for_timeout(300)
    expect(card.locator("[data-note]")).to_have_value("Written on a full phone.")


def test_a_finding_half_written_when_the_tab_is_killed_is_there_again(phone, served):
    """A killed tab closes no dialog: the finding opens again as it was being written."""
    address, _ = served
    a_walk.begin(phone, address)
    a_walk.sheet(phone)
    a_walk.unfold(a_walk.plain_cards(phone).first).locator("[data-act=finding]").click()
    phone.fill("#finding-title", "Crack at the frame")
    phone.wait_for_timeout(300)
    phone.reload()

    expect(phone.locator("#finding-title")).to_have_value("Crack at the frame")
    expect(phone.locator("#finding-dialog")).to_contain_text("being written")

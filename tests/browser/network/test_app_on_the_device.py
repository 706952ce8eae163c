"""The app itself on the device: what the service worker keeps and what it must not, and how a
newer edition comes in; and that everything has its name."""

from flask import request
from playwright.sync_api import expect

from inspector.web.on_device import offline, python_files
from tests import a_walk

CACHED = """async () => {
  const found = [];
  for (const name of await caches.keys()) for (const request of await (await caches.open(name)).keys()) found.push([name, new URL(request.url).pathname]);
  return found;
}"""


def test_only_the_walk_and_its_assets_are_kept(phone, served):
    """After a visit to every kind of page, the cache holds walk pages, the shipped files they
    need, and nothing else."""
    address, _ = served
    inspection = a_walk.begin(phone, address)
    a_walk.kept_for_good(phone)
    for page in (
        "",
        f"/inspection/{inspection}",
        f"/inspection/{inspection}/decide",
        f"/inspection/{inspection}/walk",
        "/no-such-page",
    ):
        phone.goto(address + page)

    paths = {path for _, path in phone.evaluate(CACHED)}

    assert f"/inspection/{inspection}/walk" in paths
    assert {path for path in paths if not path.startswith(("/shipped/", "/static/"))} == {
        f"/inspection/{inspection}/walk"
    }
    assert len(paths) > 25


def test_a_newer_edition_waits_until_it_is_asked_for_and_then_takes_over_with_the_walk(
    phone, served, monkeypatch
):
    """A page that records is never changed under its feet; the newer edition keeps the walk too,
    and the older cache is deleted."""
    address, _ = served
    inspection = a_walk.begin(phone, address)
    a_walk.kept_for_good(phone)
    older = phone.locator("script[src*='main.js']").get_attribute("src")
    monkeypatch.setattr(offline, "edition", lambda: "feedc0ffee12")

    phone.evaluate(
        "async () => { await (await navigator.serviceWorker.getRegistration()).update(); }"
    )

    expect(phone.locator("#strip")).to_contain_text("this tab is old", timeout=20_000)
    assert older == phone.locator("script[src*='main.js']").get_attribute("src")
    names = {name for name, _ in phone.evaluate(CACHED)}
    assert len(names) == 2
    a_walk.sheet(phone)
    a_walk.plain_cards(phone).first.locator("[data-rate=good]").click()
    phone.evaluate("() => { location.hash = 'ready'; }")
    with phone.expect_navigation():
        phone.click("text=take the newer page now")
    expect(phone.locator("script[src*='feedc0ffee12']")).to_have_count(1)
    phone.wait_for_timeout(500)
    cached = phone.evaluate(CACHED)
    assert {name for name, _ in cached} == {"inspection-walk-feedc0ffee12"}
    assert f"/inspection/{inspection}/walk" in {path for _, path in cached}
    a_walk.sheet(phone)
    expect(a_walk.plain_cards(phone).first.locator("[data-rate=good]")).to_have_attribute(
        "aria-pressed", "true"
    )


# Every part of Python that a cache holds, under the cache's name.
PARTS = """async () => {
  const found = {};
  for (const name of await caches.keys()) {
    const paths = (await (await caches.open(name)).keys()).map((request) => new URL(request.url).pathname);
    found[name] = paths.filter((path) => /^\\/shipped\\/(python|modules|checklists)\\//.test(path)).sort();
  }
  return found;
}"""
# Puts other bytes into one part of what is kept, as a failing disk does.
DAMAGED = """async (ending) => {
  const cache = await caches.open((await caches.keys())[0]);
  const request = (await cache.keys()).find((one) => one.url.endsWith(ending));
  const kept = await cache.match(request);
  await cache.put(request, new Response("damaged", { headers: kept.headers }));
  return new URL(request.url).pathname;
}"""


def test_a_newer_edition_takes_python_over_and_fetches_only_what_is_damaged(
    phone, served, monkeypatch
):
    """The seven megabytes of Python are the same in both editions: the newer one has all of it
    from the older one's cache, each part as its digest says, and asks the computer only for the
    part that does not fit."""
    address, app = served
    asked = []
    app.before_request(lambda: asked.append(request.path))
    a_walk.begin(phone, address)
    a_walk.judges_here(phone)
    [(older, parts)] = phone.evaluate(PARTS).items()
    assert {"python", "modules", "checklists"} == {part.split("/")[2] for part in parts}
    damaged = phone.evaluate(DAMAGED, "/python_stdlib.zip")
    monkeypatch.setattr(offline, "edition", lambda: "feedc0ffee12")
    # What the browser keeps of its own accord would hide what the worker asks for.
    phone.context.new_cdp_session(phone).send("Network.clearBrowserCache")
    asked.clear()

    phone.evaluate(
        "async () => { await (await navigator.serviceWorker.getRegistration()).update(); }"
    )
    expect(phone.locator("#strip")).to_contain_text("this tab is old", timeout=60_000)

    newer = "inspection-walk-feedc0ffee12"
    assert {older: parts, newer: parts} == phone.evaluate(PARTS)
    assert [damaged] == [path for path in asked if path in parts]
    digests = phone.evaluate(DIGESTS, newer)
    assert {path: digests[path] for path, _ in python_files.assets()} == dict(python_files.assets())


# Address -> SHA-256 of what a cache holds.
DIGESTS = """async (name) => {
  const cache = await caches.open(name);
  const found = {};
  for (const request of await cache.keys()) {
    const body = await (await cache.match(request)).arrayBuffer();
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
    found[new URL(request.url).pathname] = Array.from(digest, (one) => one.toString(16).padStart(2, "0")).join("");
  }
  return found;
}"""


def test_another_tab_of_the_same_browser_hears_at_once_and_numbers_stay_without_holes(
    phone, computer
):
    """Two tabs on one device: each says that there is another one, both show the answer, and no
    number is given twice."""
    inspection = a_walk.begin(phone, computer.address)
    a_walk.sheet(phone)
    other = phone.context.new_page()
    other.goto(phone.url)
    expect(phone.locator("#strip")).to_contain_text("open in another tab too")
    computer.kill()
    for number in range(3):
        for page in (phone, other):
            button = (
                a_walk.plain_cards(page)
                .nth(number if page is phone else number + 5)
                .locator("[data-rate=poor]")
            )
            button.click()
            expect(button).to_have_attribute("aria-pressed", "true")

    expect(a_walk.plain_cards(other).nth(2).locator("[data-rate=poor]")).to_have_attribute(
        "aria-pressed", "true"
    )
    own = [one for one in a_walk.log_of(phone).values() if one["device"].startswith("phone-")]
    numbers = sorted(int(one["id"].split(":")[1]) for one in own)
    assert list(range(1, len(own) + 1)) == numbers
    assert 6 == len([one for one in own if one["field"] == "rating"])
    assert inspection


# A name by label, by its own text, or by aria-label; what is hidden has none to give.
NAMELESS = """() => [...document.querySelectorAll("button, a[href], input, select, textarea, [role=img], dialog")]
  .filter((one) => one.offsetParent !== null || one.tagName === "DIALOG")
  .filter((one) => !(one.getAttribute("aria-label") || one.labels?.length || (one.textContent || "").trim()
    || one.getAttribute("aria-labelledby") || [...one.querySelectorAll("img")].some((image) => image.alt)))
  .map((one) => one.outerHTML.slice(0, 120))"""
DOUBLE = "() => { const ids = [...document.querySelectorAll('[id]')].map((one) => one.id); return ids.filter((id, at) => ids.indexOf(id) !== at); }"
SMALL = """() => [...document.querySelectorAll(".walk button, .walk a.button, .walk select, .walk input:not([type=file])")]
  .filter((one) => one.offsetParent !== null).filter((one) => one.getBoundingClientRect().height < 44).map((one) => one.outerHTML.slice(0, 100))"""


def test_every_control_has_its_name_and_its_size_in_every_view(phone, served):
    """No control without a name, no id twice, nothing to tap under 44 pixels, nothing wider than
    the phone."""
    address, _ = served
    a_walk.begin(phone, address)
    phone.wait_for_timeout(300)
    first = phone.locator("[data-sheet^='tanks/']").first.get_attribute("data-sheet")
    for view in ("sheets", f"sheet/{first}", "tray", "findings", "ready", "refused"):
        phone.evaluate("(view) => { location.hash = view; }", view)
        phone.wait_for_timeout(300)
        assert [] == phone.evaluate(NAMELESS), view
        assert [] == phone.evaluate(DOUBLE), view
        assert [] == phone.evaluate(SMALL), view
        assert (
            phone.evaluate(
                "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
            )
            <= 0
        ), view


def test_a_check_can_be_answered_with_the_keyboard_alone(phone, served):
    """Tab reaches the ratings in their order, Enter rates, and the strip is a live region that
    tells of it."""
    address, _ = served
    a_walk.begin(phone, address)
    a_walk.sheet(phone)
    card = a_walk.plain_cards(phone).first
    card.locator("[data-rate=good]").focus()
    phone.keyboard.press("Tab")
    phone.keyboard.press("Enter")

    expect(card.locator("[data-rate=fair]")).to_have_attribute("aria-pressed", "true")
    assert ["status", "polite"] == [
        phone.locator("#strip").get_attribute(name) for name in ("role", "aria-live")
    ]

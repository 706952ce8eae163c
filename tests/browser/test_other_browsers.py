"""The same stretch below deck in the other two engines, driven over WebDriver: Firefox, and
WebKit as Safari has it."""

import hashlib
import os
import time

import pytest

from inspector.sharing.addresses import own_addresses
from tests import a_browser, a_walk
from tests.a_sharing_laptop import SharingLaptop
from tests.ten_readings import ten_readings
from tests.web.joining.test_shared_server import at_laptop, new_code

# The driver library warns of its own inner calls.
pytestmark = pytest.mark.filterwarnings("ignore::DeprecationWarning:selenium.*")
# What playwright's expect() does, for drivers without it.
PATIENCE = 30.0
# As long as our Python may take to start on a busy machine.
STARTS = 120


@pytest.fixture(params=["firefox", "webkit"])
def browser(request):
    """A started browser; one that is missing fails the test where browsers are required."""
    with a_browser.display():
        one = a_browser.other(request.param)
        if one is None:
            missing = a_browser.OTHERS_MISSING[request.param]
            pytest.fail(missing) if os.environ.get("BROWSER_REQUIRED") else pytest.skip(missing)
        one.set_script_timeout(20)
        yield one
        one.quit()


def until(browser, script, *more, patience=PATIENCE):
    """Run the script until what it returns is true; returns that."""
    end = time.monotonic() + patience
    while time.monotonic() < end:
        found = browser.execute_script(script, *more)
        if found:
            return found
        time.sleep(0.1)
    raise AssertionError(f"{script} never held; the strip says: {browser.execute_script(STRIP)}")


STRIP = "return document.getElementById('strip')?.textContent"
SAYS = "return (document.getElementById('strip')?.textContent ?? '').includes(arguments[0])"
CARD = "[...document.querySelectorAll('#cards article.check:not([data-enclosed])')][arguments[0]]"
READY = "return document.querySelectorAll('#ready li')[3]?.dataset.ready === 'ready'"


def rate(browser, index, word):
    until(
        browser,
        f"const card = {CARD}; if (!card) return false; card.querySelector(`[data-rate=${{arguments[1]}}]`).click(); return true",
        index,
        word,
    )
    until(
        browser,
        f"return {CARD}?.querySelector(`[data-rate=${{arguments[1]}}]`).getAttribute('aria-pressed') === 'true'",
        index,
        word,
    )


def go(browser, view):
    browser.execute_script("location.hash = arguments[0]", view)


def test_the_walk_opens_records_and_hands_over_after_the_computer_was_killed(
    browser, computer, tmp_path
):
    """Kept page, answers, a reload and a photo without any computer, then both logs are equal."""
    browser.get(computer.address)
    browser.find_element("xpath", "//button[contains(., 'begin the walk')]").click()
    until(browser, "return document.querySelector('.walk')?.dataset.ready === 'yes'")
    browser.find_element("css selector", "#who-name").send_keys("QX")
    browser.find_element("css selector", "#who-keep").click()
    inspection = browser.current_url.split("/")[4]
    go(browser, "ready")
    until(browser, READY)
    sheet = browser.execute_script(
        "return document.querySelector('[data-sheet^=\"hull/\"]').dataset.sheet"
    )
    go(browser, f"sheet/{sheet}")
    rate(browser, 0, "good")
    computer.kill()
    for index in range(1, 5):
        rate(browser, index, "poor")
    browser.execute_script(
        "location.reload()"
    )  # the driver's own refresh passes by what a browser keeps
    until(
        browser,
        "return document.readyState === 'complete' && performance.getEntriesByType('navigation')[0].type === 'reload'",
    )
    until(
        browser,
        f"return {CARD}?.querySelector('[data-rate=poor]').getAttribute('aria-pressed') === 'true'",
        4,
    )
    rate(browser, 5, "fair")
    pictures = a_walk.pictures(tmp_path, 1)
    for act in ("unfold", "photo"):
        browser.execute_script(f"{CARD}.querySelector('[data-act={act}]').click()", 0)
    browser.find_element(
        "css selector", "#cards article:not([data-enclosed]) input[data-photo=choose]"
    ).send_keys(*pictures.values())
    until(browser, SAYS, "1 photo to hand over since")
    until(browser, SAYS, "no contact with")

    computer.start()

    browser.execute_script("window.dispatchEvent(new Event('online'))")
    until(browser, SAYS, "all handed over")
    log = browser.execute_async_script(f"({a_walk.LOG})().then(arguments[0])")
    assert {one["id"]: one for one in log} == computer.entries(inspection)
    folder = computer.data / "inspections" / inspection / "photos"
    assert set(pictures) <= {
        hashlib.sha256(path.read_bytes()).hexdigest() for path in folder.iterdir() if path.is_file()
    }


JUDGES = """const line = [...document.querySelectorAll('#ready li')].at(-1);
if (!line?.textContent.startsWith('judging without the computer')) return '';
return line.dataset.ready === 'ready' ? line.textContent : '';"""
FILL = """const [check, fields] = arguments;
const card = document.querySelector(`#cards article[data-check='${check}']`);
if (!card) return false;
if (card.querySelector('.body').hidden) card.querySelector('[data-act=unfold]').click();
for (const [name, value] of Object.entries(fields)) {
  const field = card.querySelector(`[data-reading='${name}']`);
  field.value = value;
  field.dispatchEvent(new Event('change', { bubbles: true }));
}
return true;"""
JUDGED = """const [check, sentence] = arguments;
const text = document.querySelector(`#cards article[data-check='${check}'] .judged`)?.textContent;
return text?.includes(sentence) && text.includes('Judged on this device');"""
START = """const done = arguments[0];
const begun = performance.now();
(async () => {
  const main = document.querySelector("script[src*='main.js']").src;
  const { Python } = await import(main.replace('main.js', 'python/python.js'));
  const python = new Python(JSON.parse(document.querySelector('.walk').dataset.python));
  python.addEventListener('change', () => {
    if (python.state !== 'starting') done([python.state, python.why, python.startedIn]);
  });
  python.start();
})();"""


def test_ten_readings_are_judged_after_the_computer_was_killed(browser, computer):
    """Ten criteria, each with the computer's own sentence, by the page's own Python; another start
    with nobody there shows that all of it is kept."""
    browser.get(computer.address)
    browser.find_element("xpath", "//button[contains(., 'begin the walk')]").click()
    until(browser, "return document.querySelector('.walk')?.dataset.ready === 'yes'")
    browser.find_element("css selector", "#who-name").send_keys("QX")
    browser.find_element("css selector", "#who-keep").click()
    go(browser, "ready")
    until(browser, READY)
    until(browser, JUDGES, patience=STARTS)
    computer.kill()

    for reading in ten_readings():
        sheet = browser.execute_script(
            f"return document.querySelector('[data-sheet^=\"{reading.system}/\"]').dataset.sheet"
        )
        go(browser, f"sheet/{sheet}")
        until(browser, FILL, reading.check, reading.fields)
        until(browser, JUDGED, reading.check, reading.sentence)

    browser.set_script_timeout(STARTS)
    state, why, milliseconds = browser.execute_async_script(START)
    print(f"{browser.name}: Python up in {milliseconds / 1000:.1f} s")
    assert ("ready", "") == (state, why)


@pytest.fixture
def sharing_laptop(tmp_path):
    """The real program that shares one inspection at an address that browsers take for one of a
    network."""
    found = [each.address for each in own_addresses()]
    if not found:
        pytest.skip("this machine is on no network")
    one = SharingLaptop(tmp_path / "data", found[0])
    one.begin("Grey Heron")
    one.start("--share")
    yield one
    one.kill()


def test_a_phone_joins_over_plain_http_and_is_listed(browser, sharing_laptop):
    """By the code in the address, with the name that is proposed: the only inspection opens at
    once, says that it must stay open, hands over, and the laptop lists the phone."""
    code = new_code(sharing_laptop.port).replace("-", "")
    browser.get(f"{sharing_laptop.plain}/join#{code}&1")
    until(browser, "return document.querySelector('#join [name=name]')?.value.endsWith(' 1')")
    until(browser, "return document.querySelector('#join [name=code]').value.length === 12")
    browser.find_element("css selector", "#join button").click()
    until(browser, "return document.querySelector('.walk')?.dataset.ready === 'yes'")
    browser.find_element("css selector", "#who-name").send_keys("QX")
    browser.find_element("css selector", "#who-keep").click()
    assert "Grey Heron" == browser.execute_script(
        "return document.getElementById('here').textContent"
    )
    assert browser.execute_script("return !document.getElementById('basic').hidden")
    sheet = browser.execute_script(
        "return document.querySelector('[data-sheet^=\"hull/\"]').dataset.sheet"
    )
    go(browser, f"sheet/{sheet}")
    rate(browser, 0, "good")
    go(browser, "ready")
    until(
        browser,
        "const button = document.querySelector('#ready [data-hand-over]'); button?.click(); return Boolean(button)",
    )
    until(
        browser,
        "return document.querySelector('#ready .hand-over p')?.textContent.includes('All of it is on ')",
    )
    end = time.monotonic() + PATIENCE
    page = ""
    while time.monotonic() < end and "All of it is on this laptop" not in page:
        page = at_laptop(sharing_laptop.port, "GET", "/sharing")[1].decode()
        time.sleep(0.2)
    assert "All of it is on this laptop" in page

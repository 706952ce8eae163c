"""The round composed again on the phone itself, with the computer gone."""

from datetime import datetime, timedelta

from playwright.sync_api import expect

from tests import a_walk
from tests.ten_readings import ten_readings

LINE, VISIT = "#round-line p", "#visit"
KEPT = "(inspection) => JSON.parse(localStorage.getItem(`round/${inspection}`))"
BEGUN = datetime.now().replace(hour=9, minute=0, second=0, microsecond=0)


def show(phone, view):
    phone.evaluate("(view) => { location.hash = view; }", view)


def at(phone, minutes):
    """Set the phone's clock; its timers go on."""
    phone.clock.set_fixed_time(BEGUN + timedelta(minutes=minutes))


def be_off(phone, clock):
    """Say on the phone when one has to be off; the round is composed for that."""
    show(phone, "visit")
    field = phone.locator(".visit-off input")
    field.fill(clock)
    field.blur()
    expect(phone.locator(VISIT)).to_contain_text(
        "Composed on this device", timeout=a_walk.STARTS_MS
    )


def round_of(phone):
    """The round that this phone keeps."""
    return phone.evaluate(KEPT, phone.locator(".walk").get_attribute("data-inspection"))


def sheets(data):
    return [sheet for stop in data["stops"] for look in stop["looks"] for sheet in look["sheets"]]


def test_a_visit_with_the_computer_gone(phone, computer):
    """Ten readings of ten criteria get the computer's own sentence; time runs short and the round
    is composed again; a reload loses neither; all of it is handed over."""
    readings = ten_readings()
    at(phone, 0)
    inspection = a_walk.begin(phone, computer.address)
    a_walk.kept_for_good(phone)
    a_walk.judges_here(phone)
    computer.kill()
    be_off(phone, "09:45")
    first = round_of(phone)
    assert len(sheets(first)) >= 60

    for reading in readings:
        if reading is readings[-1]:
            at(phone, 25)
        card = a_walk.card(phone, reading.system, reading.check)
        a_walk.fill_readings(card, reading.fields)
        expect(card.locator(".judged")).to_contain_text(reading.sentence, timeout=a_walk.STARTS_MS)
    show(phone, "sheets")
    expect(phone.locator(LINE)).to_contain_text(
        "Composed on this device at 09:25, because time ran short", timeout=a_walk.STARTS_MS
    )
    second = round_of(phone)
    assert len(sheets(second)) < len(sheets(first))
    assert max(second["seconds"]) <= 20 * 60

    phone.reload()
    expect(phone.locator(".walk")).to_have_attribute("data-ready", "yes")
    show(phone, "sheets")
    expect(phone.locator(LINE)).to_contain_text("Composed on this device at 09:25")
    assert second == round_of(phone)

    computer.start()
    phone.evaluate("() => window.dispatchEvent(new Event('online'))")
    a_walk.handed_over(phone)
    recorded = computer.entries(inspection).values()
    assert "09:45" in [one["value"] for one in recorded if one["field"] == "off"]


def test_what_is_left_out_is_one_tap_away_and_counted(phone, computer):
    """The visit lists every open check that the round leaves out; a tap opens its card."""
    at(phone, 0)
    a_walk.begin(phone, computer.address)
    a_walk.judges_here(phone)
    computer.kill()
    be_off(phone, "09:30")
    kept = round_of(phone)
    expect(phone.locator(VISIT)).to_contain_text(f"Left out: {kept['left']} checks")

    fold = phone.locator("#visit details", has_text="left out").first
    fold.locator("summary").click()
    row = fold.locator("button").first
    title = row.locator("b").inner_text()
    row.click()

    expect(phone.locator("#cards article", has_text=title).first).to_be_in_viewport()


def test_the_words_and_the_next_looks_come_without_the_computer(phone, computer):
    """Assessed on the phone, by the same modules."""
    a_walk.begin(phone, computer.address)
    a_walk.judges_here(phone)
    card = a_walk.plain_cards(phone)
    a_walk.sheet(phone)
    card.first.locator("[data-rate=failed]").click()
    a_walk.handed_over(phone)
    with_computer = suggestions(phone)
    computer.kill()

    show(phone, "visit")
    phone.locator("#visit summary", has_text="the words so far").click()
    words = phone.locator("#visit .word-row")
    expect(words.first).to_be_visible(timeout=a_walk.STARTS_MS)
    assert words.count() == len(phone.evaluate(SYSTEMS))
    expect(words.filter(has_text="Hull")).to_contain_text("1 of")
    show(phone, "advice")
    expect(phone.locator("#advice .empty")).to_contain_text(
        "advised on this device", timeout=a_walk.STARTS_MS
    )
    assert with_computer == phone.locator("#advice .advised span").all_inner_texts()


SYSTEMS = """() => [...new Set([...document.querySelectorAll("[data-sheet]")]
  .map((row) => row.dataset.sheet.split("/")[0]))]"""


def suggestions(phone):
    """The next looks as the computer advises."""
    show(phone, "advice")
    expect(phone.locator("#advice .advised").first).to_be_visible()
    return phone.locator("#advice .advised span").all_inner_texts()


def test_a_phone_that_cannot_run_python_keeps_the_computers_round_and_says_so(phone, computer):
    """It is followed as it came with the page."""
    phone.add_init_script("delete globalThis.WebAssembly")
    inspection = a_walk.begin(phone, computer.address)
    show(phone, "visit")
    phone.locator(".visit-off input").fill("23:59")
    phone.locator(".visit-off input").blur()
    a_walk.handed_over(phone)
    phone.goto(f"{computer.address}/inspection/{inspection}/walk")
    line = phone.locator(LINE)

    expect(line).to_contain_text("Composed by the computer")
    expect(line).to_contain_text("This device cannot compose it again", timeout=a_walk.STARTS_MS)
    show(phone, "visit")
    expect(phone.locator("#visit button", has_text="again now")).to_be_disabled()

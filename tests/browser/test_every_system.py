"""All 21 systems walked once on a phone with every kind of answer; a unit is asked what its kind
is asked; what the minutes left are worth."""

import re

from playwright.sync_api import expect

from tests import a_walk

RATINGS = ("good", "fair", "poor", "failed")
REASONS = ("no access", "not opened", "not run", "no light", "no time")


def opened(page, system):
    a_walk.sheet(page, system)
    cards = a_walk.plain_cards(page)
    expect(cards.first).to_be_visible()
    return cards


def walk(page, system, number):
    """On one sheet: two ratings, a reason not to have seen it, what is not fitted, a reading and
    a note."""
    cards = opened(page, system)
    for index in (0, 1):
        button = cards.nth(index).locator(f"button[data-rate={RATINGS[(number + index) % 4]}]")
        button.click()
        expect(button).to_have_attribute("aria-pressed", "true")
    third = cards.nth(2)
    third.locator("[data-act=not-seen]").click()
    third.locator(f"[data-reason='{REASONS[number % 5]}']").click()
    fourth = a_walk.unfold(cards.nth(3)).locator("[data-act=not-fitted]")
    fourth.click()
    expect(fourth).to_have_attribute("aria-pressed", "true")
    row = a_walk.row_with(page, "[data-row=number]")
    if row:
        typed = row.locator("input[data-kind=number]").first
        typed.fill(f"{number + 1},5")
        typed.press("Enter")
    a_walk.unfold(cards.nth(0)).locator("[data-act=note]").click()
    cards.nth(0).locator("[data-note]").fill(f"Note on {system}.")
    cards.nth(0).locator("[data-note]").blur()


def test_every_system_takes_every_kind_of_answer(phone, served, tmp_path):
    """21 systems: ratings, not seen with a reason, not fitted, a reading, a note; a photo and a
    gate; all of it stands in the record."""
    address, app = served
    inspection = a_walk.begin(phone, address)
    systems = phone.evaluate(
        "() => [...document.querySelectorAll('template[data-system]')].map((one) => one.dataset.system)"
    )
    assert 21 == len(systems)
    for number, system in enumerate(systems):
        walk(phone, system, number)
    from_outside(phone)
    photograph(phone, tmp_path)
    a_walk.handed_over(phone)

    state = app.extensions["data_folder"].inspections.get(inspection).state
    for system in systems:
        said = [
            state.value(subject, "rating", "") for subject in state.subjects(f"sheet/{system}/")
        ]
        assert sum(word in RATINGS for word in said) >= 2
        assert sum(word.startswith("not seen: ") for word in said) == 1
        assert "not fitted" in said
        assert f"Note on {system}." in [
            state.value(subject, "note") for subject in state.subjects(f"sheet/{system}/")
        ]
    read = [
        subject
        for subject in state.subjects("sheet/")
        if any(field.startswith("reading/") for field in state.fields(subject))
    ]
    assert len(read) >= 15
    assert 1 == len(state.subjects("photo/"))


def from_outside(page):
    """An enclosed space: no rating before the gate is answered, and one given from outside."""
    a_walk.sheet(page, "tanks")
    card = page.locator("#cards article.check[data-enclosed]").first
    expect(card.locator("[data-rate=good]")).to_be_hidden()
    card.locator("[data-act=outside]").click()
    card.locator("[data-rate=fair]").click()
    expect(card.locator("[data-rate=fair]")).to_have_attribute("aria-pressed", "true")


def photograph(page, folder):
    card = a_walk.unfold(a_walk.plain_cards(page).first)
    card.locator("[data-act=photo]").click()
    card.locator("input[data-photo=choose]").set_input_files(
        list(a_walk.pictures(folder, 1).values())
    )
    expect(card.locator("[data-photos] button")).to_have_count(1, timeout=30_000)


def test_a_unit_is_asked_what_its_kind_is_asked(phone, served):
    """The batteries are not asked for breakers, nor the main board for cells."""
    address, app = served
    inspection = a_walk.begin(phone, address)
    data = app.extensions["data_folder"]
    system = data.library_of(data.inspections.get(inspection)).systems["switchboards"]
    for unit, kind in (("Main switchboard, bus A", "main"), ("Batteries", "batteries")):
        phone.evaluate("() => { location.hash = 'sheets'; }")
        phone.locator(f"[data-sheet^='switchboards/'][data-name^='{unit}']").click()
        expect(phone.locator("#cards article.check")).to_have_count(len(system.checks_for(kind)))


def test_the_minutes_left_name_what_is_worth_them_and_lead_there(phone, computer):
    """Each look has its reason; a tap opens its card; without the computer the plain order is
    told."""
    a_walk.begin(phone, computer.address)
    a_walk.kept_for_good(phone)
    phone.evaluate("() => { location.hash = 'advice'; }")
    phone.fill("#advice input", "30")
    phone.locator("#advice input").blur()
    looks = phone.locator("#advice .advised")
    expect(looks.first).to_contain_text(re.compile(r"min\.$"))
    looks.first.click()
    expect(phone.locator("#cards article.check:focus")).to_be_visible()

    computer.kill()
    phone.evaluate("() => { location.hash = 'advice'; }")

    expect(phone.locator("#advice .empty")).to_contain_text(
        "The computer does not answer", timeout=15_000
    )
    expect(looks.first).to_contain_text("critical")

"""How an answer is known, and what was seen in passing: one tap each, on a phone with touch."""

import pytest
from playwright.sync_api import expect

from inspector import places
from inspector.assess.depth import load_readings, usual_depth
from inspector.checklists.loader import read_library
from tests import a_walk

# For each check of the page and each set of typed readings the depth that the page's script says.
USUAL = """async ([main, asked]) => {
  const { usualDepth } = await import(main.replace("main.js", "cards/depth.js"));
  const cards = new Map();
  for (const system of document.querySelectorAll("template[data-system]")) {
    for (const card of system.content.querySelectorAll("article")) {
      cards.set(`${system.dataset.system}/${card.dataset.check}`, card);
    }
  }
  return asked.map(([name, typed]) => {
    const card = cards.get(name);
    return card ? usualDepth(card, (reading) => typed.includes(reading)) : null;
  });
}"""


def typings(check):
    """Nothing typed, each reading left out once, only the load, and everything."""
    every = [reading.name for reading in check.readings]
    yield []
    yield list(load_readings(check))
    yield every
    yield from ([name for name in every if name != left] for left in every)


def test_page_and_computer_agree_on_the_usual_depth_of_every_check(phone, served):
    """For every check of the shipped sheets, whatever of its readings is typed."""
    library = read_library(places.shipped("checklists"))
    checks = {
        f"{system.id}/{check.id}": check
        for system in library.systems.values()
        for check in system.checks
    }
    a_walk.begin(phone, served[0])
    main = phone.locator("script[src*='main.js']").get_attribute("src")
    asked = [(name, typed) for name, check in checks.items() for typed in typings(check)]

    here = phone.evaluate(USUAL, [main, asked])

    there = [usual_depth(checks[name], typed) for name, typed in asked]
    wrong = [
        (*what, one, other)
        for what, one, other in zip(asked, here, there, strict=True)
        if one != other
    ]
    assert len(checks) > 500
    assert {"reported", "sighted", "tested"} == set(there)
    assert [] == wrong


def card_of(phone, address, system, check):
    a_walk.begin(phone, address)
    a_walk.sheet(phone, system)
    return a_walk.unfold(phone.locator(f"#cards article[data-check='{check}']").first)


def kept(phone, field):
    """The last value of a field of the one sheet or unit that was touched."""
    found = [entry for entry in a_walk.log_of(phone).values() if entry["field"] == field]
    return found[-1]["value"] if found else None


def pressed(card):
    return card.locator(".depth [aria-pressed=true]")


def test_the_usual_depth_comes_with_the_rating_and_one_tap_changes_it(phone, served):
    """No tap for what is usual; the card says what would prove it."""
    card = card_of(phone, served[0], "thrusters", "hub-oil")
    expect(card.locator(".depth")).to_be_hidden()

    card.locator("[data-rate=good]").tap()
    expect(pressed(card)).to_have_text("sighted")
    expect(card.locator("[data-depth-odd]")).to_have_text("tested would prove it")
    assert "sighted" == kept(phone, "depth")

    card.locator("[data-depth=reported]").tap()
    expect(pressed(card)).to_have_text("reported")
    assert "reported" == kept(phone, "depth")


def test_tested_counts_when_the_load_is_written(phone, served):
    """Tested without its figures says what is missing; a usual depth follows the figures."""
    library = read_library(places.shipped("checklists"))
    check = next(one for one in library.systems["thrusters"].checks if one.id == "hub-oil")
    (load,) = load_readings(check)[:1]
    card = card_of(phone, served[0], "thrusters", "hub-oil")

    card.locator("[data-rate=good]").tap()
    card.locator("[data-depth=tested]").tap()
    expect(card.locator("[data-depth-odd]")).to_contain_text("counts as sighted until")

    for name in load_readings(check):
        field = card.locator(f"[data-reading='{name}']")
        field.fill("2026-05-02" if field.get_attribute("type") == "date" else "0.02")
        field.blur()
    expect(card.locator("[data-depth-odd]")).to_be_empty()
    assert load in {
        entry["field"].removeprefix("reading/") for entry in a_walk.log_of(phone).values()
    }


@pytest.mark.parametrize("seen", ["nothing", "something"])
def test_walking_past_is_one_tap_and_the_row_says_so(phone, served, seen):
    """The first word of a unit, given, shown in its row, and taken away again."""
    address, _ = served
    a_walk.begin(phone, address)
    a_walk.sheet(phone, "deck-machinery")
    button = phone.locator(f"#cards .passed [data-passed={seen}]").first

    button.tap()

    expect(button).to_have_attribute("aria-pressed", "true")
    assert seen == kept(phone, "walked_past")
    phone.evaluate("() => { location.hash = 'sheets'; }")
    row = phone.locator("[data-sheet^='deck-machinery/']").first
    expect(row).to_contain_text(f"passed: {seen}")
    row.tap()
    phone.locator(f"#cards .passed [data-passed={seen}]").first.tap()
    expect(button).to_have_attribute("aria-pressed", "false")
    phone.evaluate("() => { location.hash = 'sheets'; }")
    expect(row).not_to_contain_text("passed")


def test_what_was_passed_has_a_first_word_on_the_laptop(phone, served):
    """Handed over, the unit reads *so far* beside its word, and says that it was only passed."""
    address, _ = served
    inspection = a_walk.begin(phone, address)
    a_walk.sheet(phone, "dynamic-positioning")
    phone.locator("#cards .passed [data-passed=nothing]").first.tap()
    a_walk.handed_over(phone)

    phone.goto(f"{address}/inspection/{inspection}/decide/dynamic-positioning")

    chosen = phone.locator("#chosen")
    expect(chosen.locator("h3").first).to_have_text("Retain, so far")
    expect(chosen).to_contain_text("Walked past: nothing seen against it.")

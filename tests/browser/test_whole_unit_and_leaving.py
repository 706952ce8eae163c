"""Answers for a whole unit at once, own phrases, a reason for overruling, and what is still open
before leaving: on a phone with touch."""

import pytest
from playwright.sync_api import expect

from tests import a_walk


@pytest.fixture
def address(phone, served):
    a_walk.begin(phone, served[0])
    return served[0]


def sheet(phone, system, number=0):
    phone.evaluate("() => { location.hash = 'sheets'; }")
    row = phone.locator(f"[data-sheet^='{system}/']").nth(number)
    name = row.get_attribute("data-name")
    row.click()
    return name


def recorded(phone, field):
    return [one for one in a_walk.log_of(phone).values() if one["field"] == field]


def whole(phone, words):
    phone.locator("#cards .whole summary").tap()
    return phone.locator("#cards .whole button", has_text=words).first


@pytest.mark.parametrize("answer", ["not fitted", "not seen: refused"])
def test_all_of_a_unit_is_answered_in_one_act_and_opened_again_in_one(phone, address, answer):
    """What was answered before keeps its answer; undo opens exactly what the act answered."""
    sheet(phone, "power-generation")
    own = a_walk.plain_cards(phone).first
    own.locator("[data-rate=fair]").tap()

    whole(phone, answer).tap()
    expect(phone.locator("#undo button span")).to_have_text(answer)
    given = recorded(phone, "rating")
    assert 1 == len([one for one in given if one["value"] == "fair"])
    assert len(given) == 1 + len([one for one in given if one["value"] == answer]) > 10
    phone.locator("#undo button").tap()

    expect(own.locator("[data-rate=fair]")).to_have_attribute("aria-pressed", "true")
    expect(phone.locator("#cards .rate [aria-pressed=true]")).to_have_count(1)


def test_as_the_sister_unit_copies_answers_and_says_so(phone, served, address):
    """The sister's rating and depth as own entries that name her; her readings and notes stay
    hers; an answer of its own takes the mark away; the report's words name her."""
    first = sheet(phone, "power-generation", 0)
    cards = a_walk.plain_cards(phone)
    cards.nth(0).locator("[data-rate=poor]").tap()
    cards.nth(1).locator("[data-rate=good]").tap()
    a_walk.unfold(cards.nth(1)).locator("[data-act=note]").tap()
    cards.nth(1).locator("[data-note]").fill("hers alone")
    cards.nth(1).locator("[data-note]").blur()
    check = cards.nth(0).get_attribute("data-check")

    sheet(phone, "power-generation", 1)
    whole(phone, f"as {first}: 2 answers").tap()
    card = phone.locator(f"#cards article[data-check='{check}']")
    expect(card.locator("[data-rate=poor]")).to_have_attribute("aria-pressed", "true")
    expect(card.locator("[data-as-unit]")).to_have_text(f"answered as {first}, not by itself")
    assert [first, first] == [one["value"] for one in recorded(phone, "as_unit")]
    assert 1 == len(recorded(phone, "note"))

    card.locator("[data-rate=fair]").tap()
    expect(card.locator("[data-as-unit]")).to_be_hidden()
    a_walk.handed_over(phone)


def test_a_note_from_an_own_phrase_is_two_taps_and_the_phrase_is_of_the_person(phone, address):
    """Kept once, offered on every card to whoever kept it, and to nobody else."""
    sheet(phone, "hull")
    cards = a_walk.plain_cards(phone)
    a_walk.unfold(cards.nth(0)).locator("[data-act=note]").tap()
    cards.nth(0).locator("[data-note]").fill("Seen by torch only")
    cards.nth(0).locator("[data-act=keep-phrase]").tap()

    a_walk.unfold(cards.nth(1)).locator("[data-act=note]").tap()
    cards.nth(1).locator("[data-phrase]").tap()
    expect(cards.nth(1).locator("[data-note]")).to_have_value("Seen by torch only")
    assert ["Seen by torch only"] * 2 == [one["value"] for one in recorded(phone, "note")]

    phone.locator("#tools-switch").tap()
    phone.locator("#change-who").tap()
    a_walk.called(phone, "ZV")
    a_walk.unfold(cards.nth(2)).locator("[data-act=note]").tap()
    expect(cards.nth(2).locator("[data-phrases]")).to_be_hidden()


def test_overruling_a_judgement_asks_why_and_keeps_the_reason(phone, address):
    """Asked only while rating and judgement differ; kept, and no contradiction any more."""
    sheet(phone, "thrusters")
    card = a_walk.unfold(phone.locator("#cards article[data-check=hub-oil]"))
    why = card.locator("[data-why]")
    title = card.locator("h3").inner_text()
    card.locator("[data-reading=water]").fill("0.02")
    card.locator("[data-reading=water]").blur()
    proposed = card.locator("[data-rate].proposed")
    expect(proposed).to_have_count(1)
    expect(why).to_be_hidden()
    rating = proposed.get_attribute("data-rate")
    card.locator(f"[data-rate={'poor' if rating == 'good' else 'good'}]").tap()
    expect(why).to_contain_text(f"Why not {rating}")

    contradictions = phone.locator("#leaving details", has_text="contradictions")
    phone.evaluate("() => { location.hash = 'leaving'; }")
    contradictions.locator("summary").tap()
    contradictions.locator("button", has_text=title).tap()
    why.locator("input").fill("gauge sticks")
    why.locator("input").blur()
    expect(phone.locator("#undo button span")).to_have_text("why")

    assert ["gauge sticks"] == [one["value"] for one in recorded(phone, "overruled_because")]
    phone.evaluate("() => { location.hash = 'leaving'; }")
    expect(phone.locator("#leaving > details").first).to_be_visible()
    expect(contradictions).to_have_count(0)


def test_before_leaving_lists_what_matters_with_a_tap_to_each(phone, address, tmp_path):
    """Critical checks not seen, photos wanted of what was seen, and photos without a place."""
    sheet(phone, "hull")
    wanted = phone.locator("#cards article[data-photo-wanted]:not([data-enclosed])").first
    subject = wanted.get_attribute("data-subject")
    wanted.locator("[data-rate=good]").tap()
    phone.locator("#snap").set_input_files(list(a_walk.pictures(tmp_path, 1).values()))
    expect(phone.locator("[data-tray-count]")).to_have_text("1")

    phone.locator("#tools-switch").tap()
    phone.locator("#tools [data-go=leaving]").tap()
    groups = phone.locator("#leaving summary").all_inner_texts()
    critical = phone.evaluate("""() => {
      const all = [...document.querySelectorAll("#leaving details")];
      return all.find((one) => one.textContent.startsWith("critical")).querySelectorAll("button").length;
    }""")
    assert critical > 20
    assert [f"critical, not seen {critical}", "photo wanted 1"] == groups
    expect(phone.locator("#leaving [data-go=tray]")).to_have_text("photos without a place 1")

    phone.locator("#leaving summary", has_text="photo wanted").tap()
    phone.locator("#leaving details", has_text="photo wanted").locator("button").tap()
    expect(phone.locator(f"#cards [data-subject='{subject}']")).to_be_in_viewport()

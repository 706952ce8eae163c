"""Taps that forgive: a second one does nothing, what was taken away comes back, and the place is
kept, on a phone with touch."""

import pytest
from playwright.sync_api import expect

from inspector.values.vocabulary import NOT_SEEN_REASONS
from tests import a_walk

# Whether two elements share any of the screen.
SHARED = """([one, other]) => {
  const [a, b] = [one, other].map((name) => document.querySelector(name).getBoundingClientRect());
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}"""
# The share of the bar's height that lies within the screen.
BAR_IN_SIGHT = """() => {
  const place = document.querySelector(".walk-nav").getBoundingClientRect();
  return (Math.min(place.bottom, innerHeight) - Math.max(place.top, 0)) / place.height;
}"""


@pytest.fixture
def card(phone, served):
    """The first plain card of the hull's sheet."""
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    return a_walk.unfold(a_walk.plain_cards(phone).first)


def ratings(phone):
    return [one["value"] for one in a_walk.log_of(phone).values() if one["field"] == "rating"]


def test_a_second_tap_on_a_rating_does_nothing(phone, card):
    """Tapped twice by a cold thumb, the answer stays and nothing more is recorded."""
    card.locator("[data-rate=good]").tap()
    card.locator("[data-rate=good]").tap()
    card.locator("[data-act=note]").tap()

    expect(card.locator("[data-rate=good]")).to_have_attribute("aria-pressed", "true")
    assert ["good"] == ratings(phone)


def test_taking_an_answer_away_is_its_own_act_and_comes_back_by_undo(phone, card):
    """There is nothing to take away before an answer; taken away, one tap brings it back."""
    away = card.locator("[data-act=take-away]")
    expect(away).to_be_hidden()
    card.locator("[data-rate=poor]").tap()

    away.tap()
    expect(card.locator("[data-rate=poor]")).to_have_attribute("aria-pressed", "false")
    expect(away).to_be_hidden()
    phone.locator("#undo button").tap()

    expect(card.locator("[data-rate=poor]")).to_have_attribute("aria-pressed", "true")
    assert ["poor", None, "poor"] == ratings(phone)


def test_undo_leaves_after_six_seconds_and_the_history_keeps_the_act(phone, served):
    """It is there at five seconds and gone at seven; the history still puts the answer back."""
    phone.clock.install()
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    card = a_walk.unfold(a_walk.plain_cards(phone).first)
    undo = phone.locator("#undo button")
    expect(undo).to_be_disabled()
    card.locator("[data-rate=good]").tap()
    expect(undo).to_contain_text("good")
    card.locator("[data-rate=fair]").tap()
    expect(undo).to_contain_text("fair")

    phone.clock.run_for(5_000)
    expect(undo).to_be_enabled()
    phone.clock.run_for(2_000)
    expect(undo).to_be_disabled()
    expect(undo.locator("span")).to_be_empty()

    card.locator("[data-act=history]").tap()
    card.locator(".history button", has_text="put back").last.tap()
    expect(card.locator("[data-rate=good]")).to_have_attribute("aria-pressed", "true")


def test_undo_covers_nothing(phone, card):
    """It is within the bar, beside the other buttons, and the bar is no higher with it."""
    height = "() => document.querySelector('.walk-nav').offsetHeight"
    before = phone.evaluate(height)
    card.locator("[data-rate=good]").tap()
    expect(phone.locator("#undo button")).to_be_enabled()

    assert before == phone.evaluate(height)
    assert phone.evaluate(SHARED, ["#undo", ".walk-nav"])
    for other in ("[data-go=sheets]", ".snap", ".walk-nav [data-go=next]"):
        assert not phone.evaluate(SHARED, ["#undo", other]), other


def test_every_reason_for_not_seen_is_offered_and_recorded(phone, card):
    """Unsafe, refused, covered and not shown beside the older ones, each by two taps."""
    for reason in NOT_SEEN_REASONS:
        card.locator("[data-act=not-seen]").tap()
        card.locator(f"[data-reason='{reason}']").tap()
        expect(card.locator("[data-act=not-seen]")).to_have_text(f"not seen: {reason}")

    assert {"unsafe", "refused", "covered", "not shown"} < set(NOT_SEEN_REASONS)
    assert [f"not seen: {reason}" for reason in NOT_SEEN_REASONS] == ratings(phone)


@pytest.mark.parametrize("go", ["findings", "advice", "ready", "tray"])
def test_each_list_is_two_taps_from_any_card(phone, card, go):
    """Tools opens a panel over the cards; a choice leads there and closes it."""
    card.locator("[data-rate=good]").tap()
    phone.locator("#tools-switch").tap()
    phone.locator(f"#tools [data-go={go}]").tap()

    expect(phone.locator(f"#{go}")).to_be_visible()
    expect(phone.locator("#tools")).to_be_hidden()


def test_light_and_leaving_are_reached_from_a_card_and_escape_closes_the_tools(phone, card):
    """The light is stepped through with the panel open."""
    phone.locator("#tools-switch").tap()
    phone.locator("#tools [data-light-switch]").tap()
    phone.locator("#tools [data-light-switch]").tap()
    expect(phone.locator("html")).to_have_attribute("data-light", "red")
    expect(phone.locator("#leave")).to_be_visible()

    phone.keyboard.press("Escape")
    expect(phone.locator("#tools")).to_be_hidden()
    expect(phone.locator("#tools-switch")).to_have_attribute("aria-expanded", "false")


def test_list_place_and_card_survive_a_reload(phone, served):
    """By space stays by space; in a space the card that was worked on is in sight again."""
    a_walk.begin(phone, served[0])
    phone.locator("[data-list=space]").tap()
    a_walk.load_anew(phone)
    expect(phone.locator("[data-list=space]")).to_have_attribute("aria-pressed", "true")
    expect(phone.locator("[data-listing=space]")).to_be_visible()

    phone.locator("[data-space=engine-room]").tap()
    card = phone.locator("#cards article.check:not([data-enclosed], .many):visible").nth(25)
    subject = card.get_attribute("data-subject")
    card.locator("[data-rate=fair]").tap()
    phone.wait_for_timeout(400)
    a_walk.load_anew(phone)

    expect(phone.locator("[data-ready=yes]")).to_be_attached(timeout=20_000)
    expect(phone.locator("#here")).to_have_text("Engine room")
    expect(phone.locator(f"#cards [data-subject='{subject}']")).to_be_in_viewport()


def test_landscape_keeps_its_bar(phone, card):
    """Turned, the bar is in sight at every place of the page, and leaves room for the cards."""
    phone.set_viewport_size({"width": 844, "height": 390})
    for scrolled in (0, 700, 3000):
        phone.evaluate("(top) => scrollTo(0, top)", scrolled)
        assert 1 == phone.evaluate(BAR_IN_SIGHT)
    assert 80 >= phone.evaluate("() => document.querySelector('.walk-nav').offsetHeight")

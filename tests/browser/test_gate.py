"""The gate of an enclosed space: what is asked before anybody can rate what is inside."""

import pytest
from playwright.sync_api import expect

from tests import a_walk


def enclosed(page, address):
    a_walk.begin(page, address)
    a_walk.sheet(page, "tanks")
    return a_walk.unfold(page.locator("#cards article[data-enclosed]").first)


FINE = {"oxygen": "20,9", "flammable": "0", "toxic": "0", "carbon_dioxide": "0.04"}


def type_air(card, figures):
    for name, value in figures.items():
        card.locator(f"[data-air={name}]").fill(value)
        card.locator(f"[data-air={name}]").blur()


def recorded(phone):
    gates = [one for one in a_walk.log_of(phone).values() if one["field"] == "gate"]
    return max(gates, key=lambda one: int(one["id"].split(":")[1]))["value"]


def test_an_entry_is_recorded_as_it_was_with_what_was_missing(phone, served):
    """No rating before it is said how the space was looked at; "entered" without permit and air is
    recorded all the same, and named; nothing on the card says that an entry is right."""
    card = enclosed(phone, served[0])
    odd = card.locator("[data-gate-odd]")
    expect(card.locator("[data-rate=good]")).to_be_hidden()
    card.locator("[data-gate=entered][data-is=entered]").click()
    expect(odd).to_contain_text(
        "without: permit, attendant, instrument, oxygen, flammable gas, toxic gas, carbon dioxide"
    )
    expect(odd).to_contain_text("Nobody should go in")
    assert "entered" == recorded(phone)["entered"]
    expect(card.locator("[data-rate=good]")).to_be_visible()

    for key in ("permit", "attendant", "instrument"):
        card.locator(f"[data-gate={key}][data-is=yes]").click()
        expect(card.locator(f"[data-gate={key}][data-is=yes]")).to_have_attribute(
            "aria-pressed", "true"
        )
    assert list(FINE) == [one.get_attribute("data-air") for one in card.locator("[data-air]").all()]
    type_air(card, FINE)

    expect(odd).to_be_hidden()
    expect(card.locator(".gate")).to_contain_text("This is a record, no permission")


@pytest.mark.parametrize(
    ("name", "value", "sentence"),
    [
        ("oxygen", "20.8", "oxygen of 20.8 % is below 20.9 %"),
        ("oxygen", "22", "oxygen of 22 % is not below 22 %"),
        ("flammable", "1", "flammable gas of 1 % is not below 1 %"),
        ("toxic", "50", "toxic gas of 50 % is not below 50 %"),
        ("carbon_dioxide", "0.5", "carbon dioxide of 0.5 % is not below 0.5 %"),
        ("oxygen", "twenty", "oxygen must be a number"),
    ],
)
def test_air_is_recorded_as_read_with_what_the_recommendation_says(
    phone, served, name, value, sentence
):
    """IMO MSC.581(110), recommendations for entering enclosed spaces: oxygen 20.9 %, flammable 1 %
    of its limit, toxic 50 % of its limit, carbon dioxide 0.5 %; at each figure itself."""
    card = enclosed(phone, served[0])
    type_air(card, {**FINE, name: value})
    card.locator("[data-gate=entered][data-is=entered]").click()

    expect(card.locator("[data-gate-odd]")).to_contain_text(sentence)
    assert {**FINE, name: value, "entered": "entered"} == recorded(phone)


def test_the_gate_records_levels_time_who_measured_and_the_meter_s_unit(phone, served):
    """Carbon dioxide in ppm is compared as percent; a flammable gas in ppm cannot be, and both are
    kept in the meter's unit."""
    card = enclosed(phone, served[0])
    odd = card.locator("[data-gate-odd]")
    for key, value in (("levels", "top, middle, bottom"), ("measured_by", "ship's chemist")):
        card.locator(f"[data-air-note={key}]").fill(value)
        card.locator(f"[data-air-note={key}]").blur()
    card.locator("[data-air-note=measured_at]").fill("10:40")
    card.locator("[data-air-note=measured_at]").blur()
    card.locator("[data-air-unit=carbon_dioxide]").select_option("ppm")
    type_air(card, {"carbon_dioxide": "5000"})
    expect(odd).to_contain_text("carbon dioxide of 5000 ppm is not below 0.5 %")
    type_air(card, {"carbon_dioxide": "400", "flammable": "30"})
    card.locator("[data-air-unit=flammable]").select_option("ppm")
    expect(odd).to_contain_text("flammable gas in ppm cannot be compared")

    assert {
        "levels": "top, middle, bottom",
        "measured_by": "ship's chemist",
        "measured_at": "10:40",
        "carbon_dioxide": "400 ppm",
        "flammable": "30 ppm",
    } == recorded(phone)
    a_walk.load_anew(phone)
    expect(card.locator("[data-air=flammable]")).to_have_value("30")
    expect(card.locator("[data-air-unit=flammable]")).to_have_value("ppm")


def test_cautions_are_one_strip_open_until_confirmed_as_read(phone, served):
    """In full the first time this inspection enters the space, also after a reload; confirmed, one
    strip that names the dangers and opens by a tap."""
    a_walk.begin(phone, served[0])
    phone.evaluate("() => { location.hash = 'space/engine-room'; }")
    strip = phone.locator("#cards .dangers")
    expect(strip).to_have_count(1)
    expect(strip.locator(".caution").first).to_be_visible()
    a_walk.load_anew(phone)
    expect(strip.locator(".caution").first).to_be_visible(timeout=20_000)

    strip.locator("button").tap()
    expect(strip.locator(".caution").first).to_be_hidden()
    expect(strip.locator("summary")).to_contain_text("WARNING")
    expect(strip.locator("summary")).to_contain_text("turning parts")
    assert 240 > strip.evaluate("(box) => box.offsetHeight")
    a_walk.load_anew(phone)
    expect(strip.locator("summary")).to_be_visible(timeout=20_000)
    expect(strip.locator(".caution").first).to_be_hidden()

    strip.locator("summary").tap()
    expect(strip.locator(".caution").first).to_be_visible()
    # A caution at an act stays there: its signal word on the row, and in full before the act.
    mark = phone.locator("#cards article:not([data-enclosed]) [data-mark=caution]:visible").first
    row = a_walk.unfold(mark.locator("xpath=ancestor::article"))
    expect(row.locator(".caution").first).to_be_visible()


def test_a_space_can_be_answered_as_not_entered_or_seen_from_outside(phone, served):
    """ "Not entered" is an answer of its own, with the reason; "seen from outside" opens the
    rating without any permit."""
    card = enclosed(phone, served[0])
    card.locator("[data-gate=entered][data-is='not entered']").click()
    expect(card.locator("[data-act=not-seen]")).to_contain_text("not seen: no access")
    expect(card.locator("[data-rate=good]")).to_be_hidden()

    card.locator("[data-gate=entered][data-is='from outside']").click()

    card.locator("[data-rate=fair]").click()
    expect(card.locator("[data-rate=fair]")).to_have_attribute("aria-pressed", "true")

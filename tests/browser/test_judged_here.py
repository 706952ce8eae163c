"""A reading judged on the phone alone: the page and the server say the same, at every boundary and in every unit; and the card says who judged."""

from playwright.sync_api import expect

from inspector import places
from inspector.assess.judging import judge_sheet
from inspector.checklists import read_library
from inspector.quantities import convert
from inspector.web.ladders import ladder_data
from tests import a_walk

BANDS = """async ([main, asked]) => {
  const { bandOf } = await import(main.replace("main.js", "judge.js"));
  return asked.map(([ladder, typed, unit]) => { const found = bandOf(ladder, typed, unit); return found && [found.band, found.rating]; });
}"""


def checks_with_bands():
    library = read_library(places.shipped("checklists"))
    found = [(f"{system.id}/{check.id}", check, ladder_data(check)) for system in library.systems.values() for check in system.checks]
    return [one for one in found if one[2]]


def typings(ladder):
    """(text, unit) at, just under and just over every boundary, in every unit that the reading may be typed in; and what nobody can read."""
    for upto, *_ in ladder["steps"]:
        for unit in ladder["factors"]:
            if upto is None:
                continue
            exact = convert(upto, ladder["unit"], unit)
            for value in (exact, exact * 0.999, exact * 1.001, exact - 1e-9, exact + 1e-9, -exact, exact * 50):
                yield f"{value:.12f}".rstrip("0").rstrip("."), unit
                yield f"{value:.3f}".replace(".", ","), unit
    yield from ((text, ladder["unit"]) for text in ("", "x", "1,200", "1 200", ".5", "5.", "+3", "−2", ">9", "1e3", "0", "007,50", "12 34"))


def test_page_and_server_agree_on_every_band(phone, served):
    """For each check that carries bands, every typed value gets the same band and rating here and there, or none on both sides."""
    address, _ = served
    a_walk.begin(phone, address)
    main = phone.locator("script[src*='main.js']").get_attribute("src")
    asked = [(name, check, ladder, text, unit) for name, check, ladder in checks_with_bands() for text, unit in typings(ladder)]
    assert len(asked) > 30

    here = phone.evaluate(BANDS, [main, [[ladder, text, unit] for _, _, ladder, text, unit in asked]])

    wrong = []
    for (name, check, ladder, text, unit), found in zip(asked, here, strict=True):
        judgement, _ = judge_sheet(check, {ladder["input"]: {"value": text, "unit": unit}}, {}, {})
        there = [judgement.band, judgement.rating] if judgement else None
        if there != found:
            wrong.append((name, text, unit, there, found))
    assert wrong == []


def test_a_reading_is_judged_here_until_the_computer_has_judged(phone, computer):
    """With the computer away the card shows band, meaning and source, and says that this device judged; later the computer's words stand there."""
    name, _, ladder = checks_with_bands()[0]
    system, check = name.split("/")
    a_walk.begin(phone, computer.address)
    a_walk.sheet(phone, system)
    expect(phone.locator("#strip")).to_contain_text("handed over")
    card = phone.locator(f"#cards article[data-check='{check}']")
    computer.kill()

    field = card.locator(f"[data-reading='{ladder['input']}']")
    field.fill(f"{next(step[0] for step in ladder['steps'] if step[0] is not None)}")
    field.blur()

    judged = card.locator(".judged")
    expect(judged).to_contain_text("Judged on this device")
    expect(judged).to_contain_text(ladder["source"])
    computer.start()
    phone.evaluate("() => window.dispatchEvent(new Event('online'))")
    expect(judged).not_to_contain_text("Judged on this device", timeout=30_000)
    expect(judged).to_contain_text(ladder["source"].split(",")[0])


def enclosed(page, address):
    a_walk.begin(page, address)
    a_walk.sheet(page, "tanks")
    return page.locator("#cards article[data-enclosed]").first


def test_a_check_of_an_enclosed_space_cannot_be_rated_past_its_gate(phone, served):
    """No rating is in reach before it is said how the space was looked at; "entered" needs three times yes and the four readings in their order."""
    card = enclosed(phone, served[0])
    expect(card.locator("[data-rate=good]")).to_be_hidden()
    entered = card.locator("[data-gate=entered][data-is=entered]")
    entered.click()
    expect(card.locator("[data-gate-odd]")).to_contain_text("permit, attendant and a calibrated instrument")
    for key in ("permit", "attendant", "instrument"):
        card.locator(f"[data-gate={key}][data-is=yes]").click()
        expect(card.locator(f"[data-gate={key}][data-is=yes]")).to_have_attribute("aria-pressed", "true")
    entered.click()
    expect(card.locator("[data-gate-odd]")).to_contain_text("oxygen, flammable gas, toxic gas, carbon dioxide")
    assert ["oxygen", "flammable", "toxic", "carbon_dioxide"] == [one.get_attribute("data-air") for one in card.locator("[data-air]").all()]
    for name, value in (("oxygen", "20,9"), ("flammable", "0"), ("toxic", "0"), ("carbon_dioxide", "0.04")):
        card.locator(f"[data-air={name}]").fill(value)
        card.locator(f"[data-air={name}]").blur()
    expect(card.locator("[data-rate=good]")).to_be_hidden()
    entered.click()
    expect(card.locator("[data-rate=good]")).to_be_visible()

    card.locator("[data-air=oxygen]").fill("20.8")
    card.locator("[data-air=oxygen]").blur()

    expect(card.locator("[data-rate=good]")).to_be_hidden()
    expect(card.locator("[data-gate-odd]")).to_contain_text("oxygen of 20.8 % is below 20.9 %")


def test_air_outside_the_recommended_figures_lets_nobody_record_an_entry(phone, served):
    """At each recommended limit itself, and where a figure cannot be read, "entered" is not taken."""
    card = enclosed(phone, served[0])
    fine = {"oxygen": "20.9", "flammable": "0", "toxic": "0", "carbon_dioxide": "0.04"}
    for key in ("permit", "attendant", "instrument"):
        card.locator(f"[data-gate={key}][data-is=yes]").click()
    for name, value in [("oxygen", "22"), ("flammable", "1"), ("toxic", "50"), ("carbon_dioxide", "0.5"), ("oxygen", "twenty")]:
        for one, typed in {**fine, name: value}.items():
            card.locator(f"[data-air={one}]").fill(typed)
            card.locator(f"[data-air={one}]").blur()

        card.locator("[data-gate=entered][data-is=entered]").click()

        expect(card.locator("[data-gate-odd]")).to_be_visible()
        expect(card.locator("[data-rate=good]")).to_be_hidden()


def test_a_space_can_be_answered_as_not_entered_or_seen_from_outside(phone, served):
    """"Not entered" is an answer of its own, with the reason; "seen from outside" opens the rating without any permit."""
    card = enclosed(phone, served[0])
    card.locator("[data-gate=entered][data-is='not entered']").click()
    expect(card.locator("[data-act=not-seen]")).to_contain_text("not seen: no access")
    expect(card.locator("[data-rate=good]")).to_be_hidden()

    card.locator("[data-gate=entered][data-is='from outside']").click()

    card.locator("[data-rate=fair]").click()
    expect(card.locator("[data-rate=fair]")).to_have_attribute("aria-pressed", "true")

"""Typing a gauge: what was understood, what is asked back, the unit that stays; and the page reads
as the computer does."""

import random

import pytest
from playwright.sync_api import expect

from inspector.values.measures import MARKS, parse_measure
from inspector.values.numbers import NotANumber
from tests import a_walk

UNDERSTAND = """async ([main, corpus]) => {
  const { understand } = await import(main.replace("main.js", "page/typed_number.js"));
  return corpus.map(([text, unit]) => understand(text, unit));
}"""


def corpus(count):
    """Measures, numbers and rubbish, generated from a fixed seed."""
    chance = random.Random(7)
    units = ["m", "mm", "in", "ft", "h", "min", "s", "days", "bar", "°C"]
    marks = sorted({mark for known in MARKS.values() for mark in known} | {"psi", "x", ""})

    def number():
        whole, part = chance.randrange(4000), chance.randrange(1, 16)
        kinds = [
            f"{whole}",
            f"{whole % 13}",
            f"{whole}.{part}",
            f"{whole},{part}",
            f"{whole % 900},{part:03}",
            f".{part}",
            f"{whole} {part:03}",
            f"{part}/16",
            f"{whole % 40} {part}/16",
            f"{whole % 40}-{part}/8",
            f"{whole % 40}½",
            f"{whole}:{chance.randrange(70):02}",
            f"{whole}:{part:02}:{part + 10}",
        ]
        return chance.choice(kinds)

    for _ in range(count):
        parts = [
            number() + chance.choice(["", " "]) + chance.choice(marks)
            for _ in range(chance.choice([1, 1, 1, 2, 2, 3]))
        ]
        sign = chance.choice(["", "", "", "-", "−", "+"])
        yield sign + chance.choice(["", " ", "-"]).join(parts), chance.choice(units)


def there(text, unit):
    """What the computer understands, in the page's shape."""
    try:
        value, own = parse_measure(text, unit)
    except NotANumber as refused:
        ways = getattr(refused, "ways", None)
        return {"ways": list(ways)} if ways else {}
    return {"value": value, "unit": own}


def test_page_and_computer_understand_the_same_of_a_generated_corpus(phone, served):
    """Four thousand texts: the same number and unit, the same two ways, or both refuse."""
    a_walk.begin(phone, served[0])
    main = phone.locator("script[src*='main.js']").get_attribute("src")
    texts = list(corpus(4000))
    here = phone.evaluate(UNDERSTAND, [main, texts])

    wrong = [
        (text, one, two)
        for text, one, two in zip(texts, here, [there(*text) for text in texts], strict=True)
        if {name: one[name] for name in one if one[name] is not None} != two
    ]
    assert [] == wrong[:5]
    assert sum("value" in one for one in here) > 400
    assert sum(bool(one.get("ways")) for one in here) > 50


@pytest.fixture
def card(phone, served):
    """A card with one length in millimetres, of the hull."""
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    return a_walk.row_with(phone, "[data-row=number][data-options^='mm|in']")


def row(card):
    return card.locator("[data-row=number][data-options^='mm|in']").first


def last_reading(phone):
    found = [one for one in a_walk.log_of(phone).values() if one["field"].startswith("reading/")]
    return found[-1]["value"]


def test_what_was_understood_is_shown_and_kept_as_typed(phone, card):
    """3 1/2 in, typed into a field of millimetres, is inches."""
    row(card).locator("input").fill("3 1/2 in")
    row(card).locator("input").blur()

    expect(row(card).locator("output")).to_have_text("= 3.5 in")
    expect(row(card).locator("select")).to_have_value("in")
    assert {"value": "3 1/2 in", "unit": "in"} == last_reading(phone)


def test_two_meanings_are_asked_back_and_one_tap_answers(phone, card):
    """1,200 is kept as typed, and asks which; the tap records what is meant."""
    row(card).locator("input").fill("1,200")
    row(card).locator("input").blur()
    expect(row(card).locator(".odd")).to_contain_text("two ways")
    assert "1,200" == last_reading(phone)["value"]

    row(card).locator(".odd button", has_text="1.2").tap()

    expect(row(card).locator(".odd")).not_to_contain_text("two ways")
    assert "1.2" == last_reading(phone)["value"]


def test_an_unusual_number_is_asked_about_once(phone, served):
    """Kept as typed all the same; said to be right, it is not asked again, also after a reload."""
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    row = a_walk.row_with(phone, "[data-ranges]").locator("[data-ranges]").first
    high = float(row.get_attribute("data-ranges").split("|")[0].split(" ")[1])
    odd = row.locator(".odd")
    row.locator("input").fill(f"{high * 10:.0f}")
    row.locator("input").blur()
    expect(odd).to_contain_text("is unusual")

    odd.locator("button").tap()
    expect(odd).to_be_hidden()
    a_walk.load_anew(phone)
    expect(row.locator("input")).to_have_value(f"{high * 10:.0f}")
    expect(odd).to_be_hidden()


def test_the_unit_chosen_stays_for_the_quantity_and_the_person(phone, card):
    """The next field of millimetres is in inches too; for somebody else it is not."""
    for one in phone.locator("#cards article.check:not([data-enclosed]):visible").all():
        a_walk.unfold(one)
    fields = phone.locator("#cards [data-row=number][data-options^='mm|in'] select")
    assert fields.count() > 1
    row(card).locator("select").select_option("in")
    row(card).locator("input").fill("1/2")
    row(card).locator("input").blur()
    a_walk.load_anew(phone)
    expect(fields.nth(1)).to_have_value("in")

    phone.locator("#tools-switch").tap()
    phone.locator("#change-who").tap()
    a_walk.called(phone, "ZV")
    a_walk.load_anew(phone)
    expect(fields.nth(1)).to_have_value("mm")
    expect(fields.nth(0)).to_have_value("in")


def test_plus_minus_is_offered_only_where_something_can_be_below_zero(phone, card):
    """A thickness has none; a temperature has one."""
    expect(row(card).locator("[data-sign]")).to_be_hidden()
    a_walk.sheet(phone, "reefers")
    warm = a_walk.row_with(phone, "[data-row][data-options^='°C']")
    expect(warm.locator("[data-options^='°C'] [data-sign]").first).to_be_visible()

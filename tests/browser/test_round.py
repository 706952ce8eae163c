"""The walk follows the round: next is its first look without an answer, the one in view included."""

import pytest
from playwright.sync_api import expect

from inspector import create_app
from tests.a_server import serving
from tests.a_walk import begin, called, handed_over

FOCUSED = "() => document.activeElement?.dataset?.subject ?? ''"


@pytest.fixture
def served(tmp_path):
    """A server with an empty data folder, and its application."""
    app = create_app(tmp_path / "data", TESTING=True)
    with serving(app) as port:
        yield f"http://127.0.0.1:{port}", app


def say_how_long(app, inspection, **facts):
    """What Prepare records of the visit."""
    opened = app.extensions["data_folder"].inspections.get(inspection)
    opened.record("QX", [("inspection", field, value) for field, value in facts.items()])


def round_sheets(page):
    """The sheets of the round as the page carries them, in order."""
    return page.evaluate(
        """() => JSON.parse(document.getElementById("round").textContent).stops
             .flatMap((stop) => stop.looks.flatMap((look) => look.sheets))"""
    )


def test_next_follows_the_round_and_stays_where_nothing_is_answered(phone, served):
    """The first look; again the same one; after its answer the second."""
    address, app = served
    inspection = begin(phone, address)
    say_how_long(app, inspection, aboard="0.75")
    phone.reload()
    expect(phone.locator("#round-line")).to_contain_text("The round: 0 of")
    first, second = round_sheets(phone)[:2]

    for _ in range(2):
        phone.click("[data-go=next]")
        assert f"sheet/{first}" == phone.evaluate(FOCUSED)
    card = phone.locator(f"#cards [data-subject='sheet/{first}']")
    card.locator("[data-rate=good]").click()
    phone.click("[data-go=next]")
    assert f"sheet/{second}" == phone.evaluate(FOCUSED)

    phone.evaluate("() => { location.hash = 'sheets'; }")
    expect(phone.locator("#round-line")).to_contain_text("The round: 1 of")
    handed_over(phone)


def test_without_a_round_next_begins_with_the_first_check_of_all(phone, served):
    """From the list, and from the first card that is open."""
    address, _ = served
    begin(phone, address)
    first = phone.evaluate("() => document.querySelector('[data-sheet]').dataset.sheet")
    phone.click("[data-go=next]")
    subject = phone.evaluate(FOCUSED)

    assert subject.startswith(f"sheet/{first}/")
    assert subject == phone.locator("#cards article.check").first.get_attribute("data-subject")
    phone.click("[data-go=next]")
    assert subject == phone.evaluate(FOCUSED)


def test_a_device_walks_the_part_of_one_person(phone, served):
    """It chooses whose part; what others look at is not next here."""
    address, app = served
    inspection = begin(phone, address)
    say_how_long(app, inspection, aboard="0.75", people="2")
    phone.reload()
    second = phone.evaluate(
        """() => JSON.parse(document.getElementById("round").textContent).stops
             .find((stop) => stop.person === 2).looks[0].sheets[0]"""
    )
    phone.locator("#round-line select").select_option("2")
    phone.click("[data-go=next]")

    assert f"sheet/{second}" == phone.evaluate(FOCUSED)


def test_a_look_on_the_page_of_the_round_leads_to_its_card(phone, served):
    """By one tap, with the card in sight."""
    address, _ = served
    inspection = begin(phone, address)
    phone.goto(f"{address}/inspection/{inspection}/round?minutes=45")
    link = phone.locator("#stops li a").nth(5)
    subject = "sheet/" + link.get_attribute("href").partition("#sheet/")[2]
    link.click()
    phone.wait_for_selector(".walk[data-ready]")
    if phone.locator("#who").is_visible():
        called(phone, "QX")

    expect(phone.locator(f"#cards [data-subject='{subject}'] h3")).to_be_in_viewport()


def test_what_shows_something_in_passing_is_not_put_away(phone, served):
    """Cold and dead: what has a glance stays open when the rest is recorded as not seen."""
    address, _ = served
    begin(phone, address)
    phone.select_option("[data-met=state]", "dead")
    box = phone.locator("#chances")
    expect(box).to_contain_text("can be looked at in passing")
    box.locator("button", has_text="as not seen").click()
    expect(box.locator("button", has_text="as not seen")).to_have_count(0)

    phone.evaluate("() => { location.hash = 'sheet/accommodation/cabins-and-passages'; }")
    noise = phone.locator("#cards [data-check=noise]")
    expect(noise.locator("[data-not-now]")).to_have_text("cannot be had now: not run")
    expect(noise.locator("[aria-pressed=true][data-act=not-seen]")).to_have_count(0)
    handed_over(phone)


def test_what_the_crew_will_not_open_cannot_be_had(phone, served):
    """Said on the phone, it is on the cards at once."""
    address, _ = served
    begin(phone, address)
    phone.locator(".crew summary").click()
    phone.select_option("[data-met=panels]", "no")

    expect(phone.locator("#chances button")).to_contain_text("as not seen: not opened")

"""What happens on the phone while the computer cannot be reached."""

from playwright.sync_api import expect


def begin(page, address):
    """Begin an inspection on the gangway and open the first sheet of the hull."""
    page.goto(address)
    page.click("button:has-text('begin the walk')")
    page.fill("#who-name", "QX")
    page.click("#who-keep")
    page.locator("[data-sheet^='hull/']").first.click()


def test_answers_given_without_a_connection_are_kept_and_handed_over_later(phone, served):
    """Without a connection every tap is kept and counted as waiting; with it back, all of them
    reach the computer."""
    address, app = served
    begin(phone, address)
    cards = phone.locator("#cards article.check:not([data-enclosed])")
    phone.context.set_offline(True)
    for index in range(5):
        cards.nth(index).locator("button[data-rate=fair]").click()
        expect(cards.nth(index).locator("button[data-rate=fair]")).to_have_attribute(
            "aria-pressed", "true"
        )
    expect(phone.locator("#strip")).to_contain_text("to hand over")

    phone.context.set_offline(False)

    expect(phone.locator("#strip")).to_contain_text("all handed over", timeout=60_000)
    inspection = app.extensions["data_folder"].inspections.get(phone.url.split("/")[4])
    assert ["fair"] * 5 == [
        inspection.state.value(subject, "rating")
        for subject in inspection.state.subjects("sheet/hull/")
    ]


def test_undo_takes_the_last_answer_back_and_a_reload_shows_what_was_kept(phone, served):
    """Undo restores the answer before; after a reload the page shows the same."""
    address, _ = served
    begin(phone, address)
    card = phone.locator("#cards article.check:not([data-enclosed])").first
    card.locator("button[data-rate=good]").click()
    card.locator("button[data-rate=failed]").click()
    expect(card.locator("button[data-rate=failed]")).to_have_attribute("aria-pressed", "true")

    phone.click("#undo button")
    expect(card.locator("button[data-rate=good]")).to_have_attribute("aria-pressed", "true")
    expect(phone.locator("#strip")).to_contain_text("all handed over", timeout=60_000)
    phone.reload()

    expect(
        phone.locator("#cards article.check:not([data-enclosed])").first.locator(
            "button[data-rate=good]"
        )
    ).to_have_attribute("aria-pressed", "true")


def test_nothing_scrolls_sideways_at_phone_width(phone, served):
    """At 390 pixels no page is wider than the screen."""
    address, _ = served
    begin(phone, address)
    inspection = phone.url.split("#")[0].rsplit("/", 1)[0]
    for page in ("walk", "prepare", "decide", "decide/hull", "report", "edit/vessel"):
        phone.goto(f"{inspection}/{page}")
        assert (
            phone.evaluate(
                "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
            )
            <= 0
        ), page

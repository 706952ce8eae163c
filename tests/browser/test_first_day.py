"""What a newcomer trips over on the walk: quick typing, second thoughts, the same picture twice,
half a finding, odd numbers, long names."""

import pytest
from playwright.sync_api import expect

from tests import a_walk

AIR = {"oxygen": "20.9", "flammable": "0", "toxic": "1", "carbon_dioxide": "0.1"}
LONG = "Q" * 80


def enclosed(page, address):
    """The first card that asks before an entry."""
    a_walk.begin(page, address)
    a_walk.sheet(page, "tanks")
    return a_walk.unfold(page.locator("#cards article.check[data-enclosed]").first)


def filled(card):
    for key in ("permit", "attendant", "instrument"):
        card.locator(f"[data-gate={key}][data-is=yes]").click()
    for name, figure in AIR.items():
        card.locator(f"[data-air={name}]").fill(figure)
    card.locator(f"[data-air={name}]").blur()


def test_figures_typed_quickly_into_the_gate_all_stand(phone, served):
    """Seven answers given 45 ms apart or less lose none of one another."""
    card = enclosed(phone, served[0])
    # Each save is held up, as on a slow phone.
    phone.evaluate("""() => { const put = IDBObjectStore.prototype.put; const wait = performance.now.bind(performance);
      IDBObjectStore.prototype.put = function (...a) { const until = wait() + 15; while (wait() < until); return put.apply(this, a); }; }""")
    subject = card.get_attribute("data-subject")
    phone.evaluate(
        """async ([subject, air]) => {
      const card = document.querySelector(`[data-subject="${subject}"]`);
      for (const button of card.querySelectorAll("[data-gate][data-is=yes]")) { button.click(); await new Promise((go) => setTimeout(go, 5)); }
      for (const [name, figure] of Object.entries(air)) {
        const input = card.querySelector(`[data-air=${name}]`);
        input.focus(); input.value = figure; input.dispatchEvent(new Event("change", { bubbles: true })); input.blur();
        await new Promise((go) => setTimeout(go, 5));
      }
    }""",
        [subject, AIR],
    )

    for _ in range(40):
        gates = [one for one in a_walk.log_of(phone).values() if one["field"] == "gate"]
        if len(gates) == 7:
            break
        phone.wait_for_timeout(100)
    last = max(gates, key=lambda one: int(one["id"].split(":")[1]))

    assert {**AIR, "permit": "yes", "attendant": "yes", "instrument": "yes"} == last["value"]
    assert list(AIR.values()) == [card.locator(f"[data-air={name}]").input_value() for name in AIR]


def test_a_gate_that_is_shut_again_says_that_the_rating_stands(phone, served):
    """Said not to be entered after all, the rating stays in sight, is named, cannot be changed, and
    can be taken away."""
    card = enclosed(phone, served[0])
    filled(card)
    card.locator("[data-gate=entered][data-is=entered]").click()
    card.locator("[data-rate=fair]").click()

    card.locator("[data-gate=entered][data-is='not entered']").click()

    expect(card.locator("[data-gate-odd]")).to_contain_text("The rating given is kept (fair)")
    expect(card.locator("[data-rate=fair]")).to_have_attribute("aria-pressed", "true")
    expect(card.locator("[data-rate=fair]")).to_be_visible()
    expect(card.locator("[data-rate=good]")).to_be_disabled()
    card.locator("[data-act=take-away]").click()
    expect(card.locator("[data-rate=fair]")).to_be_hidden()


def test_a_picture_that_is_attached_already_keeps_its_place(phone, served, tmp_path):
    """Snapped again, or chosen on another card, the same bytes stay where they are, and the page
    says where."""
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    file = list(a_walk.pictures(tmp_path, 1).values())
    first, second = (a_walk.unfold(a_walk.plain_cards(phone).nth(number)) for number in (0, 1))
    first.locator("input[data-photo=choose]").set_input_files(file)
    expect(first.locator("[data-photos] button")).to_have_count(1)

    where = (
        f"Hull structure and coatings · Shell and sea chests, {first.locator('h3').inner_text()}"
    )
    for place in (phone.locator("#snap"), second.locator("input[data-photo=choose]")):
        place.set_input_files(file)
        expect(phone.locator("#alarm")).to_contain_text(
            f"This photo is kept already, under: {where}"
        )
        phone.click("#alarm button")

    expect(first.locator("[data-photos] button")).to_have_count(1)
    expect(second.locator("[data-photos] button")).to_have_count(0)
    expect(phone.locator("[data-tray-count]")).to_have_text("0")


@pytest.mark.parametrize("way", ["close", "Escape"])
def test_a_finding_closed_half_written_is_there_again(phone, served, way):
    """After a refused keep and a close, only the card it was begun on shows the text again;
    dropped, it is gone."""
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    cards, dialog = a_walk.plain_cards(phone), phone.locator("#finding-dialog")
    a_walk.unfold(cards.first).locator("[data-act=finding]").click()
    phone.fill("#finding-text", "Rust behind the frame")
    phone.click("[data-finding-keep]")
    expect(dialog).to_contain_text("Say in a line what is wrong.")
    phone.keyboard.press("Escape") if way == "Escape" else dialog.locator("[type=submit]").click()
    expect(dialog).to_be_hidden()
    phone.reload()
    expect(phone.locator("[data-ready=yes]")).to_be_attached()
    expect(dialog).to_be_hidden()

    a_walk.unfold(cards.nth(1)).locator("[data-act=finding]").click()
    expect(phone.locator("#finding-text")).to_have_value("")
    dialog.locator("[type=submit]").click()
    cards.first.locator("[data-act=finding]").click()
    expect(phone.locator("#finding-text")).to_have_value("Rust behind the frame")
    expect(dialog).to_contain_text("half-written")
    phone.click("[data-finding-drop]")
    cards.first.locator("[data-act=finding]").click()
    expect(phone.locator("#finding-text")).to_have_value("")


def test_a_finding_names_the_check_it_was_made_from(phone, served):
    """The check is recorded beside the unit; dialog, list and card show it, and the card's line
    opens it."""
    inspection = a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    card = a_walk.unfold(a_walk.plain_cards(phone).first)
    title, subject = card.locator("h3").inner_text(), card.get_attribute("data-subject")
    expect(card.locator("[data-found]")).to_be_hidden()
    card.locator("[data-act=finding]").click()
    expect(phone.locator("#finding-dialog [data-on]")).to_contain_text(title)
    phone.fill("#finding-title", "Crack at the frame")
    phone.check("[name=urgency][value='danger now']")
    phone.click("[data-finding-keep]")

    expect(card.locator("[data-found]")).to_contain_text("1 finding")
    expect(card.locator("[data-found] .danger")).to_contain_text("danger now")
    card.locator("[data-found] button").click()
    expect(phone.locator("#finding-title")).to_have_value("Crack at the frame")
    phone.locator("#finding-dialog [type=submit]").click()
    phone.evaluate("() => { location.hash = 'findings'; }")
    expect(phone.locator("#findings .finding")).to_contain_text(title)
    a_walk.handed_over(phone)
    state = served[1].extensions["data_folder"].inspections.get(inspection).state
    [found] = state.subjects("finding/")
    assert subject == f"sheet/{state.value(found, 'on')}/{state.value(found, 'check')}"


def test_minutes_that_are_no_minutes_get_a_sentence_and_no_list(phone, served):
    """Nothing, 0 and less are asked again; too many get the computer's own sentence; each look
    names its check once."""
    a_walk.begin(phone, served[0])
    phone.evaluate("() => { location.hash = 'advice'; }")
    words, looks = phone.locator("#advice .empty"), phone.locator("#advice .advised")
    expect(looks.first).to_be_visible()
    for typed, sentence in (
        ("0", "from 1 to 1440"),
        ("-5", "from 1 to 1440"),
        ("", "from 1 to 1440"),
        ("5000", "must be 0 to 1440"),
    ):
        phone.fill("#advice input", typed)
        phone.locator("#advice input").blur()
        expect(words).to_contain_text(sentence)
        expect(looks).to_have_count(0)
        phone.fill("#advice input", "30")
        phone.locator("#advice input").blur()
        expect(looks.first).to_be_visible()
    title = looks.first.locator("span").inner_text().split(":")[0]
    assert 1 == looks.first.inner_text().count(title)
    assert looks.first.locator("b").inner_text() in phone.locator("[data-sheet]").evaluate_all(
        "(all) => all.map((one) => one.dataset.name)"
    )


WIDE = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
SMALL = """() => [...document.querySelectorAll("button,a[href],select,summary,textarea,label.choice,input:not([type=radio],[type=checkbox],[type=file])")]
  .filter((one) => one.checkVisibility() && (one.offsetHeight < 44 || one.offsetWidth < 44)).map((one) => one.outerHTML.slice(0, 120))"""


def test_long_names_never_widen_the_walk_and_everything_can_be_tapped(phone, served):
    """With 80 letters for the surveyor and the vessel no view of the walk is wider than the
    screen, and no target under 44 px."""
    a_walk.begin(phone, served[0], LONG)
    a_walk.sheet(phone)
    card = a_walk.unfold(a_walk.plain_cards(phone).first)
    card.locator("[data-rate=fair]").click()
    card.locator("[data-act=history]").click()
    card.locator("[data-act=finding]").click()
    phone.fill("#finding-title", LONG)
    phone.check("[name=urgency][value='keep watch']")
    phone.click("[data-finding-keep]")
    expect(card.locator("[data-found]")).to_contain_text(LONG)
    phone.evaluate("(long) => { document.getElementById('here').textContent = long; }", LONG)
    sheet = phone.url.split("#")[1]
    tank = phone.locator("[data-sheet^='tanks/']").first.get_attribute("data-sheet")
    for view in (
        sheet,
        f"sheet/{tank}",
        "sheets",
        "findings",
        "ready",
        "advice",
        "refused",
        "tray",
    ):
        phone.evaluate("(view) => { location.hash = view; }", view)
        phone.wait_for_timeout(60)
        assert phone.evaluate(WIDE) <= 0, view
        assert [] == phone.evaluate(SMALL), view


def test_the_bar_with_undo_is_a_region_with_a_name(phone, served):
    """Whoever listens to the page finds undo among its landmarks."""
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    a_walk.plain_cards(phone).first.locator("[data-rate=fair]").click()

    expect(
        phone.get_by_role("region", name="the last act").get_by_role("button", name="undo")
    ).to_be_visible()


@pytest.mark.parametrize(
    ("agent", "words"),
    [
        (
            "Mozilla/5.0 (iPhone; CPU iPhone OS 17_0 like Mac OS X) Safari/604.1",
            "Add to Home Screen",
        ),
        ("Mozilla/5.0 (Linux; Android 14) Chrome/130.0 Mobile", "bookmark this page"),
        ("Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Firefox/140.0", "hand over before you close"),
    ],
)
def test_a_device_that_may_forget_says_what_to_do_about_it(phone, served, agent, words):
    """What is done about "kept for good" depends on the browser, so its own way is told."""
    phone.add_init_script(
        f"Object.defineProperty(Navigator.prototype, 'userAgent', {{ get: () => {agent!r} }});"
        "navigator.storage.persist = async () => false; navigator.storage.persisted = async () => false;"
    )
    a_walk.begin(phone, served[0])
    phone.evaluate("() => { location.hash = 'ready'; }")
    line = phone.locator("#ready li").nth(4)

    expect(line).to_have_attribute("data-ready", "ready with a caution")
    expect(line.locator(".next-step")).to_contain_text(words)

"""What one hand manages: taps and swipes counted on a phone, narrow screens, large text, and the
keyboard alone."""

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.demo.portfolio import prepare_in
from inspector.demo.scenario import PORTFOLIO
from tests import a_walk
from tests.a_server import serving

# What a thumb moves the page by at one swipe: what lies between the heading that sticks and the bar,
# so that no row is passed over.
SWIPE = 590
LOOKS_IN_A_SPACE = 10
SPACES = ("forecastle", "thruster-room", "switchboard-room", "steering-gear-room")
# Whether the middle of an element can be touched where it is.
TOUCHABLE = """(one) => {
  const place = one.getBoundingClientRect();
  const [x, y] = [place.left + place.width / 2, place.top + place.height / 2];
  if (y < 0 || y > innerHeight || !place.height) return false;
  const there = document.elementFromPoint(x, y);
  return one === there || one.contains(there) || there?.contains(one);
}"""
# Words of which a part stands on another line than the rest.
BROKEN = """() => {
  const found = [];
  const walker = document.createTreeWalker(document.querySelector(".walk"), NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!element.checkVisibility() || element.closest("template, script, option, noscript")) continue;
    for (const { 0: word, index } of node.data.matchAll(/[\\p{L}\\p{N}]+/gu)) {
      const range = document.createRange();
      range.setStart(node, index);
      range.setEnd(node, index + word.length);
      const lines = new Set([...range.getClientRects()].filter((one) => one.width).map((one) => Math.round(one.top)));
      if (lines.size > 1) found.push(`${word} in ${element.outerHTML.slice(0, 90)}`);
    }
  }
  return found;
}"""
# Text that is hidden by the box it stands in.
CUT = """() => [...document.querySelectorAll(".walk button, .walk label, .walk h1, .walk h2, .walk summary")]
  .filter((one) => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1 && one.clientWidth)
  .map((one) => one.outerHTML.slice(0, 120))"""
WIDE = "() => document.documentElement.scrollWidth - innerWidth"


@pytest.fixture(scope="module")
def barely(tmp_path_factory):
    """The address of the walk of the candidate of the demo that was barely walked."""
    folder = tmp_path_factory.mktemp("demo")
    prepare_in(folder)
    app = create_app(folder, TESTING=True)
    with serving(app) as port:
        yield f"http://127.0.0.1:{port}/inspection/{PORTFOLIO[2].id}/walk"


class Thumb:
    """Counts what a thumb does; it touches only what is in sight and not covered."""

    def __init__(self, page):
        self.page, self.taps, self.swipes = page, 0, 0

    def tap(self, locator):
        assert locator.evaluate(TOUCHABLE), locator
        locator.tap()
        self.taps += 1

    def swipe(self):
        self.page.evaluate("(by) => scrollBy(0, by)", SWIPE)
        self.swipes += 1

    def find_and_tap(self, locator):
        for _ in range(6):
            if locator.evaluate(TOUCHABLE):
                break
            self.swipe()
        self.tap(locator)

    def key(self, name):
        """A key of the keyboard on the screen."""
        self.page.keyboard.press(name)
        self.taps += 1


def looked_at(page):
    """The units and checks that this device has answered or read."""
    return {
        entry["subject"]
        for entry in a_walk.log_of(page).values()
        if not entry["device"].startswith("demo-")
        and (entry["field"] == "rating" or entry["field"].startswith("reading/"))
    }


# The rows that are in sight and have no answer yet, by the subjects of their units.
OPEN_IN_SIGHT = """() => {
  const isTouchable = %s;
  return [...document.querySelectorAll("#cards .rows article.check:not([data-enclosed])")]
    .filter((row) => row.checkVisibility() && isTouchable(row.querySelector("[data-rate=good]")))
    .filter((row) => !row.querySelector(".rate [aria-pressed=true], .units .mark:not(.m-open)"))
    .map((row) => row.dataset.subjects);
}"""


def open_rows(page):
    """The rows in sight without an answer."""
    return [
        page.locator(f"#cards article[data-subjects='{subjects}']")
        for subjects in page.evaluate(OPEN_IN_SIGHT % TOUCHABLE)
    ]


def read_one(thumb, page):
    """Unfold the first row in sight that is open and has a number, and type it."""
    for row in open_rows(page):
        subject = row.get_attribute("data-subjects").split()[0]
        _, system, _, check = subject.split("/")
        numbers = page.evaluate(
            """([system, check]) => document.querySelector(`template[data-system="${system}"]`)
                 .content.querySelectorAll(`[data-check="${check}"] [data-row=number]`).length""",
            [system, check],
        )
        if not numbers:
            continue
        title = row.locator("[data-act=unfold]")
        if not title.evaluate(TOUCHABLE):
            continue
        thumb.tap(title)
        field = row.locator("input[data-kind=number]").first
        thumb.find_and_tap(field)
        page.keyboard.type("12")
        thumb.key("Enter")
        return True
    return False


def walk_space(thumb, page, space):
    """Ten looks in a space, one of them with a reading."""
    thumb.tap(page.locator(".walk-nav [data-go=sheets]"))
    thumb.find_and_tap(page.locator(f"[data-space={space}]"))
    confirm = page.locator("#cards .dangers > button:visible")
    if confirm.count():
        thumb.find_and_tap(confirm)
        expect(confirm).to_be_hidden()
    before = len(looked_at(page))
    has_read = False
    while len(looked_at(page)) - before < LOOKS_IN_A_SPACE or not has_read:
        for row in open_rows(page):
            button = row.locator("[data-rate=good]")
            thumb.tap(button)
            expect(button).to_have_attribute("aria-pressed", "true")
            if len(looked_at(page)) - before >= LOOKS_IN_A_SPACE - (not has_read):
                break
        has_read = has_read or read_one(thumb, page)
        if len(looked_at(page)) - before < LOOKS_IN_A_SPACE or not has_read:
            thumb.swipe()
        assert thumb.swipes < 40


def test_forty_looks_in_four_spaces_with_readings_take_sixty_taps(phone, barely):
    """At most 60 taps, keys of the keyboard between fields included, and 20 swipes."""
    phone.goto(barely)
    a_walk.called(phone, "QX")
    thumb = Thumb(phone)
    thumb.find_and_tap(phone.locator("[data-list=space]"))
    for space in SPACES:
        walk_space(thumb, phone, space)

    readings = {
        entry["subject"]
        for entry in a_walk.log_of(phone).values()
        if not entry["device"].startswith("demo-") and entry["field"].startswith("reading/")
    }
    assert len(looked_at(phone)) >= 4 * LOOKS_IN_A_SPACE
    assert len(readings) >= len(SPACES)
    assert (thumb.taps <= 60, thumb.swipes <= 20) == (True, True), (thumb.taps, thumb.swipes)


def test_the_first_rating_from_an_empty_folder_takes_three_taps(phone, served):
    """Begin, next, good: nothing has to be typed before."""
    phone.goto(served[0])
    thumb = Thumb(phone)
    thumb.tap(phone.locator("button:has-text('begin the walk')"))
    phone.wait_for_selector(".walk[data-ready]")
    thumb.tap(phone.locator(".walk-nav [data-go=next]"))
    subject = phone.locator("#cards article.check:focus").get_attribute("data-subject")
    row = phone.locator(f"#cards article[data-subject='{subject}']")
    thumb.tap(row.locator("[data-rate=good]"))

    expect(row.locator("[data-rate=good]")).to_have_attribute("aria-pressed", "true")
    assert 3 == thumb.taps
    assert ["good"] == [
        entry["value"] for entry in a_walk.log_of(phone).values() if entry["field"] == "rating"
    ]


def stops(page):
    """Views to look at, each with what is unfolded on it."""
    for view in ("sheets", "space/engine-room", "space/tank-room", "find", "leaving", "ready"):
        page.evaluate("(view) => { location.hash = view; }", view)
        expect(page.locator("main > section:not([hidden]):not(#who)")).to_have_count(1)
        yield view
        for kind in (".many", "[data-enclosed]:not(.many)", ":not(.many):not([data-enclosed])"):
            row = page.locator(f"#cards .rows article.check{kind}:visible").first
            if view.startswith("space") and row.count():
                a_walk.unfold(row)
                row.locator("[data-act=not-seen]").first.click()
                yield f"{view} {kind} unfolded"


def test_at_320_pixels_no_word_is_broken_and_nothing_is_wide(phone, served):
    """WCAG 2.2, 1.4.10 (reflow at 320 CSS pixels), on rows, cells, gate, lists and search."""
    phone.set_viewport_size({"width": 320, "height": 700})
    a_walk.begin(phone, served[0])
    for view in stops(phone):
        assert [] == phone.evaluate(BROKEN), view
        assert phone.evaluate(WIDE) <= 0, view


def test_with_text_at_200_percent_nothing_is_cut_and_everything_works(phone, served):
    """WCAG 2.2, 1.4.4: a row is unfolded, rated and taken back."""
    a_walk.begin(phone, served[0])
    phone.evaluate("() => { document.documentElement.style.fontSize = '200%'; }")
    for view in stops(phone):
        assert [] == phone.evaluate(CUT), view
        assert phone.evaluate(WIDE) <= 0, view
    a_walk.sheet(phone)
    row = a_walk.unfold(a_walk.plain_cards(phone).first)
    row.locator("[data-rate=poor]").tap()
    expect(row.locator("[data-rate=poor]")).to_have_attribute("aria-pressed", "true")
    phone.locator("#undo button").tap()
    expect(row.locator("[data-rate=poor]")).to_have_attribute("aria-pressed", "false")


def test_a_stop_is_walked_with_the_keyboard_alone(phone, served):
    """Unfold, type, rate, one unit of several, fold a heading: no pointer is needed."""
    a_walk.begin(phone, served[0])
    phone.evaluate("() => { location.hash = 'space/thruster-room'; }")
    row = phone.locator("#cards article.many:not([data-enclosed]):visible").first
    phone.locator("#cards [data-fold]").first.focus()
    for _ in range(30):
        phone.keyboard.press("Tab")
        if row.locator("[data-act=unfold]").evaluate("(one) => one === document.activeElement"):
            break
    phone.keyboard.press("Enter")
    expect(row.locator(".body")).to_be_visible()
    phone.keyboard.press("Tab")  # all
    phone.keyboard.press("Tab")  # the first unit
    phone.keyboard.press("Enter")
    expect(row.locator("[data-unit]").nth(1)).to_have_attribute("aria-pressed", "true")
    while not row.locator("[data-rate=poor]").evaluate("(one) => one === document.activeElement"):
        phone.keyboard.press("Tab")
    phone.keyboard.press("Space")
    expect(row.locator("[data-unit]").nth(1).locator(".mark")).to_have_class("mark l-poor")
    field = row.locator("input[data-reading]").first
    field.focus()
    phone.keyboard.type("7")
    phone.keyboard.press("Enter")
    heading = phone.locator("#cards [data-fold]").first
    heading.focus()
    phone.keyboard.press("Enter")
    expect(heading).to_have_attribute("aria-expanded", "false")
    focus = heading.evaluate("(one) => getComputedStyle(one, null).outlineStyle")
    assert "none" != focus

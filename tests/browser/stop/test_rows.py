"""A stop is two screens: rows that unfold, like units in one row, headings that fold, filters, and
search, on a phone with touch."""

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.demo.portfolio import prepare_in
from inspector.demo.scenario import PORTFOLIO
from tests import a_walk
from tests.a_server import serving

SCREENS, SCREEN = 14, 844
HEIGHT = "() => document.documentElement.scrollHeight"
# Every view of the walk, by its address.
VIEWS = """() => [
  "sheets", "scans", "find", "tray", "findings", "advice", "ready", "leaving", "refused",
  ...[...document.querySelectorAll("[data-space]")].map((row) => `space/${row.dataset.space}`),
  ...[...document.querySelectorAll("[data-sheet]")].map((row) => `sheet/${row.dataset.sheet}`),
  ...[...document.querySelectorAll("template[data-trial-name]")].map((one) => `trial/${one.dataset.trial}`),
]"""


@pytest.fixture(scope="session")
def demo(tmp_path_factory):
    """The address of the demo vessel's walk, all of whose systems are on board, and its state."""
    folder = tmp_path_factory.mktemp("demo")
    prepare_in(folder)
    app = create_app(folder, TESTING=True)
    with serving(app) as port:
        yield f"http://127.0.0.1:{port}/inspection/{PORTFOLIO[0].id}/walk"


@pytest.fixture
def aboard(phone, demo):
    """A phone on the walk of the demo vessel."""
    phone.goto(demo)
    a_walk.called(phone, "QX")
    return phone


def go(page, view):
    page.evaluate("(view) => { location.hash = view; }", view)
    page.wait_for_function(
        "(view) => decodeURIComponent(location.hash.slice(1)) === view && "
        "document.querySelector('main section:not([hidden], #who)')",
        arg=view,
    )


def many(page, least=2):
    """The first row of like units without an enclosed space."""
    rows = page.locator("#cards article.many:not([data-enclosed]):visible")
    found = [row for row in rows.all() if row.locator("[data-unit]").count() > least]
    return found[0]


def ratings(page):
    """The last rating of each check that this device gave."""
    entries = sorted(a_walk.log_of(page).values(), key=lambda one: int(one["id"].split(":")[1]))
    return {
        one["subject"]: one["value"]
        for one in entries
        if one["field"] == "rating" and not one["device"].startswith("demo-")
    }


def test_no_view_of_the_walk_is_taller_than_fourteen_screens(aboard):
    """With the rows folded and every heading open: all spaces, sheets, trials and lists."""
    heights = {}
    for view in aboard.evaluate(VIEWS):
        go(aboard, view)
        # Open in full until they are read; from then on they are one strip.
        confirm = aboard.locator("#cards .dangers > button:visible")
        if confirm.count():
            confirm.click()
            expect(confirm).to_be_hidden()
        heights[view] = aboard.evaluate(HEIGHT)

    tall = {view: height for view, height in heights.items() if height > SCREENS * SCREEN}
    assert {} == tall
    assert len(heights) > 80
    # Nothing of the engine room is left out to get there.
    go(aboard, "space/engine-room")
    folded = aboard.locator("#cards [data-fold][aria-expanded=false]:not([data-fold=optional])")
    expect(folded).to_have_count(0)
    assert aboard.locator("#cards .rows article.check:visible").count() > 60


def test_a_tap_on_the_title_unfolds_what_to_ask_and_another_folds_it(aboard):
    """Ask, look, bad, readings, photo and note come by it, and the text is the checklist's."""
    go(aboard, "space/engine-room")
    row = aboard.locator("#cards article.check:not([data-enclosed], .many):visible").first
    title = row.locator("[data-act=unfold]")
    expect(row.locator(".look")).to_have_count(0)

    title.tap()
    for part in ("ask", "look", "bad"):
        expect(row.locator(f"[data-text={part}] span")).not_to_be_empty()
    expect(row.locator("[data-act=photo]")).to_be_visible()
    expect(row.locator("[data-act=note]")).to_be_visible()
    expect(title).to_have_attribute("aria-expanded", "true")

    title.tap()
    expect(row.locator(".look")).to_be_hidden()


def test_like_units_are_answered_alike_by_one_tap_and_each_by_its_own(aboard):
    """Good for all, then poor for one; a further tap on all does not write over unlike answers."""
    go(aboard, "space/thruster-room")
    row = many(aboard)
    subjects = row.get_attribute("data-subjects").split()
    # What the computer has is here: an answer given before that would stand beside it.
    expect(row.locator(".units .mark[class*='l-']").first).to_be_visible()
    a_walk.handed_over(aboard)
    row.locator("[data-unit]").nth(1).tap()
    row.locator("[data-rate=poor]").tap()
    expect(row.locator("[data-unit]").nth(1).locator(".mark")).to_have_class("mark l-poor")
    row.locator("[data-unit=all]").tap()
    row.locator("[data-rate=good]").tap()
    assert "poor" == ratings(aboard)[subjects[0]]


def test_all_alike_is_one_act_that_undo_takes_back(phone, served):
    """On a new inspection: two thrusters rated by one tap, both opened again by undo."""
    a_walk.begin(phone, served[0])
    go(phone, "space/thruster-room")
    row = many(phone)
    subjects = row.get_attribute("data-subjects").split()

    row.locator("[data-rate=fair]").tap()
    expect(row.locator(".units .l-fair")).to_have_count(len(subjects))
    row.locator("[data-rate=fair]").tap()
    assert dict.fromkeys(subjects, "fair") == ratings(phone)
    assert len(subjects) == sum(one["field"] == "rating" for one in a_walk.log_of(phone).values())

    phone.locator("#undo button").tap()
    expect(row.locator(".units .m-open")).to_have_count(len(subjects))

    row.locator("[data-unit]").nth(1).tap()
    row.locator("[data-rate=poor]").tap()
    row.locator("[data-unit=all]").tap()
    row.locator("[data-rate=good]").tap()
    expect(row.locator(".units .l-good")).to_have_count(len(subjects) - 1)
    row.locator("[data-rate=failed]").tap()
    expect(phone.locator("#alarm")).to_contain_text("Each of these units has its own answer")
    assert {**dict.fromkeys(subjects, "good"), subjects[0]: "poor"} == ratings(phone)


def test_readings_of_like_units_are_a_line_of_cells(phone, served):
    """Each cell is recorded for its unit, in the unit of measure chosen once for the line."""
    a_walk.begin(phone, served[0])
    go(phone, "space/engine-room")
    rows = phone.locator("#cards article.many:not([data-enclosed]):visible")
    for row in rows.all():
        a_walk.unfold(row)
        line = row.locator(".cells:has([data-unit-of-line]):has(input[data-kind=number])")
        if line.count():
            break
    line = line.first
    fields = line.locator("input[data-kind=number]")
    unit = line.locator("[data-unit-of-line]")
    other = unit.locator("option").last.inner_text()
    unit.select_option(other)
    for index, text in enumerate(("11", "12")):
        fields.nth(index).fill(text)
        fields.nth(index).blur()

    subjects = row.get_attribute("data-subjects").split()
    expect(row.locator(".understood:visible")).to_have_count(2)
    read = {
        one["subject"]: one["value"]
        for one in a_walk.log_of(phone).values()
        if one["field"].startswith("reading/")
    }
    assert {
        subjects[0]: {"value": "11", "unit": other},
        subjects[1]: {"value": "12", "unit": other},
    } == read


def test_a_heading_sticks_below_the_header_and_folds_its_rows(aboard):
    """Scrolled into its rows the heading stays in sight; folded, its rows are gone."""
    go(aboard, "space/engine-room")
    heading = aboard.locator("#cards [data-fold]").first
    section = aboard.locator("#cards .rows section").first
    section.locator("article.check").nth(4).evaluate("(row) => row.scrollIntoView()")
    expect(heading).to_be_in_viewport()
    header, own = (
        aboard.locator(one).first.bounding_box() for one in (".walk-head", "#cards [data-fold]")
    )
    assert abs(header["y"] + header["height"] - own["y"]) <= 2

    heading.tap()
    expect(heading).to_have_attribute("aria-expanded", "false")
    expect(section.locator("article.check:visible")).to_have_count(0)
    expect(heading).to_be_in_viewport()


def test_filters_leave_what_was_asked_for_and_survive_a_reload(aboard):
    """Critical leaves the critical; a row that is answered stays until the filter is tapped."""
    go(aboard, "space/engine-room")
    rows = aboard.locator("#cards .rows article.check:visible")
    total = rows.count()
    aboard.locator("[data-filter=critical]").tap()
    assert 0 < rows.count() < total
    assert rows.count() == aboard.locator("#cards article[data-critical]:visible").count()
    aboard.reload()
    expect(aboard.locator("[data-filter=critical]")).to_have_attribute("aria-pressed", "true")
    aboard.locator("[data-filter=critical]").tap()

    aboard.locator("[data-filter='poor or worse']").tap()
    worse = aboard.locator("#cards article.check:visible")
    for row in worse.all():
        marks = row.locator(".l-poor, .l-failed").locator("xpath=ancestor::button")
        assert any(
            one.get_attribute("aria-pressed") == "true" or one.get_attribute("data-unit")
            for one in marks.all()
        ), row.get_attribute("data-subjects")


def test_a_row_that_is_answered_stays_under_the_thumb(phone, served):
    """With only the unseen shown, a rating does not move the rows below it."""
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    phone.locator("[data-filter=unseen]").tap()
    rows = phone.locator("#cards .rows article.check:visible")
    count = rows.count()
    rows.first.locator("[data-rate=good]").tap()
    expect(rows.first.locator("[data-rate=good]")).to_have_attribute("aria-pressed", "true")
    assert count == rows.count()


def test_every_check_is_found_by_a_word_from_any_place(aboard):
    """By title, by unit, and by what stands only in its text; found, it is answered there."""
    go(aboard, "space/engine-room")
    aboard.locator(".walk-head [data-go=find]").tap()
    field = aboard.locator("#cards .search input")
    expect(field).to_be_focused()
    field.fill("stern thruster oil")
    titles = aboard.locator("#cards .rows h3")
    expect(titles.first).to_be_visible()
    assert "oil" in " ".join(titles.all_inner_texts()).lower()

    field.fill("no such word aboard")
    expect(aboard.locator("#cards .shown")).to_have_text("0 rows found")
    field.fill("rag")
    expect(titles.first).to_be_visible()
    assert not all("rag" in title.lower() for title in titles.all_inner_texts())
    assert aboard.evaluate(HEIGHT) <= SCREENS * SCREEN


def test_the_first_row_of_a_space_is_the_whole_of_it_from_the_door(phone, served, tmp_path):
    """The photo is of the space, named so in the register of the report's assessment."""
    address, app = served
    inspection = a_walk.begin(phone, address)
    go(phone, "space/engine-room")
    door = phone.locator("#cards .door")
    expect(door).to_contain_text("first, the whole space from the door")
    pictures = a_walk.pictures(tmp_path, 1)
    door.locator("input").set_input_files(list(pictures.values()))
    expect(door.locator(".strip button")).to_have_count(1, timeout=30_000)
    expect(door).to_contain_text("one more from the door")

    door.locator(".strip button").tap()
    expect(phone.locator("#photo-sheet")).to_have_value("space/engine-room")
    phone.fill("#photo-caption", "Seen from the ladder")
    phone.locator("[data-photo-keep]").tap()
    expect(door.locator(".strip button")).to_have_count(1)
    a_walk.handed_over(phone)

    from inspector.assess.from_state import read_inspection
    from inspector.assess.registers import photos

    data = app.extensions["data_folder"]
    opened = data.inspections.get(inspection)
    library = data.library_of(opened)
    (photo,) = photos(read_inspection(opened.state), library)
    assert ("space/engine-room", "Engine room", "Seen from the ladder") == (
        photo.on,
        photo.place,
        photo.caption,
    )


SHORT = """async ([main, groups]) => {
  const { shortNames } = await import(main.replace("main.js", "rows/like_units.js"));
  return groups.map(shortNames);
}"""
NAMED = [
    (["Port engine", "Starboard engine"], ["P", "S"]),
    (["Generator set 1", "Generator set 2"], ["1", "2"]),
    (["Main switchboard, bus A", "Main switchboard, bus B"], ["A", "B"]),
    (["Fuel tank 1, port", "Fuel tank 1, starboard", "Fuel tank 2, port"], ["1 P", "1 S", "2 P"]),
    (["Shell and sea chests", "Weather decks and deckhouses"], ["shell", "weather"]),
    (["Distribution boards", "Distribution transformers"], ["1", "2"]),
]


def test_the_cells_of_units_have_the_shortest_names_that_tell_them_apart(phone, served):
    """What all names share is left out; port and starboard are P and S; else a word, else
    numbers."""
    a_walk.begin(phone, served[0])
    main = phone.locator("script[src*='main.js']").get_attribute("src")
    found = phone.evaluate(SHORT, [main, [names for names, _ in NAMED]])

    assert [short for _, short in NAMED] == found

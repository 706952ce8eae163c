"""The walk knows what can be had in the state in which the vessel is met, and what belongs together.

The checklists of these tests are a surveyor's own, so that no shipped text decides them.
"""

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.places import shipped
from tests.a_server import serving
from tests.a_walk import begin, handed_over, log_of, unfold

HEAD = """
[system]
id = "{id}"
name = "{name}"
order = {order}
unit = "{unit}"
units = {units}
about = "Invented for a test."
retain = "b"
refurbish = "c"
remove = "d"
home = "engine-room"
"""
CHECK = """
[[check]]
id = "{id}"
title = "{title}"
ask = "a"
look = "b"
bad = "c"
space = "{space}"
minutes = 3
weight = 3
{more}
"""
FINS = HEAD.format(
    id="fins", name="Fins", order=1, unit="fin", units='["Fin 1", "Fin 2"]'
) + "".join(
    CHECK.format(id=id, title=title, space=space, more=more)
    for id, title, space, more in (
        ("plate", "Type plate of the fin", "engine-room", ""),
        ("swing", "Swing of the fin", "engine-room", 'needs = "running"\ntogether = "swinging"'),
        ("noise", "Noise of the fin", "engine-room", 'needs = "running"\ntogether = "swinging"'),
        ("book", "Fin book", "ship-office", 'needs = "paper"\nscan = true\nonce = true'),
        ("paint", "Paint of the fin", "engine-room", "optional = true"),
        ("pump", "Pump of the fin", "engine-room", 'also = ["wings"]'),
    )
)
WINGS = HEAD.format(
    id="wings", name="Wings", order=2, unit="wing", units='["Wing"]'
) + CHECK.format(id="skin", title="Skin of the wing", space="quay", more="")
TRIALS = """
[trial.swinging]
name = "Fins swung"
minutes = 15
per = "unit"
needs = "running"
"""


@pytest.fixture
def served(tmp_path):
    """A server whose new inspections have two invented systems beside the shipped ones."""
    own = tmp_path / "data" / "checklists"
    own.mkdir(parents=True)
    (own / "fins.toml").write_text(FINS, encoding="utf-8")
    (own / "wings.toml").write_text(WINGS, encoding="utf-8")
    trials = (shipped("checklists") / "trials.toml").read_text(encoding="utf-8")
    (own / "trials.toml").write_text(trials + TRIALS, encoding="utf-8")
    app = create_app(tmp_path / "data", TESTING=True)
    assert () == app.extensions["data_folder"].own_faults
    with serving(app) as port:
        yield f"http://127.0.0.1:{port}", app


def sheet(page, name):
    page.evaluate("() => { location.hash = 'sheets'; }")
    page.locator(f".sheet-row[data-name='{name}']").click()


def titles(page):
    return page.locator("#cards article.check h3").all_inner_texts()


def test_what_cannot_run_is_recorded_in_one_act_and_taken_back_in_one(phone, served):
    """Cold lay-up: all that needs it running becomes not seen: not run; undo opens it again."""
    address, _ = served
    begin(phone, address)
    expect(phone.locator("#chances button")).to_have_count(0)

    phone.select_option("[data-met=state]", "cold lay-up")
    put_away = phone.locator("#chances button").first
    expect(put_away).to_contain_text("as not seen")
    put_away.click()

    expect(phone.locator("#chances button", has_text="as not seen")).to_have_count(0)
    entries = log_of(phone).values()
    ours = {
        one["subject"]: one["value"]
        for one in entries
        if one["field"] == "rating" and "/fins/" in one["subject"]
    }
    running = [f"sheet/fins/fin-{n}/{check}" for n in (1, 2) for check in ("swing", "noise")]
    assert dict.fromkeys(running, "not seen: not run") == ours

    phone.click("#undo button")
    expect(phone.locator("#chances button", has_text="as not seen")).to_have_count(1)
    handed_over(phone)


def test_a_card_says_what_speaks_against_it_now(phone, served):
    """In dock nothing runs, and the card of what must run says so; its type plate says nothing."""
    address, _ = served
    begin(phone, address)
    phone.select_option("[data-met=berth]", "in dock")
    sheet(phone, "Fin 1")

    swing = phone.locator("article[data-check=swing] [data-not-now]")
    expect(swing).to_have_text("cannot be had now: not run")
    expect(phone.locator("article[data-check=plate] [data-not-now]")).to_be_hidden()


def test_what_was_put_away_opens_again_when_she_runs(phone, served):
    """On the day of the sea trial the same checks are offered to be opened again."""
    address, _ = served
    begin(phone, address)
    phone.select_option("[data-met=state]", "dead")
    phone.locator("#chances button").first.click()

    phone.select_option("[data-met=state]", "in service")
    again = phone.locator("#chances button", has_text="again that can be had now")
    again.click()

    expect(again).to_have_count(0)
    of_swing = [one for one in log_of(phone).values() if one["subject"] == "sheet/fins/fin-1/swing"]
    # By number: the ids of a device do not sort as text.
    of_swing.sort(key=lambda one: int(one["id"].rpartition(":")[2]))
    assert [None] == [one["value"] for one in of_swing][-1:]


def test_a_shared_check_is_on_one_sheet_and_scans_are_listed_apart(phone, served):
    """Asked once: on the first fin's sheet only; before the visit it is listed with the papers."""
    address, _ = served
    begin(phone, address)
    sheet(phone, "Fin 1")
    assert "Fin book" in titles(phone)
    sheet(phone, "Fin 2")
    assert "Fin book" not in titles(phone)

    phone.evaluate("() => { location.hash = 'scans'; }")
    expect(phone.locator("#where")).to_have_text("before the visit, from the papers")
    assert "Fin book" in titles(phone)
    assert "Type plate of the fin" not in titles(phone)


def test_what_is_optional_counts_once_it_is_answered(phone, served):
    """Five checks count on the second fin's sheet less the shared one, until the paint is rated."""
    address, _ = served
    begin(phone, address)
    sheet(phone, "Fin 2")
    expect(phone.locator("#count")).to_have_text("0 of 4 seen")

    phone.locator("[data-fold=optional]").click()
    phone.locator("article[data-check=paint] [data-rate=good]").click()
    expect(phone.locator("#count")).to_have_text("1 of 5 seen")


def test_a_trial_shows_all_that_is_read_off_in_it(phone, served):
    """The card leads to its trial, where the checks of both fins are."""
    address, _ = served
    begin(phone, address)
    sheet(phone, "Fin 1")
    unfold(phone.locator("article[data-check=swing]")).locator(".trial a").click()

    expect(phone.locator("#here")).to_have_text("Fins swung")
    expect(phone.locator("#cards article.check")).to_have_count(2)
    expect(phone.locator("#cards .units [data-unit]:not([data-unit=all])")).to_have_count(4)


def test_a_check_of_another_sheet_is_a_line_with_its_answer(phone, served):
    """Both fins' pumps are named on the wing's sheet; the line leads to the card."""
    address, _ = served
    begin(phone, address)
    sheet(phone, "Wing")
    lines = phone.locator(".also-line")
    expect(lines).to_have_count(2)
    expect(lines.first).to_contain_text("open")

    lines.first.click()
    phone.locator("article[data-check=pump] [data-rate=poor]").click()
    sheet(phone, "Wing")
    expect(phone.locator(".also-line").first).to_contain_text("poor")

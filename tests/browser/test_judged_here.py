"""Readings judged on the phone alone, by the same Python as on the computer."""

import json

import pytest
from playwright.sync_api import expect

from inspector.assess.judged_sheets import judged_sheets
from inspector.checklists.library_tables import library_of_tables
from inspector.checklists.registry import CRITERIA
from inspector.record.entry import from_dict
from inspector.record.state import State
from inspector.values.numbers import NotANumber, parse_number
from tests import a_walk
from tests.criteria.golden_readings import golden_entries, golden_tables
from tests.ten_readings import ten_readings

# Another one of the page's own Python, so that the page goes on with its inspection.
OPEN = """async ([main, tables]) => {
  const { Python } = await import(main.replace("main.js", "python/python.js"));
  const addresses = JSON.parse(document.querySelector(".walk").dataset.python);
  window.second = new Python(addresses);
  second.start();
  await new Promise((resolve) => second.addEventListener("change", resolve));
  if (second.state !== "ready") throw new Error(second.why);
  return second.ask("open", tables);
}"""
NUMBERS = """async ([main, texts]) => {
  const { numberOf } = await import(main.replace("main.js", "page/typed_number.js"));
  return texts.map(numberOf);
}"""
PER_QUESTION = 1_500


def main_script(phone):
    """The address of the page's first script."""
    return phone.locator("script[src*='main.js']").get_attribute("src")


def test_every_criterion_says_the_same_on_the_phone_and_on_the_computer(phone, served):
    """The golden cases of all criteria, typed as readings, through the door that each uses."""
    tables, entries = golden_tables(), list(golden_entries())
    a_walk.begin(phone, served[0])
    phone.set_default_timeout(a_walk.STARTS_MS)
    assert {"criteria": len(CRITERIA)} == phone.evaluate(OPEN, [main_script(phone), tables])

    here = {}
    for start in range(0, len(entries), PER_QUESTION):
        part = entries[start : start + PER_QUESTION]
        here |= phone.evaluate("(part) => second.ask('judge', part)", part)

    read = [from_dict(each) for each in entries]
    there = json.loads(json.dumps(judged_sheets(State(read), library_of_tables(tables), read)))
    assert [] == [
        (subject, said, here.get(subject))
        for subject, said in there.items()
        if said != here.get(subject)
    ]
    assert set(there) == set(here)
    judged = {subject.rpartition("/")[2] for subject, said in there.items() if "sentence" in said}
    assert set(CRITERIA) == judged


@pytest.mark.parametrize(
    "texts",
    [
        ["", "x", "1,200", "1.200", "1.0250", "1 200", ".5", "5.", "+3", "−2", ">9", "1e3"],
        ["0", "007,50", "12 34", "1\u00a0200,5", "-0.25", "0.125", "20,9", "12' 3\""],
    ],
)
def test_the_page_reads_a_number_as_the_computer_does(phone, served, texts):
    """A field says at once what the computer would ask back."""
    a_walk.begin(phone, served[0])

    there = []
    for text in texts:
        try:
            there.append(parse_number(text))
        except NotANumber:
            there.append(None)

    assert there == phone.evaluate(NUMBERS, [main_script(phone), texts])


def test_ten_readings_are_judged_with_the_computer_away_also_after_a_reload(phone, computer):
    """Each card says the computer's own sentence, and that it was judged here; once the computer is
    back the same words are the computer's."""
    readings = ten_readings()
    assert 10 == len(readings)
    a_walk.begin(phone, computer.address)
    a_walk.kept_for_good(phone)
    a_walk.judges_here(phone)
    computer.kill()

    for place, reading in enumerate(readings):
        if place == 5:
            phone.reload()
            expect(phone.locator(".walk")).to_have_attribute("data-ready", "yes")
        card = a_walk.card(phone, reading.system, reading.check)
        a_walk.fill_readings(card, reading.fields)
        judged = card.locator(".judged")
        expect(judged).to_contain_text(reading.sentence, timeout=a_walk.STARTS_MS)
        expect(judged).to_contain_text("Judged on this device")

    computer.start()
    phone.evaluate("() => window.dispatchEvent(new Event('online'))")
    a_walk.handed_over(phone)
    for reading in readings:
        judged = a_walk.card(phone, reading.system, reading.check).locator(".judged")
        expect(judged).to_contain_text(reading.sentence)
        expect(judged).not_to_contain_text("Judged on this device")


def test_a_phone_that_cannot_run_python_waits_for_the_computer_and_says_so(phone, computer):
    """Its card waits until the computer has judged, and the ready screen has the line."""
    phone.add_init_script("delete globalThis.WebAssembly")
    reading = ten_readings()[0]
    a_walk.begin(phone, computer.address)
    a_walk.kept_for_good(phone)
    line = a_walk.judging_line(phone)
    expect(line).to_have_attribute("data-ready", "ready with a caution", timeout=a_walk.STARTS_MS)
    expect(line).to_contain_text("wait until the computer has judged")
    card = a_walk.card(phone, reading.system, reading.check)
    computer.kill()

    a_walk.fill_readings(card, reading.fields)

    expect(card.locator(".judged")).to_contain_text("waiting until the computer has judged")
    computer.start()
    phone.evaluate("() => window.dispatchEvent(new Event('online'))")
    expect(card.locator(".judged")).to_contain_text(reading.sentence, timeout=30_000)

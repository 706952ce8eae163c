"""The conversion on a phone: short pages, nothing sideways, labels that can be read."""

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.conversion.contents import CHAPTERS
from inspector.demo.portfolio import prepare_in
from tests.a_server import serving

BASE = "/inspection/demo-zellowen-tide/conversion"
# The whole conversion used to be one page of 33 700 px.
MOST_HEIGHT = {"": 4500}
MOST_OF_A_CHAPTER = 9000
LEAST_LABEL = 11
# The first page calculates; two slow cores may take their time for it.
PATIENCE = 90_000

LABELS = """() => [...document.querySelectorAll(".drawn svg")].flatMap((svg) => {
  const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
  return [...svg.querySelectorAll("text")].map(
    (label) => parseFloat(getComputedStyle(label).fontSize) * scale,
  );
})"""
# Inside their drawing and inside the window: no label is cut.
CUT = """() => [...document.querySelectorAll(".drawn svg")].flatMap((svg) => {
  const box = svg.getBoundingClientRect();
  return [...svg.querySelectorAll("text")].filter((label) => {
    const own = label.getBoundingClientRect();
    return own.left < box.left - 1 || own.right > Math.min(box.right, innerWidth) + 1;
  }).map((label) => label.textContent);
})"""
SMALL_TARGETS = """() => [...document.querySelectorAll("main a, main summary")].filter((one) => {
  const box = one.getBoundingClientRect();
  return box.height > 0 && box.height < 44;
}).map((one) => one.textContent.trim())"""


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    """The address of a server over the invented portfolio, which calculates each chapter once."""
    root = tmp_path_factory.mktemp("conversion")
    prepare_in(root / "data")
    with serving(create_app(root / "data", TESTING=True)) as port:
        yield f"http://127.0.0.1:{port}"


@pytest.mark.parametrize("chapter", ["", *CHAPTERS])
def test_a_page_of_the_conversion_is_short_and_readable(phone, demo, chapter):
    """No sideways scroll, a bounded height, labels of 11 px and targets of 44 px."""
    phone.goto(f"{demo}{BASE}/{chapter}".rstrip("/"), timeout=PATIENCE)
    expect(phone.locator("main h2").first).to_be_visible()

    assert phone.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
    height = phone.evaluate("() => document.documentElement.scrollHeight")
    assert height <= MOST_HEIGHT.get(chapter, MOST_OF_A_CHAPTER)
    assert [] == [size for size in phone.evaluate(LABELS) if size < LEAST_LABEL]
    assert [] == phone.evaluate(CUT)
    assert [] == phone.evaluate(SMALL_TARGETS)


def test_every_ask_leads_to_its_chapter(phone, demo):
    """The worst stands first, and the name of a chapter opens that chapter."""
    phone.goto(demo + BASE, timeout=PATIENCE)
    states = phone.locator(".ask .state").all_inner_texts()
    order = ["not met", "not known", "not sure", "met"]

    assert states
    assert states == sorted(states, key=order.index)
    phone.get_by_role("link", name="range and endurance").first.click()
    expect(phone.get_by_role("heading", name="Range and endurance")).to_be_visible(timeout=PATIENCE)

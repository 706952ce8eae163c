"""Candidates side by side in the browser: weights that are moved rank again, moved back they
change nothing, and nothing scrolls sideways."""

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.demo.portfolio import prepare_in
from tests.a_server import serving

# Milliseconds for a page on a slow and crowded computer.
PATIENT = 90_000


@pytest.fixture
def portfolio(tmp_path):
    """The address of a server over the invented portfolio."""
    prepare_in(tmp_path / "data")
    app = create_app(tmp_path / "data", TESTING=True)
    with serving(app) as port:
        yield f"http://127.0.0.1:{port}"


def move(page, aspect, value):
    slider = page.locator(f"[name='weight-{aspect}']")
    slider.evaluate(
        "(one, value) => { one.value = value; one.dispatchEvent(new Event('input', { bubbles: true })); }",
        str(value),
    )


def test_weights_moved_rank_again_and_moved_back_change_nothing(phone, portfolio):
    """The order changes with the weights; back at the old weights it is the old one; without any
    weight it says so."""
    # The first comparison assesses three vessels, on a crowded computer one after the other.
    phone.goto(f"{portfolio}/compare", timeout=PATIENT)
    ranking = phone.locator("#ranking")
    before = ranking.inner_text()
    move(phone, "cost", 100)
    move(phone, "condition", 0)
    expect(ranking).not_to_have_text(before, use_inner_text=True, timeout=PATIENT)
    move(phone, "cost", 20)
    move(phone, "condition", 40)
    expect(ranking).to_have_text(before, use_inner_text=True, timeout=PATIENT)
    for aspect in ("condition", "requirements", "cost", "surveys"):
        move(phone, aspect, 0)
    expect(ranking).to_contain_text("At least one weight", timeout=PATIENT)


@pytest.mark.parametrize(
    "path",
    [
        "/",
        "/compare",
        "/compare/checks/hull",
        "/rates",
        "/inspection/demo-zellowen-tide/conversion",
        "/inspection/demo-zellowen-tide/particulars",
        "/inspection/demo-zellowen-tide/rules",
        "/inspection/demo-zellowen-tide/decide/thrusters",
        "/inspection/demo-zellowen-tide/prepare",
        "/inspection/demo-zellowen-tide/report",
    ],
)
def test_no_page_scrolls_sideways_on_a_phone(phone, portfolio, path):
    """Tables scroll in their own box; the page itself never does."""
    phone.goto(portfolio + path, timeout=PATIENT)

    assert phone.evaluate("() => document.documentElement.scrollWidth <= innerWidth")

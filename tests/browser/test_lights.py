"""The chosen light from the first frame, contrast in red, and large text on a narrow phone."""

import re

import pytest

from inspector import places
from tests import a_walk

# The light at the moment in which the body is begun, before anything of it can be painted.
FIRST = """() => {
  new MutationObserver((changes, watcher) => {
    if (!document.body) return;
    window.firstLight = document.documentElement.dataset.light;
    watcher.disconnect();
  }).observe(document, { childList: true, subtree: true });
}"""
WIDE = "() => document.documentElement.scrollWidth - innerWidth"
RED = ("ink", "ink-2", "accent")
GROUNDS = ("paper", "sheet", "shoal", "accent-2")


@pytest.fixture
def red(phone, served):
    """A phone whose light is red, and the walk of an inspection."""
    a_walk.begin(phone, served[0])
    phone.evaluate("() => localStorage.setItem('light', 'red')")
    phone.add_init_script(f"({FIRST})()")
    return phone


def test_red_is_painted_from_the_first_frame_on_every_kind_of_page(red, served):
    """The walk, the first page, a page that is not there, and the page of the worker when the
    computer is gone."""
    address, _ = served
    walk = red.url.split("#")[0]
    for place in (walk, address, f"{address}/not-there"):
        red.goto(place)
        assert "red" == red.evaluate("() => window.firstLight"), place

    red.goto(walk)
    a_walk.kept_for_good(red)
    red.context.set_offline(True)
    red.goto(f"{address}/backup")
    assert "The computer does not answer" in red.content()
    assert "red" == red.evaluate("() => window.firstLight")


def luminance(colour):
    """Relative luminance, WCAG 2.2, definition of relative luminance."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    ]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize("text", RED)
@pytest.mark.parametrize("ground", GROUNDS)
def test_red_keeps_seven_to_one_for_text(text, ground):
    """WCAG 2.2, success criterion 1.4.6, contrast (enhanced): 7:1."""
    css = (places.shipped("static") / "css/base.css").read_text(encoding="utf-8")
    block = re.search(r'\[data-light="red"\] \{(.*?)\}', css, re.DOTALL).group(1)
    colours = dict(re.findall(r"--([a-z0-9-]+): (#[0-9a-f]{6})", block))
    one, other = (luminance(colours[name]) + 0.05 for name in (text, ground))
    assert max(one, other) / min(one, other) >= 7


@pytest.mark.parametrize(("width", "size"), [(320, "100%"), (390, "200%")])
def test_a_narrow_phone_and_double_text_widen_no_view(phone, served, width, size):
    """WCAG 2.2, 1.4.4 (resize text, 200 %) and 1.4.10 (reflow, 320 px)."""
    a_walk.begin(phone, served[0])
    a_walk.sheet(phone)
    hull = phone.url.split("#")[1]
    phone.set_viewport_size({"width": width, "height": 844})
    phone.evaluate("(size) => { document.documentElement.style.fontSize = size; }", size)
    for view in (hull, "sheets", "leaving", "ready", "findings", "tray"):
        phone.evaluate("(view) => { location.hash = view; }", view)
        phone.wait_for_timeout(60)
        assert phone.evaluate(WIDE) <= 0, view

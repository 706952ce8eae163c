"""Every view, in three lights and at both widths, against the rules of axe-core."""

import os
from functools import cache
from pathlib import Path

import pytest

from tests import a_walk
from tests.browser.views.demo_pages import FIRST, PAGES

AXE = Path(__file__).resolve().parents[3] / ".ci/js/node_modules/axe-core/axe.min.js"
WIDTHS = ((390, 844), (1280, 800))
# A light changes colours and nothing else, so that only their rule is run again in it.
LIGHTS = {"day": None, "night": ["color-contrast"], "red": ["color-contrast"]}
RUN = """async ([light, rules]) => {
  document.documentElement.dataset.light = light;
  const options = { resultTypes: ["violations"], elementRef: false };
  if (rules) options.runOnly = { type: "rule", values: rules };
  const { violations } = await axe.run(document, options);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, html, failureSummary }) => [id, String(target), html.slice(0, 160),
      failureSummary.split("\\n").slice(0, 3).join(" ")]));
}"""
VIEWS = ("sheets", "tray", "findings", "ready", "advice", "visit", "leaving", "refused")
# One unit with plain checks, and one whose checks ask for entry into an enclosed space.
SHEETS = ("landing-and-boarding", "tanks")
UNFOLD = "() => { for (const fold of document.querySelectorAll('main details')) fold.open = true; }"


@cache
def axe():
    """The text of axe-core."""
    if not AXE.exists():
        missing = "axe-core is not installed: run `npm ci --prefix .ci/js`"
        if os.environ.get("BROWSER_REQUIRED"):
            pytest.fail(missing)
        pytest.skip(missing)
    return AXE.read_text(encoding="utf-8")


def violations(page, view):
    """What axe finds against the view that is shown: one line each."""
    found = set()
    for width, height in WIDTHS:
        page.set_viewport_size({"width": width, "height": height})
        for light, rules in LIGHTS.items():
            for rule, target, html, why in page.evaluate(RUN, [light, rules]):
                found.add(f"{view}, {width} px, {light}: {rule} at {target}: {html} ({why})")
    return sorted(found)


def test_no_page_breaks_a_rule(phone, demo):
    """Beside the walk: home, prepare, round, decide, conversion, compare, report, sharing."""
    found = []
    for place in PAGES:
        answer = phone.goto(demo + place)
        assert answer.ok, place
        phone.evaluate(axe())
        found += violations(phone, place)

    assert [] == found


def test_no_view_of_the_walk_breaks_a_rule(phone, demo):
    """The lists, the screens, a unit's checks with everything open, a gate, a dialog."""
    a_walk.come_aboard(phone, demo, FIRST, "QX")
    phone.evaluate(axe())
    found = []
    for view in VIEWS:
        phone.evaluate("(view) => { location.hash = view; }", view)
        phone.locator(f"#{view}").wait_for()
        found += violations(phone, view)
    for system in SHEETS:
        a_walk.sheet(phone, system)
        phone.locator("#cards").wait_for()
        phone.evaluate(UNFOLD)
        found += violations(phone, f"a unit of {system}")
    phone.evaluate("() => document.getElementById('finding-dialog').showModal()")
    found += violations(phone, "the finding")

    assert [] == found

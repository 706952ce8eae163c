"""Pages stay where they are while they load, and hold narrow screens and large text."""

import pytest

from tests.browser.views.demo_pages import OF_FIRST, PAGES

# What moved without anybody having touched the page, as browsers count it.
SHIFTS = """
window.shifted = 0;
new PerformanceObserver((list) => {
  for (const each of list.getEntries()) if (!each.hadRecentInput) shifted += each.value;
}).observe({ type: "layout-shift", buffered: true });
"""
MOST_SHIFTED = 0.1
# A phone's weak link, on which the page is painted before its fonts are there.
LINK = {
    "offline": False,
    "latency": 150,
    "downloadThroughput": 200_000,
    "uploadThroughput": 90_000,
}
WIDE = "() => document.documentElement.scrollWidth - innerWidth"
# Words that stand on two lines, without a hyphen or a stroke at which they may break.
BROKEN = """() => {
  const found = [];
  const walker = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    // What is there for the ear alone is a point on the screen.
    if (!node.parentElement.checkVisibility() || node.parentElement.clientWidth === 1) continue;
    for (const { 0: word, index } of node.textContent.matchAll(/[A-Za-z]{2,24}/g)) {
      const range = document.createRange();
      range.setStart(node, index);
      range.setEnd(node, index + word.length);
      const lines = new Set([...range.getClientRects()].map((one) => Math.round(one.top)));
      if (lines.size > 1) found.push(`${word} in <${node.parentElement.tagName}>`);
    }
  }
  return found;
}"""


@pytest.mark.parametrize("place", ["/", f"{OF_FIRST}/decide", f"{OF_FIRST}/conversion"])
def test_next_to_nothing_moves_while_a_page_loads(phone, demo, place):
    """Fonts and scripts that come late push nothing away under a finger."""
    phone.add_init_script(SHIFTS)
    network = phone.context.new_cdp_session(phone)
    network.send("Network.enable")
    network.send("Network.emulateNetworkConditions", LINK)
    phone.set_default_timeout(120_000)
    phone.goto(demo + place, wait_until="networkidle")
    phone.evaluate("() => document.fonts.ready.then(() => new Promise(requestAnimationFrame))")

    assert phone.evaluate("() => shifted") < MOST_SHIFTED


@pytest.mark.parametrize(("width", "size"), [(320, "100%"), (390, "200%")])
def test_no_page_breaks_a_word_or_runs_sideways(phone, demo, width, size):
    """WCAG 2.2, 1.4.4 (resize text, 200 %) and 1.4.10 (reflow, 320 px)."""
    phone.set_viewport_size({"width": width, "height": 844})
    wrong = []
    for place in PAGES:
        phone.goto(demo + place)
        phone.evaluate("(size) => { document.documentElement.style.fontSize = size; }", size)
        if phone.evaluate(WIDE) > 0:
            wrong.append(f"{place} is {phone.evaluate(WIDE)} px too wide")
        wrong += [f"{place} breaks {word}" for word in phone.evaluate(BROKEN)]

    assert [] == sorted(set(wrong))

"""What the walk page costs on the device, in Chromium at phone size: its weight, how long our own
Python takes to start and to judge, when the first tap is answered, and whether a tap waits, at a
quarter of the speed.
"""

import gzip
import json
import statistics
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from inspector import create_app
from inspector.in_browser import door
from tests import a_browser, a_walk
from tests.a_server import serving
from tests.assess.round.vessels import entries_before_the_visit, shipped_library
from tests.benchmarks.slowed import slowed
from tests.criteria.golden_readings import entry
from tests.ten_readings import ten_readings

QUARTER = 4
TAPS = 24
# With the page's own door: the reading goes to the worker and its judgement comes back.
ROUND_TRIPS = """async ([main, entries]) => {
  const { Python } = await import(main.replace("main.js", "python/python.js"));
  const python = new Python(JSON.parse(document.querySelector(".walk").dataset.python));
  python.start();
  await new Promise((resolve) => python.addEventListener("change", resolve));
  if (python.state !== "ready") throw new Error(python.why);
  await python.ask("judge", entries);
  const took = [];
  for (let round = 0; round < 10; round += 1) {
    for (const entry of entries) {
      const begun = performance.now();
      await python.ask("judge", [entry]);
      took.push(performance.now() - begun);
    }
  }
  return [python.startedIn, took];
}"""
# A tap every quarter of a second on another rating; each is timed until the button is painted as
# pressed.
TAPPING = """async (taps) => {
  const card = document.querySelector("#cards article.check:not([data-enclosed])");
  const words = ["good", "fair", "poor", "failed"];
  const took = [];
  for (let tap = 0; tap < taps; tap += 1) {
    const button = card.querySelector(`[data-rate=${words[tap % words.length]}]`);
    const begun = performance.now();
    button.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true }));
    button.click();
    await new Promise((resolve) => {
      const observer = new MutationObserver(() => {
        if (button.getAttribute("aria-pressed") !== "true") return;
        observer.disconnect();
        requestAnimationFrame(() => resolve());
      });
      observer.observe(button, { attributes: true });
    });
    took.push(performance.now() - begun);
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  return took;
}"""
CARD = "#cards article.check:not([data-enclosed])"
# When the first rating of the view could be tapped, counted from the request for the page, and when
# it was painted as pressed.
FIRST_TAP = """() => {
  const answered = () => {
    const row = document.querySelector("#cards article.check:not([data-enclosed])");
    const isReady = row && document.querySelector(".walk[data-ready]");
    if (!isReady) return requestAnimationFrame(answered);
    // Never the one that an earlier round pressed.
    const button = row.querySelector("[data-rate][aria-pressed=false]");
    const ready = performance.now();
    button.click();
    const painted = () => {
      if (button.getAttribute("aria-pressed") !== "true") return requestAnimationFrame(painted);
      window.firstTap = [ready, performance.now()];
    };
    painted();
  };
  answered();
}"""
SPACES = ("engine-room", "ship-office")


@contextmanager
def phone_on(address: str, with_python: bool) -> Iterator:
    """A phone's page; without Python its browser has no WebAssembly."""
    from playwright.sync_api import sync_playwright

    path = a_browser.installed() or a_browser.own_download()
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=path, args=["--no-sandbox"])
        size = {"width": 390, "height": 844}
        page = browser.new_context(viewport=size, has_touch=True, is_mobile=True).new_page()
        page.set_default_timeout(120_000)
        if not with_python:
            page.add_init_script("delete globalThis.WebAssembly")
        yield page
        browser.close()


def below_deck(folder: Path) -> None:
    """The figures of judging on the device, one line each."""
    app = create_app(folder / "data", TESTING=True)
    with serving(app) as port:
        address = f"http://127.0.0.1:{port}"
        weight(address)
        first_tap(address)
        judging(address)
        composing(address)
        tapping(address)


def fetched(address: str) -> tuple[int, bytes]:
    """The size of an answer as it travels [bytes], and its body."""
    request = urllib.request.Request(address, headers={"Accept-Encoding": "gzip"})
    with urllib.request.urlopen(request, timeout=60) as answer:
        data = answer.read()
        is_packed = answer.headers.get("Content-Encoding") == "gzip"
    return len(data), gzip.decompress(data) if is_packed else data


def weight(address: str) -> None:
    """What travels for an inspection of every system: the page itself, its scripts and styles, and
    the texts that it shares with Python."""
    with phone_on(address, with_python=False) as page:
        inspection = a_walk.begin(page, address)
        names = page.evaluate(
            """() => performance.getEntriesByType("resource").map((one) => one.name)
                 .filter((name) => /\\.(js|css)$/.test(name))"""
        )
        texts = page.evaluate(
            "() => JSON.parse(document.querySelector('.walk').dataset.python).checklists"
        )
    own, _ = fetched(f"{address}/inspection/{inspection}/walk")
    others = sum(fetched(name)[0] for name in set(names))
    shared, _ = fetched(address + texts)
    print(
        f"the walk page: {own / 1000:.0f} kB compressed; goal 120 kB. Its scripts and styles "
        f"{others / 1000:.0f} kB, the checklists it shares with Python {shared / 1000:.0f} kB",
        flush=True,
    )


def first_tap(address: str) -> None:
    """From the request for the page of an inspection of every system to the first tap answered."""
    for space in SPACES:
        with phone_on(address, with_python=True) as page:
            a_walk.begin(page, address)
            a_walk.kept_for_good(page)
            page.evaluate("(space) => { location.hash = `space/${space}`; }", space)
            page.add_init_script(f"addEventListener('DOMContentLoaded', {FIRST_TAP})")
            slow = page.context.new_cdp_session(page)
            slow.send("Emulation.setCPUThrottlingRate", {"rate": QUARTER})
            took = []
            for _ in range(5):
                page.reload()
                page.wait_for_function("() => window.firstTap")
                took.append(page.evaluate("() => window.firstTap"))
        ready, painted = (statistics.median(one) for one in zip(*took, strict=True))
        print(
            f"the first tap in {space} at a quarter of the speed: possible after {ready:.0f} ms, "
            f"answered after {painted:.0f} ms from the request for the page; goal 1500 ms",
            flush=True,
        )


def judging(address: str) -> None:
    """Start of Python and one judgement, at the machine's own speed."""
    with phone_on(address, with_python=True) as page:
        a_walk.begin(page, address)
        # The page's own is up by then, and everything is in the browser's cache.
        a_walk.judges_here(page)
        main = page.locator("script[src*='main.js']").get_attribute("src")
        started, took = page.evaluate(ROUND_TRIPS, [main, readings()])
    print(f"Python on the device: up in {started / 1000:.1f} s; goal: after the page can be used")
    median, last = statistics.median(took), percentile(took)
    print(
        f"a judgement on the device: {median:.1f} ms, 95th percentile {last:.1f} ms; goal 50 ms",
        flush=True,
    )


COMPOSE = """async ([main, questions]) => {
  if (!window.second) {
    const { Python } = await import(main.replace("main.js", "python/python.js"));
    window.second = new Python(JSON.parse(document.querySelector(".walk").dataset.python));
    second.start();
    await new Promise((resolve) => second.addEventListener("change", resolve));
    if (second.state !== "ready") throw new Error(second.why);
  }
  let took = 0;
  for (const [question, given] of questions) {
    const begun = performance.now();
    await second.ask(question, given);
    took = performance.now() - begun;
  }
  return took;
}"""


# How long a fixed piece of work takes [ms]: how slow the browser is just now.
COUNTING = """() => {
  const begun = performance.now();
  let sum = 0;
  for (let count = 0; count < 1e9; count += 1) sum += count % 7;
  return performance.now() - begun;
}"""


def composing(address: str) -> None:
    """The round of a whole vessel, assessed and composed: here, on the device, at a quarter."""
    library = shipped_library()
    entries = entries_before_the_visit(library, date="2026-05-02", off="13:00", people="2")
    asked = {"now": "2026-05-02T09:00:00+02:00", "here": None, "before": None, "person": 0}
    questions = [
        ("open", json.loads(library.tables_json)),
        ("add", entries),
        ("follow", {**asked, "anew": True}),
    ]
    with phone_on(address, with_python=True) as page:
        a_walk.begin(page, address)
        a_walk.judges_here(page)
        main = page.locator("script[src*='main.js']").get_attribute("src")
        page.evaluate(COMPOSE, [main, questions])
        here = statistics.median(_composed_here(questions) for _ in range(5))
        device = statistics.median(page.evaluate(COMPOSE, [main, questions]) for _ in range(5))
        pace = page.evaluate(COUNTING)
        with slowed(1 / QUARTER):
            slow = statistics.median(page.evaluate(COMPOSE, [main, questions]) for _ in range(3))
            # On a crowded computer the pulse comes late, so that what was reached is said with it.
            reached = page.evaluate(COUNTING) / pace
    print(
        f"a round of a whole vessel for two: {here:.0f} ms on the computer, goal 1000 ms; on the "
        f"device {device:.0f} ms, {device / here:.1f} x; slowed {reached:.1f} x (aim {QUARTER} x) "
        f"{slow:.0f} ms, {slow / here:.1f} x, goal 5000 ms",
        flush=True,
    )


def _composed_here(questions: list) -> float:
    """Milliseconds of the last question through the door on this computer."""
    begun = 0.0
    for question, given in questions:
        begun = time.perf_counter()
        door.answer(question, json.dumps(given))
    return 1000 * (time.perf_counter() - begun)


def readings() -> list[dict]:
    """Readings of ten criteria as entries."""
    found = []
    for reading in ten_readings():
        for name, text in reading.fields.items():
            subject = f"sheet/{reading.system}/one/{reading.check}"
            value = {"value": text, "unit": ""}
            found.append(entry(len(found) + 1, subject, f"reading/{name}", value))
    return found


def tapping(address: str) -> None:
    """Taps at a quarter of the speed: the first ones after loading, with our own Python waiting for
    a quiet moment and with none at all; and those that come while it starts.
    """
    ways = [("without Python", False, False), ("with Python", True, False)]
    for name, with_python, while_it_starts in [*ways, ("while Python starts", True, True)]:
        with phone_on(address, with_python) as page:
            a_walk.begin(page, address)
            a_walk.sheet(page)
            slow = page.context.new_cdp_session(page)
            slow.send("Emulation.setCPUThrottlingRate", {"rate": QUARTER})
            page.reload()
            page.locator(f"{CARD} [data-rate=good]").first.wait_for()
            if while_it_starts:
                page.wait_for_event("worker", lambda worker: "python_worker" in worker.url)
            took = page.evaluate(TAPPING, TAPS)
        print(
            f"a tap at a quarter of the speed, {name}: first {took[0]:.0f} ms, median "
            f"{statistics.median(took):.0f} ms, 95th percentile {percentile(took):.0f} ms; "
            "goal: no difference, 100 ms",
            flush=True,
        )


def percentile(took: list[float]) -> float:
    """The 95th percentile."""
    return statistics.quantiles(took, n=20)[-1]


if __name__ == "__main__":
    import tempfile

    with tempfile.TemporaryDirectory() as made:
        below_deck(Path(made))

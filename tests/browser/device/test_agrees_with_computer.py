"""Device and computer agree on drawn inspections, to the last digit: readings judged, the round, the
next looks, condition and word.
"""

import json
import os

from inspector.in_browser import door
from tests import a_walk
from tests.random_inspections import drawn

# `INSPECTIONS=1000 python3 -m pytest tests/browser/test_agrees_with_computer.py` for the long run.
COUNT = int(os.environ.get("INSPECTIONS", "25"))
AT_ONCE = 5
LAST = "the round before"
# Another one of the page's own Python, so that the page goes on with its inspection.
START = """async (main) => {
  const { Python } = await import(main.replace("main.js", "python/python.js"));
  window.second = new Python(JSON.parse(document.querySelector(".walk").dataset.python));
  second.start();
  await new Promise((resolve) => second.addEventListener("change", resolve));
  if (second.state !== "ready") throw new Error(second.why);
}"""
ASK = """async ([inspections, last]) => {
  const found = [];
  for (const questions of inspections) {
    const answers = [];
    let round = null;
    for (const [question, given] of questions) {
      if (given?.before === last) given.before = round;
      const answer = await second.ask(question, given);
      round = answer?.round ?? round;
      answers.push(answer);
    }
    found.push(answers);
  }
  return found;
}"""


def questions(seed):
    """What is asked of one inspection: half of it, a round; all of it, what changes."""
    one = drawn(seed)
    half = len(one.entries) // 2
    asked = {"now": "2026-05-02T10:30:00+02:00", "here": None, "person": 0, "anew": False}
    later = {**asked, "now": "2026-05-02T11:20:00+02:00", "before": LAST}
    return [
        ("open", one.tables),
        ("judge", one.entries[:half]),
        ("follow", {**asked, "before": None}),
        ("judge", one.entries[half:]),
        ("words", None),
        ("looks", {"minutes": 45, "here": ""}),
        ("follow", later),
        ("follow", {**later, "person": 1, "anew": True}),
    ]


def on_the_computer(asked):
    """The answers of the same door on this computer, as they travel."""
    found, last = [], None
    for question, given in asked:
        if isinstance(given, dict) and given.get("before") == LAST:
            given = {**given, "before": last}
        answer = json.loads(door.answer(question, json.dumps(given)))["answer"]
        last = (answer or {}).get("round", last)
        found.append(answer)
    return found


def test_drawn_inspections_come_out_alike_on_device_and_computer(phone, served):
    """Every answer of the door, of each inspection."""
    a_walk.begin(phone, served[0])
    phone.set_default_timeout(a_walk.STARTS_MS)
    phone.evaluate(START, phone.locator("script[src*='main.js']").get_attribute("src"))

    rounds = words = judged = 0
    for start in range(0, COUNT, AT_ONCE):
        asked = [questions(seed) for seed in range(start, min(start + AT_ONCE, COUNT))]
        here = phone.evaluate(ASK, [asked, LAST])
        there = [on_the_computer(each) for each in asked]
        for number, (one, other) in enumerate(zip(there, here, strict=True), start):
            assert one == other, f"inspection {number}"
        rounds += sum("round" in answer for each in there for answer in (each[2], *each[6:]))
        words += sum(len(each[4]["systems"]) for each in there)
        judged += sum(len(each[1]) + len(each[3]) for each in there)
    print(f"{COUNT} inspections: {judged} sheets judged, {words} words, {rounds} rounds alike")
    # They were no empty ones.
    assert min(rounds, words, judged) >= COUNT

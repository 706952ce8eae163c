"""The fold of the walk page and the fold of the laptop are one rule: on generated sets of
entries both show the same heads, values and disagreements."""

import base64
import json
import os
import random
import shutil
import subprocess
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from inspector.record.entry import EntryRefused, from_dict, to_dict
from inspector.record.state import State, snapshot
from tests import a_browser

FOLD = Path(__file__).resolve().parents[2] / "static" / "js" / "walk" / "record" / "fold.js"
SETS = 400
SUBJECTS = ("sheet/hull/shell/plating", "sheet/hull/shell-2/plating", "vessel", "finding/leak_1")
FIELDS = ("rating", "reading/t", "reading/t-2", "note")
# What a value may be: among them pairs that are equal, or different, only in one of the two
# languages if one is careless.
VALUES = (
    "good",
    "Good",
    "",
    None,
    True,
    False,
    1,
    0,
    1.0,
    1.5,
    "1",
    [],
    {},
    ["a", "b"],
    ["b", "a"],
    {"value": "9.6", "unit": "mm"},
    {"unit": "mm", "value": "9.6"},
    {"a": {"x": 1, "y": 2}},
    {"a": {"y": 2, "x": 1}},
    [1],
    [True],
    "é",
    "e\u0301",
    "\U0001f6a2",
    "\ufb01",
)
TIMES = (
    "2026-05-02T09:14:07.512Z",
    "2026-05-02T09:14:07Z",
    "2026-05-02T09:14Z",
    "2000-01-01T00:00:00.000Z",
    "2057-12-31T23:59:59.999Z",
    "2026-05-02 09:14:07.512Z",
    "20260502T091407Z",
)

# Yields, for each set, what the other side's snapshot, disputes and values are.
SCRIPT = """
async (address, sets) => {
  const { State } = await import(address);
  return sets.map((entries) => {
    const state = new State(entries), told = {}, disputes = [], values = [];
    for (const subject of state.subjects("")) {
      told[subject] = {};
      for (const field of state.fields(subject)) {
        told[subject][field] = state.heads(subject, field).map((entry) => entry.id);
        if (state.disputed(subject, field)) disputes.push([subject, field]);
        values.push(state.value(subject, field));
      }
    }
    return [told, disputes, values];
  });
}
"""


def some_entries(chance: random.Random) -> list[dict]:
    """A set as honest devices make it, as one with holes, or as a forged one with circles; in
    any order, some of it twice."""
    forged, entries = chance.random() < 0.3, []
    numbers = dict.fromkeys(("phone", "phone-2", "laptop"), 0)
    subjects, fields = SUBJECTS[: chance.randint(1, 4)], FIELDS[: chance.randint(1, 4)]
    for _ in range(chance.randint(0, 25)):
        device, subject, field = (
            chance.choice(list(numbers)),
            chance.choice(subjects),
            chance.choice(fields),
        )
        numbers[device] += 1
        known = [one["id"] for one in entries if (one["subject"], one["field"]) == (subject, field)]
        if forged:
            known = [
                f"{one}:{number}"
                for one in numbers
                for number in range(1, 6)
                if (one, number) != (device, numbers[device])
            ]
        entries.append(
            {
                "id": f"{device}:{numbers[device]}",
                "at": chance.choice(TIMES),
                "device": device,
                "who": "QX",
                "subject": subject,
                "field": field,
                "value": chance.choice(VALUES),
                "replaces": chance.sample(known, chance.randint(0, min(len(known), 3))),
            }
        )
        if known and chance.random() < 0.2:
            numbers["laptop"] += 1
            entries.append(a_note(f"laptop:{numbers['laptop']}", entries[-1], chance))
    kept = [one for one in entries if chance.random() < 0.9]
    again = chance.sample(kept, len(kept) // 4)
    return chance.sample(kept + again, len(kept) + len(again))


def a_note(note_id: str, entry: dict, chance: random.Random) -> dict:
    """A laptop's note that the author of an entry cannot have seen what it names as replaced."""
    claims = [one for one in entry["replaces"] if chance.random() < 0.7]
    return {
        **entry,
        "id": note_id,
        "device": "laptop",
        "subject": "inspection",
        "field": "unseen/" + entry["id"].replace(":", "_"),
        "value": chance.choice([claims, [*claims, 7], "no list", None]),
        "replaces": [],
    }


def here(entries: list[dict]):
    """What the laptop shows of a set."""
    state = State(map(from_dict, entries))
    values = [
        state.value(subject, field)
        for subject in state.subjects()
        for field in state.fields(subject)
    ]
    return [snapshot(state), [[subject, field] for subject, field, _ in state.disputes()], values]


def by_node(sets: list, folder: Path) -> list:
    shutil.copy(FOLD, folder / "fold.mjs")
    (folder / "sets.json").write_text(json.dumps(sets))
    (folder / "run.mjs").write_text(
        f'import {{ readFileSync }} from "node:fs";\nconst run = {SCRIPT.strip()};\n'
        'const sets = JSON.parse(readFileSync(new URL("./sets.json", import.meta.url)));\n'
        'console.log(JSON.stringify(await run("./fold.mjs", sets)));\n'
    )
    done = subprocess.run(
        ["node", folder / "run.mjs"], capture_output=True, text=True, timeout=60, check=False
    )
    assert not done.returncode, done.stderr
    return json.loads(done.stdout)


def by_browser(sets: list) -> list:
    from playwright.sync_api import sync_playwright

    path = a_browser.installed() or a_browser.own_download()
    if not path:
        missing = f"neither node nor {a_browser.MISSING}"
        pytest.fail(missing) if os.environ.get("BROWSER_REQUIRED") else pytest.skip(missing)
    address = "data:text/javascript;base64," + base64.b64encode(FOLD.read_bytes()).decode()
    with sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=path, args=["--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu"]
        )
        try:
            # As text, so that what JSON says reaches the page as JSON and not in the driver's own
            # spelling.
            told = browser.new_page().evaluate(
                f"async ([address, sets]) => JSON.stringify(await ({SCRIPT})(address, JSON.parse(sets)))",
                [address, json.dumps(sets)],
            )
        finally:
            browser.close()
    return json.loads(told)


def in_javascript(sets: list, folder: Path) -> list:
    """What the page's own code makes of the sets: run by node where there is one, else by a
    browser."""
    if shutil.which("node"):
        return by_node(sets, folder)
    # in a thread of its own: playwright allows one session a thread, and the browser tests may have
    # left theirs open in this one
    with ThreadPoolExecutor(1) as own:
        return own.submit(by_browser, sets).result()


def exactly(found) -> str:
    # Text, since Python holds True and 1 for equal; whole numbers are spelt alike in both languages
    # once they are read as such.
    return json.dumps(found, sort_keys=True, ensure_ascii=True, default=str)


def test_both_folds_show_the_same(tmp_path):
    """Heads in their order, disagreements and shown values are the same on 400 sets: honest,
    with holes and forged, shuffled and repeated."""
    chance = random.Random(7)
    sets = [json.loads(json.dumps(some_entries(chance))) for _ in range(SETS)]
    told = in_javascript(sets, tmp_path)
    assert SETS == len(told)
    for entries, (heads, disputes, values) in zip(sets, told, strict=True):
        expected = here(entries)
        assert (expected[0], expected[1]) == (heads, disputes), json.dumps(entries)
        assert exactly(expected[2]).replace("1.0", "1") == exactly(values).replace("1.0", "1"), (
            entries
        )
    assert 100 < sum(bool(disputes) for _, disputes, _ in told)
    assert 100 < sum(
        any(len(ids) > 1 for fields in heads.values() for ids in fields.values())
        for heads, _, _ in told
    )


def at_times(*times):
    return [
        {
            "id": f"phone:{number}",
            "at": at,
            "device": "phone",
            "who": "QX",
            "subject": "vessel",
            "field": "name",
            "value": at,
            "replaces": [],
        }
        for number, at in enumerate(times, 1)
    ]


def test_times_in_other_spellings_stand_in_one_order(tmp_path):
    """Times that a lenient reader takes are put in the same order by both, whatever stands
    between date and time."""
    times = [
        f"2026-05-02{mark}09:14:07{end}Z"
        for mark in "Tt _~"
        for end in ("", ".5", ".512", ".512345")
    ]
    sets = [at_times(*times), at_times(*reversed(times))]
    assert [here(entries) for entries in sets] == in_javascript(sets, tmp_path)


@pytest.mark.parametrize("mark", ["\uffee", "\U0001f6a2", "é"])
def test_a_time_with_other_signs_is_refused(mark):
    """Beyond ASCII the two languages order text differently, so such a time is no entry's time."""
    with pytest.raises(EntryRefused, match="expected a UTC time"):
        here(at_times(f"2026-05-02{mark}09:14:07Z"))


def test_an_entry_survives_the_way_to_the_page(tmp_path):
    """What the laptop sends is what it folds: as JSON there and back, every value is the same."""
    sets = [some_entries(random.Random(3)) for _ in range(20)]
    assert all(
        entry == to_dict(from_dict(json.loads(json.dumps(entry))))
        for entries in sets
        for entry in entries
    )

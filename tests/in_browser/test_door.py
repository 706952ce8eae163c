"""The door between the walk page and our own Python: the same answers as the computer gives, with
nothing but the archive that a device is given.
"""

import hashlib
import json
import subprocess
import sys
import tomllib
import zipfile
from io import BytesIO

import pytest

from inspector import places
from inspector.assess.judged_sheets import judged_sheets
from inspector.checklists.library_tables import library_of_tables
from inspector.checklists.loader import read_library
from inspector.checklists.registry import CRITERIA
from inspector.in_browser import door
from inspector.record.entry import from_dict
from inspector.record.state import State
from inspector.services import browser_python
from tests.checklists.test_own_criteria_files import SEALS
from tests.criteria.golden_readings import entry, golden_entries, golden_tables

# What a device does, with nothing installed: only the archive is on the path.
ALONE = """
import sys
sys.path.insert(0, sys.argv[1])
from inspector.in_browser.door import answer
for line in sys.stdin:
    question, _, given = line.partition(" ")
    print(answer(question, given))
"""


def on_the_computer(tables, entries):
    """What the laptop's exchange answers, as it travels."""
    read = [from_dict(each) for each in entries]
    found = judged_sheets(State(read), library_of_tables(tables), read)
    return json.loads(json.dumps(found))


def asked(*questions):
    """The last answer of a door that was never used before."""
    said = ""
    for question, given in questions:
        said = door.answer(question, json.dumps(given))
    return json.loads(said)


def test_the_archive_alone_judges_as_the_computer_does(tmp_path):
    """Nothing that judging needs is missing from it, and no other package is."""
    tables, entries = golden_tables(), list(golden_entries())[:600]
    zipfile.ZipFile(BytesIO(browser_python.modules())).extractall(tmp_path)
    lines = [("open", tables), ("judge", entries)]

    done = subprocess.run(
        [sys.executable, "-I", "-S", "-c", ALONE, str(tmp_path)],
        input="\n".join(f"{question} {json.dumps(given)}" for question, given in lines),
        capture_output=True,
        text=True,
        check=True,
    )

    opened, judged = map(json.loads, done.stdout.splitlines())
    assert {"answer": {"criteria": len(CRITERIA)}} == opened
    assert on_the_computer(tables, entries) == judged["answer"]


def test_the_archive_is_the_same_bytes_each_time():
    """A device keeps it by its digest: the same sources must not be fetched twice."""
    first = browser_python.modules()
    browser_python.modules.cache_clear()

    assert first == browser_python.modules()


def test_the_archive_holds_what_judges_and_nothing_that_writes_or_serves():
    """No page, no journal and no photo is on the device as Python."""
    names = zipfile.ZipFile(BytesIO(browser_python.modules())).namelist()

    assert sorted(names) == names
    assert {"inspector/assess/judging.py", "checklists/criteria/oil.toml"} <= set(names)
    assert [] == [
        name for name in names if name.startswith(("inspector/web", "inspector/record/journal"))
    ]


@pytest.mark.parametrize("name", sorted(browser_python.runtime()))
def test_the_runtime_is_what_was_fetched(name):
    """Each file has the digest that was written down with it, which every device checks again."""
    data = (browser_python.runtime_folder() / name).read_bytes()

    assert browser_python.runtime()[name] == hashlib.sha256(data).hexdigest()


READING = ("sheet/golden/one/harmonic-distortion", "reading/distortion")


# The example that the guide gives of a surveyor's own criterion: it has limits that can be set.
OWN = tomllib.loads(SEALS)
OWN_NAME = OWN["criterion"][0]["id"]
SEAL = f"sheet/golden/one/{OWN_NAME}"


def tables_with_own():
    """The golden checks, and one of the surveyor's own criterion."""
    tables = {**golden_tables(), "criteria-own.toml": OWN}
    check = {**tables["golden.toml"]["check"][0], "id": OWN_NAME, "criterion": OWN_NAME}
    check["readings"] = OWN["criterion"][0]["inputs"]
    tables["golden.toml"]["check"].append(check)
    return tables


def seal_readings():
    """A leakage between the limits as they are in his file."""
    return [
        entry(1, SEAL, "reading/leakage", {"value": "1.5", "unit": "l/h"}),
        entry(2, SEAL, "reading/state", {"value": "at rest", "unit": ""}),
    ]


def test_a_criterion_of_the_surveyors_own_judges_on_the_device():
    """His file travels with the checklists."""
    found = asked(("open", tables_with_own()), ("judge", seal_readings()))["answer"]

    assert on_the_computer(tables_with_own(), seal_readings()) == found
    assert "fair" == found[SEAL]["rating"]


def test_limits_of_the_surveyor_reach_the_device():
    """A limit that is set judges here as it judges on the computer, and its text is cited."""
    rule = library_of_tables(tables_with_own()).criteria[OWN_NAME]
    limit = next(limit.name for limit in rule.limit_set.limits if limit.name.endswith("_act"))
    settings = [
        entry(3, f"profile/{OWN_NAME}", limit, "1"),
        entry(4, f"profile/{OWN_NAME}", "source", "Letter of the yard, 3 May"),
    ]

    found = asked(("open", tables_with_own()), ("add", settings), ("judge", seal_readings()))

    assert on_the_computer(tables_with_own(), [*settings, *seal_readings()]) == found["answer"]
    assert "failed" == found["answer"][SEAL]["rating"]
    assert "Letter of the yard, 3 May" in found["answer"][SEAL]["source"]


def test_the_year_of_building_reaches_the_device():
    """An input that a check takes from the vessel's particulars is missing first, then used."""
    tables = json.loads(read_library(places.shipped("checklists")).tables_json)
    reading = entry(1, *of_shipped_check(tables, "built_year"))
    built = entry(2, "vessel", "year", "1996")

    without = asked(("open", tables), ("judge", [reading]))["answer"]
    found = asked(("open", tables), ("add", [built]), ("judge", [reading]))["answer"]

    assert on_the_computer(tables, [reading, built]) == found
    assert without != found


def of_shipped_check(tables, taken):
    """Subject, field and value of a first reading of a check that takes an input from elsewhere."""
    for data in tables.values():
        for check in data.get("check", ()):
            if taken in check.get("from", {}):
                reading = check["readings"][0]
                subject = f"sheet/{data['system']['id']}/one/{check['id']}"
                value = {"value": "10.5", "unit": reading.get("unit", "")}
                return subject, f"reading/{reading['id']}", value
    raise AssertionError(f"no check takes {taken}")


def test_what_the_computer_would_refuse_does_not_count_here():
    """An entry that is none is left out, and the others are judged."""
    good = entry(1, *READING, {"value": "6", "unit": "%"})
    broken = {**entry(2, *READING, {"value": "9", "unit": "%"}), "at": "yesterday"}

    found = asked(("open", golden_tables()), ("judge", [good, broken]))["answer"]

    assert on_the_computer(golden_tables(), [good]) == found


def test_a_question_before_anything_is_open_is_a_problem_in_words(monkeypatch):
    """The page gets a sentence and no silence."""
    monkeypatch.setattr(door, "_DOOR", door.Door())

    assert {"problem": "No inspection is open on this device yet."} == asked(("judge", []))

"""A surveyor's own criterion, from his data folder to the walk page and the assessment."""

import re
import zipfile
from pathlib import Path

import pytest

from inspector import create_app, places
from inspector.record.bundles.bundle import write

GUIDE = (Path(__file__).parents[2] / "checklists" / "README.md").read_text(encoding="utf-8")
CHAPTER = GUIDE.split("## A criterion of your own")[1].split("\n## ")[0]
SEALS = re.search(r"```toml\n(.*?)```", CHAPTER, re.DOTALL).group(1)
DECK = places.shipped("checklists") / "open-deck.toml"
CHECK = """
[[check]]
id = "fin-seal"
title = "Leakage of the fin's seal"
ask = "Ask when the seal was last changed."
look = "Count the drops for ten minutes."
bad = "A steady run."
space = "engine-room"
minutes = 12
weight = 4
criterion = "fin-seal-leakage"
given = { state = "moving" }
readings = [{ id = "leakage", label = "Leakage", unit = "l/h" }]
"""


def own_system(criterion="fin-seal-leakage"):
    """A system of the surveyor's own with one check that names a criterion."""
    text = DECK.read_text(encoding="utf-8").replace('id = "open-deck"', 'id = "fins"')
    return text.replace('name = "Open deck', 'name = "Fins') + CHECK.replace(
        "fin-seal-leakage", criterion
    )


@pytest.fixture
def start(tmp_path):
    """Start the tool over a data folder with own checklists and own criteria."""
    apps = []

    def started(criteria, checklists=None):
        folder = tmp_path / "data" / "checklists"
        (folder / "criteria").mkdir(parents=True)
        for name, text in criteria.items():
            (folder / "criteria" / name).write_text(text, encoding="utf-8")
        for name, text in (checklists or {}).items():
            (folder / name).write_text(text, encoding="utf-8")
        apps.append(create_app(tmp_path / "data", TESTING=True, WTF_CSRF_ENABLED=False))
        return apps[-1]

    yield started
    for app in apps:
        app.extensions["data_folder"].close()


def begin(app):
    """Begin an inspection and return its client, its id and the unit of the own system."""
    client = app.test_client()
    where = client.post("/inspections", data={"go": "walk"}).headers["Location"]
    inspection_id = where.split("/")[2]
    entries = client.get(f"/exchange/{inspection_id}/entries").json["entries"]
    units = [e["subject"] for e in entries if e["subject"].startswith("unit/fins/")]
    return client, inspection_id, units[0].split("/")[2] if units else ""


def read(client, inspection_id, unit, litres):
    """Type a leakage and return the judgement that comes back."""
    subject = f"sheet/fins/{unit}/fin-seal"
    entry = {
        "id": "phone:1",
        "at": "2026-05-02T09:14:07.512Z",
        "device": "phone",
        "who": "QX",
        "subject": subject,
        "field": "reading/leakage",
        "value": {"value": litres, "unit": "l/h"},
        "replaces": [],
    }
    answer = client.post(f"/exchange/{inspection_id}/entries", json={"entries": [entry]})
    return answer.json["judgements"][subject]


def test_an_own_criterion_judges_and_is_cited_as_his(start):
    """6.1 l/h of a moving fin's seal fails by the maker's manual, wherever it is judged."""
    app = start({"fin-seals.toml": SEALS}, {"fins.toml": own_system()})
    client, inspection_id, unit = begin(app)

    judgement = read(client, inspection_id, unit, "6,1")
    data = app.extensions["data_folder"]
    assessment = data.assessment_of(data.inspections.get(inspection_id))
    results = [r for part in assessment.systems for u in part.units for r in u.results]
    judged = [result.judgement for result in results if result.judgement]

    assert "failed" == judgement["rating"]
    assert "Manual of the fins, chapter 7" in judgement["source"]
    assert "cited by the surveyor" in judgement["source"]
    assert ["fin-seal-leakage"] == [each.criterion for each in judged]
    assert "cited by the surveyor" == judged[0].source.mark
    assert "fin-seal-leakage" in assessment.own_criteria


def test_the_walk_page_names_checklists_with_his_criterion(start):
    """A phone below deck judges by the surveyor's own criteria as well."""
    app = start({"fin-seals.toml": SEALS}, {"fins.toml": own_system()})
    client, inspection_id, _ = begin(app)
    page = client.get(f"/inspection/{inspection_id}/walk").get_data(as_text=True)
    address = re.search(r"/shipped/checklists/[^\"&]+[.]json", page).group()

    tables = client.get(address).get_json()

    assert ["fin-seal-leakage"] == [
        one["id"] for one in tables["criteria-fin-seals.toml"]["criterion"]
    ]


def test_its_limits_can_be_set_for_one_inspection(start):
    """The levels page lists his limits, and a limit set there is judged by."""
    app = start({"fin-seals.toml": SEALS}, {"fins.toml": own_system()})
    client, inspection_id, unit = begin(app)
    rules = f"/inspection/{inspection_id}/rules"
    kept = client.post(
        f"{rules}/fin-seal-leakage", data={"moving_act": "8", "source": "A letter of the maker"}
    )

    assert 302 == kept.status_code
    assert "The maker&#39;s limits of leakage" in client.get(rules).get_data(as_text=True)
    assert "fair" == read(client, inspection_id, unit, "6.1")["rating"]


def test_an_inspection_keeps_the_criterion_with_which_it_began(start, tmp_path):
    """A criterion that is removed later judges on where it began; a bundle takes it along."""
    app = start({"fin-seals.toml": SEALS}, {"fins.toml": own_system()})
    client, inspection_id, unit = begin(app)
    (tmp_path / "data" / "checklists" / "criteria" / "fin-seals.toml").unlink()
    data = app.extensions["data_folder"]
    inspection = data.inspections.get(inspection_id)

    assert "failed" == read(client, inspection_id, unit, "6.1")["rating"]
    assert (inspection.folder / "checklists" / "criteria-fin-seals.toml").is_file()
    bundle = tmp_path / "one.zip"
    write(inspection.folder, bundle)
    assert "checklists/criteria-fin-seals.toml" in zipfile.ZipFile(bundle).namelist()


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (SEALS.replace("upto", "up_to", 1), ["criteria/fin-seals.toml", "up_to"]),
        (SEALS.replace("margin = 1.5", "margin = 2"), ["examples 1", "gives the margin 1.5"]),
        (
            SEALS.replace('id = "fin-seal-leakage"', 'id = "oil-water"'),
            ["criterion oil-water, key id", "shipped, and cannot be replaced"],
        ),
        ("no = = toml", ["criteria/fin-seals.toml", "not readable as TOML"]),
    ],
)
def test_a_mistake_is_named_at_the_front_and_nothing_stops(start, text, expected):
    """File, criterion and key are named on the first page; inspections begin without it."""
    app = start({"fin-seals.toml": text})
    client, inspection_id, _ = begin(app)
    page = client.get("/").get_data(as_text=True)
    data = app.extensions["data_folder"]

    assert [] == [words for words in expected if words not in page]
    assert {} == data.library_of(data.inspections.get(inspection_id)).criteria


def test_a_check_that_asks_what_his_criterion_does_not_is_a_mistake(start):
    """A checklist is checked against his own criteria as against the shipped ones."""
    wrong = own_system().replace('given = { state = "moving" }', 'given = { state = "flying" }')
    app = start({"fin-seals.toml": SEALS}, {"fins.toml": wrong})

    assert "is no choice of fin-seal-leakage" in app.test_client().get("/").get_data(as_text=True)

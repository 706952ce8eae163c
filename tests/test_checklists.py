"""The shipped checklists load whole, and a broken folder names every mistake at once."""

import shutil

import pytest

from inspector.checklists import ChecklistFaults, read_library
from inspector.places import shipped
from inspector.web.desk import known_inputs

SEVEN = {"hull", "propulsion", "thrusters", "switchboards", "tanks", "reefers", "dynamic-positioning"}


@pytest.fixture(scope="module")
def library():
    return read_library(shipped("checklists"), known_inputs())


def test_seven_systems_hold_at_least_a_hundred_checks(library):
    """The seven systems are there, with at least 100 checks together."""
    assert set(library.systems) >= SEVEN
    assert sum(len(system.checks) for system in library.systems.values()) >= 100


@pytest.mark.parametrize("system_id", sorted(SEVEN))
def test_each_system_has_a_published_criterion(library, system_id):
    """Each of the seven systems has at least one check judged by a criterion."""
    assert any(check.criterion for check in library.systems[system_id].checks)


def test_required_inputs_of_every_criterion_are_supplied(library):
    """A check that names a criterion supplies each input that the criterion cannot do without."""
    from inspector.criteria.registry import CRITERIA

    missing = [
        (system.id, check.id, one.name)
        for system in library.systems.values() for check in system.checks if check.criterion
        for one in CRITERIA[check.criterion].inputs
        if not one.optional and one.name not in {r.id for r in check.readings} | set(check.given) | set(check.taken)
    ]
    assert missing == []


BREAKS = [
    ('weight = 3', 'weight = 9', "weight"), ('weight = 3', 'weight = true', "weight"), ('space = "', 'space = "no-such-', "space"),
    ('minutes = ', 'minuten = ', "minuten"), ('title = "', 'title = "" # "', "title"), ('order = 30', 'order = "thirty"', "order"),
    ('id = "thrusters"', 'id = "other"', "id"), ('criterion = "', 'criterion = "no-such-', "criterion"), ('caution = "', 'caution = "no-such-', "caution"),
]


@pytest.mark.parametrize(("old", "new", "key"), BREAKS)
def test_a_mistake_names_file_and_key(tmp_path, old, new, key):
    """One mistake in one file is told with the file's name and the key."""
    shutil.copytree(shipped("checklists"), tmp_path / "c")
    path = tmp_path / "c" / "thrusters.toml"
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")

    with pytest.raises(ChecklistFaults) as caught:
        read_library(tmp_path / "c", known_inputs())

    assert all(fault.startswith("thrusters.toml") for fault in caught.value.faults)
    assert any(f"key {key}" in fault for fault in caught.value.faults)


def test_all_mistakes_are_told_at_once(tmp_path):
    """Mistakes in several files come in one list; a file that is no TOML does not hide the others."""
    shutil.copytree(shipped("checklists"), tmp_path / "c")
    (tmp_path / "c" / "hull.toml").write_text("not = = toml")
    (tmp_path / "c" / "tanks.toml").write_text("[system]\nid = 'tanks'\n")

    with pytest.raises(ChecklistFaults) as caught:
        read_library(tmp_path / "c", known_inputs())

    assert {"hull.toml", "tanks.toml"} == {fault.split(",")[0].split(":")[0] for fault in caught.value.faults}
    assert len(caught.value.faults) > 8


def test_an_empty_folder_is_refused(tmp_path):
    """A folder without checklists says so."""
    with pytest.raises(ChecklistFaults, match="no checklist files"):
        read_library(tmp_path)

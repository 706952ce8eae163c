"""Trials, layouts and links between checks: mistakes are named, and older folders load."""

import shutil

import pytest

from inspector.checklists.loader import ChecklistFaults, read_library
from inspector.places import shipped
from inspector.values.vocabulary import SIGHTED


@pytest.fixture
def folder(tmp_path):
    shutil.copytree(shipped("checklists"), tmp_path, dirs_exist_ok=True)
    return tmp_path


def faults_of(folder):
    with pytest.raises(ChecklistFaults) as caught:
        read_library(folder)
    return caught.value.faults


FIN = """
[system]
id = "fins"
name = "Fins"
order = 5
unit = "fin"
units = ["Fin 1"]
about = "a"
retain = "b"
refurbish = "c"
remove = "d"

[[check]]
id = "seal"
title = "Seal"
ask = "a"
look = "b"
bad = "c"
space = "quay"
minutes = 3
weight = 3
"""
TRIAL = """
[trial.run]
name = "Run"
minutes = 10
per = "unit"
needs = "running"
"""
LAYOUT = """
[layout.plain]
name = "Plain"
about = "a"
units = { fins = [{ name = "Fin 1", kind = "wing" }] }
"""


def test_a_file_that_says_nothing_of_needs_asks_for_an_eye(folder):
    """A surveyor's own file, or an older one, loads: a look with the eye proves each check."""
    (folder / "fins.toml").write_text(FIN, encoding="utf-8")

    check = read_library(folder).systems["fins"].checks[0]

    assert ("sight", SIGHTED) == (check.needs, check.proof)
    assert (False, False, False) == (check.once, check.optional, check.scan)
    assert ("", ()) == (check.together, check.also)


def test_a_folder_without_trials_and_layouts_loads(folder):
    """An inspection that began before there were any opens as before."""
    for path in folder.glob("*.toml"):
        path.unlink()
    for name in ("spaces.toml", "cautions.toml"):
        shutil.copy(shipped("checklists") / name, folder)
    (folder / "fins.toml").write_text(FIN, encoding="utf-8")

    library = read_library(folder)

    assert ({}, {}) == (library.trials, library.layouts)


def test_one_caution_and_a_list_of_them_are_read_alike(folder):
    """The key caution takes one id or several."""
    (folder / "fins.toml").write_text(FIN + 'caution = "alone"\n', encoding="utf-8")
    assert ("alone",) == read_library(folder).systems["fins"].checks[0].cautions

    (folder / "fins.toml").write_text(FIN + 'caution = ["alone", "noise"]\n', encoding="utf-8")
    assert ("alone", "noise") == read_library(folder).systems["fins"].checks[0].cautions


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("minutes = 10", "", "trials.toml, trial run, key minutes: is missing"),
        ('"unit"', '"fleet"', "trials.toml, trial run, key per: is 'fleet'; expected one of"),
        ('"running"', '"luck"', "trials.toml, trial run, key needs: is 'luck'"),
        (
            'per = "unit"',
            'per = "unit"\ncautions = ["dragons"]',
            "trials.toml, trial run, key cauti",
        ),
        ('per = "unit"', 'per = "unit"\ncolour = "red"', "trials.toml, trial run, key colour"),
    ],
)
def test_a_mistake_in_a_trial_is_named(folder, old, new, expected):
    """Each mistake of a trial is named by file, trial and key."""
    assert old in TRIAL
    text = (folder / "trials.toml").read_text(encoding="utf-8") + TRIAL.replace(old, new)
    (folder / "trials.toml").write_text(text, encoding="utf-8")

    assert [expected] == [fault[: len(expected)] for fault in faults_of(folder)]


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ('about = "a"', "", "layouts.toml, layout plain, key about: is missing"),
        ("[{", "{", "layouts.toml, layout plain, key units.fins: is {"),
        (
            'name = "Fin 1", ',
            "",
            "layouts.toml, layout plain, key units.fins, key name: is",
        ),
        ('"wing"', "3", "layouts.toml, layout plain, key units.fins, key kind: is 3"),
    ],
)
def test_a_mistake_in_a_layout_is_named(folder, old, new, expected):
    """Each mistake of a layout is named by file, layout and key."""
    assert old in LAYOUT
    text = LAYOUT.replace(old, new).replace("}]", "}") if new == "{" else LAYOUT.replace(old, new)
    (folder / "layouts.toml").write_text(text, encoding="utf-8")

    assert [expected] == [fault[: len(expected)] for fault in faults_of(folder)]


def test_a_layout_may_name_a_kind_that_a_file_of_his_own_no_longer_has(folder):
    """A surveyor's own file in the place of a shipped one does not make the layouts a mistake."""
    (folder / "layouts.toml").write_text(LAYOUT, encoding="utf-8")

    assert "plain" in read_library(folder).layouts


def test_a_check_cannot_replace_itself_and_no_two_replace_the_same(folder):
    """What merged or moved is named once, by the check in whose place it went."""
    own = FIN + 'replaces = ["fins/seal", "fins/old"]\n'
    other = FIN.replace("fins", "wings") + 'replaces = ["fins/old"]\n'
    (folder / "fins.toml").write_text(own, encoding="utf-8")
    (folder / "wings.toml").write_text(other, encoding="utf-8")

    assert [
        "fins.toml, check seal, key replaces: 'fins/seal' is this check itself; "
        "expected an older one.",
        "wings.toml, check seal, key replaces: 'fins/old' is replaced by fins/seal already.",
    ] == faults_of(folder)

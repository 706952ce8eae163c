"""What killed writes left is removed at the next start; what somebody writes now is not."""

import os
import subprocess
import sys
import time

import pytest

from inspector.record import durable
from inspector.services import leftovers

HOUR = 3_600.0


@pytest.fixture
def dead():
    """The number of a process that has ended."""
    process = subprocess.Popen([sys.executable, "-c", ""])
    process.wait()
    return process.pid


def made(path, age):
    """A file, or with a file inside a folder, of that age in seconds."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(b"half")
    moment = time.time() - age
    os.utime(path, (moment, moment))
    return path


PARTS = ["", "tls", "inspections/a/journal", "inspections/a/photos", "inspections/a/derived"]


@pytest.mark.parametrize("part", PARTS)
def test_a_draft_of_a_dead_process_is_removed_once_it_is_old(tmp_path, dead, part):
    """Two hours old and its process gone: removed. A finished file beside it stays."""
    draft = made(tmp_path / part / f".photo.jpg.{dead}-140.new", 2 * HOUR)
    kept = made(tmp_path / part / "photo.jpg", 2 * HOUR)
    assert [draft] == leftovers.clear(tmp_path)
    assert kept.exists()
    assert not draft.exists()


@pytest.mark.parametrize(
    ("process", "age"),
    [("own", 2 * HOUR), ("dead", HOUR / 2)],
    ids=["its process runs", "young"],
)
def test_a_draft_that_may_be_in_use_is_left_alone(tmp_path, dead, process, age):
    """Neither another running process's draft nor a young one is touched."""
    number = os.getpid() if process == "own" else dead
    draft = made(tmp_path / f".catalogue.json.{number}-1.new", age)
    assert [] == leftovers.clear(tmp_path)
    assert draft.exists()


def test_after_a_day_a_draft_is_nobodys_whatever_its_number(tmp_path):
    """A process number is given again some day."""
    draft = made(tmp_path / f".catalogue.json.{os.getpid()}-1.new", 25 * HOUR)
    assert [draft] == leftovers.clear(tmp_path)


def test_folders_of_killed_imports_and_beginnings_go_after_a_day(tmp_path):
    """The quarantine of an import and the checklists of a half-begun inspection; never a young
    one, and never anything of an inspection."""
    old, young = 25 * HOUR, HOUR
    gone, left = [], []
    for name, age, list_ in (("old", old, gone), ("young", young, left)):
        for folder in (f"inspections/.quarantine-{name}", f"inspections/{name}/.checklists"):
            made(tmp_path / folder / "hull.toml", age)
            os.utime(tmp_path / folder, (time.time() - age,) * 2)
            list_.append(tmp_path / folder)
    kept = made(tmp_path / "inspections/old/checklists/hull.toml", old)
    assert sorted(gone) == sorted(leftovers.clear(tmp_path))
    assert all(each.exists() for each in (*left, kept))


def test_what_a_killed_replace_leaves_is_recognised(tmp_path):
    """The name that `durable.replace` gives its draft is the one that is looked for."""
    script = (
        "import os, pathlib, sys; from inspector.record import durable\n"
        "durable._rename = lambda *_: os._exit(9)\n"
        "durable.replace(pathlib.Path(sys.argv[1]), b'x')"
    )
    subprocess.run([sys.executable, "-c", script, str(tmp_path / "a.json")], check=False)
    (draft,) = tmp_path.iterdir()
    assert [draft] == leftovers.clear(tmp_path, time.time() + 2 * HOUR)
    durable.replace(tmp_path / "a.json", b"whole")
    assert [] == leftovers.clear(tmp_path, time.time() + 48 * HOUR)

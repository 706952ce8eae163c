"""The own journal removed, cut, damaged or replaced under a running program: nothing is lost."""

import os
import shutil

import pytest

from inspector.places import shipped
from inspector.record.bundles import bundle
from inspector.record.durable import NotWritten
from inspector.record.inspections import Inspections


@pytest.fixture
def running(tmp_path):
    """The inspections of a running program, with one that has three entries."""
    inspections = Inspections(tmp_path / "data", "laptop")
    inspection = inspections.create(shipped("checklists"), "one")
    for value in ("first", "second", "third"):
        inspection.record("QX", [("vessel", "name", value)])
    yield inspections
    inspections.close()


def _remove(path):
    path.unlink()


def _remove_the_folder_of_journals(path):
    shutil.rmtree(path.parent)


def _put_an_older_one_back(path):
    older = path.with_name("older")
    older.write_bytes(path.read_bytes().split(b"\n")[0] + b"\n")
    older.replace(path)


def _cut(path):
    os.truncate(path, path.stat().st_size // 2)


def _empty(path):
    path.write_bytes(b"")


def _damage_the_last_line(path):
    path.write_bytes(path.read_bytes().replace(b"third", b"thirt"))


ACTS = (
    _remove,
    _remove_the_folder_of_journals,
    _put_an_older_one_back,
    _cut,
    _empty,
    _damage_the_last_line,
)


def _after_restart(running):
    again = Inspections(running.folder, "laptop")
    found = {entry.id: entry.value for entry in again.get("one").entries}
    again.close()
    return found


WHOLE = {"laptop:1": "first", "laptop:2": "second", "laptop:3": "third"}


@pytest.mark.parametrize("act", ACTS)
def test_what_a_page_shows_is_on_disk_again(running, act, tmp_path):
    """Opening any page writes the known entries again: a bundle and a restart have them all."""
    act(running.folder / "one" / "journal" / "laptop.jsonl")
    assert "third" == running.get("one").state.value("vessel", "name")
    assert WHOLE == _after_restart(running)
    bundle.write(running.folder / "one", tmp_path / "one.zip")
    assert ("one", 3, 0) == bundle.take_in(tmp_path / "one.zip", tmp_path / "other", "other")


@pytest.mark.parametrize("act", ACTS)
def test_the_next_answer_brings_all_earlier_ones_back(running, act):
    """An answer that was being written when it happened gets its own number and is kept."""
    act(running.folder / "one" / "journal" / "laptop.jsonl")
    running.get("one").record("QX", [("vessel", "flag", "none")])
    assert {**WHOLE, "laptop:4": "none"} == _after_restart(running)


@pytest.mark.parametrize("act", ACTS)
def test_it_may_happen_between_reading_and_writing(running, act, monkeypatch):
    """In the moment before the line is appended, too, nothing is lost."""
    inspection = running.get("one")
    own_entry, path = inspection._own_entry, running.folder / "one" / "journal" / "laptop.jsonl"

    def act_then_make(*given):
        act(path)
        return own_entry(*given)

    monkeypatch.setattr(inspection, "_own_entry", act_then_make)
    inspection.record("QX", [("vessel", "flag", "none")])
    assert {**WHOLE, "laptop:4": "none"} == _after_restart(running)


def test_where_it_cannot_be_written_again_writing_stops(running, monkeypatch):
    """The page names what is only in memory, and an answer is refused until it is on disk."""
    inspection = running.get("one")
    (running.folder / "one" / "journal" / "laptop.jsonl").unlink()
    with monkeypatch.context() as broken:
        broken.setattr(os, "fsync", _full)
        running.get("one")
        assert "3 entries were removed from it and are only in memory" in str(inspection.damage[0])
        with pytest.raises(NotWritten):
            inspection.record("QX", [("vessel", "flag", "none")])
    inspection.record("QX", [("vessel", "flag", "none")])
    assert [] == inspection.damage
    assert {**WHOLE, "laptop:4": "none"} == _after_restart(running)


def _full(_):
    raise OSError(28, "No space left on device")


def test_a_removed_inspection_is_not_made_again_and_takes_no_answer(running):
    """The folder of the whole inspection stays away; the answer is refused with a sentence."""
    shutil.rmtree(running.folder / "one")
    with pytest.raises(NotWritten, match="is no longer there"):
        running.get("one").record("QX", [("vessel", "flag", "none")])
    assert not (running.folder / "one").exists()

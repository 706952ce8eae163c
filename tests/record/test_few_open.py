"""Only a few inspections stay open, none is open twice, none is let go with something unsaved."""

import gc
import os
import threading

import pytest

from inspector.record import durable
from inspector.record.inspections import Inspections

CHANGE = ("vessel", "name")


@pytest.fixture
def few(tmp_path):
    """The inspections of a program that keeps two open, with five of them on disk."""
    checklists = tmp_path / "sheets"
    checklists.mkdir()
    (checklists / "hull.toml").write_text("")
    found = Inspections(tmp_path / "data", "laptop", most_open=2)
    for number in range(5):
        found.create(checklists, f"one-{number}")
    yield found
    found.close()


def _open(few):
    return sorted(few._open)


def test_those_used_last_stay_open(few):
    """The third one opened closes the one not used for longest."""
    for name in ("one-0", "one-1", "one-0", "one-2"):
        few.get(name)

    assert ["one-0", "one-2"] == _open(few)


def test_an_inspection_in_use_is_never_opened_a_second_time(few):
    """Whoever works on one that was let go and whoever asks for it anew have the same object."""
    used = few.get("one-0")
    for number in range(1, 5):
        few.get(f"one-{number}")
    assert "one-0" not in _open(few)

    assert used is few.get("one-0")


def test_numbers_go_on_without_a_hole_after_an_inspection_was_let_go(few):
    """What is opened again reads its own file and counts on from there."""
    for value in ("first", "second", "third"):
        few.get("one-0").record("QX", [(*CHANGE, value)])
        for number in range(1, 5):
            few.get(f"one-{number}")
    gc.collect()

    found = few.get("one-0")

    assert ["laptop:1", "laptop:2", "laptop:3"] == [entry.id for entry in found.entries]
    assert {} == found.missing()


def test_a_list_that_reads_all_keeps_none_open(few):
    """An inspection that is read in passing takes no place of one that is worked on."""
    few.get("one-0")
    for number in range(5):
        few.get(f"one-{number}", keep_open=False)

    assert "one-0" in _open(few)
    assert "one-3" not in _open(few)


def test_what_is_only_in_memory_is_not_let_go(few, monkeypatch):
    """Where the own file was removed and the disk is full, the entries in memory are the last."""
    inspection = few.get("one-0")
    inspection.record("QX", [(*CHANGE, "kept")])
    few.folder.joinpath("one-0", "journal", "laptop.jsonl").unlink()

    def refuse(*_):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", refuse)
        inspection.refresh()
        del inspection
        for number in range(1, 5):
            few.get(f"one-{number}")
        gc.collect()
        assert "one-0" in _open(few)

    assert "kept" == few.get("one-0").state.value(*CHANGE)
    few.get("one-0").refresh()
    assert few.folder.joinpath("one-0", "journal", "laptop.jsonl").read_bytes().count(b"kept") == 1


def test_after_a_failed_write_an_inspection_is_not_let_go(few, monkeypatch):
    """What the failed write may have left on the disk is settled by the same object."""
    inspection = few.get("one-0")

    def refuse(*_):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", refuse)
        with pytest.raises(durable.NotWritten):
            inspection.record("QX", [(*CHANGE, "lost")])

    assert not inspection.may_be_closed()
    inspection.record("QX", [(*CHANGE, "kept")])
    assert inspection.may_be_closed()


def test_an_inspection_that_is_being_written_to_is_not_let_go(few):
    """Another thread that holds its lock is at work on it."""
    inspection = few.get("one-0")
    answers = []
    with inspection.lock:
        thread = threading.Thread(target=lambda: answers.append(inspection.may_be_closed()))
        thread.start()
        thread.join()

    assert [False] == answers
    assert inspection.may_be_closed()


def test_the_file_of_an_inspection_that_was_let_go_is_closed(few):
    """A thousand inspections must not use up the system's handles."""
    before = len(os.listdir("/proc/self/fd")) if os.path.isdir("/proc/self/fd") else None
    if before is None:
        pytest.skip("this system does not list open files")
    for round_ in range(3):
        for number in range(5):
            few.get(f"one-{number}").record("QX", [(*CHANGE, f"{round_} {number}")])
    gc.collect()

    assert len(os.listdir("/proc/self/fd")) <= before + few.most_open

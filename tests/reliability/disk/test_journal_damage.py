"""A pulled plug, rot and a full disk: whole entries are read, damage is named, and nothing
acknowledged is lost."""

import os

import pytest

from inspector.record import durable
from inspector.record.entry import Entry
from inspector.record.inspection import Inspection
from inspector.record.journal import Journal, read_folder, to_line

SUBJECT = "sheet/hull/hull-1/plating"


def an_entry(number, value="good"):
    return Entry(
        f"laptop:{number}", "2026-05-02T09:00:00.000Z", "laptop", "AB", SUBJECT, "note", value
    )


def test_a_journal_cut_at_every_byte_of_its_last_line(tmp_path):
    """Wherever the plug was pulled, the earlier entries are read, half a line is named, and what
    is appended afterwards is whole."""
    whole, last = b"".join(to_line(an_entry(n)) for n in (1, 2)), to_line(an_entry(3, "ü é 漢"))
    path = tmp_path / "laptop.jsonl"
    for cut in range(len(last) + 1):
        path.write_bytes(whole + last[:cut])
        complete = cut >= len(last) - 1  # a line that lacks only its newline is whole
        expected = [1, 2, 3] if complete else [1, 2]
        reading = read_folder(tmp_path)
        assert expected == [entry.number for entry in reading.entries.values()]
        assert (["laptop.jsonl, line 3"] if 0 < cut and not complete else []) == [
            str(one).partition(":")[0] for one in reading.damage
        ]
        journal = Journal(path)
        journal.append([an_entry(4), an_entry(5)])
        journal.close()
        assert [*expected, 4, 5] == [
            entry.number for entry in read_folder(tmp_path).entries.values()
        ]
        assert path.read_bytes().startswith(whole + last[:cut])


@pytest.mark.parametrize(
    "garbage",
    [
        b"garbage",
        b"\0" * 512,
        b"\xff\xfe",
        b"{}",
        b'{"sum":"00000000","entry":{}}',
        to_line(an_entry(9))[5:-1],
        b"[" * 5000,
    ],
)
def test_a_garbage_line_in_the_middle_costs_only_itself(tmp_path, garbage):
    """Lines before and after are read; the damage names file and line."""
    (tmp_path / "laptop.jsonl").write_bytes(
        to_line(an_entry(1)) + garbage + b"\n" + to_line(an_entry(2))
    )
    reading = read_folder(tmp_path)
    assert ["laptop:1", "laptop:2"] == list(reading.entries)
    assert [("laptop.jsonl", 2)] == [(one.file, one.line) for one in reading.damage]


def test_a_file_put_in_the_place_of_the_open_one_is_the_one_that_is_written_to(tmp_path):
    """A backup put back, or a folder carried by a program, while this one runs: the next entry
    goes to the file that bears the name."""
    path = tmp_path / "laptop.jsonl"
    journal = Journal(path)
    journal.append([an_entry(1)])
    (tmp_path / "put-back").write_bytes(path.read_bytes())
    (tmp_path / "put-back").replace(path)
    journal.append([an_entry(2)])
    path.unlink()
    journal.append([an_entry(3)])
    journal.close()
    assert [3] == [entry.number for entry in read_folder(tmp_path).entries.values()]
    path.unlink()
    journal.append([an_entry(4), an_entry(5)])
    (tmp_path / "put-back").write_bytes(path.read_bytes())
    (tmp_path / "put-back").replace(path)
    journal.append([an_entry(6)])
    journal.close()
    assert [4, 5, 6] == [entry.number for entry in read_folder(tmp_path).entries.values()]


def test_what_a_killed_process_left_is_durable_before_it_is_shown(tmp_path, monkeypatch):
    """Lines that no fsync of ours covers are synced when the inspection is opened: nobody may be
    shown what a pulled plug can still take."""
    (tmp_path / "journal").mkdir()
    path, synced, real = tmp_path / "journal" / "laptop.jsonl", [], os.fsync
    path.write_bytes(to_line(an_entry(1)))
    monkeypatch.setattr(
        os, "fsync", lambda handle: (synced.append(os.fstat(handle).st_ino), real(handle))
    )
    one = Inspection(tmp_path, "laptop")
    assert ([1], [path.stat().st_ino]) == ([entry.number for entry in one.entries], synced)
    one.close()


def full_after(monkeypatch, room):
    """A disk with `room` bytes left: os.write takes what fits, then refuses."""
    real, left = os.write, [room]

    def write(handle, data):
        if left[0] <= 0:
            raise OSError(28, "No space left on device")
        count = real(handle, bytes(data[: left[0]]))
        left[0] -= count
        return count

    monkeypatch.setattr(os, "write", write)


def refuse(*_):
    raise OSError(5, "Input/output error")


@pytest.mark.parametrize("room", [0, 1, 40, 150, 300])
@pytest.mark.parametrize("can_cut_back", [True, False])
def test_a_full_disk_acknowledges_nothing_and_loses_nothing(
    tmp_path, monkeypatch, room, can_cut_back
):
    """One sentence, no new answer in the state, the file readable, and the next answer kept once
    there is room, even if half a line stayed behind."""
    inspection = Inspection(tmp_path, "laptop")
    inspection.record("AB", [(SUBJECT, "note", "before")])
    with monkeypatch.context() as patch:
        full_after(patch, room)
        if not can_cut_back:
            patch.setattr(os, "ftruncate", refuse)
        with pytest.raises(
            durable.NotWritten,
            match=r"The disk did not take the entry \(no space left on device\)|cannot be opened",
        ):
            inspection.record("AB", [(SUBJECT, "note", "x" * 400)])
    assert "before" == inspection.state.value(SUBJECT, "note")
    assert ["before"] == [
        entry.value for entry in read_folder(tmp_path / "journal").entries.values()
    ]
    inspection.record("AB", [(SUBJECT, "note", "after")])
    inspection.close()
    again = Inspection(tmp_path, "laptop")
    assert "after" == again.state.value(SUBJECT, "note")
    assert ["before", "after"] == [entry.value for entry in again.state.history(SUBJECT, "note")]
    assert (room > 0 and not can_cut_back) == bool(again.damage)


@pytest.mark.parametrize("can_cut_back", [True, False])
def test_a_failed_sync_acknowledges_nothing(tmp_path, monkeypatch, can_cut_back):
    """A line that is written but not synced does not count; should it turn up later, it takes no
    number from an answer that was acknowledged."""
    inspection = Inspection(tmp_path, "laptop")
    inspection.record("AB", [(SUBJECT, "note", "before")])
    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", refuse)
        if not can_cut_back:
            patch.setattr(os, "ftruncate", refuse)
        with pytest.raises(durable.NotWritten, match=r"input/output error"):
            inspection.record("AB", [(SUBJECT, "note", "lost")])
    assert "before" == inspection.state.value(SUBJECT, "note")
    inspection.record("AB", [(SUBJECT, "note", "after")])
    inspection.close()
    reading = read_folder(tmp_path / "journal")
    assert {"before", "after"} | (set() if can_cut_back else {"lost"}) == {
        entry.value for entry in reading.entries.values()
    }
    assert [] == reading.damage


def test_entries_handed_over_on_a_full_disk_can_be_handed_over_again(tmp_path, monkeypatch):
    """A phone that got no acknowledgement sends the same entries later, and each is kept once."""
    inspection = Inspection(tmp_path, "laptop")
    same = {
        "at": "2026-05-02T09:00:00Z",
        "device": "phone",
        "who": "AB",
        "subject": SUBJECT,
        "field": "note",
        "replaces": [],
    }
    raw = [{**same, "id": f"phone:{n}", "value": str(n)} for n in (1, 2, 3)]
    with monkeypatch.context() as patch:
        full_after(patch, 250)
        with pytest.raises(durable.NotWritten):
            inspection.take_in(raw)
    assert [] == inspection.entries
    assert {f"phone:{n}": "stored" for n in (1, 2, 3)} == inspection.take_in(raw).outcomes
    assert {f"phone:{n}": "already had" for n in (1, 2, 3)} == inspection.take_in(raw).outcomes
    inspection.close()
    assert 3 == len(read_folder(tmp_path / "journal").entries)

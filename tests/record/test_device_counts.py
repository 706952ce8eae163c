"""No number is lost and none is given twice: holes, failed writes, and others' files."""

import errno
import os

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.places import shipped
from inspector.record import durable
from inspector.record.device_counts import DeviceCounts
from inspector.record.durable import NotWritten
from inspector.record.inspection import Inspection
from inspector.record.inspections import Inspections
from inspector.record.journal import Journal, to_line


@pytest.fixture
def one(tmp_path):
    inspections = Inspections(tmp_path, "host")
    yield inspections.create(shipped("checklists"), "one")
    inspections.close()


def fail(*_, **__):
    raise OSError(errno.ENOSPC, "No space left on device")


def reopened(inspection):
    return Inspection(inspection.folder, "host")


@given(st.lists(st.integers(1, 60), max_size=40))
def test_complete_and_missing_are_those_of_plain_counting(numbers):
    """In whatever order numbers come, the counts are those of the plain set."""
    counted = DeviceCounts()
    for number in numbers:
        counted.add("phone", number)
    held = next(n for n in range(62) if n + 1 not in numbers)
    holes = [n for n in range(1, max(numbers, default=0)) if n not in numbers]

    assert ({"phone": held} if numbers else {}) == counted.complete_up_to()
    assert ({"phone": holes} if holes else {}) == counted.missing()
    assert max(numbers, default=0) == counted.highest("phone")


def test_at_most_200_holes_are_named():
    """A far number names the first holes only, at once."""
    counted = DeviceCounts()
    counted.add("phone", 999_999_999)

    assert list(range(1, 201)) == counted.missing()["phone"]


@pytest.mark.parametrize("broken", ["write", "fsync"])
def test_a_failed_write_leaves_no_hole(one, monkeypatch, broken):
    """The number of an entry that the disk did not take goes to the next one."""
    one.record("QX", [("vessel", "name", "Grey Heron")])
    with monkeypatch.context() as patched:
        patched.setattr(os, broken, fail)
        with pytest.raises(NotWritten):
            one.record("QX", [("vessel", "flag", "none"), ("vessel", "yard", "north")])
    said = one.record("QX", [("vessel", "class", "none")])

    assert ["host:2"] == [entry.id for entry in said]
    again = reopened(one)
    assert ({"host": 2}, {}, None) == (
        again.complete_up_to(),
        again.missing(),
        again.state.value("vessel", "flag"),
    )


def test_a_line_that_could_not_be_cut_back_counts_as_recorded(one, monkeypatch):
    """A whole line left by a failed write is made durable and keeps its number."""
    one.record("QX", [("vessel", "name", "Grey Heron")])
    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", fail)
        patched.setattr(os, "ftruncate", fail)
        with pytest.raises(NotWritten):
            one.record("QX", [("vessel", "flag", "none")])
        with pytest.raises(NotWritten):
            one.record("QX", [("vessel", "yard", "north")])
    said = one.record("QX", [("vessel", "class", "none")])

    assert ["host:3"] == [entry.id for entry in said]
    again = reopened(one)
    assert ({"host": 3}, {}, []) == (again.complete_up_to(), again.missing(), again.damage)
    assert "none" == one.state.value("vessel", "flag") == again.state.value("vessel", "flag")
    assert 2 == (one.folder / "journal" / "host.jsonl").read_bytes().count(b'"host:2"')


def test_half_a_line_that_could_not_be_cut_back_gives_its_number_again(one, monkeypatch):
    """Half a line can never become whole, so its number is free; it stays as damage, named."""
    one.record("QX", [("vessel", "name", "Grey Heron")])
    real, calls = os.write, []

    def half(handle, data):
        calls.append(handle)
        return real(handle, bytes(data)[:60]) if len(calls) == 1 else fail()

    with monkeypatch.context() as patched:
        patched.setattr(os, "write", half)
        patched.setattr(os, "ftruncate", fail)
        with pytest.raises(NotWritten):
            one.record("QX", [("vessel", "flag", "none")])
    said = one.record("QX", [("vessel", "class", "none")])

    assert ["host:2"] == [entry.id for entry in said]
    again = reopened(one)
    assert {"host": 2} == again.complete_up_to()
    assert 1 == len(again.damage)


def test_an_answer_is_not_called_known_before_it_is_durable(one, monkeypatch, entry):
    """An entry whose sync failed is written again before it is acknowledged."""
    from inspector.record.entry import to_dict

    raw = to_dict(entry(1))
    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", fail)
        patched.setattr(os, "ftruncate", fail)
        for _ in range(2):
            with pytest.raises(NotWritten):
                one.take_in([raw])
    syncs, real = [], os.fsync
    monkeypatch.setattr(os, "fsync", lambda handle: (syncs.append(handle), real(handle)))

    assert one.take_in([raw]).outcomes["phone:1"] in ("stored", "already had")
    assert syncs


def test_files_of_other_computers_are_noticed_as_they_grow(one, entry):
    """A journal that another program brings piece by piece is read line by line, each once."""
    path = one.folder / "journal" / "other.jsonl"
    position = len(one.since(0))
    path.write_bytes(to_line(entry(1, device="other")))
    assert ["other:1"] == [found.id for found in one.since(position)]
    line = to_line(entry(2, device="other"))
    path.write_bytes(path.read_bytes() + line + line[:40])
    assert ["other:1", "other:2"] == [found.id for found in one.since(position)]
    assert 1 == len(one.damage)
    path.write_bytes(path.read_bytes()[:-40] + to_line(entry(3, device="other")))

    assert ["other:1", "other:2", "other:3"] == [found.id for found in one.since(position)]
    assert [] == one.damage
    assert 3 == one.complete_up_to()["other"]


def test_a_file_replaced_by_a_shorter_one_takes_nothing_back(one, entry):
    """A synchronising program that puts an older file back cannot make what was read unread."""
    path = one.folder / "journal" / "other.jsonl"
    path.write_bytes(to_line(entry(1, device="other")) + to_line(entry(2, device="other")))
    before = len(one.since(0))
    path.with_name("x").write_bytes(to_line(entry(1, device="other")))
    os.replace(path.with_name("x"), path)

    assert before == len(one.since(0))


def test_the_own_file_wins_over_another_file_that_contradicts_it(one, entry):
    """A foreign file that gives one of our ids another content changes nothing and is named."""
    said = one.record("QX", [("vessel", "name", "Grey Heron")])[0]
    false = entry(1, "False Heron", device="host", subject="vessel", field="name", at=said.at)
    journal = Journal(one.folder / "journal" / "aaa.jsonl")
    journal.append([false])
    journal.close()

    assert "Grey Heron" == reopened(one).state.value("vessel", "name")
    assert "other content" in str(reopened(one).damage[0])


def test_numbers_go_on_where_the_own_file_was_carried_on_elsewhere(one, entry):
    """Own entries that come back in a bundle are not numbered a second time."""
    one.record("QX", [("vessel", "name", "Grey Heron")])
    handle = os.open(one.folder / "journal" / "host.jsonl", os.O_RDWR | os.O_APPEND)
    durable.append(handle, to_line(entry(2, "none", device="host", subject="vessel", field="flag")))
    os.close(handle)

    assert ["host:3"] == [found.id for found in one.record("QX", [("vessel", "class", "none")])]


def test_what_was_refused_is_kept_once_with_its_sentence(one, tmp_path):
    """What was refused is kept aside once, survives a restart, and is never folded."""
    for _ in range(3):
        one.take_in([{"id": "phone:1", "subject": "nowhere"}, "text"], origin="phone")

    told = [(row["from"], row["entry"]) for row in reopened(one).refused()]
    assert [("phone", {"id": "phone:1", "subject": "nowhere"}), ("phone", "text")] == told
    assert 0 == len(one.entries)


def test_refusals_are_bounded(one):
    """Whoever floods with refused things fills eight megabytes, no more; a huge one is cut."""
    one.take_in([{"id": "phone:1", "value": "x" * 200_000}], origin="phone")
    for batch in range(20):
        one.take_in(
            [{"id": "phone:1", "value": f"{batch}-{number}" + "x" * 9_000} for number in range(60)],
            origin="phone",
        )

    assert (one.folder / "refused" / "host.jsonl").stat().st_size <= 8_000_000
    assert "cut" in one.refused()[0]["entry"]


def test_a_full_disk_still_answers_who_is_refused(one, monkeypatch):
    """Where the disk does not take the copy of a refusal, the answer is given all the same."""
    one.take_in([])
    monkeypatch.setattr(durable, "append", fail)

    assert one.take_in(["text"], origin="phone").outcomes["number 1"].startswith("refused: ")

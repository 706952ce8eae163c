"""An inspection on disk: what is acknowledged, and what it costs."""

import os

import pytest

from inspector.places import shipped
from inspector.record.durable import NotWritten
from inspector.record.store import Inspections, NoSuchInspection


def answer(number, value="poor"):
    return {"id": f"phone:{number}", "at": "2026-05-02T09:14:07.512Z", "device": "phone", "who": "QX", "subject": "sheet/hull/shell/anodes",
            "field": "rating", "value": value, "replaces": []}


@pytest.fixture
def inspections(tmp_path):
    found = Inspections(tmp_path, "host")
    yield found
    found.close()


def test_an_answer_costs_exactly_one_fsync(inspections, monkeypatch):
    """Once the journal is open, one entry or a batch of many is one fsync."""
    inspection, calls, real = inspections.create(shipped("checklists")), [], os.fsync
    inspection.take_in([answer(1)])
    monkeypatch.setattr(os, "fsync", lambda handle: (calls.append(handle), real(handle)))

    inspection.take_in([answer(2)])
    inspection.take_in([answer(3), answer(4), answer(5)])

    assert 2 == len(calls)


def test_a_full_disk_acknowledges_nothing(inspections, monkeypatch):
    """Where the disk does not take the entry, it is neither in the state nor acknowledged; afterwards it can be sent again."""
    inspection = inspections.create(shipped("checklists"))
    inspection.take_in([answer(1, "good")])
    with monkeypatch.context() as broken:
        broken.setattr(os, "fsync", lambda handle: (_ for _ in ()).throw(OSError(28, "No space left on device")))
        with pytest.raises(NotWritten, match="not kept here"):
            inspection.take_in([answer(2)])

    assert "good" == inspection.state.value("sheet/hull/shell/anodes", "rating")
    assert {"phone:2": "stored"} == inspection.take_in([answer(2)]).fates


def test_what_was_said_here_is_read_back_by_a_new_start(inspections, tmp_path):
    """Entries made on this computer are numbered on from where they were and read back after a restart."""
    inspection = inspections.create(shipped("checklists"), "one")
    inspection.say("QX", [("vessel", "name", "Grey Heron"), ("vessel", "flag", "none")])
    again = Inspections(tmp_path, "host")
    again.get("one").say("QX", [("vessel", "name", "Grey Petrel")])

    assert ["host:1", "host:2", "host:3"] == [entry.id for entry in again.get("one").entries]
    assert ["host:1"] == list(again.get("one").entries[2].replaces)
    again.close()


@pytest.mark.parametrize("name", ["none", "..", "../x", "A", "", "a/b"])
def test_an_inspection_that_is_not_there_is_told_in_a_sentence(inspections, name):
    """Unknown or impossible ids are refused."""
    with pytest.raises(NoSuchInspection, match="There is no inspection"):
        inspections.get(name)

"""An inspection on disk: what is acknowledged, and what it costs."""

import os

import pytest

from inspector.places import shipped
from inspector.record.durable import NotWritten
from inspector.record.inspections import Inspections, NoSuchInspection


def answer(number, value="poor"):
    return {
        "id": f"phone:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": "phone",
        "who": "QX",
        "subject": "sheet/hull/shell/anodes",
        "field": "rating",
        "value": value,
        "replaces": [],
    }


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
    """An entry that the disk does not take is not acknowledged, and can be sent again."""
    inspection = inspections.create(shipped("checklists"))
    inspection.take_in([answer(1, "good")])
    with monkeypatch.context() as broken:
        broken.setattr(
            os,
            "fsync",
            lambda handle: (_ for _ in ()).throw(OSError(28, "No space left on device")),
        )
        with pytest.raises(NotWritten, match="not kept here"):
            inspection.take_in([answer(2)])

    assert "good" == inspection.state.value("sheet/hull/shell/anodes", "rating")
    assert {"phone:2": "stored"} == inspection.take_in([answer(2)]).outcomes


def test_what_was_recorded_here_is_read_back_after_a_restart(inspections, tmp_path):
    """Entries of this computer are numbered on and read back after a restart."""
    inspection = inspections.create(shipped("checklists"), "one")
    inspection.record("QX", [("vessel", "name", "Grey Heron"), ("vessel", "flag", "none")])
    again = Inspections(tmp_path, "host")
    again.get("one").record("QX", [("vessel", "name", "Grey Petrel")])

    assert ["host:1", "host:2", "host:3"] == [entry.id for entry in again.get("one").entries]
    assert ["host:1"] == list(again.get("one").entries[2].replaces)
    again.close()


@pytest.mark.parametrize("name", ["none", "..", "../x", "A", "", "a/b"])
def test_an_inspection_that_is_not_there_is_refused_in_a_sentence(inspections, name):
    """Unknown or impossible ids are refused."""
    with pytest.raises(NoSuchInspection, match="There is no inspection"):
        inspections.get(name)

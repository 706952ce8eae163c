"""The summary of an inspection is trusted only while it is whole and nothing behind it changed."""

import json
import os
import shutil
import threading

import pytest

from inspector.services import shelf as shelf_module
from inspector.services import summary_files
from inspector.services.data_folder import open_folder
from inspector.services.shelf import Shelf

SHEET = "sheet/hull/u1/shell-plating"


@pytest.fixture
def data(tmp_path):
    """A data folder with one inspection of a named vessel with one hull."""
    opened = open_folder(tmp_path / "data")
    inspection = opened.begin()
    named = [("vessel", "name", "Invented Heron"), ("vessel", "imo", "9074729")]
    inspection.record("QX", [*named, ("unit/hull/u1", "name", "Hull")])
    yield opened
    opened.close()


@pytest.fixture
def only(data):
    """The one inspection's folder."""
    return data.inspections.folder / data.inspections.ids()[0]


@pytest.fixture
def opened(data, monkeypatch):
    """The ids of the inspections that are summed up, in that order."""
    ids, really = [], shelf_module.summary_of

    def counted(data, inspection_id):
        ids.append(inspection_id)
        return really(data, inspection_id)

    monkeypatch.setattr(shelf_module, "summary_of", counted)
    return ids


def test_a_row_says_what_the_list_shows_and_finds(data):
    """Names, state, how much was seen, and the word of each system."""
    (row,) = Shelf(data).rows()

    assert ("Invented Heron", "9074729", "not begun", "") == (
        row["title"],
        row["imo"],
        row["state"],
        row["wrong"],
    )
    assert [data.library.systems["hull"].name] == [system["name"] for system in row["systems"]]
    assert row["checks"] > 0
    assert row["changed"] == data.inspections.get(row["id"]).entries[-1].at


def test_a_second_start_opens_no_inspection(data, opened):
    """The summaries of the first start are enough."""
    first = Shelf(data).rows()
    opened.clear()

    assert first == Shelf(data).rows()
    assert [] == opened


def test_an_answer_makes_the_summary_anew(data, opened):
    """Also where another program, or another computer's file, brought it."""
    shelf = Shelf(data)
    (row,) = shelf.rows()
    data.inspections.get(row["id"]).record("QX", [("vessel", "name", "Invented Egret")])

    assert "Invented Egret" == shelf.rows()[0]["title"]
    assert "Invented Egret" == Shelf(data).rows()[0]["title"]


def test_a_carried_journal_makes_the_summary_anew(data, only, opened):
    """A file that keeps its size and its time of change is still another file on this disk."""
    (before,) = Shelf(data).rows()
    journal = next((only / "journal").glob("*.jsonl"))
    facts, content = journal.stat(), journal.read_bytes()
    opened.clear()
    journal.write_bytes(content.replace(b"Heron", b"Heroo"))
    os.utime(journal, ns=(facts.st_atime_ns, facts.st_mtime_ns))
    data.inspections.forget(before["id"])

    assert Shelf(data).rows()[0]["damage"]
    assert [before["id"]] == opened


def _cut(path):
    path.write_bytes(path.read_bytes()[:-9])


def _flip(path):
    content = bytearray(path.read_bytes())
    content[-40] ^= 4
    path.write_bytes(content)


def _empty(path):
    path.write_bytes(b"")


def _other_json(path):
    body = json.dumps(["nothing of ours"]).encode()
    path.write_bytes(summary_files._checksum(body) + b"\n" + body)


def _a_folder(path):
    path.unlink()
    path.mkdir()


@pytest.mark.parametrize("damage", [_cut, _flip, _empty, _other_json, _a_folder])
def test_a_damaged_summary_is_made_anew(data, only, opened, damage):
    """Whatever happened to the file, the list says the truth."""
    first = Shelf(data).rows()
    damage(only / summary_files.FILE)
    opened.clear()

    assert first == Shelf(data).rows()
    assert 1 == len(opened)


def test_a_summary_of_another_inspection_is_not_trusted(data, only):
    """A folder copied under a new name brings its summary along, which is not of its journals."""
    Shelf(data).rows()
    data.begin().record("QX", [("vessel", "name", "Invented Teal")])
    other = next(path for path in only.parent.iterdir() if path != only)
    shutil.copy(only / summary_files.FILE, other / summary_files.FILE)

    titles = {row["id"]: row["title"] for row in Shelf(data).rows()}

    assert {only.name: "Invented Heron", other.name: "Invented Teal"} == titles


def test_changed_checklists_make_the_summary_anew(data, only, opened):
    """A check more is a check more in the list."""
    Shelf(data).rows()
    opened.clear()
    file = only / "checklists" / "hull.toml"
    file.write_text(file.read_text(encoding="utf-8") + "\n# changed\n", encoding="utf-8")
    Shelf(data).rows()

    assert [only.name] == opened


def test_a_new_program_keeps_the_names_until_it_has_judged_again(data, opened, monkeypatch):
    """After an update the list is searched by name at once; no word of the old program is shown."""
    Shelf(data).rows()
    monkeypatch.setattr(summary_files, "program_mark", lambda: "a newer program")
    monkeypatch.setattr(shelf_module, "AT_ONCE", 0)
    shelf = Shelf(data)
    (row,) = shelf.rows_at_once()
    assert ("Invented Heron", [], True) == (row["title"], row["systems"], row["reading"])
    shelf._maker.join()

    (row,) = shelf.rows_at_once()

    assert row["systems"]
    assert "reading" not in row
    assert "earlier" not in row


def test_settings_of_the_data_folder_are_no_part_of_a_summary(data, opened):
    """Prices and levels are copied into an inspection when it begins, and change none later."""
    first = Shelf(data).rows()
    data.catalogue.put("rates", {"name": "Blasting", "unit": "m²", "likely": "80"})
    data.catalogue.set("levels", {"retain_from": "90"})
    for path in list(data.inspections.folder.glob("*/derived/summary.json")):
        path.unlink()

    assert first == Shelf(data).rows()


def test_a_broken_inspection_hides_no_other(data, only):
    """It has a row with the reason, is tried again the next time, and is no error of the list."""
    data.begin()
    (only / "checklists" / "hull.toml").write_text("[", encoding="utf-8")
    data.inspections.forget(only.name)
    rows = {row["id"]: row for row in Shelf(data).rows()}

    assert "not readable as TOML" in rows[only.name]["wrong"]
    assert 2 == len(rows)
    assert not (only / summary_files.FILE).exists()


def test_a_folder_that_takes_no_summary_still_has_a_list(data, only, monkeypatch):
    """A full disk costs the next start time, and nothing else."""

    def refuse(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", refuse)

    assert ["Invented Heron"] == [row["title"] for row in Shelf(data).rows()]
    assert [] == list((only / "derived").glob(".*.new"))


@pytest.fixture
def many(data, monkeypatch):
    """Six inspections, of which a page waits for none."""
    for _ in range(5):
        data.begin()
    monkeypatch.setattr(shelf_module, "AT_ONCE", 0)
    return data


def test_missing_summaries_are_made_in_the_background(many):
    """The list is there at once, and complete a little later."""
    shelf = Shelf(many)
    assert all(row["reading"] for row in shelf.rows_at_once())
    shelf._maker.join()

    assert not any(row.get("reading") for row in shelf.rows_at_once())
    assert (6, 6, False) == (lambda p: (p.done, p.total, p.running))(shelf.progress())


def test_reading_stops_and_goes_on(many, monkeypatch):
    """Stopped, it begins no other inspection; the list does not begin it again by itself."""
    begun, may_end, really = threading.Event(), threading.Event(), shelf_module.summary_of

    def slow(data, inspection_id):
        begun.set()
        assert may_end.wait(30)
        return really(data, inspection_id)

    monkeypatch.setattr(shelf_module, "summary_of", slow)
    shelf = Shelf(many)
    shelf.rows_at_once()
    assert begun.wait(30)
    stopping = threading.Thread(target=shelf.stop)
    stopping.start()
    may_end.set()
    stopping.join(30)
    assert (1, False) == (shelf.progress().done, shelf.progress().running)
    shelf.rows_at_once()
    assert not shelf.progress().running

    shelf.go_on()
    shelf.rows_at_once()
    shelf._maker.join()

    assert not any(row.get("reading") for row in shelf.rows_at_once())


def test_the_list_keeps_no_inspection_open(data, monkeypatch):
    """However many there are, summing them up leaves none in memory."""
    for _ in range(3):
        data.begin()
    data.inspections.close()

    Shelf(data).rows()

    assert [] == list(data.inspections._open)


def test_a_command_hears_how_far_the_reading_is(data):
    """Only where there is something to read."""
    calls = []
    Shelf(data).rows(lambda *call: calls.append(call))
    Shelf(data).rows(lambda *call: calls.append(call))

    assert [(1, 1)] == calls

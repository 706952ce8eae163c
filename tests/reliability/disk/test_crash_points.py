"""The disk fails, or the plug is pulled, at every single call that changes it: what is opened
afterwards is the state before or the state after."""

import io
import shutil
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader

from inspector.places import shipped
from inspector.record import photos
from inspector.record.bundles import bundle
from inspector.record.catalogue import Catalogue
from inspector.record.inspection import Inspection
from inspector.record.inspections import Inspections
from inspector.record.journal import read_folder
from inspector.values.errors import InspectorError
from tests.reliability.faults import every_crash


def a_photo(colour="teal"):
    out = io.BytesIO()
    Image.new("RGB", (200, 100), colour).save(out, "JPEG")
    return out.getvalue()


def begun(place: Path, host="host") -> Inspection:
    """An inspection with two entries, its journal open."""
    one = Inspections(place, host).create(shipped("checklists"), "one")
    one.record("QX", [("vessel", "name", "Grey Heron"), ("vessel", "flag", "none")])
    return one


def names(place):
    state = Inspection(place / "one", "host").state
    return state.value("vessel", "name"), state.value("vessel", "flag")


def test_an_entry_is_there_or_not(tmp_path):
    """One answer: before or after, never half; acknowledged means after; the next answer gets
    the next number, with no hole."""

    def prepare(place):
        one = begun(place)
        return lambda: one.record("QX", [("vessel", "name", "Grey Petrel")])

    seen = set()
    for place, k, done in every_crash(prepare, tmp_path, InspectorError):
        found = names(place)
        seen.add(found[0])
        assert found in (("Grey Heron", "none"), ("Grey Petrel", "none")), k
        assert not done or found[0] == "Grey Petrel", k
        again = Inspection(place / "one", "host")
        again.record("QX", [("vessel", "yard", "north")])
        assert {} == again.missing(), k
        assert "north" == Inspection(place / "one", "host").state.value("vessel", "yard"), k
        again.close()
    assert {"Grey Heron", "Grey Petrel"} == seen


def test_a_program_that_goes_on_after_a_failure_loses_nothing(tmp_path):
    """The same program, after the disk failed at any call, records the next answer; a restart
    shows all that was said to be kept, and no hole."""
    programs = {}

    def prepare(place):
        programs[place] = one = begun(place)
        return lambda: (
            one.take_in([raw(1)]) and one.record("QX", [("vessel", "name", "Grey Petrel")])
        )

    for place, k, _ in every_crash(prepare, tmp_path, InspectorError):
        if place.name.startswith("plug"):
            continue
        one = programs[place]
        one.take_in([raw(1)])
        one.record("QX", [("vessel", "yard", "north")])
        again = Inspection(place / "one", "host")
        assert {entry.id for entry in one.entries} == {entry.id for entry in again.entries}, k
        assert ({}, "north") == (again.missing(), again.state.value("vessel", "yard")), k
    for one in programs.values():
        one.close()


def raw(number):
    return {
        "id": f"phone:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": "phone",
        "who": "QX",
        "subject": "vessel",
        "field": "particulars",
        "value": "grey",
        "replaces": [],
    }


def test_a_batch_is_taken_from_its_beginning(tmp_path):
    """Of a batch that was not acknowledged, a beginning may be there; sent again, all of it is."""

    def prepare(place):
        one = begun(place)
        return lambda: one.take_in([raw(number) for number in range(1, 6)])

    for place, k, done in every_crash(prepare, tmp_path, InspectorError):
        again = Inspection(place / "one", "host")
        there = [entry.number for entry in again.entries if entry.device == "phone"]
        assert list(range(1, len(there) + 1)) == there, k
        assert not done or len(there) == 5, k
        again.take_in([raw(number) for number in range(1, 6)])
        assert 5 == Inspection(place / "one", "host").complete_up_to()["phone"], k
        again.close()


def test_the_catalogue_is_old_or_new(tmp_path):
    """A document replaced: the old or the new one, and the others untouched."""

    def prepare(place):
        catalogue = Catalogue(place / "catalogue.json")
        catalogue.put("briefs", {"id": "one", "client": "old"})
        catalogue.put("surveyors", {"id": "x", "name": "QX"})
        return lambda: catalogue.put("briefs", {"id": "one", "client": "new"})

    seen = set()
    for place, k, done in every_crash(prepare, tmp_path, InspectorError):
        catalogue = Catalogue(place / "catalogue.json")
        client = catalogue.get("briefs", "one")["client"]
        seen.add(client)
        assert client in ("old", "new"), k
        assert not done or client == "new", k
        assert "QX" == catalogue.get("surveyors", "x")["name"], k
    assert {"old", "new"} == seen


@pytest.mark.parametrize("kind", ["original", "copy"])
def test_a_photo_is_there_whole_or_not(tmp_path, kind):
    """Taken in: not there or whole, never a part; acknowledged means whole; sent again it is
    whole."""
    data, sha = a_photo(), "a" * 64

    def take(folder):
        return (
            photos.take_in(folder, data)
            if kind == "original"
            else photos.take_in_copy(folder, sha, data)
        )

    def prepare(place):
        begun(place).close()
        return lambda: take(place / "one")

    for place, k, done in every_crash(prepare, tmp_path, InspectorError):
        folder = place / "one"
        assert [] == photos.verify(folder), k
        there = [path for part in ("photos", "copies") for path in (folder / part).glob("[!.]*")]
        assert len(there) == 1 if done else len(there) <= 1, k
        assert all(path.read_bytes() == data for path in there), k
        shown = take(folder).sha
        with Image.open(photos.thumbnail(folder, shown)) as picture:
            assert (200, 100) == picture.size, k


def test_a_bundle_taken_in_loses_and_damages_nothing(tmp_path):
    """All that was here stays, nothing is half, and the bundle taken in again completes it."""
    source = begun(tmp_path / "source", "other")
    photos.take_in(source.folder, a_photo())
    source.record("QX", [("vessel", "particulars", "grey")])
    bundle.write(source.folder, tmp_path / "one.zip")
    source.close()

    def prepare(place):
        begun(place).close()
        return lambda: bundle.take_in(tmp_path / "one.zip", place, "host")

    for place, k, done in every_crash(prepare, tmp_path, InspectorError):
        folder = place / "one"
        ids = set(read_folder(folder / "journal").entries)
        assert (
            {"host:1", "host:2"} <= ids <= {"host:1", "host:2", "other:1", "other:2", "other:3"}
        ), k
        assert [] == photos.verify(folder), k
        assert ["one"] == Inspections(place, "host").ids(), k
        assert not done or len(ids) == 5, k
        bundle.take_in(tmp_path / "one.zip", place, "host")
        reading = read_folder(folder / "journal")
        assert 5 == len(reading.entries), k
        assert all(one.what == "is not a whole journal line" for one in reading.damage), k
        assert 1 == len(list((folder / "photos").glob("[!.]*"))), k


def test_a_bundle_written_is_whole_or_the_earlier_one(tmp_path):
    """Exporting over an earlier file: the earlier or the new one, each a bundle that can be
    taken in."""
    source = begun(tmp_path / "source", "other")
    source.close()

    def prepare(place):
        place.mkdir(parents=True)
        bundle.write(source.folder, place / "out.zip")
        return lambda: bundle.write(source.folder, place / "out.zip")

    for place, k, _ in every_crash(prepare, tmp_path, InspectorError):
        assert ("one", 2, 0) == bundle.take_in(place / "out.zip", place / "there", "host"), k


def test_a_report_is_the_earlier_or_the_new_one(tmp_path):
    """Whatever fails while the report is written, the file is a whole PDF: the one before or the
    new one."""
    from inspector.services.data_folder import open_folder
    from inspector.services.files.report_files import make_report

    shutil.rmtree(tmp_path / "data", ignore_errors=True)
    data = open_folder(tmp_path / "data")
    one = data.inspections.create(shipped("checklists"), "one")
    one.record("QX", [("vessel", "name", "Grey Heron")])
    sha = photos.take_in(one.folder, a_photo()).sha
    one.record("QX", [(f"photo/{sha}", "on", ""), (f"photo/{sha}", "caption", "The bow")])
    make_report(data, one, tmp_path / "earlier.pdf")
    one.record("QX", [("vessel", "name", "Grey Petrel")])

    def prepare(place):
        place.mkdir(parents=True)
        shutil.copy(tmp_path / "earlier.pdf", place / "out.pdf")
        return lambda: make_report(data, one, place / "out.pdf")

    seen = set()
    for place, k, done in every_crash(prepare, tmp_path, InspectorError):
        text = PdfReader(place / "out.pdf").pages[0].extract_text()
        seen.add("new" if "Petrel" in text else "earlier" if "Heron" in text else "neither")
        assert not done or "Petrel" in text, k
        assert "neither" not in seen, k
    assert "earlier" in seen
    data.close()

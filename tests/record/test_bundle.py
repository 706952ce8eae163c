"""A bundle carries one inspection whole; taking it in is a union; a false one changes nothing."""

import hashlib
import json
import os
import zipfile

import pytest

from inspector.record import durable, photos
from inspector.record.bundles import bundle, bundle_contents
from inspector.record.bundles.bundle_contents import BundleRefused
from inspector.record.inspections import Inspections
from inspector.record.journal import read_folder, to_line
from inspector.record.refusals import Refusals
from inspector.record.state import State, snapshot
from tests.reliability.faults import failing

CHECKLISTS = {"checklists/hull.toml": b"[system]\n"}


def files_of(folder):
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def as_taken_in_by(host, folder):
    """The files that one computer wrote, in the folder where `host` took its bundle in."""
    return {
        f"journal/{host}.jsonl" if name.startswith("journal/") else name: data
        for name, data in files_of(folder).items()
    }


def pack(path, files, *, manifest=None, how=zipfile.ZIP_DEFLATED, twice=()):
    """A zip with a manifest that fits `files`, save for the keys of `manifest`."""
    listed = {
        name: {"sha256": hashlib.sha256(data).hexdigest(), "bytes": len(data)}
        for name, data in files.items()
    }
    whole = {
        "format": bundle_contents.FORMAT,
        "version": bundle_contents.VERSION,
        "inspection": "2026-05-02-aa",
        "files": listed,
        **(manifest or {}),
    }
    with zipfile.ZipFile(path, "w", how) as archive:
        for name, data in [*files.items(), *twice]:
            archive.writestr(zipfile.ZipInfo(name), data, how)
        archive.writestr("manifest.json", json.dumps(whole))
    return path


def refused(path, inspections, match):
    before = files_of(inspections) if inspections.exists() else {}
    with pytest.raises(BundleRefused, match=match):
        bundle.take_in(path, inspections, "host")
    assert before == files_of(inspections)
    assert [] == list(inspections.glob(".*"))


def test_a_bundle_makes_the_inspection_whole_elsewhere(tmp_path, inspection, picture):
    """Journal lines, photos and checklists arrive to the byte; what is derived is made anew."""
    here = inspection("here", data=picture())
    bundle.write(here, tmp_path / "out.zip")
    there = tmp_path / "there"
    assert ("2026-05-02-aa", 1, 1) == bundle.take_in(tmp_path / "out.zip", there, "host")
    carried = {
        name: data
        for name, data in as_taken_in_by("host", here).items()
        if not name.startswith("derived/")
    }
    assert carried == files_of(there / "2026-05-02-aa")
    assert photos.report_copy(
        there / "2026-05-02-aa", photos.take_in(here, picture()).sha
    ).is_file()
    assert ("2026-05-02-aa", 0, 0) == bundle.take_in(tmp_path / "out.zip", there, "host")
    assert carried.keys() <= files_of(there / "2026-05-02-aa").keys()


def test_two_computers_agree_after_bundles_both_ways(tmp_path, inspection, entry, picture):
    """Each side keeps its own lines and gains the other's; both then show the same state."""
    one = inspection(
        "one",
        "laptop",
        [entry(1), entry(1, "poor", device="laptop", replaces=["phone:1"])],
        picture(),
    )
    two = inspection(
        "two",
        "tablet",
        [entry(1), entry(2, "fair", replaces=["phone:1"])],
        picture(size=(500, 400)),
    )
    (two / "checklists" / "hull.toml").write_text("[system]\n# as it is elsewhere\n")
    bundle.write(one, tmp_path / "one.zip")
    bundle.write(two, tmp_path / "two.zip")
    assert ("2026-05-02-aa", 1, 1) == bundle.take_in(tmp_path / "one.zip", two.parent, "tablet")
    assert ("2026-05-02-aa", 1, 1) == bundle.take_in(tmp_path / "two.zip", one.parent, "laptop")
    ours, theirs = read_folder(one / "journal"), read_folder(two / "journal")
    assert snapshot(State(ours.entries.values())) == snapshot(State(theirs.entries.values()))
    assert {"phone:1", "phone:2", "laptop:1"} == set(ours.entries)
    assert (["laptop.jsonl"], ["tablet.jsonl"]) == tuple(
        [path.name for path in (side / "journal").iterdir()] for side in (one, two)
    )
    assert sorted(path.name for path in (one / "photos").iterdir()) == sorted(
        path.name for path in (two / "photos").iterdir()
    )
    assert "[system]\n# as it is elsewhere\n" == (two / "checklists" / "hull.toml").read_text()


def test_a_bundle_is_joined_to_the_own_file_line_by_line(tmp_path, inspection, entry):
    """The own file keeps what it has, damaged or whole, and new lines are added to it."""
    one, two = (
        inspection("one", entries=[entry(1), entry(2)]),
        inspection("two", entries=[entry(1), entry(3)]),
    )
    with open(two / "journal" / "laptop.jsonl", "ab") as file:
        file.write(b"torn by a pulled plug")
    bundle.write(one, tmp_path / "one.zip")
    assert 1 == bundle.take_in(tmp_path / "one.zip", two.parent, "laptop")[1]
    lines = (two / "journal" / "laptop.jsonl").read_bytes().split(b"\n")
    assert [
        *(to_line(entry(n))[:-1] for n in (1, 3)),
        b"torn by a pulled plug",
        to_line(entry(2))[:-1],
        b"",
    ] == lines
    assert {"phone:1", "phone:2", "phone:3"} == set(read_folder(two / "journal").entries)


def test_a_file_that_is_open_for_appending_stays_the_same_file(tmp_path, inspection, entry):
    """A running program goes on writing into the file that the bundle was merged into."""
    one, two = (
        inspection("one", entries=[entry(1), entry(2)]),
        inspection("two", entries=[entry(1)]),
    )
    bundle.write(one, tmp_path / "one.zip")
    held = os.open(two / "journal" / "laptop.jsonl", os.O_RDWR | os.O_APPEND)
    try:
        bundle.take_in(tmp_path / "one.zip", two.parent, "laptop")
        durable.append(held, to_line(entry(9)))
    finally:
        os.close(held)
    assert {"phone:1", "phone:2", "phone:9"} == set(read_folder(two / "journal").entries)


def test_another_computers_file_is_never_written_to(tmp_path, inspection, entry):
    """New entries of another computer go to the own file: a program may carry the other one."""
    one, two = (
        inspection("one", "office", [entry(1), entry(2)]),
        inspection("two", "office", [entry(1)]),
    )
    bundle.write(one, tmp_path / "one.zip")
    before = (two / "journal" / "office.jsonl").read_bytes()
    assert 1 == bundle.take_in(tmp_path / "one.zip", two.parent, "ship")[1]
    assert before == (two / "journal" / "office.jsonl").read_bytes()
    assert to_line(entry(2)) == (two / "journal" / "ship.jsonl").read_bytes()


def test_what_a_bundle_brings_is_seen_at_once_even_after_a_failed_write(
    tmp_path, inspection, entry
):
    """After a failed write a running program shows the entries of a bundle at once."""
    one, two = inspection("one", "office", [entry(1)]), inspection("two", "ship", [entry(5)])
    bundle.write(one, tmp_path / "one.zip")
    running = Inspections(two.parent, "ship")
    running.get(two.name).record("QX", [("vessel", "name", "Grey Heron")])
    with failing(1), pytest.raises(durable.NotWritten):
        running.get(two.name).record("QX", [("vessel", "name", "Grey Petrel")])
    bundle.take_in(tmp_path / "one.zip", two.parent, "ship", running.paused)
    assert ["phone:5", "ship:1", "phone:1"] == [one.id for one in running.get(two.name).entries]
    running.close()


def test_a_bundle_that_the_disk_refuses_spoils_nothing_that_is_written_next(
    tmp_path, inspection, entry
):
    """Where the disk fills up during a merge, the next answer and the bundle are whole again."""
    one = inspection("one", "office", [entry(1)])
    bundle.write(one, tmp_path / "one.zip")
    two = inspection("two", "ship", [entry(5)])
    running = Inspections(two.parent, "ship")
    running.get(two.name).record("QX", [("vessel", "name", "Grey Heron")])
    with failing(1, "full"), pytest.raises(durable.NotWritten):
        bundle.take_in(tmp_path / "one.zip", two.parent, "ship", running.paused)
    running.get(two.name).record("QX", [("vessel", "name", "Grey Petrel")])
    assert {"phone:5", "ship:1", "ship:2"} == set(read_folder(two / "journal").entries)
    assert ("2026-05-02-aa", 1, 0) == bundle.take_in(
        tmp_path / "one.zip", two.parent, "ship", running.paused
    )
    assert {"phone:5", "ship:1", "ship:2", "phone:1"} == {
        one.id for one in running.get(two.name).entries
    }
    running.close()


def test_a_rotten_line_of_a_bundle_is_kept_aside(tmp_path, inspection, entry):
    """A line whose checksum does not fit is kept for people; half a line is not."""
    one = inspection("one", "office", [entry(1)])
    with open(one / "journal" / "office.jsonl", "ab") as file:
        file.write(
            to_line(entry(2)).replace(b"good", b"poor")
            + to_line(entry(3))[:40]
            + b"\n"
            + to_line(entry(4))
        )
    bundle.write(one, tmp_path / "one.zip")
    assert 2 == bundle.take_in(tmp_path / "one.zip", tmp_path / "there", "ship")[1]
    [row] = Refusals(tmp_path / "there" / "2026-05-02-aa" / "refused", "ship").all()
    assert (
        "A line of office.jsonl in a bundle is not taken in: its checksum does not fit.",
        True,
    ) == (row["why"], "phone:2" in row["entry"]["line"])


def test_a_line_being_written_stays_out_of_the_bundle(tmp_path, inspection):
    """Half a line at the end is not carried along as damage."""
    here = inspection("here")
    with open(here / "journal" / "laptop.jsonl", "ab") as file:
        file.write(b'{"sum":"0000')
    bundle.write(here, tmp_path / "out.zip")
    bundle.take_in(tmp_path / "out.zip", tmp_path / "there", "host")
    assert [] == read_folder(tmp_path / "there" / "2026-05-02-aa" / "journal").damage


def test_a_rotten_photo_stays_out_and_is_named(tmp_path, inspection, picture):
    """A photo that has rotted does not stop the rest, and a whole one replaces it."""
    here = inspection("here", data=picture())
    bundle.write(here, tmp_path / "whole.zip")
    path = next((here / "photos").iterdir())
    path.write_bytes(b"rot")
    bundle.write(here, tmp_path / "out.zip")
    with zipfile.ZipFile(tmp_path / "out.zip") as archive:
        assert [f"photos/{path.name}"] == json.loads(archive.read("manifest.json"))["left_out"]
    assert ("2026-05-02-aa", 1, 0) == bundle.take_in(
        tmp_path / "out.zip", tmp_path / "there", "host"
    )
    bundle.take_in(tmp_path / "whole.zip", here.parent, "host")
    assert [] == photos.verify(here)


def test_an_earlier_bundle_is_kept_if_the_new_one_cannot_be_written(
    tmp_path, inspection, monkeypatch
):
    """A full disk leaves the old file whole and no half one beside it."""
    here, out = inspection("here"), tmp_path / "stick" / "out.zip"
    bundle.write(here, out)
    before = out.read_bytes()

    def full(handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(durable.NotWritten, match="no space left|No space left"):
        bundle.write(here, out)
    assert {"out.zip": before} == files_of(out.parent)


@pytest.mark.parametrize(
    "name",
    [
        "../escape.toml",
        "/etc/escape.toml",
        "checklists/../../escape.toml",
        "C:/escape.toml",
        "checklists\\..\\escape.toml",
        "journal/sub/laptop.jsonl",
        "journal/con.jsonl",
        "derived/x.jpg",
        "photos/holiday.jpg",
        "checklists/hull.toml.exe",
        "checklists/",
        "journal/.hidden.jsonl",
    ],
)
def test_a_name_that_could_lead_elsewhere_is_refused(tmp_path, name):
    """Only names that a bundle may hold are unpacked; a path out of the folder is none."""
    refused(
        pack(tmp_path / "x.zip", {**CHECKLISTS, name: b""}),
        tmp_path / "inspections",
        "only a manifest",
    )
    assert [] == list(tmp_path.rglob("escape*"))


@pytest.mark.parametrize("inspection_id", ["..", "../x", "", "A", "con", 7, None])
def test_an_inspection_id_that_could_lead_elsewhere_is_refused(tmp_path, inspection_id):
    """The folder's name comes from the manifest and must be an id."""
    refused(
        pack(tmp_path / "x.zip", CHECKLISTS, manifest={"inspection": inspection_id}),
        tmp_path / "inspections",
        "names no inspection",
    )


def test_a_bomb_is_refused_before_it_is_unpacked(tmp_path):
    """A few kilobytes that would unpack to fifty million are refused by their ratio."""
    path = pack(tmp_path / "x.zip", {**CHECKLISTS, "journal/laptop.jsonl": bytes(50_000_000)})
    assert path.stat().st_size < 100_000
    refused(path, tmp_path / "inspections", "more than is taken in")


def test_a_photo_beyond_the_limit_is_refused(tmp_path, monkeypatch):
    """What is too large for a photo does not come in by a bundle either."""
    monkeypatch.setitem(bundle_contents.MOST_OF_ONE, "photos", 1000)
    data = os.urandom(1001)
    refused(
        pack(
            tmp_path / "x.zip",
            {**CHECKLISTS, f"photos/{hashlib.sha256(data).hexdigest()}.jpg": data},
        ),
        tmp_path / "inspections",
        "more than is taken in",
    )


def test_too_many_files_and_too_many_bytes_are_refused(tmp_path, monkeypatch):
    """Count and sum have limits of their own."""
    path = pack(
        tmp_path / "x.zip",
        {**CHECKLISTS, "journal/a.jsonl": bytes(90), "journal/b.jsonl": bytes(90)},
    )
    monkeypatch.setattr(bundle_contents, "MOST_BYTES", 150)
    refused(path, tmp_path / "inspections", "would unpack to more than")
    monkeypatch.setattr(bundle_contents, "MOST_FILES", 3)
    refused(path, tmp_path / "inspections", "at most 3")


@pytest.mark.parametrize(
    "stated",
    [
        {"sha256": "0" * 64, "bytes": 9},
        {"sha256": hashlib.sha256(b"[system]\n").hexdigest(), "bytes": 8},
        {},
    ],
)
def test_a_wrong_digest_is_refused(tmp_path, inspection, stated):
    """One file that is not what the manifest says, and nothing of the bundle is merged."""
    inspections = inspection("here").parent
    path = pack(tmp_path / "x.zip", {"journal/b.jsonl": b"x\n", **CHECKLISTS}, manifest={})
    listed = {
        "journal/b.jsonl": {"sha256": hashlib.sha256(b"x\n").hexdigest(), "bytes": 2},
        "checklists/hull.toml": stated,
    }
    refused(
        pack(path, {"journal/b.jsonl": b"x\n", **CHECKLISTS}, manifest={"files": listed}),
        inspections,
        "does not have the SHA-256",
    )


def test_a_photo_that_is_not_its_name_is_refused(tmp_path, picture):
    """Neither other bytes under a photo's name nor a web page under its own digest come in."""
    page = b"<html><script>alert(1)</script>"
    own, wrong = (
        hashlib.sha256(page).hexdigest() + ".jpg",
        hashlib.sha256(picture()).hexdigest() + ".png",
    )
    for name, data in [("0" * 64 + ".jpg", picture()), (own, page), (wrong, picture())]:
        refused(
            pack(tmp_path / "x.zip", {**CHECKLISTS, f"photos/{name}": data}),
            tmp_path / "inspections",
            "is not the photo",
        )


@pytest.mark.parametrize(
    ("manifest", "match"),
    [
        ({"files": {}}, "differ"),
        ({"files": []}, "lists no files"),
        ({"files": {"checklists/hull.toml": 1}}, "lists no files"),
        ({"format": "other"}, "is not of the kind"),
        ({"version": 2}, "is not of the kind"),
    ],
)
def test_a_manifest_that_does_not_fit_is_refused(tmp_path, manifest, match):
    """A bundle of another kind, or one whose list and contents differ, is named as that."""
    refused(
        pack(tmp_path / "x.zip", CHECKLISTS, manifest=manifest), tmp_path / "inspections", match
    )


@pytest.mark.parametrize("text", [b"[" * 100_000, b"{", b"\xff", b"7"])
def test_a_manifest_of_nonsense_is_refused(tmp_path, text):
    """Deep nesting and broken JSON end in a sentence."""
    with zipfile.ZipFile(tmp_path / "x.zip", "w") as archive:
        archive.writestr("manifest.json", text)
    refused(tmp_path / "x.zip", tmp_path / "inspections", "manifest.json is not")


def test_a_zip_without_manifest_or_checklists_is_refused(tmp_path):
    """Some other zip file is told from a bundle."""
    with zipfile.ZipFile(tmp_path / "x.zip", "w") as archive:
        archive.writestr("checklists/hull.toml", b"")
    refused(tmp_path / "x.zip", tmp_path / "inspections", "has no manifest")
    refused(
        pack(tmp_path / "x.zip", {"journal/a.jsonl": b""}),
        tmp_path / "inspections",
        "has no checklists",
    )


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_a_name_that_is_there_twice_is_refused(tmp_path):
    """Of two files of one name it would be unclear which the digest was checked on."""
    refused(
        pack(tmp_path / "x.zip", CHECKLISTS, twice=list(CHECKLISTS.items())),
        tmp_path / "inspections",
        "twice",
    )


@pytest.mark.parametrize("cut", [0.1, 0.5, 0.9, 0.999])
def test_a_bundle_cut_short_is_refused(tmp_path, inspection, picture, cut):
    """A copy that ended early changes nothing."""
    here = inspection("here", data=picture())
    bundle.write(here, tmp_path / "out.zip")
    data = (tmp_path / "out.zip").read_bytes()
    (tmp_path / "cut.zip").write_bytes(data[: int(len(data) * cut)])
    refused(tmp_path / "cut.zip", tmp_path / "there", "not a whole zip file")


def test_any_altered_byte_leaves_the_bundle_refused_or_the_same(tmp_path, inspection, entry):
    """Each byte altered in turn: a sentence of ours, or exactly what the whole bundle gives."""
    here = inspection("here", entries=[entry(1)])
    bundle.write(here, tmp_path / "out.zip")
    data, refusals = bytearray((tmp_path / "out.zip").read_bytes()), 0
    for place in range(0, len(data), 3):
        altered = data.copy()
        altered[place] ^= 0x21
        (tmp_path / "altered.zip").write_bytes(altered)
        there = tmp_path / f"there-{place}"
        try:
            bundle.take_in(tmp_path / "altered.zip", there, "host")
        except BundleRefused:
            refusals += 1
            assert {} == files_of(there)
        else:
            assert as_taken_in_by("host", here) == files_of(next(there.iterdir()))
    assert refusals > len(data) // 6

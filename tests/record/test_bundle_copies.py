"""Bundles and devices' copies; bundles that contradict what is here; and too little room."""

import hashlib
import os
from collections import namedtuple

import pytest

from inspector.record import photos
from inspector.record.bundles import bundle, bundle_contents
from inspector.record.bundles.bundle_contents import BundleRefused
from inspector.record.inspection import Inspection
from inspector.record.photos.device_copies import device_copy

SHA = "a" * 64


def opened(folder):
    return Inspection(folder, "laptop")


def test_a_copy_travels_as_long_as_it_replaces_its_original(tmp_path, inspection, picture):
    """A bundle carries the copy of a photo only where its original is not here."""
    here, original = inspection("here"), picture()
    sha = photos.take_in(here, original).sha
    photos.take_in_copy(here, sha, picture(size=(64, 48)))
    photos.take_in_copy(here, SHA, picture(size=(64, 48)))
    bundle.write(here, tmp_path / "out.zip")
    bundle.take_in(tmp_path / "out.zip", tmp_path / "there", "host")
    there = tmp_path / "there" / "2026-05-02-aa"

    assert photos.original(there, sha).read_bytes() == original
    assert [True, False] == [device_copy(there, one) is not None for one in (SHA, sha)]
    assert photos.report_copy(there, SHA).is_file()
    assert 1 == len(photos.missing(there, [sha, SHA]))
    assert "a copy takes its place" in photos.missing(there, [SHA])[0]


def test_the_first_whole_copy_is_kept(inspection, picture):
    """A second copy of a photo is not kept; one that rotted is named and replaced."""
    here, first = inspection("here"), picture(size=(64, 48))
    assert photos.take_in_copy(here, SHA, first).new
    assert not photos.take_in_copy(here, SHA, picture(size=(32, 24))).new
    path = device_copy(here, SHA)
    path.write_bytes(b"rotten")
    assert device_copy(here, SHA) is None
    assert [
        "copies/" + path.name + " is not a whole copy of a photo; it is not used."
    ] == photos.verify(here)

    assert photos.take_in_copy(here, SHA, picture(size=(32, 24))).new


@pytest.mark.parametrize("sha", ["", "a" * 63, "A" * 64, "../" + "a" * 61])
def test_a_copy_of_nothing_is_refused(inspection, picture, sha):
    """What it is a copy of must be a digest."""
    with pytest.raises(photos.PhotoRefused, match="not the SHA-256"):
        photos.take_in_copy(inspection("here"), sha, picture())


def test_a_copy_whose_name_lies_is_not_merged(tmp_path, inspection, picture):
    """A copy in a bundle must have the digest in its name."""
    here = inspection("here")
    (here / "copies").mkdir()
    data = picture()
    (here / "copies" / f"{SHA}.{'b' * 64}.jpg").write_bytes(data)
    bundle.write(here, tmp_path / "out.zip")
    bundle.take_in(tmp_path / "out.zip", tmp_path / "there", "host")

    assert not (tmp_path / "there" / "2026-05-02-aa" / "copies").exists()
    assert hashlib.sha256(data).hexdigest() != "b" * 64


def test_a_bundle_cannot_take_the_place_of_what_was_recorded(tmp_path, inspection, entry):
    """A known entry with other content is kept aside with a sentence, also after a restart."""
    here = inspection("here", "laptop", [entry(1, "good")])
    false = inspection("false", "aaa", [entry(1, "failed"), entry(2, "fair")])
    bundle.write(false, tmp_path / "out.zip")

    assert ("2026-05-02-aa", 1, 0) == bundle.take_in(tmp_path / "out.zip", here.parent, "host")
    again = opened(here)
    assert ["good", "fair"] == [
        one.value for one in again.state.heads("sheet/hull/hull-1/plating", "rating")
    ]
    assert [] == again.damage
    assert "phone:1" in again.refused()[0]["why"]


def test_a_bundle_for_which_there_is_no_room_changes_nothing(
    tmp_path, inspection, picture, monkeypatch
):
    """Room is looked for before anything is unpacked; the sentence says how much is needed."""
    here = inspection("here", data=picture())
    bundle.write(here, tmp_path / "out.zip")
    monkeypatch.setattr(
        bundle_contents.shutil,
        "disk_usage",
        lambda _: namedtuple("Usage", "total used free")(10**9, 10**9, 50_000_000),
    )

    with pytest.raises(BundleRefused, match="MB are free"):
        bundle.take_in(tmp_path / "out.zip", tmp_path / "there", "host")
    assert [] == os.listdir(tmp_path / "there")

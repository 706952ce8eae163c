"""Two laptops whose folder `inspections` a real file-synchronising program carries: both end in
the same state, with all photos and no conflict copies."""

import io
import time

import pytest
from PIL import Image

from inspector.places import shipped
from inspector.record import photos
from inspector.record.bundles import bundle
from inspector.record.inspections import Inspections
from inspector.record.state import snapshot
from tests.reliability.carrier import Carrier

PATIENCE = 45
CHECK = "sheet/hull/shell/plating"


class Office:
    """One laptop: its data folder, its own name, and the program that carries its inspections."""

    def __init__(self, place, name):
        self.data, self.name, self.numbers = place / name, name, 0
        self.data.mkdir()
        (self.data / "catalogue.json").write_text(f'{{"of": "{name}"}}')
        self.inspections = Inspections(self.data / "inspections", name)
        self.carrier = Carrier(place / f"{name}-home", self.data / "inspections")

    def inspection(self):
        return self.inspections.get("one")

    def answer(self, count):
        """So many answers, in turn to a field of its own and to one that everybody answers, as
        fast as the disk takes them."""
        for _ in range(count):
            self.numbers += 1
            own = f"sheet/hull/{self.name}/check-{self.numbers}"
            self.inspection().record(
                self.name, [(own, "rating", "good"), (CHECK, "note", f"{self.name} {self.numbers}")]
            )

    def photograph(self, colour):
        out = io.BytesIO()
        Image.effect_noise((640, 480), 30).convert("RGB").save(
            out, "JPEG"
        ) if colour == "noise" else Image.new("RGB", (64, 48), colour).save(out, "JPEG")
        taken = photos.take_in(self.inspection().folder, out.getvalue())
        self.inspection().record(self.name, [(f"photo/{taken.sha}", "on", CHECK)])

    def pictures(self):
        return {
            path.name: path.read_bytes()
            for path in (self.data / "inspections" / "one" / "photos").glob("*")
            if not path.name.startswith(".")
        }

    def stop(self):
        self.carrier.stop()
        self.inspections.close()


@pytest.fixture
def offices(tmp_path):
    both = [Office(tmp_path, "north"), Office(tmp_path, "south")]
    both[0].carrier.know(both[1].carrier)
    both[1].carrier.know(both[0].carrier)
    yield both
    for one in both:
        one.stop()


def equal(one, other):
    """Whether both have the same entries and photos now."""
    if "one" not in other.inspections.ids():
        return False
    return {e.id for e in one.inspection().entries} == {
        e.id for e in other.inspection().entries
    } and one.pictures() == other.pictures()


def carried(north, south):
    """Wait until both are equal; AssertionError where that does not come about."""
    end = time.monotonic() + PATIENCE
    while not equal(north, south):
        assert time.monotonic() < end, f"still different after {PATIENCE} s"
        for one in (north, south):
            one.carrier.scan()
        time.sleep(0.3)


def files_named(office, pattern):
    return sorted(path.name for path in (office.data / "inspections").rglob(pattern))


def test_two_laptops_whose_folders_are_carried(offices):
    """Both write to one inspection, connected, then cut off, then connected again: same state,
    same photos, every disagreement seen, no conflict copy."""
    north, south = offices
    north.inspections.create(shipped("checklists"), "one")
    north.answer(3)
    for one in offices:
        one.carrier.start()
    carried(north, south)
    for _ in range(4):
        for one in offices:
            one.answer(3)
            one.photograph("noise")
            one.carrier.scan()
    carried(north, south)
    south.carrier.stop()
    for one in offices:
        one.answer(10)
        one.photograph("teal")
        one.photograph("noise")
        one.inspection().record(one.name, [("vessel", "name", f"as seen from {one.name}")])
    assert not equal(north, south)
    south.carrier.start()
    carried(north, south)

    assert snapshot(north.inspection().state) == snapshot(south.inspection().state)
    assert 2 * (12 + 10) + 3 == len(north.inspection().state.subjects("sheet/hull/north/")) + len(
        south.inspection().state.subjects("sheet/hull/south/")
    )
    for one in offices:
        shown = {head.value for head in one.inspection().state.heads("vessel", "name")}
        assert ({"as seen from north", "as seen from south"}, True) == (
            shown,
            one.inspection().state.disputed("vessel", "name"),
        )
        assert ([], [], {}) == (
            photos.verify(one.inspection().folder),
            one.inspection().damage,
            one.inspection().missing(),
        )
        assert [] == files_named(one, "*sync-conflict*")
        assert ["north.jsonl", "south.jsonl"] == files_named(one, "*.jsonl")
        assert f'{{"of": "{one.name}"}}' == (one.data / "catalogue.json").read_text()
    assert 4 * 2 + 2 + 1 == len(north.pictures())


def test_what_can_be_made_again_stays_where_it_was_made(offices):
    """Thumbnails and report copies are not carried: each computer makes its own."""
    north, south = offices
    north.inspections.create(shipped("checklists"), "one")
    north.photograph("noise")
    (north.inspection().folder / "derived" / "mark").write_text("north")
    for one in offices:
        one.carrier.start()
    carried(north, south)
    assert [] == files_named(south, "mark")
    [sha] = [name.partition(".")[0] for name in south.pictures()]
    assert photos.thumbnail(south.inspection().folder, sha).is_file()
    assert [] == files_named(north, "*sync-conflict*")


def test_a_bundle_brought_while_folders_are_carried(offices, tmp_path):
    """A stick is quicker than the network: what it brought is carried too, and neither computer
    loses or stops seeing what the other goes on to write."""
    north, south = offices
    north.inspections.create(shipped("checklists"), "one")
    for one in offices:
        one.carrier.start()
    carried(north, south)
    south.answer(2)
    carried(north, south)
    south.carrier.stop()
    south.answer(3)
    bundle.write(south.inspection().folder, tmp_path / "stick.zip")
    south.answer(3)
    time.sleep(1.1)  # north's copy of south's journal is to be the newer file
    bundle.take_in(
        tmp_path / "stick.zip", north.data / "inspections", "north", north.inspections.paused
    )
    north.answer(2)
    south.carrier.start()
    carried(north, south)
    for one in offices:
        one.answer(3)
    carried(north, south)
    for one in offices:
        one.inspections.forget("one")
        assert ({}, 11, 5) == (
            one.inspection().missing(),
            *(
                len(one.inspection().state.subjects(f"sheet/hull/{name}/"))
                for name in ("south", "north")
            ),
        )
        assert [] == files_named(one, "*sync-conflict*")

"""What cannot be read any more keeps its number: no other entry is ever given it."""

import random
import re

import pytest

from inspector.places import shipped
from inspector.record.bundles import bundle
from inspector.record.inspections import Inspections

VALUES = ("first", "second", "third")


@pytest.fixture
def written(tmp_path):
    """(folder, older bundle) of an inspection "one" with a phone's entry and three of laptop."""
    inspections = Inspections(tmp_path / "data", "laptop")
    inspection = inspections.create(shipped("checklists"), "one")
    inspection.take_in([_of_phone()])
    for value in VALUES:
        inspection.record("QX", [("vessel", "name", value)])
    inspections.close()
    bundle.write(tmp_path / "data" / "one", tmp_path / "older.zip")
    return tmp_path / "data", tmp_path / "older.zip"


def _of_phone():
    return {
        "id": "phone:1",
        "at": "2026-05-02T09:14:07.512Z",
        "device": "phone",
        "who": "QX",
        "subject": "sheet/hull/shell/anodes",
        "field": "rating",
        "value": "poor",
        "replaces": [],
    }


def _answer_then_bring(folder, older):
    """Record one answer, take the older bundle in; the inspection's entries by id."""
    inspections = Inspections(folder, "laptop")
    answered = inspections.get("one").record("QX", [("vessel", "flag", "none")])
    bundle.take_in(older, folder, "laptop", inspections.paused)
    inspection = inspections.get("one")
    found = {entry.id: entry for entry in inspection.entries}
    refused = inspection.refused()
    inspections.close()
    assert [answered[0]] == [entry for entry in found.values() if entry.field == "flag"]
    return found, refused


def test_any_flipped_bit_of_the_last_line_costs_no_entry(written):
    """The next answer takes another number, and the true line returns with an older bundle."""
    folder, older = written
    path, chance = folder / "one" / "journal" / "laptop.jsonl", random.Random(10)
    whole = path.read_bytes()
    start = whole.rindex(b"\n", 0, -1)
    id_at = whole.rindex(b'"id":"laptop')
    every_bit = [(place, bit) for place in range(id_at, id_at + 20) for bit in range(8)]
    some_bits = [(place, chance.randrange(8)) for place in range(start, len(whole))]
    for place, bit in every_bit + some_bits:
        flipped = bytearray(whole)
        flipped[place] ^= 1 << bit
        path.write_bytes(flipped)
        found, refused = _answer_then_bring(folder, older)
        assert set(VALUES) <= {entry.value for entry in found.values()}, (place, bit)
        assert [] == [row for row in refused if "line" not in row["entry"]], (place, bit)


def test_repeated_answers_after_damage_leave_no_further_hole(written):
    """One lost line costs one number, however often the inspection is opened afterwards."""
    folder, _ = written
    path = folder / "one" / "journal" / "laptop.jsonl"
    path.write_bytes(re.sub(rb'"id":"laptop:3"', b'"id":"laptop?3"', path.read_bytes()))
    for number in range(3):
        inspections = Inspections(folder, "laptop")
        inspections.get("one").record("QX", [("vessel", "flag", str(number))])
        assert {"laptop": [3]} == inspections.get("one").missing()
        inspections.close()


@pytest.mark.parametrize("line_end", [b"\r\n", b"\r", b" \n"])
def test_line_ends_changed_by_an_editor_cost_nothing(written, line_end):
    """Every line is still read, and numbers go on where they were."""
    folder, older = written
    path = folder / "one" / "journal" / "laptop.jsonl"
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"\n", line_end))
    inspections = Inspections(folder, "laptop")
    assert [] == inspections.get("one").damage
    inspections.close()
    bundle.write(folder / "one", folder.parent / "later.zip")
    assert ("one", 4, 0) == bundle.take_in(folder.parent / "later.zip", folder.parent, "other")
    found, refused = _answer_then_bring(folder, older)
    assert {"phone:1", *(f"laptop:{number}" for number in range(1, 5))} == set(found)
    assert [] == refused


def test_half_a_line_gives_its_number_back(written):
    """A line torn by a pulled plug was never acknowledged, so it leaves no hole."""
    folder, _ = written
    path = folder / "one" / "journal" / "laptop.jsonl"
    path.write_bytes(path.read_bytes()[:-40])
    inspections = Inspections(folder, "laptop")
    inspections.get("one").record("QX", [("vessel", "flag", "none")])
    assert {} == inspections.get("one").missing()
    inspections.close()


def test_damage_is_mended_once_its_entries_are_back(written):
    """The damaged line stays as evidence, and no longer asks for anything."""
    folder, older = written
    path = folder / "one" / "journal" / "laptop.jsonl"
    path.write_bytes(path.read_bytes().replace(b"third", b"thirt"))
    inspections = Inspections(folder, "laptop")
    assert 1 == len(inspections.get("one").damage_to_mend())
    bundle.take_in(older, folder, "laptop", inspections.paused)
    assert [] == inspections.get("one").damage_to_mend()
    assert 1 == len(inspections.get("one").damage)
    inspections.close()

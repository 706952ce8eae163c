"""Notes on claims that nobody can have seen survive half a file and a damaged line."""

import pytest

from inspector.places import shipped
from inspector.record.inspections import Inspections
from inspector.record.journal import JournalContents, read_file


def _entry(entry_id, value, replaces=()):
    return {
        "id": entry_id,
        "at": "2026-05-02T09:14:07.512Z",
        "device": entry_id.partition(":")[0],
        "who": "QX",
        "subject": "vessel",
        "field": "name",
        "value": value,
        "replaces": list(replaces),
    }


@pytest.fixture
def laptops(tmp_path):
    """Two computers with the same inspection; the first took a forged claim in."""
    both = [Inspections(tmp_path / name, name) for name in ("first", "second")]
    for each in both:
        each.create(shipped("checklists"), "one")
    both[0].get("one").take_in([_entry("phone:1", "forged", ["tablet:1"])], "phone")
    yield both
    for each in both:
        each.close()


def _carried(laptops, data):
    (laptops[1].folder / "one" / "journal" / "first.jsonl").write_bytes(data)
    return laptops[1].get("one")


def _own_file(laptops):
    return (laptops[0].folder / "one" / "journal" / "first.jsonl").read_bytes()


def _heads(inspection):
    return {entry.id for entry in inspection.state.heads("vessel", "name")}


def test_whatever_part_of_a_file_is_carried_has_no_claim_without_its_note(laptops):
    """An answer is not hidden by a claim whose note is still on its way."""
    whole = _own_file(laptops)
    for length in range(len(whole) + 1):
        inspection = _carried(laptops, whole[:length])
        if "phone:1" in inspection._files.known:
            break
    assert {"tablet:1"} == set(inspection.state.unseen_by("phone:1"))


def test_a_claim_whose_note_is_damaged_hides_no_answer_that_comes_later(laptops):
    """The computer that has the damaged line notes the claim itself."""
    note, claim = _own_file(laptops).splitlines(keepends=True)
    inspection = _carried(laptops, note.replace(b"unseen", b"unseem") + claim)
    assert {"phone:1"} == _heads(inspection)

    inspection.take_in([_entry("tablet:1", "true")], "tablet")

    assert {"phone:1", "tablet:1"} == _heads(inspection)


def test_where_nothing_is_damaged_a_true_claim_is_not_noted(laptops):
    """An entry that comes after one that replaced it elsewhere is replaced here too."""
    laptops[1].get("one").take_in([_entry("tablet:1", "true")], "tablet")
    seen = _entry("phone:2", "seen", ["phone:1", "tablet:1"])
    laptops[1].get("one").take_in([_entry("phone:1", "early"), seen], "phone")
    path = laptops[1].folder / "one" / "journal" / "second.jsonl"
    third = Inspections(laptops[0].folder.parent / "third", "third")
    third.create(shipped("checklists"), "one")
    lines = path.read_bytes().splitlines(keepends=True)
    (third.folder / "one" / "journal" / "second.jsonl").write_bytes(b"".join(lines[1:]))

    third.get("one").take_in([_entry("tablet:1", "true")], "tablet")

    assert {"phone:2"} == _heads(third.get("one"))
    third.close()


def test_the_own_file_has_the_note_before_the_claim(laptops):
    """The order in the file is that in which a part of it is carried."""
    contents = JournalContents()
    read_file(laptops[0].folder / "one" / "journal" / "first.jsonl", contents)
    assert ["first:1", "phone:1"] == list(contents.entries)

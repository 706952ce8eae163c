"""Entries in this computer's name that it cannot have made are kept aside, whatever brings them."""

import json

import pytest

from inspector.places import shipped
from inspector.record.bundles import bundle, saved_file
from inspector.record.entry import from_dict
from inspector.record.inspections import Inspections
from inspector.record.journal import to_line

HUGE = 999_999_999


def _entry(entry_id, value="forged", replaces=()):
    return {
        "id": entry_id,
        "at": "2026-05-02T09:14:07.512Z",
        "device": entry_id.partition(":")[0],
        "who": "ZZ",
        "subject": "vessel",
        "field": "flag",
        "value": value,
        "replaces": list(replaces),
    }


@pytest.fixture
def laptop(tmp_path):
    """The inspections of this computer, which has made two entries in "one"."""
    inspections = Inspections(tmp_path / "laptop", "laptop")
    inspection = inspections.create(shipped("checklists"), "one")
    for value in ("first", "second"):
        inspection.record("QX", [("vessel", "name", value)])
    yield inspections
    inspections.close()


def _by_bundle(laptop, entry):
    """A stranger's bundle of the same inspection; returns what the import reports."""
    there = laptop.folder.parent / "stranger"
    own = Inspections(there, "stranger")
    own.create(shipped("checklists"), "one")
    own.close()
    (there / "one" / "journal" / "stranger.jsonl").write_bytes(to_line(from_dict(entry)))
    path, reported = laptop.folder.parent / "one.zip", []
    bundle.write(there / "one", path)
    bundle.take_in(path, laptop.folder, "laptop", laptop.paused, reported)
    return reported


def _by_exchange(laptop, entry):
    outcomes = laptop.get("one").take_in([entry], origin="this computer").outcomes
    return [outcome for outcome in outcomes.values() if outcome.startswith("refused: ")]


def _by_saved_file(laptop, entry):
    path = laptop.folder.parent / "saved.json"
    saved = {"format": "inspector-waiting", "version": 1, "inspection": "one", "device": "phone"}
    path.write_text(json.dumps({**saved, "entries": [entry], "photos": []}))
    return saved_file.take_in(path, laptop).refused


def _by_carried_file(laptop, entry):
    path = laptop.folder / "one" / "journal" / "stranger.jsonl"
    path.write_bytes(to_line(from_dict(entry)))
    return [row["why"] for row in laptop.get("one").refused()]


WAYS = (_by_bundle, _by_exchange, _by_saved_file, _by_carried_file)


@pytest.mark.parametrize("bring", WAYS)
@pytest.mark.parametrize("number", [1000, HUGE])
def test_a_number_far_beyond_the_own_count_is_kept_aside_and_ends_nothing(laptop, bring, number):
    """It is refused with a reason; this computer goes on with its own next number."""
    [reason] = bring(laptop, _entry(f"laptop:{number}"))
    assert f"laptop:{number}" in reason
    inspection = laptop.get("one")
    assert [f"laptop:{number}"] == [row["entry"]["id"] for row in inspection.refused()]
    assert inspection.state.value("vessel", "flag") is None
    [answered] = inspection.record("QX", [("vessel", "flag", "none")])
    assert "laptop:3" == answered.id
    laptop.forget("one")
    assert ["laptop:1", "laptop:2", "laptop:3"] == [each.id for each in laptop.get("one").entries]


def test_a_live_hand_over_brings_no_next_number_of_this_computer(laptop):
    """Only a file can hold what this computer wrote and lost: a device never does."""
    [reason] = _by_exchange(laptop, _entry("laptop:3"))
    assert "only up to 2" in reason


def test_what_an_older_backup_lost_returns_with_a_bundle(laptop, tmp_path):
    """Own entries that go on where the own count ends were made here before."""
    for value in ("third", "fourth"):
        laptop.get("one").record("QX", [("vessel", "name", value)])
    bundle.write(laptop.folder / "one", tmp_path / "later.zip")
    laptop.forget("one")
    path = laptop.folder / "one" / "journal" / "laptop.jsonl"
    path.write_bytes(b"".join(path.read_bytes().splitlines(keepends=True)[:2]))
    reported = []
    bundle.take_in(tmp_path / "later.zip", laptop.folder, "laptop", laptop.paused, reported)
    assert [] == reported
    assert "fourth" == laptop.get("one").state.value("vessel", "name")


def test_a_removed_inspection_returns_whole_with_its_bundle(laptop, tmp_path):
    """Where nothing is here yet, nothing contradicts the numbers in the bundle."""
    bundle.write(laptop.folder / "one", tmp_path / "one.zip")
    assert ("one", 2, 0) == bundle.take_in(tmp_path / "one.zip", tmp_path / "new", "laptop")


def test_nobody_replaces_an_answer_of_this_computer_before_it_is_made(laptop):
    """The named numbers are not given, so the answer and the forged one are both shown."""
    forged = _entry("phone:1", replaces=[f"laptop:{number}" for number in (3, 4, HUGE)])
    inspection = laptop.get("one")
    inspection.take_in([forged], only="phone")
    seen_nothing = inspection.record("QX", [("vessel", "flag", "none")], lambda *_: [])
    assert ["laptop:5"] == [each.id for each in seen_nothing]
    assert inspection.state.disputed("vessel", "flag")
    inspection.record("QX", [("vessel", "flag", "blue")], settles=True)
    assert not inspection.state.disputed("vessel", "flag")
    assert "blue" == inspection.state.value("vessel", "flag")


def test_nobody_hides_the_later_answer_of_another_device(laptop):
    """What was not here when a device named it as replaced is shown beside its answer once it
    comes, here, after a restart and on a computer that gets the bundle."""
    inspection = laptop.get("one")
    names = [f"tablet:{number}" for number in (1, 2, 3)]
    inspection.take_in([_entry("phone:1", "blue", names)], only="phone")
    inspection.take_in([_entry("tablet:1", "none")], only="tablet")
    laptop.forget("one")
    bundle.write(laptop.folder / "one", laptop.folder.parent / "one.zip")
    there = laptop.folder.parent / "there"
    bundle.take_in(laptop.folder.parent / "one.zip", there, "other")
    for found in (laptop.get("one"), Inspections(there, "other").get("one")):
        heads = found.state.heads("vessel", "flag")
        assert ["phone:1", "tablet:1"] == [each.id for each in heads]
        assert found.state.disputed("vessel", "flag")


def test_what_a_browser_recorded_under_its_own_names_it_has_seen(laptop):
    """Its earlier answer may follow the one that replaces it, also under an earlier name."""
    inspection = laptop.get("one")
    for entry in (_entry("phone:2", "blue", ["phone:1", "phone-old:4"]), _entry("phone:1")):
        inspection.take_in([entry], only=("phone", "phone-old"))
    inspection.take_in([_entry("phone-old:4", "red")], only=("phone", "phone-old"))
    assert ["phone:2"] == [each.id for each in inspection.state.heads("vessel", "flag")]
    assert {"laptop", "phone", "phone-old"} == {each.device for each in inspection.entries}
    assert 2 == sum(each.device == "laptop" for each in inspection.entries)


def test_a_note_on_an_entry_is_no_field_of_the_inspection(laptop):
    """It is an entry of this computer that no page shows as an answer."""
    inspection = laptop.get("one")
    inspection.take_in([_entry("phone:1", "blue", ["tablet:1"])], only="phone")
    note = inspection.entries[-2]
    assert ("laptop", ["tablet:1"]) == (note.device, note.value)
    assert note.field not in inspection.state.fields("inspection")
    assert [] == list(inspection.state.disputes())

"""A value of another kind than its field's is kept aside and named, whichever way it comes."""

import pytest

from inspector.record.bundles import bundle
from inspector.record.entry import Entry, to_dict
from inspector.record.inspection import Inspection
from inspector.record.journal import to_line
from inspector.record.value_kinds import fits_its_field

SHEET, PHOTO = "sheet/hull/shell/anodes", "photo/" + "a" * 64


def entry(number, subject, field, value, device="tablet"):
    """One entry of a device."""
    return Entry(
        f"{device}:{number}", "2026-05-02T09:14:07.512Z", device, "QX", subject, field, value
    )


WRONG = [
    ("vessel", "name", 5),
    ("vessel", "length", ["62"]),
    ("brief", "speed", {"value": 12, "unit": "kn"}),
    ("row/tanks/one", "capacity", True),
    ("unit/hull/shell", "name", {"name": "Hull"}),
    (SHEET, "rating", {"value": "good"}),
    (SHEET, "reading/mm", 9.6),
    (SHEET, "reading/mm", {"value": "9.6", "unit": "mm", "more": "x"}),
    (SHEET, "gate", "yes"),
    (SHEET, "gate", {"permit": True}),
    ("finding/f1", "gone", "perhaps"),
    (PHOTO, "caption", ["a", "b"]),
]
RIGHT = [
    ("vessel", "length", {"value": "62", "unit": "m"}),
    ("vessel", "name", None),
    (SHEET, "reading/mm", "9.6"),
    (SHEET, "gate", {"permit": "yes", "entered": "no"}),
    ("finding/f1", "gone", True),
    ("finding/f1", "gone", None),
    (PHOTO, "of_a_newer_version", [{"x": 0.1}]),
]


@pytest.mark.parametrize(("subject", "field", "value"), WRONG)
def test_a_device_is_refused_with_what_would_be_right(tmp_path, subject, field, value):
    """The outcome names field and kind; the entry is kept aside, and the field stays as it was."""
    inspection = Inspection(tmp_path / "one", "laptop")
    sent = entry(1, subject, field, value)

    outcome = inspection.take_in([to_dict(sent)]).outcomes[sent.id]

    assert outcome.startswith(f"refused: The value of '{field}' of {subject} is ")
    assert "expected" in outcome
    assert [to_dict(sent)] == [row["entry"] for row in inspection.refused()]
    assert inspection.state.value(subject, field) is None


@pytest.mark.parametrize(("subject", "field", "value"), RIGHT)
def test_what_fits_is_stored(tmp_path, subject, field, value):
    """Texts, quantities, answers and flags, cleared fields, and fields of a newer version."""
    inspection = Inspection(tmp_path / "one", "laptop")
    sent = entry(1, subject, field, value)

    assert "stored" == inspection.take_in([to_dict(sent)]).outcomes[sent.id]


def test_another_journal_in_the_folder_gives_what_fits_only(tmp_path):
    """A folder that is carried between computers: the rest of the file counts."""
    inspection = Inspection(tmp_path / "one", "laptop")
    wrong, right = entry(1, "vessel", "name", 5), entry(2, "vessel", "flag", "Ostravelle")
    (tmp_path / "one" / "journal").mkdir(parents=True)
    (tmp_path / "one" / "journal" / "tablet.jsonl").write_bytes(to_line(wrong) + to_line(right))

    inspection.refresh()

    assert {"flag": "Ostravelle"} == inspection.state.values("vessel")
    assert ["tablet:1"] == [row["entry"]["id"] for row in inspection.refused()]


def test_a_bundle_gives_what_fits_only(tmp_path):
    """Its other entries are taken, and the refusal is reported with them."""
    source = tmp_path / "from" / "one"
    (source / "checklists").mkdir(parents=True)
    (source / "checklists" / "hull.toml").write_text("x = 1\n")
    (source / "journal").mkdir()
    lines = [entry(1, "vessel", "name", 5), entry(2, "vessel", "flag", "Ostravelle")]
    (source / "journal" / "tablet.jsonl").write_bytes(b"".join(map(to_line, lines)))
    bundle.write(source, tmp_path / "one.zip")

    reasons: list[str] = []
    taken = bundle.take_in(tmp_path / "one.zip", tmp_path / "to", "laptop", refused=reasons)

    assert ("one", 1, 0) == taken
    assert ["The value of 'name' of vessel is the number 5"] == [
        why.partition(";")[0] for why in reasons
    ]


def test_a_line_of_an_earlier_version_in_the_own_file_keeps_its_number(tmp_path):
    """It is left out of what is shown and listed; nothing is written over it."""
    earlier = entry(1, "vessel", "name", ["a"], device="laptop")
    journal = tmp_path / "one" / "journal" / "laptop.jsonl"
    journal.parent.mkdir(parents=True)
    journal.write_bytes(to_line(earlier))

    inspection = Inspection(tmp_path / "one", "laptop")
    made = inspection.record("QX", [("vessel", "name", "Right")])

    assert ["laptop:2"] == [each.id for each in made]
    assert "Right" == inspection.state.value("vessel", "name")
    assert ["laptop:1"] == [row["entry"]["id"] for row in inspection.refused()]
    assert journal.read_bytes().startswith(to_line(earlier))


def test_every_entry_of_the_invented_portfolio_fits(tmp_path):
    """What the program itself writes is never refused."""
    from inspector.demo.portfolio import prepare_in

    prepare_in(tmp_path / "data")
    for folder in (tmp_path / "data" / "inspections").iterdir():
        inspection = Inspection(folder, "reader")
        assert [] == [each for each in inspection.entries if not fits_its_field(each)]

"""Signed revisions: the same entries are found again, and what changed since is named."""

from datetime import date

import pytest

from inspector.record.state import State
from inspector.services.data_folder import open_folder
from inspector.services.files.revision_changes import record_changes
from inspector.services.files.revisions import (
    CannotSign,
    digest_of,
    entries_of,
    revisions_of,
    sign,
    state_of,
    unsigned,
)

DAY = date(2026, 10, 20)


@pytest.fixture
def data(tmp_path):
    folder = open_folder(tmp_path / "data")
    yield folder
    folder.close()


@pytest.fixture
def inspection(data):
    begun = data.begin()
    begun.record("K. T.", [("vessel", "name", "Candidate B"), ("vessel", "length", "71.4")])
    return begun


def signed(inspection):
    return sign(inspection, "K. T.", "K. Toreth", "surveyor", DAY)


def test_what_is_recorded_later_is_not_in_a_revision(inspection):
    """The state that was signed is put together again, with its digest."""
    digest = digest_of(inspection.entries)
    revision = signed(inspection)
    inspection.record("K. T.", [("vessel", "length", "72"), ("vessel", "breadth", "18")])

    assert (1, "revision 1", "K. Toreth, surveyor") == (
        revision.number,
        revision.title,
        revision.signed_by,
    )
    assert digest == revision.digest
    assert "71.4" == state_of(inspection, revision).value("vessel", "length")
    assert state_of(inspection, revision).value("vessel", "breadth") is None


def test_to_sign_changes_nothing_of_what_is_signed(inspection):
    """The digest is the same before and after, and the same state is not signed twice."""
    assert unsigned(inspection)
    revision = signed(inspection)

    assert revision.digest == digest_of(inspection.entries)
    assert not unsigned(inspection)
    with pytest.raises(CannotSign, match="Nothing was recorded since revision 1"):
        signed(inspection)


def test_a_change_makes_the_next_revision(inspection):
    """Numbered in the order of signing; the first one stays as it was."""
    first = signed(inspection)
    inspection.record("K. T.", [("vessel", "length", "72")])
    second = signed(inspection)

    assert [1, 2] == [each.number for each in revisions_of(inspection)]
    assert first == revisions_of(inspection)[0]
    assert "72" == state_of(inspection, second).value("vessel", "length")


def test_the_same_revision_is_found_in_another_office(inspection, tmp_path):
    """A bundle carries it, whatever that office adds under its own name."""
    from inspector.record.bundles import bundle
    from inspector.services.import_file import import_file

    revision = signed(inspection)
    out = tmp_path / "b.zip"
    bundle.write(inspection.folder, out)
    other = open_folder(tmp_path / "other")
    import_file(other, out)
    there = other.inspections.get(inspection.id)
    there.record("L. M.", [("vessel", "length", "70")])

    assert (revision,) == revisions_of(there)
    assert entries_of(inspection, revision) == entries_of(there, revision)
    other.close()


def test_a_revision_whose_entries_are_not_here_is_not_made_up(inspection):
    """It says so; the signed file is then the only copy."""
    revision = signed(inspection)
    inspection.entries.pop(0)

    with pytest.raises(CannotSign, match="cannot be put together"):
        state_of(inspection, revision)


@pytest.mark.parametrize("broken", [("day", "soon"), ("up_to", "x:y"), ("digest", None)])
def test_a_signature_that_is_not_whole_is_no_revision(inspection, broken):
    """As while its entries are still coming in; nothing breaks by it."""
    subject = next(iter([*inspection.state.subjects("signature/"), "signature/half"]))
    whole = {"digest": "0" * 64, "day": "2026-10-20", "up_to": "a:1"} | dict([broken])
    inspection.record("K. T.", [(subject, name, value) for name, value in whole.items()])

    assert () == revisions_of(inspection)


def test_changes_are_named_in_words(data, inspection):
    """Where, what, before and after; a field that was taken back is no change."""
    revision = signed(inspection)
    changes = [("vessel", "length", "72"), ("vessel", "name", "C"), ("vessel", "flag", "none")]
    inspection.record("K. T.", changes)
    inspection.record("K. T.", [("vessel", "name", "Candidate B")])
    before = state_of(inspection, revision)
    found = record_changes(before, inspection.state, data.assessment_of(inspection))

    assert [("Vessel", "flag", "", "none"), ("Vessel", "length", "71.4", "72")] == [
        (each.where, each.what, each.before, each.after) for each in found
    ]
    assert [] == record_changes(
        before, State(entries_of(inspection, revision)), data.assessment_of(inspection)
    )

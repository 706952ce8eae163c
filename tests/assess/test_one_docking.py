"""The bottom has one next inspection: the sheet of the walk and the certificates count it alike."""

import pytest

from inspector.assess.affected_sheets import affected_sheets, basis_of
from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.judged_sheets import judged_sheets
from inspector.assess.papers.surveys_due import due_list
from inspector.checklists.loader import read_library
from inspector.places import shipped
from inspector.record.entry import Entry
from inspector.record.state import State

SHEET = "sheet/hull/shell/docking"
CLASS = {
    "kind": "class",
    "issued": "2024-05-28",
    "expires": "2029-05-31",
    "last_bottom": "2024-05-24",
    "bottom_before_that": "2021-06-01",
}
READ = {"reading/last": "2024-05-24", "reading/before_that": "2021-06-01", "reading/ship": "cargo"}


@pytest.fixture(scope="module")
def library():
    """The shipped checklists."""
    return read_library(shipped("checklists"))


def recorded(day, certificate=CLASS):
    """The same dates on the sheet and on the certificate, read on a day."""
    said = [
        ("inspection", "date", day),
        ("unit/hull/shell", "name", "Shell"),
        ("unit/hull/shell", "kind", "shell"),
        *((SHEET, field, value) for field, value in READ.items()),
        *(("certificate/class", field, value) for field, value in certificate.items()),
    ]
    return [
        Entry(f"laptop:{number}", f"2026-10-06T08:00:{number:02}.000Z", "laptop", "QX", *entry)
        for number, entry in enumerate(said, 1)
    ]


def on_the_sheet(state, library):
    """The judgement of the sheet in the assessment, as the report prints it."""
    (system,) = assess(read_inspection(state), library).systems
    (result,) = (one for one in system.whole.results if one.subject == SHEET)
    return result.judgement


@pytest.mark.parametrize(
    ("day", "state", "left"),
    [("2026-10-06", "not yet", 230), ("2027-04-01", "due", 53), ("2027-06-01", "overdue", -8)],
)
def test_the_same_dates_give_one_word(library, day, state, left):
    """Two in the five years of the certificate, not of the docking before: by 2027-05-24."""
    entries = recorded(day)
    found = State(entries)
    record = read_inspection(found)
    (survey,) = (
        due.survey
        for due in due_list(record.certificates, record.day)
        if due.survey and due.survey.name == "bottom"
    )
    judged = on_the_sheet(found, library)
    below_deck = judged_sheets(found, library, entries)[SHEET]

    assert (state, left) == (survey.state, survey.left)
    assert (state, left) == (judged.band, judged.value)
    assert judged.sentence == below_deck["sentence"]


def test_without_a_certificate_the_period_counts_from_the_docking_before(library):
    """Five years from 2021-06-01 are over: a certificate that nobody typed postpones nothing."""
    judged = on_the_sheet(State(recorded("2026-10-06", {})), library)

    assert ("overdue", -127) == (judged.band, judged.value)


def test_a_certificate_typed_later_judges_the_sheet_anew(library):
    """An open phone learns it, as it learns the vessel's year."""
    entries = recorded("2026-10-06")
    certificate = [entry for entry in entries if entry.subject.startswith("certificate/")]

    assert SHEET in affected_sheets(State(entries), library, certificate)
    assert "2029-05-31" == basis_of(State(entries), library).certificate["expires"]

"""Certificates as recorded: their dates, the surveys they owe, and what cannot be read."""

from datetime import date

import pytest

from inspector.assess.from_state import read_inspection
from inspector.assess.papers.certificates import (
    BadCertificate,
    read_certificate,
    timeline,
    timelines,
)
from inspector.assess.papers.surveys_due import due_list
from inspector.record.entry import Entry
from inspector.record.state import State

ON = date(2026, 11, 25)
ROW = {
    "kind": "oil pollution prevention",
    "number": "0001",
    "issued": "2024-11-12",
    "expires": "2029-11-30",
    "last_annual": "2025-12-10",
}


def state_of(**rows):
    """A state with one certificate per keyword."""
    entries, number = [], 0
    for name, row in rows.items():
        for field, value in row.items():
            number += 1
            entries.append(_entry(number, f"certificate/{name}", field, value))
    return State(entries)


def _entry(number, subject, field, value):
    return Entry(
        id=f"d1:{number}",
        device="d1",
        at=f"2026-11-25T10:00:{number % 60:02d}.000Z",
        who="A",
        subject=subject,
        field=field,
        value=value,
        replaces=(),
    )


def states(line, name):
    """The states of one survey's windows, by date."""
    return [one.state for one in line.surveys if one.name == name]


def test_a_row_is_read_to_dates():
    """Text becomes dates, empty text nothing."""
    read = read_certificate("c1", {**ROW, "last_bottom": "", "postponed_until": "  "})
    assert (date(2029, 11, 30), date(2025, 12, 10), None, None) == (
        read.expires,
        read.last_annual,
        read.last_bottom,
        read.postponed_until,
    )


@pytest.mark.parametrize(
    ("field", "text", "words"),
    [
        ("expires", "31/05/2027", "Expires must be a date like 2027-05-31, not '31/05/2027'"),
        ("last_annual", "soon", "Last annual survey must be a date"),
        ("issued", "0024-01-01", "Issued must be a date"),
        ("expires", "2024-11-11", "before the issue on 2024-11-12"),
        ("postponed_until", "2029-11-29", "before the expiry"),
        ("last_bottom", "2026-02-30", "Last bottom inspection must be a date"),
    ],
)
def test_a_bad_date_is_one_sentence_that_names_the_field(field, text, words):
    """The reader raises it; the timeline carries it and never raises."""
    with pytest.raises(BadCertificate, match="^[A-Z].*[.]$") as caught:
        read_certificate("c1", {**ROW, field: text})
    assert words in str(caught.value)
    assert caught.value.field == field
    assert timeline({**ROW, field: text}, ON).problem == str(caught.value)


def test_a_survey_of_tomorrow_is_a_problem():
    """A date after the day of the inspection was misread."""
    assert (
        "after the day of the inspection"
        in timeline({**ROW, "last_annual": "2026-11-26"}, ON).problem
    )


def test_without_an_expiry_nothing_is_valid():
    """Not recorded is never in date; a paper that has no expiry is no problem."""
    line = timeline({"kind": "oil pollution prevention"}, ON)
    assert ("no evidence", True) == (line.state, "Expires is not recorded" in line.problem)
    assert ("done", "") == (
        timeline({"kind": "tonnage"}, ON).state,
        timeline({"kind": "tonnage"}, ON).problem,
    )


def test_the_surveys_stand_by_date_until_the_expiry():
    """Four annuals, two chances of an intermediate, the renewal."""
    line = timeline(ROW, ON)
    assert [one.closes for one in line.surveys] == sorted(one.closes for one in line.surveys)
    assert (4, 2, 1) == tuple(
        len(states(line, name)) for name in ("annual", "intermediate", "renewal")
    )
    assert line.state == "in window"


def test_an_intermediate_fulfils_the_annual_of_its_window():
    """Done on 2026-10-01 it settles the second anniversary of both."""
    line = timeline({**ROW, "last_intermediate": "2026-10-01"}, ON)
    assert states(line, "annual")[1] == "done"
    assert states(line, "intermediate") == ["done", "not needed"]


@pytest.mark.parametrize(
    ("expected", "on"), [("overdue", date(2026, 3, 1)), ("in window", date(2026, 1, 15))]
)
def test_a_missed_annual_makes_the_certificate_overdue(expected, on):
    """The last one lies before the window that has closed."""
    assert timeline({**ROW, "last_annual": "2025-01-10"}, on).state == expected


def test_no_record_of_a_survey_is_no_evidence():
    """A window has closed and no survey was shown."""
    row = {name: value for name, value in ROW.items() if name != "last_annual"}
    assert timeline(row, date(2026, 3, 1)).state == "no evidence"


def test_a_certificate_owes_nothing_for_windows_before_its_issue():
    """A paper issued again late in its five years keeps its anniversaries."""
    line = timeline({**ROW, "issued": "2026-06-01", "last_annual": ""}, ON)
    assert len(states(line, "annual")) == 3
    assert line.state == "in window"


def test_an_extension_is_reported_as_postponed():
    """Until its day, and overdue after it."""
    row = {
        **ROW,
        "last_annual": "2028-12-01",
        "last_intermediate": "2027-01-15",
        "postponed_until": "2030-02-28",
    }
    assert states(timeline(row, date(2030, 1, 15)), "renewal") == ["postponed"]
    assert states(timeline(row, date(2030, 3, 1)), "renewal") == ["overdue"]


def test_class_is_due_for_its_bottom():
    """36 months after the last, and why is told."""
    line = timeline({**ROW, "kind": "class", "last_bottom": "2024-11-12"}, ON)
    bottom = next(one for one in line.surveys if one.name == "bottom")
    assert (date(2027, 11, 12), "not yet", 352) == (bottom.closes, bottom.state, bottom.left)
    assert "36 months" in bottom.why


def test_an_unknown_kind_still_has_its_renewal():
    """A paper of a flag's own is watched by its expiry."""
    line = timeline({"kind": "fishing permit", "expires": "2027-01-31"}, ON)
    assert [one.name for one in line.surveys] == ["renewal"]
    assert line.state == "in window"


def test_the_list_of_what_is_due_runs_by_date_over_all_certificates():
    """The next open survey of each kind, problems first, and what falls within a year marked."""
    state = state_of(
        a=ROW,
        b={"kind": "sewage pollution prevention", "expires": "2026-12-20"},
        c={"kind": "safety radio", "expires": "tomorrow"},
    )
    found = due_list(read_inspection(state).certificates, ON)
    assert found[0].survey is None
    assert "Expires must be a date" in found[0].sentence
    assert [one.survey.name for one in found[1:]] == [
        "renewal",
        "annual",
        "intermediate",
        "renewal",
    ]
    assert "Sewage pollution prevention: renewal" in found[1].sentence
    assert "25 days left" in found[1].sentence


def test_a_certificate_taken_out_is_not_listed():
    """As every subject that was removed."""
    state = state_of(a=ROW, b={**ROW, "gone": "yes"})
    assert ["a"] == [
        line.certificate.id for line in timelines(read_inspection(state).certificates, ON)
    ]


def test_nothing_recorded_gives_nothing_due():
    """No certificates, no list."""
    assert () == due_list({}, ON)

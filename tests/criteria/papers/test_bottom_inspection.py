"""Inspections of the bottom: each bound from both sides."""

from datetime import date

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.papers.bottom_inspection import bottom_due


@pytest.mark.parametrize(
    ("band", "on", "values"),
    [
        ("not yet", "2027-08-13", {}),
        ("due", "2027-08-14", {}),
        ("due", "2027-11-12", {}),
        ("overdue", "2027-11-13", {}),
        ("overdue", "2025-11-13", {"ship": "passenger"}),
        ("due", "2025-11-12", {"ship": "passenger"}),
        ("overdue", "2027-01-02", {"before_that": "2022-01-01"}),
        ("due", "2027-01-01", {"before_that": "2022-01-01"}),
    ],
)
def test_the_bottom_is_due_by_36_months_and_twice_in_five_years(judge, band, on, values):
    """Last on 2024-11-12; yearly on a passenger ship.

    Five years counted from the one before where no expiry is known.
    """
    assert band == judge("bottom-inspection", on=on, **values).band


def test_a_bottom_that_is_overdue_is_failed(judge):
    """36 months by SOLAS I/10, which public notes repeat (seen)."""
    assert judge("bottom-inspection", on="2028-11-13").rating == "failed"


def test_an_extension_stretches_five_years_but_not_36_months():
    """The certificate's end may move, the gap may not."""
    assert bottom_due(
        date(2027, 6, 10), expires=date(2029, 11, 30), postponed_until=date(2030, 2, 28)
    )[0] == date(2030, 2, 28)
    assert bottom_due(
        date(2026, 11, 15), expires=date(2029, 11, 30), postponed_until=date(2030, 2, 28)
    )[0] == date(2029, 11, 15)


def test_a_gap_that_was_too_wide_is_told(judge):
    """More than 36 months between the last two."""
    assert "36 months" in judge("bottom-inspection", before_that="2021-11-11").notes[0]
    assert "36 months" not in judge("bottom-inspection", before_that="2021-11-12").notes[0]


def test_an_inspection_at_renewal_belongs_to_the_renewal():
    """Inside the last three months of a certificate the next is due by 36 months, not by the old
    expiry.
    """
    assert bottom_due(date(2029, 9, 1), expires=date(2029, 11, 30))[0] == date(2032, 9, 1)


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("survey-window", {"on": "2024-11-29"}),
        ("survey-window", {"last": "2026-11-26"}),
        ("survey-window", {"postponed_until": "2029-11-29"}),
        ("survey-window", {"survey": "yearly"}),
        ("survey-window", {"expires": "31/05/2029"}),
        ("bottom-inspection", {"last": "2026-11-26"}),
        ("bottom-inspection", {"before_that": "2025-01-01"}),
        ("bottom-inspection", {"ship": "yacht"}),
    ],
)
def test_dates_that_cannot_be_are_refused(judge, name, changes):
    """Before the certificate, after the day, the wrong way round."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

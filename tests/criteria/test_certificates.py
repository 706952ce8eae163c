"""Survey windows and bottom inspections: each state from both sides of each day."""

from datetime import date

import pytest

from inspector.criteria.certificates import KINDS
from inspector.criteria.judgement import CannotJudge
from inspector.criteria.survey_windows import SURVEYS, anniversary, bottom_due, extensions, renewed_expiry, windows


@pytest.mark.parametrize(
    ("band", "on", "last"),
    [
        ("not yet", "2025-08-29", None),
        ("in window", "2025-08-30", None),
        ("in window", "2026-01-28", None),
        ("due", "2026-01-29", None),
        ("due", "2026-02-28", None),
        ("no evidence", "2026-03-01", None),
        ("overdue", "2026-03-01", "2025-08-29"),
        ("not yet", "2026-03-01", "2025-08-30"),
        ("not yet", "2026-03-01", "2026-02-28"),
        ("done late", "2026-04-01", "2026-03-01"),
        ("in window", "2026-08-30", "2025-11-01"),
        ("overdue", "2028-03-01", "2026-11-30"),
        ("done", "2028-12-30", "2028-11-30"),
    ],
)
def test_an_annual_survey_runs_through_its_states(judge, band, on, last):
    """A certificate to 2029-11-30, whose first window is 2025-08-30 to 2026-02-28, both days inside."""
    assert band == judge("survey-window", on=on, last=last).band


@pytest.mark.parametrize(
    ("band", "on", "last"),
    [
        ("not yet", "2026-08-29", None),
        ("in window", "2026-08-30", None),
        ("not yet", "2027-03-01", None),
        ("in window", "2027-08-30", None),
        ("due", "2028-02-29", None),
        ("no evidence", "2028-03-01", None),
        ("overdue", "2028-03-01", "2027-03-01"),
        ("done", "2028-03-01", "2027-02-28"),
        ("done", "2028-03-01", "2027-08-30"),
    ],
)
def test_an_intermediate_survey_has_two_windows_and_needs_one(judge, band, on, last):
    """2026-08-30 to 2027-02-28 or 2027-08-30 to 2028-02-29; the months between count for neither."""
    assert band == judge("survey-window", survey="intermediate", on=on, last=last).band


@pytest.mark.parametrize(
    ("band", "survey", "last"),
    [
        ("done late", "verification, SMC ISSC MLC", "2028-01-15"),
        ("done", "intermediate", "2028-01-15"),
        ("done", "intermediate, class", "2027-05-01"),
        ("overdue", "intermediate", "2027-05-01"),
    ],
)
def test_management_statute_and_class_differ(judge, band, survey, last):
    """Verification ends on the 3rd anniversary; class takes the months between the windows, the conventions do not."""
    assert band == judge("survey-window", survey=survey, on="2028-03-15", last=last).band


@pytest.mark.parametrize(
    ("band", "rating", "on", "postponed"),
    [
        ("not yet", "good", "2029-08-29", None),
        ("in window", "fair", "2029-08-30", None),
        ("due", "fair", "2029-11-30", None),
        ("overdue", "failed", "2029-12-01", None),
        ("postponed", "fair", "2029-12-01", "2030-02-28"),
        ("postponed", "fair", "2030-02-28", "2030-02-28"),
        ("overdue", "failed", "2030-03-01", "2030-02-28"),
        ("overdue", "failed", "2030-05-01", "2031-01-01"),
    ],
)
def test_a_renewal_may_be_postponed_but_not_for_ever(judge, band, rating, on, postponed):
    """An extension holds to its own date, and never beyond five months."""
    judgement = judge("survey-window", survey="renewal", on=on, postponed_until=postponed)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_a_survey_without_evidence_is_never_good(judge):
    """Not shown is not done."""
    for survey in SURVEYS:
        assert judge("survey-window", survey=survey, on="2029-12-30").rating in ("poor", "failed")


def test_an_early_annual_tells_how_far_the_anniversary_moves(judge):
    """Done on 2026-07-15, 46 days before the window: to 2026-10-15 at the latest."""
    notes = judge("survey-window", on="2026-11-25", last="2026-07-15").notes
    assert any("2026-10-15" in note for note in notes)


def test_a_window_whose_day_was_held_says_so(judge):
    """31 May has no 31 February."""
    assert any("shorter month" in note for note in judge("survey-window", expires="2029-05-31").notes)
    assert not any("shorter month" in note for note in judge("survey-window", expires="2029-05-15").notes)


def test_memory_never_fails_a_verification(judge):
    """The windows of class and of management certificates are recalled."""
    assert judge("survey-window", survey="verification, SMC ISSC MLC", on="2028-12-30", last="2025-01-01").rating == "poor"


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
    """Last on 2024-11-12; yearly on a passenger ship; five years counted from the one before where no expiry is known."""
    assert band == judge("bottom-inspection", on=on, **values).band


def test_the_bottom_is_only_recalled(judge):
    """Overdue is poor, not failed."""
    assert judge("bottom-inspection", on="2028-11-13").rating == "poor"


def test_an_extension_stretches_five_years_but_not_36_months():
    """The certificate's end may move, the gap may not."""
    assert bottom_due(date(2027, 6, 10), expires=date(2029, 11, 30), postponed_until=date(2030, 2, 28))[0] == date(2030, 2, 28)
    assert bottom_due(date(2026, 11, 15), expires=date(2029, 11, 30), postponed_until=date(2030, 2, 28))[0] == date(2029, 11, 15)


def test_a_gap_that_was_too_wide_is_told(judge):
    """More than 36 months between the last two."""
    assert "36 months" in judge("bottom-inspection", before_that="2021-11-11").notes[0]
    assert "36 months" not in judge("bottom-inspection", before_that="2021-11-12").notes[0]


def test_an_inspection_at_renewal_belongs_to_the_renewal():
    """Inside the last three months of a certificate the next is due by 36 months, not by the old expiry."""
    assert bottom_due(date(2029, 9, 1), expires=date(2029, 11, 30))[0] == date(2032, 9, 1)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_certificate_names_known_surveys(kind):
    """And every window of it lies before its expiry."""
    for survey in KINDS[kind].surveys:
        assert survey in SURVEYS
        found = windows(survey, date(2029, 11, 30), KINDS[kind].validity or 60)
        assert all(one.opens <= one.closes <= date(2029, 11, 30) for one in found)


def test_a_certificate_of_one_year_has_no_anniversary_inside():
    """Passenger ships renew each year."""
    assert windows("annual", date(2027, 5, 31), 12) == ()
    assert windows("intermediate, class", date(2027, 5, 31), 12) == ()


def test_the_anniversary_is_taken_from_the_expiry_and_not_from_the_issue():
    """The leap day comes back in a leap year."""
    assert [date(2024, 2, 29), date(2025, 2, 28), date(2026, 2, 28), date(2027, 2, 28)] == [anniversary(date(2028, 2, 29), n) for n in (1, 2, 3, 4)]


def test_extensions_and_renewals_count_from_the_old_expiry():
    """One, three and five months; a late renewal wins nothing."""
    assert list(extensions(date(2027, 5, 31)).values()) == [date(2027, 6, 30), date(2027, 8, 31), date(2027, 10, 31)]
    assert renewed_expiry(date(2027, 5, 31), date(2027, 8, 10)) == date(2032, 5, 31)


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

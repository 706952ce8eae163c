"""Survey windows and bottom inspections: each state from both sides of each day."""

from datetime import date

import pytest

from inspector.criteria.papers.survey_dates import KINDS
from inspector.criteria.papers.survey_windows import (
    SURVEYS,
    anniversary,
    extensions,
    placed,
    windows,
)


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
    """A certificate to 2029-11-30, whose first window is 2025-08-30 to 2026-02-28, both days
    inside.
    """
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
    """2026-08-30 to 2027-02-28 or 2027-08-30 to 2028-02-29.

    The months between count for neither.
    """
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
    """Verification ends on the 3rd anniversary.

    Class takes the months between the windows, the conventions do not.
    """
    assert band == judge("survey-window", survey=survey, on="2028-03-15", last=last).band


@pytest.mark.parametrize(
    ("band", "rating", "on", "postponed"),
    [
        ("not yet", "good", "2029-08-29", None),
        ("in window", "fair", "2029-08-30", None),
        ("due", "fair", "2029-11-30", None),
        ("expired", "failed", "2029-12-01", None),
        ("postponed", "fair", "2029-12-01", "2030-02-28"),
        ("postponed", "fair", "2030-02-28", "2030-02-28"),
        ("expired", "failed", "2030-03-01", "2030-02-28"),
        ("postponed", "fair", "2030-02-28", "2031-01-01"),
        ("expired", "failed", "2030-03-01", "2031-01-01"),
    ],
)
def test_a_renewal_may_be_postponed_but_not_for_ever(judge, band, rating, on, postponed):
    """An extension counts until its own date, and never beyond three months."""
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


def test_a_window_whose_day_was_clamped_says_so(judge):
    """31 May has no 31 February."""
    assert any(
        "shorter month" in note for note in judge("survey-window", expires="2029-05-31").notes
    )
    assert not any(
        "shorter month" in note for note in judge("survey-window", expires="2029-05-15").notes
    )


def test_memory_never_fails_a_verification(judge):
    """The windows of class and of management certificates are recalled."""
    assert (
        judge(
            "survey-window", survey="verification, SMC ISSC MLC", on="2028-12-30", last="2025-01-01"
        ).rating
        == "poor"
    )


# months of validity where they are not 60; SOLAS I/12 for passenger ships, International Health
# Regulations for sanitation
# and papers without a day of expiry (memory), insurance renewed each year (common practice)
VALIDITY = {
    "passenger ship safety": 12,
    "insurance": 12,
    "sanitation": 6,
    "registry": 0,
    "tonnage": 0,
    "energy efficiency": 0,
    "anti-fouling": 0,
    "engine air pollution prevention": 0,
    "minimum safe manning": 0,
}


def test_certificates_are_valid_for_five_years_unless_their_text_says_otherwise():
    """The harmonised system gives 60 months."""
    assert VALIDITY == {
        kind: paper.validity for kind, paper in KINDS.items() if paper.validity != 60
    }


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_certificate_names_known_surveys(kind):
    """And every window of it lies before its expiry."""
    for survey in KINDS[kind].surveys:
        assert survey in SURVEYS
        found = windows(survey, date(2029, 11, 30), KINDS[kind].validity or 60)
        assert all(window.opens <= window.closes <= date(2029, 11, 30) for window in found)


def test_a_certificate_of_one_year_has_no_anniversary_inside():
    """Passenger ships renew each year."""
    assert windows("annual", date(2027, 5, 31), 12) == ()
    assert windows("intermediate, class", date(2027, 5, 31), 12) == ()


def test_the_anniversary_is_taken_from_the_expiry_and_not_from_the_issue():
    """The leap day comes back in a leap year."""
    assert [date(2024, 2, 29), date(2025, 2, 28), date(2026, 2, 28), date(2027, 2, 28)] == [
        anniversary(date(2028, 2, 29), n) for n in (1, 2, 3, 4)
    ]


def test_extensions_count_from_the_old_expiry():
    """One, three and five months."""
    assert list(extensions(date(2027, 5, 31)).values()) == [
        date(2027, 6, 30),
        date(2027, 8, 31),
        date(2027, 10, 31),
    ]


def test_a_certificate_without_a_window_has_no_states():
    """One of a few months has no survey between issue and expiry, and that is no error."""
    assert () == placed([], date(2026, 5, 2))

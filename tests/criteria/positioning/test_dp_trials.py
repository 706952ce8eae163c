"""Surveys of dynamic positioning by date.

Windows, five years, lapse of the document, an analysis older than the plant.
"""

import pytest

from inspector.criteria.core.judgement import CannotJudge

SURVEY = {"anniversary": "2020-12-10", "on": "2026-11-25"}


@pytest.mark.parametrize(
    ("band", "rating", "last"),
    [
        ("in date", "good", "2026-09-10"),
        ("due now", "fair", "2026-09-09"),
        ("due now", "fair", "2025-09-10"),
        ("missed", "failed", "2025-09-09"),
    ],
)
def test_the_annual_survey_has_a_window_of_three_months(judge, band, rating, last):
    """The window of December 2026 is open, that of December 2025 closed.

    The rule was read and may fail.
    """
    judgement = judge("dp-annual-survey", last=last, **SURVEY)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(("band", "on"), [("due now", "2027-03-10"), ("missed", "2027-03-11")])
def test_a_window_closes_after_its_last_day(judge, band, on):
    """10 March 2027 is still inside."""
    assert (
        band == judge("dp-annual-survey", last="2026-01-01", anniversary="2020-12-10", on=on).band
    )


def test_any_year_of_the_anniversary_will_do(judge):
    """Day and month count, even of a year to come."""
    found = {
        judge(
            "dp-annual-survey", last="2026-10-01", anniversary=f"{year}-12-10", on="2026-11-25"
        ).sentence
        for year in (2012, 2020, 2026, 2028)
    }
    assert 1 == len(found)


def test_an_anniversary_on_leap_day_is_clamped(judge):
    """29 February is the 28th in other years: the window closes on 28 May."""
    assert (
        "2027-05-28"
        in judge(
            "dp-annual-survey", last="2026-12-01", anniversary="2024-02-29", on="2026-12-15"
        ).sentence
    )


@pytest.mark.parametrize(("rating", "on"), [("good", "2026-09-10"), ("failed", "2026-09-11")])
def test_the_complete_test_lasts_five_years(judge, rating, on):
    """From 10 September 2021 to the same day of 2026."""
    assert rating == judge("dp-periodical-survey", last="2021-09-10", on=on).rating


@pytest.mark.parametrize(
    ("rating", "flag", "alteration"),
    [
        ("good", "unchanged", "none"),
        ("good", "unchanged", "with sanction"),
        ("failed", "changed or to be changed", "none"),
        ("failed", "unchanged", "without sanction"),
    ],
)
def test_the_document_lapses_with_the_flag_and_by_unsanctioned_change(
    judge, rating, flag, alteration
):
    """A buyer who re-flags does not keep the class."""
    assert rating == judge("dp-document", flag=flag, alteration=alteration).rating


@pytest.mark.parametrize(
    ("band", "changed", "on"),
    [
        ("in date", None, "2029-01-01"),
        ("to be reviewed", None, "2029-01-02"),
        ("older than the plant", "2024-01-02", "2024-06-01"),
        ("in date", "2024-01-01", "2024-06-01"),
    ],
)
def test_an_analysis_older_than_the_plant_is_of_another_plant(judge, band, changed, on):
    """Reviewed at five years, and at once after a later change."""
    assert band == judge("dp-failure-analysis", dated="2024-01-01", changed=changed, on=on).band


@pytest.mark.parametrize(
    ("name", "asked"),
    [
        ("dp-annual-survey", "last"),
        ("dp-periodical-survey", "last"),
        ("dp-failure-analysis", "dated"),
    ],
)
def test_a_date_after_the_visit_is_refused(judge, name, asked):
    """Nothing is in date by a slip of the year."""
    with pytest.raises(CannotJudge, match="is after 'Date of the visit'"):
        judge(name, **{asked: "2026-11-26"})

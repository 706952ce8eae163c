"""Service dates: each state from both sides, month ends, windows and printed dates."""

from datetime import date

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.safety.service_dates import due_date
from inspector.criteria.safety.service_intervals import INTERVALS

RAFT = "inflatable raft, service"
# item with a printed date, its rating when expired: failed where the text was read (SOLAS III/20.8
# with MSC.388(94) for the
# contents of rafts, SOLAS IV/15.9 for the beacon's battery), poor where the marking is only
# recalled
EXPIRED = [
    ("EPIRB battery", "failed"),
    ("raft rations and contents", "failed"),
    ("hydrostatic release, disposable", "poor"),
    ("SART battery", "poor"),
    ("hand radio battery", "poor"),
    ("rockets, flares, smoke", "poor"),
    ("line-throwing appliance", "poor"),
    ("lifebuoy light battery", "poor"),
]


@pytest.mark.parametrize(
    ("band", "rating", "on"),
    [
        ("in date", "good", "2027-06-01"),
        ("due soon", "fair", "2027-06-02"),
        ("due soon", "fair", "2027-08-31"),
        ("overdue", "failed", "2027-09-01"),
    ],
)
def test_a_service_is_in_date_soon_due_or_overdue(judge, band, rating, on):
    """A raft of 31 August: 91 days before its date it is in date, 90 days due soon, on the day
    still not overdue.
    """
    judgement = judge("service-due", on=on)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_the_days_left_are_reported_as_value_and_margin(judge):
    """Overdue days are negative."""
    judgement = judge("service-due", last="2025-08-31", on="2026-11-25")
    assert (-86, "days", 0, -86) == (
        judgement.value,
        judgement.unit,
        judgement.limit,
        judgement.margin,
    )
    assert "86 days past" in judgement.sentence


@pytest.mark.parametrize(
    ("band", "on"),
    [
        ("due soon", "2026-06-30"),
        ("in its window", "2026-07-01"),
        ("in its window", "2026-09-30"),
        ("overdue", "2026-10-01"),
    ],
)
def test_a_window_after_the_date_is_allowed_where_the_text_gives_one(judge, band, on):
    """The charge of a passenger ship's cylinders: 24 months and three."""
    assert (
        band
        == judge("service-due", kind="CO2 charge, passenger ship", last="2024-06-30", on=on).band
    )


def test_thirty_days_are_not_a_month():
    """31 January and 30 days are 2 March; a month would be 28 February."""
    assert date(2025, 3, 2) == due_date(date(2025, 1, 31), INTERVALS["CO2 system, general check"])
    assert date(2025, 2, 28) == due_date(
        date(2025, 1, 31), INTERVALS["immersion suit, monthly look"]
    )


@pytest.mark.parametrize(
    ("band", "made"), [("in date", None), ("in date", "2016-11-25"), ("overdue", "2016-11-24")]
)
def test_an_old_suit_is_tested_more_often(judge, band, made):
    """Above ten years of age every 24 months in place of 36."""
    assert (
        band
        == judge(
            "service-due", kind="immersion suit, pressure test", last="2024-11-20", made=made
        ).band
    )


@pytest.mark.parametrize(("kind", "interval"), INTERVALS.items())
def test_what_is_only_recalled_never_fails_a_system(kind, interval):
    """Long overdue: failed where the text was read, poor where not."""
    judgement = criterion("service-due").apply(
        {"last": "1990-01-01", "kind": kind, "on": "2026-11-25"}
    )
    assert judgement.rating == ("failed" if interval.source.mark == "seen" else "poor")
    assert judgement.source is interval.source


@pytest.mark.parametrize("kind", INTERVALS)
def test_every_kind_counts_months_or_days(kind):
    """One of the two, never both and never neither."""
    assert bool(INTERVALS[kind].months) != bool(INTERVALS[kind].days)


def test_a_clamped_day_is_noted(judge):
    """29 February and a year is 28 February, and the note says so."""
    assert any(
        "shorter month" in note
        for note in judge("service-due", last="2024-02-29", on="2024-03-01").notes
    )
    assert not any(
        "shorter month" in note
        for note in judge("service-due", last="2024-02-28", on="2024-03-01").notes
    )


@pytest.mark.parametrize(
    ("band", "expires"),
    [
        ("expired", "2026-11-24"),
        ("due soon", "2026-11-25"),
        ("due soon", "2027-02-23"),
        ("in date", "2027-02-24"),
    ],
)
def test_a_printed_date_is_valid_through_its_day(judge, band, expires):
    """And warned of for 90 days before."""
    assert band == judge("printed-expiry", expires=expires).band


@pytest.mark.parametrize(("kind", "rating"), EXPIRED)
def test_an_expired_item_fails_only_by_a_text_that_was_read(judge, kind, rating):
    """Batteries of beacons and contents of rafts; the others are recalled."""
    assert judge("printed-expiry", kind=kind, expires="2020-01-31").rating == rating


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("service-due", {"last": "2026-11-26"}),
        ("service-due", {"made": "2026-11-01"}),
        ("service-due", {"kind": "kettle"}),
        ("service-due", {"last": "06/16"}),
        ("service-due", {"last": None}),
        ("printed-expiry", {"expires": "05/2028"}),
        ("printed-expiry", {"kind": "raft"}),
    ],
)
def test_what_cannot_be_is_refused(judge, name, changes):
    """Services to come, before the making, of unknown things, on unreadable dates.

    And an unknown date is never in date.
    """
    with pytest.raises(CannotJudge):
        judge(name, **changes)

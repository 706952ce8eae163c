"""Survey windows against an independent calendar (python-dateutil) over generated dates, and
against dated timelines worked by hand.

SOLAS I/8 to I/10 and I/14, survey guidelines of 2015, A.1104(29); hand calculations are written
beside each case.
"""

from datetime import date, timedelta

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from inspector.assess.papers.certificates import timeline
from inspector.checklists.registry import criterion
from inspector.criteria.core.calendar import add_months
from inspector.criteria.papers.bottom_inspection import bottom_due
from inspector.criteria.papers.survey_windows import (
    SURVEYS,
    anniversary,
    extensions,
    windows,
)

DAYS = st.dates(date(1970, 1, 1), date(2150, 12, 31))


def iso(text):
    return date.fromisoformat(text)


@given(DAYS, st.integers(-240, 240))
def test_months_are_added_as_an_independent_library_adds_them(start, months):
    """python-dateutil's relativedelta clamps to the end of the month as we do."""
    assert start + relativedelta(months=months) == add_months(start, months)


@given(DAYS)
def test_every_annual_window_is_three_months_either_side(expires):
    """For any expiry: anniversaries counted back from it, windows from each anniversary, in order,
    before the expiry.
    """
    found = windows("annual", expires)
    for number, window in enumerate(found, 1):
        middle = expires - relativedelta(years=5 - number)
        assert (middle - relativedelta(months=3), middle + relativedelta(months=3)) == (
            window.opens,
            window.closes,
        )
        assert window.clamped == (
            len({expires.day, window.opens.day, middle.day, window.closes.day}) > 1
        )
    assert all(one.closes < other.opens for one, other in zip(found, found[1:], strict=False))


@given(DAYS, st.integers(0, 3000), st.integers(0, 3000))
def test_the_bottom_is_never_due_later_than_36_months(last, gap, left):
    """Whatever certificate and earlier inspection say, they only bring it forward."""
    before, expires = last - timedelta(days=gap), last + timedelta(days=left)
    latest = last + relativedelta(months=36)
    assert bottom_due(last, before, expires)[0] <= latest
    assert bottom_due(last, before)[0] <= latest
    assert latest == bottom_due(last)[0]


# start, months, expected: clamped by hand
MONTHS = [
    ("2024-02-29", 12, "2025-02-28"),
    ("2024-02-29", 48, "2028-02-29"),
    ("2024-02-29", 60, "2029-02-28"),
    ("2024-02-29", 120, "2034-02-28"),
    ("2025-08-31", 6, "2026-02-28"),
    ("2024-08-31", 6, "2025-02-28"),
    ("2025-11-30", 3, "2026-02-28"),
    ("2023-11-30", 3, "2024-02-29"),
    ("2024-11-30", 3, "2025-02-28"),
    ("2023-03-31", 30, "2025-09-30"),
    ("2025-01-31", 12, "2026-01-31"),
    ("2025-01-31", 3, "2025-04-30"),
    ("2026-05-31", -3, "2026-02-28"),
    ("2023-08-31", 36, "2026-08-31"),
    ("2024-02-29", 36, "2027-02-28"),
]


@pytest.mark.parametrize(("start", "months", "expected"), MONTHS)
def test_month_ends_and_leap_days(start, months, expected):
    """Held at the end of the shorter month."""
    assert iso(expected) == add_months(iso(start), months)


def test_months_are_not_chained():
    """31 January and three months: 30 April, and 28 April if added one by one.

    31 May less three and plus three is not 31 May.
    """
    day = iso("2025-01-31")
    for _ in range(3):
        day = add_months(day, 1)
    assert (iso("2025-04-28"), iso("2025-04-30")) == (day, add_months(iso("2025-01-31"), 3))
    assert iso("2026-05-28") == add_months(add_months(iso("2026-05-31"), -3), 3)


# expiry, survey, window by window: opens and closes, by hand from the anniversary
WINDOWS = [
    (
        "2027-05-31",
        "annual",
        [
            "2023-02-28 2023-08-31",
            "2024-02-29 2024-08-31",
            "2025-02-28 2025-08-31",
            "2026-02-28 2026-08-31",
        ],
    ),
    ("2027-05-31", "intermediate", ["2024-02-29 2024-08-31", "2025-02-28 2025-08-31"]),
    ("2027-05-31", "verification, SMC ISSC MLC", ["2024-05-31 2025-05-31"]),
    ("2027-05-31", "renewal", ["2027-02-28 2027-05-31"]),
    (
        "2029-11-30",
        "annual",
        [
            "2025-08-30 2026-02-28",
            "2026-08-30 2027-02-28",
            "2027-08-30 2028-02-29",
            "2028-08-30 2029-02-28",
        ],
    ),
    ("2029-11-30", "intermediate", ["2026-08-30 2027-02-28", "2027-08-30 2028-02-29"]),
    ("2029-11-30", "intermediate, class", ["2026-08-30 2028-02-29"]),
    ("2029-11-30", "renewal", ["2029-08-30 2029-11-30"]),
    ("2030-03-09", "verification, SMC ISSC MLC", ["2027-03-09 2028-03-09"]),
]


@pytest.mark.parametrize(("expires", "survey", "expected"), WINDOWS)
def test_the_windows_of_dated_certificates(expires, survey, expected):
    """Every day as written out by hand."""
    assert expected == [
        f"{window.opens} {window.closes}" for window in windows(survey, iso(expires))
    ]


@pytest.mark.parametrize(
    ("expires", "number", "expected"),
    [
        ("2029-05-31", 2, "2026-02-28 2026-08-31"),
        ("2029-05-31", 4, "2028-02-29 2028-08-31"),
        ("2028-02-29", 3, "2025-11-28 2026-05-28"),
        ("2029-12-31", 2, "2026-09-30 2027-03-31"),
        ("2029-03-31", 2, "2025-12-31 2026-06-30"),
    ],
)
def test_single_windows_at_month_ends(expires, number, expected):
    """The anniversary first, from the expiry; then three months either side of it."""
    window = windows("annual", iso(expires))[number - 1]
    assert expected == f"{window.opens} {window.closes}"


def test_a_leap_day_comes_back_because_nothing_is_chained():
    """Expiry 29 February 2028: that of 2024 is the 29th, of the years between the 28th."""
    assert ["2024-02-29", "2025-02-28", "2026-02-28", "2027-02-28"] == [
        anniversary(iso("2028-02-29"), number).isoformat() for number in (1, 2, 3, 4)
    ]


@pytest.mark.parametrize(
    ("expires", "expected"),
    [
        ("2029-11-30", ["2029-12-30", "2030-02-28", "2030-04-30"]),
        ("2027-05-31", ["2027-06-30", "2027-08-31", "2027-10-31"]),
    ],
)
def test_the_farthest_extensions(expires, expected):
    """One month, three and five: SOLAS I/14(f), (e), (d) (seen)."""
    assert [iso(day) for day in expected] == list(extensions(iso(expires)).values())


# last, before that, expiry, expected: SOLAS I/10(a)(v) (memory); by hand
BOTTOMS = [
    ("2022-03-10", None, None, "2025-03-10"),
    ("2024-11-12", None, "2029-11-30", "2027-11-12"),
    ("2027-06-10", "2024-11-12", "2029-11-30", "2029-11-30"),
    ("2026-11-15", "2024-11-12", "2029-11-30", "2029-11-15"),
    ("2027-06-10", "2024-11-12", None, "2029-11-12"),
]


@pytest.mark.parametrize(("last", "before", "expires", "expected"), BOTTOMS)
def test_the_next_bottom_inspection(last, before, expires, expected):
    """36 months, or the end of the five years.

    15 November 2029 governs 15 days before the expiry.
    """
    assert (
        iso(expected) == bottom_due(iso(last), before and iso(before), expires and iso(expires))[0]
    )


ROWS = [
    (
        "survey-window",
        {"expires": "2029-11-30", "survey": "annual", "on": "2026-11-25", "last": "2025-12-01"},
        "in window",
        "fair",
    ),
    (
        "survey-window",
        {"expires": "2029-11-30", "survey": "annual", "on": "2026-11-25", "last": "2026-09-01"},
        "not yet",
        "good",
    ),
    (
        "survey-window",
        {
            "expires": "2027-05-31",
            "survey": "intermediate",
            "on": "2025-07-01",
            "last": "2025-06-30",
        },
        "done",
        "good",
    ),
    (
        "survey-window",
        {
            "expires": "2027-05-31",
            "survey": "verification, SMC ISSC MLC",
            "on": "2025-07-01",
            "last": "2025-06-30",
        },
        "done late",
        "poor",
    ),
    (
        "survey-window",
        {"expires": "2027-05-31", "survey": "renewal", "on": "2027-06-01"},
        "expired",
        "failed",
    ),
    (
        "bottom-inspection",
        {"last": "2022-03-10", "on": "2025-03-10", "ship": "cargo", "expires": "2027-05-31"},
        "due",
        "fair",
    ),
    (
        "bottom-inspection",
        {"last": "2022-03-10", "on": "2025-03-11", "ship": "cargo", "expires": "2027-05-31"},
        "overdue",
        "failed",
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating"), ROWS)
def test_a_criterion_judges_the_dated_timeline(name, values, band, rating):
    """30 June 2025 is in time for safety construction and late for safety management, on one and
    the same certificate date.
    """
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating)


# day, last renewal survey, end of the extension, answer. SOLAS I/14(e) as quoted in
# MSC-MEPC.5/Circ.1 (imorules.com/GUID-230F0E06-636F-45A4-BC8A-DB8B2F766F70.html, seen): "No
# certificate shall be extended for a period longer than three months"; I/14(d) (shipinspection.eu,
# seen): up to five months where the renewal survey is completed. Expiry 2025-08-31, so that the
# third month ends on 2025-11-30 and the fifth on 2026-01-31.
EXTENDED = [
    ("2025-08-31", None, None, "due", "fair"),
    ("2025-09-01", None, None, "expired", "failed"),
    ("2025-11-30", None, "2025-11-30", "postponed", "fair"),
    ("2025-12-01", None, "2026-01-31", "expired", "failed"),
    ("2025-12-01", "2025-08-20", "2026-01-31", "postponed", "fair"),
    ("2026-01-31", "2025-05-31", "2026-01-31", "postponed", "fair"),
    # before the three months the survey is not the renewal of this certificate
    ("2026-01-31", "2025-05-30", "2026-01-31", "expired", "failed"),
    ("2026-02-01", "2025-08-20", "2026-06-30", "expired", "failed"),
    # a completed renewal without an extension: the new certificate has to be shown
    ("2025-09-01", "2025-08-20", None, "expired", "failed"),
    ("2025-08-31", "2025-08-20", None, "done", "good"),
]


@pytest.mark.parametrize(("on", "last", "until", "band", "rating"), EXTENDED)
def test_an_extension_ends_at_three_months_or_five_once_renewed(on, last, until, band, rating):
    """The day itself counts, the next does not."""
    judgement = criterion("survey-window").apply(
        {
            "expires": "2025-08-31",
            "survey": "renewal",
            "on": on,
            "last": last,
            "postponed_until": until,
        }
    )
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize("survey", SURVEYS)
@pytest.mark.parametrize("expires", ["2019-08-31", "2020-11-30", "2025-11-29", "2024-02-29"])
@pytest.mark.parametrize("before", [1, 376, 700, 1400])
def test_an_expired_certificate_is_failed_whatever_survey_was_done(survey, expires, before):
    """A certificate is valid until the date on it (SOLAS I/14, seen): a renewal of 2020 says
    nothing good in 2025 of the certificate of 2020.
    """
    last = iso(expires) - timedelta(days=before)
    values = {"expires": expires, "survey": survey, "on": "2025-11-30", "last": last}
    judgement = criterion("survey-window").apply(values)
    assert ("expired", "failed") == (judgement.band, judgement.rating)
    assert "ask for the one that replaced it" in judgement.sentence


@pytest.mark.parametrize("survey", SURVEYS)
def test_an_extended_certificate_is_never_good(survey):
    """A survey that was done does not make an extension better than fair."""
    values = {
        "expires": "2025-08-31",
        "survey": survey,
        "on": "2025-09-30",
        "last": "2025-08-20",
        "postponed_until": "2025-11-30",
    }
    assert criterion("survey-window").apply(values).rating in ("fair", "poor", "failed")


def test_the_timeline_of_a_whole_certificate():
    """Safety construction to 2029-11-30, docked 2024-11-12, first annual done.

    Every survey by date with its state on 2026-11-25.
    """
    row = {
        "kind": "safety construction",
        "issued": "2024-11-12",
        "expires": "2029-11-30",
        "last_annual": "2025-12-10",
        "last_bottom": "2024-11-12",
    }
    line = timeline(row, iso("2026-11-25"))
    states = [(each.name, each.closes.isoformat(), each.state) for each in line.surveys]
    assert states == [
        ("annual", "2026-02-28", "done"),
        ("annual", "2027-02-28", "in window"),
        ("intermediate", "2027-02-28", "in window"),
        ("bottom", "2027-11-12", "not yet"),
        ("annual", "2028-02-29", "not yet"),
        ("intermediate", "2028-02-29", "not yet"),
        ("annual", "2029-02-28", "not yet"),
        ("renewal", "2029-11-30", "not yet"),
    ]
    assert line.state == "in window"

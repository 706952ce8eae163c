"""A thruster's interval ends by hours or by years, whichever comes first."""

import pytest

from inspector.criteria.core.judgement import CannotJudge

NEW = {"since": 100, "overhauled": "2020-02-29", "on": "2026-11-25"}


@pytest.mark.parametrize(
    ("expected", "changes"),
    [
        ("good", {"since": 20_000}),
        ("fair", {"since": 20_001}),
        ("fair", {"since": 25_000}),
        ("poor", {"since": 25_001}),
        ("good", {"on": "2030-02-28"}),
        ("fair", {"on": "2030-03-01"}),
        ("fair", {"on": "2032-08-29"}),
        ("poor", {"on": "2032-08-30"}),
    ],
)
def test_either_end_is_the_last_good_moment(judge, expected, changes):
    """20 000 h, or ten years from a leap day (common practice, no source), and a quarter more."""
    assert expected == judge("thruster-overhaul", **{**NEW, **changes}).rating


@pytest.mark.parametrize(
    ("ended", "changes"),
    [
        ("by its years", {"on": "2031-01-01"}),
        ("by its hours", {"since": 30_000}),
        ("by its hours and years", {"since": 30_000, "on": "2033-01-01"}),
    ],
)
def test_the_sentence_says_what_ended_it(judge, ended, changes):
    """A reader sees whether iron or rubber is meant."""
    assert ended in judge("thruster-overhaul", **{**NEW, **changes}).sentence


def test_a_day_to_come_is_refused(judge):
    """No overhaul lies after the visit."""
    with pytest.raises(CannotJudge, match="after the visit"):
        judge("thruster-overhaul", **{**NEW, "overhauled": "2027-01-01"})

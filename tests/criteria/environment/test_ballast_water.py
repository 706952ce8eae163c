"""Ballast water: dates and approvals from both sides, and each count of the standard."""

import pytest

from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("band", "treatment", "on", "renewal"),
    [
        ("exchange still enough", "exchange only", "2024-09-07", None),
        ("treatment missing", "exchange only", "2024-09-08", None),
        ("treatment missing", "none", "2026-11-25", None),
        ("exchange still enough", "none", "2023-01-01", "2019-09-07"),
        ("treatment missing", "none", "2023-01-01", "2019-09-08"),
        ("no treatment needed", "no discharge", "2026-11-25", None),
    ],
)
def test_treatment_is_asked_from_a_renewal_or_from_2024(judge, band, treatment, on, renewal):
    """The first renewal from 8 September 2019, all from 8 September 2024."""
    assert band == judge("ballast-treatment", treatment=treatment, on=on, renewal=renewal).band


@pytest.mark.parametrize(
    ("expected", "installed", "approval"),
    [
        ("good", "2020-10-27", "G8 guidelines"),
        ("failed", "2020-10-28", "G8 guidelines"),
        ("good", "2020-10-28", "BWMS Code"),
        ("good", None, "BWMS Code"),
        ("fair", None, "G8 guidelines"),
        ("poor", "2022-01-01", "not shown"),
        ("poor", "2022-01-01", None),
    ],
)
def test_a_system_is_approved_by_the_rules_of_its_day(judge, expected, installed, approval):
    """From 28 October 2020 under the code only."""
    assert (
        expected
        == judge(
            "ballast-treatment", treatment="approved system", installed=installed, approval=approval
        ).rating
    )


@pytest.mark.parametrize("name", ["small", "large", "coli", "enterococci", "cholera"])
def test_each_count_must_stay_below_its_own_figure(judge, name):
    """Ten, ten, 250, 100 and 1: the figure itself is over."""
    figure = {"large": 10, "small": 10, "coli": 250, "enterococci": 100, "cholera": 1}[name]
    counts = dict.fromkeys(("small", "large", "coli", "enterococci", "cholera"), 0)
    assert judge("ballast-discharge", **{**counts, name: figure - 1}).rating == "good"
    assert judge("ballast-discharge", **{**counts, name: figure}).rating == "failed"


@pytest.mark.parametrize("missing", ["small", "coli", "enterococci", "cholera"])
@pytest.mark.parametrize(
    ("large", "band", "rating"),
    [(9, "not determined", None), (10, "over the standard", "failed")],
)
def test_four_counts_of_five_do_not_meet_the_standard(judge, missing, large, band, rating):
    """Regulation D-2 (seen) asks all five; a single one over it is enough to fail."""
    counts = dict.fromkeys(("small", "coli", "enterococci", "cholera"), 0)
    judgement = judge("ballast-discharge", **{**counts, "large": large, missing: None})
    assert (band, rating) == (judgement.band, judgement.rating)


def test_one_count_alone_is_not_determined(judge):
    """Large organisms alone say nothing of the other four."""
    others = dict.fromkeys(("small", "coli", "enterococci", "cholera"))
    assert judge("ballast-discharge", large=0, **others).rating is None


def test_what_was_not_counted_is_told(judge):
    """A sample that looked for one thing says nothing of the others."""
    assert "Not counted" in judge("ballast-discharge", large=2).notes[0]
    full = judge("ballast-discharge", large=2, small=2, coli=2, enterococci=2, cholera=0)
    assert not any("Not counted" in note for note in full.notes)


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("ballast-treatment", {"on": "2017-09-07"}),
        ("ballast-treatment", {"renewal": "2027-01-01"}),
        ("ballast-treatment", {"treatment": "maybe"}),
        ("ballast-discharge", {"large": -1}),
        ("ballast-discharge", {"small": 2.5}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Before the convention, renewals to come, half organisms."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

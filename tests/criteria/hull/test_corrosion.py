"""Corrosion: the greater rate counts, and lives are judged by the horizon."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.hull.corrosion import corrosion_rate
from inspector.criteria.hull.thickness import MEMBERS
from tests.criteria.conftest import VALID

FLAT = {"shell_share": "20", "shell_added": "0"}

# the more lenient of the two tables that were read, set as that of the vessel's class
PRINTED = {"shell_added": "1", "stiffener_share": "30"}


@pytest.fixture
def judge():
    """Judge by the printed table, over the valid values where a value is not given."""

    def apply(name, **values):
        rule = criterion(name)
        shipped = rule.limit_set
        own = shipped and shipped.with_limits(PRINTED, "Table of diminution of the class")
        return rule.apply({**VALID[name], **values}, own)

    return apply


def test_remaining_life_follows_the_profile_too():
    """10.0 mm of 2008, 8.9 of 2021 and 8.3 of 2026 on a flat 20 %.

    0.3 mm at 0.12 mm a year are 2.5 years.
    """
    rule = criterion("plate-remaining-life")
    own = rule.limit_set.with_limits(FLAT, "Hull rules of the society, 2019, table 3")
    values = {
        "as_built": 10,
        "built_year": 2008,
        "measured": 8.3,
        "measured_year": 2026,
        "previous": 8.9,
        "previous_year": 2021,
        "member": MEMBERS[0],
    }
    assert 2.5 == rule.apply(values, own).value


def test_the_horizon_is_compared_with_the_exact_life(judge):
    """1.5 mm at 1.5 mm in 18 years are 18 years and not their binary neighbour."""
    assert 18.0 == judge("plate-remaining-life", measured=8.5).value


@pytest.mark.parametrize(("years", "measured"), [("9 years", 8.5), ("10 years", 9.5)])
def test_the_next_gauging_comes_at_half_the_life_and_within_ten_years(judge, years, measured):
    """18 years of life ask for a look within 9; a longer life still within 10."""
    assert any(
        f"Gauge again within {years}" in note
        for note in judge("plate-remaining-life", measured=measured).notes
    )


@pytest.mark.parametrize(
    ("rating", "band", "horizon"),
    [
        ("good", "covers the horizon twice", 9),
        ("fair", "covers the horizon", 9.01),
        ("fair", "covers the horizon", 18),
        ("poor", "ends before the horizon", 18.01),
        (None, "no horizon given", None),
    ],
)
def test_remaining_life_is_compared_with_the_horizon(judge, rating, band, horizon):
    """A plate with 18 years left.

    Good to 9 years, fair to 18, poor beyond, unrated without a horizon.
    """
    judgement = judge("plate-remaining-life", measured=8.5, horizon=horizon)
    assert judgement.value == pytest.approx(18.0)
    assert (rating, band) == (judgement.rating, judgement.band)


@pytest.mark.parametrize(("rating", "measured"), [("poor", 7.0), ("failed", 6.99)])
def test_a_plate_at_its_renewal_thickness_has_no_life_left(judge, rating, measured):
    """At the limit poor, below it failed, and the life is zero and not negative."""
    judgement = judge("plate-remaining-life", measured=measured, horizon=10)
    assert (rating, 0.0, "no life left") == (judgement.rating, judgement.value, judgement.band)


def test_a_plate_without_loss_has_no_number_of_years(judge):
    """No loss is put in words, never as infinity."""
    judgement = judge("plate-remaining-life", measured=10, horizon=10)
    assert judgement.value is None
    assert judgement.rating == "good"
    assert "no measurable loss" in judgement.sentence
    assert "inf" not in judgement.sentence


@pytest.mark.parametrize(("rate", "previous"), [(0.12, 8.9), (1.7 / 18, 8.5)])
def test_the_greater_of_the_two_rates_governs(judge, rate, previous):
    """A plate from 10.0 (2008) to 8.3 mm (2026) lost faster since 2021 in the first case, slower in
    the second.
    """
    judgement = judge("plate-remaining-life", measured=8.3, previous=previous, previous_year=2021)
    assert (8.3 - 7.0) / rate == pytest.approx(judgement.value)


@pytest.mark.parametrize(
    ("input_name", "changes", "said"),
    [
        ("measured_year", {"measured_year": 2008}, "is not above 'Year built'"),
        ("previous_year", {"previous": 9.5}, "needs both"),
        ("previous", {"previous_year": 2020}, "needs both"),
        ("previous_year", {"previous": 9.5, "previous_year": 2026}, "lies before this one"),
        ("previous_year", {"previous": 9.5, "previous_year": 2008}, "lies after the build"),
    ],
)
def test_years_out_of_order_are_refused(judge, input_name, changes, said):
    """Build, previous and present gauging follow each other, and the previous one needs year and
    thickness.
    """
    with pytest.raises(CannotJudge, match=said) as caught:
        judge("plate-remaining-life", **changes)

    assert input_name == caught.value.input


def test_a_rate_is_loss_over_years():
    """Two thicknesses and the years between give the rate in the unit of the thicknesses."""
    assert corrosion_rate(10.0, 8.3, 18) == pytest.approx(1.7 / 18)


@pytest.mark.parametrize(
    ("band", "rate", "changes"),
    [
        ("governing rate", 0.12, {}),
        ("faster than since new", 0.12, {"as_built": 10, "built_year": 2008}),
        ("governing rate", 0.1, {"previous": 8.5, "as_built": 10.1, "built_year": 2008}),
        ("no measurable loss", 0.0, {"previous": 8.3}),
        ("no measurable loss", 0.0, {"previous": 8.2}),
    ],
)
def test_the_greater_rate_governs(judge, band, rate, changes):
    """8.9 mm of 2021 to 8.3 mm of 2026 is 0.12 mm a year.

    10.1 of 2008 would be 0.1; a gain is no loss.
    """
    judgement = judge("corrosion-rate", **changes)
    assert (band, None) == (judgement.band, judgement.rating)
    assert rate == judgement.value


@pytest.mark.parametrize(
    ("input_name", "changes", "said"),
    [
        ("measured_year", {"measured_year": 2021}, "lies after the previous"),
        ("built_year", {"as_built": 10}, "needs both"),
        ("as_built", {"built_year": 2008}, "needs both"),
        ("built_year", {"as_built": 10, "built_year": 2021}, "lies after the build"),
    ],
)
def test_a_rate_without_its_years_is_refused(judge, input_name, changes, said):
    """A rate needs two readings in the order of their years."""
    with pytest.raises(CannotJudge, match=said) as caught:
        judge("corrosion-rate", **changes)

    assert input_name == caught.value.input

"""Tanks: agreement of paper and gauging, slack and full, room to expand, test pressure."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.tanks.tank_contents import greatest_fill


@pytest.mark.parametrize(
    ("band", "rating", "claimed"),
    [
        ("agrees", "good", 99),
        ("less on paper", "poor", 98.99),
        ("agrees", "good", 101),
        ("more on paper", "poor", 101.01),
    ],
)
def test_paper_agrees_with_gauging_within_one_per_cent(judge, band, rating, claimed):
    """100 m³ gauged carry papers of 99 to 101 m³."""
    judgement = judge("tank-quantity", claimed=claimed)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_the_tolerance_may_be_set_with_its_text():
    """A charter may ask for half a per cent."""
    rule = criterion("tank-quantity")
    own = rule.limit_set.with_limits({"tolerance": "0.5"}, "Bunker clause of the charter")
    assert "more on paper" == rule.apply({"claimed": 100.6, "gauged": 100}, own).band


@pytest.mark.parametrize(
    ("band", "claimed"),
    [("agrees", 13.0383), ("less on paper", 13.03), ("agrees", 13.3017), ("more on paper", 13.31)],
)
def test_a_sounding_is_read_between_two_rows(judge, band, claimed):
    """1.37 m between 12.40 and 13.50 m³ is 13.17 m³, one per cent either way."""
    assert band == judge("tank-table", claimed=claimed).band


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"sounding": 1.29}, "lies outside the two rows"),
        ({"sounding": 1.41}, "lies outside the two rows"),
        ({"upper": 1.3}, "rows in the wrong order"),
        ({"upper_volume": 12.4}, "rows in the wrong order"),
    ],
)
def test_rows_that_do_not_hold_the_sounding_are_refused(judge, changes, said):
    """Nothing is read outside the two rows."""
    with pytest.raises(CannotJudge, match=said):
        judge("tank-table", **changes)


@pytest.mark.parametrize(
    ("band", "claimed"),
    [("agrees", 205.4), ("less on paper", 205.3), ("agrees", 209.49), ("more on paper", 209.51)],
)
def test_fuel_on_paper_is_compared_with_its_mass_in_air(judge, band, claimed):
    """250 m³ at 35 °C of 845 kg/m³ are 207.43 t, one per cent either way."""
    assert band == judge("fuel-quantity", claimed=claimed).band


def test_fuel_beyond_the_table_is_refused(judge):
    """The table speaks of 653 to 1075 kg/m³."""
    with pytest.raises(CannotJudge, match="is accepted"):
        judge("fuel-quantity", density=1080)


@pytest.mark.parametrize(("rating", "above"), [("good", 0), ("good", -0.01), ("poor", 0.01)])
def test_fuel_is_given_room(judge, rating, above):
    """The limit is what is 98 % when warm; it is recalled, so it never fails."""
    assert rating == judge("fuel-tank-fill", fill=greatest_fill(845, 15, 45) + above).rating


def test_fuel_that_cools_is_another_question(judge):
    """The warmest temperature is not below the present one."""
    with pytest.raises(CannotJudge, match="is below 'Temperature of the fuel'"):
        judge("fuel-tank-fill", warmest=14)

"""United States tiers: first model years from both sides."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.environment.us_engine_tiers import us_tier_years


@pytest.mark.parametrize(
    ("expected", "power", "displacement"),
    [
        ({"2": 2005, "3": 2012}, 75, 0.89),
        ({"2": 2004, "3": 2013}, 300, 0.9),
        ({"2": 2004, "3": 2014}, 300, 1.2),
        ({"2": 2007, "3": 2013}, 300, 2.5),
        ({"2": 2007, "3": 2012}, 599, 3.5),
        ({"2": 2007, "3": 2012, "4": 2017}, 600, 6.9),
        ({"2": 2007, "3": 2013, "4": 2017}, 1399, 7),
        ({"2": 2007, "3": 2014, "4": 2016}, 1400, 15),
        ({"2": 2007, "3": 2014, "4": 2014}, 2000, 29),
    ],
)
def test_the_first_model_years_follow_size_and_power(expected, power, displacement):
    """Each size from its lower end."""
    assert expected == us_tier_years(power, displacement)


@pytest.mark.parametrize(
    ("rating", "model_year", "label"),
    [
        ("fair", 2006, "none"),
        ("poor", 2007, "none"),
        ("good", 2007, "2"),
        ("good", 2011, "2"),
        ("failed", 2012, "2"),
        ("good", 2012, "3"),
        ("good", 2015, "3"),
        ("failed", 2016, "3"),
        ("good", 2016, "4"),
        ("good", 2006, "1"),
    ],
)
def test_a_label_is_compared_with_its_model_year(judge, rating, model_year, label):
    """1500 kW of 4 l per cylinder: tier 2 from 2007, 3 from 2012, 4 from 2016."""
    assert rating == judge("us-engine-tier", model_year=model_year, label=label).rating


def test_a_recalled_year_never_fails(judge):
    """Tier 4 of 2000 kW and more is recalled."""
    judgement = judge("us-engine-tier", model_year=2015, power=2500, label="3")
    assert ("below the asked tier", "poor") == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    "changes",
    [{"power": 74}, {"power": 3701}, {"displacement": 30}, {"label": "5"}, {"model_year": 1969}],
)
def test_what_lies_outside_is_refused(judge, changes):
    """Small engines, giants and tiers to come."""
    with pytest.raises(CannotJudge):
        judge("us-engine-tier", **changes)

"""The landing area: figures from both sides, and that nothing here lets anything land."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.safety.landing_area import foam_rate

CIRCLE, OUTSIDE = "touchdown circle and markings", "outside it"


@pytest.mark.parametrize("missing", ["certificate", "structure", "friction_report"])
def test_without_one_paper_the_area_is_unverified(judge, missing):
    """No operations without papers."""
    judgement = judge("landing-papers", **{missing: "not seen"})
    assert ("unverified", "poor") == (judgement.band, judgement.rating)
    assert "no operations" in judgement.sentence


@pytest.mark.parametrize(
    ("name", "rating", "values"),
    [
        ("landing-fire", None, {}),
        ("landing-fire", "poor", {"foam": 249}),
        ("landing-fire", "poor", {"powder": 44.9}),
        ("landing-fire", "poor", {"carbon_dioxide": 17.9}),
    ],
)
def test_a_figure_that_is_met_carries_no_rating_and_one_that_is_not_warns(
    judge, name, rating, values
):
    """At the figure nothing is said for it; beyond it the rating is poor and never failed."""
    assert rating == judge(name, **values).rating


@pytest.mark.parametrize(
    ("rate", "d_value"), [(250, 14.9), (500, 15), (500, 23.9), (800, 24), (800, 34.9)]
)
def test_foam_goes_by_the_d_value(rate, d_value):
    """Three steps; a bound belongs to the larger helicopter."""
    assert rate == foam_rate(d_value)


def test_beyond_the_last_step_no_foam_rate_is_made_up(judge):
    """The rule ends below 35 m."""
    with pytest.raises(CannotJudge, match="ends below 35 m"):
        judge("landing-fire", d_value=35)

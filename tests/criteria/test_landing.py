"""The landing area: figures from both sides, and that nothing here lets anything land."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.landing import CRITERIA, MODU, UNCERTIFIED, foam_rate
from inspector.criteria.registry import criterion

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
        ("landing-circle", None, {"diameter": 13}), ("landing-circle", "poor", {"diameter": 12.99}), ("landing-circle", "poor", {"diameter": 10.78}),
        ("landing-sector", None, {"sector": 210}), ("landing-sector", "poor", {"sector": 209.9}), ("landing-obstacle", None, {"height": 0.25}),
        ("landing-obstacle", "poor", {"height": 0.26}), ("landing-mass", None, {"mass": 6.4}), ("landing-mass", "poor", {"mass": 6.41}),
        ("landing-load", None, {"capacity": 101.98916}), ("landing-load", "poor", {"capacity": 101.98}), ("landing-friction", None,
                                                                                                          {"friction": 65, "place": CIRCLE}),
        ("landing-friction", "poor", {"friction": 64.9, "place": CIRCLE}), ("landing-friction", None, {"friction": 50, "place": OUTSIDE}),
        ("landing-friction", "poor", {"friction": 49.9, "place": OUTSIDE}), ("landing-fire", None, {}), ("landing-fire", "poor", {"foam": 249}),
        ("landing-fire", "poor", {"powder": 44.9}), ("landing-fire", "poor", {"carbon_dioxide": 17.9}),
    ],
)
def test_a_figure_that_is_met_carries_no_rating_and_one_that_is_not_warns(judge, name, rating, values):
    """At the figure nothing is said for it; beyond it the rating is poor and never failed."""
    assert rating == judge(name, **values).rating


@pytest.mark.parametrize(("band", "diameter"), [("under 0.83 D", 10.78), ("under D", 10.79), ("under D", 12.99), ("at least D", 13)])
def test_the_older_figure_is_told_apart(judge, band, diameter):
    """0.83 of 13 m is 10.79 m."""
    assert band == judge("landing-circle", diameter=diameter).band


def test_beyond_the_reach_of_the_obstacle_figure_nothing_is_judged(judge):
    """0.12 of 13 m is 1.56 m; beyond it a slope begins."""
    assert judge("landing-obstacle", distance=1.56).source == MODU
    with pytest.raises(CannotJudge, match="beyond it a slope begins"):
        judge("landing-obstacle", distance=1.57)


@pytest.mark.parametrize(("rate", "d_value"), [(250, 14.9), (500, 15), (500, 23.9), (800, 24), (800, 34.9)])
def test_foam_goes_by_the_d_value(rate, d_value):
    """Three steps; a bound belongs to the larger helicopter."""
    assert rate == foam_rate(d_value)


def test_beyond_the_last_step_no_foam_rate_is_made_up(judge):
    """The rule ends below 35 m."""
    with pytest.raises(CannotJudge, match="ends below 35 m"):
        judge("landing-fire", d_value=35)


def test_a_coefficient_typed_as_a_fraction_is_refused(judge):
    """0.65 is not 0.65 %."""
    with pytest.raises(CannotJudge, match="below 5 %"):
        judge("landing-friction", friction=0.65)


@pytest.mark.parametrize("name", [rule.name for rule in CRITERIA])
def test_nothing_here_lets_anything_land(valid, name):
    """Every judgement says that without certificate there are no operations, and none rates good."""
    judgement = criterion(name).apply(valid(name))
    assert UNCERTIFIED in judgement.notes
    assert judgement.rating != "good"
    assert "fit to land" not in f"{judgement.sentence} {judgement.band}"

"""Pits, edges and grooves: the limits from both sides, and where the rules end."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.pitting import groove_limit, pitted_limit
from inspector.criteria.registry import criterion


@pytest.mark.parametrize(
    ("rating", "depth"), [("good", 0), ("good", 1.8), ("fair", 1.81), ("fair", 3.59), ("failed", 3.6), ("failed", 4), ("failed", 12)]
)
def test_a_pit_must_leave_more_than_seventy_per_cent(judge, rating, depth):
    """In 12 mm a pit of 3.6 mm leaves just 70 %, which is not more than 70 %."""
    assert rating == judge("pit-depth", depth=depth).rating


def test_a_pit_deeper_than_its_plate_is_refused(judge):
    """A hole is no pit."""
    with pytest.raises(CannotJudge, match="a hole is no pit"):
        judge("pit-depth", depth=12.01)


def test_the_surveyor_may_set_his_society_s_depth():
    """With three quarters to be left the limit in 12 mm is 3 mm."""
    rule = criterion("pit-depth")
    judgement = rule.apply({"depth": 3, "as_built": 12}, rule.profile.with_limits({"remaining": "75"}, "Hull rules, 2020, 4.2"))
    assert ("failed", 3.0) == (judgement.rating, judgement.limit)


@pytest.mark.parametrize(
    ("band", "intensity"),
    [("no pits", 0), ("scattered pits", 0.1), ("scattered pits", 15), ("many pits", 15.1), ("many pits", 19.9), ("pitted all over", 20),
     ("pitted all over", 100)],
)
def test_pitting_is_told_by_its_share(judge, band, intensity):
    """Above 15 % the deepest pits are measured; from 20 % there is no allowance for pits."""
    assert band == judge("pitting-intensity", intensity=intensity).band


@pytest.mark.parametrize(("rating", "least"), [("fair", 9.9), ("fair", 9.8), ("failed", 9.79), ("failed", 9.7)])
def test_a_pitted_plate_keeps_the_lesser_of_two_limits(judge, rating, least):
    """As built 14 and renewal 11: 9.8 and 10.0, and the lesser one counts."""
    assert rating == judge("pitted-plate", least=least).rating


@pytest.mark.parametrize(("limit", "values"), [(9.8, (14, 11)), (9.1, (14, 11, 1)), (9.0, (14, 10))])
def test_the_limit_of_a_pitted_plate(limit, values):
    """Voluntary addition is taken off before the share; renewal less 1 mm where that is less."""
    assert limit == pitted_limit(*values)


@pytest.mark.parametrize(
    ("name", "changes", "said"),
    [("pitted-plate", {"intensity": 20}, "the pit rule ends"), ("pitted-plate", {"renewal": 14}, "must lie below"),
     ("edge-corrosion", {"band_share": 25}, "under 25 %"),
     ("edge-corrosion", {"renewal": 14}, "must lie below"), ("groove-corrosion", {"width": 30.1}, "grooves to 30 mm"),
     ("groove-corrosion", {"height_share": 15.1}, "15 %"), ("groove-corrosion", {"renewal": 12}, "must lie below")],
)
def test_beyond_its_reach_a_rule_does_not_judge(judge, name, changes, said):
    """Each rule names the pits, edges and grooves it speaks of."""
    with pytest.raises(CannotJudge, match=said):
        judge(name, **changes)


@pytest.mark.parametrize(("rating", "least"), [("fair", 9.8), ("poor", 9.79)])
def test_an_edge_is_held_to_the_pit_limit_and_never_fails(judge, rating, least):
    """The edge rule is recalled, so it may warn only."""
    assert rating == judge("edge-corrosion", least=least, band_share=24.9).rating


@pytest.mark.parametrize(("rating", "least"), [("fair", 9.0), ("poor", 8.99), ("poor", 8.9)])
def test_a_groove_is_held_to_its_limit_and_never_fails(judge, rating, least):
    """As built 12 and renewal 9.5: 9.0 and 9.0."""
    assert rating == judge("groove-corrosion", least=least, width=30, height_share=15).rating


def test_a_groove_never_goes_below_six_millimetres():
    """As built 7 and renewal 5.5 would give 5.0."""
    assert 6.0 == groove_limit(7, 5.5)

"""Pits, edges and grooves: the limits from both sides, and where the rules end."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("rating", "depth"),
    [
        ("good", 0),
        ("good", 1.8),
        ("fair", 1.81),
        ("fair", 3.59),
        ("failed", 3.6),
        ("failed", 4),
        ("failed", 12),
    ],
)
def test_a_pit_must_leave_more_than_seventy_per_cent(judge, rating, depth):
    """In 12 mm a pit of 3.6 mm leaves just 70 %, which is not more than 70 %."""
    near = "within 30 mm of a side frame"
    assert rating == judge("pit-depth", depth=depth, place=near).rating


def test_the_rule_of_side_frames_fails_no_other_plate(judge):
    """Elsewhere the lesser of two figures counts (UR Z10.5, 8.2), so that 70 % alone is poor."""
    judgement = judge("pit-depth", depth=6)
    assert "poor" == judgement.rating
    assert any("renewal thickness less 1 mm" in note for note in judgement.notes)


def test_a_pit_deeper_than_its_plate_is_refused(judge):
    """A hole is no pit."""
    with pytest.raises(CannotJudge, match="a hole is no pit"):
        judge("pit-depth", depth=12.01)


def test_the_surveyor_may_set_his_society_s_depth():
    """With three quarters to be left the limit in 12 mm is 3 mm."""
    rule = criterion("pit-depth")
    judgement = rule.apply(
        {"depth": 3, "as_built": 12, "place": "within 30 mm of a side frame"},
        rule.limit_set.with_limits({"remaining": "75"}, "Hull rules, 2020, 4.2"),
    )
    assert ("failed", 3.0) == (judgement.rating, judgement.limit)


@pytest.mark.parametrize(
    ("rating", "least"), [("fair", 9.9), ("fair", 9.8), ("failed", 9.79), ("failed", 9.7)]
)
def test_a_pitted_plate_keeps_the_lesser_of_two_limits(judge, rating, least):
    """As built 14 and renewal 11: 9.8 and 10.0, and the lesser one counts."""
    assert rating == judge("pitted-plate", least=least).rating


@pytest.mark.parametrize(
    ("limit", "renewal", "voluntary"), [(9.8, 11, None), (9.1, 11, 1), (9.0, 10, None)]
)
def test_the_limit_of_a_pitted_plate(judge, limit, renewal, voluntary):
    """Voluntary addition is taken off before the share; renewal less 1 mm where that is less."""
    judgement = judge("pitted-plate", as_built=14, renewal=renewal, voluntary=voluntary)
    assert limit == judgement.limit


@pytest.mark.parametrize(
    ("name", "changes", "said"),
    [
        ("pitted-plate", {"intensity": 20}, "the pit rule ends"),
        ("pitted-plate", {"renewal": 14}, "lies below that as built"),
    ],
)
def test_beyond_its_reach_a_rule_does_not_judge(judge, name, changes, said):
    """Each rule names the pits, edges and grooves it speaks of."""
    with pytest.raises(CannotJudge, match=said):
        judge(name, **changes)

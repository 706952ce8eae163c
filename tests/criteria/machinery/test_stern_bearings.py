"""Stern bearings: each size of shaft and each limit from both sides, and own limits."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.core.limit_sets import BadLimit


@pytest.mark.parametrize(
    ("expected", "clearance", "diameter"),
    [
        ("good", 4.79, 230),
        ("good", 4.8, 230),
        ("poor", 4.81, 230),
        ("good", 5.6, 230.1),
        ("poor", 5.61, 305),
        ("good", 6.35, 305.1),
        ("poor", 6.36, 600),
    ],
)
def test_a_water_lubricated_bearing_is_held_against_the_size_of_its_shaft(
    judge, expected, clearance, diameter
):
    """4.8, 5.6 and 6.35 mm; an end belongs to the smaller size, and recalled limits never fail."""
    assert (
        expected == judge("stern-bearing-clearance", clearance=clearance, diameter=diameter).rating
    )


@pytest.mark.parametrize(
    ("expected", "diameter"), [(4.8, 100), (4.8, 230), (5.6, 230.001), (5.6, 305), (6.35, 305.001)]
)
def test_the_limit_steps_at_230_and_305_mm(judge, expected, diameter):
    """Three sizes of shaft."""
    assert expected == judge("stern-bearing-clearance", diameter=diameter).limit


def test_a_limit_of_the_surveyors_own_may_fail_a_bearing():
    """What class or maker wrote, cited by him, counts for more than what is only recalled."""
    rule = criterion("stern-bearing-clearance")
    own = rule.limit_set.with_limits({"small": "3,5"}, "maker's manual, table 4")
    assert rule.apply({"clearance": 3.6, "diameter": 225}, own).rating == "failed"
    assert rule.bands_for({"diameter": 225}, own).band_of(3.6).rating == "failed"


@pytest.mark.parametrize(
    ("band", "rating", "wear"),
    [
        ("as expected", "good", 0.3),
        ("watch", "fair", 0.301),
        ("watch", "fair", 0.5),
        ("act", "poor", 0.501),
        ("as expected", "good", 0),
    ],
)
def test_an_oil_lubricated_bearing_is_watched_at_three_tenths_and_acted_on_at_five(
    judge, band, rating, wear
):
    """Growth since new, in three bands."""
    judgement = judge("stern-tube-wear", wear=wear)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("stern-bearing-clearance", {"diameter": 99}),
        ("stern-bearing-clearance", {"clearance": 31}),
        ("stern-tube-wear", {"wear": -0.1}),
        ("stern-tube-wear", {"wear": "little"}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Small shafts, impossible gaps and words are not judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)


def test_a_limit_that_cannot_be_is_refused():
    """A wear of 40 mm is no limit for a bearing."""
    with pytest.raises(BadLimit, match="is accepted"):
        criterion("stern-tube-wear").limit_set.with_limits({"act": 40}, "a manual")

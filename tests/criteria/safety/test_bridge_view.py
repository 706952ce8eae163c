"""The sea hidden by the bow, from both sides of both limits."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.safety.bridge_view import hidden_sea


@pytest.mark.parametrize(
    ("expected", "eye", "bow", "distance"),
    [(30, 15, 10, 15), (100, 20, 10, 100), (2.5, 12, 2, 12.5)],
)
def test_the_line_over_the_rail_meets_the_water(expected, eye, bow, distance):
    """Similar triangles: hidden : bow = distance : (eye - bow)."""
    assert expected == hidden_sea(eye, bow, distance)


@pytest.mark.parametrize(
    ("expected", "limit", "changes"),
    [
        ("good", 160, {"eye": 12, "bow": 10, "distance": 32, "length": 80}),
        ("poor", 160, {"eye": 12, "bow": 10, "distance": 32.01, "length": 80}),
        ("good", 500, {"eye": 12, "bow": 10, "distance": 100, "length": 260}),
        ("poor", 500, {"eye": 12, "bow": 10, "distance": 100.1, "length": 260}),
    ],
)
def test_two_ship_lengths_or_500_metres_whichever_is_less(judge, expected, limit, changes):
    """SOLAS V/22.1.1 (seen), by hand: 32 x 10 / 2 = 160 m = 2 x 80 m; 100 x 10 / 2 = 500 m."""
    judged = judge("hidden-sea", **changes)

    assert (expected, limit) == (judged.rating, judged.limit)
    assert (judged.margin < 0) == (expected == "poor")


@pytest.mark.parametrize("changes", [{"eye": 11}, {"eye": 10}, {"length": 54}, {"distance": 0}])
def test_an_eye_below_the_rail_and_a_short_ship_are_refused(judge, changes):
    """Where no line passes the rail there is no figure, and the rule begins at 55 m."""
    with pytest.raises(CannotJudge):
        judge("hidden-sea", **{"bow": 11, **changes})

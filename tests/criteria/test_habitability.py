"""Vibration that people feel: both ends of each row from both sides, and comfort that condemns nothing."""

import pytest

from inspector.criteria.habitability import NUMERALS, SPACES
from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize("space", SPACES)
def test_comments_are_unlikely_usual_or_likely(judge, space):
    """Velocity and acceleration have their own ends; above the upper one it is poor and not failed."""
    for column, (name, value, step) in enumerate([("habitability-vibration", "velocity", 0.01), ("habitability-acceleration", "acceleration", 0.0001)]):
        low, high = SPACES[space][column]
        found = [judge(name, space=space, **{value: reading}).rating for reading in (low, low + step, high, high + step)]
        assert ["good", "fair", "fair", "poor"] == found


@pytest.mark.parametrize(("expected", "peak"), [("good", 4), ("fair", 4.01), ("fair", 9), ("poor", 9.01)])
def test_the_older_edition_counts_peaks(judge, expected, peak):
    """4 and 9 mm/s, single amplitude."""
    assert expected == judge("habitability-peak", peak=peak).rating


@pytest.mark.parametrize("space", NUMERALS)
def test_each_acceptance_numeral_ends_at_its_figure(judge, space):
    """Above the last figure it is poor; each figure belongs to its numeral."""
    ends = NUMERALS[space]
    assert "poor" == judge("comfort-vibration", velocity=ends[-1] + 0.01, space=space).rating
    bands = [judge("comfort-vibration", velocity=end, space=space).band for end in ends]
    assert (["within the limit"] if len(ends) == 1 else [f"acceptance numeral {n}" for n in (1, 2, 3)]) == bands


@pytest.mark.parametrize(
    ("name", "changes"),
    [("habitability-vibration", {"space": "engine room"}), ("habitability-acceleration", {"acceleration": 107}), ("comfort-vibration", {"velocity": -1}),
     ("habitability-peak", {"peak": 201})],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """107 mm/s² typed as m/s² is caught."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

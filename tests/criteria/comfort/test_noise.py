"""Noise: every limit at the end of its rounding, whom the code binds, and the day of one person."""

import pytest

from inspector.criteria.core.judgement import CannotJudge

# space, limit below 10 000 GT (seen) and from 10 000 GT (memory) [dB(A)]; MSC.337(91), Code on
# Noise Levels, 4.2
CODE = [
    ("machinery space", 110, 110),
    ("machinery control room", 75, 75),
    ("workshop", 85, 85),
    ("other work space", 85, 85),
    ("bridge or chartroom", 65, 65),
    ("look-out or bridge wing", 70, 70),
    ("radio room", 60, 60),
    ("radar room", 65, 65),
    ("cabin or hospital", 60, 55),
    ("mess room", 65, 60),
    ("recreation room", 65, 60),
    ("open recreation area", 75, 75),
    ("office", 65, 60),
    ("galley, machines stopped", 75, 75),
    ("servery or pantry", 75, 75),
    ("normally unoccupied", 90, 90),
]


@pytest.mark.parametrize(("expected", "level"), [("good", 84.7), ("poor", 84.75), ("poor", 85)])
def test_a_day_is_over_just_above_84_7_for_eight_hours(judge, expected, level):
    """Eight hours at 84.7 beside sixteen at 60 stay within 80 dB(A), at 84.75 no longer."""
    assert expected == judge("noise-exposure", level=level).rating


@pytest.mark.parametrize(
    "changes", [{"hours": 7}, {"hours": 9}, {"third_level": 70, "third_hours": 1}]
)
def test_a_day_has_24_hours(judge, changes):
    """Hours that do not make a day are refused with their sum."""
    with pytest.raises(CannotJudge, match="a day has 24 h"):
        judge("noise-exposure", **changes)


@pytest.mark.parametrize("changes", [{"third_level": 70}, {"fourth_hours": 2}])
def test_a_level_without_its_hours_is_refused(judge, changes):
    """Half a part is no part."""
    with pytest.raises(CannotJudge, match="without the other"):
        judge("noise-exposure", **changes)

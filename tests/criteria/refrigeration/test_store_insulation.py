"""Heat through the walls: three bands for a frozen store, two for a chilled one, and too little
difference.
"""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.refrigeration.store_insulation import heat_limit


@pytest.mark.parametrize(
    ("expected", "heat", "store"),
    [
        ("good", 2068, "frozen"),
        ("fair", 2068.1, "frozen"),
        ("fair", 3619, "frozen"),
        ("poor", 3619.1, "frozen"),
        ("good", 3619, "chilled"),
        ("poor", 3619.1, "chilled"),
    ],
)
def test_a_store_is_compared_with_its_class(judge, expected, heat, store):
    """94 m² at 55 K: 2068 W at 0.40, 3619 W at 0.70."""
    assert expected == judge("store-heat-gain", heat=heat, store=store).rating


def test_a_warm_room_in_the_cold_is_judged_the_same(judge):
    """Heat runs the other way in winter with a heater inside."""
    assert judge("store-heat-gain", inside=45, outside=0).limit == heat_limit(94, 0, 45, "heavy")


@pytest.mark.parametrize(("refused", "outside"), [(True, -10.1), (False, -10)])
def test_under_ten_kelvin_nothing_is_told(judge, refused, outside):
    """So small a difference drowns in the error of the reading."""
    if refused:
        with pytest.raises(CannotJudge, match="less than 10 K"):
            judge("store-heat-gain", outside=outside)
    else:
        assert judge("store-heat-gain", outside=outside).rating


@pytest.mark.parametrize("changes", [{"area": 4}, {"heat": -1}, {"store": "dry"}])
def test_what_lies_outside_is_refused(judge, changes):
    """Boxes and dry stores are not judged."""
    with pytest.raises(CannotJudge):
        judge("store-heat-gain", **changes)

"""Thrust as measured: what the worst failure leaves, and one thruster against its power."""

import pytest

from inspector.criteria.dp_holding import FACTORS, nominal_thrust
from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(
    ("band", "rating", "available", "claimed"),
    [("held", "good", 52.2, "2"), ("not held", "failed", 52.1, "2"), ("not held", "failed", 0, "3"), ("not held, and not asked of class 1", None, 52.1, "1"),
     ("held", "good", 52.2, "1")],
)
def test_classes_two_and_three_hold_after_one_failure(judge, band, rating, available, claimed):
    """Enough is what is needed; class 1 may lose position and is not rated for it."""
    judgement = judge("worst-failure-thrust", available=available, class_claimed=claimed)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize("kind", FACTORS)
def test_a_thruster_is_reduced_below_85_and_weak_below_70_per_cent(judge, kind):
    """Shares of its nominal thrust; recalled constants never fail."""
    nominal = nominal_thrust(kind, 1.2, 250)
    found = [judge("thruster-pull", thrust=share * nominal, kind=kind).rating for share in (0.851, 0.849, 0.701, 0.699)]
    assert ["good", "fair", "fair", "poor"] == found


@pytest.mark.parametrize(("name", "changes"), [("thruster-pull", {"diameter": 0.2}), ("worst-failure-thrust", {"class_claimed": "0"})])
def test_what_lies_outside_is_refused(judge, name, changes):
    """Toy thrusters and notations below class 1 are not judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

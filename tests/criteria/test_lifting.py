"""Proof loads: the rule at and beside both its edges."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.lifting import proof_load


@pytest.mark.parametrize(("rating", "proof"), [("poor", 6.24), ("good", 6.25), ("good", 7)])
def test_five_tonnes_are_tested_with_a_quarter_more(judge, rating, proof):
    """6.25 t."""
    assert rating == judge("lifting-proof-load", proof=proof).rating


@given(st.integers(1, 9999), st.integers(1, 9999))
def test_a_greater_rating_never_asks_for_less(one, other):
    """No jump at 20 or 50 t."""
    low, high = sorted((one / 10, other / 10))
    assert proof_load(low) <= proof_load(high)


@pytest.mark.parametrize("changes", [{"swl": 0}, {"proof": -1}, {"swl": 1001}])
def test_what_lies_outside_is_refused(judge, changes):
    """A rating of nothing has no test."""
    with pytest.raises(CannotJudge):
        judge("lifting-proof-load", **changes)

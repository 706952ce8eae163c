"""Rust grades: every bound at it and just above."""

import pytest

from inspector.criteria.core.judgement import CannotJudge

# grade, greatest share of the surface rusted [%]; ASTM D610-08 (2012), table 1 (seen)
BOUNDS = [
    (10, 0.01),
    (9, 0.03),
    (8, 0.1),
    (7, 0.3),
    (6, 1),
    (5, 3),
    (4, 10),
    (3, 16),
    (2, 33),
    (1, 50),
]
# degree, share of its picture [%]; ISO 4628-3:2016 (memory)
PICTURES = [(0, 0), (1, 0.05), (2, 0.5), (3, 1), (4, 8)]


@pytest.mark.parametrize(
    ("rating", "grade"), [("good", "A"), ("good", "B"), ("fair", "C"), ("poor", "D")]
)
def test_bare_steel_is_rated_by_its_pits(judge, rating, grade):
    """Slight pitting is fair, general pitting poor; the note says that the rating is ours."""
    judgement = judge("bare-steel", grade=grade)
    assert rating == judgement.rating
    assert any("our own" in note for note in judgement.notes)


def test_a_grade_that_the_standard_does_not_know_is_refused(judge):
    """There are four."""
    with pytest.raises(CannotJudge, match=r"A, B, C, D"):
        judge("bare-steel", grade="E")

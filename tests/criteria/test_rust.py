"""Rust grades: every bound at it and just above."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.rust import ASTM_GRADES, RI_DEGREES

BOUNDS = [(grade, most) for grade, most in ASTM_GRADES.items()]


@pytest.mark.parametrize(("grade", "most"), BOUNDS)
def test_a_bound_belongs_to_the_better_rust_grade(judge, grade, most):
    """At the bound this grade, a hair above it the next one down."""
    assert f"rust grade {grade}" == judge("rust-grade", rusted=most).band
    assert f"rust grade {grade - 1}" == judge("rust-grade", rusted=most + 0.0001).band


@pytest.mark.parametrize(("degree", "share"), list(RI_DEGREES.items())[:-1])
def test_a_share_belongs_to_its_degree(judge, degree, share):
    """At the share this degree, a hair above it the next one up."""
    assert f"Ri {degree}" == judge("rust-degree", rusted=share).band
    assert f"Ri {degree + 1}" == judge("rust-degree", rusted=share + 0.0001).band


def test_beyond_the_last_picture_no_degree_is_given(judge):
    """Half the surface is the most that the pictures show."""
    assert "Ri 5" == judge("rust-degree", rusted=50).band
    with pytest.raises(CannotJudge, match="above 50 %"):
        judge("rust-degree", rusted=50.1)


@pytest.mark.parametrize("name", ["rust-grade", "rust-degree"])
def test_a_grade_is_no_rating(judge, name):
    """The standard describes a surface; the surveyor rates it."""
    assert judge(name, rusted=40).rating is None


@pytest.mark.parametrize(("rating", "grade"), [("good", "A"), ("good", "B"), ("fair", "C"), ("poor", "D")])
def test_bare_steel_is_rated_by_its_pits(judge, rating, grade):
    """Slight pitting is fair, general pitting poor; the note says that the rating is ours."""
    judgement = judge("bare-steel", grade=grade)
    assert rating == judgement.rating
    assert any("our own" in note for note in judgement.notes)


def test_a_grade_that_the_standard_does_not_know_is_refused(judge):
    """There are four."""
    with pytest.raises(CannotJudge, match=r"A \| B \| C \| D"):
        judge("bare-steel", grade="E")

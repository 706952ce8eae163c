"""Two surveyors who rated the same checks: counts, and where they differ, critical first."""

import pytest

from inspector.assess.agreement import agreement, agreements

RATINGS = {
    "a": {"Ann": "good", "Ben": "good"},
    "b": {"Ann": "good", "Ben": "poor"},
    "c": {"Ann": "fair", "Ben": "good"},
    "d": {"Ann": "good"},
}
CHECKS = {
    "a": ("Set 1: Leaks", False),
    "b": ("Set 1: Plate", False),
    "c": ("Set 2: Load run", True),
    "d": ("Set 2: Plate", False),
}


def test_agreement_is_told_as_counts_and_never_as_a_coefficient():
    """How many both rated, on how many they agree, and how many of the others are critical."""
    found = agreement("Ann", "Ben", RATINGS, CHECKS)

    assert (
        "Ann and Ben both rated 3 checks and agree on 1; they differ on 2, 1 of them critical."
    ) == found.sentence
    assert "kappa" not in " ".join((found.sentence, *found.differing))


def test_where_they_differ_is_listed_critical_first():
    """Each with both answers, so that it can be settled."""
    assert (
        "Set 2: Load run (critical): Ann fair, Ben good.",
        "Set 1: Plate: Ann good, Ben poor.",
    ) == agreement("Ann", "Ben", RATINGS, CHECKS).differing


def test_the_coefficient_is_in_the_data_only():
    """Two of three apart; by chance alone they would agree on four of nine."""
    found = agreement("Ann", "Ben", RATINGS, CHECKS)

    assert (1 / 3 - 4 / 9) / (1 - 4 / 9) == pytest.approx(found.kappa)


def test_people_who_rated_nothing_together_are_not_compared():
    """There is nothing to say of them."""
    assert () == agreements({"a": {"Ann": "good"}, "b": {"Ben": "good"}})

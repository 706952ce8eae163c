"""Fixed fire-fighting: borders from both sides and on them, in exact decimals."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.safety.fixed_fire_fighting import cylinders_asked


@pytest.mark.parametrize(
    ("band", "rating", "measured", "nominal"),
    [
        ("refill", "failed", 40.4, 45),
        ("on the border", "fair", 40.5, 45),
        ("charged", "good", 40.6, 45),
        ("on the border", "fair", 18.9, 21),
        ("refill", "failed", 18.89, 21),
        ("charged", "good", 45, 45),
        ("refill", "failed", 0, 45),
    ],
)
def test_a_charge_must_be_above_nine_tenths(judge, band, rating, measured, nominal):
    """Exactly nine tenths is left open by the text, and is reported as such even for 21 kg, where
    floats err.
    """
    judgement = judge("co2-charge", measured=measured, nominal=nominal)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_nine_tenths_are_exact(judge):
    """21.0 x 0.9 in floats is 18.900000000000002."""
    assert 18.9 == judge("co2-charge", measured=20, nominal=21.0).limit


def test_a_cylinder_weighed_with_its_steel_is_refused(judge):
    """110 kg in a 45 kg cylinder is the gross weight."""
    with pytest.raises(CannotJudge, match="empty weight"):
        judge("co2-charge", measured=110, nominal=45)


@pytest.mark.parametrize(
    ("expected", "failed", "age"),
    [
        (0, 0, 9.99),
        (4, 0, 10),
        (4, 0, 19.9),
        (38, 0, 20),
        (19, 1, 10),
        (19, 1, 5),
        (38, 2, 10),
        (38, 1, 20),
    ],
)
def test_more_cylinders_are_tested_the_older_they_are_and_the_more_fail(expected, failed, age):
    """A tenth, a half, all of 38."""
    assert expected == cylinders_asked(38, failed, age)


@pytest.mark.parametrize(("rating", "tested"), [("failed", 3), ("good", 4)])
def test_a_tenth_is_rounded_up(judge, rating, tested):
    """3.8 cylinders are four."""
    assert rating == judge("co2-cylinder-tests", tested=tested).rating


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("co2-charge", {"nominal": 0}),
        ("co2-cylinder-tests", {"tested": 39}),
        ("co2-cylinder-tests", {"failed": 5}),
    ],
)
def test_what_cannot_be_is_refused(judge, name, changes):
    """More tested than there are, more failed than tested."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

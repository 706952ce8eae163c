"""Coolant and fuel: each limit from both sides."""

import pytest

from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(("expected", "chloride"), [("good", 100), ("poor", 100.1)])
def test_salt_in_the_coolant_is_suspected_above_100_ppm(judge, expected, chloride):
    """Sea water has found a way in."""
    assert expected == judge("coolant-chloride", chloride=chloride).rating


@pytest.mark.parametrize(("expected", "temperature"), [("good", 60), ("poor", 59.9)])
def test_a_fuel_flashes_at_60_degrees_or_above(judge, expected, temperature):
    """Recalled, so a low flash point is poor here and never failed."""
    assert expected == judge("fuel-flash-point", temperature=temperature).rating


@pytest.mark.parametrize(("band", "viscosity"), [("too thin", 1.99), ("in the grade", 2), ("in the grade", 6), ("too thick", 6.01)])
def test_a_distillate_lies_between_2_and_6(judge, band, viscosity):
    """Both ends belong to the grade."""
    assert band == judge("fuel-viscosity", viscosity=viscosity).band


@pytest.mark.parametrize(("name", "changes"), [("coolant-chloride", {"chloride": -1}), ("fuel-flash-point", {"temperature": 201}),
    ("fuel-viscosity", {"viscosity": 0})])
def test_what_lies_outside_is_refused(judge, name, changes):
    """Impossible figures are not judged."""
    with pytest.raises(CannotJudge, match="where the rule ends"):
        judge(name, **changes)

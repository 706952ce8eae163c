"""Batteries: capacity at 80 and 90 %, and the trade's limits of age, ohmic rise, float voltage and density."""

import pytest

from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(
    ("band", "rating", "duration"),
    [("replace", "failed", 6.2), ("replace", "failed", 6.4), ("degraded", "fair", 6.41), ("degraded", "fair", 7.19), ("sound", "good", 7.2)],
)
def test_a_vented_battery_is_replaced_at_80_per_cent(judge, band, rating, duration):
    """6.4 of 8 hours are 80 % and due; below 90 % it is tested each year. The rule was read, so it may fail."""
    judgement = judge("battery-capacity", duration=duration)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(("rating", "duration"), [("poor", 6.4), ("fair", 7.19), ("good", 7.2)])
def test_a_sealed_battery_has_the_same_figures_recalled(judge, rating, duration):
    """The same shares, but held at poor."""
    assert rating == judge("sealed-battery-capacity", duration=duration).rating


@pytest.mark.parametrize(("expected", "age"), [("good", 5), ("fair", 5.1)])
def test_age_puts_a_battery_into_the_budget(judge, expected, age):
    """Above five years, and no worse than fair: age alone proves nothing."""
    assert expected == judge("battery-age", age=age).rating


@pytest.mark.parametrize(("band", "rise"), [("good", 30), ("watch", 30.1), ("watch", 50), ("act", 50.1)])
def test_ohmic_rise_is_watched_then_tested(judge, band, rise):
    """30 and 50 % over the baseline."""
    assert band == judge("battery-ohmic-rise", rise=rise).band


@pytest.mark.parametrize(
    ("band", "voltage", "kind"),
    [("undercharged", 2.22, "valve-regulated"), ("charged", 2.23, "valve-regulated"), ("charged", 2.3, "valve-regulated"),
        ("overcharged", 2.31, "valve-regulated"),
     ("undercharged", 2.16, "vented"), ("charged", 2.17, "vented"), ("charged", 2.26, "vented"), ("overcharged", 2.27, "vented")],
)
def test_a_cell_floats_in_the_band_of_its_kind(judge, band, voltage, kind):
    """Both ends of both kinds."""
    assert band == judge("cell-float-voltage", voltage=voltage, kind=kind).band


@pytest.mark.parametrize(("band", "density"), [("low", 1210), ("watch", 1210.1), ("watch", 1240), ("charged", 1240.1)])
def test_acid_is_held_against_that_of_a_charged_cell(judge, band, density):
    """10 and 40 kg/m³ under 1250."""
    assert band == judge("cell-gravity", density=density).band


@pytest.mark.parametrize(("name", "changes"), [("battery-capacity", {"rated_duration": 0}), ("cell-float-voltage", {"voltage": 24}),
    ("cell-gravity", {"density": 1.25})])
def test_what_lies_outside_is_refused(judge, name, changes):
    """A whole battery's voltage and a density typed as 1.25 are caught."""
    with pytest.raises(CannotJudge, match="where the rule ends"):
        judge(name, **changes)

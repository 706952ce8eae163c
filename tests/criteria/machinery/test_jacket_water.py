"""Jacket water: both ends of both bands, and readings that cannot be."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.core.limit_sets import BadLimit


@pytest.mark.parametrize(
    ("expected", "outlet"), [("fair", 74.9), ("good", 75), ("good", 90), ("poor", 90.1)]
)
def test_jacket_water_leaves_at_75_to_90_degrees(judge, expected, outlet):
    """Cooler may be low load, hotter wants a look."""
    assert expected == judge("jacket-temperature", outlet=outlet).rating


@pytest.mark.parametrize(
    ("expected", "inlet"),
    [("fair", 77.1), ("good", 77), ("good", 72), ("poor", 71.9), ("fair", 82)],
)
def test_jacket_water_takes_up_5_to_10_kelvin(judge, expected, inlet):
    """82 °C out, and 5 to 10 K less in."""
    assert expected == judge("cooling-water-rise", inlet=inlet).rating


def test_the_rise_is_told_in_kelvin(judge):
    """Value, limit and margin are differences, not temperatures."""
    judgement = judge("cooling-water-rise", outlet=82.3, inlet=75.1)
    assert (7.2, "K", 5, 2.2) == (
        judgement.value,
        judgement.unit,
        judgement.limit,
        judgement.margin,
    )


def test_swapped_readings_are_refused(judge):
    """Water does not leave cooler than it came."""
    with pytest.raises(CannotJudge, match="swapped"):
        judge("cooling-water-rise", outlet=70, inlet=75)


@pytest.mark.parametrize(
    ("name", "changes"),
    [("jacket-temperature", {"outlet": 180}), ("cooling-water-rise", {"inlet": -1})],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """A reading in Fahrenheit is caught at the end of the range."""
    with pytest.raises(CannotJudge, match="is accepted"):
        judge(name, **changes)


@pytest.mark.parametrize(
    ("name", "typed"),
    [("jacket-temperature", {"coolest": 95}), ("cooling-water-rise", {"most": 3})],
)
def test_ends_that_would_cross_are_refused(name, typed):
    """The lower end can never be set above the upper one."""
    with pytest.raises(BadLimit, match="is accepted"):
        criterion(name).limit_set.with_limits(typed, "maker's manual")

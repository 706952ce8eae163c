"""Formulas of tank contents: laws that must hold for every tank and fuel, and what is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.criteria.tank_contents import (
    CRUDE_15,
    GENERALIZED_15,
    LUBRICATING_15,
    OutsideRange,
    cylinder_volume,
    density_at_15,
    depth_from_ullage,
    factor_15,
    factor_60,
    table_volume,
    volume_at_15,
    wing_volume,
)

DENSITIES = st.floats(653, 1075)


@given(DENSITIES)
def test_at_fifteen_degrees_nothing_is_corrected(density):
    """The factor is one where the fuel already has its reference temperature."""
    assert 1.0 == factor_15(density, 15)


@given(DENSITIES, st.floats(-18, 90), st.floats(-18, 90))
def test_the_warmer_the_fuel_the_smaller_the_factor(density, one, other):
    """Fuel expands, over every band of densities."""
    cold, warm = sorted((one, other))
    assert factor_15(density, cold) >= factor_15(density, warm)


@given(st.floats(660, 1060), st.floats(0, 60))
def test_an_observed_density_comes_back(density, temperature):
    """Density at 15 °C from one observed at a temperature gives the observed one again."""
    observed = density * factor_15(density, temperature)
    try:
        found = density_at_15(observed, temperature)
    except OutsideRange:
        # between two bands of constants there are densities that no search can settle on
        assert any(abs(density - end) < 3 for end in (770, 787.5, 839))
        return
    assert observed == pytest.approx(found * factor_15(found, temperature), abs=1e-6)


@pytest.mark.parametrize(("products", "low", "high"), [(GENERALIZED_15, 653, 1075), (CRUDE_15, 610.5, 1075), (LUBRICATING_15, 800, 1164)])
def test_a_density_beyond_its_table_is_refused(products, low, high):
    """Each table ends, and at its ends it still speaks."""
    assert factor_15(low, 20, products) < 1 > factor_15(high, 20, products)
    for beyond in (low - 0.1, high + 0.1):
        with pytest.raises(OutsideRange, match="where the table ends"):
            factor_15(beyond, 20, products)


@pytest.mark.parametrize("temperature", [-18.1, 90.1])
def test_a_temperature_beyond_the_table_is_refused(temperature):
    """Nothing is extrapolated."""
    with pytest.raises(OutsideRange, match="lies outside"):
        factor_15(845, temperature)
    with pytest.raises(OutsideRange, match="lies outside"):
        volume_at_15(250, temperature, 845)


@pytest.mark.parametrize("temperature", [-0.1, 194.1])
def test_the_other_family_has_its_own_range(temperature):
    """Fahrenheit for the family of 60 °F."""
    with pytest.raises(OutsideRange, match="°F"):
        factor_60(850, temperature)


@given(st.floats(0.1, 5), st.floats(0.1, 30), st.floats(0, 1))
def test_a_lying_cylinder_is_symmetric(radius, length, share):
    """What is in it at a depth is missing at the same height under the top."""
    full = cylinder_volume(radius, length, 2 * radius)
    there = cylinder_volume(radius, length, 2 * radius * share) + cylinder_volume(radius, length, 2 * radius * (1 - share))
    assert full == pytest.approx(there, rel=1e-9, abs=1e-9)


@given(st.floats(0, 3))
def test_a_wing_tank_with_upright_sides_is_a_box(depth):
    """Equal breadths leave length times breadth times depth."""
    assert 24 * depth == pytest.approx(wing_volume(6, 4, 4, 3, depth))


@pytest.mark.parametrize("sounding", [1.299, 1.501])
def test_a_sounding_outside_the_table_is_refused(sounding):
    """A table is not drawn on beyond its rows."""
    rows = [(1.4, 13.5), (1.3, 12.4), (1.5, 14.8)]
    assert (12.4, 14.8) == (table_volume(1.3, rows), table_volume(1.5, rows))
    with pytest.raises(OutsideRange, match="outside the table"):
        table_volume(sounding, rows)


def test_one_row_is_no_table():
    """A line needs two points."""
    with pytest.raises(OutsideRange):
        table_volume(1.3, [(1.3, 12.4)])


@pytest.mark.parametrize(("function", "values"), [(depth_from_ullage, (3, 3.1)), (wing_volume, (6, 2, 4, 3, 3.1)), (cylinder_volume, (1.5, 6, 3.1))])
def test_a_depth_over_the_tank_s_height_is_refused(function, values):
    """No tank holds more than its height."""
    with pytest.raises(OutsideRange, match="must lie between 0"):
        function(*values)


@pytest.mark.parametrize(("density", "k0", "k1", "k2"), [(839, 186.9696, 0.4862, 0), (787.5, 594.5418, 0, 0), (770, 2680.3206, 0, -0.00336312)])
def test_a_bound_of_two_bands_belongs_to_the_heavier_fuel(density, k0, k1, k2):
    """At 839 kg/m³ the constants of fuel oils hold already, just below it those of kerosene."""
    step = (k0 / density**2 + k1 / density + k2) * 10
    assert math.exp(-step * (1 + 0.8 * step)) == pytest.approx(factor_15(density, 25), abs=1e-12)
    assert factor_15(density, 25) != pytest.approx(factor_15(density - 1e-9, 25), abs=1e-7)

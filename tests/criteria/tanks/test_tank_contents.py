"""Formulas of tank contents: laws that must hold for every tank and fuel, and what is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.criteria.tanks.tank_contents import OutsideRange, factor_15, table_volume

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


@pytest.mark.parametrize(("end", "beyond"), [(653, 652.9), (1075, 1075.1)])
def test_a_density_beyond_the_table_is_refused(end, beyond):
    """The table ends, and at its ends it still speaks."""
    assert factor_15(end, 20) < 1
    with pytest.raises(OutsideRange, match="where the table ends"):
        factor_15(beyond, 20)


@pytest.mark.parametrize("temperature", [-18.1, 90.1])
def test_a_temperature_beyond_the_table_is_refused(temperature):
    """Nothing is extrapolated."""
    with pytest.raises(OutsideRange, match="lies outside"):
        factor_15(845, temperature)


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


@pytest.mark.parametrize(
    ("density", "k0", "k1", "k2"),
    [(839, 186.9696, 0.4862, 0), (787.5, 594.5418, 0, 0), (770, 2680.3206, 0, -0.00336312)],
)
def test_a_bound_of_two_bands_belongs_to_the_heavier_fuel(density, k0, k1, k2):
    """At 839 kg/m³ the constants of fuel oils hold already, just below it those of kerosene."""
    step = (k0 / density**2 + k1 / density + k2) * 10
    assert math.exp(-step * (1 + 0.8 * step)) == pytest.approx(factor_15(density, 25), abs=1e-12)
    assert factor_15(density, 25) != pytest.approx(factor_15(density - 1e-9, 25), abs=1e-7)

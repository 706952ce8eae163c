"""Fuel in tanks: spans hold the point, every assumption is listed, what cannot be is refused."""

import pytest
from hypothesis import given, settings

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.range.fuel.fuel_on_board import (
    DENSITY,
    FILL,
    STRUCTURE,
    SUCTION,
    TEMPERATURE,
    FuelTank,
    density_at,
    mass_of,
    tank_gaps,
    usable_fuel,
)
from tests.conversion.conftest import nested


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"density": -850}, "port tank: density"),
        ({"density": 0.85}, "port tank: density"),
        ({"density": Span(800, 850, 1200)}, "port tank: density"),
        ({"volume": -1}, "port tank: volume"),
        ({"temperature": 300}, "port tank: temperature"),
        ({"fill": 98}, "port tank: fill"),
        ({"suction": -0.1}, "port tank: suction"),
        ({"basis": "guess"}, "port tank: what the volume is"),
    ],
)
def test_a_tank_that_cannot_be_is_refused(change, field):
    """A density of 0.85 is in t/m³ and a fill of 98 in percent: both are the wrong unit."""
    with pytest.raises(BadInput) as refused:
        FuelTank(**{"name": "port tank", "volume": 100, "basis": "contents", **change})

    assert field == refused.value.field


def test_no_tank_is_no_fuel():
    """An empty list is a question for the surveyor and not nothing."""
    with pytest.raises(BadInput, match="^Fuel tanks: there is none"):
        usable_fuel([])


@pytest.mark.parametrize(
    ("basis", "defaults"),
    [
        ("contents", (DENSITY, TEMPERATURE)),
        ("calibrated capacity", (DENSITY, TEMPERATURE, FILL)),
        ("moulded capacity", (DENSITY, TEMPERATURE, FILL, STRUCTURE)),
    ],
)
def test_the_defaults_of_a_tank_are_listed(basis, defaults):
    """A sounding needs no fill, and only a moulded volume loses its structure."""
    assert defaults == mass_of(FuelTank("tank", 100, basis)).defaults


def test_a_known_tank_rests_on_nothing():
    """All given: an exact mass and no default."""
    tank = FuelTank("tank", 100, "contents", density=850, temperature=15, suction=0.96)

    assert Span.exact(85.0) == mass_of(tank).span
    assert () == usable_fuel([tank]).defaults
    assert () == tank_gaps([tank])


def test_what_would_narrow_the_fuel_is_told(tanks):
    """Tank 1 has neither density nor temperature of its own."""
    assert ["tank 1: density", "tank 1: temperature"] == [gap.name for gap in tank_gaps(tanks)]


def test_tanks_add_up(tanks):
    """The fuel of all is the sum of each above its suction, with all defaults once."""
    both, one, other = usable_fuel(tanks), usable_fuel(tanks[:1]), usable_fuel(tanks[1:])

    assert one.span + other.span == both.span
    assert 1 == both.defaults.count(SUCTION)


@settings(max_examples=200)
@given(nested(820, 860), nested(-10, 60))
def test_knowing_the_fuel_better_never_widens_its_density(density, temperature):
    """Also across the step at 839 kg/m³ between two bands of the table."""
    wide, narrow = (density_at(density[i], temperature[i]) for i in (0, 1))

    assert wide.low <= narrow.low * (1 + 1e-9)
    assert narrow.high <= wide.high * (1 + 1e-9)
    assert narrow.low <= narrow.point <= narrow.high


@given(nested(0, 500), nested(840, 860), nested(0, 40), nested(0.9, 1))
def test_knowing_a_tank_better_never_widens_its_fuel(volume, density, temperature, suction):
    """A narrower volume, density, temperature or suction gives a mass inside the wider one."""
    wide, narrow = (
        usable_fuel(
            [
                FuelTank(
                    "tank", volume[i], "contents", density[i], temperature[i], suction=suction[i]
                )
            ]
        ).span
        for i in (0, 1)
    )

    assert wide.low <= narrow.low * (1 + 1e-9)
    assert narrow.high <= wide.high * (1 + 1e-9)


def test_a_measured_density_lies_inside_the_default():
    """Every density of marine gas oil that the default names gives a mass inside the default's."""
    usual = mass_of(FuelTank("tank", 100, "contents")).span

    assert all(
        usual.contains(mass_of(FuelTank("tank", 100, "contents", density=rho, temperature=20)).span)
        for rho in (845, 850, 855)
    )


def test_warm_fuel_is_less_fuel():
    """The same volume holds less mass when it is warm."""
    cold, warm = (
        mass_of(FuelTank("tank", 100, "contents", density=850, temperature=t)).span.point
        for t in (10, 40)
    )

    assert warm < cold

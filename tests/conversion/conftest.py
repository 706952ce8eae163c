"""A made-up workboat and the generators of intervals that the tests of the conversion share."""

import pytest
from hypothesis import strategies as st

from inspector.conversion.core.span import Span
from inspector.conversion.hull.hull_form import Particulars
from inspector.conversion.range.engines import Engine
from inspector.conversion.range.fuel.fuel_on_board import FuelTank, usable_fuel
from inspector.conversion.range.hotel_load import Hotel
from inspector.conversion.range.own_speed_power import PointsCurve
from inspector.conversion.range.sea_power import Ship
from inspector.conversion.range.speed_points import SpeedPoint


def spans(low, high):
    """Spans with a point, anywhere between two ends."""
    return st.lists(st.floats(low, high), min_size=3, max_size=3).map(
        lambda ends: Span(*sorted(ends))
    )


def nested(low, high):
    """A span and a narrower one inside it."""

    def build(ends):
        a, b, c, d, e = sorted(ends)
        return Span(a, c, e), Span(b, c, d)

    return st.lists(st.floats(low, high), min_size=5, max_size=5).map(build)


@pytest.fixture
def points():
    """Four points of a log at 3500 t."""
    return tuple(
        SpeedPoint(speed, power, 3500, "log", True)
        for speed, power in ((8, 760), (10, 1480), (12, 2590), (13.5, 3720))
    )


@pytest.fixture
def particulars():
    """What a surveyor has: dimensions, draughts and displacement."""
    return Particulars(
        breadth=16, draught_fore=5, draught_aft=5, displacement=3500, length_waterline=64
    )


@pytest.fixture
def tanks():
    """Two tanks, of which one has its own density and temperature."""
    return (
        FuelTank("tank 1", 200, "moulded capacity"),
        FuelTank("tank 2", 220, "calibrated capacity", density=845, temperature=25),
    )


@pytest.fixture
def ship(points, tanks):
    """The workboat with her own points."""
    return Ship(
        PointsCurve(points, 3500),
        Engine("main engines", 2200, 2, 1000, 2008),
        Hotel(300),
        usable_fuel(tanks),
    )

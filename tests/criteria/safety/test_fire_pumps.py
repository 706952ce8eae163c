"""Fire pumps: the shares, the cap and the floors of the rule, each from both sides."""

import pytest

from inspector.criteria.machinery.bilge_pumping import pump_capacity
from inspector.criteria.safety.fire_pumps import fire_water

HULL = {"length": 64, "breadth": 16, "depth": 7}


@pytest.mark.parametrize(("rating", "capacity"), [("failed", 24.9), ("good", 25)])
def test_no_main_fire_pump_is_smaller_than_25_cubic_metres(judge, rating, capacity):
    """80 % of 60.4 m³/h for two pumps are 24.2, so that the floor of 25 m³/h counts."""
    judgement = judge("fire-pump-capacity", capacity=capacity, ship="cargo", pumps=2, **HULL)
    assert (rating, 25) == (judgement.rating, judgement.limit)


def test_a_cargo_ship_needs_no_more_than_180_cubic_metres():
    """SOLAS II-2/10.2.2.4.1.2 (seen in IACS SC 270)."""
    assert 180 == fire_water("cargo", 150, 40, 20)


@pytest.mark.parametrize("ship", ["passenger", "special purpose, over 60 persons"])
def test_a_passenger_ship_takes_two_thirds_of_its_three_bilge_pumps(judge, ship):
    """Two thirds of three pumps are two of them; 80 % of it for each of two pumps is 0.8 of one."""
    one = pump_capacity(64, 16, 7)
    assert pytest.approx(2 * one) == fire_water(ship, 64, 16, 7)
    assert pytest.approx(0.8 * one) == judge("fire-pump-capacity", ship=ship, pumps=2, **HULL).limit


@pytest.mark.parametrize(
    ("limit", "ship", "tonnage"),
    [
        (25, "cargo", 2000),
        (24.155, "cargo", 1999),
        (24.155, "special purpose, up to 60 persons", 1999),
        (36.23, "passenger", 900),
    ],
)
def test_the_emergency_pump_has_its_share_and_its_floor(judge, limit, ship, tonnage):
    """40 % of 60.4 or 90.6 m³/h; 25 m³/h from 2000 GT (FSS Code 12, seen in IACS SC 270)."""
    judgement = judge("emergency-fire-pump", ship=ship, tonnage=tonnage, **HULL)
    assert limit == pytest.approx(judgement.limit, abs=0.01)


def test_a_small_cargo_ship_has_a_floor_of_15_cubic_metres(judge):
    """A hull of 20 m asks for less than that by its share."""
    small = {"length": 20, "breadth": 6, "depth": 3}
    rated = [
        judge("emergency-fire-pump", capacity=capacity, ship="cargo", tonnage=150, **small).rating
        for capacity in (14.9, 15)
    ]
    assert ["failed", "good"] == rated


def test_what_is_recalled_of_special_purpose_ships_fails_nothing(judge):
    """The steps at 60 persons are from memory, so that a small pump is held at poor."""
    for ship in ("special purpose, up to 60 persons", "special purpose, over 60 persons"):
        judgement = judge("fire-pump-capacity", capacity=10, ship=ship)
        assert ("poor", "memory") == (judgement.rating, judgement.source.mark)

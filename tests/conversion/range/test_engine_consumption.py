"""What engines burn: own points first, published rates listed as defaults."""

import pytest
from hypothesis import given

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.figure import Figure
from inspector.conversion.core.span import Span
from inspector.conversion.range.engine_consumption import (
    DECLARED,
    SHAPE,
    USED,
    base_rate,
    burn_per_day,
    load_factor,
    rate,
)
from inspector.conversion.range.engines import ConsumptionPoint, Engine
from inspector.conversion.range.hotel_load import AT_SEA, GENERATOR, Hotel, hotel_power
from tests.conversion.conftest import nested

MEASURED = (
    ConsumptionPoint(0.5, 205, True),
    ConsumptionPoint(0.75, 200, True),
    ConsumptionPoint(1.0, 204, True),
)
ENGINE = Engine("main engine", 2000, 2, 1000, 2008, MEASURED)
PLAIN = Engine("main engine", 2000, 2, 1000, 2008)


@pytest.mark.parametrize("power", [None, 0, -2000, float("nan"), "2000"])
def test_an_engine_without_power_is_refused(power):
    """No load can be told of it."""
    with pytest.raises(BadInput, match="^Main engine: power is") as refused:
        Engine("main engine", power)

    assert "main engine: power" == refused.value.field


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"count": 0}, "number of engines"),
        ({"rpm": 60_000}, "speed"),
        ({"built": 20}, "year built"),
        ({"kind": "steam"}, "kind"),
        ({"points": (MEASURED[0], MEASURED[0])}, "points"),
    ],
)
def test_an_engine_that_cannot_be_is_refused(change, field):
    """The error names the engine and the field."""
    with pytest.raises(BadInput) as refused:
        Engine(**{"name": "main engine", "power": 2000, **change})

    assert f"main engine: {field}" == refused.value.field


@pytest.mark.parametrize("grams", [150, 400])
def test_a_consumption_that_no_diesel_has_is_refused(grams):
    """An efficiency above 0.50 or below 0.25 is a slip of unit or pen."""
    with pytest.raises(BadInput, match="a diesel has 0.25 to 0.5"):
        ConsumptionPoint(0.8, grams)


@pytest.mark.parametrize("load", [0, 85, -0.5, Span(0.5, 1.0, 1.5)])
def test_a_load_that_cannot_be_is_refused(load):
    """85 is a percentage, and loads are shares."""
    with pytest.raises(BadInput, match="^Main engine: load is"):
        rate(PLAIN, load)


def test_own_points_are_joined_by_straight_lines():
    """Between two measured points nothing is assumed."""
    found = rate(ENGINE, 0.625)

    assert Span.exact(202.5) == found.span
    assert () == found.defaults


def test_beyond_own_points_the_published_shape_is_told():
    """30 % load from the point at 50 %."""
    found = rate(ENGINE, 0.3)

    assert 205 * load_factor(0.3) / load_factor(0.5) == pytest.approx(found.span.point)
    assert (SHAPE,) == found.defaults


def test_a_declared_consumption_carries_its_tolerance():
    """The maker's figure may be 5 % low."""
    found = rate(
        Engine(
            "main engine", 2000, points=(ConsumptionPoint(0.5, 205), ConsumptionPoint(1.0, 200))
        ),
        0.5,
    )

    assert Span(205, 205, 205 * 1.05) == found.span
    assert (DECLARED,) == found.defaults


def test_a_published_rate_is_a_default_and_so_is_the_age():
    """Base 185 g/kWh with 0 to 15 % for a used engine."""
    found = rate(PLAIN, 0.78)

    assert (
        185 * load_factor(0.78),
        185 * load_factor(0.78) * 1.05,
        185 * load_factor(0.78) * 1.15,
    ) == pytest.approx((found.span.low, found.span.point, found.span.high))
    assert ["base consumption", USED.name] == [default.name for default in found.defaults]


@pytest.mark.parametrize(("rpm", "built"), [(1000, None), (None, 2008), (None, None), (750, None)])
def test_knowing_speed_and_year_never_widens_the_base_rate(rpm, built):
    """Every class that the engine may belong to lies inside the span."""
    wide = base_rate("main", rpm, built).value

    assert all(
        wide.contains(base_rate("main", rpm or r, built or b).value)
        for r in (750, 1000)
        for b in (1980, 1990, 2008)
    )


@pytest.mark.parametrize("engine", [ENGINE, PLAIN])
@given(loads=nested(0.05, 1.1))
def test_knowing_the_load_better_never_widens_the_rate(engine, loads):
    """Also where the least consumption lies inside the span."""
    assert rate(engine, loads[0]).span.contains(rate(engine, loads[1]).span)


def test_low_load_is_told():
    """Below 30 % the sentence goes with the figure."""
    assert any("below 30 % load" in sentence for sentence in rate(ENGINE, 0.2).assumptions)
    assert () == rate(ENGINE, 0.8).assumptions


def test_the_hotel_load_is_a_default_where_nobody_read_it():
    """130 to 320 kW of engine power, without a generator on top."""
    found = hotel_power(Hotel())

    assert (Span(130, 220, 320), (AT_SEA,)) == (found.span, found.defaults)


def test_a_switchboard_reading_has_the_generators_losses_added():
    """Electrical power asks more of the engines, and the efficiency is listed."""
    found = hotel_power(Hotel(sea=188))

    assert 200 == pytest.approx(found.span.point)
    assert (GENERATOR,) == found.defaults
    assert Span.exact(188) == hotel_power(Hotel(sea=188, measured_at="engine")).span


def test_a_load_at_anchor_that_is_not_known_is_a_gap():
    """The load at sea stands for it, and says so."""
    found = hotel_power(Hotel(sea=188, measured_at="engine"), "anchor")

    assert Span.exact(188) == found.span
    assert ["hotel load at anchor"] == [gap.name for gap in found.gaps]
    assert () == hotel_power(Hotel(sea=188, anchor=150, measured_at="engine"), "anchor").gaps


@pytest.mark.parametrize(
    ("given_", "field"),
    [
        ({"sea": -1}, "hotel load: sea"),
        ({"anchor": 1e6}, "hotel load: anchor"),
        ({"measured_at": "meter"}, "hotel load: measured at"),
    ],
)
def test_a_hotel_load_that_cannot_be_is_refused(given_, field):
    """The error names the field."""
    with pytest.raises(BadInput) as refused:
        Hotel(**given_)

    assert field == refused.value.field


def test_burn_adds_engines():
    """1000 kW at 200 g/kWh and 100 kW at 220 g/kWh for 24 h."""
    parts = [
        (Figure("p", Span.exact(p), "kW", ""), Figure("r", Span.exact(r), "g/kWh", ""))
        for p, r in ((1000, 200), (100, 220))
    ]

    assert 5.328 == pytest.approx(burn_per_day(parts).span.point)

"""Water, holding tanks, food and waste: days for so many persons, and which binds."""

from dataclasses import replace

import pytest
from hypothesis import given

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.figure import Figure, Gap, no_figure
from inspector.conversion.core.span import Span
from inspector.conversion.range.consumables import (
    PRODUCE,
    YEAR,
    binding,
    food_days,
    limits,
    waste_days,
    water_days,
)
from inspector.conversion.range.stores import FOOD, KEPT, SEWAGE, WATER, Stores
from tests.conversion.conftest import nested

FULL = Stores(
    water=150,
    watermaker=10,
    sewage=20,
    grey=40,
    dry=60,
    chilled=20,
    frozen=25,
    waste=15,
    toilets="vacuum",
    discharge="nothing",
    compactor=True,
)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"water": -1}, "stores: water"),
        ({"watermaker": 1e6}, "stores: watermaker"),
        ({"frozen": float("nan")}, "stores: frozen"),
        ({"waste": "some"}, "stores: waste"),
        ({"toilets": "chemical"}, "stores: toilets"),
        ({"discharge": "anything"}, "stores: discharge"),
        ({"water_per_head": 0}, "stores: water per head"),
    ],
)
def test_stores_that_cannot_be_are_refused(change, field):
    """The error names the field."""
    with pytest.raises(BadInput) as refused:
        Stores(**change)

    assert field == refused.value.field


@pytest.mark.parametrize("persons", [0, -3, 5000, Span(10, 20, 30)])
def test_persons_that_cannot_be_are_refused(persons):
    """Nobody on board uses nothing for ever."""
    with pytest.raises(BadInput, match="^Persons"):
        limits(FULL, persons)


def test_nothing_known_is_seven_gaps_and_no_limit():
    """What is not known is never taken as nothing or as plenty."""
    found = limits(Stores(), 30)

    assert found.binding is None
    assert {
        "days of fresh water",
        "days of frozen stores",
        "days of chilled stores",
        "days of dry stores",
        "days of sewage",
        "days of grey water",
        "days of waste",
    } == {gap.name for gap in found.gaps}


def test_the_binding_limit_is_named():
    """Nine days of grey water bind before all else."""
    found = limits(FULL, 30)

    assert "grey water" == found.binding.name
    assert 40 / (0.188 * 30) == pytest.approx(found.binding.span.point)


def test_what_may_bind_instead_is_named():
    """Whatever may run out before the binding limit surely has."""
    found = binding(
        [
            Figure(name, Span(*ends), "days", "")
            for name, ends in (("a", (9, 10, 12)), ("b", (11, 20, 30)), ("c", (13, 20, 30)))
        ]
    )

    assert ("a", ["b"]) == (found.binding.name, [figure.name for figure in found.may_bind])


def test_fuel_may_bind_too():
    """A limit from elsewhere takes part; an unknown one is a gap."""
    fuel = Figure("days under way", Span(3, 4, 5), "days", "")

    assert "days under way" == limits(FULL, 30, (fuel,)).binding.name
    assert "days of fuel" in [
        gap.name for gap in limits(FULL, 30, (no_figure("fuel", "days", (Gap("x", "y"),)),)).gaps
    ]


def test_a_limit_without_a_point_binds_by_its_low_end():
    """Where the watermaker is not known, the tank alone is the cautious answer."""
    found = limits(replace(Stores(), water=30), 30)

    assert 30 / (30 * 0.3) == pytest.approx(found.binding.span.low)
    assert (None, YEAR) == (found.binding.span.point, found.binding.span.high)


def test_discharge_that_nobody_spoke_of_is_a_default():
    """Tanks then carry everything, which is listed; where discharge is allowed they do not bind."""
    silent, allowed = (
        limits(replace(FULL, discharge=None), 30),
        limits(replace(FULL, discharge="as permitted"), 30),
    )

    assert KEPT in silent.binding.defaults
    assert KEPT not in limits(FULL, 30).binding.defaults
    assert not {"sewage", "grey water"} & {figure.name for figure in allowed.figures}


@pytest.mark.parametrize("toilets", ["vacuum", "gravity"])
@pytest.mark.parametrize("table", [WATER, SEWAGE])
def test_knowing_the_toilets_never_widens(table, toilets):
    """Either kind lies inside the band of not knowing."""
    assert table[None].value.contains(table[toilets].value)


@pytest.mark.parametrize("compactor", [True, False])
def test_knowing_the_compactor_never_widens(compactor):
    """Either answer lies inside that of not knowing."""
    assert waste_days(replace(FULL, compactor=None), 30).span.contains(
        waste_days(replace(FULL, compactor=compactor), 30).span
    )


@given(nested(0, 40))
def test_knowing_the_watermaker_never_widens_the_days(made):
    """Also where it makes more than is used."""
    unknown, wide, narrow = (
        water_days(replace(FULL, watermaker=value), 30).span for value in (None, *made)
    )

    assert unknown.contains(wide)
    assert wide.contains(narrow)


@pytest.mark.parametrize("kind", list(FOOD))
def test_twice_the_persons_eat_twice_as_fast(kind):
    """Half the days."""
    few, many = (
        food_days(replace(FULL, dry=5, chilled=5, frozen=5), persons, kind).span.point
        for persons in (15, 30)
    )

    assert 2 == pytest.approx(few / many)


def test_produce_keeps_as_long_as_it_keeps():
    """The chilled store says that produce lasts two to four weeks."""
    assert PRODUCE in food_days(FULL, 30, "chilled").assumptions


def test_a_food_that_is_none_is_refused():
    """The right words are told."""
    with pytest.raises(BadInput, match="one of: frozen, chilled, dry"):
        food_days(FULL, 30, "tinned")

"""Balance of each island against an enumeration: every set that may be out, every island left.

Plain arithmetic of a one-line diagram. That any one set may be stopped: SOLAS II-1/41.1 (from
memory). Groups of joined buses: connected components by networkx.
"""

from dataclasses import replace

import networkx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.conversion.power.electrical_loads import CONDITIONS, Consumer
from inspector.conversion.power.island_balance import balances_by_island
from inspector.conversion.power.plant import Plant
from inspector.conversion.power.plant_elements import GeneratorSet, Tie

BUSES = ("A", "B", "C")


@st.composite
def plants(draw):
    """Up to three buses, ties with a state for each way of running, whole kilowatts."""
    sets = tuple(
        GeneratorSet(f"G{n}", draw(st.sampled_from(BUSES)), draw(st.integers(50, 900)), 0.8)
        for n in range(draw(st.integers(1, 5)))
    )
    ties = tuple(
        Tie(
            f"tie {n}",
            *pair,
            draw(st.booleans()),
            True,
            tuple((condition, draw(st.booleans())) for condition in CONDITIONS[:3]),
        )
        for n, pair in enumerate((("A", "B"), ("B", "C")))
    )
    loads = tuple(
        Consumer(
            f"load {n}",
            draw(st.sampled_from(BUSES)),
            tuple((condition, draw(st.integers(0, 600))) for condition in CONDITIONS),
        )
        for n in range(draw(st.integers(1, 6)))
    )
    return Plant(sets, ties), loads


def enumerated(plant, loads, condition):
    """The least that any island has left, over every single set that may be out [kW]."""
    closed = [tie.buses for tie in plant.ties if tie.is_closed(condition)]
    graph = networkx.Graph(closed)
    graph.add_nodes_from(plant.buses)
    left = []
    for out in plant.sets:
        for island in networkx.connected_components(graph):
            working = [each for each in plant.sets if each != out and each.bus in island]
            needs = [dict(load.demand)[condition] for load in loads if load.bus in island]
            if needs or any(each.bus in island for each in plant.sets):
                left.append(sum(each.rated for each in working) - sum(needs))
    return min(left)


@settings(max_examples=200, deadline=None)
@given(plants(), st.sampled_from(CONDITIONS))
def test_the_worst_island_is_that_of_the_enumeration(made, condition):
    """Whichever set is out, no island is worse off than the balances say, and one is as bad."""
    plant, loads = made
    found = balances_by_island(plant, loads, {}, 0.8)
    margins = [each.margin.span.point for each in found if each.condition == condition]

    assert enumerated(plant, loads, condition) == pytest.approx(min(margins))


@settings(max_examples=100, deadline=None)
@given(plants(), st.sampled_from(CONDITIONS))
def test_islands_together_keep_no_more_than_the_plant_with_its_ties_closed(made, condition):
    """Each island loses its own largest set, the joined board only the largest of all."""
    plant, loads = made
    apart, joined = (
        replace(plant, ties=tuple(replace(tie, closed=state, other_modes=()) for tie in plant.ties))
        for state in (False, True)
    )
    together = [
        sum(
            each.margin.span.point
            for each in balances_by_island(version, loads, {}, 0.8)
            if each.condition == condition
        )
        for version in (apart, joined)
    ]

    assert together[0] <= together[1] + 1e-9


def test_an_island_that_lacks_power_is_not_helped_over_an_open_tie():
    """Bus A has 2 × 900 and 200 kW of load, bus B 2 × 300 and 520.

    With one set out bus A keeps 900 - 200 = 700 kW, and bus B lacks 520 - 300 = 220. Over a closed
    tie the same plant keeps 900 + 300 + 300 - 720 = 780.
    """
    rated = (("G1", "A", 900), ("G2", "A", 900), ("G3", "B", 300), ("G4", "B", 300))
    sets = tuple(GeneratorSet(*each, 0.8) for each in rated)
    loads = [Consumer("a", "A", (("sea", 200),)), Consumer("b", "B", (("sea", 520),))]
    plant = Plant(sets, (Tie("tie", "A", "B", other_modes=(("sea", False),)),))
    closed = replace(plant, ties=(replace(plant.ties[0], other_modes=(("sea", True),)),))
    apart, joined = (
        {
            each.place: each.margin.span.point
            for each in balances_by_island(each, loads, {}, 0.8)
            if each.condition == "sea"
        }
        for each in (plant, closed)
    )

    assert {"bus A": 700, "bus B": -220} == apart
    assert {"": 780} == joined


def test_a_bus_that_no_set_feeds_is_short_of_all_that_is_on_it():
    """40 kW on a bus behind an open tie."""
    plant = Plant((GeneratorSet("G1", "A", 900, 0.8),), (Tie("tie", "A", "B"),))
    loads = [Consumer("pump", "B", (("sea", 40),))]
    (found,) = (
        each for each in balances_by_island(plant, loads, {}, 0.8) if each.name == "sea, bus B"
    )

    assert ("", 0, -40) == (found.stopped, found.remaining, found.margin.span.point)


def test_a_load_without_a_bus_may_be_on_any_of_them():
    """90 kW that nobody placed, two buses apart: nothing, half or all of it on each (± 10 %)."""
    sets = (GeneratorSet("G1", "A", 900, 0.8), GeneratorSet("G2", "B", 900, 0.8))
    loads = [Consumer("pump", "", (("sea", 90),)), Consumer("fan", "A", (("sea", 100),))]
    found = {
        each.place: each.demand.span
        for each in balances_by_island(Plant(sets), loads, {}, 0.8)
        if each.condition == "sea"
    }

    for place, expected in (("bus A", (90, 145, 209)), ("bus B", (0, 45, 99))):
        span = found[place]
        assert expected == pytest.approx((span.low, span.point, span.high))

"""Failures while keeping station: two plants worked by hand, and networkx for what is lost."""

import math
from itertools import product

import networkx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.power.cascade_failure import after_failure, cascade, single_failures
from inspector.conversion.power.holding.failure_case import LoadLimits, Scenario
from inspector.conversion.power.holding.holding_power import outcome, outcomes, power_limited
from inspector.conversion.power.holding.steady_forces import Force, current_force, wind_force
from inspector.conversion.power.holding.thruster_thrust import shaft_power
from inspector.conversion.power.plant import Plant
from inspector.conversion.power.plant_elements import (
    Dependency,
    GeneratorSet,
    MainEngine,
    Thruster,
    Tie,
)

KNOT = 1852 / 3600  # m/s

# One plant with four sets and two buses, worked by hand: 68 m, draught 5.2 m, 620 m² of side
# centred 8 m forward, current 1.0 kn, coefficients 1.0.
DE_FORCE = Force(wind_force(1.0, 620, 1), current_force(1.0, 68 * 5.2, KNOT), x_wind=8)


def diesel_electric(**changed):
    """Each bus: a tunnel of 700 kW, an azimuth of 1200, two sets of 1000, 300 of hotel."""
    plant = {
        "sets": tuple(
            GeneratorSet(name, bus, 1000, 0.8)
            for name, bus in (("G1", "A"), ("G2", "A"), ("G3", "B"), ("G4", "B"))
        ),
        "ties": (Tie("tie", "A", "B"),),
        "thrusters": (
            Thruster("T1", "tunnel", "A", 700, 28, "across"),
            Thruster("T2", "tunnel", "B", 700, 28, "across"),
            Thruster("T3", "azimuth in nozzle", "A", 1200, -30, "both"),
            Thruster("T4", "azimuth in nozzle", "B", 1200, -30, "both"),
        ),
        "hotel": {"A": 300, "B": 300},
    }
    return Plant(**{**plant, **changed})


def exact(across, force, along=None):
    """Three equal levels: nothing uncertain."""
    return (Scenario(across, along or across, force),) * 3


DE = exact({"T1": 77.0, "T2": 77.0, "T3": 192.0, "T4": 192.0}, DE_FORCE)
PLAIN = LoadLimits(efficiency=1.0, share=0.9)


def test_forces_on_the_beam_and_ahead():
    """15 m/s: wind 85.44, current 47.96, all 166.76 kN; its moment 854.4 kN·m; ahead 34.48."""
    ahead = Force(wind_force(0.9, 210, 1), 1.53)

    assert (85.44, 47.96, 166.76, 854.4) == pytest.approx(
        (DE_FORCE.wind * 225, DE_FORCE.current, DE_FORCE.total(15), 1.25 * 8 * DE_FORCE.wind * 225),
        abs=0.05,
    )
    assert 34.48 == pytest.approx(ahead.total(15), abs=0.01)


def test_the_four_set_plant_with_nothing_failed():
    """756.8 kW of 2000 on each bus, 37.8 %; 19.89 m/s at most (worked by hand)."""
    found = outcome(diesel_electric(), DE, (), 15, PLAIN)

    assert [756.8, 756.8] == pytest.approx([supply.load for supply in found.supplies], abs=0.2)
    assert (True, 19.89) == (found.keeps_station, pytest.approx(found.wind.point, abs=0.005))


def test_the_four_set_plant_without_a_bus():
    """T2 and T4 are left: 77 kN at the bow against 100.98 at 15 m/s, enough to 12.16 m/s."""
    at_15, at_12 = (outcome(diesel_electric(), DE, ("A",), speed, PLAIN) for speed in (15, 12))

    assert (False, "bow thrust") == (at_15.keeps_station, at_15.shortfall)
    assert (77.0, 192.0, 12.16) == pytest.approx(
        (at_15.bow, at_15.stern, at_15.wind.point), abs=0.01
    )
    assert (True, 0.578) == (
        at_12.keeps_station,
        pytest.approx(at_12.supplies[0].load / at_12.supplies[0].capacity, abs=5e-4),
    )


def test_the_four_set_plant_without_one_set():
    """G1 alone out: 0.9 × 1000 − 300 = 600 kW for thrusters that take 456.8."""
    found = outcome(diesel_electric(), DE, ("G1",), 15, PLAIN)

    assert (True, 756.8, 1000) == (
        found.keeps_station,
        pytest.approx(found.supplies[0].load, abs=0.2),
        found.supplies[0].capacity,
    )


def test_power_limits_both_thrusters_of_a_bus():
    """0.9 × 2000 − 300 = 1500 of 1900 kW: 0.789 of the power, 0.854 of the thrust."""
    assert (0.789, 0.854) == pytest.approx(power_limited(1500, 1900), abs=5e-4)


def test_two_shaft_lines_without_one_engine():
    """Propeller, generator and bow thruster are lost; one screw with its rudder is left.

    Its rudder pushes across only with ahead thrust, which nothing takes: no wind on the beam is
    withstood, although ahead thrust is ample for one from ahead.
    """
    plant = Plant(
        sets=(
            GeneratorSet("shaft generator P", "P", 1000, 0.8),
            GeneratorSet("shaft generator S", "S", 1000, 0.8),
        ),
        engines=(MainEngine("port engine", 2000), MainEngine("starboard engine", 2000)),
        thrusters=(
            Thruster("T1", "tunnel", "P", 700, 28, "across"),
            Thruster("T2", "tunnel", "S", 700, 28, "across"),
            Thruster(
                "port propeller",
                "propeller in nozzle",
                "port engine",
                2000,
                -30,
                "along",
                thrust=300,
                side=90,
            ),
            Thruster(
                "starboard propeller",
                "propeller in nozzle",
                "starboard engine",
                2000,
                -30,
                "along",
                thrust=300,
                side=90,
            ),
        ),
        dependencies=(
            Dependency("shaft generator P", "port engine"),
            Dependency("shaft generator S", "starboard engine"),
        ),
    )
    across = {"T1": 77.0, "T2": 77.0, "port propeller": 90.0, "starboard propeller": 90.0}
    along = {"T1": 0.0, "T2": 0.0, "port propeller": 300.0, "starboard propeller": 300.0}
    found = outcome(
        plant,
        (Scenario(across, along, DE_FORCE, Force(wind_force(0.9, 210, 1), 1.53)),) * 3,
        ("port engine",),
        15,
        PLAIN,
    )

    assert {"port engine", "shaft generator P", "P", "T1", "port propeller"} == found.lost
    assert (77.0, 0, 300.0) == pytest.approx((found.bow, found.stern, found.along))
    assert (False, "thrust along", 0, 0) == (
        found.keeps_station,
        found.shortfall,
        found.wind.point,
        found.least.point,
    )
    assert found.ahead.point > 15


# A second plant, worked by hand: 65 m, draught 4.5 m, 520 m² (0.9), current 1.0 kn (0.7), all
# forces 3 m forward, thrusters at +27 and −27.
def second(closed=False, proven=False, dependencies=(), out=()):
    """Each bus: two sets of 600 kW, a tunnel of 500, an azimuth of 1000; 180 and 120 of hotel."""

    def unit(name, kind, bus, rated, x):
        return Thruster(name, kind, bus, rated, x, "across" if x > 0 else "both", out=name in out)

    return Plant(
        sets=tuple(
            GeneratorSet(name, bus, 600, 0.8)
            for name, bus in (("G1", "A"), ("G2", "A"), ("G3", "B"), ("G4", "B"))
        ),
        ties=(Tie("tie", "A", "B", closed, proven),),
        thrusters=(
            unit("T1", "tunnel", "A", 500, 27),
            unit("T2", "tunnel", "B", 500, 27),
            unit("T3", "azimuth in nozzle", "A", 1000, -27),
            unit("T4", "azimuth in nozzle", "B", 1000, -27),
        ),
        dependencies=dependencies,
        hotel={"A": 180, "B": 120},
    )


SECOND_FORCE = Force(wind_force(0.9, 520, 1), current_force(0.7, 65 * 4.5, KNOT), 3, 3)
FULL = {"T1": 0.85 * 77.56, "T2": 0.85 * 77.56, "T3": 0.85 * 202.98, "T4": 0.85 * 202.98}
SECOND = exact(FULL, SECOND_FORCE)
DRIVES = LoadLimits(efficiency=0.92, share=0.95)
COOLING = (Dependency("T2", "cooling pump"), Dependency("cooling pump", "A"))
# failure, state of the plant, bow left, stern left, load and sets by bus, most wind, shortfall
CASES = [
    ((), {}, 131.9, 345.1, [(361, 1200), (301, 1200)], 46.2, "bow thrust"),
    # T2 at full and T4 for the whole stern, T1 with (0.95 × 600 - 180) × 0.92 = 358.8 kW: 52.8 kN,
    # so 118.8 kN at the bow.
    (("G1",), {}, 131.9, 345.1, [(361, 600), (301, 1200)], 43.4, "power of A"),
    # T1 at full leaves 383 kW for T3, 91 kN; of the 414 kW on B T2 takes 405 and T4 9: 123.2 kN at
    # the bow, 0.8 × 123.2 at the stern.
    (("G3",), {}, 131.9, 345.1, [(361, 1200), (301, 600)], 44.4, "power of B"),
    (
        ("G1",),
        {"closed": True, "proven": True},
        131.9,
        345.1,
        [(662, 1800)],
        45.6,
        "power of A + B",
    ),
    (("T1",), {}, 65.9, 345.1, [(226, 1200), (549, 1200)], 29.7, "bow thrust"),
    # T1 at full; T2 at 0.964 of its thrust and T4 at 0.600 take the 938 kW of B: 129.5 kN.
    (("T3",), {}, 131.9, 172.5, [(315, 1200), (385, 1200)], 45.7, "power of B"),
    (("A",), {}, 65.9, 172.5, [(633, 1200)], 29.7, "bow thrust"),
    (("B",), {}, 65.9, 172.5, [(693, 1200)], 29.7, "bow thrust"),
    (("A",), {"dependencies": COOLING}, 0, 172.5, None, 0, "no thrust across at the bow"),
    (("A",), {"closed": True}, 0, 0, [], 0, "no thrust"),
    (("B",), {"out": ("T1",)}, 0, 172.5, None, 0, "no thrust across at the bow"),
]


def tenths(found):
    """The last tenth of a knot that is withstood."""
    return math.floor(found.wind.point / KNOT * 10) / 10


def test_forces_of_the_second_plant():
    """25 kn: wind 47.41, current 27.77, in all 93.98; of it 30/54 at the bow, 52.21 kN."""
    speed = 25 * KNOT

    assert (47.41, 27.77, 93.98) == pytest.approx(
        (
            SECOND_FORCE.wind * speed**2,
            SECOND_FORCE.current,
            SECOND_FORCE.total(speed),
        ),
        abs=0.01,
    )
    assert (124.6, 352.4, 42.1) == pytest.approx(
        (
            shaft_power(52.21 / 2, 65.93, 500),
            shaft_power(52.21, 65.93, 500),
            shaft_power(41.77 / 2, 172.54, 1000),
        ),
        abs=0.1,
    )


@pytest.mark.parametrize(("failed", "state", "bow", "stern", "loads", "knots", "limit"), CASES)
def test_failures_of_the_second_plant(failed, state, bow, stern, loads, knots, limit):
    """Eleven cases by hand: what is left, the loads at 25 kn, the most wind by tenths of a knot."""
    found = outcome(second(**state), SECOND, failed, 25 * KNOT, DRIVES)

    assert (bow, stern) == pytest.approx((found.bow, found.stern), abs=0.06)
    assert knots == tenths(found)
    assert (knots > 25, limit) == (found.keeps_station, found.shortfall)
    if loads is not None:
        assert [value for pair in loads for value in pair] == pytest.approx(
            [value for supply in found.supplies for value in (supply.load, supply.capacity)],
            abs=0.6,
        )


def test_the_worst_failure_of_the_second_plant():
    """A bus costs as much wind as a bow thruster and takes more with it."""
    found = outcomes(second(), SECOND, 25 * KNOT, DRIVES)

    assert found[0].element in ("A", "B")
    assert {29.7} == {tenths(each) for each in found if each.element in ("A", "B", "T1", "T2")}


# networkx as the reference
@st.composite
def graphs(draw):
    """Elements in order, each needing any of the ones before it: no element needs itself."""
    count = draw(st.integers(2, 9))
    return {f"e{n}": tuple(f"e{m}" for m in range(n) if draw(st.booleans())) for n in range(count)}


@given(graphs(), st.data())
def test_a_cascade_is_what_networkx_reaches(needs, data):
    """With single dependencies, an element is lost with all its descendants in their graph."""
    removed = data.draw(st.sampled_from(sorted(needs)))
    graph = networkx.DiGraph([(on, element) for element, all_on in needs.items() for on in all_on])
    graph.add_nodes_from(needs)

    assert {removed} | networkx.descendants(graph, removed) == cascade(
        {element: tuple(frozenset((on,)) for on in all_on) for element, all_on in needs.items()},
        {removed},
    )


@given(graphs(), st.data())
def test_what_stays_with_alternatives_is_the_greatest_set_that_supports_itself(needs, data):
    """Brute force: what works is the union of all sets that meet their own dependencies."""
    choices = {element: (frozenset(on),) if on else () for element, on in needs.items()}
    removed = data.draw(st.sampled_from(sorted(needs)))
    names = sorted(needs)
    kept = set()
    for chosen in product((False, True), repeat=len(names)):
        alive = {name for name, yes in zip(names, chosen, strict=True) if yes}
        if removed not in alive and all(
            choice & alive for name in alive for choice in choices[name]
        ):
            kept |= alive

    assert set(names) - kept == cascade(choices, {removed})


@st.composite
def networks(draw):
    """Buses with closed, proven ties at random, a set on some of them."""
    buses = [f"bus {n}" for n in range(draw(st.integers(2, 6)))]
    pairs = draw(
        st.lists(
            st.tuples(st.sampled_from(buses), st.sampled_from(buses)).filter(
                lambda pair: pair[0] < pair[1]
            ),
            min_size=1,
            max_size=8,
            unique=True,
        )
    )
    fed = draw(st.lists(st.sampled_from(buses), min_size=1, max_size=len(buses), unique=True))
    ties = tuple(Tie(f"tie {n}", *pair, True, True) for n, pair in enumerate(pairs))
    return Plant(
        sets=tuple(GeneratorSet(f"G{n}", bus, 100) for n, bus in enumerate(fed)), ties=ties
    )


@given(networks(), st.data())
def test_live_buses_are_those_that_networkx_connects_to_a_set(plant, data):
    """After any bus is lost, a bus lives where its connected component contains a set."""
    removed = data.draw(st.sampled_from(sorted(plant.buses)))
    graph = networkx.Graph([tie.buses for tie in plant.ties])
    graph.add_nodes_from(plant.buses)
    graph.remove_node(removed)
    fed = {generator.bus for generator in plant.sets} - {removed}
    expected = {frozenset(part) for part in networkx.connected_components(graph) if part & fed}

    assert expected == set(after_failure(plant, (removed,)).islands)


@given(networks())
def test_a_bus_that_parts_the_board_is_an_articulation_point(plant):
    """With a set on every bus, a loss splits the rest only at an articulation point."""
    everywhere = Plant(
        sets=tuple(GeneratorSet(f"set of {bus}", bus, 100) for bus in plant.buses), ties=plant.ties
    )
    graph = networkx.Graph([tie.buses for tie in plant.ties])
    graph.add_nodes_from(everywhere.buses)
    before = len(after_failure(everywhere).islands)
    parting = {
        bus for bus in everywhere.buses if len(after_failure(everywhere, (bus,)).islands) > before
    }

    assert set(networkx.articulation_points(graph)) == parting


def test_the_day_tank_that_two_buses_share_is_the_articulation_point():
    """Two buses fed by one day tank: networkx and the failures name the same element."""
    sets = (GeneratorSet("G1", "A", 100), GeneratorSet("G2", "B", 100))
    plant = Plant(
        sets=sets, dependencies=(Dependency("G1", "day tank"), Dependency("G2", "day tank"))
    )
    graph = networkx.Graph([("G1", "A"), ("G2", "B"), ("G1", "day tank"), ("G2", "day tank")])

    dark = {name for name in single_failures(plant) if not after_failure(plant, (name,)).islands}

    assert {"day tank"} == dark
    assert "day tank" in set(networkx.articulation_points(graph))

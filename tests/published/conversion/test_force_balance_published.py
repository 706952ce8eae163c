"""Surge, sway and yaw balanced together: cases by hand, and the two sides of duality.

Plain mechanics: the sum of the forces ahead, of the forces across, and of the moments about midship
is nothing. By duality of linear and convex programmes (plain mathematics) a wrench that can be
given proves that no less is withstood, and a direction in which no more can be given that no more
is.
"""

from math import cos, radians, sqrt

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from inspector.conversion.power.holding.attainable_thrust import (
    Group,
    Unit,
    compiled,
    furthest_in,
    most_in,
)
from inspector.conversion.power.holding.failure_case import Scenario
from inspector.conversion.power.holding.force_balance import furthest
from inspector.conversion.power.holding.holding_power import outcome
from inspector.conversion.power.holding.polar import MOST_WIND
from inspector.conversion.power.holding.steady_forces import Force
from inspector.conversion.power.plant import Plant
from inspector.conversion.power.plant_elements import GeneratorSet, MainEngine, Thruster

AMPLE = 1e6  # kW


def screws(y=3.0, engines=2):
    """60 m: a tunnel of 80 kN 25 m forward, two screws 27 m aft and y off the centreline.

    Each screw gives 200 kN ahead with up to 60 across by its rudder, and 120 astern.
    """
    names = ("port", "starboard")[:engines]
    return Plant(
        sets=(GeneratorSet("G1", "A", 5000),),
        engines=tuple(MainEngine(f"{name} engine", 9000) for name in names),
        thrusters=(
            Thruster("tunnel", "tunnel", "A", 700, 25, "across", thrust=80),
            *(
                Thruster(
                    name,
                    "open propeller",
                    f"{name} engine",
                    4000,
                    -27,
                    "along",
                    thrust=200,
                    side=60,
                    astern=120,
                    y=-y if name == "port" else y,
                )
                for name in names
            ),
        ),
    )


def scenarios(beam, head=None, side=60):
    """Three equal levels for these screws."""
    across = {"tunnel": 80, "port": side, "starboard": side}
    along = {"tunnel": 0, "port": 200, "starboard": 200}
    return (Scenario(across, along, beam, head),) * 3


def wind_of(force):
    """A wind of which each (m/s)² pushes with so many kN at midship, without current or waves."""
    return Force(force, 0.0, 0.0, 0.0, 1.0)


def test_one_screw_with_its_rudder_withstands_no_beam_wind():
    """Its side thrust needs ahead thrust, and nothing is left that pushes astern: none."""
    found = outcome(screws(), scenarios(wind_of(0.2), wind_of(0.05)), ("port engine",), 10)

    assert (0, False, "thrust along") == (found.wind.point, found.keeps_station, found.shortfall)


def test_one_screw_still_withstands_a_wind_from_ahead():
    """200 kN ahead on the centreline against 0.5 kN per (m/s)²: 20 m/s."""
    found = outcome(screws(y=0), scenarios(wind_of(0.2), wind_of(0.5)), ("port engine",))

    assert 20 == pytest.approx(found.ahead.point, abs=1e-4)


def test_two_screws_on_the_centreline():
    """One goes ahead and one astern: 120 kN, so 36 across; the tunnel gives 27/25 of that.

    36 + 38.88 = 74.88 kN, of 0.2 kN per (m/s)²: 19.35 m/s.
    """
    found = outcome(screws(y=0), scenarios(wind_of(0.2)))

    assert sqrt(74.88 / 0.2) == pytest.approx(found.wind.point, abs=1e-3)


def test_two_screws_apart_turn_her_as_well():
    """120 kN ahead on one side and astern on the other, 6 m apart, are 720 kN·m.

    With the side chosen that helps, 25 × bow = 27 × 36 + 720: 67.68 kN at the bow, 36 by the
    rudder: 103.68 kN, 22.77 m/s, from port and from starboard alike.
    """
    found = outcome(screws(), scenarios(wind_of(0.2)))

    assert sqrt(103.68 / 0.2) == pytest.approx(found.wind.point, abs=1e-3)
    assert {22.768} == {round(held.wind, 3) for held in found.polar}


def test_the_wind_from_a_bow_quarter_takes_the_astern_screw_its_work():
    """Wind from 30° pushes her astern too: both parts of the force are balanced at once.

    On the centreline: tunnel b = 27/25 × rudder r. Across: 0.2 w sin 30° = r + b = 2.08 r. Ahead:
    0.2 w cos 30° = X, the ahead thrust less the astern thrust. Both screws go ahead with 200 kN
    each at most, so X = 400 at most, and rudders give r = 0.3 X at most: X = 0.3464 w/2 ... the
    tunnel of 80 kN allows r = 74.07 and 0.1 w = 154.07, so w = 1540.7; then X = 266.9 kN of 400,
    and the rudders could give 80 kN of the 74 that are asked.
    """
    found = outcome(screws(y=0), scenarios(wind_of(0.2), wind_of(0.2)))
    (held,) = [each for each in found.polar if each.heading == 30]

    assert 0.2 * 1540.7 * cos(radians(30)) < 400
    # 39.3 m/s is beyond the end, so the same case with twice the force: 27.75 m/s.
    assert MOST_WIND == held.wind
    twice = outcome(screws(y=0), scenarios(wind_of(0.4), wind_of(0.4)))
    (held,) = [each for each in twice.polar if each.heading == 30]
    assert sqrt(154.07 / 0.2) == pytest.approx(held.wind, abs=5e-3)


def test_a_nozzle_that_drives_ahead_gives_no_side_thrust():
    """Typed to act both ways and measured ahead, but no side thrust of its rudder is known."""
    nozzle = Thruster("port", "propeller in nozzle", "A", 4000, -27, "both", thrust=300)

    assert (False, True) == (nozzle.across, nozzle.along)


def test_no_more_than_64_knots_is_ever_claimed():
    """A hundredth of a kilonewton per (m/s)² asks nothing: 64 kn, 32.9 m/s, and no more."""
    found = outcome(screws(), scenarios(wind_of(0.001), wind_of(0.001)))

    assert {64 * 1852 / 3600} == {held.wind for held in found.polar}
    assert 64 * 1852 / 3600 == pytest.approx(found.least.high)


@st.composite
def plants(draw):
    """Tunnels, azimuths and screws anywhere, on supplies that may be too small for them."""
    groups = []
    for at in range(draw(st.integers(1, 3))):
        units = []
        for n in range(draw(st.integers(1, 3))):
            kind = draw(st.sampled_from(("tunnel", "azimuth", "screw", "rudder")))
            place = {"x": draw(st.integers(-30, 30)), "y": draw(st.integers(-6, 6))}
            force = draw(st.integers(20, 200))
            made = {
                "tunnel": {"side": force},
                "azimuth": {"side": force, "all_round": True},
                "screw": {"ahead": force, "astern": force * 0.6},
                "rudder": {"ahead": force, "side": force * 0.3, "rudder": True},
            }[kind]
            rated = draw(st.integers(200, 2000))
            units.append(Unit(f"{kind} {at}.{n}", rated=rated, **place, **made))
        groups.append(
            Group(f"supply {at}", draw(st.sampled_from((300, 1000, AMPLE))), tuple(units))
        )
    return tuple(groups)


LOADS = st.tuples(st.integers(-3, 3), st.integers(-3, 3), st.integers(-40, 40)).filter(any)
ANGLES = st.tuples(*(st.floats(-1, 1) for _ in range(3)))


@settings(max_examples=300, deadline=None)
@given(plants(), ANGLES)
def test_the_quick_sum_is_the_one_with_names(groups, direction):
    """300 random plants: the search without names ends where the sum of named pushes does."""
    most = most_in(groups, direction)
    found = furthest_in(compiled(groups), direction)

    assert most.wrench == pytest.approx(found, rel=1e-9, abs=1e-6)


ONE_ALONE = Group(
    "supply 0", 300, (Unit("azimuth", 6, 3, 200, ahead=0.0, astern=0.0, side=20, all_round=True),)
)


@settings(max_examples=200, deadline=None)
@example((ONE_ALONE,), (0.0, 0.0, 0.0), (2, 2, 6))
@given(plants(), ANGLES, LOADS)
def test_what_is_found_can_be_given_and_no_direction_allows_more(groups, angles, load):
    """From below: power suffices and no unit is beyond full. From above: duality, anywhere."""
    origin = (0.0, 0.0, 0.0)
    found = furthest(groups, origin, tuple(float(part) for part in load))
    for group in groups:
        shares = [found.shares.get(unit.name, 0.0) for unit in group.units]
        assert max(shares) <= 1 + 1e-6
        powers = (unit.rated * share**1.5 for unit, share in zip(group.units, shares, strict=True))
        assert sum(powers) <= group.power * (1 + 1e-6) + 1e-6
    for direction in (angles, found.direction):
        weight = sum(a * b for a, b in zip(direction, load, strict=True))
        if weight > 1e-9:
            bound = most_in(groups, direction).gain / weight
            assert max(found.reach, 0.0) <= bound * (1 + 1e-6) + 1e-6
    # Where she is held, the direction that gives way proves that no more is possible. What one
    # unit alone can give has no volume: planes through it are finer than the numbers are, and what
    # is found is up to one part in a hundred too careful, and never too much.
    units = sum(len(group.units) for group in groups)
    if found.reach > 1e-3:
        weight = sum(a * b for a, b in zip(found.direction, load, strict=True))
        assert found.reach == pytest.approx(
            most_in(groups, found.direction).gain / weight, rel=1e-3 if units > 1 else 1e-2
        )

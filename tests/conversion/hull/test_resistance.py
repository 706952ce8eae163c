"""Resistance: what is refused, what is reported, and how it behaves."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.hull import form_coefficients as form
from inspector.conversion.hull import wave_coefficients as wave
from inspector.conversion.hull.hull_geometry import Appendage, Hull, Tunnel
from inspector.conversion.hull.resistance import Water, outside_boxes, resistance

HULL = Hull(64, 16, 5, 5, 3500 / 1.025, -1, 0.96, 0.87, appendages=(Appendage(60, 2.0),))
TRAWLER = Hull(50, 10, 4, 4, 1200, -1, 0.95, 0.80)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"length": -64}, "hull: length"),
        ({"breadth": 0}, "hull: breadth"),
        ({"volume": -3000}, "hull: volume"),
        ({"lcb": 30}, "hull: lcb"),
        ({"midship": 1.2}, "hull: midship"),
        ({"waterplane": 0.2}, "hull: waterplane"),
        ({"transom_area": -1}, "hull: transom area"),
        ({"draught_fore": float("nan")}, "hull: draught fore"),
        ({"stern": 25}, "hull: stern"),
        ({"wetted": 0}, "hull: wetted surface"),
        ({"entrance": 90}, "hull: half angle of entrance"),
        ({"breadth": 40}, "hull: length"),
        ({"volume": 5100}, "hull: volume"),
        ({"volume": 1000}, "hull: volume"),
        ({"bulb_area": 10, "bulb_height": 4}, "hull: bulb height"),
        ({"volume": 4300, "lcb": 9}, "hull: lcb"),
    ],
)
def test_a_hull_that_cannot_be_is_refused(change, field):
    """The sentence and the error name the field."""
    with pytest.raises(BadInput) as refused:
        replace(HULL, **change)

    assert field == refused.value.field
    assert str(refused.value).lower().startswith(field)


@pytest.mark.parametrize("speed", [400, 0, -3, float("inf"), "12"])
def test_a_speed_that_cannot_be_is_refused(speed):
    """Nobody has a workboat of 400 kn."""
    with pytest.raises(BadInput, match="^Speed is"):
        resistance(HULL, speed)


def test_the_formulas_of_1982_end_at_a_froude_number_of_one_half():
    """Above it the 1984 paper calls them often wrong, so they refuse; those of 1984 go on."""
    assert resistance(HULL, 25, 1984).total > 0
    with pytest.raises(BadInput, match="the 1982 formulas end at 0.5"):
        resistance(HULL, 25, 1982)


def test_the_formulas_of_1984_end_too():
    """A Froude number above one is refused."""
    with pytest.raises(BadInput, match="the 1984 formulas end at 1.0"):
        resistance(HULL, 55)


def test_an_edition_that_does_not_exist_is_refused():
    """There are two papers."""
    with pytest.raises(BadInput, match="1982 and of 1984"):
        resistance(HULL, 10, 1978)


@pytest.mark.parametrize(
    ("part", "field"),
    [
        (lambda: Appendage(-1, 2), "appendage: wetted area"),
        (lambda: Appendage(10, 0.5), "appendage: 1 + k2"),
        (lambda: Tunnel(9, 0.005), "thruster tunnel: diameter"),
        (lambda: Water(density=-1025), "water: density"),
    ],
)
def test_parts_that_cannot_be_are_refused(part, field):
    """Negative areas and densities, and factors below one."""
    with pytest.raises(BadInput) as refused:
        part()

    assert field == refused.value.field


def test_a_workboat_lies_outside_every_type_of_ship():
    """L/B of 4.0 is less than of any cargo ship behind the formulas, and fuller than trawlers."""
    assert (
        "L/B 4.00 outside 5.3 to 8.0 of the general cargo ships behind the formulas",
    ) == outside_boxes(HULL, 10)


def test_a_trawler_lies_inside_until_it_runs_too_fast():
    """The Froude number belongs to the box."""
    assert () == outside_boxes(TRAWLER, 12)
    assert (
        "Froude number 0.42 outside 0 to 0.38 "
        "of the tugs, trawlers and coasters behind the formulas",
    ) == outside_boxes(TRAWLER, 18)


@given(st.floats(3, 20), st.floats(1.02, 1.3))
def test_more_speed_costs_more_power(speed, more):
    """Effective power rises with speed, humps and hollows or not."""
    assert resistance(HULL, speed * more).effective_power > resistance(HULL, speed).effective_power


@given(st.floats(3, 25))
def test_no_part_is_negative(speed):
    """Friction, waves, appendages, bulb, transom and allowance only ever hold the ship back."""
    bulbed = replace(HULL, bulb_area=8, bulb_height=2, transom_area=4)
    found = resistance(bulbed, speed)

    assert (
        min(
            found.friction,
            found.appendages,
            found.wave,
            found.bulb,
            found.transom,
            found.correlation,
        )
        >= 0
    )


@pytest.mark.parametrize("froude", [0.40, 0.55])
def test_the_slow_the_middle_and_the_fast_formulas_meet(froude):
    """The 1984 wave resistance does not jump where its formulas change."""
    ship = Hull(50, 12, 3.1, 3.3, 900, -4.5, 0.78, 0.80)
    speed = froude * (form.G * 50) ** 0.5 * 3600 / 1852
    below, above = resistance(ship, speed * 0.9999).wave, resistance(ship, speed * 1.0001).wave

    assert below == pytest.approx(above, rel=2e-3)


@pytest.mark.parametrize("ratio", [0.11, 0.25])
def test_the_ends_of_c7_meet(ratio):
    """The three formulas of c7 agree where they change."""
    assert wave.c7(ratio - 1e-9) == pytest.approx(wave.c7(ratio + 1e-9), rel=1e-3)


@pytest.mark.parametrize(("edge", "tolerance"), [(0.02, 1e-6), (0.05, 1e-3)])
def test_the_ends_of_c12_meet(edge, tolerance):
    """The three formulas of c12 agree where they change."""
    assert form.c12(edge - 1e-9) == pytest.approx(form.c12(edge + 1e-9), rel=tolerance)


def test_tunnels_and_appendages_add():
    """A thruster tunnel of 1.5 m adds rho V² pi d² C."""
    tunnelled = replace(HULL, tunnels=(Tunnel(1.5, 0.005),))
    expected = 1025 * (10 * 1852 / 3600) ** 2 * 3.14159265 * 1.5**2 * 0.005 / 1000

    assert expected == pytest.approx(
        resistance(tunnelled, 10).appendages - resistance(HULL, 10).appendages
    )


def test_known_surface_and_entrance_are_used():
    """What was measured beats the formula."""
    known = replace(HULL, wetted=1400, entrance=30)

    assert (1400, 30) == (known.surface, known.angle)

"""What the printed examples do not reach: branches that must meet where they change, and terms
typed a second time from the papers (memory)."""

from dataclasses import replace
from math import sqrt

import pytest

from inspector.conversion.hull import bulb_and_transom as ends
from inspector.conversion.hull import form_coefficients as form
from inspector.conversion.hull import wave_coefficients as wave
from inspector.conversion.hull.hull_geometry import Appendage, Hull
from inspector.conversion.hull.resistance import resistance
from inspector.conversion.hull.wake_and_thrust import (
    blade_area_ratio,
    ideal_open_water,
    rotative_twin,
    thrust_deduction_single,
    thrust_deduction_twin,
    viscous_coefficient,
    wake_single,
    wake_twin,
)

HULL = Hull(64, 16, 5, 5, 3500 / 1.025, -1, 0.96, 0.87, appendages=(Appendage(60, 2.0),))
RESULT = resistance(HULL, 12, 1982)


@pytest.mark.parametrize(
    ("function", "edge"),
    [
        (lambda x: wave.c7(x), 0.11),
        (lambda x: wave.c7(x), 0.25),
        (lambda x: form.c12(x), 0.05),
        (lambda x: form.c12(x), 0.02),
        (lambda x: wave.c15(x ** (1 / 3), 1.0), 512),
        (lambda x: wave.c16(x), 0.8),
        (lambda x: wave.wave_length(0.6, x), 12),
        (lambda x: ends.c6(x), 5),
        (lambda x: form.correlation(100, 0.7, 1, x), 4),
    ],
    ids=["c7 low", "c7 high", "c12 high", "c12 low", "c15", "c16", "lambda", "c6", "C_A"],
)
def test_branches_of_resistance_meet(function, edge):
    """No coefficient jumps by more than a thousandth where its formula changes."""
    assert function(edge * (1 - 1e-9)) == pytest.approx(
        function(edge * (1 + 1e-9)), rel=1e-3, abs=1e-8
    )


def test_the_upper_end_of_c15_nearly_meets():
    """At 1727 the straight line has come up to within 0.002 of nothing, and beyond it is
    nothing."""
    assert 0 == pytest.approx(wave.c15(1726.9 ** (1 / 3), 1.0), abs=0.002)
    assert 0 == wave.c15(1728 ** (1 / 3), 1.0)


@pytest.mark.parametrize(
    ("ratio", "expected"),
    [(0.105, 0.229577 * 0.105 ** (1 / 3)), (0.2, 0.2), (0.3, 0.5 - 0.0625 / 0.3)],
)
def test_c7_in_each_branch(ratio, expected):
    """Typed a second time."""
    assert expected == pytest.approx(wave.c7(ratio), rel=1e-4)


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (wave.c16(0.85), 1.73014 - 0.7067 * 0.85),
        (wave.wave_length(0.6, 13), 1.446 * 0.6 - 0.36),
        (form.c12(0.019), 0.479948),
        (wave.c15(10, 1.0), -1.69385 + (10 - 8) / 2.36),
    ],
)
def test_the_branches_that_no_example_reaches(value, expected):
    """Full, slender and shallow ships, typed a second time."""
    assert expected == pytest.approx(value)


def test_the_allowance_of_a_shallow_draught():
    """Below TF/L of 0.04 the term with C_B and the bulb comes in."""
    expected = 0.006 * 200**-0.16 - 0.00205 + 0.003 * sqrt(100 / 7.5) * 0.7**4 * 0.9 * (0.04 - 0.02)

    assert expected == pytest.approx(form.correlation(100, 0.7, 0.9, 2))


def test_the_stern_in_the_form_factor_of_1984():
    """1 + 0.011 C_stern works on all but the 0.93."""
    plain, u_stern = HULL.form_factor(1984), replace(HULL, stern=10).form_factor(1984)

    assert 1.11 == pytest.approx((u_stern - 0.93) / (plain - 0.93))


def test_the_centre_of_buoyancy_in_the_form_factor_of_1982():
    """The lcb comes in with a plus there, and with a minus in the half angle of entrance."""
    aft, forward = (form.form_factor_1982(64, 16, 5, 0.69, lcb, 20, 0) for lcb in (-4, 4))
    expected = ((1 - 0.69 + 0.0225 * 4) / (1 - 0.69 - 0.0225 * 4)) ** 0.6906

    assert expected == pytest.approx((forward - 0.93) / (aft - 0.93))
    assert form.entrance_angle(64, 16, 3400, 0.69, 0.87, 4, 20) > form.entrance_angle(
        64, 16, 3400, 0.69, 0.87, -4, 20
    )


def single_wake(hull, diameter):
    """w of the 1982 paper, typed a second time without its helper functions, for c8 in any
    branch."""
    c_v, ratio, aft = (
        viscous_coefficient(hull, resistance(hull, 12, 1982)),
        hull.breadth / hull.draught_aft,
        hull.draught_aft,
    )
    c8 = (
        hull.surface
        / (hull.length * diameter)
        * (ratio if ratio < 5 else (7 * ratio - 25) / (ratio - 3))
    )
    c9 = 32 - 16 / (c8 - 24) if c8 >= 28 else c8
    c11 = 1.33333 + 0.0833333 * (aft / diameter) ** 3 if aft / diameter >= 2 else aft / diameter
    c_p1 = 1.45 * hull.c_p - 0.315 - 0.0225 * hull.lcb
    form = c9 * c_v * hull.length / aft * (
        0.0661875 + 1.21756 * c11 * c_v / (1 - c_p1)
    ) + 0.24558 * sqrt(hull.breadth / (hull.length * (1 - c_p1)))
    return (
        form
        - 0.09726 / (0.95 - hull.c_p)
        + 0.11434 / (0.95 - hull.c_b)
        + hull.stern * (0.75 * c_v + 0.002)
    )


@pytest.mark.parametrize(
    ("change", "diameter"),
    [
        ({}, 3.2),
        ({}, 1.5),
        ({"stern": 10.0}, 3.2),
        ({"lcb": 3.0}, 3.2),
        ({"draught_fore": 3.0, "draught_aft": 3.0, "volume": 2000.0}, 2.0),
        ({}, 2.4),
        ({"draught_aft": 5.5, "draught_fore": 4.5}, 1.0),
    ],
)
def test_the_wake_of_a_single_screw_in_every_branch(change, diameter):
    """Deep and shallow hulls, large and small screws, every stern."""
    hull = replace(HULL, **change)

    assert single_wake(hull, diameter) == pytest.approx(
        wake_single(hull, resistance(hull, 12, 1982), diameter)
    )


@pytest.mark.parametrize(
    ("length", "c10"),
    [(84, 16 / 84), (83.2, 16 / 83.2), (64, 0.25 - 0.003328402 / (16 / 64 - 0.134615385))],
)
def test_the_thrust_deduction_of_a_single_screw(length, c10):
    """Slender and short ships; the two forms of c10 meet at L/B of 5.2."""
    hull = replace(HULL, length=length, volume=53.35 * length, stern=10)
    c_p1 = 1.45 * hull.c_p - 0.315 + 0.0225
    expected = (
        0.001979 * length / (16 * (1 - c_p1))
        + 1.0585 * c10
        - 0.00524
        - 0.1418 * 9 / 80
        + 0.0015 * 10
    )

    assert expected == pytest.approx(thrust_deduction_single(hull, 3.0), rel=1e-5)


def test_twin_screws():
    """Wake, thrust deduction and relative rotative efficiency, typed a second time; no printed
    example exists."""
    depth = 2.6 / sqrt(16 * 5)
    wake = HULL.c_b * (0.3095 + 10 * viscous_coefficient(HULL, RESULT)) - 0.23 * depth

    assert wake == pytest.approx(wake_twin(HULL, RESULT, 2.6))
    assert 0.325 * HULL.c_b - 0.1885 * depth == pytest.approx(thrust_deduction_twin(HULL, 2.6))
    assert 0.9737 + 0.111 * (HULL.c_p + 0.0225) - 0.06325 * 0.9 == pytest.approx(
        rotative_twin(HULL, 0.9)
    )


def test_the_blade_area_of_twin_screws():
    """The constant is 0.1 for twin screws and 0.2 for one."""
    assert 0.1 == pytest.approx(
        blade_area_ratio(100, 2.6, 4, 3, 1) - blade_area_ratio(100, 2.6, 4, 3, 2)
    )


def test_the_ideal_efficiency_by_momentum():
    """Thrust 2 rho A v (V + v): the slip that it leaves behind gives the same efficiency, V / (V
    + v)."""
    advance, slip, area = 5.0, 1.5, 3.14159265 * 2.6**2 / 4
    thrust = 2 * 1025 * area * slip * (advance + slip) / 1000

    assert advance / (advance + slip) == pytest.approx(ideal_open_water(thrust, 2.6, advance))

"""Both printed examples of the Holtrop and Mennen papers, with every intermediate value that they
print.

Example 1: Holtrop and Mennen, "An approximate power prediction method", International Shipbuilding
Progress 29 (335), 1982, last page. The values were read in the test data of an open hydrodynamics
library; wake, thrust, rotative efficiency, area ratio and shaft power are recalled. Example 2:
Holtrop, "A statistical re-analysis of resistance and propulsion data", International Shipbuilding
Progress 31 (363), 1984 (recalled). The authors went on from rounded intermediates, so that forces
differ in their last printed digits; each test says how far.
"""

import math

import pytest

from inspector.conversion.core.span import Span
from inspector.conversion.hull import bulb_and_transom as ends
from inspector.conversion.hull import form_coefficients as form
from inspector.conversion.hull import wave_coefficients as wave
from inspector.conversion.hull.hull_geometry import Appendage, Hull
from inspector.conversion.hull.resistance import resistance
from inspector.conversion.hull.wake_and_thrust import (
    blade_area_ratio,
    quasi_propulsive,
    rotative_single,
    thrust_deduction_single,
    viscous_coefficient,
    wake_single,
)

SHIP = Hull(
    length=205,
    breadth=32,
    draught_fore=10,
    draught_aft=10,
    volume=37_500,
    lcb=-0.75,
    midship=0.98,
    waterplane=0.75,
    transom_area=16,
    appendages=(Appendage(50, 1.5),),
    bulb_area=20,
    bulb_height=4,
    stern=10,
)
FAST_SHIP = Hull(
    length=50,
    breadth=12,
    draught_fore=3.1,
    draught_aft=3.3,
    volume=900,
    lcb=-4.5,
    midship=0.78,
    waterplane=0.80,
    transom_area=10,
    appendages=(Appendage(50, 3.0),),
    entrance=25,
)
RESULT = resistance(SHIP, 25, 1982)
SPEED = 25 * 1852 / 3600
C15 = wave.c15(205, 37_500)

# name, printed in 1982, ours, digits after the point
COEFFICIENTS = [
    ("Fn", 0.2868, RESULT.froude, 4),
    ("C_P", 0.5833, SHIP.c_p, 4),
    ("L_R", 81.385, SHIP.run, 3),
    ("c12", 0.5102, form.c12(10 / 205), 4),
    ("c13", 1.030, 1 + 0.003 * 10, 3),
    ("1+k1", 1.156, RESULT.form_factor, 3),
    ("S", 7381.45, SHIP.surface, 2),
    ("C_F", 0.001390, RESULT.friction_coefficient, 6),
    ("iE", 12.08, SHIP.angle, 2),
    ("c7", 0.1561, wave.c7(32 / 205), 4),
    ("c1", 1.398, wave.c1(32 / 205, 10 / 32, SHIP.angle), 3),
    ("c3", 0.02119, ends.c3(20, 4, 32, 10, 10), 5),
    ("c2", 0.7595, SHIP.c2, 4),
    ("c5", 0.9592, SHIP.c5, 4),
    ("m1", -2.1274, wave.m1(205, 32, 10, 37_500, SHIP.c_p), 4),
    ("c15", -1.69385, C15, 5),  # printed without its sign; only a negative one gives the printed m2
    ("m2", -0.17087, wave.m2_1982(C15, SHIP.c_p, RESULT.froude), 5),
    ("lambda", 0.6513, wave.wave_length(SHIP.c_p, 205 / 32), 4),
    ("P_B", 0.6261, ends.bulb_emergence(20, 4, 10), 4),
    ("C_A", 0.000352, SHIP.allowance, 6),
    ("C_V", 0.001963, viscous_coefficient(SHIP, RESULT), 6),
    ("t", 0.1747, thrust_deduction_single(SHIP, 8), 4),
]
# name, printed, ours, relative tolerance: what the authors' rounding does
FORCES = [
    ("Fni", 1.5084, ends.bulb_froude(SPEED, 20, 4, 10), 5e-5),
    ("FnT", 5.433, ends.transom_froude(SPEED, 16, 32, 0.75), 2e-4),
    ("R_F", 869.63, RESULT.friction, 2e-5),
    ("R_APP", 8.83, RESULT.appendages, 1e-3),
    ("R_W", 557.11, RESULT.wave, 1e-3),
    ("R_B", 0.049, RESULT.bulb, 1e-2),
    ("R_A", 221.98, RESULT.correlation, 1e-3),
    ("R_total", 1793.26, RESULT.total, 5e-4),
    ("P_E", 23_063, RESULT.effective_power, 5e-4),
    ("w", 0.2584, wake_single(SHIP, RESULT, 8), 2e-3),
]


@pytest.mark.parametrize(
    ("name", "printed", "ours", "digits"), COEFFICIENTS, ids=[row[0] for row in COEFFICIENTS]
)
def test_the_coefficients_of_1982_to_the_printed_digits(name, printed, ours, digits):
    """Every dimensionless number, length and angle comes out as printed."""
    assert printed == pytest.approx(ours, abs=0.51 * 10**-digits)


@pytest.mark.parametrize(
    ("name", "printed", "ours", "tolerance"), FORCES, ids=[row[0] for row in FORCES]
)
def test_the_forces_of_1982(name, printed, ours, tolerance):
    """Every force comes out within a thousandth, and the total and power within half of that."""
    assert printed == pytest.approx(ours, rel=tolerance)


def test_no_transom_resistance_is_printed_in_1982():
    """FnT lies above 5, so that R_TR is nothing."""
    assert RESULT.transom == 0


def test_the_printed_wave_resistance_lies_inside_the_rounding_of_its_printed_parts():
    """R_W of 557.11 kN is what the printed c1, c2, c5, m1, m2, lambda and Fn give, each within
    its last digit."""

    def wave_resistance(side):
        half = 0.5 * side
        size = (1.398 + half * 1e-3) * (0.7595 + half * 1e-4) * (0.9592 + half * 1e-4)
        decay, hump, fn = -2.1274 + half * 1e-4, -0.17087 - half * 1e-5, 0.2868 + half * 1e-4
        return wave.wave_share(size, decay, hump, 0.6513, fn) * 37_500 * 1025 * 9.81 / 1000

    assert wave_resistance(-1) < 557.11 < wave_resistance(1)


def test_the_printed_total_is_the_sum_of_the_printed_parts():
    """869.63 x 1.156 + 8.83 + 557.11 + 0.049 + 0 + 221.98 makes the printed 1793.26: no part is
    left out of ours."""
    assert 1793.26 == pytest.approx(869.63 * 1.156 + 8.83 + 557.11 + 0.049 + 0 + 221.98, abs=0.01)
    assert RESULT.total == pytest.approx(
        RESULT.friction * RESULT.form_factor
        + RESULT.appendages
        + RESULT.wave
        + RESULT.bulb
        + RESULT.correlation
    )


def test_the_allowance_works_on_the_appendages_too():
    """Without the appendages' area R_A would miss the printed 221.98 kN by more than half a
    percent."""
    hull_alone = RESULT.correlation * SHIP.surface / (SHIP.surface + 50)

    assert 221.98 == pytest.approx(RESULT.correlation, rel=5e-4)
    assert 221.98 != pytest.approx(hull_alone, rel=5e-3)


def test_from_resistance_to_shaft_power_in_1982():
    """Thrust 2172.75 kN, AE/A0 0.7393, eta_R 0.9931 and P_S 32 621 kW with the printed eta_0 of
    0.6461 and eta_S of 0.99."""
    wake, deduction = wake_single(SHIP, RESULT, 8), thrust_deduction_single(SHIP, 8)
    thrust = RESULT.total / (1 - deduction)
    area = blade_area_ratio(thrust, 8, 4, shaft_depth=10 - 0.20 - 4)
    rotative = rotative_single(SHIP, area)

    assert 2172.75 == pytest.approx(thrust, rel=2e-4)
    assert 0.7393 == pytest.approx(area, abs=1e-4)
    assert 0.9931 == pytest.approx(rotative, abs=5e-5)
    assert 32_621 == pytest.approx(
        (
            RESULT.effective_power
            / (quasi_propulsive(wake, deduction, rotative, Span.exact(0.6461)) * 0.99)
        ).point,
        rel=1e-3,
    )


# kn, R_W and R_total as printed in 1984
FAST = [
    (25, 475, 662),
    (27, 512, 715),
    (29, 539, 756),
    (31, 564, 807),
    (33, 590, 864),
    (35, 618, 925),
]


@pytest.mark.parametrize(("speed", "wave", "total"), FAST)
def test_the_fast_ship_of_1984(speed, wave, total):
    """Wave and total resistance come out within one of the last printed digit."""
    found = resistance(FAST_SHIP, speed, 1984)

    assert wave == pytest.approx(found.wave, abs=0.6)
    assert total == pytest.approx(found.total, abs=0.6)


# kn, R_APP, R_TR, R_A: a second calculation of the 1984 formulas, kept so that a later change shows
FAST_PARTS = [
    (25, 21.0, 24.8, 34.5),
    (27, 24.3, 15.5, 40.3),
    (29, 27.8, 2.3, 46.5),
    (31, 31.5, 0, 53.1),
    (33, 35.4, 0, 60.1),
    (35, 39.5, 0, 67.7),
]


@pytest.mark.parametrize(("speed", "appendages", "transom", "allowance"), FAST_PARTS)
def test_the_parts_of_the_fast_ship(speed, appendages, transom, allowance):
    """Appendages, transom and allowance of the fast ship agree with a second calculation by other
    hands."""
    found = resistance(FAST_SHIP, speed, 1984)

    assert (appendages, transom, allowance) == pytest.approx(
        (found.appendages, found.transom, found.correlation), abs=0.06
    )


def test_the_coefficients_of_the_fast_ship():
    """S 584.9 m², 1 + k1 1.2970, c17 1.4133 and m3 -2.0298 (own run)."""
    found = (
        FAST_SHIP.surface,
        FAST_SHIP.form_factor(1984),
        wave.c17(50, 12, 900, 0.78),
        wave.m3(50, 12, 3.2),
    )

    assert (584.9, 1.2970, 1.4133, -2.0298) == pytest.approx(found, rel=1e-4)


# kn, Fn, R_F, R_APP, R_W, R_A, R_total, P_E of a workboat of 64 x 16 x 5 m: own run, second
# calculation
WORKBOAT = [
    (8, 0.1642, 20.66, 1.94, 0.56, 7.01, 36.95, 152.1),
    (10, 0.2053, 31.32, 2.94, 6.82, 10.95, 62.30, 320.5),
    (12, 0.2464, 44.01, 4.13, 37.42, 15.76, 115.78, 714.7),
    (14, 0.2874, 58.69, 5.51, 130.14, 21.46, 235.07, 1693.0),
]


@pytest.mark.parametrize("row", WORKBOAT, ids=lambda row: f"{row[0]} kn")
def test_a_workboat_calculated_twice(row):
    """A full-form hull agrees with a second calculation of the 1984 formulas by other hands."""
    hull = Hull(64, 16, 5, 5, 3500 / 1.025, -1, 0.96, 0.87, 0, (Appendage(60, 2.0),))
    speed, fn, friction, appendages, wave, allowance, total, power = row
    found = resistance(hull, speed, 1984)

    expected = (fn, friction, appendages, wave, allowance, total, power)
    ours = (
        found.froude,
        found.friction,
        found.appendages,
        found.wave,
        found.correlation,
        found.total,
        found.effective_power,
    )
    assert expected == pytest.approx(ours, rel=1e-3, abs=5e-3)


def test_the_steepness_that_a_cube_law_misses():
    """The local exponent of the workboat is 4.40 from 10 to 12 kn and 5.60 from 12 to 14 kn."""
    powers = {row[0]: row[-1] for row in WORKBOAT}

    found = [
        math.log(powers[high] / powers[low]) / math.log(high / low)
        for low, high in ((10, 12), (12, 14))
    ]
    assert [4.40, 5.60] == pytest.approx(found, abs=0.006)


def test_a_plain_estimate_of_the_surface_comes_near():
    """Denny and Mumford, S = 1.7 L T + volume / T, gives 1226.9 m² where the papers give 1277.9
    m²."""
    hull = Hull(64, 16, 5, 5, 3500 / 1.025, -1, 0.96, 0.87)

    assert 1277.9 == pytest.approx(hull.surface, abs=0.05)
    assert 1226.9 == pytest.approx(1.7 * 64 * 5 + hull.volume / 5, abs=0.05)

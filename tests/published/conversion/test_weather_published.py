"""Severe wind and rolling (IS Code 2008, part A, 2.3) on a straight curve, by hand.

With GZ = c × heel every area is a triangle: a = c/2 (φe − φ0 + φ1)², b = c/2 (φ2 − φe)², where
φ0 = lw1/c and φe = 1.5 lw1/c. Tables of the factors from memory, the formula of the roll as
46 CFR 28.575 repeats it.
"""

from dataclasses import replace
from math import atan, degrees, radians, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.conversion.stability.levers.weather_criterion import (
    WindAndHull,
    roll_to_windward,
    weather_criterion,
    wind_lever,
)

HULL = WindAndHull(
    area=700, height=6.0, length=70, breadth=16, draught=5, depth=7, block=0.70, keels=22.4
)
STRAIGHT = RightingLevers((0, 10, 20, 30, 40, 50, 60), (0, 0.2, 0.4, 0.6, 0.8, 1.0, 1.2))
SLOPE = 0.02  # m/deg


def test_the_lever_of_the_steady_wind():
    """504 Pa × 700 m² × 6 m over 3500 t × 9.81 × 1000 are 0.0617 m."""
    assert 504 * 700 * 6 / (3500 * 9810) == pytest.approx(wind_lever(HULL, 3500), rel=1e-12)


def test_the_roll_to_windward_factor_by_factor():
    """B/d 3.2: 0.86; C_B 0.70: 1.0; keels 2.0 % of L B: 0.88; r and s from KG 6 m and GM 1 m."""
    period = 2 * (0.373 + 0.023 * 3.2 - 0.043 * 0.70) * 16  # 13.33 s
    s = 0.065 + (0.053 - 0.065) * (period - 12) / 2
    r = 0.73 + 0.6 * 1 / 5

    assert 12 < period < 14
    assert 109 * 0.88 * 0.86 * 1.0 * sqrt(r * s) == pytest.approx(roll_to_windward(HULL, 6.0, 1.0))


def test_the_areas_are_triangles():
    """At 3500 t with a roll of 20°: both areas and their ratio by hand."""
    lever = 504 * 700 * 6 / (3500 * 9810)
    found = weather_criterion(STRAIGHT, HULL, 3500, 20.0, None)
    heel, gust = lever / SLOPE, 1.5 * lever / SLOPE
    a = radians(SLOPE / 2 * (gust - heel + 20) ** 2)
    b = radians(SLOPE / 2 * (50 - gust) ** 2)

    assert (heel, a, b, b / a) == pytest.approx(
        (found.heel, found.windward, found.leeward, found.ratio)
    )


def test_flooding_ends_the_area_to_leeward():
    """Water comes in at 35°: b ends there."""
    gust = 1.5 * 504 * 700 * 6 / (3500 * 9810) / SLOPE
    found = weather_criterion(STRAIGHT, HULL, 3500, 20.0, 35.0)

    assert radians(SLOPE / 2 * (35 - gust) ** 2) == pytest.approx(found.leeward)


def test_levers_that_fall_below_the_gust_end_the_area():
    """A triangle of levers, 0.4 m at 20° and none at 40°: b is the triangle above the gust."""
    peaked = RightingLevers((0, 20, 40, 60), (0, 0.4, 0.0, -0.4))
    gust = 1.5 * wind_lever(HULL, 3500)
    found = weather_criterion(peaked, HULL, 3500, 20.0, None)

    assert radians((0.4 - gust) ** 2 / SLOPE) == pytest.approx(found.leeward)


def test_a_wind_that_is_not_withstood_fails():
    """Levers of 2 cm against a wind of 6 cm: no heel, no area, ratio 0."""
    flat = RightingLevers((0, 20, 40), (0, 0.02, 0.01))

    assert (None, 0.0) == (
        weather_criterion(flat, HULL, 3500, 20.0, None).heel,
        weather_criterion(flat, HULL, 3500, 20.0, None).ratio,
    )


def test_the_heel_that_is_allowed():
    """16°, or 80 % of the angle of the deck edge: atan(2 × 2 / 16) = 14.04°, so 11.23°."""
    assert 0.8 * degrees(atan(4 / 16)) == pytest.approx(HULL.most_heel)
    assert 16.0 == replace(HULL, depth=12).most_heel


@given(st.floats(100, 1500), st.floats(1.01, 2))
def test_more_windage_is_never_better(area, more):
    """A greater side area lowers the ratio of the areas."""
    small, great = (
        weather_criterion(STRAIGHT, replace(HULL, area=size), 3500, 20.0, None).ratio
        for size in (area, more * area)
    )

    assert great <= small


def test_a_gm_below_zero_has_no_roll():
    """A vessel that does not float upright has no roll period; the field is named."""
    with pytest.raises(BadInput) as refused:
        roll_to_windward(HULL, 6.0, -0.1)

    assert "GM" == refused.value.field

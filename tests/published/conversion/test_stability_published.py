"""Weights and stability: textbook examples, tables of plate and pipe, intact criteria by hand."""

from math import pi

import pytest
from pint import UnitRegistry

from inspector.conversion.core.span import Span
from inspector.conversion.stability.booklet.hydrostatics import (
    end_draughts,
    estimated_mctc,
    fluid_gm,
    free_surface_moment,
    list_angle,
    parallel_sinkage,
    tonnes_per_cm,
    trim_change,
)
from inspector.conversion.stability.deck_loads import deck_load, load_limit
from inspector.conversion.stability.levers.intact_criteria import LEAST, intact_criteria
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.conversion.stability.lightship_changes import consequences
from inspector.conversion.stability.masses import (
    contents_mass,
    pipe_mass,
    pipe_unit_mass,
    plate_mass,
    plate_unit_mass,
)
from inspector.conversion.stability.roll_period import gm_from_roll, roll_constant, with_spread
from inspector.conversion.stability.weights import Weight, common_centre
from inspector.criteria.hull.lightship_and_roll import ROLL_FACTORS
from inspector.values.units import convert

MATES = "Ship Stability for Masters and Mates, edition of a public scan"
HAND = "plain mechanics, by hand"
UP = Span(0.0, None, 30.0)


def exact(name, act, mass, **at):
    return Weight(name, act, Span.exact(mass), **at)


def raised(mass, kg, *weights):
    return common_centre(mass, kg, weights, "vcg", UP).point


OWN = (
    exact("a", "off", 120, vcg=3.0),
    exact("b", "off", 45, vcg=8.5),
    exact("c", "on", 60, vcg=11.0),
)
# found, expected, tolerance (half of the last digit), source
CENTRES = [
    (
        raised(
            8000,
            7.6,
            exact("a", "on", 250, vcg=6.1),
            exact("b", "on", 300, vcg=0.6),
            exact("c", "off", 50, vcg=1.2),
        ),
        7.35,
        0.005,
        f"{MATES}, exercise on page 116: 62 445 / 8500",
    ),
    (
        raised(8153.75, 7.5, exact("half of the tank", "off", 153.75, vcg=1.5)) - 7.5,
        0.1153,
        0.00005,
        f"{MATES}, example of a tank pumped to half",
    ),
    (raised(3200, 6.40, *OWN), 6.5905, 0.00005, f"{HAND}: 20 397.5 / 3095"),
    (raised(3200, 6.4, OWN[0]) - 6.4, 0.1325, 0.00005, f"{HAND}: 120 x 3.4 / 3080"),
    (
        raised(3200, 6.4, exact("landing deck", "on", 85, vcg=15.5)),
        6.6355,
        0.00005,
        f"{HAND}: (3200 x 6.4 + 85 x 15.5) / 3285",
    ),
    (
        raised(3200, 6.4, exact("bulk tanks", "off", 72, vcg=3.2)) - 6.4,
        0.0737,
        0.00005,
        f"{HAND}: 72 x 3.2 / 3128, low removals raise KG",
    ),
    (
        raised(3200, 6.4, exact("winch", "off", 140, vcg=8.2)) - 6.4,
        -0.0824,
        0.00005,
        f"{HAND}: 140 x 1.8 / 3060",
    ),
]
HEIGHTS = [
    (fluid_gm(8.70, 62445 / 8500, 0, 8500).point, 1.35, 0.005, f"{MATES}, exercise on page 116"),
    (
        list_angle(0.035 * 8500, 8500, 1.35).point,
        1.50,
        0.02,
        f"{MATES}, exercise on page 116: printed 1.50 by rounded steps, 1.485 by its own figures",
    ),
    (
        fluid_gm(22.0, 212050 / 10000, 0, 10000).point,
        0.8,
        0.05,
        "Seamanship and Nautical Knowledge, textbook, sum of eight weights: GM 0.8 ft",
    ),
    (
        list_angle(10 * 10, 1500, 3.1 - 2.7).point,
        9 + 27 / 60,
        0.013,
        f"{MATES}, exercise 14.4: 9 deg 27 min",
    ),
    (list_angle(40 * 3.0, 3095, 0.92).point, 2.413, 0.0005, HAND),
    (
        fluid_gm(8.0, 7.5 + 0.1153, free_surface_moment(15 * 10**3 / 12, 1025), 8000).point,
        0.2245,
        0.00005,
        f"{MATES}, example of a tank pumped to half",
    ),
    (free_surface_moment(144, 850).point, 122.4, 1e-9, HAND),
    (fluid_gm(7.55, 6.590, 122.4 + 30.6, 3095).point, 0.911, 0.0005, HAND),
]
DRAUGHTS = [
    (
        -100 * parallel_sinkage(Span.exact(-220), 10).point,
        22,
        1e-9,
        "printed trim example, ship of 120 m: rise in cm",
    ),
    (
        -100 * trim_change(Span.exact(-220 * 24.0), 250).point,
        21.12,
        1e-9,
        "printed trim example, ship of 120 m: change of trim in cm",
    ),
    (
        100 * trim_change(Span.exact(380 * 25.0), 250).point,
        2 * 19,
        1e-9,
        "printed trim example: 380 t shifted by 25 m bring the after draught from 7.19 to 7.00 m",
    ),
    (-100 * parallel_sinkage(Span.exact(-180), 9.061).point, 19.87, 0.005, HAND),
    (-100 * trim_change(Span.exact(-180 * 20.0), 37.55).point, 95.88, 0.01, HAND),
    (tonnes_per_cm(884), 9.061, 0.0005, f"{HAND}: 1.025 x 884 / 100"),
    (estimated_mctc(9.061, 16).point, 37.51, 0.005, "7.31 TPC² / B (memory)"),
]
ROLLS = [
    (roll_constant(16, 5.8, 68), 0.40721, 0.000005, "IS Code 2008 part A 2.3.4"),
    (roll_constant(32.2, 11, 190), 0.35863, 0.000005, "IS Code 2008 part A 2.3.4"),
    (
        gm_from_roll(11.90, 16, with_spread(2 * 0.40721)).point,
        1.20,
        0.005,
        "IS Code 2008 part A 2.3.4: GM 1.20 m rolls in 11.90 s",
    ),
    (
        gm_from_roll(9.214, 16, with_spread(2 * 0.40721)).point,
        2.00,
        0.0005,
        "IS Code 2008 part A 2.3.4: GM 2.00 m rolls in 9.214 s",
    ),
    (
        gm_from_roll(9.5, 16, with_spread(2 * roll_constant(16, 5.8, 68))).point,
        1.881,
        0.0005,
        "IS Code 2008 part A 2.3.4, inverse",
    ),
    (gm_from_roll(9.5, 14, with_spread(0.78)).point, 1.321, 0.0005, "A.749(18) annex 3, f 0.78"),
    (gm_from_roll(9.5, 14, with_spread(0.88)).point, 1.682, 0.0005, "A.749(18) annex 3, f 0.88"),
]
STEEL = [
    *[
        (plate_unit_mass(thickness), mass, 1e-9, f"{HAND}: 7.85 kg per m² and mm")
        for thickness, mass in (
            (5, 39.25),
            (6, 47.10),
            (8, 62.80),
            (10, 78.50),
            (12, 94.20),
            (15, 117.75),
            (20, 157.00),
        )
    ],
    (
        plate_mass("bulkhead", 12.5 * 4.0, 8, 25).span.point,
        3.925,
        0.0005,
        f"{HAND}: 50 x 62.8 x 1.25",
    ),
    (
        plate_mass("tank", pi * 3 * 5 + 2 * 1.1 * pi * 3**2 / 4, 12, 0).span.point,
        5.90,
        0.005,
        f"{HAND}: shell of 3 x 5 m and two heads of 1.1 of their plan",
    ),
    (
        pipe_mass("main", 120, "6 in, schedule 80", 25).span.point,
        6.384,
        0.001,
        "ASME B36.10, 42.56 kg/m (rounded) x 120 x 1.25",
    ),
    (
        pipe_mass("main", 60, "5 in, schedule 40", 0).span.point,
        1.306,
        0.0005,
        "ASME B36.10, 21.77 kg/m x 60",
    ),
    (
        contents_mass("barite", 4 * 50, 2162).span.point,
        432.5,
        0.15,
        "bulk barite of 135 lb/ft³ = 2162 kg/m³, printed conversion table",
    ),
    (contents_mass("mud", 600, 2200).span.point, 1320, 1e-9, HAND),
]


@pytest.mark.parametrize(
    ("found", "expected", "tolerance", "source"), [*CENTRES, *HEIGHTS, *DRAUGHTS, *ROLLS, *STEEL]
)
def test_a_figure_comes_out_as_in_its_source(found, expected, tolerance, source):
    """Each example gives what is printed beside it, to half of its last digit."""
    assert expected == pytest.approx(found, abs=tolerance + 1e-12), source


@pytest.mark.parametrize(
    ("row", "mass"),
    [
        ("1 in, schedule 40", 2.50),
        ("2 in, schedule 40", 5.44),
        ("2 in, schedule 80", 7.48),
        ("3 in, schedule 40", 11.29),
        ("4 in, schedule 40", 16.08),
        ("4 in, schedule 80", 22.32),
        ("5 in, schedule 40", 21.77),
        ("6 in, schedule 40", 28.26),
        ("6 in, schedule 80", 42.56),
        ("8 in, schedule 40", 42.55),
        ("8 in, schedule 80", 64.64),
        ("10 in, schedule 40", 60.29),
        ("12 in, standard wall", 73.86),
    ],
)
def test_pipe_rows_weigh_what_the_standard_prints(row, mass):
    """ASME B36.10: kg/m of the bare pipe, to one in the second decimal."""
    assert mass == pytest.approx(pipe_unit_mass(row), abs=0.01)


@pytest.mark.parametrize(
    ("start", "sinking", "trim", "lcf", "length", "fore", "aft", "source"),
    [
        ((6.7, 7.3), -0.22, -0.2112, 60, 120, 6.37, 7.19, "printed trim example, ship of 120 m"),
        ((5.80, 5.80), -0.1987, -0.9588, 30, 65, 5.085, 6.044, HAND),
    ],
)
def test_draughts_at_the_ends(start, sinking, trim, lcf, length, fore, aft, source):
    """A rise and a trim by the stern about the centre of flotation."""
    found = end_draughts(start, Span.exact(sinking), Span.exact(trim), lcf / length)

    assert (fore, aft) == pytest.approx([draught.point for draught in found], abs=0.005), source


ANGLES, FULL = (0, 10, 20, 30, 40), (0, 0.17, 0.36, 0.52, 0.55)


@pytest.mark.parametrize(
    ("share", "expected", "met"),
    [
        (1.0, (0.1381, 0.2345, 0.0964, 0.55), (True, True, True, True)),
        (0.35, (0.0483, 0.0821, 0.0337, 0.1925), (False, False, True, False)),
    ],
)
def test_the_general_criteria_by_hand(share, expected, met):
    """IS Code 2008 part A 2.2 by Simpson's rules (3/8 to 30°, 1/3 to 40°), full and at 0.35."""
    curve = RightingLevers(ANGLES, tuple(share * lever for lever in FULL))
    rows = intact_criteria(LeverSpan.exact(curve), None)[:4]

    assert expected == pytest.approx([row.value.point for row in rows], abs=0.00005)
    assert met == tuple(row.met for row in rows)


@pytest.mark.parametrize(
    ("name", "metre_degrees"),
    [
        ("area to 30°", 3.151),
        ("area to 40° or flooding", 5.157),
        ("area from 30° to 40° or flooding", 1.719),
    ],
)
def test_areas_are_in_metre_radians(name, metre_degrees):
    """IS Code 2008 part A 2.2 in metre-radians; some rules print metre-degrees (pint)."""
    assert metre_degrees == pytest.approx(
        UnitRegistry().Quantity(LEAST[name], "meter * radian").to("meter * degree").magnitude,
        abs=0.0005,
    )


def test_the_two_roll_factors_are_not_mixed():
    """The rolling test's f is twice the weather criterion's C: a mix-up is a factor of 4 in GM."""
    constant = roll_constant(16, 5.8, 68)
    right, wrong = (
        gm_from_roll(9.5, 16, with_spread(factor)).point for factor in (2 * constant, constant)
    )

    assert 4 == pytest.approx(right / wrong)
    assert min(ROLL_FACTORS.values()) > 0.5 > constant


@pytest.mark.parametrize(
    ("percent", "limits", "word"),
    [
        (100 * 60 / 2100, (1, 2), "new inclining test"),
        (100 * 0.50 / 65, (0.5, 1), "booklet to be amended"),
    ],
)
def test_a_lightship_change_by_hand(percent, limits, word):
    """SOLAS II-1/5.4 and 5.5: 60 t of 2100 t are 2.857 %, 0.50 m of 65 m are 0.769 %."""
    assert (word,) == consequences(Span.exact(percent), *limits)


def test_a_house_on_deck_by_hand():
    """86 t on 12 × 9 m: 0.796 t/m² at rest, 1.194 with 0.5 g, 2.048 t/m under 42 m of walls."""
    house = deck_load("house", 86, 12 * 9, rated=5, walls=42)

    assert (0.796, 1.194, 2.048) == pytest.approx(
        (house.mean, house.moving, house.line), abs=0.0005
    )
    assert 2340 == load_limit(36 * 13, 5)


@pytest.mark.parametrize(
    ("unit", "to", "names", "expected"),
    [
        (
            "t/m²",
            "kN/m²",
            ("metric_ton * standard_gravity / meter**2", "kilonewton / meter**2"),
            9.80665,
        ),
        ("t/m²", "lb/ft²", ("metric_ton / meter**2", "pound / foot**2"), 204.816),
        ("long ton", "t", ("long_ton", "metric_ton"), 1.01605),
        ("long ton/in", "t/cm", ("long_ton / inch", "metric_ton / centimeter"), 0.4),
    ],
)
def test_units_of_weight_and_load_agree_with_pint(unit, to, names, expected):
    """Deck loads, long tons and tons per inch, against another library and the printed figure."""
    ours = convert(1, unit, to)

    assert ours == pytest.approx(
        UnitRegistry().Quantity(1, names[0]).to(names[1]).magnitude, rel=1e-9
    )
    assert expected == pytest.approx(ours, rel=1e-4)

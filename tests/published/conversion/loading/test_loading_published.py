"""Loading conditions of a box, by hand: 60 × 12 m, sea water of 1.025 t/m³.

A box displaces 738 t for each metre of draught, KB = d/2, BM = B²/(12 d) = 12/d, and up to the deck
edge GZ is that of a wall-sided form, KN = KM sin φ + ½ BM tan² φ sin φ (textbooks of ship
stability). Departure with 98 %, arrival with 10 % (IS Code 2008, part B, 3.4.1, from memory);
crowding and turning by part A, 3.1 (from memory).
"""

from math import cos, radians, sin, tan

import pytest

from inspector.conversion.stability.calculation import calculate
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.conversion.stability.loading.heeling import (
    crowding_lever,
    heel_by,
    turning_lever,
)
from inspector.conversion.stability.loading.loading_conditions import loading_conditions
from tests.conversion.a_case import case

PER_METRE = 1.025 * 60 * 12
DRAUGHTS = (1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 2.4)
HEELS = (10, 20, 30, 40)


def km(draught):
    return draught / 2 + 12 / draught


def kn(draught, heel):
    """KN of a wall-sided form at a heel [deg]."""
    angle = radians(heel)
    return (km(draught) + 0.5 * 12 / draught * tan(angle) ** 2) * sin(angle)


def between(column, mass):
    """A column of the booklet on a straight line between its rows, as booklets prescribe."""
    rows = [(PER_METRE * draught, column(draught)) for draught in DRAUGHTS]
    for (low, first), (high, last) in zip(rows, rows[1:], strict=False):
        if low <= mass <= high:
            return first + (last - first) * (mass - low) / (high - low)
    raise AssertionError(mass)


TABLES = {
    "hydrostatics": [
        {
            "id": "one",
            "displacement": "1200",
            "draught": "1.626",
            "lpp": "60",
            "lwl": "60",
            "breadth": "12",
            "depth": "6",
            "cb": "1",
            "kg": "4.2",
            "lightship": "1000",
            "lightship_lcg": "29.8",
            "lightship_vcg": "4.5",
            "greatest_draught": "2.20",
            "wind_area": "200",
            "wind_height": "3",
        }
    ],
    "hydrostatics_by_draught": [
        {
            "draught": str(draught),
            "displacement": repr(PER_METRE * draught),
            "km": repr(km(draught)),
            "limit_kg": "4.40",
            "lcb": "30",
            "lcf": "30",
            "mctc": "25",
        }
        for draught in DRAUGHTS
    ],
    "cross_curves": [
        {
            "displacement": repr(PER_METRE * draught),
            **{f"kn_{heel}": repr(kn(draught, heel)) for heel in HEELS},
        }
        for draught in DRAUGHTS
    ],
    "tanks": [
        {
            "name": "Fuel",
            "kind": "fuel",
            "capacity": "200",
            "density": "850",
            "lcg": "30",
            "tcg": "0",
            "vcg": "1.5",
            "free_surface": "100",
        },
        {
            "name": "Water",
            "kind": "fresh water",
            "capacity": "100",
            "lcg": "31",
            "tcg": "0",
            "vcg": "2",
            "free_surface": "50",
        },
        *(
            {
                "name": name,
                "kind": "ballast",
                "capacity": capacity,
                "density": "1025",
                "lcg": "30",
                "tcg": "0",
                "vcg": "1",
            }
            for name, capacity in (("Ballast 1", "150"), ("Ballast 2", "60"))
        ),
    ],
    "propulsion": [{"id": "one", "diameter": "1.0", "shaft_height": "0.6"}],
    "loading": [{"id": "one", "passengers": "40", "crowd": "5", "service_speed": "10"}],
}


def found(**change):
    """The conditions by name, with tables changed."""
    read = case({**TABLES, **change})
    loading = loading_conditions(read, calculate(read))
    assert not loading.faults
    return {one.name: one for one in loading.conditions}


DEPARTURE = 1000 + 166.6 + 98  # t: lightship, fuel 200 × 0.98 × 0.85, water 100 × 0.98
ARRIVAL = 1000 + 17 + 10
BALLAST = 60 * 0.98 * 1.025


def test_departure_needs_no_ballast():
    """All pressed up; of each liquid its greatest tank counts as slack all the same, 135 t·m."""
    one = found()["departure"]
    kg = (1000 * 4.5 + 166.6 * 1.5 + 98 * 2 + 135) / DEPARTURE

    assert DEPARTURE == pytest.approx(one.mass.point)
    assert kg == pytest.approx(one.fluid_kg.point)
    assert between(km, DEPARTURE) - kg == pytest.approx(one.gm.point)
    assert () == one.ballast


def test_arrival_takes_the_smaller_ballast_tank_that_is_enough():
    """Both tanks slack add 135 t·m: 4.56 m are above 4.40 m, and 60 t at 1 m bring 4.36 m."""
    one = found()["arrival"]
    surfaces = 100 * 0.85 + 50 * 1.0
    bare = (1000 * 4.5 + 17 * 1.5 + 10 * 2 + surfaces) / ARRIVAL
    mass = ARRIVAL + BALLAST
    fluid = (1000 * 4.5 + 17 * 1.5 + 10 * 2 + BALLAST * 1.0 + surfaces) / mass

    assert bare > 4.40 > fluid
    assert ("Ballast 2",) == one.ballast
    assert mass == pytest.approx(one.mass.point)
    assert fluid == pytest.approx(one.fluid_kg.point)
    assert one.met


def test_draughts_and_trim_by_lcb_and_mctc():
    """The lightship's 200 t·m aft of LCB and the water's moment forward, over 25 t·m/cm."""
    one = found()["departure"]
    moment = 1000 * (29.8 - 30) + 98 * (31 - 30)
    trim = moment / 25 / 100
    draught = DEPARTURE / PER_METRE

    assert trim == pytest.approx(one.trim.point)
    assert draught == pytest.approx(one.amidships.point)
    assert draught - trim / 2 == pytest.approx(one.aft.point)
    assert 2.20 - draught == pytest.approx(one.left.point)
    # Tip of a propeller of 1.0 m whose centre is 0.6 m above the keel.
    assert draught - trim / 2 - 1.1 == pytest.approx(one.tip_under.point)


def test_levers_by_kn_less_fluid_kg():
    """GZ at 30° of the departure, by the wall-sided formula."""
    one = found()["departure"]
    kg = one.fluid_kg.point
    lever = between(lambda draught: kn(draught, 40), DEPARTURE) - kg * sin(radians(40))
    shown = {result.name: result.value for result in one.criteria}

    assert lever == pytest.approx(shown["lever at 30° or more"].point)


def test_the_worst_is_the_least_margin_of_eleven_steps():
    """Without ballast the margin falls as fuel and water are used, to the end.

    Of each liquid there is one tank, which is slack in every step (part B, 3.1, from memory).
    """
    tanks = [tank for tank in TABLES["tanks"] if tank["kind"] != "ballast"]
    conditions = found(tanks=tanks)
    margins = []
    for step in range(11):
        left = 0.98 - 0.88 * step / 10
        fuel, water = 170 * left, 100 * left
        mass = 1000 + fuel + water
        kg = (4500 + fuel * 1.5 + water * 2 + 135) / mass
        margins.append(4.40 - kg)
    worst = min(range(11), key=margins.__getitem__)
    (one,) = (each for name, each in conditions.items() if name.startswith("worst"))

    assert f"worst, {10 * worst} % used" == one.name
    assert margins[worst] == pytest.approx(4.40 - one.fluid_kg.point)
    assert one.met is False


def test_tanks_emptied_in_an_order_are_slack_one_at_a_time():
    """Two of fuel, the second emptied first: at half only that one is slack, and then the other."""
    fuel = {**TABLES["tanks"][0], "capacity": "100"}
    pair = [{**fuel, "name": "Fuel 1", "used": "2"}, {**fuel, "name": "Fuel 2", "used": "1"}]
    together = [{**tank, "used": ""} for tank in pair]
    kinds = [tank for tank in TABLES["tanks"] if tank["kind"] == "fresh water"]
    surfaces = []
    for tanks in (pair, together):
        one = found(tanks=[*tanks, *kinds])["arrival"]
        mass = one.mass.point
        solid = (4500 + 17 * 1.5 + 10 * 2) / mass
        surfaces.append((one.fluid_kg.point - solid) * mass)

    assert [85 + 50, 2 * 85 + 50] == pytest.approx(surfaces)


def test_crowding_and_turning_by_their_moments():
    """40 × 75 kg × 5 m over the mass; 0.200 v² / L / g × (KG − d/2), v 5.144 m/s at 10 kn."""
    one = found()["departure"]
    draught, kg = DEPARTURE / PER_METRE, one.fluid_kg.point

    crowd, turn = crowding_lever(40, 5, DEPARTURE), turning_lever(10, 60, kg, draught)
    assert 40 * 0.075 * 5 / DEPARTURE == pytest.approx(crowd)
    speed = 10 * 1852 / 3600
    assert 0.200 * speed**2 / 60 / 9.81 * (kg - draught / 2) == pytest.approx(turn)
    # GZ is straight to the first ordinate of 10°.
    slope = (between(lambda d: kn(d, 10), DEPARTURE) - kg * sin(radians(10))) / 10
    for name, lever in (("crowding", crowd), ("turning", turn)):
        heel = dict(one.heels)[name]
        assert slope * heel >= lever * cos(radians(heel))
        assert slope * (heel - 0.1) < lever * cos(radians(heel - 0.1))


def test_levers_that_do_not_bear_a_moment_have_no_heel():
    """1 cm of lever against 5 cm."""
    assert heel_by(RightingLevers((0, 10, 20), (0, 0.01, 0.01)), 0.05) is None


def test_twelve_passengers_or_fewer_are_not_asked_for_crowding():
    """She is no passenger ship then."""
    loading = [{**TABLES["loading"][0], "passengers": "12"}]

    assert () == found(loading=loading)["departure"].heels


def test_deeper_than_the_load_line_is_not_met():
    """Greatest draught 1.6 m: departure fails that check and arrival does not."""
    booklet = [{**TABLES["hydrostatics"][0], "greatest_draught": "1.6"}]
    conditions = found(hydrostatics=booklet)

    assert False is dict(conditions["departure"].checks)["load line"]
    assert dict(conditions["arrival"].checks)["load line"]

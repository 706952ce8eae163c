"""Bilge systems: bores, capacity and number from both sides."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.machinery.bilge_pumping import branch_bore, main_bore, pump_capacity

HULLS = [(64, 16, 7), (80, 18, 8), (55, 13.8, 6)]


@pytest.mark.parametrize(("rating", "bore"), [("poor", 89.45), ("good", 89.47), ("good", 90)])
def test_a_main_is_wide_enough_by_its_formula(judge, rating, bore):
    """64 x 16 x 7 m asks for 89.46 mm, whose nearest 5 mm lie above it."""
    assert rating == judge("bilge-main-bore", bore=bore).rating


@pytest.mark.parametrize(
    ("rating", "bore"), [("poor", 99.9), ("fair", 100), ("fair", 101.6), ("good", 101.63)]
)
def test_a_main_may_be_rounded_down_to_the_nearest_five(judge, rating, bore):
    """80 x 18 x 8 m asks for 101.62 mm: 100 mm is enough only as rounded."""
    assert rating == judge("bilge-main-bore", bore=bore, length=80, breadth=18, depth=8).rating


@pytest.mark.parametrize(("rating", "bore"), [("poor", 59.9), ("fair", 60), ("good", 60.9)])
def test_a_branch_follows_the_length_of_its_space(judge, rating, bore):
    """12 m on 16 x 7 m asks for 60.9 mm."""
    assert rating == judge("bilge-branch-bore", bore=bore, space_length=12).rating


@pytest.mark.parametrize(("rating", "bore"), [("poor", 49.9), ("good", 50)])
def test_no_branch_is_under_fifty(judge, rating, bore):
    """A short space asks for less by its formula, and gets no less than 50 mm."""
    assert branch_bore(1, 16, 7) == 50
    assert rating == judge("bilge-branch-bore", bore=bore, space_length=1).rating


@pytest.mark.parametrize(("rating", "capacity"), [("poor", 45.2), ("good", 45.4)])
def test_a_pump_moves_two_metres_a_second_through_the_main(judge, rating, capacity):
    """64 x 16 x 7 m asks for 45.29 m³/h of each pump."""
    assert rating == judge("bilge-pump-capacity", capacity=capacity).rating


@pytest.mark.parametrize("hull", HULLS)
def test_the_rounded_factor_stays_within_a_thousandth_of_the_flow(hull):
    """0.00566 d² is 2 m/s through the bore, rounded by class rules."""
    import math

    exact = math.pi / 4 * (main_bore(*hull) / 1000) ** 2 * 2 * 3600
    assert pump_capacity(*hull) == pytest.approx(exact, rel=1.1e-3)


@pytest.mark.parametrize(
    ("rating", "pumps", "ship"),
    [
        ("poor", 1, "cargo"),
        ("good", 2, "cargo"),
        ("poor", 2, "passenger"),
        ("good", 3, "passenger"),
        ("poor", 3, "passenger, numeral 30 or more"),
        ("good", 4, "passenger, numeral 30 or more"),
    ],
)
def test_passengers_ask_for_more_pumps(judge, rating, pumps, ship):
    """Two, three and four."""
    assert rating == judge("bilge-pump-count", pumps=pumps, ship=ship).rating


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("bilge-main-bore", {"length": 14}),
        ("bilge-branch-bore", {"space_length": 61}),
        ("bilge-pump-capacity", {"depth": 1}),
        ("bilge-pump-count", {"pumps": 1.5}),
        ("bilge-pump-count", {"ship": "yacht"}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Boats, halls, half pumps and other ships are not judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

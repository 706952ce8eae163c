"""The rules by date: what binds, what does not, and what waits for one entry."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.span import Span
from inspector.conversion.rule_book.calculation import rule_book
from inspector.conversion.rule_book.chapter import chapter
from inspector.conversion.rule_book.derating import adjusted_share
from inspector.conversion.rule_book.rule_line import APPLIES, ASK, NOT_HERS, WAITS
from inspector.conversion.rule_book.tonnage_room import tonnage_rooms
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import case

VESSEL = {"built": "2008-05-01", "tonnage": "2600"}
MAIN = {"name": "main", "drives": "propeller", "power": "2000", "count": "2", "rpm": "750"}


def book(dates=None, vessel=None, brief=None, **tables):
    rows = {"rule_dates": [{"id": "one", **(dates or {})}], "engines": [MAIN], **tables}
    return rule_book(case(rows, VESSEL if vessel is None else vessel, brief or {"persons": "40"}))


def state(of, rule):
    return next(line.state for line in of.lines if line.rule == rule)


def words(of, rule):
    return cell_text(next(line.for_her for line in of.lines if line.rule == rule))


def test_nothing_typed_waits_and_never_raises():
    """An empty record names what each rule waits for."""
    one = chapter(case())

    assert one.gaps
    assert () == one.faults
    assert APPLIES not in [line.state for line in rule_book(case()).lines if line.rule != "Crew"]


def test_lines_stand_in_the_order_of_their_dates():
    """The oldest first, those without a day last."""
    days = [line.since for line in book().lines]
    known = [day for day in days if day is not None]

    assert known == sorted(known)
    assert days == known + [None] * (len(days) - len(known))


def test_every_line_has_a_source_and_somebody_who_decides():
    """Whoever reads a line knows who printed it and whom to ask."""
    for line in book().lines:
        assert line.source.title
        assert "flag" in line.decides


@pytest.mark.parametrize(
    ("dates", "expected"),
    [
        ({}, WAITS),
        ({"new_type": "no"}, NOT_HERS),
        ({"new_type": "yes"}, ASK),
        ({"new_type": "no", "lengthened": "3"}, ASK),
        # Five in a hundred of 4000 kW.
        ({"new_type": "no", "power_after": "4199"}, NOT_HERS),
        ({"new_type": "no", "power_after": "4200"}, ASK),
    ],
)
def test_what_may_be_a_major_conversion(dates, expected):
    """Type, length and power; one step to either side of five in a hundred."""
    assert expected == state(book(dates), "Major conversion")


@pytest.mark.parametrize(
    ("dates", "tier"),
    [
        ({"engines": "none"}, "tier I"),
        ({"engines": "identical"}, "tier I"),
        ({"engines": "another kind or added", "engines_on": "2027-02-01"}, "tier II ("),
        ({"engines": "another kind or added", "starts": "2027-02-01"}, "tier III in"),
    ],
)
def test_engines_follow_the_keel_or_the_day_they_are_fitted(dates, tier):
    """Kept and identical engines keep her tier, others take that of their day."""
    assert tier in words(book(dates), "Nitrogen oxides of the engines")


@pytest.mark.parametrize(
    ("volume", "built", "expected"),
    [
        ("599", "2012-01-01", NOT_HERS),
        ("600", "2012-01-01", APPLIES),
        ("600", "2008-05-01", ASK),
    ],
)
def test_fuel_tanks_from_six_hundred_cubic_metres(volume, built, expected):
    """The step and the day are both on their own side."""
    tank = {"name": "all", "kind": "fuel", "capacity": volume}
    of = book(vessel={**VESSEL, "built": built}, tanks=[tank])

    assert expected == state(of, "Protected fuel tanks")


def test_a_converted_tank_counts_as_what_it_becomes():
    """Wet cargo that becomes fuel is fuel, and fuel that goes is none."""
    tanks = [
        {"name": "a", "kind": "wet cargo", "capacity": "650", "plan": "convert", "becomes": "fuel"},
        {"name": "b", "kind": "fuel", "capacity": "650", "plan": "remove"},
    ]

    assert 650 == book(tanks=tanks).facts.fuel


@pytest.mark.parametrize(
    ("tonnage", "persons", "expected"),
    [("399", "15", NOT_HERS), ("400", "15", APPLIES), ("399", "16", APPLIES)],
)
def test_sewage_by_tonnage_or_persons(tonnage, persons, expected):
    """400 GT, or more than 15 persons."""
    of = book(vessel={"tonnage": tonnage}, brief={"persons": persons})

    assert expected == state(of, "Sewage and grey water")


@pytest.mark.parametrize(
    ("tonnage", "power", "deck", "engine"),
    [
        ("499", "749", "less than 500", "No engineer"),
        ("500", "750", "500 to 3000 GT", "750 to 3000 kW"),
        ("2999", "2999", "500 to 3000 GT", "750 to 3000 kW"),
        ("3000", "3000", "3000 GT and more", "3000 kW and more"),
    ],
)
def test_crew_by_tonnage_and_kilowatts(tonnage, power, deck, engine):
    """Each step is on its own side."""
    told = words(
        book({"power_after": power}, vessel={"tonnage": tonnage}), "Crew by tonnage and kilowatts"
    )

    assert deck in told
    assert engine in told


def test_the_floor_of_a_house_is_its_volume_by_its_height():
    """Half the height is twice the floor, and what is passed leaves none."""
    below = {room.step: room for room in tonnage_rooms(2600, None)}

    assert below[500].passed
    assert below[500].volume.high < 0
    assert not below[3000].passed
    assert below[3000].floor(2.6).high == pytest.approx(below[3000].volume.high / 2.6)


def test_an_added_volume_takes_from_what_is_left():
    """What is enclosed is gone from the room below a step."""
    alone = {room.step: room for room in tonnage_rooms(2600, None)}[3000]
    after = {room.step: room for room in tonnage_rooms(2600, Span.exact(400.0))}[3000]

    assert after.volume.high == pytest.approx(alone.volume.high - 400)


def test_a_rating_for_the_tropics_is_not_taken_down_twice():
    """The figure disappears where the maker's rating already holds."""
    hot = {"air_hot": "45", "sea_hot": "32"}

    def shares(**more):
        return [each for each in book({**hot, **more}).figures if "in the heat" in each.name]

    assert 2 == len(shares())
    assert [] == shares(rated_tropical="yes")
    assert shares()[0].span.high == pytest.approx(89.19, abs=0.02)


@given(st.floats(-60, 60), st.floats(0, 60), st.booleans())
def test_hotter_air_never_gives_more(air, coolant, cooled):
    """A share is between a half and one, and falls with the temperature."""
    share = adjusted_share(air, coolant, cooled=cooled)

    assert 0.5 < share <= 1
    assert share <= adjusted_share(max(air - 5, -60), max(coolant - 5, 0), cooled=cooled)


@pytest.mark.parametrize(
    ("polar", "expected"), [("", WAITS), ("none", NOT_HERS), ("northern", APPLIES)]
)
def test_polar_waters(polar, expected):
    """Not typed waits, none is not hers, and any binds."""
    of = book({"polar": polar} if polar else {})

    assert expected == state(of, "Polar certificate")
    assert (polar == "northern") == any(line.rule == "Polar training" for line in of.lines)


def test_the_answer_counts_what_binds_and_what_waits():
    """A client reads in a sentence what binds her, and how large a house stays below a step."""
    answer = cell_text(chapter(case({"rule_dates": [{"id": "one"}]}, VESSEL)).answer)

    assert answer.startswith("Of 10 rules 4 apply")
    assert "below 3000 GT while at most 1382" in answer


def test_a_day_that_cannot_be_read_is_a_fault_and_no_crash():
    """What was typed wrongly is named."""
    one = chapter(case({"rule_dates": [{"id": "one", "starts": "next spring"}]}, VESSEL))

    assert any("next spring" in fault for fault in one.faults)
    assert rule_book(case({"rule_dates": [{"id": "one", "starts": "2027-02-01"}]})).facts.dates[
        "starts"
    ] == date(2027, 2, 1)

"""Areas, cabins and services against hand calculations and the labour convention."""

import pytest
from pint import UnitRegistry

from inspector.conversion.core.span import Span
from inspector.conversion.space.areas import Space, clear_length, net_area
from inspector.conversion.space.cabins import least_floor, services, shortfalls
from inspector.values.units import convert

MLC = "Maritime Labour Convention, 2006, Standard A3.1 (recalled)"
CREW, OFFICER = "crew", "officer"
SPECIAL, SPECIAL_OFFICER = (f"{who}, passenger or special purpose ship" for who in (CREW, OFFICER))


@pytest.mark.parametrize(
    ("persons", "who", "tonnage", "floor"),
    [
        (1, CREW, 2999, 4.5),
        (1, CREW, 3000, 5.5),
        (1, CREW, 9999, 5.5),
        (1, CREW, 10_000, 7.0),
        (2, CREW, 2999, 7.0),
        (1, OFFICER, 2999, 7.5),
        (1, OFFICER, 3000, 8.5),
        (1, OFFICER, 10_000, 10.0),
        (2, SPECIAL, 2000, 7.5),
        (3, SPECIAL, 2000, 11.5),
        (4, SPECIAL, 5000, 14.5),
        (5, SPECIAL, 5000, 18.0),
        (1, SPECIAL_OFFICER, 5000, 7.5),
        (2, "guest", 5000, None),
    ],
)
def test_the_least_floor_by_persons_and_tonnage(persons, who, tonnage, floor):
    """The table of floors [m²] from both sides of each line of tonnage."""
    assert floor == least_floor(persons, who, tonnage), MLC


@pytest.mark.parametrize(
    ("sides", "height", "tonnage", "short"),
    [
        ((2.3, 2.0), 2.03, 2999, []),
        ((2.25, 2.0), 2.03, 2999, []),
        ((2.25, 2.0), 2.03, 3000, ["floor"]),
        ((2.3, 2.0), 2.02, 2999, ["headroom"]),
    ],
)
def test_a_cabin_against_the_table(sides, height, tonnage, short):
    """2.3 × 2.0 m passes below 3000 GT, 4.5 m² fails at 3000 GT, 2.02 m of headroom fails."""
    least = Span.exact(least_floor(1, CREW, tonnage))

    assert short == [found.what for found in shortfalls(sides[0] * sides[1], height, least)], MLC


@pytest.mark.parametrize(
    ("persons", "days", "expected"),
    [
        (6, 10, (1, 9.0, False)),
        (7, 10, (2, 10.5, False)),
        (15, 4, (3, 22.5, True)),
        (15, 3, (3, 22.5, False)),
        (14, 40, (3, 21.0, False)),
        (20, None, (4, 30.0, None)),
    ],
)
def test_what_goes_with_persons(persons, days, expected):
    """One sanitary set to six; 1.5 m² a seat; a hospital from 15 persons on over 3 days."""
    found = services(persons, days)

    assert expected == (found.sanitary, found.mess, found.hospital), MLC


@pytest.mark.parametrize(
    ("frames", "breadth", "height", "area", "volume"),
    [(12, 12.5, 2.55, 90.0, 229.5), (10, 13.0, 2.6, 78.0, 202.8)],
)
def test_space_in_the_hull_by_frames(frames, breadth, height, area, volume):
    """Frame spaces of 0.60 m by breadth and height, by hand; 0.85 is usable (common practice)."""
    found = net_area("hold", clear_length("hold", frames, 0.60, None), breadth)
    space = Space("hold", "hold", "won", found, height)

    assert area == pytest.approx(found)
    assert 0.85 * volume == pytest.approx(space.usable_volume.point)


def test_an_open_deck_net_of_what_stands_on_it():
    """36.0 x 13.0 m less 14.5 m² is 453.5 m², by hand."""
    assert 453.5 == pytest.approx(net_area("deck", 36.0, 13.0, 14.5))


@pytest.mark.parametrize(
    ("feet", "square_feet", "square_metres"), [((118, 42), 4956, 460.43), ((180, 54), 9720, 903.0)]
)
def test_decks_in_feet(feet, square_feet, square_metres):
    """A deck on paper in feet, by our factors and by pint's."""
    sides = [convert(side, "ft", "m") for side in feet]
    found = net_area("deck", *sides)

    assert square_metres == pytest.approx(found, abs=0.05)
    assert UnitRegistry().Quantity(square_feet, "foot**2").to(
        "meter**2"
    ).magnitude == pytest.approx(found)


def test_a_length_by_counting_fittings():
    """15 pitches of 10 ft are 150 ft, 45.7 m (common practice)."""
    assert 45.7 == pytest.approx(clear_length("deck", 15, convert(10, "ft", "m"), None), abs=0.05)

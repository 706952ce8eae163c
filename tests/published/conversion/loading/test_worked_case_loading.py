"""The worked case in four loading conditions, by hand from what was typed.

Departure with 98 % and arrival with 10 % of fuel and water (IS Code 2008, part B, 3.4.1, from
memory); the list of things as in test_worked_case_ship; straight lines between the booklet's rows.
"""

from math import atan, degrees, pi

import pytest

from inspector.values.cell_text import cell_text
from tests.published.a_worked_case import Worked, typed


def near(value):
    return pytest.approx(value, rel=1e-9, abs=1e-9)


@pytest.fixture(scope="module")
def worked(tmp_path_factory):
    """The case, typed once for all steps."""
    return Worked(tmp_path_factory.mktemp("worked"), typed())


HOUSE = 800 * 0.008 * 7.85 * 1.25
PIPE = pi * 6.02 * (114.3 - 6.02) * 7850 / 1e9 * 200 * 1.30
# t, along, up [m]: the lightship after the changes, and what is loaded in every condition
LIGHTSHIP = (
    (1800, 28, 6.4),
    (-110, 34, 7.5),
    (-60, 30, 3),
    (-PIPE, 30, 2.5),
    (HOUSE, 14, 11),
    (9, 10, 9),
)
ALWAYS = (*LIGHTSHIP, (40, 25, 2), (36 * 0.1, 30, 10))
BALLAST = 150 * 0.98 * 1.025  # t
ROWS = (
    # displacement, draught, KM, greatest KG
    (1624, 3.00, 7.80, 6.90),
    (2044, 3.60, 7.40, 6.60),
    (2604, 4.40, 7.00, 6.30),
    (2744, 4.60, 6.90, 6.20),
)
# t·m of the four tanks that are slack once anything is used: two of fuel, two of water
SURFACES = (120 + 110) * 0.850 + (60 + 300) * 1.000


# With all four pressed up the greatest of each liquid counts (IS Code 2008, part B, 3.1, memory).
PRESSED_UP = 120 * 0.850 + 300 * 1.000


def loaded(left, ballast=0.0, stores=30.0):
    """What she carries with a share of her fuel and water left, and the ballast tank filled."""
    return (
        *ALWAYS,
        (200 * left * 0.850, 28, 2),
        (180 * left * 0.850, 32, 2),
        (120 * left, 24, 3),
        (100 * left, 30, 1.5),  # the tank for fuel that will hold water
        (stores, 30, 8),
        (ballast, 30, 1),
    )


def sums(parts):
    """Mass [t], and its centre along and up [m]."""
    mass = sum(part[0] for part in parts)
    return mass, *(sum(part[0] * part[at] for part in parts) / mass for at in (1, 2))


def booklet(mass):
    """Draught, KM and greatest KG [m] on a straight line between the rows."""
    low, high = next(pair for pair in zip(ROWS, ROWS[1:], strict=False) if mass <= pair[1][0])
    share = (mass - low[0]) / (high[0] - low[0])
    return [low[at] + share * (high[at] - low[at]) for at in (1, 2, 3)]


def row(worked, name):
    """The row of a condition."""
    found = worked.rows("stability", "Loading conditions")
    return next(cells for key, cells in found.items() if key.startswith(name))


CASES = [
    # condition, share left, surfaces, stores, ballast
    ("departure", 0.98, PRESSED_UP, 30.0, 0.0),
    ("arrival", 0.10, SURFACES, 3.0, BALLAST),
]


@pytest.mark.parametrize(("name", "left", "surfaces", "stores", "ballast"), CASES)
def test_mass_heights_and_draughts(worked, name, left, surfaces, stores, ballast):
    """KG by moments, free surfaces over the mass, trim by 27.5 m and 30 t·m/cm about 27 of 58 m."""
    mass, along, up = sums(loaded(left, ballast, stores))
    draught, km, limit = booklet(mass)
    fluid = up + surfaces / mass
    trim = mass * (along - 27.5) / 30 / 100
    cells = row(worked, name)

    assert mass == near(cells[1].likely)
    assert draught + trim * (0.5 - 27 / 58) == near(cells[2].likely)
    assert 5.10 - draught - trim * (0.5 - 27 / 58) == near(cells[3].likely)
    assert draught - trim * 27 / 58 == near(cells[4].likely)
    assert fluid == near(cells[5].likely)
    assert limit == near(cells[6].likely)
    assert km - fluid == near(cells[7].likely)
    assert "met" == cells[0]
    # The propeller's tip is 1.8 + 1.2 m above the keel.
    assert cells[4].low > 3.0


def list_of(parts, surfaces):
    """Her list by the tender, 9 t at 4 m [deg]: tan = moment / (displacement × GM)."""
    mass, _, up = sums(parts)
    gm = booklet(mass)[1] - up - surfaces / mass
    return degrees(atan(9 * 4 / (mass * gm)))


def test_arrival_needs_its_ballast(worked):
    """Without it the tender lists her by 1.3°, above the degree that ballast is chosen by."""
    bare, filled = (loaded(0.10, ballast, 3.0) for ballast in (0.0, BALLAST))

    assert list_of(bare, SURFACES) > 1.0 > list_of(filled, SURFACES)
    assert "Ballast" == row(worked, "arrival")[9]
    assert "none" == row(worked, "departure")[9]


def margin(step):
    """Fluid KG below its limit after so many tenths are used, as she is loaded then [m]."""
    left, stores = 0.98 - 0.88 * step / 10, 30 * (1 - 0.9 * step / 10)
    surfaces = SURFACES if step else PRESSED_UP
    for ballast in (0.0, BALLAST):
        parts = loaded(left, ballast, stores)
        if list_of(parts, surfaces) < 1.0:
            break
    mass, _, up = sums(parts)
    return booklet(mass)[2] - up - surfaces / mass


def test_the_worst_of_eleven_steps(worked):
    """The last step at which she needs no ballast is the worst: 70 % used."""
    worst = min(range(11), key=margin)
    cells = row(worked, "worst")

    assert 7 == worst
    assert f"worst, {10 * worst} % used" in worked.rows("stability", "Loading conditions")
    assert margin(7) == near(cells[6].likely - cells[5].likely)


def test_all_four_are_met_and_asked(worked):
    """Departure, arrival, worst and as inspected; the requirement counts them."""
    (asked,) = (one for one in worked.chapters["stability"].requirements if one.id == "loading")
    inspected = row(worked, "as inspected")

    assert (4, 4, True) == (asked.offered.low, asked.offered.high, asked.met)
    assert worked.figure("stability", "KG after, fluid").span.point == near(inspected[5].likely)
    assert not any("departure" in cell_text(text).lower() for text in worked.warnings("stability"))


def test_the_displacement_is_explained(worked):
    """1800 + fuel 102 + 149.94 + 42.5 + water 84 + 500 of cargo + 60 are 2738 of 2744 t."""
    contents = 200 * 0.6 * 0.85 + 180 * 0.98 * 0.85 + 100 * 0.5 * 0.85 + 120 * 0.7

    assert abs(2744 - 1800 - contents - 560) < 20
    assert not any("not explained" in text for text in worked.warnings("stability"))

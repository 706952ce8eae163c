"""The worked case goes on: what comes off and goes on, how she floats, what her decks and spaces hold, her tonnage, and what her plant holds after a failure.

As in test_worked_case every expectation stands written out; published formulas are named with title and edition.
"""

from math import atan, degrees, floor, log, log10, pi, radians, sin, sqrt

import pytest

from tests.published.a_worked_case import Worked, typed


def near(value, rel=1e-9):
    return pytest.approx(value, rel=rel, abs=1e-9)


def likely(text):
    """The likely value of a printed span: "0.135 to 0.136 (0.135)"."""
    return text.partition("(")[2].rstrip(")") or text


@pytest.fixture(scope="module")
def worked(tmp_path_factory):
    """The case, typed once for all steps."""
    return Worked(tmp_path_factory.mktemp("worked"), typed())


# -- weight and stability ---------------------------------------------------------------------------------------------------------------------------

HOUSE = 800 * 0.008 * 7.85 * 1.25                                  # t, 8 mm of steel with a quarter for stiffeners
PIPE = pi * 6.02 * (114.3 - 6.02) * 7850 / 1e9 * 200 * 1.30        # t, ASME B36.10: 4 in, schedule 40, 16.07 kg/m
CHANGE = -110 - 60 - PIPE + HOUSE + 9 + 40                         # t
AFTER = 2744 + CHANGE
MOMENT_UP = -110 * 7.5 - 60 * 3 - PIPE * 2.5 + HOUSE * 11 + 9 * 9 + 40 * 2
KG = (2744 * 5.80 + MOMENT_UP) / AFTER
SURFACES = 120 * 0.850 + 60 * 1.000                                # t·m: fuel 1 and water 1; fuel 2 is pressed up, fuel 3 is given up


def test_the_weights_and_what_she_displaces(worked):
    """62.8 t of house, a 9 t tender and 40 t of water against winch, tanks and 4.2 t of pipe: 62 t lighter; weighed is ± 2 %, drawn ± 5 %."""
    low, point, high = worked.span("stability", "Displacement after")

    assert 16.07 == pytest.approx(PIPE * 1000 / 200 / 1.30, abs=0.006)   # as the standard's own tables print it
    assert AFTER == near(point)
    off = 110 * 0.02 + 60 * 0.05 + 9 * 0.02
    assert (AFTER - off, AFTER + off) == (near(low), near(high))


def test_draught_and_trim(worked):
    """62 t over 7 t/cm lift her 9 cm; the moment about the centre of flotation at 27 m over 30 t·m/cm puts her by the stern."""
    sunk = CHANGE / 7 / 100
    moment = -110 * (34 - 27) - 60 * (30 - 27) - PIPE * (30 - 27) + HOUSE * (14 - 27) + 9 * (10 - 27) + 40 * (25 - 27)
    trim = moment / 30 / 100

    assert sunk == near(worked.span("stability", "Mean draught, change")[1])
    assert trim == near(worked.span("stability", "Trim, change (plus by the head)")[1])
    assert 4.50 + sunk + trim * 31 / 58 == near(worked.span("stability", "Draught forward after")[1])
    assert 4.70 + sunk - trim * 27 / 58 == near(worked.span("stability", "Draught aft after")[1])


def test_the_height_of_her_centre_and_its_ends(worked):
    """Sum of moments over sum of masses; highest with the least winch off, the most of the low tanks off and the heaviest tender on."""
    high = (2744 * 5.80 + MOMENT_UP + 2.2 * 7.5 - 3 * 3 + 0.18 * 9) / (AFTER + 2.2 - 3 + 0.18)
    low = (2744 * 5.80 + MOMENT_UP - 2.2 * 7.5 + 3 * 3 - 0.18 * 9) / (AFTER - 2.2 + 3 - 0.18)

    assert (low, KG, high) == tuple(near(end) for end in worked.span("stability", "KG after, solid"))


def test_her_metacentric_height_with_free_surface(worked):
    """GM = KM - KG - moment / displacement = 6.96 - 5.874 - 162 / 2682, far above 0.15 m (IS Code 2008, part A, 2.2.4)."""
    assert SURFACES == near(worked.span("stability", "Free-surface moment")[1])
    assert 6.96 - KG - SURFACES / AFTER == near(worked.span("stability", "GM after, with free surface")[1])
    assert "kept" == worked.rows("stability", "General intact criteria")["initial GM"][2]


def test_the_tender_lists_her_and_the_roll_agrees_with_the_booklet(worked):
    """9 t at 4 m to starboard: tan = 36 / (displacement x GM). Rolling test of A.749(18): (0.78 x 14 / 10.5)² = 1.04² against 1.04 m given."""
    gm = 6.96 - KG - SURFACES / AFTER
    low, point, high = worked.span("stability", "GM of the day by its roll period")

    assert degrees(atan(9 * 4 / (AFTER * gm))) == near(worked.span("stability", "List (plus to starboard)")[1])
    assert (((0.73 * 14 / 10.5) ** 2), 1.04**2, ((0.83 * 14 / 10.5) ** 2)) == (near(low), near(point), near(high))
    assert low < 6.90 - 5.80 - 164.64 / 2744 < high
    assert not any("timed roll" in one for one in worked.chapters["stability"].warnings)


def test_the_righting_levers_after_the_changes(worked):
    """Each lever loses rise x sin of its heel; areas by Simpson's rules: 3/8 to 30 deg, 1/3 to 40 deg (IS Code 2008, part A, 2.2)."""
    rise = KG + SURFACES / AFTER - (5.80 + 164.64 / 2744)
    y = [gz - rise * sin(radians(angle)) for angle, gz in ((0, 0.0), (10, 0.18), (20, 0.38), (30, 0.54), (40, 0.58))]
    step = 10 * pi / 180
    thirty = 3 * step / 8 * (y[0] + 3 * y[1] + 3 * y[2] + y[3])
    forty = step / 3 * (y[0] + 4 * y[1] + 2 * y[2] + 4 * y[3] + y[4])
    rows = worked.rows("stability", "General intact criteria")

    assert f"{thirty:.3f}" == likely(rows["area to 30 deg"][1])
    assert f"{forty:.3f}" == likely(rows["area to 40 deg or flooding"][1])
    assert f"{forty - thirty:.3f}" == likely(rows["area from 30 to 40 deg or flooding"][1])


def test_the_lightship_asks_for_a_new_inclining_test(worked):
    """Without the water, which is deadweight, 1800 t of lightship lose 5.7 %: above 2 % (SOLAS II-1/5.4 and 5.5, explanatory notes)."""
    rows = worked.rows("stability", "The lightship changes")

    assert f"{(CHANGE - 40) / 1800 * 100:.2f} %".replace("-", "−") == likely(rows["mass"][0].replace(") %", " %)"))
    assert "new inclining test" == rows["mass"][3]


def test_the_laboratory_on_deck(worked):
    """44 t on 20 m² declared for 5 t/m²: 44 % at rest and 44 x 1.4 = 62 % in a seaway, 2.75 t a metre under its walls (common practice)."""
    row = worked.rows("stability", "Loads on deck")["container laboratory"]

    assert (f"{44 / 20:.2f}", f"{44 / 20 * 1.4:.2f}", f"{44 / 16:.2f}") == row[1:4]
    assert f"{44 / (20 * 5) * 100:.0f} to {44 / (20 * 5) * 140:.0f} (44) %" == row[4]


# -- space and tonnage ------------------------------------------------------------------------------------------------------------------------------

def test_floors_and_volumes_that_are_left(worked):
    """The hold gives 20 x 10 - 20 m² of which 80, 85 or 90 % serve, the accommodation 54 m²; twelve doubles of 7 m² (MLC 2006, A3.1, memory) and the rest."""
    there = [180 * share + 60 * 0.90 for share in (0.80, 0.85, 0.90)]
    living = 12 * 7 + 54 + 6 * 4 + 40       # 202 m²; the store is no living space

    assert [one - living for one in there] == [near(end) for end in worked.span("space", "Living floor inside (2.03 m): left over")]
    assert [one - living - 30 for one in there] == [near(end) for end in worked.span("space", "Floor inside: left over")]
    assert 180 * 0.85 * 2.6 + 60 * 0.90 * 2.1 == near(worked.span("space", "Volume inside: left over")[1])
    assert 300 - 80 == worked.span("space", "Open deck: left over")[1]
    assert "Floor inside: short by 16.0 to 34.0 (25.0) m²." in worked.chapters["space"].warnings


def test_berths_and_what_goes_with_them(worked):
    """24 new berths and 12 old ones; with the least of the hold only 198 of 202 m² are there, room for 23 of the 24. Six sets of toilets, 54 m² of mess."""
    (asked,) = worked.chapters["space"].requirements
    rows = worked.rows("space", "What goes with 36 persons")

    assert (12 + floor(24 * 198 / 202), 36, 36) == (asked.offered.low, asked.offered.point, asked.offered.high)
    assert asked.met is None
    assert {f"{36 / 6:.0f}", f"{36 * 1.5:.0f} m²"} <= {row[0] for row in rows.values()}


def volume(tonnage):
    """The volume behind a gross tonnage near 1500: one step of Newton's method from 5460 m³ on K V with K = 0.2 + 0.02 log10 V."""
    start = (0.2 + 0.02 * log10(5460)) * 5460
    return 5460 - (start - tonnage) / (0.2 + 0.02 * log10(5460) + 0.02 / log(10))


def test_the_gross_tonnage_before_and_after(worked):
    """ITC 1969, annex I, regulations 3 and 4: 1500 GT stand for 5459.6 to 5463.2 m³, the house adds 12 x 10 x 2.8; 1595 or 1596 GT, 478 net."""
    added = 12 * 10 * 2.8
    after = [(0.2 + 0.02 * log10(one)) * one for one in (volume(1500) + added, volume(1501) + added)]
    low, _, high = worked.span("space", "Gross tonnage after")

    assert 1500 == pytest.approx((0.2 + 0.02 * log10(volume(1500))) * volume(1500), abs=1e-4)
    assert added == near(worked.span("space", "Enclosed volume, change")[1])
    assert [floor(one) for one in after] == [low, high]
    assert floor(0.30 * after[0]) == worked.span("space", "Net tonnage after, at least")[0]


# -- the power plant --------------------------------------------------------------------------------------------------------------------------------

def test_what_is_left_with_one_set_out(worked):
    """600 + 600 + 400 kW less the largest are 1000; 752 kW at sea leave 0.9 x 1000 - 752 = 148 to spare, of which the laboratory takes 60 (list ± 10 %)."""
    assert 0.9 * 1000 - (400 + 352) == near(worked.span("power", "spare for new consumers with one set out")[1])
    low, point, high = worked.span("power", "margin with one set out, sea")
    assert (1000 - 812 * 1.1, 1000 - 812, 1000 - 812 * 0.9) == (near(low), near(point), near(high))


def test_transformer_and_shore(worked):
    """150 A at 400 V are √3 x 400 x 150 / 1000 = 104 kVA of 100; 125 A from shore are 69 kW; 400 V at 50 Hz drive 440 V 60 Hz machines at 109 % flux."""
    assert f"{sqrt(3) * 400 * 150 / 1000:.1f} %" == worked.rows("power", "Transformers")["TR1"][1]
    assert sqrt(3) * 400 * 125 * 0.8 / 1000 == near(worked.span("power", "power from shore, at most")[1])
    assert 100 * (400 / 50) / (440 / 60) == near(worked.span("power", "flux of the ship's machines on shore supply")[1])
    assert 100 * 50 / 60 == near(worked.span("power", "speed of motors on shore supply")[1])


WIND = 0.5 * 1.225 * 0.9 * 400 / 1000                                          # kN per (m/s)²
CURRENT = 0.5 * 1025 * 0.7 * 58 * 4.6 * (1852 / 3600) ** 2 / 1000              # kN at one knot
KNOTS = 3600 / 1852


def test_the_thrusters_at_the_wind_to_be_held(worked):
    """1.25 of wind at 10 m/s and current, half at each end; shaft power goes as T^1.5, and 0.9 of it reaches the shaft: 203 kW beside 360 of other loads."""
    half = 1.25 * (WIND * 10**2 + CURRENT) / 2
    drawn = (800 * (half / 104) ** 1.5 + 1600 * (half / 260) ** 1.5) / 0.9

    assert 180 + 120 + 60 + drawn == near(worked.span("power", "demand, station keeping")[1])
    row = worked.rows("power", "Single failures")["none, as found"]
    assert (f"104.0 / {half:.1f}", f"260.0 / {half:.1f}") == row[1:3]


def test_the_worst_single_failure_and_the_wind_held_after_it(worked):
    """Without bus A one 600 kW set feeds T2 and T4: 0.9 x 600 less the hotel of 120 (± 10 %) give 378 kW at the shafts, 38 kN at each end, 24.7 kn."""
    def knots(hotel):
        shafts = (0.9 * 600 - hotel) * 0.9
        # 400 (t / 52)^1.5 + 800 (t / 130)^1.5 = what the shafts may take, with t at bow and stern alike
        each = (shafts / (400 / 52**1.5 + 800 / 130**1.5)) ** (2 / 3)
        return sqrt((2 * each / 1.25 - CURRENT) / WIND) * KNOTS

    found = worked.span("power", "most wind on the beam without bus A")
    assert [knots(132), knots(120), knots(108)] == [pytest.approx(end, rel=1e-6) for end in found]
    assert list(worked.rows("power", "Single failures"))[1] == "bus A"


def test_a_poor_power_factor_takes_from_the_wind_held(tmp_path):
    """Read at 0.7, a set of 600 kW and 0.8 (750 kVA) is full by current at 525 kW, in the balance and after a failure alike."""
    found = Worked(tmp_path, [*typed(), ("row/plant_board/one", "power_factor", "0.7")])
    shafts = (0.9 * 525 - 120) * 0.9
    each = (shafts / (400 / 52**1.5 + 800 / 130**1.5)) ** (2 / 3)

    assert 750 * 0.7 + 400 / 0.8 * 0.7 - 812 == near(found.span("power", "margin with one set out, sea")[1])
    assert sqrt((2 * each / 1.25 - CURRENT) / WIND) * KNOTS == pytest.approx(found.span("power", "most wind on the beam without bus A")[1], rel=1e-6)


def test_what_the_other_failures_leave(worked):
    """Without bus B the bow thrust of 52 kN gives way first; without G1 bus A has 0.9 x 400 kW for T1 and T3, which share the force with T2 and T4."""
    rows = worked.rows("power", "Single failures")
    bow = sqrt((2 * 52 / 1.25 - CURRENT) / WIND) * KNOTS
    shafts = (0.9 * 400 - 180) * 0.9
    each = (shafts / (400 / 104**1.5 + 800 / 260**1.5)) ** (2 / 3)

    assert (f"{bow:.1f} kn", "bow thrust") == rows["bus B"][5:]
    assert f"{sqrt((2 * each / 1.25 - CURRENT) / WIND) * KNOTS:.1f} kn" == rows["G1"][5].partition(" (")[0]


def test_what_stays_dark_is_no_thrust(tmp_path):
    """A thruster fed from a bus that is not there is told by name, and what it would have pushed is in no sum."""
    found = Worked(tmp_path, [*typed(), ("row/plant_thrusters/r2", "feed", "C")])

    assert "T2: fed by is 'C', and no such bus or engine is there; known are: A, B." in found.chapters["power"].faults
    assert "52.0" == found.rows("power", "Single failures")["none, as found"][1].partition(" / ")[0]

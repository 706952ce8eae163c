"""The formulas beneath the criteria against the outside world: each figure comes out as its
source prints it."""

import pytest

from inspector.criteria.electrical.machine_insulation import (
    correction_thermoplastic,
    correction_thermosetting,
    minimum_resistance,
)
from inspector.criteria.electrical.polarization_index import polarization_index
from inspector.criteria.electrical.thermography import rise_at_full_load
from inspector.criteria.environment.nitrogen_oxides import nox_limit
from inspector.criteria.hull.corrosion import corrosion_rate, remaining_life
from inspector.criteria.hull.thickness import MEMBERS, allowances, diminution
from inspector.criteria.machinery.engine_vibration import GRADES
from inspector.criteria.papers.imo_number import check_digit, company_check_digit
from inspector.criteria.refrigeration.stores_and_gases import co2_equivalent, leak_check_months
from tests.criteria.band_ends import band_ends

A, B, C = MEMBERS
TABLE = (
    "Table of diminution of steel, general hull, one society: "
    "its formula, agreeing with what is legible in a scan"
)
GARBLED = "the same table, row illegible in the scan: own calculation by its formula"
KEY = (
    "Answer key to inspector calculation exercises on API 510/570/653, published answer to exercise"
)
OWN = "own calculation"

# function, arguments, expected, tolerance (half of the last printed digit), source
FUNCTIONS = [
    (lambda t: allowances(t, A)[0], (7.0,), 5.20, 0.0, TABLE),
    (lambda t: allowances(t, A)[1], (7.0,), 4.60, 0.0, TABLE),
    (lambda t: allowances(t, A)[0], (8.0,), 6.05, 0.0, TABLE),
    (lambda t: allowances(t, A)[1], (8.0,), 5.40, 0.0, TABLE),
    (lambda t: allowances(t, A)[0], (9.0,), 6.90, 0.0, TABLE),
    (lambda t: allowances(t, A)[1], (9.0,), 6.20, 0.0, TABLE),
    (lambda t: allowances(t, A)[0], (10.0,), 7.75, 0.0, TABLE),
    (lambda t: allowances(t, A)[1], (10.0,), 7.0, 0.0, TABLE),
    (lambda t: allowances(t, A)[0], (6.0,), 4.35, 0.0, GARBLED),
    (lambda t: allowances(t, A)[1], (6.0,), 3.8, 0.0, GARBLED),
    (lambda t: allowances(t, B)[0], (6.0,), 4.88, 0.0, TABLE + "; half rounds up"),
    (lambda t: allowances(t, B)[1], (6.0,), 4.50, 0.0, TABLE),
    (lambda t: allowances(t, B)[0], (9.0,), 7.31, 0.0, TABLE),
    (lambda t: allowances(t, B)[1], (9.0,), 6.75, 0.0, TABLE),
    (lambda t: allowances(t, B)[0], (10.0,), 8.13, 0.0, TABLE + "; half rounds up"),
    (lambda t: allowances(t, B)[1], (10.0,), 7.50, 0.0, TABLE),
    (lambda t: allowances(t, C)[0], (9.0,), 6.98, 0.0, TABLE + "; half rounds up"),
    (lambda t: allowances(t, C)[0], (10.0,), 7.75, 0.0, TABLE),
    (lambda t: allowances(t, C)[1], (10.0,), 7.00, 0.0, GARBLED),
    (lambda t: allowances(t, A)[0], (12.0,), 9.45, 0.0, OWN),
    (lambda t: allowances(t, A)[1], (12.0,), 8.60, 0.0, OWN),
    (diminution, (10.0, 8.3), 17.00, 0.005, OWN),
    (diminution, (12.0, 10.1), 15.83, 0.005, OWN),
    (diminution, (9.5, 9.8), -3.16, 0.005, OWN),
    (diminution, (8.0, 6.05), 24.38, 0.005, TABLE + ", dim %"),
    (corrosion_rate, (0.400, 0.260, 20), 0.007, 0.0005, f"{KEY} 1, inches"),
    (corrosion_rate, (0.750, 0.675, 15), 0.005, 0.0005, f"{KEY} 2, inches"),
    (corrosion_rate, (480, 410, 22), 3.2, 0.05, f"{KEY} 3, mils"),
    (
        corrosion_rate,
        (0.565, 0.521, 4 + 5 / 12),
        0.010,
        0.0005,
        f"{KEY} 5, April 1999 to September 2003",
    ),
    (remaining_life, (0.198, 0.150, 0.007), 6.9, 0.05, f"{KEY} 6"),
    (remaining_life, (0.211, 0.150, 0.003), 20.3, 0.05, f"{KEY} 7"),
    (corrosion_rate, (0.742, 0.718, 6), 0.004, 0.0005, f"{KEY} 10, short term, the greater"),
    (corrosion_rate, (0.750, 0.718, 13), 0.00246, 0.000005, f"{KEY} 10, long term, {OWN}"),
    (
        remaining_life,
        (0.560, 0.510, 0.004),
        12.5,
        0.05,
        f"quiz of the same key without printed answer, {OWN}",
    ),
    (
        remaining_life,
        (8.3, 8.0, 0.12),
        2.50,
        0.005,
        f"hull case, flat 20 % as required thickness, {OWN}",
    ),
    (remaining_life, (10.6, 9.6, 0.0875), 11.43, 0.005, f"second hull case, {OWN}"),
    (remaining_life, (7.0, 7.0, 0.0), 0.0, 0.0, "the same, though nothing was lost"),
    (
        remaining_life,
        (7.0, 7.0, 0.1),
        0.0,
        0.0,
        "API 510/570/653: nothing is left at the required thickness",
    ),
    *[
        (
            correction_thermoplastic,
            (t,),
            k,
            0.00005,
            f"IEEE 43-2013, 6.3, halving per 10 °C (seen), {OWN}",
        )
        for t, k in (
            (15, 0.1768),
            (20, 0.25),
            (25, 0.3536),
            (30, 0.5),
            (35, 0.7071),
            (40, 1),
            (45, 1.4142),
            (50, 2),
            (60, 4),
        )
    ],
    *[
        (
            correction_thermosetting,
            (t,),
            k,
            0.00005,
            f"IEEE 43-2013, 6.3, constants (memory), {OWN}",
        )
        for t, k in (
            (15, 0.7080),
            (20, 0.7622),
            (25, 0.8186),
            (30, 0.8770),
            (35, 0.9375),
            (40, 1),
            (41, 1.0440),
            (45, 1.2368),
            (50, 1.5195),
            (60, 2.2517),
            (70, 3.2609),
            (80, 4.6245),
        )
    ],
    *[
        (
            minimum_resistance,
            ("old or field winding", v),
            m,
            1e-9,
            f"IEEE 43-2013, table 3, kV + 1 (seen), {OWN}",
        )
        for v, m in ((208, 1.208), (480, 1.480), (690, 1.690), (4160, 5.16), (6600, 7.6))
    ],
    (polarization_index, (260, 540), 2.077, 0.0005, OWN),
    (polarization_index, (200, 480), 2.400, 0.0005, OWN),
    (polarization_index, (700, 900), 1.286, 0.0005, OWN),
    (polarization_index, (60, 96), 1.60, 0.0005, OWN),
    (
        rise_at_full_load,
        (12, 50, 1.6),
        36.38,
        0.005,
        f"load correction of a thermographers' note (seen), {OWN}",
    ),
    (rise_at_full_load, (12, 50, 2), 48.0, 0.005, f"the same, {OWN}"),
    (rise_at_full_load, (12, 40, 1.6), 51.99, 0.005, f"the same, {OWN}"),
    (rise_at_full_load, (12, 40, 2), 75.0, 0.005, f"the same, {OWN}"),
    (rise_at_full_load, (3, 45, 1.6), 10.76, 0.005, f"the same, {OWN}"),
    (rise_at_full_load, (10, 60, 2), 27.8, 0.05, f"the same, {OWN}"),
    (rise_at_full_load, (10, 60, 1.6), 22.6, 0.05, f"the same, {OWN}"),
    *[
        (nox_limit, (tier, n), limit, 0.005, f"MARPOL VI reg. 13, formulas (seen), {OWN}")
        for n, limits in {
            514: (12.91, 10.47, 2.58),
            720: (12.07, 9.69, 2.41),
            750: (11.97, 9.60, 2.39),
            900: (11.54, 9.20, 2.31),
            1000: (11.30, 8.98, 2.26),
            1200: (10.90, 8.61, 2.18),
            1500: (10.42, 8.18, 2.08),
            1600: (10.29, 8.06, 2.06),
            1800: (10.05, 7.85, 2.01),
        }.items()
        for tier, limit in zip(("I", "II", "III"), limits, strict=True)
    ],
    *[
        (nox_limit, (tier, 1800), limit, 0.05, "one decimal as certificates print it, rounded once")
        for tier, limit in (("I", 10.0), ("II", 7.8), ("III", 2.0))
    ],
    (
        check_digit,
        ("907472",),
        9,
        0,
        "IMO ship identification number, reference page, published example 9074729",
    ),
    (check_digit, ("765432",), 9, 0, "another reference page, published example 7654329"),
    (check_digit, ("012345",), 0, 0, f"{OWN}, invented number"),
    (check_digit, ("202020",), 0, 0, f"{OWN}, invented number"),
    (
        company_check_digit,
        ("204199",),
        9,
        0,
        "company number, reference page, published example 2041999",
    ),
    (company_check_digit, ("012345",), 8, 0, f"{OWN}, invented number"),
    (company_check_digit, ("101000",), 0, 0, f"{OWN}, sum 12 leaves 1, so ten becomes zero"),
    (company_check_digit, ("000000",), 1, 0, f"{OWN}, sum 0, so eleven becomes one"),
    (co2_equivalent, ("R-404A", 60), 235.3, 0.05, f"GWP of (EU) 517/2014, 3922 (seen), {OWN}"),
    (co2_equivalent, ("R-134a", 60), 85.8, 0.05, f"GWP 1430 (memory), {OWN}"),
    (co2_equivalent, ("R-449A", 60), 83.8, 0.05, f"GWP 1397 (memory), {OWN}"),
    (co2_equivalent, ("R-507A", 12.5), 49.8, 0.05, f"GWP 3985 (seen), {OWN}"),
    (co2_equivalent, ("R-407C", 35), 62.1, 0.05, f"GWP 1774 (memory), {OWN}"),
    *[
        (
            leak_check_months,
            (gas, kg),
            months,
            0,
            f"thresholds of (EU) 2024/573, 5 / 50 / 500 t (seen), {OWN}",
        )
        for gas, kg, months in (
            ("R-404A", 60, 6),
            ("R-134a", 60, 6),
            ("R-449A", 60, 6),
            ("R-507A", 12.5, 12),
            ("R-404A", 10, 12),
            ("R-407C", 35, 6),
        )
    ],
    *[
        (
            leak_check_months,
            ("R-22", kg),
            months,
            0,
            "thresholds of (EU) 2024/590, 3 / 30 / 300 kg (seen)",
        )
        for kg, months in ((3, 12), (30, 6), (300, 3))
    ],
]


@pytest.mark.parametrize(("function", "arguments", "expected", "tolerance", "source"), FUNCTIONS)
def test_a_function_gives_the_figure_of_its_source(
    function, arguments, expected, tolerance, source
):
    """Each figure comes out as printed, to half of its last digit."""
    assert expected == pytest.approx(function(*arguments), abs=tolerance + 1e-12), source
    assert len(source) > 5


# nominal, permanent low and high, transient low and high; IACS UR E5 shares (memory), own
# calculation
BANDS = [
    (208, 187.20, 220.48, 166.4, 249.6),
    (440, 396.0, 466.4, 352.0, 528.0),
    (480, 432.0, 508.8, 384.0, 576.0),
    (690, 621.0, 731.4, 552.0, 828.0),
]


@pytest.mark.parametrize("row", BANDS, ids=lambda row: f"{row[0]} V")
def test_voltage_bands_are_exact(row):
    """The shares of each nominal voltage come out to the last decimal."""
    nominal, low, high, briefly_low, briefly_high = row
    assert [briefly_low, low, high, briefly_high] == band_ends("supply-voltage", nominal=nominal)


@pytest.mark.parametrize(
    "row",
    [(60, 57.0, 63.0, 54.0, 66.0), (50, 47.5, 52.5, 45.0, 55.0)],
    ids=lambda row: f"{row[0]} Hz",
)
def test_frequency_bands_are_exact(row):
    """IACS UR E5 shares (memory), own calculation."""
    nominal, low, high, briefly_low, briefly_high = row
    assert [briefly_low, low, high, briefly_high] == band_ends("supply-frequency", nominal=nominal)


def test_the_ladder_of_vibration_grades_follows_its_own_law():
    """Each step of ISO 10816-6 (memory) is 10 to the 0.2, so a wrong figure would stand out (own
    calculation)."""
    for step, end in enumerate(GRADES.values()):
        assert end == pytest.approx(1.122 * 10 ** (0.2 * step), rel=0.003)


def test_the_check_digit_misses_what_is_known_to_be_missed():
    """Of all single slips the sum misses none, 1/9, 4/9, 1/9, none and 1/9 by place (own
    enumeration)."""
    weights = (7, 6, 5, 4, 3, 2)
    missed = [
        sum((a - b) * w % 10 == 0 for a in range(10) for b in range(10) if a != b) for w in weights
    ]
    pairs = [(str(a), str(b)) for a in range(10) for b in range(10) if a != b]
    found = [
        sum(
            check_digit("0" * place + a + "0" * (5 - place))
            == check_digit("0" * place + b + "0" * (5 - place))
            for a, b in pairs
        )
        for place in range(6)
    ]
    assert [0, 10, 40, 10, 0, 10] == missed == found

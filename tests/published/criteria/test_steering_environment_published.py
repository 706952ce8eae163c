"""Propulsion, steering, bilge, pollution and emissions against the outside world.

Title, edition and table stand beside each row; "own calculation" means that the rule is the
source's and the arithmetic ours, written out where it is longer than a line.
"""

import math

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.environment.ballast_water import STANDARD
from inspector.criteria.machinery.bilge_pumping import branch_bore, main_bore, pump_capacity
from inspector.criteria.machinery.propeller import pitch_limits
from tests.criteria.band_ends import band_ends

OWN = "own calculation"
SOLAS_29 = (
    "SOLAS II-1/29.3 and 29.4: 35° to 30° in 28 s, 15° to 15° in 60 s (seen as a "
    "national act and notes give it)"
)
SOLAS_35 = (
    f"SOLAS II-1/35-1, 25 + 1.68 sqrt(L (B + D)) and 25 + 2.16 sqrt(l (B + D)) (memory), {OWN}"
)
ISO_484 = (
    "ISO 484-2:1981, tolerances, table of pitch, thickness and length of sections as "
    "two propeller workshops print it (seen)"
)
BEARING = "Survey guidance of one society, rudders, 3.1.4: 5 + 0.002 D mm (seen)"
STERN = (
    "one society's limits: 230 mm 4.8 mm (seen as quoted), 305 mm 5.6 mm, above 6.35 mm (memory)"
)
PRACTICE = "common practice; no published example exists"
REG_13 = (
    "MARPOL VI reg. 13.2: replacement by another engine meets the limits of its own "
    "day; MEPC.230(65) (seen)"
)
REG_14 = (
    "MARPOL VI reg. 14: 0.50 % outside, 0.10 % inside; Mediterranean from 1 May 2025, "
    "Norwegian Sea from 1 March 2027 (seen)"
)
EPA = (
    "40 CFR 1042.1, first model years of tier 3; 600 to 1400 kW tier 4 from 2017 and "
    "1400 to 2000 kW from 2016 (seen)"
)
MEPC_107 = (
    "MEPC.107(49), for all equipment fitted on or after 1 January 2005; MEPC.285(70), "
    "calibration within five years (seen)"
)
SEWAGE = "MEPC.2(VI), MEPC.159(55) from 2010, MEPC.227(64) from 2016"
BWM = (
    "Ballast Water Management Convention B-3 as public administrations give it: 8 "
    "September 2024; BWMS Code from 28 October 2020 (seen)"
)
D_2 = "Ballast Water Management Convention D-2: 10, 10, 250, 100 and 1 (seen)"

HULL = {"length": 64, "breadth": 16, "depth": 7}
FULL, ASKED = "trial draught, full ahead", "trial draught, asked speed"
# criterion, values, band, rating, source
ROWS = [
    ("steering-main-time", {"time": 26.4, "condition": FULL}, "within the limit", "good", SOLAS_29),
    ("steering-main-time", {"time": 28, "condition": FULL}, "within the limit", "good", SOLAS_29),
    ("steering-main-time", {"time": 29.1, "condition": FULL}, "over the limit", "failed", SOLAS_29),
    (
        "steering-main-time",
        {"time": 20, "condition": "alongside"},
        "no load, no pass",
        None,
        "the rule asks for full speed at sea",
    ),
    (
        "steering-auxiliary-time",
        {"time": 58, "condition": ASKED},
        "within the limit",
        "good",
        SOLAS_29,
    ),
    (
        "steering-auxiliary-time",
        {"time": 61, "condition": ASKED},
        "over the limit",
        "failed",
        SOLAS_29,
    ),
    (
        "steering-auxiliary-time",
        {"time": 58, "condition": ASKED, "service_speed": 16, "trial_speed": 7},
        "no load, no pass",
        None,
        f"{SOLAS_29}: half of 16 kn is 8 kn",
    ),
    (
        "rudder-bearing-clearance",
        {"clearance": 5.6, "diameter": 300},
        "within the limit",
        "good",
        f"{BEARING}: 5 + 0.6",
    ),
    (
        "rudder-bearing-clearance",
        {"clearance": 6.1, "diameter": 500},
        "over the limit",
        "poor",
        f"{BEARING}: 5 + 1.0",
    ),
    ("rudder-indicator", {"error": 1, "position": "amidships"}, "true enough", "good", PRACTICE),
    (
        "azimuth-turning-time",
        {"time": 28, "angle": 65, "gear": "main"},
        "quick enough",
        "good",
        "MSC.1/Circ.1416, 2.3° a second (memory): 65 / 2.3 = 28.26 s",
    ),
    (
        "azimuth-turning-time",
        {"time": 61, "angle": 30, "gear": "auxiliary"},
        "slow",
        "poor",
        "MSC.1/Circ.1416, 0.5° a second (memory): 30 / 0.5 = 60 s",
    ),
    (
        "stern-bearing-clearance",
        {"clearance": 4.8, "diameter": 230},
        "within the limit",
        "good",
        STERN,
    ),
    (
        "stern-bearing-clearance",
        {"clearance": 4.9, "diameter": 230},
        "over the limit",
        "poor",
        STERN,
    ),
    ("stern-tube-wear", {"wear": 0.5}, "watch", "fair", PRACTICE),
    (
        "propeller-pitch",
        {"measured": 2.352, "nominal": 2.4, "tolerance_class": "I"},
        "pitch too low",
        "poor",
        f"{ISO_484}: 2.352 is -2.0 %, outside 0.75 %",
    ),
    (
        "propeller-pitch",
        {"measured": 2.352, "nominal": 2.4, "tolerance_class": "II"},
        "pitch too low",
        "poor",
        f"{ISO_484}: outside 1 %",
    ),
    (
        "propeller-pitch",
        {"measured": 2.352, "nominal": 2.4, "tolerance_class": "III"},
        "within the class",
        "good",
        f"{ISO_484}: inside 3 %",
    ),
    (
        "propeller-blade-thickness",
        {"measured": 58.5, "nominal": 60, "tolerance_class": "I"},
        "within the class",
        "good",
        f"{ISO_484}: -1.5 %, at least 1.5 mm",
    ),
    (
        "propeller-blade-thickness",
        {"measured": 195.9, "nominal": 200, "tolerance_class": "II"},
        "too thin",
        "poor",
        f"{ISO_484}: -2 % of 200 mm is 4 mm",
    ),
    (
        "propeller-edge-loss",
        {"loss": 18, "length": 600, "tolerance_class": "II"},
        "within the class",
        "good",
        f"{ISO_484}: 3 % of 600 mm is 18 mm",
    ),
    (
        "propeller-edge-loss",
        {"loss": 14, "length": 300, "tolerance_class": "II"},
        "beyond the class",
        "poor",
        f"{ISO_484}: 3 % is 9 mm, at least 13 mm",
    ),
    ("pitch-change-time", {"time": 30}, "quick enough", "good", PRACTICE),
    ("jacket-temperature", {"outlet": 90}, "normal", "good", PRACTICE),
    ("cooling-water-rise", {"outlet": 85, "inlet": 77}, "normal rise", "good", PRACTICE),
    ("bilge-main-bore", {"bore": 89.5, **HULL}, "wide enough", "good", f"{SOLAS_35}: 89.46 mm"),
    ("bilge-main-bore", {"bore": 80, **HULL}, "too narrow", "poor", f"{SOLAS_35}: 89.46 mm"),
    (
        "bilge-branch-bore",
        {"bore": 61, "space_length": 12, "breadth": 16, "depth": 7},
        "wide enough",
        "good",
        f"{SOLAS_35}: 60.9 mm",
    ),
    (
        "bilge-pump-capacity",
        {"capacity": 45.2, **HULL},
        "too small",
        "poor",
        f"{SOLAS_35}: 0.00566 x 89.46² = 45.29 m³/h",
    ),
    (
        "bilge-pump-count",
        {"pumps": 2, "ship": "cargo"},
        "enough",
        "good",
        "SOLAS II-1/35-1: two for a cargo ship (memory)",
    ),
    (
        "bilge-pump-count",
        {"pumps": 2, "ship": "passenger"},
        "too few",
        "poor",
        "SOLAS II-1/35-1: three for a passenger ship (memory)",
    ),
    (
        "oily-water-content",
        {"content": 15},
        "within the limit",
        "good",
        "MARPOL I, 15 ppm (seen in MEPC.107(49) pages)",
    ),
    ("oily-water-content", {"content": 16}, "over the limit", "failed", "the same"),
    (
        "oily-water-equipment",
        {"installed": "2004-12-31", "standard": "MEPC.60(33)"},
        "lawful, older standard",
        "fair",
        MEPC_107,
    ),
    (
        "oily-water-equipment",
        {"installed": "2005-01-01", "standard": "MEPC.60(33)"},
        "below the asked standard",
        "failed",
        MEPC_107,
    ),
    (
        "oily-water-equipment",
        {
            "installed": "2008-06-01",
            "standard": "MEPC.107(49)",
            "calibrated": "2021-11-24",
            "on": "2026-11-25",
        },
        "calibration overdue",
        "poor",
        MEPC_107,
    ),
    (
        "sewage-plant",
        {"installed": "2015-12-31", "standard": "MEPC.159(55)"},
        "lawful, older standard",
        "fair",
        SEWAGE,
    ),
    (
        "sewage-plant",
        {"installed": "2016-01-01", "standard": "MEPC.159(55)"},
        "below the asked standard",
        "failed",
        SEWAGE,
    ),
    (
        "incinerator-temperature",
        {"temperature": 850, "kind": "continuous"},
        "hot enough",
        "good",
        "MARPOL VI reg. 16: 850 °C (memory)",
    ),
    (
        "sludge-tank",
        {"volume": 1.6, "consumption": 10.23, "days": 30, "fuel": "distillate"},
        "large enough",
        "good",
        "MARPOL I reg. 12, K C D: 0.005 x 10.23 x 30 = 1.53 (memory)",
    ),
    (
        "ballast-treatment",
        {"treatment": "exchange only", "on": "2024-09-07"},
        "exchange still enough",
        "fair",
        BWM,
    ),
    (
        "ballast-treatment",
        {"treatment": "exchange only", "on": "2024-09-08"},
        "treatment missing",
        "poor",
        BWM,
    ),
    (
        "ballast-treatment",
        {
            "treatment": "approved system",
            "on": "2026-11-25",
            "installed": "2020-10-28",
            "approval": "G8 guidelines",
        },
        "approval too old",
        "failed",
        BWM,
    ),
    (
        "ballast-discharge",
        {"large": 9, "small": 9, "coli": 249, "enterococci": 99, "cholera": 0},
        "meets the standard",
        "good",
        D_2,
    ),
    (
        "ballast-discharge",
        {"large": 9, "small": 9, "coli": 250},
        "over the standard",
        "failed",
        D_2,
    ),
    (
        "nox-tier",
        {"built": "2008-05-31", "speed": 1800, "certificate": "I", "installed": "2008-05-31"},
        "meets the tier",
        "good",
        REG_13,
    ),
    (
        "nox-tier",
        {
            "built": "2008-05-31",
            "speed": 1800,
            "certificate": "I",
            "installed": "2026-03-01",
            "replacement": "identical",
        },
        "meets the tier",
        "good",
        REG_13,
    ),
    (
        "nox-tier",
        {
            "built": "2008-05-31",
            "speed": 1800,
            "certificate": "I",
            "installed": "2026-03-01",
            "replacement": "other or added",
        },
        "below the asked tier",
        "failed",
        REG_13,
    ),
    (
        "nox-tier",
        {
            "built": "2008-05-31",
            "speed": 1800,
            "certificate": "II",
            "installed": "2026-03-01",
            "replacement": "other or added",
            "area": "Baltic and North Sea",
        },
        "tier III or a waiver",
        "poor",
        REG_13,
    ),
    (
        "us-engine-tier",
        {"model_year": 2014, "power": 1500, "displacement": 4.3, "label": "3"},
        "meets the tier",
        "good",
        EPA,
    ),
    (
        "us-engine-tier",
        {"model_year": 2016, "power": 1500, "displacement": 4.3, "label": "3"},
        "below the asked tier",
        "failed",
        EPA,
    ),
    (
        "us-engine-tier",
        {"model_year": 2020, "power": 590, "displacement": 2.0, "label": "3"},
        "meets the tier",
        "good",
        f"{EPA}; under 600 kW stays at tier 3",
    ),
    (
        "fuel-sulphur",
        {"sulphur": 0.08, "area": "Baltic and North Sea", "on": "2026-11-25"},
        "within the limit",
        "good",
        REG_14,
    ),
    (
        "fuel-sulphur",
        {"sulphur": 0.12, "area": "Baltic and North Sea", "on": "2026-11-25"},
        "over the limit",
        "failed",
        REG_14,
    ),
    (
        "fuel-sulphur",
        {"sulphur": 0.12, "area": "outside", "on": "2026-11-25"},
        "within the limit",
        "good",
        REG_14,
    ),
    (
        "fuel-sulphur",
        {"sulphur": 0.52, "area": "outside", "on": "2026-11-25"},
        "over the limit",
        "failed",
        REG_14,
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), ROWS)
def test_a_criterion_judges_as_its_source_does(name, values, band, rating, source):
    """Each published case, or check number of our own, comes out in its band with its rating."""
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating), source


# length, breadth, depth -> main [mm], pump [m³/h], branch of a space of 12 m [mm]; own calculation
# on the quoted formulas
BILGES = [
    (64, 16, 7, 89.46, 45.29, 60.9),
    (80, 18, 8, 101.62, 58.45, 63.2),
    (55, 13.8, 6, 80.44, 36.62, 58.3),
]


@pytest.mark.parametrize("case", BILGES)
def test_bilge_sizes_of_three_hulls(case):
    """To half of the last printed digit."""
    length, breadth, depth, main, flow, branch = case
    assert main == pytest.approx(main_bore(length, breadth, depth), abs=0.005)
    assert flow == pytest.approx(pump_capacity(length, breadth, depth), abs=0.01)
    assert branch == pytest.approx(branch_bore(12, breadth, depth), abs=0.05)


def test_two_metres_a_second_are_the_factor_of_the_pump():
    """46 CFR 56.50-55 says 400 ft/min = 2.03 m/s (seen).

    Pi/4 x 2 x 3600 / 10^6 = 0.005655, which class rules round to 0.00566.
    """
    assert 2.03 == pytest.approx(400 * 0.3048 / 60, abs=0.005)
    assert 0.00566 == pytest.approx(math.pi / 4 * 2 * 3600 / 1e6, abs=0.00001)


def test_the_pitch_of_class_one_is_eighteen_millimetres_either_way():
    """2.400 m x 0.75 % (ISO 484-2:1981, mean pitch of the propeller, seen)."""
    assert (2.382, 2.418) == pitch_limits(2.4, "I")


@pytest.mark.parametrize(("service", "asked"), [(14, 7), (16, 8), (12, 7)])
def test_the_speed_of_the_auxiliary_trial(service, asked):
    """Half of the maximum ahead service speed or 7 kn, whichever is greater (SOLAS II-1/29.4,
    seen).
    """
    values = {"time": 50, "condition": "alongside", "service_speed": service}
    note = criterion("steering-auxiliary-time").apply(values).notes[0]
    assert f"The trial speed asked for is {asked} kn." == note


def test_six_millimetres_is_the_guide_at_half_a_metre():
    """5 + 0.002 x 500 = 6.0 mm, the figure that trade pages give for any pintle (both seen)."""
    judgement = criterion("rudder-bearing-clearance").apply({"clearance": 1, "diameter": 500})
    assert 6.0 == judgement.limit


def test_the_sludge_of_thirty_days():
    """0.005 x 10.23 t x 30 days = 1.53 m³ (own calculation)."""
    ends = band_ends("sludge-tank", consumption=10.23, days=30, fuel="distillate")
    assert [1.53] == pytest.approx(ends, abs=0.005)


def test_the_ballast_standard_is_the_printed_one():
    """Regulation D-2 in its five counts (seen)."""
    assert {"large": 10, "small": 10, "coli": 250, "enterococci": 100, "cholera": 1} == {
        name: figure for name, (figure, _) in STANDARD.items()
    }

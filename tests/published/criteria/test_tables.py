"""The tables behind the criteria, typed a second time from their sources, so that a slip in one
place shows.

Marks as in the criteria: seen, memory, common practice.
"""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.electrical import thermography
from inspector.criteria.electrical.polarization_index import MINIMUM_INDEX
from inspector.criteria.environment.nitrogen_oxides import nox_limit
from inspector.criteria.machinery.engine_vibration import (
    CLASSES,
    TOP_GRADE,
    engine_bands,
    severity_grade,
)
from inspector.criteria.positioning.dp_equipment import CIRC_645, CIRC_1580, COUNTS, ITEMS
from inspector.criteria.refrigeration import stores_and_gases as refrigeration
from inspector.criteria.refrigeration.stores_and_gases import GASES, LEAK_CHECKS
from inspector.criteria.safety.tank_atmosphere import BELOW, OXYGEN_BELOW, OXYGEN_LEAST
from inspector.criteria.tanks import coating
from tests.criteria.band_ends import band_ends

# group, support, ends of zones A, B, C in mm/s; ISO 20816-3:2022 and ISO 10816-3:2009 (memory)
VELOCITIES = [
    ("1", "rigid", 2.3, 4.5, 7.1),
    ("1", "flexible", 3.5, 7.1, 11.0),
    ("2", "rigid", 1.4, 2.8, 4.5),
    ("2", "flexible", 2.3, 4.5, 7.1),
]


@pytest.mark.parametrize(("group", "support", "a", "b", "c"), VELOCITIES)
def test_the_zones_of_rotating_machines(group, support, a, b, c):
    """Each end belongs to its zone and a hundredth more to the next."""
    machine_bands = criterion("machine-vibration").bands_for({"group": group, "support": support})
    found = [machine_bands.band_of(v).band[-1] for v in (a, a + 0.01, b, b + 0.01, c, c + 0.01)]
    assert list("ABBCCD") == found


# grade, its end in mm/s; ISO 10816-6:1995 (memory)
LADDER = [
    (1.1, 1.12),
    (1.8, 1.78),
    (2.8, 2.82),
    (4.5, 4.46),
    (7.1, 7.07),
    (11, 11.2),
    (18, 17.8),
    (28, 28.2),
    (45, 44.6),
    (71, 70.7),
    (112, 112),
]


@pytest.mark.parametrize(("grade", "end"), LADDER)
def test_the_ladder_of_engine_grades(grade, end):
    """Each end belongs to its grade; above the last is grade 180."""
    following = dict(zip([g for g, _ in LADDER], [*[g for g, _ in LADDER[1:]], 180], strict=True))
    assert (grade, following[grade]) == (severity_grade(end), severity_grade(end + 0.01))
    assert following[112] == TOP_GRADE


def test_the_zones_of_engines():
    """Highest grades of zones A/B and of C, class 1 to 7; ISO 10816-6:1995 (memory)."""
    expected = {
        "1": (4.5, 7.1),
        "2": (7.1, 11),
        "3": (11, 18),
        "4": (18, 28),
        "5": (28, 45),
        "6": (45, 71),
        "7": (71, 112),
    }
    ends = dict(LADDER)
    assert expected == CLASSES
    for name, (long_term, limited) in CLASSES.items():
        found = [engine_bands(name).band_of(ends[grade]).band for grade in (long_term, limited)]
        assert found == ["zone A or B", "zone C"]


def test_the_levels_of_temperature_rise():
    """ANSI/NETA ATS-2003, table 100.18.

    3, 15 K over similar parts and 10, 20, 40 K over the air (seen).
    """
    expected = {"over_similar": (3, 15, 15), "over_ambient": (10, 20, 40)}
    assert expected == thermography.LEVELS


def test_the_minima_of_the_polarization_index():
    """IEEE 43-2000, table 2: 1.5 for class A, 2.0 for B, F and H (seen)."""
    expected = {"A": 1.5, "B": 2.0, "F": 2.0, "H": 2.0}
    assert expected == MINIMUM_INDEX


def test_the_ends_of_fair_coating():
    """MSC.1/Circ.1330, 4.1: 20 % of the area, 10 % scale, 50 % of edges (seen)."""
    expected = {"breakdown": 20, "scale": 10, "edges": 50}
    assert expected == {name: bands.bands[1].upto for name, (_, bands) in coating.MEASURES.items()}


def test_the_figures_for_air():
    """MSC.581(110) in summaries (seen): 20.9, 0.5, 1 and 50 %.

    Oxygen below 22 % by 29 CFR 1915.12 (seen).
    """
    expected = {"carbon_dioxide": 0.5, "flammable": 1.0, "toxic": 50.0}
    assert expected == {name: limit for name, (_, limit, _) in BELOW.items()}
    assert (OXYGEN_LEAST, OXYGEN_BELOW) == (20.9, 22.0)


# gas: kind, GWP of the fourth assessment report, safety class; R-404A, R-507A and R-422D seen, the
# others memory
GAS_TABLE = """
R-12 CFC 10900 A1; R-22 HCFC 1810 A1; R-502 CFC 4657 A1; R-134a HFC 1430 A1; R-404A HFC 3922 A1;
R-507A HFC 3985 A1; R-407C HFC 1774 A1; R-407F HFC 1825 A1; R-410A HFC 2088 A1; R-422D HFC 2729
A1; R-448A HFC 1387 A1; R-449A HFC 1397 A1; R-452A HFC 2140 A1; R-513A HFC 631 A1; R-32 HFC 675
A2L; R-1234yf HFO 4 A2L; R-290 natural 3 A3; R-717 natural 0 B2L; R-744 natural 1 A1
"""


def test_the_refrigerants():
    """Nineteen gases with kind, warming potential and safety class."""
    rows = [row.split() for row in GAS_TABLE.replace("\n", " ").split(";")]
    expected = {name: (kind, int(gwp), safety) for name, kind, gwp, safety in rows}
    assert expected == {name: (gas.kind, gas.gwp, gas.safety) for name, gas in GASES.items()}


def test_the_thresholds_of_refrigerants():
    """Virgin gas from GWP 2500 (seen), step at 750 (memory).

    Leak checks by kg or t as the regulations print them.
    """
    by_kg = ("kg", ((300, 3), (30, 6), (3, 12)))
    expected = {
        "CFC": by_kg,
        "HCFC": by_kg,
        "HFC": ("t", ((500, 3), (50, 6), (5, 12))),
        "HFO": ("kg", ((100, 3), (10, 6), (1, 12))),
    }
    assert expected == LEAK_CHECKS
    assert (refrigeration.SERVICE_BAN, refrigeration.STEP) == (2500, 750)


@pytest.mark.parametrize(
    ("tier", "slow", "fast"), [("I", 17.0, 9.8), ("II", 14.4, 7.7), ("III", 3.4, 2.0)]
)
def test_the_flat_ends_of_the_nox_curves(tier, slow, fast):
    """MARPOL VI reg. 13: below 130 and from 2000 r/min (seen.

    Tier III from 2000: 2.0 memory, one copy prints 1.96).
    """
    assert (slow, fast) == (nox_limit(tier, 100), nox_limit(tier, 2400))


# computers, references, heading, motion, wind, ups; class practice (memory), three heading sensors
# in 2 where control depends on them (memory), a supply for each computer and three references in 2
# and 3 (seen)
PRACTICE = [
    (CIRC_645, 1, "1 1 1 1 1 0"),
    (CIRC_645, 2, "2 3 3 2 2 2"),
    (CIRC_645, 3, "3 3 3 3 3 3"),
    (CIRC_1580, 1, "1 2 1 1 1 1"),
    (CIRC_1580, 2, "2 3 3 3 3 2"),
    (CIRC_1580, 3, "3 3 3 3 3 3"),
]


@pytest.mark.parametrize(("source", "dp_class", "counts"), PRACTICE, ids=str)
def test_the_counts_of_positioning_equipment(source, dp_class, counts):
    """Two texts, three classes, six items."""
    assert tuple(map(int, counts.split())) == COUNTS[source][dp_class]
    assert list(ITEMS) == ["computers", "references", "heading", "motion", "wind", "ups"]


def test_the_limits_of_water_in_oil():
    """Gear and hub oil 500 and 1000 ppm, hydraulic 200 and 500, engine 2000 and 5000, stern tube
    5000 and 10 000 (common practice).
    """
    gear = (0.05, 0.10)
    expected = {
        "thruster": gear,
        "propeller_hub": gear,
        "gearbox": gear,
        "hydraulic": (0.02, 0.05),
        "engine": (0.2, 0.5),
        "stern_tube": (0.5, 1.0),
    }
    limits = criterion("oil-water").limit_set.values
    found = {name: (limits[f"{name}_watch"], limits[f"{name}_act"]) for name in expected}
    assert (expected, 2 * len(expected)) == (found, len(limits))


def test_the_limits_of_supply():
    """8 % distortion (seen), 100 Ω/V, 100 and 1000 kΩ to earth (common practice)."""
    assert [8.0] == band_ends("harmonic-distortion")
    assert {"alarm": 100.0, "locate": 100.0, "sound": 1000.0} == criterion(
        "earth-fault"
    ).limit_set.values

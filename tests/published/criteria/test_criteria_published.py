"""Every criterion against the outside world.

Published figures first, check numbers of our own where none exist.

Each row carries its source. "Published" means that the answer is in the source; "own
calculation" that the inputs' rule is the source's and the arithmetic ours; "memory" and "common
practice" that the rule itself was not read.
"""

import math

import pytest

from inspector.checklists.registry import CRITERIA, criterion
from inspector.criteria.hull.thickness import MEMBERS

A, B, C = MEMBERS
STRICT = "strict end of two societies' tables of diminution (seen): plates 20 %"
TABLE = (
    "Table of diminution of steel, general hull, one society: its formula, agreeing "
    "with what is legible in a scan"
)
OWN = "own calculation"

CIRC_1330 = "MSC.1/Circ.1330 (2009), 4.1, bands (seen)"
PI_2000 = "IEEE 43-2000, table 2, minima by class, published in an instrument manual's appendix"
NETA = "ANSI/NETA ATS-2003, table 100.18 (seen)"
ISO_3 = f"ISO 20816-3:2022 zone boundaries (memory), {OWN}"
ISO_6 = f"ISO 10816-6:1995 (memory), {OWN}"
MSC_581 = "MSC.581(110) as circulars summarise it (seen)"
UR_E5 = f"IACS UR E5 shares (memory), {OWN}"
UR_E24 = f"IACS UR E24 Rev.1, 8 % (seen), {OWN}"
REG_12 = "MARPOL VI reg. 12 dates (seen)"
REG_13 = "MARPOL VI reg. 13 dates (seen)"
PRACTICE = "common practice, own reading"
RANDOM = {
    "insulation": "thermosetting",
    "winding": "random-wound, or form-wound under 1 kV",
    "voltage": 480,
}
PLASTIC = {**RANDOM, "insulation": "thermoplastic"}
DP_2 = {
    "built": "2008-05-31",
    "class_claimed": "2",
    "computers": 2,
    "heading": 3,
    "motion": 2,
    "wind": 2,
    "ups": 2,
}


def coating(breakdown, scale, edges):
    return {"breakdown": breakdown, "scale": scale, "edges": edges}


def winding(resistance, temperature, kind):
    return {"resistance": resistance, "temperature": temperature, **kind}


def index(ten, one, thermal_class):
    return {"ten_minutes": ten, "one_minute": one, "thermal_class": thermal_class}


def rise(similar=None, ambient=None, load=100):
    return {"over_similar": similar, "over_ambient": ambient, "load": load}


def machine(velocity, group, support):
    return {"velocity": velocity, "group": group, "support": support}


def air(oxygen, carbon_dioxide, flammable, toxic):
    return {
        "oxygen": oxygen,
        "carbon_dioxide": carbon_dioxide,
        "flammable": flammable,
        "toxic": toxic,
    }


def distortion(fundamental, *harmonics):
    return {"distortion": 100 * math.sqrt(sum(h * h for h in harmonics)) / fundamental}


# criterion, values, expected band, expected rating, source
JUDGEMENTS = [
    (
        "plate-thickness",
        {"as_built": 10, "measured": 8.49, "member": A},
        "substantial corrosion",
        "poor",
        STRICT,
    ),
    (
        "plate-thickness",
        {"as_built": 10, "measured": 7.99, "member": A},
        "below renewal thickness",
        "failed",
        STRICT,
    ),
    (
        "plate-thickness",
        {"as_built": 10, "measured": 8.0, "member": A},
        "substantial corrosion",
        "poor",
        STRICT + "; the printed value is the limit itself",
    ),
    (
        "plate-thickness",
        {"as_built": 9, "measured": 7.30, "member": B},
        "substantial corrosion",
        "poor",
        TABLE,
    ),
    (
        "plate-remaining-life",
        {
            "as_built": 12,
            "built_year": 2010,
            "measured": 10.6,
            "measured_year": 2026,
            "member": A,
            "previous": 10.9,
            "previous_year": 2021,
            "horizon": 10,
        },
        "covers the horizon",
        "fair",
        f"rates of API 510/570/653, renewal at 9.60 mm by {STRICT}, {OWN}: 1.0 mm at 0.0875",
    ),
    ("coating-condition", coating(2, 0, 15), "good", "good", CIRC_1330),
    ("coating-condition", coating(2, 0, 25), "fair", "fair", CIRC_1330),
    ("coating-condition", coating(12, 4, 10), "fair", "fair", CIRC_1330),
    ("coating-condition", coating(12, 10, 0), "poor", "poor", CIRC_1330),
    ("coating-condition", coating(21, 0, 0), "poor", "poor", CIRC_1330),
    ("coating-condition", coating(2.9, 0, 51), "poor", "poor", CIRC_1330),
    (
        "insulation-resistance",
        winding(8, 30, PLASTIC),
        "below the minimum",
        "poor",
        f"IEEE 43-2013 (memory), {OWN}: 4.00",
    ),
    (
        "insulation-resistance",
        winding(8, 30, RANDOM),
        "above the minimum",
        "fair",
        f"IEEE 43-2013 (memory), {OWN}: 7.02",
    ),
    (
        "insulation-resistance",
        winding(20, 20, PLASTIC),
        "above the minimum",
        "fair",
        f"the same, {OWN}: 5.00, equal passes",
    ),
    (
        "insulation-resistance",
        winding(180, 20, RANDOM),
        "well above the minimum",
        "good",
        f"the same, {OWN}: 137.2",
    ),
    (
        "insulation-resistance",
        winding(60, 60, RANDOM),
        "well above the minimum",
        "good",
        f"the same, {OWN}: 135.1",
    ),
    ("polarization-index", index(540, 260, "F"), "at or above the minimum", "good", PI_2000),
    ("polarization-index", index(480, 200, "F"), "at or above the minimum", "good", PI_2000),
    ("polarization-index", index(900, 700, "F"), "below the minimum", "poor", PI_2000),
    ("polarization-index", index(96, 60, "A"), "at or above the minimum", "good", PI_2000),
    ("polarization-index", index(96, 60, "F"), "below the minimum", "poor", PI_2000),
    (
        "polarization-index",
        index(7000, 6000, "F"),
        "not assessed",
        None,
        "IEEE 43, above 5000 MΩ (memory)",
    ),
    ("thermographic-rise", rise(1), "possible defect", "fair", NETA),
    ("thermographic-rise", rise(3), "possible defect", "fair", NETA),
    ("thermographic-rise", rise(4), "likely defect", "poor", NETA),
    ("thermographic-rise", rise(15), "likely defect", "poor", NETA),
    ("thermographic-rise", rise(16), "serious defect", "failed", NETA),
    ("thermographic-rise", rise(None, 10), "possible defect", "fair", NETA),
    ("thermographic-rise", rise(None, 11), "likely defect", "poor", NETA),
    ("thermographic-rise", rise(None, 21), "watch until repaired", "poor", NETA),
    ("thermographic-rise", rise(None, 40), "watch until repaired", "poor", NETA),
    ("thermographic-rise", rise(None, 41), "serious defect", "failed", NETA),
    (
        "thermographic-rise",
        rise(3.5),
        "likely defect",
        "poor",
        f"{NETA}; a gap in print, {OWN} on the cautious side",
    ),
    (
        "thermographic-rise",
        rise(None, 10.4),
        "likely defect",
        "poor",
        f"{NETA}; a gap in print, {OWN}",
    ),
    (
        "thermographic-rise",
        rise(62 - 41, 62 - 35),
        "serious defect",
        "failed",
        f"{NETA}, phases 41/43/62 °C, air 35 °C, {OWN}",
    ),
    (
        "thermographic-rise",
        rise(12, None, 39),
        "not conclusive",
        None,
        "at least 40 % load: common practice",
    ),
    ("machine-vibration", machine(3.0, "2", "rigid"), "zone C", "poor", ISO_3),
    ("machine-vibration", machine(4.5, "2", "rigid"), "zone C", "poor", ISO_3),
    ("machine-vibration", machine(4.6, "2", "rigid"), "zone D", "poor", ISO_3),
    ("machine-vibration", machine(6.4, "1", "flexible"), "zone B", "good", ISO_3),
    ("machine-vibration", machine(7.2, "1", "flexible"), "zone C", "poor", ISO_3),
    ("machine-vibration", machine(2.31, "1", "rigid"), "zone B", "good", ISO_3),
    ("machine-vibration", machine(7.11, "1", "rigid"), "zone D", "poor", ISO_3),
    ("engine-vibration", {"velocity": 30, "machine_class": "5"}, "zone C", "poor", ISO_6),
    ("engine-vibration", {"velocity": 27, "machine_class": "5"}, "zone A or B", "good", ISO_6),
    ("engine-vibration", {"velocity": 46, "machine_class": "5"}, "zone D", "poor", ISO_6),
    ("engine-vibration", {"velocity": 11.2, "machine_class": "3"}, "zone A or B", "good", ISO_6),
    ("engine-vibration", {"velocity": 11.3, "machine_class": "3"}, "zone C", "poor", ISO_6),
    (
        "cold-store-temperature",
        {"temperature": -18, "store": "frozen"},
        "cold enough",
        "good",
        "Codex CAC/RCP 8-1976 (memory)",
    ),
    (
        "cold-store-temperature",
        {"temperature": 5, "store": "chilled"},
        "cold enough",
        "good",
        "US FDA Food Code 3-501.16, 41 °F = 5 °C (seen)",
    ),
    (
        "cold-store-temperature",
        {"temperature": 5.1, "store": "chilled"},
        "too warm",
        "poor",
        "US FDA Food Code 3-501.16 (seen)",
    ),
    (
        "refrigerant-status",
        {"refrigerant": "R-22", "installed": "2008-05-31"},
        "may stay, no future",
        "poor",
        REG_12,
    ),
    (
        "refrigerant-status",
        {"refrigerant": "R-22", "installed": "2020-01-01"},
        "banned when installed",
        "failed",
        REG_12,
    ),
    (
        "refrigerant-status",
        {"refrigerant": "R-12", "installed": "2005-05-19"},
        "banned when installed",
        "failed",
        REG_12,
    ),
    (
        "refrigerant-status",
        {"refrigerant": "R-404A", "installed": "2012-01-01"},
        "may stay, gas restricted",
        "poor",
        "(EU) 2024/573, virgin gas of GWP 2500 (seen in trade summaries)",
    ),
    ("entry-atmosphere", air(20.9, 0.04, 0, 0), "inside the recommendation", None, MSC_581),
    (
        "entry-atmosphere",
        air(20.8, 0.04, 0, 0),
        "outside the recommendation",
        None,
        f"{MSC_581}; OSHA would accept",
    ),
    ("entry-atmosphere", air(20.9, 0.50, 0, 0), "outside the recommendation", None, MSC_581),
    ("entry-atmosphere", air(20.9, 0.04, 1.0, 0), "outside the recommendation", None, MSC_581),
    ("entry-atmosphere", air(20.9, 0.04, 10, 0), "outside the recommendation", None, MSC_581),
    (
        "entry-atmosphere",
        air(22.0, 0.04, 0, 0),
        "outside the recommendation",
        None,
        "29 CFR 1915.12, below 22.0 (seen)",
    ),
    (
        "entry-atmosphere",
        air(20.9, 0.04, 0, 100 * 10 / 20),
        "outside the recommendation",
        None,
        f"{MSC_581}, CO 10 ppm of 20 ppm is 50 %, strict below",
    ),
    ("entry-atmosphere", air(20.9, None, 0, 0), "not determined", None, MSC_581),
    (
        "nox-tier",
        {"built": "2008-05-31", "speed": 1800, "certificate": "I"},
        "meets the tier",
        "good",
        REG_13,
    ),
    (
        "nox-tier",
        {"built": "2012-05-31", "speed": 1800, "certificate": "I"},
        "below the asked tier",
        "failed",
        REG_13,
    ),
    (
        "nox-tier",
        {"built": "2016-01-01", "speed": 1800, "certificate": "II"},
        "meets the tier, areas closed",
        "fair",
        REG_13,
    ),
    (
        "dp-equipment",
        {**DP_2, "references": 3},
        "equipment consistent with class 2",
        "good",
        (
            "MSC/Circ.645: three references at once for classes 2 and 3 (seen); other "
            "counts class practice (memory)"
        ),
    ),
    ("dp-equipment", {**DP_2, "references": 2}, "equipment short of class 2", "poor", "the same"),
    (
        "imo-number",
        {"number": "IMO 0123450"},
        "check digit fits",
        None,
        f"A.1117(30) by reference pages, {OWN}, invented",
    ),
    (
        "imo-number",
        {"number": "0132450"},
        "check digit does not fit",
        "poor",
        f"the same, two digits swapped, {OWN}",
    ),
    (
        "imo-number",
        {"number": "0000014"},
        "check digit does not fit",
        "poor",
        f"fits as a company's number only, {OWN}",
    ),
    ("oil-water", {"water": 0.2, "service": "hydraulic"}, "act", "poor", PRACTICE),
    ("oil-water", {"water": 0.05, "service": "thruster"}, "dry", "good", PRACTICE),
    ("oil-water", {"water": 0.051, "service": "propeller hub"}, "watch", "fair", PRACTICE),
    (
        "supply-voltage",
        {"voltage": 508.8, "nominal": 480},
        "inside the permanent band",
        "good",
        UR_E5,
    ),
    (
        "supply-voltage",
        {"voltage": 509.0, "nominal": 480},
        "outside the permanent band",
        "poor",
        UR_E5,
    ),
    (
        "supply-frequency",
        {"frequency": 56.9, "nominal": 60},
        "outside the permanent band",
        "poor",
        UR_E5,
    ),
    (
        "harmonic-distortion",
        distortion(440, 18, 12, 9, 7),
        "within the limit",
        "good",
        f"{UR_E24}: 5.558 %",
    ),
    (
        "harmonic-distortion",
        distortion(440, 30, 18, 9, 6),
        "over the limit",
        "poor",
        f"{UR_E24}: 8.323 %",
    ),
    (
        "harmonic-distortion",
        distortion(100, 4, 3, 5, 3),
        "within the limit",
        "good",
        f"{UR_E24}: 7.68 %",
    ),
    (
        "earth-fault",
        {"resistance": 47.9, "voltage": 480},
        "at the alarm",
        "poor",
        f"{PRACTICE}: 100 Ω/V is 48 kΩ",
    ),
    ("earth-fault", {"resistance": 1001, "voltage": 480}, "sound", "good", PRACTICE),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), JUDGEMENTS)
def test_a_criterion_judges_as_its_source_does(name, values, band, rating, source):
    """Each published case, or check number of our own, comes out in its band with its rating."""
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating), source


def test_every_row_has_a_criterion_and_a_source():
    """A row of a criterion that is gone fails here, and so does a row without its source.

    The walk over the registry asks for the rest.
    """
    assert {row[0] for row in JUDGEMENTS} <= set(CRITERIA)
    assert all(len(row[-1]) > 5 for row in JUDGEMENTS)

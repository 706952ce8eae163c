"""Hull, coating, entry, deck, stability, hazards and landing area against the outside world.

Each row carries its source. "Published" means that the answer is in the source; "by hand" that
the rule is the source's and the arithmetic is written out here; "memory" and "common practice" that
the rule itself was not read.
"""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.hull.corrosion import remaining_life
from inspector.criteria.hull.draughts import deflection, mean_of_means
from inspector.criteria.hull.gauging import least_points
from inspector.criteria.hull.lightship_and_roll import ROLL_FACTORS, rolling_gm
from inspector.criteria.tanks.coating import BANDS
from inspector.values.formatting import show
from tests.criteria.band_ends import band_ends

KEY = (
    "Answer key to inspector calculation exercises on API 510/570/653, published answer to exercise"
)
PITS = "IACS UR Z10.5 Rev.13, 8.2, and ESP Code A.1049(27) annex A part B 8.2 (seen), by hand"
EDGES = "ESP Code A.1049(27) annex A part B, 8.3 and 8.4 (memory), by hand"
CSR = "IACS Common Structural Rules, Part 1, chapter 13, section 2"
ESP = "ESP Code A.1049(27), interpretation table on thickness measurement (seen)"
D610 = "ASTM D610-08 (2012), table 1 (seen)"
CIRC_1330 = "MSC.1/Circ.1330 (2009), 4.1 (seen)"
CIRC_1399 = "MSC.1/Circ.1399, 4.1 (seen)"
OSHA = "29 CFR 1915.12 (seen)"
SOLAS_ASBESTOS = "SOLAS II-1/3-5, 1 July 2002 and 1 January 2011 (seen)"
REG_12 = "MARPOL Annex VI reg. 12, 19 May 2005 and 1 January 2020 (seen)"
A_749 = "A.749(18) annex 3, rolling test (seen), by hand"
PRACTICE = "common practice, by hand"
CAP = "CAP 437, 8th edition (memory), by hand"
MODU = "MODU Code 2009, 13.3 (seen)"
V_22 = "SOLAS V/22.1.1, two ship lengths or 500 m, the less (seen), by hand"


def groove_limit(as_built, renewal):
    groove = {"width": 20, "height_share": 10}
    return band_ends("groove-corrosion", as_built=as_built, renewal=renewal, **groove)[0]


def rust_grade(rusted):
    return int(criterion("rust-grade").apply({"rusted": rusted}).band.removeprefix("rust grade "))


def depth_limit(as_built):
    return criterion("pit-depth").apply({"depth": 0, "as_built": as_built}).limit


def pitted_limit(as_built, renewal):
    given = {"least": 9, "as_built": as_built, "renewal": renewal, "intensity": 10}
    return criterion("pitted-plate").apply(given).limit


def load_limit(area, rated):
    return criterion("deck-load").apply({"mass": 1, "area": area, "rated": rated}).limit


def emergency_load(mass):
    return band_ends("landing-load", mass=mass)[0]


# function, arguments, expected, tolerance (half of the last digit), source
FUNCTIONS = [
    (depth_limit, (12,), 3.6, 0, f"{PITS}: 12 x (100 - 70) / 100"),
    (pitted_limit, (14, 11), 9.8, 0, f"{PITS}: 0.7 x 14 = 9.8 and 11 - 1 = 10.0, the lesser"),
    (groove_limit, (12, 9.5), 9.0, 0, f"{EDGES}: 0.75 x 12 = 9.0 and 9.5 - 0.5 = 9.0, not under 6"),
    (least_points, (30, "selected plates"), 10, 0, f"{ESP}: 30 / 3"),
    (least_points, (30, "all plates"), 60, 0, f"{ESP}: 2 x 30"),
    *[
        (rust_grade, (share,), grade, 0, D610)
        for share, grade in (
            (0.01, 10),
            (0.0101, 9),
            (0.03, 9),
            (0.1, 8),
            (0.3, 7),
            (1.0, 6),
            (2.9, 5),
            (3, 5),
            (10.0, 4),
            (16, 3),
            (16.1, 2),
            (33, 2),
            (50, 1),
            (50.1, 0),
        )
    ],
    (
        rolling_gm,
        (14, 9.5, ROLL_FACTORS["loaded, liquids 20 % of load"]),
        1.321,
        0.0005,
        f"{A_749}: (0.78 x 14 / 9.5)²",
    ),
    (
        rolling_gm,
        (14, 9.5, ROLL_FACTORS["light or ballast"]),
        1.682,
        0.0005,
        f"{A_749}: (0.88 x 14 / 9.5)²",
    ),
    (load_limit, (468, 5), 2340, 0, f"{PRACTICE}: 36 x 13 = 468 m², x 5 t/m²"),
    (emergency_load, (3.2,), 102.0, 0.05, f"{CAP}: 3.2 x 9.80665 x 2.5 = 78.5 kN, x 1.3"),
    (emergency_load, (6.4,), 204.0, 0.05, f"{CAP}: 6.4 x 9.80665 x 2.5 = 156.9 kN, x 1.3"),
    (mean_of_means, (4.1, 4.6, 4.9), 4.575, 0, f"{PRACTICE}: (4.1 + 27.6 + 4.9) / 8"),
    (deflection, (4.1, 4.47, 4.9), -30, 0, f"{PRACTICE}: 4.47 - (4.1 + 4.9) / 2 = -0.03 m"),
]


@pytest.mark.parametrize(("function", "arguments", "expected", "tolerance", "source"), FUNCTIONS)
def test_a_function_gives_the_figure_of_its_source(
    function, arguments, expected, tolerance, source
):
    """Each figure comes out as printed, to half of its last digit."""
    assert expected == pytest.approx(function(*arguments), abs=tolerance + 1e-12), source


def air(oxygen, carbon_dioxide, flammable, toxic):
    """Readings of one space."""
    return {
        "oxygen": oxygen,
        "carbon_dioxide": carbon_dioxide,
        "flammable": flammable,
        "toxic": toxic,
    }


def dated(built, papers="no report seen"):
    """A vessel by the day its keel was laid."""
    return {"papers": papers, "built": built}


def hull_marks(midship):
    """Six draught marks, 4.1 m forward and 4.9 m aft."""
    return {
        "forward_port": 4.1,
        "forward_starboard": 4.1,
        "midship_port": midship,
        "midship_starboard": midship,
        "aft_port": 4.9,
        "aft_starboard": 4.9,
    }


INSIDE, OUTSIDE = "inside the shipyard rule", "outside the shipyard rule"
YES = dict.fromkeys(
    (
        "oxygen",
        "flammable",
        "hydrogen_sulphide",
        "carbon_monoxide",
        "remote",
        "carbon_dioxide",
    ),
    "yes",
)
IN_ORDER = {"first": "oxygen", "second": "flammable gas", "third": "toxic gas"}
PAPERS = dict.fromkeys(("certificate", "structure", "friction_report"), "seen")

# criterion, values, band, rating, source
JUDGEMENTS = [
    (
        "corrosion-rate",
        {
            "measured": 8.3,
            "measured_year": 2026,
            "previous": 8.9,
            "previous_year": 2021,
            "as_built": 10,
            "built_year": 2008,
        },
        "faster than since new",
        None,
        "API 510/570/653, the greater rate (seen), by hand: 0.6 / 5 = 0.12 over 1.7 / 18 = 0.0944",
    ),
    (
        "corrosion-rate",
        {
            "measured": 10.6,
            "measured_year": 2026,
            "previous": 10.9,
            "previous_year": 2021,
            "as_built": 12,
            "built_year": 2010,
        },
        "governing rate",
        None,
        "the same, by hand: 1.4 / 16 = 0.0875 over 0.3 / 5 = 0.06",
    ),
    (
        "pit-depth",
        {"depth": 4, "as_built": 12, "place": "within 30 mm of a side frame"},
        "deeper than the limit",
        "failed",
        f"{PITS}: 4 / 12 = 33.3 % deep leaves 66.7 %, not more than 70 %",
    ),
    (
        "pit-depth",
        {"depth": 3.5, "as_built": 12},
        "inside the limit",
        "fair",
        f"{PITS}: 8.5 / 12 = 70.8 % left",
    ),
    ("pitting-intensity", {"intensity": 16}, "many pits", "poor", f"{PITS}: above 15 %"),
    (
        "pitting-intensity",
        {"intensity": 20},
        "pitted all over",
        "poor",
        f"{PITS}: the allowance for pits ends at 20 %",
    ),
    (
        "pitted-plate",
        {"least": 9.9, "as_built": 14, "renewal": 11, "intensity": 10},
        "at or above the limit",
        "fair",
        f"{PITS}: 9.9 over 9.8",
    ),
    (
        "pitted-plate",
        {"least": 9.7, "as_built": 14, "renewal": 11, "intensity": 10},
        "below the limit",
        "failed",
        f"{PITS}: 9.7 under 9.8",
    ),
    (
        "edge-corrosion",
        {"least": 9.7, "as_built": 14, "renewal": 11, "band_share": 20},
        "below the limit",
        "poor",
        f"{EDGES}: 0.7 x 14 = 9.8",
    ),
    (
        "groove-corrosion",
        {"least": 8.9, "as_built": 12, "renewal": 9.5, "width": 25, "height_share": 10},
        "below the limit",
        "poor",
        f"{EDGES}: 9.0",
    ),
    (
        "girder-zone",
        {"gauged": 0.3750, "as_built": 0.4120, "zone": "deck or bottom"},
        "enough area",
        "good",
        f"{CSR} (seen), by hand: 91.0 % of at least 90",
    ),
    (
        "girder-zone",
        {"gauged": 0.3690, "as_built": 0.4120, "zone": "deck or bottom"},
        "below the least area",
        "failed",
        f"{CSR} (seen), by hand: 89.6 %",
    ),
    (
        "girder-zone",
        {"gauged": 0.84, "as_built": 1, "zone": "neutral axis"},
        "below the least area",
        "poor",
        f"{CSR}, 85 % (memory)",
    ),
    (
        "gauging-points",
        {"points": 9, "plates": 30, "extent": "selected plates"},
        "too few points",
        "poor",
        f"{ESP}: ten are asked",
    ),
    (
        "gauging-points",
        {"points": 60, "plates": 30, "extent": "all plates"},
        "enough points",
        "good",
        ESP,
    ),
    *[
        (
            "coating-condition",
            {"breakdown": area, "scale": scale, "edges": edges},
            word,
            word,
            CIRC_1330,
        )
        for area, scale, edges, word in (
            (2, 0, 15, "good"),
            (2, 0, 25, "fair"),
            (12, 4, 10, "fair"),
            (12, 10, 0, "poor"),
            (21, 0, 0, "poor"),
            (2.9, 0, 51, "poor"),
        )
    ],
    (
        "oil-tank-coating",
        {"spots": 4.9, "total": 0, "edges": 19.9},
        "good",
        "good",
        f"{CIRC_1399}: spots under 5 %, edges under 20 %",
    ),
    (
        "oil-tank-coating",
        {"spots": 12, "total": 9.9, "edges": 50},
        "fair",
        "fair",
        f"{CIRC_1399}: spots under 20 %, total failure under 10 %",
    ),
    ("oil-tank-coating", {"spots": 12, "total": 10, "edges": 0}, "poor", "poor", CIRC_1399),
    (
        "dry-film",
        {"least": 288, "below": 10},
        "meets the rule",
        "good",
        "PSPC MSC.215(82), 90/10 rule (memory), by hand: 0.9 x 320 = 288",
    ),
    ("dry-film", {"least": 287, "below": 0}, "short of the rule", "poor", "the same"),
    ("rust-grade", {"rusted": 16.1}, "rust grade 2", None, D610),
    (
        "bare-steel",
        {"grade": "D"},
        "rust grade D",
        "poor",
        "ISO 8501-1:2007, general pitting visible (seen); the rating is our own",
    ),
    ("shipyard-atmosphere", air(20.9, 0.04, 0, 0), INSIDE, None, OSHA),
    ("shipyard-atmosphere", air(20.8, 0.04, 0, 0), INSIDE, None, OSHA),
    (
        "shipyard-atmosphere",
        air(20.9, 0.50, 0, 0),
        OUTSIDE,
        None,
        f"{OSHA}: 5000 ppm is the permissible limit itself, and the text says below",
    ),
    ("shipyard-atmosphere", air(20.9, 0.04, 1.0, 0), INSIDE, None, OSHA),
    ("shipyard-atmosphere", air(20.9, 0.04, 10, 0), OUTSIDE, None, OSHA),
    ("shipyard-atmosphere", air(22.0, 0.04, 0, 0), OUTSIDE, None, OSHA),
    (
        "shipyard-atmosphere",
        air(20.9, 0.04, 0, 100 * 10 / 50),
        INSIDE,
        None,
        f"{OSHA}: CO 10 of 50 ppm",
    ),
    ("shipyard-atmosphere", air(20.9, None, 0, 0), "not determined", None, OSHA),
    (
        "test-order",
        IN_ORDER,
        "in the order of the rule",
        None,
        f"{OSHA}: oxygen, flammability, toxicity",
    ),
    (
        "test-order",
        {**IN_ORDER, "first": "toxic gas", "third": "oxygen"},
        "out of order",
        None,
        OSHA,
    ),
    ("reading-age", {"minutes": 16}, "test again", None, f"{PRACTICE}: 15 min"),
    (
        "entry-instrument",
        YES,
        "as the rule asks",
        "good",
        "SOLAS XI-1/7 and MSC.1/Circ.1485 (seen)",
    ),
    ("entry-instrument", {**YES, "carbon_monoxide": "no"}, "short of the rule", "poor", "the same"),
    (
        "meter-calibration",
        {"used": "2026-11-25", "interval": 180},
        "calibration unknown",
        "failed",
        "A.1050(27), 7, properly calibrated (seen)",
    ),
    (
        "deck-load",
        {"mass": 2341, "area": 468, "rated": 5},
        "over the declared load",
        "poor",
        f"{PRACTICE}: 468 x 5 = 2340 t",
    ),
    (
        "deck-pitch",
        {"claimed": 45.7, "counted": 15, "pitch": 3.048},
        "agrees",
        "good",
        f"{PRACTICE}: 15 pitches of 10 ft are 150 ft, 45.72 m",
    ),
    (
        "deck-area",
        {"claimed": 453.5, "length": 36.0, "breadth": 13.0, "deducted": 14.5},
        "agrees",
        "good",
        f"{PRACTICE}: 468 - 14.5 = 453.5 m²",
    ),
    (
        "hog-sag",
        {**hull_marks(4.5), "greatest": 4.49},
        "over the greatest",
        "poor",
        "International Convention on Load Lines 1966, art. 12 (memory), by hand: 4.5 m",
    ),
    ("hog-sag", hull_marks(4.47), "hogs", None, f"{PRACTICE}: 30 mm"),
    ("hog-sag", hull_marks(4.53), "sags", None, f"{PRACTICE}: 30 mm"),
    (
        "stern-freeboard",
        {"freeboard": 0.32, "length": 65},
        "low stern",
        "poor",
        "IS Code 2008 part B 2.4 (memory), by hand: 0.005 x 65 = 0.325 m",
    ),
    (
        "lightship-change",
        {"booklet": 2100, "found": 2160},
        "new inclining due",
        "poor",
        "SOLAS II-1/5.5 (seen), by hand: 60 / 2100 = 2.857 % over 2",
    ),
    (
        "lightship-change",
        {"booklet": 2100, "found": 2100, "lcg_shift": 0.5, "length": 65},
        "booklet to be amended",
        "fair",
        "SOLAS II-1/5.4 notes (seen), by hand: 0.5 / 65 = 0.769 %, over 0.5 and under 1",
    ),
    (
        "rolling-test",
        {"period": 9.5, "breadth": 14, "length": 60, "condition": "light or ballast"},
        "above the least",
        None,
        f"{A_749}: 1.682 m",
    ),
    ("asbestos", dated("1976-05-31"), "presumed until sampled", "poor", SOLAS_ASBESTOS),
    ("asbestos", dated("1998-05-31"), "presumed until sampled", "poor", SOLAS_ASBESTOS),
    ("asbestos", dated("2002-07-01"), "possible, sample", "fair", SOLAS_ASBESTOS),
    ("asbestos", dated("2007-05-31"), "possible, sample", "fair", SOLAS_ASBESTOS),
    ("asbestos", dated("2012-05-31"), "prohibited when built, sample", "fair", SOLAS_ASBESTOS),
    ("asbestos", dated(None), "survey required", "poor", "unknown date: worst case"),
    (
        "pcb",
        dated("1976-05-31"),
        "presumed until sampled",
        "poor",
        "US environmental agency on the ban of 1979 (seen)",
    ),
    (
        "pcb",
        dated("1998-05-31"),
        "by document only",
        None,
        "the same; stocks to 1990 are our own caution",
    ),
    ("lead-paint", dated("1976-05-31"), "suspect until tested", "poor", PRACTICE),
    ("ozone-depleting", dated("1976-05-31"), "CFC, halon and HCFC possible", "poor", REG_12),
    ("ozone-depleting", dated("2007-05-31"), "HCFC possible", "fair", REG_12),
    ("ozone-depleting", dated("2021-05-31"), "prohibited when built", None, REG_12),
    (
        "halon",
        {"cylinders": 4, "installed": "2005-05-19"},
        "banned when installed",
        "failed",
        REG_12,
    ),
    (
        "halon",
        {"cylinders": 4, "installed": "1994-10-01"},
        "banned when installed",
        "poor",
        "SOLAS II-2, 1 October 1994 (memory)",
    ),
    (
        "organotin",
        dated("2007-05-31", "no certificate seen"),
        "suspect under sealer",
        "poor",
        "AFS Convention, 1 January 2008 (seen)",
    ),
    (
        "organotin",
        dated("2012-05-31", "no certificate seen"),
        "prohibited when built",
        None,
        "the same",
    ),
    (
        "cybutryne",
        {"papers": "no certificate seen", "applied": "2021-05-31"},
        "possible until renewed",
        "fair",
        "AFS Convention, cybutryne, 1 January 2023 (seen)",
    ),
    (
        "hazard-inventory",
        {"inventory": "not seen", "tonnage": 900, "european": "no", "built": "1976-05-31"},
        "due later and not seen",
        "fair",
        "Hong Kong Convention, existing ships by 26 June 2030 (seen)",
    ),
    (
        "hazard-inventory",
        {"inventory": "not seen", "tonnage": 2100, "european": "yes", "built": "1998-05-31"},
        "due and not seen",
        "poor",
        "Regulation (EU) 1257/2013, 31 December 2020 (seen)",
    ),
    (
        "hazard-inventory",
        {"inventory": "not seen", "tonnage": 480, "european": "no", "built": "2002-07-01"},
        "not required by tonnage",
        None,
        "Hong Kong Convention, 500 GT (seen)",
    ),
    (
        "hidden-sea",
        {"eye": 12, "bow": 10, "distance": 32.1, "length": 80},
        "beyond the limit",
        "poor",
        f"{V_22}: 32.1 x 10 / (12 - 10) = 160.5 m over 2 x 80 m",
    ),
    ("landing-papers", {**PAPERS, "certificate": "not seen"}, "unverified", "poor", PRACTICE),
    (
        "landing-circle",
        {"diameter": 10.79, "d_value": 13.0},
        "under D",
        "poor",
        "0.83 D (memory), by hand: 0.83 x 13 = 10.79",
    ),
    (
        "landing-circle",
        {"diameter": 13.27, "d_value": 16.0},
        "under 0.83 D",
        "poor",
        "0.83 D (memory), by hand: 0.83 x 16 = 13.28",
    ),
    ("landing-circle", {"diameter": 16, "d_value": 16.0}, "at least D", None, MODU),
    ("landing-sector", {"sector": 209}, "below the figure", "poor", f"{MODU}: 210°"),
    (
        "landing-obstacle",
        {"height": 0.26, "distance": 1, "d_value": 13},
        "above the figure",
        "poor",
        f"{MODU}: 0.25 m to 0.12 x 13 = 1.56 m",
    ),
    ("landing-mass", {"mass": 6.5, "marked": 6.4}, "above the mark", "poor", CAP),
    (
        "landing-load",
        {"capacity": 101, "mass": 3.2},
        "below the figure",
        "poor",
        f"{CAP}: 102.0 kN",
    ),
    (
        "landing-friction",
        {"friction": 64, "place": "touchdown circle and markings"},
        "below the figure",
        "poor",
        f"{CAP}: 0.65",
    ),
    (
        "landing-fire",
        {"foam": 250, "powder": 45, "carbon_dioxide": 18, "d_value": 15},
        "below the figure",
        "poor",
        "SOLAS II-2/18 (memory): 500 l/min from 15 m",
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), JUDGEMENTS)
def test_a_criterion_judges_as_its_source_does(name, values, band, rating, source):
    """Each published case, or one worked by hand, comes out in its band with its rating."""
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating), source


@pytest.mark.parametrize(
    ("printed", "now", "required", "rate", "exercise"),
    [("6.9 years", 0.198, 0.150, 0.007, 6), ("20.3 years", 0.211, 0.150, 0.003, 7)],
)
def test_a_life_is_rounded_as_the_key_prints_it(printed, now, required, rate, exercise):
    """One decimal, half up: 0.048 / 0.007 is 6.857 and 0.061 / 0.003 is 20.33."""
    assert printed == show(float(remaining_life(now, required, rate)), "years", 1), (
        f"{KEY} {exercise}"
    )


@pytest.mark.parametrize(
    ("life", "rate", "values"),
    [
        (
            2.5,
            0.12,
            {
                "as_built": 10.0,
                "built_year": 2008,
                "measured": 8.3,
                "measured_year": 2026,
                "previous": 8.9,
                "previous_year": 2021,
            },
        ),
        (
            11.43,
            0.0875,
            {
                "as_built": 12.0,
                "built_year": 2010,
                "measured": 10.6,
                "measured_year": 2026,
                "previous": 10.9,
                "previous_year": 2021,
            },
        ),
    ],
)
def test_two_hull_plates_worked_by_hand(life, rate, values):
    """Flat 20 %: (8.3 - 8.0) / 0.12 = 2.50 years; (10.6 - 9.6) / 0.0875 = 11.43 years."""
    rule = criterion("plate-remaining-life")
    flat = rule.limit_set.with_limits(
        {"shell_share": "20", "shell_added": "0"}, "flat 20 % profile"
    )
    judgement = rule.apply({**values, "member": "shell, strength deck or tight bulkhead"}, flat)
    assert life == pytest.approx(judgement.value, abs=0.005)
    assert rate == criterion("corrosion-rate").apply(values).value


def test_a_divisor_that_a_published_sheet_got_wrong_is_not_ours():
    """2.87 / 0.304 is 9.441 years; a sheet that prints 8.441 divided by 0.34."""
    assert 9.441 == pytest.approx(remaining_life(2.87, 0, 0.304), abs=0.0005)
    assert 8.441 == pytest.approx(remaining_life(2.87, 0, 0.34), abs=0.0005)


def test_the_words_of_the_coating_are_three():
    """GOOD, FAIR and POOR, as ESP guidance A.744(18) has them."""
    assert ("good", "fair", "poor") == BANDS

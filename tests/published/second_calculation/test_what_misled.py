"""Judgements that once misled, one case beside each source, so that none comes back.

Ratings are those that an answer may have; "refused" is a sentence instead. Words are in the answer.
"""

import pytest

from inspector.checklists.registry import criterion
from tests.published.second_calculation.cases import Case, answer

BAD = ("poor", "failed")
NOT_GOOD = ("fair", *BAD)

# criterion, values, ratings that may be, words of the answer, source
CASES = [
    (
        "survey-window",
        "expires=2019-08-31; survey=annual; on=2025-11-30; last=2018-08-20",
        ("failed",),
        "expired",
        "survey guidelines under the harmonised system: a certificate ends on its day",
    ),
    (
        "register-insulation",
        "resistance=0.25; item=generator or main motor; voltage=440",
        NOT_GOOD,
        "1 MΩ",
        "1 MΩ to 1 kV, as rules for circuits ask (from memory)",
    ),
    (
        "insulation-resistance",
        "resistance=50; temperature=40; insulation=thermosetting; "
        "winding=random-wound, or form-wound under 1 kV; voltage=6600",
        ("refused",),
        "random-wound",
        "IEEE 43-2013, table 3 (from memory): 5 MΩ is of windings under 1 kV",
    ),
    (
        "polarization-index",
        "one_minute=0.002; ten_minutes=0.01; thermal_class=F",
        ("refused", "none", *BAD),
        "",
        "IEEE 43-2013 (from memory): index and resistance are both reached",
    ),
    (
        "hog-sag",
        "forward_port=5; forward_starboard=5; midship_port=5.79; midship_starboard=5.82; "
        "aft_port=6; aft_starboard=6; greatest=5.8",
        BAD,
        "5.82",
        "Load Lines 1966, article 12: the mark on either side is not under water",
    ),
    (
        "dp-equipment",
        "built=2005-01-01; class_claimed=2; computers=2; references=3; heading=3; motion=3; "
        "wind=3; ups=1; heading_decides=yes",
        BAD,
        "",
        "MSC/Circ.645, 3.4 (from memory): a supply for each computer",
    ),
    (
        "dp-equipment",
        "built=2005-01-01; class_claimed=2; computers=2; references=3; heading=2; motion=3; "
        "wind=3; ups=2; heading_decides=yes",
        BAD,
        "",
        "MSC/Circ.645, 3.4 (from memory): three systems where control depends on them",
    ),
    (
        "oil-tank-coating",
        "spots=4; total=0; edges=25",
        ("fair",),
        "edges and welds",
        "MSC.1/Circ.1399: GOOD has less than 20 % on edges and welds",
    ),
    (
        "plate-thickness",
        "as_built=10; measured=7.8; member=shell, strength deck or tight bulkhead",
        BAD,
        "",
        "IACS recommendation as read: 20 % at the strict end, 22 % is past it",
    ),
    ("voltage-unbalance", "first=440; second=440; third=0", ("failed",), "", "a phase is lost"),
    ("current-unbalance", "first=100; second=100; third=0", ("failed",), "", "a phase is lost"),
    (
        "shore-supply",
        "voltage=400; frequency=50; ship_voltage=480; ship_frequency=60; sequence=as on board",
        NOT_GOOD,
        "pumps and fans run slow",
        "50 of 60 Hz are 83 %, by hand",
    ),
    ("ballast-discharge", "large=0", ("none",), "", "regulation D-2: five counts, not one"),
    (
        "entry-atmosphere",
        "oxygen=21.5; carbon_dioxide=0.04; flammable=0; toxic=0",
        ("none",),
        "meter",
        "20.9 % is what air has: more is a meter to be checked",
    ),
    (
        "lifting-proof-load",
        "proof=400; swl=10",
        ("refused", "none"),
        "read the certificate again",
        "40 times its load",
    ),
    ("cell-gravity", "density=1290; full=1240", ("refused", "none"), "", "more than full"),
    ("battery-ohmic-rise", "rise=-60", ("refused", "none"), "", "better than new"),
    ("crankcase-pressure", "pressure=-12", ("refused", "none", *NOT_GOOD), "", "a vacuum"),
    ("dry-film", "least=2600; below=0", ("refused", "none", *NOT_GOOD), "", "eight times 320 µm"),
    (
        "incinerator-temperature",
        "temperature=1250; kind=continuous",
        ("refused", "none", *NOT_GOOD),
        "",
        "above what its brickwork takes",
    ),
    ("battery-age", "age=25", ("refused", "none", *NOT_GOOD), "", "sealed ones last 5 to 12 years"),
    (
        "habitability-acceleration",
        "acceleration=0.144; space=passenger cabin",
        BAD,
        "143",
        "ISO 6954:2000: 71.5 and 143 mm/s² are one series",
    ),
    (
        "oily-water-equipment",
        "installed=2015-01-01; standard=MEPC.107(49); calibrated=2014-05-01; on=2026-11-25",
        ("refused",),
        "",
        "calibrated before it was fitted",
    ),
    (
        "sewage-plant",
        "installed=2009-06-30; standard=MEPC.227(64)",
        ("refused",),
        "",
        "MEPC.227(64) is of 2012",
    ),
    ("coating-condition", "breakdown=2; scale=8; edges=10", ("refused",), "", "a part of the 2 %"),
    (
        "entry-instrument",
        "oxygen=yes; flammable=yes; hydrogen_sulphide=yes; carbon_monoxide=yes; remote=yes; "
        "carbon_dioxide=no",
        NOT_GOOD,
        "carbon dioxide",
        "MSC.581(110) asks it too",
    ),
    (
        "fuel-sulphur",
        "sulphur=0.504; area=outside; on=2026-11-25",
        BAD,
        "0.504 %",
        "MARPOL VI/14.1.3: 0.50 %",
    ),
    (
        "steering-main-time",
        "time=28.04; condition=trial draught, full ahead",
        BAD,
        "28.04 s",
        "SOLAS II-1/29.3: 28 s, and a value over it prints otherwise",
    ),
    (
        "exhaust-spread",
        "temperatures=402, 388, 395, 400; load=80",
        ("good",),
        "",
        "a list with a blank after the comma",
    ),
    ("oil-cleanliness-code", "code=16/13; service=piston pump", ("good",), "", "ISO 4406: two"),
    ("imo-number", "number=IMO 1234567", ("none",), "", "A.1117(30): the letters are of it"),
    (
        "service-due",
        "last=2020-11-24; kind=CO2 cylinders; on=2025-11-25",
        ("refused",),
        "not one of the",
        "MSC.1/Circ.1318/Rev.1 goes by number and year made: another criterion",
    ),
    (
        "service-due",
        "last=2024-11-24; kind=inflatable raft, service; on=2025-11-25",
        BAD,
        "1 day past",
        "SOLAS III/20.8: twelve months; one day is no days",
    ),
    (
        "thermographic-rise",
        "over_similar=12; load=45",
        BAD,
        "",
        "ATS-2003, table 100.18, and 43 K or more at full load by exponents of 1.6 to 2",
    ),
    (
        "nox-tier",
        "built=2022-01-01; speed=1000; certificate=II; area=Baltic and North Sea",
        ("failed",),
        "Baltic and North Sea",
        "MARPOL VI/13: the area that was asked",
    ),
    (
        "pit-depth",
        "depth=3.7; as_built=12; place=elsewhere",
        BAD,
        "strict figure",
        "IACS UR Z10.5: its clause is of plates near frames",
    ),
    (
        "fuel-tank-fill",
        "fill=97; temperature=15; warmest=45; density=845",
        BAD,
        "when warm",
        "98 % is how a capacity is counted; no rule of filling",
    ),
]


@pytest.mark.parametrize(
    ("name", "typed", "ratings", "words", "source"), CASES, ids=[f"{c[0]}-{c[4]}" for c in CASES]
)
def test_what_misled_does_so_no_more(name, typed, ratings, words, source):
    """The answer is one that a signature can stand under."""
    values = dict(pair.split("=", 1) for pair in typed.split("; "))
    rating, sentence = answer(Case("repaired", name, source, ratings[0], values, source))

    assert rating in ratings, sentence
    assert words in sentence
    assert len(sentence) < 400


@pytest.mark.parametrize(
    ("name", "current"),
    [
        ("refrigerant-leak-check", "(EU) 2024/573"),
        ("habitability-vibration", "ISO 20283-5"),
        ("coating-condition", "Rev.1 of 28 June 2024"),
        ("survey-window", "superseded every two years"),
    ],
)
def test_an_older_edition_names_the_current_one(name, current):
    """Official Journal of February 2024; ISO's catalogue; the circular's cover; IMO's index."""
    assert current in str(criterion(name).source)

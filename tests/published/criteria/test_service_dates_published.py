"""Service dates of fire and life-saving gear against the texts that set them.

Interval by interval, and dated cases worked by hand.
"""

from datetime import date

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.source import Source
from inspector.criteria.safety.fixed_fire_fighting import cylinders_asked
from inspector.criteria.safety.service_dates import due_date
from inspector.criteria.safety.service_intervals import INTERVALS, Interval
from tests.criteria.band_ends import band_ends

# kind -> months as the text gives them, title and clause; (seen) or (memory)
TEXTS = {
    "portable extinguisher, service": (12, "A.951(23) 9.1 (seen)"),
    "portable extinguisher, discharge in a drill": (60, "A.951(23) 9.1.1 (seen)"),
    "portable extinguisher, pressure test": (120, "A.951(23) 9.1.2 (seen)"),
    "wheeled extinguisher, examination": (60, "MSC.1/Circ.1432 9.6 (seen)"),
    "CO2 charge, passenger ship": (24, "MSC.1/Circ.1318/Rev.1 6.1.1, 24 ± 3 (seen)"),
    "CO2 charge, special purpose ship, up to 60 persons": (
        36,
        "SPS Code 2008 chapter 6, as a cargo ship to 60 persons (memory)",
    ),
    "CO2 charge, special purpose ship, over 60 persons": (
        24,
        "SPS Code 2008 chapter 6, as a passenger ship above 60 persons (memory)",
    ),
    "CO2 control valves, internal": (60, "MSC.1/Circ.1318/Rev.1 (seen)"),
    "CO2 hoses, renewal": (120, "MSC.1/Circ.1318/Rev.1 (seen)"),
    "other fixed gas, valves internal": (60, "MSC.1/Circ.1432 9.1 (seen)"),
    "other fixed gas or powder cylinders, pressure test": (120, "MSC.1/Circ.1432 10 (memory)"),
    "foam mixing and valves": (60, "MSC.1/Circ.1432 9.2 (seen)"),
    "foam concentrate, first sample": (36, "MSC.1/Circ.1312 (memory)"),
    "foam concentrate, later sample": (12, "MSC.1/Circ.1312 (memory)"),
    "sprinkler section valves": (60, "MSC.1/Circ.1432 9.3 (seen)"),
    "breathing apparatus, masks and demand valves": (12, "MSC.1/Circ.1432 (seen)"),
    "breathing air, quality": (12, "MSC.1/Circ.1432 (seen)"),
    "breathing apparatus cylinders, pressure test": (60, "MSC.1/Circ.1432, steel (seen)"),
    "fire hoses, pressure test": (60, "MSC.1/Circ.1432 7.1.4 (seen)"),
    "inflatable raft, service": (12, "SOLAS III/20.8 (seen)"),
    "inflatable lifejacket, service": (12, "SOLAS III/20.8 (seen)"),
    "hydrostatic release, service": (12, "SOLAS III/20.9, other than disposable (seen)"),
    "immersion suit, monthly look": (1, "MSC/Circ.1047 (seen)"),
    "immersion suit, pressure test": (36, "MSC/Circ.1114 (seen)"),
    "EPIRB, annual test": (12, "SOLAS IV/15.9, MSC.1/Circ.1040/Rev.2 (seen)"),
    "EPIRB, shore maintenance": (60, "SOLAS IV/15.9.2 (seen)"),
    "boat and davit, annual examination": (12, "MSC.402(96) (seen)"),
    "boat and davit, overload and release gear": (60, "MSC.402(96) 6.3 (seen)"),
    "boat falls, renewal": (60, "SOLAS III/20.4 (seen)"),
    "davit-launched raft, hook overhaul": (60, "SOLAS III/20.11 (memory)"),
    "evacuation system, deployment": (72, "SOLAS III/20.8.2 (memory)"),
    "lifting appliance, thorough examination": (12, "SOLAS II-1/3-13, ILO 152 (memory)"),
    "lifting appliance, load test": (60, "SOLAS II-1/3-13, ILO 152 (memory)"),
    "anchor-handling winch, examination": (12, "MSC.1/Circ.1662 (memory)"),
    "gangway and ladder winch, load test": (60, "SOLAS III/20.7.2, MSC.1/Circ.1331 (seen)"),
    "gangway wires, renewal": (60, "SOLAS III/20.7.2, MSC.1/Circ.1331 (seen)"),
    "15 ppm alarm, calibration": (60, "MEPC.285(70), 4.2.11 (seen)"),
    "tail shaft, oil or closed fresh water": (60, "IACS UR Z21 (memory)"),
    "tail shaft, open water": (36, "IACS UR Z21 (memory)"),
    "stern tube oil, analysis": (6, "one society's rules, propeller shafts (seen)"),
    "azimuth or podded unit, survey": (60, "one society's rules, 2016 (seen)"),
    "tunnel thruster, survey": (60, "one society's rules, 2016 (seen)"),
    "boiler, internal survey": (36, "IACS UR Z18, two in five years (memory)"),
    "emergency steering drill": (3, "SOLAS V/26 (seen)"),
    "SART, annual test": (12, "SOLAS IV/15 (memory)"),
    "voyage recorder, performance test": (12, "SOLAS V/18.8 (memory)"),
    "CO2 charge, cargo ship": (
        36,
        (
            "MSC.1/Circ.1318/Rev.1: at intermediate, periodical and renewal surveys, "
            "own reading (common practice)"
        ),
    ),
}
DAYS = {
    "CO2 system, general check": (30, "MSC.1/Circ.1318 4.1 (seen)"),
    "watertight doors, operation": (7, "SOLAS II-1/21, weekly (seen)"),
}


@pytest.mark.parametrize(("kind", "text"), TEXTS.items())
def test_an_interval_is_the_one_of_its_text(kind, text):
    """Months and mark as the title and clause beside it give them."""
    months, source = text
    assert months == INTERVALS[kind].months, source
    assert source.endswith(f"({INTERVALS[kind].source.mark})")


@pytest.mark.parametrize(("kind", "text"), DAYS.items())
def test_an_interval_in_days_is_the_one_of_its_text(kind, text):
    """Thirty days and a week."""
    assert text[0] == INTERVALS[kind].days, text[1]


def test_no_kind_is_without_its_text():
    """A kind added without a row here fails."""
    assert set(INTERVALS) == {*TEXTS, *DAYS}


# last, months, due: by hand, clamped at the end of a shorter month
DUE = [
    ("2024-02-29", 12, "2025-02-28"),
    ("2024-02-29", 48, "2028-02-29"),
    ("2024-02-29", 120, "2034-02-28"),
    ("2025-08-31", 6, "2026-02-28"),
    ("2025-11-30", 3, "2026-02-28"),
    ("2023-03-31", 30, "2025-09-30"),
    ("2025-01-31", 12, "2026-01-31"),
]


@pytest.mark.parametrize(("last", "months", "expected"), DUE)
def test_due_dates_at_month_ends(last, months, expected):
    """Own calculation."""
    plain = Interval(months, Source.seen("a text", "an edition", "a clause"))
    assert date.fromisoformat(expected) == due_date(date.fromisoformat(last), plain)


NOMINAL = "MSC.1/Circ.1318/Rev.1 6.1.1: above 90 % (seen)"
# criterion, values, band, rating, source; the day is 2026-11-25
ON = {"on": "2026-11-25"}
ROWS = [
    (
        "service-due",
        {"last": "2025-08-31", "kind": "inflatable raft, service", **ON},
        "overdue",
        "failed",
        "SOLAS III/20.8, 12 months: 2026-08-31, 86 days past",
    ),
    (
        "service-due",
        {"last": "2022-02-28", "kind": "boat and davit, overload and release gear", **ON},
        "in date",
        "good",
        "MSC.402(96), 60 months: 2027-02-28, 95 days",
    ),
    (
        "service-due",
        {"last": "2023-11-30", "kind": "immersion suit, pressure test", **ON},
        "due soon",
        "fair",
        "MSC/Circ.1114, 36 months: 2026-11-30, 5 days",
    ),
    (
        "service-due",
        {"last": "2016-06-15", "kind": "CO2 hoses, renewal", **ON},
        "overdue",
        "failed",
        "MSC.1/Circ.1318/Rev.1, 6.1: 120 months, so 2026-06-15, 163 days past",
    ),
    (
        "printed-expiry",
        {"expires": "2028-05-31", "kind": "EPIRB battery", **ON},
        "in date",
        "good",
        "printed date, last of the month",
    ),
    (
        "printed-expiry",
        {"expires": "2026-10-31", "kind": "raft rations and contents", **ON},
        "expired",
        "failed",
        "MSC.388(94), dated contents (seen)",
    ),
    (
        "co2-charge",
        {"measured": 40.5, "nominal": 45},
        "on the border",
        "fair",
        f"{NOMINAL}; 40.5 kg are 90.0 %, which the text leaves open",
    ),
    ("co2-charge", {"measured": 40.4, "nominal": 45}, "refill", "failed", f"{NOMINAL}; 89.8 %"),
    (
        "co2-charge",
        {"measured": 18.9, "nominal": 21.0},
        "on the border",
        "fair",
        f"{NOMINAL}; exactly 90 %, where floats err",
    ),
    (
        "co2-cylinder-tests",
        {"tested": 4, "cylinders": 38, "failed": 0, "age": 10},
        "enough",
        "good",
        "MSC.1/Circ.1318/Rev.1 6.1.2, a tenth of 38 is 4 (seen)",
    ),
    (
        "co2-cylinder-tests",
        {"tested": 18, "cylinders": 38, "failed": 1, "age": 10},
        "too few",
        "failed",
        "the same, one failed: a half, 19",
    ),
    (
        "foam-mixing",
        {"measured": 3.9, "nominal": 3},
        "within the limits",
        "good",
        "MSC.1/Circ.1432 9.2, +30 and -10 %: 2.7 to 3.9 % (seen)",
    ),
    ("foam-mixing", {"measured": 2.6, "nominal": 3}, "too lean", "failed", "the same"),
    (
        "foam-pfos",
        {"content": 10, "on": "2026-01-01"},
        "within the limit",
        "good",
        "SOLAS II-2/10.11 by MSC.532(107), 10 mg/kg (seen)",
    ),
    (
        "foam-pfos",
        {"content": 12, "on": "2026-01-01"},
        "over the limit",
        "failed",
        "the same, from 1 January 2026",
    ),
    (
        "lifting-proof-load",
        {"proof": 6.25, "swl": 5},
        "fits the rating",
        "good",
        "practice of ILO 152, 1.25 x 5 t (memory)",
    ),
    (
        "lifting-proof-load",
        {"proof": 34, "swl": 30},
        "does not fit the rating",
        "poor",
        "practice of ILO 152, 30 + 5 t (memory)",
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), ROWS)
def test_a_criterion_judges_as_its_source_does(name, values, band, rating, source):
    """Each dated or weighed case comes out in its band with its rating."""
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating), source


@pytest.mark.parametrize(
    ("last", "kind", "left"),
    [
        ("2025-08-31", "inflatable raft, service", -86),
        ("2016-06-15", "CO2 hoses, renewal", -163),
    ],
)
def test_the_days_past_are_counted(last, kind, left):
    """By hand: 31 August to 25 November are 86 days, 15 June to 25 November 163."""
    assert left == criterion("service-due").apply({"last": last, "kind": kind, **ON}).value


@pytest.mark.parametrize(
    ("swl", "expected"), [(5, 6.25), (19.9, 24.875), (20, 25.0), (30, 35), (50, 55), (60, 66)]
)
def test_proof_loads_have_no_jump_at_either_edge(swl, expected):
    """At 20 t both rules give 25 t, at 50 t both give 55 t (practice of ILO 152, memory.

    Own calculation).
    """
    assert [expected, 2 * swl] == band_ends("lifting-proof-load", swl=swl)


@pytest.mark.parametrize(
    ("cylinders", "failed", "expected"), [(38, 0, 4), (38, 1, 19), (38, 2, 38)]
)
def test_cylinders_of_a_ten_year_old_system(cylinders, failed, expected):
    """A tenth rounded up, a half, all (MSC.1/Circ.1318/Rev.1 6.1.2, seen)."""
    assert expected == cylinders_asked(cylinders, failed, 10)


def test_nine_tenths_of_forty_five_kilograms():
    """40.5 kg (own calculation)."""
    assert 40.5 == criterion("co2-charge").apply({"measured": 45, "nominal": 45}).limit

"""Electrical plant and dynamic positioning against the outside world.

Printed figures first, hand calculations where nothing is printed.

Each row carries its source. "Published" means that the answer is in the source; "calculation"
that the rule is the source's and the arithmetic ours, written out beside it; "memory" and "common
practice" that the rule itself was not read.
"""

import math
from datetime import date

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.calendar import add_months
from inspector.criteria.electrical.breaker_tests import later
from inspector.criteria.electrical.machine_loading import set_load
from inspector.criteria.electrical.phase_unbalance import unbalance
from inspector.criteria.electrical.shore_supply import flux
from inspector.criteria.positioning.dp_trials import windows
from inspector.criteria.positioning.thrust_tests import nominal_thrust
from tests.criteria.band_ends import band_ends

REGISTER = "National inland register, survey annex, table of least resistances (seen)"
UR_E13 = "IACS UR E13 (memory)"
UR_M3 = "IACS UR M3 (memory)"
PLATE = "three-phase arithmetic: I = 1000 S / (1.7321 U)"
PULL = "static thrust K (D P)^(2/3), constants of a station-keeping standard (memory)"
DAYS = "months counted from the date itself, clamped to the month's end"


def class_minimum(voltage):
    return band_ends("circuit-insulation", voltage=voltage)[0]


def register_minimum(item, voltage):
    return band_ends("register-insulation", item=item, voltage=voltage)[0]


def steady_ends(rated, service):
    return band_ends("regulator-voltage", rated=rated, service=service)


def direct_ends(nominal, state):
    return band_ends("battery-supply-voltage", nominal=nominal, state=state)


def earth_alarm(voltage):
    return band_ends("earth-fault", voltage=voltage)[0]


def sharing_ends(rated_power, total_power, total_rated, largest_rated):
    ratings = {"rated_power": rated_power, "largest_rated": largest_rated}
    return band_ends("load-sharing", total_power=total_power, total_rated=total_rated, **ratings)


def fair_share(rated_power, total_power, total_rated):
    return sum(sharing_ends(rated_power, total_power, total_rated, 600)) / 2


def allowed_miss(rated_power, largest_rated):
    low, high = sharing_ends(rated_power, 564, 940, largest_rated)
    return (high - low) / 2


def transformer_current(rated_power, voltage):
    return band_ends("transformer-loading", rated_power=rated_power, voltage=voltage)[0]


def air_needed(cells, capacity, charging):
    return band_ends("battery-ventilation", cells=cells, capacity=capacity, charging=charging)[0]


def droop(no_load, full_load, rated):
    values = {"no_load": no_load, "full_load": full_load, "rated": rated}
    return criterion("governor-droop").apply(values).value


def capacity(duration, rated_duration):
    values = {"duration": duration, "rated_duration": rated_duration}
    return criterion("battery-capacity").apply(values).value


# function, arguments, expected, tolerance (half of the last printed digit), source and calculation
FUNCTIONS = [
    (
        class_minimum,
        (690,),
        1,
        0,
        "IEC 60092-401 and class tables (memory): 1 MΩ from 250 to 1000 V",
    ),
    (class_minimum, (6600,), 7.6, 0, "the same, calculation: 6600 / 1000 + 1"),
    (class_minimum, (11_000,), 12.0, 0, "the same, calculation: 11 000 / 1000 + 1"),
    (
        register_minimum,
        ("generator or main motor", 690),
        0.69,
        0,
        f"{REGISTER}, calculation: 0.001 x 690",
    ),
    (register_minimum, ("power cable", 690), 1.38, 0, f"{REGISTER}, calculation: 0.002 x 690"),
    (unbalance, (480, 472, 476), 0.84, 0.005, "mean 476, greatest distance 4: 4 / 476"),
    (unbalance, (440, 430, 450), 2.27, 0.005, "mean 440, greatest distance 10: 10 / 440"),
    (droop, (62.4, 60, 60), 4.0, 0, "(62.4 - 60) / 60"),
    (
        lambda: steady_ends(480, "main")[0],
        (),
        468.0,
        0,
        f"{UR_E13}, calculation: 0.975 x 480",
    ),
    (
        lambda: steady_ends(480, "main")[1],
        (),
        492.0,
        0,
        f"{UR_E13}, calculation: 1.025 x 480",
    ),
    (
        lambda: direct_ends(24, "on charge")[0],
        (),
        18.0,
        0,
        "IACS UR E5 (memory), calculation: 0.75 x 24",
    ),
    (
        lambda: direct_ends(24, "on charge")[1],
        (),
        31.2,
        0,
        "IACS UR E5 (memory), calculation: 1.30 x 24",
    ),
    (
        lambda: direct_ends(24, "not on charge")[1],
        (),
        28.8,
        0,
        "IACS UR E5 (memory), calculation: 1.20 x 24",
    ),
    (earth_alarm, (480,), 48.0, 0, "100 ohms a volt (common practice): 100 x 480 ohms"),
    (flux, (400, 50, 440, 60), 109.1, 0.05, "8.000 V/Hz over 7.333 V/Hz"),
    (flux, (400, 50, 480, 60), 100.0, 0, "8.000 V/Hz on both sides"),
    (flux, (380, 50, 480, 60), 95.0, 0, "7.600 over 8.000 V/Hz"),
    (set_load, (300, 340), 88.2, 0.05, "300 / 340"),
    (
        set_load,
        (300, 340, 1000 * 300 / (math.sqrt(3) * 480 * 0.65), 511.20),
        108.6,
        0.05,
        "300 kW at 480 V and power factor 0.65 are 555.1 A of 511.2 A",
    ),
    (fair_share, (600, 564, 940), 360.0, 0, "sets of 600 and 340 kW at 60 % together"),
    (fair_share, (340, 564, 940), 204.0, 0, "the same"),
    (
        allowed_miss,
        (340, 600),
        85.0,
        0,
        f"{UR_M3}, calculation: the less of 0.15 x 600 = 90 and 0.25 x 340 = 85",
    ),
    *[
        (transformer_current, (kva, volts), amps, 0.005, PLATE)
        for kva, volts, amps in (
            (45, 480, 54.13),
            (45, 208, 124.91),
            (75, 480, 90.21),
            (75, 208, 208.18),
            (112.5, 480, 135.32),
            (112.5, 208, 312.27),
            (150, 480, 180.42),
            (150, 208, 416.36),
            (225, 480, 270.63),
            (225, 208, 624.54),
        )
    ],
    (capacity, (6.2, 8), 77.5, 0, "IEEE 450, calculation: 6.2 / 8"),
    (capacity, (7.4, 8), 92.5, 0, "IEEE 450, calculation: 7.4 / 8"),
    (capacity, (6.6, 8), 82.5, 0, "IEEE 450, calculation: 6 h 36 min of 8 h"),
    (capacity, (6 + 20 / 60, 8), 79.2, 0.05, "IEEE 450, calculation: 6 h 20 min of 8 h"),
    (
        air_needed,
        (12, 200, "valve-regulated, float"),
        0.12,
        0,
        "EN 62485-2 (memory): 0.05 x 12 x 1 x 200 / 1000",
    ),
    (
        air_needed,
        (12, 200, "vented, boost"),
        2.4,
        0,
        "EN 62485-2 (memory): 0.05 x 12 x 20 x 200 / 1000",
    ),
    *[
        (nominal_thrust, (kind, d, p), kn, 0.005, PULL)
        for kind, d, p, kn in (
            ("tunnel", 1.2, 250, 40.33),
            ("tunnel", 1.6, 500, 77.56),
            ("tunnel", 1.8, 800, 114.77),
            ("azimuth in nozzle", 1.6, 800, 141.47),
            ("azimuth in nozzle", 2.2, 1000, 202.98),
            ("open propeller", 2.4, 1500, 187.91),
        )
    ],
]


@pytest.mark.parametrize(("function", "arguments", "expected", "tolerance", "source"), FUNCTIONS)
def test_a_function_gives_the_figure_of_its_source(
    function, arguments, expected, tolerance, source
):
    """Each figure comes out as printed, to half of its last digit."""
    assert expected == pytest.approx(function(*arguments), abs=tolerance + 1e-12), source


@pytest.mark.parametrize(
    ("expected", "start", "months"),
    [
        (date(2025, 2, 28), date(2025, 1, 31), 1),
        (date(2025, 2, 28), date(2024, 2, 29), 12),
        (date(2028, 2, 29), date(2024, 2, 29), 48),
        (date(2025, 4, 30), date(2025, 1, 31), 3),
        (date(2026, 2, 28), date(2025, 8, 31), 6),
        (date(2034, 2, 28), date(2024, 2, 29), 120),
    ],
)
def test_months_are_counted_from_the_date_itself(expected, start, months):
    """Clamped to the month's end and never chained.

    Three single months from 31 January would lose two days.
    """
    assert expected == add_months(start, months), DAYS
    assert date(2025, 4, 28) == add_months(add_months(add_months(date(2025, 1, 31), 1), 1), 1)


def test_an_injection_test_is_due_overdue_and_256_days_past():
    """Last on 14 March 2021, 60 months and 75 months (common practice), by the calendar."""
    assert (date(2026, 3, 14), date(2027, 6, 14)) == (
        later(date(2021, 3, 14), 60),
        later(date(2021, 3, 14), 1.25 * 60),
    )
    assert 256 == (date(2026, 11, 25) - date(2026, 3, 14)).days


def test_the_window_of_an_anniversary():
    """MSC/Circ.645 and MSC.1/Circ.1580 (seen).

    Anniversary 10 December 2026, window 10 September 2026 to 10 March 2027.
    """
    assert (date(2026, 9, 10), date(2027, 3, 10)) == windows(
        date(2026, 12, 10), date(2026, 11, 25)
    )[1]


# rated voltage, least and most test voltage; IEEE 43-2000, table 1, as printed in a trade
# association's paper (seen)
TEST_VOLTAGES = [
    (999, 500, 500),
    (1000, 500, 1000),
    (2500, 500, 1000),
    (2501, 1000, 2500),
    (5000, 1000, 2500),
    (5001, 2500, 5000),
    (12_000, 2500, 5000),
    (12_001, 5000, 10_000),
]


@pytest.mark.parametrize(("rated", "low", "high"), TEST_VOLTAGES)
def test_the_published_test_voltages(rated, low, high):
    """Every printed row, at both ends."""
    assert [low, high] == band_ends("insulation-test-voltage", rated=rated)


PRACTICE = "common practice"
SETTLE = "1.5 s (UR E13) and 5 s (UR M3), memory"
SOLAS_43 = "SOLAS II-1/43, 18 h, and II-1/42, 36 h (seen)"
IEC_61439 = "IEC 61439-1, table 6: 70 K (seen in an engineering forum)"
IEC_TOUCH = "IEC 61439-1, table 6: 15, 25, 30 and 40 K (memory)"
IEEE_450 = "IEEE 450: replace at 80 %, yearly below 90 % (seen in a guide that repeats it)"
DP = "MSC/Circ.645 and MSC.1/Circ.1580 (seen)"
# criterion, values, expected band, expected rating, source and calculation
JUDGEMENTS = [
    (
        "circuit-insulation",
        {"resistance": 1, "voltage": 690},
        "watch",
        "fair",
        "IEC 60092-401 (memory): 1 MΩ is the minimum, sound above 5",
    ),
    (
        "circuit-insulation",
        {"resistance": 20 / 20, "voltage": 480},
        "watch",
        "fair",
        "twenty feeders of 20 MΩ in parallel: 1.0 MΩ",
    ),
    (
        "register-insulation",
        {"resistance": 0.69, "item": "generator or main motor", "voltage": 690},
        "tolerated in service only",
        "poor",
        f"{REGISTER}: 0.69 MΩ; IEC 60092-401 (memory): 1 MΩ, so that it is never good",
    ),
    (
        "register-insulation",
        {"resistance": 0.25, "item": "other machine", "voltage": 440},
        "tolerated in service only",
        "poor",
        f"{REGISTER}: 0.2 MΩ; IEC 60092-401 (memory): 1 MΩ",
    ),
    (
        "register-insulation",
        {"resistance": 1.37, "item": "power cable", "voltage": 690},
        "below the minimum",
        "failed",
        f"{REGISTER}: 1.38 MΩ",
    ),
    (
        "insulation-test-voltage",
        {"applied": 1000, "rated": 480},
        "over the table",
        None,
        "IEEE 43-2000, table 1 (seen): 500 V under 1000 V",
    ),
    (
        "terminal-temperature",
        {"temperature": 118, "ambient": 45},
        "over the limit",
        "poor",
        f"{IEC_61439}: 73 K",
    ),
    (
        "terminal-temperature",
        {"temperature": 98, "ambient": 35},
        "within the limit",
        "good",
        f"{IEC_61439}: 63 K",
    ),
    (
        "terminal-temperature",
        {"temperature": 98, "ambient": 25},
        "over the limit",
        "poor",
        f"{IEC_61439}: 73 K",
    ),
    *[
        (
            "touch-temperature",
            {"temperature": 35 + rise + more, "ambient": 35, "part": part},
            band,
            rating,
            IEC_TOUCH,
        )
        for part, rise in (
            ("metal handle", 15),
            ("insulating handle", 25),
            ("metal cover", 30),
            ("insulating cover", 40),
        )
        for more, band, rating in ((0, "within the limit", "good"), (1, "over the limit", "poor"))
    ],
    (
        "hot-surface",
        {"temperature": 221},
        "hot and bare",
        "failed",
        "SOLAS II-2/4.2.2.6 as the MODU Code 4.8.7.2 repeats it: 220 °C (seen)",
    ),
    (
        "voltage-unbalance",
        {"first": 480, "second": 472, "third": 476},
        "balanced",
        "good",
        f"{PRACTICE}, watch above 2 %: 0.84 %",
    ),
    (
        "voltage-unbalance",
        {"first": 440, "second": 430, "third": 450},
        "unbalanced",
        "fair",
        f"{PRACTICE}, watch above 2 %: 2.27 %",
    ),
    (
        "current-unbalance",
        {"first": 90, "second": 100, "third": 110},
        "balanced",
        "good",
        f"{PRACTICE}, watch above 10 %: 10 / 100",
    ),
    (
        "current-unbalance",
        {"first": 89, "second": 100, "third": 111},
        "unbalanced",
        "fair",
        f"{PRACTICE}, watch above 10 %: 11 / 100",
    ),
    (
        "battery-supply-voltage",
        {"voltage": 31.2, "nominal": 24, "state": "on charge"},
        "inside the band",
        "good",
        "IACS UR E5 (memory): 18.0 to 31.2 V",
    ),
    (
        "battery-supply-voltage",
        {"voltage": 31.2, "nominal": 24, "state": "not on charge"},
        "outside the band",
        "poor",
        "IACS UR E5 (memory): 18.0 to 28.8 V",
    ),
    (
        "regulator-voltage",
        {"voltage": 468, "rated": 480, "service": "main"},
        "inside the band",
        "good",
        f"{UR_E13}: 468.0 to 492.0 V",
    ),
    (
        "regulator-voltage",
        {"voltage": 492.1, "rated": 480, "service": "main"},
        "outside the band",
        "poor",
        f"{UR_E13}: 468.0 to 492.0 V",
    ),
    (
        "voltage-transient",
        {"voltage": 408, "rated": 480},
        "inside the band",
        "good",
        f"{UR_E13}: 0.85 x 480 = 408.0",
    ),
    (
        "voltage-transient",
        {"voltage": 576.1, "rated": 480},
        "outside the band",
        "poor",
        f"{UR_E13}: 1.20 x 480 = 576.0",
    ),
    ("voltage-recovery", {"time": 1.6}, "too slow", "poor", SETTLE),
    ("governor-recovery", {"time": 5}, "in time", "good", SETTLE),
    (
        "governor-droop",
        {"no_load": 62.4, "full_load": 60, "rated": 60},
        "within the limit",
        "good",
        f"{UR_M3}: 4.00 % of 5 %",
    ),
    (
        "frequency-transient",
        {"frequency": 54, "nominal": 60},
        "inside the band",
        "good",
        f"{UR_M3}: 54 to 66 Hz",
    ),
    (
        "frequency-transient",
        {"frequency": 66.1, "nominal": 60},
        "outside the band",
        "poor",
        f"{UR_M3}: 54 to 66 Hz",
    ),
    (
        "shore-supply",
        {
            "voltage": 400,
            "frequency": 50,
            "ship_voltage": 440,
            "ship_frequency": 60,
            "sequence": "as on board",
        },
        "over-fluxed",
        "poor",
        "109.1 %",
    ),
    (
        "shore-supply",
        {
            "voltage": 380,
            "frequency": 50,
            "ship_voltage": 480,
            "ship_frequency": 60,
            "sequence": "as on board",
        },
        "slow machines",
        "fair",
        "95.0 %; IACS UR E5 (memory): 50 Hz is beyond 5 % of 60 Hz",
    ),
    (
        "generator-loading",
        {"power": 300, "rated_power": 340, "current": 555.1, "rated_current": 511.2},
        "overloaded",
        "poor",
        "108.6 % by current, 88.2 % by power",
    ),
    (
        "generator-loading",
        {"power": 300, "rated_power": 340},
        "high",
        "fair",
        f"{PRACTICE}: 88.2 %, high above 85 %",
    ),
    (
        "load-sharing",
        {
            "power": 119,
            "rated_power": 340,
            "total_power": 564,
            "total_rated": 940,
            "largest_rated": 600,
        },
        "shares",
        "good",
        f"{UR_M3}: 204 - 85 = 119",
    ),
    (
        "load-sharing",
        {
            "power": 118.9,
            "rated_power": 340,
            "total_power": 564,
            "total_rated": 940,
            "largest_rated": 600,
        },
        "misses its share",
        "poor",
        UR_M3,
    ),
    (
        "transformer-loading",
        {"current": 244.92, "voltage": 208, "rated_power": 75},
        "overloaded",
        "poor",
        "244.92 / 208.18 = 117.6 %",
    ),
    (
        "breaker-loading",
        {"current": 310, "rating": 400},
        "spare",
        "good",
        "80 % practice (memory): 320 A, so 10 A spare; 90 A at 100 %",
    ),
    (
        "breaker-loading",
        {"current": 330, "rating": 400},
        "full",
        "fair",
        "80 % practice (memory): 330 A is over 320 A",
    ),
    (
        "battery-capacity",
        {"duration": 6.2, "rated_duration": 8},
        "replace",
        "failed",
        f"{IEEE_450}: 77.5 %",
    ),
    (
        "battery-capacity",
        {"duration": 7.4, "rated_duration": 8},
        "sound",
        "good",
        f"{IEEE_450}: 92.5 %",
    ),
    (
        "battery-capacity",
        {"duration": 6.6, "rated_duration": 8},
        "degraded",
        "fair",
        f"{IEEE_450}: 82.5 %",
    ),
    (
        "sealed-battery-capacity",
        {"duration": 6.33, "rated_duration": 8},
        "replace",
        "poor",
        "IEEE 1188 (memory): 79.1 %",
    ),
    (
        "battery-age",
        {"age": 5.5},
        "past its usual life",
        "fair",
        f"{PRACTICE}: budget above 5 years",
    ),
    ("battery-ohmic-rise", {"rise": 40}, "watch", "fair", f"{PRACTICE}: 30 to 50 %"),
    (
        "cell-float-voltage",
        {"voltage": 13.5 / 6, "kind": "valve-regulated"},
        "charged",
        "good",
        f"{PRACTICE}: a block of 13.5 V is 2.25 V a cell",
    ),
    (
        "cell-float-voltage",
        {"voltage": 13.2 / 6, "kind": "valve-regulated"},
        "undercharged",
        "poor",
        f"{PRACTICE}: a block of 13.2 V is 2.20 V a cell",
    ),
    (
        "cell-gravity",
        {"density": 1200, "full": 1250},
        "low",
        "poor",
        f"{PRACTICE}: 50 under a charged cell",
    ),
    (
        "battery-ventilation",
        {"airflow": 0.12, "cells": 12, "capacity": 200, "charging": "valve-regulated, float"},
        "enough air",
        "good",
        "EN 50272-2, now EN 62485-2, quoted in public (seen): 0.05 x 12 x 1 x 200 / 1000 = 0.12",
    ),
    (
        "battery-ventilation",
        {"airflow": 2.3, "cells": 12, "capacity": 200, "charging": "vented, boost"},
        "too little air",
        "failed",
        "EN 50272-2, now EN 62485-2, quoted in public (seen): 0.05 x 12 x 20 x 200 / 1000 = 2.4",
    ),
    ("ups-endurance", {"time": 29.9}, "too short", "poor", "30 minutes (class practice, memory)"),
    (
        "emergency-start",
        {"time": 46},
        "too slow",
        "failed",
        "SOLAS II-1/43, public notes: 45 s (seen)",
    ),
    (
        "emergency-endurance",
        {"time": 400 * 24 * 0.8 / 288, "ship": "cargo"},
        "long enough",
        "good",
        f"{SOLAS_43}: 7680 Wh at 288 W last 26.67 h",
    ),
    (
        "emergency-endurance",
        {"time": 0.8 * 400 * 24 * 0.8 / 288, "ship": "cargo"},
        "long enough",
        "good",
        f"{SOLAS_43}: aged to 80 %, 21.33 h",
    ),
    (
        "emergency-endurance",
        {"time": 350 * 18 / 381.9, "ship": "cargo"},
        "too short",
        "failed",
        f"{SOLAS_43}: 350 l where 18 h burn 381.9 l are 16.5 h",
    ),
    ("emergency-endurance", {"time": 24, "ship": "passenger"}, "too short", "failed", SOLAS_43),
    (
        "transitional-source",
        {"time": 30},
        "long enough",
        "good",
        "SOLAS II-1/42 and 43: 30 minutes (memory)",
    ),
    (
        "protection-test-age",
        {"last": "2021-03-14", "on": "2026-11-25", "test": "trip injection"},
        "due",
        "fair",
        f"{PRACTICE}: due, overdue only after 75 months",
    ),
    (
        "dp-annual-survey",
        {"last": "2025-12-01", "anniversary": "2026-12-10", "on": "2026-11-25"},
        "due now",
        "fair",
        f"{DP}: inside the window",
    ),
    (
        "dp-periodical-survey",
        {"last": "2021-09-10", "on": "2026-11-25"},
        "overdue",
        "failed",
        f"{DP}: due 2026-09-10",
    ),
    (
        "dp-document",
        {"flag": "changed or to be changed", "alteration": "none"},
        "lapses",
        "failed",
        "MSC/Circ.645: lapses on change of flag (seen)",
    ),
    (
        "dp-failure-analysis",
        {"dated": "2020-01-01", "changed": "2022-05-01", "on": "2026-11-25"},
        "older than the plant",
        "poor",
        PRACTICE,
    ),
    (
        "worst-failure-thrust",
        {"available": 77.0, "needed": 100.98, "class_claimed": "2"},
        "not held",
        "failed",
        f"{DP}: one of two bow tunnels of 77.0 kN left",
    ),
    (
        "worst-failure-thrust",
        {"available": 65.93, "needed": 52.21, "class_claimed": "2"},
        "held",
        "good",
        f"{DP}: 93.98 kN x 30 / 54 at the bow",
    ),
    (
        "thruster-pull",
        {"thrust": 0.85 * 40.34, "kind": "tunnel", "diameter": 1.2, "power": 250},
        "sound",
        "good",
        f"{PULL}: 0.85 x 40.33",
    ),
    (
        "thruster-pull",
        {"thrust": 28.0, "kind": "tunnel", "diameter": 1.2, "power": 250},
        "weak",
        "poor",
        f"{PULL}: 69.4 % of 40.33",
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), JUDGEMENTS)
def test_a_criterion_judges_as_its_source_does(name, values, band, rating, source):
    """Each published case, or check number of our own, comes out in its band with its rating."""
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating), source

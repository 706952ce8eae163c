"""Refrigerants and cold rooms against the outside world.

CoolProp's equations of state, published boiling points, thresholds of law.

Title, edition and table stand beside each figure; "own calculation" means that the rule is the
source's and the arithmetic ours.
"""

import pytest
from CoolProp import CoolProp as coolprop
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.checklists.registry import criterion
from inspector.criteria.refrigeration.refrigerant_cycle import subcooling, superheat
from inspector.criteria.refrigeration.saturation_pressure import (
    CURVES,
    LOWEST,
    STEP,
    bubble_temperature,
    dew_temperature,
)
from inspector.criteria.refrigeration.store_insulation import heat_limit

FLUIDS = {
    "R-22": "R22",
    "R-134a": "R134a",
    "R-404A": "R404A",
    "R-407C": "R407C",
    "R-507A": "R507A",
    "R-717": "Ammonia",
}
WARMEST = LOWEST + STEP * 11
ZERO = 273.15


def saturated(refrigerant, celsius, quality):
    """CoolProp's saturation pressure in kPa absolute; quality 0 is bubble, 1 is dew."""
    return coolprop.PropsSI("P", "T", celsius + ZERO, "Q", quality, FLUIDS[refrigerant]) / 1000


@settings(max_examples=300, deadline=None)
@given(st.sampled_from(list(CURVES)), st.floats(LOWEST + 0.01, WARMEST - 0.01))
def test_the_table_agrees_with_coolprop_between_its_rows(refrigerant, celsius):
    """Reference equations of state as CoolProp 8.0.0 solves them.

    Within 0.03 K over the whole stated range, on both curves.
    """
    assert celsius == pytest.approx(
        dew_temperature(refrigerant, saturated(refrigerant, celsius, 1)), abs=0.03
    )
    assert celsius == pytest.approx(
        bubble_temperature(refrigerant, saturated(refrigerant, celsius, 0)), abs=0.03
    )


# ASHRAE Handbook, Fundamentals, chapter 29, table of physical properties: normal boiling point, °C
# (memory, as reproduced by CoolProp)
BOILING = {
    "R-22": (-40.81, -40.81),
    "R-134a": (-26.07, -26.07),
    "R-404A": (-46.22, -45.47),
    "R-407C": (-43.63, -36.63),
    "R-507A": (-46.74, -46.74),
    "R-717": (-33.32, -33.32),
}


@pytest.mark.parametrize(("refrigerant", "points"), BOILING.items())
def test_each_refrigerant_boils_at_its_published_point(refrigerant, points):
    """At 101.325 kPa liquid begins, and vapour ends, at the printed temperatures."""
    bubble, dew = points
    assert bubble == pytest.approx(bubble_temperature(refrigerant, 101.325), abs=0.05)
    assert dew == pytest.approx(dew_temperature(refrigerant, 101.325), abs=0.05)


# refrigerant, suction kPa gauge, suction line °C, superheat K, liquid kPa gauge, liquid line °C,
# subcooling K: CoolProp 8.0.0, own calculation
CASES = [
    ("R-22", 144, -14, 6.00, 1250, 27, 7.90),
    ("R-134a", 32, -12, 7.90, 916, 32, 8.03),
    ("R-404A", 104.5, -22, 7.57, 1500, 28, 6.54),
    ("R-407C", 263.7, 5, 11.47, 1500, 30, 6.43),
    ("R-507A", 110, -20, 10.17, 1500, 28, 5.67),
    ("R-717", 189, -5, 5.03, 1065, 25, 4.99),
]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case[0])
def test_superheat_and_subcooling_of_six_plants(case):
    """Superheat from the dew curve, subcooling from the bubble curve, for "suction-superheat" and
    "liquid-subcooling".
    """
    (
        refrigerant,
        suction,
        suction_line,
        expected_superheat,
        liquid,
        liquid_line,
        expected_subcooling,
    ) = case
    assert expected_superheat == pytest.approx(
        superheat(suction_line, suction, refrigerant), abs=0.05
    )
    assert expected_subcooling == pytest.approx(
        subcooling(liquid_line, liquid, refrigerant), abs=0.05
    )
    judged = criterion("suction-superheat").apply(
        {
            "temperature": suction_line,
            "pressure": suction,
            "refrigerant": refrigerant,
            "place": "compressor",
        }
    )
    assert expected_superheat == pytest.approx(judged.value, abs=0.05)


def test_the_wrong_curve_errs_by_six_kelvin_on_a_blend_with_glide():
    """R-407C at 263.7 kPa gauge: 11.47 K from dew, 17.89 K from bubble (CoolProp 8.0.0, own
    calculation).
    """
    assert 17.89 == pytest.approx(5 - bubble_temperature("R-407C", 263.7 + 101.325), abs=0.05)


PRACTICE = "common practice; no published example exists"
ATP = "ATP agreement, K 0.40 and 0.70 W/(m² K), own calculation"
LEAKS = "(EU) 2024/573, 5 / 50 / 500 t of CO2 (seen), own calculation"
# criterion, values, band, rating, source
ROWS = [
    (
        "liquid-subcooling",
        {"temperature": 27, "pressure": 1250, "refrigerant": "R-22"},
        "usual",
        "good",
        PRACTICE,
    ),
    (
        "suction-superheat",
        {"temperature": -14, "pressure": 144, "refrigerant": "R-22", "place": "evaporator"},
        "usual",
        "good",
        PRACTICE,
    ),
    (
        "suction-superheat",
        {"temperature": 5, "pressure": 263.7, "refrigerant": "R-407C", "place": "evaporator"},
        "high",
        "fair",
        PRACTICE,
    ),
    ("pull-down-time", {"time": 12, "store": "frozen"}, "as designed", "good", PRACTICE),
    ("pull-down-time", {"time": 24, "store": "frozen"}, "acceptable", "fair", PRACTICE),
    # 1.40 kW of load on a 2.60 kW unit: 24 x 1.40 / 2.60 = 12.9 h a day
    ("cooling-run-hours", {"hours": round(24 * 1.40 / 2.60, 1)}, "with reserve", "good", PRACTICE),
    ("defrost-duration", {"duration": 30}, "as usual", "good", PRACTICE),
    (
        "coil-ice",
        {"ice": 6.35},
        "within the limit",
        "good",
        "NAVMED P-5010, chapter 1: ice not above 1/4 inch, 6.35 mm (seen)",
    ),
    ("coil-ice", {"ice": 7}, "over the limit", "poor", "the same"),
    ("store-excursion", {"duration": 4, "store": "chilled"}, "short", "good", PRACTICE),
    ("thermometer-check", {"reading": 1.0}, "true enough", "good", PRACTICE),
    # room of 6 x 4 x 2.3 m: 2 (24 + 13.8 + 9.2) = 94 m²; 150 mm foam of 0.022 W/(m K): U 0.1427; 94
    # x 55 x U
    (
        "store-heat-gain",
        {"heat": 737.8, "area": 94, "inside": -20, "outside": 35, "store": "frozen"},
        "well insulated",
        "good",
        ATP,
    ),
    (
        "store-heat-gain",
        {"heat": 1292, "area": 94, "inside": -20, "outside": 35, "store": "frozen"},
        "well insulated",
        "good",
        f"{ATP}, U 0.25",
    ),
    (
        "store-heat-gain",
        {"heat": 2068, "area": 94, "inside": -20, "outside": 35, "store": "frozen"},
        "well insulated",
        "good",
        f"{ATP}, U 0.40, the limit itself",
    ),
    (
        "refrigerant-leak-check",
        {"last": "2026-02-01", "refrigerant": "R-404A", "charge": 60, "on": "2026-08-01"},
        "in date",
        "good",
        f"{LEAKS}: 235.3 t, 6 months",
    ),
    (
        "refrigerant-leak-check",
        {"last": "2026-02-01", "refrigerant": "R-404A", "charge": 60, "on": "2026-08-02"},
        "overdue",
        "poor",
        f"{LEAKS}: 235.3 t, 6 months",
    ),
    (
        "refrigerant-leak-check",
        {"last": "2025-08-01", "refrigerant": "R-507A", "charge": 12.5, "on": "2026-08-01"},
        "in date",
        "good",
        f"{LEAKS}: 49.8 t, 12 months",
    ),
    # 60 kg in 85 m³ are 0.706 kg/m³, in 300 m³ 0.200, against 0.52
    (
        "refrigerant-practical-limit",
        {"charge": 60, "volume": 85, "refrigerant": "R-404A"},
        "over the practical limit",
        "poor",
        "EN 378-1, 0.52 kg/m³ (memory), own calculation",
    ),
    (
        "refrigerant-practical-limit",
        {"charge": 60, "volume": 300, "refrigerant": "R-404A"},
        "within the practical limit",
        "good",
        "the same",
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), ROWS)
def test_a_criterion_judges_as_its_source_does(name, values, band, rating, source):
    """Each check number comes out in its band with its rating."""
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating), source


def test_the_heat_through_a_wall_is_area_times_difference():
    """94 m² over 55 K at 0.40 W/(m² K) is 2068 W (ATP, own calculation).

    0.1427 gives 737.8 W, 7.8 W a square metre.
    """
    assert 2068 == heat_limit(94, -20, 35, "heavy")
    conductance = 1 / (1 / 8 + 0.150 / 0.022 + 1 / 15)
    assert 0.1427 == pytest.approx(conductance, abs=0.00005)
    assert 737.8 == pytest.approx(0.1427 * 94 * 55, abs=0.05)

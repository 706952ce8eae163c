"""Tank contents against the outside world.

A table's line by hand, the volume factor against a published value and our own runs.
"""

import pytest
from pint import UnitRegistry

from inspector.checklists.registry import criterion
from inspector.criteria.tanks import tank_contents as tank
from inspector.values.units import convert

FACTOR = "ASTM D1250-80 / API MPMS 11.1, constants seen in public sources"
HAND = "a straight line, by hand"

# function, arguments, expected, tolerance (half of the last digit), source
FUNCTIONS = [
    (
        tank.table_volume,
        (1.37, [(1.30, 12.40), (1.40, 13.50)]),
        13.17,
        0,
        f"{HAND}: 12.40 + 0.7 x 1.10",
    ),
    *[
        (tank.factor_15, (density, temperature), factor, 0.0000005, f"{FACTOR}, table 54B, own run")
        for density, temperature, factor in (
            (845, 35, 0.983174),
            (845, 5, 1.008351),
            (860, 40, 0.979426),
            (830, 30, 0.987006),
            (780, 30, 0.984293),
            (960, 50, 0.974998),
            (991, 50, 0.976003),
        )
    ],
    (
        tank.factor_15,
        (845, 35),
        0.9832,
        0.00005,
        f"{FACTOR}: printed tables round to four decimals",
    ),
    (
        tank.factor_15,
        (840.10, 30),
        0.987298,
        0.0000005,
        f"{FACTOR}, published example: 840.10 kg/m³, 15 K warmer, 0.987298",
    ),
    (
        tank.mass_in_air,
        (250 * 0.983174, 845),
        207.43,
        0.005,
        "by hand: 245.79 x 0.8439, 1.1 kg/m³ for air (seen)",
    ),
    (
        tank.greatest_fill,
        (845, 15, 45),
        95.52,
        0.005,
        f"{FACTOR}, by hand: 98 x factor(45) / factor(15)",
    ),
    (
        tank.greatest_fill,
        (845, 25, 45),
        96.33,
        0.005,
        f"{FACTOR}, by hand: 98 x factor(45) / factor(25)",
    ),
]


@pytest.mark.parametrize(("function", "arguments", "expected", "tolerance", "source"), FUNCTIONS)
def test_a_formula_gives_the_figure_of_its_source(function, arguments, expected, tolerance, source):
    """Each figure comes out as printed, to half of its last digit."""
    assert expected == pytest.approx(function(*arguments), abs=tolerance + 1e-12), source


def test_the_expansion_of_petrol_is_the_published_one():
    """745 kg/m³: 346.4228 / 745² + 0.4388 / 745 = 0.0012132 per kelvin, published.

    One kelvin warmer shrinks the factor by it.
    """
    assert 0.0012132 == pytest.approx(1 - tank.factor_15(745, 16), abs=2e-6)


TABLE = {
    "sounding": 1.37,
    "lower": 1.30,
    "lower_volume": 12.40,
    "upper": 1.40,
    "upper_volume": 13.50,
}
FUEL = {"volume": 250, "temperature": 35, "density": 845}
WARMING = {"temperature": 15, "warmest": 45, "density": 845}
PRACTICE = "agreement within 1 % (common practice), by hand"

JUDGEMENTS = [
    (
        "tank-table",
        {**TABLE, "claimed": 13.3},
        "agrees",
        "good",
        f"{PRACTICE}: 13.17 x 1.01 = 13.3017",
    ),
    ("tank-table", {**TABLE, "claimed": 13.31}, "more on paper", "poor", PRACTICE),
    (
        "tank-quantity",
        {"claimed": 98.9, "gauged": 100},
        "less on paper",
        "poor",
        f"{PRACTICE}: 99 to 101",
    ),
    ("fuel-quantity", {**FUEL, "claimed": 207.43}, "agrees", "good", f"{FACTOR}: 207.43 t in air"),
    (
        "fuel-quantity",
        {**FUEL, "claimed": 250 * 0.845},
        "more on paper",
        "poor",
        f"{FACTOR}: a paper that forgot the temperature says 211.25 t, 1.8 % more",
    ),
    ("free-surface", {"fill": 97.9}, "slack", None, "IS Code 2008 part B, 3.1.2, 98 % (seen)"),
    ("free-surface", {"fill": 98}, "full", None, "the same"),
    (
        "fuel-tank-fill",
        {**WARMING, "fill": 95.52},
        "room to expand",
        "good",
        "MARPOL Annex I reg. 12A, 98 % (memory), by hand: 95.52 %",
    ),
    ("fuel-tank-fill", {**WARMING, "fill": 95.53}, "too full", "poor", "the same"),
    (
        "bulk-tank-test",
        {"test_pressure": 7.2, "design_pressure": 5.516},
        "usual test pressure",
        "good",
        "1.3 x 80 psi = 7.171 bar (common practice), by hand",
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), JUDGEMENTS)
def test_a_criterion_judges_as_its_source_does(name, values, band, rating, source):
    """Each case worked by hand comes out in its band with its rating."""
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating), source


@pytest.mark.parametrize(
    ("value", "unit", "to", "name"),
    [(80, "psi", "bar", "psi"), (5, "t/m²", "lb/ft²", "t/m²"), (60, "lb/ft³", "kg/m³", "lb/ft³")],
)
def test_the_units_of_tanks_and_decks_agree_with_pint(value, unit, to, name):
    """80 psi are 5.516 bar, 5 t/m² are 1024 lb/ft², 60 lb/ft³ are 961 kg/m³.

    Pint as an independent reference.
    """
    ureg = UnitRegistry()
    pints = {
        "psi": ureg.psi,
        "bar": ureg.bar,
        "t/m²": ureg.metric_ton * ureg.g_0 / ureg.m**2,
        "lb/ft²": ureg.force_pound / ureg.ft**2,
        "lb/ft³": ureg.lb / ureg.ft**3,
        "kg/m³": ureg.kg / ureg.m**3,
    }
    assert (value * pints[unit]).to(pints[to]).magnitude == pytest.approx(
        convert(value, unit, to), rel=1e-9
    ), name

"""Superheat and subcooling: the right curve for blends, each band from both sides, and pressures
outside the table.
"""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.refrigeration.refrigerant_cycle import (
    SUBCOOLING,
    SUPERHEAT,
    subcooling,
    subcooling_bands,
    superheat,
    superheat_bands,
)


@pytest.mark.parametrize(
    ("rating", "kelvin", "place"),
    [
        ("poor", -1, "evaporator"),
        ("poor", 2.99, "evaporator"),
        ("fair", 3, "evaporator"),
        ("fair", 3.99, "evaporator"),
        ("good", 4, "evaporator"),
        ("good", 8, "evaporator"),
        ("fair", 8.01, "evaporator"),
        ("poor", 2.99, "compressor"),
        ("fair", 7.99, "compressor"),
        ("good", 8, "compressor"),
        ("good", 20, "compressor"),
        ("fair", 20.01, "compressor"),
    ],
)
def test_superheat_has_its_bands_at_each_place(rating, kelvin, place):
    """4 to 8 K at the evaporator, 8 to 20 K at the compressor, under 3 K liquid may return."""
    assert rating == superheat_bands(place, SUPERHEAT.values).band_of(kelvin).rating


@pytest.mark.parametrize(
    ("rating", "kelvin"),
    [
        ("poor", 0),
        ("poor", 2),
        ("fair", 2.01),
        ("fair", 2.99),
        ("good", 3),
        ("good", 8),
        ("fair", 8.01),
        ("fair", 12),
        ("poor", 12.01),
    ],
)
def test_subcooling_has_five_bands(rating, kelvin):
    """Short of gas to 2 K, usual from 3 to 8 K, too much above 12 K."""
    assert rating == subcooling_bands(SUBCOOLING.values).band_of(kelvin).rating


def test_superheat_of_a_blend_is_counted_from_the_dew_curve():
    """On R-407C the other curve would give 6 K more."""
    right = superheat(5, 263.7, "R-407C")
    assert right == pytest.approx(11.47, abs=0.05)
    assert 17.89 - right == pytest.approx(6.4, abs=0.1)


def test_the_barometer_of_the_day_counts():
    """On a low glass the same gauge reads a lower pressure, and the superheat is more."""
    assert (
        superheat(-14, 144, "R-22", 97)
        > superheat(-14, 144, "R-22")
        > superheat(-14, 144, "R-22", 104)
    )


def test_a_vacuum_is_remarked(judge):
    """Below atmospheric pressure air can be drawn in."""
    judgement = judge("suction-superheat", temperature=-30, pressure=-20, refrigerant="R-134a")
    assert any("air can be drawn in" in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("name", "temperature"), [("suction-superheat", -25), ("liquid-subcooling", 40)]
)
def test_a_figure_below_zero_is_poor_and_asks_to_read_again(judge, name, temperature):
    """A suction colder than dew, or a liquid line warmer than bubble, is misread or mixed."""
    judgement = judge(name, temperature=temperature)
    assert judgement.rating == "poor"
    assert any("read again" in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("name", "pressure"),
    [
        ("suction-superheat", -40),
        ("suction-superheat", 2400),
        ("liquid-subcooling", 2400),
        ("suction-superheat", -100),
    ],
)
def test_a_pressure_outside_the_table_is_refused(judge, name, pressure):
    """R-22 below -50 or above 60 °C is not guessed."""
    with pytest.raises(CannotJudge, match="outside the table"):
        judge(name, pressure=pressure)


@pytest.mark.parametrize(
    "changes",
    [{"refrigerant": "R-449A"}, {"place": "liquid line"}, {"barometer": 89}, {"temperature": 61}],
)
def test_what_lies_outside_is_refused(judge, changes):
    """A gas without a table has no superheat."""
    with pytest.raises(CannotJudge):
        judge("suction-superheat", **changes)


def test_ammonia_is_judged_like_the_others(judge):
    """-5 °C at 189 kPa gauge is about 5 K."""
    assert subcooling(25, 1065, "R-717") == pytest.approx(4.99, abs=0.05)
    assert (
        judge("suction-superheat", temperature=-5, pressure=189, refrigerant="R-717").rating
        == "good"
    )

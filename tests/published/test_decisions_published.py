"""Repair against replacement, agreement and the value of a look, against printed figures."""

import math

import pytest

from inspector.assess.agreement import agreement, kappa
from inspector.assess.verdict.annual_cost import (
    NoAnnualCost,
    Option,
    annual_cost,
    capital_recovery,
    compare,
)


@pytest.mark.parametrize(
    ("rate", "years", "expected"),
    [
        (0.08, 10, 0.149029),
        (0.10, 5, 0.263797),
        (0.08, 6, 0.216315),
        (0.08, 15, 0.116830),
        (0.06, 20, 0.087185),
    ],
)
def test_the_capital_recovery_factor_is_that_of_the_interest_tables(rate, years, expected):
    """A/P of any interest table to six decimals (compound interest factors)."""
    assert expected == round(capital_recovery(rate, years), 6)


def test_the_capital_recovery_factor_holds_at_and_near_rate_nothing():
    """1/n at rate 0; at 1e-9 the closed form 0.10000000055 (by hand: 1/n + i (n+1)/(2n))."""
    assert 0.1 == capital_recovery(0.0, 10)
    assert 0.10000000055 == pytest.approx(capital_recovery(1e-9, 10), abs=1e-15)


@pytest.mark.parametrize(
    ("rate", "refurbish", "new"),
    [
        (0.00, 70_333.33, 51_666.67),
        (0.02, 72_549.39, 57_999.72),
        (0.04, 74_829.52, 64_772.91),
        (0.06, 77_171.65, 71_962.87),
        (0.08, 79_573.62, 79_541.59),
        (0.10, 82_033.25, 87_477.94),
        (0.12, 84_548.37, 95_739.15),
        (0.15, 88_420.27, 108_667.84),
    ],
)
def test_refurbish_and_new_over_the_rates(rate, refurbish, new):
    """By hand: (P - S) A/P + S i + A for 180 000 over 6 years and 520 000 over 15 years."""
    assert refurbish == round(annual_cost(Option(180_000, 6, 10_000, 42_000), rate), 2)
    assert new == round(annual_cost(Option(520_000, 15, 60_000, 21_000), rate), 2)


def test_the_break_even_rate_and_life_are_told_and_a_small_difference_is_none():
    """By hand: equal at 8.0120 %, or at 8 % with a life of 6.0066 years."""
    found = compare(Option(180_000, 6, 10_000, 42_000), Option(520_000, 15, 60_000, 21_000), 0.08)

    assert "" == found.cheaper
    assert 0.080120 == pytest.approx(found.break_even_rate, abs=5e-7)
    assert 6.0066 == pytest.approx(found.break_even_life, abs=5e-5)


def test_a_clear_difference_names_the_cheaper_way():
    """At 15 % refurbishing is cheaper by 19 %, at 0 % replacing by 27 %."""
    ways = Option(180_000, 6, 10_000, 42_000), Option(520_000, 15, 60_000, 21_000)

    assert "refurbish" == compare(*ways, 0.15).cheaper
    assert "replace" == compare(*ways, 0.0).cheaper


def test_a_printed_case_of_keeping_against_replacing():
    """Filter press, 15 %, 10 years, from a published worked example of equivalent annual cost: 8
    532.30 against 8 615.20 a year.

    The factors printed there carry five digits, so the comparison is to 0.1. Gradients: P/G =
    ((1+i)^n - i n - 1) / (i^2 (1+i)^n).
    """
    i = 0.15
    annuity = {n: (1 - (1 + i) ** -n) / i for n in (5, 10)}
    gradient = {n: ((1 + i) ** n - i * n - 1) / (i**2 * (1 + i) ** n) for n in (5, 10)}
    later = {n: (1 + i) ** -n for n in (5, 10)}
    keep = (
        7000 * annuity[5]
        + 1000 * gradient[5]
        + 29_000 * later[5]
        + 1000 * gradient[5] * later[5]
        - 15_000 * later[10]
    )

    # what is paid in the years is brought to now first, so each way enters as its present sum
    assert 8_532.30 == pytest.approx(annual_cost(Option(keep, 10), i), abs=0.1)
    now = 27_000 + 1000 * gradient[10] - 3000 * later[10]
    assert 8_615.20 == pytest.approx(annual_cost(Option(now, 10), i), abs=0.1)


@pytest.mark.parametrize(
    ("rate", "years", "field"),
    [(-1.0, 10, "rate"), (math.nan, 10, "rate"), (0.08, 0.9, "life"), (0.08, 201, "life")],
)
def test_a_rate_or_life_that_cannot_be_is_refused_by_its_name(rate, years, field):
    """One sentence that names the field."""
    with pytest.raises(NoAnnualCost) as refusal:
        capital_recovery(rate, years)
    assert field == refusal.value.field


@pytest.mark.parametrize(
    ("table", "expected"),
    [
        ([[20, 5], [10, 15]], 0.4000),
        ([[45, 15], [25, 15]], 0.1304),
        ([[25, 35], [5, 35]], 0.2593),
        ([[8, 0], [2, 0]], 0.0),
        ([[90, 4], [4, 2]], 0.2908),
    ],
)
def test_kappa_of_the_textbook_tables(table, expected):
    """Tables of the textbooks on Cohen's kappa (memory); by hand: (po - pe) / (1 - pe)."""
    assert expected == round(kappa(table), 4)


def test_weighted_kappa_of_a_four_by_four_table():
    """Hand calculation over 65 ratings: plain 0.6145, linear weights 0.7345."""
    table = [[18, 4, 1, 0], [3, 14, 4, 0], [0, 3, 9, 2], [0, 0, 1, 6]]

    assert 0.6145 == round(kappa(table), 4)
    assert 0.7345 == round(kappa(table, weighted=True), 4)


def test_kappa_is_not_defined_where_all_lie_in_one_rating():
    """0/0 is no figure, and never 1; the sentence has the counts alone."""
    found = agreement("A", "B", {f"check-{n}": {"A": "good", "B": "good"} for n in range(10)})

    assert found.kappa is None
    assert "A and B both rated 10 checks and agree on 10." == found.sentence

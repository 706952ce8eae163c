"""The spread of a sum of work lines: closed forms, a library of statistics, and printed ranks."""

import math

import numpy as np
import pytest

from inspector.conversion.money.cost_line import BadCostLine, CostLine, standard_deviation
from inspector.conversion.money.cost_spread import spread
from inspector.conversion.money.estimate_class import estimate_class
from inspector.conversion.money.rank_correlation import correlation, ranks

# Five lines in thousands (worked by hand): steel, piping, machinery, coating, electrics
FIVE = [
    CostLine("steel", 40, 55, 95),
    CostLine("piping", 20, 30, 60),
    CostLine("machinery", 100, 130, 220),
    CostLine("coating", 15, 18, 30),
    CostLine("electrics", 60, 75, 120),
]


@pytest.mark.parametrize(
    ("index", "mean", "variance", "p10", "p50", "p80", "p90"),
    [
        (0, 63.333, 134.722, 49.083, 61.834, 74.024, 80.168),
        (1, 36.667, 72.222, 26.325, 35.505, 44.508, 49.046),
        (2, 150.0, 650.0, 118.974, 146.515, 173.524, 187.137),
        (3, 21.0, 10.5, 17.121, 20.513, 24.000, 25.757),
        (4, 85.0, 162.5, 69.487, 83.258, 96.762, 103.568),
    ],
)
def test_one_line_is_the_triangle_of_the_textbooks(index, mean, variance, p10, p50, p80, p90):
    """Mean, variance and quantiles of the triangular distribution (any textbook of probability)."""
    line = FIVE[index]

    assert mean == round(line.mean, 3)
    assert variance == round(line.variance, 3)
    assert [p10, p50, p80, p90] == [
        round(line.quantile(share), 3) for share in (0.1, 0.5, 0.8, 0.9)
    ]


@pytest.mark.parametrize(
    ("correlation", "expected"),
    [(0, 32.093), (0.2, 39.782), (0.3, 43.115), (0.5, 49.107), (0.8, 56.925), (1, 61.588)],
)
def test_the_deviation_of_the_sum_in_closed_form(correlation, expected):
    """var = S s2 + r ((S s)2 - S s2), worked by hand for the five lines."""
    assert expected == round(standard_deviation(FIVE, correlation), 3)


# Quantiles of two million (0 and 0.5) or half a million draws with another generator.
# Tolerance: four standard errors at 10 000 draws.
@pytest.mark.parametrize(
    ("correlation", "p10", "p50", "p80", "p90"),
    [
        (0.0, 315.6, 354.0, 383.8, 399.4),
        (0.3, 302.1, 352.9, 393.4, 414.7),
        (0.5, 295.0, 351.7, 399.0, 424.0),
        (0.8, 286.0, 349.6, 407.3, 437.2),
    ],
)
def test_the_quantiles_of_the_sum(correlation, p10, p50, p80, p90):
    """P10, P50, P80 and P90 of the Gaussian copula."""
    found = spread(FIVE, correlation)

    assert p50 == pytest.approx(found.p50, abs=2.0)
    assert p80 == pytest.approx(found.p80, abs=3.3)
    assert p10 == pytest.approx(found.p10, abs=3.0)
    assert p90 == pytest.approx(found.p90, abs=4.0)
    assert 356.0 == pytest.approx(found.mean)
    assert 308 == found.base


@pytest.mark.parametrize("correlation", [0.0, 0.3, 0.6])
def test_the_moments_agree_with_a_plain_simulation_by_numpy(correlation):
    """400 000 draws of the same copula by numpy agree within four standard errors."""
    generator = np.random.default_rng(7)
    common = generator.standard_normal(400_000)
    own = generator.standard_normal((len(FIVE), 400_000))
    shares = np.vectorize(lambda z: 0.5 * (1 + math.erf(z / math.sqrt(2))), otypes=[float])
    total = np.zeros(400_000)
    for line, mine in zip(FIVE, own, strict=True):
        share = shares(math.sqrt(correlation) * common + math.sqrt(1 - correlation) * mine)
        cut, width = (line.likely - line.low) / (line.high - line.low), line.high - line.low
        total += np.where(
            share <= cut,
            line.low + np.sqrt(share * width * (line.likely - line.low)),
            line.high - np.sqrt((1 - share) * width * (line.high - line.likely)),
        )
    found = spread(FIVE, correlation)

    assert total.mean() == pytest.approx(found.mean, abs=0.4)
    assert total.std() == pytest.approx(found.deviation, rel=0.026)
    assert np.quantile(total, 0.8) == pytest.approx(found.p80, abs=2.8)


def test_what_drives_the_spread_by_rank_correlation():
    """Rank correlations of independent lines with the sum, by a large simulation."""
    found = dict(spread(FIVE, 0.0).drivers)

    for name, expected in (
        ("machinery", 0.785),
        ("electrics", 0.378),
        ("steel", 0.347),
        ("piping", 0.250),
        ("coating", 0.096),
    ):
        assert expected == pytest.approx(found[name], abs=0.06)
    assert "machinery" == spread(FIVE, 0.0).drivers[0][0]


def test_rank_correlation_of_the_textbook_pairs():
    """A widely printed example gives -29/165 (memory); ties take their mean rank."""
    first = [106, 100, 86, 101, 99, 103, 97, 113, 112, 110]
    second = [7, 27, 2, 50, 28, 29, 20, 12, 6, 17]

    assert pytest.approx(-29 / 165) == correlation(ranks(first), ranks(second))
    assert 0.8208 == round(correlation([1, 2, 3, 4, 5], ranks([5, 6, 7, 8, 7])), 4)
    assert correlation([1, 2, 3], ranks([4, 4, 4])) is None


def test_the_sum_of_the_likely_costs_is_seldom_kept():
    """5.7 % of cases stay within it where lines are independent, 17.4 % at 0.5 (simulation)."""
    assert 0.057 == pytest.approx(spread(FIVE, 0.0).within, abs=0.015)
    assert 0.174 == pytest.approx(spread(FIVE, 0.5).within, abs=0.015)


@pytest.mark.parametrize(
    ("definition", "expected"),
    [
        (0, 5),
        (2, 5),
        (2.1, 4),
        (15, 4),
        (15.1, 3),
        (40, 3),
        (40.1, 2),
        (75, 2),
        (75.1, 1),
        (100, 1),
    ],
)
def test_the_class_of_an_estimate(definition, expected):
    """AACE 18R-97 by the share of definition (memory); the less certain one where two overlap."""
    assert expected == estimate_class(definition)


@pytest.mark.parametrize(
    "costs", [(2, 1, 3), (1, 3, 2), (-1, 0, 1), (1, math.nan, 2), (0, 1, math.inf)]
)
def test_costs_that_are_no_triangle_are_refused(costs):
    """One sentence that names the line."""
    with pytest.raises(BadCostLine, match="Steel"):
        CostLine("Steel", *costs)


def test_the_same_lines_give_the_same_figures():
    """No luck of the day: two runs are equal, so that two reports of one record are."""
    assert spread(FIVE, 0.3) == spread(FIVE, 0.3)

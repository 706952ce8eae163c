"""The worked case: what the work costs, what her papers ask for, and a second vessel beside her.

As in test_worked_case every expectation is written out; published formulas are named with title
and edition.
"""

from datetime import date
from math import sqrt

import pytest

from inspector.conversion.comparison.calculation import compare
from inspector.conversion.comparison.ranking import BadWeights
from inspector.conversion.comparison.scores import WEIGHTS, Ahead, SurveysAhead
from inspector.conversion.comparison.side_by_side import by_check, by_requirement, by_system
from inspector.values.cell_text import cell_text
from tests.published.a_worked_case import DAY, Worked, other, typed

# low, likely, high in thousands of what is done by the verdicts: bow repaired, aft new, winch out
LINES = ((80, 90, 130), (230, 260, 320), (40, 60, 110))


@pytest.fixture(scope="module")
def worked(tmp_path_factory):
    """The case, typed once for all steps."""
    return Worked(tmp_path_factory.mktemp("worked"), typed())


@pytest.fixture(scope="module")
def tied(tmp_path_factory):
    """The same case, all lines of it bound to one cause: what happens to a line happens to all."""
    return Worked(
        tmp_path_factory.mktemp("tied"), [*typed(), ("row/prices/one", "correlation", "1")]
    )


@pytest.fixture(scope="module")
def second(tmp_path_factory):
    """The second vessel under the same brief."""
    return Worked(tmp_path_factory.mktemp("second"), other())


# -- money --


def test_one_work_is_paid_for_once(worked):
    """By the verdicts: the bow thruster repaired (90), the aft new (260), the winch out (60)."""
    warned = [warning.replace("\u00a0", "") for warning in worked.warnings("money")]

    assert 1000 * (90 + 260 + 60) == worked.span("money", "Sum of the likely costs")[1]
    assert any(
        warning.startswith(
            "Bow thruster is priced both ways: by its verdict (refurbish) refurbishing counts, and "
            "replacing at 260000"
        )
        for warning in warned
    )
    assert any(
        warning.startswith(
            "Aft thruster is priced both ways: by its verdict (remove) replacing counts, and "
            "refurbishing at 120000"
        )
        for warning in warned
    )
    what = [row[2] for row in worked.printed("money", "Work in its sequence")]
    assert {
        "replace: bow-new (in no sum)",
        "refurbish: aft-repair (in no sum)",
        "remove: winch-out",
    } <= set(what)


@pytest.mark.parametrize(("decision", "bow"), [("retain", 90), ("remove", 260), ("refurbish", 90)])
def test_the_surveyors_own_decision_chooses_the_way(tmp_path, decision, bow):
    """His decision overrides the proposal; beside what stays only the repair counts."""
    found = Worked(tmp_path, [*typed(), ("verdict/thrusters/bow", "decision", decision)])

    assert 1000 * (bow + 260 + 60) == found.span("money", "Sum of the likely costs")[1]


def test_the_sum_of_the_likely_costs_is_not_what_to_plan_with(worked):
    """410 000 of likely costs against a mean of 440 000: every triangle leans to the dear side."""
    mean = sum(low + likely + high for low, likely, high in LINES) / 3

    assert 410 == sum(likely for _, likely, _ in LINES)
    assert 440 == pytest.approx(mean)
    assert 1000 * mean == pytest.approx(
        worked.span("money", "Cost of the priced work")[1], rel=0.01
    )
    assert any("kept in only 19 % of cases" in warning for warning in worked.warnings("money"))


def test_the_deviation_and_the_cost_not_exceeded_in_four_cases_of_five(worked):
    """Variances of triangles with 0.3 between all pairs, and P80 at 0.8416 deviations.

    A triangle has (a² + m² + b² - ab - am - bm) / 18; the sum has
    S² = sum s² + 0.3 ((sum s)² - sum s²).
    """
    variances = [(a * a + m * m + b * b - a * b - a * m - b * m) / 18 for a, m, b in LINES]
    squares, total = sum(variances), sum(sqrt(variance) for variance in variances)
    deviation = sqrt(squares + 0.3 * (total**2 - squares))

    figure = worked.figure("money", "Standard deviation")
    assert 1000 * deviation == pytest.approx(figure.span.point, rel=0.015)  # the draws' own
    # An estimated sum is shown to whole hundreds.
    shown = cell_text(figure.formula_text).replace("\u00a0", "")
    assert f"closed form {round(10 * deviation) * 100} EUR" in shown
    # Class 4 reaches to 1.5 times the middle, and the upper side of the lines is stretched until
    # its ninth tenth is there; a sum of three is nearly normal, so to one per cent.
    p50, p80, p90 = (440 + away * deviation for away in (0, 0.8416, 1.2816))
    assert 1000 * (p50 + (p80 - p50) * 0.5 * p50 / (p90 - p50)) == pytest.approx(
        worked.span("money", "Cost to plan with (P80)")[1], rel=0.01
    )


def quantile(share, low, likely, high):
    """Of a triangle: b - √((1 - p)(b - a)(b - m)) above its peak, a + √(p (b - a)(m - a)) below."""
    if share >= (likely - low) / (high - low):
        return high - sqrt((1 - share) * (high - low) * (high - likely))
    return low + sqrt(share * (high - low) * (likely - low))


def test_bound_to_one_cause_the_quantiles_simply_add(tied):
    """Where all lines rise together, the quantiles of the sum are the sums of the lines' own."""
    p10, p50, p80, p90 = (
        1000 * sum(quantile(share, *line) for line in LINES) for share in (0.1, 0.5, 0.8, 0.9)
    )

    assert (p10, p50, p90) == tuple(
        pytest.approx(end, rel=2e-3) for end in tied.span("money", "Cost of the priced work")
    )
    # 12 % defined is class 4: at its widest from 0.7 to 1.5 times the middle, wider than the lines.
    to_plan_with = p50 + (p80 - p50) * 0.5 * p50 / (p90 - p50)
    assert to_plan_with == pytest.approx(tied.span("money", "Cost to plan with (P80)")[1], rel=2e-3)
    assert (0.7 * p50, p50, 1.5 * p50) == tuple(
        pytest.approx(end, rel=2e-3) for end in tied.span("money", "Cost of the work by its class")
    )
    assert to_plan_with - 410_000 == pytest.approx(
        tied.span("money", "Contingency on the likely sum")[1], rel=0.02
    )


def test_the_class_of_the_estimate(worked):
    """12 % defined is in classes 4 and 3, and the less certain one counts (AACE 18R-97, memory)."""
    assert "this one" == worked.printed_rows("money", "Classes of estimate")["4"][3]
    reach = "class 4 estimate, which as such reaches from −30 % to +50 %"

    assert reach in worked.answer("money")


def test_the_winch_may_bring_something_in(worked):
    """20 000 to 60 000 for the winch: least cost less most sale, and the other way round."""
    low, _, high = worked.span("money", "All of it, as far as priced")

    assert (20_000, 35_000, 60_000) == worked.span("money", "Sale of what is removed")
    assert (low - 60_000, high - 20_000) == worked.span("money", "All of it less sales")[::2]


def test_all_that_is_priced_is_the_asking_price_and_the_work(tied):
    """1 500 000 asked and the work by its class; what has no price is named beside it."""
    p50 = 1000 * sum(quantile(0.5, *line) for line in LINES)

    assert (1_500_000 + 0.7 * p50, 1_500_000 + p50, 1_500_000 + 1.5 * p50) == tuple(
        pytest.approx(end, rel=2e-3) for end in tied.span("money", "All of it, as far as priced")
    )
    (gap,) = [gap for gap in tied.chapters["money"].gaps if "without a price" in gap.name]
    assert "growth of the work; work not seen yet; docking; design" in gap.why


def test_costs_that_do_not_rise_are_no_triangle(tmp_path):
    """A likely cost above the high one is named with its line, and left out of the sum."""
    found = Worked(tmp_path, [*typed(), ("scope/winch-out", "high", "50000")])

    assert (
        "Deck machinery: winch-out: the costs must rise from low over likely to high, none below "
        "0, and not be 40\u00a0000, 60\u00a0000, 50\u00a0000." in found.chapters["money"].faults
    )
    assert 1000 * (90 + 260) == found.span("money", "Sum of the likely costs")[1]


# -- papers --


def test_the_windows_of_her_papers_on_the_day(worked):
    """Anniversaries with three months either side, the bottom 36 months after the last.

    SOLAS I/8 to I/14, resolution A.1104(29).
    """
    rows = {(row[0], row[2]): row[3:] for row in worked.printed("papers", "What comes due")}

    # load line to 2033-01-31: the window around 2031-01-31 closed on the last of April
    assert ("2030-10-31 to 2031-04-30", "overdue", f"−{(DAY - date(2031, 4, 30)).days}") == rows[
        ("load line", "annual")
    ]
    # class to 2034-02-28: around 2031-02-28, closes in 24 days, so due;
    # intermediate of class from the second to the third window
    assert ("2030-11-28 to 2031-05-28", "due", str(28 - 4)) == rows[("class", "annual")]
    assert ("2030-11-28 to 2032-05-28", "in window", str(24 + 366)) == rows[
        ("class", "intermediate, class")
    ]
    assert ("by 2032-02-10", "not yet", str((date(2032, 2, 10) - DAY).days)) == rows[
        ("class", "bottom")
    ]
    assert ("2033-11-28 to 2034-02-28", "not yet", str((date(2034, 2, 28) - DAY).days)) == rows[
        ("class", "renewal")
    ]


def test_an_expiry_before_the_issue_is_a_gap(tmp_path):
    """A certificate that expires before it was issued has no window, and a gap says why."""
    found = Worked(tmp_path, [*typed(), ("certificate/class", "expires", "2028-02-28")])

    assert [
        "Expires is 2028-02-28, before the issue on 2029-03-01: read the certificate again."
    ] == [gap.why for gap in found.chapters["papers"].gaps]


# -- beside a second vessel --

BUDGET = 4_000_000
HALF = 1000 * sum(quantile(0.5, *line) for line in LINES)
YEAR = 365.25
# Of the thrusters 25 of weight were seen: bow 4 fair, 3 poor, 2 good; aft 5 poor and 11 good; the
# oil of the bow thruster, 5, waits for its bottle.
THRUSTERS = 4 * 0.6 + 3 * 0.25 + 2 + 5 * 0.25 + 11
# Each as what is assured and what may be at best.
FIRST = {
    # Hull required, thrusters useful, winch unwanted and weightless.
    "condition": tuple(
        (3.0 * 100 + 1.5 * 100 * found / 30) / 4.5 for found in (THRUSTERS, THRUSTERS + 5)
    ),
    # Fourteen are asked: twelve kept for sure; endurance is open, deck cargo not typed.
    "requirements": (100 * 12 / 14, 100),
    # Growth, docking and so on have no price; class 4 begins at 0.7 times the middle.
    "cost": (0, 100 * (1 - (1_500_000 + 0.7 * HALF) / BUDGET)),
    # Class to 2034-02-28, the bottom by 2032-02-10.
    "surveys": (50 * (1031 / YEAR / 5 + 282 / YEAR / 3),) * 2,
}
SECOND = {
    # A fair skin and a good coating; the useful thrusters were not counted.
    "condition": ((3 * 100 * 3.4 / 5) / 4.5, (3 * 100 * 3.4 / 5 + 1.5 * 100) / 4.5),
    "requirements": (0, 100),
    # Asked 1 000 000, and a fixed 100 000 of paint, which class 5 may halve.
    "cost": (0, 100 * (1 - 1_050_000 / BUDGET)),
    # Class to 2036-02-29, the bottom within 36 months of 2031-02-20.
    "surveys": (50 * (1762 / YEAR / 5 + 1023 / YEAR / 3),) * 2,
}
SHARES = {"condition": 0.4, "requirements": 0.3, "cost": 0.2, "surveys": 0.1}


@pytest.mark.parametrize(("name", "scores"), [("tied", FIRST), ("second", SECOND)])
def test_the_scores_of_both(request, name, scores):
    """Condition by need, requirements met, money against the budget, years to the two surveys."""
    found = request.getfixturevalue(name).candidate(name)

    assert scores == {
        aspect: pytest.approx((span.low, span.high), abs=0.1)
        for aspect, span in found.scores.items()
    }


def test_the_second_vessels_surveys_are_counted_by_days(second):
    """From 2031-05-04 to 2036-02-29 are 1762 days, to 2034-02-20 are 1023."""
    renewal, docking = date(2036, 2, 29), date(2034, 2, 20)

    assert (1762, 1023) == ((renewal - DAY).days, (docking - DAY).days)
    assert (
        SurveysAhead(Ahead(renewal, 1762 / YEAR), Ahead(docking, 1023 / YEAR))
        == second.candidate("second").surveys
    )


def test_who_is_first_and_of_whom_too_little_is_known(tied, second):
    """Weighted low ends; of the second 42 % is known, so she has no place."""
    found = compare([tied.candidate("first"), second.candidate("second")]).ranking
    low, high = (
        [
            sum(SHARES[aspect] * scores[aspect][end] for aspect in SHARES)
            for scores in (FIRST, SECOND)
        ]
        for end in (0, 1)
    )

    assert [("first", 1), ("second", None)] == [(place.name, place.rank) for place in found.places]
    assert low == [pytest.approx(place.total.low, abs=0.1) for place in found.places]
    assert high == [pytest.approx(place.total.high, abs=0.1) for place in found.places]
    assert 0.42 == pytest.approx(found.places[1].known, abs=0.01)
    assert () == found.swaps


def test_weights_that_weigh_nothing_are_refused(tied, second):
    """Where every aspect is given no weight there is no order, and it says so."""
    with pytest.raises(BadWeights):
        compare([tied.candidate("first"), second.candidate("second")], dict.fromkeys(WEIGHTS, 0.0))


def test_systems_and_requirements_of_both_are_in_one_row(tied, second):
    """In the order of the checklists, and empty where the second vessel has none."""
    both = [tied.candidate("first"), second.candidate("second")]
    systems = {row.id: [part is not None for part in row.parts] for row in by_system(both)}
    asked = {
        row.label: [requirement is not None for requirement in row.requirements]
        for row in by_requirement(both)
    }

    assert ["hull", "thrusters", "deck-machinery"] == list(systems)
    assert [[True, True], [True, False], [True, False]] == list(systems.values())
    assert ([True, True], [True, False]) == (
        asked["Persons berthed"],
        asked["Heaviest load on deck, of what is declared"],
    )


def test_checks_that_differ_come_first(tied, second):
    """A good skin beside a fair one tells a buyer more than two good coatings."""
    rows = by_check([tied.candidate("first"), second.candidate("second")], "hull")

    assert [("Skin", True), ("Coating", False)] == [(row.title, row.is_telling) for row in rows]
    assert [["good"], ["fair"]] == [[result.rating for result in of] for of in rows[0].results]
    assert () == by_check([tied.candidate("first")], "no-such-system")

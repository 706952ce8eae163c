"""The worked case ends: what the work costs and how far that may be off, what her papers ask for, and how she stands beside a second vessel.

As in test_worked_case every expectation stands written out; published formulas are named with title and edition.
"""

from datetime import date, timedelta
from math import sqrt

import pytest

from inspector.conversion.compare import WEIGHTS, compare
from inspector.conversion.ranking import BadWeights
from tests.published.a_worked_case import DAY, Worked, other, typed

# low, likely, high in thousands of what is done by the verdicts: bow repaired, aft new, winch out
LINES = ((80, 90, 130), (230, 260, 320), (40, 60, 110))


@pytest.fixture(scope="module")
def worked(tmp_path_factory):
    """The case, typed once for all steps."""
    return Worked(tmp_path_factory.mktemp("worked"), typed())


@pytest.fixture(scope="module")
def tied(tmp_path_factory):
    """The same case, all lines of it bound to one cause: what happens to one happens to all."""
    return Worked(tmp_path_factory.mktemp("tied"), [*typed(), ("row/prices/one", "correlation", "1")])


@pytest.fixture(scope="module")
def second(tmp_path_factory):
    """The second vessel under the same brief."""
    return Worked(tmp_path_factory.mktemp("second"), other())


# -- money ------------------------------------------------------------------------------------------------------------------------------------------

def test_one_work_is_paid_for_once(worked):
    """Both thrusters are priced both ways for the verdict; by it the bow is repaired (90) and the aft one new (260), and the winch comes out (60)."""
    warned = [one.replace("\u00a0", "") for one in worked.chapters["money"].warnings]

    assert 1000 * (90 + 260 + 60) == worked.span("money", "Sum of the likely costs")[1]
    assert any(one.startswith("Bow thruster is priced both ways: by its verdict (refurbish) refurbishing counts, and replacing at 260000") for one in warned)
    assert any(one.startswith("Aft thruster is priced both ways: by its verdict (remove) replacing counts, and refurbishing at 120000") for one in warned)
    told = [row[2] for row in worked.chapters["money"].lines[0].rows]
    assert {"replace: bow-new (in no sum)", "refurbish: aft-repair (in no sum)", "remove: winch-out"} <= set(told)


@pytest.mark.parametrize(("decision", "bow"), [("retain", 260), ("remove", 260), ("refurbish", 90)])
def test_the_surveyors_own_word_chooses_the_way(tmp_path, decision, bow):
    """His decision stands before the proposal; where it takes neither way, the dearer counts until a line is taken out."""
    found = Worked(tmp_path, [*typed(), ("verdict/thrusters/bow", "decision", decision)])

    assert 1000 * (bow + 260 + 60) == found.span("money", "Sum of the likely costs")[1]


def test_the_sum_of_the_likely_costs_is_not_what_to_plan_with(worked):
    """410 000 of likely costs against a mean of 440 000, since every triangle leans to the dear side."""
    mean = sum(low + likely + high for low, likely, high in LINES) / 3

    assert 410 == sum(likely for _, likely, _ in LINES)
    assert 440 == pytest.approx(mean)
    assert 1000 * mean == pytest.approx(worked.span("money", "Cost of the priced work")[1], rel=0.01)
    assert any("kept in only 19 % of cases" in one for one in worked.chapters["money"].warnings)


def test_the_deviation_and_the_cost_not_exceeded_in_four_cases_of_five(worked):
    """Variance of a triangle: (a² + m² + b² - ab - am - bm) / 18; with 0.3 between all pairs, S² = sum s² + 0.3 ((sum s)² - sum s²); P80 at 0.8416 S."""
    variances = [(a * a + m * m + b * b - a * b - a * m - b * m) / 18 for a, m, b in LINES]
    squares, total = sum(variances), sum(sqrt(one) for one in variances)
    deviation = sqrt(squares + 0.3 * (total**2 - squares))

    figure = worked.figure("money", "Standard deviation")
    assert 1000 * deviation == pytest.approx(figure.span.point, rel=0.015)      # the draws' own
    # told to whole hundreds
    assert f"closed form {round(10 * deviation) * 100} EUR" in figure.formula_text.replace("\u00a0", "")
    # a sum of three is nearly normal: half a per cent
    assert 1000 * (440 + 0.8416 * deviation) == pytest.approx(worked.span("money", "Cost to plan with (P80)")[1], rel=0.005)


def quantile(share, low, likely, high):
    """Of a triangle: b - √((1 - p)(b - a)(b - m)) above its peak, a + √(p (b - a)(m - a)) below."""
    if share >= (likely - low) / (high - low):
        return high - sqrt((1 - share) * (high - low) * (high - likely))
    return low + sqrt(share * (high - low) * (likely - low))


def test_bound_to_one_cause_the_quantiles_simply_add(tied):
    """Where all lines rise together, P10, P50, P80 and P90 of the sum are the sums of the lines' own: exact, and wider than with 0.3."""
    p10, p50, p80, p90 = (1000 * sum(quantile(share, *line) for line in LINES) for share in (0.1, 0.5, 0.8, 0.9))

    assert (p10, p50, p90) == tuple(pytest.approx(end, rel=2e-3) for end in tied.span("money", "Cost of the priced work"))
    assert p80 == pytest.approx(tied.span("money", "Cost to plan with (P80)")[1], rel=2e-3)
    assert p80 - 410_000 == pytest.approx(tied.span("money", "Contingency on the likely sum")[1], rel=0.02)


def test_the_class_of_the_estimate(worked):
    """12 % of the work is defined: classes 4 (1 to 15 %) and 3 (10 to 40 %) both hold it, and the less certain one counts (AACE 18R-97, memory)."""
    assert "this one" == worked.rows("money", "Classes of estimate")["4"][3]
    assert "class 4 estimate, which as such reaches from -30 % to +50 %" in worked.chapters["money"].answer


def test_the_winch_may_bring_something_in(worked):
    """20 000 to 60 000 for the winch: the least cost less the most sale, and the other way round."""
    low, _, high = worked.span("money", "Cost of the priced work")

    assert (20_000, 35_000, 60_000) == worked.span("money", "Sale of what is removed")
    assert (low - 60_000, high - 20_000) == worked.span("money", "Cost less sales")[::2]


def test_costs_that_do_not_rise_are_no_triangle(tmp_path):
    """A likely cost above the high one is told with its line, and the other lines are summed without it."""
    found = Worked(tmp_path, [*typed(), ("scope/winch-out", "high", "50000")])

    assert "Deck machinery: winch-out: the costs must rise from low over likely to high, none below 0, and not be 40000, 60000, 50000." in \
        found.chapters["money"].faults
    assert 1000 * (90 + 260) == found.span("money", "Sum of the likely costs")[1]


# -- papers -----------------------------------------------------------------------------------------------------------------------------------------

def test_the_windows_of_her_papers_on_the_day(worked):
    """Anniversaries run back from the expiry with three months either side (SOLAS I/8 to I/14, A.1104(29)); the bottom 36 months after the last."""
    rows = {(row[0], row[2]): row[3:] for row in worked.chapters["papers"].lines[0].rows}

    # load line to 2033-01-31: the window around 2031-01-31 closed on the last of April
    assert ("2030-10-31 to 2031-04-30", "overdue", str((date(2031, 4, 30) - DAY).days)) == rows[("load line", "annual")]
    # class to 2034-02-28: around 2031-02-28, shut in 24 days, so due; intermediate of class from the second to the third window
    assert ("2030-11-28 to 2031-05-28", "due", str(28 - 4)) == rows[("class", "annual")]
    assert ("2030-11-28 to 2032-05-28", "in window", str(24 + 366)) == rows[("class", "intermediate, class")]
    assert ("by 2032-02-10", "not yet", str((date(2032, 2, 10) - DAY).days)) == rows[("class", "bottom")]
    assert ("2033-11-28 to 2034-02-28", "not yet", str((date(2034, 2, 28) - DAY).days)) == rows[("class", "renewal")]


def test_an_expiry_before_the_issue_is_told(tmp_path):
    """A certificate that would expire before it was issued tells no window, and its sentence stands among what is missing."""
    found = Worked(tmp_path, [*typed(), ("certificate/class", "expires", "2028-02-28")])

    assert ["Expires is 2028-02-28, before the issue on 2029-03-01: read the certificate again."] == \
        [gap.why for gap in found.chapters["papers"].gaps]


# -- beside a second vessel -------------------------------------------------------------------------------------------------------------------------

BUDGET = 4_000_000
HALF = 1000 * sum(quantile(0.5, *line) for line in LINES)
FIRST = {
    "condition": (3.0 * 100 + 1.5 * 59) / 4.5,      # hull required, thrusters useful (capped at 59), winch unwanted and weightless
    "requirements": 100 * (7 + 2 / 2) / 9,          # seven kept for sure, endurance and berths open
    "cost": 100 * (1 - (1_500_000 + HALF) / BUDGET),
    "surveys": 0.0,                                 # one is overdue
}
SECOND = {
    "condition": 100 * (4 * 0.60 + 1 * 1.00) / 5,   # a fair skin and a good coating
    "requirements": 50.0,                           # nothing is known of speed, range, endurance and berths
    "cost": 100 * (1 - 1_100_000 / BUDGET),         # asking price and a fixed 100 000 of paint
    "surveys": 100 * 391 / 730,                     # first annual of class shuts on 2032-05-29
}
SHARES = {"condition": 0.4, "requirements": 0.3, "cost": 0.2, "surveys": 0.1}


@pytest.mark.parametrize(("name", "scores"), [("tied", FIRST), ("second", SECOND)])
def test_the_scores_of_both(request, name, scores):
    """Condition by need (3, 1.5, 0.5, 0), requirements kept, cost against the budget, days to the next survey against two years (our own scales)."""
    found = request.getfixturevalue(name).candidate(name)

    assert scores == {aspect: pytest.approx(span.middle, abs=0.05) for aspect, span in found.scores.items()}


def test_the_second_vessels_next_survey_is_counted_by_days(second):
    """From 2031-05-04 a leap year and 25 days: 366 + 25 = 391 to 2032-05-29, three months after 2032-02-29."""
    assert ("class: annual", DAY + timedelta(days=366 + 25), 391) == second.candidate("second").next_survey


def test_who_stands_first_and_at_which_weight_they_change_places(tied, second):
    """Weighted sums; with D the difference of the other aspects at their proportions, the two weigh alike at w = D / (D - d) (plain algebra)."""
    found = compare([tied.candidate("first"), second.candidate("second")]).ranking
    difference = {aspect: FIRST[aspect] - SECOND[aspect] for aspect in SHARES}

    assert ["first", "second"] == [place.name for place in found.places]
    sums = [sum(SHARES[one] * scores[one] for one in SHARES) for scores in (FIRST, SECOND)]
    assert sums == [pytest.approx(one.total.point, abs=0.05) for one in found.places]
    swaps = {swap.aspect: swap.weight for swap in found.swaps}
    for aspect, share in SHARES.items():
        rest = sum(SHARES[one] * difference[one] for one in SHARES if one != aspect) / (1 - share)
        weight = rest / (rest - difference[aspect])
        # below 0 no weight of that aspect turns the order: without condition altogether she would still be first
        assert (weight if 0 < weight < 1 else None) == pytest.approx(swaps.get(aspect), abs=0.002), aspect
    assert "condition" not in swaps
    # at that weight both sums are the same
    weight = swaps["cost"]
    even = weight * difference["cost"] + (1 - weight) * sum(SHARES[one] * difference[one] for one in SHARES if one != "cost") / 0.8
    assert 0 == pytest.approx(even, abs=0.05)
    assert (("first", "second"),) == found.open_pairs     # what is not known of the second could still turn it


def test_weights_that_weigh_nothing_are_refused(tied, second):
    """Where every aspect is given no weight there is no order, and it says so."""
    with pytest.raises(BadWeights):
        compare([tied.candidate("first"), second.candidate("second")], dict.fromkeys(WEIGHTS, 0.0))

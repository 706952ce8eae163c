"""The chapter on money: sums are money in one currency, and what is not priced keeps them open."""

import pytest

from inspector.assess.checked import Condition
from inspector.assess.model import Facts, Part, SystemPart
from inspector.assess.registers import WorkLine
from inspector.assess.verdict.word import Proposal
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.money.calculation import Sums, sums_of
from inspector.conversion.money.chapter import chapter
from inspector.conversion.money.cost_line import CostLine
from inspector.conversion.money.estimate_class import class_of_visit, estimate_class
from inspector.conversion.money.money_drawings import work_spread
from inspector.conversion.money.particulars import KINDS, UNSEEN
from inspector.conversion.money.presentation import classes_table, figures
from inspector.conversion.money.total_spread import Terms, all_of_it
from inspector.values.cell_text import cell_text
from inspector.values.quantity import Money
from tests.conversion.a_case import case

LINES = (CostLine("steel", 40_000, 55_000, 95_000), CostLine("paint", 15_000, 18_000, 30_000))
PRICES = {
    "id": "one",
    "currency": "EUR",
    "priced_on": "2030-01-01",
    "asking": "1000000",
    "ends": "extremes",
    "rise": "0",
    "laid_up": "0",
}
# A row of nothing for every kind, so that none of them is open.
NOTHING = [{"kind": kind, "likely": "0", "low": "0", "high": "0"} for kind in KINDS]


def sums(**more):
    """The sums of two lines."""
    return Sums(LINES, all_of_it(LINES, (), (), Terms(0.3, 4)), estimate_class=4, **more)


def part(identity, firmness="firm"):
    """A whole system, or its only unit, as far as money reads it."""
    condition = Condition(80.0, 60.0, 95.0, 0.75, seen=9, applicable=12)
    proposal = Proposal("refurbish", "condition", "Is refurbished.", firmness=firmness)
    return Part(identity, "Hull", condition, Facts(), proposal)


def priced(*lines, firmness="firm", offered=()):
    """A system with work lines, all words as firm as asked."""

    class Hull:
        id, name = "hull", "Hull"

    return SystemPart(Hull(), part("all"), (part("one", firmness),), lines, offered)


def line(likely, low=None, high=None, **more):
    """A work line of the hull."""
    return WorkLine("1", "hull", "all", "refurbish", "Steel", low, likely, high, **more)


def found(system, prices=None, costs=(), brief=None):
    """The sums of one system with these rows."""
    tables = {"prices": [{**PRICES, **(prices or {})}], "costs": [*NOTHING, *costs]}
    return sums_of(case(tables, brief=brief or {}, systems=(system,)))


def test_nothing_priced_is_one_sentence():
    """Without anything priced there is no figure, and the missing currency is named."""
    found = chapter(case())

    assert "nothing to sum" in found.answer
    assert () == found.figures
    assert ["Currency"] == [gap.name for gap in found.gaps][:1]


def test_a_sum_without_a_date_cannot_be_moved_to_another_year():
    """A currency alone leaves the date of the prices open."""
    found = chapter(case({"prices": [{"id": "one", "currency": "EUR"}]}))

    assert "Date of the prices" == found.gaps[0].name


def test_every_figure_is_money_in_the_currency():
    """The figures hold numbers; whole thousands are made only where they are read."""
    found = list(figures(sums(sales=Span(1000, 2000, 3000)), "EUR", correlation_given=False))

    assert [Money] * len(found) == [type(figure.cell) for figure in found]
    assert {"EUR"} == {figure.unit for figure in found}
    assert "All of it less sales" == found[-1].name


def test_all_of_it_is_closed_only_where_everything_has_a_price():
    """Asking price, a firm word, a priced line and a row of each kind: nothing is open."""
    closed = found(priced(line(100, 100, 100)))

    assert () == closed.open
    assert 1_000_100 == closed.likely


@pytest.mark.parametrize(
    ("system", "prices", "named"),
    [
        (priced(line(None)), {}, "Steel"),
        (priced(line(100, 200, 300)), {}, "Steel"),
        (priced(), {}, "the work (no line is recorded)"),
        (priced(line(100), offered=("one",)), {}, "1 line that follows from what was found"),
        (priced(line(100)), {"asking": ""}, "asking price (not typed)"),
        (priced(line(100)), {"rise": ""}, "rise of prices (by how much in a year is not typed)"),
        (priced(line(100)), {"rise": "3"}, "rise of prices (the date of the prices or the begin"),
    ],
)
def test_what_has_no_price_is_named_and_never_nothing(system, prices, named):
    """A missing amount, amounts that do not rise, no line, a line only offered, a missing rate."""
    assert any(name.startswith(named) for name in found(system, prices).open)


@pytest.mark.parametrize("kind", KINDS[:-1])
def test_each_kind_of_cost_is_priced_or_named(kind):
    """A kind without a row is open; a row of 0 closes it."""
    rows = [row for row in NOTHING if row["kind"] != kind]
    tables = {"prices": [{**PRICES, "laid_up": "2"}], "costs": rows}
    system = priced(line(100, 100, 100), firmness="so far")

    assert (kind,) == sums_of(case(tables, systems=(system,))).open


def test_work_that_was_not_seen_is_asked_only_where_a_word_is_not_firm():
    """A firm word leaves no look that could find more work."""
    rows = [row for row in NOTHING if row["kind"] != UNSEEN]
    words = {"firm": (), "at least": (UNSEEN,)}
    for firmness, expected in words.items():
        system = priced(line(100, 100, 100), firmness=firmness)
        tables = {"prices": [PRICES], "costs": rows}
        assert expected == sums_of(case(tables, systems=(system,))).open


def test_the_heads_add_up_by_hand():
    """1000 asked, 200 of work, a tenth of it as growth, 3 months at 10, 2 laid up at 5; 10 % more.

    13.04 weeks are three months: 200 + 20 + 30 + 10 = 260, times 1.1 after a year less half of the
    time in the yard.
    """
    weeks = 3 * 365.25 / 7 / 12
    costs = [
        {"kind": "growth of the work", "likely": "10", "low": "10", "high": "10"},
        {
            "kind": "supervision",
            "likely": "10",
            "low": "10",
            "high": "10",
            "per": "month in the yard",
        },
        {"kind": "lay-up", "likely": "5", "low": "5", "high": "5", "per": "month laid up"},
    ]
    prices = {"asking": "1000", "rise": "10", "begins": "2030-11-16", "laid_up": "2"}
    system = priced(line(200, 200, 200, sequence=1, weeks=weeks))
    all_of_them = found(system, prices, costs)
    years = (319 + weeks * 7 / 2) / 365.25

    assert {
        "asking price": 1000,
        "work lines": 200,
        "growth of the work": pytest.approx(20),
        "supervision": pytest.approx(30),
        "lay-up": 10,
        "rise of prices": pytest.approx(260 * (1.1**years - 1)),
    } == {head.name: head.likely for head in all_of_them.heads if head.likely}
    assert () == all_of_them.open


def test_what_is_paid_by_the_month_is_open_without_months():
    """A monthly cost is not nothing because nobody said how long."""
    costs = [
        {"kind": "supervision", "name": "Two of them", "likely": "10", "per": "month in the yard"}
    ]

    assert ("Two of them (how long the work takes is not typed beside its lines)",) == (
        found(priced(line(200, 200, 200)), costs=costs).open
    )


def test_an_end_that_nobody_typed_comes_from_the_class_and_is_listed():
    """A likely cost alone is a price: class 5 reaches from half of it to twice."""
    tables = {"prices": [PRICES]}
    made = chapter(case(tables, systems=(priced(line(100)),)))
    (only,) = found(priced(line(100))).priced

    assert (50, 100, 200) == (only.low, only.likely, only.high)
    assert "ends that were not typed" in [default.name for default in made.all_defaults]


def test_the_table_adds_up_to_the_sum_to_plan_with():
    """Heads, contingency and P80 as a reader adds them with a pencil."""
    made = chapter(
        case({"prices": [PRICES], "costs": NOTHING}, systems=(priced(line(300, 200, 700)),))
    )
    table = next(table for table in made.figure_tables if table.title == "All of the money")
    amounts = {row[0]: row[1].likely for row in table.rows if row[1] is not None}
    heads = [
        row[1].likely for row in table.rows[: list(amounts).index("sum of the likely amounts")]
    ]

    assert sum(heads) == amounts["sum of the likely amounts"]
    assert amounts["to plan with (P80)"] == pytest.approx(
        amounts["sum of the likely amounts"] + amounts["contingency"]
    )


@pytest.mark.parametrize(("budget", "word"), [("2000000", "100 %"), ("900000", "0 %")])
def test_the_budget_is_kept_or_passed(budget, word):
    """The share of cases within it stands in the answer, and what passes it is a warning."""
    tables = {"prices": [PRICES], "costs": NOTHING}
    made = chapter(case(tables, brief={"budget": budget}, systems=(priced(line(300, 200, 700)),)))

    assert f"is kept in {word} of cases" in cell_text(made.answer).replace("\u00a0", " ")
    passed = [cell_text(warning) for warning in made.warnings if "passes" in cell_text(warning)]
    assert (word == "0 %") == bool(passed)


@pytest.mark.parametrize(("given", "listed"), [(False, 1), (True, 0)])
def test_the_common_cause_is_listed_where_nobody_gave_it(given, listed):
    """A default is named with the figure that depends on it."""
    found = figures(sums(), "EUR", correlation_given=given, ends="extremes")
    work = next(figure for figure in found if figure.name == "Cost of the priced work")

    assert listed == len(work.defaults)


def test_the_class_of_this_estimate_is_marked():
    """One of the five classes, with signs that a reader sees."""
    table = classes_table(4)
    rows = [[cell_text(cell, with_unit=False) for cell in row] for row in table.rows]

    assert ["4", "1 to 15", "−30 to −15", "+20 to +50", "this one"] == rows[1]
    assert 1 == sum(row[-1] == "this one" for row in rows)


@pytest.mark.parametrize(("definition", "expected"), [(None, 5), (1, 5), (12, 4), (90, 4)])
def test_a_visit_is_no_better_than_class_four(definition, expected):
    """However much of the work is defined, only a yard's quotation claims more."""
    assert expected == class_of_visit(definition)


@pytest.mark.parametrize("definition", [-1, 101])
def test_a_share_of_definition_beyond_its_ends_is_refused(definition):
    """The sentence names what would be right."""
    with pytest.raises(ConversionError, match="must be 0 to 100 %"):
        estimate_class(definition)


def test_the_first_bar_holds_the_lines_and_their_class():
    """One bar: at least as wide as either, with four cases in five marked on it."""
    whole = sums()
    bar = work_spread(whole, "EUR").bars[0]
    lines = whole.spread

    assert bar.low <= min(lines.p10, 0.7 * lines.p50) + 1e-6
    assert bar.high >= max(lines.p90, 1.5 * lines.p50) - 1e-6
    assert bar.point < bar.limit < bar.high

"""What is asked, one line each: the worst first, the ask beside the offer, one place to go to."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.asks.ask_bar import ask_bar
from inspector.conversion.asks.ask_lines import (
    MET,
    NOT_KNOWN,
    NOT_MET,
    NOT_SURE,
    WORST_FIRST,
    AskLine,
    ask_lines,
    counts,
    margin,
    state_of,
)
from inspector.conversion.asks.ask_words import not_asked, offer_of, opening, title_of
from inspector.conversion.asks.next_entry import next_entry
from inspector.conversion.core.chapter import Chapter, Requirement
from inspector.conversion.core.figure import Gap
from inspector.conversion.core.span import Span
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import WEIGHTS, case

numbers = st.floats(-1e5, 1e5, allow_nan=False)
offers = st.none() | st.lists(numbers, min_size=3, max_size=3).map(lambda at: Span(*sorted(at)))
requirements = st.builds(
    Requirement,
    id=st.sampled_from(["range", "gm", "other"]),
    label=st.just("Something"),
    asked=numbers,
    unit=st.just("m"),
    offered=offers,
    least=st.booleans(),
)


def asked(id="range", asked=9000.0, unit="nmi", offered=None, **more):
    return Requirement(id, id.capitalize(), asked, unit, offered, **more)


def line(requirement, chapter="range"):
    return AskLine(requirement, chapter, state_of(requirement))


@pytest.mark.parametrize(
    ("offered", "least", "state"),
    [
        (Span(9000, None, 9500), True, MET),
        (Span(8000, None, 8999), True, NOT_MET),
        (Span(8000, 9100, 9500), True, NOT_SURE),
        (None, True, NOT_KNOWN),
        (Span(9000, None, 9500), False, NOT_SURE),
        (Span(100, None, 9000), False, MET),
        (Span(9001, None, 9002), False, NOT_MET),
    ],
)
def test_a_line_is_met_only_where_the_whole_span_agrees(offered, least, state):
    """Both ends decide; an exact hit is met; without an offer nothing is known."""
    assert state == state_of(asked(offered=offered, least=least))


@given(st.lists(requirements, max_size=9))
def test_the_worst_comes_first_and_nothing_is_left_out(found):
    """Every requirement is one line; no state comes before a worse one; counts add up."""
    chapters = [Chapter("range", "Range", "", requirements=tuple(found))]
    lines = ask_lines(chapters)

    order = [WORST_FIRST.index(each.state) for each in lines]
    assert sorted(order) == order
    assert len(found) == len(lines) == sum(counts(lines).values())


@given(requirements)
def test_a_margin_has_the_sign_of_the_likely_value(requirement):
    """Above zero is the good side, whichever side is asked for."""
    found = margin(requirement)
    if requirement.offered is not None:
        beyond = requirement.offered.point - requirement.asked
        assert found == 0 or (found > 0) == ((beyond > 0) == requirement.least)


@given(requirements)
def test_everything_on_a_bar_is_on_it_and_in_its_order(requirement):
    """Shares of the length between nothing and all of it, low before likely before high."""
    bar = ask_bar(requirement)
    if bar is not None:
        assert 0 <= bar.low <= bar.likely <= bar.high <= 1
        assert 0 <= bar.asked <= 1


def test_an_ask_that_is_certain_and_hit_has_no_bar():
    """Forty berths of forty asked are one point, which tells nothing more than the words."""
    assert ask_bar(asked("persons", 40.0, "", Span.exact(40))) is None


def test_no_line_reads_as_so_much_of_nothing():
    """The ask of every line is in its title, and the offer beside it has its span."""
    requirement = asked("load-line", 6.4, "m", Span(5.4, 5.43, 5.46), least=False)

    assert "Load line, at most 6.4 m" == cell_text(title_of(requirement))
    assert "5.43 m (5.4 to 5.46 m)" == cell_text(offer_of(line(requirement)))


def test_what_decides_is_named_beside_the_offer():
    """The few words of the chapter come after the figures."""
    requirement = asked("endurance", 45.0, "days", Span(5, 19, 50), binds="waste fills first")

    assert "19 days (5 to 50 days): waste fills first" == cell_text(offer_of(line(requirement)))


def test_what_is_missing_takes_the_place_of_an_offer():
    """Not a number, but the names of what would make one."""
    requirement = asked(lacks=(Gap("Main engines", "why"), Gap("Fuel tanks", "why")))

    assert "Missing: main engines and fuel tanks." == cell_text(offer_of(line(requirement)))


def test_a_near_miss_is_not_rounded_onto_the_ask():
    """A reader must see why it is not met."""
    requirement = asked("range", 9000.0, "nmi", Span.exact(8999.6))

    assert "9000 nmi" not in cell_text(offer_of(line(requirement)))


def test_the_page_opens_with_how_many_are_met_and_what_is_worst():
    """One sentence for the client."""
    lines = ask_lines(
        [
            Chapter(
                "range",
                "Range",
                "",
                requirements=(
                    asked(offered=Span.exact(9500)),
                    asked("endurance", 45.0, "days", Span(5, 19, 40)),
                    asked("gm", 0.15, "m"),
                ),
            )
        ]
    )
    assert (
        "1 of 3 are met; 1 not met and 1 not known. First of all endurance, 45 days: 19 days "
        "(5 to 40 days)." == cell_text(opening(lines))
    )
    assert "All 1 are met." == cell_text(opening(lines[2:]))
    assert "Nothing is asked yet" in cell_text(opening(()))


def test_the_brief_is_told_what_it_leaves_open():
    """A field that is empty or blank has no line, so it is named."""
    brief = {"speed": "12", "range": " ", "persons": "40"}

    assert ("range", "endurance", "budget") == not_asked(brief)


@pytest.mark.parametrize(
    ("tables", "requirement", "table", "words"),
    [
        ({}, asked("load-line", 6.4, "m"), "hydrostatics", "type hydrostatics"),
        (
            {"hydrostatics": [{"id": "one", "draught": "5"}], "weights": WEIGHTS},
            asked("load-line", 6.4, "m"),
            "hydrostatics",
            "complete hydrostatics",
        ),
        ({}, asked("load-line", 6.4, "m", Span.exact(6.5), least=False), "", "see what decides"),
        ({}, asked("range", 9000.0, "nmi", Span(8000, 9100, 9500)), "tanks", "make it surer"),
    ],
)
def test_each_line_that_is_not_met_leads_to_one_place(tables, requirement, table, words):
    """An empty table is typed, a partly filled one completed, a shortfall looked into."""
    found = next_entry(line(requirement), Chapter("range", "Range", ""), case(tables).tables)

    assert table == found.table
    assert found.words.startswith(words)


def test_nothing_is_to_be_typed_for_what_is_met():
    """A line that is met leads nowhere."""
    requirement = asked(offered=Span.exact(9500))

    assert next_entry(line(requirement), Chapter("range", "", ""), case().tables) is None

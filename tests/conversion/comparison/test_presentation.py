"""What the comparison shows is typed, and reads the same on the page and in the PDF."""

from datetime import date

import pytest

from inspector.assess.checked import Condition
from inspector.assess.model import Assessment, Facts, Part, WorkCost
from inspector.assess.verdict.word import Proposal
from inspector.conversion.comparison import presentation
from inspector.conversion.comparison.calculation import Candidate
from inspector.conversion.comparison.presentation import brief_rows
from inspector.conversion.comparison.ranking import Scored, rank
from inspector.conversion.comparison.scores import NextSurvey
from inspector.conversion.core.chapter import Requirement
from inspector.conversion.core.span import Span
from inspector.values.cell_text import cell_text


def candidate(requirements=(), cost=None, unpriced=0, survey=None):
    """A candidate with as much as a row needs."""
    return Candidate(
        "one", "Veskara", Assessment(), requirements, cost, "EUR", unpriced, survey, {}
    )


def printed(entry, system="si"):
    """An entry as a reader sees it, with plain spaces."""
    return tuple(
        cell_text(cell, system).replace("\u00a0", " ") for cell in (entry.main, entry.detail)
    )


def row(candidates, label):
    """The entries of one row."""
    return next(found.entries for found in brief_rows(candidates) if found.label == label)


@pytest.mark.parametrize(
    ("offered", "expected"),
    [
        (Span.exact(12), ("met", "12 kn of 10 kn asked")),
        (Span.exact(8), ("not met", "8 kn of 10 kn asked, short by 2 kn")),
        (Span(9, None, 11), ("not known", "9 kn of 10 kn asked")),
        (None, ("not known", "")),
    ],
)
def test_a_requirement_in_words(offered, expected):
    """Whether it is met, what is offered, and how much is missing."""
    asked = Requirement("speed", "Speed", 10, "kn", offered)
    (entry,) = row([candidate((asked,))], "Speed")

    assert expected == printed(entry)


def test_a_requirement_in_the_readers_units():
    """The same entry is in tonnes for one reader and in long tons for another."""
    asked = Requirement("load", "Load on deck", 40, "t", Span.exact(50))
    (entry,) = row([candidate((asked,))], "Load on deck")

    assert "50 t of 40 t asked" == printed(entry)[1]
    assert "49.2 long ton of 39.4 long ton asked" == printed(entry, "us")[1]


def test_a_candidate_without_a_requirement_has_no_entry():
    """It is not on the list of that vessel, which is not the same as not known."""
    asked = Requirement("speed", "Speed", 10, "kn", Span.exact(12))
    entries = row([candidate((asked,)), candidate()], "Speed")

    assert [True, False] == [entry is not None for entry in entries]


def test_the_cost_is_rounded_as_far_as_an_estimate_may_claim():
    """Whole thousands above a hundred thousand, with the lines that carry no price."""
    vessel = candidate(cost=Span(1_234_567, 2_345_678, 3_456_789), unpriced=2)
    (entry,) = row([vessel], "Cost to reach the brief")

    expected = ("2 346 000 EUR", "1 235 000 to 3 457 000 EUR; 2 lines without a price")
    assert expected == printed(entry)


def test_what_is_not_priced_or_dated_is_not_known():
    """One word for both, and no figure."""
    (cost,) = row([candidate()], "Cost to reach the brief")
    (survey,) = row([candidate()], "Days to the next survey")

    assert [("not known", "")] * 2 == [printed(cost), printed(survey)]


def test_an_overdue_survey_has_a_minus_sign():
    """Days are a figure like any other, so that no hyphen is printed for a minus."""
    vessel = candidate(survey=NextSurvey("class: annual", date(2031, 5, 4), -12))
    (entry,) = row([vessel], "Days to the next survey")

    assert ("−12", "class: annual, 2031-05-04") == printed(entry)


def test_a_brief_that_asks_nothing_says_so():
    """The page is not left with an empty table."""
    assert presentation.NOTHING_ASKED == brief_rows([candidate()])[0].label


def test_the_ranking_in_words():
    """Score, span, weights, and the weight at which two change places."""
    scored = [
        Scored("Veskara", {"condition": Span(60, 70, 80), "cost": Span.exact(40)}),
        Scored("Ormund", {"condition": Span.exact(50), "cost": Span.exact(80)}),
    ]
    found = rank(scored, {"condition": 3, "cost": 1})
    first = found.places[0]

    assert ("Veskara", "62.5", "55 to 70") == (
        first.name,
        cell_text(presentation.score(first)),
        cell_text(presentation.reach(first)),
    )
    assert "Weights: condition 75 %; cost 25 %." == cell_text(presentation.weights_sentence(found))
    assert [
        "Veskara and Ormund change places when cost weighs 33.3 % (now 25.0 %).",
        "Veskara and Ormund change places when condition weighs 66.7 % (now 75.0 %).",
    ] == [cell_text(swap) for swap in presentation.swap_sentences(found)]
    assert ["Veskara and Ormund are not separable with what was seen."] == (
        presentation.remarks(found)
    )


def test_a_part_in_words():
    """How much was not seen, and what the work on it likely costs, as typed."""
    part = Part(
        "all",
        "Thrusters",
        Condition(80.0, 60.0, 95.0, 0.75, seen=9, applicable=12),
        Facts(),
        Proposal("refurbish", "condition", "What is poor is refurbished."),
        cost=WorkCost("work on it", 185_250.0),
    )
    cost = cell_text(presentation.likely_work(part, "EUR")).replace("\u00a0", " ")

    assert "3 of 12 not seen" == presentation.unseen(part)
    assert "work on it likely 185 250 EUR" == cost

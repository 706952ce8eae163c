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
from inspector.conversion.comparison.scores import Ahead, SurveysAhead
from inspector.conversion.core.chapter import Requirement
from inspector.conversion.core.span import Span
from inspector.conversion.money.calculation import Sums
from inspector.conversion.money.total_spread import AllOfIt, Tenths
from inspector.values.cell_text import cell_text

BRIEF = {"speed": "10"}


def candidate(requirements=(), cost=None, open_costs=(), surveys=None, brief=None):
    """A candidate with as much as a row needs."""
    whole = None if cost is None else AllOfIt(None, None, cost, None)
    return Candidate(
        "one",
        "Veskara",
        Assessment(brief=BRIEF if brief is None else brief),
        requirements,
        Sums((), whole, open=open_costs),
        "EUR",
        surveys or SurveysAhead(),
        {},
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
    asked = Requirement("deck-cargo", "Load on deck", 40, "t", Span.exact(50))
    (entry,) = row([candidate((asked,))], "Load on deck")

    assert "50 t of 40 t asked" == printed(entry)[1]
    assert "49.2 long ton of 39.4 long ton asked" == printed(entry, "us")[1]


def test_one_list_is_asked_of_every_candidate():
    """What no chapter of a vessel says is not known of her, and never left out."""
    asked = Requirement("speed", "Speed", 10, "kn", Span.exact(12))
    entries = row([candidate((asked,)), candidate()], "Speed")

    assert ["met", "not known"] == [printed(entry)[0] for entry in entries]
    labels = [found.label for found in brief_rows([candidate()])]
    assert "Draught at the load-line mark" in labels
    assert "Range" not in labels


def test_the_cost_is_rounded_as_far_as_an_estimate_may_claim():
    """Whole thousands above a hundred thousand, with the things that have no price."""
    cost = Tenths(1_234_567, 2_345_678, 3_000_000, 3_456_789)
    (closed,) = row([candidate(cost=cost)], "All of the money")
    (open_,) = row([candidate(cost=cost, open_costs=("docking", "design"))], "All of the money")

    assert ("2 346 000 EUR", "1 235 000 to 3 457 000 EUR") == printed(closed)
    expected = (
        "at least 2 346 000 EUR",
        "1 235 000 to 3 457 000 EUR; 2 things without a price",
    )
    assert expected == printed(open_)


def test_what_is_not_priced_or_dated_is_not_known():
    """One word for all, and no figure."""
    rows = ("All of the money", "Years to class renewal", "Years to docking")
    entries = [row([candidate()], label)[0] for label in rows]

    assert [("not known", "")] * 3 == [printed(entry) for entry in entries]


def test_an_overdue_survey_has_a_minus_sign():
    """Years are a figure like any other, so that no hyphen is printed for a minus."""
    vessel = candidate(surveys=SurveysAhead(docking=Ahead(date(2031, 5, 4), -1.3)))
    (entry,) = row([vessel], "Years to docking")

    assert ("−1.3", "by 2031-05-04") == printed(entry)


def test_the_ranking_in_words():
    """What is assured, span, share known, weights, and the weight at which two change places."""
    scored = [
        Scored("Veskara", {"condition": Span(60, 70, 80), "cost": Span.exact(40)}),
        Scored("Ormund", {"condition": Span.exact(50), "cost": Span.exact(60)}),
        Scored("Talgate", {"condition": Span(0, None, 90), "cost": Span.exact(60)}),
    ]
    found = rank(scored, {"condition": 3, "cost": 1})
    first = found.places[0]

    assert ("Veskara", "55.0", "55 to 70", "85 %") == (
        first.name,
        cell_text(presentation.score(first)),
        cell_text(presentation.reach(first)),
        cell_text(presentation.known(first)).replace("\u00a0", " "),
    )
    assert "Weights: condition 75 %; cost 25 %." == cell_text(presentation.weights_sentence(found))
    assert [
        "Veskara and Ormund change places when cost weighs 33.3 % (now 25.0 %).",
        "Veskara and Ormund change places when condition weighs 66.7 % (now 75.0 %).",
    ] == [cell_text(swap).replace("\u00a0", " ") for swap in presentation.swap_sentences(found)]
    assert [
        "Talgate is not rankable: 32 % of what is weighed is known, and a place needs 50 %.",
    ] == [cell_text(remark).replace("\u00a0", " ") for remark in presentation.remarks(found)]


def test_the_ranking_is_drawn_as_spans_with_their_rank():
    """What is assured is the low end of each bar, and the label says who has no place."""
    scored = [
        Scored("Veskara", {"condition": Span(60, 70, 80)}),
        Scored("Talgate", {"condition": Span(0, None, 90)}),
    ]
    bars = presentation.ranking_bars(rank(scored, {"condition": 1})).bars

    assert [("1. Veskara", 60, 80), ("– Talgate", 0, 90)] == [
        (bar.label, bar.low, bar.high) for bar in bars
    ]


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

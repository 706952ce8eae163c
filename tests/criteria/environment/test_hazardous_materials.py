"""Hazardous materials by date.

Each date from both sides, the unknown date, and what is never said.
"""

import pytest

from inspector.checklists.registry import criterion

NONE, SEEN = "no report seen", "report seen"
BY_DATE = ("asbestos", "pcb", "lead-paint", "ozone-depleting")


@pytest.mark.parametrize("name", BY_DATE)
def test_an_unknown_date_counts_as_the_worst(judge, name):
    """No date is no excuse: survey required."""
    judgement = judge(name, papers=NONE, built=None)
    assert ("survey required", "poor") == (judgement.band, judgement.rating)


@pytest.mark.parametrize("name", BY_DATE)
def test_where_a_report_was_seen_the_date_rates_nothing(judge, name):
    """The report decides, and the note says so."""
    judgement = judge(name, papers=SEEN, built="1976-05-31")
    assert judgement.rating is None
    assert any("decides, not the date" in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("said", "refitted"),
    [("presumed too", "2002-06-30"), ("clears only what it replaced", "2002-07-01")],
)
def test_a_refit_clears_only_what_it_replaced(judge, said, refitted):
    """The build counts on; the refit is reported beside it."""
    judgement = judge("asbestos", built="1998-05-31", refitted=refitted)
    assert "presumed until sampled" == judgement.band
    assert any(said in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("name", "band", "rating", "built"),
    [
        ("asbestos", "presumed until sampled", "poor", "2002-06-30"),
        ("asbestos", "possible, sample", "fair", "2002-07-01"),
        ("asbestos", "possible, sample", "fair", "2010-12-31"),
        ("asbestos", "prohibited when built, sample", "fair", "2011-01-01"),
        ("pcb", "presumed until sampled", "poor", "1979-12-31"),
        ("pcb", "suspect", "fair", "1980-01-01"),
        ("pcb", "suspect", "fair", "1990-12-31"),
        ("pcb", "by document only", None, "1991-01-01"),
        ("lead-paint", "suspect until tested", "poor", "1989-12-31"),
        ("lead-paint", "unknown coats still tested", "fair", "1990-01-01"),
    ],
)
def test_each_date_changes_the_presumption_on_its_day(judge, name, band, rating, built):
    """The day of the ban belongs to the ban."""
    judgement = judge(name, papers=NONE, built=built)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize("name", [*BY_DATE, "halon"])
@pytest.mark.parametrize("built", [None, "1976-05-31", "2000-01-01", "2008-05-31", "2021-05-31"])
@pytest.mark.parametrize("papers", [NONE, SEEN])
def test_no_date_ever_clears_a_vessel(name, built, papers):
    """Never "free of", never a good rating by age."""
    values = (
        {"cylinders": 0, "installed": built}
        if name == "halon"
        else {"papers": papers, "built": built}
    )
    judgement = criterion(name).apply(values)
    assert judgement.rating != "good"
    assert not any(
        "free of" in text for text in (judgement.band, judgement.sentence, *judgement.notes)
    )

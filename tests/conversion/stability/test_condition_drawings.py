"""KG against its limit and draughts against the load line, as drawn."""

from inspector.conversion.stability.calculation import calculate
from inspector.conversion.stability.chapter import chapter
from inspector.conversion.stability.loading.condition_drawings import (
    DRAUGHT_TITLE,
    KG_TITLE,
    condition_drawings,
)
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import BOOKLET, WEIGHTS, case


def drawn(booklet=None):
    of = case({"hydrostatics": [{**BOOKLET, **(booklet or {})}], "weights": WEIGHTS})
    return {one.title: one for one in condition_drawings(calculate(of))}


def test_the_limit_is_on_the_kg_that_it_is_for():
    """A limit of the fluid KG is a stroke on that bar, and on no other."""
    for is_for, name in (("fluid", "after, with free surfaces"), ("solid", "after, solid")):
        bars = drawn({"limit_kg": "6.9", "limit_is": is_for})[KG_TITLE].bars

        assert [name] == [bar.label for bar in bars if bar.limit is not None]
        assert 6.9 == next(bar.limit for bar in bars if bar.label == name)


def test_before_and_after_stand_side_by_side():
    """The booklet's KG comes first, with and without its free surfaces."""
    drawing = drawn()[KG_TITLE]

    assert ["before, solid", "before, with free surfaces", "after, solid"] == [
        bar.label for bar in drawing.bars[:3]
    ]
    assert 6.4 == drawing.bars[0].low
    assert not drawing.from_zero
    assert cell_text(drawing.described).startswith("KG: before, solid 6.40 m; ")


def test_the_load_line_is_at_the_mark_amidships():
    """The greatest draught limits the mark, and not the ends."""
    bars = drawn()[DRAUGHT_TITLE].bars

    assert [None, 6.1, None] == [bar.limit for bar in bars]
    assert bars[0].low < bars[2].low


def test_nothing_is_drawn_of_nothing():
    """Without a booklet there is no drawing and no fault."""
    assert [] == list(condition_drawings(calculate(case())))


def test_the_load_line_is_asked_as_a_draught():
    """The ask is the greatest draught, and the deadweight left is named beside it."""
    of = case({"hydrostatics": [BOOKLET], "weights": WEIGHTS})
    asked = next(one for one in chapter(of).requirements if one.id == "load-line")

    assert (6.1, "m", False) == (asked.asked, asked.unit, asked.least)
    assert 4.5 < asked.offered.low <= asked.offered.high < 6.1
    assert cell_text(asked.binds).endswith("t left")

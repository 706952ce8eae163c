"""Dynamic positioning: the build date picks the text, each count one short is named, and no class
is
granted.
"""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.positioning.dp_equipment import CIRC_645, CIRC_1580, ITEMS

# text, class, computers, references, heading, motion, wind, batteries; class practice (memory),
# three references in classes
# 2 and 3 and a supply for each computer (seen)
CASES = [
    (CIRC_645, 1, (1, 1, 1, 1, 1, 0)),
    (CIRC_645, 2, (2, 3, 3, 2, 2, 2)),
    (CIRC_645, 3, (3, 3, 3, 3, 3, 3)),
    (CIRC_1580, 1, (1, 2, 1, 1, 1, 1)),
    (CIRC_1580, 2, (2, 3, 3, 3, 3, 2)),
    (CIRC_1580, 3, (3, 3, 3, 3, 3, 3)),
]
BUILT = {CIRC_645: "2008-05-31", CIRC_1580: "2018-05-31"}


def counted(counts):
    """Return counts by the name of their item."""
    return dict(
        zip(("computers", "references", "heading", "motion", "wind", "ups"), counts, strict=True)
    )


@pytest.mark.parametrize(("source", "dp_class", "counts"), CASES, ids=lambda case: str(case)[-40:])
def test_exactly_enough_is_consistent_with_the_class(judge, source, dp_class, counts):
    """The least counts are enough, and the judgement says consistent and not classed."""
    judgement = judge(
        "dp-equipment", built=BUILT[source], class_claimed=dp_class, **counted(counts)
    )
    assert (f"equipment consistent with class {dp_class}", "good") == (
        judgement.band,
        judgement.rating,
    )
    assert source == judgement.source
    assert any("the class itself depends on" in note for note in judgement.notes)


@pytest.mark.parametrize(("source", "dp_class", "counts"), CASES, ids=lambda case: str(case)[-40:])
def test_each_item_one_short_is_named(judge, source, dp_class, counts):
    """One missing piece is enough to be poor; being recalled practice, it never fails."""
    for name, need in counted(counts).items():
        if need == 0:
            continue
        short = {**counted(counts), name: need - 1}
        judgement = judge("dp-equipment", built=BUILT[source], class_claimed=dp_class, **short)
        assert judgement.rating == "poor"
        assert f"1 of the {ITEMS[name]}" in judgement.sentence
        assert judgement.value < dp_class


@pytest.mark.parametrize(
    ("heading", "decides", "rating"),
    [
        (3, None, "good"),
        (2, None, "poor"),
        (2, "yes", "poor"),
        (2, "no", "good"),
        (1, "no", "poor"),
    ],
)
def test_class_two_asks_three_heading_sensors_where_control_depends_on_them(
    judge, heading, decides, rating
):
    """MSC/Circ.645, 3.4.4 (memory): three systems where control is fully dependent; not known
    counts as dependent.
    """
    judgement = judge("dp-equipment", heading=heading, heading_decides=decides)
    assert rating == judgement.rating


@pytest.mark.parametrize("dp_class", ["2", "3"])
@pytest.mark.parametrize(
    ("computers", "ups", "rating"),
    [(3, 2, "poor"), (3, 3, "good"), (3, 4, "good"), (4, 3, "poor")],
)
def test_each_computer_has_its_own_supply(judge, dp_class, computers, ups, rating):
    """MSC/Circ.645, 3.4 (seen as quoted): a supply for each computer system, so that a failure of
    power affects no more than one computer.
    """
    counts = {"references": 3, "heading": 3, "motion": 3, "wind": 3}
    judgement = judge(
        "dp-equipment", class_claimed=dp_class, computers=computers, ups=ups, **counts
    )
    assert rating == judgement.rating


def test_class_one_needs_no_supply_for_each_computer(judge):
    """Class 1 has no redundancy: by the older circular no supply is asked."""
    assert "good" == judge("dp-equipment", class_claimed="1", ups=0).rating


@pytest.mark.parametrize(
    ("expected", "built"),
    [(CIRC_645, "2017-06-08"), (CIRC_1580, "2017-06-09"), (CIRC_645, "1994-07-01")],
)
def test_the_build_date_and_not_today_picks_the_text(judge, expected, built):
    """Up to 8 June 2017 the older circular, from the 9th the newer."""
    assert expected == judge("dp-equipment", built=built).source


def test_a_vessel_older_than_both_texts_is_not_judged(judge):
    """Before 1 July 1994 neither circular speaks."""
    with pytest.raises(CannotJudge, match="below 1994-07-01"):
        judge("dp-equipment", built="1994-06-30")


def test_less_equipment_than_any_class_reaches_zero(judge):
    """The value is the highest class the counts are consistent with."""
    judgement = judge("dp-equipment", computers=0)
    assert (judgement.value, judgement.limit, judgement.margin) == (0, 2, -2)


@pytest.mark.parametrize("count", [-1, 2.5, "two", 21])
def test_a_count_is_a_whole_number_of_pieces(judge, count):
    """Anything else is refused."""
    with pytest.raises(CannotJudge):
        judge("dp-equipment", wind=count)

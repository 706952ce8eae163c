"""Dynamic positioning: the build date picks the text, each count one short is told, and no class is granted."""

import pytest

from inspector.criteria.dynamic_positioning import CIRC_645, CIRC_1580, COUNTS, ITEMS
from inspector.criteria.judgement import CannotJudge

CASES = [(source, dp_class) for source in COUNTS for dp_class in COUNTS[source]]
BUILT = {CIRC_645: "2008-05-31", CIRC_1580: "2018-05-31"}


def counted(source, dp_class):
    """Return just enough equipment for a class."""
    return dict(zip(ITEMS, COUNTS[source][dp_class], strict=True))


@pytest.mark.parametrize(("source", "dp_class"), CASES, ids=lambda case: str(case)[-40:])
def test_exactly_enough_is_consistent_with_the_class(judge, source, dp_class):
    """The least counts are enough, and the judgement says consistent and not classed."""
    judgement = judge("dp-equipment", built=BUILT[source], class_claimed=dp_class, **counted(source, dp_class))
    assert (f"equipment consistent with class {dp_class}", "good") == (judgement.band, judgement.rating)
    assert source == judgement.source
    assert any("the class itself rests on" in note for note in judgement.notes)


@pytest.mark.parametrize(("source", "dp_class"), CASES, ids=lambda case: str(case)[-40:])
def test_each_item_one_short_is_told_by_name(judge, source, dp_class):
    """One missing piece is enough to be poor; being recalled practice, it never fails."""
    for name, need in counted(source, dp_class).items():
        if need == 0:
            continue
        short = {**counted(source, dp_class), name: need - 1}
        judgement = judge("dp-equipment", built=BUILT[source], class_claimed=dp_class, **short)
        assert judgement.rating == "poor"
        assert f"1 of the {ITEMS[name]}" in judgement.sentence
        assert judgement.value < dp_class


@pytest.mark.parametrize(
    ("expected", "built"), [(CIRC_645, "2017-06-08"), (CIRC_1580, "2017-06-09"), (CIRC_645, "1994-07-01")]
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

"""Coating: each boundary of the circular's three measures, and the worst of them."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.tanks.coating import BANDS, SOURCE


@pytest.mark.parametrize(
    ("expected", "breakdown"),
    [("good", 2.9), ("fair", 3), ("fair", 20), ("poor", 20.1), ("poor", 100), ("good", 0)],
)
def test_breakdown_of_the_area(judge, expected, breakdown):
    """Under 3 % good, 3 to 20 % fair, above poor."""
    assert expected == judge("coating-condition", breakdown=breakdown, edges=0).rating


@pytest.mark.parametrize(
    ("expected", "scale"), [("fair", 0), ("fair", 0.1), ("fair", 9.9), ("poor", 10)]
)
def test_hard_rust_scale(judge, expected, scale):
    """Of 10 % rusted, which is fair: scale under 10 % leaves it fair, from 10 % it is poor."""
    assert expected == judge("coating-condition", scale=scale, breakdown=10).rating


@pytest.mark.parametrize(
    ("expected", "edges"), [("good", 19.9), ("fair", 20), ("fair", 50), ("poor", 50.1)]
)
def test_edges_and_welds(judge, expected, edges):
    """Under 20 % good, 20 to 50 % fair, above poor."""
    assert expected == judge("coating-condition", edges=edges).rating


def test_the_governing_measure_gives_value_limit_and_sentence(judge):
    """With poor edges and a good face the edges are reported."""
    judgement = judge("coating-condition", breakdown=2.9, scale=0, edges=51)
    assert (judgement.value, judgement.limit, judgement.margin) == (51, 50, -1)
    assert judgement.sentence.startswith("Breakdown on edges and welds of 51 %")
    assert judgement.source == SOURCE


def test_more_than_the_whole_area_is_refused(judge):
    """A share ends at 100 %."""
    with pytest.raises(CannotJudge, match="above 100 %"):
        judge("coating-condition", edges=101)


@given(*[st.tuples(st.floats(0, 100), st.floats(0, 100))] * 3)
def test_more_rust_never_gets_a_better_word(breakdown, scale, edges):
    """Raising any measure cannot improve the condition, and a coating alone never fails."""
    names = ("breakdown", "scale", "edges")
    pairs = [sorted(pair) for pair in (breakdown, scale, edges)]
    sides = [dict(zip(names, side, strict=True)) for side in zip(*pairs, strict=True)]
    assume(all(side["scale"] <= side["breakdown"] for side in sides))
    less, more = map(criterion("coating-condition").apply, sides)
    assert BANDS.index(less.rating) <= BANDS.index(more.rating)


@pytest.mark.parametrize(
    ("rating", "spots", "total"),
    [
        ("good", 4.9, 0),
        ("fair", 5, 0),
        ("fair", 19.9, 0),
        ("poor", 20, 0),
        ("fair", 0, 0.1),
        ("fair", 4, 9.9),
        ("poor", 4, 10),
        ("poor", 50, 50),
    ],
)
def test_an_oil_tank_is_judged_by_spots_and_by_total_failure(judge, rating, spots, total):
    """Spots under 5 % are good and under 20 % fair; total failure under 10 % is fair."""
    assert rating == judge("oil-tank-coating", spots=spots, total=total).rating


@pytest.mark.parametrize(
    ("rating", "edges"), [("good", 19.9), ("fair", 20), ("fair", 50), ("poor", 50.1)]
)
def test_edges_and_welds_of_an_oil_tank_count_as_well(judge, rating, edges):
    """MSC.1/Circ.1399, 4.1.3 (seen): for good, under 20 % of edges and welds are broken down."""
    judgement = judge("oil-tank-coating", edges=edges)
    assert rating == judgement.rating
    assert any("3 %" in note and "5 %" in note for note in judgement.notes)


def test_more_scale_than_rust_is_refused_with_both_figures(judge):
    """Hard scale is rusted area too, by the table of MSC.1/Circ.1330, 4.1 (seen)."""
    with pytest.raises(CannotJudge, match="scale' of 8 % is above .* of 2 %") as caught:
        judge("coating-condition", breakdown=2, scale=8)
    assert "scale" == caught.value.input


def test_spots_and_total_failure_cannot_exceed_the_tank(judge):
    """Together they are not more than the whole area."""
    with pytest.raises(CannotJudge, match="exceed the whole area"):
        judge("oil-tank-coating", spots=60, total=40.1)


@pytest.mark.parametrize(
    ("rating", "least", "below"),
    [("good", 288, 10), ("poor", 287.9, 10), ("poor", 288, 10.1), ("good", 320, 0)],
)
def test_a_new_film_meets_both_halves_of_its_rule(judge, rating, least, below):
    """Of 320 µm, no reading under 288 and not more than a tenth under 320."""
    assert rating == judge("dry-film", least=least, below=below).rating


def test_another_nominal_film_moves_the_floor():
    """A specification of 250 µm asks for 225."""
    rule = criterion("dry-film")
    judgement = rule.apply(
        {"least": 225, "below": 0},
        rule.limit_set.with_limits({"nominal": "250"}, "Coating specification of the yard"),
    )
    assert ("good", 225.0) == (judgement.rating, judgement.limit)

"""Balances with their spans, cabins against the convention, berths, and refusals by field."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.core.span import Span
from inspector.conversion.space import chapter as chapter_space
from inspector.conversion.space.areas import USABLE, Balance, Space, clear_length, net_area, total
from inspector.conversion.space.cabins import (
    BANDS,
    OCCUPANTS,
    least_floor,
    least_floor_over,
    services,
    shortfalls,
)
from inspector.conversion.space.chapter import chapter
from inspector.conversion.stability import chapter as chapter_stability
from inspector.conversion.stability import particulars as stability_particulars
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import case
from tests.conversion.conftest import nested

HOLD = {
    "name": "hold",
    "kind": "hold",
    "act": "won",
    "frames": "12",
    "pitch": "0.6",
    "breadth": "12.5",
    "height": "2.55",
}
CABINS = {
    "name": "cabins",
    "kind": "cabin",
    "place": "inside",
    "count": "10",
    "persons": "1",
    "who": "crew",
    "area": "6",
    "height": "2.1",
}


def sentences(cells):
    """The cells as a reader sees them."""
    return [cell_text(cell) for cell in cells]


@pytest.mark.parametrize(
    ("make", "field"),
    [
        (lambda: Space("hold", "hold", "won", -1.0), "hold: area"),
        (lambda: Space("hold", "barn", "won", 1.0), "hold: kind"),
        (lambda: Space("hold", "hold", "won"), "hold: area"),
        (lambda: Space("hold", "hold", "won", 1.0, share=85), "hold: share"),
        (lambda: clear_length("hold", 12, None, None), "hold: length"),
        (lambda: clear_length("hold", 12, 600, None), "hold: pitch"),
        (lambda: net_area("deck", 36, 13, 500), "deck: deducted"),
        (lambda: least_floor(0, "crew", 900), "persons in a cabin"),
        (lambda: least_floor(2, "crew", 3000), "persons in a cabin"),
        (lambda: least_floor(2, "officer", 900), "persons in a cabin"),
        (lambda: least_floor(1, "cat", 900), "who lives in the cabin"),
        (lambda: least_floor(1, "crew", 0), "gross tonnage"),
        (lambda: shortfalls(6, -1, None), "headroom"),
        (lambda: services(0), "persons on board"),
        (lambda: services(10, -1), "days of a voyage"),
    ],
)
def test_what_cannot_be_is_refused_by_its_field(make, field):
    """Negative areas, percents for shares, millimetres for metres, wrong cabins."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field


@given(
    st.lists(
        st.tuples(
            st.sampled_from(["given", "won", "lost"]),
            st.floats(0, 500),
            st.none() | st.floats(0.8, 0.9),
        ),
        min_size=1,
        max_size=4,
    )
)
def test_a_sum_of_spaces_holds_its_point_and_narrows(parts):
    """A share that becomes known narrows the sum, and what is lost is taken off."""
    unknown, known = (
        [
            Space("s", "hold", act, area, share=share if given else None, state="free")
            for act, area, share in parts
        ]
        for given in (False, True)
    )
    wide, narrow = total(unknown, "usable_area"), total(known, "usable_area")

    assert wide.low <= wide.point <= wide.high
    assert Span(wide.low - 1e-9, None, wide.high + 1e-9).contains(narrow)


@given(nested(1, 12_000), st.sampled_from(OCCUPANTS))
def test_a_better_known_tonnage_never_widens_the_least_floor(pair, who):
    """The floor over a span of tonnage holds the floor of any tonnage within it."""
    wide, narrow = (least_floor_over(1, who, tonnage) for tonnage in pair)

    assert (wide is None and narrow is None) or wide.contains(narrow)
    assert wide is None or wide.contains(least_floor(1, who, pair[0].point))
    assert wide is None or least_floor_over(1, who, None).contains(wide)


@pytest.mark.parametrize("line", BANDS)
def test_the_bands_begin_at_their_tonnage(line):
    """One tonne below the line the smaller floor holds, at the line the larger."""
    assert least_floor(1, "crew", line - 1) < least_floor(1, "crew", line)


def test_an_open_deck_is_used_whole_and_a_hold_is_not():
    """The share that linings and structure take is listed where it was used, and only there."""
    assert () == Space("deck", "open deck", "given", 100.0).defaults
    assert (USABLE,) == Space("hold", "hold", "given", 100.0).defaults
    assert () == Space("hold", "hold", "given", 100.0, share=0.8).defaults


@pytest.mark.parametrize(
    ("there", "short"),
    [(Span(10, 11, 12), True), (Span(20, 21, 22), False), (Span(12, 15, 18), None), (None, None)],
)
def test_a_shortfall_is_reported_only_where_it_is_sure(there, short):
    """Where the span reaches over what is wanted it is not known, nor without any space."""
    assert short is Balance("floor", "m²", there, Span.exact(15)).short


def test_nothing_typed_is_one_sentence():
    """An empty inspection says so and shows no figure."""
    found = chapter(case())

    assert found.answer.startswith("Neither spaces nor wants")
    assert ((), (), ()) == (found.figures, found.figure_tables, found.requirements)


def test_persons_are_offered_as_far_as_floor_reaches():
    """60 m² of cabins in 76.5 m² berth all ten; half the floor berths six."""
    enough = chapter(
        case({"spaces": [HOLD], "wants": [CABINS]}, {"tonnage": "2000"}, {"persons": "10"})
    )
    half = chapter(
        case(
            {"spaces": [{**HOLD, "frames": "6"}], "wants": [CABINS]},
            {"tonnage": "2000"},
            {"persons": "10"},
        )
    )

    assert [(10, True)] == [(asked.offered.point, asked.met) for asked in enough.requirements]
    assert [(6, False)] == [(asked.offered.point, asked.met) for asked in half.requirements]
    assert any(
        warning.startswith("Living floor inside: short by") for warning in sentences(half.warnings)
    )


def test_existing_berths_need_no_new_floor():
    """A cabin that is there already berths its persons and takes nothing from the balance."""
    found = chapter(
        case(
            {"wants": [{**CABINS, "plan": "there already"}]}, {"tonnage": "2000"}, {"persons": "10"}
        )
    )

    assert [True] == [asked.met for asked in found.requirements]


def test_a_space_too_low_takes_no_cabins():
    """Below 2.03 m it counts for stores only, so that the cabins find no floor with headroom."""
    found = chapter(
        case(
            {"spaces": [{**HOLD, "height": "2.02"}], "wants": [CABINS]},
            {"tonnage": "2000"},
            {"persons": "10"},
        )
    )

    assert [False, None] != [asked.met for asked in found.requirements]
    assert found.requirements[0].offered.low == 0
    assert "stores and technical rooms only" in [
        cell for line in found.figure_tables for row in line.rows for cell in row
    ]


def test_small_and_low_cabins_are_warned_of():
    """4.4 m² and 2.00 m fall short at any tonnage; a guest's cabin needs headroom only."""
    small = chapter(
        case({"wants": [{**CABINS, "area": "4.4", "height": "2.00"}]}, {"tonnage": "2000"})
    )
    guest = chapter(
        case({"wants": [{**CABINS, "area": "4.4", "who": "guest"}]}, {"tonnage": "2000"})
    )

    assert 2 == len([text for text in sentences(small.warnings) if text.startswith("cabins: a ")])
    assert not [text for text in sentences(guest.warnings) if text.startswith("cabins: a ")]


@pytest.mark.parametrize(("persons", "warned"), [("12", False), ("13", True)])
def test_more_than_twelve_are_warned_of(persons, warned):
    """12 is on this side of the line, 13 is not."""
    found = chapter(case({"spaces": [HOLD]}, {}, {"persons": persons}))

    assert warned == any("passenger ship" in text for text in sentences(found.warnings))


def test_the_deck_of_the_papers_counts_until_a_row_gives_one():
    """An area among the vessel's particulars stands in for the table, and is not added to it."""
    paper = chapter(
        case(
            {
                "wants": [
                    {"name": "tender", "kind": "tender bay", "place": "open deck", "area": "80"}
                ]
            },
            {"deck_area": "450"},
        )
    )
    both = chapter(
        case(
            {"spaces": [{"name": "deck", "kind": "open deck", "act": "given", "area": "400"}]},
            {"deck_area": "450"},
        )
    )

    assert 370 == next(
        figure.span.point for figure in paper.figures if figure.name.startswith("Open deck")
    )
    assert 400 == next(
        figure.span.point for figure in both.figures if figure.name.startswith("Open deck")
    )


@pytest.mark.parametrize(
    ("rows", "sentence"),
    [
        ({"spaces": [{**HOLD, "pitch": ""}]}, "length is missing"),
        ({"spaces": [{**HOLD, "breadth": ""}]}, "breadth is missing"),
        ({"wants": [{**CABINS, "persons": ""}]}, "persons in each cabin are missing"),
        ({"wants": [{**CABINS, "persons": "3"}]}, "cabins: Persons in a cabin are 3"),
        ({"wants": [{**CABINS, "count": "1.5"}]}, "not a whole number"),
        ({"spaces": [{**HOLD, "height": {"value": "255", "unit": "kg"}}]}, "Clear height"),
    ],
)
def test_wrong_rows_are_named_and_left_out(rows, sentence):
    """A row that cannot be used gives one sentence and is left out of the sums."""
    found = chapter(case(rows, {"tonnage": "2000"}))

    assert any(sentence in fault for fault in found.faults)


def test_unknown_heights_and_missing_corridors_are_named():
    """A height that was not measured, and cabins without corridors, are gaps."""
    names = [
        gap.name
        for gap in chapter(case({"spaces": [{**HOLD, "height": ""}], "wants": [CABINS]})).gaps
    ]

    assert {
        "Clear height of hold",
        "Corridors, stairs and sanitary spaces",
        "Gross tonnage",
    } <= set(names)


def test_two_floors_are_shown_where_they_differ():
    """A store beside the cabins needs a floor balance of its own; cabins alone do not."""
    store = {"name": "store", "kind": "store", "place": "inside", "area": "20"}
    names = [
        [figure.name for figure in chapter(case({"spaces": [HOLD], "wants": wants})).figures]
        for wants in ([CABINS], [CABINS, store])
    ]

    assert [False, True] == ["Floor inside: left over" in found for found in names]


def cell(column, random):
    """Something that the column can hold, often one of its ends, or nothing."""
    if random.random() < 0.35:
        return ""
    if column.kind in ("choice", "date", "text"):
        return {
            "choice": random.choice(column.choices or ("",)),
            "date": "2009-01-01",
            "text": random.choice(["a", "b"]),
        }[column.kind]
    value = random.choice(
        [
            column.low,
            column.high,
            column.low + (column.high - column.low) * random.random() ** 6,
            0,
            1,
            10,
        ]
    )
    return str(int(value)) if column.kind == "whole" else format(value, "f")


@settings(max_examples=150)
@given(st.randoms(use_true_random=False))
def test_no_row_that_columns_hold_makes_a_chapter_raise(random):
    """Any cells within their limits give a chapter with an answer."""
    tables = {}
    for table in (HYDROSTATICS, TANKS, *stability_particulars.TABLES, *chapter_space.TABLES):
        tables[table.id] = [
            {"id": "one", **{column.name: cell(column, random) for column in table.columns}}
            if table.single
            else {column.name: cell(column, random) for column in table.columns}
            for _ in range(1 if table.single else random.randint(0, 3))
        ]
    given_case = case(
        tables,
        {
            "tonnage": random.choice(["", "499", "99999", "0.5"]),
            "deck_area": random.choice(["", "400"]),
        },
        {
            "persons": random.choice(["", "24", "2000"]),
            "endurance": random.choice(["", "40", "10000"]),
        },
    )

    assert chapter_stability.chapter(given_case).answer
    assert chapter(given_case).answer

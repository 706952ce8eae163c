"""The chapter on the kind of ship: side by side, with sources, and with what is missing named."""

import pytest

from inspector.conversion.ship_kind.calculation import ship_kind
from inspector.conversion.ship_kind.chapter import chapter
from inspector.conversion.ship_kind.existing_items import choice_for
from inspector.conversion.ship_kind.ship_kinds import CARGO, PASSENGER, SPECIAL
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import BOOKLET, case

ABOARD = {"crew": "16", "special": "0", "passengers": "24"}


def found(aboard=None, persons="40", vessel=None, **tables):
    rows = {"aboard": [{"id": "one", **(ABOARD if aboard is None else aboard)}], **tables}
    return case(rows, vessel, brief={"persons": persons})


def line(of, subject):
    """What one subject means as cargo, special purpose and passenger ship, in words."""
    told = next(each for each in ship_kind(of).lines if each.subject == subject)
    return [cell_text(words) for words in (told.cargo, told.special, told.passenger)]


def test_without_persons_one_gap_says_what_to_type():
    """Every rule begins with their number; nothing is guessed."""
    one = chapter(case())

    assert "Persons on board" in [gap.name for gap in one.gaps]
    assert () == ship_kind(case()).lines


def test_guests_make_a_passenger_ship():
    """Sixteen crew and twenty-four guests are no cargo ship."""
    assert PASSENGER in cell_text(chapter(found()).answer)


def test_who_is_aboard_must_fit_the_brief():
    """Fifty persons named of forty asked are one fault, and the page still answers."""
    one = chapter(found({"crew": "20", "special": "20", "passengers": "10"}))

    assert any("50 persons" in fault and "40" in fault for fault in one.faults)


def test_every_line_has_its_source_and_every_kind_its_words():
    """No line is without a source, and none without a sentence for each kind."""
    for each in ship_kind(found()).lines:
        assert each.sources
        assert all((each.cargo, each.special, each.passenger))


def test_what_decides_stands_second_and_is_not_calculated():
    """Subdivision: the index that is required is a figure, the attained one is not made up."""
    of = found(hydrostatics=[BOOKLET])
    cargo, special_purpose, passenger = line(of, "Subdivision and damage stability")

    assert "not calculated" in cargo
    assert "0.722" in passenger
    assert "0.578" in special_purpose


@pytest.mark.parametrize(
    ("persons", "special", "passenger"), [("60", "18 h", "36 h"), ("61", "36 h", "36 h")]
)
def test_emergency_supply_by_persons(persons, special, passenger):
    """Sixty persons are on this side of the step, sixty-one on the other."""
    told = line(found(persons=persons), "Emergency supply")

    assert told[0].startswith("18 h")
    assert told[1].startswith(special)
    assert told[2].startswith(passenger)


def test_the_length_of_the_certificate_comes_first():
    """The certificate's length, else that between perpendiculars, else the length over all."""
    booklet = {"hydrostatics": [BOOKLET]}

    assert 71.3 == ship_kind(found({**ABOARD, "length": "71.3"}, **booklet)).length
    assert 65 == ship_kind(found(**booklet)).length
    assert 78.4 == ship_kind(found(vessel={"length": "78.4"})).length
    assert None is ship_kind(found(vessel={"length": "very long"})).length


def test_what_the_architect_needs_is_a_gap_until_it_is_typed():
    """One typed compartment closes its gap and leaves the others."""
    wanted = "Watertight compartments with their bulkheads"
    one = {"name": "engine room", "after": "6", "forward": "21.5"}
    before, after = chapter(found()), chapter(found(compartments=[one]))

    assert wanted in [gap.name for gap in before.gaps]
    assert wanted not in [gap.name for gap in after.gaps]
    assert 15.5 == ship_kind(found(compartments=[one])).compartments[0].length


@pytest.mark.parametrize(
    ("kind", "persons", "choice"),
    [
        (CARGO, 40, "cargo"),
        (SPECIAL, 60, "special purpose, up to 60 persons"),
        (SPECIAL, 61, "special purpose, over 60 persons"),
        (SPECIAL, None, None),
        (PASSENGER, None, "passenger"),
    ],
)
def test_a_criterion_is_asked_in_its_own_words(kind, persons, choice):
    """The words of a check's choices are chosen by kind and persons."""
    words = (
        "cargo",
        "special purpose, up to 60 persons",
        "special purpose, over 60 persons",
        "passenger",
    )

    assert choice == choice_for(kind, words, persons)
    assert None is choice_for(kind, ("yacht",), persons)

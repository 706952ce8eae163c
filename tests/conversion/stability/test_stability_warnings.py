"""What the chapter on stability warns of, and what it leaves alone."""

import pytest

from inspector.conversion.stability.chapter import chapter
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import BOOKLET, LEVERS, WEIGHTS, case


def warnings(change=None, **tables):
    """The warnings of the chapter on the booklet with changed cells, as text."""
    found = chapter(case({"hydrostatics": [{**BOOKLET, **(change or {})}], **tables}))
    return [cell_text(warning) for warning in found.warnings]


def test_a_sound_booklet_warns_of_nothing():
    """No weight, no deck load, a GM well above the least."""
    assert [] == warnings()


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"limit_kg": "6.35"}, "KG after, fluid may come to 6.44 m, against 6.35 m"),
        (
            {"limit_kg": "6.35", "free_surface": ""},
            "KG after, solid may come to 6.40 m, against 6.35 m",
        ),
        ({"greatest_draught": "5.05"}, "may come to 5.10 m, against 5.05 m by the load line"),
        ({"inclined_on": ""}, "No date of an inclining test is recorded"),
        ({"gm": "1.40"}, "differs by −0.29 m from the GM that was given"),
        ({"km": "6.50", "km_after": ""}, "may be as little as 0.06 m, against at least 0.15 m"),
    ],
)
def test_a_slip_of_the_booklet_is_warned_of(change, words):
    """A limit passed, a missing test, a GM that disagrees or is too low: each has its sentence."""
    assert any(words in text for text in warnings(change))


def test_a_gm_within_the_tolerance_is_left_alone():
    """1.11 m follows from the booklet; 1.15 m is as near as such figures are."""
    assert [] == warnings({"gm": "1.15"})


def test_a_criterion_that_is_not_met_has_its_limit_beside_it():
    """A third of the levers meets neither area to 30° nor lever at 30°."""
    low = [{**row, "gz": str(float(row["gz"]) / 3)} for row in LEVERS]
    texts = warnings(levers=low)

    assert any(text.startswith("Area to 30°: ") and "0.055 m·rad" in text for text in texts)
    assert any(text.startswith("Lever at 30° or more: ") and "0.2 m" in text for text in texts)


def test_a_small_weight_is_not_worth_a_warning():
    """5 t put on high raise KG by less than 2 cm."""
    small = {**WEIGHTS[2], "mass": "5"}

    assert [] == warnings(weights=[small])


def test_an_overloaded_deck_is_warned_of_in_a_seaway():
    """90 t on 20 m² of 5 t/m² are within it at rest, and beyond it with half of gravity on top."""
    load = {"name": "reel", "load": "90", "area": "20", "rated": "5"}
    (text,) = warnings(decks=[load])

    assert "Reel reaches 90 to 135 % of what the deck is declared for" in text


def test_all_loads_together_are_held_against_the_booklets_deck_cargo():
    """Two loads of 70 t, each within its area and below 120 t: together they are above it."""
    load = {"name": "reel", "load": "70", "area": "40", "rated": "5", "total": "120"}
    (text,) = warnings(decks=[load, {**load, "name": "crate"}])

    assert "All loads on deck are 140 t together, against 120 t" in text
    assert [] == warnings(decks=[load])


def test_a_negative_deck_load_is_refused_and_warns_of_nothing():
    """The row is a fault, and no share comes from it."""
    assert [] == warnings(decks=[{"name": "reel", "load": "-1", "area": "20", "rated": "5"}])

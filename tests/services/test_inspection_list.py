"""The list is searched by what a firm remembers, turned by pages, and old ones are put away."""

import pytest

from inspector.record.catalogue import Catalogue
from inspector.services.inspection_list import (
    AWAY,
    PER_PAGE,
    Wanted,
    ids_put_away,
    list_page,
    put_away,
    take_back,
)
from inspector.services.summary import empty_row

ROWS = [
    empty_row(f"one-{number}")
    | {
        "title": f"Invented Heron {number:04}",
        "imo": f"90{number:05}",
        "client": ("Bay Yachts", "Zephyr House")[number % 2],
        "year": str(1990 + number % 30),
        "state": ("in work", "decided")[number % 2],
    }
    for number in range(60)
]


def _found(words="", state="", away=()):
    page = list_page(ROWS, set(away), Wanted(words, state))
    return page.found, [row["id"] for row in page.rows]


@pytest.mark.parametrize(
    ("words", "ids"),
    [
        ("heron 0017", ["one-17"]),
        ("HERON 0017", ["one-17"]),
        ("9000042", ["one-42"]),
        ("zephyr 2005", ["one-15", "one-45"]),
        ("one-59", ["one-59"]),
        ("no such vessel", []),
    ],
)
def test_every_word_must_be_there(words, ids):
    """In the name, IMO number, client, year or id, whatever its capitals."""
    assert (len(ids), ids) == _found(words)


def test_a_state_narrows_the_search():
    """Thirty of the sixty are decided, and one of these is Heron 17."""
    assert 30 == _found(state="decided")[0]
    assert (1, ["one-17"]) == _found("heron 0017", "decided")
    assert (0, []) == _found("heron 0017", "in work")


@pytest.mark.parametrize(
    ("asked", "shown", "first"), [(1, PER_PAGE, 0), (3, 10, 50), (99, 10, 50), (-4, PER_PAGE, 0)]
)
def test_pages(asked, shown, first):
    """A page beyond the last one is the last one, and one before the first is the first."""
    page = list_page(ROWS, set(), Wanted(page=asked))

    assert (3, shown, f"one-{first}") == (page.pages, len(page.rows), page.rows[0]["id"])


def test_what_is_put_away_is_found_under_that_state_only(tmp_path):
    """Nothing is moved or lost: it is a word of the list, and is taken back as easily."""
    catalogue = Catalogue(tmp_path / "catalogue.json")
    put_away(catalogue, ["one-17", "one-18"])
    take_back(catalogue, ["one-18"])
    away = ids_put_away(Catalogue(tmp_path / "catalogue.json"))

    assert {"one-17"} == away
    assert (0, []) == _found("heron 0017", away=away)
    assert (1, ["one-17"]) == _found("heron 0017", AWAY, away)
    assert (59, 1) == (lambda page: (page.there, page.away))(list_page(ROWS, away, Wanted()))


def test_an_empty_list_has_one_page():
    """Nothing to show is no error."""
    assert (1, 0) == (lambda page: (page.pages, page.found))(list_page([], set(), Wanted("x")))

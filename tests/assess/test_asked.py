"""What is shared is assessed once, and what is only offered counts where it has a rating."""

import shutil

import pytest

from inspector.assess.assessment import assess
from inspector.assess.recorded import RecordedInspection, RecordedSheet, Unit
from inspector.checklists.loader import read_library
from inspector.places import shipped

FINS = """
[system]
id = "fins"
name = "Fins"
order = 5
unit = "fin"
units = ["Fin 1", "Fin 2"]
about = "a"
retain = "b"
refurbish = "c"
remove = "d"
"""
CHECK = """
[[check]]
id = "{id}"
title = "{id} of the fin"
ask = "a"
look = "b"
bad = "c"
space = "quay"
minutes = 3
weight = 4
{more}
"""
UNITS = (Unit("fins", "one", "Fin 1"), Unit("fins", "two", "Fin 2"))


@pytest.fixture
def library(tmp_path):
    for name in ("spaces.toml", "cautions.toml"):
        shutil.copy(shipped("checklists") / name, tmp_path)
    checks = (("seal", ""), ("book", "once = true"), ("paint", "optional = true"))
    text = FINS + "".join(CHECK.format(id=id, more=more) for id, more in checks)
    (tmp_path / "fins.toml").write_text(text, encoding="utf-8")
    return read_library(tmp_path)


@pytest.fixture
def fins(library):
    """Assess two fins with these answers: "<unit>/<check>" -> answer."""

    def assessed(**answers):
        sheets = {
            f"sheet/fins/{place.replace('_', '/')}": RecordedSheet(answer=answer)
            for place, answer in answers.items()
        }
        recorded = RecordedInspection(units=UNITS, sheets=sheets)
        (part,) = assess(recorded, library).systems
        return part

    return assessed


def asked(part):
    return [[result.check.id for result in unit.results] for unit in part.units]


def test_a_shared_check_is_a_result_of_one_unit(fins):
    """The fin book is on the first fin's sheet, or where it was answered."""
    assert [["seal", "book", "paint"], ["seal", "paint"]] == asked(fins())
    assert [["seal", "paint"], ["seal", "book", "paint"]] == asked(fins(two_book="good"))


def test_what_is_offered_counts_once_it_is_rated(fins):
    """Two seals and the book count; the paint of the second fin is the fourth once it is rated."""
    assert (0, 3) == counts(fins())
    assert (1, 4) == counts(fins(two_paint="poor"))
    assert (0, 3) == counts(fins(two_paint="not seen: no light"))
    assert (0, 3) == counts(fins(two_paint="not fitted"))


def counts(part):
    return part.whole.condition.seen, part.whole.condition.applicable


def test_an_offered_check_changes_the_coverage_only_when_rated(fins):
    """Of equal weights: one of three seen, then two of four."""
    assert pytest.approx(1 / 3) == fins(one_seal="good").whole.condition.coverage
    both = fins(one_seal="good", one_paint="good")
    assert pytest.approx(2 / 4) == both.whole.condition.coverage

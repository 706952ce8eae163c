"""Beside a rating in the report: why it was overruled, and from whom it was taken over."""

from types import SimpleNamespace

import pytest

from inspector import places
from inspector.assess.checked import CheckResult
from inspector.checklists.loader import read_library
from inspector.report.wording import rating_runs


@pytest.fixture(scope="module")
def check():
    library = read_library(places.shipped("checklists"))
    return library.systems["hull"].checks[0]


def words(check, **more):
    result = CheckResult("sheet/hull/h/x", check, "h", "Hull", "good", "good", **more)
    return [text for text, _ in rating_runs(result)]


@pytest.mark.parametrize(
    ("why", "ending"), [("gauge sticks", "judged fair; gauge sticks)"), ("", "judged fair)")]
)
def test_an_overruled_judgement_is_printed_with_the_reason(check, why, ending):
    """The surveyor's reason, where there is one, beside what the reading is judged."""
    judged = SimpleNamespace(rating="fair")
    rating, overruled = words(check, judgement=judged, overruled_because=why)

    assert "good" == rating
    assert overruled.endswith(ending)


def test_an_answer_taken_over_from_a_sister_names_her(check):
    """Who reads the report knows that this unit was not looked at by itself."""
    assert ["good", "(taken over from Set 1)"] == words(check, as_unit="Set 1")
    assert ["good"] == words(check)

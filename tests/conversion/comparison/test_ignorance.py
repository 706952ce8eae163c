"""What is taken out of a record never raises its vessel: read, assessed and ranked as a whole."""

from random import Random

import pytest

from inspector.conversion.comparison.asked_of_all import ASKED
from inspector.conversion.comparison.calculation import compare
from inspector.conversion.contents import chapters_of, read_case
from inspector.demo.portfolio import prepare_in
from inspector.services.data_folder import open_folder
from tests.published.a_worked_case import DAY, Worked, other, typed

# What a surveyor may not have learned: ratings, prices and papers. What stands in the tables of
# particulars is left: a load that nobody typed makes a plant look stronger, whoever ranks it.
UNLEARNED = ("sheet/", "certificate/")
ONE_WAY = ("bow-new", "aft-repair")


def learned():
    """The worked case, each part priced one way only: which way counts hangs on the word."""
    return [
        entry
        for entry in typed()
        if not entry[0].startswith(tuple(f"scope/{line}" for line in ONE_WAY))
    ]


def forgotten(entries, luck):
    """The record with some of what was learned taken out, a subject at a time."""
    subjects = sorted({entry[0] for entry in entries if entry[0].startswith(UNLEARNED)})
    gone = set(luck.sample(subjects, luck.randint(1, len(subjects))))
    prices = luck.random() < 0.5
    return [
        (subject, field, value)
        for subject, field, value in entries
        if subject not in gone
        and not (prices and subject.startswith("scope/") and field in ("low", "likely", "high"))
        and not (prices and field == "asking")
    ]


@pytest.fixture(scope="module")
def rivals(tmp_path_factory):
    """The worked case, and another vessel of which enough is known for a place."""
    whole = Worked(tmp_path_factory.mktemp("whole"), learned()).candidate("she")
    rated = [
        ("sheet/hull/whole/skin", "rating", "good"),
        ("unit/thrusters/bow", "name", "Bow thruster"),
        *(
            (f"sheet/thrusters/bow/{check}", "rating", "good")
            for check in ("oil", "motor", "tunnel", "noise", "hatch")
        ),
        ("row/hydrostatics/one", "draught", "4.0"),
        ("row/hydrostatics/one", "greatest_draught", "5.0"),
    ]
    rival = Worked(tmp_path_factory.mktemp("rival"), [*other(), *rated]).candidate("rival")
    return whole, rival


@pytest.mark.parametrize("seed", range(12))
def test_a_vessel_of_which_less_is_known_stands_no_higher(tmp_path, rivals, seed):
    """Whatever was not learned, she is assured of no more in any aspect and has no better rank."""
    whole, rival = rivals
    less = Worked(tmp_path, forgotten(learned(), Random(seed))).candidate("she")

    for aspect, span in whole.scores.items():
        assert less.scores[aspect].low <= span.low + 1e-9, aspect
    ranks = [
        {place.name: place.rank for place in compare([she, rival]).ranking.places}
        for she in (whole, less)
    ]
    assert ranks[1]["she"] is None or ranks[0]["she"] <= ranks[1]["she"]


def test_every_requirement_of_a_chapter_is_on_the_one_list(tmp_path):
    """A chapter that asks more must say so there, or it would count for nobody."""
    prepare_in(tmp_path / "data")
    data = open_folder(tmp_path / "data")
    found = {
        requirement.id
        for one in data.inspections.ids()
        for chapter in chapters_of(read_case(data.assessment_of(data.inspections.get(one)), DAY))
        for requirement in chapter.requirements
    }
    data.close()

    assert found <= {one.id for one in ASKED}
    assert len(found) > 8

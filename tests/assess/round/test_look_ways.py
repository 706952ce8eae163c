"""The looks of a vessel with their ways, on a small checklist folder."""

import pytest

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.round.look_ways import FULL, GLANCE, visit_looks
from inspector.assess.verdict.settings import DEFAULTS, Settings
from inspector.checklists.loader import read_library
from tests.assess.conftest import SPACES, Writer, check
from tests.assess.verdict.a_case import CAUTIONS, HEAD

TRIALS = '[trial.run]\nname = "Run"\nminutes = 20\nper = "unit"\nneeds = "running"\n'
GLANCED = 'glance = {{ look = "Look in.", seconds = 15, bad = "Rope.", which = "{which}" }}\n'
RUN = 'needs = "running"\ntogether = "run"\n'


@pytest.fixture
def library(tmp_path):
    """One system: a check of the worst unit, one of each, two in one run, one of papers."""
    text = HEAD.format(id="thrusters", name="Thrusters", order=20)
    text += check("tunnel", "Tunnel", 4, GLANCED.format(which="worst"))
    text += check("plate", "Plate", 2, GLANCED.format(which="each"))
    text += check("pitch", "Pitch", 3, RUN) + check("heat", "Heat", 5, RUN)
    text += check("book", "Book", 3, 'needs = "paper"\n')
    (tmp_path / "spaces.toml").write_text(SPACES)
    (tmp_path / "cautions.toml").write_text(CAUTIONS)
    (tmp_path / "trials.toml").write_text(TRIALS)
    (tmp_path / "thrusters.toml").write_text(text)
    return read_library(tmp_path)


@pytest.fixture
def two():
    """Two thrusters, nothing looked at."""
    writer = Writer()
    writer("unit/thrusters/bow", "name", "Bow thruster")
    return writer("unit/thrusters/aft", "name", "Aft thruster")


def looks_of(write, library):
    return visit_looks(assess(read_inspection(write.state), library))


def by_subject(found):
    return {look.subject.removeprefix("sheet/thrusters/"): look for look in found.looks}


def test_a_glance_takes_its_seconds_and_is_worth_its_share(library, two):
    """The other way is the whole look with its minutes."""
    glance, full = by_subject(looks_of(two, library))["bow/plate"].ways

    assert (GLANCE, 15) == (glance.kind, glance.seconds)
    assert (FULL, 180) == (full.kind, full.seconds)
    assert glance.worth == pytest.approx(DEFAULTS.glance_share * full.worth)


def test_a_firm_that_trusts_no_glance_takes_none(library, two):
    """Its share and the way to a stop are settings."""
    settings = Settings(glance_share=0.0, entering_minutes=2.5)
    found = visit_looks(assess(read_inspection(two.state), library, settings))

    assert {FULL} == {way.kind for look in found.looks for way in look.ways}
    assert 150 == found.entering


def test_a_glance_at_the_worst_of_them_is_offered_once(library, two):
    """The others of its kind have the whole look only."""
    found = by_subject(looks_of(two, library))
    kinds = [way.kind for unit in ("bow", "aft") for way in found[f"{unit}/tunnel"].ways]

    assert [GLANCE, FULL, FULL] == kinds


def test_once_one_of_them_was_glanced_at_no_other_is(library, two):
    """One answer is what the glance at the worst of them was to give."""
    two.rate("thrusters/aft/tunnel", "fair", who="AB")
    found = by_subject(looks_of(two, library))

    assert [FULL] == [way.kind for way in found["bow/tunnel"].ways]


def test_looks_that_run_together_are_one(library, two):
    """The run counts once, and both are read off: 20 + 3 + 3 minutes."""
    look = by_subject(looks_of(two, library))["bow/heat"]

    assert ("sheet/thrusters/bow/heat", "sheet/thrusters/bow/pitch") == look.subjects
    assert [(FULL, 26 * 60)] == [(way.kind, way.seconds) for way in look.ways]


def test_an_answer_takes_the_look_away(library, two):
    """Also from a run, which is then made for the rest of it."""
    two.rate("thrusters/bow/heat", "good")
    found = looks_of(two, library)

    assert ("sheet/thrusters/bow/pitch",) == by_subject(found)["bow/pitch"].subjects
    assert "sheet/thrusters/bow/heat" not in found.still_open


@pytest.mark.parametrize(
    ("field", "value", "reason"),
    [
        ("state", "cold lay-up", "not run"),
        ("running", "no", "not run"),
        ("papers", "no", "not shown"),
    ],
)
def test_what_cannot_be_had_is_named_with_its_reason(library, two, field, value, reason):
    """By how she is met, or by what the crew will not do."""
    two("inspection", field, value)
    found = looks_of(two, library)

    assert {reason} == set(found.not_had.values())
    assert not set(found.not_had) & {look.subject for look in found.looks}
    assert set(found.not_had) <= set(found.still_open)


def test_what_the_crew_promises_counts_more_than_the_lay_up(library, two):
    """They start the set for us, cold as she is."""
    two("inspection", "state", "cold lay-up")("inspection", "running", "yes")

    assert {} == looks_of(two, library).not_had


def test_what_has_a_reading_is_not_put_away(library, two):
    """Somebody was there."""
    two("inspection", "running", "no")("sheet/thrusters/bow/heat", "note", "warm")

    assert "sheet/thrusters/bow/heat" not in looks_of(two, library).not_had


def test_a_look_in_a_run_that_cannot_be_had_is_still_glanced_at(tmp_path, library, two):
    """Passing by needs nothing of her."""
    path = tmp_path / "thrusters.toml"
    path.write_text(path.read_text().replace(RUN, RUN + GLANCED.format(which="each")))
    two("inspection", "running", "no")
    found = looks_of(two, read_library(tmp_path))

    assert [GLANCE] == [way.kind for way in by_subject(found)["bow/heat"].ways]
    assert {} == found.not_had


def test_nothing_of_an_unwanted_system_is_in_the_round_and_all_of_it_is_open(library, two):
    """It counts as not seen, as long as nobody looks."""
    two("brief", "need/thrusters", "unwanted")
    found = looks_of(two, library)

    assert () == found.looks
    assert 10 == len(found.still_open)


def test_two_answers_to_something_critical_are_settled_aboard(tmp_path, library, two):
    """Both look again together."""
    path = tmp_path / "thrusters.toml"
    path.write_text(path.read_text() + "critical = true\n")
    two.rate("thrusters/bow/book", "good", who="AB")
    two.rate("thrusters/bow/book", "failed", who="CD", device="phone", blind=True)
    found = looks_of(two, read_library(tmp_path))

    assert "Book: settle the two answers" == by_subject(found)["bow/book"].title

"""Air of an enclosed space: every limit from both sides, and the words that are never said."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.safety.tank_atmosphere import INSIDE, OUTSIDE, UNKNOWN


@pytest.mark.parametrize(
    ("expected", "name", "value"),
    [
        (OUTSIDE, "oxygen", 20.8),
        (INSIDE, "oxygen", 20.9),
        (INSIDE, "oxygen", 21.0),
        (UNKNOWN, "oxygen", 21.1),
        (UNKNOWN, "oxygen", 21.9),
        (OUTSIDE, "oxygen", 22.0),
        (INSIDE, "carbon_dioxide", 0.49),
        (OUTSIDE, "carbon_dioxide", 0.5),
        (INSIDE, "flammable", 0.9),
        (OUTSIDE, "flammable", 1.0),
        (INSIDE, "toxic", 49.9),
        (OUTSIDE, "toxic", 50),
        (OUTSIDE, "oxygen", 0),
    ],
)
def test_each_limit_holds_on_its_exact_value(judge, expected, name, value):
    """Oxygen from 20.9 % (MSC.581(110), seen), doubted above 21 %, outside from 22 % (29 CFR
    1915.12, seen); the others strictly below their limit.
    """
    assert expected == judge("entry-atmosphere", **{name: value}).band


def test_more_oxygen_than_fresh_air_asks_for_the_meter(judge):
    """MSC.581(110) names no upper end (seen), so that a high reading is the meter or enrichment."""
    assert "check the meter" in judge("entry-atmosphere", oxygen=21.5).sentence


@pytest.mark.parametrize("missing", ["oxygen", "carbon_dioxide", "flammable", "toxic"])
def test_a_missing_reading_leaves_it_not_determined(judge, missing):
    """Three good readings say nothing of the fourth."""
    judgement = judge("entry-atmosphere", **{missing: None})
    assert judgement.band == UNKNOWN
    assert missing.replace("_", " ").split()[0] in judgement.sentence


def test_a_reading_outside_outweighs_a_missing_one(judge):
    """What is known to be wrong is said, though more is unknown."""
    judgement = judge("entry-atmosphere", oxygen=19, toxic=None, flammable=5)
    assert judgement.band == OUTSIDE
    assert "oxygen of 19 %" in judgement.sentence
    assert "flammable gas of 5 %" in judgement.sentence


def test_without_any_reading_it_is_not_determined():
    """An empty sheet is answered too, with no numbers."""
    judgement = criterion("entry-atmosphere").apply({})
    assert (judgement.band, judgement.value, judgement.limit) == (UNKNOWN, None, None)


def test_the_first_fault_in_the_order_of_testing_gives_the_figures(judge):
    """Oxygen, then carbon dioxide, flammable and toxic gas."""
    judgement = judge("entry-atmosphere", carbon_dioxide=0.6, toxic=80)
    assert (judgement.value, judgement.limit, judgement.margin) == (0.6, 0.5, -0.1)


@given(*[st.one_of(st.none(), st.floats(0, 100))] * 4)
def test_it_never_rates_and_never_calls_an_entry_safe(oxygen, carbon_dioxide, flammable, toxic):
    """Whatever the readings: three bands, no rating, and no word that could be taken as leave to
    enter.
    """
    judgement = criterion("entry-atmosphere").apply(
        {"oxygen": oxygen, "carbon_dioxide": carbon_dioxide, "flammable": flammable, "toxic": toxic}
    )
    text = " ".join((judgement.band, judgement.sentence, *judgement.notes)).lower()
    assert judgement.rating is None
    assert judgement.band in (INSIDE, OUTSIDE, UNKNOWN)
    assert not any(word in text for word in ("safe", "may enter", "can enter", "pass", "cleared"))
    assert "permit" in text


def test_a_negative_share_is_refused(judge):
    """A meter below zero is out of adjustment, so its reading is not judged."""
    with pytest.raises(CannotJudge, match="below 0 %"):
        judge("entry-atmosphere", flammable=-1)


@pytest.mark.parametrize(
    ("expected", "name", "value"),
    [
        ("outside", "oxygen", 19.4),
        ("inside", "oxygen", 19.5),
        ("inside", "oxygen", 21.9),
        ("outside", "oxygen", 22.0),
        ("inside", "carbon_dioxide", 0.49),
        ("outside", "carbon_dioxide", 0.5),
        ("inside", "flammable", 9.9),
        ("outside", "flammable", 10),
        ("inside", "toxic", 99.9),
        ("outside", "toxic", 100),
    ],
)
def test_the_shipyard_rule_has_limits_of_its_own(judge, expected, name, value):
    """Oxygen from 19.5 to under 22 %, under a tenth of the lower limit, under the permissible
    limit.
    """
    judgement = judge("shipyard-atmosphere", **{name: value})
    assert (f"{expected} the shipyard rule", None) == (judgement.band, judgement.rating)


@pytest.mark.parametrize("missing", ["oxygen", "carbon_dioxide", "flammable", "toxic"])
def test_the_shipyard_rule_too_needs_all_four(judge, missing):
    """A missing reading leaves it not determined."""
    assert UNKNOWN == judge("shipyard-atmosphere", **{missing: None}).band


@pytest.mark.parametrize("name", ["entry-atmosphere", "shipyard-atmosphere"])
def test_a_flammable_reading_without_oxygen_is_doubted(judge, name):
    """Most combustible sensors mis-read in low oxygen, so oxygen comes first."""
    assert any("proves nothing" in note for note in judge(name, oxygen=19).notes)
    assert any("proves nothing" in note for note in judge(name, oxygen=None).notes)
    assert not any("proves nothing" in note for note in judge(name).notes)
    assert any("order of testing is oxygen" in note for note in judge(name).notes)

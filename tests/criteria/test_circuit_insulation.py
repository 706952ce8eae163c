"""Circuits, cables, boards and the tester's voltage: each minimum from both sides, and what the tables do not hold."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.registry import criterion


@pytest.mark.parametrize(
    ("band", "rating", "resistance", "voltage"),
    [("below the minimum", "poor", 0.99, 690), ("watch", "fair", 1, 690), ("watch", "fair", 5, 690), ("sound", "good", 5.01, 690),
     ("below the minimum", "poor", 7.59, 6600), ("watch", "fair", 7.6, 6600), ("sound", "good", 38.1, 6600)],
)
def test_a_circuit_needs_a_megohm_and_above_a_kilovolt_more(judge, band, rating, resistance, voltage):
    """1 MΩ to 1 kV, kV + 1 above; a recalled minimum never fails."""
    judgement = judge("circuit-insulation", resistance=resistance, voltage=voltage)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_a_minimum_of_the_surveyor_with_its_text_may_fail():
    """A cited limit replaces the usual one, and then the judgement names it and may fail."""
    rule = criterion("circuit-insulation")
    own = rule.profile.with_limits({"least": "2"}, "Class rules, part 4, table 9")
    judgement = rule.apply({"resistance": 1.5, "voltage": 480}, own)
    assert (2.0, "failed", "cited by the surveyor") == (judgement.limit, judgement.rating, judgement.source.mark)


@pytest.mark.parametrize(
    ("minimum", "item", "voltage"),
    [(1, "main switchboard", 480), (0.2, "generator or main motor", 500), (0.501, "generator or main motor", 501), (0.2, "other machine", 690),
     (0.06, "other board", 100), (0.2, "other board", 101), (0.2, "power cable", 500), (1.38, "power cable", 690)],
)
def test_each_row_of_the_register_fails_just_below_its_minimum(judge, minimum, item, voltage):
    """The row's own figure passes, a thousandth less fails: the table was read."""
    found = [judge("register-insulation", resistance=resistance, item=item, voltage=voltage).rating for resistance in (minimum, minimum - 0.001)]
    assert ["good", "failed"] == found


def test_the_register_knows_no_small_board_above_500_volts(judge):
    """The row ends at 500 V and is not stretched."""
    with pytest.raises(CannotJudge, match="ends at 500 V"):
        judge("register-insulation", item="other board", voltage=501)


@pytest.mark.parametrize(
    ("band", "applied", "rated"),
    [("as the table asks", 500, 480), ("over the table", 1000, 480), ("under the table", 499, 480), ("as the table asks", 1000, 2500),
     ("over the table", 1001, 2500), ("under the table", 999, 2501), ("as the table asks", 5000, 12_000), ("under the table", 4999, 12_001)],
)
def test_the_tester_is_held_against_its_table_and_never_rated(judge, band, applied, rated):
    """The voltage applied speaks of the test and not of the machine."""
    judgement = judge("insulation-test-voltage", applied=applied, rated=rated)
    assert (band, None) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(("name", "changes"), [("circuit-insulation", {"voltage": 11}), ("register-insulation", {"resistance": -1}),
                                               ("insulation-test-voltage", {"rated": 15_001})])
def test_what_lies_outside_is_refused(judge, name, changes):
    """No extrapolation beyond the tables."""
    with pytest.raises(CannotJudge, match="where the rule ends"):
        judge(name, **changes)

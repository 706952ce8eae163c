"""Temperatures of boards and bare surfaces: each rise from both sides, above the air as measured."""

import pytest

from inspector.criteria.assembly_temperature import TOUCH_RISE
from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(("expected", "temperature", "ambient"), [("good", 105, 35), ("poor", 105.1, 35), ("good", 98, 35), ("poor", 98, 25),
    ("poor", 118, 45)])
def test_a_terminal_may_rise_70_kelvin(judge, expected, temperature, ambient):
    """The same 98 °C passes in warm air and does not in cool air; a design figure is poor and not failed."""
    assert expected == judge("terminal-temperature", temperature=temperature, ambient=ambient).rating


def test_the_terminal_judgement_tells_the_rise(judge):
    """118 °C in air of 45 °C is a rise of 73 K, 3 K over."""
    judgement = judge("terminal-temperature", temperature=118, ambient=45)
    assert (73, 70, -3) == (judgement.value, judgement.limit, judgement.margin)


@pytest.mark.parametrize("part", TOUCH_RISE)
def test_each_touched_part_has_its_own_rise(judge, part):
    """At its rise good, a tenth above poor."""
    found = [judge("touch-temperature", temperature=30 + TOUCH_RISE[part] + more, ambient=30, part=part).rating for more in (0, 0.1)]
    assert ["good", "poor"] == found


@pytest.mark.parametrize(("expected", "temperature"), [("good", 220), ("poor", 220.1)])
def test_a_surface_within_reach_of_oil_ends_at_220_degrees(judge, expected, temperature):
    """The limit is recalled, so a bare hot pipe is poor and not failed."""
    assert expected == judge("hot-surface", temperature=temperature).rating


@pytest.mark.parametrize(("name", "changes"), [("terminal-temperature", {"ambient": 61}), ("touch-temperature", {"part": "door"}),
    ("hot-surface", {"temperature": 901})])
def test_what_lies_outside_is_refused(judge, name, changes):
    """A hotter room, an unknown part and a flame are not judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

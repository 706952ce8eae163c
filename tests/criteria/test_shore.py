"""Shore supply: volts for each hertz from both sides, and a reversed phase sequence whatever the volts."""

import pytest

from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(
    ("band", "voltage"),
    [("under-fluxed", 359.9), ("suits the machines", 360), ("suits the machines", 400), ("suits the machines", 424), ("over-fluxed", 424.1)],
)
def test_the_band_lies_between_90_and_106_per_cent(judge, band, voltage):
    """At 50 Hz beside a 480 V 60 Hz network, whose own flux is met by 400 V."""
    assert band == judge("shore-supply", voltage=voltage).band


def test_a_reversed_sequence_is_never_good(judge):
    """Even at the right volts motors would turn backwards; a rule of the trade is held at poor."""
    judgement = judge("shore-supply", sequence="reversed")
    assert ("phases reversed", "poor") == (judgement.band, judgement.rating)


def test_another_frequency_is_told_with_the_speed(judge):
    """50 Hz turns a 60 Hz motor at 83.33 % of its speed."""
    assert any("83.33 %" in note for note in judge("shore-supply").notes)


@pytest.mark.parametrize("changes", [{"frequency": 44}, {"ship_voltage": 24}, {"sequence": "unknown"}])
def test_what_lies_outside_is_refused(judge, changes):
    """Neither other frequencies nor battery networks nor an unknown sequence are judged."""
    with pytest.raises(CannotJudge):
        judge("shore-supply", **changes)

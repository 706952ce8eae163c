"""Shore supply: volts for each hertz from both sides, and a reversed phase sequence whatever the
volts.
"""

import pytest

from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("band", "voltage"),
    [
        ("under-fluxed", 359.9),
        ("slow machines", 360),
        ("slow machines", 400),
        ("slow machines", 424),
        ("over-fluxed", 424.1),
    ],
)
def test_the_band_lies_between_90_and_106_per_cent(judge, band, voltage):
    """At 50 Hz beside a 480 V 60 Hz network, whose own flux is met by 400 V."""
    assert band == judge("shore-supply", voltage=voltage).band


def test_a_reversed_sequence_is_never_good(judge):
    """Even at the right volts motors would turn backwards; a rule of the trade stays at poor."""
    judgement = judge("shore-supply", sequence="reversed")
    assert ("phases reversed", "poor") == (judgement.band, judgement.rating)


# 5 % of frequency is what machines are built for, IACS UR E5 (memory); volts in proportion
@pytest.mark.parametrize(
    ("frequency", "ship_frequency", "band", "rating"),
    [
        (60, 60, "suits the machines", "good"),
        (57, 60, "suits the machines", "good"),
        (56.9, 60, "slow machines", "fair"),
        (50, 60, "slow machines", "fair"),
        (52.5, 50, "suits the machines", "good"),
        (52.6, 50, "fast machines", "poor"),
        (60, 50, "fast machines", "poor"),
    ],
)
def test_another_frequency_is_never_good(judge, frequency, ship_frequency, band, rating):
    """With the right volts for each hertz pumps still run at 83 % at 50 of 60 Hz."""
    judgement = judge(
        "shore-supply",
        voltage=480 * frequency / ship_frequency,
        ship_voltage=480,
        frequency=frequency,
        ship_frequency=ship_frequency,
    )
    assert (band, rating) == (judgement.band, judgement.rating)


def test_what_a_slow_pump_gives_is_in_figures(judge):
    """Affinity laws by hand: (50/60)^2 is 69.44 %, (50/60)^3 is 57.87 %."""
    notes = judge("shore-supply", frequency=50, ship_frequency=60).notes
    assert any("69.44 % of its head, for 57.87 %" in note for note in notes)


def test_another_frequency_is_reported_with_the_speed(judge):
    """50 Hz turns a 60 Hz motor at 83.33 % of its speed."""
    assert any("83.33 %" in note for note in judge("shore-supply").notes)


@pytest.mark.parametrize(
    "changes", [{"frequency": 44}, {"ship_voltage": 24}, {"sequence": "unknown"}]
)
def test_what_lies_outside_is_refused(judge, changes):
    """Neither other frequencies nor battery networks nor an unknown sequence are judged."""
    with pytest.raises(CannotJudge):
        judge("shore-supply", **changes)

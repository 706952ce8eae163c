"""Supply: both ends of both bands, harmonics at the limit, insulation to earth."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.registry import criterion

PERMANENT, MOMENT, BEYOND = "inside the permanent band", "outside the permanent band", "outside the transient band"


@pytest.mark.parametrize(
    ("expected", "voltage"),
    [(BEYOND, 383.9), (MOMENT, 384), (MOMENT, 431.9), (PERMANENT, 432), (PERMANENT, 508.8), (MOMENT, 508.9),
     (MOMENT, 509), (MOMENT, 576), (BEYOND, 576.1)],
)
def test_480_volts_change_band_at_the_exact_shares(judge, expected, voltage):
    """-10 and +6 % for good, 20 % either way for moments; 508.8 V is inside although binary says otherwise."""
    judgement = judge("supply-voltage", voltage=voltage)
    assert expected == judgement.band
    assert judgement.rating == ("good" if expected == PERMANENT else "poor")


@pytest.mark.parametrize(
    ("expected", "frequency", "nominal"),
    [(MOMENT, 56.9, 60), (PERMANENT, 57, 60), (PERMANENT, 63, 60), (MOMENT, 63.1, 60), (BEYOND, 53.9, 60),
     (BEYOND, 66.1, 60), (MOMENT, 66, 60), (PERMANENT, 47.5, 50), (PERMANENT, 52.5, 50), (MOMENT, 47.4, 50),
     (BEYOND, 55.1, 50)],
)
def test_frequencies_change_band_at_five_and_ten_per_cent(judge, expected, frequency, nominal):
    """57 to 63 Hz and 47.5 to 52.5 Hz for good."""
    assert expected == judge("supply-frequency", frequency=frequency, nominal=nominal).band


def test_the_nearer_end_is_the_limit(judge):
    """A low voltage is told against the low end, a high one against the high end."""
    low, high = judge("supply-voltage", voltage=440), judge("supply-voltage", voltage=510)
    assert (low.limit, low.margin) == (432.0, 8.0)
    assert (high.limit, high.margin) == (508.8, -1.2)


@pytest.mark.parametrize("nominal", [55, 50.5, 59.9])
def test_a_nominal_frequency_is_fifty_or_sixty(judge, nominal):
    """Between the two there is no supply."""
    with pytest.raises(CannotJudge, match="50 or 60 Hz"):
        judge("supply-frequency", nominal=nominal)


def test_a_battery_voltage_is_outside_the_rule(judge):
    """24 V systems have other shares."""
    with pytest.raises(CannotJudge, match="below 100 V"):
        judge("supply-voltage", voltage=24, nominal=24)


@pytest.mark.parametrize(("expected", "distortion"), [("good", 7.99), ("good", 8), ("poor", 8.01), ("poor", 100)])
def test_distortion_is_held_against_eight_per_cent(judge, expected, distortion):
    """Eight itself complies; more is poor and not failed, since documented designs may exceed it."""
    assert expected == judge("harmonic-distortion", distortion=distortion).rating


@pytest.mark.parametrize(
    ("band", "rating", "resistance"),
    [("at the alarm", "poor", 47.9), ("low", "poor", 48), ("low", "poor", 99.9), ("watch", "fair", 100),
     ("watch", "fair", 1000), ("sound", "good", 1000.1), ("at the alarm", "poor", 0)],
)
def test_insulation_to_earth_of_480_volts(judge, band, rating, resistance):
    """Alarm under 100 ohms a volt, locate under 100 kΩ, watch to 1000 kΩ; common practice never fails."""
    judgement = judge("earth-fault", resistance=resistance)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_the_alarm_follows_the_voltage(judge):
    """At 24 V, 5 kΩ lies above the alarm of 2.4 kΩ and is low all the same."""
    assert judge("earth-fault", resistance=5, voltage=24).band == "low"


@pytest.mark.parametrize(
    ("name", "changes"), [("earth-fault", {"voltage": 6600}), ("harmonic-distortion", {"distortion": -1})]
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """High voltage and negative shares are not judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)


@pytest.mark.parametrize(
    ("expected", "voltage", "state"),
    [("good", 18, "on charge"), ("poor", 17.9, "on charge"), ("good", 31.2, "on charge"), ("poor", 31.3, "on charge"), ("good", 28.8, "not on charge"),
     ("poor", 28.9, "not on charge"), ("good", 21.6, "no battery"), ("poor", 21.5, "no battery"), ("good", 26.4, "no battery"), ("poor", 26.5, "no battery")],
)
def test_a_direct_current_network_is_judged_by_what_feeds_it(judge, expected, voltage, state):
    """Both ends of 24 V on charge, not on charge and without a battery."""
    assert expected == judge("battery-supply-voltage", voltage=voltage, state=state).rating


def test_a_surveyors_alarm_above_the_other_bands_comes_first():
    """With 500 ohms a volt the alarm of 480 V lies at 240 kΩ, above the usual figure for locating."""
    rule = criterion("earth-fault")
    own = rule.profile.with_limits({"alarm": "500"}, "Maker of the monitor, manual 3.1")
    found = [rule.apply({"resistance": kilohms, "voltage": 480}, own) for kilohms in (239.9, 240)]
    assert [("at the alarm", "failed"), ("watch", "fair")] == [(one.band, one.rating) for one in found]

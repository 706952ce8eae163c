"""Crankcase and hours: every limit from both sides, doubled baselines, replaced meters."""

import pytest

from inspector.criteria.engine_condition import HOURS, TURBOCHARGER
from inspector.criteria.judgement import CannotJudge

SPEEDS = {"high speed": 1800, "medium speed": 750, "low speed": 120}


@pytest.mark.parametrize(("expected", "pressure"), [("good", -2), ("good", 3), ("fair", 3.01), ("fair", 5), ("poor", 5.01)])
def test_a_crankcase_is_watched_above_3_and_acted_on_above_5_millibar(judge, expected, pressure):
    """Slight suction is good."""
    assert expected == judge("crankcase-pressure", pressure=pressure).rating


@pytest.mark.parametrize(("band", "pressure", "baseline"), [("good", 1.99, 1), ("act", 2, 1), ("act", 4, 2), ("watch", 3.9, 2), ("watch", 4.9, 3),
    ("good", 2, -1)])
def test_a_doubled_baseline_acts_by_itself(judge, band, pressure, baseline):
    """From twice the baseline on, unless the general limit is reached first; suction doubles nothing."""
    assert band == judge("crankcase-pressure", pressure=pressure, baseline=baseline).band


@pytest.mark.parametrize(
    ("rating", "bore", "volume", "valves"),
    [("good", 199.9, 0.59, "not fitted"), ("poor", 200, 0.59, "not fitted"), ("poor", 199.9, 0.6, "not fitted"), ("good", 500, 5, "fitted")],
)
def test_relief_valves_are_asked_by_bore_or_volume(judge, rating, bore, volume, valves):
    """200 mm or 0.6 m³, whichever comes first; recalled for ships, so held at poor."""
    assert rating == judge("crankcase-relief", bore=bore, volume=volume, valves=valves).rating


@pytest.mark.parametrize(
    ("rating", "bore", "power", "watch", "detector"),
    [("good", 300, 2249, "unmanned", "not fitted"), ("poor", 300.1, 2249, "unmanned", "not fitted"), ("poor", 250, 2250, "unmanned", "not fitted"),
     ("good", 400, 4000, "manned", "not fitted"), ("good", 400, 4000, "unmanned", "fitted")],
)
def test_oil_mist_detection_is_asked_of_large_unattended_engines(judge, rating, bore, power, watch, detector):
    """2250 kW or more than 300 mm; recalled, so held at poor."""
    assert rating == judge("oil-mist-detection", bore=bore, power=power, watch=watch, detector=detector).rating


@pytest.mark.parametrize(
    ("band", "meter"),
    [("meter replaced", 28_899), ("in its interval", 28_900), ("in its interval", 43_300), ("nearly due", 43_301), ("nearly due", 44_900), ("overdue", 44_901)],
)
def test_hours_since_an_overhaul_are_held_against_the_makers_interval(judge, band, meter):
    """28 900 h at the overhaul and 16 000 h to the next; a smaller meter was replaced."""
    assert band == judge("overhaul-interval", meter=meter).band


@pytest.mark.parametrize(("speed_class", "part"), [(speed, part) for speed in HOURS for part in (*HOURS[speed], "turbocharger")])
def test_each_part_is_due_within_its_range(judge, speed_class, part):
    """Short of the range not due, inside it due by practice, past it poor."""
    first, last = HOURS[speed_class].get(part, TURBOCHARGER)
    found = [judge("overhaul-hours", hours=hours, speed=SPEEDS[speed_class], part=part).rating for hours in (first - 1, first, last, last + 1)]
    assert ["good", "fair", "fair", "poor"] == found


@pytest.mark.parametrize(("expected", "speed"), [("low speed", 299), ("medium speed", 300), ("medium speed", 1000), ("high speed", 1001)])
def test_the_speed_class_is_cut_at_300_and_1000(judge, expected, speed):
    """Our own cut, told in the sentence."""
    assert f"a {expected} engine" in judge("overhaul-hours", speed=speed).sentence


@pytest.mark.parametrize(("name", "changes"), [("crankcase-pressure", {"pressure": 501}), ("overhaul-interval", {"interval": 0}),
    ("crankcase-relief", {"bore": 20}),
                                               ("oil-mist-detection", {"watch": "sometimes"}), ("overhaul-hours", {"part": "paint"})])
def test_what_lies_outside_is_refused(judge, name, changes):
    """No interval of nothing, no part of another list."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

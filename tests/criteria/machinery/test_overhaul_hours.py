"""Crankcase and hours: every limit from both sides, doubled baselines, replaced meters."""

import pytest

from inspector.criteria.core.judgement import CannotJudge

# speed [r/min], part, hours from which and to which the trade overhauls; common practice by speed
# class. For bearings of high speed engines "at the major overhaul" is the usual word, so they share
# its hours
OVERHAULS = [
    (1800, "injectors", 3000, 6000),
    (1800, "top end", 6000, 12_000),
    (1800, "pistons or major", 12_000, 24_000),
    (1800, "bearings", 12_000, 24_000),
    (1800, "turbocharger", 12_000, 16_000),
    (750, "injectors", 2000, 6000),
    (750, "top end", 12_000, 18_000),
    (750, "pistons or major", 16_000, 36_000),
    (750, "bearings", 24_000, 48_000),
    (750, "turbocharger", 12_000, 16_000),
    (120, "injectors", 6000, 8000),
    (120, "top end", 12_000, 16_000),
    (120, "pistons or major", 16_000, 24_000),
    (120, "bearings", 32_000, 48_000),
    (120, "turbocharger", 12_000, 16_000),
]


@pytest.mark.parametrize(
    ("expected", "pressure"),
    [("good", -2), ("good", 3), ("fair", 3.01), ("fair", 5), ("poor", 5.01)],
)
def test_a_crankcase_is_watched_above_3_and_acted_on_above_5_millibar(judge, expected, pressure):
    """Slight suction is good."""
    assert expected == judge("crankcase-pressure", pressure=pressure).rating


@pytest.mark.parametrize(
    ("band", "pressure", "baseline"),
    [
        ("good", 1.99, 1),
        ("act", 2, 1),
        ("act", 4, 2),
        ("watch", 3.9, 2),
        ("watch", 4.9, 3),
        ("good", 2, -1),
    ],
)
def test_a_doubled_baseline_acts_by_itself(judge, band, pressure, baseline):
    """From twice the baseline on, or from the limit if that is less; suction is not doubled."""
    assert band == judge("crankcase-pressure", pressure=pressure, baseline=baseline).band


@pytest.mark.parametrize(
    ("rating", "bore", "volume", "valves"),
    [
        ("good", 199.9, 0.59, "not fitted"),
        ("failed", 200, 0.59, "not fitted"),
        ("failed", 199.9, 0.6, "not fitted"),
        ("good", 500, 5, "fitted"),
    ],
)
def test_relief_valves_are_asked_by_bore_or_volume(judge, rating, bore, volume, valves):
    """200 mm or 0.6 m³, whichever comes first (seen in UK SI 1998/2514, 63(4))."""
    assert rating == judge("crankcase-relief", bore=bore, volume=volume, valves=valves).rating


@pytest.mark.parametrize(
    ("rating", "bore", "power", "watch", "detector"),
    [
        ("good", 300, 2249, "unmanned", "not fitted"),
        ("poor", 300.1, 2249, "unmanned", "not fitted"),
        ("poor", 250, 2250, "unmanned", "not fitted"),
        ("good", 400, 4000, "manned", "not fitted"),
        ("good", 400, 4000, "unmanned", "fitted"),
    ],
)
def test_oil_mist_detection_is_asked_of_large_unattended_engines(
    judge, rating, bore, power, watch, detector
):
    """2250 kW or more than 300 mm (seen in MSC.1/Circ.1345); bearing monitors may stand for it."""
    assert (
        rating
        == judge(
            "oil-mist-detection", bore=bore, power=power, watch=watch, detector=detector
        ).rating
    )


@pytest.mark.parametrize(
    ("band", "meter"),
    [
        ("meter replaced", 28_899),
        ("in its interval", 28_900),
        ("in its interval", 43_300),
        ("nearly due", 43_301),
        ("nearly due", 44_900),
        ("overdue", 44_901),
    ],
)
def test_hours_since_an_overhaul_are_held_against_the_makers_interval(judge, band, meter):
    """28 900 h at the overhaul and 16 000 h to the next; a smaller meter was replaced."""
    assert band == judge("overhaul-interval", meter=meter).band


@pytest.mark.parametrize(("speed", "part", "first", "last"), OVERHAULS)
def test_each_part_is_due_within_its_range(judge, speed, part, first, last):
    """Short of the range not due, inside it due by practice, past it poor."""
    found = [
        judge("overhaul-hours", hours=hours, speed=speed, part=part).rating
        for hours in (first - 1, first, last, last + 1)
    ]
    assert ["good", "fair", "fair", "poor"] == found


@pytest.mark.parametrize(
    ("expected", "speed"),
    [("low speed", 299), ("medium speed", 300), ("medium speed", 1000), ("high speed", 1001)],
)
def test_the_speed_class_is_cut_at_300_and_1000(judge, expected, speed):
    """Our own cut, named in the sentence."""
    assert f"a {expected} engine" in judge("overhaul-hours", speed=speed).sentence


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("crankcase-pressure", {"pressure": 501}),
        ("overhaul-interval", {"interval": 0}),
        ("crankcase-relief", {"bore": 20}),
        ("oil-mist-detection", {"watch": "sometimes"}),
        ("overhaul-hours", {"part": "paint"}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """No interval of nothing, no part of another list."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

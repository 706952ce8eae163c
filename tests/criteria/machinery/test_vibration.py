"""More tables of vibration: every end from both sides, and no table takes another's machines."""

import pytest

from inspector.criteria.core.judgement import CannotJudge

# category, size, ends of zones A, B, C [mm/s]; ISO 10816-7:2009 (memory)
PUMPS = [
    ("I", "up to 200 kW", (2.5, 4.0, 6.6)),
    ("I", "above 200 kW", (3.5, 5.0, 7.6)),
    ("II", "up to 200 kW", (3.2, 5.1, 8.5)),
    ("II", "above 200 kW", (4.2, 6.1, 9.5)),
]
# support, start-up, alarm and shut-down [mm/s]; ISO 14694, application BV-3 in service (memory)
FANS = [("rigid", (4.5, 7.1, 9.0)), ("flexible", (6.3, 11.8, 12.5))]


def zones(judge, name, ends, **choices):
    """The zone at each end and a hundredth above it."""
    return [
        judge(name, velocity=velocity, **choices).band[-1]
        for end in ends
        for velocity in (end, end + 0.01)
    ]


@pytest.mark.parametrize(("category", "size", "ends"), PUMPS)
def test_the_pump_table_ends_belong_to_the_better_zone(judge, category, size, ends):
    """Two categories, two sizes, three ends each."""
    assert list("ABBCCD") == zones(judge, "pump-vibration", ends, category=category, size=size)


@pytest.mark.parametrize(("support", "ends"), FANS)
def test_a_fan_is_watched_alarmed_and_shut_down(judge, support, ends):
    """Start-up, alarm and shut-down ends; recalled, so held at poor."""
    found = [
        judge("fan-vibration", velocity=end + more, support=support).band
        for end in ends
        for more in (0, 0.01)
    ]
    assert ["as put to work", "watch", "watch", "alarm", "alarm", "shut down"] == found


@pytest.mark.parametrize(
    ("expected", "velocity"), [("good", 20), ("fair", 20.1), ("fair", 28), ("poor", 28.1)]
)
def test_an_alternator_has_its_own_guide_values(judge, expected, velocity):
    """15 mm/s on an engine-driven set is no zone D."""
    assert expected == judge("alternator-vibration", velocity=velocity).rating


@pytest.mark.parametrize(
    ("band", "velocity"),
    [
        ("changed", 0.224),
        ("as before", 0.225),
        ("as before", 3.775),
        ("alarm", 3.776),
        ("alarm", 3.9),
    ],
)
def test_a_quarter_of_zone_b_is_a_change(judge, band, velocity):
    """1.775 mm/s either way of a baseline of 2.0 on a flexible machine of group 1."""
    assert band == judge("vibration-change", velocity=velocity).band


@pytest.mark.parametrize(("expected", "baseline"), [(3.775, 2.0), (8.875, 7.1), (8.875, 9)])
def test_an_alarm_is_capped(judge, expected, baseline):
    """Never above one and a quarter of zone B's end."""
    assert expected == judge("vibration-change", baseline=baseline, velocity=1).limit


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("pump-vibration", {"category": "III"}),
        ("fan-vibration", {"velocity": -0.1}),
        ("alternator-vibration", {"velocity": 501}),
        ("vibration-change", {"baseline": None}),
    ],
)
def test_what_belongs_to_another_table_is_refused(judge, name, changes):
    """A third category, a speed below zero, a speed beyond the range, a missing baseline."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

"""More tables of vibration: every end from both sides, and no table takes another's machines."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.vibration_tables import CLASSES, FAN_LIMITS, PUMP_ZONES, REGIONS


def zones(judge, name, ends, **choices):
    """The zone at each end and a hundredth above it."""
    return [judge(name, velocity=velocity, **choices).band[-1] for end in ends for velocity in (end, end + 0.01)]


@pytest.mark.parametrize("machine_class", CLASSES)
def test_the_general_table_ends_belong_to_the_better_zone(judge, machine_class):
    """Four classes, three ends each."""
    assert list("ABBCCD") == zones(judge, "general-vibration", CLASSES[machine_class], machine_class=machine_class)


def test_the_general_table_was_read_and_may_fail(judge):
    """Zone D of the older table fails, since its figures were seen."""
    assert "failed" == judge("general-vibration", velocity=7.2, machine_class="II").rating


@pytest.mark.parametrize("case", PUMP_ZONES, ids=str)
def test_the_pump_table_ends_belong_to_the_better_zone(judge, case):
    """Two categories, two sizes, three ends each."""
    category, size = case
    assert list("ABBCCD") == zones(judge, "pump-vibration", PUMP_ZONES[case], category=category, size=size)


@pytest.mark.parametrize("region", REGIONS)
def test_the_process_limit_is_poor_and_not_failed(judge, region):
    """A limit to buy by does not condemn a pump in service."""
    assert ["good", "poor"] == [judge("process-pump-vibration", velocity=REGIONS[region] + more, region=region).rating for more in (0, 0.01)]


@pytest.mark.parametrize("support", FAN_LIMITS)
def test_a_fan_is_watched_alarmed_and_shut_down(judge, support):
    """Start-up, alarm and shut-down ends; recalled, so held at poor."""
    found = [judge("fan-vibration", velocity=end + more, support=support).band for end in FAN_LIMITS[support] for more in (0, 0.01)]
    assert ["as put to work", "watch", "watch", "alarm", "alarm", "shut down"] == found


@pytest.mark.parametrize(("expected", "velocity"), [("good", 20), ("fair", 20.1), ("fair", 28), ("poor", 28.1)])
def test_an_alternator_has_its_own_guide_values(judge, expected, velocity):
    """15 mm/s on an engine-driven set is no zone D."""
    assert expected == judge("alternator-vibration", velocity=velocity).rating


@pytest.mark.parametrize(("band", "velocity"), [("changed", 0.224), ("as before", 0.225), ("as before", 3.775), ("alarm", 3.776), ("alarm", 3.9)])
def test_a_quarter_of_zone_b_is_a_change(judge, band, velocity):
    """1.775 mm/s either way of a baseline of 2.0 on a flexible machine of group 1."""
    assert band == judge("vibration-change", velocity=velocity).band


@pytest.mark.parametrize(("expected", "baseline"), [(3.775, 2.0), (8.875, 7.1), (8.875, 9)])
def test_an_alarm_is_capped(judge, expected, baseline):
    """Never above one and a quarter of zone B's end."""
    assert expected == judge("vibration-change", baseline=baseline, velocity=1).limit


@pytest.mark.parametrize(
    ("name", "changes"),
    [("general-vibration", {"machine_class": "1"}), ("pump-vibration", {"category": "III"}), ("fan-vibration", {"velocity": -0.1}),
     ("process-pump-vibration", {"region": "any"}), ("alternator-vibration", {"velocity": 501}), ("vibration-change", {"baseline": None})],
)
def test_what_belongs_to_another_table_is_refused(judge, name, changes):
    """Arabic classes, a third category, a missing baseline."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)

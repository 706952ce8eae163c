"""How a generating set answers: both ends of every band, and frequencies that no set has."""

import pytest

from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(
    ("expected", "voltage", "service"),
    [("good", 468, "main"), ("poor", 467.9, "main"), ("good", 492, "main"), ("poor", 492.1, "main"), ("good", 463.2, "emergency"), ("poor", 463.1, "emergency"),
     ("good", 496.8, "emergency"), ("poor", 496.9, "emergency")],
)
def test_a_regulator_holds_its_share_either_way(judge, expected, voltage, service):
    """2.5 % for a main and 3.5 % for an emergency generator of 480 V."""
    assert expected == judge("regulator-voltage", voltage=voltage, service=service).rating


@pytest.mark.parametrize(("expected", "voltage"), [("good", 408), ("poor", 407.9), ("good", 576), ("poor", 576.1)])
def test_a_step_may_dip_15_and_rise_20_per_cent(judge, expected, voltage):
    """408 to 576 V on 480 V."""
    assert expected == judge("voltage-transient", voltage=voltage).rating


@pytest.mark.parametrize(("name", "most"), [("voltage-recovery", 1.5), ("governor-recovery", 5)])
def test_settling_is_timed(judge, name, most):
    """The limit itself is in time, a hundredth more is not."""
    assert ["good", "poor"] == [judge(name, time=time).rating for time in (most, most + 0.01)]


@pytest.mark.parametrize(("band", "no_load"), [("within the limit", 62.4), ("within the limit", 63), ("over the limit", 63.01), ("within the limit", 60),
    ("rises under load", 59.9)])
def test_a_droop_lies_between_nothing_and_five_per_cent(judge, band, no_load):
    """63 Hz at no load of 60 Hz is exactly 5 %."""
    assert band == judge("governor-droop", no_load=no_load).band


@pytest.mark.parametrize(("expected", "frequency", "nominal"), [("good", 54, 60), ("poor", 53.9, 60), ("good", 66, 60), ("poor", 66.1, 60),
    ("good", 55, 50), ("poor", 55.1, 50)])
def test_a_step_may_move_the_frequency_by_ten_per_cent(judge, expected, frequency, nominal):
    """Either way, for 50 and 60 Hz."""
    assert expected == judge("frequency-transient", frequency=frequency, nominal=nominal).rating


@pytest.mark.parametrize(("name", "asked"), [("governor-droop", "rated"), ("frequency-transient", "nominal")])
def test_a_set_has_50_or_60_hertz(judge, name, asked):
    """55 Hz is no rated frequency."""
    with pytest.raises(CannotJudge, match="50 or 60 Hz"):
        judge(name, **{asked: 55})


def test_the_nearer_end_is_the_limit(judge):
    """A low voltage is told against the low end."""
    low, high = judge("regulator-voltage", voltage=470), judge("regulator-voltage", voltage=491)
    assert [(468.0, 2.0), (492.0, 1.0)] == [(one.limit, one.margin) for one in (low, high)]

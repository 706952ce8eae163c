"""Air for a battery space: the need from both sides for each way of charging."""

import pytest

from inspector.criteria.battery_room import GASSING, air_needed
from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize("charging", GASSING)
def test_air_is_enough_from_the_need_on(judge, charging):
    """At the need enough, a hundredth less too little; recalled, so never failed."""
    need = air_needed(12, 200, charging)
    found = [judge("battery-ventilation", airflow=airflow, charging=charging).rating for airflow in (need, need - 0.01)]
    assert ["good", "poor"] == found


@pytest.mark.parametrize("changes", [{"cells": 0}, {"capacity": 10_001}, {"charging": "lithium"}])
def test_other_batteries_are_refused(judge, changes):
    """No cells, too large a battery, another chemistry."""
    with pytest.raises(CannotJudge):
        judge("battery-ventilation", **changes)

"""What the chapter on power warns of, and what it leaves alone."""

import pytest

from inspector.conversion.power.chapter import chapter
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import case
from tests.conversion.power.test_chapter import LOADS, SETS, UNITS, WHOLE, WIND

CLOSED = [{"name": "tie", "one": "A", "other": "B", "normally": "closed", "proven": "no"}]


def warnings(vessel=None, **tables):
    """The warnings of the whole plant with other tables, as text."""
    found = chapter(case({**WHOLE, **tables}, vessel))
    return [cell_text(warning) for warning in found.warnings]


def test_a_sound_plant_warns_of_nothing():
    """Each bus alone withstands the wind, and one set out leaves enough."""
    assert [] == warnings()


def test_a_demand_that_is_not_carried_is_warned_of():
    """2000 kW at sea on bus A, which keeps 600 with one set out: short by 1400, whatever B has."""
    loads = [{**LOADS[0], "sea": "2000"}, {**LOADS[1], "sea": "200"}]

    assert any(
        "the demand in sea, bus A is not carried: short by 1400 kW" in text
        for text in warnings(plant_loads=loads)
    )


def test_a_demand_that_may_be_carried_is_no_warning():
    """580 kW within 10 % may be 522 or 638 against 600: not known, so nothing is claimed."""
    loads = [{**LOADS[0], "sea": "580"}, {**LOADS[1], "sea": "200"}]

    assert [] == warnings(plant_loads=loads)


def test_a_wind_that_is_too_much_for_the_whole_plant():
    """Then the single failures are no news, and only the plant itself is named."""
    texts = warnings(plant_exposure=[{**WIND[0], "wind": "40"}])

    assert any(
        "too much even with nothing failed: bow thrust falls short" in text for text in texts
    )
    assert not any("after the loss of" in text for text in texts)


def test_a_wind_that_a_failure_leaves_too_much_names_the_failures():
    """18 m/s are 35 kn: more than one bow thruster withstands, less than two do."""
    (text,) = warnings(plant_exposure=[{**WIND[0], "wind": "18"}])

    assert text.startswith("The wind to be withstood is too much after the loss of bus A, bus B")


def test_a_failure_that_darkens_all_is_named_once():
    """A closed tie that is not proven: bus A, bus B and the tie take all thrust."""
    texts = warnings(plant_ties=CLOSED)
    (dark,) = [text for text in texts if "takes all thrust across" in text]

    assert all(name in dark for name in ("bus A", "bus B", "tie"))
    assert not any("after the loss of bus A" in text for text in texts)


def test_a_shared_pump_darkens_all():
    """One pump that all thrusters need is a single failure of all thrust."""
    needs = [{"element": unit["name"], "on": "pump"} for unit in UNITS]

    assert any("takes all thrust across: pump" in text for text in warnings(plant_needs=needs))


@pytest.mark.parametrize(
    ("dp_class", "ties", "met"),
    [("1", CLOSED, True), ("2", CLOSED, False), ("3", CLOSED, False), ("2", None, True)],
)
def test_a_class_warns_of_what_it_does_not_find(dp_class, ties, met):
    """Class 1 requires nothing of ties; 2 and 3 do not take a closed one that is not proven."""
    tables = {} if ties is None else {"plant_ties": ties}
    texts = warnings({"dp_class": dp_class, "built": "2018-01-01"}, **tables)

    assert met != any(text.startswith("DP class, not met: ") for text in texts)


def test_a_class_is_not_judged_by_a_wind_that_nobody_gave():
    """Whether station is kept after a failure is not known then, which is no warning."""
    calm = [{**WIND[0], "wind": ""}]

    assert [] == warnings({"dp_class": "2", "built": "2018"}, plant_exposure=calm)


def test_a_broken_part_is_a_warning_of_its_class():
    """The failure analysis counts on every part."""
    sets = [{**SETS[0], "out": "yes"}, *SETS[1:]]
    texts = warnings({"dp_class": "2"}, plant_generators=sets)

    assert any("out of order: G1" in text for text in texts)

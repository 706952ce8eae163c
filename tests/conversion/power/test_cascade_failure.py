"""Single failures: what is refused, what is lost with what, and more plant never leaves less."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.power.cascade_failure import (
    after_failure,
    out_of_order,
    single_failures,
)
from inspector.conversion.power.dp_requirements import dp_requirements, text_for
from inspector.conversion.power.plant import Plant
from inspector.conversion.power.plant_elements import (
    Dependency,
    GeneratorSet,
    MainEngine,
    Thruster,
    Tie,
    alternatives,
)

G1, G2 = GeneratorSet("G1", "A", 600), GeneratorSet("G2", "B", 600)
BOW, STERN = (
    Thruster("T1", "tunnel", "A", 500, 27, "across"),
    Thruster("T2", "azimuth in nozzle", "B", 900, -27, "both"),
)
TWO = Plant(sets=(G1, G2), ties=(Tie("tie", "A", "B"),), thrusters=(BOW, STERN))


@pytest.mark.parametrize(
    ("make", "field"),
    [
        (lambda: GeneratorSet("G1", "A", 0), "G1: rated power"),
        (lambda: MainEngine("port engine", 0), "port engine: rated power"),
        (lambda: MainEngine("port engine", float("nan")), "port engine: rated power"),
        (lambda: GeneratorSet("G1", " ", 600), "G1: bus"),
        (lambda: GeneratorSet("", "A", 600), "name"),
        (lambda: GeneratorSet("G1", "A", 600, 1.1), "G1: power factor"),
        (lambda: Tie("tie", "A", "A"), "tie: second bus"),
        (lambda: Tie("tie", "", "A"), "tie: first bus"),
        (lambda: Thruster("T1", "paddle", "A", 500, 27, "across"), "T1: kind"),
        (lambda: Thruster("T1", "tunnel", "A", 500, 27, "up"), "T1: acts"),
        (lambda: Thruster("T1", "tunnel", "A", -500, 27, "across"), "T1: rated power"),
        (lambda: Thruster("T1", "tunnel", "A", 500, 2700, "across"), "T1: position"),
        (lambda: Thruster("T1", "tunnel", "A", 500, 27, "across", thrust=0), "T1: thrust"),
        (lambda: Thruster("T1", "tunnel", "", 500, 27, "across"), "T1: fed by"),
        (lambda: Dependency("pump", "pump"), "pump: needs"),
        (lambda: Dependency("pump", " "), "pump: needs"),
        (lambda: Dependency("", "pump"), "name"),
        (lambda: Plant(sets=(G1,), thrusters=(STERN,)), "T2: fed by"),
        (lambda: Plant(sets=(G1, G1)), "name"),
        (lambda: Plant(sets=(G1,), hotel={"C": 10}), "load: bus"),
        (lambda: Plant(sets=(G1,), hotel={"A": -10}), "A: load"),
        (lambda: after_failure(TWO, ("T9",)), "failure"),
    ],
)
def test_a_plant_that_cannot_be_is_refused(make, field):
    """One clear sentence that names the field."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field
    assert str(refused.value).endswith(".")


def test_a_thruster_fed_from_nowhere_names_what_exists():
    """The sentence says which buses and engines are known."""
    with pytest.raises(BadInput, match="there is no such bus or engine; known are: A, B"):
        Plant(sets=(G1, G2), thrusters=(replace(BOW, feed="C"),))


def test_names_joined_by_or_are_alternatives():
    """A word that contains the letters is no alternative."""
    assert ("pump 1", "motor 2") == alternatives("pump 1 or motor 2")
    assert ("port engine",) == alternatives(" port engine ")


def test_losing_a_bus_takes_its_sets_and_thrusters():
    """With the tie open, the other half works."""
    assert {"A", "G1", "T1"} == after_failure(TWO, ("A",)).lost


def test_an_open_tie_cannot_fail():
    """It has nothing left to lose."""
    assert "tie" not in single_failures(TWO)


def test_a_closed_tie_that_is_not_proven_passes_every_bus_fault():
    """All is dark after the loss of one bus, and of the tie itself."""
    closed = replace(TWO, ties=(Tie("tie", "A", "B", closed=True),))

    assert () == after_failure(closed, ("A",)).islands == after_failure(closed, ("tie",)).islands


def test_a_closed_tie_that_is_proven_parts():
    """The other half works, and without the tie both do."""
    closed = replace(TWO, ties=(Tie("tie", "A", "B", closed=True, proven=True),))

    assert {"A", "G1", "T1", "tie"} >= after_failure(closed, ("A",)).lost
    assert 2 == len(after_failure(closed, ("tie",)).islands)


def test_a_bus_without_a_set_lives_by_its_tie_only():
    """Its set lost, a bus is dark with the tie open and live with it closed."""
    assert "T1" in after_failure(TWO, ("G1",)).lost
    assert (
        "T1" in after_failure(replace(TWO, ties=(Tie("tie", "A", "B", True, True),)), ("G1",)).alive
    )


def test_a_hidden_pump_takes_the_other_half_too():
    """T2 cooled from bus A is lost with bus A."""
    assert {"T1", "T2"} <= after_failure(
        replace(TWO, dependencies=(Dependency("T2", "pump"), Dependency("pump", "A"))), ("A",)
    ).lost


def test_a_second_pump_keeps_it():
    """Any of the alternatives is enough."""
    assert (
        "T2"
        in after_failure(
            replace(
                TWO,
                dependencies=(
                    Dependency("T2", "pump 1 or pump 2"),
                    Dependency("pump 1", "A"),
                    Dependency("pump 2", "B"),
                ),
            ),
            ("A",),
        ).alive
    )


def test_a_control_position_takes_all_that_it_alone_steers():
    """Two thrusters on one position are one failure; a second position keeps them."""
    alone, both = (
        replace(TWO, thrusters=tuple(replace(unit, control=text) for unit in TWO.thrusters))
        for text in ("bridge", "bridge or aft bridge")
    )

    assert {"T1", "T2"} <= after_failure(alone, ("bridge",)).lost
    assert {"T1", "T2"} <= after_failure(both, ("bridge",)).alive


def test_what_is_out_of_order_is_the_starting_case():
    """A broken set is lost before anything fails, and is not failed again."""
    broken = replace(TWO, sets=(replace(G1, out=True), G2))

    assert {"G1"} == out_of_order(broken)
    assert {"G1", "A", "T1"} == after_failure(broken).lost
    assert "G1" not in single_failures(broken)


def test_the_emergency_set_keeps_no_bus_alive():
    """It never counts as main plant."""
    assert (
        "A"
        in after_failure(
            Plant(sets=(replace(G1, emergency=True), GeneratorSet("G3", "A", 100))), ("G3",)
        ).lost
    )


@st.composite
def plants(draw):
    """Plants of two or three buses with sets, ties, thrusters and shared needs at random."""
    buses = ["A", "B", "C"][: draw(st.integers(2, 3))]
    sets = tuple(
        GeneratorSet(f"G{bus}", bus, 500, out=draw(st.booleans()) and bus != "A") for bus in buses
    )
    ties = tuple(
        Tie(f"tie {first}{second}", first, second, draw(st.booleans()), draw(st.booleans()))
        for first, second in zip(buses, buses[1:], strict=False)
    )
    units = tuple(
        Thruster(
            f"T{n}",
            "tunnel",
            draw(st.sampled_from(buses)),
            300,
            draw(st.sampled_from([25, -25])),
            "across",
        )
        for n in range(draw(st.integers(1, 4)))
    )
    needs = tuple(
        Dependency(unit.name, draw(st.sampled_from(["pump", "tank", "pump or tank"])))
        for unit in units
        if draw(st.booleans())
    )
    return Plant(
        sets=sets,
        ties=ties,
        thrusters=units,
        dependencies=(*needs, Dependency("pump", draw(st.sampled_from(buses)))),
    )


@given(plants(), st.data())
def test_a_further_set_never_takes_an_element_away(plant, data):
    """Whatever lives after a failure also lives with one set more on a bus."""
    failed = data.draw(st.sampled_from(single_failures(plant)))
    more = replace(
        plant,
        sets=(*plant.sets, GeneratorSet("further", data.draw(st.sampled_from(plant.buses)), 500)),
    )

    assert after_failure(plant, (failed,)).alive <= after_failure(more, (failed,)).alive


@given(plants(), st.data())
def test_a_second_failure_never_gives_back(plant, data):
    """What is lost after one failure is lost after two."""
    first, second = (data.draw(st.sampled_from(single_failures(plant))) for _ in range(2))

    assert after_failure(plant, (first,)).lost <= after_failure(plant, (first, second)).lost


@given(plants(), st.data())
def test_a_proven_tie_never_leaves_less_than_one_that_is_not(plant, data):
    """Proving that the ties part saves, and costs nothing."""
    failed = data.draw(st.sampled_from(single_failures(plant)))
    proven = replace(plant, ties=tuple(replace(tie, proven=True) for tie in plant.ties))

    assert after_failure(plant, (failed,)).alive <= after_failure(proven, (failed,)).alive


def test_a_class_that_is_none_is_refused():
    """Only 1, 2 and 3."""
    with pytest.raises(BadInput, match="DP class"):
        dp_requirements("4", TWO, ())


def test_one_bus_is_not_divisible():
    """Class 2 asks for two systems; class 1 for nothing here."""
    alone = Plant(sets=(G1,), thrusters=(BOW,))

    assert False is dp_requirements("2", alone, ())[0].met
    assert [True] == [each.met for each in dp_requirements("1", alone, ())]


@pytest.mark.parametrize(
    ("number", "tie", "met"),
    [
        ("2", Tie("tie", "A", "B"), True),
        ("2", Tie("tie", "A", "B", True), False),
        ("2", Tie("tie", "A", "B", True, True), True),
        ("3", Tie("tie", "A", "B"), True),
        ("3", Tie("tie", "A", "B", True), False),
        ("3", Tie("tie", "A", "B", True, True), None),
    ],
)
def test_ties_by_class(number, tie, met):
    """Class 2 takes closed ties that part; class 3 requires open ones, or proof of integrity."""
    assert met is dp_requirements(number, replace(TWO, ties=(tie,)), ())[1].met


@pytest.mark.parametrize(
    ("built", "title"),
    [("1994-06-30", None), ("1994-07-01", "645"), ("2017-06-08", "645"), ("2017-06-09", "1580")],
)
def test_the_text_goes_by_the_day_of_the_keel(built, title):
    """Both sides of both days."""
    from datetime import date

    found = text_for(date.fromisoformat(built))

    assert (title is None) == (found is None)
    assert found is None or title in found.title

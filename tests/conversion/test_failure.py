"""Single failures: what a plant refuses to be, what falls with what, and that more plant never leaves less."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.dp_demands import demands, text_for
from inspector.conversion.failure import after, elements, out_of_order
from inspector.conversion.inputs import BadInput
from inspector.conversion.plant import GeneratorSet, MainEngine, Need, Plant, Thruster, Tie, alternatives

G1, G2 = GeneratorSet("G1", "A", 600), GeneratorSet("G2", "B", 600)
BOW, STERN = Thruster("T1", "tunnel", "A", 500, 27, "across"), Thruster("T2", "azimuth in nozzle", "B", 900, -27, "both")
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
        (lambda: Need("pump", "pump"), "pump: needs"),
        (lambda: Need("pump", " "), "pump: needs"),
        (lambda: Need("", "pump"), "name"),
        (lambda: Plant(sets=(G1,), thrusters=(STERN,)), "T2: fed by"),
        (lambda: Plant(sets=(G1, G1)), "name"),
        (lambda: Plant(sets=(G1,), hotel={"C": 10}), "load: bus"),
        (lambda: Plant(sets=(G1,), hotel={"A": -10}), "A: load"),
        (lambda: after(TWO, ("T9",)), "failure"),
    ],
)
def test_a_plant_that_cannot_be_is_refused(make, field):
    """One clear sentence that names the field."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field
    assert str(refused.value).endswith(".")


def test_a_thruster_fed_from_nowhere_names_what_is_there():
    """The sentence says which buses and engines are known."""
    with pytest.raises(BadInput, match="no such bus or engine is there; known are: A, B"):
        Plant(sets=(G1, G2), thrusters=(replace(BOW, feed="C"),))


def test_names_joined_by_or_are_alternatives():
    """A word that holds the letters is none."""
    assert ("pump 1", "motor 2") == alternatives("pump 1 or motor 2")
    assert ("port engine",) == alternatives(" port engine ")


def test_losing_a_bus_takes_its_sets_and_thrusters():
    """With the tie open, the other half stands."""
    assert {"A", "G1", "T1"} == after(TWO, ("A",)).lost


def test_an_open_tie_cannot_fail():
    """It has nothing left to lose."""
    assert "tie" not in elements(TWO)


def test_a_closed_tie_that_is_not_proven_passes_every_bus_fault():
    """All is dark after one bus, and after the tie itself."""
    closed = replace(TWO, ties=(Tie("tie", "A", "B", closed=True),))

    assert () == after(closed, ("A",)).islands == after(closed, ("tie",)).islands


def test_a_closed_tie_that_is_proven_parts():
    """The other half stands, and without the tie both do."""
    closed = replace(TWO, ties=(Tie("tie", "A", "B", closed=True, proven=True),))

    assert {"A", "G1", "T1", "tie"} >= after(closed, ("A",)).lost
    assert 2 == len(after(closed, ("tie",)).islands)


def test_a_bus_without_a_set_lives_by_its_tie_only():
    """Its set lost, a bus is dark with the tie open and live with it closed."""
    assert "T1" in after(TWO, ("G1",)).lost
    assert "T1" in after(replace(TWO, ties=(Tie("tie", "A", "B", True, True),)), ("G1",)).alive


def test_a_hidden_pump_takes_the_other_half_too():
    """T2 cooled from bus A falls with bus A."""
    assert {"T1", "T2"} <= after(replace(TWO, needs=(Need("T2", "pump"), Need("pump", "A"))), ("A",)).lost


def test_a_second_pump_keeps_it():
    """Any one of the alternatives will do."""
    assert "T2" in after(replace(TWO, needs=(Need("T2", "pump 1 or pump 2"), Need("pump 1", "A"), Need("pump 2", "B"))), ("A",)).alive


def test_a_control_position_takes_all_that_it_alone_steers():
    """Two thrusters on one position are one failure; a second position keeps them."""
    alone, both = (
        replace(TWO, thrusters=tuple(replace(unit, control=text) for unit in TWO.thrusters)) for text in ("bridge", "bridge or aft bridge")
    )

    assert {"T1", "T2"} <= after(alone, ("bridge",)).lost
    assert {"T1", "T2"} <= after(both, ("bridge",)).alive


def test_what_is_out_of_order_is_the_starting_case():
    """A broken set is lost before anything fails, and is not failed again."""
    broken = replace(TWO, sets=(replace(G1, out=True), G2))

    assert {"G1"} == out_of_order(broken)
    assert {"G1", "A", "T1"} == after(broken).lost
    assert "G1" not in elements(broken)


def test_the_emergency_set_keeps_no_bus_alive():
    """It never counts as main plant."""
    assert "A" in after(Plant(sets=(replace(G1, emergency=True), GeneratorSet("G3", "A", 100))), ("G3",)).lost


@st.composite
def plants(draw):
    """Plants of two or three buses with sets, ties, thrusters and shared needs at random."""
    buses = ["A", "B", "C"][: draw(st.integers(2, 3))]
    sets = tuple(GeneratorSet(f"G{bus}", bus, 500, out=draw(st.booleans()) and bus != "A") for bus in buses)
    ties = tuple(Tie(f"tie {one}{other}", one, other, draw(st.booleans()), draw(st.booleans())) for one, other in zip(buses, buses[1:], strict=False))
    units = tuple(
        Thruster(f"T{n}", "tunnel", draw(st.sampled_from(buses)), 300, draw(st.sampled_from([25, -25])), "across")
        for n in range(draw(st.integers(1, 4)))
    )
    needs = tuple(Need(unit.name, draw(st.sampled_from(["pump", "tank", "pump or tank"]))) for unit in units if draw(st.booleans()))
    return Plant(sets=sets, ties=ties, thrusters=units, needs=(*needs, Need("pump", draw(st.sampled_from(buses)))))


@given(plants(), st.data())
def test_a_further_set_never_takes_an_element_away(plant, data):
    """Whatever lives after a failure also lives with one set more on a bus."""
    failed = data.draw(st.sampled_from(elements(plant)))
    more = replace(plant, sets=(*plant.sets, GeneratorSet("further", data.draw(st.sampled_from(plant.buses)), 500)))

    assert after(plant, (failed,)).alive <= after(more, (failed,)).alive


@given(plants(), st.data())
def test_a_second_failure_never_gives_back(plant, data):
    """What is lost after one failure is lost after two."""
    one, other = (data.draw(st.sampled_from(elements(plant))) for _ in range(2))

    assert after(plant, (one,)).lost <= after(plant, (one, other)).lost


@given(plants(), st.data())
def test_a_proven_tie_never_leaves_less_than_one_that_is_not(plant, data):
    """Proving that the ties part saves, and costs nothing."""
    failed = data.draw(st.sampled_from(elements(plant)))
    proven = replace(plant, ties=tuple(replace(tie, proven=True) for tie in plant.ties))

    assert after(plant, (failed,)).alive <= after(proven, (failed,)).alive


def test_a_class_that_is_none_is_refused():
    """Only 1, 2 and 3."""
    with pytest.raises(BadInput, match="DP class"):
        demands("4", TWO, ())


def test_one_bus_is_not_divisible():
    """Class 2 asks for two systems; class 1 for nothing here."""
    alone = Plant(sets=(G1,), thrusters=(BOW,))

    assert False is demands("2", alone, ())[0].met
    assert [True] == [one.met for one in demands("1", alone, ())]


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
    """Class 2 takes closed ties that part; class 3 asks for open ones, or for equal integrity, which a plate cannot show."""
    assert met is demands(number, replace(TWO, ties=(tie,)), ())[1].met


@pytest.mark.parametrize(("built", "title"), [("1994-06-30", None), ("1994-07-01", "645"), ("2017-06-08", "645"), ("2017-06-09", "1580")])
def test_the_text_goes_by_the_day_of_the_keel(built, title):
    """Both sides of both days."""
    from datetime import date

    found = text_for(date.fromisoformat(built))

    assert (title is None) == (found is None)
    assert found is None or title in found.title

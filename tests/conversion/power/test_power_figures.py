"""The figures of the chapter on power: shore supply, new loads, winds, and what stays unknown."""

import pytest

from inspector.conversion.power.chapter import chapter
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import case
from tests.conversion.power.test_chapter import LOADS, SETS, UNITS, WHOLE, WIND

BOARD = {
    "id": "one",
    "voltage": "440",
    "frequency": "60",
    "power_factor": "0.8",
    "shore_current": "125",
    "shore_voltage": "400",
    "shore_frequency": "50",
}


def of(board=None, **tables):
    """The chapter of the whole plant with other tables."""
    changed = {"plant_board": [{**BOARD, **(board or {})}], **tables}
    return chapter(case({**WHOLE, **changed}))


def figures(found):
    """The figures of a chapter by name."""
    return {figure.name: figure for figure in found.figures}


def test_the_shore_supply_is_compared_with_the_board():
    """√3 × 400 × 125 × 0.8 are 69.3 kW; 400 V at 50 Hz give 109 % flux and 83 % speed."""
    found = figures(of())

    assert 69.28 == pytest.approx(found["power from shore, at most"].span.point, abs=0.005)
    flux = found["flux of the ship's machines on shore supply"]
    assert 100 * (400 / 50) / (440 / 60) == pytest.approx(flux.span.point)
    assert 100 * 50 / 60 == pytest.approx(found["speed of motors on shore supply"].span.point)


def test_fans_slow_down_with_the_cube_of_the_speed():
    """Five sixths of the speed take 58 % of the power, which the formula says in words."""
    formula = figures(of())["speed of motors on shore supply"].formula_text

    assert "fans take 58 % of their power" in cell_text(formula)


def test_an_assumed_power_factor_of_the_load_is_listed_with_shore_power():
    """Nobody read it at the board."""
    shore = figures(of({"power_factor": ""}))["power from shore, at most"]

    assert ["power factor of the ship's load"] == [default.name for default in shore.defaults]


@pytest.mark.parametrize("cell", ["shore_current", "shore_voltage"])
def test_a_missing_shore_connection_is_a_gap(cell):
    """Without breaker or voltage there is no power from shore."""
    found = of({cell: ""})

    assert "power from shore, at most" not in figures(found)
    assert "shore connection" in [gap.name for gap in found.gaps]


def test_a_board_without_frequency_compares_nothing():
    """Power from shore needs none, flux and speed do."""
    found = figures(of({"frequency": ""}))

    assert "power from shore, at most" in found
    assert "speed of motors on shore supply" not in found


def test_a_frequency_of_aircraft_is_refused():
    """400 Hz is out of the range of its column, so that it is a fault and no figure."""
    found = of({"shore_frequency": "400"})

    assert any("Shore frequency" in fault for fault in found.faults)
    assert "speed of motors on shore supply" not in figures(found)


def test_new_loads_are_shown_where_they_take_most():
    """A crane that takes 100 kW at sea and 80 in harbour, listed within 10 %."""
    crane = {
        "name": "crane",
        "kind": "new",
        "bus": "A",
        "harbour": "80",
        "sea": "100",
        "manoeuvring": "0",
        "station_keeping": "0",
    }
    new = figures(of(plant_loads=[*LOADS, crane]))[
        "new loads, in the condition where they take most"
    ]

    assert (90, 100, 110) == pytest.approx((new.span.low, new.span.point, new.span.high))
    assert "sea" == new.formula_text


def test_the_spare_is_calculated_without_the_new_loads():
    """The margin counts them, the spare that they are taken from does not."""
    crane = {"name": "crane", "kind": "new", "bus": "A", "sea": "100", "harbour": "0"}
    crane |= {"manoeuvring": "0", "station_keeping": "0"}
    before, after = figures(of()), figures(of(plant_loads=[*LOADS, crane]))
    spare, margin = (
        "spare for new consumers with one set out",
        "margin with one set out, sea, bus A",
    )

    assert before[spare].span == after[spare].span
    assert before[margin].span.point - 100 == pytest.approx(after[margin].span.point)


def test_a_load_without_a_demand_leaves_its_condition_open():
    """Nobody gave what the pump takes at sea: demand and spare there are not known."""
    found = of(plant_loads=[*LOADS, {"name": "pump", "bus": "A", "harbour": "5"}])

    assert not figures(found)["demand, sea, bus A"].known
    assert figures(found)["demand, sea, bus B"].known
    assert any("pump" in cell_text(gap.why) for gap in found.all_gaps)


def test_without_a_wind_the_most_wind_is_still_calculated():
    """Only whether station is kept is not known, and the gap says so."""
    found = of(plant_exposure=[{**WIND[0], "wind": ""}])

    assert figures(found)["most wind on the beam, as inspected"].known
    assert "wind to be withstood" in [gap.name for gap in found.gaps]
    assert not figures(found)["demand, station keeping, bus A"].known


def test_without_a_frontal_area_nothing_is_known_from_ahead():
    """The beam is still calculated."""
    found = of(plant_exposure=[{**WIND[0], "frontal": ""}])

    assert "most wind from ahead, as inspected" not in figures(found)
    assert figures(found)["most wind on the beam, as inspected"].known


def test_a_poor_power_factor_lowers_the_wind():
    """At 0.5 a set of 600 kW gives 375, which binds before the bow thrust does."""
    loads = [{**load, "station_keeping": "300"} for load in LOADS]
    good, poor = (
        figures(of({"power_factor": factor}, plant_loads=loads))[
            "most wind on the beam, as inspected"
        ].span.point
        for factor in ("0.8", "0.5")
    )

    assert poor < good


def test_names_in_figures_say_what_a_bus_is():
    """A bus called A is "bus A"; a board that says so itself is not called bus twice."""
    renamed = {"A": "main board A", "B": "main board B"}

    def rename(rows, *columns):
        return [
            {
                key: renamed.get(value, value) if key in columns else value
                for key, value in row.items()
            }
            for row in rows
        ]

    found = chapter(
        case(
            {
                **WHOLE,
                "plant_generators": rename(SETS, "bus"),
                "plant_loads": rename(LOADS, "bus"),
                "plant_thrusters": rename(UNITS, "feed"),
                "plant_ties": [
                    {
                        "name": "tie",
                        "one": "main board A",
                        "other": "main board B",
                        "normally": "open",
                    }
                ],
            }
        )
    )

    assert any(name.endswith("without main board A") for name in figures(found))
    assert any(name.endswith("without bus A") for name in figures(of()))

"""From effective power to the engines: the best that is known is used, and the rest is told."""

import pytest

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.hull.hull_geometry import Appendage, Hull
from inspector.conversion.hull.propulsive_power import TWIN_NOT_PROVED, Propulsion, chain
from inspector.conversion.hull.resistance import resistance
from inspector.conversion.hull.wake_and_thrust import blade_area_ratio, ideal_open_water

HULL = Hull(64, 16, 5, 5, 3500 / 1.025, -1, 0.96, 0.87, appendages=(Appendage(60, 2.0),))
AT_TWELVE = resistance(HULL, 12)
REGRESSION = {"screws": 2, "diameter": 2.6, "open_water": 0.55}


def test_nothing_known_is_a_band_and_a_gap():
    """The usual efficiency is listed as a default, and the gap says what would narrow it."""
    found = chain(Propulsion(), HULL, AT_TWELVE)

    assert Span(0.50 * 0.97, 0.54 * 0.97, 0.58 * 0.97) == found.efficiency
    assert ["propulsive and shaft efficiency", "gearbox efficiency"] == [
        default.name for default in found.defaults
    ]
    assert ["propulsion: efficiency"] == [gap.name for gap in found.gaps]


@pytest.mark.parametrize("nozzles", [True, False])
def test_knowing_the_nozzles_never_widens(nozzles):
    """Either answer lies inside the band of not knowing."""
    assert chain(Propulsion(), HULL, AT_TWELVE).efficiency.contains(
        chain(Propulsion(nozzles=nozzles), HULL, AT_TWELVE).efficiency
    )


def test_a_given_efficiency_is_used_as_it_is():
    """Nothing is assumed where all was given."""
    found = chain(Propulsion(quasi=0.55, shaft=0.98, gear=1.0), HULL, AT_TWELVE)

    assert 0.55 * 0.98 == pytest.approx(found.efficiency.point)
    assert () == found.defaults


def test_twin_screws_say_that_their_formulas_are_not_confirmed():
    """The sentence goes with the figure."""
    found = chain(Propulsion(**REGRESSION), HULL, AT_TWELVE)

    assert (TWIN_NOT_PROVED,) == found.assumptions
    assert 0.4 < found.efficiency.point < 0.65


def test_a_single_screw_lists_its_blades():
    """The number of blades was nobody's."""
    found = chain(Propulsion(screws=1, diameter=3.2, open_water=0.55), HULL, AT_TWELVE)

    assert "propeller blades" in [default.name for default in found.defaults]


def test_an_open_water_efficiency_beyond_momentum_is_refused():
    """A small screw under a high load cannot have 0.84."""
    with pytest.raises(BadInput, match="momentum allows") as refused:
        chain(
            Propulsion(**{**REGRESSION, "open_water": 0.84, "diameter": 1.2}),
            HULL,
            resistance(HULL, 14),
        )

    assert "propulsion: open water" == refused.value.field


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"screws": 3}, "propulsion: screws"),
        ({"diameter": 26}, "propulsion: diameter"),
        ({"open_water": 1.1}, "propulsion: open water"),
        ({"gear": 0.2}, "propulsion: gear"),
        ({"quasi": Span(0.1, 0.5, 0.6)}, "propulsion: quasi"),
    ],
)
def test_screws_that_cannot_be_are_refused(change, field):
    """The error names the field."""
    with pytest.raises(BadInput) as refused:
        Propulsion(**change)

    assert field == refused.value.field


def test_a_screw_too_large_for_the_hull_is_refused():
    """A diameter above the draught aft was mistyped."""
    with pytest.raises(BadInput, match="more than the draught aft"):
        chain(Propulsion(screws=2, diameter=12, open_water=0.5), HULL, AT_TWELVE)


def test_a_propeller_has_blades():
    """One blade is none."""
    with pytest.raises(BadInput, match="^Propeller: blades is 1"):
        blade_area_ratio(200, 2.6, 1, 3)


def test_the_ideal_efficiency_of_no_load_is_one():
    """Limit of momentum: without thrust nothing is lost."""
    assert 1 == pytest.approx(ideal_open_water(1e-9, 2.6, 6))

"""Special purpose and passenger steps, and rule dates, as the instruments print them."""

from datetime import date
from math import log10

import pytest

from inspector.conversion.rule_book.derating import adjusted_share
from inspector.conversion.rule_book.tonnage_room import tonnage_rooms
from inspector.conversion.ship_kind.assumed_damage import assumed_damage
from inspector.conversion.ship_kind.ship_kinds import (
    CARGO,
    PASSENGER,
    SPECIAL,
    Aboard,
    cargo_index,
    emergency_hours,
    fire_rules,
    kind_of,
    passenger_index,
    places_each_side,
    special_share,
)
from inspector.criteria.environment.nitrogen_oxides import nox_limit, tier_asked


@pytest.mark.parametrize(
    ("crew", "special", "passengers", "kind"),
    [
        # SOLAS I/2(f): a passenger ship carries more than twelve passengers.
        (28, 0, 12, CARGO),
        (27, 0, 13, PASSENGER),
        # Special purpose code 2008, 1.3.12: more than twelve special personnel, passengers among
        # them (1.3.11), and at most twelve passengers (SOLAS again).
        (28, 12, 0, CARGO),
        (27, 13, 0, SPECIAL),
        (27, 1, 12, SPECIAL),
        (14, 13, 13, PASSENGER),
    ],
)
def test_who_is_aboard_makes_the_ship(crew, special, passengers, kind):
    """SOLAS I/2(f) and the special purpose code of 2008, 1.3: twelve, and not thirteen."""
    assert kind == kind_of(Aboard(crew + special + passengers, crew, special, passengers))


@pytest.mark.parametrize(
    ("persons", "index"),
    [
        # SOLAS II-1/6.2.3 as amended by MSC.421(98): fixed below 400, then N / 7580 + 0.66923, and
        # above 1350 persons 0.0369 ln(N + 89.048) + 0.579.
        (12, 0.722),
        (399, 0.722),
        (400, 0.7220),
        (1000, 0.8012),
        (1350, 0.8473),
        (1351, 0.8474),
        (6000, 0.9005),
    ],
)
def test_index_of_a_passenger_ship(persons, index):
    """SOLAS II-1/6.2.3 (MSC.421(98)); the three branches meet within a thousandth."""
    assert index == pytest.approx(passenger_index(persons), abs=1e-4)


@pytest.mark.parametrize(
    ("persons", "share"),
    [(60, 0.8), (61, 0.801), (100, 0.844), (150, 0.9), (200, 0.956), (240, 1.0), (500, 1.0)],
)
def test_share_of_the_index_for_a_special_purpose_ship(persons, share):
    """Special purpose code 2008, 2.2: 0.8 R to 60 persons, R from 240, linear between."""
    assert share == round(special_share(persons), 3)


@pytest.mark.parametrize(("length", "index"), [(79.9, None), (101, 0.4941), (150, 0.5762)])
def test_index_of_a_cargo_ship(length, index):
    """SOLAS II-1/6.2.1: R = 1 - 128 / (L + 152) above 100 m; none below 80 m (II-1/4.1)."""
    found = cargo_index(length)

    assert (found is None) if index is None else index == pytest.approx(found, abs=1e-4)


def test_index_of_a_cargo_ship_to_a_hundred_metres():
    """SOLAS II-1/6.2.2: R = 1 - 1 / (1 + L/100 . R0 / (1 - R0)), worked by hand for 90 m.

    R0 = 1 - 128 / 242 = 0.471074, R0 / (1 - R0) = 0.890625, times 0.9 = 0.801563.
    """
    assert round(1 - 1 / 1.801563, 5) == round(cargo_index(90), 5)


@pytest.mark.parametrize(
    ("persons", "length", "breadth", "damage"),
    [
        # SOLAS II-1/8.2 and 8.3: 0.015 L and 0.05 B for 36 persons, 0.03 L and 0.1 B for 400,
        # at least 3 m and 0.75 m.
        (36, 300, 30, (4.5, 1.5)),
        (400, 300, 30, (9.0, 3.0)),
        (1000, 300, 30, (9.0, 3.0)),
        (36, 70, 12, (3.0, 0.75)),
        (35, 300, 30, None),
    ],
)
def test_damage_that_is_assumed(persons, length, breadth, damage):
    """SOLAS II-1/8: the ends of the line as printed."""
    found = assumed_damage(persons, length, breadth)

    assert (found is None) if damage is None else damage == pytest.approx(found)


@pytest.mark.parametrize(
    ("kind", "persons", "hours", "places"),
    [
        # SOLAS II-1/42 and 43; III/21.1.1 and III/31.1; special purpose code 2008, 4.2 and 8.2.
        (CARGO, 40, 18, (40, 0)),
        (SPECIAL, 60, 18, (60, 0)),
        (SPECIAL, 61, 36, (31, 16)),
        (PASSENGER, 40, 36, (20, 10)),
    ],
)
def test_emergency_supply_and_survival_craft(kind, persons, hours, places):
    """Up to 60 persons a special purpose ship is a cargo ship here, above it a passenger ship."""
    assert (hours, places) == (emergency_hours(kind, persons), places_each_side(kind, persons))


@pytest.mark.parametrize(
    ("persons", "rules"),
    [
        (60, "as a cargo ship"),
        (61, "as a passenger ship of at most 36 passengers"),
        (240, "as a passenger ship of at most 36 passengers"),
        (241, "as a passenger ship of more than 36 passengers"),
    ],
)
def test_fire_rules_of_a_special_purpose_ship(persons, rules):
    """Special purpose code 2008, 6.1 to 6.3: steps above 60 and above 240 persons."""
    assert rules == fire_rules(SPECIAL, persons, 12)


@pytest.mark.parametrize(
    ("step", "volume"),
    # Tonnage convention 1969: (0.2 + 0.02 log10 V) V reaches the step at this volume.
    [(500, 1883.25), (3000, 10_692.09)],
)
def test_the_volume_at_a_step_of_tonnage(step, volume):
    """Tonnage convention, annex I, regulation 3, turned round: V of 500 and of 3000."""
    assert step == pytest.approx((0.2 + 0.02 * log10(volume)) * volume, rel=1e-5)
    # What is left below the step and what the certificate holds together make that volume.
    below = {room.step: room for room in tonnage_rooms(400, None)}[step]
    held = {room.step: room for room in tonnage_rooms(step, None)}[step]
    assert below.volume.high > 0
    assert held.volume.high <= 0


@pytest.mark.parametrize(
    ("day", "tier", "rpm", "limit"),
    [
        # MARPOL annex VI, regulation 13.3 to 13.5: 45 n^-0.2 and 44 n^-0.23.
        (date(2008, 5, 1), "I", 750, 11.97),
        (date(2010, 12, 31), "I", 1800, 10.05),
        (date(2011, 1, 1), "II", 750, 9.60),
        (date(2027, 2, 1), "II", 1800, 7.85),
    ],
)
def test_tier_by_the_day(day, tier, rpm, limit):
    """MARPOL annex VI, regulation 13; outside the areas of tier III."""
    assert tier == tier_asked(day)
    assert limit == pytest.approx(nox_limit(tier, rpm), abs=0.01)


@pytest.mark.parametrize(("cooled", "share"), [(True, 0.8919), (False, 0.8631)])
def test_power_in_the_tropics(cooled, share):
    """ISO 3046-1, 10.3 worked by hand for 45 °C of air and 32 °C of water, efficiency 0.85."""
    assert share == pytest.approx(adjusted_share(45, 32, cooled=cooled), abs=2e-4)

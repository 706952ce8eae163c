"""Check numbers of the power plant: three-phase arithmetic, load balances and thrusts."""

import math

import pytest

from inspector.conversion.core.span import Span
from inspector.conversion.power import electrical_loads, load_balance
from inspector.conversion.power import three_phase as electric
from inspector.conversion.power.electrical_loads import Consumer
from inspector.conversion.power.holding.thruster_thrust import thrust_by_diameter
from inspector.conversion.power.plant_elements import GeneratorSet

# kW, V, power factor, A, kVA, kvar; by hand: I = P/(√3 V pf), S = P/pf, Q = √(S² − P²)
FLOWS = [
    (340, 480, 0.80, 511.20, 425.00, 255.00),
    (340, 480, 1.00, 408.96, 340.00, 0),
    (340, 440, 0.80, 557.67, 425.00, 255.00),
    (1000, 690, 0.90, 929.71, 1111.11, 484.32),
    (75, 208, 0.85, 244.92, 88.24, 46.48),
    (99, 480, 0.80, 148.85, 123.75, 74.25),
    (340, 450, 0.80, 545.28, 425.00, 255.00),
    (340, 400, 0.80, 613.43, 425.00, 255.00),
    (340, 690, 0.80, 355.61, 425.00, 255.00),
]


@pytest.mark.parametrize(("power", "volts", "factor", "amperes", "apparent", "reactive"), FLOWS)
def test_three_phase_loads(power, volts, factor, amperes, apparent, reactive):
    """Nine loads worked by hand."""
    found = electric.three_phase(power, volts, factor)

    assert (amperes, apparent, reactive) == pytest.approx(
        (found.current, found.apparent, found.reactive), abs=0.006
    )


def test_a_set_full_by_current():
    """300 kW at pf 0.65 on 340 kW at 0.8: 555.1 A of 511.2 A is 108.6 %, the power 88.2 %."""
    load, rating = electric.three_phase(300, 480, 0.65), electric.three_phase(340, 480, 0.8)

    assert (555.1, 511.2) == pytest.approx((load.current, rating.current), abs=0.06)
    assert (1.086, 0.882) == pytest.approx(
        (load.current / rating.current, load.power / rating.power), abs=5e-4
    )
    assert 276.25 == electric.usable_power(340, 0.8, 0.65)


# kVA, A at 480 V, A at 208 V; worked by hand: I = 1000 S/(sqrt3 V)
@pytest.mark.parametrize(
    ("rating", "at_480", "at_208"),
    [
        (45, 54.13, 124.91),
        (75, 90.21, 208.18),
        (112.5, 135.32, 312.27),
        (150, 180.42, 416.36),
        (225, 270.63, 624.54),
    ],
)
def test_rated_currents_of_transformers(rating, at_480, at_208):
    """Five sizes."""
    assert (at_480, at_208) == pytest.approx(
        (electric.line_current(rating, 480), electric.line_current(rating, 208)), abs=0.006
    )


def test_a_transformer_overloaded_by_current():
    """244.92 A on 75 kVA at 208 V is 117.6 % (worked by hand)."""
    assert 1.176 == pytest.approx(
        electric.transformer_loading(75, amperes=244.92, voltage=208), abs=5e-4
    )


@pytest.mark.parametrize(("amperes", "volts", "power"), [(125, 400, 73.61), (200, 480, 141.3)])
def test_power_from_shore(amperes, volts, power):
    """Two shore boxes at power factor 0.85, worked by hand."""
    assert power == pytest.approx(electric.shore_power(amperes, volts, 0.85), abs=0.05)


@pytest.mark.parametrize(
    ("volts", "supply", "flux"), [(440, 400, 1.091), (480, 400, 1.0), (480, 380, 0.95)]
)
def test_sixty_hertz_ships_on_fifty_hertz_shores(volts, supply, flux):
    """V/Hz by hand: 440/60 on 400/50 is 109.1 %; 5/6 of the speed and 0.579 of the fan power."""
    found = electric.supply_mismatch(volts, 60, supply, 50)

    assert (flux, 5 / 6, 0.579) == pytest.approx(
        (found.flux, found.speed, found.fan_power), abs=5e-4
    )


# connected kW, load factor, simultaneity; own list, by hand: 431 kW connected, 274.92 kW demand
LIST = [
    (85, 0.8, None),
    (160, 0.7, None),
    (60, 0.5, 0.4),
    (40, 0.6, None),
    (30, 0.9, None),
    (12, 0.8, None),
    (20, 0.9, None),
    (24, 0.6, 0.3),
]


def test_a_load_list_by_factors():
    """Sum of connected x factor x simultaneity."""
    consumers = [
        Consumer(f"load {n}", "A", connected=power, factor=factor, simultaneity=together)
        for n, (power, factor, together) in enumerate(LIST)
    ]

    assert 431 == sum(consumer.connected for consumer in consumers)
    assert 274.92 == pytest.approx(
        electrical_loads.demand(consumers, "sea", accuracy=Span.exact(1)).span.point
    )


@pytest.mark.parametrize(("diversity", "power"), [(2, 290.0), (3, 266.7)])
def test_intermittent_loads_by_diversity(diversity, power):
    """P_G = ΣP_c + ΣP_1 / D: 220 and 140 kW by hand.

    Text book of a Japanese training body for ships' electricity, 1996.
    """
    assert power == pytest.approx(electrical_loads.diversified(220, 140, diversity).point, abs=0.05)


def test_power_with_one_set_out():
    """340, 340, 340 and 150 kW leave 830: 310 and a spare of 227 at 520; 900 is short by 70."""
    sets = [GeneratorSet(f"G{n}", "A", rated, 0.8) for n, rated in enumerate((340, 340, 340, 150))]
    at = [
        load_balance.largest_set_out(
            sets,
            electrical_loads.demand(
                [Consumer("all", "A", (("sea", power),))], "sea", accuracy=Span.exact(1)
            ),
            "sea",
        )
        for power in (520, 900)
    ]

    assert (830, 310, 227, -70) == pytest.approx(
        (at[0].remaining, at[0].margin.span.point, at[0].spare.span.point, at[1].margin.span.point)
    )
    assert (True, False) == (at[0].carried, at[1].carried)


# kind, m, kW, kN; T = K (D P)^(2/3) with K 900, 1200, 800, worked by hand
@pytest.mark.parametrize(
    ("kind", "diameter", "power", "thrust"),
    [
        ("tunnel", 1.2, 250, 40.33),
        ("tunnel", 1.6, 500, 77.56),
        ("tunnel", 1.8, 800, 114.77),
        ("azimuth in nozzle", 1.6, 800, 141.47),
        ("azimuth in nozzle", 2.2, 1000, 202.98),
        ("open propeller", 2.4, 1500, 187.91),
    ],
)
def test_thrust_by_power_and_diameter(kind, diameter, power, thrust):
    """Six units."""
    assert thrust == pytest.approx(thrust_by_diameter(kind, power, diameter), abs=6e-3)


@pytest.mark.parametrize("kind", ["tunnel", "azimuth in nozzle", "open propeller"])
def test_thrust_stays_below_the_ideal_disk(kind):
    """An actuator disk gives (2 ρ A)^(1/3) P^(2/3), in a nozzle twice its flux, at best."""
    ideal = (2 * 1025 * math.pi / 4 * (1 if kind == "open propeller" else 2)) ** (1 / 3) * 1000 ** (
        2 / 3
    )

    assert thrust_by_diameter(kind, 1, 1) * 1000 < ideal

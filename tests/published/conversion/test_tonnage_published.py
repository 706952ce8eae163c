"""Tonnage by the formula of the 1969 convention, its inverse, net tonnage and deckhouses."""

import pytest
from pint import UnitRegistry

from inspector.conversion.core.span import Span
from inspector.conversion.space.net_tonnage import net_tonnage
from inspector.conversion.space.tonnage import (
    certificate_tonnage,
    enclosed_volume,
    enclosed_volume_of_certificate,
    gross_tonnage,
    gross_tonnage_after,
)
from inspector.conversion.space.tonnage_thresholds import volume_left_below
from inspector.values.units import convert

ITC = "International Convention on Tonnage Measurement of Ships, 1969, annex I"


@pytest.mark.parametrize(
    ("volume", "expected"),
    [
        (1000, 260.00),
        (1500, 395.28),
        (1850, 490.89),
        (1883, 499.93),
        (1884, 500.21),
        (2000, 532.04),
        (5000, 1369.90),
        (7500, 2081.26),
        (8000, 2224.49),
        (9000, 2511.76),
        (10_000, 2800.00),
        (10_500, 2944.45),
        (10_692, 2999.97),
        (10_693, 3000.26),
        (12_000, 3379.00),
    ],
)
def test_gross_tonnage_of_a_volume(volume, expected):
    """Regulation 3, (0.2 + 0.02 log10 V) V; 10 000 m³ give 2800 in the published example."""
    assert expected == pytest.approx(gross_tonnage(volume), abs=0.005), f"{ITC}, regulation 3"


@pytest.mark.parametrize(
    ("volume", "whole"),
    [(1883, 499), (1884, 500), (10_692, 2999), (10_693, 3000), (10_000, 2800), (100, 24)],
)
def test_a_certificate_prints_whole_numbers(volume, whole):
    """2999.97 is printed as 2999; the binary 2800.0000000000005 is 2800."""
    assert whole == certificate_tonnage(gross_tonnage(volume))


@pytest.mark.parametrize(
    ("tonnage", "volume"),
    [
        (300, 1148.53),
        (400, 1517.33),
        (500, 1883.25),
        (1000, 3685.55),
        (1600, 5812.12),
        (3000, 10_692.09),
        (5000, 17_550.9),
        (6000, 20_948.05),
        (10_000, 34_396.15),
    ],
)
def test_the_volume_behind_a_tonnage(tonnage, volume):
    """The inverse of regulation 3, by halving."""
    assert volume == pytest.approx(enclosed_volume(tonnage), abs=0.03), (
        f"{ITC}, regulation 3, inverse"
    )


@pytest.mark.parametrize(
    ("before", "added", "expected"),
    [
        (1850, 30, 499.11),
        (1850, 60, 507.34),
        (8000, 600, 2396.73),
        (10_400, 400, 3031.22),
        (10_500, 8 * 9 * 2.75, 3001.71),
        (9900, 3 * 198, 2942.7),
    ],
)
def test_a_deckhouse_adds_more_than_its_share(before, added, expected):
    """The factor rises with volume: a house adds a little more than by the old factor."""
    after = gross_tonnage_after(before, added).point

    assert expected == pytest.approx(after, abs=0.05), f"{ITC}, regulation 3"
    assert after - gross_tonnage(before) > added * gross_tonnage(before) / before


def test_the_room_below_a_line():
    """10 500 m³ leave 192.1 m³ below 3000 GT; a certificate near 500 hides up to 3.6 m³."""
    assert 192.1 == pytest.approx(volume_left_below(Span.exact(10_500), 3000).point, abs=0.05)
    assert 3.6 == pytest.approx(enclosed_volume_of_certificate(499).width, abs=0.05)


@pytest.mark.parametrize(
    ("given", "whole"),
    [
        ({"cargo": 1200, "draught": 5.0, "depth": 7.5}, 840),
        ({"cargo": 1200, "draught": 5.0, "depth": 7.5, "few": 12}, 840),
        ({"cargo": 1200, "draught": 5.0, "depth": 7.5, "few": 24, "many": 12}, 840),
        ({"cargo": 5000, "draught": 6.0, "depth": 7.5}, 1369),
        ({}, 840),
        ({"few": 200}, 1020),
    ],
)
def test_net_tonnage(given, whole):
    """Regulation 4 at 2800 GT (46 CFR 69.63 has the same text): both floors, and 200 passengers."""
    assert whole == certificate_tonnage(net_tonnage(2800, **given)), f"{ITC}, regulation 4"


def test_register_tons_are_another_thing():
    """One register ton is 100 ft³ = 2.8317 m³ (pint): it is a volume, and no gross tonnage."""
    assert 2.8316846592 == pytest.approx(convert(100, "ft³", "m³"))
    assert UnitRegistry().Quantity(100, "foot**3").to("meter**3").magnitude == pytest.approx(
        convert(100, "ft³", "m³")
    )

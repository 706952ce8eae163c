"""Tonnage drops decimals, keeps spans, and calls a threshold crossed only where that is sure."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.space.chapter import chapter
from inspector.conversion.space.net_tonnage import net_tonnage
from inspector.conversion.space.tonnage import (
    certificate_tonnage,
    enclosed_volume,
    enclosed_volume_of_certificate,
    gross_tonnage,
    gross_tonnage_after,
)
from inspector.conversion.space.tonnage_thresholds import (
    THRESHOLDS,
    thresholds_after,
    volume_left_below,
)
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import case


@pytest.mark.parametrize(
    ("make", "field"),
    [
        (lambda: gross_tonnage(0), "enclosed volume"),
        (lambda: gross_tonnage(-10), "enclosed volume"),
        (lambda: gross_tonnage(float("inf")), "enclosed volume"),
        (lambda: enclosed_volume(0), "gross tonnage"),
        (lambda: enclosed_volume_of_certificate(499.5), "gross tonnage"),
        (lambda: gross_tonnage_after(Span(1000, 1000, 1000), -1000), "enclosed volume"),
        (lambda: net_tonnage(2800, 1200), "depth"),
        (lambda: net_tonnage(2800, -1), "volume of cargo spaces"),
        (lambda: net_tonnage(2800, 1200, 5.0, 0), "depth"),
    ],
)
def test_what_cannot_be_is_refused_by_its_field(make, field):
    """No volume, half a tonnage, a vessel removed whole, cargo without draught and depth."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field


@given(st.integers(10, 20_000))
def test_every_volume_behind_a_certificate_prints_it(tonnage):
    """Both ends of the span give the certificate's figure back, the upper one only just."""
    volume = enclosed_volume_of_certificate(tonnage)

    assert tonnage == certificate_tonnage(gross_tonnage(volume.low))
    assert tonnage + 1 == certificate_tonnage(gross_tonnage(volume.high))
    assert tonnage == certificate_tonnage(gross_tonnage(volume.middle))


@given(st.floats(100, 50_000), st.floats(0, 5000))
def test_more_volume_is_more_tonnage_and_less_room(volume, added):
    """Tonnage rises with volume, and what is enclosed is taken off what may still be enclosed."""
    assert gross_tonnage(volume) <= gross_tonnage(volume + added)
    assert (
        volume_left_below(Span.exact(volume + added), 500).point
        <= volume_left_below(Span.exact(volume), 500).point
    )


def test_decimals_are_dropped_and_binary_hairs_are_not():
    """2999.97 is 2999, and 2800 stays 2800 on either side of a hair."""
    assert (2999, 2800, 2800) == (
        certificate_tonnage(2999.97),
        certificate_tonnage(2800.0000000000005),
        certificate_tonnage(2799.9999999999995),
    )


@pytest.mark.parametrize(
    ("before", "added", "state"),
    [
        (490, 60, "crossed upward"),
        (490, 5, "below"),
        (497, 10, "perhaps crossed"),
        (510, 5, "above already"),
        (510, -60, "crossed downward"),
    ],
)
def test_the_threshold_at_500(before, added, state):
    """A certificate of 497 hides up to a tonne, so that 10 m³ cross the line only perhaps."""
    found = {
        threshold.tonnage: threshold.state
        for threshold in thresholds_after(
            before, enclosed_volume_of_certificate(before), Span.exact(added)
        )
    }

    assert state == found[500]
    assert list(THRESHOLDS) == list(found)


def test_the_chapter_warns_of_a_crossed_line():
    """A deckhouse of 8 × 9 × 2.75 m takes 2944 GT over 3000, and the chapter warns of it."""
    found = chapter(
        case(
            {
                "enclosures": [
                    {
                        "name": "house",
                        "act": "added",
                        "length": "8",
                        "breadth": "9",
                        "height": "2.75",
                    }
                ]
            },
            {"tonnage": "2944"},
        )
    )

    assert any(
        warning.startswith("The enclosed volume crosses 3000 GT") for warning in found.warnings
    )
    assert "from 2944 to between 3001 and 3002" in cell_text(found.answer)


@pytest.mark.parametrize(
    ("vessel", "row", "gap"),
    [
        ({}, {"volume": "50"}, "Gross tonnage"),
        ({"tonnage": "much"}, {"volume": "50"}, "Gross tonnage"),
    ],
)
def test_a_missing_tonnage_is_named(vessel, row, gap):
    """Without a certificate's figure the thresholds are not known, and a gap says so."""
    found = chapter(case({"enclosures": [{"name": "house", "act": "added", **row}]}, vessel))

    assert gap in [missing.name for missing in found.gaps]
    assert () == tuple(
        table for table in found.figure_tables if table.title == "Thresholds of gross tonnage"
    )


@pytest.mark.parametrize(
    ("row", "sentence"),
    [
        ({"length": "8", "breadth": "9"}, "volume is missing"),
        ({"volume": "-5"}, "is below"),
        ({"volume": "90000", "act": "removed"}, "needs more"),
    ],
)
def test_an_impossible_enclosure_is_refused(row, sentence):
    """A side too few, a negative volume, more removed than there is: each gives a sentence."""
    found = chapter(
        case({"enclosures": [{"name": "house", "act": "added", **row}]}, {"tonnage": "900"})
    )

    assert any(sentence in fault for fault in found.faults)

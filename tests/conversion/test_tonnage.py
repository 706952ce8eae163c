"""Tonnage: decimals are dropped, a certificate's volume stays a span, lines are told as crossed only where that is sure."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.chapter_space import chapter
from inspector.conversion.inputs import BadInput
from inspector.conversion.shapes import Span
from inspector.conversion.tonnage import THRESHOLDS, behind, changed, gross, lines, net, printed, room_below, volume_of
from tests.conversion.a_case import case


@pytest.mark.parametrize(("make", "field"), [
    (lambda: gross(0), "enclosed volume"), (lambda: gross(-10), "enclosed volume"), (lambda: gross(float("inf")), "enclosed volume"),
    (lambda: volume_of(0), "gross tonnage"),
    (lambda: behind(499.5), "gross tonnage"), (lambda: changed(Span(1000, 1000, 1000), -1000), "enclosed volume"),
    (lambda: net(2800, 1200), "depth"), (lambda: net(2800, -1), "volume of cargo spaces"), (lambda: net(2800, 1200, 5.0, 0), "depth"),
])
def test_what_cannot_be_is_refused_by_its_field(make, field):
    """No volume, half a tonnage on a certificate, a vessel that is taken away whole, cargo without draught and depth."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field


@given(st.integers(10, 20_000))
def test_every_volume_behind_a_certificate_prints_it(tonnage):
    """Both ends of the span give the certificate's figure back, the upper one only just."""
    volume = behind(tonnage)

    assert tonnage == printed(gross(volume.low))
    assert tonnage + 1 == printed(gross(volume.high))
    assert tonnage == printed(gross(volume.middle))


@given(st.floats(100, 50_000), st.floats(0, 5000))
def test_more_volume_is_more_tonnage_and_less_room(volume, added):
    """Tonnage rises with volume, and what is enclosed is taken off what may still be enclosed."""
    assert gross(volume) <= gross(volume + added)
    assert room_below(Span.exact(volume + added), 500).point <= room_below(Span.exact(volume), 500).point


def test_decimals_are_dropped_and_binary_hairs_are_not():
    """2999.97 is 2999, and 2800 stays 2800 on either side of a hair."""
    assert (2999, 2800, 2800) == (printed(2999.97), printed(2800.0000000000005), printed(2799.9999999999995))


@pytest.mark.parametrize(("before", "added", "state"), [
    (490, 60, "crossed upward"), (490, 5, "below"), (497, 10, "perhaps crossed"), (510, 5, "above already"), (510, -60, "crossed downward"),
])
def test_the_line_at_500_is_told_in_words(before, added, state):
    """A certificate of 497 hides up to a tonne, so that 10 m³ cross the line only perhaps."""
    found = {one.tonnage: one.state for one in lines(before, behind(before), Span.exact(added))}

    assert state == found[500]
    assert list(THRESHOLDS) == list(found)


def test_the_chapter_warns_of_a_crossed_line():
    """A deckhouse of 8 x 9 x 2.75 m carries 2944 GT over 3000, and the page says what begins there."""
    told = chapter(case({"enclosures": [{"name": "house", "act": "added", "length": "8", "breadth": "9", "height": "2.75"}]}, {"tonnage": "2944"}))

    assert any(one.startswith("The enclosed volume crosses 3000 GT") for one in told.warnings)
    assert "between 3001 and 3002" in told.answer


@pytest.mark.parametrize(("vessel", "row", "told"), [
    ({}, {"volume": "50"}, "Gross tonnage"), ({"tonnage": "much"}, {"volume": "50"}, "Gross tonnage"),
])
def test_a_missing_tonnage_is_named(vessel, row, told):
    """Without a certificate's figure nothing is told of the lines, and that is said."""
    found = chapter(case({"enclosures": [{"name": "house", "act": "added", **row}]}, vessel))

    assert told in [gap.name for gap in found.gaps]
    assert () == tuple(one for one in found.lines if one.title == "Lines of gross tonnage")


@pytest.mark.parametrize(("row", "sentence"), [
    ({"length": "8", "breadth": "9"}, "volume is missing"), ({"volume": "-5"}, "cannot be"), ({"volume": "90000", "act": "removed"}, "needs more"),
])
def test_an_enclosure_that_cannot_be_is_told(row, sentence):
    """A side too few, a negative volume, more removed than there is: a sentence, and no raising."""
    told = chapter(case({"enclosures": [{"name": "house", "act": "added", **row}]}, {"tonnage": "900"}))

    assert any(sentence in one for one in told.faults)

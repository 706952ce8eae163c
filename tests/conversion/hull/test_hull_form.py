"""From what a surveyor has of a hull to all hulls that it could be."""

from dataclasses import replace

import pytest
from hypothesis import given, settings

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.hull.hull_form import (
    INSIDE,
    OUTSIDE,
    Particulars,
    effective_power,
    hull_forms,
)
from tests.conversion.conftest import nested

KNOWN = Particulars(
    breadth=16, draught_fore=5, draught_aft=5, displacement=3500, length_waterline=64
)
EXACT = replace(
    KNOWN,
    midship=0.96,
    waterplane=0.87,
    lcb=-1.0,
    appendage_area=60.0,
    appendage_factor=2.0,
    transom_area=0.0,
    bulb_area=0.0,
    stern=0.0,
)


def test_every_default_is_listed():
    """Nobody gave the form, so eight values are told as assumed."""
    names = {default.name for default in hull_forms(KNOWN).defaults}

    assert {
        "midship coefficient C_M",
        "waterplane coefficient C_WP",
        "lcb, forward of midlength",
        "appendage area",
        "immersed transom area",
        "bulb area",
        "stern shape C_stern",
        "appendage factor 1 + k2",
    } == names


def test_nothing_is_assumed_of_a_known_hull():
    """All given: one hull, no default."""
    forms = hull_forms(EXACT)

    assert () == forms.defaults
    assert (forms.middle,) == forms.corners


def test_a_bulb_without_its_height_takes_a_default():
    """0.4 of the draught forward, and listed; a given height is not."""
    forms = hull_forms(replace(EXACT, bulb_area=6.0))

    assert 2.0 == forms.middle.bulb_height
    assert ["middle of the bulb above keel, of the draught forward"] == [
        default.name for default in forms.defaults
    ]
    assert () == hull_forms(replace(EXACT, bulb_area=6.0, bulb_height=2.0)).defaults


def test_a_length_between_perpendiculars_is_stretched_and_told():
    """1.02 of it stands for the waterline."""
    forms = hull_forms(replace(EXACT, length_waterline=None, length_between=62.75))

    assert 64.005 == pytest.approx(forms.middle.length)
    assert ["length on the waterline"] == [default.name for default in forms.defaults]


@pytest.mark.parametrize(
    ("missing", "name"),
    [
        ("breadth", "breadth"),
        ("draught_fore", "draught forward"),
        ("displacement", "displacement"),
        ("length_waterline", "length on the waterline"),
    ],
)
def test_what_no_default_can_replace_is_a_gap(missing, name):
    """No hull is made up without its main dimensions."""
    forms = hull_forms(replace(KNOWN, **{missing: None}))

    assert forms.middle is None
    assert [f"hull: {name}"] == [gap.name for gap in forms.gaps]
    with pytest.raises(BadInput, match="see the gaps"):
        effective_power(forms, 10)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"displacement": -3500}, "hull: displacement"),
        ({"displacement": 6000}, "hull: volume"),
        ({"length_waterline": 4000}, "hull: length on the waterline"),
        ({"water_density": 1.025}, "water: density"),
    ],
)
def test_particulars_that_cannot_be_are_refused(change, field):
    """A density in t/m³ is a unit of the wrong kind and is refused like the rest."""
    with pytest.raises(BadInput) as refused:
        hull_forms(replace(KNOWN, **change))

    assert field == refused.value.field


def test_the_error_of_the_method_is_told():
    """25 % outside all ships behind the formulas, 10 % inside."""
    span, error, outside = effective_power(hull_forms(EXACT), 10)
    trawler = Particulars(10, 4, 4, 1230, 50, midship=0.95, waterplane=0.80)

    assert (320.5 * 0.75, 320.5 * 1.25) == pytest.approx((span.low, span.high), rel=1e-3)
    assert (OUTSIDE,) == error
    assert 1 == len(outside)
    assert ((INSIDE,), ()) == effective_power(hull_forms(trawler), 10)[1:]


@settings(max_examples=40, deadline=None)
@given(nested(0.95, 0.97), nested(0.85, 0.90), nested(40, 80))
def test_knowing_more_of_the_form_never_widens_the_power(midship, waterplane, area):
    """Over the usual range of workboats a narrower coefficient gives a narrower power."""
    wide, narrow = (
        effective_power(
            hull_forms(
                replace(EXACT, midship=midship[i], waterplane=waterplane[i], appendage_area=area[i])
            ),
            11,
        )[0]
        for i in (0, 1)
    )

    assert wide.low <= narrow.low * (1 + 1e-9)
    assert narrow.high <= wide.high * (1 + 1e-9)


def test_the_usual_hull_spreads_over_the_known_one():
    """The answer for the exact hull lies inside that for the hull of defaults."""
    for speed in (6, 10, 14):
        assert effective_power(hull_forms(KNOWN), speed)[0].contains(
            effective_power(hull_forms(EXACT), speed)[0]
        )


def test_an_uncertain_displacement_spreads_the_power():
    """3300 to 3700 t hold what 3500 t give."""
    spread = effective_power(hull_forms(replace(EXACT, displacement=Span(3300, None, 3700))), 10)[0]

    assert spread.contains(effective_power(hull_forms(EXACT), 10)[0])

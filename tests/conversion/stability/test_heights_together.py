"""Each mass is one and the same in displacement, KM, KG and free surfaces."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.conversion.core.span import Span
from inspector.conversion.stability.chapter import chapter
from inspector.conversion.stability.heights_together import Loading, heights_together
from inspector.conversion.stability.weights import Weight
from tests.conversion.a_case import BOOKLET, WEIGHTS, case

ROWS = [("4.4", "2700", "7.90"), ("5.1", "3200", "7.55"), ("5.8", "3750", "7.35")]


def km(mass):
    """A booklet of three rows, straight between them."""
    rows = [(float(displacement), float(height)) for _, displacement, height in ROWS]
    for (low, first), (high, last) in zip(rows, rows[1:], strict=False):
        if mass <= high:
            return first + (last - first) * (mass - low) / (high - low)
    raise AssertionError(mass)


def gm(mass, kg, changes, surfaces):
    """KM less fluid KG, for one choice of every mass and height."""
    after = mass + sum(change for change, _ in changes)
    moment = mass * kg + sum(change * height for change, height in changes)
    return km(after) - (moment + surfaces) / after


ACTS, MASSES, SHARES, HEIGHTS = (
    st.sampled_from(("on", "off")),
    st.floats(1, 60),
    st.floats(0.02, 0.4),
    st.floats(0, 18),
)
PARTS = st.lists(st.tuples(ACTS, MASSES, SHARES, HEIGHTS), min_size=1, max_size=4)


@settings(max_examples=150)
@given(PARTS, st.floats(0, 1), st.floats(0, 400))
def test_no_choice_of_masses_is_outside(parts, at, surfaces):
    """Every corner, and a place between them, is within the two ends; the ends are no wider than
    what each mass apart would give."""
    weights = tuple(
        Weight(f"{number}", act, Span.around(mass, share), vcg=height)
        for number, (act, mass, share, height) in enumerate(parts)
    )
    spread = Span(0.8 * surfaces, surfaces, 1.2 * surfaces)
    low, high = heights_together(Loading(3200, 6.4, weights, spread), km, (2700, 3200, 3750))

    def changes(masses):
        signs = (1 if weight.act == "on" else -1 for weight in weights)
        return [(s * m, w.vcg) for s, m, w in zip(signs, masses, weights, strict=True)]

    ends = [(weight.mass.low, weight.mass.high) for weight in weights]
    between = [low_ + at * (high_ - low_) for low_, high_ in ends]
    for masses in [*product(*ends), between]:
        for moment in (spread.low, spread.high):
            assert low - 1e-9 <= gm(3200, 6.4, changes(masses), moment) <= high + 1e-9


def test_the_ends_are_reached():
    """A low end that no choice gives would be a fear of our own: here it is a corner."""
    weights = (
        Weight("house", "on", Span(90, 100, 110), vcg=11),
        Weight("winch", "off", Span(50, 60, 70), vcg=7),
    )
    low, high = heights_together(Loading(3200, 6.4, weights, Span.exact(100)), km, (3200,))
    found = [
        gm(3200, 6.4, [(house, 11), (-winch, 7)], 100) for house in (90, 110) for winch in (50, 70)
    ]

    assert min(found) == pytest.approx(low)
    assert max(found) == pytest.approx(high)


def test_gm_of_a_case_is_narrower_than_its_parts_apart():
    """KM, KG and free surfaces spread each by itself would be wider."""
    by_draught = [
        {"draught": draught, "displacement": mass, "km": height} for draught, mass, height in ROWS
    ]
    found = chapter(
        case(
            {
                "hydrostatics": [{**BOOKLET, "km_after": ""}],
                "weights": WEIGHTS,
                "hydrostatics_by_draught": by_draught,
            }
        )
    )
    spans = {figure.name: figure.span for figure in found.figures}
    apart = spans["KM after"] - spans["KG after, solid"]
    apart = apart - spans["Free-surface moment"] / spans["Displacement after"]
    together = spans["GM after, with free surface"]

    assert together.point == pytest.approx(apart.point)
    assert apart.low < together.low < together.high < apart.high

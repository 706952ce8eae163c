"""The saturation table: exact at its rows, rising, and closed at its ends."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.criteria.refrigeration.saturation_pressure import (
    CURVES,
    LOWEST,
    STEP,
    OutsideTable,
    bubble_temperature,
    dew_temperature,
)


@pytest.mark.parametrize("refrigerant", CURVES)
def test_the_table_gives_its_own_rows(refrigerant):
    """At each pressure of the table its temperature comes out."""
    for row, (bubble, dew) in enumerate(
        zip(CURVES[refrigerant].bubble, CURVES[refrigerant].dew, strict=True)
    ):
        expected = pytest.approx(LOWEST + STEP * row, abs=1e-9)
        assert expected == bubble_temperature(refrigerant, bubble)
        assert expected == dew_temperature(refrigerant, dew)


@given(st.sampled_from(list(CURVES)), st.floats(0, 1), st.floats(0, 1))
def test_a_higher_pressure_never_means_a_lower_temperature(refrigerant, one, other):
    """Between the rows too."""
    curve = CURVES[refrigerant].dew
    low, high = sorted(curve[0] + share * (curve[-1] - curve[0]) for share in (one, other))
    assert dew_temperature(refrigerant, low) <= dew_temperature(refrigerant, high)


@given(st.sampled_from(list(CURVES)), st.floats(0, 1))
def test_dew_is_never_colder_than_bubble(refrigerant, share):
    """At one pressure liquid begins to boil before the last drop is gone."""
    curves = CURVES[refrigerant]
    low, high = curves.bubble[0], curves.dew[-1]
    pressure = low + share * (high - low)
    assert bubble_temperature(refrigerant, pressure) <= dew_temperature(refrigerant, pressure)


@pytest.mark.parametrize(
    ("refrigerant", "pressure"), [("R-22", 64.52), ("R-22", 2427.5), ("R-717", 0), ("R-404A", -5)]
)
def test_beyond_its_ends_the_table_tells_nothing(refrigerant, pressure):
    """The sentence names what the table holds."""
    with pytest.raises(OutsideTable, match="−50 °C to 60 °C") as caught:
        dew_temperature(refrigerant, pressure)
    assert caught.value.refrigerant == refrigerant

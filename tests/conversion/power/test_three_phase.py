"""Three-phase arithmetic: what it refuses, and what is true of any load."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.power import three_phase as electric

POWERS = st.floats(0.2, 5000)
FACTORS = st.floats(0.1, 1)


@pytest.mark.parametrize(
    ("power", "volts", "factor", "field"),
    [
        (-1, 480, 0.8, "power"),
        (100, 0, 0.8, "voltage"),
        (100, 480, 0, "power factor"),
        (100, 480, 1.2, "power factor"),
        (float("nan"), 480, 0.8, "power"),
    ],
)
def test_a_load_that_cannot_be_is_refused(power, volts, factor, field):
    """The error names the field."""
    with pytest.raises(BadInput) as refused:
        electric.three_phase(power, volts, factor)

    assert field == refused.value.field


@pytest.mark.parametrize(
    "given_", [{}, {"amperes": 100}, {"voltage": 208}, {"load": -3}, {"amperes": 100, "voltage": 0}]
)
def test_a_transformer_needs_a_load_or_a_current_with_its_voltage(given_):
    """Half of a pair gives no load, and a missing load is not a load of zero."""
    with pytest.raises(BadInput, match="transformer"):
        electric.transformer_loading(75, **given_)


@pytest.mark.parametrize(("shore", "hertz"), [(0, 50), (400, 0), (400, 400)])
def test_a_shore_supply_that_cannot_be_is_refused(shore, hertz):
    """Aircraft supply is none for a ship."""
    with pytest.raises(BadInput, match="^Supply"):
        electric.supply_mismatch(440, 60, shore, hertz)


def test_a_transformer_without_a_rating_is_refused():
    """There is no share of nothing."""
    with pytest.raises(BadInput, match="^Rating of the transformer"):
        electric.transformer_loading(0, load=10)


@given(POWERS, st.floats(100, 11_000), FACTORS)
def test_power_and_reactive_power_make_the_apparent(power, volts, factor):
    """S² = P² + Q², and the current carries S."""
    found = electric.three_phase(power, volts, factor)

    assert found.apparent**2 == pytest.approx(found.power**2 + found.reactive**2)
    assert found.apparent == pytest.approx(3**0.5 * volts * found.current / 1000)


@given(POWERS, FACTORS, st.floats(0.5, 1), st.floats(100, 11_000))
def test_usable_power_fills_a_set_by_power_or_by_current(rated, factor, plate, volts):
    """What can be used is never above the rating, nor its current above the rated current."""
    usable = electric.usable_power(rated, plate, factor)
    current, full = (
        electric.three_phase(power, volts, pf).current
        for power, pf in ((usable, factor), (rated, plate))
    )

    assert 1 == pytest.approx(max(usable / rated, current / full))


@given(st.floats(1, 5000), st.floats(1, 5000), st.floats(100, 700))
def test_a_transformer_reads_the_same_by_power_and_by_current(rating, load, volts):
    """kVA and A are two ways to give the same load."""
    assert electric.transformer_loading(rating, load) == pytest.approx(
        electric.transformer_loading(
            rating, amperes=electric.line_current(load, volts), voltage=volts
        )
    )


def test_her_own_supply_changes_nothing():
    """Same volts and hertz: flux, speed and fan power stay."""
    assert electric.SupplyMismatch(1, 1, 1) == electric.supply_mismatch(480, 60, 480, 60)

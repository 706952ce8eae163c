"""Insulation: the correction that flips a verdict, the minima, and what may not be judged."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.electrical.machine_insulation import (
    FORM,
    OLD,
    RANDOM,
    correction_thermoplastic,
    correction_thermosetting,
)


def test_the_kind_of_insulation_turns_fail_into_pass(judge):
    """12 MΩ at 20 °C is 3.00 or 9.15 MΩ at 40 °C, on either side of 5 MΩ."""
    plastic = judge("insulation-resistance", resistance=12, insulation="thermoplastic")
    setting = judge("insulation-resistance", resistance=12, insulation="thermosetting")
    assert (pytest.approx(3.0), "poor") == (plastic.value, plastic.rating)
    assert (pytest.approx(9.15, abs=0.005), "fair") == (setting.value, setting.rating)


def test_an_unknown_kind_that_matters_is_not_judged_and_shows_both(judge):
    """Where the corrections disagree there is no rating, and both figures stand in the sentence."""
    judgement = judge("insulation-resistance", resistance=12, insulation="unknown")
    assert judgement.rating is None
    assert judgement.band == "insulation unknown"
    for figure in ("3 MΩ", "9.147 MΩ", "5 MΩ", "cannot be judged"):
        assert figure in judgement.sentence


@pytest.mark.parametrize(("expected", "resistance"), [("good", 180), ("poor", 2)])
def test_an_unknown_kind_that_does_not_matter_is_judged_on_the_lower_figure(
    judge, expected, resistance
):
    """Both corrections on one side of the minimum decide it."""
    judgement = judge("insulation-resistance", resistance=resistance, insulation="unknown")
    assert expected == judgement.rating
    assert judgement.value == pytest.approx(resistance * 0.25)
    assert any("both corrections agree" in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("expected", "resistance"),
    [("poor", 19.99), ("fair", 20), ("fair", 39.99), ("good", 40), ("poor", 0)],
)
def test_the_minimum_itself_passes(judge, expected, resistance):
    """20 MΩ at 20 °C is exactly 5 MΩ by halving: fair.

    Twice that is good; below is poor, being recalled.
    """
    judgement = judge("insulation-resistance", resistance=resistance, insulation="thermoplastic")
    assert expected == judgement.rating
    assert judgement.limit == 5.0


def test_below_the_minimum_stays_at_poor_with_a_note(judge):
    """The table is recalled, so it may warn and not fail."""
    judgement = judge("insulation-resistance", resistance=1)
    assert judgement.band == "below the minimum"
    assert any("marked memory" in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("expected", "winding", "voltage"),
    [(1.48, OLD, 480), (7.6, OLD, 6600), (100, FORM, 1000), (100, FORM, 6600), (5, RANDOM, 690)],
)
def test_the_minimum_follows_the_winding(judge, expected, winding, voltage):
    """kV + 1 for old and field windings, 100 MΩ form-wound, 5 MΩ random-wound."""
    judgement = judge("insulation-resistance", resistance=1000, winding=winding, voltage=voltage)
    assert expected == pytest.approx(judgement.limit)


def test_a_low_voltage_winding_cannot_be_form_wound_over_one_kilovolt(judge):
    """A contradiction between two answers is refused."""
    with pytest.raises(CannotJudge, match="rated 999 V"):
        judge("insulation-resistance", winding=FORM, voltage=999)


@pytest.mark.parametrize("voltage", [1001, 6600])
def test_a_random_wound_machine_above_one_kilovolt_is_refused(judge, voltage):
    """IEEE 43, table 3 (memory): 5 MΩ is the minimum of machines under 1 kV only."""
    with pytest.raises(CannotJudge, match="above the 1 kV of 'random-wound, or form-wound"):
        judge("insulation-resistance", winding=RANDOM, voltage=voltage)


@pytest.mark.parametrize("voltage", [999, 1000])
def test_a_random_wound_machine_up_to_one_kilovolt_is_judged(judge, voltage):
    """The edge itself counts."""
    assert 5 == judge("insulation-resistance", winding=RANDOM, voltage=voltage).limit


@pytest.mark.parametrize(
    ("insulation", "temperature"),
    [("thermoplastic", 60.1), ("unknown", 60.1), ("thermoplastic", 85)],
)
def test_the_halving_rule_is_not_stretched_beyond_sixty(judge, insulation, temperature):
    """Outside its range a correction is refused, not extrapolated."""
    with pytest.raises(CannotJudge, match="ends at 60 °C"):
        judge("insulation-resistance", insulation=insulation, temperature=temperature)


@pytest.mark.parametrize(
    ("insulation", "temperature"), [("thermoplastic", 60), ("thermosetting", 85), ("unknown", 10)]
)
def test_the_ends_of_each_range_are_judged(judge, insulation, temperature):
    """60 °C for the halving rule, 85 °C for the other, 10 °C for both."""
    assert judge("insulation-resistance", insulation=insulation, temperature=temperature).value > 0


@pytest.mark.parametrize("temperature", [9.9, 85.1, -5])
def test_no_correction_reaches_outside_ten_to_eighty_five(judge, temperature):
    """A cold or very hot winding is not judged."""
    with pytest.raises(CannotJudge, match="is accepted"):
        judge("insulation-resistance", temperature=temperature)


def test_a_reading_without_the_winding_temperature_is_not_judged(judge):
    """40 °C is never assumed."""
    with pytest.raises(CannotJudge, match="'temperature'.* is missing"):
        judge("insulation-resistance", temperature=None)


def test_both_corrections_are_one_at_forty_degrees():
    """At the reference temperature nothing is corrected, and the thermosetting formula has no jump
    there.
    """
    assert correction_thermoplastic(40) == 1
    assert correction_thermosetting(40) == 1
    assert correction_thermosetting(40.001) == pytest.approx(1, abs=1e-4)


def test_the_ladder_of_unknown_insulation_has_a_band_that_cannot_be_judged():
    """At 20 °C and a minimum of 5 MΩ.

    Failed to 6.56, unknown to 20, fair to 40, good above (at poor by its mark).
    """
    ladder = criterion("insulation-resistance").bands_for(
        {"temperature": 20, "insulation": "unknown", "winding": RANDOM, "voltage": 480}
    )
    assert [6.56, 20, 40, None] == [
        step.upto if step.upto is None else round(step.upto, 3) for step in ladder.bands
    ]
    assert ["poor", None, "fair", "good"] == [step.rating for step in ladder.bands]

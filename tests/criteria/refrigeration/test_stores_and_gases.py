"""Cold stores and refrigerants: limits, ban dates from both sides, leak-check steps."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.refrigeration.stores_and_gases import GASES, leak_check_months


@pytest.mark.parametrize(
    ("expected", "refrigerant", "installed"),
    [
        ("poor", "R-12", "2005-05-18"),
        ("failed", "R-12", "2005-05-19"),
        ("failed", "R-502", "2010-01-01"),
        ("poor", "R-22", "2019-12-31"),
        ("failed", "R-22", "2020-01-01"),
        ("poor", "R-404A", "2015-01-01"),
        ("poor", "R-507A", "2015-01-01"),
        ("poor", "R-422D", "2015-01-01"),
        ("fair", "R-134a", "2008-01-01"),
        ("fair", "R-452A", "2018-01-01"),
        ("good", "R-513A", "2018-01-01"),
        ("good", "R-717", "1980-01-01"),
        ("good", "R-744", "2020-01-01"),
    ],
)
def test_a_gas_is_judged_by_its_law_and_the_day_the_plant_was_fitted(
    judge, expected, refrigerant, installed
):
    """Only a plant that was forbidden when fitted fails; the rest is future supply."""
    assert (
        expected == judge("refrigerant-status", refrigerant=refrigerant, installed=installed).rating
    )


def test_only_the_ban_can_fail_a_plant(judge):
    """No gas fails because it is dear."""
    ratings = {
        judge("refrigerant-status", refrigerant=gas, installed="2000-01-01").rating for gas in GASES
    }
    assert ratings == {"good", "fair", "poor"}


@pytest.mark.parametrize(
    ("expected", "refrigerant", "charge"),
    [
        (None, "R-22", 2.9),
        (12, "R-22", 3),
        (6, "R-22", 30),
        (3, "R-22", 300),
        (None, "R-404A", 1.27),
        (12, "R-404A", 1.28),
        (12, "R-507A", 12.5),
        (6, "R-507A", 12.6),
        (3, "R-404A", 128),
        (12, "R-1234yf", 1),
        (None, "R-717", 5000),
        (None, "R-134a", 0),
    ],
)
def test_leak_checks_step_at_their_thresholds(expected, refrigerant, charge):
    """By kg for ozone-depleting gases and HFO, by t of CO2 equivalent for HFC, none for natural
    gases.
    """
    assert expected == leak_check_months(refrigerant, charge)


def test_the_charge_is_reported_in_carbon_dioxide(judge):
    """60 kg of R-404A are 235.3 t, to be checked every six months."""
    judgement = judge("refrigerant-status", refrigerant="R-404A", charge=60)
    assert (pytest.approx(235.32), "t") == (judgement.value, judgement.unit)
    assert any("every 6 months" in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("refrigerant", "word"), [("R-717", "toxic"), ("R-290", "flammable"), ("R-32", "flammable")]
)
def test_a_gas_that_hurts_carries_its_caution(judge, refrigerant, word):
    """The note says what hurts."""
    assert any(
        word in note.lower() for note in judge("refrigerant-status", refrigerant=refrigerant).notes
    )


@pytest.mark.parametrize(
    "changes",
    [{"refrigerant": "R-999"}, {"installed": "2008"}, {"installed": None}, {"charge": -1}],
)
def test_an_unknown_gas_or_date_is_refused(judge, changes):
    """Nothing is guessed about a gas or a date."""
    with pytest.raises(CannotJudge):
        judge("refrigerant-status", **changes)

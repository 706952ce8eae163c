"""Emissions: keel dates and speeds from both sides of each boundary."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.environment.nitrogen_oxides import nox_limit


@pytest.mark.parametrize(
    ("expected", "built", "certificate"),
    [
        ("fair", "1999-12-31", "none"),
        ("poor", "2000-01-01", "none"),
        ("good", "1999-12-31", "I"),
        ("good", "2010-12-31", "I"),
        ("failed", "2011-01-01", "I"),
        ("good", "2011-01-01", "II"),
        ("good", "2015-12-31", "II"),
        ("fair", "2016-01-01", "II"),
        ("good", "2016-01-01", "III"),
        ("poor", "2016-01-01", "none"),
        ("good", "2008-05-31", "III"),
    ],
)
def test_the_keel_date_decides_what_is_asked(judge, expected, built, certificate):
    """Nothing before 2000, tier I to 2010, tier II after, tier III in areas only."""
    assert expected == judge("nox-tier", built=built, certificate=certificate).rating


@pytest.mark.parametrize(
    ("expected", "built"),
    [
        (0, "2015-12-31"),
        (1, "2016-01-01"),
        (1, "2020-12-31"),
        (2, "2021-01-01"),
        (3, "2025-01-01"),
        (4, "2026-09-01"),
    ],
)
def test_closed_areas_grow_with_the_keel_date(judge, expected, built):
    """Each area closes to keels from its own date on."""
    notes = [
        note
        for note in judge("nox-tier", built=built, certificate="II").notes
        if note.startswith("Tier III")
    ]
    assert expected == sum(note.count(";") + 1 for note in notes)


@pytest.mark.parametrize(
    ("tier", "slow", "factor", "exponent", "fast"),
    [("I", 17.0, 45, -0.2, 9.8), ("II", 14.4, 44, -0.23, 7.7), ("III", 3.4, 9, -0.2, 2.0)],
)
def test_a_limit_steps_at_130_and_2000_rpm(tier, slow, factor, exponent, fast):
    """Flat below 130, falling to under 2000, flat again.

    MARPOL VI, regulation 13 (seen; the 2.0 of tier III memory).
    """
    assert (slow, fast) == (nox_limit(tier, 129.9), nox_limit(tier, 2000))
    assert factor * 130**exponent == nox_limit(tier, 130)
    assert factor * 1999.9**exponent == nox_limit(tier, 1999.9)


def test_the_certificate_is_compared_with_the_limit_in_numbers(judge):
    """Value and limit are the two tiers' figures at this speed; the sentence prints one decimal."""
    judgement = judge("nox-tier", built="2011-01-01", certificate="I")
    assert (pytest.approx(10.0498, abs=1e-4), pytest.approx(7.8477, abs=1e-4)) == (
        judgement.value,
        judgement.limit,
    )
    assert judgement.margin < 0
    assert "7.8 g/kWh at 1800 rpm" in judgement.sentence


def test_the_rule_for_replaced_engines_is_always_told(judge):
    """A buyer who changes engines meets the law of that day."""
    assert any("of the day it is fitted" in note for note in judge("nox-tier").notes)


@pytest.mark.parametrize(
    "changes", [{"certificate": "IV"}, {"speed": 9}, {"speed": 4001}, {"built": "May 2008"}]
)
def test_what_is_outside_the_rule_is_refused(judge, changes):
    """Unknown tiers, impossible speeds and vague dates are not judged."""
    with pytest.raises(CannotJudge):
        judge("nox-tier", **changes)


@pytest.mark.parametrize(
    ("expected", "installed", "replacement", "certificate"),
    [
        ("good", "2026-01-01", "identical", "I"),
        ("failed", "2026-01-01", "other or added", "I"),
        ("failed", "2026-01-01", None, "I"),
        ("good", "2010-12-31", "other or added", "I"),
        ("failed", "2011-01-01", "other or added", "I"),
        ("fair", "2026-01-01", "other or added", "II"),
        ("good", "2015-12-31", "other or added", "II"),
        ("good", "2026-01-01", "other or added", "III"),
        ("good", "2008-05-31", None, "I"),
    ],
)
def test_a_replaced_engine_meets_the_day_it_was_fitted(
    judge, expected, installed, replacement, certificate
):
    """An identical one keeps the keel's tier; where it is not known, another engine is taken."""
    assert (
        expected
        == judge(
            "nox-tier", installed=installed, replacement=replacement, certificate=certificate
        ).rating
    )


@pytest.mark.parametrize(
    ("expected", "built", "installed", "certificate", "area"),
    [
        ("failed", "2016-01-01", None, "II", "North America and US Caribbean"),
        ("good", "2015-12-31", None, "II", "North America and US Caribbean"),
        ("good", "2016-01-01", None, "III", "North America and US Caribbean"),
        ("good", "2020-12-31", None, "II", "Baltic and North Sea"),
        ("failed", "2021-01-01", None, "II", "Baltic and North Sea"),
        ("good", "2021-01-01", None, "II", "open sea"),
        ("poor", "2008-05-31", "2018-01-01", "II", "North America and US Caribbean"),
        ("failed", "2008-05-31", "2018-01-01", "I", "North America and US Caribbean"),
        ("poor", "2026-09-01", None, "II", "Norwegian Sea"),
    ],
)
def test_a_named_area_asks_for_tier_three(judge, expected, built, installed, certificate, area):
    """From its date on; a replacement may have a waiver, and a recalled date never fails."""
    assert (
        expected
        == judge(
            "nox-tier", built=built, installed=installed, certificate=certificate, area=area
        ).rating
    )


def test_the_sentence_names_the_area_that_was_asked_for(judge):
    """A keel of 2020 is closed out of North America, and may sail the Baltic with tier II."""
    judgement = judge("nox-tier", built="2020-12-31", certificate="II", area="Baltic and North Sea")
    assert "in Baltic and North Sea" in judgement.sentence
    assert "North America" not in judgement.sentence


def test_an_engine_older_than_the_keel_is_refused(judge):
    """The two dates were swapped, or one misread."""
    with pytest.raises(CannotJudge, match="before 'Keel laid'"):
        judge("nox-tier", installed="2007-01-01")
